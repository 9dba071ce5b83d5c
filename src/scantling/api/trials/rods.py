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
    guide = {"rods": "rod", "bearings": "bushing", "free": given["span"]}
    guide |= fields(
        given,
        spacing="spacing",
        carriage="carriage",
        stops="stops",
        offset="offset",
        ends="ends",
        sag_limit="sag-limit",
    )
    needs = fields(given, travel="travel", life="life", acceleration="acceleration")
    axis: dict[str, Any] = {"drive": "belt", "pulley": "pulley", "belt": "belt", "guide": guide, "needs": needs}
    axis["moves"] = [{"mass": given["mass"], "for": "what moves"}]
    return {
        "parts": {"rod": rod, "bushing": bushing, **DRIVE},
        "places": {
            "rod": {"reference": "rod", "quantity": "2", "length": given["span"]},
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
        Ask("ends", "text", "supported or clamped."),
        Ask("offset", "length", "Of the drive's pull from the guide's middle."),
        Ask("sag-limit", "length", "How much the height may change along the travel."),
        Ask("acceleration", "acceleration", "Wanted acceleration."),
    ),
    _design,
    ("ROD-01", "ROD-02", "ROD-03", "ROD-04", "ROD-05", "MATE-02"),
)
