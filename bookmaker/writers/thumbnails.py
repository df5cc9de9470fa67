"""Small pictures of what is made, as it is when it is finished: one a thing, for the guide to show beside its title.

They are pixels, so that the letters of the covers are not among the words of the guide when these are searched or
read aloud.
"""

from __future__ import annotations

import tempfile
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from ..ground.art import Pictured
from ..ground.geometry import Rect, Transform
from ..ground.pictures import load_picture
from ..sheets.facsimiles import Facsimile, facsimile_of_piece
from ..sheets.flat import Role
from ..things.draft import Draft
from .pdf import PdfFile
from .pdf_pixels import rendered_page

__all__ = ["thumbnails"]

MOST = 200
"""So many things are shown; of more, none is drawn once more for it."""

DPI, QUALITY = 300.0, 88
"""Dots to an inch of the thing, and how true its colours stay (JPEG)."""


@contextmanager
def thumbnails(drafts: Mapping[str, Draft]) -> Iterator[Mapping[str, Facsimile]]:
    """The front of everything that has one, by its id; the pictures are there as long as the context lasts."""
    found = {id: face for id, draft in drafts.items() if (face := _front(draft))} if len(drafts) <= MOST else {}
    with tempfile.TemporaryDirectory(prefix="bookmaker-") as folder:
        yield _drawn(found, Path(folder)) if found else {}


def _front(draft: Draft) -> Facsimile | None:
    if draft.lying:
        return draft.lying
    if draft.front_seen:
        return facsimile_of_piece(draft.front_seen)
    return draft.faces.get(Role.FRONT) or next(iter(draft.faces.values()), None)


def _drawn(faces: Mapping[str, Facsimile], folder: Path) -> Mapping[str, Facsimile]:
    """Each on a page of its own, and that as pixels."""
    path = folder / "faces.pdf"
    with PdfFile(path, title="faces") as pdf:
        for face in faces.values():
            with pdf.page(face.box.size) as canvas, canvas.placed(Transform.move(-face.box.x, -face.box.y)):
                face.art.draw(canvas)
    seen = {}
    for number, (id, face) in enumerate(faces.items()):
        picture = folder / f"{number}.jpeg"
        rendered_page(path, number, DPI).convert("RGB").save(picture, quality=QUALITY)
        box = Rect(0, 0, *face.box.size)
        seen[id] = Facsimile(Pictured(load_picture(picture), box), box)
    return seen
