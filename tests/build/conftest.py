"""Small machines made in code, as the files would describe them."""

from __future__ import annotations

import copy
from collections.abc import Callable, Mapping
from typing import Any

import pytest

from scantling.build.case import Case
from scantling.build.reader import Reader
from scantling.build.reference import reference_build
from scantling.model.build import Key
from scantling.model.design import Design
from scantling.model.project import Project
from scantling.model.workshop import Workshop
from scantling.shapes.outline import Outline, rectangle_loop

Described = dict[str, Any]

# A bed on two rods, moved by a belt, with a screw for its height: small, but with every kind of question.
DESIGN: Described = {
    "machine": {"name": "Test bed"},
    "parts": {
        "motor-flat": {
            "kind": "motor",
            "frame-size": "17",
            "shaft-diameter": "5 mm",
            "holding-torque": "0.14 N m",
            "current": "1 A",
            "current-basis": "rms",
            "resistance": "3.5 ohm",
            "tapped-depth": "4.5 mm",
            "mass": "150 g",
            "step-angle": "1.8 deg",
        },
        "motor-small": {
            "kind": "motor",
            "frame-size": "14",
            "shaft-diameter": "5 mm",
            "current": "0.8 A",
            "tapped-depth": "4 mm",
            "mass": "130 g",
        },
        "pulley-20": {"kind": "pulley", "teeth": "20", "profile": "2 mm round", "bore": "5 mm", "mass": "8 g"},
        "pulley-16": {"kind": "pulley", "teeth": "16", "profile": "2 mm round", "bore": "5 mm", "mass": "6 g"},
        "belt-6": {"kind": "belt", "profile": "2 mm round", "width": "6 mm", "line-mass": "8 g/m"},
        "rod-8": {"kind": "rod", "diameter": "8 mm", "material": "steel"},
        "rod-516": {"kind": "rod", "diameter": "5/16 in", "material": "steel"},
        "bushing-ball": {
            "kind": "bushing",
            "lining": "ball",
            "bore": "8 mm",
            "outer-diameter": "15 mm",
            "length": "24 mm",
            "mass": "16 g",
            "drag": "0.3 N",
        },
        "bushing-polymer": {
            "kind": "bushing",
            "lining": "polymer",
            "bore": "8 mm",
            "outer-diameter": "15 mm",
            "length": "24 mm",
            "mass": "6 g",
            "drag": "0.2 N",
        },
        "block": {
            "kind": "printed",
            "meshes": [{"mesh": "block-8.stl", "suits": {"y-rod.diameter": "8 mm"}}],
            "plastics": ["PLA", "PETG"],
            "mass": "40 g",
        },
        "ply-6": {"kind": "sheet", "material": "birch plywood", "thickness": "6 mm", "density": "680 kg/m3"},
        "ply-9": {"kind": "sheet", "material": "birch plywood", "thickness": "9 mm", "density": "680 kg/m3"},
        "petg": {"kind": "filament", "plastic": "PETG", "density": "1270 kg/m3"},
        "plate": {"kind": "thing", "mass": "300 g ± 10 g", "sizes": {"thickness": "3 mm"}},
        "holder": {"kind": "thing", "mass": "9 g", "sizes": {"flange": "4 mm"}},
        "m6-rod": {"kind": "threaded-rod", "thread": "M6", "material": "steel"},
        "inch-rod": {"kind": "threaded-rod", "thread": "1/4-20", "material": "steel"},
        "tr8x8": {"kind": "threaded-rod", "thread": "Tr8x8(P2)", "material": "steel"},
        "heater-80": {"kind": "heater", "power": "80 W", "voltage": "24 V"},
        "heater-120": {"kind": "heater", "power": "120 W", "voltage": "24 V"},
        "supply": {"kind": "supply", "power": "200 W", "voltage": "24 V"},
    },
    "sizes": {"y-span": "front-panel to back-panel - back-panel.thickness"},
    "places": {
        "front-panel": {
            "reference": "ply-9",
            "stand-ins": ["ply-6"],
            "alike": "panels",
            "at": ["0 mm", "0 mm", "0 mm"],
            "face": "y",
        },
        "back-panel": {
            "reference": "ply-9",
            "stand-ins": ["ply-6"],
            "alike": "panels",
            "at": ["0 mm", "300 mm", "0 mm"],
            "face": "y",
        },
        "y-rod": {
            "pieces": ["left", "right"],
            "reference": "rod-8",
            "stand-ins": ["rod-516"],
            "length": "y-span + 2 * back-panel.thickness + 20 mm",
        },
        "y-bearing": {
            "quantity": "3",
            "reference": "bushing-ball",
            "stand-ins": [
                "bushing-polymer",
                {
                    "part": "block",
                    "quantity": "2",
                    "also-fills": ["y-holder"],
                    "brings": {"M3x12 socket head screw": "4"},
                },
            ],
        },
        "y-holder": {"quantity": "3", "reference": "holder"},
        "y-motor": {
            "reference": "motor-flat",
            "stand-ins": ["motor-small"],
            "on": "back-panel",
            "at": ["60 mm", "40 mm", "0 mm"],
        },
        "y-pulley": {"reference": "pulley-20", "stand-ins": ["pulley-16"]},
        "y-belt": {"reference": "belt-6"},
        "bed": {"reference": "plate"},
        "z-screw": {"quantity": "2", "reference": "m6-rod", "stand-ins": ["inch-rod", "tr8x8"], "length": "235 mm"},
        "bed-heater": {"reference": "heater-80", "stand-ins": ["heater-120"], "may-be-empty": "yes"},
        "power": {"reference": "supply"},
    },
    "axes": {
        "y": {
            "drive": "belt",
            "motor": "y-motor",
            "pulley": "y-pulley",
            "belt": "y-belt",
            "axles": "330 mm",
            "clamping": "100 mm",
            "guide": {
                "rods": "y-rod",
                "bearings": "y-bearing",
                "spacing": "110 mm",
                "stops": "18 mm",
                "free": "y-span",
            },
            "moves": ["bed", "y-bearing", "y-holder", {"mass": "80 g ± 20 g", "for": "cable"}],
            "needs": {"speed": "160 mm/s", "acceleration": "2000 mm/s2"},
        },
        "z": {"drive": "screw", "motor": "y-motor", "screw": "z-screw", "screws": "2", "vertical": "yes"},
    },
    "joints": {
        "motor-to-panel": {
            "screw": "socket head M3",
            "through": ["washer", "back-panel.thickness"],
            "into": "y-motor.tapped",
            "count": "4",
        },
        "holder-to-bed": {
            "screw": "socket head M3",
            "through": ["y-holder.flange", "bed.thickness"],
            "into": "lock nut",
            "count": "6",
        },
    },
    "sheets": {
        "back-panel": {
            "outline": "back.dxf",
            "holes": [
                {"for": "y-motor.face", "at": ["60 mm", "40 mm"], "turn": "45 deg"},
                {"for": "y-rod.seat", "at": ["20 mm", "20 mm"], "repeat": [["100 mm", "20 mm"]]},
                {"diameter": "5 mm", "at": ["110 mm", "70 mm"]},
            ],
        },
        "front-panel": {"outline": "front.dxf"},
    },
    "chains": {"gap": {"terms": ["+ y-rod.length", "- back-panel.thickness", {"size": "3 mm", "tolerance": "0.1 mm"}]}},
    "rails": {
        "main": {
            "supply": "power",
            "voltage": "24 V",
            "loads": [
                {"place": "bed-heater"},
                {"place": "y-motor", "duty": "50 %"},
                {"power": "40 W ± 2 W", "for": "head"},
            ],
        }
    },
    "steps": {
        "base": {"title": "Base", "uses": {"front-panel": "all", "back-panel": "all", "y-rod": "left"}},
        "bed": {"title": "Bed", "uses": {"y-rod": "1", "bed": "all"}, "joints": ["holder-to-bed"], "after": ["motor"]},
        "motor": {"title": "Motor", "uses": ["y-motor"], "joints": ["motor-to-panel"], "after": ["base"]},
    },
}
WORKSHOP: Described = {
    "name": "village",
    "currency": "EUR",
    "bits": ["metric 0.5", "3.4"],
    "print-bed": {"width": "200 mm", "depth": "200 mm", "height": "180 mm", "plastics": ["PETG", "PLA"]},
}
OUTLINES = {
    "back-panel": Outline(rectangle_loop(120.0, 90.0, at=(5.0, 5.0))),
    "front-panel": Outline(rectangle_loop(120.0, 90.0)),
}


