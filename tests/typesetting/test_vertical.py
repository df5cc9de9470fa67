"""Lines that run down the page, from the right: how signs stand in them, and how they fill the page."""

from __future__ import annotations

import io
import pickle
from collections.abc import Sequence
from itertools import pairwise
from pathlib import Path

import pypdf
import pytest
from PIL import Image

from bookmaker.ground.art import Group
from bookmaker.ground.drawing import Art
from bookmaker.ground.geometry import Rect, Size, Transform
from bookmaker.ground.type_styles import Style
from bookmaker.ground.typefaces import Commands, Typeface, Vertical, bundled, cut_of, load_typeface, vertical_of
from bookmaker.ground.typefaces.orientation import Stance, stances
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.chosen_faces import downwards, set_across
from bookmaker.typesetting.lines.fount import Fount
from bookmaker.typesetting.page import Inside, PageFrame
from bookmaker.writers.pdf import PdfFile
from tests.kit.fonts import font_of_boxes
from tests.kit.pixels import apart
from tests.kit.recording import Written, record

TEXT = "島の灯台守は、毎晩七時に「古い『ランプ』」を灯した（らしい）。ちょっと、コーヒー！二十％……と言って——笑った。"
NEVER_FIRST, NEVER_LAST = "、。」』）！・ーっょ…", "「『（"
FORMS = """languagesystem DFLT dflt; languagesystem kana dflt; languagesystem hani dflt;
feature vert { sub u300C by opened; } vert;"""
FRAME = PageFrame(20, 30, 6, right_to_left=True)
AREA = FRAME.type_area(1)
EM = 1.0


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("down")
    letters = "".join(dict.fromkeys(f" .,x0123456789HabourFgIK[]#{TEXT}{NEVER_FIRST}{NEVER_LAST}月霧猫夜第章図目次１—"))
    font_of_boxes(folder / "own.ttf", letters, FORMS, ("opened",))
    return folder


@pytest.fixture(scope="module")
def face(folder: Path) -> Typeface:
    return load_typeface(folder / "own.ttf")


def box_of(outline: Commands) -> list[float]:
    """The left, lower, right and upper edge of an outline."""
    points = [numbers for _, *numbers in outline if numbers]
    sides = [[float(point[at]) for point in points] for at in (0, 1)]
    return [min(sides[0]), min(sides[1]), max(sides[0]), max(sides[1])]


@pytest.mark.parametrize(
    ("sign", "stance"),
    [
        ("灯", Stance.UPRIGHT), ("ー", Stance.SIDEWAYS), ("、", Stance.UPRIGHT), ("「", Stance.SIDEWAYS),
        ("A", Stance.SIDEWAYS), ("—", Stance.SIDEWAYS), ("…", Stance.SIDEWAYS), ("１", Stance.UPRIGHT),
        ("！", Stance.UPRIGHT), ("：", Stance.SIDEWAYS), ("§", Stance.UPRIGHT), ("°", Stance.SIDEWAYS),
        ("\u2016", Stance.UPRIGHT), ("\u201c", Stance.SIDEWAYS), ("\u3000", Stance.UPRIGHT), ("등", Stance.UPRIGHT),
    ],
)  # fmt: skip
def test_signs_stand_as_unicode_says(sign: str, stance: Stance) -> None:
    """Vertical_Orientation U and Tu upright, R on its side, and Tr where no form of its own is (UAX #50)."""
    assert stances(sign, lambda _: False) == [(stance, sign)]


def test_brackets_and_long_marks_stand_upright_where_there_are_forms_of_theirs() -> None:
    assert {stances(sign, lambda _: True)[0][0] for sign in "「ー："} == {Stance.UPRIGHT}
    assert {stances(sign, lambda _: True)[0][0] for sign in "A—…"} == {Stance.SIDEWAYS}


def test_marks_go_with_their_letters() -> None:
    assert stances("か\u3099a\u0301", lambda _: False) == [(Stance.UPRIGHT, "か\u3099"), (Stance.SIDEWAYS, "a\u0301")]


@pytest.mark.parametrize(
    ("text", "figures"),
    [("第12章", ["12"]), ("7時", ["7"]), ("12", ["12"]), ("1907年", []), ("3.5時", []), ("[1]", []), ("B2版", [])],
)
def test_one_or_two_figures_stand_upright_where_no_others_are_beside_them(text: str, figures: list[str]) -> None:
    """JLREQ, 3.2.5; longer numbers lie on their side."""
    assert [signs for stance, signs in stances(text, lambda _: False) if stance is Stance.FIGURES] == figures


