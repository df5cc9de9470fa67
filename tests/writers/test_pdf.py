"""The PDF writer: what was drawn is read back with pypdf, checked by qpdf (pikepdf), rendered by PDFium."""

from __future__ import annotations

import ctypes
import io
import os
import random
import unicodedata
import warnings
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path as FilePath
from typing import Any

import pikepdf
import pypdf
import pypdfium2
import pytest
from fontTools.cffLib import CFFFontSet
from fontTools.ttLib import TTFont
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image
from pypdf.generic import ContentStream

from bookmaker.ground.drawing import BLACK, Canvas, Colour, Pen
from bookmaker.ground.geometry import Path, Point, Rect, Size, Transform
from bookmaker.ground.pictures import Picture, load_picture
from bookmaker.ground.problems import ShelfFileError
from bookmaker.ground.typefaces import Run, TextLine, bundled, load_typeface, set_line
from bookmaker.typesetting.word_line import WordLine
from bookmaker.writers.pdf import PdfFile
from bookmaker.writers.pdf.canvas import PdfCanvas
from bookmaker.writers.pdf.numbers import number
from tests.kit.fonts import cff_font

Draw = Callable[[PdfCanvas], None]

MM = 72 / 25.4
PAGE = Size(100, 80)
TEXT = bundled("text")
RED = Colour(1, 0, 0)


def made(draw: Draw, size: Size = PAGE, **settings_: Any) -> bytes:
    """A PDF of one page."""
    file = io.BytesIO()
    with PdfFile(file, title="Trial", **settings_) as pdf, pdf.page(size) as canvas:
        draw(canvas)
    return file.getvalue()


def page_of(data: bytes) -> pypdf.PageObject:
    return pypdf.PdfReader(io.BytesIO(data), strict=True).pages[0]


@dataclass
class Found:
    """What the operators of a page put on the paper, in mm, as another program reads them."""

    text: list[tuple[float, float, float]] = field(default_factory=list)
    lines: list[list[tuple[float, float]]] = field(default_factory=list)
    pictures: list[tuple[float, ...]] = field(default_factory=list)
    operators: list[tuple[str, list[Any]]] = field(default_factory=list)

    def values(self, operator: str) -> list[list[float]]:
        return [[float(value) for value in operands] for name, operands in self.operators if name == operator]


def multiplied(one: list[float], two: list[float]) -> list[float]:
    a, b, c, d, e, f = one
    g, h, i, j, k, m = two
    return [a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k, e * h + f * j + m]


def on_paper(matrix: list[float], x: float, y: float) -> tuple[float, float]:
    moved = multiplied([1, 0, 0, 1, x, y], matrix)
    return moved[4] / MM, moved[5] / MM


def read_back(data: bytes) -> Found:
    page = page_of(data)
    found = Found()
    matrix, stack, size = [1.0, 0, 0, 1, 0, 0], [], 0.0
    for operands, raw in ContentStream(page.get_contents(), page.pdf).operations:
        operator = raw.decode()
        found.operators.append((operator, operands))
        values = [float(value) for value in operands] if operator in ("cm", "Td", "m", "l", "c") else []
        if operator == "q":
            stack.append(matrix)
        elif operator == "Q":
            matrix = stack.pop()
        elif operator == "cm":
            matrix = multiplied(values, matrix)
        elif operator == "Tf":
            size = float(operands[1])
        elif operator == "Td":
            at = values
        elif operator == "TJ":
            found.text.append((*on_paper(matrix, *at), size / MM))
        elif operator == "m":
            found.lines.append([on_paper(matrix, *values)])
        elif operator in ("l", "c"):
            found.lines[-1].append(on_paper(matrix, *values[-2:]))
        elif operator == "Do":
            corners = on_paper(matrix, 0, 0), on_paper(matrix, 1, 1)
            found.pictures.append((*corners[0], *corners[1]))
    assert not stack
    return found


def rendered(data: bytes, dpi: float = 254) -> Image.Image:
    return pypdfium2.PdfDocument(data)[0].render(scale=dpi / 72).to_pil().convert("RGB")


def said_by_pdfium(data: bytes) -> str:
    return str(pypdfium2.PdfDocument(data)[0].get_textpage().get_text_range())


def a_bit_of_everything(canvas: PdfCanvas) -> None:
    canvas.text(set_line(TEXT, 4, "office AVATAR fflow"), Point(10, 60), BLACK)
    canvas.text(set_line(bundled("sans bold"), 3, "Ωμέγα Ёлка"), Point(10, 50), RED)
    with canvas.placed(Transform.turn(30), clip=Path.circle(Point(30, 10), 5)):
        canvas.fill(Path.rectangle(Rect(20, 0, 20, 20)), Colour(0.2, 0.4, 0.6))
    canvas.stroke(Path.line(Point(10, 10), Point(60, 10)), Pen(0.2, dash=(1, 0.5)))


