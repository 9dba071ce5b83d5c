"""Costly checks are run on answers, round after round: the same cheapest choice as if they had been tabulated."""

from __future__ import annotations

import itertools
import random
from dataclasses import replace

from choosingkit import Bench, bench_of, drawn_check, every_answer, random_problem

from scantling.choosing.choose import choose
from scantling.choosing.forbidding import forbid
from scantling.choosing.opened import Opened, failing_lazy
from scantling.choosing.result import Choice, Infeasible
from scantling.choosing.solve import solve_problem
from scantling.choosing.tables import check_table
from scantling.choosing.trees import value_at
from scantling.choosing.verify import unmet
from scantling.model.build import Key


def both_ways(seed: int) -> tuple[Opened, Opened]:
    """The same problem with its checks tabulated, and with some of them run on answers."""
    problem, draw = random_problem(seed), random.Random(f"lazy {seed}")
    checks = [drawn_check(draw, f"L{n}", problem.domains, 0.55) for n in range(3)]
    costly = [replace(check, costly=check.code != "L0") for check in checks]
    return bench_of(problem, checks), bench_of(problem, costly)


def test_the_same_cost_as_from_tables():
    rounds = set()
    for seed in range(30):
        tabulated, lazily = both_ways(seed)
        known, found = solve_problem(tabulated.problem, tidy=False), choose(lazily)
        assert isinstance(found, Infeasible) == (known is None), seed
        if isinstance(found, Choice):
            assert (found.cost_minor, found.bound_minor) == (known.cost_minor, known.cost_minor), seed
            assert found.proven
            assert not unmet(tabulated.problem, found.build.as_dict())
            assert found.lazy == (("L1", "s"), ("L2", "s"))
            rounds.add(found.rounds)
    assert max(rounds) >= 2  # some had to be asked again


def test_where_the_rounds_run_out_it_is_told_as_not_proven():
    for seed in itertools.count():
        _, lazily = both_ways(seed)
        whole = choose(lazily)
        if isinstance(whole, Choice) and whole.rounds > 1:
            short = choose(lazily, most_rounds=1)
            assert not short.proven
            assert set(short.failing) == {(c.code, s) for c, s in failing_lazy(lazily, short.build.as_dict())} != set()
            assert short.cost_minor <= whole.cost_minor
            return


def test_a_forbidden_combination_holds_what_failed_and_nothing_sound():
    widened = 0
    for seed in range(200):
        draw = random.Random(f"forbid {seed}")
        domains = {Key("part", name): tuple("vwxyz"[: draw.choice([1, 2, 3, 5])]) for name in "abcd"}
        check = drawn_check(draw, "L", domains, 0.35)
        case = Bench(domains)
        opened = Opened(case, (check,), replace(random_problem(seed), domains=domains), ((check, "s"),))
        tree = check_table(check, "s", case, frozenset()).tree
        failing = [answers for answers in every_answer(opened.problem) if not value_at(tree, answers)]
        if not failing:
            continue
        answers = draw.choice(failing)
        cut = forbid(check, "s", opened, answers)
        assert all(answers[key] in given for key, given in cut.answers)
        held = [one for one in every_answer(opened.problem) if all(one[key] in given for key, given in cut.answers)]
        assert all(not value_at(tree, one) for one in held), seed
        widened += any(len(given) > 1 for _, given in cut.answers) or len(cut.answers) < 2
    assert widened >= 30


def test_a_question_whose_every_answer_fails_falls_out():
    domains = {Key("part", "a"): ("x", "y"), Key("part", "b"): ("x", "y", "z")}
    check = drawn_check(random.Random(1), "L", domains, 0.0)  # never good
    opened = Opened(Bench(domains), (check,), replace(random_problem(1), domains=domains), ((check, "s"),))
    assert forbid(check, "s", opened, dict.fromkeys(domains, "x")).answers == ()
