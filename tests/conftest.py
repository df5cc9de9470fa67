"""Settings that all tests share."""

import gc

from hypothesis import settings

# how long one example takes depends on what else the machine does; benchmarks measure speed
settings.register_profile("bookmaker", deadline=None)
settings.load_profile("bookmaker")

# what is imported and collected stays to the end: looking through it again and again takes a tenth of the time
gc.disable()


def pytest_collection_finish() -> None:
    """Leave what was collected out of the search for garbage, which is rarer from here on."""
    gc.freeze()
    gc.set_threshold(20_000, 20, 20)
    gc.enable()
