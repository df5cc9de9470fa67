"""Pages of PDF files: found, turned and cropped as viewers do, kept as vectors, and refused in words for makers."""

from __future__ import annotations

import io
import zlib
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np
import pikepdf
import pypdfium2 as pdfium
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pypdf import PdfReader, PdfWriter
from pypdf.generic import RectangleObject
from reportlab.pdfgen.canvas import Canvas

from bookmaker.ground import imported
from bookmaker.ground.drawing import BLACK, Colour, Pen
from bookmaker.ground.geometry import Path as Outline
from bookmaker.ground.geometry import Point, Rect, Size, Transform
from bookmaker.ground.imported import ImportedPage, load_pages
from bookmaker.ground.problems import Severity, ShelfFileError
from bookmaker.things.book.pages.pictured.pdf_pages import LoadedPdf, PdfInside, PdfSource
from bookmaker.typesetting.page import PageFrame
from bookmaker.writers.pdf import PdfFile
from tests.kit.recording import record

MM = 25.4 / 72
AGAIN = "save or copy it again from where it came"


def drawn(path: Path, pages: int = 3, size: tuple[float, float] = (300, 420)) -> Path:
    """A PDF with a picture of its own on each page: strokes in the state a page begins with, fills, a text."""
    canvas = Canvas(str(path), pagesize=size, invariant=1)
    for number in range(1, pages + 1):
        canvas.setFont("Helvetica", 24)
        canvas.drawString(40, 370, f"Soundings {number}")
        canvas.rect(20, 20, 200, 300)
        canvas.setFillColorRGB(0.2, 0.5, 0.7)
        canvas.circle(80 + 30 * number, 120, 50, stroke=0, fill=1)
        canvas.showPage()
    canvas.save()
    return path


def changed(path: Path, change: Callable[[PdfWriter], object]) -> Path:
    writer = PdfWriter(clone_from=path)
    change(writer)
    writer.write(path)
    return path


def placed(*pages: tuple[ImportedPage, Rect], size: Size) -> bytes:
    """A PDF page of ours with these pages on it, after strokes that must not show in them."""
    file = io.BytesIO()
    with PdfFile(file, title="t") as pdf, pdf.page(size) as canvas:
        canvas.stroke(Outline.line(Point(0, 0), Point(0.1, 0)), Pen(3, Colour(1, 0, 0), (1.0, 1.0)))
        for page, into in pages:
            canvas.imported(page, into)
    return file.getvalue()


def pixels(data: bytes | Path, page: int = 0, scale: float = 1.0) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
    picture = pdfium.PdfDocument(data)[page].render(scale=scale).to_numpy()
    return np.asarray(picture[..., :3], dtype=float)


def refusal(path: Path, wanted: imported.PageRange | None = None) -> str:
    with pytest.raises(ShelfFileError) as caught:
        load_pages(path, wanted)
    [problem] = caught.value.problems
    assert problem.field == (("range",) if wanted else ("file",))
    return str(problem)


# ---- what is shown


@pytest.mark.parametrize("turn", [0, 90, 180, 270, -90])
@pytest.mark.parametrize("crop", [None, (30, 60, 230, 300), (-50, 100, 200, 999)])
def test_a_page_is_shown_as_viewers_show_it(
    tmp_path: Path, turn: int, crop: tuple[float, float, float, float] | None
) -> None:
    """PDFium draws the file itself, and our page of the same size with the page on it: the same pixels."""

    def change(writer: PdfWriter) -> None:
        if crop:
            writer.pages[1].cropbox = RectangleObject(crop)
        writer.pages[1].rotate(turn)

    path = changed(drawn(tmp_path / "a.pdf"), change)
    [page], notes = load_pages(path, ((2, 2),))
    assert notes == ()
    ours = placed((page, Rect(0, 0, *page.size)), size=page.size)
    there, here = pixels(path, 1, 2), pixels(ours, 0, 2)
    assert there.shape == here.shape
    assert there.std() > 20
    # all but some pixels along edges are the same
    assert np.mean(np.abs(there - here).max(axis=-1) > 40) < 0.004


