"""Pictures for the page, each drawn once and called by a digest of itself."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Mapping

from ...sheets.facsimiles import Facsimile
from ...things.draft import Draft
from ...writers.shelf_art import facsimile_of_shown
from ...writers.shelf_front import Shown
from ...writers.svg import svg_picture

__all__ = ["Gallery", "picture_name"]

Key = tuple[int, tuple[float, ...], tuple[float, ...]]


def picture_name(data: bytes) -> str:
    """What a picture is called: the same name is the same picture."""
    return hashlib.blake2b(data, digest_size=12).hexdigest()


class Gallery:
    """Pictures that were drawn, until they are handed on; those of the shelf are remembered as long as they stand."""

    def __init__(self) -> None:
        self._new: dict[str, bytes] = {}
        self._shown: dict[Key, tuple[object, str]] = {}
        self._asked: dict[Key, tuple[object, str]] = {}

    def hang(self, one: Facsimile, title: str = "") -> str:
        """The name of a picture of a facsimile."""
        data = svg_picture(one.art, one.box, title=title).encode()
        name = picture_name(data)
        self._new[name] = data
        return name

    def hang_shown(self, shown: Shown) -> str | None:
        """The name of what is seen in a place of the shelf; None if it is plain card."""
        if shown.spine is None:
            return None
        piece, rect = shown.spine
        key = (id(piece), tuple(rect), (shown.rect.width, shown.rect.height))
        # the piece is kept beside its name, so that no other comes by its number
        found = self._shown.get(key) or (piece, self.hang(facsimile_of_shown(shown)))
        self._asked[key] = found
        return found[1]

    def hang_face(self, draft: Draft, face: Facsimile) -> str:
        """The name of what is seen of a thing in a room."""
        key = (id(draft), tuple(face.box), ())
        found = self._shown.get(key) or (draft, self.hang(face))
        self._asked[key] = found
        return found[1]

    def forget(self) -> None:
        """Let go of what the shelf has shown and was not asked for since this was told last."""
        self._shown, self._asked = self._asked, {}

    def keep(self) -> None:
        """Remember what was asked for besides what there was: the shelf is drawn only in part."""
        self._shown |= self._asked

    def taken(self, send: Callable[[Mapping[str, bytes]], None]) -> None:
        """Hand on all pictures that are new."""
        if self._new:
            send(self._new)
            self._new = {}
