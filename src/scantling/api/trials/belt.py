"""One belt axis."""

from __future__ import annotations

from typing import Any

from scantling.api.trials.trial import Ask, Given, Trial, fields
from scantling.errors import Fault, FaultsError, QuantityError, Where
from scantling.quantities import parse_figure
from scantling.tables.belt_profiles import belt_profile, belt_profile_names

CRAWL = "1 mm/s"
USUAL = "2 mm round"
SAME_PITCH_MM = 0.001


def _design(given: Given) -> dict[str, Any]:
    motor = {"kind": "motor", "frame-size": "17", "shaft-diameter": "5 mm"}
    motor |= fields(given, holding_torque="motor", current="current", resistance="resistance", inductance="inductance")
    if "current" in given:
        motor["current-basis"] = "rms"
    profile = _profile(given)
    needs = {"speed": given.get("speed", CRAWL)} | fields(
        given, acceleration="acceleration", resolution="resolution", travel="travel"
    )
    axis: dict[str, Any] = {
        "drive": "belt",
        "motor": "motor",
        "pulley": "pulley",
        "belt": "belt",
        "moves": [{"mass": given["mass"], "for": "what moves"}],
        "needs": needs,
        "friction": given.get("friction", "3 N"),
    }
    axis |= fields(given, supply_voltage="voltage", microsteps="microsteps", axles="axles")
    return {
        "parts": {
            "motor": motor,
            "pulley": {"kind": "pulley", "teeth": given["teeth"], "profile": profile, "bore": "5 mm"},
            "belt": {"kind": "belt", "profile": profile, "width": "6 mm"},
        },
        "places": {name: {"reference": name} for name in ("motor", "pulley", "belt")},
        "axes": {"tried": axis},
    }


def _profile(given: Given) -> str:
    """Return the belt that is named, else the first of the wanted pitch in the table; raises ``FaultsError``."""
    if "belt" in given or "pitch" not in given:
        return given.get("belt", USUAL)
    where = Where("--pitch")
    try:
        pitch = parse_figure(given["pitch"], "length").value
    except QuantityError as error:
        raise FaultsError([Fault("TRY-03", error.what, error.mend, where)]) from error
    for name in belt_profile_names():
        if abs(float(belt_profile(name).pitch_mm) - pitch) < SAME_PITCH_MM:
            return name
    mend = f"known are {', '.join(belt_profile_names())}"
    raise FaultsError([Fault("TRY-04", f"no belt of {given['pitch']} pitch is in the table", mend, where)])


def _notes(given: Given) -> tuple[str, ...]:
    notes = []
    if "speed" not in given:
        notes.append("no --speed: judged at a crawl, a motor is weaker at speed")
    if "friction" not in given:
        notes.append(
            "no --friction: 3 N taken, the middle of what seals and bushings usually cost (common practice, no source)"
        )
    if "current" in given:
        notes.append("the current is taken as rms")
    return tuple(notes)


TRIAL = Trial(
    "belt",
    "Does this motor drive this belt axis, and how finely?",
    'scantling try belt --teeth 16 --mass "1.5 kg" --acceleration "2000 mm/s2" --motor "0.26 N m"',
    (
        Ask("teeth", "count", "Teeth of the motor's pulley.", needed=True),
        Ask("mass", "mass", "All that moves.", needed=True),
        Ask("acceleration", "acceleration", "Wanted acceleration.", needed=True),
        Ask("motor", "torque", "Holding torque of the motor.", needed=True),
        Ask("belt", "text", "Belt by pitch and tooth form, as in the table of belts; else 2 mm round."),
        Ask("pitch", "length", "Pitch of the belt; 2 mm where nothing is said."),
        Ask("speed", "speed", "Wanted speed; without it the motor is judged at a crawl."),
        Ask("friction", "force", "What the guide and its seals hold back."),
        Ask("current", "current", "Rated current of the motor, rms."),
        Ask("resistance", "resistance", "Resistance of one phase."),
        Ask("inductance", "inductance", "Inductance of one phase."),
        Ask("voltage", "voltage", "Supply voltage."),
        Ask("microsteps", "count", "Microsteps in a full step."),
        Ask("resolution", "length", "Wanted resolution."),
        Ask(
            "axles", "length", "Distance of the axles; with the travel it tells how far the axis rings after a corner."
        ),
        Ask("travel", "length", "Wanted travel."),
    ),
    _design,
    ("BELT-01", "BELT-03", "BELT-09", "AXIS-01"),
    _notes,
)
