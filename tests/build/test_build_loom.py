"""Wires of an invented loom: their lengths, how many there are, and what the places of wire and ends take."""

from __future__ import annotations

import pytest

from scantling.build.case import Case
from scantling.build.demand import place_needs
from scantling.build.loom import copper_mm2, end_pieces, resistance_ohm_km, wire_count, wire_cut_um, wire_length
from scantling.build.reference import reference_build
from scantling.model.build import Build, Key
from scantling.model.design import Design
from scantling.model.kinds import Wire
from scantling.model.project import Project
from scantling.model.workshop import Workshop

PARTS = {
    "wire-15": {"kind": "wire", "area": "1.5 mm2"},
    "wire-075": {"kind": "wire", "area": "0.75 mm2"},
    "cable": {"kind": "wire", "area": "0.25 mm2", "cores": 4},
    "ferrule": {"kind": "terminal"},
    "thing": {"kind": "thing"},
    "ply": {"kind": "thing"},
    "aluminium": {"kind": "thing", "needs-earth": "yes"},
    "coil": {"kind": "wire", "area": "1 mm2"},
}
LOOM = {
    "plus": {
        "from": "supply",
        "to": "board",
        "wire": "feed",
        "length": "reach + 50 mm",
        "from-end": "ferrules",
        "to-end": "ferrules",
    },
    "minus": {"from": "supply", "to": "board", "wire": "feed", "length": "reach + 50 mm", "from-end": "ferrules"},
    "bed": {"from": "board.bed", "to": "bed", "wire": "feed", "length": "1 m", "loop": "130 mm", "count": 2},
    "probe": {"from": "board", "to": "probe", "wire": "signal", "length": "1 m", "from-end": "ferrules"},
    "earth": {
        "from": "supply",
        "to": "frame",
        "wire": "feed",
        "length": "100 mm",
        "carries": "earth",
        "if-needed": "yes",
    },
}


@pytest.fixture
def case() -> Case:
    """Open the loom."""
    places = {
        "supply": {"reference": "thing"},
        "board": {"reference": "thing"},
        "bed": {"reference": "thing"},
        "probe": {"reference": "thing", "may-be-empty": "yes"},
        "frame": {"reference": "ply", "stand-ins": ["aluminium"]},
        "feed": {"reference": "wire-15", "stand-ins": ["wire-075"]},
        "signal": {"reference": "cable"},
        "ferrules": {"reference": "ferrule"},
        "spare-coil": {"reference": "coil"},
    }
    described = {
        "parts": {name: {**part, "id": name} for name, part in PARTS.items()},
        "places": {name: {**place, "id": name} for name, place in places.items()},
        "loom": {name: {**row, "id": name} for name, row in LOOM.items()},
        "sizes": {"reach": "400 mm"},
    }
    design = Design.model_validate({"machine": {"name": "Loom"}, **described})
    return Case(Project(design, Workshop.model_validate({"name": "bench", "currency": "EUR"}), {}, {}))


def build(case: Case, **parts: str) -> Build:
    """Return the reference build with other parts."""
    return reference_build(case).replacing({Key("part", place): part for place, part in parts.items()})


def needs(case: Case, place: str, **parts: str) -> list[tuple[str, str, int, int | None]]:
    """Return what a place takes."""
    found = case.reader(build(case, **parts)).derive(place_needs, place)
    return [(one.part, one.unit, one.amount, one.length_um) for one in found]


def test_a_length_has_its_loops(case):
    reader = case.reader(build(case))
    assert wire_length(reader, "plus").value == pytest.approx(450 * 1.1 + 200)
    assert wire_cut_um(reader, "plus") == 700_000  # to the next 50 mm
    assert wire_length(reader, "bed").value == 1130
    assert wire_cut_um(reader, "bed") == 1_150_000


def test_the_place_of_a_wire_takes_all_its_lengths(case):
    assert needs(case, "feed") == [("wire-15", "length", 2, 1_150_000), ("wire-15", "length", 2, 700_000)]
    thin = needs(case, "feed", feed="wire-075")
    assert [part for part, *_ in thin] == ["wire-075", "wire-075"]


def test_an_earth_wire_comes_with_the_metal(case):
    assert wire_count(case.reader(build(case)), "earth") == 0
    metal = needs(case, "feed", frame="aluminium")
    assert ("wire-15", "length", 1, 350_000) in metal


def test_a_wire_to_nothing_falls_away(case):
    assert needs(case, "signal") == [("cable", "length", 1, 1_300_000)]
    assert needs(case, "signal", probe="") == []


def test_every_core_takes_an_end(case):
    assert end_pieces(case.reader(build(case)), "ferrules") == 2 + 1 + 4
    assert needs(case, "ferrules", probe="") == [("ferrule", "piece", 3, None)]


def test_wire_that_no_loom_names_is_bought_by_the_piece(case):
    assert needs(case, "spare-coil") == [("coil", "piece", 1, None)]


# Source: IEC 60228, 13.3 ohm/km of 1.5 mm², flexible; ASTM B258, 1.309 mm² of gauge 16
@pytest.mark.outside
def test_copper_of_a_wire():
    assert resistance_ohm_km(Wire.model_validate({"area": "1.5 mm2"})) == 13.3
    gauge = Wire.model_validate({"gauge": 16})
    assert copper_mm2(gauge) == pytest.approx(1.309, abs=0.001)
    assert resistance_ohm_km(gauge) == pytest.approx(13.17 * 1.025, rel=0.001)
