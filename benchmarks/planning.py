"""How long ``plan`` of the large example takes, from the command to the files."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from pathlib import Path

from measuring import Measure, run_python, seconds
from starting import CALL

ALDER = Path(__file__).resolve().parents[1] / "examples" / "alder"
RUNS = 3


def measures() -> Iterator[Measure]:
    """Yield the plan of four copies, with nothing remembered and then again."""
    with tempfile.TemporaryDirectory() as scratch:
        words = ("plan", str(ALDER), "--workshop", "village", "--copies", "4", "--cache", str(Path(scratch) / "cache"))
        first_s = seconds(lambda: _plan(words, Path(scratch) / "first"))
        yield Measure("plan of Alder, four copies, nothing remembered", first_s, "s", 15.0)
        again_s = min(seconds(lambda n=n: _plan(words, Path(scratch) / f"again-{n}")) for n in range(RUNS))  # type: ignore[misc]
        yield Measure("the same with its cache", again_s, "s", 6.0, f"{first_s / again_s:.1f} times as quick")


def _plan(words: tuple[str, ...], out: Path) -> None:
    done = run_python("-c", CALL, *words, "--out", str(out))
    if done.returncode not in (0, 1):
        raise SystemExit(f"plan ended with {done.returncode}: {done.stderr.decode(errors='replace')}")
