"""Findings on a terminal."""

from __future__ import annotations

from collections.abc import Sequence

from rich.console import Console
from rich.text import Text

from scantling.cli.text.screen import STYLES, indented
from scantling.findings import Finding, NotLookedAt, Verdict


def show_findings(console: Console, findings: Sequence[Finding], everything: bool) -> None:
    """Print the findings that matter, each with reason, source and mend; all of them where asked."""
    shown = [f for f in findings if everything or f.verdict is not Verdict.SOUND]
    for finding in shown:
        line = Text(f"{finding.verdict:9}", style=STYLES[finding.verdict])
        line.append(f" {finding.code}  {finding.subject}: {finding.title}", style="bold")
        console.print(line)
        console.print(indented(_reason(finding), console, 10))
    quiet = len(findings) - len(shown)
    if quiet:
        console.print(f"{quiet} more findings are sound (--all shows them)")


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
        words = ", ".join(dict.fromkeys(f"{item.title} ({item.subject})" for item in absent[:6]))
        more = f" and {len(absent) - 6} more" if len(absent) > 6 else ""
        console.print(f"not looked at: {words}{more}")
    if unlocking:
        console.print(f"would unlock most: {', '.join(unlocking)}")
    console.print('"Sound" is a calculation on what was described, not a safety approval.', style="dim")
