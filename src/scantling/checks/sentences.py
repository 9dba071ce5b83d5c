"""What a finding says in words: its numbers in three digits, what it hangs on, what is not known."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from scantling.checks.inputs import Input, show_band, show_value_text
from scantling.checks.limits import Bounds, Point
from scantling.checks.trials import Rule, Weighed
from scantling.findings import Limit, Verdict
from scantling.quantities import show_number, show_value

_DIGITS = 3
_LEAST_SHARE = 0.5  # of the largest swing that a further figure must have to be named beside it

Also = Mapping[str, tuple[Rule, str]]


def sentence(weighed: Weighed, unit: str, because: str, also: Also) -> str:
    """Return ``because`` with its braces filled."""
    trial, worst = weighed.trial, weighed.worst
    figures = {**trial.nominal, **worst.setting}
    words = {name: figure.shown() for name, figure in trial.inputs.items()}
    words |= {name: round_shown(function(**figures), own_unit) for name, (function, own_unit) in also.items()}
    words["value"] = _value_shown(weighed, unit)
    words["limit"] = _limit_shown(trial.bounds, worst.nominal, unit)
    return because.format(**words)


def deciding(weighed: Weighed) -> list[Input]:
    """Return the figures on which an unclear verdict hangs: missing ones that turn it, else the widest swings."""
    trial, worst = weighed.trial, weighed.worst
    if weighed.turning:
        return [trial.inputs[name] for name in weighed.turning]
    if weighed.verdict is not Verdict.MARGINAL or all(point.is_inside for point in worst.points):
        return []
    widest = trial.swings[0][0]
    return [trial.inputs[name] for swing, name, _ in trial.swings[:2] if swing >= _LEAST_SHARE * widest]


def hang(weighed: Weighed, cards: Sequence[int] = ()) -> str:
    """Return what an unclear verdict hangs on, as a further sentence; empty for a clear one.

    cards : numbers of the measuring cards that would settle it
    """
    figures, numbers = deciding(weighed), cards_told(cards)
    if weighed.turning:
        told = " and ".join(f"{i.what} ({i.shown()} is possible)" for i in figures)
        return f" Not known: {told}{': measure it' if numbers else ''}{numbers}."
    if figures:
        told = " and ".join(f"{i.what} ({i.shown()})" for i in figures)
        return f" Hangs on {told}: measure it{numbers}."
    if weighed.verdict is not Verdict.MARGINAL:
        return ""
    asked = round_shown(100 * weighed.trial.bounds.reserve_ratio)
    margin = round_shown(100 * weighed.worst.nominal.margin)
    return f" Inside by {margin} %, where {asked} % of reserve is wished."


def cards_told(cards: Sequence[int]) -> str:
    """Return the numbers of measuring cards in brackets; empty for none.

    >>> cards_told([3, 5]), cards_told([])
    (' (cards 3 and 5)', '')
    """
    numbers = " and ".join(str(card) for card in cards)
    return f" (card{'s' * (len(cards) > 1)} {numbers})" if cards else ""


def round_shown(value: float, unit: str = "") -> str:
    """Return a computed value for a sentence, with three digits that count; whole places stay.

    >>> round_shown(36.637, "%"), round_shown(0.0123456, "mm"), round_shown(14285.7, "mm")
    ('36.6 %', '0.0123 mm', '14286 mm')
    """
    if abs(value) < 10**_DIGITS:
        return show_value(float(f"{value:.{_DIGITS}g}"), unit)
    return show_value_text(show_number(value, 0), unit)


def _value_shown(weighed: Weighed, unit: str) -> str:
    low, high = (round_shown(end) for end in weighed.values)
    if weighed.unknown:
        return show_value_text(show_band(low, high), unit)
    return round_shown(weighed.worst.nominal.value, unit) + (f" ({show_band(low, high)})" if low != high else "")


def _limit_shown(bounds: Bounds, point: Point, unit: str) -> str:
    if bounds.side is Limit.NONE:
        return ""
    if bounds.side is Limit.RANGE:
        return f"between {round_shown(point.low)} and {round_shown(point.high, unit)}"
    return f"{bounds.side} {round_shown(point.high if bounds.side is Limit.UPPER else point.low, unit)}"
