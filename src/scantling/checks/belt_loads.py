"""What a belt has to pull and how it shares it between its two runs, as inputs of rules."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.belt_runs import Runs, belt_runs, belt_stiffness, belt_tension
from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.checks.axis_loads import load_inputs, push_n
from scantling.checks.inputs import Input, known
from scantling.checks.subjects import belt_axis, ident


@dataclass(frozen=True)
class BeltLoad:
    """A belt axis while it speeds up: its runs and the inputs of all that its rules take.

    inputs : those of ``load_inputs`` with the wanted ``acceleration``
    """

    axis: str
    runs: Runs
    vertical: bool
    inputs: dict[str, Input]

    def push_n(self, **f: float) -> float:
        """Return the force on the carriage."""
        return push_n(f, f["acceleration"], self.vertical)

    def rubbing_n(self, **f: float) -> float:
        """Return what of it is friction, which turns round with the way."""
        return self.push_n(**f) - self.push_n(**f | {"drag": 0.0, "rubbing": 0.0})


def belt_load(reader: Reader, subject: str) -> BeltLoad:
    """Return what the belt of an axis has to pull; raises ``NotDescribedError`` with all that it lacks."""
    axis, name = belt_axis(reader, subject), ident(subject)
    wanted, runs = gather(
        lambda: need(axis.needs.acceleration_mm_s2, f"axes.{name}.needs.acceleration"),
        lambda: reader.derive(belt_runs, name),
    )
    inputs = load_inputs(reader, axis, subject)
    inputs["acceleration"] = known("wanted acceleration", wanted.value, "mm/s²")
    return BeltLoad(name, runs, axis.vertical, inputs)


def strain_input(reader: Reader, axis: str) -> Input:
    """Return the stiffness of an axis's belt: the force for a stretch by its own length."""
    return known("stiffness of the belt", reader.derive(belt_stiffness, axis), "N")


def tension_input(reader: Reader, axis: str) -> Input:
    """Return the tension of each run at rest."""
    return known("tension of the belt at rest", reader.derive(belt_tension, axis), "N")
