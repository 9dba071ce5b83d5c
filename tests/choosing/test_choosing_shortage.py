"""A part that nobody offers is told at once; what comes nearest is told when there is time."""

from __future__ import annotations

from pathlib import Path

import pytest

from scantling.api.following import stand, whatif
from scantling.api.opening import open_design
from scantling.model.build import Key

ALDER = Path(__file__).parents[2] / "examples" / "alder"


@pytest.mark.parametrize(("place", "part"), [("frame-rod", "frame-rod-5-16"), ("y-rod", "rod-5-16-drill")])
def test_what_nobody_offers(place: str, part: str) -> None:
    """The village has no inch rods: at once it is said so, complete there is the nearest miss too."""
    stages = whatif(stand(open_design(ALDER, "village", 4)), {Key("part", place): part}, anew=False)
    at_once, complete = next(stages), next(stages)
    assert at_once.infeasible is not None
    assert at_once.infeasible.miss is None
    assert "what comes nearest" in at_once.waiting
    (lacking,) = at_once.infeasible.conflict.concerns
    assert lacking.kind == "supply"
    offered = {offer.part for offer in at_once.after.case.project.workshop.offers}
    assert lacking.subject not in offered
    assert complete.infeasible is not None
    assert complete.infeasible.miss is not None
    assert lacking in {waived.concern for waived in complete.infeasible.miss.waived}
