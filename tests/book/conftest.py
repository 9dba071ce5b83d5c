"""Lets the tests of this folder import the kit of the plans' tests."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "plans"))
