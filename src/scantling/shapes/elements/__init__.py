"""Finite elements: panels of sheet as triangles, bars, joints as springs; pure functions of plain numbers.

What takes long here is kept by a digest of this room's source and of ``MADE_WITH``: nothing here reads another room
than ``errors``.
"""

MADE_WITH = ("numpy", "scipy", "shapely")
