"""Texts in YAML to be edited: shelves, and forms that nobody wishes for but that are valid."""

from __future__ import annotations

import re
from pathlib import Path

from tests.kit.manual import EVERYTHING

__all__ = ["DEMO", "SHOWN", "SOME_OF_THE_DEMO", "UGLY"]

ROOT = Path(__file__).parents[2]

DEMO = (ROOT / "demo" / "shelf.yaml").read_text(encoding="utf-8")

SOME_OF_THE_DEMO = DEMO[: DEMO.index("  # Three heavy ones")] + DEMO[DEMO.index("  # Three volumes") :]

SHOWN = [text for text in re.findall(r"```yaml\n(.*?)```", EVERYTHING, re.DOTALL) if ":" in text and "…" not in text]

UGLY = {
    "flow over lines": """\
{shelf: Salt, stocks: {laid: {caliper: 75 um},   # the good one
   # bought in spring
   card: {pile: 10 sheets = 1.6 mm}},
 books: [
   {title: Fog, pages: 3},  # thin
   {title: "Salt, Rope", inside: [a, b,
      c],
    size: {height: 21 mm}},

   # the last
   {title: End}, # end
 ]
}
""",
    "notes everywhere": """\
# the shelf, and what
# it is

# scale of it
scale: 1:12   # inch to the foot

# ---- heading ----

books:   # all of them
  # first

  # right above the first
  - title: One   # its title
    # its author
    author: A
    # no pages yet
    # pages: 40

  # ---- heading ----

  - # a dash alone
    title: Two

    # about its size
    size:   # of the page

      height: 21 mm   # tall
      # narrow
      width: 12 mm
      # deeper note
  # above three
  - title: Three
# a note at the left
    # and one further in
spaces: {a: 1, b: 2}   # end
# last note
""",
    "anchors": """\
defaults: &own
  block: {pages: 40}
books:
  - &first
    title: One
    size: &tall {height: 21 mm}
  - title: Two
    size: *tall
  - *first
  - &unused {title: Four}
spaces: {a: &s !!str x, b: *s}
""",
    "quoted keys": """\
"shelf" : 'it''s'
'books':
- "title": "One: a tale"
  'author'  :   "A \\"B\\" C"
- {"title":"Two","pages":4}
- ["a","b"]
"a: b": 1
"#": "#fff"
""",
    "block scalars": """\
text: |   # a note
  one

  two
kept: |+
  three

folded: >-
    four
    five

books:
  - title: |-
      six
      seven
    note: >
      eight

  - |
    nine
  - ten
""",
    "odd indentation": """\
books:
-   title: One
    size:
       height: 21 mm
       width: 12 mm
    list:
          - a
          -   b
-     title: Two
-
   title: Three
- - x
  - y
- - - z
stocks:
 a: 1
 b:
  - c
  -
    - d
""",
    "no end": "a: 1\n\nbooks:\n  - x\n\n  - y: 1\n    z: 2",
    "only a list": "- a\n- b: c\n  d: e\n-\n- []\n- {}\n-   # note\n  k: v\n",
    "empty values": "a:\nb: ~\nc: {d: , e, f: null}\ng:   # note\nbooks:\n  -\n  - h:\n    i:\n",
    "long values": """\
a: Salt and
  Rope and
  Tar   # note
b: "two
  lines"
c: [x y
  z, 'q
  r']
d: {k: v
    w}
""",
    "unicode": "t: Маяк  # ä\nb: [\u201eÜ\u201c, x\u2028y, \U0001f4d6]\nc: 'é'\nd: \xa0x\n",
    "trailing blanks": "a: 1   \nb:  \n  - x \n  -  y  \n   \n  - z\nc: {d: 1 , e: 2 }  \n\n\n",
    "pairs": "a: [b: c, d: {e: f}, g]\nh: [i: j]\n",
    "marks": "%YAML 1.2\n---\na: 1\nb: [c]\n...\n",
    "tabs": "a: 1\t# tab\nb:\t{c: 1,\td: 2}\t\n",
    "commas first": "a: [ b\n   , c  # note\n   , d\n   ]\ne: { f: 1\n   , g: 2 }\n",
    "spaces": "a:\n\n  b: 1\n\n\n  c: 2\n\n  # alone\n\n  d: 3\n\n\ne: 4\n\n",
}

LINE_ENDS = ("\n", "\r\n", "\r")
