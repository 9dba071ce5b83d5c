"""The formula of a finding is true: with the numbers put in, it gives the value that the check shows."""

from __future__ import annotations

import ast
import math
import re
from pathlib import Path

import pytest

from scantling.api.opening import open_design, start_build
from scantling.build.reference import reference_build
from scantling.checks.all import CHECKS
from scantling.checks.explaining import explain, formula_of
from scantling.checks.figures import heard
from scantling.findings import Limit, Verdict
from scantling.tables.check_formulas import check_formula, check_formulas
from scantling.tables.csv_table import rows

ALDER = Path(__file__).parents[2] / "examples" / "alder"
FUNCTIONS = {"min": min, "max": max, "abs": abs, "floor": math.floor, "ln": math.log, "sqrt": math.sqrt}
NAME = re.compile(r"\{(\w+)\}")


@pytest.fixture(scope="module")
def alder():
    """The example, with its reference parts."""
    session = open_design(ALDER, "village")
    return session.case, start_build(session)


@pytest.fixture(scope="module")
def asked(alder, bench):
    """Every rule of the example and of some small machines."""
    cases = [alder, *((case, reference_build(case)) for case in (bench.belt(), bench.screw(), bench.wired()))]
    return [one for case, build in cases for one in heard(case, build)[0]]


def worked_out(node: ast.AST) -> float:
    """The value of plain arithmetic with a few functions; nothing else is let through."""
    match node:
        case ast.Expression():
            return worked_out(node.body)
        case ast.Constant(value=float() | int() as number):
            return float(number)
        case ast.UnaryOp(op=ast.USub()):
            return -worked_out(node.operand)
        case ast.Call(func=ast.Name(id=name)):
            return float(FUNCTIONS[name](*(worked_out(one) for one in node.args)))
        case ast.BinOp():
            left, right = worked_out(node.left), worked_out(node.right)
            by_kind = {ast.Add: left + right, ast.Sub: left - right, ast.Mult: left * right}
            if isinstance(node.op, ast.Div):
                return left / right
            return left**right if isinstance(node.op, ast.Pow) else by_kind[type(node.op)]
    raise ValueError(ast.dump(node))


def arithmetic(formula: str) -> bool:
    """True for a formula that can be worked out; others say the rule in words."""
    words = re.findall(r"[a-z]{2,}", NAME.sub("1", formula))
    return all(word in FUNCTIONS for word in words)


def test_numbers_put_into_the_formulas_give_the_values(asked):
    tried = set()
    for one in asked:
        numbers = dict(one.trial.nominal)
        numbers |= {name: function(**one.trial.nominal) for name, (function, _) in one.also.items()}
        formula = check_formula(one.code, numbers)
        if not formula or not arithmetic(formula):
            continue
        put_in = NAME.sub(lambda found, numbers=numbers: f"({numbers[found[1]]!r})", formula)
        value = worked_out(ast.parse(put_in, mode="eval"))
        assert value == pytest.approx(one.trial.point().value, rel=1e-9, abs=1e-9), (one.code, one.subject, put_in)
        tried.add(one.code)
    assert len(tried) >= 35


def test_every_rule_that_gives_a_value_has_a_formula(asked):
    lacking = {one.code for one in asked if not formula_of(one)[0]}
    assert not lacking, f"rows are missing in check_formulas.csv: {sorted(lacking)}"


def test_every_formula_belongs_to_a_check():
    codes = {check.code for check in CHECKS}
    assert {row["check"] for row in rows("check_formulas")} <= codes
    assert check_formulas("NONE-99") == ()


def test_a_formula_that_is_wrong_is_found():
    assert worked_out(ast.parse("2 * (3.5) - 1", mode="eval")) == 6
    with pytest.raises(ValueError, match="Name"):
        worked_out(ast.parse("2 * mass", mode="eval"))
    assert not arithmetic("beam of {modulus}")
    assert arithmetic("-{store} / {loss} * ln(1 - {loss} * {rise} / {power}) / 60")


class TestExplanations:
    def test_a_paragraph_says_all_that_there_is_to_say(self, alder):
        (found,) = explain(*alder, "WARM-01", ["warming bed"])
        for words in ("540 J/K", "= 4.91 min", "at most 8 min", "Margin", "Assumed", "Source:", "sound"):
            assert words in found.paragraph, words
        power = next(figure for figure in found.figures if figure.what.startswith("power of"))
        # Lumped heat balance backwards, 1 - k dT / P = exp(-k t / C), at the unkind end of the loss, 0.9 W/K, in 480 s
        assert power.intervals[0].low == pytest.approx(61.2 / (1 - math.exp(-0.9 * 480 / 539.73)), rel=1e-3)

    def test_every_finding_can_be_explained(self, alder):
        for check in CHECKS:
            if not check.code.startswith(("BELT", "WARM", "RAIL", "MATE", "SPAN", "CHAIN-01", "SCREW-03")):
                continue
            for one in explain(*alder, check.code):
                assert one.finding.because in one.paragraph
                assert "{" not in one.paragraph
                assert one.about.endswith((".", "?"))
                if one.finding.value is not None and one.finding.side is not Limit.NONE:
                    assert one.put_in, check.code

    def test_what_would_mend_it_is_said_of_what_is_not_sound(self, bench):
        case = bench.belt({"needs.travel": "300 mm"})
        (found,) = explain(case, reference_build(case), "ROD-05")
        assert found.finding.verdict is Verdict.UNSOUND
        assert "What would mend it: longer rods" in found.paragraph

    def test_an_own_limit_is_said(self, bench):
        own = [{"code": "ROD-05", "subject": "axis y", "limit": "150 mm", "because": "a short bed is enough"}]
        case = bench.belt(accepted=own)
        (found,) = explain(case, reference_build(case), "ROD-05")
        assert "at least 150 mm, the design's own limit" in found.paragraph
        assert "a short bed is enough" in found.paragraph