def test_upright_signs_are_turned_back_about_the_middle_of_their_square(face: Typeface) -> None:
    """A square reaches from 0.12 em under the baseline to 0.88 over it; 灯 is a box 50 to 450 wide, 500 high."""
    down = vertical_of(face)
    [glyph] = down.shape("灯").glyphs
    assert (glyph.advance, glyph.dx, glyph.dy) == (1.0, 0.0, 0.0)
    assert box_of(down.outline(glyph.gid)) == pytest.approx([380, -70, 880, 330])
    assert down.breadth(glyph.gid) == pytest.approx((0.38, 0.88))
    assert down.extent(glyph.gid) == pytest.approx((-0.07, 0.33))


def test_letters_on_their_side_are_as_they_were_drawn(face: Typeface) -> None:
    down, plain = vertical_of(face).shape("Fog—"), face.shape("Fog—")
    assert down.glyphs == plain.glyphs
    assert [down.typeface.outline(glyph.gid) for glyph in down.glyphs] == [
        face.outline(glyph.gid) for glyph in plain.glyphs
    ]


def test_forms_for_such_lines_are_taken_from_the_font(face: Typeface) -> None:
    """「 has one, half an em wide, so it stands upright in it; 『 has none and lies on its side."""
    down = vertical_of(face)
    [own], [none] = down.shape("「").glyphs, down.shape("『").glyphs
    assert box_of(down.outline(own.gid)) == pytest.approx([380, 180, 880, 580])
    assert none == face.shape("『").glyphs[0]


