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
    return {
        "parts": {"motor": motor, "screw": {"kind": "threaded-rod", "thread": given["thread"], "material": "steel"}},
        "places": {"motor": {"reference": "motor"}, "screw": {"reference": "screw"} | fields(given, length="length")},
        "axes": {"tried": axis},
    }


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
    ),
    _design,
    ("SCREW-01", "SCREW-02", "SCREW-03", "SCREW-04", "SCREW-05", "SCREW-06", "SCREW-07"),
    lambda given: () if "guide-friction" in given else ("no --guide-friction: 2 N taken (common practice, no source)",),
)