@given(
    box=st.tuples(st.floats(-500, 500), st.floats(-500, 500), st.floats(1, 900), st.floats(1, 900)),
    turns=st.integers(0, 3),
    into=st.tuples(st.floats(-50, 50), st.floats(-50, 50), st.floats(1, 90), st.floats(1, 90)),
)
def test_the_box_fills_the_place_and_its_corner_goes_round_clockwise(
    box: tuple[float, float, float, float], turns: int, into: tuple[float, float, float, float]
) -> None:
    page, place = ImportedPage(Path("x.pdf"), "", 0, Rect(*box), turns), Rect(*into)
    onto = page.onto(place)
    assert onto.apply_to(page.box) == pytest.approx(place, abs=1e-6)
    # the lower left corner of the page goes to the upper left, upper right, lower right one
    corner = [
        Point(place.x, place.y),
        Point(place.x, place.top),
        Point(place.right, place.top),
        Point(place.right, place.y),
    ][turns]
    assert onto.apply(Point(page.box.x, page.box.y)) == pytest.approx(corner, abs=1e-6)
    assert page.size == ((box[3], box[2]) if turns % 2 else (box[2], box[3]))
    a, b, c, d, *_ = onto
    assert a * d - b * c > 0  # turned, never mirrored


def test_boxes_are_inherited_cut_to_the_media_box_and_true_to_size(tmp_path: Path) -> None:
    path = drawn(tmp_path / "a.pdf", pages=1)
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        tree = pdf.Root.Pages
        # corners given the other way round, on the node above the page
        tree.MediaBox = pikepdf.Array([300, 420, 0, 0])
        tree.CropBox = pikepdf.Array([100, 500, 400, 10])
        tree.Rotate = 90
        del pdf.pages[0].obj["/MediaBox"]
        for key in ("/CropBox", "/Rotate"):
            if key in pdf.pages[0].obj:
                del pdf.pages[0].obj[key]
        pdf.save(path)
    [page], _ = load_pages(path)
    assert page.box == pytest.approx((100 * MM, 10 * MM, 200 * MM, 410 * MM))
    assert (page.quarter_turns, page.size) == (1, pytest.approx((410 * MM, 200 * MM)))


def test_a_page_stays_vectors_and_text_and_is_kept_once_however_often_it_is_placed(tmp_path: Path) -> None:
    pages, _ = load_pages(drawn(tmp_path / "a.pdf"))
    places = [(page, Rect(20 * number, 0, 15, 21)) for number, page in enumerate((*pages, pages[0], pages[0]))]
    reader = PdfReader(io.BytesIO(placed(*places, size=Size(120, 21))))
    objects = reader.pages[0]["/Resources"]["/XObject"]  # type: ignore[index]
    assert {objects[name]["/Subtype"] for name in objects} == {"/Form"}
    assert len(objects) == 3
    assert reader.pages[0].extract_text().split("\n").count("Soundings 1") == 3
    text = pdfium.PdfDocument(placed(*places, size=Size(120, 21)))[0].get_textpage().get_text_bounded()
    assert [text.count(f"Soundings {number}") for number in (1, 2, 3)] == [3, 1, 1]
    fonts = [found for found in map(reader.get_object, range(1, len(reader.xref[0]) + 1)) if is_font(found)]
    assert len(fonts) == 1


def is_font(found: object) -> bool:
    return isinstance(found, dict) and found.get("/Type") == "/Font"


def test_the_file_written_holds_together_for_another_reader(tmp_path: Path) -> None:
    pages, _ = load_pages(drawn(tmp_path / "a.pdf"))
    other, _ = load_pages(drawn(tmp_path / "b.pdf", pages=2, size=(200, 200)))
    places = [(page, Rect(20 * number, 0, 15, 21)) for number, page in enumerate((*pages, *other))]
    with pikepdf.open(io.BytesIO(placed(*places, size=Size(120, 21)))) as pdf:
        assert pdf.check_pdf_syntax() == []
        assert len(pdf.pages[0].Resources.XObject) == 5


