"""Findings on a terminal."""

from __future__ import annotations

from collections.abc import Sequence

from rich.console import Console
from rich.text import Text

from scantling.cli.text.few import few
from scantling.cli.text.screen import STYLES, indented
from scantling.findings import Finding, NotLookedAt, Verdict


def show_findings(console: Console, findings: Sequence[Finding], everything: bool) -> None:
    """Print the findings that matter, each with reason, source and mend; all of them where asked."""
    shown = [f for f in findings if everything or f.verdict is not Verdict.SOUND]
    for alike in _alike(shown):
        first, subjects = alike[0], few([finding.subject for finding in alike])
        line = Text(f"{first.verdict:9}", style=STYLES[first.verdict])
        line.append(f" {first.code}  {first.title}: {subjects}", style="bold")
        console.print(indented(line, console, 0))
        console.print(indented(_reason(first), console, 10))
    quiet = len(findings) - len(shown)
    if quiet:
        console.print(f"{quiet} more findings are sound (--all shows them)" if shown else f"{quiet} findings are sound")


def _alike(findings: Sequence[Finding]) -> list[list[Finding]]:
    """Put findings together that say the same of several subjects."""
    found: dict[object, list[Finding]] = {}
    for finding in findings:
        found.setdefault((finding.code, str(_reason(finding))), []).append(finding)
    return list(found.values())


def _reason(finding: Finding) -> Text:
    text = Text(finding.because)
    if finding.margin is not None:
        text.append(f" Margin {finding.margin * 100:+.0f} %.")
    if finding.mend and finding.verdict is not Verdict.SOUND:
        text.append(f"\nmend: {finding.mend}", style="cyan")
    if finding.assumed:
        text.append(f"\nassumed: {', '.join(finding.assumed)}", style="dim")
    text.append(f"\nsource: {finding.source}", style="dim")
    return text


def show_scope(console: Console, absent: Sequence[NotLookedAt], unlocking: Sequence[str]) -> None:
    """Print what the verdict does not cover, and the facts that would unlock most."""
    if absent:
        words = few([f"{item.title} ({item.subject})" for item in absent])
        console.print(indented(f"not looked at: {words}", console, 0))
    if unlocking:
        console.print(indented(f"would unlock most: {', '.join(unlocking)}", console, 0))
    console.print('"Sound" is a calculation on what was described, not a safety approval.', style="dim")
