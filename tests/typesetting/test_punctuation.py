"""Typed quotation marks, dashes and points: what becomes of them, and what stays as it is."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.typefaces import bundled
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.lines.fount import Style
from bookmaker.typesetting.manuscripts.manuscript import read_manuscript
from bookmaker.typesetting.punctuation import AS_WRITTEN, punctuation_of

ENGLISH = punctuation_of("en")
TYPED = st.text(st.sampled_from("ab 5\n\"'.,-!?()—’" + Style.ITALIC + Style.ROMAN), max_size=30)
BACK = str.maketrans({"–": "-", "“": '"', "”": '"', "″": '"', "‘": "'", "’": "'", "′": "'"})


@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        ('"Stay," he said, "and don\'t."', "“Stay,” he said, “and don’t.”"),
        ("'Stay,' he said, 'and don't.'", "‘Stay,’ he said, ‘and don’t.’"),
        ("\"He said 'no.'\"", "“He said ‘no.’”"),
        ("'He said \"no\"'", "‘He said “no”’"),
        ('("Stay")', "(“Stay”)"),
        ('He stopped--"no"', "He stopped—“no”"),
        ('"Who--"', "“Who—”"),
        ('"...and so"', "“…and so”"),
        ('"I walked on.', "“I walked on."),
        ("'I walked on.", "‘I walked on."),
        ("'Twas the dogs' bone, in the '90s or '98", "’Twas the dogs’ bone, in the ’90s or ’98"),
        ("rock 'n' roll in the 1890's", "rock ’n’ roll in the 1890’s"),
        ("a board of 6' by 7\" or so", "a board of 6′ by 7″ or so"),
        ("in \"1890\" or '98'", "in “1890” or ‘98’"),
        ("salt -- or ash", "salt – or ash"),
        ("salt--or ash---or lime", "salt—or ash—or lime"),
        ("pages 5--7", "pages 5–7"),
        ("-- Yes.", "— Yes."),
        ("wait... wait.... .....", "wait… wait…. ....."),
        ("well-known, and ---- or", "well-known, and ---- or"),
        ("“typed ‘already’” — …", "“typed ‘already’” — …"),
    ],
)
def test_english(typed: str, printed: str) -> None:
    assert ENGLISH.set(typed) == printed


def test_signs_of_style_are_looked_through_and_typewriter_is_left() -> None:
    italic, roman, typewriter = Style.ITALIC, Style.ROMAN, Style.TYPEWRITER
    assert ENGLISH.set(f'"{italic}Fog{roman}," he said') == f"“{italic}Fog{roman},” he said"
    assert ENGLISH.set(f"'{italic}'Tis{roman}'") == f"‘{italic}’Tis{roman}’"
    assert ENGLISH.set(f'{typewriter}"a--b"{roman}, {typewriter}don\'t "so"') == (
        f'{typewriter}"a--b"{roman}, {typewriter}don\'t “so”'
    )


@given(TYPED)
def test_marks_change_and_nothing_else_does(typed: str) -> None:
    plain = typed.replace("--", "").replace("...", "")
    assert ENGLISH.set(plain).translate(BACK) == plain.translate(BACK)


@given(TYPED)
def test_what_is_set_is_not_changed_again(typed: str) -> None:
    once = ENGLISH.set(typed)
    assert not {'"', "'"} & set(once)
    assert ENGLISH.set(once) == once


def test_words_that_begin_with_an_apostrophe_are_those_of_the_language() -> None:
    assert punctuation_of("de").set("'s ist 'ne Frage, 'sagt er'") == "’s ist ’ne Frage, ‚sagt er‘"
    assert punctuation_of("nl").set("'s Avonds in 't huis") == "’s Avonds in ’t huis"
    assert punctuation_of("it").set("l'eco dell'800") == "l’eco dell’800"


def test_a_language_nobody_knows_has_the_marks_of_english() -> None:
    assert punctuation_of("none") == punctuation_of("zu") == punctuation_of("tlh")


def test_a_typeface_without_some_of_the_marks_keeps_them_as_written() -> None:
    assert punctuation_of("fr").covered(lambda sign: sign != "»") == AS_WRITTEN
    assert AS_WRITTEN.set('"Stay," he said -- so...') == '"Stay," he said -- so...'
    without_primes = ENGLISH.covered(lambda sign: sign not in "′″")
    assert without_primes.set("6' by 7\", it's so") == "6' by 7\", it’s so"


def test_a_text_has_the_marks_of_its_language_unless_it_is_told_not_to(tmp_path: Path) -> None:
    (tmp_path / "log.md").write_text('# "Nebel"\n\n"Ja", `"x"`\n\n![das "Boot"](b.png)', encoding="utf-8")
    marks = punctuation_of("de")
    found = read_manuscript(tmp_path / "log.md", bundled("text"), {}, marks)
    assert found.text == '„Nebel“\n„Ja“, "x"\ndas „Boot“'
    (tmp_path / "log.md").write_text('"Ja"', encoding="utf-8")
    for key, text in (("by language", "«\u00a0Ja\u00a0»"), ("as written", '"Ja"')):
        entry = TextInside.model_validate({"file": "log.md", "language": "fr", "punctuation": key})
        assert entry.load(tmp_path).source.manuscript.text == text


def test_a_text_read_from_right_to_left_keeps_its_marks(tmp_path: Path) -> None:
    (tmp_path / "log.txt").write_text('"שלום"', encoding="utf-8")
    assert read_manuscript(tmp_path / "log.txt", None, {}, punctuation_of("en")).text == '"שלום"'


@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        ("Quoi? Non ! Si;", "Quoi\u202f? Non\u202f! Si\u202f;"),
        ("Il dit : oui", "Il dit\u00a0: oui"),
        ("Hein?! A 10:30", "Hein\u202f?! A 10:30"),
        ("«Ah» et « Oh »", "«\u00a0Ah\u00a0» et «\u00a0Oh\u00a0»"),
        (f"{Style.TYPEWRITER}a;b?{Style.ROMAN}", f"{Style.TYPEWRITER}a;b?{Style.ROMAN}"),
    ],
)
def test_french_marks_stand_apart(typed: str, printed: str) -> None:
    """Narrow before ; ! ?, usual before : and inside guillemets (Lexique, Imprimerie nationale)."""
    assert punctuation_of("fr").set(typed) == printed
    assert punctuation_of("de").set(typed).replace("\u00a0", "") == typed


def test_a_hyphen_between_spaces_is_a_dash() -> None:
    assert punctuation_of("en").set("The fog - or what it was - came well-nigh in") == (
        "The fog – or what it was – came well-nigh in"
    )
    assert punctuation_of("ru").set("Маяк - дом") == "Маяк — дом"
    assert punctuation_of("en").set("-") == "-"
    assert punctuation_of("es").set("- Nadie - dijo ella -. Solo el mar -, y -.5") == (
        "— Nadie — dijo ella —. Solo el mar —, y -.5"
    )


def test_a_hyphen_that_begins_a_paragraph_is_speech_where_a_language_has_it_so() -> None:
    assert punctuation_of("ru").set("- Кто там?") == "— Кто там?"
    assert punctuation_of("en").set("- a lamp") == "- a lamp"
