"""Settings that all tests share."""

import gc
import os

import pytest
from hypothesis import settings

from tests.kit.shown import NO_BROWSER

# how long one example takes depends on what else the machine does; benchmarks measure speed
settings.register_profile("bookmaker", deadline=None)
settings.load_profile("bookmaker")

# what is imported and collected stays to the end: looking through it again and again takes a tenth of the time
gc.disable()


@pytest.fixture(scope="session", autouse=True)
def _cache_of_their_own(tmp_path_factory: pytest.TempPathFactory) -> None:
    """Let no test find or leave anything in the cache folder of whoever runs them."""
    os.environ["XDG_CACHE_HOME"] = str(tmp_path_factory.mktemp("cache"))


def pytest_collection_finish() -> None:
    """Leave what was collected out of the search for garbage, which is rarer from here on."""
    gc.freeze()
    gc.set_threshold(20_000, 20, 20)
    gc.enable()


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Say in one line that there was no browser, if tests were skipped for that."""
    if any(NO_BROWSER in str(report.longrepr) for report in terminalreporter.stats.get("skipped", [])):
        terminalreporter.write_line(NO_BROWSER)
