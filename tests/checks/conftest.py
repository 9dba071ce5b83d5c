"""Small machines made in code, as the files would describe them, and what one check says of them. All invented."""

from __future__ import annotations

from collections.abc import Mapping
from types import SimpleNamespace
from typing import Any

import pytest

from scantling.build.case import Case
from scantling.build.reference import reference_build
from scantling.checks.all import CHECKS
from scantling.checks.check import Check
from scantling.findings import Finding, NotLookedAt
from scantling.model.build import Key
from scantling.model.design import Design
from scantling.model.project import Project
from scantling.model.workshop import Workshop

Described = dict[str, Any]
SECTIONS = (
    "parts",
    "places",
    "axes",
    "mates",
    "joints",
    "sheets",
    "rails",
    "warmings",
    "frames",
    "chains",
    "steps",
    "clearances",
    "loom",
    "electronics",
    "zones",
)


def motor(torque: str, current: str, resistance: str, inductance: str, **more: str) -> Described:
    """Describe a motor of frame 17."""
    given = {"holding-torque": torque, "current": current, "resistance": resistance, "inductance": inductance}
    usual = {"current-basis": "rms", "rotor-inertia": "25 g cm2", "tapped-depth": "4.5 mm", "mass": "200 g"}
    return {"kind": "motor", "frame-size": "17", "shaft-diameter": "5 mm", **usual, **given, **more}


def bushing(lining: str, friction: str, **more: str) -> Described:
    """Describe a bushing for a rod of 8 mm."""
    sizes = {"bore": "8 mm", "outer-diameter": "15 mm", "length": "24 mm", "drag": "0.3 N", "mass": "16 g"}
    return {"kind": "bushing", "lining": lining, "friction": friction, **sizes, **more}


PARTS: Described = {
    "motor-flat": motor("0.14 N m", "1.0 A", "3.5 ohm", "4.0 mH"),
    "motor-mid": motor("0.26 N m", "1.3 A", "2.4 ohm", "3.0 mH"),
    "motor-full": motor("0.40 N m", "1.5 A", "1.9 ohm", "3.6 mH"),
    "pulley-20": {"kind": "pulley", "teeth": "20", "profile": "2 mm round", "bore": "5 mm", "belt-width": "7 mm"},
    "pulley-16": {"kind": "pulley", "teeth": "16", "profile": "2 mm round", "bore": "5 mm", "belt-width": "7 mm"},
    "belt-6": {"kind": "belt", "profile": "2 mm round", "width": "6 mm"},
    "rod-hard": {"kind": "rod", "diameter": "8 mm", "fit": "h6", "material": "steel", "surface-hardness": "60 HRC"},
    "rod-soft": {"kind": "rod", "diameter": "8 mm", "fit": "h9", "material": "steel", "surface-hardness": "20 HRC"},
    "rod-inch": {"kind": "rod", "diameter": "5/16 in", "fit": "h6", "material": "steel", "surface-hardness": "20 HRC"},
    "ball": bushing("ball", "0.005", **{"dynamic-load": "265 N", "ball-diameter": "1.5 mm"}),
    "polymer": bushing("polymer", "0.25"),
    "bed": {"kind": "thing", "mass": "972 g"},
    "m6": {"kind": "threaded-rod", "thread": "M6", "material": "steel"},
    "tr8x2": {"kind": "threaded-rod", "thread": "Tr8x2", "material": "steel"},
    "tr8x8": {"kind": "threaded-rod", "thread": "Tr8x8(P2)", "material": "steel"},
    "inch-screw": {"kind": "threaded-rod", "thread": "1/4-20", "material": "steel"},
    "nut-m6": {"kind": "drive-nut", "thread": "M6", "mass": "5 g"},
    "nut-tr8x2": {"kind": "drive-nut", "thread": "Tr8x2", "mass": "15 g"},
    "nut-tr8x8": {"kind": "drive-nut", "thread": "Tr8x8(P2)", "mass": "15 g"},
    "coupler-5-6": {"kind": "coupler", "motor-bore": "5 mm", "screw-bore": "6 mm"},
    "coupler-5-8": {"kind": "coupler", "motor-bore": "5 mm", "screw-bore": "8 mm"},
    "bending-5-6": {"kind": "coupler", "motor-bore": "5 mm", "screw-bore": "6 mm", "body": "bending"},
    "rigid-5-6": {"kind": "coupler", "motor-bore": "5 mm", "screw-bore": "6 mm", "body": "rigid"},
    "tube-5": {
        "kind": "coupler",
        "motor-bore": "5 mm",
        "screw-bore": "5 mm",
        "body": "tube",
        "outer-diameter": "9 mm",
        "span": "8 mm",
    },
    "gantry": {"kind": "thing", "mass": "1.05 kg"},
    "rod-10": {"kind": "rod", "diameter": "10 mm", "fit": "h6", "material": "steel", "surface-hardness": "60 HRC"},
    "ball-10": bushing("ball", "0.005", bore="10 mm", length="29 mm", mass="30 g"),
}

