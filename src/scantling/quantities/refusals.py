"""The sentences for quantities that are refused: what stood there, what is meant, how to mend it."""

from __future__ import annotations

import re
from difflib import get_close_matches
from fractions import Fraction

from scantling.errors import QuantityError
from scantling.quantities.units import DIMENSIONS, Dimension, tidy

# numbered sizes with their usual threads per inch, else a fraction or a # makes it a thread
_THREAD = re.compile(
    r"(?P<size>#[0-9]+(?=\s*-)|[0-9]+/[0-9]+(?=\s*\"?\s*-)|(?:[0-68]|10|12)(?=\s*-\s*(?:24|28|32|36|40|44|48|56|64|72|80)\b))"
    r"\s*\"?\s*-\s*[0-9]+(?:\s*(?:UN|TPI|tpi|in|\").*)?"
)
_METRIC_THREAD = re.compile(r"M(?P<size>[0-9]+(?:\.[0-9]+)?)(?:\s*[x×]\s*[0-9.]+)?")
_NUMBERS = re.compile(r"(?<![A-Za-z0-9])[0-9.,/]*[0-9]")
_HYPHEN_MIXED = re.compile(r"(?P<whole>[0-9]+)\s*-\s*(?P<part>[0-9]+/[0-9]+)\s*(?P<unit>.*)")
_HYPHEN_RANGE = re.compile(r"(?P<low>[0-9.,]+)\s*(?P<first>[^0-9-]*?)\s*-\s*(?P<high>[0-9.,]+)\s*(?P<unit>[^0-9-]*)")

# Units that are refused although a reader can guess them, by dimension, spaces left out.
_MASS_FOR_FORCE = "{unit!r} multiplies a mass by a length", "torque is force times length: write {better}"
_REFUSED: dict[str, dict[str, tuple[str, str]]] = {
    "torque": {
        **{
            joined: (_MASS_FOR_FORCE[0], _MASS_FOR_FORCE[1].replace("{better}", better))
            for joined, better in {
                "kgcm": "kgf cm or N cm",
                "kgmm": "kgf mm or N mm",
                "kgm": "kgf m or N m",
                "gcm": "gf cm or N mm",
                "ozin": "ozf in or N cm",
                "inoz": "ozf in or N cm",
                "lbin": "lbf in or N m",
                "inlb": "lbf in or N m",
                "inlbs": "lbf in or N m",
                "lbft": "lbf ft or N m",
                "ftlb": "lbf ft or N m",
                "ftlbs": "lbf ft or N m",
            }.items()
        },
        **{
            f"N/{length}": ("{unit!r} divides a force by a length", f"torque is force times length: write N {length}")
            for length in ("mm", "cm", "m")
        },
    },
    "force": {
        "kg": ("'kg' is a mass, not a force", "write kgf for its weight, or N"),
        "g": ("'g' is a mass, not a force", "write gf for its weight, or N"),
        "lb": ("'lb' is a mass, not a force", "write lbf for its weight, or N"),
        "oz": ("'oz' is a mass, not a force", "write ozf for its weight, or N"),
    },
    "length": {
        "mil": ("'mil' means a thousandth of an inch to some and a millimetre to others", "write thou or mm"),
        "mils": ("'mils' means thousandths of an inch to some and millimetres to others", "write thou or mm"),
    },
    "acceleration": {
        "g": ("'g' is gram here, not the fall of bodies", "write 9.81 m/s2 for one"),
        "mm/s": ("'mm/s' is a speed, not an acceleration", "write mm/s2"),
    },
    "hardness": {
        "HV": ("'HV' is another scale of hardness", "convert with the maker's table and write HRC"),
        "HB": ("'HB' is another scale of hardness", "convert with the maker's table and write HRC"),
        "HRB": ("'HRB' is another scale of hardness", "convert with the maker's table and write HRC"),
    },
    "current": dict.fromkeys(
        ("Arms", "Apeak", "Apk", "A(rms)", "A(peak)"),
        ("'rms' or 'peak' is not expected here", "write the current alone, as in 1.5 A"),
    ),
    "turns": {"Hz": ("'Hz' may count turns, steps or waves", "write rev/s or rpm")},
    "time": {"m": ("'m' is metre, not minute", "write min")},
}


