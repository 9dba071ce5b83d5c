"""Files appear whole or not at all: a folder is written beside its place and put there in one move."""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Mapping
from pathlib import Path

from scantling.errors import Fault, FaultsError, Where

MARK = ".scantling-files"  # names the files of a folder that was written by us and may be replaced


def write_file(path: Path, data: bytes) -> None:
    """Write one file; a reader sees the old one or the new one, never a part."""
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.", suffix=".part")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        Path(name).chmod(0o666 & ~_umask())  # a temporary file is its maker's alone; this one is for everybody
        Path(name).replace(path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def write_folder(folder: Path, files: Mapping[str, bytes]) -> None:
    """Put a folder with exactly ``files``, and a list of them, in place of an earlier one of ours.

    Raises ``FaultsError`` where ``folder`` holds something that we did not write: nothing of the maker's is removed.
    """
    mend_folder(folder)
    if folder.exists() and any(folder.iterdir()) and not (folder / MARK).exists():
        where = Where(str(folder))
        raise FaultsError(
            [
                Fault(
                    "WRITE-01",
                    f"{folder} holds files that are not of a plan",
                    "name an empty or new folder with --out",
                    where,
                )
            ]
        )
    folder.parent.mkdir(parents=True, exist_ok=True)
    fresh = Path(tempfile.mkdtemp(dir=folder.parent, prefix=f".{folder.name}.", suffix=".part"))
    try:
        fresh.chmod(0o777 & ~_umask())
        listed = "".join(f"{name}\n" for name in sorted(files)).encode()
        for name, data in sorted({**files, MARK: listed}.items()):
            write_file(fresh / name, data)
        _swap(fresh, folder)
    finally:
        shutil.rmtree(fresh, ignore_errors=True)


def _old(folder: Path) -> Path:
    return folder.parent / f".{folder.name}.old"


def mend_folder(folder: Path) -> None:
    """Finish a replacement that was killed between its two moves: the old folder comes back, or goes."""
    old = _old(folder)
    if old.exists() and not folder.exists():
        old.rename(folder)
    elif old.exists():
        shutil.rmtree(old)


def _swap(fresh: Path, folder: Path) -> None:
    old = _old(folder)
    if folder.exists():
        folder.rename(old)
    try:
        fresh.rename(folder)
    except BaseException:
        if old.exists() and not folder.exists():
            old.rename(folder)
        raise
    shutil.rmtree(old, ignore_errors=True)


def begin_folder(folder: Path, files: Mapping[str, bytes]) -> list[Path]:
    """Write the first files of a new folder and return their paths; raises ``FaultsError`` where one exists already."""
    there = [folder / name for name in sorted(files) if (folder / name).exists()]
    if there:
        mend = "name a new folder, or move the file away"
        raise FaultsError([Fault("WRITE-02", f"{path} exists already", mend, Where(str(path))) for path in there])
    for name, data in sorted(files.items()):
        write_file(folder / name, data)
    return [folder / name for name in sorted(files)]