BELT: Described = {
    "drive": "belt",
    "motor": "y-motor",
    "pulley": "y-pulley",
    "belt": "y-belt",
    "supply-voltage": "24 V",
    "axles": "330 mm",
    "clamping": "30 mm",
    "guide": {
        "rods": "y-rod",
        "bearings": "y-bearing",
        "spacing": "110 mm",
        "carriage": "134 mm",
        "stops": "18 mm",
        "free": "332 mm",
        "tool": "stands",
        "offset": "20 mm",
    },
    "moves": ["bed", "y-bearing", {"mass": "450 g", "for": "print"}],
    "needs": {
        "travel": "180 mm",
        "speed": "160 mm/s",
        "acceleration": "2000 mm/s2",
        "resolution": "0.02 mm",
        "life": "500 km",
    },
}

SCREW: Described = {
    "drive": "screw",
    "motor": "z-motor",
    "motor-count": 2,
    "screw": "z-screw",
    "nut": "z-nut",
    "coupler": "z-coupler",
    "screws": 2,
    "free": "220 mm",
    "vertical": "yes",
    "supply-voltage": "24 V",
    "guide": {"rods": "z-rod", "bearings": "z-bearing", "spacing": "44 mm", "free": "220 mm", "stops": "5 mm"},
    "moves": ["gantry", "z-bearing", "z-nut"],
    "needs": {"travel": "140 mm", "speed": "6 mm/s", "layers": ["0.2 mm", "0.25 mm"], "holds-itself": "yes"},
}


def options(reference: str, *stand_ins: str, **more: Any) -> Described:
    """Describe a place by its reference part and its stand-ins."""
    return {"reference": reference, "stand-ins": list(stand_ins), **more}


def changed(described: Mapping[str, Any], changes: Mapping[str, Any]) -> Described:
    """Return a description with some entries changed, nested ones by ``guide.spacing``; None takes one out."""
    result = dict(described)
    for path, value in changes.items():
        first, _, rest = path.partition(".")
        if rest:
            result[first] = changed(result[first], {rest: value})
        elif value is None:
            result.pop(first, None)
        else:
            result[first] = value
    return result


def belt_case(axis: Mapping[str, Any] | None = None, parts: Mapping[str, Any] | None = None, **more: Any) -> Case:
    """Open a moving bed on a belt; ``axis`` and ``parts`` change its description."""
    places = {
        "y-motor": options("motor-full", "motor-mid", "motor-flat"),
        "y-pulley": options("pulley-20", "pulley-16"),
        "y-belt": "belt-6",
        "y-rod": options("rod-hard", "rod-soft", "rod-inch", quantity=2, length="352 mm"),
        "y-bearing": options("ball", "polymer", quantity=3),
        "bed": "bed",
    }
    places |= more.pop("places", {})
    return case_of(parts=PARTS | dict(parts or {}), places=places, axes={"y": changed(BELT, axis or {})}, **more)


def screw_case(axis: Mapping[str, Any] | None = None, parts: Mapping[str, Any] | None = None, **more: Any) -> Case:
    """Open a gantry on two screws; ``axis`` and ``parts`` change its description."""
    places = {
        "z-motor": options("motor-full", "motor-flat", quantity=2),
        "z-screw": options("m6", "tr8x2", "tr8x8", "inch-screw", quantity=2, length="235 mm"),
        "z-nut": options("nut-m6", "nut-tr8x2", "nut-tr8x8", quantity=2),
        "z-coupler": options("coupler-5-6", "coupler-5-8", "bending-5-6", "rigid-5-6", "tube-5", quantity=2),
        "gantry": "gantry",
        "z-rod": options("rod-10", quantity=2, length="250 mm"),
        "z-bearing": options("ball-10", quantity=4),
    }
    places |= more.pop("places", {})
    return case_of(parts=PARTS | dict(parts or {}), places=places, axes={"z": changed(SCREW, axis or {})}, **more)