def test_odd_names_strings_numbers_and_circles_of_references_come_through(tmp_path: Path) -> None:
    path = drawn(tmp_path / "a.pdf", pages=1)
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        lookup = pikepdf.String(bytes(range(256)) * 3)
        space = pikepdf.Array([pikepdf.Name.Indexed, pikepdf.Name.DeviceRGB, 255, lookup])
        resources = pdf.pages[0].obj.Resources
        circle = pdf.make_indirect(pikepdf.Dictionary(CA=0.5, LW=-0.00001, BG=None, AIS=True))
        circle.SMask = circle
        resources.ColorSpace = pikepdf.Dictionary({"/A b#c(d)": space, "/Loop": circle})
        pdf.save(path)
    [page], _ = load_pages(path)
    with pikepdf.open(io.BytesIO(placed((page, Rect(0, 0, 15, 21)), size=Size(15, 21)))) as made:
        [form] = made.pages[0].Resources.XObject.values()
        spaces = form.Resources.ColorSpace
        assert bytes(spaces["/A b#c(d)"][3]) == bytes(range(256)) * 3
        loop = spaces.Loop
        assert (float(loop.CA), float(loop.LW), bool(loop.AIS)) == (0.5, -0.00001, True)
        assert loop.SMask.objgen == loop.objgen


def test_the_same_page_gives_the_same_bytes_wherever_it_lies(tmp_path: Path) -> None:
    made = []
    for folder in ("one", "other"):
        (tmp_path / folder).mkdir()
        pages, _ = load_pages(drawn(tmp_path / folder / "a.pdf"))
        made.append(placed(*((page, Rect(0, 0, 15, 21)) for page in pages), size=Size(15, 21)))
    assert made[0] == made[1]


def test_what_only_describes_a_page_stays_behind(tmp_path: Path) -> None:
    path = drawn(tmp_path / "a.pdf", pages=1)
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        pdf.pages[0].obj.Resources.Metadata = pdf.make_stream(b"SECRET PATH")
        pdf.save(path)
    [page], _ = load_pages(path)
    with pikepdf.open(io.BytesIO(placed((page, Rect(0, 0, 15, 21)), size=Size(15, 21)))) as made:
        streams = [found for found in made.objects if isinstance(found, pikepdf.Stream)]
        assert [stream for stream in streams if b"SECRET" in stream.read_bytes()] == []


ACTING = ("AA", "A", "JS", "JavaScript", "Ref", "OPI", "AF", "EF", "F", "P", "Parent", "Next", "URI", "Annots", "Kids")
"""Keys under which a file tells a reader to do something, or leads to other files or to the rest of this one."""


def with_actions(path: Path) -> Path:
    """A page whose resources, wherever one looks, lead to what is to be done, and to the whole file."""
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        page = pdf.pages[0].obj
        does = pdf.make_indirect(
            pikepdf.Dictionary(S=pikepdf.Name.JavaScript, JS=pikepdf.String("SECRET"), All=pdf.Root)
        )
        pdf.Root.OpenAction = does
        state = pikepdf.Dictionary(CA=1)
        form = pdf.make_stream(b"0 0 1 rg 10 10 40 40 re f", Type=pikepdf.Name.XObject, Subtype=pikepdf.Name.Form)
        form.BBox = pikepdf.Array([0, 0, 300, 420])
        font = page.Resources.Font["/F1"]
        for carrier in (state, form, font):
            for key in ACTING:
                carrier[f"/{key}"] = does
        form["/Ref"] = pikepdf.Dictionary(F=pikepdf.String("SECRET.pdf"), Page=0)
        form["/Resources"] = pikepdf.Dictionary(AA=does, Font=pikepdf.Dictionary(F1=font))
        names = pikepdf.Dictionary({f"/{key}": font for key in ACTING} | {"/F1": font})
        page.Resources = pikepdf.Dictionary(Font=names, ExtGState=pikepdf.Dictionary(JS=state), JS=does)
        page.Resources.XObject = pdf.make_indirect(pikepdf.Dictionary(AA=form))
        words = "".join(f"BT /{key} 12 Tf 20 {20 + 20 * at} Td ({key} stays) Tj ET\n" for at, key in enumerate(ACTING))
        page.Contents = pdf.make_stream(b"/JS gs /AA Do " + words.encode())
        pdf.save(path)
    return path


