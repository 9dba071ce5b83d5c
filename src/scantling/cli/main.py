"""The command ``scantling`` and how it ends: 0 sound, 1 not sound, 2 bad input."""

from __future__ import annotations

import dataclasses
import gc
import importlib
import json
import os
import sys
from collections.abc import Sequence
from typing import Any

import click

from scantling import __version__
from scantling.cli.groups import HelpfulGroup
from scantling.errors import Fault, FaultsError, Where

TRACE = "SCANTLING_TRACE"  # an environment variable: where it is set a defect shows its traceback

# What a command reads and derives stays until it ends, so that looking through all of it for garbage finds little.
SELDOM = (50_000, 20, 100)

# Name, and the line that --help shows: known without importing the command, so that help starts at once.
COMMANDS = {
    "new": "Begin a design in a new folder.",
    "try": "Ask one question without any file: a belt, a screw, a rod, a fit, a joint, a heater.",
    "inspect": "Say what is in a drawing or a mesh: holes, patterns, bores, thicknesses.",
    "check": "Check a design in a workshop, before anything is ordered.",
    "frame": "Compare the sheets that a frame may be made of, in a table and a picture.",
    "map": "Show and draw at which speeds and accelerations each belt axis stays sound.",
    "plan": "Choose, buy, cut, draw: everything needed to make the machine.",
    "whatif": "Show all that follows from other parts at some places.",
    "explain": "Explain a finding: its formula with the numbers put in, its limit, what would mend it.",
    "ranges": "Show which local parts may be taken: the range of each size, material and rating.",
    "why": "Show what every other part at a place would cost, or what forbids it.",
    "measure": "Show how to measure parts without papers, and what is worth measuring.",
    "schema": "Write the JSON Schemas with which editors complete and check the files.",
}


class LazyGroup(HelpfulGroup):
    """A group that imports a command's module only when that command is run or asked for its help."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 - the base class names it
        """Return the commands in the order of the job."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002 - as above
        """Return a command, imported now."""
        if cmd_name not in COMMANDS:
            return None
        module = importlib.import_module(f"scantling.cli.commands.{cmd_name}_")
        command: click.Command = module.command
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:  # noqa: ARG002 - as above
        """List the commands without importing them."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


EPILOG = """\b
Examples:
  scantling try belt --teeth 16 --pitch "2 mm" --mass "1.5 kg" --acceleration "2000 mm/s2" --motor "0.26 N m"
  scantling plan examples/alder --workshop village --copies 4
  scantling whatif examples/alder --workshop village y-pulley=pulley-16

\b
Ends with 0 where all is sound, 1 where something is not, 2 where the input cannot be read
(3 would be a defect of scantling).
Completion for bash: eval "$(_SCANTLING_COMPLETE=bash_source scantling)"   (also zsh_source, fish_source)
"""


@click.group(
    cls=LazyGroup, epilog=EPILOG, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 110}
)
@click.version_option(__version__, "-V", "--version", prog_name="scantling")
def app() -> None:
    """From a design, a workshop and a number of copies to the cheapest machine that still works.

    "Sound" is a calculation on what was described, not a safety approval.
    """


def main(arguments: list[str] | None = None) -> None:
    """Run the command line; faults go to the error stream, one a line, and end with 2.

    A defect of ours ends with 3 and a line that says so: never with 1, which means "not sound".
    """
    gc.set_threshold(*SELDOM)
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # our matrices are small: threads would only wait for each other
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="replace")
    try:
        code = run(arguments)
    except Exception as error:
        if os.environ.get(TRACE):
            raise
        click.echo(f"a defect of scantling, not of your files: {type(error).__name__}: {error}", err=True)
        click.echo(f"nothing was written; please report it with what {TRACE}=1 shows", err=True)
        code = 3
    sys.exit(code)


def run(arguments: list[str] | None = None) -> int:
    """Return the exit code of one call."""
    given = sys.argv[1:] if arguments is None else arguments
    as_json = "--json" in given
    try:
        outcome: Any = app.main(args=given, prog_name="scantling", standalone_mode=False)
        return outcome if isinstance(outcome, int) else 0
    except FaultsError as error:
        return _refuse(error.faults, as_json)
    except click.exceptions.Abort:
        return _refuse([Fault("STOP-01", "stopped", "nothing was written")], as_json)
    except click.ClickException as error:
        if as_json:
            _echo_json([Fault("USE-01", error.format_message(), "see --help", Where("scantling"))])
        error.show()
        return 2
    except OSError as error:
        where = Where(str(error.filename or ""))
        reason = error.strerror or str(error)
        return _refuse([Fault("FILE-01", reason, "see that it is there and yours", where)], as_json)


def _refuse(faults: Sequence[Fault], as_json: bool = False) -> int:
    """Print faults, one a line; as JSON on the output too where that was asked for."""
    if as_json:
        _echo_json(faults)
    for fault in faults:
        click.echo(str(fault), err=True)
    if len(faults) > 1:
        click.echo(f"{len(faults)} faults; nothing was written", err=True)
    return 2


def _echo_json(faults: Sequence[Fault]) -> None:
    click.echo(json.dumps({"faults": [dataclasses.asdict(fault) for fault in faults]}, indent=1))
