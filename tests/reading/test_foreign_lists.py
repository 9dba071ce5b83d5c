"""Somebody else's list: proposals, the question of pieces and packs, every row read or named."""

from __future__ import annotations

import io

import openpyxl
import pytest

from scantling.errors import FaultsError
from scantling.quantities import Money
from scantling.reading.list_columns import ROLES
from scantling.reading.lists import ListMatch, match_text, open_list, read_list, read_match
from scantling.reading.name_matching import name_proposals

LIST = """\
Plotter parts, version of last spring

Item,Qty,Pack size,Price,Supplier,Remarks
Frame
smooth rod 8 mm,2,1,4.80,yard,cut to 312
ball bushing (pack of 4),1,4,4.20,post,
M3 x 12 socket cap screw,1,50,2.20,post,
,3,,,,no name
belt,one,1,2.40,post,
pulley,1,0,3.60,post,
feet,4,,$1,yard,
"""


@pytest.fixture
def plotter_list(tmp_path):
    """The list in a file."""
    path = tmp_path / "their list.csv"
    path.write_text(LIST, encoding="utf-8")
    return path


def test_columns_are_proposed_with_their_reasons(plotter_list):
    foreign = open_list(plotter_list)
    assert foreign.headers == ("Item", "Qty", "Pack size", "Price", "Supplier", "Remarks")
    proposed = {one.role: (one.header, one.sure) for one in foreign.proposals}
    assert proposed == {
        "part": ("Item", True),
        "quantity": ("Qty", True),
        "pack": ("Pack size", True),
        "price": ("Price", True),
        "vendor": ("Supplier", True),
        "note": ("Remarks", True),
    }
    assert foreign.proposals[0].because == "'Item' is a word for it"
    assert [(hint.row, hint.pack) for hint in foreign.pack_hints] == [(6, 4)]


def test_nothing_is_taken_before_the_quantity_is_clear(plotter_list):
    foreign = open_list(plotter_list)
    with pytest.raises(
        FaultsError, match=r"does the quantity count pieces or packs\? \(row 6 speaks of packs\).*READ-60"
    ):
        read_list(foreign, foreign.proposed())


def test_every_row_is_read_or_named(plotter_list):
    foreign = open_list(plotter_list)
    match = foreign.proposed().model_copy(update={"quantity_means": "packs", "currency": "EUR"})
    read = read_list(foreign, match)
    assert [(row.part, row.quantity, row.pieces, row.price, row.where.line) for row in read.rows] == [
        ("smooth rod 8 mm", 2, 2, Money(480, "EUR"), 5),
        ("ball bushing (pack of 4)", 1, 4, Money(420, "EUR"), 6),
        ("M3 x 12 socket cap screw", 1, 50, Money(220, "EUR"), 7),
    ]
    assert read.rows[0].note == "cut to 312"
    reasons = {row.where.line: row.because for row in read.left_out}
    assert sorted(reasons) == [4, 8, 9, 10, 11]
    assert "no quantity" in reasons[4]
    assert "no part" in reasons[8]
    assert "'one' is no count" in reasons[9]
    assert "pack of 0" in reasons[10]
    assert "USD" in reasons[11]


def test_pieces_are_pieces(plotter_list):
    foreign = open_list(plotter_list)
    match = foreign.proposed().model_copy(update={"quantity_means": "pieces", "currency": "EUR"})
    assert [row.pieces for row in read_list(foreign, match).rows] == [2, 1, 1]
    names = {"ball bushing (pack of 4)": "bushing-8-ball"}
    match = match.model_copy(update={"parts": names})
    assert read_list(foreign, match).rows[1].part == "bushing-8-ball"


