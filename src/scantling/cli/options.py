"""Arguments that several commands share, and how they open a design."""

from __future__ import annotations

import functools
from collections.abc import Callable
from pathlib import Path
from typing import Any

import click

from scantling.cli.completing import complete_words, complete_workshop

Command = Callable[..., Any]


def design_arguments(metavar: str, *, needed: bool = False) -> Callable[[Command], Command]:
    """Add FOLDER (here, unless named), the words after it, ``--workshop`` and ``--copies``."""

    def add(function: Command) -> Command:
        @functools.wraps(function)
        def call(words: tuple[str, ...], **rest: Any) -> Any:
            folder, others = split_words(words, needed)
            if needed and not others:
                raise click.UsageError(f"say {metavar.rstrip('.')} too")
            return function(folder=folder, words=others, **rest)

        helped = "Machines to build; else as the workshop says."
        call = click.option("--copies", "-n", type=click.IntRange(1, 1000), help=helped)(call)
        helped = "A file, or the name of one in the folder's workshops/."
        call = click.option("--workshop", "-w", help=helped, shell_complete=complete_workshop)(call)
        return click.argument("words", nargs=-1, metavar=f"[FOLDER] {metavar}", shell_complete=complete_words)(call)

    return add


def split_words(words: tuple[str, ...], needed: bool = False) -> tuple[Path, tuple[str, ...]]:
    """Return the folder and the other words; this folder where the first word is no folder but what is asked.

    needed : there must be another word, so that a single one is that, unless it is a folder
    """
    alone = needed and len(words) == 1 and not Path(words[0]).is_dir()
    if not words or alone or ("=" in words[0] and not Path(words[0]).exists()):
        return Path(), words
    return Path(words[0]), words[1:]


def json_option(function: Command) -> Command:
    """Add ``--json``."""
    added: Command = click.option("--json", "as_json", is_flag=True, help="Print JSON instead of tables.")(function)
    return added


def lock_option(function: Command) -> Command:
    """Add ``--lock``."""
    helped = "The choice in force; else plan.lock in the folder that plan wrote for this workshop."
    added: Command = click.option("--lock", type=click.Path(path_type=Path), help=helped)(function)
    return added


def out_folder(folder: Path, workshop: str | None) -> Path:
    """Return where a plan goes unless told: ``out/`` beside the design, by workshop."""
    name = Path(workshop).stem if workshop else "plan"
    beside = folder.parent if folder.is_file() else folder
    return beside / "out" / name


def find_lock(folder: Path, workshop: str | None, lock: Path | None) -> Path | None:
    """Return the lock that was named, else the one of the last plan for this workshop, else None."""
    if lock is not None:
        return lock
    usual = out_folder(folder, workshop) / "plan.lock"
    return usual if usual.is_file() else None
