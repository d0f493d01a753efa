"""The core's tests draw the same examples everywhere, so that a failure at the desk is the same failure in the browser."""

from hypothesis import HealthCheck, settings

settings.register_profile(
    "core", derandomize=True, deadline=None, database=None, max_examples=40, suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile("core")
