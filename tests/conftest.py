"""Settings that all tests share."""

from hypothesis import settings

# how long one example takes depends on what else the machine does; benchmarks measure speed
settings.register_profile("bookmaker", deadline=None)
settings.load_profile("bookmaker")
