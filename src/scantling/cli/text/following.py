"""What follows, on a terminal or as JSON."""

from __future__ import annotations

from collections.abc import Iterable

import click

from scantling.api.data import following_data, is_sound, json_text
from scantling.api.following import Following
from scantling.cli.text.consequences import show_following
from scantling.cli.text.screen import screen


def show_whatif(stages: Iterable[Following], as_json: bool) -> int:
    """Print each stage as it comes; return the exit code of the build with everything else kept."""
    if as_json:
        found = list(stages)
        click.echo(json_text([following_data(stage) for stage in found]))
        return 0 if all(is_sound(stage.after) for stage in found if stage.stage != "chosen anew") else 1
    console, known, sound = screen(), frozenset[tuple[object, ...]](), True
    for stage in stages:
        show_following(console, stage, known if stage.stage == "complete" else frozenset())
        known |= {(c.topic, c.subject, c.what, c.after) for c in stage.consequences}
        sound = sound if stage.stage == "chosen anew" else is_sound(stage.after)
    return 0 if sound else 1
