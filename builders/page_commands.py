"""The reference of the command line, made from what ``--help`` says."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

CALL = "import sys; from scantling.cli.main import main; sys.argv[0] = 'scantling'; sys.exit(main())"
PLAIN = {"NO_COLOR": "1", "TERM": "dumb", "COLUMNS": "100", "PYTHONIOENCODING": "utf-8", "PYTHONUTF8": "1"}


def help_of(*words: str) -> str:
    """The help of the program, or of one of its commands, without colour and 100 columns wide."""
    done = subprocess.run(
        [sys.executable, "-c", CALL, *words, "--help"],
        capture_output=True,
        check=True,
        env={**os.environ, **PLAIN},
        timeout=60,
    )
    lines = done.stdout.decode("utf-8").replace("\r\n", "\n").splitlines()
    return "\n".join(line.rstrip() for line in lines).strip()


def commands_in(text: str) -> list[str]:
    """The commands that the program's help lists under "Commands"."""
    listed = text[text.index("Commands") :] if "Commands" in text else ""
    return re.findall(r"(?m)^  ([a-z][a-z-]*)(?= {2,}\S)", listed)


def commands_page(root: Path) -> str:
    """Make the page; empty while there is no command line."""
    if not (root / "src" / "scantling" / "cli" / "main.py").exists():
        return ""
    top = help_of()
    parts = ["# Commands", "", "```text", top, "```"]
    for name in commands_in(top):
        parts += ["", f"## scantling {name}", "", "```text", help_of(name), "```"]
    return "\n".join(parts)
