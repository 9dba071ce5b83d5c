"""Help with an example for every command and question, near misses, completion, endings."""

import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest
from click.shell_completion import BashComplete

from scantling.api.asking import question
from scantling.api.opening import open_design, read_changes
from scantling.api.trying import TRIALS
from scantling.cli import main
from scantling.cli.main import COMMANDS, run

EXAMPLES = Path(__file__).parents[2] / "examples"
CALL = "import sys; from scantling.cli.main import main; sys.argv[0] = 'scantling'; sys.exit(main())"


def fresh(*words, **env):
    """The program in a process of its own, as a shell would start it."""
    return subprocess.run(
        [sys.executable, "-c", CALL, *words],
        capture_output=True,
        text=True,
        encoding="utf-8",
        env={**os.environ, **env},
        timeout=120,
    )


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_has_help_with_an_example(call, command):
    done = call(command, "--help")
    assert done.code == 0
    assert "Example" in done.out
    assert f"scantling {command}" in done.out
    if command != "try":
        assert "--json" in done.out


@pytest.mark.parametrize("question", TRIALS)
def test_every_question_has_help_with_an_example_that_runs(call, question):
    done = call("try", question, "--help")
    assert done.code == 0
    assert "--json" in done.out
    example = TRIALS[question].example
    assert example.startswith(f"scantling try {question}")
    assert call(*shlex.split(example)[1:]).code in (0, 1)


@pytest.mark.parametrize("command", ["check", "plan", "whatif", "why"])
def test_the_examples_name_places_and_parts_that_are_there(call, command):
    """Every example about a design of ours is read as it would be typed, up to the work itself."""
    lines = [
        shlex.split(line)
        for line in call(command, "--help").out.splitlines()
        if f"scantling {command} examples/" in line
    ]
    assert lines
    for words in lines:
        folder, *rest = words[words.index(command) + 1 :]
        if (EXAMPLES.parent / folder).is_dir():
            session = open_design(EXAMPLES.parent / folder, "village")
            changes = [word for word in rest if "=" in word]
            assert len(read_changes(session, changes)) == len(changes)
            assert command != "why" or question(session, rest[-1:])


def test_the_help_lists_every_command_and_the_endings(call):
    done = call("--help")
    assert re.findall(r"(?m)^  ([a-z]+)  ", done.out) == list(COMMANDS)
    for words in ("Ends with 0", "1 where", "2 where", "_SCANTLING_COMPLETE"):
        assert words in done.out


def test_no_command_at_all_shows_the_help_and_is_not_taken_for_success(call):
    assert call().code == 2


@pytest.mark.parametrize(
    ("words", "hint"),
    [
        (("plna",), "did you mean plan"),
        (("tri",), "did you mean try?"),
        (("qqq",), "known are"),
        (("try", "blet"), "did you mean belt?"),
        (("try", "belt", "--teth", "3"), "--teeth"),
        (("check", "--worksop", "x"), "--workshop"),
        (("new", "--jso", "x"), "--json"),
    ],
)
def test_a_near_miss_is_named(call, words, hint):
    done = call(*words)
    assert done.code == 2
    assert hint in done.out + done.err


@pytest.mark.parametrize(
    ("words", "hint"),
    [
        (("x-rd=rod-8-soft",), "did you mean x-rod"),
        (("x-rod=rod-8-sof",), "did you mean rod-8-soft"),
        (("x-rod",), "write place=part"),
        (("get:x-rd=cut",), "did you mean x-rod"),
        (("get:x-rod=glued",), "known are cut"),
        (("screw:pen-clmp=M3x10 socket head screw",), "did you mean pen-clamp"),
        (("screw:pen-clamp=M3x9 socket head screw",), "did you mean M3x"),
        (("whatever:x-rod=cut",), "write place=part"),
        (("x-rod=",), "known are rod-8-hardened"),
    ],
)
def test_a_near_miss_of_a_change_is_named(call, plotter, words, hint):
    done = call("check", plotter, "-w", "village", *words)
    assert done.code == 2
    assert hint in done.err


def test_all_wrong_changes_are_told_at_once(call, plotter):
    done = call("check", plotter, "-w", "village", "x-rd=a", "x-rod=b", "nonsense")
    assert done.code == 2
    assert len(done.err.strip().splitlines()) == 4  # three faults and their count
    assert "3 faults; nothing was written" in done.err


