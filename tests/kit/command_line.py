"""The command line run in this process: what it says and how it ends."""

from __future__ import annotations

import io
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


def bookmaker(*arguments: str, typed: str = "") -> Said:
    """Run one command, as if what is typed came from the keyboard; no stream is a terminal."""
    out, err = io.StringIO(), io.StringIO()
    given = patch("sys.argv", ["bookmaker", *arguments]), patch("sys.stdin", io.StringIO(typed))
    with given[0], given[1], redirect_stdout(out), redirect_stderr(err), pytest.raises(SystemExit) as ended:
        commands.main()
    code = ended.value.code
    assert isinstance(code, int)
    return Said(code, out.getvalue(), err.getvalue())
