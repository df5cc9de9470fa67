"""Everything there is to know of one thing, as the page tells it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

from ...ground.geometry import Rect
from ...guide.drawings import numbered_drawings
from ...paper.thickness import Thickness
from ...sheets.facsimiles import Facsimile, facsimile_of_piece
from ...sheets.flat import Face
from ...sheets.layout import lay_out
from ...shelf_file.edits.edit import Copy, Edit, Remove, SetValue
from ...shelf_file.edits.shelf import shelf_refusal
from ...shelf_file.edits.written import Written, read_written
from ...shelf_file.fields.keys import dotted_keys
from ...shelf_file.source_text import source_text
from ...shelf_file.whereabouts import whereabouts
from ...things.book.entry import BookEntry
from ...things.making import Bench, Chapter, Figure
from ...things.prints import Prints
from ...things.thing import Plan
from ...workshop import Checked
from ..last_made import last_plan
from ..replies import Value
from .fields import form_of
from .gallery import Gallery
from .inside import inside_path, inside_told

__all__ = ["thing_told"]

FIGURE_ROOM = 87.0
"""The room for a drawing of a step in mm, as in the guide."""

BOOKS = "books"


def thing_told(id: str, checked: Checked, gallery: Gallery, made: Path) -> Value:
    """A thing with its faces, parts, layers, steps, lines and form; `made` is the folder into which sheets go."""
    plan, draft = checked.plan.plans[id], checked.drafts[id]
    field = checked.plan.register.fields[id]
    last_sheets = last_plan(made).get("sheets", [])

    def hung(one: Facsimile) -> Value:
        return {"picture": gallery.hang(one), "size": [round(one.box.width, 3), round(one.box.height, 3)]}

    prints = _prints(id, checked, last_sheets)
    bench = Bench(checked.plan.stocks, prints, FIGURE_ROOM, whereabouts(checked.shelf, field))
    standing = plan.standing
    return {
        "id": id,
        "name": plan.name,
        "made_as": plan.made_as,
        "size": [standing.depth, standing.height, standing.thickness] if standing else None,
        "right_to_left": draft.right_to_left,
        "faces": {str(role): hung(face) for role, face in draft.faces.items()},
        "openings": len(draft.openings),
        "parts": [
            {"name": piece.flat.name, "stock": piece.flat.stock}
            | hung(facsimile_of_piece(piece))
            | ({"reverse": hung(facsimile_of_piece(piece, Face.REVERSE))} if piece.two_sided else {})
            for piece in draft.pieces
        ],
        "layers": [_thickness(name, thickness) for name, thickness in plan.layers],
        "sheets": _sheets_with(last_sheets, id),
        "steps": _chapter(plan.family.chapter(plan, bench, checked.plan), gallery),
        "lines": _lines(checked, id),
        **_form(checked, id, plan),
    }


def _thickness(name: str, thickness: Thickness) -> Value:
    return {
        "name": name,
        "measured": thickness.measured,
        "computed": thickness.computed,
        "layers": [
            {
                "what": layer.what,
                "count": layer.count,
                "each": layer.caliper,
                "total": layer.total,
                "stock": layer.stock,
            }
            for layer in thickness.layers
        ],
    }


def _sheets_with(sheets: Sequence[Value], id: str) -> list[Value]:
    """The sheets made last that have parts of a thing."""
    return [
        {"file": sheet["file"], "page": sheet["page"], "parts": parts}
        for sheet in sheets
        if (parts := [piece["name"] for piece in sheet["pieces"] if piece["owner"] == id])
    ]


def _prints(id: str, checked: Checked, last_sheets: Sequence[Value]) -> Prints:
    """Where the parts of a thing lie: as they were made, or as if this thing were made alone."""
    plan = checked.plan
    pieces = [plan.labelled(piece) for piece in checked.drafts[id].pieces]
    if not pieces:
        return Prints(())
    known = {
        piece["id"]: (sheet["file"], sheet["number"])
        for sheet in last_sheets
        for piece in sheet["pieces"]
        if "number" in sheet
    }
    layout = lay_out(pieces, plan.stocks, plan.spec.printer.gap_between_pieces, plan.spec.printer.sheet_order)
    parts = []
    for sheet in layout.sheets:
        for placement in sheet.placements:
            file, number = known.get(placement.piece.id, (f"{sheet.stock.name}.pdf", sheet.number))
            parts.append((file, replace(sheet, number=number), placement.piece))
    return Prints(tuple(parts))


def _chapter(chapter: Chapter, gallery: Gallery) -> Value:
    """The steps with the numbers of their drawings, as if there were no other thing to make."""
    chapter = numbered_drawings({"": chapter}).chapters[""]
    return {
        "about": chapter.about,
        "makings": [
            {
                "heading": making.heading,
                "tools": list(making.tools),
                "steps": list(making.steps),
                "figures": [_figure(figure, gallery) for figure in making.drawings],
            }
            for making in chapter.makings
        ],
    }


def _figure(figure: Figure, gallery: Gallery) -> Value:
    seen = Facsimile(figure.art, Rect(0, 0, *figure.size))
    return {"picture": gallery.hang(seen), "size": list(figure.size), "caption": figure.caption}


def _lines(checked: Checked, id: str) -> Value:
    """The lines in which a thing is written, and where they begin."""
    shelf, field = checked.shelf, checked.plan.register.fields[id]
    tree = shelf.tree.below(field)
    assert tree is not None  # it was read
    mine = [place for place in tree.places() if place.file == tree.place.file and place not in shelf.lent]
    first = tree.place.line
    last = max((place.line for place in mine if place.line >= first), default=first)
    if tree.place.file == shelf.path.name:
        text = source_text(shelf.path).splitlines()[first - 1 : last]
    else:
        text = [tree.place.source]
    return {"place": f"{tree.place.file}:{first}", "text": "\n".join(text)}


@lru_cache(maxsize=1)
def _as_written(text: str, file: str) -> Written:
    """A shelf file read for editing: once for all its things."""
    return read_written(text, file)


def _form(checked: Checked, id: str, plan: Plan) -> Value:
    """What may be changed in a thing, and why it may not where that is so."""
    field = checked.plan.register.fields[id]
    if field[0] != BOOKS:
        return {"form": [], "fixed": f"a {plan.family.noun} is changed in the file"}
    written = _as_written(source_text(checked.shelf.path), checked.shelf.path.name)
    keys = dotted_keys(BookEntry)

    def refused(edit: Edit) -> str:
        problem = shelf_refusal(checked.shelf.tree, written, edit, keys)
        return f"{problem.message}; {problem.remedy}" if problem else ""

    fixed = refused(SetValue((*field, "title"), "X"))
    form = [] if fixed else form_of(plan.thing.entry, checked.shelf.tree, field, checked.plan.spec)
    for group in form:
        if group["key"]:
            group["fixed"] = refused(SetValue((*field, group["key"], group["fields"][0]["key"].split(".")[1]), "X"))
    entry = plan.thing.entry
    inside = inside_told(entry, checked.shelf, field) if form and isinstance(entry, BookEntry) else None
    return {
        "form": form,
        "inside": inside and inside | {"fixed": refused(SetValue(inside_path(checked.shelf, field), "X"))},
        "fixed": fixed,
        "removed": refused(Remove(field)),
        "copied": refused(Copy(field, (BOOKS, int(field[1]) + 1))),
    }
