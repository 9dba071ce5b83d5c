"""The page of units: which ending of a name means which unit."""

from __future__ import annotations

import csv
from pathlib import Path


def units_page(root: Path) -> str:
    """Make the table of agreed endings out of tests/house/units.csv."""
    with (root / "tests" / "house" / "units.csv").open(encoding="utf-8", newline="") as file:
        rows = [
            f"| `_{row['suffix']}` | {row['unit']} | {row['meaning']} | {row['scope']} |"
            for row in csv.DictReader(file)
        ]
    head = (
        "# Units in names\n\n"
        "Every name of a number ends with its unit; a name is refused by the house tests where it does not. "
        "Inside, lengths are always mm, forces N, stresses MPa, torques N·mm and masses kg at rest.\n\n"
        "| ending | unit | for | allowed |\n| --- | --- | --- | --- |\n"
    )
    return head + "\n".join(rows)
