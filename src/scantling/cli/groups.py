"""Groups of commands that name the nearest where a command is not known."""

from __future__ import annotations

import click

from scantling.errors import nearest


class HelpfulGroup(click.Group):
    """A group of commands that says which command may have been meant."""

    kind = "command"

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """Return the command that the first word names; fail with the nearest names."""
        known = self.list_commands(ctx)
        if args and not args[0].startswith("-") and args[0] not in known and not ctx.resilient_parsing:
            ctx.fail(f"no {self.kind} called {args[0]!r} - {nearest(args[0], known)}")
        return super().resolve_command(ctx, args)
