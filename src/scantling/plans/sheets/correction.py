"""What a paper printer does to lengths, and what is drawn so that they come out right.

Readings are taken once on the check bars of any printed page: ``across`` is the bar along the paper's short side,
``along`` the one along its long side. Pages are always upright, so that both words keep their meaning.
"""

from __future__ import annotations

from dataclasses import dataclass

from scantling.errors import Fault, FaultsError, Where
from scantling.model.workshop import Printer
from scantling.quantities import Figure, show_number
from scantling.shapes.paper import SIZES_MM, Paper

MARGIN_MM = 6.0
"""What a printer cannot reach, where the workshop says nothing: most reach 5 mm (common practice, no source)."""

LIMIT_RATIO = 0.02
"""Printers set to their own size err by a few tenths of a per cent, copiers by up to 2 %; more means that a print
dialog has shrunk the page, and that must be put right there (common practice, no source)."""


BAR = "{bar}"


@dataclass(frozen=True)
class Correction:
    """Scales by which pages are drawn, and the sentence that a page carries about them.

    words : with ``BAR`` where the length of the bar across stands
    """

    across_ratio: float
    along_ratio: float
    words: str

    def said(self, bar_mm: float) -> str:
        """Return the sentence for a page whose bar across is so long."""
        return self.words.replace(BAR, f"{bar_mm:.0f}")


def printer_correction(printer: Printer, where: Where) -> Correction:
    """Return how pages are corrected for ``printer``.

    Raises ``FaultsError``: PAPER-01 where a reading is off by more than ``LIMIT_RATIO``, PAPER-02 where the drawn
    length of the bar is missing or no length.
    """
    readings = {"across": printer.across_mm, "along": printer.along_mm}
    if not any(readings.values()):
        return Correction(1.0, 1.0, _uncorrected(printer))
    if printer.bar_mm is None or printer.bar_mm.value <= 0:
        mend = "write what the bar should have read, as in bar: 180 mm"
        raise FaultsError([Fault("PAPER-02", "the printer's readings come without the length of the bar", mend, where)])
    found = {way: reading.value / printer.bar_mm.value for way, reading in readings.items() if reading}
    faults = [_too_far(printer, printer.bar_mm, way, ratio, where) for way, ratio in found.items() if _is_off(ratio)]
    if faults:
        raise FaultsError(faults)
    across, along = 1 / found.get("across", 1.0), 1 / found.get("along", 1.0)
    return Correction(across, along, _corrected(printer, found, across, along))


def _is_off(ratio: float) -> bool:
    return abs(ratio - 1) > LIMIT_RATIO + 1e-9


def _too_far(printer: Printer, bar_mm: Figure, way: str, ratio: float, where: Where) -> Fault:
    name = printer.name or "the printer"
    what = f"{name} printed the bar {way} {_percent(ratio - 1)}: {show_number(bar_mm.value * ratio, 2)} mm for "
    what += f"{show_number(bar_mm.value)} mm; up to {LIMIT_RATIO:.0%} is corrected"
    mend = 'in the print dialog choose "actual size" or 100 %, not "fit"; print one page again and read both bars anew'
    return Fault("PAPER-01", what, mend, where)


def _percent(share: float) -> str:
    return f"{show_number(abs(share) * 100, 2)} % too {'long' if share > 0 else 'short'}"


def _corrected(printer: Printer, found: dict[str, float], across: float, along: float) -> str:
    scales = {"across": across, "along": along}
    each = [
        f"{way} × {show_number(scale, 5)}" if way in found else f"{way} not read, not corrected"
        for way, scale in scales.items()
    ]
    day = f", read on {printer.read_on.isoformat()}" if printer.read_on else ""
    return f"Corrected for {printer.name or 'your printer'}: {', '.join(each)}{day}."


def _uncorrected(printer: Printer) -> str:
    name = printer.name or "your printer"
    return (
        f"Not corrected for {name}: print this page first, read the bar across, and the bar along up to its tick "
        f"{BAR}; write both into the workshop file under printer, with bar: {BAR} mm; then print all pages anew."
    )


def workshop_paper(size: str, printer: Printer, correction: Correction, where: Where) -> Paper:
    """Return the upright sheet of a workshop as it is before the printer stretches it, its margins set aside.

    Raises ``FaultsError``: PAPER-03 for a paper that the table of sizes lacks.
    """
    sizes = {name.lower(): (name, sides) for name, sides in SIZES_MM.items()}
    if size.strip().lower() not in sizes:
        mend = f"known sizes are {', '.join(SIZES_MM)}"
        raise FaultsError([Fault("PAPER-03", f"no paper is called {size!r}", mend, where)])
    name, (width_mm, height_mm) = sizes[size.strip().lower()]
    margin_mm = printer.margin_mm.value if printer.margin_mm else MARGIN_MM
    side_mm, end_mm = margin_mm / correction.across_ratio, margin_mm / correction.along_ratio
    return Paper(
        name,
        width_mm / correction.across_ratio,
        height_mm / correction.along_ratio,
        side_mm,
        side_mm,
        end_mm,
        end_mm,
    )
