"""Figures as makers write them: what is read, what is refused, and with which words.

Expected values follow from definitions: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, g = 9.80665 m/s2 (see units.py).
"""

import pytest

from scantling.errors import LookUpError, QuantityError
from scantling.quantities import DIMENSIONS, parse_figure

READ = [
    ("length", "8 mm", 8.0),
    ("length", "8mm", 8.0),
    ("length", "2,5 mm", 2.5),
    ("length", "0,125 in", 3.175),
    ("length", "1234,5678 mm", 1234.5678),
    ("length", ".5 mm", 0.5),
    ("length", "-3 mm", -3.0),
    ("length", "− 3 mm", -3.0),
    ("length", "+3 mm", 3.0),
    ("length", "1e-3 m", 1.0),
    ("length", "1E3mm", 1000.0),
    ("length", "3/8 in", 9.525),
    ("length", '3/8"', 9.525),
    ("length", "3/8''", 9.525),
    ("length", "3/8″", 9.525),
    ("length", "1 3/8 in", 34.925),
    ("length", "1 3/8 inches", 34.925),
    ("length", "1⅜ in.", 34.925),
    ("length", "½ in", 12.7),
    ("length", "-1 1/2 in", -38.1),
    ("length", "6'", 1828.8),
    ("length", "5 thou", 0.127),
    ("length", "20 µm", 0.02),
    ("length", "20 μm", 0.02),
    ("length", "8\u00a0mm", 8.0),
    ("area", "2 cm²", 200.0),
    ("area", "2 sq in", 1290.32),
    ("volume", "1.75 ml", 1750.0),
    ("mass", "80 g", 0.08),
    ("mass", "2 lb", 0.90718474),
    ("mass", "1.5 KG", 1.5),
    ("force", "2 kgf", 19.6133),
    ("torque", "40 N cm", 400.0),
    ("torque", "40 N·cm", 400.0),
    ("torque", "40 N.cm", 400.0),
    ("torque", "40 N-cm", 400.0),
    ("torque", "40Ncm", 400.0),
    ("torque", "0.26 N m", 260.0),
    ("torque", "4 kgf cm", 392.266),
    ("torque", "260 mN m", 260.0),
    ("stress", "205 GPa", 205_000.0),
    ("stress", "8 N/mm²", 8.0),
    ("speed", "7.2 m/min", 120.0),
    ("acceleration", "1200 mm/s²", 1200.0),
    ("acceleration", "1.2 m/s^2", 1200.0),
    ("time", "2 weeks", 1_209_600.0),
    ("time", "1.5 h", 5400.0),
    ("angle", "45°", 45.0),
    ("temperature", "68 °F", 20.0),
    ("temperature", "293.15 K", 20.0),
    ("temperature-difference", "18 °F", 10.0),
    ("current", "800 mA", 0.8),
    ("resistance", "1.6 Ω", 1.6),
    ("inertia", "54 g·cm²", 5.4),
    ("turns", "600 rpm", 10.0),
    ("line-mass", "0.5 kg/m", 500.0),
    ("density", "7.85 g/cm³", 7850.0),
    ("line-stiffness", "15 kN", 15_000.0),
    ("expansion", "12 µm/m/K", 12e-6),
    ("expansion", "12 µm/(m·K)", 12e-6),
    ("per-length", "80 steps/mm", 80.0),
    ("per-length", "80 1/mm", 80.0),
    ("ratio", "0.2", 0.2),
    ("ratio", "20 %", 0.2),
    ("hardness", "60", 60.0),
    ("hardness", "HRC 60", 60.0),
    ("count", "3", 3.0),
    ("count", "4 off", 4.0),
    ("length-um", "0.02 mm", 20.0),
    ("mass-t", "1.5 kg", 0.0015),
    ("time-h", "90 min", 1.5),
    ("time-d", "1 week", 7.0),
    ("turns-rpm", "10 rev/s", 600.0),
]


@pytest.mark.parametrize(("dimension", "text", "value"), READ)
def test_a_plain_figure_is_read_exactly(dimension: str, text: str, value: float) -> None:
    figure = parse_figure(text, dimension)
    assert (figure.value, figure.low, figure.high) == (value, value, value)


