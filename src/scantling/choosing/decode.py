"""From column values back to answers and decisions."""

from __future__ import annotations

from scantling.choosing.model import Model
from scantling.choosing.purchase import Decisions
from scantling.model.build import Key


def answers_of(model: Model, values: list[float]) -> dict[Key, str]:
    """Return the answers that column values mean."""
    return model.answers.taken(values)


def decisions_of(model: Model, values: list[float]) -> Decisions:
    """Return what column values decide besides the answers."""
    supplies = model.supplies
    packs = {name: round(columns.packs.value(values)) for name, columns in sorted(supplies.packs.items())}
    cuts = tuple(
        (bars.part, bars.bar.length_um, pattern, times) for bars in supplies.bars for pattern, times in bars.cut(values)
    )
    sizes = {part: size for (part, size), share in sorted(supplies.sizes.items()) if share.value(values) > 0.5}
    return Decisions({name: count for name, count in packs.items() if count}, cuts, sizes)
