"""Pictures among the operators of a page: those of many programs pass, and one that is broken is told with its page."""

from __future__ import annotations

import base64
import zlib
from pathlib import Path

import pikepdf
import pytest
from PIL import Image
from reportlab.pdfgen.canvas import Canvas

from bookmaker.ground.imported import load_pages
from bookmaker.ground.operators.inline_pictures import check_inline_pictures
from bookmaker.ground.problems import ShelfFileError

RAW = bytes((37 * x + 91 * y + 50 * ink) % 256 for y in range(12) for x in range(12) for ink in range(3))
PACKED = zlib.compress(RAW)
RGB = b"/W 12 /H 12 /BPC 8 /CS /RGB "

WHOLE: dict[str, bytes] = {
    "as it is": b"BI " + RGB + b"ID " + RAW + b"\nEI Q",
    "without a blank behind": b"BI " + RGB + b"ID " + RAW + b"EI Q",
    "long names": b"BI\n/Width 12/Height 12/BitsPerComponent 8/ColorSpace/DeviceRGB\nID\n" + RAW + b"\nEI\nQ",
    "two bytes of a line end": b"BI\r\n" + RGB + b"\r\nID\r\n" + RAW + b"\r\nEI\r\nQ",
    "deflated": b"BI " + RGB + b"/F/Fl ID " + PACKED + b"\nEI",
    "deflated, with a list": b"BI " + RGB + b"/Filter [/FlateDecode] /DP [<</Predictor 1>>] ID " + PACKED + b" EI Q",
    "in letters": b"BI " + RGB + b"/F /AHx ID " + RAW.hex().encode() + b">EI Q".replace(b">", b"> "),
    "in letters, deflated": b"BI " + RGB + b"/F [/A85 /Fl] ID " + base64.a85encode(PACKED) + b"~>\nEI Q",
    "of a few colours": b"BI /W 8 /H 1 /BPC 1 /CS [/Indexed /RGB 1 (\\)\x01]ID )] ID \xa5\nEI Q",
    "of colours by name": b"BI /W 8 /H 2 /BPC 8 /CS /Ours ID " + b"x" * 48 + b"\nEI Q",
    "a mask": b"BI /W 8 /H 2 /IM true /D [1 0] ID ab\nEI Q",
    "with EI in it": b"BI /W 17 /H 1 /BPC 8 /CS /G ID 1234 EI 5678 EI 9\nEI Q",
    "two of them": b"BI /W 1 /H 1 /BPC 8 /CS /G ID ( EI q BI /W 1 /H 1 /BPC 8 /CS /G ID ) EI Q",
    "only a text": rb"BT (a BI ) Tj (b (BI ) \) BI ID) Tj ET % BI",
    "a name": b"/BI gs /BIN Do",
}

BROKEN: dict[str, bytes] = {
    "no end": b"BI " + RGB + b"ID " + RAW + b"\nE",
    "no beginning of its pixels": b"BI " + RGB + RAW + b"\nEI Q",
    "lost pixels": b"BI " + RGB + b"ID " + RAW[:300] + b"\nEI Q " + WHOLE["as it is"],
    "no size": b"BI /W 12 /BPC 8 /CS /RGB ID " + RAW + b"\nEI Q",
    "a size without end": b"BI /W 9999999 /H 9999999 /BPC 8 /CS /RGB ID " + RAW + b"\nEI Q",
    "deflated, cut short": b"BI " + RGB + b"/F/Fl ID " + PACKED[:60] + b"\nEI Q",
    "deflated, with another byte": b"BI " + RGB + b"/F/Fl ID " + PACKED[:9] + b"\xff" + PACKED[10:] + b"\nEI Q",
    "deflated, too few": b"BI " + RGB + b"/F/Fl ID " + zlib.compress(RAW[:400]) + b"\nEI Q",
    "without measure": b"BI " + RGB + b"/F/Fl ID " + zlib.compress(bytes(60_000_000)) + b"\nEI Q",
}


@pytest.mark.parametrize("what", WHOLE)
def test_whole_pictures_pass(what: str) -> None:
    check_inline_pictures(b"q 9 0 0 9 0 0 cm " + WHOLE[what])


@pytest.mark.parametrize("what", BROKEN)
def test_broken_pictures_are_found(what: str) -> None:
    with pytest.raises(ValueError):
        check_inline_pictures(b"q 9 0 0 9 0 0 cm " + BROKEN[what])


def test_the_page_of_a_broken_picture_is_told(tmp_path: Path) -> None:
    path = tmp_path / "a.pdf"
    Image.linear_gradient("L").resize((9, 9)).save(tmp_path / "a.png")
    canvas = Canvas(str(path), pagesize=(85, 119), invariant=1)
    for _ in range(2):
        canvas.drawInlineImage(str(tmp_path / "a.png"), 10, 10, 40, 40)
        canvas.showPage()
    canvas.save()
    load_pages(path)
    with pikepdf.open(path, allow_overwriting_input=True) as file:
        file.pages[1].obj.Contents = file.make_stream(BROKEN["lost pixels"])
        file.save(path)
    with pytest.raises(ShelfFileError) as caught:
        load_pages(path)
    assert caught.value.problems[0].message == "page 2 of a.pdf is damaged"
