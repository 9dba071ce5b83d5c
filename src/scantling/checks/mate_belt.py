"""A belt runs on a pulley of its own profile only, and lies between its flanges.

Belts that look alike differ: 2 mm and 2.032 mm pitch make 1.6 % of error and climb the teeth. A pulley whose width is
not described is judged by its profile alone.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_least
from scantling.checks.pairs import BELT, pair_of, pairs_of
from scantling.checks.rule import check_of
from scantling.findings import Finding, Verdict
from scantling.model.kinds import Belt, Pulley


def _run(reader: Reader, subject: str) -> Finding:
    pair = pair_of(reader.design, subject)
    parts = reader.part(pair.place), reader.part(pair.in_place)
    belt = next((part for part in parts if isinstance(part, Belt)), None)
    pulley = next((part for part in parts if isinstance(part, Pulley)), None)
    if belt is None or pulley is None:
        words = "There is no toothed pair here: an idler without teeth takes any belt's back, or a place stays empty."
        return say(CHECK, reader, subject, Verdict.SOUND, words)
    if _same(belt.profile) != _same(pulley.profile):
        because = f"{pair.place} is of the profile {belt.profile}, {pair.in_place} of {pulley.profile}."
        return say(CHECK, reader, subject, Verdict.UNSOUND, because, "take belt and pulleys of one profile")
    if pulley.belt_width_mm is None:
        because = f"Belt and pulley are both of the profile {belt.profile}; the pulley's width is not described."
        return say(CHECK, reader, subject, Verdict.SOUND, because)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda width, **_: width,
        inputs={
            "width": known(f"width of {pair.in_place}", pulley.belt_width_mm, "mm"),
            "belt": known(f"width of {pair.place}", belt.width_mm, "mm"),
        },
        bounds=at_least(lambda belt, **_: belt),
        unit="mm",
        because=f"Both are of the profile {belt.profile}; a belt of {{belt}} runs between flanges {{width}} apart; "
        "{limit}.",
        mend="a wider pulley or a narrower belt",
    )


def _same(profile: str) -> str:
    """Return a profile without what makers write differently."""
    return "".join(profile.lower().split()).replace("-", "")


CHECK = check_of(
    _run,
    code="MATE-04",
    title="Belt on pulley",
    source="definition: one profile, the belt no wider than the pulley",
    subjects=pairs_of(BELT),
)