REACH: Described = {
    "x": {"reach": {"start": "10 mm", "over": "200 mm"}},
    "y": {
        "reach": {"start": "10 mm", "over": "200 mm", "lost-low": "clip.reach", "lost-high": "clip.reach"},
        "home": {"end": "low", "speed": "40 mm/s", "trips": "3 mm", "give": "1.6 mm"},
    },
    "z": {"reach": {"start": "0 mm"}, "home": {"end": "low", "speed": "4 mm/s", "trips": "1 mm", "give": "1.6 mm"}},
}
CLEARANCES: Described = {
    "duct-over-clips": {"axis": "y", "gap": "8 mm - clip.height"},
    "clamp-to-idler": {"axis": "y", "gap": "193 mm", "closes": "high"},
    "ends-low": {"axis": "z", "gap": "3 mm", "closes": "low"},
}


def span_case(
    changes: Mapping[str, Any] | None = None,
    gaps: Mapping[str, Any] | None = None,
    parts: Mapping[str, Any] | None = None,
    **more: Any,
) -> Case:
    """Open a machine that reaches along x, y and z; ``changes`` alter its axes, ``gaps`` its clearances."""
    belted, screwed = {**BELT, "moves": ["bed"]}, changed(SCREW, {"needs.acceleration": "60 mm/s2"})
    axes: Described = {name: {**(screwed if name == "z" else belted), **reach} for name, reach in REACH.items()}
    clips = {"clip": {"kind": "thing", "sizes": {"reach": "10 mm", "height": "5 mm"}}}
    flat = {"clip-flat": {"kind": "thing", "sizes": {"reach": "8 mm", "height": "3 mm"}}}
    places = {
        "y-motor": "motor-full",
        "y-pulley": "pulley-20",
        "y-belt": "belt-6",
        "y-rod": {"reference": "rod-hard", "quantity": 2, "length": "352 mm"},
        "y-bearing": {"reference": "ball", "quantity": 3},
        "bed": "bed",
        "z-motor": {"reference": "motor-full", "quantity": 2},
        "z-screw": {"reference": "tr8x2", "quantity": 2, "length": "235 mm"},
        "z-nut": {"reference": "nut-tr8x2", "quantity": 2},
        "z-coupler": {"reference": "coupler-5-8", "quantity": 2},
        "gantry": "gantry",
        "z-rod": {"reference": "rod-10", "quantity": 2, "length": "250 mm"},
        "z-bearing": {"reference": "ball-10", "quantity": 4},
        "clip": {**options("clip", "clip-flat"), "may-be-empty": "yes"},
    }
    found = changed({"axes": axes, "clearances": CLEARANCES}, {f"axes.{p}": v for p, v in (changes or {}).items()})
    found["clearances"] = changed(found["clearances"], gaps or {})
    return case_of(parts=PARTS | clips | flat | dict(parts or {}), places=places, **found, **more)


