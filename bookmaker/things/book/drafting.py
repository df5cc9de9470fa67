"""Plan and art become pieces: every flat of every book with what is printed on it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from ...ground.art import NOTHING, Group
from ...ground.drawing import Art
from ...ground.geometry import Path, Rect, Transform
from ...ground.pictures import Picture
from ...ground.problems import FieldPath, Problem, Severity
from ...ground.typefaces import Typeface
from ...sheets.flat import Face, Flat, Panel, Role
from ...sheets.piece import Piece
from ...typesetting.page import Inside
from ...typesetting.stand_ins import printable
from ..slipcase.faces import dress_box
from ..slipcase.plan import SlipcasePlan
from .designs.artwork import Artwork
from .designs.design import Dress, Lettering, Words
from .plan import BookPlan

__all__ = ["Draft", "draft_book", "draft_slipcase"]

NO_BREAK = "\N{NO-BREAK SPACE}"
"""Within what stays of a label when it is shortened."""


@dataclass(frozen=True, slots=True)
class Draft:
    """The pieces of a book or a slipcase, what is wrong with their art, how a cover is lettered.

    Fields of problems count from the whole shelf. `x_height` is that of the text on its pages in mm, if it has some,
    and `widest_space` how many times as wide as usual the spaces of its loosest line are.
    `shelved` is how that is lettered which is seen on the shelf: the jacket of a book that wears one, else its cover.
    """

    pieces: tuple[Piece, ...]
    problems: tuple[Problem, ...]
    x_height: float | None = None
    widest_space: float | None = None
    lettering: tuple[Lettering, ...] = ()
    shelved: tuple[Lettering, ...] = ()


def draft_book(
    book: BookPlan, words: Words, inside: Inside, artwork: Artwork, jacket_artwork: Artwork, resolution_dpi: float
) -> Draft:
    """Draw everything to print for one book; `words` stand on its cover.

    `artwork` is what its design has read, `jacket_artwork` what that of its jacket has.
    """
    pieces = [
        _block_piece(book, index, flat, inside, resolution_dpi) for index, flat in enumerate(book.block.flats, start=1)
    ]
    problems = list(_within(("books", book.number, "inside"), inside.problems))
    lettering: list[Lettering] = []
    dressed = [flat for flat in book.cover.flats if flat.dressed]
    design = book.entry.design.under_jacket() if book.jacket else book.entry.design
    for index, flat in enumerate(book.cover.flats, start=1):
        dress = Dress()
        if flat.dressed:
            own = replace(artwork, piece=dressed.index(flat), pieces=len(dressed))
            dress = design.dress(own, flat, words)
        pieces.append(Piece(_piece_id(book, flat, index), book.number, _label(book, flat), flat, dress.art))
        problems += _within(("books", book.number, "design"), dress.problems)
        lettering += dress.lettering
    jacket = _draft_jacket(book, words, artwork, jacket_artwork)
    labelled, notes = _labelled(book, (*pieces, *jacket.pieces), inside.face)
    return Draft(
        pieces=labelled,
        problems=(*problems, *jacket.problems, *notes),
        x_height=inside.x_height,
        widest_space=inside.widest_space,
        lettering=(*lettering, *jacket.lettering),
        shelved=jacket.lettering if jacket.pieces else tuple(lettering),
    )


def _labelled(
    book: BookPlan, pieces: Sequence[Piece], face: Typeface | None
) -> tuple[tuple[Piece, ...], tuple[Problem, ...]]:
    """The pieces with labels that can be printed: in the typeface of the text if need be, else without the name."""
    if printable(book.name, face):
        return tuple(pieces if printable(book.name) else (replace(piece, face=face) for piece in pieces)), ()
    number = book.printed.replace(" ", NO_BREAK)
    note = Problem(
        f"no typeface here has all letters of the name of {book.printed}: its number stands on labels and in the guide",
        "write face: with one that has them in the text of its inside, for the labels",
        Severity.NOTE,
        field=("books", book.number, "title"),
    )
    return tuple(replace(piece, label=(number, piece.label[1])) for piece in pieces), (note,)


def _draft_jacket(book: BookPlan, words: Words, artwork: Artwork, jacket_artwork: Artwork) -> Draft:
    """The jacket in its own design, or in that of the book; nothing if the book wears none."""
    if not book.jacket or not book.entry.jacket:
        return Draft((), ())
    own = book.entry.jacket.design
    flat = book.jacket.flat
    dress = (own or book.entry.design).dress(jacket_artwork if own else artwork, flat, words)
    piece = Piece(_piece_id(book, flat, 1), book.number, _label(book, flat), flat, dress.art)
    field = ("jacket", "design") if own else ("design",)
    return Draft((piece,), tuple(_within(("books", book.number, *field), dress.problems)), lettering=dress.lettering)


def draft_slipcase(
    box: SlipcasePlan, index: int, pictures: Mapping[Role, Picture], first: BookPlan, words: Words, artwork: Artwork
) -> Draft:
    """Draw the net of a slipcase; `index` counts the slipcases from 1, `pictures` are those of its faces.

    The box may be dressed as its `first` book, whose design has read `artwork`, without the book's words; its own title
    is in the same hand.
    """
    faces = box.entry.faces
    worn, tone = Dress(), None
    if faces and faces.as_books:
        tone = first.entry.design.ground
        worn = first.entry.design.dress(artwork, box.flat, words.unsaid())
    if faces and faces.title:
        faces = faces.model_copy(update={"title": first.marks.printed(faces.title)})
    dress = dress_box(faces, pictures, box.flat, worn.art, tone, worn.titling)
    label = (box.name, f"slipcase for {len(box.books)} book{'s' if len(box.books) > 1 else ''}")
    piece = Piece(f"slipcase-{index}", None, label, box.flat, dress.art, slipcase=box.name)
    return Draft((piece,), tuple(_within(("slipcases", box.name, "faces"), dress.problems)))


def _block_piece(book: BookPlan, index: int, flat: Flat, inside: Inside, resolution_dpi: float) -> Piece:
    front, reverse = (_printed(flat.seen_from(face), inside, book) for face in (Face.FRONT, Face.REVERSE))
    # a book of the same title and author always has the same edges
    seed = f"{book.entry.title}\n{book.entry.author or ''}"
    front = book.entry.block.dressing(flat, seed, resolution_dpi) or front
    return Piece(_piece_id(book, flat, index), book.number, _label(book, flat), flat, front, reverse)


def _printed(panels: Iterable[Panel], inside: Inside, book: BookPlan) -> Art:
    """The pages on one face of a flat; blank ones leave no trace."""
    pages = tuple(
        _on_flat(panel, art, book)
        for panel in panels
        if panel.page is not None and (art := inside.pages[panel.page - 1]) is not NOTHING
    )
    return Group(pages) if pages else NOTHING


def _on_flat(panel: Panel, art: Art, book: BookPlan) -> Art:
    """A page on its panel, cut off where creep would carry it over the fold."""
    placed = Group((art,), _to_flat(panel, book))
    return Group((placed,), clip=Path.rectangle(_shown(panel, book))) if panel.creep else placed


def _shown(panel: Panel, book: BookPlan) -> Rect:
    """What may be inked of a page: all of its panel, and what is trimmed off beyond it, but nothing over the fold."""
    assert panel.page is not None  # only panels with pages are drawn
    beyond = book.entry.block.trimmed
    spine_on_left = (panel.page % 2 == 1) is not (book.entry.right_to_left is not panel.head_down)
    return panel.rect.grown(0 if spine_on_left else beyond, beyond, beyond if spine_on_left else 0, beyond)


def _to_flat(panel: Panel, book: BookPlan) -> Transform:
    """From a page's coordinates to those of its flat; creep moves the image towards the spine, beyond the fold."""
    assert panel.page is not None  # only panels with pages are drawn
    spine_on_left = (panel.page % 2 == 1) is not book.entry.right_to_left
    beyond = panel.creep if spine_on_left else 0.0
    if panel.head_down:
        return Transform.quarter_turn(2).moved(panel.rect.right + beyond, panel.rect.top)
    return Transform.move(panel.rect.x - beyond, panel.rect.y)


def _piece_id(book: BookPlan, flat: Flat, index: int) -> str:
    return f"book-{book.number + 1}-{flat.kind}-{index}"


def _label(book: BookPlan, flat: Flat) -> tuple[str, str]:
    """What stands beside the piece: the book, which may be shortened, and the part, which may not."""
    part = flat.name
    if flat.pages and not flat.seen_from(Face.REVERSE):  # the pages of a sheet printed on both sides are no range
        low, high = min(flat.pages), max(flat.pages)
        part += f", pages {low}–{high}" if high > low else f", page {low}"
    return book.numbered, part


def _within(prefix: FieldPath, problems: Iterable[Problem]) -> Iterator[Problem]:
    return (replace(problem, field=(*prefix, *problem.field)) for problem in problems)
