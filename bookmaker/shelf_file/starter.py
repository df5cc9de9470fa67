"""The small commented shelf that a maker starts from."""

from __future__ import annotations

from pathlib import Path

from ..ground.output import new_files
from ..ground.told import Units

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
units: millimetres     # the unit lengths are shown in; or inches

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
      - {kind: text, file: attic.txt, begins: recto, weight: 1 dot}
      - {kind: dummy text, size: 2.2 pt}         # lines that look like text, on all pages that are left
    design: {style: cloth, colour: "#2f4f46"}

  - title: Rope Ends Explained
    author: B. Tarrow
    life_size: {height: 198 mm, width: 129 mm}  # the page of the real book; divided by the scale
    block: {pages: 32}
    inside: {kind: ruled, spacing: 1.2 mm}
    design: {style: paper boards, palette: harbour, spine_title: up}

  - title: Weather Diary                        # without inside its pages stay blank
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

IN_INCHES = (
    ("units: millimetres     # the unit lengths are shown in; or inches", "units: inches          # or millimetres"),
    ("sheet: A4            # or A3, A5, letter, legal, tabloid, or two sides: 200 x 280 mm",
     "sheet: letter        # or legal, tabloid, A4, or two sides: 8 x 10 in"),
    ("margins: 5 mm        #", "margins: 0.2 in      #"),
    ("20 sheets = 1.8 mm", "20 sheets = 0.071 in"),
    ("such as 15 um", "such as 0.6 mil"),
    ("as in most A4;", "as in most letter paper;"),
    ("caliper: 160 um", "caliper: 6.3 mil"),
    ("film: 50 um        #", "film: 2 mil         #"),
    ("{width: 60 mm, height: 27 mm, depth: 22 mm}", "{width: 2 3/8 in, height: 1 1/16 in, depth: 7/8 in}"),
    ("{height: 21 mm, width: 15 mm}         #", "{height: 0.83 in, width: 0.59 in}     #"),
    ("{height: 198 mm, width: 129 mm}  #", "{height: 7.8 in, width: 5.1 in}  #"),
    ("spacing: 1.2 mm", "spacing: 0.05 in"),
    ("{height: 234 mm, width: 156 mm}", "{height: 9.2 in, width: 6.1 in}"),
    ("{turn_in: 5 mm, head_turn_in: 4 mm}", "{turn_in: 0.2 in, head_turn_in: 0.16 in}"),
)  # fmt: skip
"""What is written otherwise for makers who measure in inches."""


def starter_files(units: Units = Units.MILLIMETRES) -> dict[str, str]:
    """The files of the starter, with lengths in some units."""
    shelf = SHELF
    for millimetres, inches in IN_INCHES if units is Units.INCHES else ():
        shelf = shelf.replace(millimetres, inches)
    return {STARTER_NAME: shelf, "attic.txt": TEXT}


def write_starter(folder: Path, schema: str, units: Units = Units.MILLIMETRES) -> Path:
    """Write the starter shelf, its text and the schema for editors into a new or empty folder; say where the shelf is.

    Raises:
        OutputError: the folder holds something already, or cannot be written.
    """
    new_files(folder, {name: text.encode() for name, text in (starter_files(units) | {SCHEMA_NAME: schema}).items()})
    return folder / STARTER_NAME
