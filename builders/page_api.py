"""The reference of ``scantling.api``: one page for each phase of the job, made from its docstrings."""

from __future__ import annotations

import ast
from pathlib import Path

Definition = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef


def signature(node: Definition) -> str:
    """How a function is called, or how a class is named, in one line."""
    if isinstance(node, ast.ClassDef):
        return f"class {node.name}"
    returns = f" -> {ast.unparse(node.returns)}" if node.returns else ""
    return f"{node.name}({ast.unparse(node.args)}){returns}"


def fields(node: Definition) -> list[str]:
    """The annotated fields of a class, one line each."""
    body = node.body if isinstance(node, ast.ClassDef) else []
    return [f"    {ast.unparse(item)}" for item in body if isinstance(item, ast.AnnAssign)]


def entry(node: Definition) -> list[str]:
    """The lines of one public name."""
    text = ast.get_docstring(node) or ""
    summary, _, rest = text.partition("\n\n")
    lines = ["", f"## `{node.name}`", "", "```python", signature(node), *fields(node), "```", "", summary]
    return [*lines, "", "```text", rest, "```"] if rest else lines


def api_pages(root: Path) -> dict[str, str]:
    """Path -> text of a page for every module of the api that has public names."""
    made = {}
    for path in sorted((root / "src" / "scantling" / "api").glob("*.py")):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        nodes = [n for n in tree.body if isinstance(n, Definition) and not n.name.startswith("_")]
        if nodes:
            lines = [f"# scantling.api.{path.stem}", "", ast.get_docstring(tree) or ""]
            lines += [line for node in nodes for line in entry(node)]
            made[f"docs/reference/api-{path.stem}.md"] = "\n".join(lines)
    return made