def test_a_veil_hides_its_share_of_what_lies_under_it() -> None:
    """ISO 32000-1, 11.6.4.4: 0.3 of black over white leaves 0.7 of the light, over half grey 0.35; nothing after it."""
    file = io.BytesIO()
    with PdfFile(file, title="Trial") as pdf, pdf.page(Size(30, 10)) as canvas:
        canvas.fill(Path.rectangle(Rect(10, 0, 10, 10)), Colour(0.5, 0.5, 0.5))
        canvas.veil(Path.rectangle(Rect(0, 0, 20, 10)), BLACK, 0.3)
        canvas.fill(Path.rectangle(Rect(20, 0, 10, 10)), BLACK)
    image = rendered(file.getvalue())
    greys = [image.getpixel((round(x * 10), 50))[0] / 255 for x in (5, 15, 25)]  # type: ignore[index]
    assert greys == pytest.approx([0.7, 0.35, 0.0], abs=0.005)


# The file as a whole


def test_other_programs_open_it_without_a_warning(tmp_path: FilePath) -> None:
    path = tmp_path / "trial.pdf"
    path.write_bytes(made(a_bit_of_everything))
    with pikepdf.open(path) as pdf:
        assert pdf.check_pdf_syntax() == []
        assert pdf.pdf_version == "1.7"
    with warnings.catch_warnings(record=True) as caught:
        warnings.simplefilter("always")
        reader = pypdf.PdfReader(path, strict=True)
        assert len(reader.pages) == 1
        assert reader.pages[0].extract_text()
    assert not caught
    assert len(pypdfium2.PdfDocument(path)) == 1


def test_title_producer_and_language() -> None:
    file = io.BytesIO()
    with PdfFile(file, title="Der Leuchtturm Ω", language="de") as pdf, pdf.page(PAGE):
        pass
    reader = pypdf.PdfReader(file)
    assert dict(reader.metadata or {}) == {"/Title": "Der Leuchtturm Ω", "/Producer": "bookmaker"}
    assert reader.trailer["/Root"]["/Lang"] == "de"


def test_the_same_drawing_gives_the_same_bytes_in_any_folder(tmp_path: FilePath) -> None:
    (tmp_path / "there").mkdir()
    paths = [tmp_path / "one.pdf", tmp_path / "there" / "two.pdf"]
    for path in paths:
        with PdfFile(path, title="Trial") as pdf, pdf.page(PAGE) as canvas:
            a_bit_of_everything(canvas)
    assert paths[0].read_bytes() == paths[1].read_bytes() == made(a_bit_of_everything)
    other = made(lambda canvas: canvas.fill(Path.rectangle(Rect(0, 0, 1, 1)), BLACK))
    identity = [pypdf.PdfReader(io.BytesIO(data)).trailer["/ID"] for data in (other, paths[0].read_bytes())]
    assert identity[0] != identity[1]


def test_bytes_do_not_depend_on_the_day(monkeypatch: pytest.MonkeyPatch) -> None:
    before = made(a_bit_of_everything)
    monkeypatch.setattr("time.time", lambda: 2_000_000_000.0)
    assert made(a_bit_of_everything) == before


@pytest.mark.parametrize("date", ["", "abc", "1000000000", "-1", "9" * 40, "1e9"])
def test_a_date_in_the_environment_is_not_heeded(date: str, monkeypatch: pytest.MonkeyPatch) -> None:
    plain = made(a_bit_of_everything)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", date)
    assert made(a_bit_of_everything) == plain
    assert os.environ["SOURCE_DATE_EPOCH"] == date


def test_no_file_is_left_when_drawing_fails(tmp_path: FilePath) -> None:
    with (
        pytest.raises(ZeroDivisionError),
        PdfFile(tmp_path / "trial.pdf", title="Trial") as pdf,
        pdf.page(PAGE),
    ):
        raise ZeroDivisionError
    assert list(tmp_path.iterdir()) == []


def test_page_boxes() -> None:
    """ISO 32000-1, 14.11.2: boxes are [left bottom right top] in points."""
    file = io.BytesIO()
    with PdfFile(file, title="Trial") as pdf:
        with pdf.page(Size(210, 297), trim=Rect(20, 30, 100, 150), bleed=Rect(17, 27, 106, 156)):
            pass
        with pdf.page(PAGE):
            pass
    page, plain = pypdf.PdfReader(file).pages
    assert [float(side) for side in page["/MediaBox"]] == pytest.approx([0, 0, 210 * MM, 297 * MM], abs=1e-4)
    assert page["/CropBox"] == page["/MediaBox"]
    trim, bleed = [20, 30, 120, 180], [17, 27, 123, 183]
    assert [float(side) / MM for side in page["/TrimBox"]] == pytest.approx(trim, abs=1e-4)
    assert [float(side) / MM for side in page["/BleedBox"]] == pytest.approx(bleed, abs=1e-4)
    assert "/TrimBox" not in plain
    assert "/BleedBox" not in plain


