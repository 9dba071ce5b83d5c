"""Plan one file alone: a template from a drawing, orders from somebody's list."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from scantling.api.alone_result import Alone as Alone  # faces name its type
from scantling.errors import Fault, FaultsError, QuantityError, Where
from scantling.model.workshop import Printer, Workshop
from scantling.quantities import parse_figure
from scantling.reading.project import NO_WORKSHOP
from scantling.reading.workshop import read_workshop

DRAWINGS = (".dxf", ".svg")


def plan_file(
    path: Path, workshop: str | None = None, copies: int | None = None, bars: Sequence[str] | None = None
) -> Alone:
    """Return the template of a drawing or the orders of a list; raises ``FaultsError``.

    bars : of the paper printer: drawn length of the check bars, as read across and along the paper
    """
    shop = read_workshop(Path(workshop)) if workshop else NO_WORKSHOP
    if path.suffix.lower() in DRAWINGS:
        from scantling.api.alone_drawing import plan_drawing

        return plan_drawing(path, _corrected(shop, bars))
    from scantling.api.alone_list import plan_list

    return plan_list(path, _with_offers(shop), copies or shop.copies)


def _corrected(shop: Workshop, bars: Sequence[str] | None) -> Workshop:
    if not bars:
        return shop
    try:
        drawn, across, along = (parse_figure(text, "length") for text in bars)
    except QuantityError as error:
        raise FaultsError([Fault("ALONE-03", error.what, error.mend, Where("--bars"))]) from error
    return shop.model_copy(update={"printer": Printer(bar_mm=drawn, across_mm=across, along_mm=along)})


def _with_offers(shop: Workshop) -> Workshop:
    if shop.offers:
        return shop
    mend = "name a workshop that has vendors and offers: --workshop FILE"
    raise FaultsError([Fault("ALONE-01", "there is nothing to buy from", mend, Where("--workshop"))])
