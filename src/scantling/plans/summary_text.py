"""The summary as plain text, for a file or a terminal without colours."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence

from scantling.findings import Finding
from scantling.plans.instead import Instead
from scantling.plans.summary import CALCULATION, Summary

WIDTH = 96


def summary_text(summary: Summary) -> str:
    """Return the summary in lines of at most ``WIDTH`` signs, longer words left whole."""
    parts = [
        _head(summary),
        list(summary.miss),
        _section("Money", _pairs(summary.money)),
        _section("Orders", _columns([(o.vendor, f"{o.lines} lines", o.total, o.arrives) for o in summary.orders])),
        _section("Dates", _pairs(summary.dates)),
        _section(
            "Chosen instead of the reference, list prices of what each place takes compared",
            [_instead(row) for row in summary.instead],
        ),
        _section("Findings that are not sound", _findings(summary)),
        _section("Not looked at", _scope(summary)),
        _section("Making", _pairs(summary.making)),
    ]
    blocks = ["\n".join(_fitted(part)) for part in parts if part]
    return "\n\n".join(blocks) + "\n"


def _head(summary: Summary) -> list[str]:
    counts = ", ".join(f"{count} {verdict}" for verdict, count in summary.counts)
    lines = [summary.title, f"verdict: {summary.verdict}" + (f" ({counts})" if counts else "")]
    return [*lines, *([summary.proof] if summary.proof else []), CALCULATION]


def _section(title: str, lines: Sequence[str]) -> list[str]:
    return [title, *(f"  {line}" for line in lines)] if lines else []


def _pairs(rows: Sequence[tuple[str, str]]) -> list[str]:
    return _columns(rows)


def _columns(rows: Sequence[Sequence[str]]) -> list[str]:
    if not rows:
        return []
    widths = [max(len(row[k]) for row in rows) for k in range(len(rows[0]))]
    return ["  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows]


def _instead(row: Instead) -> str:
    why = f" ({row.why})" if row.why else ""
    return f"{row.title}: {row.reference} → {row.chosen}{why}"


def _findings(summary: Summary) -> list[str]:
    lines = [line for finding in summary.worst for line in _finding(finding)]
    return [*lines, f"and {summary.more} more"] if summary.more else lines


def _finding(finding: Finding) -> Iterator[str]:
    yield f"{finding.code} {finding.subject}: {finding.verdict}, {finding.title}"
    yield f"  {finding.because}"
    if finding.mend:
        yield f"  mend: {finding.mend}"


def _scope(summary: Summary) -> list[str]:
    lines = list(summary.not_looked_at)
    return [*lines, f"these facts would unlock most: {', '.join(summary.unlocking)}"] if summary.unlocking else lines


def _fitted(lines: Sequence[str]) -> Iterator[str]:
    """Break long lines, the rest set in deeper than their beginning."""
    for line in lines:
        indent = " " * (len(line) - len(line.lstrip()))
        broken = textwrap.wrap(
            line,
            WIDTH,
            subsequent_indent=f"{indent}    ",
            break_long_words=False,
            break_on_hyphens=False,
            drop_whitespace=True,
            replace_whitespace=False,
        )
        yield from broken or [""]
