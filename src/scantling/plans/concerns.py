"""Why nothing is sound, in words: demands that stand against each other, and what the nearest miss gives up."""

from __future__ import annotations

from scantling.choosing.result import Concern, Infeasible, Waived
from scantling.quantities import show_money


def concern_words(concern: Concern) -> str:
    """Return one demand in words."""
    subject, detail, code = concern.subject, concern.detail, concern.code
    words = {
        "check": f"check {code} of {subject}",
        "pin": f"{subject} is asked to be {detail or 'empty'}",
        "supply": f"{subject} must be had",
        "date": f"{subject} must come in time",
        "budget": "the budget",
        "orders": "the cap on orders",
        "rule": f"{subject} {code} {detail}".rstrip(),
    }
    return words[concern.kind]


def waived_words(waived: Waived, currency: str) -> str:
    """Return what the nearest miss does not meet, and by how much."""
    kind, amount = waived.concern.kind, waived.amount
    by = {
        "budget": f"{show_money(amount, currency)} over",
        "supply": f"{amount} missing",
        "date": f"{amount} days late",
        "orders": f"{amount} too many",
    }.get(kind, "")
    if kind == "check" and 0 < waived.shortfall_permille < 1000:
        by = f"{waived.shortfall_permille / 10:g} % beyond the limit"
    return f"{concern_words(waived.concern)}: {by}" if by else concern_words(waived.concern)


def infeasible_lines(infeasible: Infeasible, currency: str) -> list[str]:
    """Return the conflict and the nearest miss as sentences."""
    fewest = ", and no fewer do" if infeasible.conflict.smallest else ""
    lines = [f"These demands stand against each other{fewest}:"]
    lines += [f"- {concern_words(concern)}" for concern in infeasible.conflict.concerns]
    if infeasible.miss is not None:
        cost = show_money(infeasible.miss.cost_minor, currency)
        lines.append(f"The nearest miss, shown here, costs {cost} and gives up:")
        lines += [f"- {waived_words(waived, currency)}" for waived in infeasible.miss.waived]
    return lines
