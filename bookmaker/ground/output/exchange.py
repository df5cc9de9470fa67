"""A maker's own file exchanged for an edited one: only as long as it is what was read, and whole or not at all."""

from __future__ import annotations

import secrets
import stat
from pathlib import Path

from ..files import Wanted, read_again
from .folder import cannot_write
from .held_back import held_back
from .single_file import write_new

__all__ = ["exchange_file"]


def exchange_file(target: Path, data: bytes, wanted: Wanted, digest: str) -> None:
    """Put other bytes in the place of a file whose bytes have this digest; it keeps its rights, and links to it hold.

    What a link names is exchanged, not the link.

    Raises:
        ShelfFileError: it was changed meanwhile, or is no longer there; nothing was written.
        OutputError: it cannot be written.
    """
    try:
        place = target.resolve(strict=True)
        beside = place.with_name(f".{place.name[:40]}-{secrets.token_hex(8)}")
        mode = stat.S_IMODE(place.stat().st_mode)
        if not mode & stat.S_IWUSR:
            raise PermissionError("it is write-protected")
        try:
            write_new(beside, data)
            beside.chmod(mode)
            read_again(place, wanted, digest)
            beside.replace(place)
        except BaseException:
            with held_back():
                beside.unlink(missing_ok=True)
            raise
    except (OSError, ValueError) as trouble:
        raise cannot_write(target, trouble) from None
