"""At what frequency a carriage swings on its rods: for information; how far it swings is another check's question."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from scantling.build.axis_loads import guide_size
from scantling.build.reader import Reader
from scantling.build.rod_ends import Ends, rod_ends
from scantling.build.sizes import feature
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.guide_loads import Guided, guided, level_guides
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION
from scantling.checks.materials import steel_modulus
from scantling.checks.rule import check_of
from scantling.checks.standing import ends_inputs
from scantling.checks.subjects import ident
from scantling.findings import Finding
from scantling.formulas.beams import loaded_rod_frequency_hz
from scantling.formulas.held_beams import held_stiffness_n_mm
from scantling.formulas.sections import round_area_mm2, round_second_moment_mm4

STEEL_KG_MM3 = 7.85e-6


@dataclass(frozen=True)
class Swinging:
    """A carriage in the middle of its rods, where they are softest."""

    on: Guided
    ends: Ends

    def stiffness_n_mm(self, **f: float) -> float:
        """Return the stiffness of all rods together."""
        fixity = self.ends.fixity(f["free"], f["diameter"], f["modulus"], f)
        second_mm4 = round_second_moment_mm4(f["diameter"])
        return self.on.geometry.rods * held_stiffness_n_mm(f["free"] / 2, f["free"], f["modulus"], second_mm4, fixity)

    def frequency_hz(self, **f: float) -> float:
        """Return the lowest frequency, up and down or to and fro across the rods."""
        rods_kg = self.on.geometry.rods * STEEL_KG_MM3 * round_area_mm2(f["diameter"]) * f["free"]
        return loaded_rod_frequency_hz(self.stiffness_n_mm(**f), f["mass"], rods_kg)


def _run(reader: Reader, subject: str) -> Finding:
    name, on = ident(subject), guided(reader, subject)
    ends = rod_ends(reader, name, on.guide)
    swinging = Swinging(on, ends)
    return judge(
        CHECK,
        reader,
        subject,
        rule=swinging.frequency_hz,
        inputs={
            "mass": on.mass,
            "free": known("free length of the rods", reader.derive(guide_size, name, "free"), "mm"),
            "diameter": known("diameter of the rods", reader.derive(feature, on.guide.rods, "diameter"), "mm"),
            "modulus": steel_modulus(on.rod),
        }
        | ends_inputs(ends),
        bounds=INFORMATION,
        unit="Hz",
        because=f"{{mass}} in the middle of {on.geometry.rods} rods of {{diameter}}, {{free}} free, {ends.words}, "
        f"which give way with {{stiffness}}, swing at {{value}}.{_ripples(reader, name)}",
        also={"stiffness": (swinging.stiffness_n_mm, "N/mm"), **_spacing(reader, name, swinging)},
    )


def _ripples(reader: Reader, axis: str) -> str:
    """What a sentence says of the marks that swinging leaves, where the axis wants a speed."""
    return (
        "" if reader.design.axes[axis].needs.speed_mm_s is None else " At full speed ripples would lie {apart} apart."
    )


def _spacing(reader: Reader, axis: str, swinging: Swinging) -> Mapping[str, tuple[Callable[..., float], str]]:
    speed = reader.design.axes[axis].needs.speed_mm_s
    return {} if speed is None else {"apart": (lambda **f: speed.value / swinging.frequency_hz(**f), "mm")}


CHECK = check_of(
    _run,
    code="ROD-07",
    title="Frequency of a carriage on its rods",
    source="beam tables; 17/35 of the rods' mass swings with their middle (energy method)",
    subjects=level_guides,
    total=MOVING_MASS,
    informs=True,
)
