"""Fixtures: the typed-in evidence."""

from __future__ import annotations

import csv
from collections.abc import Callable
from pathlib import Path

import pytest

EVIDENCE = Path(__file__).resolve().parents[2] / "evidence"


@pytest.fixture(scope="session")
def evidence() -> Callable[[str], list[dict[str, str]]]:
    """Return a reader of evidence/NAME.csv."""

    def read(name: str) -> list[dict[str, str]]:
        with (EVIDENCE / f"{name}.csv").open(encoding="utf-8", newline="") as file:
            return list(csv.DictReader(file))

    return read
