"""True size measured in pixels: the test line on a sheet, rendered by PDFium."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pypdfium2
import pytest

from tests.kit.shelves import made

SHELF = """\
shelf: True size
printer: {{margins: 5 mm, rules: {{across: {across} mm, up: 150 mm}}}}
stocks:
  page: {{caliper: 75 um, grain: long}}
  cover: {{caliper: 160 um, grain: long}}
books:
  - title: Soundings
    size: {{height: 21 mm, width: 15 mm}}
    block: {{kind: accordion, stock: page, pages: 16}}
    cover: {{kind: wrap, stock: cover}}
"""

DPI = 600
DOT = 25.4 / DPI


@pytest.mark.parametrize(("across", "length"), [(150, 100.0), (149.4, 100 * 150 / 149.4)])
def test_the_test_line_has_its_length_in_pixels(tmp_path: Path, across: float, length: float) -> None:
    plan, out = made(SHELF.format(across=across), tmp_path)
    document = pypdfium2.PdfDocument(out / plan["files"][0])
    page = document[0]
    height_mm = page.get_height() * 25.4 / 72
    dots = np.asarray(page.render(scale=DPI / 72, grayscale=True).to_numpy()).squeeze()
    document.close()
    # the rule stands 5 + 4.6 mm above the sheet's foot; 2.7 mm above it only its two end ticks are as tall
    row = round((height_mm - (5 + 4.6 + 2.85)) / DOT)
    dark = np.flatnonzero(dots[row, : round(112 / DOT)] < 128)
    assert dark[-1] + 1 - dark[0] == pytest.approx(length / DOT, abs=1.5)