def test_two_figures_fill_one_square_side_by_side(face: Typeface) -> None:
    """Boxes half an em wide: the first stands in the left half of the square, the second in the right."""
    down = vertical_of(face)
    [glyph] = down.shape("12").glyphs
    assert (glyph.text, glyph.advance) == ("12", 1.0)
    outline = down.outline(glyph.gid)
    first, second = outline[: len(outline) // 2], outline[len(outline) // 2 :]
    assert box_of(first) == pytest.approx([250, -70, 750, 330])
    assert box_of(second) == pytest.approx([250, 430, 750, 830])
    wide = vertical_of(bundled("text"))  # whose figures are 0.56 em wide
    left, right = wide.extent(wide.shape("88").glyphs[0].gid)
    assert -0.12 <= left < right <= 0.88


def test_figures_in_a_square_stand_as_near_as_all_others(face: Typeface) -> None:
    """Only long numbers have a quarter of the square on either side (JLREQ, 3.2.6)."""
    fount = Fount(downwards({Style.ROMAN: face}), None, "ja")
    assert fount.width("灯12灯") == pytest.approx(3.0)
    assert fount.width("灯123灯") == pytest.approx(2 + 1.5 + 0.5)


def test_stress_is_marked_by_dots_beside_letters_but_not_beside_marks(face: Typeface) -> None:
    fount = Fount(downwards({Style.ROMAN: face}), None, "ja")
    [run] = fount.runs("\x01灯、a")
    plain = vertical_of(face)
    letter, mark, latin = (run.typeface.outline(glyph.gid) for glyph in run.glyphs)
    usual = [plain.outline(glyph.gid) for glyph in plain.shape("灯、a").glyphs]
    assert mark == usual[1]
    for dotted, bare in ((letter, usual[0]), (latin, usual[2])):
        assert dotted[: len(bare)] == bare
        left, low, right, high = box_of(dotted[len(bare) :])
        assert 880 < low < high < 1130  # between the squares of this line and of the one before it
        assert right - left > 100
    assert fount.width("\x01灯") == fount.width("灯")


def test_heavier_letters_run_down_as_well(face: Typeface) -> None:
    heavier = cut_of(vertical_of(face), thicker=0.02)
    [glyph] = heavier.shape("灯").glyphs
    assert box_of(heavier.outline(glyph.gid)) == pytest.approx([360, -90, 900, 350], abs=1)
    assert pickle.loads(pickle.dumps(heavier)) is heavier


def test_captions_and_heads_have_the_same_type_across(face: Typeface) -> None:
    fount = set_across(Fount(downwards({Style.ROMAN: face}), None, "ja"))
    assert fount.faces == {Style.ROMAN: face}


# ---- pages


def inside(folder: Path, text: str, frame: PageFrame = FRAME, **keys: object) -> Inside:
    (folder / "log.md").write_text(text, encoding="utf-8")
    written = {"file": "log.md", "face": "own.ttf", "size": f"{EM} mm", "leading": 1.5, "language": "ja"}
    entry = TextInside.model_validate({**written, "setting": "vertical", "numbers": "no", **keys})
    return entry.load(folder).compose(frame)


def columns(page: Art) -> list[Written]:
    return record(page).texts


def ends(column: Written) -> tuple[float, float]:
    """Where the ink of a column begins and ends, down the page."""
    runs, size = column.line.runs, column.line.size
    last, run = runs[-1]
    reached = last + run.right * size + column.line.tracking * (len(run.glyphs) - 1)
    return column.at.y - runs[0][1].left * size, column.at.y - reached


def test_columns_run_from_the_right_and_say_all_in_order(folder: Path) -> None:
    made = inside(folder, "\n\n".join([TEXT * 3] * 4))
    said, count = "", 0
    for number, page in enumerate(made.pages, start=1):
        found, area = columns(page), FRAME.type_area(number)
        said += "".join(column.text for column in found)
        count += len(found)
        for before, after in pairwise(found):
            assert before.at.x - after.at.x == pytest.approx(1.5 * EM)
        for column in found:
            # a clockwise quarter turn
            assert (column.transform.a, column.transform.b) == pytest.approx((0.0, -1.0))
            # the squares of its signs lie inside the type area
            assert area.x - 1e-6 <= column.at.x - 0.12 * EM
            assert column.at.x + 0.88 * EM <= area.right + 1e-6
        if found:
            assert found[0].at.x + 0.88 * EM == pytest.approx(area.right)
    assert said == TEXT * 12
    assert count > 20


def test_columns_fill_the_height_of_the_type_area(folder: Path) -> None:
    """Ink of boxes begins 0.38 em from the upper edge of a square, which ends 0.12 em below it."""
    found = columns(inside(folder, "灯台守" * 60).pages[0])
    assert len(found) > 4
    for column in found[1:-1]:
        top, bottom = ends(column)
        assert top == pytest.approx(AREA.top - 0.38 * EM, abs=0.02)
        assert bottom == pytest.approx(AREA.y + 0.12 * EM, abs=0.02)


def test_no_column_begins_or_ends_as_it_must_not(folder: Path) -> None:
    for measure in range(20, 36):
        made = inside(folder, TEXT * 4, PageFrame(20, measure, 8, right_to_left=True))
        lines = [column.text for page in made.pages for column in columns(page)]
        assert "".join(lines) == TEXT * 4
        assert not {line[0] for line in lines[1:]} & set(NEVER_FIRST)
        assert not {line[-1] for line in lines[:-1]} & set(NEVER_LAST)


def test_heads_and_numbers_stay_level(folder: Path) -> None:
    frame = PageFrame(20, 30, 6, right_to_left=True)
    made = inside(folder, f"# 島\n\n## 第1章\n\n{TEXT * 12}", frame, running_heads="yes", numbers="yes", size="0.8 mm")
    level = [one for page in made.pages for one in record(page).texts if one.transform.b == pytest.approx(0.0)]
    assert {one.text for one in level} >= {"2", "3", "第1章"}
    for one in level:
        assert one.at.y == one.end.y
    heads = [one for one in level if one.text == "第1章"]
    assert all(one.at.y > AREA.top for one in heads)


def test_a_book_that_opens_from_the_left_is_told(folder: Path) -> None:
    [problem] = inside(folder, TEXT, PageFrame(20, 30, 2)).problems
    assert str(problem).startswith("log.md is read from right to left, but its book from left to right")


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ({"language": "en"}, "setting: vertical is not for language: en"),
        ({"language": "ko"}, "setting: vertical is not for language: ko"),
        ({"language": "none"}, "setting: vertical is not for language: none"),
        ({"drop_capital": 2}, "has a drop capital with setting: vertical"),
    ],
)
def test_what_is_not_set_so_is_refused(keys: dict[str, object], said: str, folder: Path) -> None:
    with pytest.raises(ValueError, match=said):
        inside(folder, TEXT, **keys)


