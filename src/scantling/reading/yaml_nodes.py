"""YAML read as plain text: every scalar stays what was written, every value knows its line and column.

Built from the parser's events, so that nothing is resolved, expanded or built behind our back, and nothing recurses.
"""

from __future__ import annotations

from typing import Any

import yaml

from scantling.errors import Where
from scantling.reading.collecting import Faults
from scantling.reading.nodes import Broken, Entries, Items, Node, Text
from scantling.reading.yaml_traps import Traps

DEEPEST = 24
MOST_NODES = 1_000_000
_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_QUOTED = ("'", '"')


class _TooMuchError(Exception):
    """Carries nothing: the fault is noted before it is raised."""


class _Frame:
    """A list or a group that is being read."""

    def __init__(self, node: Items | Entries, flow: bool) -> None:
        self.node = node
        self.flow = flow
        self.key: str | None = None
        self.key_where: Where | None = None
        self.spoilt = False


def read_yaml(text: str, file: str, faults: Faults) -> Node | None:
    """Return the tree of a YAML text; None after a fault that leaves nothing to go on with.

    Smaller faults (a key twice, a tag, a swallowed thread) are noted and reading goes on.
    """
    before = len(faults.found)
    builder = _Builder(text, file, faults)
    try:
        for event in yaml.parse(text, Loader=_LOADER):
            builder.take(event)
    except yaml.YAMLError as error:
        builder.traps.syntax(error)
        return None
    except _TooMuchError:
        return None
    if builder.root is None and len(faults.found) == before:
        faults.add("05", f"{file} holds nothing but comments", "write something in it", Where(file, 1, 1))
    return builder.root


class _Builder:
    """Takes events, keeps the unfinished lists and groups on a stack."""

    def __init__(self, text: str, file: str, faults: Faults) -> None:
        self.file = file
        self.faults = faults
        self.traps = Traps(text, file, faults)
        self.stack: list[_Frame] = []
        self.root: Node | None = None
        self.documents = 0
        self.count = 0

    def where(self, event: Any) -> Where:
        mark = event.start_mark
        return Where(self.file, mark.line + 1, mark.column + 1)

    def take(self, event: Any) -> None:
        """Handle one event."""
        if isinstance(event, yaml.ScalarEvent):
            self._scalar(event)
        elif isinstance(event, yaml.MappingStartEvent):
            self._open(event, Entries({}, {}, self.where(event)))
        elif isinstance(event, yaml.SequenceStartEvent):
            self._open(event, Items([], self.where(event)))
        elif isinstance(event, yaml.MappingEndEvent | yaml.SequenceEndEvent):
            self._close()
        elif isinstance(event, yaml.AliasEvent):
            self._refuse(event, f"*{event.anchor} repeats something from elsewhere", "write it out")
            self._put(Broken(self.where(event)))
        elif isinstance(event, yaml.DocumentStartEvent):
            self._document(event)

    def _refuse(self, event: Any, what: str, mend: str) -> None:
        self.faults.add("07", what, mend, self.where(event))

    def _document(self, event: Any) -> None:
        self.documents += 1
        if self.documents == 2:
            self._refuse(event, "a second document begins here", "keep one document in a file; delete the ---")
            raise _TooMuchError
        if event.tags:
            self._refuse(event, "a %TAG line is not read", "delete it")

    def _is_marked(self, event: Any) -> bool:
        """Note tags and anchors."""
        if event.anchor is not None:
            self._refuse(event, f"the anchor &{event.anchor} is not read", "delete it, and write out what refers to it")
        if event.tag is not None:
            self._refuse(event, f"the tag {event.tag!r} is not read", "delete it; every value is read as written")
        return event.tag is not None

    def _scalar(self, event: Any) -> None:
        where = self.where(event)
        frame = self.stack[-1] if self.stack else None
        is_marked = self._is_marked(event)
        if isinstance(frame, _Frame) and isinstance(frame.node, Entries) and frame.key_where is None:
            self._key(frame, event, where)
            return
        quoted = event.style in _QUOTED
        if is_marked or self.traps.swallowed(event) or (not quoted and not event.value and self._nothing(frame, where)):
            self._put(Broken(where))
        else:
            self._put(Text(event.value, where, 1 if quoted else 0))

    def _nothing(self, frame: _Frame | None, where: Where) -> bool:
        if frame is not None and frame.flow and self.traps.splits_number(frame.key or "", frame.key_where):
            frame.spoilt = True
            return True
        after = f"after {frame.key!r}" if frame is not None and frame.key is not None else "here"
        self.faults.add("09", f"nothing is written {after}", "write a value, or delete the line", where)
        return True

    def _key(self, frame: _Frame, event: Any, where: Where) -> None:
        """Remember a key until its value comes."""
        entries = frame.node
        key: str = event.value
        frame.key, frame.key_where = key, where
        if key == "<<" and event.style not in _QUOTED:
            self._refuse(event, "a merge key << is not read", "write the keys out")
            frame.spoilt = True
        elif not key and event.style not in _QUOTED:
            self.faults.add("09", "a key is empty", "write a name before the colon", where)
            frame.spoilt = True
        elif isinstance(entries, Entries) and key in entries.keys:
            first = entries.keys[key]
            self.faults.add("08", f"{key!r} stands twice (first in line {first.line})", "keep one of them", where)
            frame.key = None

    def _open(self, event: Any, node: Items | Entries) -> None:
        self._is_marked(event)
        if len(self.stack) >= DEEPEST:
            self.faults.add("12", f"more than {DEEPEST} levels deep", "write it flatter", self.where(event))
            raise _TooMuchError
        frame = self.stack[-1] if self.stack else None
        if frame is not None and isinstance(frame.node, Entries) and frame.key_where is None:
            self.faults.add("22", "a key is a list or a group", "write a name before the colon", self.where(event))
            raise _TooMuchError
        self.stack.append(_Frame(node, bool(event.flow_style)))

    def _close(self) -> None:
        frame = self.stack.pop()
        node = frame.node
        if frame.flow and isinstance(node, Items):
            frame.spoilt |= self.traps.split_items(node.items)
        self._put(Broken(node.where) if frame.spoilt else node)

    def _put(self, node: Node) -> None:
        """Give a finished node to what holds it."""
        self.count += 1
        if self.count > MOST_NODES:
            self.faults.add("12", f"more than {MOST_NODES} values", "split the file", node.where)
            raise _TooMuchError
        if not self.stack:
            self.root = node
            return
        frame = self.stack[-1]
        if isinstance(frame.node, Items):
            frame.node.items.append(node)
            return
        if frame.key is not None and frame.key_where is not None:
            frame.node.entries[frame.key] = node
            frame.node.keys[frame.key] = frame.key_where
        frame.key = frame.key_where = None
