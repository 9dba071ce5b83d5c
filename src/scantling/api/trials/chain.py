"""Sizes that add up: does it go together, in the worst case and for nearly all that are made?"""

from __future__ import annotations

from typing import Any

from scantling.api.trials.trial import Ask, Given, Trial, fields


def _design(given: Given) -> dict[str, Any]:
    texts = [text.strip() for text in given["sizes"].split(";") if text.strip()]
    terms: list[Any] = texts
    if "spread" in given:
        terms = [_spread(text, given["spread"]) for text in texts]
    chain = {"terms": terms} | fields(given, at_least="at-least", at_most="at-most", yield_wanted="yield")
    return {"chains": {"gap": chain}}


def _spread(text: str, spread: str) -> dict[str, str]:
    sign = "-" if text.startswith("-") else "+"
    return {"size": text.removeprefix(sign).strip(), "sign": sign, "spread": spread}


TRIAL = Trial(
    "chain",
    "Do these sizes go together?",
    'scantling try chain --sizes "60 mm ± 0.2 mm; - 19.9 mm ± 0.1 mm; - 39.8 mm +0.1/-0.2 mm" --at-least "0 mm"',
    (
        Ask("sizes", "text", "Sizes with their tolerances, with a sign each, between semicolons.", needed=True),
        Ask("at-least", "length", "Least gap that serves."),
        Ask("at-most", "length", "Greatest gap that serves."),
        Ask("spread", "text", "normal, even, or cut off (what is beyond is sorted out), for all of them."),
        Ask("yield", "ratio", "Share that must go together; 99.7 % where nothing is said."),
    ),
    _design,
    ("CHAIN-01", "CHAIN-02"),
)
