"""Spines: words clear of the folds, things clear of one another, the way that reads best, sets on one line."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from pathlib import Path as FilePath

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from bookmaker import check
from bookmaker.cli.tables import lettering_table
from bookmaker.ground.drawing import Art, Colour
from bookmaker.ground.geometry import Rect
from bookmaker.sheets.flat import Role
from bookmaker.things.book.designs.artwork import NO_ARTWORK
from bookmaker.things.book.designs.design import Design, DrawnDesign, SpineTitle, Words
from bookmaker.things.book.designs.kinds import KINDS as STYLES
from bookmaker.things.book.designs.letters.lettering import Hand
from bookmaker.things.book.designs.letters.spine import Spine, free_room, letter_spine
from bookmaker.things.book.designs.letters.titling import Placed
from bookmaker.things.book.designs.ornament.devices import DEVICES
from bookmaker.things.book.designs.ornament.fleurons import FLEURONS
from bookmaker.things.book.designs.styles.plain import Plain
from bookmaker.things.book.legibility import lettering_problems
from bookmaker.workshop import Checked
from tests.kit.by_kind import drafts_of, lettering_of
from tests.kit.flats import flat_of, panel
from tests.kit.recording import Filled, Stroked, Written, ink_box, record
from tests.kit.recording import Placed as Pictured
from tests.kit.styles import NO_FILES
from tests.kit.titles import TITLES

LETTERED = [model for model in STYLES if issubclass(model, (DrawnDesign, Plain))]
BLACK, WHITE = Colour.from_hex("#000000"), Colour.from_hex("#ffffff")
HANDS = [
    Hand("text bold", "text", BLACK, WHITE),
    Hand("old style", "old style italic", BLACK, WHITE, capitals=True),
    Hand("sans bold", "sans", BLACK, WHITE),
    Hand("typewriter", "typewriter", BLACK, WHITE),
]
ENGLISH = st.lists(
    st.sampled_from(["the", "of", "and", "A", "Sea", "lamp", "Harbour", "X", "storms", "after", "Ýl", "encyclopaedia"]),
    min_size=1,
    max_size=10,
).map(" ".join)

every_lettered_style = pytest.mark.parametrize("model", LETTERED, ids=lambda model: model.model_fields["style"].default)


def entry_of(model: type[Design], **keys: str) -> Design:
    if model is Plain and keys.get("spine_title") == "auto":
        keys["spine_title"] = "down"
    return model.model_validate({"style": model.model_fields["style"].default, **keys})


def margin(width: float) -> float:
    """The least clear margin at each fold: 0.4 mm or 12 % of the spine, on a spine under 2 mm a fifth of it."""
    return max(min(0.4, 0.2 * width), 0.12 * width)


@every_lettered_style
@given(
    title=TITLES | ENGLISH,
    author=TITLES | st.just("") | st.just("The Revd Amos Pell"),
    thickness=st.floats(0.8, 20),
    height=st.floats(9, 42),
    way=st.sampled_from(["auto", "up", "down", "across"]),
    volume=st.sampled_from(["", "XXVIII"]),
    date=st.sampled_from(["", "1907"]),
)
@settings(max_examples=15, deadline=None)
def test_words_keep_clear_of_both_folds(
    model: type[Design], title: str, author: str, thickness: float, height: float, way: str, volume: str, date: str
) -> None:
    flat = flat_of(thickness, height * 0.7, height)
    entry = entry_of(model, spine_title=way)
    art = entry.dress(entry.load(NO_FILES), flat, Words(title[:120], author, volume, date)).art
    spine = panel(flat, Role.SPINE)
    clear = spine.grown(-margin(spine.width), 0, -margin(spine.width), 0)
    for text in record(art).texts:
        box = ink_box(text)
        if spine.contains(box, 1e-6):
            assert clear.contains(box, 1e-6), text.text


def bounds(art: Art) -> Rect:
    """The rectangle around all ink of a block of text, an ornament or a rule."""
    canvas = record(art)
    boxes = [ink_box(text) for text in canvas.texts]
    boxes += [Rect.around(mark.path.points()) for mark in (*canvas.fills, *canvas.strokes)]
    return Rect.around([corner for box in boxes for corner in box.corners])


@given(
    title=ENGLISH,
    author=st.sampled_from(["", "E. Rook", "The Revd Amos Pell", "Maud Sterrick and T. Quay"]),
    volume=st.sampled_from(["", "VIII"]),
    date=st.sampled_from(["", "1907"]),
    width=st.floats(1, 14),
    height=st.floats(9, 36),
    way=st.sampled_from(["auto", "up", "down", "across"]),
    hand=st.sampled_from(HANDS),
    dressed=st.tuples(st.booleans(), st.booleans(), st.booleans(), st.booleans()),
)
@settings(max_examples=300, deadline=None)
def test_all_things_on_a_spine_stand_a_capital_apart(
    title: str,
    author: str,
    volume: str,
    date: str,
    width: float,
    height: float,
    way: SpineTitle,
    hand: Hand,
    dressed: tuple[bool, bool, bool, bool],
) -> None:
    """Title, author, ornament, rule, number, device: between any two lies the height of the title's capitals."""
    fleuron, device, rules, first = dressed
    spine = Spine(
        hand, way, False, FLEURONS["sun"] if fleuron else None, DEVICES["lamp"] if device else None, first, rules
    )
    room = free_room(Rect(3, 5, width, height))
    done = letter_spine(room, Words(title, author, volume, date), spine)
    heading = next(
        art for art, line in zip((a for a in done.art if isinstance(a, Placed)), done.lettering, strict=True)
        if line.what == "title"
    )  # fmt: skip
    capital = heading.block.size * heading.block.lines[0].runs[0][1].typeface.cap_height
    boxes = sorted((bounds(art) for art in done.art), key=lambda box: -box.top)
    for upper, lower in pairwise(boxes):
        assert upper.y - lower.top >= capital - 0.05 - 1e-6  # a rule has its own thickness
    for box in boxes:
        assert room.contains(box, 1e-6)


