"""What the shell offers while a command is being typed: workshops, places, parts."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import click
from click.shell_completion import CompletionItem

Items = list[CompletionItem[Any]]


def complete_workshop(ctx: click.Context, param: click.Parameter, incomplete: str) -> Items:  # noqa: ARG001 - click's
    """Offer the workshops beside the design, and files."""
    words = ctx.params.get("words") or ()
    here = (Path(words[0]) if words and Path(words[0]).is_dir() else Path()) / "workshops"
    names = sorted(path.stem for path in here.glob("*.yaml"))
    return [*_beginning(names, incomplete), CompletionItem(incomplete, type="file")]


def complete_words(ctx: click.Context, param: click.Parameter, incomplete: str) -> Items:  # noqa: ARG001 - as above
    """Offer folders, then places as ``place=``, then the parts that may fill the place.

    bash takes ``=`` for the end of a word, so ``y-pulley=`` arrives as ``y-pulley`` and ``=``.
    """
    words = [*(ctx.params.get("words") or ())]
    folder = Path(words[0]) if words and Path(words[0]).is_dir() else Path()
    options = _options(folder)
    if words and words[-1] == "=":
        return _beginning(options.get(words[-2] if len(words) > 1 else "", ()), incomplete)
    if words and words[-1] in options:  # the "=" was taken for an empty word
        return _beginning(options[words[-1]], incomplete)
    place, equals, begun = incomplete.partition("=")
    if equals:
        return [CompletionItem(f"{place}={part}") for part in options.get(place, ()) if part.startswith(begun)]
    folders: Items = [] if words else [CompletionItem(incomplete, type="dir")]
    return [*_beginning(_endings(ctx, options), incomplete), *folders]


def _endings(ctx: click.Context, options: Mapping[str, tuple[str, ...]]) -> list[str]:
    ending = "" if ctx.command.name == "why" else "="
    return [f"{place}{ending}" for place in options]


def _beginning(names: Any, incomplete: str) -> Items:
    return [CompletionItem(name) for name in names if name.startswith(incomplete)]


def _options(folder: Path) -> Mapping[str, tuple[str, ...]]:
    """Return the parts that may fill each place; nothing where the design cannot be read just now."""
    from scantling.api.opening import place_options
    from scantling.errors import ScantlingError

    try:
        return place_options(folder) if (folder / "design.yaml").is_file() else {}
    except (ScantlingError, OSError):
        return {}
