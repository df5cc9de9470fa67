"""A seal: the digest of a file within the file itself. So bookmaker knows what it wrote and nobody changed since."""

from __future__ import annotations

import hashlib
import re
from mmap import mmap
from pathlib import Path

__all__ = ["UNSEALED", "has_seal", "is_sealed", "seal", "sealed", "with_seal"]

UNSEALED = "0" * 64
"""What stands in the place of a seal while the digest is taken."""

SEAL = re.compile(rb'(?:bookmaker seal |"plan\.json": ")([0-9a-f]{64})')
"""Where a seal may stand: in a comment, or among the digests of a plan."""

START_OF_PDF, END_OF_PDF = b"%PDF-", b"\nstartxref"
START_OF_HTML = b"<!doctype html>"


def with_seal(data: bytes) -> bytes:
    """A PDF, HTML or YAML file with a seal in a comment of its own.

    In a PDF it stands before the end, where comments may stand (ISO 32000-1, 7.2.3) and nothing counts bytes.
    """
    if data.startswith(START_OF_PDF):
        body, mark, end = data.rpartition(END_OF_PDF)
        return sealed(body + b"\n% bookmaker seal " + UNSEALED.encode() + mark + end)
    if data.startswith(START_OF_HTML):
        return sealed(data + b"<!-- bookmaker seal " + UNSEALED.encode() + b" -->\n")
    return sealed(data + b"# bookmaker seal " + UNSEALED.encode() + b"\n")


def sealed(data: bytes) -> bytes:
    """A file with a seal in its first place that is `UNSEALED`."""
    place = next(found for found in SEAL.finditer(data) if found[1] == UNSEALED.encode())
    return data[: place.start(1)] + _digest(data) + data[place.end(1) :]


def seal(path: Path) -> None:
    """Put a seal into a file, in its first place that is `UNSEALED`; it may be larger than what is held at once."""
    with path.open("r+b") as file, mmap(file.fileno(), 0) as held:
        place = next(found for found in SEAL.finditer(held) if found[1] == UNSEALED.encode())
        held[slice(*place.span(1))] = _digest(held)


def has_seal(data: bytes) -> bool:
    """Whether a file was sealed once, and may have been changed since."""
    return SEAL.search(data) is not None


def is_sealed(data: bytes) -> bool:
    """Whether a file is as it was when it was sealed.

    >>> data = with_seal(b"name: inkjet\\n")
    >>> is_sealed(data), is_sealed(data.replace(b"ink", b"las")), is_sealed(b"name: inkjet\\n")
    (True, False, False)
    """
    return any(
        _digest(data[: seal.start(1)] + UNSEALED.encode() + data[seal.end(1) :]) == seal[1]
        for seal in SEAL.finditer(data)
    )


def _digest(data: bytes | mmap) -> bytes:
    return hashlib.sha256(data).hexdigest().encode()
