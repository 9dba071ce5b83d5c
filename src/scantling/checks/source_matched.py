"""Pieces that must match: two screws of one gantry, a pair of rods. One pack or bar is one lot; else they are sorted.

Pieces of one lot share their errors (a lead that is 0.1 mm in 300 mm long on both screws tilts nothing). Never worse
than marginal: readings of the pieces settle it.
"""

from __future__ import annotations

from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.build.sourcing import is_cut, is_made_here, offers_of
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_least
from scantling.checks.rule import EmptyPlaceError, check_of
from scantling.checks.sourcing import softened
from scantling.checks.subjects import ident, named
from scantling.findings import Finding, Verdict
from scantling.model.design import Design
from scantling.model.workshop import Offer

ROUNDING_MM = 1e-6  # a bar of just the length is one piece


def _run(reader: Reader, subject: str) -> Finding:
    place = ident(subject)
    part = reader.part(place)
    if part is None:
        raise EmptyPlaceError(place)
    pieces, get = reader.pieces(place), reader.get(place)
    if is_made_here(get):
        return say(CHECK, reader, subject, Verdict.SOUND, f"The {pieces} pieces are made here, in one go.")
    read = [one for one in reader.workshop.actuals if one.part == part.id and len(one.samples) >= pieces]
    if read:
        because = f"The {pieces} pieces are sorted by what was read on {len(read[0].samples)} of {part.id}."
        return say(CHECK, reader, subject, Verdict.SOUND, because)
    offers = offers_of(reader, part.id)
    piece_mm = reader.derive(feature, place, "length").value if is_cut(get) else 0.0
    kerf = reader.workshop.saw.bar_kerf_mm
    kerf_mm = kerf.value if kerf is not None else 0.0

    def _in_one(offer: Offer) -> int:
        """How many pieces come out of one pack."""
        if not piece_mm or offer.length_mm is None:
            return offer.pack
        return offer.pack * int((offer.length_mm.value + kerf_mm + ROUNDING_MM) / (piece_mm + kerf_mm))

    if not offers:
        raise NotDescribedError(("workshop.offers",))
    return softened(
        judge(
            CHECK,
            reader,
            subject,
            rule=lambda pack: pack,
            inputs={"pack": known("pieces in the largest pack", float(max(_in_one(offer) for offer in offers)))},
            bounds=at_least(float(pieces)),
            unit="",
            because=f"The {pieces} pieces of {part.id} must match; {{value}} come out of one pack or bar, which is one "
            "lot; {limit}.",
            mend="ask for all pieces of one machine from one lot, and measure them against each other",
        )
    )


def _subjects(design: Design) -> tuple[str, ...]:
    return named("place", (name for name, place in design.places.items() if place.matched))


CHECK = check_of(
    _run,
    code="SOURCE-04",
    title="Pieces that must match",
    source="counting; one pack is one lot: common practice, no source",
    subjects=_subjects,
    informs=True,
)
