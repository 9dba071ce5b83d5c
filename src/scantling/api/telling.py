"""How long work says how far it is: so many done, of so many, and what is being done."""

from __future__ import annotations

from collections.abc import Callable

Tell = Callable[[int, int, str], None]
