"""Questions about rods and bushings, asked alone."""

from __future__ import annotations

import pytest

from scantling.api.trying import try_one
from scantling.errors import FaultsError
from scantling.findings import Verdict

RODS = {"diameter": "8 mm", "span": "332 mm", "mass": "1.5 kg", "spacing": "110 mm", "hardness": "60 HRC"}
BUSHINGS = {"bushing-length": "24 mm", "load-rating": "265 N", "travel": "180 mm"}


def verdict(code: str, name: str = "rods", **given: str) -> Verdict:
    """Return the verdict of one check on a question."""
    return next(finding.verdict for finding in try_one(name, given).findings if finding.code == code)


def asked(**more: str) -> dict[str, str]:
    """Return the question about rods with further facts (``seat_askew`` for ``--seat-askew``)."""
    return RODS | BUSHINGS | {name.replace("_", "-"): text for name, text in more.items()}


def test_how_parallel_rods_must_lie():
    assert verdict("ROD-08", **asked(parallel="0.02 mm")) is Verdict.SOUND
    assert verdict("ROD-08", **asked(parallel="1 mm")) is Verdict.UNSOUND


def test_a_seat_cut_by_hand_wants_slack():
    assert verdict("ROD-09", **asked(seat_askew="0.3 mm")) is Verdict.UNSOUND
    assert verdict("ROD-09", **asked(seat_askew="0.3 mm", seat_slack="0.4 mm")) is Verdict.SOUND


def test_a_rod_as_long_as_its_holders_ask():
    assert verdict("ROD-06", **asked(grip="12 mm", length="356 mm")) is Verdict.SOUND
    assert verdict("ROD-06", **asked(grip="12 mm", length="350 mm")) is Verdict.UNSOUND


def test_spares_worth_their_price():
    given = {"need": "12", "spares": "3", "rough": "10 %", "price": "1.90 EUR", "parcel": "12.00 EUR"}
    (finding,) = try_one("spares", given).findings
    assert finding.value == pytest.approx(94.4, abs=0.05)
    assert "2 spares are worth their price" in finding.because


@pytest.mark.parametrize(("price", "parcel"), [("1.90", "12.00"), ("1.90 EUR", "12.00 USD"), ("cheap", "12.00 EUR")])
def test_prices_need_one_currency(price, parcel):
    with pytest.raises(FaultsError):
        try_one("spares", {"need": "12", "price": price, "parcel": parcel})
