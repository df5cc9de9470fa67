"""Newspapers: nested sheets with a nameplate, headlines, and columns of text, or of lines that look like it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

from pydantic import Field

from ....ground.geometry import Size
from ....ground.problems import Problem
from ....paper.stock import Stock
from ....shelf_file.fields.counts import NewsPages
from ....shelf_file.fields.words import Lines, Title
from ...book.designs.design import TypefaceName
from ..entry import Leaf, PaperEntry, Press
from ..face import FaceEntry, SetFace
from ..fold_entry import FoldEntry
from ..folio import folio_leaves, pages_on
from .newsprint import News, news_pages

__all__ = ["Newspaper"]


class Newspaper(PaperEntry):
    """A newspaper, folded at the spine and once more across."""

    kind: Literal["newspaper"] = "newspaper"
    ages_behind = True
    pages: NewsPages = Field(4, description="how many pages it has: a multiple of 4")
    nameplate: TypefaceName = Field("blackletter", description="typeface of its name")
    motto: Title | None = Field(None, description="what stands under its name")
    dateline: Title | None = Field(None, description="number, day and price, between rules")
    headlines: tuple[Lines, ...] = Field(
        (), description="the first stands over the front page, the others over columns"
    )
    headline_face: TypefaceName = Field("clarendon bold", description="typeface of the headlines")
    front: FaceEntry = Field(FaceEntry(columns=5), description="the front page, its text in columns")
    rest: FaceEntry = Field(FaceEntry(columns=5), description="the other pages")
    usual_format = "broadsheet"

    @property
    def folds(self) -> FoldEntry:
        """Once across, unless otherwise written."""
        return self.fold or FoldEntry(kind="half", divides="height")

    def leaves(self, size: Size, stock: Stock) -> tuple[Leaf, ...]:
        """Its sheets, one in the other."""
        again = self.folds.model_copy(update={"divides": "height"}).folded(size, stock.covered)
        return folio_leaves(self.kind, size, self.pages, stock.covered, again.rows)

    def faults(self, size: Size, stock: Stock) -> Iterator[Problem]:
        """What keeps it from being folded."""
        yield from super().faults(Size(2 * size.width, size.height), stock)
        if self.folds.kind not in ("half", "letter"):
            yield Problem(
                f"a newspaper cannot be folded as a {self.folds.kind}",
                "write half or letter: it is folded at its spine already",
                field=("fold", "kind"),
            )

    def printed(self, leaves: Sequence[Leaf], press: Press) -> Sequence[tuple[SetFace, SetFace]]:
        """Two pages in front and two behind, as they are imposed."""
        news = News(press.words.title, self.nameplate, self.motto, self.dateline, self.headlines, self.headline_face)
        return pages_on(leaves, press.size, news_pages(news, press, self.pages))
