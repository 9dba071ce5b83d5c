"""Lengths in whole ticks."""

from scantling.shapes.ticks import ticks_down, ticks_up


def test_rounding_is_always_on_the_safe_side():
    assert (ticks_up(0.1), ticks_down(0.1)) == (1000, 1000)
    assert (ticks_up(25.4 * 3 / 8), ticks_down(25.4 * 3 / 8)) == (95250, 95250)
    assert (ticks_up(1 / 3), ticks_down(1 / 3)) == (3334, 3333)
