"""A handful of primitives in mm, and the back ends that turn pages of them into SVG, PDF and DXF."""
