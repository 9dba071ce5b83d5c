"""Rules between answers that the design states itself: gets of a part, requires, forbids, also-fills, empty places."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from scantling.build.case import Case
from scantling.choosing.result import Concern
from scantling.choosing.tables import Table
from scantling.choosing.trees import Leaf, Node, Tree
from scantling.model.build import Key
from scantling.model.place import EMPTY, Place, StandIn

YES, NO = Leaf(True), Leaf(False)


def clauses(case: Case) -> tuple[Table, ...]:
    """Return the tables of all rules between answers."""
    design = case.project.design
    found = [*_gets(case)]
    for place in design.places.values():
        for option in place.options:
            found += _option(case, place, option)
    return (*found, *_empties(case))


def _rule(word: str, place: str, detail: str, tree: Tree, *, fixed: bool = False) -> Table:
    return Table(Concern("rule", word, place, detail), tree, fixed=fixed)


def _where(case: Case, key: Key, answers: Sequence[str], then: Tree, otherwise: Tree) -> Node:
    """Return the tree that goes on with ``then`` where the answer is one of ``answers``."""
    return Node(key, tuple((answer, then if answer in answers else otherwise) for answer in case.answers(key, {})))


def _gets(case: Case) -> Iterator[Table]:
    """Yield that a place is got in a way that its part allows."""
    for place in case.project.design.places:
        key, part_key = Key("get", place), case.part_key(place)
        ways = case.answers(key, {})
        by_part = [(part, case.answers(key, {part_key: part})) for part in case.answers(part_key, {})]
        if any(set(allowed) != set(ways) for _, allowed in by_part):
            behind = tuple((part, _where(case, key, allowed, YES, NO)) for part, allowed in by_part)
            yield _rule("get", place, "", Node(part_key, behind), fixed=True)


def _option(case: Case, place: Place, option: StandIn) -> Iterator[Table]:
    own = case.part_key(place.id)
    for other, part in sorted(option.requires.items()):
        then = _where(case, case.part_key(other), [part], YES, NO)
        yield _rule("requires", place.id, f"{other}={part}", _where(case, own, [option.part], then, YES))
    for other, part in sorted(option.forbids.items()):
        then = _where(case, case.part_key(other), [part], NO, YES)
        yield _rule("forbids", place.id, f"{other}={part}", _where(case, own, [option.part], then, YES))
    for other in option.also_fills:
        then = _where(case, case.part_key(other), [EMPTY], YES, NO)
        yield _rule("also-fills", place.id, other, _where(case, own, [option.part], then, YES), fixed=True)


def _empties(case: Case) -> Iterator[Table]:
    """Yield that a place which may not be empty of itself is so only where another place's option fills it too."""
    places = case.project.design.places
    for name, place in places.items():
        key = case.part_key(name)
        if place.may_be_empty or case.leaders[name] != name or EMPTY not in case.answers(key, {}):
            continue
        tree: Tree = NO
        for other in reversed(list(places.values())):
            filling = [option.part for option in other.options if name in option.also_fills]
            if filling:
                tree = _where(case, case.part_key(other.id), filling, YES, tree)
        yield _rule("empty", name, "", _where(case, key, [EMPTY], tree, YES), fixed=True)
