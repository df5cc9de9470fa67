"""Pictures that fill the page run on into the paper that is trimmed off, and never over the fold."""

from __future__ import annotations

from pathlib import Path

import pypdfium2 as pdfium
import pytest
from PIL import Image

from tests.kit.shelves import made

PER_MM = 20
"""Pixels of a rendered millimetre."""

SHELF = """\
shelf: Bleeding
stocks:
  page: {{caliper: 75 um, grain: long}}
  cover: {{caliper: 160 um, grain: long}}
books:
  - title: Plates
    direction: {direction}
    size: {{height: 20 mm, width: 14 mm}}
    block: {{stock: page, {block}}}
    cover: {{kind: wrap, stock: cover}}
    inside: {{kind: pictures, folder: plates, bleed: yes, numbers: no}}
"""

BLOCKS = {
    "leaves": "kind: leaves, pages: 16, trim: 1 mm",
    "folded leaves": "kind: leaves, pages: 8, trim: 1 mm, printing: one side",
    "folio": "kind: sections, pages: 16, trim: 1 mm",
    "octavo": "kind: sections, pages: 16, fold: octavo",
    "one side": "kind: sections, pages: 8, trim: 1 mm, printing: one side",
}

RGB = tuple[int, int, int]


def colour(page: int) -> RGB:
    return 40 + 12 * page, 200 - 9 * page, 90 + 5 * page


@pytest.mark.parametrize("direction", ["left-to-right", "right-to-left"])
@pytest.mark.parametrize("block", BLOCKS.values(), ids=BLOCKS)
def test_every_page_runs_on_into_its_own_trim(tmp_path: Path, block: str, direction: str) -> None:
    (tmp_path / "plates").mkdir()
    for page in range(1, 17):
        Image.new("RGB", (700, 1000), colour(page)).save(tmp_path / "plates" / f"{page:02}.png")
    plan, out = made(SHELF.format(block=block, direction=direction), tmp_path)
    seen = 0
    with pdfium.PdfDocument(out / "page.pdf") as pdf:
        for sheet in plan["sheets"]:
            if sheet["file"] == "page.pdf":
                sides = {"front": _picture(pdf, sheet["page"])}
                if sheet["reverse_page"]:
                    # turned on the long edge, seen through the paper
                    sides["reverse"] = _picture(pdf, sheet["reverse_page"]).transpose(Image.Transpose.FLIP_LEFT_RIGHT)
                for piece in sheet["pieces"]:
                    seen += sum(_runs_on(sides[panel["face"]], panel, piece) for panel in piece["panels"])
    assert seen == plan["books"][0]["pages"]


def _picture(pdf: pdfium.PdfDocument, page: int) -> Image.Image:
    return pdf[page - 1].render(scale=PER_MM * 25.4 / 72).to_pil().convert("RGB")


def _runs_on(image: Image.Image, panel: dict[str, object], piece: dict[str, object]) -> bool:
    """Whether a page has its own colour 0.7 mm beyond each edge that is trimmed."""
    page, (x, y, width, height) = panel["page"], panel["rect_mm"]  # type: ignore[misc]
    if page is None:
        return False
    middle = (x + width / 2, y + height / 2)
    beyond = [(middle[0], y - 0.7), (middle[0], y + height + 0.7)]
    trims = [trim["from_mm"][0] for trim in piece["trims"] if abs(trim["from_mm"][0] - trim["to_mm"][0]) < 1e-6]  # type: ignore[attr-defined]
    beyond += [(side + step, middle[1]) for side, step in ((x, -0.7), (x + width, 0.7)) if _near(side, trims)]
    assert len(beyond) == 3
    for at in (middle, *beyond):
        found = image.getpixel((int(at[0] * PER_MM), image.height - 1 - int(at[1] * PER_MM)))
        assert found == pytest.approx(colour(page), abs=6), (page, at)  # type: ignore[arg-type]
    return True


def _near(side: float, lines: list[float]) -> bool:
    return any(abs(side - line) < 1e-3 for line in lines)