def test_content_is_compressed_and_pages_keep_their_order() -> None:
    file = io.BytesIO()
    with PdfFile(file, title="Trial") as pdf:
        for page in range(12):
            with pdf.page(PAGE) as canvas:
                canvas.text(set_line(TEXT, 4, f"page {page}"), Point(10, 10), BLACK)
    reader = pypdf.PdfReader(file)
    assert [page.extract_text() for page in reader.pages] == [f"page {page}" for page in range(12)]
    assert all(page["/Contents"].get_object()["/Filter"] == "/FlateDecode" for page in reader.pages)


# Numbers


@given(st.floats(-1e5, 1e5))
def test_numbers_are_short_and_plain(value: float) -> None:
    text = number(value)
    assert abs(float(text) - value) <= 0.5001e-4
    assert b"e" not in text
    assert not text.endswith((b".", b"-0"))
    assert b"." not in text or not text.endswith(b"0")


@settings(deadline=None, max_examples=30)
@given(st.floats(0, 300), st.floats(0, 300), st.floats(-360, 360), st.floats(0.98, 1.02))
def test_true_size_within_a_hundredth_of_a_millimetre(x: float, y: float, turn: float, scale: float) -> None:
    placing = Transform.turn(turn).then(Transform.stretch(scale, 1)).moved(3, 4)

    def draw(canvas: PdfCanvas) -> None:
        with canvas.placed(placing), canvas.placed(Transform.move(1, 2)):
            canvas.stroke(Path.line(Point(x, y), Point(y, x)), Pen(0.1))
            canvas.text(set_line(TEXT, 1.234, "lamp"), Point(x, y), BLACK)

    found = read_back(made(draw))
    ends = [placing.apply(Point(x + 1, y + 2)), placing.apply(Point(y + 1, x + 2))]
    for read, wanted in zip(found.lines[0], ends, strict=True):
        assert read == pytest.approx(tuple(wanted), abs=0.0005)
    assert found.text[0] == pytest.approx((*ends[0], 1.234), abs=0.0005)


def test_a_rule_of_100_mm_measures_100_mm_when_rendered() -> None:
    """At 2540 dpi a pixel is 0.01 mm; the rule is the run of black pixels."""

    def draw(canvas: PdfCanvas) -> None:
        canvas.fill(Path.rectangle(Rect(5, 1, 100, 1)), BLACK)

    image = rendered(made(draw, Size(110, 3)), dpi=2540).convert("L")
    row = [image.getpixel((x, 150)) for x in range(image.width)]
    dark = [x for x, value in enumerate(row) if value < 128]
    assert abs(len(dark) - 10_000) <= 1
    assert abs(dark[0] - 500) <= 1
    assert dark[-1] - dark[0] == len(dark) - 1


# Paths, colours, clips


def test_colours_are_grey_where_they_can_be() -> None:
    def draw(canvas: PdfCanvas) -> None:
        box = Path.rectangle(Rect(0, 0, 1, 1))
        for colour in (BLACK, Colour(0.5, 0.5, 0.5), RED, RED):
            canvas.fill(box, colour)
        canvas.stroke(box, Pen(1, Colour(0, 0.25, 1)))
        canvas.stroke(box, Pen(1, Colour(0.2, 0.2, 0.2)))

    found = read_back(made(draw))
    assert found.values("g") == [[0], [0.5]]
    assert found.values("rg") == [[1, 0, 0]]
    assert found.values("RG") == [[0, 0.25, 1]]
    assert found.values("G") == [[0.2]]


def test_colours_pens_and_fonts_hold_only_inside_their_block() -> None:
    def draw(canvas: PdfCanvas) -> None:
        box = Path.rectangle(Rect(0, 0, 9, 9))
        canvas.fill(box, BLACK)
        with canvas.placed(Transform.move(20, 0)):
            canvas.fill(box, BLACK)
            canvas.fill(box, RED)
        with canvas.placed(Transform.move(40, 0)):
            canvas.fill(box, RED)
        canvas.fill(box, BLACK)

    assert read_back(made(draw)).values("g") == [[0]]
    image = rendered(made(draw))
    colours = [image.getpixel((x * 10, image.height - 50)) for x in (5, 25, 45)]
    assert colours == [(0, 0, 0), (255, 0, 0), (255, 0, 0)]


