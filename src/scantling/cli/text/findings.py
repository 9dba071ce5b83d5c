"""Findings on a terminal."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence

from rich.console import Console
from rich.text import Text

from scantling.cli.text.few import few
from scantling.cli.text.screen import STYLES, indented
from scantling.findings import Finding, NotLookedAt, Verdict


def show_findings(console: Console, findings: Sequence[Finding], everything: bool) -> None:
    """Print the findings that matter, check by check, each with reason and mend; all of them where asked."""
    shown = [f for f in findings if everything or f.verdict is not Verdict.SOUND]
    for alike in _together(shown, lambda f: (f.verdict, f.code)):
        _show_check(console, alike)
    quiet = len(findings) - len(shown)
    if quiet:
        console.print(f"{quiet} more findings are sound (--all shows them)" if shown else f"{quiet} findings are sound")


def _together(findings: Sequence[Finding], key: Callable[[Finding], Hashable]) -> list[list[Finding]]:
    """Put findings together that have the same key, in the order of their first."""
    found: dict[Hashable, list[Finding]] = {}
    for finding in findings:
        found.setdefault(key(finding), []).append(finding)
    return list(found.values())


def _show_check(console: Console, findings: Sequence[Finding]) -> None:
    """Print the findings of one check with one verdict; their source once."""
    first = findings[0]
    line = Text(f"{first.verdict:9}", style=STYLES[first.verdict])
    console.print(line.append(f" {first.code}  {first.title}", style="bold"))
    for alike in _together(findings, _reason):
        line = Text(few([finding.subject for finding in alike]), style="bold").append(": ")
        console.print(indented(line.append_text(Text(_reason(alike[0]), style="not bold")), console, 10))
        mend, assumed = alike[0].mend, ", ".join(alike[0].assumed)
        if mend and first.verdict is not Verdict.SOUND:
            console.print(indented(Text(f"mend: {mend}", style="cyan"), console, 12))
        if assumed:
            console.print(indented(Text(f"assumed: {assumed}", style="dim"), console, 12))
    for source in dict.fromkeys(finding.source for finding in findings):
        console.print(indented(Text(f"source: {source}", style="dim"), console, 10))


def _reason(finding: Finding) -> str:
    margin = "" if finding.margin is None else f" Margin {finding.margin * 100:+.0f} %."
    return f"{finding.because}{margin}"


def show_scope(console: Console, absent: Sequence[NotLookedAt], unlocking: Sequence[str]) -> None:
    """Print what the verdict does not cover, and the facts that would unlock most."""
    if absent:
        words = few([f"{item.title} ({item.subject})" for item in absent])
        console.print(indented(f"not looked at: {words}", console, 0))
    if unlocking:
        console.print(indented(f"would unlock most: {', '.join(unlocking)}", console, 0))
    console.print('"Sound" is a calculation on what was described, not a safety approval.', style="dim")
