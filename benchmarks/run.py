"""Measure what was promised, all in one run, each figure beside its target: ``make bench``.

The figures depend on the machine and on what else it does; the targets are for two cores with nothing else to do.
Ends with 1 where a target is missed.
"""

from __future__ import annotations

import importlib
import sys

from measuring import Measure, load_note

SUBJECTS = ("starting", "checking", "planning", "following", "choices", "purchases")


def main(wanted: list[str]) -> int:
    """Print all measures, or those of the subjects named; return 1 where a target is missed."""
    print(load_note())
    found: list[Measure] = []
    for subject in wanted or SUBJECTS:
        print(f"\n{subject}: {(importlib.import_module(subject).__doc__ or '').strip()}")
        for measure in importlib.import_module(subject).measures():
            found.append(measure)
            print("  " + measure.line(), flush=True)
    missed = [measure.name for measure in found if not measure.is_met]
    print(f"\n{len(found)} measured" + (f", missed: {'; '.join(missed)}" if missed else ", every target met"))
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
