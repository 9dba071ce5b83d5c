"""Trees that were grown before, trees of one build, and their text: the same problem by every way."""

from __future__ import annotations

import json
import random
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.build.case import Case
from scantling.build.reference import carry_over, reference_build
from scantling.checks.all import CHECKS
from scantling.choosing import growing
from scantling.choosing.choose import buy
from scantling.choosing.growing import OverAll
from scantling.choosing.needs import board_needs, needs
from scantling.choosing.opened import open_build, open_choice
from scantling.choosing.problem import Problem, Resource
from scantling.choosing.result import Purchase
from scantling.choosing.tree_text import grown_text, read_grown
from scantling.choosing.trees import Leaf, Maker, Node, TooLargeError, Tree, nodes, values
from scantling.model.build import Build, Key
from scantling.plans.next_builder import next_builder_cost
from scantling.reading.project import read_project

SEDGE = Path(__file__).parents[2] / "examples" / "plotter"


@pytest.fixture(scope="module")
def case() -> Case:
    return Case(read_project(SEDGE, "village"))


@pytest.fixture(scope="module")
def grower(case) -> OverAll:
    return OverAll(case)


@pytest.fixture(scope="module")
def problem(case, grower) -> Problem:
    return open_choice(case, CHECKS, 2, grower=grower).problem


def same(one: Tree, other: Tree) -> bool:
    """True where two trees ask the same in the same order, end alike and share alike."""
    pairs: dict[int, int] = {}

    def at(a: Tree, b: Tree) -> bool:
        if id(a) in pairs:
            return pairs[id(a)] == id(b)
        pairs[id(a)] = id(b)
        if isinstance(a, Leaf) or isinstance(b, Leaf):
            alike = isinstance(a, Leaf) and isinstance(b, Leaf)
            return alike and (type(a.value), a.value) == (type(b.value), b.value)
        answers = [answer for answer, _ in a.behind] == [answer for answer, _ in b.behind]
        branches = zip(a.behind, b.behind, strict=True)
        return a.key == b.key and answers and all(at(x, y) for (_, x), (_, y) in branches)

    return at(one, other) and len(nodes(one)) == len(nodes(other))


def all_trees(problem: Problem) -> list[Tree]:
    sums = [tree for terms in problem.sums.values() for tree in terms.terms]
    return [
        *(t.tree for t in problem.tables),
        *(d.tree for d in problem.demands),
        *(d.tree for d in problem.boards),
        *sums,
    ]


def test_text_gives_the_same_trees(grower, problem):
    read = read_grown(grown_text(grower.grown))
    assert list(read) == list(grower.grown)
    assert all(same(read[name], tree) for name, tree in grower.grown.items())
    assert grown_text(read) == grown_text(grower.grown)
    assert any(isinstance(value, tuple) and value for tree in read.values() for value in values(tree))


def test_trees_grown_before_give_the_same_problem_without_a_check(case, grower, problem, monkeypatch):
    before = read_grown(grown_text(grower.grown))
    monkeypatch.setattr(growing, "_unless_too_large", lambda make: pytest.fail("grown anew"))
    again = open_choice(case, CHECKS, 2, grower=OverAll(case, before)).problem
    assert [table.concern for table in again.tables] == [table.concern for table in problem.tables]
    assert all(same(a, b) for a, b in zip(all_trees(again), all_trees(problem), strict=True))
    assert (again.offers, again.domains, again.stock) == (problem.offers, problem.domains, problem.stock)


def test_what_is_not_known_from_before_is_grown(case, grower, problem):
    before = {name: tree for name, tree in grower.grown.items() if not name.startswith("JOINT-01")}
    assert len(before) < len(grower.grown)
    again = OverAll(case, before)
    assert all(
        same(a, b)
        for a, b in zip(all_trees(open_choice(case, CHECKS, 2, grower=again).problem), all_trees(problem), strict=True)
    )
    assert again.grown.keys() == grower.grown.keys()


def test_a_tree_that_was_too_large_is_so_again(case):
    def never():
        raise AssertionError

    with pytest.raises(TooLargeError):
        OverAll(case, read_grown(grown_text({"large": None}))).made("large", never)


KEY = Key("part", "y-rod")
AMOUNTS = ((Resource("rod ½", "length", 300_000), 2), (Resource("M3 nut", "piece"), 4))


@pytest.mark.parametrize("value", [True, False, 0, 1, -7, None, (), AMOUNTS])
def test_a_single_leaf_keeps_its_value_and_its_kind(value):
    read = read_grown(grown_text({"one": Leaf(value)}))["one"]
    assert isinstance(read, Leaf)
    assert (type(read.value), read.value) == (type(value), value)


def test_shared_branches_stay_shared_and_dead_ends_stay():
    made = Maker()
    low = made.node(KEY, [("a", made.leaf(True)), ("", made.leaf(1))])
    dead = Node(Key("get", "y-rod"), ())
    top = made.node(Key("screw", "joint"), [("x", low), ("y", dead), ("z", low)])
    for tree in (top, dead, low):
        assert same(read_grown(grown_text({"t": tree}))["t"], tree)


json_values = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=5) | st.dictionaries(st.text(max_size=3), inner, max_size=3),
)


@given(st.text(max_size=30) | json_values.map(lambda value: json.dumps(value)))
def test_any_other_text_is_refused(text):
    try:
        read = read_grown(text)
    except ValueError:
        return
    assert all(tree is None or isinstance(tree, Leaf | Node) for tree in read.values())


@pytest.fixture(scope="module")
def builds(case) -> list[Build]:
    """The reference, and builds drawn at random."""
    draw, found = random.Random(11), [reference_build(case, 2)]
    for _ in range(12):
        changes = {}
        for key in draw.sample(case.questions, 4):
            changes[key] = draw.choice(case.answers(key, found[0].as_dict() | changes))
        found.append(carry_over(case, found[0], changes))
    return found


def test_one_build_alone_takes_what_it_takes_among_all(case, problem, builds):
    for build in builds:
        alone, answers = open_build(case, build).problem, build.as_dict()
        assert needs(alone, answers) == needs(problem, answers)
        taken = {part: counts for part, counts in board_needs(problem, answers).items() if any(counts.values())}
        assert taken == {part: counts for part, counts in board_needs(alone, answers).items() if any(counts.values())}


def test_one_build_alone_is_bought_as_it_is_among_all(case, builds):
    opened = open_choice(case, (), 2)
    for build in builds[:4]:
        alone, among = buy(open_build(case, build), build), buy(opened, build)
        assert isinstance(alone, Purchase) == isinstance(among, Purchase)
        if isinstance(among, Purchase):
            assert alone.cost_minor == among.cost_minor


def test_the_next_builder_pays_for_one_copy_with_an_empty_drawer(case, builds):
    """As if a workshop without stock, dates and limits were opened for one copy."""
    bare = {"stock": (), "need_by": None, "budget": None, "most_orders": None, "copies": 1}
    project = case.project
    empty = Case(replace(project, workshop=project.workshop.model_copy(update=bare)))
    for build in builds[:4]:
        one = Build(build.answers, 1)
        bought = buy(open_choice(empty, (), 1), one)
        expected = bought.cost_minor if isinstance(bought, Purchase) else None
        assert next_builder_cost(case, build) == expected
