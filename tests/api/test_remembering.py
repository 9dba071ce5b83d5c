"""What is remembered: taken for the very same question, never for another, and never where it is damaged."""

from __future__ import annotations

import hashlib
import json
import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from scantling.api import following, remembering
from scantling.api.following import stand
from scantling.api.opening import Session, open_design, read_changes
from scantling.api.planning import files_of_plan, make_design_plan, present_choice
from scantling.api.remembering import Chooser
from scantling.choosing import growing
from scantling.choosing.result import Choice, Infeasible

EXAMPLES = Path(__file__).parents[2] / "examples"


class Shelf(dict):
    """A store in memory."""

    def put(self, name: str, data: bytes) -> None:
        self[name] = data

    def named(self, first: str) -> list[str]:
        return [name for name in self if name.startswith(first)]


@pytest.fixture
def shelf() -> Shelf:
    return Shelf()


@pytest.fixture
def folder(tmp_path) -> Path:
    """A copy of the small example, to be changed."""
    return Path(shutil.copytree(EXAMPLES / "plotter", tmp_path / "plotter"))


@pytest.fixture(scope="module")
def session() -> Session:
    """The small example, opened once."""
    return open_design(EXAMPLES / "plotter", "village")


@pytest.fixture(scope="module")
def found(session) -> Choice:
    """What is chosen in the small example."""
    chosen = Chooser(session).choice({}, None)
    assert isinstance(chosen, Choice)
    return chosen


@pytest.fixture
def solved(monkeypatch, found) -> list[str]:
    """Count what is solved; the answer is the one that is right for the example as it is."""
    count: list[str] = []

    def choose(*_args, **_kwargs):
        count.append("solved")
        return found

    monkeypatch.setattr(remembering, "choose", choose)
    return count


@pytest.fixture
def grown(monkeypatch) -> list[str]:
    """Count the trees that are grown."""
    count: list[str] = []
    really = growing._unless_too_large

    def counting(make):
        count.append("grown")
        return really(make)

    monkeypatch.setattr(growing, "_unless_too_large", counting)
    return count


def ask(folder: Path, shelf: Shelf | None, *pins: str, copies: int | None = None, lock: Path | None = None):
    """Open the design anew, as a new run does, and choose."""
    session = open_design(folder, "village", copies, lock)
    return Chooser(session, shelf).choice(read_changes(session, pins), present_choice(session))


def test_the_same_question_is_not_worked_out_again(folder, shelf, solved, grown, found):
    assert ask(folder, shelf) == found
    assert solved == ["solved"]
    assert grown
    grown.clear()
    assert ask(folder, shelf) == found
    assert (solved, grown) == (["solved"], [])


def test_what_comes_out_is_what_went_in(folder, shelf, found):
    first = ask(folder, shelf)
    again = ask(folder, shelf)
    assert again == first == found
    assert repr(again) == repr(first)  # types too: a tuple stays one, a fraction stays one
    impossible = ask(folder, shelf, "x-pulley=pulley-20-inch-bore")
    assert isinstance(impossible, Infeasible)
    assert repr(ask(folder, shelf, "x-pulley=pulley-20-inch-bore")) == repr(impossible)


CHANGES = {
    "a price": ("workshops/offers/village.csv", "post,motor-17,1,9.40", "post,motor-17,1,9.41"),
    "a term of a vendor": ("workshops/village.yaml", "free-above: 90.00", "free-above: 91.00"),
    "a date": ("workshops/village.yaml", "need-by: 2026-03-30", "need-by: 2026-03-29"),
    "the drawer": ("workshops/village.yaml", "part: M3 lock nut, quantity: 6", "part: M3 lock nut, quantity: 7"),
    "an actual size": (
        "workshops/village.yaml",
        "vendors:",
        "actuals: [{part: ply-6, size: thickness, value: 5.8 mm}]\nvendors:",
    ),
    "a length": ("design.yaml", "span: 300 mm", "span: 301 mm"),
    "a part": ("design.yaml", "pulley-16: {kind: pulley, teeth: 16", "pulley-16: {kind: pulley, teeth: 17"),
}


