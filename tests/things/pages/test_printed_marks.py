"""What a maker typed in the shelf file is printed with the marks of the book's language, wherever it is printed."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker import check
from bookmaker.shelf.plan import ShelfPlan
from tests.kit.by_kind import books_of, box_drafts_of, drafts_of
from tests.kit.recording import record

TYPED = """\
shelf: The "Loft"
stocks:
  page: {{caliper: 75 um, grain: long}}
  cover: {{caliper: 160 um, grain: long}}
  card: {{caliper: 300 um, grain: long}}
defaults:
  size: {{height: 21 mm, width: 15 mm}}
  cover: {{kind: wrap, stock: cover}}
books:
  - title: Mother's "Little" Book -- of Jam...
    author: T. O'Rell
    block: {{stock: page, pages: 40}}
    jacket: {{stock: cover}}
    design: {{style: cloth}}
    inside:
      - {{kind: half title}}
      - {{kind: title page, subtitle: "the cook's \\"own\\" -- 1890--98"}}
      - {{kind: dedication, text: 'To "Mother" -- always'}}
      - {{kind: epigraph, text: "\\"It's\\njam.\\"", source: 'the "Log"'}}
      - {{kind: contents, title: 'What''s "in" it'}}
      - {{kind: text, file: log.txt, language: {language}, punctuation: {punctuation}, listed_as: 'Jam "one"'}}
      - {{kind: colophon}}
slipcases:
  box: {{books: [1], stock: card, faces: {{title: 'The "Box"', colour: "#ffffff"}}}}
"""


def printed(folder: Path, language: str, punctuation: str = "by language") -> tuple[list[str], ShelfPlan]:
    (folder / "log.txt").write_text("The jam was made.", encoding="utf-8")
    (folder / "shelf.yaml").write_text(TYPED.format(language=language, punctuation=punctuation), encoding="utf-8")
    checked = check(folder / "shelf.yaml")
    pieces = [piece for draft in (*drafts_of(checked), *box_drafts_of(checked)) for piece in draft.pieces]
    arts = [art for piece in pieces for art in (piece.art, piece.reverse)]
    texts = [text.text for art in arts for text in record(art).texts]
    labels = [piece.label[0] for piece in pieces]
    assert labels[:-1] == ['Mother\'s "Little" Book -- of Jam...'] * (len(labels) - 1)
    assert {checked.plan.labelled(piece).label[0] for piece in pieces[:-1]} == {f"1. {labels[0]}"}
    return texts, checked.plan


def test_everything_printed_has_the_marks_of_the_language(tmp_path: Path) -> None:
    texts, plan = printed(tmp_path, "de")
    said = " ".join(texts)
    assert '"' not in said and "'" not in said and "--" not in said and "..." not in said
    # cover and jacket each have the title on spine and front, half title, title page and colophon one more
    assert said.count("„Little“") + said.count("„LITTLE“") == 7
    assert said.count("O’Rell") + said.count("O’RELL") >= 4
    for wanted in ("cook’s „own“ – 1890–98", "To „Mother“ – always", "„It’s", "jam.“", "„Log“"):
        assert wanted in said
    for wanted in ("„in“", "„one“", "„Box“"):
        assert wanted in said
    assert books_of(plan)[0].entry.title == 'Mother\'s "Little" Book -- of Jam...'


def test_marks_stay_as_they_are_written_where_the_text_says_so(tmp_path: Path) -> None:
    said = " ".join(printed(tmp_path, "de", "as written")[0])
    for wanted in ('"own" -- 1890--98', 'To "Mother" -- always', '"in"', '"one"', '"Box"'):
        assert wanted in said
    assert said.upper().count('MOTHER\'S "LITTLE" BOOK') + said.upper().count('"LITTLE"') >= 7


def test_what_chance_draws_on_a_cover_hangs_on_what_was_written(tmp_path: Path) -> None:
    """On the id, which is made of the words as they were written: other marks make no other look."""
    words = []
    for marks in ("as written", "by language"):
        words.append(books_of(printed(tmp_path, "de", marks)[1])[0].coat.words)
    plain, german = words
    assert german.title != plain.title
    assert (german.kin, german.seed, german.look) == (plain.kin, plain.seed, plain.look)


@pytest.mark.parametrize(
    ("title", "shown"),
    [("The 'Log'", "The ‘Log’"), ('"Маяк"', "«Маяк»"), ('"Ο Φάρος"', "«Ο Φάρος»"), ('"Log" 5--7', "“Log” 5–7")],
)
def test_the_letters_of_the_title_tell_the_language_of_a_book_without_text(
    title: str, shown: str, tmp_path: Path
) -> None:
    shelf = "shelf: A\nstocks: {p: {caliper: 0.1 mm, grain: long}}\nbooks:\n  - title: "
    shelf += repr(title).replace("\\'", "''")
    shelf += "\n    size: {height: 40 mm, width: 40 mm}\n    block: {stock: p, pages: 4}\n    cover: {stock: p}\n"
    (tmp_path / "shelf.yaml").write_text(shelf, encoding="utf-8")
    assert books_of(check(tmp_path / "shelf.yaml").plan)[0].coat.words.title == shown
