"""How long the command takes to begin, against the bare interpreter."""

from __future__ import annotations

from collections.abc import Iterator

from measuring import Measure, median_s, run_python

RUNS = 9
CALL = "import sys; from scantling.cli.main import main; sys.argv[0] = 'scantling'; sys.exit(main())"


def measures() -> Iterator[Measure]:
    """Yield the start of ``--help`` and ``--version`` above an interpreter that does nothing."""
    bare_s = median_s(lambda: run_python("-c", "pass"), RUNS)
    yield Measure("bare interpreter", bare_s * 1000, "ms")
    for word, target in (("--help", 150.0), ("--version", 100.0)):
        taken_s = median_s(lambda word=word: run_python("-c", CALL, word), RUNS)  # type: ignore[misc]
        yield Measure(f"{word} above the bare interpreter", (taken_s - bare_s) * 1000, "ms", target)
