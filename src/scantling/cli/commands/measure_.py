"""``scantling measure``."""

from __future__ import annotations

from pathlib import Path

import click

from scantling.cli.completing import complete_workshop
from scantling.cli.options import find_lock, json_option, lock_option


@click.command("measure", epilog="Example:  scantling measure rod motor")
@click.argument("words", nargs=-1, metavar="[FOLDER] [KIND]...")
@click.option(
    "--workshop",
    "-w",
    help="A file, or the name of one in the folder's workshops/.",
    shell_complete=complete_workshop,
)
@lock_option
@json_option
def command(words: tuple[str, ...], workshop: str | None, lock: Path | None, as_json: bool) -> int:
    """Show how to measure parts without papers, and what is worth measuring on a design.

    KIND is rod, motor, belt, sheet, bushing or guide; without a FOLDER the cards alone are shown.
    """
    from scantling.api.measuring import card_kinds, measuring_cards, worth_measuring
    from scantling.api.opening import open_design
    from scantling.cli.text.measuring import show_measuring

    kinds = tuple(word for word in words if word in card_kinds())
    folders = [Path(word) for word in words if word not in kinds]
    if len(folders) > 1:
        raise click.UsageError(f"{folders[1]} is no kind of part with cards: {', '.join(card_kinds())}")
    if not folders:
        return show_measuring((), measuring_cards(kinds), as_json)
    session = open_design(folders[0], workshop, None, find_lock(folders[0], workshop, lock))
    wanted = tuple(one for one in worth_measuring(session) if not kinds or one.card.kind in kinds)
    cards = {one.card.number: one.card for one in wanted}
    return show_measuring(wanted, tuple(cards[number] for number in sorted(cards)), as_json)
