"""Things made alike are told once without losing a number; evenings print each sheet once; covers are seen."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path
from typing import cast

import pypdfium2

from bookmaker.guide.items import Tick
from bookmaker.guide.member import Member
from bookmaker.guide.together import told_alike
from bookmaker.guide.wrapping import wrapped
from bookmaker.things.making import Chapter, Making
from bookmaker.things.prints import Prints
from bookmaker.things.thing import Plan
from tests.kit.guide_shelves import shelf_head, spelled, words_of
from tests.kit.shelves import made

THICK = ("4.1", "5.2", "6.3", "7.4")


def dummies(*more: str) -> str:
    books = "".join(
        f"""\
  - title: Bricks {number}
    size: {{height: 21 mm, width: 14 mm}}
    space: upper
    block: {{kind: dummy, thickness: {thick} mm, material: lime wood}}
    cover: {{kind: wrap, stock: card}}
"""
        for number, thick in enumerate(THICK, start=1)
    )
    return shelf_head() + "books:\n" + books + "".join(more)


def accordions(count: int) -> str:
    return shelf_head().replace("130 mm", "230 mm") + "books:\n" + "".join(
        f"""\
  - title: Fold {number}
    size: {{height: 21 mm, width: 14 mm}}
    space: upper
    block: {{kind: accordion, stock: laid, pages: {2 * number + 20}}}
    cover: {{kind: wrap, stock: card}}
"""
        for number in range(count)
    )  # fmt: skip


def test_dummies_are_told_in_one_chapter_with_every_number(tmp_path: Path) -> None:
    plan, out = made(dummies(), tmp_path)
    words = words_of(out / "guide.pdf")
    told = words[words.index("Dummies These 4 are made in the same way") :]
    assert told.count("Cut the block of lime wood") == 1
    block = told[told.index("The block: a dummy") : told.index("The cover: a paper wrap")]
    assert "Take lime wood of (a) mm" in block
    assert "(b) mm thick" in block
    for number, (book, thick) in enumerate(zip(plan["books"], THICK, strict=True), start=1):
        assert re.search(rf"{number}\. Bricks {number} [568] {float(thick):.2f}", block)
        assert f"{book['overall_mm']['thickness']:.2f}" in told[told.index("The cover: a paper wrap") :]
        assert f"{book['spine_mm']:.1f}" in told


def test_one_of_another_make_is_told_by_itself(tmp_path: Path) -> None:
    other = """\
  - title: Ribs
    size: {height: 21 mm, width: 14 mm}
    space: upper
    block: {kind: dummy, thickness: 6 mm}
    cover: {kind: case, boards: board, stock: cloth, endpapers: laid}
"""
    _, out = made(dummies(other), tmp_path)
    words = words_of(out / "guide.pdf")
    assert "These 4 are made in the same way" in words
    assert re.search(r"5\. Ribs Dummy block in a case", words)


def member(title: str, kin: str, *steps: str) -> Member:
    nobody_asks = cast("Plan", None)
    return Member(title, nobody_asks, Chapter(title, "", (Making("The block", steps),), kin=kin), Prints(()))


def test_what_is_no_kin_or_too_different_stays_alone() -> None:
    alike = [member(name, "Dummies", f"Cut it {size} mm thick.", "Press it.") for name, size in
             (("One", "3.1"), ("Two", "3.2"), ("Three", "3.3"))]  # fmt: skip
    strangers = [member(one.id, "", *one.chapter.makings[0].steps) for one in alike]
    odd = member("Four", "Dummies", "Sew it.", "Fold it.", "Glue it.", "Press it.")
    assert [len(group) for group in told_alike(alike, {})] == [3]
    assert [len(group) for group in told_alike(alike[:2], {})] == [1, 1]
    assert [len(group) for group in told_alike(strangers, {})] == [1, 1, 1]
    assert [len(group) for group in told_alike([*alike, odd], {})] == [1, 1, 1, 1]


def test_evenings_take_eight_books_and_print_each_sheet_once(tmp_path: Path) -> None:
    plan, out = made(accordions(18), tmp_path)
    words = words_of(out / "guide.pdf")
    evenings = words[words.index("Evening by evening") : words.index("Shopping list")]
    found = re.findall(r"Evening (\d)\.(.*?)(?=Evening \d\.|$)", evenings)
    assert [number for number, _ in found] == ["1", "2", "3", "4", "5", "6"]
    for (_, text), blocks in zip(found, ("1 to 8", "9 to 16", "17 and 18"), strict=False):
        assert f"Cut, fold and glue the blocks of {blocks}." in text
    printed = [(file, number) for file, numbers in re.findall(r"(\S+\.pdf), sheets? ([\d, andto]+)", evenings)
               for number in spelled(numbers)]  # fmt: skip
    assert len(printed) == len(set(printed))
    assert Counter(file for file, _ in printed) == Counter(sheet["file"] for sheet in plan["sheets"])


def test_a_few_books_are_made_without_a_plan_of_evenings(tmp_path: Path) -> None:
    _, out = made(accordions(8), tmp_path)
    assert "Evening by evening" not in words_of(out / "guide.pdf")


def test_the_cover_is_seen_beside_the_title(tmp_path: Path) -> None:
    """Ink of the cover's colour stands at the right of the title, where a page without pictures is white."""
    shelf = accordions(1).replace("    cover:", "    design: {style: cloth, colour: '#7a1020'}\n    cover:")
    _, out = made(shelf, tmp_path)
    document = pypdfium2.PdfDocument(out / "guide.pdf")
    page, top = next(found for page in document if (found := (page, title_top(page, "1. Fold 0")))[1])
    pixels = page.render(scale=2).to_pil().convert("RGB").crop((1040, top, 1120, top + 90)).getcolors(10**6)
    assert any(red > 90 and green < 60 and blue < 70 and count > 200 for count, (red, green, blue) in pixels)


def title_top(page: pypdfium2.PdfPage, title: str) -> int:
    """How many half points below the head of a page a title begins, in letters as high as titles have; 0 if nowhere."""
    text = page.get_textpage()
    at = text.search(title)
    while found := at.get_next():
        _, low, _, top = text.get_charbox(found[0])
        if top - low > 10:
            return int(2 * (page.get_height() - top))
    return 0


def test_measures_in_steps_are_bold() -> None:
    (line,) = wrapped("Cut it 21.0 mm high from sheet 2.", "sans", 3.2, 180.0, "sans bold")
    faces = {run.text.strip(): run.typeface.name for _, run in line.runs}
    assert faces["21.0\N{NO-BREAK SPACE}mm"] != faces["Cut"]
    assert faces["2."] == faces["Cut"]
    assert Tick("Cut it 21.0 mm high.").height(180.0) > 0
