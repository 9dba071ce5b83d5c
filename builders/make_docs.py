"""Writes the pages of docs/ that are made from the code; with ``--check`` only says which of them are out of date."""

from __future__ import annotations

import sys
from pathlib import Path

from page_api import api_pages
from page_checks import checks_page
from page_commands import commands_page
from page_reference import reference_page
from page_sources import sources_page
from page_units import units_page

ROOT = Path(__file__).resolve().parents[1]
FIRST_LINE = "<!-- Made by builders/make_docs.py from the code: do not edit. -->\n\n"


def pages(root: Path) -> dict[str, str]:
    """Every generated page: path from the root -> text; a page whose origin does not exist yet is left out."""
    made = {
        "docs/sources.md": sources_page(root),
        "docs/checks.md": checks_page(root),
        "docs/reference/commands.md": commands_page(root),
        "docs/reference/units.md": units_page(root),
        **api_pages(root),
    }
    made = {name: text for name, text in sorted(made.items()) if text}
    made["docs/reference/index.md"] = reference_page(made)
    return {name: FIRST_LINE + text.rstrip() + "\n" for name, text in made.items()}


def out_of_date(root: Path, wanted: dict[str, str]) -> list[str]:
    """Pages that differ from what the code says, are missing, or are no longer made from anything."""
    present = {p.relative_to(root).as_posix(): p.read_text(encoding="utf-8") for p in (root / "docs").rglob("*.md")}
    stale = [name for name, text in wanted.items() if present.get(name) != text]
    left_over = [name for name, text in present.items() if text.startswith(FIRST_LINE) and name not in wanted]
    return sorted(stale + left_over)


def write(root: Path, wanted: dict[str, str]) -> None:
    """Write what is out of date and take away what is left over."""
    for name in out_of_date(root, wanted):
        path = root / name
        if name in wanted:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(wanted[name], encoding="utf-8", newline="\n")
        else:
            path.unlink()


def main() -> int:
    """Run from the command line; 1 where ``--check`` finds a page out of date."""
    wanted = pages(ROOT)
    stale = out_of_date(ROOT, wanted)
    if "--check" in sys.argv[1:]:
        for name in stale:
            print(f"{name} is out of date: run `make docs`")
        return 1 if stale else 0
    write(ROOT, wanted)
    print(f"{len(wanted)} pages made, {len(stale)} changed")
    return 0


if __name__ == "__main__":
    sys.exit(main())
