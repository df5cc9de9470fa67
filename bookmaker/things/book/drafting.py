"""Plan and art become pieces: every flat of a book with what is printed on it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from ...ground.art import NOTHING, Group, Tagged
from ...ground.drawing import Art, Tag
from ...ground.geometry import Path, Rect, Transform
from ...ground.problems import Problem, Severity, within
from ...ground.quantities import show
from ...ground.typefaces import Typeface
from ...sheets.facsimiles import facsimile_of_page
from ...sheets.flat import Face, Flat, Panel
from ...sheets.piece import Piece
from ...typesetting.page import Inside
from ...typesetting.stand_ins import printable
from ..draft import Draft, Head
from .designs.design import Lettering
from .designs.dressed import dressed
from .designs.letters.eras import year_in
from .designs.tones import darker
from .leaf_tones import Browned, browned_pages, edges_of_leaves, ends_art
from .pages.front_matter.phrases import language_of_letters
from .plan import BookPlan

__all__ = ["draft_book"]

ENDS_BLEED = 0.6
"""Printed endpapers go on so far beyond their edges, in mm: a cut may be off by as much."""


def draft_book(book: BookPlan) -> Draft:
    """Draw everything to print for one book: its pages set, its cover and its jacket dressed."""
    inside = _on_its_paper(book, _in_its_language(book, book.thing.sources.inside.compose(book.frame)))
    pieces = [_block_piece(book, index, flat, inside) for index, flat in enumerate(book.block.flats, start=1)]
    cover, jacket = _draft_cover(book), _draft_jacket(book)
    labelled, notes = _labelled(book, (*pieces, *cover.pieces, *jacket.pieces), inside.face)
    return Draft(
        pieces=labelled,
        problems=(*within(("inside",), inside.problems), *cover.problems, *jacket.problems, *notes),
        x_height=inside.x_height,
        strokes=inside.strokes,
        widest_space=inside.widest_space,
        lettering=(*cover.lettering, *jacket.lettering),
        shelved=jacket.lettering if jacket.pieces else cover.lettering,
        pages=tuple(facsimile_of_page(page, book.page) for page in inside.pages),
        right_to_left=book.entry.right_to_left,
        head=_head(book),
    )


def _in_its_language(book: BookPlan, inside: Inside) -> Inside:
    """The pages with the language they are to be read in."""
    pages = tuple(page if page is NOTHING else _told(book, page) for page in inside.pages)
    return replace(inside, pages=pages)


def _told(book: BookPlan, art: Art) -> Art:
    """Art with the language of the book: the one that was named, or which its letters let expect."""
    return Tagged(art, Tag(language=book.coat.words.language or language_of_letters(book.coat.words.title)))


def _head(book: BookPlan) -> Head:
    """Its leaves between its boards, which are of its cloth or paper and lie in shade."""
    leaves = book.entry.block.edge_tone or edges_of_leaves(_browned(book))
    return Head(leaves, darker(book.tone or leaves, 0.35), (book.thickness.value - book.block.thickness.value) / 2)


def _browned(book: BookPlan) -> Browned:
    return book.entry.leaf_tones.browning(year_in(book.coat.words.dated))


def _on_its_paper(book: BookPlan, inside: Inside) -> Inside:
    """The pages on the tone of their leaves."""
    leaf, beyond = Rect(0, 0, *book.page), book.entry.block.trimmed
    seed, over = book.frame.book.seed, book.entry.right_to_left
    return replace(inside, pages=browned_pages(_browned(book), inside.pages, leaf, beyond, seed, right_to_left=over))


def _ends(book: BookPlan, flat: Flat, face: Face = Face.FRONT) -> Art:
    """What the pastedowns on one face of a flat show, and the flyleaves beside them."""
    palette = book.coat.seen.palette_of_set or "library"
    return ends_art(book.entry.leaf_tones, flat, face, palette, book.coat.words.kin)


def _draft_cover(book: BookPlan) -> Draft:
    """The parts of the cover, those that are seen dressed in its design."""
    pieces: list[Piece] = []
    problems: list[Problem] = []
    lettering: list[Lettering] = []
    artwork, seen = book.thing.sources.design, [flat for flat in book.cover.flats if flat.dressed]
    design = book.coat.design.under_jacket() if book.jacket else book.coat.design
    for index, flat in enumerate(book.cover.flats, start=1):
        if not flat.dressed:
            bled = replace(flat, bleed=ENDS_BLEED) if _ends(book, flat) is not NOTHING else flat
            pieces.append(_piece(book, index, bled, _ends(book, bled)))
            continue
        own = replace(artwork, piece=seen.index(flat), pieces=len(seen))
        art, dress = dressed(design, own, flat, book.coat.words)
        pieces.append(_piece(book, index, flat, _told(book, art)))
        problems += within(("design",), dress.problems)
        lettering += dress.lettering
    return Draft(tuple(pieces), tuple(problems), lettering=tuple(lettering))


def _draft_jacket(book: BookPlan) -> Draft:
    """The jacket in its own design, or in that of the book; nothing if the book wears none."""
    if not book.jacket:
        return Draft(())
    own, sources = book.coat.jacket, book.thing.sources
    artwork = sources.jacket if own else sources.design
    art, dress = dressed(own or book.coat.design, artwork, book.jacket.flat, book.coat.words)
    piece = _piece(book, 1, book.jacket.flat, _told(book, art))
    field = ("jacket", "design") if own else ("design",)
    return Draft((piece,), within(field, dress.problems), lettering=dress.lettering)


def _labelled(
    book: BookPlan, pieces: Sequence[Piece], face: Typeface | None
) -> tuple[tuple[Piece, ...], tuple[Problem, ...]]:
    """The pieces with labels that can be printed: in the typeface of the text if need be, else without the name."""
    if printable(book.name, face):
        return tuple(pieces if printable(book.name) else (replace(piece, face=face) for piece in pieces)), ()
    note = Problem(
        f"no typeface here has all letters of {show(book.name)}: its number stands on labels and in the guide",
        "write face: with one that has them in the text of its inside, for the labels",
        Severity.NOTE,
        field=("title",),
    )
    return tuple(replace(piece, label=("", piece.label[1])) for piece in pieces), (note,)


def _piece(book: BookPlan, index: int, flat: Flat, front: Art, reverse: Art = NOTHING) -> Piece:
    """One of the parts of a kind, with its label: the book, which may be shortened, and the part, which may not."""
    part = flat.name
    if flat.pages and not flat.seen_from(Face.REVERSE):  # the pages of a sheet printed on both sides are no range
        low, high = min(flat.pages), max(flat.pages)
        part += f", pages {low}–{high}" if high > low else f", page {low}"
    return Piece(f"{book.id}-{flat.kind}-{index}", book.id, (book.name, part), flat, front, reverse)


def _block_piece(book: BookPlan, index: int, flat: Flat, inside: Inside) -> Piece:
    front, reverse = (_with_ends(book, flat, face, inside) for face in (Face.FRONT, Face.REVERSE))
    # books of one set have the same edges
    front = book.entry.block.dressing(flat, f"edges of {book.coat.words.kin}", book.frame.resolution_dpi) or front
    return _piece(book, index, flat, front, reverse)


def _with_ends(book: BookPlan, flat: Flat, face: Face, inside: Inside) -> Art:
    ends, pages = _ends(book, flat, face), _printed(flat.seen_from(face), inside, book)
    return Group((ends, pages)) if ends is not NOTHING and pages is not NOTHING else pages if ends is NOTHING else ends


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
