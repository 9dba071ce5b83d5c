"""Heat and wires: warming up and a switch stuck on, a plastic where it is warm, a wire with its fuse."""

from __future__ import annotations

from typing import Any

from scantling.api.trials.trial import Ask, Given, Trial, fields


def _warming(given: Given) -> dict[str, Any]:
    store = {"kind": "thing", "heat-capacity": given["store"]} | fields(given, stands="stands")
    heater = {"kind": "heater", "power": given["power"], "voltage": given.get("voltage", "24 V")}
    warming: dict[str, Any] = {"heater": "heater", "stores": ["store"], "room": given.get("room", "20 °C")}
    warming |= {"target": given["target"], "within": given["within"]} | fields(given, loss="loss")
    parts: dict[str, Any] = {"heater": heater, "store": store}
    if "stands" in given:
        warming["near"] = ["store"]
    if "cut-out" in given:
        parts["cut-out"] = {"kind": "cut-out", "trips": given["cut-out"]}
        warming["cut-out"] = "cut-out"
    places = {name: {"reference": name} for name in parts}
    return {"parts": parts, "places": places, "warmings": {"bed": warming}}


WARMING = Trial(
    "warming",
    "How long does this heater take, does it get there, and what if its switch sticks?",
    'scantling try warming --power "120 W" --store "539 J/K" --loss "0.7 W/K" --target "90 °C" --within "8 min" '
    '--stands "140 °C" --cut-out "128 °C"',
    (
        Ask("power", "power", "Power of the heater.", needed=True),
        Ask("store", "heat-capacity", "Heat store of all that is warmed.", needed=True),
        Ask("target", "temperature", "Wanted temperature.", needed=True),
        Ask("within", "time", "Wanted time.", needed=True),
        Ask("loss", "heat-loss", "Loss per kelvin, with its band."),
        Ask("room", "temperature", "Room temperature; 20 °C where nothing is said."),
        Ask("voltage", "voltage", "Of the heater."),
        Ask("stands", "temperature", "What the weakest thing near the heater stands: glue, insulation, cable."),
        Ask("cut-out", "temperature", "At which an independent cut-out opens."),
    ),
    _warming,
    ("WARM-01", "WARM-02", "WARM-03"),
)


def _plastic(given: Given) -> dict[str, Any]:
    plastic = given["plastic"]
    beside = [word.strip() for word in given.get("beside", "").split(",") if word.strip()]
    zone: dict[str, Any] = {"beside": beside} | fields(given, temperature="temperature", room="room")
    part = {"kind": "printed", "meshes": [], "plastics": [plastic], "zone": "here"}
    filament = {"kind": "filament", "plastic": plastic, "density": "1.2 g/cm3"}
    return {
        "parts": {"part": part, "filament": filament},
        "places": {"part": {"reference": "part"}},
        "zones": {"here": zone},
    }


PLASTIC = Trial(
    "plastic",
    "Does this plastic stand where it sits?",
    "scantling try plastic --plastic PETG --beside motor",
    (
        Ask("plastic", "text", "PLA, PETG, ABS, ASA or PC.", needed=True),
        Ask(
            "beside", "text", "What makes it warm: motor, bed, carriage, hot end, enclosure, sun; several with commas."
        ),
        Ask("temperature", "temperature", "As measured there."),
        Ask("room", "temperature", "Of the room; 25 °C where nothing is said."),
    ),
    _plastic,
    ("PRINT-03",),
)


def _wire(given: Given) -> dict[str, Any]:
    volts = given.get("voltage", "24 V")
    wire = {"kind": "wire"} | fields(given, area="area", gauge="gauge", insulation="insulation")
    supply = {"kind": "supply", "power": given["supply"], "voltage": volts} | fields(given, limit_current="limit")
    row = {"from": "supply", "to": "load", "wire": "wire", "length": given["length"], "rail": "main", "loop": "0 mm"}
    row |= {"current": given["current"]} | fields(given, bundled="bundled", room="room")
    parts: dict[str, Any] = {"supply": supply, "load": {"kind": "thing"}, "wire": wire}
    if "fuse" in given:
        parts["fuse"] = {"kind": "fuse", "current": given["fuse"]}
        row["fuse"] = "fuse"
    if "plug" in given:
        parts["plug"] = {"kind": "terminal", "form": "plug", "current": given["plug"]}
        row["to-end"] = "plug"
    rail = {"supply": "supply", "voltage": volts, "loads": []}
    return {
        "parts": parts,
        "places": {name: {"reference": name} for name in parts},
        "rails": {"main": rail},
        "loom": {"wire": row},
    }


WIRE = Trial(
    "wire",
    "Does this wire carry its current, and what if there is a fault behind it?",
    'scantling try wire --area "1.5 mm2" --current "10 A" --length "1 m" --supply "350 W" --fuse "15 A"',
    (
        Ask("current", "current", "Steady current.", needed=True),
        Ask("length", "length", "One way.", needed=True),
        Ask("supply", "power", "Rated power of the supply that feeds it.", needed=True),
        Ask("area", "area", "Copper of the wire; or give --gauge."),
        Ask("gauge", "count", "American gauge of the wire."),
        Ask("voltage", "voltage", "Of the supply; 24 V where nothing is said."),
        Ask("limit", "current", "At which the supply folds back."),
        Ask("fuse", "current", "Rating of a fuse of the wire's own."),
        Ask("plug", "current", "Rating of a plug in it."),
        Ask("bundled", "count", "Circuits that lie together, itself counted."),
        Ask("room", "temperature", "How warm it is where it lies; 40 °C where nothing is said."),
        Ask("insulation", "temperature", "What its insulation stands; 70 °C where nothing is said."),
    ),
    _wire,
    ("WIRE-01", "WIRE-02", "WIRE-03", "WIRE-04"),
)
