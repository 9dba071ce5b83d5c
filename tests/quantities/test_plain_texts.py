"""Counts, pieces, yes and no, dates, currents of motors."""

import datetime
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.errors import QuantityError
from scantling.quantities import parse_bool, parse_count, parse_current, parse_date, parse_pieces


@pytest.mark.parametrize(("text", "count"), [("3", 3), (" 12 ", 12), ("0", 0), ("3.0", 3), ("4 pcs", 4)])
def test_a_count_is_whole(text: str, count: int) -> None:
    assert parse_count(text) == count


@pytest.mark.parametrize(
    ("text", "pieces", "length_mm"),
    [
        ("2 x 300 mm", 2, 300.0),
        ("2 × 300 mm", 2, 300.0),
        ("2x300mm", 2, 300.0),
        ("2 X 1 3/8 in", 2, 34.925),
        ("2 off 300 mm", 2, 300.0),
        ("300 mm", 1, 300.0),
    ],
)
def test_pieces_of_a_length(text: str, pieces: int, length_mm: float) -> None:
    count, figure = parse_pieces(text)
    assert (count, figure.value) == (pieces, length_mm)


def test_pieces_of_another_dimension() -> None:
    count, figure = parse_pieces("3 x 20 g", "mass")
    assert (count, figure.value) == (3, 0.02)


@pytest.mark.parametrize(
    ("text", "truth"), [("yes", True), ("Yes", True), ("true", True), ("no", False), ("NO", False), ("False", False)]
)
def test_yes_and_no(text: str, truth: bool) -> None:
    assert parse_bool(text) is truth


@given(st.dates(min_value=datetime.date(1000, 1, 1)))
def test_a_date_reads_back(day: datetime.date) -> None:
    assert parse_date(f" {day.isoformat()} ") == day


@pytest.mark.parametrize(
    ("text", "kind", "value"),
    [
        ("1.5 A", None, 1.5),
        ("1.5 A rms", "rms", 1.5),
        ("1.5 Arms", "rms", 1.5),
        ("1.5 A (RMS)", "rms", 1.5),
        ("2100 mA peak", "peak", 2.1),
        ("1.5 A rms ± 0.1 A rms", "rms", 1.5),
    ],
)
def test_a_current_says_whether_it_is_rms_or_peak(text: str, kind: str | None, value: float) -> None:
    figure, found = parse_current(text)
    assert (found, figure.value) == (kind, value)


def test_a_current_keeps_its_band_beside_its_kind() -> None:
    figure, _ = parse_current("2 A peak ± 5 %")
    assert (figure.low, figure.high) == (1.9, 2.1)


REFUSED: list[tuple[Callable[[str], object], str, str]] = [
    (parse_count, "-1", "0 or more"),
    (parse_count, "three", "4"),
    (parse_count, "1.5", "count"),
    (parse_pieces, "0 x 300 mm", "one piece or more"),
    (parse_pieces, "2 x 3 x 4 mm", "8 mm"),
    (parse_pieces, "2 x", "8 mm"),
    (parse_pieces, "2 x 300", "300 mm"),
    (parse_bool, "on", "yes or no"),
    (parse_bool, "1", "yes or no"),
    (parse_bool, "", "yes or no"),
    (parse_date, "31.03.2025", "2025-03-31"),
    (parse_date, "20250331", "2025-03-31"),
    (parse_date, "2025-02-30", "a day that exists"),
    (parse_date, "2025-W01-1", "2025-03-31"),
    (parse_current, "1.5 A rms peak", "1.5 A"),
    (parse_current, "1.5 A rms ± 0.1 A peak", "one of them"),
    (parse_current, "1.5 V", "1.5 A"),
]


@pytest.mark.parametrize(("parse", "text", "mend"), REFUSED)
def test_what_is_refused_says_what_to_write(parse: Callable[[str], object], text: str, mend: str) -> None:
    with pytest.raises(QuantityError) as caught:
        parse(text)
    assert mend in caught.value.mend