def test_pens() -> None:
    def draw(canvas: PdfCanvas) -> None:
        rule = Path.line(Point(10, 10), Point(60, 10))
        canvas.stroke(rule, Pen(0.25, dash=(2, 1)))
        canvas.stroke(rule, Pen(0.25, dash=(2, 1)))
        canvas.stroke(rule, Pen(0.5))

    found = read_back(made(draw))
    assert found.values("w") == [pytest.approx([0.25 * MM], abs=1e-4), pytest.approx([0.5 * MM], abs=1e-4)]
    dashes = [[float(length) / MM for length in operands[0]] for name, operands in found.operators if name == "d"]
    assert dashes == [pytest.approx([2, 1], abs=1e-4), []]
    assert [name for name, _ in found.operators if name == "S"] == ["S"] * 3


def test_curves_and_closed_outlines() -> None:
    data = made(lambda canvas: canvas.fill(Path.circle(Point(50, 40), 20), RED))
    assert [name for name, _ in read_back(data).operators] == ["rg", "m", "c", "c", "c", "c", "h", "f"]
    image = rendered(data)
    inside = sum(image.getpixel((x, y)) == (255, 0, 0) for x in range(image.width) for y in range(image.height))
    assert inside / 100 == pytest.approx(3.14159 * 20**2, rel=0.005)


def test_a_clip_bounds_the_ink_in_inner_coordinates() -> None:
    def draw(canvas: PdfCanvas) -> None:
        with canvas.placed(Transform.move(50, 40), clip=Path.rectangle(Rect(0, 0, 10, 10))):
            canvas.fill(Path.rectangle(Rect(-30, -30, 60, 60)), BLACK)
        canvas.fill(Path.rectangle(Rect(0, 0, 5, 5)), RED)

    image = rendered(made(draw))
    dark = [(x, y) for x in range(image.width) for y in range(image.height) if image.getpixel((x, y)) == (0, 0, 0)]
    assert [min(x for x, _ in dark), max(x for x, _ in dark)] == pytest.approx([500, 600], abs=1)
    assert [min(y for _, y in dark), max(y for _, y in dark)] == pytest.approx([300, 400], abs=1)
    assert image.getpixel((20, 780)) == (255, 0, 0)


# Text


@pytest.mark.parametrize("name", ["text", "text bold italic", "sans", "old style"])
@pytest.mark.parametrize(
    "text",
    [
        "office AVATAR fflow",
        "Τὸ φῶς ἔσβησε. Ωμέγα",
        "Ёлка и свет маяка",
        "a\u00a0b c‐d e-f g\u2011h",
        "(brackets) back\\slash",
        "q\u0301x e\u0301",
        "“Ships’ logs” — № 7 × 12 €",
    ],
)
def test_text_is_given_back_by_two_readers(name: str, text: str) -> None:
    typeface = bundled("text") if bundled(name).missing(text) else bundled(name)
    data = made(lambda canvas: canvas.text(set_line(typeface, 4, text), Point(5, 40), BLACK))
    assert page_of(data).extract_text() == text
    # PDFium takes a hyphen at will for a soft one; the words are what counts.
    assert said_by_pdfium(data).replace("\ufffe", "-") == text


def test_every_code_is_given_back_even_beyond_one_byte() -> None:
    """Over 600 characters, so that codes with bytes that would need an escape are passed over."""
    chars = [
        chr(code) for code in (*range(0x21, 0x7F), *range(0xA1, 0x180), *range(0x391, 0x3CE), *range(0x410, 0x530))
    ]
    chars = [char for char in chars if not TEXT.missing(char) and unicodedata.category(char)[0] not in "MC"]
    assert len(chars) > 550
    rows = ["".join(chars[start : start + 40]) for start in range(0, len(chars), 40)]

    def draw(canvas: PdfCanvas) -> None:
        for row, text in enumerate(rows):
            canvas.text(set_line_apart(text), Point(2, 75 - 4 * row), BLACK)

    data = made(draw)
    assert page_of(data).extract_text().split("\n") == rows
    assert said_by_pdfium(data).replace("\ufffe", "-").split("\r\n") == rows


def set_line_apart(text: str) -> TextLine:
    return TextLine(2, ((0.0, TEXT.shape(text, features=("-liga",))),))


def test_one_glyph_for_two_characters_is_read_as_the_one_that_was_meant() -> None:
    """The blackletter has one blank for space and no-break space."""
    space, hard = (bundled("blackletter").shape(text) for text in ("a b", "c\u00a0d"))
    assert space.glyphs[1].gid == hard.glyphs[1].gid
    line = TextLine(4, ((0.0, space), (4 * space.width, hard)))
    data = made(lambda canvas: canvas.text(line, Point(5, 40), BLACK))
    assert page_of(data).extract_text() == "a bc\u00a0d"


def test_a_follow_on_glyph_adds_nothing_to_the_text() -> None:
    first, second, third = TEXT.shape("xyz").glyphs
    run = Run(TEXT, "ijz", (first._replace(text="ij"), second._replace(text=""), third), TEXT.shape("xyz").width)
    data = made(lambda canvas: canvas.text(TextLine(4, ((0.0, run),)), Point(5, 40), BLACK))
    assert page_of(data).extract_text() == "ijz"
    assert said_by_pdfium(data) == "ijz"


