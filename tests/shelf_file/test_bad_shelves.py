"""Shelf files that hurt: each gets one clear message with its place and a remedy, and nothing is written."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image

from bookmaker import check
from bookmaker.cli import messages as reports
from bookmaker.ground.problems import Place, Problem, ShelfFileError
from tests.kit.command_line import bookmaker
from tests.kit.pictures import png_bomb
from tests.kit.shelves import ONE_BOOK, changed, refused, written

LENGTH = "write a length from 1 mm to 400 mm"
COUNT = "write a whole number from 2 to 2000"
BESIDE = "write its path as seen from the folder of the shelf file"
TOO_MUCH = "aliases or nested lists make more values than any shelf has; write the values out, without & and *"
LAID = "laid: {caliper: 75 um, glue: 15 um, grain: long}"
OFFICE = "grammage: 80 g/m2, bulk: 1.25 cm3/g"
PILE = "a measured pile: 20 sheets = 1.52 mm"
WORD = "'{}' is not a length; write it like 21 mm or 7/8 in"


def height(written: str) -> tuple[str, str]:
    return "height: 21 mm", f"height: {written}"


def pages(written: str) -> tuple[str, str]:
    return "pages: 48", f"pages: {written}"


def block(written: str) -> tuple[str, str]:
    """A block of another kind."""
    return "kind: accordion, stock: laid", f"kind: {written}"


def last(written: str) -> tuple[str, str]:
    """Another line at the end of the book."""
    return "    space: upper", f"    {written}"


ONE_SLIP = [
    # lengths
    (height("21"), "9:20: Tide Tables: size.height: 21 has no unit; write 21 mm"),
    (
        height("21 kg"),
        "9:20: Tide Tables: size.height: 'kg' is not a unit of length; write it in mm, cm, m, um, in, ft, mil, pt",
    ),
    (height("-21 mm"), "9:20: Tide Tables: size.height: -21 mm is negative; write 21 mm"),
    (height("0 mm"), f"9:20: Tide Tables: size.height: 0 mm is out of range; {LENGTH}"),
    (height("3 m"), f"9:20: Tide Tables: size.height: 3 m is out of range; {LENGTH}"),
    (height("0.01 mm"), f"9:20: Tide Tables: size.height: 0.01 mm is out of range; {LENGTH}"),
    (height("NaN mm"), "9:20: Tide Tables: size.height: " + WORD.format("NaN mm")),
    (height(".nan"), "9:20: Tide Tables: size.height: " + WORD.format(".nan")),
    (height("inf mm"), "9:20: Tide Tables: size.height: " + WORD.format("inf mm")),
    (height(".inf"), "9:20: Tide Tables: size.height: " + WORD.format(".inf")),
    (height("1e3 mm"), "9:20: Tide Tables: size.height: 1e3 mm has an exponent; write the number out in full"),
    (height(""), "9:19: Tide Tables: size.height is empty; write a value or leave the line out"),
    (
        height("[21 mm]"),
        "9:20: Tide Tables: size.height is a list where one value belongs; write one value on the line",
    ),
    *(
        ((LAID, f"laid: {written}"), f"3:{column}: {said}")
        for written, column, said in (
            ("80 g", 9, f"stocks.laid is not a group of keys; write laid: {{{OFFICE}}}"),
            ("250 gsm", 9, "stocks.laid is not a group of keys; write laid: {grammage: 250 g/m2, bulk: 1.15 cm3/g}"),
            ("20 lb bond", 9, "stocks.laid is not a group of keys; write laid: {basis_weight: 20 lb bond}"),
            ("{basis_weight: 80 g}", 24, f"'80 g' is not a basis weight; write {OFFICE} in its place"),
            (
                "{basis_weight: 60 lb cover}",
                24,
                "the caliper of 60 lb cover is in no table here; add bulk: 1.35 cm3/g, as papers of "
                f"this grade have, or best {PILE}",
            ),
            (
                "{grammage: 250 g}",
                9,
                "stocks.laid says nothing about its thickness; "
                f"add bulk: 1.15 cm3/g, as most paper of this weight has, or best {PILE}",
            ),
            ("{}", 9, f"stocks.laid says nothing about its thickness; add caliper: 90 um, or {OFFICE}, or best {PILE}"),
        )
    ),
    (("caliper: 75 um", "caliper: 75"), "3:19: stocks.laid.caliper: 75 has no unit; write 75 um"),
    # keys that stand elsewhere, or are called otherwise
    (
        ("spaces:", "box: {}\nspaces:"),
        "5:1: the shelf has an unknown key 'box'; "
        "write it in the list things: with kind: lidded box or hinged box or tuck box or drawer box",
    ),
    (
        ("spaces:", "sheet_size: letter\nspaces:"),
        "5:1: the shelf has an unknown key 'sheet_size'; write printer: {sheet: letter}",
    ),
    (
        ("stocks:", "printer: {sheet_size: letter}\nstocks:"),
        "2:11: printer has an unknown key 'sheet_size'; did you mean sheet?",
    ),
    (
        last("kind: box"),
        "12:5: Tide Tables has an unknown key 'kind'; "
        "leave kind out; what is no book, such as a box, stands in the list things:",
    ),
    (
        ("height: 21 mm", "length: 21 mm"),
        "9:12: Tide Tables: size has an unknown key 'length'; did you mean height?",
    ),
    # pages
    (pages("0"), f"10:50: Tide Tables: block.pages: 0 is out of range; {COUNT}"),
    (pages("100000"), f"10:50: Tide Tables: block.pages: 100000 is out of range; {COUNT}"),
    (pages("7"), "10:50: Tide Tables: block.pages: 7 is odd, but a leaf has two pages; write 6 or 8"),
    (pages("-2"), "10:50: Tide Tables: block.pages: -2 is negative; write a whole number such as 48"),
    (
        pages("48.5"),
        "10:50: Tide Tables: block.pages: '48.5' is not a whole number; write one in digits, such as 48",
    ),
    # names
    (
        pages("48, trim: 1 mm"),
        "10:54: Tide Tables: block has an unknown key 'trim'; write kind: leaves or kind: sections, or leave trim out",
    ),
    (
        last("design: {palette: harbour}"),
        "12:14: Tide Tables: design has an unknown key 'palette'; "
        "write style: cloth, or another of leather, half leather, "
        "paper boards, picture, paperback, ledger, atlas, school, pamphlet, or leave palette out",
    ),
    (
        last("design: {style: cloth, spine_picture: a.png}"),
        "12:28: Tide Tables: design has an unknown key 'spine_picture'; "
        "write style: picture, or leave spine_picture out",
    ),
    (
        last("pages: 48"),
        "12:5: Tide Tables has an unknown key 'pages'; write block: {pages: 48} or inside: {pages: 48}",
    ),
    (
        last("palette: harbour"),
        "12:5: Tide Tables has an unknown key 'palette'; write design: {palette: harbour}",
    ),
    (
        last('edge_colour: "#8c3b2e"'),
        "12:5: Tide Tables has an unknown key 'edge_colour'; write block: {edge_colour: \"#8c3b2e\"}",
    ),
    (
        last("inside: {kind: title page, date: 1901}"),
        "12:32: Tide Tables: inside has an unknown key 'date'; did you mean year?",
    ),
    (
        ("accordion, stock: laid, pages: 48}", "dummy, thickness: 4 mm, edge_stock: laid, edges: red}"),
        "10:68: Tide Tables: block.edges: red is a colour, not how edges are made; "
        'write edges: stained and edge_colour: "#8c3b2e", in quotes',
    ),
    (
        last("a Treatise:"),
        "12:5: Tide Tables has an unknown key 'a Treatise'; "
        "give it a value; or, if it is part of a text that holds a comma, put that text in quotes",
    ),
    (last("spcae: upper"), "12:5: Tide Tables has an unknown key 'spcae'; did you mean space?"),
    (("spaces:", "spcaes:"), "5:1: the shelf has an unknown key 'spcaes'; did you mean spaces?"),
    (
        pages("48, zzz: 1"),
        "10:54: Tide Tables: block has an unknown key 'zzz'; known here: "
        "measured_thickness, pages, as_thick_as, kind, stock, fill_strips, longest_strip, flyleaves, joint, tab, "
        "spring, scored",
    ),
    (
        last("<<: {space: upper}"),
        "12:5: Tide Tables has an unknown key '<<'; write what books share under defaults",
    ),
    (("stock: laid", "stock: liad"), "10:37: there is no stock 'liad'; did you mean 'laid'?"),
    (("stock: laid", "stock: vellum"), "10:37: there is no stock 'vellum'; write one of laid, card"),
    (last("space: uper"), "12:12: there is no space 'uper'; did you mean 'upper'?"),
    (last("space: attic"), "12:12: there is no space 'attic'; write upper"),
    (("kind: wrap", "kind: warp"), "11:19: Tide Tables: cover.kind: 'warp' is not known; did you mean wrap?"),
    (
        last("design: {colour: red}"),
        '12:22: Tide Tables: design.colour: red is not a colour; write "#a8262b" for it, in quotes; '
        "bookmaker manual colours lists more",
    ),
    (
        ("Tide Tables", '"Tide \\e[31mTables"'),
        "8:12: the text holds the control character U+001B; write visible letters only",
    ),
    (("laid:", '"l\\e[31m":'), "3:3: the text holds the control character U+001B; write visible letters only"),
    (("Tide Tables", '"\\uD800"'), "8:12: the text holds the control character U+D800; write visible letters only"),
    # shapes
    (
        ("stocks:", "defaults: 3\nstocks:"),
        "2:11: defaults is not a group of keys; write keys and values under it, or between { and }",
    ),
    (("stocks:", "default: {}\nstocks:"), "2:1: the shelf has an unknown key 'default'; did you mean defaults?"),
    (
        ("  - title: Tide Tables\n", "  - Tide\n  - title: Tide Tables\n"),
        "8:5: book 1 is not a group of keys; write keys and values under it, or between { and }",
    ),
    (
        last("design: cloht"),
        "12:13: Tide Tables: design is not a group of keys; write design: {style: cloth}",
    ),
    (
        last("design: half leather"),
        "12:13: Tide Tables: design is not a group of keys; write design: {style: half leather}",
    ),
    (
        ("{kind: accordion, stock: laid, pages: 48}", "leaves"),
        "10:12: Tide Tables: block is not a group of keys; write block: {kind: leaves}",
    ),
    (
        last("inside: 48"),
        "12:13: Tide Tables: inside is not a group of keys; write keys and values under it, or between { and }",
    ),
    (
        ("caliper: 75 um, ", ""),
        f"3:9: stocks.laid says nothing about its thickness; add caliper: 90 um, or {OFFICE}, or best {PILE}",
    ),
    (
        ("stocks:", "printer: {margins: 99 mm}\nstocks:"),
        "2:20: the margins leave 12 mm × 99 mm of A4; "
        "write smaller margins or a larger sheet: 40 mm must be left each way",
    ),
    # YAML
    (
        ("{height: 21 mm, width", "{height: 21 mm width"),
        "9:26: a comma is missing before width; write , width: with a comma before it",
    ),
    (("stocks:", "stocks"), "2:1: the key stocks has no colon after it; write stocks:"),
    (
        ("    size", "   size"),
        "9:4: this line does not stand under the lines of its group; write 4 blanks before it",
    ),
    (("    size", "\tsize"), "9:1: the line is indented with a tab; indent with spaces"),
    (
        ("Tide Tables", "Tide: Tables"),
        '8:12: a colon with a blank after it ends a key; put the whole text in double quotes: "Tide: Tables"',
    ),
    (
        ("  - title: Tide Tables", "  - shown: Tide: Tables"),
        '8:12: a colon with a blank after it ends a key; put the whole text in double quotes: "Tide: Tables"',
    ),
    (
        ("Tide Tables", "*tide"),
        "8:12: a text cannot begin with *, which repeats what an & has named; "
        'put the whole text in double quotes: "*tide"',
    ),
    (
        ("Tide Tables", "{text: |\n    tide}"),
        "8:19: a | cannot stand between { and } or [ and ]; "
        'put the keys of this group on lines of their own, or write "…\\n…" in double quotes',
    ),
    (
        ("Tide Tables", "[>-\n    tide]"),
        "8:13: a > cannot stand between { and } or [ and ]; "
        'put the keys of this group on lines of their own, or write "…\\n…" in double quotes',
    ),
    (
        ("Tide Tables", "|tide"),
        "8:12: a text cannot begin with |, which announces lines of text below; "
        'put the whole text in double quotes: "|tide", or begin it on the next line, further in',
    ),
    (
        ("Tide Tables", "@tide"),
        '8:12: a text cannot begin with @, which is kept for later; put the whole text in double quotes: "@tide"',
    ),
    (
        ("Tide Tables", '"Tide'),
        '8:12: the quotation mark at the beginning is not closed; write the same mark at the end: "Tide"',
    ),
    (
        last("design: {colour: #ff0000}"),
        "12:22: from #ff0000 on this is a note to yourself, no value is left; "
        'put the value in quotes, as "#ff0000"; a note has a blank after the #',
    ),
    (
        last("design:\n      colour: #ff0000"),
        "13:15: from #ff0000 on this is a note to yourself, no value is left; "
        'put the value in quotes, as "#ff0000"; a note has a blank after the #',
    ),
    (
        ("Tide Tables", "Tide Table #1 of many # the thin one"),
        "8:23: from #1 on this is a note to yourself, only 'Tide Table' is left; "
        'put the value in quotes, as "Tide Table #1 of many"; a note has a blank after the #',
    ),
    (
        last("design: {colour: , ink: red"),
        "12:32: the { before colour is not closed; write } at the end of this line",
    ),
    (("space: upper", "space: upper\n---\nshelf: More"), "13:1: --- begins a second shelf; keep one shelf in a file"),
    (
        last("space: upper\n    space: upper"),
        "13:5: the key 'space' stands here a second time; it is on line 12 already; keep one of the two",
    ),
    (last("[a, b]: c"), "12:5: a key is a word here, not a list or a group; write key: value"),
    # files that books name
    (
        last('inside: {kind: text, file: ""}'),
        "12:32: Tide Tables: inside.file is empty; write a value or leave the line out",
    ),
    (
        last('inside: {kind: pictures, folder: " "}'),
        "12:38: Tide Tables: inside.folder is empty; write a value or leave the line out",
    ),
    (last("inside: {kind: text, file: lost.txt}"), f"12:32: there is no text lost.txt; {BESIDE}"),
    (
        last("inside: {kind: text, file: latin.txt}"),
        "12:32: latin.txt is not UTF-8: byte 3 (line 1) is 0xFC; save it as plain text in UTF-8",
    ),
    (
        last("inside: {kind: text, file: void.txt}"),
        "12:32: void.txt has no words in it; write a text into it, or choose kind: blank",
    ),
    (last("design: {front_picture: lost.png}"), f"12:29: there is no picture lost.png; {BESIDE}"),
    (
        last("design: {front_picture: void.txt}"),
        "12:29: void.txt is empty (0 bytes); save or copy it again from where it came",
    ),
    (
        last("design: {front_picture: latin.txt}"),
        "12:29: latin.txt is not a picture; write the name of a picture file, or save it as JPEG, PNG, WebP or TIFF",
    ),
    (
        last("design: {back_picture: cut.png}"),
        "12:28: cut.png is damaged or cut short; save or copy it again from where it came",
    ),
    (
        last("design: {back_picture: bomb.png}"),
        "12:28: bomb.png has 60000 × 60000 pixels, more than 100 million; "
        "scale it down to 10000 × 10000 pixels or fewer",
    ),
    # the sheet
    (
        ("width: 15 mm", "width: 150 mm"),
        "10:37: a strip of two pages is 300 mm × 21 mm, but the A4 sheet of laid has room for 195.6 mm × 269.6 mm "
        "with its grain along the folds; give laid the sheet legal and grain: short, or make it smaller",
    ),
    # stiff paper in folds
    (
        ("caliper: 75 um", "caliper: 250 um"),
        "10:37: laid is 0.25 mm thick; paper over 0.2 mm cracks in a tight fold; "
        "score every fold and write scored: yes, or take a thinner paper",
    ),
    # leaves and sections
    (block("leafs, stock: laid"), "10:19: Tide Tables: block.kind: 'leafs' is not known; did you mean leaves?"),
    (
        block("leaves, stock: laid, printing: front"),
        "10:50: Tide Tables: block.printing: 'front' is not known; write one of both sides, one side",
    ),
    (
        block("sections, stock: laid, pages_in_section: 6"),
        "10:60: Tide Tables: block.pages_in_section: 6 is not a multiple of 4, but a folded sheet has four pages; "
        "write 4 or 8",
    ),
    (
        block("sections, stock: laid, pages_in_section: 404"),
        "10:60: Tide Tables: block.pages_in_section: 404 is out of range; "
        "write a multiple of 4 from 4 to 400, or automatic",
    ),
    (
        block("sections, stock: laid, pages_in_section: many"),
        "10:60: Tide Tables: block.pages_in_section: 'many' is not a whole number; "
        "write one in digits, such as 48, or automatic",
    ),
    (
        block("sections, stock: laid, pages_in_section: "),
        "10:59: Tide Tables: block.pages_in_section is empty; write a value or leave the line out",
    ),
    (
        block("sections, stock: laid, stations: 1"),
        "10:52: Tide Tables: block.stations: 1 is out of range; write a whole number from 2 to 40",
    ),
    (block("sections, stock: laid, thread: 0.15"), "10:50: Tide Tables: block.thread: 0.15 has no unit; write 0.15 mm"),
    (
        block("sections, stock: laid, fold: quarto, trim: 0 mm"),
        "10:62: without a trim the folds at the head of the quarto stay closed and its pages cannot be opened; "
        "write trim: 1 mm, or leave it out",
    ),
]

ALIASES = "a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n" + "".join(
    f"a{i}: &a{i} [{', '.join([f'*a{i - 1}'] * 10)}]\n" for i in range(1, 9)
)

WHOLE_FILES = {
    "empty": (b"", "salt.yaml: the file is empty; describe a shelf; 'bookmaker new DIR' writes one to start from"),
    "only notes": (
        b"# later\n",
        "salt.yaml: the file is empty; describe a shelf; 'bookmaker new DIR' writes one to start from",
    ),
    "binary": (
        bytes(range(256)),
        "salt.yaml: this is not a text file; write the shelf in a text editor and save it as UTF-8",
    ),
    "latin": (
        ONE_BOOK.replace("Tide", "Tîde").encode("latin-1"),
        "salt.yaml:8:13: this letter (byte 0xEE) is not UTF-8 text; save the file with the encoding UTF-8",
    ),
    "list": (
        b"- a\n- b\n",
        "salt.yaml:1:1: the file does not describe a shelf; write keys and values, beginning with shelf: and a name",
    ),
    "no books": (
        ONE_BOOK.partition("  - title")[0].encode(),
        "salt.yaml:7:7: books is empty; write a list, each item after a -",
    ),
    "empty list of books": (
        ONE_BOOK.partition("books:")[0].encode() + b"books: []\n",
        "salt.yaml:7:8: books lists 0 books; write from 1 to 5000",
    ),
    "alias bomb": (ALIASES.encode() + ONE_BOOK.encode(), f"salt.yaml:1:34: {TOO_MUCH}"),
    "alias of itself": (b"shelf: &a [*a]\n", f"salt.yaml:1:8: {TOO_MUCH}"),
    "deep": (b"shelf: " + b"[" * 5000, f"salt.yaml: {TOO_MUCH}"),
    "10 MB": (
        b"#" * 10_000_000,
        "salt.yaml has 10 MB, more than 2 MB; keep long texts in files of their own and name them under inside",
    ),
}

SEVERAL = {
    "in the file": (
        [height("21"), pages("7"), ("caliper: 75 um", "caliper: 75"), ("kind: wrap", "kind: warp"), ("60 mm", "60")],
        [
            "3:19: stocks.laid.caliper: 75 has no unit; write 75 um",
            "6:18: spaces.upper.width: 60 has no unit; write 60 mm",
            "9:20: Tide Tables: size.height: 21 has no unit; write 21 mm",
            "10:50: Tide Tables: block.pages: 7 is odd, but a leaf has two pages; write 6 or 8",
            "11:19: Tide Tables: cover.kind: 'warp' is not known; did you mean wrap?",
        ],
    ),
    "on one line": (
        [height("21"), ("width: 15 mm", "width: 15")],
        [
            "9:20: Tide Tables: size.height: 21 has no unit; write 21 mm",
            "9:31: Tide Tables: size.width: 15 has no unit; write 15 mm",
        ],
    ),
    "names and files": (
        [("stock: laid", "stock: liad"), last("space: uper\n    inside: {kind: text, file: lost.txt}")],
        [
            "10:37: there is no stock 'liad'; did you mean 'laid'?",
            "12:12: there is no space 'uper'; did you mean 'upper'?",
            f"13:32: there is no text lost.txt; {BESIDE}",
        ],
    ),
    "sheet and files": (
        [("height: 21 mm", "height: 350 mm"), last("design: {front_picture: lost.png}")],
        [
            "9:11: the page is 350 mm high: at 1:12 the real book would be 4200 mm high; "
            "write life_size: {height: 350 mm, width: 15 mm} in place of size if these are the sides of the real book",
            "10:37: a strip of two pages is 30 mm × 350 mm, but the A4 sheet of laid has room for 195.6 mm × 269.6 mm "
            "with its grain along the folds; give laid the sheet tabloid, or make it smaller",
            f"12:29: there is no picture lost.png; {BESIDE}",
        ],
    ),
    "defaults, said once": (
        [("books:", "defaults: {blok: 1, design: {ink: red}}\nbooks:"), last("space: upper\n  - title: Ebb")],
        [
            "7:12: defaults has an unknown key 'blok'; did you mean block?",
            '7:35: defaults.design.ink: red is not a colour; write "#a8262b" for it, in quotes; '
            "bookmaker manual colours lists more",
            "14:5: Ebb has no cover; add cover: how they are covered",
            "14:5: Ebb has no size; "
            "write either size: {height: 21 mm, width: 15 mm} or life_size with the full-size page",
        ],
    ),
}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "latin.txt").write_bytes("Grüße".encode("latin-1"))
    (tmp_path / "void.txt").write_bytes(b"")
    (tmp_path / "bomb.png").write_bytes(png_bomb(60_000))
    Image.effect_noise((60, 60), 80).save(tmp_path / "whole.png")
    data = (tmp_path / "whole.png").read_bytes()
    (tmp_path / "cut.png").write_bytes(data[: len(data) // 2])
    return tmp_path


def said(folder: Path, data: str | bytes) -> str:
    """What a shelf file with these bytes is told."""
    return "\n".join(refused(data, folder, "salt.yaml"))


def test_the_shelf_without_slips_is_sound(folder: Path) -> None:
    (folder / "salt.yaml").write_text(ONE_BOOK, encoding="utf-8")
    assert check(folder / "salt.yaml").problems == ()


@pytest.mark.parametrize(("slip", "message"), ONE_SLIP, ids=lambda part: str(part)[:50])
def test_one_slip_gets_one_message(folder: Path, slip: tuple[str, str], message: str) -> None:
    assert said(folder, changed(slip)) == f"salt.yaml:{message}"


@pytest.mark.parametrize("case", WHOLE_FILES)
def test_a_file_that_is_no_shelf_is_named(folder: Path, case: str) -> None:
    data, message = WHOLE_FILES[case]
    assert said(folder, data) == message


@pytest.mark.parametrize("case", SEVERAL)
def test_independent_problems_come_together_in_file_order(folder: Path, case: str) -> None:
    slips, messages = SEVERAL[case]
    assert said(folder, changed(*slips)).splitlines() == [f"salt.yaml:{message}" for message in messages]


def test_a_shelf_file_that_is_not_there_or_a_folder(tmp_path: Path) -> None:
    for name, message in (
        (
            "none.yaml",
            "there is no shelf file none.yaml; write its path as seen from the folder you are in, "
            "or begin one with bookmaker new my-shelf",
        ),
        (
            "",
            f"{tmp_path.name} is a folder, not a shelf file; "
            "write the name of the shelf file in it, such as my-shelf/shelf.yaml",
        ),
    ):
        with pytest.raises(ShelfFileError) as caught:
            check(tmp_path / name)
        assert str(caught.value) == message


REFUSED = {
    "unit": changed(height("21")),
    "yaml": changed(("stocks:", "stocks")),
    "stock": changed(("stock: laid", "stock: liad")),
    "picture": changed(last("design: {back_picture: cut.png}")),
    "wide": changed(("width: 15 mm", "width: 150 mm")),
    "binary": bytes(range(256)),
    "empty": b"",
}


@pytest.mark.parametrize("case", REFUSED)
def test_a_refused_shelf_leaves_earlier_output_byte_for_byte(folder: Path, case: str) -> None:
    shelf, out = written(ONE_BOOK, folder, "salt.yaml"), folder / "out"
    command = ("make", str(shelf), "--into", str(out))
    assert bookmaker(*command).code == 0
    before = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file() and path != shelf}
    assert {path.name for path in before if path.parent == out} == {"laid.pdf", "card.pdf", "guide.pdf", "plan.json"}
    written(REFUSED[case], folder, "salt.yaml")
    said = bookmaker(*command)
    assert said.code == 2
    after = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file() and path != shelf}
    assert after == before
    assert said.out == ""
    assert said.err.startswith("salt.yaml:")


def test_the_line_at_fault_is_shown(folder: Path) -> None:
    assert bookmaker("check", str(written(changed(pages("7")), folder, "salt.yaml"))).err == (
        "salt.yaml:10:50: Tide Tables: block.pages: 7 is odd, but a leaf has two pages; write 6 or 8\n"
        "    block: {kind: accordion, stock: laid, pages: 7}\n"
    )


@pytest.mark.parametrize("author", ["A", "A" * 60, "A" * 150, "A" * 290])
def test_of_a_long_line_the_part_at_fault_is_shown(author: str) -> None:
    line = f"  - {{title: Tide Tables, author: {author}, space: attic, date: {'1' * 200}}}"
    place = Place("salt.yaml", 7, line.index("attic") + 1, line)
    shown = reports.message(Problem("there is no space 'attic'", place=place)).splitlines()[1].strip()
    assert "space: attic, date: 1" in shown
    assert len(shown) <= 100
    assert shown.endswith("1…")
    assert shown.startswith("- {title: Tide" if len(author) < 50 else "…")
    assert shown.strip("…") in line


def test_a_line_of_a_hundred_letters_is_shown_whole() -> None:
    line = "x" * 95 + " end."
    assert reports.message(Problem("no", place=Place("salt.yaml", 7, 97, line))) == f"salt.yaml:7:97: no\n    {line}"