@every_lettered_style
@pytest.mark.parametrize("thickness", [2.0, 3.0, 4.5, 6.0, 9.0, 14.0])
@pytest.mark.parametrize("title", ["Ox", "Signals", "The Patient Lamps", "On the Keeping of Bees in Windy Places"])
def test_no_mark_of_a_style_touches_its_words(model: type[Design], thickness: float, title: str) -> None:
    """Rules, bands, globes and stamps in the ink of the title keep half its small letters' height from all words."""
    flat = flat_of(thickness, 15, 22)
    keys = {"device": "buoy", "wear": "none", "spine_title": "auto"} if model is not Plain else {}
    entry = entry_of(model, **keys)
    dress = entry.dress(entry.load(NO_FILES), flat, Words(title, "E. Rook", "II"))
    canvas, spine = record(dress.art), panel(flat, Role.SPINE)
    high = next(line.x_height for line in dress.lettering if line.what == "title" and line.on == "spine")
    texts = [text for text in canvas.texts if spine.contains(ink_box(text), 1e-6)]
    for text in texts:
        near = ink_box(text).grown(min(0.5 * high, 0.35))
        for mark in canvas.marks:
            if isinstance(mark, (Filled, Stroked)) and not mark.clips and _ink(mark) == text.colour:
                box = Rect.around(mark.path.points())
                framed = isinstance(mark, Stroked) and box.contains(near)
                assert framed or box.contains(spine) or not near.overlaps(box), text.text


def _ink(mark: Filled | Stroked) -> Colour:
    return mark.colour if isinstance(mark, Filled) else mark.pen.colour


@given(title=ENGLISH, width=st.floats(1.2, 14), height=st.floats(12, 36), hand=st.sampled_from(HANDS))
@settings(max_examples=150, deadline=None)
def test_auto_takes_the_way_with_the_larger_letters_where_they_are_hard_to_read(
    title: str, width: float, height: float, hand: Hand
) -> None:
    """0.436 mm are 5 minutes of arc at 300 mm (Snellen)."""

    def letters(way: SpineTitle) -> float:
        (line,) = letter_spine(free_room(Rect(0, 0, width, height)), Words(title), Spine(hand, way)).lettering
        return line.x_height

    if letters("auto") < 0.436:
        assert letters("auto") >= max(letters("across"), letters("down")) - 1e-9
    assert letters("auto") >= 0.55 * max(letters("across"), letters("down")) - 1e-9