@pytest.mark.parametrize("name", ["text", "sans", "typewriter"])
def test_glyphs_stand_where_they_were_shaped(name: str) -> None:
    """Origins of the letters as PDFium works them out from W and TJ."""
    typeface = bundled(name)
    run = typeface.shape("AVATAR Tofu WAVE")
    data = made(lambda canvas: canvas.text(TextLine(5, ((1.0, run),)), Point(5, 40), BLACK))
    x, wanted = 6.0, []
    for glyph in run.glyphs:
        if glyph.text != " ":
            wanted.append(x)
        x += glyph.advance * 5
    assert [x for _, x, _ in letters_on(data)] == pytest.approx(wanted, abs=0.004)


def letters_on(data: bytes) -> list[tuple[str, float, float]]:
    """The visible letters of a page, each with the x of its origin and the y of its lowest ink, in mm."""
    page = pypdfium2.PdfDocument(data)[0].get_textpage()
    found = []
    for index in range(page.count_chars()):
        char = chr(pypdfium2.raw.FPDFText_GetUnicode(page, index))
        x, y = ctypes.c_double(), ctypes.c_double()
        pypdfium2.raw.FPDFText_GetCharOrigin(page, index, ctypes.byref(x), ctypes.byref(y))
        if not char.isspace():
            found.append((char, x.value / MM, page.get_charbox(index)[1] / MM))
    return found


def test_runs_of_a_line_stand_at_their_places_whatever_their_typefaces() -> None:
    sans, text = bundled("sans bold"), TEXT
    line = TextLine(
        4,
        ((0.0, text.shape("ab")), (20.0, sans.shape("cd")), (25.5, sans.shape("e")), (40.0, text.shape("f"))),
    )
    data = made(lambda canvas: canvas.text(line, Point(10, 40), BLACK))
    letters = {char: x for char, x, _ in letters_on(data)}
    assert [letters[char] for char in "acef"] == pytest.approx([10, 30, 35.5, 50], abs=0.004)


@pytest.mark.parametrize("apart", [0.12, -0.04, 0.0])
def test_tracked_letters_stand_apart_and_those_of_the_next_line_do_not(apart: float) -> None:
    """Every glyph is followed by its tracking, spaces too; a line of words and the same as loose runs agree."""
    words, space = tuple(TEXT.shape(word) for word in ("fog", "VAT")), TEXT.shape(" ")
    line = WordLine(5, words, space, 0.7, apart)

    def draw(canvas: PdfCanvas) -> None:
        canvas.text(line, Point(5, 60), BLACK)
        canvas.text(TextLine(5, line.runs, apart), Point(5, 40), BLACK)
        canvas.text(TextLine(5, ((0.0, words[0]),)), Point(5, 20), BLACK)

    x, wanted = 5.0, []
    for run, gap in ((words[0], 0.0), (space, 0.7), (words[1], 0.0)):
        for glyph in run.glyphs:
            wanted += [x] if glyph.text.strip() else []
            x += glyph.advance * 5 + apart + gap
    places = [x for _, x, _ in letters_on(made(draw))]
    assert places[:6] == pytest.approx(wanted, abs=0.004)
    assert places[6:12] == pytest.approx(wanted, abs=0.004)
    advances = [glyph.advance * 5 for glyph in words[0].glyphs]
    assert places[12:] == pytest.approx([5, 5 + advances[0], 5 + sum(advances[:2])], abs=0.004)
    assert line.width == pytest.approx(x - apart - 5)
    assert TextLine(5, line.runs, apart).width == pytest.approx(x - apart - 5)


def test_letters_of_a_repeated_drawing_are_not_tracked_as_the_page_is() -> None:
    class Plate:
        def draw(self, canvas: Canvas) -> None:
            canvas.text(TextLine(5, ((0.0, TEXT.shape("fog")),)), Point(0, 0), BLACK)

    def draw(canvas: PdfCanvas) -> None:
        canvas.text(TextLine(5, ((0.0, TEXT.shape("a b")),), 0.4), Point(5, 60), BLACK)
        canvas.repeat(Plate(), Rect(0, -5, 30, 30), [Point(5, 20)])

    (_, start, _), (_, second, _) = [letter for letter in letters_on(made(draw)) if letter[0] in "fo"]
    assert second - start == pytest.approx(TEXT.shape("fog").glyphs[0].advance * 5, abs=0.004)


