"""A shelf shown by `bookmaker show`, and a browser to look at it with."""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

__all__ = ["BROWSER", "FLAGS", "NO_BROWSER", "REQUIRED", "Running", "running", "until"]

BROWSER = next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None)
"""The browser of the system; None if there is none."""

NO_BROWSER = "no chromium here: the tests of the page in a browser were skipped"

REQUIRED = os.environ.get("BOOKMAKER_BROWSER") == "required"
"""Whether it is a failure that there is none."""

FLAGS = ("--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-dev-shm-usage")
"""What lets it run in a container."""

STARTS_WITHIN = 30.0


@dataclass(frozen=True)
class Running:
    """A page that is served: its address, with the token, and the process that serves it."""

    address: str
    process: subprocess.Popen[str]

    @property
    def host(self) -> str:
        """The host and the port."""
        return self.address.split("/")[2]

    @property
    def port(self) -> int:
        """The port."""
        return int(self.host.partition(":")[2])

    @property
    def path(self) -> str:
        """The path, which is the token between slashes."""
        return "/" + self.address.split("/", 3)[3]


@contextmanager
def running(shelf: Path) -> Iterator[Running]:
    """Serve a shelf file as long as the block lasts; afterwards it must end at once, and by itself."""
    process = subprocess.Popen(
        [sys.executable, "-m", "bookmaker", "show", str(shelf), "--no-browser", "--no-cache"],
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    assert process.stdout
    try:
        line = process.stdout.readline()
        assert " http://127.0.0.1:" in line, line + process.stdout.read()
        yield Running(line.split()[-1], process)
    finally:
        process.send_signal(signal.SIGINT)
        try:
            process.wait(5)
        finally:
            process.kill()
            process.wait()
            process.stdout.close()


def until(found: object, *, within: float = STARTS_WITHIN) -> None:
    """Wait until a call comes out true."""
    assert callable(found)
    end = time.monotonic() + within
    while not found():
        assert time.monotonic() < end, "it never came"
        time.sleep(0.02)