def test_a_wide_spine_reads_across() -> None:
    words = Words("The History of Rope", "A. Fell")
    (title, _) = letter_spine(free_room(Rect(0, 0, 9, 22)), words, Spine(HANDS[0])).lettering
    assert title.way == "across"
    (title, _) = letter_spine(free_room(Rect(0, 0, 3, 22)), words, Spine(HANDS[0])).lettering
    assert title.way == "down"


def test_a_surname_stands_alone_only_where_the_full_name_costs_too_much() -> None:
    words = Words("Wind and Weather", "Professor Bartholomew Featherstone")
    said = [
        {line.what: line.text for line in letter_spine(room, words, Spine(HANDS[0])).lettering}
        for room in (free_room(Rect(0, 0, 3, height)) for height in (14, 40))
    ]
    assert [texts["author"] for texts in said] == ["Featherstone", "Professor Bartholomew Featherstone"]


def test_an_ornament_gives_way_to_a_title_that_needs_its_room() -> None:
    words = Words("Navigation of the Inner Harbour", "E. Rook")
    spine = Spine(HANDS[0], "down", fleuron=FLEURONS["sun"])
    counts = [len(letter_spine(free_room(Rect(0, 0, 3, height)), words, spine).art) for height in (10, 30)]
    assert counts == [2, 3]


@given(
    hand=st.sampled_from(HANDS),
    title=st.sampled_from(["Fog", "Salt", "Lamps: A Short Account", "The Oar", "Moth and Rust"]),
    author=st.sampled_from(["", "I. Quill", "Ida Quill"]),
    date=st.sampled_from(["", "1907"]),
    width=st.floats(1.4, 6.0),
    height=st.floats(14, 32),
)
@settings(max_examples=150, deadline=None)
def test_short_words_do_not_leave_a_spine_empty(
    hand: Hand, title: str, author: str, date: str, width: float, height: float
) -> None:
    """Along a spine words are as broad as it allows, or no third of it is empty."""
    room = Rect(0, 0, width, height)
    done = letter_spine(room, Words(title, author, "", date), Spine(hand, "down"))
    boxes = sorted((bounds(art) for art in done.art), key=lambda box: box.y)
    ends = [0.0, *(edge for box in boxes for edge in (box.y, box.top)), height]
    largest_gap = max(high - low for low, high in zip(ends[::2], ends[1::2], strict=True))
    broad = max(max_size(done.art), *(box.width for box in boxes))
    assert largest_gap < height / 3 or broad > 0.7 * width


@pytest.mark.parametrize(("thickness", "said"), [(2.4, "Lamps"), (12.0, "Lamps A Short Account")])
def test_a_subtitle_too_small_to_be_read_is_left_out(thickness: float, said: str) -> None:
    spine = Rect(0, 0, thickness, 20)
    done = letter_spine(free_room(spine), Words("Lamps: A Short Account", "H. Brand"), Spine(HANDS[0]))
    (title,) = (art for art in done.art if isinstance(art, Placed) and art.block.size == max_size(done.art))
    assert " ".join(line.text for line in title.block.lines) == said


def max_size(arts: Sequence[Art]) -> float:
    return max(art.block.size for art in arts if isinstance(art, Placed))


def test_a_subtitle_stands_smaller_under_its_title() -> None:
    flat = flat_of(9.0)
    entry = entry_of(Plain, spine_title="across")
    canvas = record(entry.dress(entry.load(NO_FILES), flat, Words("Salt: A Life")).art)
    title, subtitle = [text for text in canvas.texts if panel(flat, Role.SPINE).contains(ink_box(text))]
    assert (title.text, subtitle.text) == ("Salt", "A Life")
    assert subtitle.line.size == pytest.approx(0.62 * title.line.size)
    assert subtitle.at.y < title.at.y


@pytest.mark.parametrize("hand", HANDS)
@pytest.mark.parametrize("title", ["Ropes", "ÉTÉ", "aces", "1907"])
def test_capitals_and_small_letters_stand_in_the_middle(hand: Hand, title: str) -> None:
    """The middle of capitals, or of the small letters with what rises and hangs, lies on the axis of the spine."""
    room = free_room(Rect(0, 0, 5, 22))
    done = letter_spine(room, Words(title), Spine(hand, "across"))
    (text,) = record(done.art[0]).texts
    face = text.line.runs[0][1].typeface
    small = not (text.text.isupper() or text.text.isdigit())
    low = face.shape("gpqy").bottom if small else 0.0
    (placed,) = [art for art in done.art if isinstance(art, Placed)]
    middle = text.at.y + text.line.size * (face.cap_height + low) / 2
    assert middle == pytest.approx(placed.centre.y)


