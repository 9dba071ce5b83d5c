"""Derive: what the chosen parts make of the design, with no verdicts. Pure functions of a reader."""
