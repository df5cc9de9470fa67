"""The command line run in this process: what it says and how it ends."""

from __future__ import annotations

import io
import os
from contextlib import redirect_stderr, redirect_stdout
from typing import NamedTuple
from unittest.mock import patch

import pytest

from bookmaker.cli import commands

__all__ = ["Said", "bookmaker"]


class Said(NamedTuple):
    """Exit code, and what came out on either stream."""

    code: int
    out: str
    err: str


def bookmaker(*arguments: str, typed: str = "", columns: int = 0) -> Said:
    """Run one command, as if what is typed came from the keyboard, in a terminal of so many columns, or in none."""
    out, err = io.StringIO(), io.StringIO()
    around = {name: value for name, value in os.environ.items() if name != "COLUMNS"}
    around |= {"COLUMNS": str(columns)} if columns else {}
    with (
        patch("sys.argv", ["bookmaker", *arguments]),
        patch("sys.stdin", io.StringIO(typed)),
        patch.dict("os.environ", around, clear=True),
        redirect_stdout(out),
        redirect_stderr(err),
        pytest.raises(SystemExit) as ended,
    ):
        commands.main()
    code = ended.value.code
    assert isinstance(code, int)
    return Said(code, out.getvalue(), err.getvalue())
