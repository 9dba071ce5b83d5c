"""One value to enter when a machine is set up."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Setting:
    """One value to enter.

    key : stable, ``axis.y.steps-per-mm``    value : as entered    exact : as an exact ratio where the value is rounded
    because : what it follows from
    """

    key: str
    title: str
    value: str
    unit: str
    exact: str = ""
    because: str = ""
    group: str = ""