@pytest.mark.parametrize("pictures", ["plates", "figures"])
def test_pictures_stand_upright_in_their_own_shape(pictures: str, folder: Path) -> None:
    Image.new("RGB", (300, 200), "#888").save(folder / "map.png")
    made = inside(folder, f"{TEXT}\n\n![図](map.png)\n\n{TEXT}", pictures=pictures)
    [(number, placed)] = [(n, one) for n, page in enumerate(made.pages, 1) for one in record(page).pictures]
    area, box = FRAME.type_area(number), placed.bounds
    assert (placed.transform.b, placed.transform.c) == pytest.approx((0.0, 0.0))
    assert (placed.transform.a > 0, placed.transform.d > 0) == (True, True)
    assert box.width / box.height == pytest.approx(1.5)
    assert area.grown(1e-6).contains(box)


def as_file(pages: Sequence[Art]) -> bytes:
    file = io.BytesIO()
    with PdfFile(file, title="Trial") as pdf:
        for page in pages:
            with pdf.page(Size(FRAME.width, FRAME.height)) as canvas:
                page.draw(canvas)
    return file.getvalue()


def test_the_text_comes_out_of_the_pdf_as_it_went_in(folder: Path) -> None:
    text = f"{TEXT}12月の*ランプ*は、Harbour 号と1234夜。"
    made = inside(folder, "\n\n".join([text] * 3))
    read = "".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(as_file(made.pages))).pages)
    assert "".join(read.split()) == "".join(text.replace("*", "").split()) * 3


def test_pdf_and_svg_show_the_same(folder: Path) -> None:
    text = f"{TEXT}12月の*ランプ*は、Harbour 号。"
    down, across = (inside(folder, text, setting=way).pages[0] for way in ("vertical", "horizontal"))
    turned = Group((across,), Transform.quarter_turn(-1).moved(0, FRAME.width))
    off = apart(down, FRAME.page(), 1200, 12).mean()
    # two renderers differ at every edge by a little, and where letters are turned by a little more
    assert off < 1.2 * apart(turned, Rect(0, 0, FRAME.height, FRAME.width), 1200, 12).mean()


def test_dots_are_for_stress_alone(folder: Path) -> None:
    """Captions and heads of tables, which are set in italic elsewhere, have none."""
    Image.new("RGB", (300, 200), "#888").save(folder / "map.png")
    text = f"{TEXT}\n\n![図](map.png)\n\n| 月 | 夜 |\n|:--|:--|\n| 霧 | 猫 |\n\n*猫*"
    made = inside(folder, text, pictures="figures")
    runs = [run for page in made.pages for one in record(page).texts for _, run in one.line.runs]
    dotted = [run.text for run in runs if isinstance(run.typeface, Vertical) and run.typeface.dotted]
    assert dotted == ["猫"]
    assert {"図", "月", "夜", "霧"} <= {run.text for run in runs}


def test_a_note_stands_at_the_left_of_its_page_and_its_figure_with_what_it_belongs_to(folder: Path) -> None:
    made = inside(folder, f"{'灯台守' * 30}[^1]\n\n{TEXT}\n\n[^1]: 霧の夜。", notes="foot")
    found = columns(made.pages[0])
    note = found[-1]
    assert "霧の夜。" in note.text
    assert all(one.at.x > note.at.x for one in found if one.line.size == EM)
    for measure in range(20, 32):
        made = inside(folder, f"{'灯台守' * 9}[^1]{TEXT}\n\n[^1]: 霧。", PageFrame(20, measure, 4, right_to_left=True))
        assert not any(one.text.startswith("[") for page in made.pages for one in columns(page))


def test_a_typeface_without_forms_for_such_lines_is_told(folder: Path) -> None:
    font_of_boxes(folder / "bare.ttf", "".join(dict.fromkeys(TEXT)))
    said = "Boxes has no forms of marks and brackets for lines that run down"
    for face, told in (("own.ttf", 0), ("bare.ttf", 1)):
        problems = inside(folder, TEXT, face=face).problems
        assert sum(str(problem).startswith(said) for problem in problems) == told


@pytest.mark.parametrize(
    ("language", "setting", "said"),
    [
        ("zh", "horizontal", "“灯”"),
        ("zh", "vertical", "『灯』"),
        ("zh-Hant", "vertical", "「灯」"),
        ("ja", "vertical", "「灯」"),
    ],
)
def test_quotation_marks_of_chinese_become_corners(language: str, setting: str, said: str, folder: Path) -> None:
    """GB/T 15834 has double corners outside in lines that run down (from memory)."""
    font_of_boxes(folder / "marks.ttf", "灯「」『』“”‘’–—…′″-'\".,")
    keys = {"language": language, "setting": setting, "face": "marks.ttf"}
    assert [one.text for one in columns(inside(folder, '"灯"', **keys).pages[0])] == [said]