def wrong_unit(number: Fraction, unit: str, kind: Dimension) -> QuantityError:
    """Return the error for a unit that is missing, unknown or of another dimension."""
    written = _plain_number(number)
    if not unit:
        return QuantityError(
            f"{written} is a bare number and has no unit",
            f"write {written} {kind.unit} ({kind.with_article} may be in {_list(kind)})",
        )
    refusal = _REFUSED.get(kind.label, {}).get(tidy(unit).replace(" ", ""))
    if refusal:
        return QuantityError(refusal[0].format(unit=unit), refusal[1])
    return QuantityError(
        _what_is(unit, kind), f"{_near(unit, kind)}write {kind.with_article} in {_list(kind)}: {kind.example}"
    )


def not_a_number(text: str, kind: Dimension) -> QuantityError:
    """Return the error for a text that does not start with a number, or holds more than one."""
    if mixed := _HYPHEN_MIXED.fullmatch(text):
        better = f"{mixed['whole']} {mixed['part']} {mixed['unit'] or kind.unit}"
        return QuantityError(f"{text!r} may be a sum, a difference or a thread", f"write {better}")
    if kind.label == "length" and (thread := _THREAD.fullmatch(text) or _METRIC_THREAD.fullmatch(text)):
        return QuantityError(f"{text!r} is a thread, not a length", _thread_mend(thread["size"], text))
    if ends := _HYPHEN_RANGE.fullmatch(text):
        unit = ends["unit"] or ends["first"] or kind.unit
        return QuantityError(
            f"{text!r} may be a range or a difference", f"write {ends['low']}..{ends['high']} {unit}".rstrip()
        )
    if not text:
        return QuantityError(f"a number is missing for {kind.with_article}", f"write {kind.example}")
    if len(_NUMBERS.findall(text)) > 1:
        return QuantityError(
            f"{text!r} holds more than one number", f"write one number with one unit, as in {kind.example}"
        )
    return QuantityError(f"{text!r} is not {kind.with_article}", f"write a number with its unit, as in {kind.example}")


def is_thread_with_dash(text: str) -> bool:
    """Return whether an en dash, otherwise the sign of a band, stands in a thread: ``1/4–20``."""
    return "–" in text and "/" in text and _THREAD.fullmatch(text.replace("–", "-")) is not None


def _thread_mend(size: str, text: str) -> str:
    if "/" not in size and not text.startswith("M"):
        return "give it where a thread is asked for, or write the diameter in mm or in"
    unit = "mm" if text.startswith("M") else "in"
    return f"give it where a thread is asked for, or write the diameter: {size} {unit}"


def _what_is(unit: str, kind: Dimension) -> str:
    others = [d.name for d in DIMENSIONS.values() if tidy(unit) in d.units and not d.may_be_bare]
    if others:
        return f"{unit!r} is {DIMENSIONS[others[0]].with_article}, not {kind.with_article}"
    return f"{unit!r} is no unit of {kind.label}"


def _near(unit: str, kind: Dimension) -> str:
    """Return ``did you mean mm? `` where the unit differs by case or one letter, else nothing."""
    spelled = tidy(unit)
    same = [known for known in kind.units if known.casefold() == spelled.casefold()]
    close = same or get_close_matches(spelled, list(kind.units), n=1, cutoff=0.7)
    return f"did you mean {kind.units[close[0]].name}? " if close else ""


def _list(kind: Dimension) -> str:
    return ", ".join(kind.main_units)


def _plain_number(number: Fraction) -> str:
    return str(number.numerator) if number.denominator == 1 else f"{float(number):.6g}"
