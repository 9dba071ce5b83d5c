"""Which lengths of a part can be named in sizes, mates and holes, by the names that files use."""

from __future__ import annotations

from functools import cache
from typing import Any, get_args

from scantling.model.kinds import Motor
from scantling.model.part import Part
from scantling.quantities import Figure, dimension_of, file_name_of

# Short words for features whose field has a longer name.
SHORT_WORDS: dict[tuple[type[Part], str], str] = {
    (Motor, "tapped"): "tapped-depth",
    (Motor, "shaft"): "shaft-diameter",
}


def feature_name(kind: type[Part], word: str) -> str:
    """Return a feature's full name for a short word (``tapped`` of a motor), else the word itself."""
    return SHORT_WORDS.get((kind, word), word)


@cache
def figure_fields(kind: type[Part]) -> dict[str, str]:
    """Return the fields of a kind of part that are figures of any dimension, by their name in files."""
    fields = ((name, field) for name, field in kind.model_fields.items() if dimension_of(name) is not None)
    return {file_name_of(name): name for name, field in fields if _holds_figure(field.annotation)}


def _holds_figure(annotation: Any) -> bool:
    return annotation is Figure or any(_holds_figure(one) for one in get_args(annotation))


@cache
def length_fields(kind: type[Part]) -> dict[str, str]:
    """Return the fields of a kind of part that are lengths, by their name in files."""
    return {file_name_of(field): field for field in kind.model_fields if field.endswith("_mm")}