def test_what_a_file_tells_a_reader_to_do_stays_behind_and_all_it_shows_comes(tmp_path: Path) -> None:
    path = with_actions(drawn(tmp_path / "a.pdf", pages=1))
    [page], _ = load_pages(path)
    ours = placed((page, Rect(0, 0, *page.size)), size=page.size)
    assert np.mean(np.abs(pixels(path, 0, 2) - pixels(ours, 0, 2)).max(axis=-1) > 40) < 0.004
    assert "JavaScript stays" in pdfium.PdfDocument(ours)[0].get_textpage().get_text_range()
    with pikepdf.open(io.BytesIO(ours)) as made:
        plain = (found.stream_dict if isinstance(found, pikepdf.Stream) else found for found in made.objects)
        everything = [found.unparse(resolved=True) for found in plain if isinstance(found, pikepdf.Object)]
        assert len(everything) > 8
        assert [found for found in everything if b"SECRET" in found or b"OpenAction" in found] == []
        assert sum(b"/Catalog" in found for found in everything) == 1


def test_names_of_glyphs_and_colorants_are_the_file_s_own(tmp_path: Path) -> None:
    """A drawn font may call a glyph what elsewhere is an action; so may a space of colours its inks."""
    path = drawn(tmp_path / "a.pdf", pages=1)
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        glyph = pdf.make_stream(b"1000 0 0 0 1000 1000 d1 0 0 1000 1000 re f")
        names = pikepdf.Array([65, pikepdf.Name.JS])
        font = pikepdf.Dictionary(
            Type=pikepdf.Name.Font,
            Subtype=pikepdf.Name.Type3,
            FontBBox=[0, 0, 1000, 1000],
            FontMatrix=pikepdf.Array([0.001, 0, 0, 0.001, 0, 0]),
            CharProcs=pdf.make_indirect(pikepdf.Dictionary(JS=glyph)),
            Encoding=pikepdf.Dictionary(Type=pikepdf.Name.Encoding, Differences=names),
            FirstChar=65,
            LastChar=65,
            Widths=[1000],
        )
        page = pdf.pages[0].obj
        page.Resources = pikepdf.Dictionary(Font=pikepdf.Dictionary(A=font))
        page.Contents = pdf.make_stream(b"BT /A 100 Tf 50 50 Td (A) Tj ET")
        pdf.save(path)
    [page_of_it], _ = load_pages(path)
    ours = pixels(placed((page_of_it, Rect(0, 0, *page_of_it.size)), size=page_of_it.size), 0, 2)
    assert np.mean(np.abs(pixels(path, 0, 2) - ours).max(axis=-1) > 40) < 0.004
    assert (ours < 100).any(axis=-1).mean() > 0.05


def test_a_file_that_changed_in_between_is_refused(tmp_path: Path) -> None:
    pages, _ = load_pages(drawn(tmp_path / "a.pdf"))
    drawn(tmp_path / "a.pdf", pages=1)
    with pytest.raises(ShelfFileError) as caught:
        placed((pages[2], Rect(0, 0, 15, 21)), size=Size(15, 21))
    assert str(caught.value) == "a.pdf has changed since it was first read; run the command again"


def test_notes_and_layers_are_told(tmp_path: Path) -> None:
    path = drawn(tmp_path / "a.pdf", pages=1)
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        note = pikepdf.Dictionary(Type=pikepdf.Name.Annot, Subtype=pikepdf.Name.Text, Rect=[0, 0, 9, 9])
        pdf.pages[0].obj.Annots = pikepdf.Array([note])
        pdf.Root.OCProperties = pikepdf.Dictionary(OCGs=pikepdf.Array(), D=pikepdf.Dictionary())
        pdf.save(path)
    _, notes = load_pages(path)
    assert notes == (
        "has notes or form fields on its pages: they are left out",
        "has layers: all of them are printed",
    )


# ---- files that cannot be used


def test_a_file_that_is_none_or_no_pdf_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "a.pdf"
    assert refusal(path) == "there is no PDF a.pdf; write its path as seen from the folder of the shelf file"
    path.write_bytes(b"")
    assert refusal(path) == f"a.pdf is empty (0 bytes); {AGAIN}"
    path.write_bytes(b"Dear diary" * 300)
    assert refusal(path) == "a.pdf is not a PDF; write the name of a PDF file"
    assert refusal(tmp_path) == f"{tmp_path.name} is a folder, not a PDF; write the name of one PDF file"
    drawn(path)
    monkeypatch.setattr(imported, "PDF", replace(imported.PDF, largest=100))
    assert refusal(path).endswith("save the pages you need apart")


