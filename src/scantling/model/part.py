"""What every part has, whatever its kind; the kinds are one small file each in ``kinds/``."""

from __future__ import annotations

from pydantic import Field

from scantling.model.base import Data, Length, Mass, Temperature, YesNo


class Part(Data):
    """A thing bought, cut, printed or made.

    id : its key in the file    name : for people; the id where empty
    goods : kind of goods at the customs    wear : class that a spares rule names (``wear``, ``likely-bent`` …)
    sizes : further lengths that sizes, joints and chains may name (``z-bracket.flange``)
    stands_c : heat that it stands for hours    plug : on its own wires
    obsolete : no longer made    single_source : made by one maker only; neither is known where it is not said
    needs_earth : touchable metal that a fault of the mains could reach
    """

    id: str = ""
    name: str = ""
    mass_kg: Mass | None = None
    material: str | None = None
    goods: str | None = None
    wear: str | None = None
    sizes: dict[str, Length] = Field(default_factory=dict)
    stands_c: Temperature | None = None
    plug: str | None = None
    needs_earth: YesNo = False
    obsolete: YesNo | None = None
    single_source: YesNo | None = None
    note: str = ""
