"""The page of checks: the code, the rule and its source, from the explicit list of ``scantling.checks.all``."""

from __future__ import annotations

import sys
from importlib import import_module
from pathlib import Path
from typing import Any

HEAD = """# Checks

Every rule that a build is held against. A code is never used again for another rule. A check that is *costly* runs on
the answer of the choice instead of being tabulated beforehand; one that only *informs* has no say in the choice.
"""


def text_of(check: Any) -> str:
    """What the rule's docstring says, or its file's where it has none."""
    said = check.run.__doc__ or sys.modules[check.run.__module__].__doc__ or ""
    return " ".join(said.partition("\n\n")[0].split())


def section(check: Any) -> list[str]:
    """The lines for one check."""
    lines = ["", f"## {check.code}: {check.title}", "", text_of(check), "", f"- source: {check.source}"]
    if check.total:
        lines.append(f"- total: {check.total.name} ({check.total.worse} is worse)")
    return [*lines, *(["- costly"] if check.costly else []), *(["- informs"] if check.informs else [])]


def checks_page(root: Path) -> str:
    """Make the page; empty while there is no list of checks."""
    if not (root / "src" / "scantling" / "checks" / "all.py").exists():
        return ""
    checks = sorted(import_module("scantling.checks.all").CHECKS, key=lambda check: check.code)
    return HEAD + "\n".join(line for check in checks for line in section(check))
