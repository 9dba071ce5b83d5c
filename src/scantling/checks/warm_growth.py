"""Does a gap stay within its limits when the machine is warm? Each size grows with the material that it is made of.

Steel rods, wood and aluminium grow unlike: what goes together cold may bind or rattle warm. Wood moves more with the
damp of a season than with heat, which is not reckoned here.
"""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.chains import chain_terms
from scantling.build.missing import NotDescribedError, each, need
from scantling.build.reader import Reader
from scantling.checks.chain_links import chain_bounds, varied
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.materials import material_of
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, named
from scantling.findings import Finding
from scantling.formulas.chains import chain_nominal_mm, root_sum_squares_mm
from scantling.formulas.heat import growth_mm
from scantling.model.design import ChainTerm, Design
from scantling.model.expression import Feature, references, tree
from scantling.model.kinds import SheetStock
from scantling.quantities import Figure


@dataclass(frozen=True)
class _Growing:
    """A term that grows: its signed length, its coefficient, and its own warmth where it is not that of the chain."""

    length_mm: float
    growth_um_m_k: float
    own_k: float | None


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    chain = reader.design.chains[name]
    warmer = need(chain.warmer_k, f"chains.{name}.warmer")
    found = varied(reader, name)
    parts = reader.derive(chain_terms, name)
    numbers = range(len(parts))
    rates = each(lambda at: _growth(reader, name, at, chain.terms[at]), numbers)
    own_k = [term.warmer_k.value if term.warmer_k is not None else None for term in chain.terms]
    growing = [
        _Growing(part.sign * part.nominal_mm, rate, own) for part, rate, own in zip(parts, rates, own_k, strict=True)
    ]
    middle_mm, half_mm = chain_nominal_mm(found.links), root_sum_squares_mm(found.links)

    def grown(warmer: float) -> float:
        return sum(_of(one, warmer) for one in growing)

    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda cold, warmer: cold + grown(warmer),
        inputs={
            "cold": known("size when cold", Figure(middle_mm, middle_mm - half_mm, middle_mm + half_mm), "mm"),
            "warmer": known("warmth above that of the making", warmer, "K"),
        },
        bounds=chain_bounds(name, chain),
        unit="mm",
        because="{warmer} warmer, {cold} change by {growth} to {value}; {limit}.",
        also={"growth": (lambda warmer, **_: grown(warmer), "mm")},
        mend="a slot, more play, or both sides of one material",
    )


def _of(one: _Growing, warmer_k: float) -> float:
    return growth_mm(one.length_mm, one.growth_um_m_k, warmer_k if one.own_k is None else one.own_k)


def _growth(reader: Reader, chain: str, at: int, term: ChainTerm) -> float:
    """How much a term's material grows; raises ``NotDescribedError`` where nobody says what it is made of."""
    fact = f"chains.{chain}.terms.{at}.made-of"
    named_places = [one.place for one in references(tree(term.size)) if isinstance(one, Feature)]
    place = term.made_of or (named_places[0] if len(named_places) == 1 else None)
    part = reader.part(need(place, fact))
    if part is None:
        return 0.0
    thickness_mm = part.thickness_mm.value if isinstance(part, SheetStock) else None
    found = material_of(part.material, thickness_mm)
    if found is None or found.growth_um_m_k is None:
        raise NotDescribedError((f"parts.{part.id}.material",))
    return found.growth_um_m_k


def _subjects(design: Design) -> tuple[str, ...]:
    return named("chain", (name for name, chain in design.chains.items() if chain.warmer_k is not None))


CHECK = check_of(
    _run,
    code="WARM-05",
    title="Growth with heat",
    source="α L ΔT of each size; growth of materials: their table",
    subjects=_subjects,
)
