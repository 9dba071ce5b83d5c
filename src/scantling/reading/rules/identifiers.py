"""Identifiers: those that sizes can name, and those that findings can carry."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable

from scantling.reading.document import noun
from scantling.reading.scene import Scene

WORD = re.compile(r"[A-Za-z_][A-Za-z0-9_]*(?:-[A-Za-z0-9_]+)*")
LONGEST = 80
_TAKEN = ("machine", "min", "max", "to", "mm", "cm", "in", "m", "ft")
_IN_SIZES = ("places", "sizes")
_IN_FINDINGS = ("mates", "axes", "chains", "joints", "sheets", "rails", "warmings", "frames", "steps")


def identifiers(scene: Scene) -> None:
    """Note identifiers that could not be told apart or not be named."""
    for section in _IN_SIZES:
        for name in getattr(scene.design, section):
            _word(scene, name, noun(section), "design", section, name)
    for section in (*_IN_FINDINGS, "settings"):
        for name in getattr(scene.design, section):
            _no_blanks(scene, name, noun(section), "design", section, name)
    for name in scene.design.parts:
        _part_name(scene, name)
    if scene.workshop is not None:
        for name in scene.workshop.vendors:
            _no_blanks(scene, name, "vendor", "workshop", "vendors", name)
    _pieces(scene)


def _word(scene: Scene, name: str, what: str, *path: str | int) -> None:
    if name in _TAKEN:
        scene.add("29", f"the {what} {name!r} has a name that means something else in sizes", "rename it", *path)
    elif not WORD.fullmatch(name) or len(name) > LONGEST:
        mend = "use letters, digits and single dashes, a letter first, as in back-panel"
        scene.add("29", f"the {what} {name[:40]!r} cannot be named in sizes", mend, *path)


def _no_blanks(scene: Scene, name: str, what: str, *path: str) -> None:
    if not re.fullmatch(r"[^\s;:,]+", name) or len(name) > LONGEST:
        mend = "use letters, digits and dashes, without blanks"
        scene.add("29", f"{name[:40]!r} cannot be the identifier of a {what}", mend, *path)


def _part_name(scene: Scene, name: str) -> None:
    if not name.strip() or name != name.strip() or ";" in name or not name.isprintable() or len(name) > LONGEST:
        mend = "use one line of printable characters without semicolons"
        scene.add("29", f"{name[:40]!r} cannot be the identifier of a part", mend, "design", "parts", name)


def _pieces(scene: Scene) -> None:
    """Names of pieces: usable and each once."""
    for name, place in scene.design.places.items():
        for number, piece in enumerate(place.pieces):
            _word(scene, piece, "piece", "design", "places", name, "pieces", number)
        for piece in _twice(place.pieces):
            what = f"the place {name!r} has two pieces called {piece!r}"
            scene.add("08", what, "rename one", "design", "places", name, "pieces")


def _twice(names: Iterable[str]) -> list[str]:
    return [name for name, count in Counter(names).items() if count > 1]
