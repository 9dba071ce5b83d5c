"""Workbooks (.xlsx, .ods) opened safely: bounded, without entities, and only values that are shown."""

from __future__ import annotations

import io
import zipfile

from scantling.errors import Where
from scantling.reading.collecting import Faults
from scantling.reading.files import MEGABYTE
from scantling.reading.grid import Grid

MOST_UNPACKED_BYTES = 100 * MEGABYTE
MOST_MEMBERS = 2000
_DOCTYPES = tuple("<!DOCTYPE".encode(code) for code in ("ascii", "utf-16-le", "utf-16-be"))


def opened(data: bytes, file: str, faults: Faults) -> zipfile.ZipFile | None:
    """Return the packed folder that a workbook is, None after a fault."""
    try:
        packed = zipfile.ZipFile(io.BytesIO(data))
        members = packed.infolist()
        if len(members) > MOST_MEMBERS or sum(member.file_size for member in members) > MOST_UNPACKED_BYTES:
            what = f"the workbook unpacks to more than {MOST_UNPACKED_BYTES / MEGABYTE:.0f} MB"
            faults.add("16", what, "save the one table in a workbook of its own, or as .csv", Where(file))
            return None
        if any(_has_doctype(packed, member) for member in members if member.filename.endswith((".xml", ".rels"))):
            mend = "save it anew with a spreadsheet program, or as .csv"
            faults.add("16", "the workbook defines entities of its own", mend, Where(file))
            return None
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError, OSError, EOFError, ValueError) as error:
        what = f"the workbook cannot be opened ({str(error)[:80]})"
        faults.add("16", what, "save it anew with a spreadsheet program, or as .csv", Where(file))
        return None
    return packed


def _has_doctype(packed: zipfile.ZipFile, member: zipfile.ZipInfo) -> bool:
    content = packed.read(member)
    return any(mark in content for mark in _DOCTYPES)


def chosen(grids: list[Grid], section: str, file: str, faults: Faults) -> Grid | None:
    """Return the sheet called like the section, or the only one that holds anything; None after a fault."""
    named = [grid for grid in grids if grid.sheet.strip().casefold() == section.casefold()]
    filled = named or [grid for grid in grids if grid.rows]
    if len(filled) == 1:
        return filled[0]
    if not filled:
        faults.add("05", f"{file} holds no table", "write the header and its rows", Where(file))
        return None
    names = ", ".join(grid.sheet for grid in filled)
    faults.add("14", f"several sheets hold something ({names})", f"call the one that counts {section!r}", Where(file))
    return None
