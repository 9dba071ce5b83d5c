"""What all tests share: the same random examples on every run, and no time limit per example on a busy machine."""

from __future__ import annotations

from hypothesis import HealthCheck, settings

settings.register_profile("house", derandomize=True, deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("house")