def test_packs_without_their_size_leave_the_pieces_open(tmp_path):
    path = tmp_path / "list.csv"
    path.write_text("part;quantity\nspring;3\nnut;4x\n", encoding="utf-8")
    foreign = open_list(path)
    packs = ListMatch(columns={"part": "part", "quantity": "quantity"}, quantity_means="packs")
    assert [(row.quantity, row.pieces) for row in read_list(foreign, packs).rows] == [(3, None), (4, None)]
    pieces = packs.model_copy(update={"quantity_means": None})
    assert [row.pieces for row in read_list(foreign, pieces).rows] == [3, 4]


@pytest.mark.parametrize(
    ("columns", "words"),
    [
        ({"part": "Item"}, "no column is said to hold the quantity"),
        ({"part": "Items", "quantity": "Qty"}, "did you mean Item"),
        ({"part": "Item", "quantity": "Qty", "colour": "Price"}, "'colour' is nothing"),
    ],
)
def test_a_match_that_does_not_fit(columns, words, plotter_list):
    with pytest.raises(FaultsError, match=words):
        read_list(open_list(plotter_list), ListMatch(columns=columns, quantity_means="pieces"))


def test_a_match_is_kept_in_a_file(tmp_path, plotter_list):
    match = ListMatch(
        columns={"part": "Item: name", "quantity": "Qty's"},
        quantity_means="packs",
        currency="EUR",
        parts={"M3 x 12 'cap'": "M3x12 socket head screw"},
    )
    path = tmp_path / "match.yaml"
    path.write_text(match_text(match), encoding="utf-8")
    assert read_match(path) == match
    path.write_text("columns: {part: Item}\nquantity-means: crates\n", encoding="utf-8")
    with pytest.raises(FaultsError, match="'crates'"):
        read_match(path)


def test_a_list_in_a_workbook(tmp_path):
    book = openpyxl.Workbook()
    for row in (["what", "how many needed", "cost"], ["rod", 2, 4.8], ["nut", 10, 0.05]):
        book.active.append(row)
    book.active["C2"].number_format = '0.00" EUR"'
    out = io.BytesIO()
    book.save(out)
    path = tmp_path / "list.xlsx"
    path.write_bytes(out.getvalue())
    foreign = open_list(path)
    assert {one.role: one.sure for one in foreign.proposals} == {"part": True, "quantity": False, "price": True}
    rows = read_list(foreign, foreign.proposed().model_copy(update={"currency": "EUR"})).rows
    assert [(row.part, row.pieces, row.price.minor) for row in rows] == [("rod", 2, 480), ("nut", 10, 5)]


def test_a_file_that_is_no_list(tmp_path):
    path = tmp_path / "list.pdf"
    path.write_bytes(b"%PDF")
    with pytest.raises(FaultsError, match="READ-13"):
        open_list(path)
    (tmp_path / "empty.csv").write_text("\n,\n")
    with pytest.raises(FaultsError, match="READ-05"):
        open_list(tmp_path / "empty.csv")
    with pytest.raises(FaultsError, match="READ-01"):
        open_list(tmp_path / "none.csv")


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("M3 x 12 socket cap screw", "M3x12 socket head screw"),
        ("M5x20 button head (ISO 7380)", "M5x20 button head screw"),
        ("Screw, M4 x 16 mm countersunk", "M4x16 countersunk screw"),
        ("M3 nylon lock nuts", "M3 lock nut"),
        ("nut M8", "M8 nut"),
        ("penny washer M5", "M5 large washer"),
        ("smooth rod 8", "smooth-rod-8"),
        ("Bushing 8 ball", "bushing-8-ball"),
    ],
)
def test_what_a_name_may_mean(text, first):
    assert name_proposals(text, ["smooth-rod-8", "smooth-rod-10", "bushing-8-ball", "ply-6"])[0] == first


def test_a_name_that_means_nothing():
    assert name_proposals("widget", ["smooth-rod-8"]) == ()
    assert name_proposals("M3 x 13 socket", ["smooth-rod-8"]) == ()


def test_roles_have_words():
    words = [word for words in ROLES.values() for word in words]
    assert len(words) == len(set(words))
