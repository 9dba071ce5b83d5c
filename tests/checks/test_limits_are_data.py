"""Limits are data: no check draws one in its code, and each says where its limit is from."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from scantling.api.opening import open_design, start_build
from scantling.build.reference import reference_build
from scantling.checks.all import CHECKS
from scantling.checks.figures import heard
from scantling.findings import Limit
from scantling.model.design import Design
from scantling.tables.check_limits import check_limit, check_number
from scantling.tables.csv_table import rows
from scantling.tables.sources import source

ROOT = Path(__file__).parents[2]
ROOM = ROOT / "src" / "scantling" / "checks"
LIMITING = ("at_most", "at_least", "between", "Bounds")
# Numbers in a limit that are none of its own: a whole, nothing, percent of a whole, seconds in a minute, GPa in a MPa.
HARMLESS = {0, 1, 100, 60, 0.001}
TABLES = [path.stem for path in (ROOT / "src" / "scantling" / "tables" / "data").glob("*_limits.csv")]
ORIGINS = {row["check"]: row for row in rows("limit_origins")}


def numbers_in(node: ast.AST) -> set[float]:
    found = (one.value for one in ast.walk(node) if isinstance(one, ast.Constant))
    return {value for value in found if isinstance(value, int | float) and not isinstance(value, bool)}


def limits_in(tree: ast.Module) -> list[tuple[int, set[float]]]:
    """Line and numbers of every limit that a module makes, names of numbers in that module followed."""
    named = {
        target.id: numbers_in(one.value)
        for one in tree.body
        if isinstance(one, ast.Assign) and isinstance(one.value, ast.Constant | ast.UnaryOp | ast.BinOp)
        for target in one.targets
        if isinstance(target, ast.Name)
    }
    found = []
    for call in (one for one in ast.walk(tree) if isinstance(one, ast.Call)):
        if isinstance(call.func, ast.Name) and call.func.id in LIMITING:
            given = [*call.args, *(word.value for word in call.keywords)]
            names = {name.id for one in given for name in ast.walk(one) if isinstance(name, ast.Name)}
            numbers = {number for one in given for number in numbers_in(one)}
            found.append((call.lineno, numbers | {n for name in names for n in named.get(name, ())}))
    return found


def test_no_check_draws_a_limit_in_its_code():
    drawn = [
        f"{path.name}:{line}: {sorted(numbers - HARMLESS)}"
        for path in sorted(ROOM.glob("*.py"))
        if path.name != "limits.py"
        for line, numbers in limits_in(ast.parse(path.read_text(encoding="utf-8")))
        if numbers - HARMLESS
    ]
    assert not drawn, "put these into a table with a source: " + "; ".join(drawn)


def test_a_limit_that_is_drawn_is_found():
    assert limits_in(ast.parse("MOST = 12.5\nbounds = at_most(MOST)")) == [(2, {12.5})]
    assert limits_in(ast.parse("bounds = between(1 - 0.1, high=3)")) == [(1, {1, 0.1, 3})]
    assert limits_in(ast.parse("bounds = at_most(check_number('x'))")) == [(1, set())]


def test_every_check_says_where_its_limit_is_from():
    assert set(ORIGINS) == {check.code for check in CHECKS}


@pytest.mark.parametrize("code", sorted(ORIGINS))
def test_the_origin_is_there(code):
    row = ORIGINS[code]
    where = row["where"]
    if row["origin"] == "table":
        known = {f"{table}: {one['limit']}" for table in TABLES for one in rows(table) if "limit" in one}
        assert all(one in known or rows(one.partition(":")[0]) for one in where.split("; ")), where
    elif row["origin"] == "design":
        schema = str(Design.model_json_schema(by_alias=True))
        assert all(f"'{one.rpartition('.')[2]}'" in schema for one in where.split("; ")), where
    else:
        assert row["origin"] in ("figures", "kept or not", "information")
        assert len(where) > 10, "say in words"


def test_checks_behave_as_their_origin_says(bench):
    session = open_design(ROOT / "examples" / "alder", "village")
    cases = [(session.case, start_build(session))]
    cases += [(case, reference_build(case)) for case in (bench.belt(), bench.screw(), bench.wired())]
    for case, build in cases:
        asked, findings = heard(case, build)
        sides = {(one.code, one.trial.bounds.side) for one in asked}
        for code, side in sides:
            assert (ORIGINS[code]["origin"] == "information") <= (side is Limit.NONE), code
            assert ORIGINS[code]["origin"] != "kept or not", code
        for finding in findings:
            if ORIGINS[finding.code]["origin"] == "kept or not":
                assert finding.limit is None, finding.code


def test_every_limit_of_the_table_has_a_source_and_belongs_to_checks():
    codes = {check.code for check in CHECKS}
    for row in rows("check_limits"):
        assert source(row["source"]).title
        assert set(row["checks"].split()) <= codes, row["limit"]
        figure = check_limit(row["limit"])
        assert figure.low <= figure.value <= figure.high


@pytest.mark.outside
def test_limits_that_others_publish():
    # Source: NIST/handbook value of the normal spread: 99.73 % lie within three standard deviations
    assert check_number("yield wanted") == pytest.approx(0.9973, abs=5e-4)
    # Source: ISO 18265 conversion table, 40 HRC = 392 HV
    assert check_number("hardened from") == 392
    # Source: a screw maker's training text: run at no more than 80 % of the critical speed and the buckling load
    assert check_number("share of the whirling speed") == check_number("share of the buckling load") == 0.8