def test_shifted_glyphs_are_shifted() -> None:
    """A mark moved by (dx, dy) must not move what follows it."""
    plain = TEXT.shape("HHH")
    first, second, third = plain.glyphs
    run = Run(TEXT, "HHH", (first, second._replace(dx=0.2, dy=0.5), third), plain.width)
    line = TextLine(10, ((0.0, run), (30.0, TEXT.shape("H"))))
    data = made(lambda canvas: canvas.text(line, Point(10, 40), BLACK))
    advance = first.advance * 10
    letters = letters_on(data)
    assert [x for _, x, _ in letters] == pytest.approx([10, 10 + advance + 2, 10 + 2 * advance, 40], abs=0.004)
    assert [bottom for *_, bottom in letters] == pytest.approx([40, 45, 40, 40], abs=0.01)


def test_a_line_that_ends_raised_does_not_raise_the_next() -> None:
    glyph = TEXT.shape("H").glyphs[0]
    raised = TextLine(10, ((0.0, Run(TEXT, "H", (glyph._replace(dy=0.5),), glyph.advance)),))

    def draw(canvas: PdfCanvas) -> None:
        canvas.text(raised, Point(10, 40), BLACK)
        canvas.text(set_line(TEXT, 10, "H"), Point(50, 40), BLACK)

    assert [bottom for *_, bottom in letters_on(made(draw))] == pytest.approx([45, 40], abs=0.01)


def test_text_is_one_object_a_line_and_says_its_font_once() -> None:
    def draw(canvas: PdfCanvas) -> None:
        for row in range(5):
            canvas.text(set_line(TEXT, 4, "lamp"), Point(10, 10 + 5 * row), BLACK)
        canvas.text(TextLine(4, ()), Point(0, 0), BLACK)

    names = [name for name, _ in read_back(made(draw)).operators]
    assert [names.count(name) for name in ("BT", "TJ", "ET", "Tf", "g")] == [5, 5, 5, 1, 1]


@pytest.mark.parametrize("gap", [0.0, 0.37, -0.2])
def test_a_line_of_words_stands_where_the_same_runs_do(gap: float) -> None:
    """Letters on the paper, as PDFium finds them, are those of a line placed run by run."""
    words = tuple(TEXT.shape(word) for word in ("office", "AVATAR", "fl(o)w\\", "e\u0301x"))
    line = WordLine(4, words, TEXT.shape(" "), gap)
    apart = TextLine(4, line.runs)
    assert line.width == pytest.approx(apart.width)
    assert line.text == apart.text == "office AVATAR fl(o)w\\ e\u0301x"
    found = letters_on(made(lambda canvas: canvas.text(line, Point(5, 40), BLACK)))
    wanted = letters_on(made(lambda canvas: canvas.text(apart, Point(5, 40), BLACK)))
    assert [letter for letter, *_ in found] == [letter for letter, *_ in wanted]
    for (_, *place), (_, *other) in zip(found, wanted, strict=True):
        assert place == pytest.approx(other, abs=0.005)


def test_a_line_of_words_with_raised_glyphs_keeps_them_raised() -> None:
    glyph = TEXT.shape("H").glyphs[0]
    raised = Run(TEXT, "H", (glyph._replace(dy=0.5),), glyph.advance)
    line = WordLine(10, (TEXT.shape("H"), raised), TEXT.shape(" "), 0.0)
    found = letters_on(made(lambda canvas: canvas.text(line, Point(10, 40), BLACK)))
    assert [bottom for letter, _, bottom in found if letter == "H"] == pytest.approx([40, 45], abs=0.01)


# Fonts


def fonts_of(data: bytes) -> Iterator[dict[str, Any]]:
    for name in page_of(data)["/Resources"]["/Font"].values():
        yield name.get_object()


def test_fonts_are_embedded_once_and_small() -> None:
    def draw(canvas: PdfCanvas) -> None:
        canvas.text(set_line(TEXT, 4, "office"), Point(10, 10), BLACK)
        canvas.text(set_line(TEXT, 5, "AVATAR"), Point(10, 20), BLACK)

    file = io.BytesIO()
    with PdfFile(file, title="Trial") as pdf:
        for _ in range(3):
            with pdf.page(PAGE) as canvas:
                draw(canvas)
    data = file.getvalue()
    assert len(data) < 8000 < len(TEXT.data)
    (font,) = fonts_of(data)
    (descendant,) = font["/DescendantFonts"]
    descriptor = descendant.get_object()["/FontDescriptor"]
    assert data.count(b"/FontFile2") == 1
    assert descriptor["/FontName"] == font["/BaseFont"]
    assert font["/BaseFont"][7:] == "+NotoSerif-Regular"
    program = TTFont(io.BytesIO(descriptor["/FontFile2"].get_data()))
    assert program["maxp"].numGlyphs == 1 + len(["o", "ffi", "c", "e", "A", "V", "T", "R"])
    assert descriptor["/FontFile2"]["/Length1"] == len(descriptor["/FontFile2"].get_data())


