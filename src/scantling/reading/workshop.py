"""A workshop alone, without a design to hold it against."""

from __future__ import annotations

from pathlib import Path

from scantling.errors import Where
from scantling.model.workshop import Workshop
from scantling.reading.collecting import Faults
from scantling.reading.document import read_document
from scantling.reading.files import Folder
from scantling.reading.offer_names import with_offer_names


def read_workshop(path: Path) -> Workshop:
    """Return the workshop in a file with all that it names; raises ``FaultsError``.

    What needs a design (whether a part is known) is not looked at; ``read_project`` does.
    """
    faults = Faults()
    if not path.is_file():
        faults.add("01", f"there is no file {path.name!r}", "name the file of a workshop", Where(path.as_posix()))
        faults.raise_any()
    document = read_document(path, Workshop, Folder(path.parent, faults, {}), faults)
    faults.raise_any()
    return with_offer_names(document.value)
