"""Shorter questions: a fit, a supply, a swaying portal."""

from __future__ import annotations

from typing import Any

from scantling.api.trials.trial import Ask, Given, Trial, fields


def _fit(given: Given) -> dict[str, Any]:
    motor = {"kind": "motor", "frame-size": "17", "shaft-diameter": given["shaft"]} | fields(
        given, shaft_fit="shaft-fit"
    )
    pulley = {"kind": "pulley", "teeth": "20", "profile": "2 mm round", "bore": given["bore"]}
    pulley |= fields(given, bore_fit="bore-fit")
    return {
        "parts": {"shaft": motor, "bore": pulley},
        "places": {"shaft": {"reference": "shaft"}, "bore": {"reference": "bore"}},
        "mates": {
            "fit": {"kind": "shaft in bore", "a": "shaft.shaft", "b": "bore.bore", "fit": given.get("wanted", "slides")}
        },
    }


FIT = Trial(
    "fit",
    "Does this shaft go into this bore?",
    'scantling try fit --shaft "5 mm" --shaft-fit h7 --bore "5 mm" --bore-fit H8',
    (
        Ask("shaft", "length", "Shaft diameter.", needed=True),
        Ask("bore", "length", "Bore diameter.", needed=True),
        Ask("shaft-fit", "text", "ISO 286 class of the shaft; h7 where nothing is said."),
        Ask("bore-fit", "text", "ISO 286 class of the bore; H8 where nothing is said."),
        Ask("wanted", "text", "slides, locates, press or clamped."),
    ),
    _fit,
    ("MATE-01",),
)


def _supply(given: Given) -> dict[str, Any]:
    volts = given.get("voltage", "24 V")
    rail = {"supply": "supply", "voltage": volts, "loads": [{"power": given["load"], "for": "all loads"}]} | fields(
        given, headroom="headroom"
    )
    return {
        "parts": {"supply": {"kind": "supply", "power": given["power"], "voltage": volts}},
        "places": {"supply": {"reference": "supply"}},
        "rails": {"main": rail},
    }


SUPPLY = Trial(
    "supply",
    "Is this supply large enough?",
    'scantling try supply --power "250 W" --load "186 W"',
    (
        Ask("power", "power", "Rated power of the supply.", needed=True),
        Ask("load", "power", "Sum of what it feeds.", needed=True),
        Ask("headroom", "ratio", "Share of the load kept in reserve."),
        Ask("voltage", "voltage", "Of supply and loads."),
    ),
    _supply,
    ("RAIL-01",),
)


def _sway(given: Given) -> dict[str, Any]:
    stock = {"kind": "sheet", "material": given["material"], "thickness": given["thickness"]} | fields(
        given, modulus="modulus"
    )
    frame = {"panel": "panel", "leg-free": given["leg"], "leg-width": given["width"], "sway-limit": given["limit"]}
    frame |= {"force": given.get("force", "10 N")} | fields(given, legs="legs")
    return {"parts": {"stock": stock}, "places": {"panel": {"reference": "stock"}}, "frames": {"portal": frame}}


SWAY = Trial(
    "sway",
    "How far does a portal of this sheet sway?",
    'scantling try sway --material "birch plywood" --thickness "8 mm" --leg "130 mm" --width "60 mm" --limit "0.25 mm"',
    (
        Ask("material", "text", "As the table of materials names it.", needed=True),
        Ask("thickness", "length", "Thickness of the sheet.", needed=True),
        Ask("leg", "length", "Free length of a leg.", needed=True),
        Ask("width", "length", "Width of a leg.", needed=True),
        Ask("limit", "length", "How far it may sway.", needed=True),
        Ask("force", "force", "Sideways push; 10 N where nothing is said."),
        Ask("legs", "count", "Legs that carry together; 2 where nothing is said."),
        Ask("modulus", "stress", "Young's modulus of the sheet where it is known."),
    ),
    _sway,
    ("FRAME-01",),
)