def changed(described: Described, changes: Mapping[str, Any]) -> Described:
    """Return a copy with some entries set: ``{"places.bed.reference": "plate"}``; None takes an entry out."""
    result = copy.deepcopy(described)
    for path, value in changes.items():
        *way, last = path.split(".")
        at = result
        for step in way:
            at = at.setdefault(step, {})
        if value is None:
            at.pop(last, None)
        else:
            at[last] = value
    return result


def project_of(design: Described, workshop: Described, **files: Any) -> Project:
    """Return the project that these descriptions make, with identifiers set as reading sets them."""
    design = copy.deepcopy(design)
    for section in ("parts", "places", "axes", "joints", "sheets", "rails", "chains", "steps", "mates"):
        for name, entry in design.get(section, {}).items():
            entry["id"] = name
    return Project(Design.model_validate(design), Workshop.model_validate(workshop), **{"outlines": OUTLINES, **files})


MakeCase = Callable[..., Case]


@pytest.fixture(scope="session")
def make_case() -> MakeCase:
    """Return a maker of cases: ``make_case({"places.bed.reference": …}, workshop={…}, meshes=…)``."""

    def make(changes: Mapping[str, Any] = {}, *, workshop: Mapping[str, Any] = {}, **files: Any) -> Case:
        return Case(project_of(changed(DESIGN, changes), changed(WORKSHOP, workshop), **files))

    return make


@pytest.fixture(scope="session")
def read(make_case: MakeCase) -> Callable[..., Reader]:
    """Return a maker of readers of the reference build, with some parts changed: ``read(parts={"y-pulley": …})``."""

    def make(changes: Mapping[str, Any] = {}, *, parts: Mapping[str, str] = {}, **more: Any) -> Reader:
        from scantling.build.reference import carry_over

        case = make_case(changes, **more)
        build = reference_build(case)
        return case.reader(carry_over(case, build, {Key("part", place): part for place, part in parts.items()}))

    return make