@pytest.mark.parametrize("changed", CHANGES)
def test_a_changed_file_is_another_question(folder, shelf, solved, grown, changed):
    ask(folder, shelf)
    name, before, after = CHANGES[changed]
    text = (folder / name).read_text(encoding="utf-8")
    assert before in text
    (folder / name).write_text(text.replace(before, after), encoding="utf-8")
    solved.clear()
    grown.clear()
    ask(folder, shelf)
    assert solved == ["solved"]
    assert grown
    (folder / name).write_text(text, encoding="utf-8")
    ask(folder, shelf)
    assert solved == ["solved"]  # as it was: known


@pytest.mark.parametrize("name", ["meshes/carriage.stl", "drawings/panel.dxf"])
def test_a_changed_drawing_is_another_question(folder, shelf, solved, name):
    ask(folder, shelf)
    data = (folder / name).read_bytes()
    spare = b"999\nsaid beside\n" if name.endswith(".dxf") else b"\n"
    (folder / name).write_bytes(spare + data if name.endswith(".dxf") else data + spare)
    ask(folder, shelf)
    assert solved == ["solved", "solved"]


def test_copies_pins_and_the_choice_in_force_are_part_of_the_question(folder, shelf, solved, tmp_path):
    content = json.loads(files_of_plan(make_design_plan(open_design(folder, "village")))["plan.lock"])
    parts, packs = tmp_path / "parts.lock", tmp_path / "packs.lock"
    parts.write_text(json.dumps({**content, "answers": {**content["answers"], "part x-motor": "motor-17"}}))
    packs.write_text(json.dumps({**content, "packs": {}}))
    questions = (
        {},
        {"copies": 3},
        {"pins": ("panel=ply-8",)},
        {"pins": ("panel=ply-8", "x-rod=rod-8-soft")},
        {"lock": parts},
        {"lock": packs},
    )
    solved.clear()
    for number, question in enumerate(questions, 1):
        asked = dict(question)
        ask(folder, shelf, *asked.pop("pins", ()), **asked)
        assert len(solved) == number, question
    for question in questions:
        asked = dict(question)
        ask(folder, shelf, *asked.pop("pins", ()), **asked)
    assert len(solved) == len(questions)


def test_another_program_remembers_apart(session, shelf, solved, monkeypatch):
    Chooser(session, shelf).choice({}, None)
    monkeypatch.setattr(remembering, "version", lambda name: f"another {name}")
    Chooser(session, shelf).choice({}, None)
    monkeypatch.setattr(remembering, "__version__", "another")
    Chooser(session, shelf).choice({}, None)
    assert solved == ["solved"] * 3


def test_a_choice_in_force_is_its_own_nearest(folder, shelf, solved, found, tmp_path, monkeypatch):
    """The plan after the first finds its answer; and it is the answer that choosing would have given."""
    plan = make_design_plan(open_design(folder, "village"), store=shelf)
    lock = tmp_path / "plan.lock"
    lock.write_bytes(files_of_plan(plan)["plan.lock"])
    assert ask(folder, shelf, lock=lock) == found
    assert solved == ["solved"]
    monkeypatch.undo()
    assert ask(folder, None, lock=lock) == found


def test_a_standing_plan_has_the_orders_that_were_chosen(folder, shelf, tmp_path, monkeypatch):
    """Remembered or bought again: the same baskets, and where they are remembered nothing is bought again."""
    session = open_design(folder, "village")
    pins = read_changes(session, ["panel=ply-8"])
    plan = make_design_plan(session, pins, store=shelf)
    lock = tmp_path / "plan.lock"
    lock.write_bytes(files_of_plan(plan, pins)["plan.lock"])
    again = stand(open_design(folder, "village", lock=lock))
    assert again.plan.purchase == plan.purchase
    monkeypatch.setattr(following, "buy", lambda *_args, **_kwargs: pytest.fail("bought again"))
    assert stand(open_design(folder, "village", lock=lock), shelf).plan.purchase == plan.purchase