def test_completion_for_bash_is_written_and_answers():
    done = fresh(_SCANTLING_COMPLETE="bash_source")
    assert done.returncode == 0
    assert "complete -o nosort -F _scantling_completion scantling" in done.stdout
    answer = fresh(COMP_WORDS="scantling wh", COMP_CWORD="1", _SCANTLING_COMPLETE="bash_complete")
    assert answer.stdout.split() == ["plain,whatif", "plain,why"]


@pytest.fixture
def completed(monkeypatch):
    """What bash would be offered after these words in a folder."""

    def offered(folder, *words, begun=""):
        monkeypatch.chdir(folder)
        monkeypatch.setenv("COMP_WORDS", " ".join(["scantling", *words, begun]).strip())
        monkeypatch.setenv("COMP_CWORD", str(len(words) + 1))
        answer = BashComplete(main.app, {}, "scantling", "_SCANTLING_COMPLETE").complete()
        return [line.partition(",")[2] for line in answer.splitlines()]

    return offered


def test_completion_offers_commands_options_workshops_places_and_parts(plotter, completed):
    assert completed(plotter, begun="wh") == ["whatif", "why"]
    assert completed(plotter, "check", begun="--wor") == ["--workshop"]
    assert "village" in completed(plotter, "check", "-w", begun="vil")
    assert "x-rod=" in completed(plotter, "whatif", begun="x-r")
    assert completed(plotter, "why", begun="x-ro") == ["x-rod", "x-ro"]  # the second asks the shell for folders
    assert completed(plotter, "whatif", "x-rod", "=", begun="rod-8-s") == ["rod-8-soft"]
    assert completed(plotter.parent, "whatif", "plotter", begun="x-bu") == ["x-bushing="]
    assert completed(plotter, "try", begun="be") == ["belt"]


def test_completion_of_an_unreadable_design_offers_nothing_and_says_nothing(plotter, completed, capsys):
    (plotter / "design.yaml").write_text("machine: [")
    assert "x-rod=" not in completed(plotter, "whatif", begun="x-r")
    assert capsys.readouterr().err == ""


def test_real_processes_end_with_their_code_and_print_plainly(plotter):
    sound = fresh("check", str(plotter), "-w", "village")
    unsound = fresh("check", str(plotter), "-w", "village", "x-rod=rod-8-soft")
    bad = fresh("check", str(plotter), "-w", "nowhere")
    assert [done.returncode for done in (sound, unsound, bad)] == [0, 1, 2]
    for done in (sound, unsound, bad):
        assert "\x1b" not in done.stdout + done.stderr
        assert "Traceback" not in done.stderr
        assert all(line == line.rstrip() for line in done.stdout.splitlines())
    assert "did you mean" in bad.stderr or "known are" in bad.stderr or "write one" in bad.stderr
    assert bad.stdout == ""


def test_it_runs_as_a_module():
    done = subprocess.run([sys.executable, "-m", "scantling", "--version"], capture_output=True, text=True, timeout=60)
    assert done.returncode == 0
    assert done.stdout.startswith("scantling, version ")


def test_output_that_the_console_cannot_write_is_replaced_not_refused():
    done = fresh("try", "supply", "--power", "250 W", "--load", "186 W", PYTHONIOENCODING="ascii")
    assert done.returncode == 0


def test_a_defect_of_ours_ends_with_three_and_one_line(monkeypatch, capsys):
    def break_it(_):
        raise TypeError("oh dear")

    monkeypatch.setattr(main, "run", break_it)
    with pytest.raises(SystemExit) as ended:
        main.main(["--help"])
    assert ended.value.code == 3
    assert "a defect of scantling, not of your files: TypeError: oh dear" in capsys.readouterr().err
    monkeypatch.setenv(main.TRACE, "1")
    with pytest.raises(TypeError):
        main.main(["--help"])


def test_stopping_ends_with_two(monkeypatch, capsys):
    def stop(*_, **__):
        raise KeyboardInterrupt

    monkeypatch.setattr(main.app, "invoke", stop)
    assert run(["check"]) == 2
    assert "stopped" in capsys.readouterr().err
