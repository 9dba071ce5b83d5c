"""A printed part must fit on the print bed, as its mesh stands or turned by a right angle."""

from __future__ import annotations

from scantling.build.gets import plastic_of
from scantling.build.meshes import mesh_choice, print_estimate
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.checks.judging import say
from scantling.checks.printed_places import printable, printed_at
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident
from scantling.findings import Finding, Verdict


def _run(reader: Reader, subject: str) -> Finding:
    place, bed = ident(subject), reader.workshop.print_bed
    if printed_at(reader, place) is None:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{place} is not filled by a printed part.")
    if bed is None:
        raise NotDescribedError(("workshop.print-bed",))
    if plastic_of(reader.get(place)) is None:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{place} is not printed here.")
    if reader.derive(mesh_choice, place) is None:
        return say(CHECK, reader, subject, Verdict.SOUND, "No mesh suits, so none has to fit (see PRINT-01).")
    found = reader.derive(print_estimate, place)
    size = f"{found.width_mm:.0f} x {found.depth_mm:.0f} x {found.height_mm:.0f} mm"
    room = f"{bed.width_mm.value:.0f} x {bed.depth_mm.value:.0f} x {bed.height_mm.value:.0f} mm"
    fits = "fits on" if found.fits_bed else "does not fit on"
    verdict = Verdict.SOUND if found.fits_bed else Verdict.UNSOUND
    because = f"{found.mesh} of {size} {fits} the bed of {room}."
    return say(CHECK, reader, subject, verdict, because, "print it elsewhere, or in two parts")


CHECK = check_of(_run, code="PRINT-02", title="Fits the print bed", source="sizes of the mesh", subjects=printable)
