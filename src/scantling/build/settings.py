"""Values to enter when the machine is set up, as they follow from the chosen parts; and those the maker adds."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from fractions import Fraction
from math import sqrt

from scantling.build.axis_loads import travel
from scantling.build.drives import belt_gear, belt_run, screw_drive
from scantling.build.frame_settings import frame_settings
from scantling.build.missing import NotDescribedError
from scantling.build.reach import home_size, reach_sizes
from scantling.build.reader import Reader
from scantling.build.setting import Setting as Setting
from scantling.build.sizes import size
from scantling.build.typical import belt_line_mass
from scantling.errors import LookUpError
from scantling.formulas.belts import span_frequency_hz
from scantling.formulas.reach import home_offset_mm, reached_mm
from scantling.model.axis import BeltAxis, ScrewAxis
from scantling.model.kinds import Belt, Coupler, Motor
from scantling.quantities import Figure, show_fraction, show_number
from scantling.tables.belt_profiles import installation_tension_n

LATE = "frame"  # the group of values that take long


def settings(reader: Reader) -> tuple[Setting, ...]:
    """Return all values to enter, sorted by key; what is not described is left out."""
    frames = [one for frame in reader.design.frames for one in reader.derive(frame_settings, frame)]
    return with_late(reader.derive(quick_settings), frames)


def quick_settings(reader: Reader) -> tuple[Setting, ...]:
    """Return the values to enter but those of frames, which take plates to be reckoned (``LATE``)."""
    found = [one for axis in reader.design.axes for one in reader.derive(axis_settings, axis)]
    return (*found, *reader.derive(heat_settings), *reader.derive(own_settings))


def with_late(quick: Iterable[Setting], late: Iterable[Setting]) -> tuple[Setting, ...]:
    """Return both kinds of values together, sorted by key."""
    return tuple(sorted((*quick, *late), key=lambda one: one.key))


def axis_settings(reader: Reader, axis: str) -> tuple[Setting, ...]:
    """Return the values of one axis: steps, travel, reach, place of its switch, speed, acceleration, motor current."""
    described = reader.design.axes[axis]
    drive = _belt_steps if isinstance(described, BeltAxis) else _screw_steps
    found = [*_or_none(lambda: drive(reader, axis)), *_or_none(lambda: _travel(reader, axis))]
    found += [*_or_none(lambda: _reach(reader, axis)), *_or_none(lambda: _switch(reader, axis))]
    found += _needs(reader, axis)
    found += _current(reader, axis)
    found += _marks(reader, axis)
    return tuple(found)


def heat_settings(reader: Reader) -> tuple[Setting, ...]:
    """Return the temperatures that the design's heaters are to reach."""
    return tuple(
        Setting(
            f"heat.{name}.target",
            f"{warming.title or name}: temperature",
            _rounded(warming.target_c),
            "°C",
            group="heat",
        )
        for name, warming in reader.design.warmings.items()
    )


def own_settings(reader: Reader) -> tuple[Setting, ...]:
    """Return the values and tests that the maker has added."""
    found: list[Setting] = []
    for name, own in reader.design.settings.items():
        shown = _shown_size(reader, own.value)
        found.append(Setting(f"own.{name}", own.title, shown, "mm" if shown else "", because=own.text, group="own"))
    return tuple(found)


def _belt_steps(reader: Reader, axis: str) -> list[Setting]:
    drive, run = reader.derive(belt_gear, axis), reader.derive(belt_run, axis)
    because = f"{drive.teeth} teeth of {show_number(float(drive.pitch_mm))} mm"
    found = _steps(axis, drive.steps_per_mm, drive.full_steps, drive.microsteps, drive.full_step_mm, because)
    if run.axles_mm is not None:
        found += _note(reader, axis, run.axles_mm.value)
        length = _rounded(run.axles_mm)
        found.append(
            _setting(axis, "belt-span", "free span of the belt, for tuning", length, "mm", because="axle distance")
        )
    return found


def _note(reader: Reader, axis: str, span_mm: float) -> list[Setting]:
    """The note of the belt's free span at its wanted tension, else that of such belts; none where no table says it.

    The free span is the side that the carriage does not divide.
    """
    described = reader.design.axes[axis]
    belt = reader.part(described.belt) if isinstance(described, BeltAxis) else None
    if not isinstance(belt, Belt):
        return []
    tension_n = _tension_n(belt, described.tension_n if isinstance(described, BeltAxis) else None)
    if tension_n is None or span_mm <= 0:
        return []
    mass_g_m = belt_line_mass(belt)
    note = span_frequency_hz(mass_g_m.value, span_mm, tension_n)
    assumed = "" if belt.line_mass_g_m is not None else "; its mass is assumed: weigh a metre"
    because = f"free span {show_number(span_mm)} mm, {show_number(mass_g_m.value)} g/m{assumed}"
    title = f"note of the free belt at {show_number(tension_n)} N"
    return [_setting(axis, "belt-note", title, show_number(note, 0), "Hz", because=because)]


def _tension_n(belt: Belt, wanted: Figure | None) -> float | None:
    """The tension at rest: wanted, else that at which such belts are installed, None where no table says it."""
    if wanted is not None:
        return float(wanted.value)
    try:
        return installation_tension_n(belt.profile, belt.width_mm.value)
    except LookUpError:
        return None