def test_plain_covers_have_one_family_on_spine_and_front() -> None:
    flat = flat_of(5.0)
    canvas = record(Plain().dress(Plain().load(NO_FILES), flat, Words("Tides", "A. Fell")).art)
    names = {text.line.runs[0][1].typeface.name for text in canvas.texts}
    assert names == {"Noto Serif Bold", "Noto Serif"}


SHELF = """\
shelf: Spines
stocks:
  page: {caliper: 80 um}
  card: {caliper: 160 um}
defaults:
  size: {height: 22 mm, width: 15 mm}
  block: {kind: accordion, stock: page}
  cover: {kind: wrap, stock: card}
  design: {style: cloth}
books:
"""


def checked(folder: FilePath, books: str) -> Checked:
    (folder / "page.txt").write_text("Rien.\n", encoding="utf-8")
    (folder / "shelf.yaml").write_text(SHELF + books, encoding="utf-8")
    return check(folder / "shelf.yaml")


@pytest.mark.parametrize(
    ("title", "inside", "way"),
    [
        ("Les marées", "{kind: text, file: page.txt, language: fr}", "up"),
        ("Les marées", "{kind: text, file: page.txt}", "down"),
        ("Les marées", "{kind: blank}", "down"),
        ("Las mareas", "[{kind: blank, pages: 2}, {kind: text, file: page.txt, language: es}]", "up"),
        ("Las mareas", "[{kind: text, file: page.txt, pages: 2}, {kind: text, file: page.txt, language: es}]", "up"),
        ("The Tides", "{kind: text, file: page.txt, language: en}", "down"),
        ("Приливы", "{kind: text, file: page.txt}", "up"),
        ("Приливы", "{kind: text, file: page.txt, language: none}", "up"),
        ("Приливы", "{kind: text, file: page.txt, language: en}", "down"),
    ],
)
def test_the_language_a_maker_names_settles_the_way(title: str, inside: str, way: str, tmp_path: FilePath) -> None:
    """The default language of text says nothing about the spine."""
    book = f"  - {{title: {title}, block: {{pages: 24}}, inside: {inside}}}\n"
    (lettering,) = lettering_of(checked(tmp_path, book))
    assert [line.way for line in lettering if line.on == "spine"] == [way]


def test_a_language_in_the_defaults_counts_as_named(tmp_path: FilePath) -> None:
    books = "  - {title: Les marées, block: {pages: 24}, inside: {kind: text, file: page.txt}}\n"
    shelf = SHELF.replace("books:\n", "  inside: {kind: text, language: fr}\nbooks:\n")
    (tmp_path / "page.txt").write_text("Rien.\n", encoding="utf-8")
    (tmp_path / "shelf.yaml").write_text(shelf + books, encoding="utf-8")
    (lettering,) = lettering_of(check(tmp_path / "shelf.yaml"))
    assert [line.way for line in lettering if line.on == "spine"] == ["up"]


def spine_marks(found: Checked, style: str) -> list[tuple[Rect, list[Written], list[Filled | Stroked]]]:
    """Of each book: its spine, the words on it, and what else is in the ink of its words."""
    marks = []
    for draft in drafts_of(found):
        piece = draft.pieces[-1]
        spine = next(panel.rect for panel in piece.flat.panels if panel.role is Role.SPINE)
        canvas = record(piece.art)
        texts = [text for text in canvas.texts if spine.contains(ink_box(text), 1e-6)]
        inks = {text.colour for text in texts}
        other = [
            mark
            for mark in canvas.marks
            if isinstance(mark, (Filled, Stroked))
            and _ink(mark) in inks
            and spine.contains(Rect.around(mark.path.points()), 1e-6)
        ]
        marks.append((spine, texts, other))
    assert style
    return marks


