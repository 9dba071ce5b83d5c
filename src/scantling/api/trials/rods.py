"""A pair of guide rods with bushings."""

from __future__ import annotations

from typing import Any

from scantling.api.trials.trial import Ask, Given, Trial, fields

DRIVE = {  # an axis has a drive; the questions about rods do not read it
    "pulley": {"kind": "pulley", "teeth": "20", "profile": "2 mm round", "bore": "5 mm"},
    "belt": {"kind": "belt", "profile": "2 mm round", "width": "6 mm"},
}


def _design(given: Given) -> dict[str, Any]:
    rod = {"kind": "rod", "diameter": given["diameter"], "material": "steel"} | fields(
        given, surface_hardness="hardness", fit="fit"
    )
    bushing = {"kind": "bushing", "lining": given.get("lining", "ball"), "bore": given.get("bore", given["diameter"])}
    bushing |= fields(given, dynamic_load="load-rating", length="bushing-length")
    guide: dict[str, Any] = {"rods": "rod", "bearings": "bushing", "free": given["span"]}
    guide |= fields(
        given,
        spacing="spacing",
        carriage="carriage",
        stops="stops",
        offset="offset",
        ends="ends",
        sag_limit="sag-limit",
        grip="grip",
        fixity="fixity",
        apart="apart",
        load_offset="load-offset",
        parallel="parallel",
    )
    seats = fields(given, askew="seat-askew", slack="seat-slack")
    if seats:
        guide["seats"] = seats | {"held": "aligning" if "seat-slack" in given else "rigid"}
    needs = fields(given, travel="travel", life="life", acceleration="acceleration", speed="speed")
    axis: dict[str, Any] = {"drive": "belt", "pulley": "pulley", "belt": "belt", "guide": guide, "needs": needs}
    axis["moves"] = [{"mass": given["mass"], "for": "what moves"}]
    return {
        "parts": {"rod": rod, "bushing": bushing, **DRIVE},
        "places": {
            "rod": {"reference": "rod", "quantity": "2", "length": given.get("length", given["span"])},
            "bushing": {"reference": "bushing", "quantity": given.get("bushings", "4")},
            **{name: {"reference": name} for name in DRIVE},
        },
        "axes": {"tried": axis},
    }


TRIAL = Trial(
    "rods",
    "Do these rods sag, wear, bind, reach?",
    'scantling try rods --diameter "8 mm" --span "350 mm" --mass "1.5 kg" --spacing "110 mm" --hardness "60 HRC"',
    (
        Ask("diameter", "length", "Rod diameter.", needed=True),
        Ask("span", "length", "Free length between the holders.", needed=True),
        Ask("mass", "mass", "What rides on the rods.", needed=True),
        Ask("spacing", "length", "Between the outermost bushings on one rod."),
        Ask("carriage", "length", "Length of the carriage over all."),
        Ask("stops", "length", "What stops and switch take."),
        Ask("travel", "length", "Wanted travel."),
        Ask("lining", "text", "ball, polymer or bronze."),
        Ask("bushings", "count", "Number of bushings; 4 where nothing is said."),
        Ask("bore", "length", "Bore of the bushings."),
        Ask("bushing-length", "length", "Length of one bushing."),
        Ask("load-rating", "force", "Dynamic load rating of one bushing."),
        Ask("hardness", "hardness", "Hardness of the rod's surface."),
        Ask("fit", "text", "ISO 286 class of the rod (h6, g6 …)."),
        Ask("life", "text", "Wanted travel life, 500 km say."),
        Ask("ends", "text", "supported, clamped, or held by holders that give."),
        Ask("length", "length", "Length of the rod, with what its holders grip."),
        Ask("grip", "length", "Length that each holder grips."),
        Ask("fixity", "ratio", "Of held ends, as measured: 0 they turn freely, 1 not at all."),
        Ask("apart", "length", "Between the two rods."),
        Ask("load-offset", "length", "Of the load from the middle between the rods."),
        Ask("parallel", "length", "By how much the rods' distance differs from end to end."),
        Ask("seat-askew", "length", "How far a bushing's seat may lie askew over its length."),
        Ask("seat-slack", "length", "How much wider the seats are at their ends than in their middle."),
        Ask("speed", "speed", "Wanted speed."),
        Ask("offset", "length", "Of the drive's pull from the guide's middle."),
        Ask("sag-limit", "length", "How much the height may change along the travel."),
        Ask("acceleration", "acceleration", "Wanted acceleration."),
    ),
    _design,
    (*(f"ROD-0{number}" for number in range(1, 10)), "MATE-02"),
)
