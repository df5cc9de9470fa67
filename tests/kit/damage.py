"""Files with damage, each grown from a number: what a bad disk, a bad program or an ill will makes of sound ones."""

from __future__ import annotations

import functools
import io
import re
import tempfile
from collections.abc import Callable, Mapping
from pathlib import Path
from random import Random

from PIL import Image
from reportlab.lib.utils import ImageReader
from reportlab.pdfgen import canvas

from tests.kit.every_key import lay_key
from tests.kit.fonts import cff_font, font_of_boxes

__all__ = ["KINDS", "lay"]

SHELF = """\
shelf: Damaged Goods
stocks: {laid: {caliper: 75 um, grain: long}, card: {caliper: 160 um, grain: long}}
spaces: {ledge: {width: 120 mm, height: 60 mm, depth: 40 mm}}
defaults:
  size: {height: 42 mm, width: 30 mm}
  block: {kind: accordion, stock: laid}
  cover: {kind: wrap, stock: card}
books:
  - title: Tide Tables
    author: M. Ray
    space: ledge
    INSIDE
"""

FULL = """\
date: 1903
    volume: II
    jacket: {stock: card, design: {style: cloth, colour: "#224466", palette: harbour}}
    design: {style: leather, face: caslon, wear: heavy, ornament: sun}
    inside:
      - {kind: half title}
      - {kind: title page, place: Saltmouth, subtitle: With a Chart}
      - {kind: dedication, text: To all keepers}
      - {kind: contents}
      - {kind: text, file: a.txt, size: 3 pt, leading: 1.2, running_heads: yes, drop_capital: 2}
      - {kind: ruled, pages: 60}
slipcases:
  box: {stock: card, books: Tide Tables, faces: {title: Tides}}
"""

WORDS = "The keeper trims the lamp at dusk, and writes down the wind: “north, 4”, he says — and 12 ½ knots of fog.\n\n"

TABLE = "title,author,height,width,pages\n" + "".join(
    f'"The Log of ""{n}""",A. Keeper,{30 + n} mm,{20 + n} mm,{16 + 2 * n}\n' for n in range(12)
)


def _picture(form: str, mode: str) -> bytes:
    file = io.BytesIO()
    Image.radial_gradient("L").resize((90, 60)).convert(mode).save(file, form)
    return file.getvalue()


def _pdf(*, compressed: bool) -> bytes:
    file = io.BytesIO()
    page = canvas.Canvas(file, pagesize=(85, 119), pageCompression=int(compressed), invariant=1)
    picture = ImageReader(io.BytesIO(_picture("PNG", "RGB")))
    for number in range(3):
        page.beginForm(f"form{number}")
        page.circle(20, 20, 10)
        page.endForm()
        page.drawString(10, 60, f"Page {number}")
        page.drawImage(picture, 10, 80, 30, 20)
        page.drawInlineImage(Image.linear_gradient("L").resize((9, 9)).convert("RGB"), 45, 80, 20, 20)
        page.doForm(f"form{number}")
        page.linearGradient(0, 0, 40, 40, ("red", "blue"))
        page.showPage()
    page.save()
    return file.getvalue()


def _font(make: Callable[[Path], Path], folder: Path) -> bytes:
    return make(folder / "font").read_bytes()


@functools.cache
def _sound(kind: str) -> tuple[bytes, ...]:
    """Sound files of a kind."""
    if kind == "font":
        with tempfile.TemporaryDirectory() as name:
            return _font(font_of_boxes, Path(name)), _font(lambda path: cff_font(path, "abcdefxHTidekprs "), Path(name))
    if kind == "pdf":
        return _pdf(compressed=True), _pdf(compressed=False)
    forms = (("PNG", "RGBA"), ("PNG", "P"), ("JPEG", "RGB"), ("JPEG", "CMYK"), ("TIFF", "LAB"), ("WEBP", "RGB"))
    return tuple(_picture(form, mode) for form, mode in forms)


