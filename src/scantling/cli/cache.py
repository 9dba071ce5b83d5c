"""The content cache on disk: small files in the user's cache folder, of this very program, the oldest thrown away."""

from __future__ import annotations

import hashlib
import os
import shutil
import sys
from pathlib import Path

from scantling.cli.writing import write_file

MOST_FILES = 200
MOST_PROGRAMS = 3  # whose files are kept: this one and those that remembered last
PROGRAMS = "scantling-programs"  # the folder in which every program has a folder of its own, and nobody else anything
PLACE = "SCANTLING_CACHE"  # names another folder; empty for none


def open_store() -> FolderStore | None:
    """Return the store, or None where the user wants none or no folder can be had."""
    named = os.environ.get(PLACE)
    if named == "":
        return None
    folder = Path(named) if named else _user_cache()
    return FolderStore(folder / PROGRAMS / program_name(Path(__file__).parent.parent))


class FolderStore:
    """Bytes by name in a folder; a disk that is full or read-only only means that nothing is remembered."""

    def __init__(self, folder: Path) -> None:
        """Store in ``folder``, made when first needed."""
        self.folder = folder

    def get(self, name: str) -> bytes | None:
        """Return what is stored under a name, or None."""
        try:
            return (self.folder / name).read_bytes()
        except OSError:
            return None

    def put(self, name: str, data: bytes) -> None:
        """Store bytes under a name and throw the oldest files away."""
        try:
            write_file(self.folder / name, data)
            for path in _oldest_first(self.folder)[:-MOST_FILES]:
                path.unlink(missing_ok=True)
            if self.folder.parent.name == PROGRAMS:
                for path in _oldest_first(self.folder.parent)[:-MOST_PROGRAMS]:
                    shutil.rmtree(path, ignore_errors=True)
        except OSError:
            return


def _oldest_first(folder: Path) -> list[Path]:
    return sorted(folder.iterdir(), key=lambda path: path.stat().st_mtime_ns)


def _user_cache() -> Path:
    """Return the folder for caches that each system has."""
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or Path.home() / "AppData" / "Local") / "scantling" / "cache"
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Caches" / "scantling"
    return Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "scantling"


def program_name(top: Path) -> str:
    """Return a name for the program in a folder: another version, or one being worked on, remembers apart."""
    seen = hashlib.sha256()
    for path in sorted(path for path in top.rglob("*") if path.is_file() and path.suffix != ".pyc"):
        state = path.stat()
        seen.update(f"{path.relative_to(top).as_posix()} {state.st_size} {state.st_mtime_ns}\n".encode())
    return seen.hexdigest()[:16]
