"""Threads by name: ``M5``, ``M8x1``, ``1/4-20``, ``#6-32``, ``Tr8x2``, ``Tr8x8(P2)``."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from scantling.errors import nearest
from scantling.tables.csv_table import MM_PER_INCH, Row, UnfitError, rows

METRIC = re.compile(r"M(?P<major>\d+(\.\d+)?)(x(?P<pitch>\d+(\.\d+)?))?", re.IGNORECASE)
INCH = re.compile(r"(?P<size>#?\d+|\d+/\d+)(-(?P<per_inch>\d+)(UN[CF]?)?)?", re.IGNORECASE)
TRAPEZOIDAL = re.compile(
    r"Tr(?P<major>\d+(\.\d+)?)x(?P<lead>\d+(\.\d+)?)(\(P(?P<pitch>\d+(\.\d+)?)\)|P(?P<plain>\d+(\.\d+)?))?",
    re.IGNORECASE,
)
MOST_STARTS = 8

# ISO 68-1: with H = P·√3/2 the pitch diameter is 3/4 H smaller than the major
# diameter, the nut's bore 5/4 H, the root 17/12 H.
HEIGHT_RATIO = 3**0.5 / 2


@dataclass(frozen=True)
class Thread:
    """A screw thread.

    name : as we write it    family : "metric coarse", "metric fine", "unified coarse", "unified fine", "trapezoidal"
    pitch_mm, lead_mm : exact    starts : lead / pitch
    pitch_diameter_mm : where flanks of screw and nut have equal widths
    minor_diameter_mm : root of the screw (d3), its weakest section    nut_minor_diameter_mm : bore of the nut (D1)
    flank_half_angle_deg : 30 for V-threads, 15 for trapezoidal ones    source : key in SOURCES.toml
    """

    name: str
    family: str
    major_mm: float
    pitch_mm: Fraction
    starts: int
    lead_mm: Fraction
    pitch_diameter_mm: float
    minor_diameter_mm: float
    nut_minor_diameter_mm: float
    flank_half_angle_deg: float
    source: str

    @property
    def is_inch(self) -> bool:
        """True for unified threads."""
        return self.family.startswith("unified")

    @property
    def size(self) -> str:
        """The nominal size without the pitch, ``M8``, ``1/4``; a trapezoidal thread keeps its name."""
        if self.is_inch:
            return self.name.split("-")[0]
        return f"M{self.major_mm:g}" if self.family.startswith("metric") else self.name


@cache
def thread(name: str) -> Thread:
    """Return the thread that ``name`` means; blanks, a × for the x and an added UNC or UNF do not matter.

    Raises ``UnfitError`` (a ``LookUpError``) for what is no thread, with a sentence that mends it.

    >>> thread("Tr8x8(P2)").starts, thread("1/4-20").pitch_mm
    (4, Fraction(127, 100))
    """
    text = re.sub(r"\s+", "", name).replace("×", "x").replace("*", "x")
    for shape, make in ((TRAPEZOIDAL, _trapezoidal), (METRIC, _metric), (INCH, _unified)):
        match = shape.fullmatch(text)
        if match:
            return make(name, match)
    raise UnfitError(f"{name!r} is not the name of a thread", "write M5, M8x1, 1/4-20, #6-32 or Tr8x8(P2)")


def known_threads() -> tuple[str, ...]:
    """Return the names of all single-start threads in the tables, in the order of the tables."""
    return tuple(row["thread"] for table in TABLES for row in rows(table))


TABLES = ("metric_threads", "unified_threads", "trapezoidal_threads")


def _v_thread(row: Row, family: str, major_mm: Fraction, pitch_mm: Fraction) -> Thread:
    """Build a 60° thread from its two exact sizes."""
    major, height_mm = float(major_mm), HEIGHT_RATIO * float(pitch_mm)
    return Thread(
        name=row["thread"],
        family=family,
        major_mm=major,
        pitch_mm=pitch_mm,
        starts=1,
        lead_mm=pitch_mm,
        pitch_diameter_mm=major - 2 * 3 / 8 * height_mm,
        minor_diameter_mm=major - 2 * 17 / 24 * height_mm,
        nut_minor_diameter_mm=major - 2 * 5 / 8 * height_mm,
        flank_half_angle_deg=30.0,
        source=row["source"],
    )


def _metric(name: str, match: re.Match[str]) -> Thread:
    """Find the metric thread; without a pitch the coarse one is meant."""
    major, pitch = Fraction(match["major"]), match["pitch"]
    same_size = [row for row in rows("metric_threads") if Fraction(row["major_mm"]) == major]
    for row in same_size:
        if Fraction(row["pitch_mm"]) == Fraction(pitch) if pitch else row["series"] == "coarse":
            return _v_thread(row, f"metric {row['series']}", major, Fraction(row["pitch_mm"]))
    if not same_size:
        known = [row["thread"] for row in rows("metric_threads")]
        raise UnfitError(f"no metric thread is called {name!r}", nearest(f"M{match['major']}", known))
    pitches = ", ".join(row["pitch_mm"] for row in same_size)
    mend = f"M{match['major']} has the pitches {pitches}"
    if Fraction(pitch) > 3:
        mend += f"; if {pitch} is the length of a screw, write the length apart from the thread"
    raise UnfitError(f"no metric thread is called {name!r}", mend)


def _unified(name: str, match: re.Match[str]) -> Thread:
    """Find the inch thread; the number of threads per inch must be said."""
    size = match["size"]
    known = {row["thread"]: row for row in rows("unified_threads")}
    for label in (size, f"#{size}"):
        row = known.get(f"{label}-{match['per_inch']}")
        if row:
            family = {"UNC": "unified coarse", "UNF": "unified fine"}[row["series"]]
            major_mm = Fraction(row["major_in"]) * MM_PER_INCH
            return _v_thread(row, family, major_mm, MM_PER_INCH / int(row["threads_per_inch"]))
    same = [thread for thread in known if thread.startswith((f"{size}-", f"#{size}-"))]
    mend = f"say {' or '.join(same)}" if same else nearest(name, known)
    raise UnfitError(f"no inch thread is called {name!r}", mend)


def _trapezoidal(name: str, match: re.Match[str]) -> Thread:
    """Find the trapezoidal thread; the number after the x is the lead, which is the pitch unless (P…) says it."""
    major, lead = Fraction(match["major"]), Fraction(match["lead"])
    pitch = Fraction(match["pitch"] or match["plain"] or match["lead"])
    same_size = [row for row in rows("trapezoidal_threads") if Fraction(row["major_mm"]) == major]
    found = [row for row in same_size if Fraction(row["pitch_mm"]) == pitch]
    if found and lead % pitch == 0 and 1 <= lead / pitch <= MOST_STARTS:
        return _trapezoidal_of(found[0], pitch, int(lead / pitch))
    raise UnfitError(
        f"no trapezoidal thread is called {name!r}", _trapezoidal_mend(name, match, same_size, bool(found))
    )


def _trapezoidal_mend(name: str, match: re.Match[str], same_size: list[Row], pitch_exists: bool) -> str:
    """Say what would make a trapezoidal thread of this name."""
    if not same_size:
        return nearest(name, [row["thread"] for row in rows("trapezoidal_threads")])
    if pitch_exists:
        return f"the lead is a whole number of pitches, at most {MOST_STARTS}"
    lead = Fraction(match["lead"])
    as_lead = [row["pitch_mm"] for row in same_size if lead and lead % Fraction(row["pitch_mm"]) == 0]
    if as_lead and not (match["pitch"] or match["plain"]):
        whole = f"Tr{match['major']}x{match['lead']}(P{as_lead[-1]})"
        return f"if {match['lead']} is the lead, add the pitch: {whole}"
    return f"Tr{match['major']} has the pitches {', '.join(row['pitch_mm'] for row in same_size)}"


def _trapezoidal_of(row: Row, pitch_mm: Fraction, starts: int) -> Thread:
    """Build a trapezoidal thread after ISO 2904: d2 = d − P/2, d3 = d − P − 2 ac, D1 = d − P."""
    major, pitch = float(row["major_mm"]), float(pitch_mm)
    several = f"Tr{row['major_mm']}x{float(pitch_mm * starts):g}(P{row['pitch_mm']})"
    return Thread(
        name=row["thread"] if starts == 1 else several,
        family="trapezoidal",
        major_mm=major,
        pitch_mm=pitch_mm,
        starts=starts,
        lead_mm=pitch_mm * starts,
        pitch_diameter_mm=major - pitch / 2,
        minor_diameter_mm=major - pitch - 2 * float(row["crest_clearance_mm"]),
        nut_minor_diameter_mm=major - pitch,
        flank_half_angle_deg=15.0,
        source=row["source"],
    )