KINDS: Mapping[str, tuple[str, str]] = {
    "font": ("own.ttf", "inside: {kind: text, file: a.txt, face: ./own.ttf}"),
    "pdf": ("own.pdf", "inside: {kind: pdf, file: own.pdf}"),
    "picture": ("own.png", "block: {kind: accordion, stock: laid, pages: 8}\n    design: {front_picture: own.png}"),
    "plates": ("plates/own.jpg", "inside: {kind: pictures, folder: plates}"),
    "table": ("own.csv", "inside: {kind: text, file: a.txt}"),
    "shelf": ("shelf.yaml", "INSIDE"),
    "text": ("a.txt", "inside: {kind: text, file: a.txt, running_heads: yes, drop_capital: 2}"),
    "key": ("shelf.yaml", ""),
}
"""What is damaged, under which name it is laid, and how a book names it; a key is one of all there are."""

ODD = (b"\0", b"\xff", b"\x7f\xff", b"\x80\0", b"\0\0\0\0", b"\xff\xff\xff\xff", b"99999999", b"-1", b"\n", b"{", b"'")


def _damaged(data: bytes, chance: Random) -> bytes:
    """One to four harms; most of them leave everything at its place, for the others are soon found."""
    for _ in range(chance.randint(1, 4)):
        at = chance.randrange(len(data) + 1)
        to = min(len(data), at + chance.choice((1, 2, 4, 16, 200)))
        harm = chance.randrange(12)
        if harm < 4:
            data = data[:at] + bytes(chance.randrange(256) for _ in range(to - at)) + data[to:]
        elif harm < 9:
            odd = chance.choice(ODD)
            data = data[:at] + odd + data[at + len(odd) :]
        elif harm == 9:
            data = data[:at] + chance.choice(ODD) + data[at:]
        elif harm == 10:
            data = data[:at] + data[to:]
        elif chance.random() < 0.5:
            data = data[:at] + data[at:to] * chance.choice((2, 3, 50)) + data[to:]
        else:
            data = data[:at]
    return data


VALUES = (
    *(
        "0",
        "-1",
        "1e9",
        "999999",
        "0.0001 mm",
        "9 km",
        "nan",
        "null",
        "12 %",
        "9" * 250,
        "x" * 3000,
        "on",
        "2001-01-01",
    ),
    *("[]", "{}", "''", "\\", "...", "*", "~", "a: b", "&a", "!!int 3", "\u00ad", "\u0301", "\u202e"),
)


def _reworded(text: str, chance: Random) -> str:
    """Words and numbers exchanged with one another and with odd ones, lines lost and doubled: still a text."""
    parts = re.split(r"(\w+)", text)
    for _ in range(chance.randint(1, 5)):
        at = chance.randrange(len(parts))
        other = chance.choice(VALUES) if chance.random() < 0.6 else chance.choice(parts)
        parts[at] = chance.choice((other, "", parts[at] * 2, f"{parts[at]} {other}"))
    return "".join(parts)


SIGNS = "\u00ad\u0301\u200d\u202e\u2800\ufffd\U0001f4d6 ́aא字१\t#*_|-=`>\\[]()!&1.\n\n\n"


def _strange(chance: Random) -> bytes:
    """A text of a few signs, in any order."""
    few = chance.sample(SIGNS, chance.randint(1, 6))
    return "".join(chance.choice(few) for _ in range(chance.choice((1, 2, 40, 400)))).encode()


def lay(kind: str, number: int, folder: Path) -> None:
    """Lay a shelf and the files it names, one of them damaged, into a folder."""
    if kind == "key":
        lay_key(number, folder)
        return
    chance = Random(f"{kind} {number}")
    name, inside = KINDS[kind]
    listed = SHELF.replace("INSIDE", inside) + ("  - from own.csv\n" if kind == "table" else "")
    (folder / "shelf.yaml").write_text(listed, encoding="utf-8")
    (folder / "a.txt").write_text(WORDS * 8, encoding="utf-8")
    (folder / name).parent.mkdir(exist_ok=True)
    (folder / name).write_bytes(_harmed(kind, listed, chance))


def _harmed(kind: str, listed: str, chance: Random) -> bytes:
    """The file that is laid."""
    texts = {"shelf": listed.replace("INSIDE", FULL), "table": TABLE, "text": WORDS * 8}
    if kind not in texts:
        return _damaged(chance.choice(_sound(kind)), chance)
    if kind == "text" and chance.random() < 0.6:
        return _strange(chance)
    text = _reworded(texts[kind], chance)
    raw = text.encode("utf-16" if kind == "table" and chance.random() < 0.2 else "utf-8")
    return _damaged(raw, chance) if chance.random() < 0.15 else raw
