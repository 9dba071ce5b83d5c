"""Orders from somebody's list alone: pieces or packs, what such lists forget, the cheapest baskets for N."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from pathlib import Path

from scantling.api.alone_result import Alone
from scantling.build.case import Case
from scantling.build.reference import reference_build
from scantling.choosing.choose import buy, open_choice
from scantling.choosing.result import Infeasible, Purchase
from scantling.model.project import Project
from scantling.model.workshop import Offer, Workshop
from scantling.plans.concerns import infeasible_lines
from scantling.plans.csv_text import csv_bytes
from scantling.plans.file_names import file_names
from scantling.plans.orders import order_sheets, order_table
from scantling.quantities import show_money, show_value
from scantling.reading.lists import (
    ForeignList,
    LeftOut,
    ListMatch,
    ListRead,
    ListRow,
    match_text,
    open_list,
    read_list,
    read_match,
)
from scantling.reading.name_matching import name_proposals
from scantling.reading.texts import design_from_texts
from scantling.tables.fastener_names import is_standard_fastener

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
    """Return the orders that a list asks for; raises ``FaultsError`` where the list cannot be understood.

    How its columns are read is kept beside it, in a file of its own that the maker mends once.
    """
    foreign = open_list(path)
    kept = path.with_name(path.stem + MATCH_ENDING)
    match = read_match(kept) if kept.is_file() else foreign.proposed().model_copy(update={"currency": shop.currency})
    sold = sorted({offer.part for offer in shop.offers} | {stock.part for stock in shop.stock})
    question = _question(foreign, match, kept.name)
    if question:
        asked = (*_columns(match), question)
        return Alone(path.name, asked, {}, whole=False, beside={kept.name: _match_file(match, [], ask=True)})
    read = read_list(foreign, match)
    known = [row for row in read.rows if row.part in sold and row.pieces]
    unknown = [row for row in read.rows if row not in known]
    told = [*_columns(match), *_left(read), *_unknown(unknown, sold), *_forgotten(read.rows)]
    kept_beside = {kept.name: _match_file(match, _meant(unknown, sold))}
    if not known:
        none = "nothing on the list can be bought in this workshop"
        return Alone(path.name, (*told, none), {}, whole=False, beside=kept_beside)
    case = _case(known, shop, copies)
    bought = buy(open_choice(case, (), copies), reference_build(case, copies))
    lines, files = _ordered(case, bought, copies)
    whole = not unknown and all(map(_is_heading, read.left_out)) and isinstance(bought, Purchase)
    return Alone(path.name, (*told, *lines), files, whole, kept_beside)


def _question(foreign: ForeignList, match: ListMatch, kept: str) -> str:
    """Ask what the quantity counts where the list speaks of packs; nothing where that is clear."""
    if match.quantity_means is not None or not ("pack" in match.columns or foreign.pack_hints):
        return ""
    hint = f"row {foreign.pack_hints[0].row}, {foreign.pack_hints[0].text!r}" if foreign.pack_hints else "its columns"
    return f"does the quantity count pieces or packs? ({hint}) Say quantity-means: pieces, or packs, in {kept}"


def _match_file(match: ListMatch, meant: Sequence[tuple[str, str]], ask: bool = False) -> bytes:
    """Return the match with what it leaves open as comments, to be taken away one by one."""
    lines = ["# How the list beside this file is read. Mend what is wrong; take the # away where it is right."]
    lines += ["# quantity-means: pieces   # or: packs"] if ask else []
    lines += ["# parts:", *(f"#   '{text}': {part}" for text, part in meant)] if meant else []
    return ("\n".join(lines) + "\n" + match_text(match)).encode()


def _meant(rows: Sequence[ListRow], sold: Sequence[str]) -> list[tuple[str, str]]:
    """Return, for names that nobody sells, the nearest that somebody does."""
    near = {row.part: name_proposals(row.part, sold) for row in rows if row.part not in sold}
    return [(text.replace("'", "''"), names[0]) for text, names in near.items() if names]


def _ordered(case: Case, bought: Purchase | Infeasible, copies: int) -> tuple[list[str], dict[str, bytes]]:
    if not isinstance(bought, Purchase):
        return infeasible_lines(bought, case.project.workshop.currency), {}
    sheets = order_sheets(case, bought)
    lines, files = [], {}
    for sheet, name in zip(sheets, file_names([sheet.vendor for sheet in sheets], ".csv"), strict=True):
        files[f"orders/{name}"] = csv_bytes(order_table(sheet, bought.currency))
        many = "line" if len(sheet.rows) == 1 else "lines"
        lines.append(f"{sheet.title}: {len(sheet.rows)} {many}, {dict(sheet.sums)['total']}")
    lines.append(f"outlay for {copies}: {show_money(bought.cost_minor, bought.currency)}")
    return lines, files


def _case(rows: Sequence[ListRow], shop: Workshop, copies: int) -> Case:
    """Return a case in which each part is a place of a design that knows no more of it.

    A piece of what is sold by the bar, board or spool is one of these: a list says no more either.
    """
    pieces: Counter[str] = Counter()
    for row in rows:
        pieces[row.part] += row.pieces or 0
    names = {f"row-{number}": part for number, part in enumerate(sorted(pieces), 1)}
    sections = {
        "machine": {"name": "a list"},
        "parts": {part: {"kind": "thing"} for part in pieces if not is_standard_fastener(part)},
        "places": {name: {"reference": part, "quantity": str(pieces[part])} for name, part in names.items()},
    }
    offers = tuple(_by_the_piece(offer) for offer in shop.offers if offer.part in pieces)
    stock = tuple(one.model_copy(update={"length_mm": None}) for one in shop.stock if one.part in pieces)
    workshop = shop.model_copy(update={"copies": copies, "offers": offers, "stock": stock})
    return Case(Project(design_from_texts(sections, "the list"), workshop))


def _by_the_piece(offer: Offer) -> Offer:
    """Return an offer of bars, boards or spools as one of pieces, its size in the remark."""
    sizes = [
        show_value(one.value, "mm") for one in (offer.length_mm, offer.board_width_mm, offer.board_depth_mm) if one
    ]
    note = "; ".join(text for text in (offer.note, " × ".join(sizes)) if text)
    plain = {"length_mm": None, "board_width_mm": None, "board_depth_mm": None, "net_mass_kg": None}
    return offer.model_copy(update={**plain, "note": note})


def _columns(match: ListMatch) -> list[str]:
    return [f"column {header!r} is read as the {role}" for role, header in match.columns.items()]


def _left(read: ListRead) -> list[str]:
    headings = [row.text for row in read.left_out if _is_heading(row)]
    told = [f"read as headings: {', '.join(headings)}"] if headings else []
    return told + [f"left out, {r.where}: {r.text} ({r.because})" for r in read.left_out if not _is_heading(r)]


def _is_heading(row: LeftOut) -> bool:
    """True where one cell alone is filled; cells are told apart by a raised dot."""
    return " · " not in row.text


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