BANDS = [
    ("length", "8 mm ± 0.1 mm", (8.0, 7.9, 8.1)),
    ("length", "8 ± 0.1 mm", (8.0, 7.9, 8.1)),
    ("length", "8 mm ± 0.1", (8.0, 7.9, 8.1)),
    ("length", "8 mm +- 0.1 mm", (8.0, 7.9, 8.1)),
    ("length", "8 mm +/- 0.1 mm", (8.0, 7.9, 8.1)),
    ("length", "8 mm ± 100 um", (8.0, 7.9, 8.1)),
    ("length", "8 mm ± 5 %", (8.0, 7.6, 8.4)),
    ("force", "-10 N ± 5 %", (-10.0, -10.5, -9.5)),
    ("length", "8 mm +0.2/-0.1 mm", (8.0, 7.9, 8.2)),
    ("length", "8 mm +0.2/-0.1", (8.0, 7.9, 8.2)),
    ("length", "8 +0.2/-0.1 mm", (8.0, 7.9, 8.2)),
    ("length", "8 mm +0.2 -0.1 mm", (8.0, 7.9, 8.2)),
    ("length", "8 mm -0.1/+0.2 mm", (8.0, 7.9, 8.2)),
    ("length", "8 mm +0.2/−0.1 mm", (8.0, 7.9, 8.2)),
    ("length", "8 mm +0/-0.009 mm", (8.0, 7.991, 8.0)),
    ("length", "8 mm +0.2/0", (8.0, 8.0, 8.2)),
    ("length", "3/8 in +1/64/-1/64", (9.525, 9.128125, 9.921875)),
    ("length", "5.0..6.6 mm", (5.8, 5.0, 6.6)),
    ("length", "5.0 mm to 6.6 mm", (5.8, 5.0, 6.6)),
    ("length", "5.0 to 6.6 mm", (5.8, 5.0, 6.6)),
    ("length", "3/8–5/8 in", (12.7, 9.525, 15.875)),
    ("length", "5.0…6.6 mm", (5.8, 5.0, 6.6)),
    ("length", "5 mm .. 0.6 cm", (5.5, 5.0, 6.0)),
    ("length", "-3..-1 mm", (-2.0, -3.0, -1.0)),
    ("length", "12.5 mm (12.1–12.9)", (12.5, 12.1, 12.9)),
    ("heat-loss", "0.7 W/K (0.55..0.9)", (0.7, 0.55, 0.9)),
    ("heat-loss", "0.7 W/K (550 mW/K to 900 mW/K)", (0.7, 0.55, 0.9)),
    ("temperature", "20 °C ± 2 K", (20.0, 18.0, 22.0)),
    ("temperature", "50 °F ± 9 °F", (10.0, 5.0, 15.0)),
    ("temperature", "41 °F to 59 °F", (10.0, 5.0, 15.0)),
    ("temperature", "50 °F +9/-18 °F", (10.0, 0.0, 15.0)),
    ("ratio", "15..25 %", (0.2, 0.15, 0.25)),
    ("hardness", "HRC 58..62", (60.0, 58.0, 62.0)),
    ("hardness", "60 HRC ± 2", (60.0, 58.0, 62.0)),
]


@pytest.mark.parametrize(("dimension", "text", "expected"), BANDS)
def test_a_band_is_read_exactly(dimension: str, text: str, expected: tuple[float, float, float]) -> None:
    figure = parse_figure(text, dimension)
    assert (figure.value, figure.low, figure.high) == expected