@every_lettered_style
@pytest.mark.parametrize("pages", [(30, 60, 44), (90, 200, 130)])
def test_a_set_is_lettered_on_one_line_whatever_its_thickness(
    model: type[Design], pages: tuple[int, ...], tmp_path: FilePath
) -> None:
    style = model.model_fields["style"].default
    row = "".join(f"      - {{block: {{pages: {count}}}}}\n" for count in pages)
    books = f"  - title: Annals of the Lights\n    author: E. Rook\n    volumes: 3\n    design: {{style: {style}}}\n"
    found = spine_marks(checked(tmp_path, f"{books}    row:\n{row}"), style)
    sizes = [[text.line.size for text in texts] for _, texts, _ in found]
    assert sizes[0] == pytest.approx(sizes[1])
    assert sizes[0] == pytest.approx(sizes[2])
    # lines start at one height, or run along one axis; a number is centred
    heights = [[text.at.y for text in texts] for _, texts, _ in found]
    assert heights[0] == pytest.approx(heights[1])
    assert heights[0] == pytest.approx(heights[2])


def test_the_stamps_of_a_set_are_alike(tmp_path: FilePath) -> None:
    """Rules, bands and ornaments of cloth lie at the same heights, however much weave a volume takes."""
    row = "".join(f"      - {{block: {{pages: {count}}}}}\n" for count in (60, 130, 90))
    for title in ("Annals", "Reports", "Letters"):
        books = f"  - title: {title}\n    volumes: 3\n    row:\n{row}"
        heights = [
            sorted({(round(box.y, 3), round(box.top, 3)) for mark in other for box in [Rect.around(mark.path.points())]
                    if abs(box.width - spine.width) < 1e-6})
            for spine, _, other in spine_marks(checked(tmp_path, books), "cloth")
        ]  # fmt: skip
        assert heights[0]
        assert heights[0] == heights[1] == heights[2]


def notes(found: Checked) -> list[str]:
    return [str(problem) for problem in found.problems if "lens" in problem.message]


SMALL = ", size: {height: 13 mm, width: 9 mm}"


def test_titles_that_need_a_lens_are_told_once_for_the_shelf(tmp_path: FilePath) -> None:
    long = "Rules for the Conduct of Visitors to the Reading Room"
    books = "".join(
        f"  - {{title: {title}, block: {{pages: {pages}}}, design: {{style: cloth, face: {face}}}{SMALL}}}\n"
        for title, pages, face in (
            ("Tides", 60, "sans"),
            (long, 20, "sans"),
            ("On Rope and How It Is Made", 20, "script"),
        )
    )
    (note,) = notes(checked(tmp_path, books))
    assert "2 of 3 spine titles cannot be read from 300 mm without a lens; the smallest is that of On Rope" in note
    assert note.startswith("shelf.yaml:13:")
    assert "where sharp eyes need 5; " in note
    assert "make " in note.partition("need 5; ")[2]


def test_one_title_that_needs_a_lens_is_named_with_what_would_help(tmp_path: FilePath) -> None:
    title = "Rules for the Conduct of Visitors"
    (note,) = notes(checked(tmp_path, f"  - {{title: {title}, block: {{pages: 20}}{SMALL}}}\n"))
    assert f"the spine title of {title} cannot be read from 300 mm without a lens" in note


def test_titles_that_can_be_read_are_no_news(tmp_path: FilePath) -> None:
    assert notes(checked(tmp_path, "  - {title: Tides, block: {pages: 60}}\n")) == []


def test_nearer_eyes_read_smaller_titles(tmp_path: FilePath) -> None:
    """0.4 mm at 300 mm are 4.6 minutes of arc, at 250 mm 5.5."""
    books = f"  - {{title: The Winds of the Northern Skerries, block: {{pages: 26}}{SMALL}}}\n"
    far = checked(tmp_path, books)
    assert len(notes(far)) == 1
    (tmp_path / "shelf.yaml").write_text("viewing_distance: 200 mm\n" + SHELF + books, encoding="utf-8")
    assert notes(check(tmp_path / "shelf.yaml")) == []


def on_spine(style: str, thickness: float, words: Words, **keys: str) -> dict[str, tuple[str, float, float]]:
    """Title, author and volume number of a spine: which way they run, the em, how long the longest line is."""
    (model,) = (model for model in LETTERED if model.model_fields["style"].default == style)
    flat = flat_of(thickness, 15, 21)
    entry = entry_of(model, **keys)
    dress = entry.dress(entry.load(NO_FILES), flat, words)
    texts = [text for text in record(dress.art).texts if panel(flat, Role.SPINE).contains(ink_box(text), 1e-6)]
    found = {}
    for line in dress.lettering:
        own = [text.line for text in texts if text.line.text.casefold() in line.text.casefold()]
        if line.on == "spine":
            found[line.what] = (line.way, max(part.size for part in own), max(part.width for part in own))
    return found


