"""The command ``scantling`` and how it ends: 0 sound, 1 not sound, 2 bad input."""

from __future__ import annotations

import importlib
import sys
from typing import Any

import click

from scantling import __version__
from scantling.errors import FaultsError, ScantlingError

# Name, and the line that --help shows: known without importing the command, so that help starts at once.
COMMANDS = {
    "new": "Begin a design in a new folder.",
    "try": "Ask one question without any file: a belt, a screw, a rod, a fit, a joint, a heater.",
    "inspect": "Say what is in a drawing or a mesh: holes, patterns, bores, thicknesses.",
    "check": "Check a design in a workshop, before anything is ordered.",
    "plan": "Choose, buy, cut, draw: everything needed to make the machine.",
    "whatif": "Show all that follows from other parts at some places.",
    "why": "Show what every other part at a place would cost, or what forbids it.",
    "schema": "Write the JSON Schemas with which editors complete and check the files.",
}


class LazyGroup(click.Group):
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

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """Name the nearest command where a name is not known."""
        from scantling.errors import nearest

        if args and not args[0].startswith("-") and args[0] not in COMMANDS:
            ctx.fail(f"no command called {args[0]!r} - {nearest(args[0], COMMANDS)}")
        return super().resolve_command(ctx, args)

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
Ends with 0 where all is sound, 1 where something is not, 2 where the input cannot be read.
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
    """Run the command line; faults go to the error stream, one a line, and end with 2."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="replace")
    sys.exit(run(arguments))


def run(arguments: list[str] | None = None) -> int:
    """Return the exit code of one call."""
    try:
        outcome: Any = app.main(args=arguments, standalone_mode=False)
        return outcome if isinstance(outcome, int) else 0
    except FaultsError as error:
        return _refuse([str(fault) for fault in error.faults])
    except ScantlingError as error:
        return _refuse([str(error)])
    except click.exceptions.Abort:
        return _refuse(["stopped"])
    except click.ClickException as error:
        error.show()
        return 2
    except OSError as error:
        return _refuse([f"{error.filename or ''}: {error.strerror or error}".lstrip(": ")])


def _refuse(lines: list[str]) -> int:
    for line in lines:
        click.echo(line, err=True)
    if len(lines) > 1:
        click.echo(f"{len(lines)} faults; nothing was written", err=True)
    return 2
