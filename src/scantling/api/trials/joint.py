"""A screw in its joint: which length, how tight, and does what it presses on and is held by bear that?"""

from __future__ import annotations

from typing import Any

from scantling.api.trials.trial import Ask, Given, Trial, fields

WASHERS = {"yes": "washer", "plain": "washer", "large": "large washer"}


def _joint(given: Given) -> dict[str, Any]:
    layers: list[Any] = [{"size": "stack.grip"}] if "material" in given else [{"thickness": given["grip"]}]
    if "washer" in given:
        under = WASHERS.get(given["washer"], "washer")
        layers = [under, *layers, under] if "material" in given and "nut" in given else [*layers, under]
        if "material" in given and "nut" not in given:
            layers = layers[::-1]
    into: Any = (
        f"{given['nut']} nut"
        if "nut" in given
        else {"place": "body", "depth": "body.depth", "holds": given.get("in", "metal")}
    )
    body = {"kind": "thing", "sizes": {"depth": given.get("depth", "0 mm")}} | fields(given, material="of")
    stack = {"kind": "thing", "sizes": {"grip": given["grip"]}} | fields(given, material="material")
    joint = {"screw": given["screw"], "through": layers, "into": into}
    joint |= fields(given, tighten="torque", grade="grade", pull="pull", slide="slide")
    return {
        "parts": {"body": body, "stack": stack},
        "places": {"body": {"reference": "body"}, "stack": {"reference": "stack"}},
        "joints": {"joint": joint},
    }


TRIAL = Trial(
    "joint",
    "Which screw does this stack take, and how tight may it be drawn?",
    'scantling try joint --screw "socket head M4" --grip "9 mm" --nut lock --material "birch plywood" --washer large',
    (
        Ask("screw", "text", "Head and thread, socket head M3 say.", needed=True),
        Ask("grip", "length", "Everything clamped.", needed=True),
        Ask("nut", "text", "plain, lock or thin; else give --depth."),
        Ask("depth", "length", "Depth of a tapped hole or insert."),
        Ask("in", "text", "metal, insert, plastic, panel or panel edge."),
        Ask("of", "text", "What the thread is in, PETG or birch plywood say."),
        Ask("washer", "text", "yes for plain washers, or large."),
        Ask("material", "text", "What lies under head and nut, birch plywood say."),
        Ask("torque", "torque", "Tightening torque; by feel where nothing is said."),
        Ask("grade", "text", "Property class of the screw; the lowest where nothing is said."),
        Ask("pull", "force", "Force that pulls each screw's joint open."),
        Ask("slide", "force", "Sideways force on each screw."),
    ),
    _joint,
    ("JOINT-01", "JOINT-04", "JOINT-05", "JOINT-06", "JOINT-08"),
)