def test_other_pins_take_the_same_tables(folder, shelf, grown):
    ask(folder, shelf)
    grown.clear()
    pinned = ask(folder, shelf, "panel=ply-8")
    assert grown == []
    assert pinned == ask(folder, None, "panel=ply-8")  # as with tables grown anew


def damaged(data: bytes) -> dict[str, bytes]:
    """Some of the ways in which a file can be damaged."""
    half = len(data) // 2
    return {
        "emptied": b"",
        "cut short": data[:half],
        "a byte other": data[:half] + bytes([data[half] ^ 1]) + data[half + 1 :],
        "longer": data + b" ",
        "of something else": b"not ours at all",
        "without its seal": data.partition(b"\n")[2],
    }


@pytest.mark.parametrize("kind", ["tables", "choice"])
@pytest.mark.parametrize("how", damaged(b"some bytes\nand more"))
def test_what_is_damaged_is_worked_out_anew(session, shelf, solved, grown, found, kind, how):
    Chooser(session, shelf).choice({}, None)
    whole = dict(shelf)
    for name in shelf.named(kind):
        shelf[name] = damaged(shelf[name])[how]
    if kind == "tables":
        for name in shelf.named("choice"):
            del shelf[name]
    solved.clear()
    grown.clear()
    assert Chooser(session, shelf).choice({}, None) == found
    assert solved == ["solved"]
    assert bool(grown) is (kind == "tables")
    assert dict(shelf) == whole  # and remembered again


def sealed(data: bytes) -> bytes:
    return hashlib.sha256(data).hexdigest().encode() + b"\n" + data


@pytest.mark.parametrize("foreign", [b"", b"{}", b"[]", b"nothing", b'{"a": [[1, 2, 3]]}', b"\xff\xfe", b"[" * 100_000])
def test_what_is_whole_and_yet_not_ours_is_worked_out_anew(session, shelf, solved, found, foreign):
    Chooser(session, shelf).choice({}, None)
    for name in shelf:
        shelf[name] = sealed(foreign)
    solved.clear()
    assert Chooser(session, shelf).choice({}, None) == found
    assert solved == ["solved"]


def test_a_choice_whose_orders_do_not_add_up_is_worked_out_anew(session, shelf, solved, found):
    Chooser(session, shelf).choice({}, None)
    for name in shelf.named("choice"):
        shelf[name] = sealed(remembering.FOUND.dump_json(replace(found, cost_minor=found.cost_minor - 1)))
    solved.clear()
    assert Chooser(session, shelf).choice({}, None) == found
    assert solved == ["solved"]


def test_files_of_one_name_in_two_folders_are_two_files(tmp_path):
    """A workshop that lies outside, in a folder called as one of the design's, hides no change of the design's file."""
    folder = Path(shutil.copytree(EXAMPLES / "plotter", tmp_path / "design" / "plotter"))
    design = (folder / "design.yaml").read_text(encoding="utf-8")
    drawing = "drawings/panel.dxf"
    assert drawing in design
    outside = Path(shutil.copytree(folder / "workshops", tmp_path / "drawings"))
    shop = (outside / "village.yaml").read_text(encoding="utf-8")
    (outside / "village.yaml").write_text(shop.replace("offers/village.csv", "panel.dxf.csv"), encoding="utf-8")
    (outside / "offers" / "village.csv").rename(outside / "panel.dxf.csv")
    (folder / "drawings" / "panel.dxf.csv").write_text("not read\n", encoding="utf-8")

    def digests():
        return open_design(folder, str(outside / "village.yaml")).case.project.digests

    first = digests()
    assert {"drawings/panel.dxf", "drawings/panel.dxf.csv"} <= set(first)
    (outside / "panel.dxf.csv").write_text(
        (outside / "panel.dxf.csv").read_text(encoding="utf-8").replace("9.40", "9.41"), encoding="utf-8"
    )
    assert digests() != first
