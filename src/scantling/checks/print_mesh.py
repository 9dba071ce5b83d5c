"""A printed part needs a mesh that suits the chosen parts; where none does, no file exists to print."""

from __future__ import annotations

from scantling.build.meshes import mesh_choice
from scantling.build.reader import Reader
from scantling.checks.judging import say
from scantling.checks.printed_places import printable, printed_at
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident
from scantling.findings import Finding, Verdict


def _run(reader: Reader, subject: str) -> Finding:
    place = ident(subject)
    part = printed_at(reader, place)
    if part is None:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{place} is not filled by a printed part.")
    variant = reader.derive(mesh_choice, place)
    if variant is not None:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{part.id}: {variant.mesh} suits the chosen parts.")
    made_for = "; ".join(", ".join(f"{name} {size.value:g} mm" for name, size in v.suits.items()) for v in part.meshes)
    because = f"No file exists: the meshes of {part.id} suit {made_for or 'nothing'}."
    return say(CHECK, reader, subject, Verdict.UNSOUND, because, "choose parts that a mesh suits, or model a new one")


CHECK = check_of(_run, code="PRINT-01", title="A mesh exists", source="comparison of sizes", subjects=printable)