def test_a_file_that_is_cut_short_is_refused(tmp_path: Path) -> None:
    path = drawn(tmp_path / "a.pdf", pages=30)
    data = path.read_bytes()
    for length in (len(data) // 3, len(data) - 400):
        path.write_bytes(data[:length] + b" " * 3000)
        assert refusal(path) == f"a.pdf is cut short: its end is missing; {AGAIN}"


@pytest.mark.parametrize("password", ["", "gull"])
def test_a_protected_file_is_refused(tmp_path: Path, password: str) -> None:
    path = changed(drawn(tmp_path / "a.pdf"), lambda writer: writer.encrypt(password, "own", algorithm="RC4-128"))
    assert refusal(path) == "a.pdf is protected; open it, and print or save it as a PDF without protection"


def test_a_file_without_pages_is_refused(tmp_path: Path) -> None:
    pdf = pikepdf.new()
    pdf.save(tmp_path / "a.pdf")
    assert refusal(tmp_path / "a.pdf") == "a.pdf has no pages; write the name of a PDF with pages in it"


def test_pages_that_lead_round_in_a_circle_are_refused(tmp_path: Path) -> None:
    path = drawn(tmp_path / "a.pdf")
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        between = pdf.make_indirect(pikepdf.Dictionary(Type=pikepdf.Name.Pages, Count=1, Kids=[pdf.Root.Pages]))
        pdf.Root.Pages.Kids.append(between)
        pdf.save(path)
    assert refusal(path) == f"a.pdf is damaged: its pages lead round in a circle; {AGAIN}"


def with_form(path: Path, *, itself: bool) -> Path:
    """A page that draws a form which knows of itself, and draws itself or not."""
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        form = pdf.make_stream(b"q 1 0 0 1 5 5 cm /Fm0 Do Q" if itself else b"0 0 9 9 re f")
        form.Type, form.Subtype, form.BBox = pikepdf.Name.XObject, pikepdf.Name.Form, pikepdf.Array([0, 0, 99, 99])
        form.Resources = pikepdf.Dictionary(XObject=pikepdf.Dictionary(Fm0=form))
        pdf.pages[0].obj.Resources.XObject = pikepdf.Dictionary(Fm0=form)
        pdf.pages[0].contents_add(b"/Fm0 Do")
        pdf.save(path)
    return path


def test_a_drawing_that_contains_itself_is_refused_but_not_one_that_merely_could(tmp_path: Path) -> None:
    path = with_form(drawn(tmp_path / "a.pdf"), itself=True)
    assert refusal(path) == f"a drawing in a.pdf contains itself; {AGAIN}"
    path = with_form(drawn(tmp_path / "b.pdf"), itself=False)
    pages, _ = load_pages(path)
    assert len(pages) == 3
    with pikepdf.open(io.BytesIO(placed((pages[0], Rect(0, 0, 15, 21)), size=Size(15, 21)))) as made:
        assert made.check_pdf_syntax() == []


def test_damaged_streams_and_objects_are_refused(tmp_path: Path) -> None:
    path = drawn(tmp_path / "a.pdf", pages=1)
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        broken = pdf.make_stream(b"not deflated at all")
        pdf.pages[0].obj.Contents = broken
        pdf.save(path, compress_streams=False)
    data = path.read_bytes().replace(b"/Length 19", b"/Filter/FlateDecode/Length 19")
    path.write_bytes(data)
    assert refusal(path) == f"page 1 of a.pdf is damaged; {AGAIN}"
    path.write_bytes(b"%PDF-1.7\n1 0 obj\n<</Type/Catalog>>\nendobj\ntrailer<</Root 1 0 R>>\n%%EOF")
    assert refusal(path) == f"a.pdf is damaged; {AGAIN}"


def test_a_page_without_a_size_is_refused(tmp_path: Path) -> None:
    path = drawn(tmp_path / "a.pdf", pages=2)
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        pdf.pages[1].obj.MediaBox = pikepdf.Array([0, 0, 0, 420])
        pdf.save(path)
    assert refusal(path) == "page 2 of a.pdf has no size; save or print it to a PDF again"


def test_a_wrong_checksum_at_the_end_of_a_stream_does_no_harm(tmp_path: Path) -> None:
    path = drawn(tmp_path / "a.pdf", pages=1)
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        content = pdf.pages[0].Contents
        content.write(zlib.compress(content.read_bytes())[:-4] + b"\0\0\0\0", filter=pikepdf.Name.FlateDecode)
        pdf.save(path, compress_streams=False)
    [page], _ = load_pages(path)
    made = PdfReader(io.BytesIO(placed((page, Rect(0, 0, 15, 21)), size=Size(15, 21))))
    assert made.pages[0].extract_text().strip() == "Soundings 1"


@given(data=st.data())
def test_no_damage_gets_past_as_anything_but_a_refusal(
    data: st.DataObject, tmp_path_factory: pytest.TempPathFactory
) -> None:
    path = drawn(tmp_path_factory.mktemp("damage") / "a.pdf", pages=1)
    whole = bytearray(path.read_bytes())
    for _ in range(data.draw(st.integers(1, 8))):
        whole[data.draw(st.integers(9, len(whole) - 10))] = data.draw(st.integers(0, 255))
    path.write_bytes(bytes(whole))
    try:
        pages, _ = load_pages(path)
        placed(*((page, Rect(0, 0, 15, 21)) for page in pages), size=Size(15, 21))
    except ShelfFileError as refused:
        assert all(problem.remedy for problem in refused.problems)


def test_pages_that_are_not_there_are_refused(tmp_path: Path) -> None:
    path = drawn(tmp_path / "a.pdf")
    assert refusal(path, ((2, 5),)) == "a.pdf has 3 pages; there is no page 5; write a range up to 3"
    assert refusal(path, ((4, None),)) == "a.pdf has 3 pages; there is no page 4; write a range up to 3"
    one = drawn(tmp_path / "b.pdf", pages=1)
    assert refusal(one, ((2, 2),)) == "b.pdf has 1 page; there is no page 2; leave the range out"


def test_more_pages_than_a_book_can_have_are_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(imported, "MOST_PAGES", 2)
    path = drawn(tmp_path / "a.pdf")
    wanted = "are more than the 2 a book can have; write range: with the pages you need"
    assert refusal(path) == f"3 pages of a.pdf {wanted}"


# ---- in a book


@pytest.mark.parametrize(
    ("written", "indices"),
    [("2", [1]), ("1-3", [0, 1, 2]), ("3, 1-2", [2, 0, 1]), ("2 -", [1, 2]), ("2–3,2", [1, 2, 1])],
)
def test_a_range_names_pages_in_any_order(tmp_path: Path, written: str, indices: list[int]) -> None:
    drawn(tmp_path / "a.pdf")
    source = PdfInside(file="a.pdf", range=written).load(tmp_path).source
    assert [page.index for page in source.pages] == indices


@pytest.mark.parametrize(
    ("written", "message"),
    [
        ("all", "'all' is not a range of pages"),
        ("1-2-3", "'1-2-3' is not a range of pages"),
        ("", "'' is not a range of pages"),
        ("0-4", "'0-4' begins with page 0"),
        ("9-4", "'9-4' runs backwards"),
    ],
)
def test_a_range_that_is_none_is_refused(written: str, message: str) -> None:
    with pytest.raises(ValueError, match=message):
        PdfInside(file="a.pdf", range=written)


SOURCE = PdfSource("a.pdf", tuple(ImportedPage(Path("a.pdf"), "", n, Rect(0, 0, 100, 200)) for n in range(3)))


def test_pages_fit_the_page_or_its_type_area_centred() -> None:
    frame = PageFrame(15, 21, 6)
    for fill, area in (("page", frame.page()), ("type area", frame.type_area(2))):
        inside = LoadedPdf(PdfInside(file="a.pdf", fill=fill), SOURCE).compose(frame)
        [shown] = record(inside.pages[1]).pages
        assert shown.bounds.centre == pytest.approx(area.centre)
        assert shown.bounds.size == pytest.approx((area.height / 2, area.height))
    assert [(str(problem), problem.severity) for problem in inside.problems] == [
        ("a.pdf fills 3 of 6 pages; the others stay empty", Severity.NOTE)
    ]
    assert (
        LoadedPdf(PdfInside(file="a.pdf"), SOURCE).compose(PageFrame(15, 21, 4)).problems == ()
    )  # the last leaf has a back


def test_pages_that_find_no_room_are_an_error_and_what_is_left_out_is_said() -> None:
    source = PdfSource("a.pdf", SOURCE.pages, ("has layers: all of them are printed",))
    inside = LoadedPdf(PdfInside(file="a.pdf", numbers="yes"), source).compose(PageFrame(15, 21, 2, first=5))
    assert [(str(problem), problem.severity) for problem in inside.problems] == [
        ("1 of 3 pages of a.pdf do not fit in 2 pages; write pages: 4, or range: with fewer", Severity.ERROR),
        ("a.pdf has layers: all of them are printed", Severity.NOTE),
    ]
    assert [record(page).texts[0].text for page in inside.pages] == ["5", "6"]


def test_nothing_of_a_page_is_drawn_outside_its_crop_box(tmp_path: Path) -> None:
    def crop(writer: PdfWriter) -> None:
        writer.pages[0].cropbox = RectangleObject((60, 80, 160, 180))

    [page], _ = load_pages(changed(drawn(tmp_path / "a.pdf"), crop), ((1, 1),))
    shown = pixels(placed((page, Rect(10, 10, 10, 10)), size=Size(30, 30)), scale=4)
    upper = shown[: shown.shape[0] * 9 // 10]  # the stroke of the test itself lies at the foot
    inked = np.argwhere(upper.min(axis=-1) < 250) / (4 / MM)
    # the circle stands out of the box at the left, the right and the foot, and ends 1 mm under its head
    assert inked.min(axis=0) == pytest.approx((11, 10), abs=0.2)
    assert inked.max(axis=0) == pytest.approx((20, 20), abs=0.2)


def test_the_transform_of_the_canvas_carries_the_page(tmp_path: Path) -> None:
    [page], _ = load_pages(drawn(tmp_path / "a.pdf"), ((1, 1),))
    file = io.BytesIO()
    with PdfFile(file, title="t") as pdf, pdf.page(Size(60, 60)) as canvas:
        with canvas.placed(Transform.move(20, 30)):
            canvas.imported(page, Rect(0, 0, 15, 21))
        canvas.fill(Outline.rectangle(Rect(0, 0, 1, 1)), BLACK)
    dark = np.argwhere(pixels(file.getvalue(), scale=4).min(axis=-1) < 128) / (4 / MM)
    inside = dark[dark[:, 1] > 2]
    # the left edge of the rectangle, 20 of 300 points on 15 mm, and the top of the letters
    assert inside[:, 1].min() == pytest.approx(21, abs=0.1)
    assert 9 < inside[:, 0].min() < 12


def test_streams_keep_their_bytes(tmp_path: Path) -> None:
    path = drawn(tmp_path / "a.pdf", pages=1)
    packed = zlib.compress(bytes(range(256)) * 9, 1)
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        image = pdf.make_stream(b"")
        image.write(packed, filter=pikepdf.Name.FlateDecode)
        image.Type, image.Subtype, image.Width, image.Height = pikepdf.Name.XObject, pikepdf.Name.Image, 48, 48
        image.ColorSpace, image.BitsPerComponent = pikepdf.Name.DeviceGray, 8
        pdf.pages[0].obj.Resources.XObject = pikepdf.Dictionary(Im=image)
        pdf.pages[0].contents_add(b"q 90 0 0 90 9 9 cm /Im Do Q")
        pdf.save(path, compress_streams=False)
    [page], _ = load_pages(path)
    with pikepdf.open(io.BytesIO(placed((page, Rect(0, 0, 15, 21)), size=Size(15, 21)))) as made:
        [form] = made.pages[0].Resources.XObject.values()
        assert form.Resources.XObject.Im.read_raw_bytes() == packed