@pytest.mark.parametrize("thickness", [3.0, 4.5, 8.0, 14.0])
@pytest.mark.parametrize("way", ["down", "across"])
@every_lettered_style
def test_a_volume_number_stands_upright_and_no_smaller_than_the_title(
    model: type[Design], way: str, thickness: float
) -> None:
    """Across the spine, in the size of the titling or a larger one (common practice)."""
    style = model.model_fields["style"].default
    found = on_spine(style, thickness, Words("Bellows", "E. Rook", "II"), spine_title=way)
    assert found["volume"][0] == "across"
    assert found["volume"][1] >= found["title"][1] * 0.999


def test_a_long_date_turns_alone() -> None:
    words = Words("Knots", "N. Corrow", "II", "12 September 1901")
    done = letter_spine(free_room(Rect(0, 0, 3, 21)), words, Spine(HANDS[0], "down"))
    assert {line.what: line.way for line in done.lettering} == {
        "title": "down", "author": "down", "volume": "across", "date": "down"
    }  # fmt: skip


def test_a_number_too_wide_for_its_spine_runs_along_it_through_the_whole_set(tmp_path: FilePath) -> None:
    row = "".join(f"      - {{volume: {number}, block: {{pages: 24}}}}\n" for number in ("I", "XXXVIII"))
    books = f"  - title: Annals of the Lights\n    volumes: 2\n    row:\n{row}"
    for lettering in lettering_of(checked(tmp_path, books)):
        assert {line.way for line in lettering if line.on == "spine"} == {"down"}


@pytest.mark.parametrize("style", ["cloth", "leather", "half leather", "pamphlet", "paper boards", "atlas", "school"])
@pytest.mark.parametrize("title", ["I", "Salt", "Ox"])
def test_an_author_has_no_more_weight_than_a_short_title(style: str, title: str) -> None:
    """Smaller by a quarter at least, and no wider, or taking no more than two thirds of what is free of a spine."""
    found = on_spine(style, 20.0, Words(title, "Ann Onym"), spine_title="across")
    (_, large, wide), (_, small, long) = found["title"], found["author"]
    assert small <= 0.81 * large
    assert long <= max(1.15 * wide, 0.67 * 15.2)


@pytest.mark.parametrize("style", ["cloth", "plain", "pamphlet", "paperback"])
@pytest.mark.parametrize("thickness", [2.5, 4.0, 9.0, 20.0])
def test_a_short_name_stays_on_one_line_along_a_spine(style: str, thickness: float) -> None:
    flat = flat_of(thickness, 15, 21)
    (model,) = (model for model in LETTERED if model.model_fields["style"].default == style)
    entry = entry_of(model, spine_title="down")
    art = entry.dress(entry.load(NO_FILES), flat, Words("I", "Gil Tarn")).art
    words = [text.line.text for text in record(art).texts if panel(flat, Role.SPINE).contains(ink_box(text), 1e-6)]
    assert "gil tarn" in [word.casefold() for word in words]


@pytest.mark.parametrize("thickness", [5.0, 6.0, 7.0, 8.0, 9.0])
@pytest.mark.parametrize("title", ["Bees", "The Sound of Ice and Winter", "A Treatise on the Navigation of the Gannow"])
def test_a_leather_label_leaves_no_slivers_and_is_not_half_empty(thickness: float, title: str) -> None:
    """It goes round the bends of the joints, which are seen, or leaves a tenth of the spine on either side."""
    flat, label = flat_of(thickness, 15, 21), Colour.from_hex("#123456")
    (model,) = (model for model in LETTERED if model.model_fields["style"].default == "leather")
    entry = entry_of(model, second_colour="#123456")
    canvas = record(entry.dress(entry.load(NO_FILES), flat, Words(title, "I. Marrow")).art)
    spine = panel(flat, Role.SPINE)
    (plate,) = [
        Rect.around(mark.path.points()) for mark in canvas.marks if isinstance(mark, Filled) and mark.colour == label
    ]
    beside = plate.x - spine.x
    assert -0.5 <= beside <= -0.2 or beside >= 0.1 * spine.width
    boxes = [ink_box(text) for text in canvas.texts if plate.contains(ink_box(text), 1e-6)]
    words = Rect.around([corner for box in boxes for corner in box.corners])
    assert words.height >= 0.3 * plate.height
    assert max(words.width / plate.width, words.height / plate.height) >= 0.5
    assert words.width * words.height >= 0.15 * plate.width * plate.height


