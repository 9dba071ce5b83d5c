"""Sheets: what stands on a true-scale template, from one panel's facts to pages of strokes and words."""
