"""The generated pages are those of the code, and no link of the manual leads nowhere."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from housekit import ROOT
from make_docs import FIRST_LINE, out_of_date, pages, write

LINK = re.compile(r"(?<!!)\[[^\]]+\]\((?P<target>[^)#\s]+)(?:#[^)\s]*)?\)")


def dead_links(page: Path, text: str) -> list[str]:
    """The relative links of a page that lead to no file."""
    targets = [found["target"] for found in LINK.finditer(text) if "://" not in found["target"]]
    return [f"{page.name}: {target}" for target in targets if not (page.parent / target).exists()]


def manual() -> list[Path]:
    """Every page that a reader sees."""
    return [*sorted(ROOT.glob("*.md")), *sorted((ROOT / "docs").rglob("*.md"))]


def test_no_generated_page_is_out_of_date():
    assert out_of_date(ROOT, pages(ROOT)) == []


def test_no_link_is_dead():
    assert [fault for page in manual() for fault in dead_links(page, page.read_text(encoding="utf-8"))] == []


def test_every_page_can_be_reached_from_the_first():
    seen: set[Path] = set()
    waiting = [ROOT / "docs" / "index.md"]
    while waiting:
        page = waiting.pop().resolve()
        if page not in seen and page.suffix == ".md" and page.exists():
            seen.add(page)
            found = LINK.finditer(page.read_text(encoding="utf-8"))
            waiting += [page.parent / link["target"] for link in found if "://" not in link["target"]]
    lost = {p.resolve() for p in (ROOT / "docs").rglob("*.md")} - seen
    assert sorted(path.name for path in lost) == []


def test_a_dead_link_is_found(tmp_path):
    assert dead_links(tmp_path / "a.md", "see [this](gone.md#part)") == ["a.md: gone.md"]


@pytest.mark.parametrize(
    ("present", "wanted"),
    [
        ("old\n", {"docs/a.md": FIRST_LINE + "new\n"}),
        (FIRST_LINE + "left over\n", {}),
        (None, {"docs/b.md": FIRST_LINE}),
    ],
)
def test_a_stale_page_is_found_and_mended(tmp_path, present, wanted):
    (tmp_path / "docs").mkdir()
    if present:
        (tmp_path / "docs" / "a.md").write_text(present, encoding="utf-8")
    assert len(out_of_date(tmp_path, wanted)) == 1
    write(tmp_path, wanted)
    assert out_of_date(tmp_path, wanted) == []


def test_a_page_written_by_hand_is_left_alone(tmp_path):
    (tmp_path / "docs").mkdir()
    (tmp_path / "docs" / "tutorial.md").write_text("# By hand\n", encoding="utf-8")
    write(tmp_path, {})
    assert (tmp_path / "docs" / "tutorial.md").exists()