def test_without_a_title_a_schoolbook_keeps_its_number_and_has_no_panel() -> None:
    flat, ink = flat_of(6.0, 15, 21), Colour.from_hex("#fff1d0")
    (model,) = (model for model in LETTERED if model.model_fields["style"].default == "school")
    entry = entry_of(model, spine_title="none", ink="#fff1d0", colour="#204030")
    canvas, spine = record(entry.dress(NO_ARTWORK, flat, Words("Sums", "E. Rook", "IV")).art), panel(flat, Role.SPINE)
    (number,) = [text for text in canvas.texts if spine.contains(ink_box(text), 1e-6)]
    assert (number.line.text, number.colour) == ("IV", ink)
    inked = [mark for mark in canvas.marks if isinstance(mark, Filled) and mark.colour == ink]
    under = [Rect.around(mark.path.points()) for mark in inked]
    assert not any(box.contains(ink_box(number)) for box in under)


def test_without_a_title_a_picture_fills_the_whole_spine(tmp_path: FilePath) -> None:
    Image.new("RGB", (60, 210), "#884422").save(tmp_path / "strip.png")
    flat = flat_of(6.0, 15, 21)
    (model,) = (model for model in LETTERED if model.model_fields["style"].default == "picture")
    entry = entry_of(model, spine_title="none", spine_picture="strip.png", colour="#204030", wear="none")
    canvas = record(entry.dress(entry.load(tmp_path), flat, Words("Sums", "E. Rook")).art)
    places = [number for number, mark in enumerate(canvas.marks) if isinstance(mark, Pictured)]
    spine = panel(flat, Role.SPINE)
    over = canvas.marks[places[-1] + 1 :]
    assert not any(spine.overlaps(Rect.around(mark.path.points())) for mark in over if isinstance(mark, Filled))


@pytest.mark.parametrize(
    ("jacket", "ways", "style"),
    [
        (", jacket: {stock: page, design: {style: paperback, spine_title: up}}", ["up"], "paperback"),
        (", jacket: {stock: page, design: {style: paperback, spine_title: none}}", [], "paperback"),
        (", jacket: {stock: page}", ["across"], "cloth"),
        ("", ["across"], "cloth"),
    ],
)
def test_the_spine_that_is_listed_is_the_one_the_shelf_sees(
    jacket: str, ways: list[str], style: str, tmp_path: FilePath
) -> None:
    books = f"  - {{title: Tides, block: {{pages: 60}}, design: {{spine_title: across}}{jacket}}}\n"
    found = checked(tmp_path, books)
    (lettering,) = lettering_of(found)
    assert [line.way for line in lettering if line.on == "spine" and line.what == "title"] == ways
    table = lettering_table(found)
    assert [cells[2:4] for cells, _ in table.rows] == [(style, *(ways or ["–"]))]


def test_a_spine_too_thin_for_one_letter_is_told_to_stay_bare() -> None:
    words = Words("Knots", author="N. Corrow", volume="XVIII", date="12 September 1901")
    thin = letter_spine(free_room(Rect(0, 0, 0.2, 21)), words, Spine(HANDS[0]))
    assert {line.help for line in thin.lettering} == {
        "write spine_title: none, or make the book thicker (thicker paper, or more pages, filled up with dummy text): "
        "not even one letter finds room on this spine"
    }
    # so low that the date must stand across, where it is tiny
    wider = letter_spine(free_room(Rect(0, 0, 2, 9)), words, Spine(HANDS[0]))
    assert not any("not even" in line.help for line in wider.lettering)
    assert [line.what for line in wider.lettering if line.text.startswith("12")] == ["date"]
    [told] = [p for p in lettering_problems(wider.lettering, 600) if p.message.startswith("'12 September 1901'")]
    assert told.remedy == "write a shorter date"
