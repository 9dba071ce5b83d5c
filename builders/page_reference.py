"""The first page of the reference: a line for each of the others."""

from __future__ import annotations


def title_of(text: str) -> str:
    """The heading that a page begins with."""
    return text.lstrip("# ").partition("\n")[0]


def reference_page(made: dict[str, str]) -> str:
    """List the generated pages of docs/reference."""
    inside = {name.removeprefix("docs/reference/"): text for name, text in made.items() if "/reference/" in name}
    lines = [f"- [{title_of(text)}]({name})" for name, text in sorted(inside.items())]
    return "# Reference\n\nMade from the code.\n\n" + "\n".join(lines)