def wired_case() -> Case:
    """Open the electric half of a printer: supply, board, bed, motor, loom, mains and earth."""
    parts = {
        "supply-150": {"kind": "supply", "power": "150 W", "voltage": "24 V", "inrush": "40 A", "needs-earth": "yes"},
        "supply-350": {
            "kind": "supply",
            "power": "350 W",
            "voltage": "24 V",
            "inrush": "60 A",
            "limit-current": "17 A",
        },
        "board": {
            "kind": "board",
            "ports": [
                {"does": "driver", "current": "1.4 A", "plug": "four"},
                {"does": "heater", "current": "10 A", "voltage": "24 V", "plug": "bare"},
            ],
            "mounting": {"width": "78 mm", "depth": "36 mm", "hole": "3.4 mm"},
        },
        "heater-120": {"kind": "heater", "power": "120 W", "voltage": "24 V", "stands": "150 °C", "plug": "bare"},
        "heater-240": {"kind": "heater", "power": "240 W", "voltage": "24 V", "stands": "150 °C", "plug": "tab"},
        "plate": {"kind": "thing", "heat-capacity": "539 J/K", "material": "aluminium"},
        "cork": {"kind": "thing", "material": "cork", "sizes": {"thickness": "6 mm"}, "stands": "140 °C"},
        "motor": motor("0.26 N m", "1.3 A", "2.4 ohm", "3.0 mH", plug="four"),
        "wire-15": {"kind": "wire", "area": "1.5 mm2"},
        "wire-075": {"kind": "wire", "area": "0.75 mm2"},
        "plug": {"kind": "terminal", "form": "plug", "current": "15 A"},
        "fuse": {"kind": "fuse", "current": "6.3 A"},
        "cut-out": {"kind": "cut-out", "trips": "128 °C"},
        "inlet": {"kind": "thing"},
        "ply": {"kind": "sheet", "material": "birch plywood", "thickness": "6 mm"},
    }
    fed = {"wire": "wire", "length": "500 mm", "rail": "main", "to-end": "plug"}
    corners = [["104 mm", "12 mm"], ["26 mm", "48 mm"], ["104 mm", "48 mm"]]
    bed = {"heater": "heater", "stores": ["plate"], "face": "40000 mm2", "insulation": "cork", "near": ["cork"]}
    return case_of(
        workshop={"mains-voltage": "230 V"},
        parts=parts,
        places={
            "supply": options("supply-350", "supply-150"),
            "heater": options("heater-120", "heater-240"),
            "wire": options("wire-15", "wire-075"),
            "sheet": "ply",
            **{one: one for one in ("board", "plate", "cork", "motor", "plug", "fuse", "cut-out", "inlet")},
        },
        rails={
            "main": {
                "supply": "supply",
                "voltage": "24 V",
                "loads": [{"place": "heater", "duty": "50 %"}],
                "inlet": "inlet",
                "mains-fuse": "fuse",
            }
        },
        warmings={"bed": {**bed, "cut-out": "cut-out", "room": "20 °C", "target": "90 °C", "within": "9 min"}},
        loom={
            "bed": {"from": "board.bed", "to": "heater", "load": "heater", **fed},
            "line": {"from": "inlet", "to": "supply", "carries": "mains", **fed},
            "earth": {"from": "inlet", "to": "supply", "carries": "earth", **fed},
        },
        electronics={
            "main": {
                "board": "board",
                "rail": "main",
                "sheet": "sheet",
                "joint": "board",
                "wants": [{"does": "driver", "for": "motor"}, {"does": "heater", "for": "heater"}],
            }
        },
        sheets={
            "sheet": {
                "outline": "s.svg",
                "holes": [{"for": "joint:board", "at": ["26 mm", "12 mm"], "repeat": corners}],
            }
        },
        joints={"board": {"screw": "socket head M3", "through": ["sheet.thickness"], "into": "lock nut"}},
        chains={
            "hot": {"terms": [{"size": "200 mm", "made-of": "plate"}], "warmer": "70 K", "at-most": "201 mm"},
        },
        steps={"one": {"title": "Mains", "uses": ["inlet", "fuse"], "caution": "By a competent person."}},
    )


def design_of(sections: Mapping[str, Any]) -> Design:
    """Read a design from its sections; a place may be given as the name of its reference part."""
    read = dict(sections)
    read["places"] = {n: {"reference": p} if isinstance(p, str) else p for n, p in read.get("places", {}).items()}
    for name in SECTIONS:
        read[name] = {key: {**entry, "id": key} for key, entry in read.get(name, {}).items()}
    return Design.model_validate({"machine": {"name": "Test"}, **read})


def case_of(workshop: Described | None = None, outlines: Any = None, meshes: Any = None, **sections: Any) -> Case:
    """Open a small machine in a small workshop."""
    shop = Workshop.model_validate({"name": "bench", "currency": "EUR", **(workshop or {})})
    return Case(Project(design_of(sections), shop, outlines or {}, meshes or {}))


def said(case: Case, code: str, subject: str, **chosen: str) -> Finding | NotLookedAt:
    """Return what a check says of the reference build with other parts at some places (``y_rod="rod-soft"``)."""
    answers = {Key("part", place.replace("_", "-")): part for place, part in chosen.items()}
    build = reference_build(case).replacing(answers)
    check = next(check for check in CHECKS if check.code == code)
    assert subject in check.subjects(case.project.design)
    return check.run(case.reader(build), subject)


def a_check() -> Check:
    """Return a check that stands for any."""
    return Check("TEST-01", "A rule", lambda _: ("axis y",), lambda *_: pytest.fail("not to be run"), "none")


@pytest.fixture(scope="session")
def bench() -> SimpleNamespace:
    """Return what a test needs to make a machine and to ask a check."""
    return SimpleNamespace(
        case=case_of,
        belt=belt_case,
        screw=screw_case,
        wired=wired_case,
        span=span_case,
        options=options,
        parts=PARTS,
        said=said,
        reference=reference_build,
        a_check=a_check,
    )
