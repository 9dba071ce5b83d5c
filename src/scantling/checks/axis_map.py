"""The speeds and accelerations at which a belt axis stays sound, all else equal: a map of verdicts.

At each point the torque of the motor, the ringing after a corner, the tension of the belt and the pull on the motor's
shaft are judged as for the wanted move; the worst of them stands on the map with the code that said it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

from scantling.build.case import Case
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.checks import axis_ringing, belt_shaft, belt_tension, belt_torque
from scantling.checks.axis_springs import axis_springs
from scantling.checks.rule import EmptyPlaceError
from scantling.checks.subjects import belt_axes, belt_axis, ident
from scantling.findings import Verdict
from scantling.model.build import Build

COLUMNS, ROWS = 24, 20
FASTER_RATIO, STEEPER_RATIO = 6.0, 4.0  # of the wanted speed and acceleration, how far the map goes
_HALVINGS = 10  # of the height of the map: a thousandth of it

Look = Callable[[float, float], Verdict]


@dataclass(frozen=True)
class Cell:
    """What is said at a speed and an acceleration; ``code`` of the check that says the worst, empty where sound."""

    speed_mm_s: float
    acceleration_mm_s2: float
    verdict: Verdict
    code: str


@dataclass(frozen=True)
class AxisMap:
    """A map of one axis.

    cells : row by row from the least acceleration, in each from the least speed; each stands for its middle
    most_mm_s2 : for each column the most acceleration at which all is sound, 0 where none is
    travel_mm : longest move, None where it is not described; a short one ends before a speed is reached
    looked : codes of the checks that were asked    left_out : what those lack that were not
    """

    axis: str
    title: str
    wanted_mm_s: float
    wanted_mm_s2: float
    width_mm_s: float
    height_mm_s2: float
    cells: tuple[tuple[Cell, ...], ...]
    most_mm_s2: tuple[float, ...]
    looked: tuple[str, ...]
    left_out: tuple[str, ...]
    travel_mm: float | None = None


def axis_maps(case: Case, build: Build) -> tuple[AxisMap, ...]:
    """Return the maps of all belt axes whose wanted speed and acceleration are described and whose motor is known."""
    found = (_map(Reader(case, build.as_dict(), words=False), subject) for subject in belt_axes(case.project.design))
    return tuple(one for one in found if one is not None)


def _map(reader: Reader, subject: str) -> AxisMap | None:
    axis, name = belt_axis(reader, subject), ident(subject)
    try:
        speed_mm_s, acceleration_mm_s2 = belt_torque.wanted_move(axis, name)
        belt_torque.judged(reader, subject, speed_mm_s, acceleration_mm_s2)
    except (NotDescribedError, EmptyPlaceError):
        return None
    looks, left_out = _looks(reader, subject, speed_mm_s, acceleration_mm_s2)
    width, height = FASTER_RATIO * speed_mm_s, STEEPER_RATIO * acceleration_mm_s2
    speeds = [(k + 0.5) / COLUMNS * width for k in range(COLUMNS)]
    heights = [(k + 0.5) / ROWS * height for k in range(ROWS)]
    return AxisMap(
        axis=name,
        title=axis.title or name,
        wanted_mm_s=speed_mm_s,
        wanted_mm_s2=acceleration_mm_s2,
        width_mm_s=width,
        height_mm_s2=height,
        cells=tuple(tuple(_cell(looks, speed, above) for speed in speeds) for above in heights),
        most_mm_s2=tuple(_most(looks, speed, height) for speed in speeds),
        looked=tuple(looks),
        left_out=left_out,
        travel_mm=way.value if (way := axis.needs.travel_mm) else None,
    )


def _looks(
    reader: Reader, subject: str, speed_mm_s: float, acceleration_mm_s2: float
) -> tuple[dict[str, Look], tuple[str, ...]]:
    """The checks that can be asked, by code, and what the others lack."""

    springs = cache(lambda: axis_springs(reader, subject))
    at_any_speed: dict[str, Callable[[float], Verdict]] = {
        axis_ringing.CHECK.code: lambda above: axis_ringing.judged(reader, subject, above, springs()).verdict,
        belt_tension.CHECK.code: lambda above: belt_tension.judged(reader, subject, above).verdict,
        belt_shaft.CHECK.code: lambda above: belt_shaft.judged(reader, subject, above).verdict,
    }
    asked: dict[str, Look] = {
        belt_torque.CHECK.code: lambda speed, above: belt_torque.judged(reader, subject, speed, above).verdict
    }
    asked |= {code: _whatever_speed(cache(look)) for code, look in at_any_speed.items()}
    found, lacking = {}, []
    for code, look in asked.items():
        try:
            look(speed_mm_s, acceleration_mm_s2)
            found[code] = look
        except (NotDescribedError, EmptyPlaceError) as error:
            lacking.append(f"{code}: {error}")
    return found, tuple(lacking)


def _whatever_speed(look: Callable[[float], Verdict]) -> Look:
    return lambda _, above: look(above)


def _cell(looks: dict[str, Look], speed_mm_s: float, acceleration_mm_s2: float) -> Cell:
    said = [(look(speed_mm_s, acceleration_mm_s2), code) for code, look in looks.items()]
    verdict, code = min(said, key=lambda one: one[0].rank)
    return Cell(speed_mm_s, acceleration_mm_s2, verdict, "" if verdict is Verdict.SOUND else code)


def _most(looks: dict[str, Look], speed_mm_s: float, height_mm_s2: float) -> float:
    """The most acceleration up to which all is sound: more never makes a verdict better."""

    def is_sound(above: float) -> bool:
        return all(look(speed_mm_s, above) is Verdict.SOUND for look in looks.values())

    low, high = 0.0, height_mm_s2
    if is_sound(high):
        return high
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if is_sound(middle) else (low, middle)
    return low
