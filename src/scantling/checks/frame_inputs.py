"""A frame as the inputs of a rule: modulus and thickness of every different sheet, and the stiffness of the joints."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from scantling.build.frame_stiffness import (
    FrameStiffness,
    Tuning,
    frame_stiffness,
    joint_stiffness,
    known_moduli,
)
from scantling.build.reader import Reader
from scantling.checks.inputs import Input, known, or_range
from scantling.checks.materials import POSSIBLE_SHEET_MPA
from scantling.quantities import Figure, Grade

PERCENT = Figure.exact(100.0)


@dataclass(frozen=True)
class Asked:
    """A frame with its figures: ``inputs`` by name, and what a rule makes of their values."""

    frame: FrameStiffness
    inputs: Mapping[str, Input]

    def tuning(self, figures: Mapping[str, float]) -> Tuning:
        """Return what the figures of a rule mean for the frame."""
        count = len(self.frame.stocks)
        moduli = tuple(figures[_name("modulus", k)] for k in range(count))
        thicknesses = tuple(figures[_name("thickness", k)] for k in range(count))
        return Tuning(moduli, thicknesses, figures["joints"] / 100)

    @property
    def words(self) -> str:
        """The sheets in a sentence, with the names of inputs in braces."""
        stocks = enumerate(self.frame.stocks)
        return " and ".join(
            f"{stock.part.name or stock.part.id} ({{{_name('thickness', k)}}} thick, modulus {{{_name('modulus', k)}}})"
            for k, stock in stocks
        )


def asked_frame(reader: Reader, name: str) -> Asked:
    """Return a frame to be judged.

    Where somebody has pushed on it, moduli and joints are known together: the whole band is then that of the joints.
    """
    frame: FrameStiffness = reader.derive(frame_stiffness, name)
    low, high = POSSIBLE_SHEET_MPA
    inputs: dict[str, Input] = {}
    for number, (stock, modulus) in enumerate(zip(frame.stocks, known_moduli(reader, name), strict=True)):
        what = f"modulus of {stock.part.id}"
        inputs[_name("modulus", number)] = or_range(what, modulus, low, high, "MPa")
        inputs[_name("thickness", number)] = known(f"thickness of {stock.part.id}", stock.thickness_mm, "mm")
    ratio = reader.derive(joint_stiffness, name)
    is_measured = ratio.grade is Grade.MEASURED
    what = "joints as the push showed" if is_measured else "stiffness of the bolted joints against the reckoned one"
    inputs["joints"] = known(what, ratio * PERCENT, "%")
    return Asked(frame, inputs)


def _name(what: str, number: int) -> str:
    return what if number == 0 else f"{what}_{number}"
