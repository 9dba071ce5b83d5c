"""Files of one folder: found, kept inside, kept small, read once, their digests noted."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from pathlib import Path, PurePosixPath, PureWindowsPath

from scantling.errors import NOWHERE, Where, nearest
from scantling.reading.collecting import Faults

MEGABYTE = 1_000_000
MOST_TEXT_BYTES = 20 * MEGABYTE
MOST_DRAWING_BYTES = 40 * MEGABYTE
MOST_MESH_BYTES = 60 * MEGABYTE
LONGEST_NAME = 300


class Folder:
    """A folder that nothing read through it can leave; file names in faults are relative to it."""

    def __init__(
        self,
        root: Path,
        faults: Faults,
        digests: dict[str, str],
        prefix: str = "",
        seen: dict[str, str] | None = None,
    ) -> None:
        """Read below ``root``; ``digests`` gets the sha256 of every file that was read.

        prefix : put before names, where files of two folders must be told apart    seen : gets them by whole path
        """
        self.root = root.resolve()
        self.prefix = prefix
        self.faults = faults
        self.digests = digests
        self.seen = {} if seen is None else seen

    def name_of(self, path: Path) -> str:
        """Return how a file is called in faults and digests."""
        resolved = path.resolve()
        name = resolved.relative_to(self.root).as_posix() if resolved.is_relative_to(self.root) else path.name
        return self.prefix + name

    def find(self, written: str, beside: Path, where: Where = NOWHERE) -> Path | None:
        """Return the file that ``written`` means for a file in the folder ``beside``; None after a fault."""
        if not self._may_be_name(written, where):
            return None
        path = beside / written
        resolved = path.resolve()
        if not resolved.is_relative_to(self.root):
            mend = "keep every file of a design inside its folder"
            self.faults.add("02", f"the file {written!r} leads out of the folder", mend, where)
            return None
        if resolved.is_file():
            return resolved
        self._missing(written, path, where)
        return None

    def _may_be_name(self, written: str, where: Where) -> bool:
        windows, posix = PureWindowsPath(written), PurePosixPath(written)
        if "\0" in written or "\n" in written or not written.strip() or len(written) > LONGEST_NAME:
            self.faults.add(
                "01", f"{written[:40]!r} is not the name of a file", "write one, as in back-panel.dxf", where
            )
            return False
        if posix.is_absolute() or windows.drive or windows.root:
            mend = "write it relative to the file that names it, as in drawings/back-panel.dxf"
            self.faults.add("02", f"the file {written!r} has a place of its own on one computer", mend, where)
            return False
        if "\\" in written:
            mend = f"write {written.replace(chr(92), '/')}, which every system reads"
            self.faults.add("02", f"the file {written!r} has backslashes", mend, where)
            return False
        return True

    def _missing(self, written: str, path: Path, where: Where) -> None:
        if path.is_dir():
            self.faults.add("01", f"{written!r} is a folder", "name one file in it", where)
            return
        there = sorted(entry.name for entry in path.parent.iterdir()) if path.parent.is_dir() else []
        mend = nearest(path.name, there) if there else f"there is no folder {path.parent.name!r}"
        self.faults.add("01", f"there is no file {written!r}", mend, where)

    def _note(self, name: str, digest: str) -> None:
        """Note a digest; files of one name in two folders are both in it."""
        before = self.digests.setdefault(name, digest)
        if before != digest:
            self.digests[name] = hashlib.sha256(f"{before} {digest}".encode()).hexdigest()

    def read(self, path: Path, most_bytes: int, where: Where = NOWHERE) -> bytes | None:
        """Return the bytes of a file found before; None after a fault (too large, unreadable, empty)."""
        name = self.name_of(path)
        try:
            size = path.stat().st_size
            if size > most_bytes:
                what = f"{name} has {size / MEGABYTE:.0f} MB, the limit is {most_bytes / MEGABYTE:.0f} MB"
                self.faults.add("03", what, "split it, or leave out what the machine does not need", where)
                return None
            data = path.read_bytes()
        except OSError as error:
            self.faults.add("01", f"{name} cannot be opened ({error.strerror})", "check that it may be read", where)
            return None
        digest = hashlib.sha256(data).hexdigest()
        self.seen[str(path.resolve())] = digest
        self._note(name, digest)
        if not data.strip():
            self.faults.add("05", f"{name} is empty", "write something in it, or do not name it", Where(name, 1, 1))
            return None
        return data


NOT_THERE = ""  # the digest of a file that was looked for in vain


def are_unchanged(seen: Mapping[str, str]) -> bool:
    """Return whether files are what they were when they were seen: by whole path, their digests."""
    return all(_digest_of(Path(path)) == digest for path, digest in seen.items())


def seen_now(path: Path) -> dict[str, str]:
    """Return a file as ``are_unchanged`` takes it."""
    return {str(path.resolve()): _digest_of(path)}


def _digest_of(path: Path) -> str:
    try:
        return hashlib.sha256(path.read_bytes()).hexdigest()
    except OSError:
        return NOT_THERE


def decoded(data: bytes, name: str, faults: Faults) -> str | None:
    """Return the text of a file; None after a fault. A byte order mark of UTF-8 is dropped."""
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        faults.add("04", f"{name} is in UTF-16", "save it as UTF-8", Where(name, 1, 1))
        return None
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start]
        column = len(before.rpartition(b"\n")[2].decode("utf-8", "replace")) + 1
        what = f"byte {data[error.start]:#04x} is not UTF-8"
        faults.add("04", what, "save the file as UTF-8", Where(name, before.count(b"\n") + 1, column))
        return None
    if "\0" in text:
        before_nul = text[: text.index("\0")]
        place = Where(name, before_nul.count("\n") + 1, len(before_nul.rpartition("\n")[2]) + 1)
        faults.add("04", "a NUL character stands in the text", "save the file as plain text", place)
        return None
    return text
