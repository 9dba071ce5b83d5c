"""One screw axis."""

from __future__ import annotations

from typing import Any

from scantling.api.trials.trial import Ask, Given, Trial, fields


def _design(given: Given) -> dict[str, Any]:
    motor = {"kind": "motor", "frame-size": "17", "shaft-diameter": "5 mm"} | fields(given, holding_torque="motor")
    needs = fields(given, speed="speed") | ({"layers": [given["layer"]]} if "layer" in given else {})
    axis: dict[str, Any] = {
        "drive": "screw",
        "motor": "motor",
        "screw": "screw",
        "vertical": "yes",
        "moves": [{"mass": given["mass"], "for": "what moves"}],
        "needs": needs | {"holds-itself": "yes"},
        "ends": given.get("ends", "fixed-free"),
        "friction": given.get("guide-friction", "2 N"),
    }
    axis |= fields(given, screw_friction="friction", free="length", microsteps="microsteps")
    axis |= fields(given, screws="screws", motor_count="screws")
    screw = {"kind": "threaded-rod", "thread": given["thread"], "material": "steel"} | fields(given, bow_300="bow")
    parts = {"motor": motor, "screw": screw} | _coupler(given) | _rods(given)
    places = {name: {"reference": name} for name in parts}
    places["screw"] |= fields(given, length="length", quantity="screws")
    if "tube" in given:
        axis["coupler"] = "coupler"
    if "rods" in given and "length" in given:
        places["rods"]["quantity"] = given.get("screws", "1")
        axis["guide"] = {"rods": "rods", "bearings": "bushing", "free": given["length"]}
    return {"parts": parts, "places": places, "axes": {"tried": axis}}


def _coupler(given: Given) -> dict[str, Any]:
    """A soft tube with the bore of the motor's shaft; none where none is given."""
    if "tube" not in given:
        return {}
    tube = {"kind": "coupler", "motor-bore": "5 mm", "screw-bore": "5 mm", "body": "tube", "span": "8 mm"}
    return {"coupler": tube | fields(given, outer_diameter="tube", span="tube-span", modulus="tube-modulus")}


def _rods(given: Given) -> dict[str, Any]:
    """Guide rods as free as the screw, one beside each."""
    if "rods" not in given or "length" not in given:
        return {}
    rod = {"kind": "rod", "diameter": given["rods"], "material": "steel"}
    return {"rods": rod, "bushing": {"kind": "bushing", "lining": "ball", "bore": given["rods"]}}


TRIAL = Trial(
    "screw",
    "Does this screw lift, hold, stay straight and run fast enough?",
    'scantling try screw --thread "Tr8x8(P2)" --mass "1.2 kg" --motor "0.26 N m" --length "300 mm" --speed "10 mm/s"',
    (
        Ask("thread", "text", "Thread: M8, Tr8x8(P2), 1/4-20 …", needed=True),
        Ask("mass", "mass", "What hangs on the screw.", needed=True),
        Ask("motor", "torque", "Holding torque of the motor.", needed=True),
        Ask("speed", "speed", "Wanted speed."),
        Ask("length", "length", "Free length of the screw."),
        Ask("ends", "text", "fixed-free, supported-supported, fixed-supported or fixed-fixed."),
        Ask("friction", "ratio", "Friction of nut on screw, with its band if known."),
        Ask("guide-friction", "force", "What the guide holds back; 2 N where nothing is said."),
        Ask("layer", "length", "A layer height to test against full steps."),
        Ask("microsteps", "count", "Microsteps in a full step."),
        Ask("screws", "count", "Screws that share the load, each with its motor; one where nothing is said."),
        Ask("rods", "length", "Diameter of the guide rods, one beside each screw and as long."),
        Ask("bow", "length", "How far the middle of 300 mm of the screw lies beside a straight line."),
        Ask("tube", "length", "Outside diameter of a soft tube of 5 mm bore that couples motor and screw."),
        Ask("tube-span", "length", "Free length of that tube; 8 mm where nothing is said."),
        Ask("tube-modulus", "stress", "Modulus of that tube."),
    ),
    _design,
    tuple(f"SCREW-{number:02}" for number in range(1, 14)),
    lambda given: () if "guide-friction" in given else ("no --guide-friction: 2 N taken (common practice, no source)",),
)
