"""``scantling try``: one sub-command for each single question."""

from __future__ import annotations

from typing import Any

import click

from scantling.cli.groups import HelpfulGroup


class Trials(HelpfulGroup):
    """A group whose commands are the trials that the api knows."""

    kind = "question"

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 - the base class names it
        """Return the questions that can be asked."""
        from scantling.api.trying import TRIALS

        return list(TRIALS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002 - as above
        """Return one question as a command."""
        from scantling.api.trying import TRIALS

        trial = TRIALS.get(cmd_name)
        if trial is None:
            return None
        options: list[click.Parameter] = [click.Option([f"--{ask.name}"], help=_help(ask)) for ask in trial.asks]
        options.append(click.Option(["--json", "as_json"], is_flag=True, help="Print JSON instead of text."))
        return click.Command(
            trial.name,
            params=options,
            callback=_asking(trial.name),
            help=trial.title,
            epilog=f"Example:  {trial.example}",
        )


def _help(ask: Any) -> str:
    return f"{ask.help} Needed." if ask.needed else str(ask.help)


def _asking(name: str) -> Any:
    def ask(as_json: bool, **texts: str | None) -> int:
        from scantling.api.trying import try_one
        from scantling.cli.text.trying import show_tried

        given = {key.replace("_", "-"): text for key, text in texts.items() if text is not None}
        return show_tried(try_one(name, given), as_json)

    return ask


@click.command(cls=Trials, epilog='Example:  scantling try fit --shaft "5 mm" --bore "5 mm"')
def command() -> None:
    """Ask one question without any file; the same checks answer as for a whole machine."""
