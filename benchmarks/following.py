"""How long it takes until what follows from another part is on the screen."""

from __future__ import annotations

import gc
import statistics
from collections.abc import Iterator, Mapping

from measuring import Measure, Took, took
from planning import ALDER

from scantling.api.following import Following, Standing, stand, whatif
from scantling.api.opening import Session, open_design
from scantling.cli.main import SELDOM
from scantling.model.build import Key

CHANGES = 12


def measures() -> Iterator[Measure]:
    """Yield the stages of what-if, asked of several places one after the other, once everything is loaded."""
    gc.set_threshold(*SELDOM)  # as the command does
    session = open_design(ALDER, "village", 4)
    standing = stand(session)
    yield Measure("the plan in force, checked and bought", took(lambda: stand(session)).wall_s, "s")
    changes = _changes(session, standing)
    stages = [_stages(standing, change) for change in changes]
    first = [stage["at once"] for stage in stages]
    yield _median("what-if at once, median", first, 100.0)
    yield Measure("what-if at once, slowest", max(run.wall_s for run in first) * 1000, "ms")
    complete = max((stage["complete"] for stage in stages), key=lambda run: run.wall_s)
    yield Measure("what-if complete, slowest", complete.wall_s, "s", 3.0, complete.note)
    standing.chooser.opened()  # the tables, grown once for all questions
    anew = max((_anew(standing, change) for change in changes[:3]), key=lambda run: run.wall_s)
    yield Measure("the same parts, all else chosen anew, slowest of 3", anew.wall_s, "s", 2.0, anew.note)


def _median(name: str, runs: list[Took], target_ms: float) -> Measure:
    busy_ms = statistics.median(run.busy_s for run in runs) * 1000
    wall_ms = statistics.median(run.wall_s for run in runs) * 1000
    return Measure(name, wall_ms, "ms", target_ms, f"of {len(runs)} changes; working {busy_ms:.3g} ms")


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


def _stages(standing: Standing, change: Mapping[Key, str]) -> dict[str, Took]:
    stages, found = whatif(standing, change, anew=False), {}
    for name in ("at once", "complete"):
        found[name] = took(lambda: next(stages))
    return found


def _anew(standing: Standing, change: Mapping[Key, str]) -> Took:
    """The last stage alone."""
    stages: Iterator[Following] = whatif(standing, change)
    next(stages), next(stages)
    return took(lambda: next(stages))
