"""Tables as CSV that spreadsheets open rightly and safely.

UTF-8 with a byte order mark, so that a spreadsheet shows × and ° as such; commas; CR LF at line ends (RFC 4180). A cell
that a spreadsheet would take for a formula is given a leading apostrophe: texts come from files that others wrote.
Plain numbers stay numbers, negative ones too.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Sequence

ENCODING = "utf-8-sig"
_FORMULA = re.compile(r"[\s\x00-\x20]*[=+\-@]")
_NUMBER = re.compile(r"[+-]?[0-9]+([.,][0-9]+)?")


def csv_bytes(rows: Sequence[Sequence[str]]) -> bytes:
    """Return rows of text, heading first, as a CSV file."""
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\r\n")
    writer.writerows([safe_cell(cell) for cell in row] for row in rows)
    return stream.getvalue().encode(ENCODING, errors="replace")


def safe_cell(text: str) -> str:
    """Return a cell that no spreadsheet takes for a formula.

    >>> safe_cell("=1+1"), safe_cell("-0.1"), safe_cell("-x")
    ("'=1+1", '-0.1', "'-x")
    """
    plain = text.replace("\r\n", "\n").replace("\r", "\n").replace("\x00", "")
    is_formula = _FORMULA.match(plain) and not _NUMBER.fullmatch(plain)
    return f"'{plain}" if is_formula or plain.startswith(("\t", "\n")) else plain
