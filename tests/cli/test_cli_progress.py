"""Progress: only on a terminal, only after a second, cleared away before anything is printed."""

import io

import pytest

from scantling.cli.text import progress as module
from scantling.cli.text.progress import DELAY_S, progress, with_progress


class Screen(io.StringIO):
    """An error stream that says it is a terminal."""

    def isatty(self):
        return True


@pytest.fixture
def clock(monkeypatch):
    """A clock that the test moves, and a terminal to draw on."""
    now = [0.0]
    monkeypatch.setattr(module, "monotonic", lambda: now[0])
    monkeypatch.setenv("TERM", "xterm")
    return now, Screen()


def test_nothing_in_the_first_second(clock):
    now, screen = clock
    with progress(screen) as tell:
        tell(1, 10, "tables")
        now[0] = DELAY_S * 0.9
        tell(2, 10, "tables")
    assert screen.getvalue() == ""


def test_a_bar_after_a_second_and_none_afterwards(clock):
    now, screen = clock
    with progress(screen) as tell:
        now[0] = DELAY_S * 1.1
        tell(3, 10, "tables: torque")
        assert "tables: torque" in screen.getvalue()
    assert screen.getvalue().rstrip().endswith("\x1b[2K")  # the line of the bar is wiped


def test_the_bar_is_gone_while_an_answer_is_printed(clock):
    now, screen = clock
    seen = []

    def work(tell):
        now[0] = DELAY_S * 2
        for number in range(2):
            tell(number, 2, f"answer {number}")
            yield number

    for number in with_progress(work, screen):
        shown = screen.getvalue()
        assert f"answer {number}" in shown
        assert shown.rstrip().endswith("\x1b[2K")
        seen.append(number)
    assert seen == [0, 1]


def test_the_bar_is_gone_after_an_error(clock):
    now, screen = clock

    def work(tell):
        now[0] = DELAY_S * 2
        tell(0, 1, "breaking")
        yield 1
        raise ValueError("broken")

    with pytest.raises(ValueError, match="broken"):
        list(with_progress(work, screen))
    assert screen.getvalue().rstrip().endswith("\x1b[2K")


def test_none_where_there_is_no_terminal(clock):
    now, _ = clock
    plain = io.StringIO()
    with progress(plain) as tell:
        now[0] = DELAY_S * 5
        tell(1, 2, "tables")
    assert plain.getvalue() == ""
