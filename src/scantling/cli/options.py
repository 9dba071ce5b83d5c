"""Arguments that several commands share, and how they open a design."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import click

Command = Callable[..., Any]


def design_arguments(function: Command) -> Command:
    """Add the folder, ``--workshop`` and ``--copies``."""
    for add in (
        click.option(
            "--copies", "-n", type=click.IntRange(1, 1000), help="Machines to build; else as the workshop says."
        ),
        click.option("--workshop", "-w", help="A file, or the name of one in the folder's workshops/."),
        click.argument("folder", type=click.Path(path_type=Path), default=Path()),
    ):
        function = add(function)
    return function


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
    return folder / "out" / name


def find_lock(folder: Path, workshop: str | None, lock: Path | None) -> Path | None:
    """Return the lock that was named, else the one of the last plan for this workshop, else None."""
    if lock is not None:
        return lock
    usual = out_folder(folder, workshop) / "plan.lock"
    return usual if usual.is_file() else None
