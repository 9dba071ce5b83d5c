"""The explicit list of rules that look across entries: a new rule is a function in a small file and one line here."""

from __future__ import annotations

from collections.abc import Callable

from scantling.reading.rules.accepted import accepted
from scantling.reading.rules.axes import axes, chains, clearances, mates, rails
from scantling.reading.rules.choices import choices
from scantling.reading.rules.circles import circles
from scantling.reading.rules.frames import frames
from scantling.reading.rules.identifiers import identifiers
from scantling.reading.rules.joints import joints, steps
from scantling.reading.rules.offers import offers
from scantling.reading.rules.parts import dangling, parts
from scantling.reading.rules.places import places
from scantling.reading.rules.prints import prints
from scantling.reading.rules.ranges import ranges
from scantling.reading.rules.sheets import sheets
from scantling.reading.rules.shop import workshop
from scantling.reading.rules.sizes import sizes
from scantling.reading.rules.wiring import wiring
from scantling.reading.rules.words import words
from scantling.reading.scene import Scene

RULES: tuple[Callable[[Scene], None], ...] = (
    identifiers,
    parts,
    dangling,
    places,
    choices,
    sizes,
    circles,
    axes,
    mates,
    rails,
    wiring,
    chains,
    clearances,
    frames,
    joints,
    steps,
    sheets,
    prints,
    accepted,
    workshop,
    offers,
    ranges,
    words,
)
