"""Names carry units: every suffix names a dimension, and a figure read for a name is in the unit of its suffix."""

import pytest

from scantling.quantities import DIMENSIONS, UNIT_SUFFIX, dimension_of, file_name_of, parse_figure

# one text per suffix and what the named unit makes of it (definitions of the units)
IN_THE_UNIT_OF_THE_NAME = {
    "wear_um": ("0.02 mm", 20.0),
    "way_km": ("500 m", 0.5),
    "span_mm": ("1 in", 25.4),
    "load_t": ("1.5 kg", 0.0015),
    "carried_kg": ("80 g", 0.08),
    "lead_h": ("90 min", 1.5),
    "lead_days": ("1 week", 7.0),
    "wait_s": ("2 min", 120.0),
    "step_angle_deg": ("0.5 rev", 180.0),
    "spindle_rpm": ("10 rev/s", 600.0),
    "spindle_rev_s": ("600 rpm", 10.0),
    "top_speed_mm_s": ("6 m/min", 100.0),
    "gain_mm_s2": ("1.2 m/s2", 1200.0),
    "holding_nmm": ("0.4 N m", 400.0),
    "belt_g_m": ("0.5 kg/m", 500.0),
    "rotor_kg_mm2": ("54 g cm2", 5.4),
    "strain_stiffness_n": ("15 kN", 15_000.0),
}


@pytest.mark.parametrize(("name", "case"), sorted(IN_THE_UNIT_OF_THE_NAME.items()))
def test_a_figure_is_in_the_unit_that_the_name_ends_in(name: str, case: tuple[str, float]) -> None:
    text, value = case
    dimension = dimension_of(name)
    assert dimension is not None
    assert parse_figure(text, dimension).value == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize(
    ("name", "dimension", "in_files"),
    [
        ("top_speed_mm_s", "speed", "top-speed"),
        ("acceleration_mm_s2", "acceleration", "acceleration"),
        ("loss_w_k", "heat-loss", "loss"),
        ("capacity_j_k", "heat-capacity", "capacity"),
        ("rise_k", "temperature-difference", "rise"),
        ("room_c", "temperature", "room"),
        ("price_minor", "money", "price"),
        ("efficiency_ratio", "ratio", "efficiency"),
        ("stand_ins", None, "stand-ins"),
        ("reference", None, "reference"),
        ("mm", None, "mm"),
        ("_mm", None, "-mm"),
    ],
)
def test_a_name_says_its_dimension_and_its_name_in_files(name: str, dimension: str | None, in_files: str) -> None:
    assert dimension_of(name) == dimension
    assert file_name_of(name) == in_files


def test_every_suffix_names_a_dimension_or_money() -> None:
    assert set(UNIT_SUFFIX.values()) - set(DIMENSIONS) == {"money"}


@pytest.mark.parametrize("suffix", list(UNIT_SUFFIX))
def test_a_longer_suffix_wins_over_the_shorter_that_it_ends_in(suffix: str) -> None:
    assert dimension_of(f"thing{suffix}") == UNIT_SUFFIX[suffix]
    assert file_name_of(f"some_thing{suffix}") == "some-thing"


def test_suffix_and_canonical_unit_spell_the_same() -> None:
    """``_kg_mm2`` is ``kg·mm²``: the suffix without its underscores is the unit without its signs."""
    looks = str.maketrans({"·": "", "²": "2", "³": "3", "µ": "u", "°": "", "/": "", " ": ""})
    spelled_otherwise = {"_per_k": "1k", "_per_mm": "1mm", "_days": "d", "_ratio": "", "_minor": None}
    for suffix, name in UNIT_SUFFIX.items():
        if suffix in spelled_otherwise:
            continue
        assert DIMENSIONS[name].unit.translate(looks).lower() == suffix.replace("_", "")
    assert DIMENSIONS["expansion"].unit.translate(looks).lower() == spelled_otherwise["_per_k"]
    assert DIMENSIONS["per-length"].unit.translate(looks) == spelled_otherwise["_per_mm"]
