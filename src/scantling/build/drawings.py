"""All that the drawing of a sheet depends on, in one record: two records are equal where the drawing is the same."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.holes import ResolvedHole, sheet_holes, sheet_outline
from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.quantities import Figure
from scantling.shapes.outline import Outline


@dataclass(frozen=True)
class SheetDrawing:
    """A sheet to be drawn.

    part : the stock it is made from    pieces : names, or numbers where they have none
    mirrored : those of the other hand    outline : lower left corner at the origin
    """

    sheet: str
    title: str
    part: str
    material: str
    thickness_mm: Figure
    outline: Outline
    holes: tuple[ResolvedHole, ...]
    pieces: tuple[str, ...]
    mirrored: tuple[str, ...]
    face_up: str
    up: str
    grain: str
    drilled_with: str | None


def sheet_drawing(reader: Reader, sheet: str) -> SheetDrawing | None:
    """Return what the drawing of a sheet shows; None where its place is empty or no outline was read for it."""
    part, outline = reader.part(sheet), sheet_outline(reader, sheet)
    if part is None or outline is None:
        return None
    described, place = reader.design.sheets[sheet], reader.design.places[sheet]
    return SheetDrawing(
        sheet=sheet,
        title=described.title or place.title or sheet,
        part=part.id,
        material=part.material or part.id,
        thickness_mm=reader.derive(feature, sheet, "thickness"),
        outline=outline,
        holes=reader.derive(sheet_holes, sheet),
        pieces=place.pieces or tuple(str(number + 1) for number in range(reader.pieces(sheet))),
        mirrored=place.mirrored,
        face_up=described.face_up,
        up=described.up,
        grain=described.grain,
        drilled_with=described.drilled_with,
    )
