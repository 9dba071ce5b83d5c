"""Whatever is typed: an exit code, a message, never an error of the program's own."""

import io
import json
import os
import shutil
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.cli.main import COMMANDS, run

EXAMPLE = Path(__file__).parents[2] / "examples" / "plotter"
OPTIONS = [
    "--json",
    "--workshop",
    "-w",
    "--copies",
    "-n",
    "--lock",
    "--out",
    "-o",
    "--all",
    "--kept",
    "--enough",
    "--unit",
]
OPTIONS += ["--teeth", "--mass", "--motor", "--acceleration", "--help", "-h", "--version", "--", "--nope"]
WORDS = [
    "plotter",
    "village",
    "nowhere",
    ".",
    "",
    "2",
    "0",
    "-1",
    "1e9",
    "mm",
    "8 mm",
    "1.5 kg",
    "0.26 N m",
    "20 EUR",
    "no",
]
WORDS += [
    "x-rod",
    "x-rod=rod-8-soft",
    "x-motor=motor-14",
    "get:x-rod=cut",
    "x-rod=",
    "=",
    "==",
    "x-rod=x=y",
    "screw:pen-clamp=",
]
WORDS += [
    "plotter/drawings/panel.dxf",
    "plotter/meshes/carriage.stl",
    "plotter/design.yaml",
    "list.csv",
    "belt",
    "fit",
    "new",
]

usual = st.sampled_from([*OPTIONS, *WORDS])
odd = st.text(st.characters(exclude_characters="\0", exclude_categories=("Cs",)), max_size=12).filter(
    lambda t: ".." not in t and not t.startswith(("/", "~"))
)
first = st.one_of(st.sampled_from(list(COMMANDS)), st.just("check"), odd)
lines = st.builds(lambda command, words: [command, *words], first, st.lists(st.one_of(usual, usual, odd), max_size=6))


def ending(words, folder: Path) -> tuple[int, str, str]:
    """Exit code, output and error stream of one call in a folder with the example in it."""
    here, output, error = Path.cwd(), io.StringIO(), io.StringIO()
    os.chdir(folder)
    try:
        with redirect_stdout(output), redirect_stderr(error):
            return run(words), output.getvalue(), error.getvalue()
    finally:
        os.chdir(here)


@settings(max_examples=150)
@given(words=lines)
def test_no_words_break_it(words, tmp_path_factory):
    folder = tmp_path_factory.mktemp("typed")
    shutil.copytree(EXAMPLE, folder / "plotter", ignore=shutil.ignore_patterns("out"))
    (folder / "list.csv").write_text("part,pieces\nmotor-17,2\n")
    code, output, error = ending(words, folder)
    assert code in (0, 1, 2)
    if code == 2:
        assert error.strip()
        assert "--json" not in words or json.loads(output)["faults"]
    shutil.rmtree(folder)
