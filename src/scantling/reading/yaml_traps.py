"""Traps of YAML that turn what a maker wrote into something else without a word."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import Any

from scantling.errors import Where
from scantling.reading.collecting import Faults
from scantling.reading.nodes import Node, Text

_LINE_ENDS = re.compile("\r\n|[\r\n\x85\u2028\u2029]")
_THREAD_COMMENT = re.compile(r"[ \t]+(?P<lost>#[0-9][0-9/x.-]*)")
_THREAD_ANYWHERE = re.compile(r"(?:^|[\s,\[{:])(?P<lost>#[0-9][0-9/x.-]*)")
_WHOLE = re.compile(r"[+-]?[0-9]+")

# what the parser says -> what we say
_PLAIN_WORDS = {
    "found character that cannot start any token": ("a character that cannot stand here", "put the text in quotes"),
    "mapping values are not allowed in this context": (
        "a colon too many, or an indent that does not fit",
        "put a text that holds ': ' in quotes, and line the keys up",
    ),
    "could not find expected ':'": (
        "a key without its colon",
        "write 'key: value', and put a text of several lines in quotes",
    ),
    "did not find expected key": ("the lines do not line up", "indent the keys of one group alike"),
    "did not find expected ',' or ']'": ("a list is not closed", "close it with ], and put commas between its values"),
    "did not find expected ',' or '}'": ("a group is not closed", "close it with }, and put commas between its keys"),
    "did not find expected '-' indicator": (
        "the lines of a list do not line up",
        "begin every line of the list with a dash in one column",
    ),
    "did not find expected node content": ("a value is missing", "write it; quote a text that begins with a dash"),
    "found unexpected end of stream": ("a quotation mark or a bracket is not closed", "close it"),
    "control characters are not allowed": ("a control character", "delete it"),
}


class Traps:
    """Looks at the text around values."""

    def __init__(self, text: str, file: str, faults: Faults) -> None:
        """Watch one text."""
        self.lines = _LINE_ENDS.split(text)
        self.file = file
        self.faults = faults

    def swallowed(self, event: Any) -> bool:
        """Note a thread that became a comment: ``screw: #6-32``, ``bit: 1/4 #7``."""
        if event.style in ("|", ">"):
            return False
        mark = event.end_mark
        rest = self.lines[mark.line][mark.column :] if mark.line < len(self.lines) else ""
        lost = _THREAD_COMMENT.match(rest)
        if lost is None:
            return False
        self._lost(lost["lost"], mark.line, mark.column + lost.start("lost"))
        return True

    def _lost(self, lost: str, line: int, column: int) -> None:
        what = f"{lost} is taken for a comment here, as all after a blank and # is"
        mend = f'quote it, as in "{lost}"; a comment that begins with a number needs a blank after its #'
        self.faults.add("10", what, mend, Where(self.file, line + 1, column + 1))

    def split_items(self, items: list[Node]) -> bool:
        """Note ``[1,5 mm, 3 mm]``: three values where two were meant."""
        found = False
        for first, second in pairwise(items):
            if isinstance(first, Text) and isinstance(second, Text) and self._touch(first, second):
                self._split(first.value, second.value, first.where)
                found = True
        return found

    def _touch(self, first: Text, second: Text) -> bool:
        """True where a whole number, a comma and a digit follow each other without a blank."""
        if first.shift or second.shift or first.where.line != second.where.line:
            return False
        end = first.where.column + len(first.value)
        return bool(_WHOLE.fullmatch(first.value)) and second.where.column == end + 1 and second.value[:1].isdigit()

    def splits_number(self, key: str, where: Where | None) -> bool:
        """Note ``{thickness: 1,5 mm}``, where ``5 mm`` became a key of its own."""
        if where is None or not key[:1].isdigit():
            return False
        before = self.lines[where.line - 1][: where.column - 1]
        digits = re.search(r"(?P<whole>[+-]?[0-9]+),$", before)
        if digits is None:
            return False
        self._split(digits["whole"], key, Where(where.file, where.line, where.column - 1 - len(digits["whole"])))
        return True

    def _split(self, whole: str, rest: str, where: Where) -> None:
        what = f"the comma in {whole},{rest} parts two values here"
        mend = f"write {whole}.{rest}, or quote it; two values need a blank after the comma"
        self.faults.add("11", what, mend, where)

    def syntax(self, error: Any) -> None:
        """Note a text that is no YAML, in our words."""
        mark = getattr(error, "problem_mark", None)
        line, column = (mark.line, mark.column) if mark is not None else self._odd_character(error)
        if self._lost_before(error, line):
            return
        problem = getattr(error, "problem", None) or getattr(error, "reason", None) or "not to be read"
        what, mend = _PLAIN_WORDS.get(problem, (f"the text cannot be read as YAML ({problem})", "see the lines around"))
        if line < len(self.lines) and "\t" in self.lines[line][: column + 1]:
            what, mend = "a tab stands where the line is indented", "indent with blanks"
        self.faults.add("06", what, mend, Where(self.file, line + 1, column + 1))

    def _odd_character(self, error: Any) -> tuple[int, int]:
        """Return line and column of a character that YAML does not allow."""
        position = getattr(error, "position", 0) or 0
        before = _LINE_ENDS.split("\n".join(self.lines)[:position])
        return len(before) - 1, len(before[-1])

    def _lost_before(self, error: Any, line: int) -> bool:
        """Note a thread that became a comment and took a closing bracket with it."""
        context = getattr(error, "context_mark", None)
        first = context.line if context is not None else line
        for number in range(first, min(line, first + 50) + 1):
            lost = _THREAD_ANYWHERE.search(self.lines[number]) if number < len(self.lines) else None
            if lost is not None:
                self._lost(lost["lost"], number, lost.start("lost"))
                return True
        return False
