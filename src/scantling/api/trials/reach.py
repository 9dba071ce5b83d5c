"""What a tool reaches along one axis, and whether it stops in time behind its switch."""

from __future__ import annotations

from typing import Any

from scantling.api.trials.rods import DRIVE
from scantling.api.trials.trial import Ask, Given, Trial, fields


def _design(given: Given) -> dict[str, Any]:
    guide = {"rods": "rod", "bearings": "bushing", "free": given["span"], "carriage": given["carriage"]}
    axis: dict[str, Any] = {
        "drive": "belt",
        "pulley": "pulley",
        "belt": "belt",
        "guide": guide | {"stops": given.get("stops", "0 mm")},
        "needs": fields(given, travel="wanted", acceleration="acceleration"),
        "reach": {"start": given["start"]}
        | fields(given, over="bed", lost_low="lost-low", lost_high="lost-high", wanted="wanted"),
    }
    home = fields(given, speed="home-speed", trips="trips", give="give")
    return {
        "parts": {
            "rod": {"kind": "rod", "diameter": "8 mm"},  # neither rod nor bushing is read here
            "bushing": {"kind": "bushing", "lining": "ball", "bore": "8 mm"},
            **DRIVE,
        },
        "places": {name: {"reference": name} for name in ("rod", "bushing", *DRIVE)},
        "axes": {"tried": axis | ({"home": home} if home else {})},
    }


TRIAL = Trial(
    "reach",
    "How much of the bed does the tool reach, and does it stop in time?",
    'scantling try reach --span "332 mm" --carriage "134 mm" --stops "18 mm" --start "10 mm" --bed "200 mm" '
    '--lost-low "10 mm" --lost-high "10 mm" --wanted "180 mm"',
    (
        Ask("span", "length", "Free length of the rods between their holders.", needed=True),
        Ask("carriage", "length", "Length of the carriage over all.", needed=True),
        Ask("start", "length", "Tool from the bed's edge with the axis at its low end; below 0 outside.", needed=True),
        Ask("stops", "length", "What stops and switch take; nothing where it is not said."),
        Ask("bed", "length", "Length of the bed along the axis."),
        Ask("lost-low", "length", "What clips and rims take at the low edge."),
        Ask("lost-high", "length", "What clips and rims take at the high edge."),
        Ask("wanted", "length", "What must be reached."),
        Ask("home-speed", "speed", "Speed at which the axis runs into its switch."),
        Ask("acceleration", "acceleration", "Acceleration of the axis."),
        Ask("trips", "length", "How far before the hard stop the switch trips."),
        Ask("give", "length", "How far the switch's lever goes on from there."),
    ),
    _design,
    ("ROD-05", "SPAN-01", "SPAN-04"),
)
