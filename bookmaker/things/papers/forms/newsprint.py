"""The pages of a newspaper: nameplate and rules, headlines, columns of text or of lines that look like it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import NamedTuple

from ....ground.art import NOTHING, Filled, Stroked
from ....ground.drawing import BLACK, Art, Pen
from ....ground.geometry import Path, Point, Rect
from ....typesetting.page import Margins
from ...book.pages.part import LoadedPart
from ...lettering import Align, fitted, line_of
from ..entry import Press
from ..face import PaperFace, SetFace, columns_in, dress_face, dummy_text, frame_of, set_pages, together

__all__ = ["News", "news_pages"]

MARGIN = 1 / 22
"""The white around a page, as a share of its width."""

HAIR, FAT = 0.06, 0.16
"""Thin and thick rules, in mm."""

NAME, MOTTO, DATE, HEAD, OVER_COLUMN, RUNNING = 0.085, 0.014, 0.02, 0.07, 0.035, 0.02
"""How high these stand, as shares of the page: they are larger than in life, or nobody would see them."""


@dataclass(frozen=True, slots=True)
class News:
    """What a newspaper says besides its columns."""

    name: str
    nameplate: str
    motto: str | None
    dateline: str | None
    headlines: tuple[str, ...]
    headline_face: str


class _Page(NamedTuple):
    """A page with its heads; `columns` are where the text goes."""

    layers: tuple[Art, ...]
    columns: list[Rect]


def news_pages(news: News, press: Press, pages: int) -> list[SetFace]:
    """The pages in the order in which they are read; fields are the entry's."""
    area = Rect(0, 0, *press.size)
    front, rest = press.face("front"), press.face("rest")
    count = front.entry.columns
    made = [_front_page(news, area, count)]
    left = news.headlines[1 + count :]
    for number in range(2, pages + 1):
        count = rest.entry.columns
        made.append(_inner_page(news, area, number, count, left[:count]))
        left = left[count:]
    return [
        *_poured(made[:1], front, "front", press),
        *_poured(made[1:], rest, "rest", press),
    ]


def _poured(pages: Sequence[_Page], face: PaperFace, key: str, press: Press) -> Iterator[SetFace]:
    """Pages with one text through all their columns; those that it leaves empty look as if they had some too."""
    columns = [rect for page in pages for rect in page.columns]
    lowest = min(columns, key=lambda rect: rect.height)
    # a text has columns of one height: those that are higher hang from their heads
    rects = [rect._replace(y=rect.top - lowest.height, height=lowest.height) for rect in columns]
    filled = _filled(face.inside, rects, press)
    area = Rect(0, 0, *press.size)
    under = dress_face(replace(face, inside=None), area, area, press.words, press.dpi)
    at = 0
    for number, page in enumerate(pages):
        mine = filled.layers[at : at + len(page.columns)]
        at += len(page.columns)
        told = SetFace(mine, filled.problems if number == 0 else (), filled.x_height, filled.strokes).told_of("inside")
        yield together(under, SetFace(page.layers), told).told_of(key)


def _filled(part: LoadedPart | None, rects: list[Rect], press: Press) -> SetFace:
    """The columns of a text, one layer each, and dummy text in those that are left."""
    bare = Margins(0, 0, 0, 0)
    dummy = set_pages(dummy_text(), rects, bare, press.words, press.dpi)
    if part is None:
        return dummy
    extent = part.extent(frame_of(rects, bare, press.words, press.dpi)) or len(rects)
    text = set_pages(part, rects[:extent], bare, press.words, press.dpi)
    rest = [NOTHING] * (len(rects) - len(text.layers))
    layers = [other if one is NOTHING else one for one, other in zip([*text.layers, *rest], dummy.layers, strict=True)]
    return SetFace(tuple(layers), text.problems, text.x_height, text.strokes)


