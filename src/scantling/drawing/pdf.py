"""Pages to one PDF at true scale, vectors throughout, paper of any size mixed; the same pages give the same bytes."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

from scantling.drawing.lettering import FAMILY, drawable, font_folder
from scantling.drawing.primitives import Page
from scantling.drawing.svg import to_svg

# Texts come as data, never as source, so nothing that a user writes is run.
_SOURCE = f"""
#let job = json(bytes(sys.inputs.job))
#set document(title: job.title, date: none)
#set page(margin: 0pt)
#set text(font: "{FAMILY}")
#for p in job.pages {{
  page(width: p.width * 1mm, height: p.height * 1mm,
    image(bytes(p.svg), format: "svg", width: p.width * 1mm, height: p.height * 1mm, alt: p.title))
}}
"""


_PREFERENCES = b"/ViewerPreferences<</Direction/L2R"


def to_pdf(pages: Sequence[Page], title: str = "") -> bytes:
    """Return the pages as a PDF file that asks the viewer to print at its own size."""
    import typst

    if not pages:
        raise ValueError("a PDF needs at least one page")
    sheets = [
        {"width": p.width_mm, "height": p.height_mm, "svg": to_svg(p).decode(), "title": drawable(p.title) or "drawing"}
        for p in pages
    ]
    job = json.dumps({"title": drawable(title) or "drawing", "pages": sheets})
    made: Any = typst.compile(  # type: ignore[misc]
        _SOURCE.encode(),
        sys_inputs={"job": job},
        font_paths=[font_folder()],
        ignore_system_fonts=True,
        timestamp=0,
    )
    return _at_own_size(bytes(made))


def _at_own_size(pdf: bytes) -> bytes:
    """Ask the viewer's print dialog not to rescale: its usual first choice "fit" is what spoils templates.

    The wish stands in the catalogue, which is the last object of the file, so only the place of the table moves.
    """
    before, found, after = pdf.rpartition(_PREFERENCES)
    head, mark, tail = after.rpartition(b"startxref\n")
    place, line_end, rest = tail.partition(b"\n")
    if not found or not mark or not place.isdigit() or b" obj" in after:
        return pdf
    added = b"/PrintScaling/None/PickTrayByPDFSize true"
    moved = str(int(place) + len(added)).encode()
    return before + _PREFERENCES + added + head + mark + moved + line_end + rest