def _screw_steps(reader: Reader, axis: str) -> list[Setting]:
    drive = reader.derive(screw_drive, axis)
    because = f"lead {show_fraction(drive.lead_mm)} mm ({drive.thread.name})"
    found = _steps(axis, drive.steps_per_mm, drive.full_steps, drive.microsteps, drive.full_step_mm, because)
    if reader.design.axes[axis].vertical:
        grid = show_fraction(drive.full_step_mm)
        text = "layer heights best a multiple of"
        found.append(
            _setting(axis, "layer-grid", text, show_number(float(drive.full_step_mm)), "mm", grid, "one full step")
        )
    return found


def _steps(
    axis: str, per_mm: Fraction, full: Fraction, microsteps: int, full_step_mm: Fraction, because: str
) -> list[Setting]:
    exact = show_fraction(per_mm).partition(" = ")[0] if per_mm.denominator != 1 else ""
    why = f"{show_number(float(full))} full steps, {microsteps} microsteps each, {because}"
    return [
        _setting(axis, "steps-per-mm", "steps per mm", f"{float(per_mm):.9g}", "1/mm", exact, why),
        _setting(axis, "microsteps", "microsteps per full step", str(microsteps), "", because="driver setting"),
        _setting(axis, "full-step", "a full step moves", show_number(float(full_step_mm)), "mm", because=because),
    ]


def _travel(reader: Reader, axis: str) -> list[Setting]:
    length = _rounded(reader.derive(travel, axis))
    return [_setting(axis, "travel", "travel", length, "mm", because="free length of the rods less carriage and stops")]


def _reach(reader: Reader, axis: str) -> list[Setting]:
    """What can be used of the bed along an axis, and the position of an axis that stands on its switch."""
    sizes, home = reader.derive(reach_sizes, axis), reader.design.axes[axis].home
    start_mm, way_mm, low_mm = sizes.start_mm.value, sizes.travel_mm.value, sizes.lost_low_mm.value
    reached = reached_mm(start_mm, way_mm, low_mm, sizes.over_mm.value, sizes.lost_high_mm.value)
    because = "counted from the low edge of what is reached"
    found = [
        _setting(
            axis,
            "reach",
            "reach over the bed",
            show_number(reached),
            "mm",
            because="travel, less what clips and rims take",
        )
    ]
    if home is not None:
        offset = show_number(home_offset_mm(home.end, start_mm, way_mm, low_mm))
        found.append(
            _setting(axis, "home-offset", f"position at the switch, {home.end} end", offset, "mm", because=because)
        )
    return found


def _switch(reader: Reader, axis: str) -> list[Setting]:
    """Where the end switch must trip."""
    trips = reader.derive(home_size, axis, "trips")
    home = reader.design.axes[axis].home
    end = home.end if home is not None else ""
    title = f"switch trips before the hard stop, {end} end"
    return [_setting(axis, "switch", title, _rounded(trips), "mm", because="set by hand, then looked at slowly")]


def _marks(reader: Reader, axis: str) -> list[Setting]:
    """A mark across couplers of soft tube, where a slip of one of several tilts the machine."""
    described = reader.design.axes[axis]
    if not isinstance(described, ScrewAxis) or described.coupler is None or described.screws < 2:
        return []
    coupler = reader.part(described.coupler)
    if not isinstance(coupler, Coupler) or coupler.body != "tube":
        return []
    title = "paint a mark across both ends of each coupler and look at it every time"
    return [_setting(axis, "coupler-marks", title, "", "", because="a slip of one tilts the gantry")]


def _needs(reader: Reader, axis: str) -> list[Setting]:
    """Wanted speed and acceleration: what the checks have judged, so what may be entered."""
    needs = reader.design.axes[axis].needs
    wanted: Iterable[tuple[str, Figure | None, str]] = (
        ("speed", needs.speed_mm_s, "mm/s"),
        ("acceleration", needs.acceleration_mm_s2, "mm/s²"),
    )
    because = "as the design needs it"
    return [
        _setting(axis, f"max-{n}", f"top {n}", _rounded(f), u, because=because) for n, f, u in wanted if f is not None
    ]


def _current(reader: Reader, axis: str) -> list[Setting]:
    """The rated current of the motor, rms and peak; the kinder reading where the maker does not say which is given."""
    place = reader.design.axes[axis].motor
    motor = None if place is None else reader.part(place)
    if not isinstance(motor, Motor) or motor.current_a is None:
        return []
    rated_a = motor.current_a.value
    rms_a = rated_a if motor.current_basis == "rms" else rated_a / sqrt(2)
    said = (
        f"rated {motor.current_basis}" if motor.current_basis else "rms or peak is not said: taken as peak, to be safe"
    )
    peak = f"{show_number(rms_a * sqrt(2), 2)} A peak"
    because = f"{motor.name or motor.id}: {show_number(rated_a)} A, {said}; at most this much"
    return [_setting(axis, "motor-current", "motor current, rms", show_number(rms_a, 2), "A", peak, because)]


def _setting(axis: str, name: str, title: str, value: str, unit: str, exact: str = "", because: str = "") -> Setting:
    return Setting(f"axis.{axis}.{name}", f"{axis}: {title}", value, unit, exact, because, f"axis {axis}")


def _rounded(figure: Figure) -> str:
    return show_number(figure.value)


def _shown_size(reader: Reader, text: str | None) -> str:
    """A size as shown; empty where there is none, or where it is not described."""
    if text is None:
        return ""
    try:
        return _rounded(reader.derive(size, text))
    except NotDescribedError:
        return ""


def _or_none(call: Callable[[], list[Setting]]) -> list[Setting]:
    """What a call gives, nothing where it is not described."""
    try:
        return call()
    except NotDescribedError:
        return []
