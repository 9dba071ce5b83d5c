"""A build to start from, and a build changed in a few answers that keeps all the others where it can."""

from __future__ import annotations

from collections.abc import Mapping

from scantling.build.case import Case, length_of, screws_of
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.screw_fit import ideal_length, screw_fit
from scantling.errors import LookUpError
from scantling.model.build import Build, Key
from scantling.model.place import EMPTY

_MOST_ROUNDS = 20  # of settling what options require of each other


def reference_build(case: Case, copies: int = 1) -> Build:
    """Return the build of the reference parts, each got in the way liked best, with the screws that suit them best."""
    answers = {key: case.answers(key, {})[0] for key in case.questions if key.kind == "part"}
    return Build.of(_completed(case, _settled(case, answers, frozenset()), {}), copies)


def carry_over(case: Case, build: Build, changes: Mapping[Key, str]) -> Build:
    """Return ``build`` with some answers changed and every other kept where it still can be.

    Places that a new option fills become empty, places that the old one filled get their reference part back; what an
    option requires elsewhere is changed to that. Ways of getting a part stay where still possible. A joint keeps its
    screw where that is still admissible, else it takes the admissible one nearest in length (the longer of two).
    Raises ``LookUpError`` for an answer that its question does not have.
    """
    before = build.as_dict()
    wanted = {_leading(case, key): answer for key, answer in changes.items()}
    parts = {key: wanted.get(key, answer) for key, answer in before.items() if key.kind == "part"}
    for key, answer in wanted.items():
        known = case.answers(key, parts)
        if answer not in known:
            raise LookUpError(f"answer to {key}", answer, known)
    freed = _freed(case, before, parts) - set(wanted)
    parts |= {key: _first(case, key) for key in freed}
    parts = _settled(case, parts, frozenset(wanted))
    return Build.of(_completed(case, parts, {**before, **wanted}), build.copies)


def _leading(case: Case, key: Key) -> Key:
    """The question itself: places that are alike are asked once."""
    return case.part_key(key.subject) if key.kind == "part" else key


def _first(case: Case, key: Key) -> str:
    """The reference part of a place."""
    return case.answers(key, {})[0]


def _freed(case: Case, before: Mapping[Key, str], after: Mapping[Key, str]) -> set[Key]:
    """Places that were filled by an option which is no longer chosen, and by no other."""
    was, remains = _filled(case, before), _filled(case, after)
    return {key for key in was - remains if before.get(key) == EMPTY}


def _filled(case: Case, answers: Mapping[Key, str]) -> set[Key]:
    """The questions of places that chosen options of other places fill."""
    return {
        case.part_key(place)
        for key, answer in answers.items()
        if key.kind == "part" and answer != EMPTY
        for place in case.option(key.subject, answer).also_fills
    }


def _settled(case: Case, answers: Mapping[Key, str], fixed: frozenset[Key]) -> dict[Key, str]:
    """Do what the chosen options ask of other places, until nothing changes; ``fixed`` answers stay.

    Options that contradict each other are left as they are after some rounds: the rules of the choice find them.
    """
    settled = dict(answers)
    for _ in range(_MOST_ROUNDS):
        asked = {key: answer for key, answer in _asked(case, settled).items() if key not in fixed}
        if all(settled.get(key) == answer for key, answer in asked.items()):
            break
        settled |= asked
    return settled


def _asked(case: Case, answers: Mapping[Key, str]) -> dict[Key, str]:
    """What the chosen options ask of other places, in the design's order; filling counts for more than requiring."""
    asked: dict[Key, str] = {}
    for key in case.questions:
        if key.kind != "part" or answers[key] == EMPTY:
            continue
        option = case.option(key.subject, answers[key])
        for place, part in option.forbids.items():
            other = case.part_key(place)
            if answers[other] == part:
                allowed = [one for one in case.answers(other, {}) if one not in (part, EMPTY)]
                asked |= {other: allowed[0]} if allowed else {}
        asked |= {case.part_key(place): part for place, part in option.requires.items()}
    return asked | dict.fromkeys(sorted(_filled(case, answers)), EMPTY)


def _completed(case: Case, parts: Mapping[Key, str], before: Mapping[Key, str]) -> dict[Key, str]:
    """Add ways of getting and screws to the parts, as before where that still can be."""
    answers = dict(parts)
    for key in case.questions:
        if key.kind == "get":
            known = case.answers(key, parts)
            answers[key] = before[key] if before.get(key) in known else known[0]
    reader = Reader(case, answers)
    for joint in case.project.design.joints:
        key = Key("screw", joint)
        answers[key] = reader.derive(best_screw, joint, before.get(key))
    return answers


def best_screw(reader: Reader, joint: str, before: str | None) -> str:
    """Return the screw of a joint: ``before`` where that is admissible, else the admissible one that lies nearest.

    Nearest to ``before``, or to the length that suits best where there is none. Where the joint is not described, or
    no screw is admissible, it still is the nearest that there is.
    """
    known = reader.case.once(screws_of, joint)
    try:
        admissible = [name for name in known if reader.derive(screw_fit, joint, name).is_admissible]
        wanted_mm = length_of(reader.case.part(before)) if before in known else reader.derive(ideal_length, joint)
    except NotDescribedError:
        return before if before in known else known[0]
    if before in admissible:
        return before
    return min(admissible or known, key=lambda name: _nearness(length_of(reader.case.part(name)), wanted_mm))


def _nearness(length_mm: float, wanted_mm: float) -> tuple[float, float]:
    """How far a length is from the wanted one; of two equally far the longer is better."""
    return (abs(length_mm - wanted_mm), -length_mm)
