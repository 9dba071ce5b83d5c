"""Orders from somebody's list alone: pieces or packs, what such lists forget, the cheapest baskets for N."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from pathlib import Path

from scantling.choosing.choose import buy, open_choice

from scantling.api.alone_result import Alone
from scantling.build.case import Case
from scantling.build.reference import reference_build
from scantling.choosing.result import Purchase
from scantling.model.project import Project
from scantling.model.workshop import Workshop
from scantling.plans.csv_text import csv_bytes
from scantling.plans.orders import order_sheets, order_table
from scantling.quantities import show_money
from scantling.reading.lists import ListMatch, ListRead, ListRow, match_text, open_list, read_list, read_match
from scantling.reading.name_matching import name_proposals
from scantling.reading.standard_names import is_standard_fastener
from scantling.reading.texts import design_from_texts

MATCH_ENDING = ".match.yaml"

# What lists leave out, with words that show it is there after all (common practice, no source).
FORGOTTEN = {
    "belt with its width and length": ("belt",),
    "wire, crimps and ferrules": ("wire", "cable", "ferrule", "crimp"),
    "cable ties and heat-shrink": ("tie", "shrink"),
    "fuse and mains inlet": ("fuse", "inlet"),
    "grease, glue and threadlocker": ("grease", "glue", "locker"),
    "filament and its grams": ("filament", "petg", "pla", "abs"),
    "feet": ("foot", "feet"),
}


def plan_list(path: Path, shop: Workshop, copies: int) -> Alone:
    """Return the orders that a list asks for; raises ``FaultsError`` where the list cannot be understood."""
    foreign = open_list(path)
    kept = path.with_name(path.stem + MATCH_ENDING)
    match = read_match(kept) if kept.is_file() else foreign.proposed()
    read = read_list(foreign, match)
    sold = sorted({offer.part for offer in shop.offers} | {stock.part for stock in shop.stock})
    known = [row for row in read.rows if row.part in sold and row.pieces]
    unknown = [row for row in read.rows if row not in known]
    files = {path.stem + MATCH_ENDING: match_text(match).encode()}
    lines = [*_columns(match), *_left(read), *_unknown(unknown, sold), *_forgotten(read.rows)]
    bought = _buy(known, shop, copies) if known else None
    if bought is None:
        return Alone(path.name, (*lines, "nothing on the list can be bought in this workshop"), files, whole=False)
    case, purchase = bought
    for sheet in order_sheets(case, purchase):
        files[f"orders/{sheet.vendor}.csv"] = csv_bytes(order_table(sheet, purchase.currency))
        lines.append(f"{sheet.title}: {len(sheet.rows)} lines, {dict(sheet.sums)['total']}")
    lines.append(f"outlay for {copies}: {show_money(purchase.cost_minor, purchase.currency)}")
    return Alone(path.name, tuple(lines), files, whole=not unknown and not read.left_out)


def _buy(rows: Sequence[ListRow], shop: Workshop, copies: int) -> tuple[Case, Purchase] | None:
    """Buy the rows' pieces for all copies; each part is a place of a design that knows no more of it."""
    pieces: Counter[str] = Counter()
    for row in rows:
        pieces[row.part] += row.pieces or 0
    names = {f"row-{number}": part for number, part in enumerate(sorted(pieces), 1)}
    sections = {
        "machine": {"name": "a list"},
        "parts": {part: {"kind": "thing"} for part in pieces if not is_standard_fastener(part)},
        "places": {name: {"reference": part, "quantity": str(pieces[part])} for name, part in names.items()},
    }
    known = {offer.part for offer in shop.offers if offer.part in pieces}
    workshop = shop.model_copy(
        update={
            "copies": copies,
            "offers": tuple(offer for offer in shop.offers if offer.part in known),
            "stock": tuple(stock for stock in shop.stock if stock.part in pieces),
        }
    )
    case = Case(Project(design_from_texts(sections, "the list"), workshop))
    bought = buy(open_choice(case, (), copies), reference_build(case, copies))
    return (case, bought) if isinstance(bought, Purchase) else None


def _columns(match: ListMatch) -> list[str]:
    return [f"column {header!r} is read as the {role}" for role, header in match.columns.items()]


def _left(read: ListRead) -> list[str]:
    return [f"left out, {row.where}: {row.text} ({row.because})" for row in read.left_out]


def _unknown(rows: Sequence[ListRow], sold: Sequence[str]) -> list[str]:
    found = []
    for row in rows:
        if row.part in sold:
            found.append(f"not bought, {row.where}: how many pieces {row.part!r} has in a pack is not said")
            continue
        near = name_proposals(row.part, sold)
        ask = (
            f"do you mean {' or '.join(near)}? Say so under parts: in the match file"
            if near
            else "nobody here sells it"
        )
        found.append(f"not bought, {row.where}: {row.part!r}; {ask}")
    return found


def _forgotten(rows: Sequence[ListRow]) -> list[str]:
    text = " ".join(f"{row.part} {row.note}" for row in rows).casefold()
    missing = [what for what, words in FORGOTTEN.items() if not any(word in text for word in words)]
    return [f"lists often leave out what is not on this one: {'; '.join(missing)}"] if missing else []
