"""Limits of checks, where limits are from, formulas: check_limits.csv, limit_origins.csv, check_formulas.csv."""

from __future__ import annotations

import re

import pytest

from scantling.errors import LookUpError
from scantling.tables.check_formulas import check_formula, check_formulas
from scantling.tables.check_limits import check_limit, check_number
from scantling.tables.csv_table import rows

CODE = re.compile(r"[A-Z]+-\d\d")


def test_shares_are_shares_and_percents_are_percents():
    for row in rows("check_limits"):
        figure = check_limit(row["limit"])
        assert figure.low <= figure.value <= figure.high
        if not row["unit"] and figure.low == figure.high:
            assert 0 < figure.value < 1, row["limit"]
        if row["unit"] == "%":
            assert 0 < figure.value <= 100, row["limit"]
        assert all(CODE.fullmatch(code) for code in row["checks"].split())


def test_wood_wants_most_room_at_an_edge_and_steel_least():
    edges = [check_number(f"edge of {name}") for name in ("wood", "aluminium", "steel")]
    assert edges == sorted(edges, reverse=True)
    assert check_number("engagement in plastic") > check_number("engagement in metal")
    assert check_number("step of inch lengths") == 25.4 / 4


def test_an_unknown_limit_names_the_nearest():
    with pytest.raises(LookUpError, match="teeth in mesh"):
        check_limit("teeth in mash")


def test_the_braces_of_a_formula_are_whole_and_hold_names():
    for row in rows("check_formulas"):
        assert CODE.fullmatch(row["check"])
        rest = re.sub(r"\{[a-z_0-9]+\}", "", row["formula"])
        assert "{" not in rest
        assert "}" not in rest


def test_of_several_formulas_the_first_whose_figures_are_there_holds():
    first, second = check_formulas("BELT-05")
    assert check_formula("BELT-05", {"length"}) == first
    assert check_formula("BELT-05", {"closed", "path"}) == second
    assert check_formula("BELT-05", {"nothing"}) == ""


def test_every_origin_is_one_of_five():
    kinds = {row["origin"] for row in rows("limit_origins")}
    assert kinds == {"table", "design", "figures", "kept or not", "information"}