def _front_page(news: News, area: Rect, count: int) -> _Page:
    inner = area.grown(-area.width * MARGIN)
    high, top = area.height, inner.top
    layers: list[Art] = []

    def below(share: float) -> Rect:
        nonlocal top
        top -= share * high
        return Rect(inner.x, top, inner.width, share * high)

    layers.append(fitted(news.name, news.nameplate, below(NAME)))
    if news.motto:
        box = below(MOTTO)
        layers.append(line_of(news.motto, "text italic", box.height, Point(inner.centre.x, box.y + box.height * 0.3),
                              align="middle", room=inner.width))  # fmt: skip
    layers.append(_rule(inner, top, FAT))
    if news.dateline:
        box = below(DATE)
        layers += _dateline(news.dateline, box)
    layers.append(_rule(inner, top, HAIR))
    if news.headlines:
        box = below(HEAD).grown(0, -HEAD * high * 0.12, 0, -HEAD * high * 0.1)
        layers.append(fitted(news.headlines[0], news.headline_face, box))
        layers.append(_rule(inner, top, HAIR))
    return _columns(inner._replace(height=top - inner.y), count, news, news.headlines[1 : 1 + count], high, layers)


def _inner_page(news: News, area: Rect, number: int, count: int, heads: Sequence[str]) -> _Page:
    inner = area.grown(-area.width * MARGIN)
    size = RUNNING * area.height * 0.7
    baseline = inner.top - size
    way: Align = "left" if number % 2 == 0 else "right"
    outer = inner.x if way == "left" else inner.right
    layers: list[Art] = [
        line_of(
            news.name, news.nameplate, size, Point(inner.centre.x, baseline), align="middle", room=inner.width * 0.7
        ),
        line_of(str(number), "text", size, Point(outer, baseline), align="left" if way == "left" else "right"),
    ]
    top = inner.top - RUNNING * area.height
    layers.append(_rule(inner, top, HAIR))
    return _columns(inner._replace(height=top - inner.y), count, news, heads, area.height, layers)


def _columns(room: Rect, count: int, news: News, heads: Sequence[str], high: float, layers: list[Art]) -> _Page:
    """Columns with rules between them and, as far as there are some, headlines over them."""
    white = room.width * MARGIN * 0.55
    body = room.grown(0, 0, 0, -white)
    columns = [rect._replace(y=body.y, height=body.height) for rect in columns_in(body.grown(white, 0), count, white)]
    layers += [_upright((one.right + other.x) / 2, body) for one, other in pairwise(columns)]
    if heads:
        band = OVER_COLUMN * high
        for head, column in zip(heads, columns, strict=False):
            box = Rect(column.x, column.top - band, column.width, band).grown(0, -band * 0.12, 0, 0)
            layers.append(fitted(head, news.headline_face, box, largest=band * 0.4))
        columns = [column._replace(height=column.height - band) for column in columns]
    return _Page(tuple(layers), columns)


def _dateline(text: str, box: Rect) -> Iterator[Art]:
    """Up to three parts of a line, set apart by semicolons, at its left, in its middle and at its right."""
    parts = [part.strip() for part in text.split(";")][:3]
    by_count: Mapping[int, Sequence[Align]] = {1: ("middle",), 2: ("left", "right"), 3: ("left", "middle", "right")}
    places = by_count[len(parts)]
    at: Mapping[Align, float] = {"left": box.x, "middle": box.centre.x, "right": box.right}
    size, y = box.height * 0.62, box.y + box.height * 0.3
    for part, place in zip(parts, places, strict=True):
        yield line_of(part, "text", size, Point(at[place], y), align=place, room=box.width / len(parts) * 0.95)


def _rule(inner: Rect, y: float, width: float) -> Filled:
    return Filled.box(Rect(inner.x, y - width / 2, inner.width, width), BLACK)


def _upright(x: float, body: Rect) -> Stroked:
    return Stroked(Path.line(Point(x, body.y), Point(x, body.top)), Pen(HAIR * 0.8))
