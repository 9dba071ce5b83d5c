"""Sheets of paper: their sizes, and the part of them that a printer can reach."""

from __future__ import annotations

from dataclasses import dataclass, replace

# ISO 216 A series; ANSI/ASME Y14.1 sizes A and B and US legal, in mm (inches exactly); all from memory
SIZES_MM: dict[str, tuple[float, float]] = {
    "A0": (841.0, 1189.0),
    "A1": (594.0, 841.0),
    "A2": (420.0, 594.0),
    "A3": (297.0, 420.0),
    "A4": (210.0, 297.0),
    "A5": (148.0, 210.0),
    "Letter": (215.9, 279.4),
    "Legal": (215.9, 355.6),
    "Tabloid": (279.4, 431.8),
}


@dataclass(frozen=True)
class Paper:
    """A sheet as it lies, with the margins that stay free: what the printer cannot reach and what the page needs."""

    name: str
    width_mm: float
    height_mm: float
    left_mm: float = 5.0
    right_mm: float = 5.0
    top_mm: float = 5.0
    bottom_mm: float = 5.0

    @property
    def usable_width_mm(self) -> float:
        """Width between the margins."""
        return self.width_mm - self.left_mm - self.right_mm

    @property
    def usable_height_mm(self) -> float:
        """Height between the margins."""
        return self.height_mm - self.top_mm - self.bottom_mm

    def with_strips(
        self, left_mm: float = 0.0, right_mm: float = 0.0, top_mm: float = 0.0, bottom_mm: float = 0.0
    ) -> Paper:
        """Return it with strips set aside inside the margins, for bars and words."""
        return replace(
            self,
            left_mm=self.left_mm + left_mm,
            right_mm=self.right_mm + right_mm,
            top_mm=self.top_mm + top_mm,
            bottom_mm=self.bottom_mm + bottom_mm,
        )

    def turned(self) -> Paper:
        """Return it on its side; it may be turned either way, so of two margins the larger counts on both sides."""
        sides, ends = max(self.left_mm, self.right_mm), max(self.top_mm, self.bottom_mm)
        return Paper(f"{self.name} turned", self.height_mm, self.width_mm, ends, ends, sides, sides)
