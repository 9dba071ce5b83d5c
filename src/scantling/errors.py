"""What stops the work: one fault per mistake, carrying where it stands and how to mend it.

A bad machine is never an error; it is a finding. Errors are for input that cannot be read and for our own
broken promises. All faults of one reading travel together in one ``FaultsError``.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from difflib import get_close_matches


@dataclass(frozen=True, order=True)
class Where:
    """A place in a file; ``line`` and ``column`` count from 1, 0 where the file has none (a mesh, say)."""

    file: str = ""
    line: int = 0
    column: int = 0

    def __str__(self) -> str:
        """Return ``file:line:column`` with what is known of it."""
        parts = [self.file or "(input)"]
        if self.line:
            parts += [str(self.line), str(self.column)] if self.column else [str(self.line)]
        return ":".join(parts)


NOWHERE = Where()


@dataclass(frozen=True)
class Fault:
    """One mistake in the input: what is wrong, where, and how to mend it; ``code`` is stable (``READ-07``)."""

    code: str
    what: str
    mend: str
    where: Where = field(default=NOWHERE)

    def __str__(self) -> str:
        """Return the one-line form that a terminal shows."""
        return f"{self.where}: {self.what} - {self.mend} [{self.code}]"


class ScantlingError(Exception):
    """The work cannot go on."""


class FaultsError(ScantlingError, ValueError):
    """Everything that is wrong with the input, sorted by place, never empty."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        """Sort the faults by place and drop exact doubles."""
        self.faults: tuple[Fault, ...] = tuple(sorted(set(faults), key=lambda f: (f.where, f.code, f.what)))
        if not self.faults:
            raise ValueError("FaultsError needs at least one fault")
        super().__init__("\n".join(str(fault) for fault in self.faults))


class QuantityError(ScantlingError, ValueError):
    """A text that is not the quantity it should be; ``mend`` says what would be."""

    def __init__(self, what: str, mend: str) -> None:
        """Keep both sentences apart, so that a reader can add the place."""
        self.what = what
        self.mend = mend
        super().__init__(f"{what} - {mend}")


class LookUpError(ScantlingError, KeyError):
    """A table or a list does not hold the name asked for; the text names the nearest that it does hold."""

    def __init__(self, kind: str, name: str, known: Sequence[str]) -> None:
        """Name what was asked for and what comes nearest."""
        self.what = f"no {kind} called {name!r}"
        self.mend = nearest(name, known)
        super().__init__(f"{self.what} - {self.mend}")

    def __str__(self) -> str:
        """Return the sentence itself, not the quoted form of ``KeyError``."""
        return str(self.args[0])


class BrokenPromiseError(ScantlingError, AssertionError):
    """Two of our own computations disagree: a defect of ours, never of the input."""


def nearest(name: str, known: Iterable[str], most: int = 3) -> str:
    """Return a sentence that names what comes nearest to ``name`` among ``known``."""
    words = sorted(set(known))
    close = get_close_matches(name, words, n=most, cutoff=0.5)
    if close:
        return "did you mean " + " or ".join(close) + "?"
    if not words:
        return "none is described yet"
    shown = ", ".join(words[:8]) + (", …" if len(words) > 8 else "")
    return f"known are {shown}"
