"""Where set texts are kept from one run to the next: in the user's cache folder, wherever the system has it."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from ..ground.kept.disk import KeptOnDisk
    from ..typesetting.standing_type import StandingType

__all__ = ["kept_on_disk", "standing_type"]

MOST_KEPT = 128_000_000
"""Bytes of set texts on the user's disk: as much as forty million words take."""


def standing_type(no_cache: bool) -> StandingType:
    """Where set texts are looked for."""
    from ..typesetting.standing_type import StandingType

    return StandingType(kept_on_disk(no_cache))


def kept_on_disk(no_cache: bool) -> KeptOnDisk | None:
    """The folder on the disk; None if it is not wanted."""
    from platformdirs import user_cache_path

    from ..ground.kept.disk import KeptOnDisk

    folder = user_cache_path("bookmaker", appauthor=False) / "set-texts"
    # who has no home has no place of that kind
    return None if no_cache or not folder.is_absolute() else KeptOnDisk(folder, MOST_KEPT)
