"""Faults gathered while reading goes on, so that all of them are told at once."""

from __future__ import annotations

from collections.abc import Iterable

from scantling.errors import NOWHERE, Fault, FaultsError, Where
from scantling.reading.codes import CODES


class Faults:
    """A growing list of faults with codes that are listed in ``codes``."""

    def __init__(self) -> None:
        """Start with none."""
        self.found: list[Fault] = []

    def add(self, code: str, what: str, mend: str, where: Where = NOWHERE) -> None:
        """Note a fault of reading; ``code`` is the number in ``READ-…``."""
        name = f"READ-{code}"
        if name not in CODES:
            raise KeyError(f"{name} is not listed in scantling.reading.codes")
        self.found.append(Fault(name, what, mend, where))

    def take(self, faults: Iterable[Fault]) -> None:
        """Note faults that another room found."""
        self.found.extend(faults)

    def raise_any(self) -> None:
        """Raise ``FaultsError`` with all faults, where there are any."""
        if self.found:
            raise FaultsError(self.found)
