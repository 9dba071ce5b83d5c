"""A check of the example in a fresh process: with nothing kept, with its panels kept, with nothing changed."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from pathlib import Path

from measuring import Measure, run_python, took

ALDER = Path(__file__).parent.parent / "examples" / "alder"
CALL = "import sys; from scantling.cli.main import main; sys.argv[0] = 'scantling'; sys.exit(main())"


def measures() -> Iterator[Measure]:
    """Yield the time of a check without a cache, of the first one that fills it, and of the same again."""
    words = ("check", str(ALDER), "--workshop", "village")
    with tempfile.TemporaryDirectory() as folder:
        for name, cache, target in (
            ("check, no cache, meshes of frames included", "", 8.0),
            ("check, cache still empty", folder, 8.0),
            ("check, its content cache filled", folder, 1.5),
        ):
            run = took(lambda cache=cache: run_python("-c", CALL, *words, cache=cache))  # type: ignore[misc]
            yield Measure(name, run.wall_s, "s", target, run.note)
