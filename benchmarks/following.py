"""How long it takes until what follows from another part is on the screen."""

from __future__ import annotations

import statistics
import time
from collections.abc import Iterator, Mapping

from measuring import Measure, seconds
from planning import ALDER

from scantling.api.following import Following, Standing, stand, whatif
from scantling.api.opening import Session, open_design
from scantling.model.build import Key

CHANGES = 12


def measures() -> Iterator[Measure]:
    """Yield the stages of what-if, asked of several places one after the other, once everything is loaded."""
    session = open_design(ALDER, "village", 4)
    standing_s = seconds(lambda: stand(session))
    standing = stand(session)
    changes = _changes(session, standing)
    stages = [_stages(standing, change) for change in changes]
    yield Measure("the plan in force, checked and bought", standing_s, "s")
    first = [stage["at once"] for stage in stages]
    yield Measure("what-if at once, median", statistics.median(first) * 1000, "ms", 100.0, f"of {len(first)} changes")
    yield Measure("what-if at once, slowest", max(first) * 1000, "ms")
    yield Measure("what-if complete, slowest", max(s["complete"] for s in stages), "s", 3.0)
    anew = [_anew(standing, change) for change in changes[:3]]
    yield Measure("the same parts, all else chosen anew, slowest of 3", max(anew), "s", 2.0)


def _changes(session: Session, standing: Standing) -> list[dict[Key, str]]:
    """Another part at places that have one, spread over the design."""
    build = standing.plan.build.as_dict()
    found = []
    for key in session.case.questions:
        others = [a for a in session.case.answers(key, build) if a and a != build[key]]
        if key.kind == "part" and others:
            found.append({key: others[0]})
    step = max(1, len(found) // CHANGES)
    return found[::step][:CHANGES]


def _stages(standing: Standing, change: Mapping[Key, str]) -> dict[str, float]:
    found: dict[str, float] = {}
    begun_s = time.perf_counter()
    for stage in whatif(standing, change, anew=False):
        found[stage.stage] = time.perf_counter() - begun_s
    return found


def _anew(standing: Standing, change: Mapping[Key, str]) -> float:
    """The last stage alone."""
    stages: Iterator[Following] = whatif(standing, change)
    for stage in stages:
        if stage.stage == "complete":
            break
    return seconds(lambda: next(stages))