def test_embedded_outlines_and_widths_are_the_typefaces_own() -> None:
    data = made(lambda canvas: canvas.text(set_line(bundled("sans"), 4, "ég"), Point(10, 10), BLACK))
    (font,) = fonts_of(data)
    descendant = font["/DescendantFonts"][0].get_object()
    program = TTFont(io.BytesIO(descendant["/FontDescriptor"]["/FontFile2"].get_data()))
    source = TTFont(bundled("sans").path)
    for code, char in ((1, "é"), (2, "g")):
        name = source.getBestCmap()[ord(char)]
        wanted = source["glyf"][name].getCoordinates(source["glyf"])[0]
        assert program["glyf"][f"glyph{code:05d}"].getCoordinates(program["glyf"])[0] == wanted
        assert program["hmtx"].metrics[f"glyph{code:05d}"] == source["hmtx"].metrics[name]
        assert descendant["/W"][1][code] == round(source["hmtx"].metrics[name][0] / 2048 * 1000)
    assert program["head"].modified == source["head"].modified


def test_measures_in_the_descriptor() -> None:
    data = made(lambda canvas: canvas.text(set_line(bundled("text italic"), 4, "a"), Point(10, 10), BLACK))
    (font,) = fonts_of(data)
    descriptor = font["/DescendantFonts"][0].get_object()["/FontDescriptor"]
    keys = ("/Ascent", "/Descent", "/CapHeight", "/XHeight", "/ItalicAngle", "/Flags")
    assert [descriptor[key] for key in keys] == [1069, -293, 714, 536, -12, 68]


def test_a_font_with_cff_outlines_is_embedded_as_cff(tmp_path: FilePath) -> None:
    typeface = load_typeface(cff_font(tmp_path / "own.otf", "aHx"))
    data = made(lambda canvas: canvas.text(set_line(typeface, 20, "xaH"), Point(10, 10), BLACK))
    (font,) = fonts_of(data)
    descendant = font["/DescendantFonts"][0].get_object()
    assert descendant["/Subtype"] == "/CIDFontType0"
    stream = descendant["/FontDescriptor"]["/FontFile3"]
    assert stream["/Subtype"] == "/CIDFontType0C"
    cff = CFFFontSet()
    cff.decompile(io.BytesIO(stream.get_data()), None)
    assert len(cff[0].CharStrings) == 4
    assert page_of(data).extract_text() == said_by_pdfium(data) == "xaH"
    truetype = made(lambda canvas: canvas.text(set_line(TEXT, 20, "xaH"), Point(10, 10), BLACK))
    assert darkness(data) == pytest.approx(darkness(truetype), rel=0.01)
    with pikepdf.open(io.BytesIO(data)) as pdf:
        assert pdf.check_pdf_syntax() == []


def darkness(data: bytes) -> float:
    image = rendered(data).convert("L")
    return sum(255 - value for value in image.tobytes()) / 255


def test_a_font_with_damaged_outlines_is_refused_before_anything_is_written(tmp_path: FilePath) -> None:
    source = TTFont(TEXT.path)
    start = source.reader.tables["glyf"].offset + source["loca"].locations[source.getGlyphID("a")]
    broken = TEXT.data[:start] + b"\x7f\xff" + b"\xff" * 40 + TEXT.data[start + 42 :]
    (tmp_path / "own.ttf").write_bytes(broken)
    with pytest.raises(ShelfFileError) as refusal:
        load_typeface(tmp_path / "own.ttf")
    assert str(refusal.value) == (
        "own.ttf is damaged, or asks for more time or memory than a font may; "
        "fetch the font file again from where it came"
    )


# Pictures


def picture_of(path: FilePath, image: Image.Image) -> Picture:
    image.save(path)
    return load_picture(path)


