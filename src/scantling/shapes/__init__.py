"""Outlines, meshes, and the cutting of bars, boards and paper as geometry: bytes in, frozen shapes out, all in mm."""
