"""Facts of what is made: holes, templates, pieces cut from bars, prints, the parts list."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from scantling.build.holes import ResolvedHole, sheet_holes
from scantling.build.lengths import cut_length_um
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.comparing.fact import Fact, Topic, in_words
from scantling.plans.plan import Plan
from scantling.plans.printing import grams_text, hours_text
from scantling.quantities import show_number


def hole_facts(plan: Plan) -> Iterator[Fact]:
    """The holes of each panel by what they are for: count, size and bit; and where they are."""
    reader = plan.case.reader(plan.build)
    for sheet in plan.case.project.design.sheets:
        panels = reader.pieces(sheet)
        by_purpose: dict[str, list[ResolvedHole]] = {}
        for hole in _holes(reader, sheet) if panels else ():
            by_purpose.setdefault(_purpose(hole), []).append(hole)
        for purpose, holes in by_purpose.items():
            copies = f"on each of {panels} panels" if panels > 1 else ""
            detail = "; ".join(dict.fromkeys([*(_behind(hole) for hole in holes), *([copies] if copies else [])]))
            why = "; ".join(dict.fromkeys(hole.why for hole in holes))
            yield Fact(Topic.HOLE, sheet, purpose, _sizes(holes), detail, because=why)
            points = "; ".join(f"{hole.key} at {hole.x_mm:.6g}, {hole.y_mm:.6g} mm" for hole in holes)
            yield Fact(Topic.HOLE, sheet, f"{purpose}, where", _spread(holes), points)


def _holes(reader: Reader, sheet: str) -> Sequence[ResolvedHole]:
    try:
        return reader.derive(sheet_holes, sheet)
    except NotDescribedError:
        return ()


def _purpose(hole: ResolvedHole) -> str:
    return f"{hole.purpose} holes for {hole.what}" if hole.what else f"{hole.purpose} holes"


def _sizes(holes: Sequence[ResolvedHole]) -> str:
    """``4 × 3.4 mm, bit 3.4``; holes of several sizes one after the other."""
    sizes = [
        f"{show_number(h.diameter_mm, 2)} mm"
        + (f" × {show_number(h.slot_mm + h.diameter_mm, 1)} long" if h.slot_mm else "")
        + (f", bit {h.bit}" if h.bit else ", no bit in hand")
        for h in holes
    ]
    return " and ".join(f"{sizes.count(text)} × {text}" for text in dict.fromkeys(sizes))


def _behind(hole: ResolvedHole) -> str:
    steps = ", then ".join(hole.steps)
    limits = f"{hole.least_mm:.6g} to {hole.most_mm:.6g} mm" if hole.most_mm is not None else ""
    off = None if hole.error_mm is None else f"{hole.error_mm:.4g} mm"
    turned = f"{hole.slot_turn_deg:.4g} deg" if hole.slot_mm else ""
    return in_words(
        ("exactly", f"{hole.diameter_mm:.6g} mm"),
        ("may be", limits),
        ("drill", steps),
        ("bit less wanted", off),
        ("turned", turned),
    )


def _spread(holes: Sequence[ResolvedHole]) -> str:
    """The box that the middles fill, and its middle: what a maker would measure first."""
    xs, ys = [hole.x_mm for hole in holes], [hole.y_mm for hole in holes]
    middle = f"{show_number((min(xs) + max(xs)) / 2, 2)}, {show_number((min(ys) + max(ys)) / 2, 2)} mm"
    if len(holes) == 1:
        return f"at {middle}"
    width, height = show_number(max(xs) - min(xs), 2), show_number(max(ys) - min(ys), 2)
    return f"over {width} × {height} mm around {middle}"


def drawing_facts(plan: Plan) -> Iterator[Fact]:
    """The digest of what each template is drawn from: equal means the sheet in hand is still good."""
    for sheet, digest in plan.drawings:
        if digest:
            yield Fact(Topic.DRAWING, sheet, "template", "drawn", digest)


def cut_facts(plan: Plan) -> Iterator[Fact]:
    """The length of each piece that is cut."""
    reader = plan.case.reader(plan.build)
    for place in plan.case.project.design.places:
        if reader.get(place) == "cut":
            length_um = _length_um(reader, place)
            if length_um is not None:
                length_mm = length_um / 1000
                pieces = reader.pieces(place)
                value, exact = f"{show_number(length_mm)} mm", f"{length_um} µm, {pieces} of them"
                yield Fact(Topic.CUT, place, "pieces", value, exact, number=length_mm, unit="mm", amount=pieces)


def _length_um(reader: Reader, place: str) -> int | None:
    try:
        return reader.derive(cut_length_um, place)
    except NotDescribedError:
        return None


def bar_facts(plan: Plan) -> Iterator[Fact]:
    """How the bars of each part are cut: of two plans only the ways that differ are told."""
    found: dict[str, list[str]] = {}
    marks: dict[str, list[str]] = {}
    for bar in plan.bars:
        lengths = [show_number(piece.length_um / 1000) for piece in bar.pieces]
        pattern = " + ".join(f"{lengths.count(text)} × {text}" for text in dict.fromkeys(lengths))
        bars = f"{bar.times} bar{'' if bar.times == 1 else 's'} of {show_number(bar.bar_um / 1000)}"
        found.setdefault(bar.part, []).append(f"{bars} into {pattern} mm")
        ends = ", ".join(f"{piece.ends_um / 1000:.6g} for {' and '.join(piece.places)}" for piece in bar.pieces)
        behind = in_words(
            ("from", bar.source),
            ("left", f"{show_number(bar.left_um / 1000)} mm"),
            ("", "as it comes" if bar.whole else f"marks at {ends} mm, kerf {bar.kerf_um / 1000:.4g} mm"),
        )
        marks.setdefault(bar.part, []).append(behind)
    for part, ways in found.items():
        detail = " | ".join(marks[part])
        yield Fact(Topic.CUT, part, "bars", "; ".join(ways), detail, items=tuple(ways), bought=True)


def print_facts(plan: Plan) -> Iterator[Fact]:
    """What is printed from which mesh in which plastic."""
    for line in plan.prints:
        value = f"{line.count} × {line.mesh} in {line.plastic}"
        estimate = line.estimate
        why = in_words(
            ("", line.part),
            ("g each", grams_text(estimate.mass_kg) if estimate else ""),
            ("hours each", hours_text(estimate.time_s) if estimate else ""),
        )
        yield Fact(Topic.PRINT, line.place, "print", value, because=why)


def list_facts(plan: Plan) -> Iterator[Fact]:
    """Every line of the parts list: what one machine takes and all of them."""
    found: dict[tuple[str, str], list[tuple[str, str]]] = {}
    for line in plan.parts:
        value = f"{line.quantity} {line.unit} in one machine, {line.for_all} in all"
        behind = in_words(("", line.material), ("", line.remarks))
        found.setdefault((line.part, f"{line.designation} ({line.unit})"), []).append((value, behind))
    for (part, what), rows in found.items():
        values, details = (" and ".join(words) for words in zip(*rows, strict=True))
        yield Fact(Topic.LIST, part, what, values, details)
