"""Reads a page of the manual as a script: the files it shows, the commands it types and what it says they answer.

- A block ```` ```yaml title="y-axis.yaml" ```` (any language) is a file, written into the folder of the page.
- A block ```` ```console ```` holds commands (``$ scantling …``), each with the lines that it must print first. A line
  ``…`` ends the comparison; an ``…`` within a line stands for anything. ``# exit 1`` at the end of a command is the
  exit code that is meant (0 where nothing is said). Other commands (``$ cd …``) are for the reader and are not run.
"""

from __future__ import annotations

import re
import shlex
from dataclasses import dataclass
from pathlib import Path

FENCE = re.compile(r"^(?P<indent> *)(?P<fence>```+)(?P<info>[^`]*)$")
TITLE = re.compile(r'title="(?P<title>[^"]+)"')
EXIT = re.compile(r"\s+# exit (?P<code>\d+)\s*$")
MORE = "…"


@dataclass(frozen=True)
class ShownFile:
    """A file that the page shows: its name in the page's folder and its text."""

    line: int
    name: str
    text: str


@dataclass(frozen=True)
class Command:
    """A command that the page types, the exit code it names and the first lines it shows."""

    line: int
    words: tuple[str, ...]
    exit_code: int
    shown: tuple[str, ...]


@dataclass(frozen=True)
class Block:
    """A fenced block: the line of its fence, what stands after the fence, and its lines."""

    line: int
    info: str
    lines: tuple[str, ...]


def blocks(text: str) -> list[Block]:
    """Every fenced block of a page, in order."""
    found: list[Block] = []
    opened: tuple[int, str, str, str] | None = None
    inside: list[str] = []
    for number, line in enumerate(text.splitlines(), 1):
        fence = FENCE.match(line)
        if opened is None and fence:
            opened, inside = (number, fence["info"].strip(), fence["fence"], fence["indent"]), []
        elif opened and line.strip() == opened[2]:
            found.append(Block(opened[0], opened[1], tuple(inside)))
            opened = None
        elif opened:
            inside.append(line.removeprefix(opened[3]))
    if opened:
        raise ValueError(f"line {opened[0]}: this block is never closed")
    return found


def commands(block: Block) -> list[Command]:
    """The commands of one console block."""
    starts = [n for n, line in enumerate(block.lines) if line.startswith("$ ")]
    found = []
    for start, end in zip(starts, [*starts[1:], len(block.lines)], strict=True):
        typed = block.lines[start][2:]
        meant = EXIT.search(typed)
        words = tuple(shlex.split(typed[: meant.start()] if meant else typed))
        shown = block.lines[start + 1 : end]
        shown = shown[: shown.index(MORE)] if MORE in shown else shown
        found.append(Command(block.line + 1 + start, words, int(meant["code"]) if meant else 0, shown))
    return found


def script(text: str) -> list[ShownFile | Command]:
    """Everything that a page does, in order; commands of other programs are left out."""
    steps: list[ShownFile | Command] = []
    for block in blocks(text):
        title = TITLE.search(block.info)
        if title:
            steps.append(ShownFile(block.line, title["title"], "\n".join(block.lines) + "\n"))
        elif block.info.split()[:1] == ["console"]:
            steps += [command for command in commands(block) if command.words[:1] == ("scantling",)]
    return steps


def differs(shown: tuple[str, ...], printed: str) -> str:
    """Why what was printed does not begin with what is shown; empty where it does."""
    lines = [line.rstrip() for line in printed.splitlines()]
    wanted = list(shown)
    while wanted and not wanted[-1].strip():
        wanted.pop()
    for number, line in enumerate(wanted):
        pattern = ".*".join(re.escape(part) for part in line.rstrip().split(MORE))
        got = lines[number] if number < len(lines) else "(nothing)"
        if not re.fullmatch(pattern, got):
            return f"line {number + 1} should be\n    {line}\nbut is\n    {got}"
    return ""


def pages_with_commands(root: Path) -> list[Path]:
    """The pages of the manual, and the README, that run the program."""
    pages = [root / "README.md", *sorted((root / "docs").rglob("*.md"))]
    return [page for page in pages if any(isinstance(s, Command) for s in script(page.read_text(encoding="utf-8")))]
