"""A document tree as PDF; the same document gives the same bytes."""

from __future__ import annotations

import json
from dataclasses import asdict
from functools import cache
from importlib.resources import files
from typing import Any

from scantling.book.document import Block, Document, Table, full_columns
from scantling.drawing.lettering import FAMILY, drawable, font_folder


def document_pdf(document: Document) -> bytes:
    """Return a document as a PDF file."""
    import typst

    job = {
        "title": drawable(document.title) or "document",
        "subtitle": drawable(document.subtitle),
        "foot": drawable(document.foot),
        "paper": document.paper_mm,
        "family": FAMILY,
        "blocks": [_block(block) for block in document.blocks],
    }
    made: Any = typst.compile(  # type: ignore[misc]
        _source(),
        sys_inputs={"job": json.dumps(job)},
        font_paths=[font_folder()],
        ignore_system_fonts=True,
        timestamp=0,
    )
    return bytes(made)


@cache
def _source() -> bytes:
    return files("scantling.book").joinpath("book.typ").read_bytes()


def _block(block: Block) -> dict[str, Any]:
    """A block as data, its texts without signs that no page can hold."""
    tidy = full_columns(block) if isinstance(block, Table) else block
    shown = {name: _drawable(value) for name, value in asdict(tidy).items()}
    return {**shown, "kind_": type(block).__name__.lower()}


def _drawable(value: Any) -> Any:
    if isinstance(value, str):
        return value if value.startswith("<?xml") else drawable(value)
    if isinstance(value, list | tuple):
        return [_drawable(item) for item in value]
    return value