# (dimension, text, words of what is wrong, words of the mend)
REFUSED = [
    ("length", "", "nothing is written", "write a number"),
    ("length", "   ", "nothing is written", "write a number"),
    ("length", "8", "bare number", "write 8 mm"),
    ("length", "0", "bare number", "write 0 mm"),
    ("length", "3/8", "bare number", "write 0.375 mm"),
    ("length", "8 N", "'N' is a force, not a length", "8 mm"),
    ("length", "8 Mm", "no unit of length", "did you mean mm?"),
    ("length", "8 mmm", "no unit of length", "did you mean mm?"),
    ("length", "8 m m", "no unit of length", "did you mean mm?"),
    ("length", "8 mil", "a millimetre to others", "write thou or mm"),
    ("length", "nan", "not a length", "8 mm"),
    ("length", "nan mm", "not a length", "8 mm"),
    ("length", "inf mm", "not a length", "8 mm"),
    ("length", "٣ mm", "not a length", "8 mm"),
    ("length", "0x10 mm", "not a length", "8 mm"),
    ("length", "1_000 mm", "no unit of length", "8 mm"),
    ("length", "1,234 mm", "may mean 1234 or 1.234", "write 1234 or 1.234"),
    ("length", "12,345 mm", "may mean 12345 or 12.345", "write 12345"),
    ("length", "1,234.5 mm", "more than one point or comma", "thousands"),
    ("length", "1.234,5 mm", "more than one point or comma", "thousands"),
    ("length", "1 234 mm", "more than one number", "one number"),
    ("length", "5. mm", "not a length", "8 mm"),
    ("length", "3/0 in", "divides by zero", "3/8"),
    ("length", "1 9/8 in", "no mixed number", "1 3/8"),
    ("length", "3/8/2 in", "3/8/2 in", "8 mm"),
    ("length", "1/4-20", "is a thread, not a length", "1/4 in"),
    ("length", "1/4-20 UNC", "is a thread, not a length", "1/4 in"),
    ("length", '1/4"-20', "is a thread, not a length", "1/4 in"),
    ("length", "1/4-20 in", "is a thread, not a length", "1/4 in"),
    ("length", "1/4–20", "is a thread, not a length", "1/4 in"),
    ("length", "3/8–16 in", "is a thread, not a length", "3/8 in"),
    ("length", "#6-32", "is a thread, not a length", "diameter in mm or in"),
    ("length", "10-32", "is a thread, not a length", "diameter in mm or in"),
    ("length", "M5", "is a thread, not a length", "5 mm"),
    ("length", "M3x12", "is a thread, not a length", "3 mm"),
    ("length", "1-3/8 in", "a sum, a difference or a thread", "write 1 3/8 in"),
    ("length", "5-6 mm", "a range or a difference", "write 5..6 mm"),
    ("length", "5 mm - 6 mm", "a range or a difference", "write 5..6 mm"),
    ("length", "8 -20 mm", "a range or a difference", "write 8..20 mm"),
    ("length", "6' 2\"", "more than one number", "one number"),
    ("length", "8mm 9mm", "no unit of length", "8 mm"),
    ("length", "8 mm (measured)", "no unit of length", "8 mm"),
    ("length", "1e400 mm", "exponent beyond reason", "check"),
    ("length", "1e-99999999 mm", "exponent beyond reason", "check"),
    ("length", "9e12 mm", "too large", "check"),
    ("length", "9e9 km", "too large", "check"),
    ("length", "8" * 200 + " mm", "too long", "one number"),
    ("length", "± 0.1 mm", "a number is missing", "write 8 mm"),
    ("length", "8 mm ±", "a number is missing", "write 8 mm"),
    ("length", "8 mm ± -0.1 mm", "a sign of its own", "without sign"),
    ("length", "8 mm +0.2/+0.1 mm", "outside its own band", "two ends"),
    ("length", "6..5 mm", "runs backwards", "smaller end first"),
    ("length", "5..6", "bare number", "write 5 mm"),
    ("length", "1..2..3 mm", "1..2..3 mm", "8 mm"),
    ("heat-loss", "0.7 W/K (0.8..0.9)", "outside its own band", "W/K"),
    ("heat-loss", "0.7 W/K (0.8)", "is no band", "inside the brackets"),
    ("force", "10 kg", "is a mass, not a force", "kgf"),
    ("torque", "4 kg cm", "a mass by a length", "write kgf cm or N cm"),
    ("torque", "4 kg·cm", "a mass by a length", "write kgf cm or N cm"),
    ("torque", "40 oz-in", "a mass by a length", "write ozf in"),
    ("torque", "5 in lb", "a mass by a length", "write lbf in"),
    ("torque", "40 N/cm", "divides a force by a length", "write N cm"),
    ("torque", "40 N", "is a force, not a torque", "40 N cm"),
    ("acceleration", "1 g", "gram here", "9.81 m/s2"),
    ("acceleration", "5 mm/s", "is a speed", "mm/s2"),
    ("time", "5 m", "metre, not minute", "write min"),
    ("turns", "10 Hz", "turns, steps or waves", "rpm"),
    ("temperature", "-300 °C", "below absolute zero", "20 °C"),
    ("temperature", "-273 °C ± 1 K", "below absolute zero", "20 °C"),
    ("temperature", "20 °C ± 5 %", "two ways", "°C"),
    ("ratio", "0.2 ± 5 %", "two ways", "0.15..0.25"),
    ("hardness", "700 HV", "another scale", "HRC"),
    ("hardness", "58-62", "a range or a difference", "58..62 HRC"),
    ("count", "3.5", "not a whole number", "4"),
    ("count", "2..4", "not a whole number", "4"),
    ("count", "1,000", "may mean 1000", "1000"),
    ("current", "1.5 A rms", "'rms' or 'peak' is not expected", "1.5 A"),
    ("length-um", "8 N", "'N' is a force, not a length", "20 um"),
]


@pytest.mark.parametrize(("dimension", "text", "what", "mend"), REFUSED)
def test_a_doubtful_text_is_refused_with_a_way_to_mend_it(dimension: str, text: str, what: str, mend: str) -> None:
    with pytest.raises(QuantityError) as caught:
        parse_figure(text, dimension)
    assert what in caught.value.what
    assert mend in caught.value.mend


def test_an_unknown_dimension_names_the_nearest() -> None:
    with pytest.raises(LookUpError, match="did you mean length"):
        parse_figure("8 mm", "lenght")


@pytest.mark.parametrize("name", sorted(DIMENSIONS))
def test_every_dimension_reads_its_own_example_and_every_spelling(name: str) -> None:
    kind = DIMENSIONS[name]
    parse_figure(kind.example, name)
    for spelling, unit in kind.units.items():
        # 350 is above absolute zero in every unit of temperature
        expected = float(350 * unit.factor + unit.offset)
        assert parse_figure(f"350 {spelling}", name).value == expected, spelling


@pytest.mark.parametrize("name", sorted(DIMENSIONS))
def test_the_canonical_unit_has_factor_one(name: str) -> None:
    kind = DIMENSIONS[name]
    if kind.unit:
        assert parse_figure(f"350 {kind.unit}", name).value == 350.0
