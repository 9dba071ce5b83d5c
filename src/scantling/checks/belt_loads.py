"""What a belt has to pull and how it shares it between its two runs, as inputs of rules."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.belt_runs import Runs, belt_runs, belt_stiffness, belt_tension
from scantling.build.missing import NotDescribedError, need
from scantling.build.reader import Reader
from scantling.checks.axis_loads import load_inputs, push_n
from scantling.checks.inputs import Input, known
from scantling.checks.subjects import belt_axis, ident

# A carriage between its axles is never farther from the motor than half of the belt, so its slack run gives up no more
# than half of the force; where it stands beside the motor its tight run takes all of it. By these ends it is judged:
# they hold wherever the axles stand. The shares at the ends of the very travel are told beside them.
MOST_SLACK_RATIO = 0.5
MOST_TIGHT_RATIO = 1.0


@dataclass(frozen=True)
class BeltLoad:
    """A belt axis while it speeds up, with the inputs of ``load_inputs`` and the wanted ``acceleration``."""

    axis: str
    vertical: bool
    inputs: dict[str, Input]

    def push_n(self, **f: float) -> float:
        """Return the force on the carriage."""
        return push_n(f, f["acceleration"], self.vertical)

    def rubbing_n(self, **f: float) -> float:
        """Return what of it is friction, which turns round with the way."""
        return self.push_n(**f) - self.push_n(**f | {"drag": 0.0, "rubbing": 0.0})


def belt_load(reader: Reader, subject: str, acceleration_mm_s2: float) -> BeltLoad:
    """Return what the belt of an axis has to pull at an acceleration."""
    axis = belt_axis(reader, subject)
    wanted = {"acceleration": known("wanted acceleration", acceleration_mm_s2, "mm/s²")}
    return BeltLoad(ident(subject), axis.vertical, load_inputs(reader, axis, subject) | wanted)


def wanted_mm_s2(reader: Reader, subject: str) -> float:
    """Return the acceleration that a belt axis must make."""
    wanted = belt_axis(reader, subject).needs.acceleration_mm_s2
    return float(need(wanted, f"axes.{ident(subject)}.needs.acceleration").value)


def told_runs(reader: Reader, axis: str) -> Runs | None:
    """Return the runs of a belt where words are wanted and they are described."""
    if not reader.words:
        return None
    try:
        found: Runs = reader.derive(belt_runs, axis)
    except NotDescribedError:
        return None
    return found


def strain_input(reader: Reader, axis: str) -> Input:
    """Return the stiffness of an axis's belt: the force for a stretch by its own length."""
    return known("stiffness of the belt", reader.derive(belt_stiffness, axis), "N")


def tension_input(reader: Reader, axis: str) -> Input:
    """Return the tension of each run at rest."""
    return known("tension of the belt at rest", reader.derive(belt_tension, axis), "N")