def a_photo(width: int, height: int) -> Image.Image:
    """A soft slope with the grain of film, the same each time."""
    grain = random.Random(5)
    bands = []
    for _ in "RGB":
        band = Image.new("L", (width, height))
        band.putdata([x * 200 // width + grain.randrange(40) for _ in range(height) for x in range(width)])
        bands.append(band)
    return Image.merge("RGB", bands)


def images_of(data: bytes) -> list[Any]:
    return [entry.get_object() for entry in page_of(data)["/Resources"]["/XObject"].values()]


def test_a_picture_fills_its_rectangle(tmp_path: FilePath) -> None:
    image = Image.new("RGB", (40, 20), (0, 0, 255))
    image.paste((255, 0, 0), (0, 0, 20, 10))
    picture = picture_of(tmp_path / "flag.png", image)
    into = Rect(10, 20, 40, 30)
    data = made(lambda canvas: canvas.picture(picture, into))
    assert read_back(data).pictures == [pytest.approx((10, 20, 50, 50), abs=0.0005)]
    page = rendered(data)
    corners = {
        place: page.getpixel((x * 10, 800 - y * 10))
        for place, x, y in (("top left", 12, 48), ("top right", 48, 48), ("bottom", 12, 22))
    }
    assert corners == {"top left": (255, 0, 0), "top right": (0, 0, 255), "bottom": (0, 0, 255)}
    assert page.getpixel((90, 500)) == (255, 255, 255)
    assert page.getpixel((101, 500))[2] == 255 != page.getpixel((101, 500))[1]


def test_a_picture_is_embedded_once_for_its_largest_use(tmp_path: FilePath) -> None:
    picture = picture_of(tmp_path / "photo.png", a_photo(400, 400))

    def draw(canvas: PdfCanvas) -> None:
        for side in (2.54, 5.08, 2.54):
            canvas.picture(picture, Rect(0, 0, side, side))
        with canvas.placed(Transform.turn(90).then(Transform.stretch(2, 1))):
            canvas.picture(picture, Rect(0, 0, 6.35, 3.81))
        canvas.picture(picture, Rect(0, 0, 1, 1))

    (image,) = images_of(made(draw))
    assert (image["/Width"], image["/Height"]) == (150, 180)
    (coarse,) = images_of(made(draw, most_dpi=300))
    assert (coarse["/Width"], coarse["/Height"]) == (75, 90)


def test_pixels_are_never_made_up(tmp_path: FilePath) -> None:
    picture = picture_of(tmp_path / "photo.png", a_photo(30, 20))
    (image,) = images_of(made(lambda canvas: canvas.picture(picture, Rect(0, 0, 80, 60))))
    assert (image["/Width"], image["/Height"]) == (30, 20)


def test_flat_art_stays_exact_and_photographs_become_jpeg(tmp_path: FilePath) -> None:
    art = Image.new("RGB", (60, 60), (250, 240, 200))
    art.paste((10, 90, 40), (7, 9, 31, 44))
    drawn = picture_of(tmp_path / "art.png", art)
    (image,) = images_of(made(lambda canvas: canvas.picture(drawn, Rect(0, 0, 40, 40))))
    assert image["/Filter"] == "/FlateDecode"
    assert image["/ColorSpace"] == "/DeviceRGB"
    assert pikepdf_image(made(lambda canvas: canvas.picture(drawn, Rect(0, 0, 40, 40)))).tobytes() == art.tobytes()

    photo = picture_of(tmp_path / "photo.png", a_photo(300, 300))
    data = made(lambda canvas: canvas.picture(photo, Rect(0, 0, 80, 80)))
    (image,) = images_of(data)
    assert image["/Filter"] == "/DCTDecode"
    decoded = Image.open(io.BytesIO(image._data))
    assert decoded.layer[0][1:3] == decoded.layer[1][1:3] == (1, 1)
    assert data == made(lambda canvas: canvas.picture(photo, Rect(0, 0, 80, 80)))


def test_it_is_the_number_of_colours_that_tells_art_from_photographs(tmp_path: FilePath) -> None:
    """Even where a JPEG would be smaller."""
    spotted = a_photo(200, 200).quantize(200).convert("RGB")
    drawn = picture_of(tmp_path / "spots.png", spotted)
    data = made(lambda canvas: canvas.picture(drawn, Rect(0, 0, 80, 80)))
    assert pikepdf_image(data).tobytes() == spotted.tobytes()
    grey = picture_of(tmp_path / "grey.png", a_photo(200, 200).convert("L"))
    (image,) = images_of(made(lambda canvas: canvas.picture(grey, Rect(0, 0, 80, 80))))
    assert image["/Filter"] == "/DCTDecode"


def pikepdf_image(data: bytes) -> Image.Image:
    with pikepdf.open(io.BytesIO(data)) as pdf:
        (image,) = pdf.pages[0].Resources.XObject.values()
        return pikepdf.PdfImage(image).as_pil_image().convert("RGB")


def test_grey_stays_grey(tmp_path: FilePath) -> None:
    grey = picture_of(tmp_path / "grey.png", a_photo(60, 60).convert("L"))
    (image,) = images_of(made(lambda canvas: canvas.picture(grey, Rect(0, 0, 40, 40))))
    assert image["/ColorSpace"] == "/DeviceGray"


def test_a_page_names_only_what_it_shows(tmp_path: FilePath) -> None:
    pictures = [picture_of(tmp_path / f"{side}.png", a_photo(side, side)) for side in (20, 30)]
    file = io.BytesIO()
    with PdfFile(file, title="Trial") as pdf:
        for picture in pictures:
            with pdf.page(PAGE) as canvas:
                canvas.picture(picture, Rect(0, 0, 20, 20))
    reader = pypdf.PdfReader(file)
    assert [list(page["/Resources"]["/XObject"]) for page in reader.pages] == [["/P1"], ["/P2"]]
    assert [list(page["/Resources"]["/Font"]) for page in reader.pages] == [[], []]
