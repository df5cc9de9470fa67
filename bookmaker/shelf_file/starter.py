"""The small commented shelf that a maker starts from."""

from __future__ import annotations

from pathlib import Path

from ..ground.output import new_files

__all__ = ["STARTER_NAME", "write_starter"]

STARTER_NAME = "shelf.yaml"

SCHEMA_NAME = "shelf.schema.json"

SHELF = (
    f"# yaml-language-server: $schema={SCHEMA_NAME}"
    + """
# A shelf of miniature books. Lines that start with # are notes to you.
# Lengths need a unit: 21 mm, 2.1 cm, 7/8 in, 90 um, 4 mil, 8 pt.
shelf: My First Shelf
scale: 1:12

printer:
  sheet: A4            # or A3, A5, letter, legal, tabloid, or two sides: 200 x 280 mm
  margins: 5 mm        # what your printer cannot reach

# Papers. Best is to measure a pile: stack 20 sheets, press them, measure.
stocks:
  page paper:
    pile: 20 sheets = 1.8 mm
    glue: spray        # or paste, PVA, double-sided film, or a length such as 15 um
    grain: long        # fibres along the long side, as in most A4; leave out if unknown
  cover paper:
    caliper: 160 um
    film: 50 um        # clear film over the print; leave out if there is none
    grain: long

# Where the books stand: the clear space inside.
spaces:
  upper shelf: {width: 60 mm, height: 27 mm, depth: 22 mm}

# What all books share. A book may say otherwise.
defaults:
  block: {kind: accordion, stock: page paper}
  cover: {kind: wrap, stock: cover paper}
  space: upper shelf

books:
  - title: The Cartographer's Attic
    author: Odile Fenn
    look: 2                                     # what is left to chance; bookmaker looks 1 shows others
    size: {height: 21 mm, width: 15 mm}         # the page of the miniature
    block: {pages: 48}
    inside:                                     # its parts, one after the other
      - {kind: title page}
      - {kind: text, file: attic.txt, begins: recto}
      - {kind: dummy text, size: 2.2 pt}         # lines that look like text, on all pages that are left
    design: {style: cloth, colour: "#2f4f46"}

  - title: Rope Ends Explained
    author: B. Tarrow
    life_size: {height: 198 mm, width: 129 mm}  # the page of the real book; divided by the scale
    block: {pages: 32}
    inside: {kind: ruled, spacing: 1.2 mm}
    design: {style: paper boards, palette: harbour, spine_title: up}

  - title: Weather Diary
    life_size: {height: 234 mm, width: 156 mm}
    block: {pages: 64}
    cover: {turn_in: 5 mm, head_turn_in: 4 mm}  # the cover paper is folded over the edges
    design: {style: half leather, palette: orchard, spine_title: across}
"""
)

TEXT = """\
The attic had no window, so the cartographer drew one. She drew it on the north wall in brown ink, \
four panes and a latch, and in the panes she drew the valley as she remembered it from the train.

By the second winter the drawing had a weather of its own. Nobody had touched it. The hills stood further \
off than they had, as hills do before rain, and in the lower left pane a lamp had been lit in a house \
where she was certain she had put no house at all.

She did what any surveyor would do. She set up her table, took a bearing on the lamp, and began a new sheet.
"""

STARTER = {STARTER_NAME: SHELF, "attic.txt": TEXT}
"""The files of the starter."""


def write_starter(folder: Path, schema: str) -> Path:
    """Write the starter shelf, its text and the schema for editors into a new or empty folder; say where the shelf is.

    Raises:
        OutputError: the folder holds something already, or cannot be written.
    """
    new_files(folder, {name: text.encode() for name, text in (STARTER | {SCHEMA_NAME: schema}).items()})
    return folder / STARTER_NAME
