"""Fixtures: the tables of an independent fastener library, read without its drawing kernel."""

from __future__ import annotations

import csv
from collections.abc import Callable
from importlib.util import find_spec
from pathlib import Path

import pytest

LibraryTable = Callable[[str], dict[str, dict[str, str]]]


@pytest.fixture(scope="session")
def library_table() -> LibraryTable:
    """Return a reader of its CSV files: first column -> row; it may be missing, for pip would pull in its kernel."""
    spec = find_spec("bd_warehouse")
    if spec is None or spec.origin is None:
        pytest.skip("the fastener library is not installed (pip install --no-deps bd_warehouse)")
    folder = Path(spec.origin).parent / "data"

    def read(name: str) -> dict[str, dict[str, str]]:
        with (folder / f"{name}.csv").open(encoding="utf-8", newline="") as file:
            rows = [{(k or "").strip(): (v or "").strip() for k, v in row.items()} for row in csv.DictReader(file)]
        return {next(iter(row.values())): row for row in rows}

    return read
