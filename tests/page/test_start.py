"""The page started: a browser where there is a desktop, the address alone where there is none."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import urllib.request
from pathlib import Path

import pytest

from tests.kit.shelves import ONE_BOOK


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="other systems always have a desktop")
@pytest.mark.parametrize("desktop", [{"DISPLAY": ":7"}, {"WAYLAND_DISPLAY": "wayland-7"}, {}])
def test_a_browser_is_opened_where_it_has_a_window(tmp_path: Path, desktop: dict[str, str]) -> None:
    (tmp_path / "shelf.yaml").write_text(ONE_BOOK, encoding="utf-8")
    opened, browser = tmp_path / "opened", tmp_path / "browser"
    browser.write_text(f'#!/bin/sh\necho "$1" > {opened}\n', encoding="utf-8")
    browser.chmod(0o755)
    kept = {key: value for key, value in os.environ.items() if key not in ("DISPLAY", "WAYLAND_DISPLAY")}
    command = [sys.executable, "-m", "bookmaker", "show", str(tmp_path / "shelf.yaml"), "--no-cache"]
    environment = {**kept, "BROWSER": str(browser), **desktop}
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=environment) as process:
        assert process.stdout
        address = process.stdout.readline().split()[-1]
        with urllib.request.urlopen(address) as answer:  # by then a browser was opened, or none will be
            assert b"bookmaker" in answer.read()
        assert (opened.read_text(encoding="utf-8").strip() if opened.exists() else "") == (address if desktop else "")
        process.send_signal(signal.SIGINT)
        process.wait(5)
