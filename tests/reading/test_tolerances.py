"""Tolerances of sizes and of terms of a chain as files write them: taken as such, or refused with a clear fault."""

from __future__ import annotations

import pytest

from scantling.errors import FaultsError
from scantling.reading.texts import design_from_texts

SIZES = {"machine": {"name": "Test"}}


def chain(term: object) -> tuple[float, float]:
    """Return the deviations of a chain's only term."""
    sections = {**SIZES, "chains": {"gap": {"terms": [term], "at-least": "0 mm"}}}
    read = design_from_texts(sections, "a test").chains["gap"].terms[0].tolerance_mm
    return (read.low, read.high)


@pytest.mark.parametrize(
    ("text", "ends"),
    [
        ("0.3 mm", (-0.3, 0.3)),
        ("± 0.3 mm", (-0.3, 0.3)),
        ("+/-0.3 mm", (-0.3, 0.3)),
        ("+0.3/-0.1 mm", (-0.1, 0.3)),
        ("-0.1/+0.3 mm", (-0.1, 0.3)),
        ("+0.2/0 mm", (0, 0.2)),
        ("1/64 in", (-0.396875, 0.396875)),
    ],
)
def test_a_tolerance_of_a_term(text, ends):
    assert chain({"size": "10 mm", "tolerance": text}) == pytest.approx(ends)


@pytest.mark.parametrize("text", ["-0.3 mm", "0.1..0.3 mm", "0.3", "wide", "+0.3/+0.1 mm", "0.3 kg"])
def test_what_is_no_tolerance(text):
    with pytest.raises(FaultsError) as caught:
        chain({"size": "10 mm", "tolerance": text})
    assert any(fault.code in ("READ-23", "READ-26") for fault in caught.value.faults)


@pytest.mark.parametrize("size", ["10 mm +0.3 mm -0.1 mm", "2 * (10 mm +0.3/-0.1 mm)", "10 mm +0.3 mm/-0.1 mm"])
def test_a_size_that_may_be_a_tolerance_or_a_sum_is_a_fault_with_its_mend(size):
    with pytest.raises(FaultsError) as caught:
        design_from_texts({**SIZES, "chains": {"gap": {"terms": [size], "at-least": "0 mm"}}}, "a test")
    (fault,) = caught.value.faults
    assert fault.code == "READ-36"
    assert "20 mm +0.3/-0.1 mm" in fault.mend


def test_a_size_of_the_design_with_its_tolerance():
    sections = {
        **SIZES,
        "sizes": {"span": "300 mm +0.3/-0.1 mm"},
        "chains": {"gap": {"terms": ["+ span"], "at-least": "0 mm"}},
    }
    assert design_from_texts(sections, "a test").sizes["span"] == "300 mm +0.3/-0.1 mm"


@pytest.mark.parametrize("common", [{"seam": "0.3 kg"}, {"seam": "much"}])
def test_a_common_cause_is_a_length_or_a_share(common):
    with pytest.raises(FaultsError) as caught:
        chain({"size": "10 mm", "common": common})
    assert caught.value.faults[0].code == "READ-23"
