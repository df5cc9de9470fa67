"""How everything is made, thing by thing: one of every way that a step or a drawing hangs on."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path as FilePath

from bookmaker import check
from bookmaker.ground.geometry import Path, Rect
from bookmaker.shelf_file.whereabouts import whereabouts
from bookmaker.things.making import Bench, Chapter, Figure
from bookmaker.things.prints import Prints
from tests.kit.recording import ink_box, record
from tests.kit.shelves import written

__all__ = ["BOUND", "drawn_outside", "every_chapter", "figures_of"]

HEAD = """\
shelf: Every Way
stocks:
  laid: {caliper: 75 um, glue: spray, grain: long}
  bond: {caliper: 80 um, glue: paste, grain: long}
  card: {caliper: 160 um, film: 50 um, grain: long}
  cloth: {caliper: 150 um, grain: long}
  board: {caliper: 0.8 mm, grain: long}
  box card: {caliper: 300 um, grain: long}
spaces:
  hall: {width: 900 mm, height: 60 mm, depth: 60 mm}
"""

BLOCKS = {
    "strips joined at tabs": "kind: accordion, stock: laid, pages: 46, flyleaves: 2, joint: hinge tab",
    "one strip": "kind: accordion, stock: bond, pages: 6",
    "leaves": "kind: leaves, stock: bond, pages: 80, trim: 1 mm",
    "doubled leaves": "kind: leaves, stock: laid, pages: 24, printing: one side",
    "octavo": "kind: sections, stock: bond, pages: 64, fold: octavo, stations: 4",
    "quarto, two on": "kind: sections, stock: bond, pages: 48, fold: quarto, sewing: two on",
    "one section": "kind: sections, stock: bond, pages: 16, pages_in_section: 16",
    "many holes": "kind: sections, stock: bond, pages: 16, pages_in_section: 16, stations: 9",
    "two holes": "kind: sections, stock: bond, pages: 16, pages_in_section: 16, stations: 2",
    "folio": "kind: sections, stock: bond, pages: 64, pages_in_section: 16",
    "stapled": "kind: sections, stock: bond, pages: 24, fastening: stapled",
    "glued": "kind: sections, stock: bond, pages: 32, printing: one side, fastening: glued",
    "dummy": "kind: dummy, thickness: 5 mm, edges: lines, edge_stock: bond",
    "layers": "kind: dummy, thickness: about 5 mm in layers of board and bond",
    "measured": "kind: dummy, thickness: 5 mm, measured_thickness: 5.1 mm",
}

COVERS = {
    "flush": "kind: wrap, stock: card",
    "fore-edges turned in": "kind: wrap, stock: card, turn_in: 4 mm",
    "turned in": "kind: wrap, stock: card, turn_in: 4 mm, head_turn_in: 3 mm, square: 0.2 mm",
    "full": "kind: case, stock: card, boards: board, endpapers: laid, templates: bond",
    "quarter": "kind: case, stock: card, boards: board, binding: quarter, spine_stock: cloth, stiffener: none",
    "half": "kind: case, stock: card, boards: board, binding: half, spine_stock: cloth",
}

THINGS = """\
slipcases:
  pair: {books: [1, 2], stock: card, clearance: 1 mm, thumb_cut: yes}
things:
  - {id: tuck, kind: tuck box, stock: box card, inside: {length: 20 mm, width: 12 mm, height: 26 mm}}
  - {id: lidded, kind: lidded box, stock: box card, inside: {length: 30 mm, width: 20 mm, height: 10 mm}}
  - {id: cigars, kind: hinged box, stock: box card, inside: {length: 30 mm, width: 20 mm, height: 10 mm}}
  - {id: matches, kind: drawer box, stock: box card, inside: {length: 30 mm, width: 20 mm, height: 10 mm}}
  - {id: tray, kind: tray, stock: box card, inside: {length: 30 mm, width: 20 mm, height: 6 mm}}
  - {id: letter, kind: letter, stock: laid, height: 25 mm, width: 18 mm}
  - {id: post, kind: envelope, stock: laid, contents: [letter]}
  - {id: map, kind: map, stock: laid, height: 60 mm, width: 74 mm}
  - {id: tickets, kind: cards, stock: box card, height: 6 mm, width: 10 mm, count: 12}
  - {id: butt, kind: frame, stock: card, width: 30 mm, height: 18 mm}
  - id: mitred
    kind: frame
    stock: card
    width: 20 mm
    height: 25 mm
    mount: {stock: box card, border: 5 mm}
    glazing: 0.2 mm
    rails: {corners: mitre, face: 4 mm, covers: 1 mm, rebate: 1 mm}
  - id: wrapped
    kind: frame
    stock: card
    width: 20 mm
    height: 25 mm
    glazing: 0.2 mm
    jig: laid
    rails: {corners: mitre, wrap: {stock: laid}}
"""


def _books() -> str:
    ways = [(block, cover) for block, cover in zip(BLOCKS, [*COVERS] * 3, strict=False)]
    return "books:\n" + "".join(
        f"""\
  - title: {block} in {cover}
    size: {{height: 21 mm, width: 15 mm}}
    direction: {"right-to-left" if number % 4 == 3 else "left-to-right"}
    space: hall
    block: {{{BLOCKS[block]}}}
    cover: {{{COVERS[cover]}}}
{"    jacket: {stock: bond, flap: 5 mm}" if number == 3 else ""}
"""
        for number, (block, cover) in enumerate(ways)
    )


BOUND = HEAD + _books() + THINGS


def every_chapter(folder: FilePath, room: float = 89.0) -> dict[str, Chapter]:
    """What each of them tells its maker, with drawings for a room in mm; nothing of it is printed."""
    checked = check(written(BOUND, folder))
    plan = checked.plan
    return {
        id: one.family.chapter(
            one, Bench(plan.stocks, Prints(()), room, whereabouts(checked.shelf, plan.register.fields[id])), plan
        )
        for id, one in plan.plans.items()
    }


def figures_of(chapter: Chapter) -> list[Figure]:
    """All drawings of a chapter."""
    return [figure for making in chapter.makings for figure in making.drawings]


def drawn_outside(figure: Figure, slack: float) -> list[str]:
    """What of a drawing lies more than a slack outside its frame, in mm."""
    frame = Rect(0, 0, *figure.size).grown(slack)
    canvas = record(figure.art)
    fills = [(_seen(mark.path, mark.clips), str(mark)) for mark in canvas.fills]
    strokes = [(_seen(mark.path, mark.clips), str(mark)) for mark in canvas.strokes]
    texts = [(ink_box(text), text.text) for text in canvas.texts]
    return [told for box, told in (*fills, *strokes, *texts) if not frame.contains(box)]


def _seen(path: Path, clips: Sequence[Path]) -> Rect:
    """The box around a shape, or around what a smaller clip leaves of it."""
    return min((path.bounds, *(clip.bounds for clip in clips)), key=lambda box: box.width * box.height)
