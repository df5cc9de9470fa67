"""What a book says of itself where its maker says nothing, in the languages that we can say it in.

Where names would have to be inflected the phrases leave them as they are: a label and the name.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import NamedTuple

from fontTools import unicodedata

__all__ = ["Phrases", "language_of_letters", "phrases_in", "spoken"]


class Phrases(NamedTuple):
    """The heading of the table of contents, and the sentences of the colophon."""

    contents: str
    by: str
    made_for: str
    set_in: str


PHRASES = {
    "en": Phrases("Contents", "by {}", "made for {}", "and set in {}"),
    "ar": Phrases("المحتويات", "تأليف {}", "صُنع من أجل {}", "الخط: {}"),
    "da": Phrases("Indhold", "af {}", "lavet til {}", "og sat med {}"),
    "de": Phrases("Inhalt", "von {}", "gemacht für {}", "und gesetzt aus {}"),
    "el": Phrases("Περιεχόμενα", "Συγγραφέας: {}", "Φτιάχτηκε για: {}", "Στοιχεία: {}"),
    "es": Phrases("Índice", "de {}", "hecho para {}", "y compuesto en {}"),
    "fa": Phrases("فهرست", "نوشتهٔ {}", "ساخته‌شده برای {}", "حروف: {}"),
    "fr": Phrases("Table", "par {}", "fait pour {}", "et composé en {}"),
    "he": Phrases("תוכן העניינים", "מאת {}", "נעשה עבור {}", "ונסדר באות {}"),
    "hi": Phrases("विषय-सूची", "लेखक: {}", "इनके लिए बनी: {}", "अक्षर: {}"),
    "it": Phrases("Indice", "di {}", "fatto per {}", "e composto in {}"),
    "ja": Phrases("目次", "{}著", "{}のために作る", "書体は{}"),
    "ko": Phrases("차례", "지은이 {}", "{}에 바침", "글꼴 {}"),
    "nb": Phrases("Innhold", "av {}", "laget for {}", "og satt med {}"),
    "nl": Phrases("Inhoud", "door {}", "gemaakt voor {}", "en gezet in {}"),
    "pl": Phrases("Spis treści", "Autor: {}", "Wykonano dla: {}", "Złożono krojem {}"),
    "pt": Phrases("Índice", "de {}", "feito para {}", "e composto em {}"),
    "ru": Phrases("Содержание", "Автор: {}", "Сделано для: {}", "Набрано шрифтом {}"),
    "sv": Phrases("Innehåll", "av {}", "gjord för {}", "och satt med {}"),
    "zh": Phrases("目录", "{}著", "为{}而作", "字体：{}"),
    "zh-hant": Phrases("目錄", "{}著", "為{}而作", "字體：{}"),
}
"""By language; those of Asia from memory."""

MEANT = {"no": "nb", "nn": "nb", "zh-tw": "zh-hant", "zh-hk": "zh-hant", "zh-mo": "zh-hant"}
"""Tags that have the phrases of another."""

KANA = frozenset({"Hira", "Kana"})

SCRIPTS = {
    "ar": {"Arab"},
    "el": {"Grek"},
    "fa": {"Arab"},
    "he": {"Hebr"},
    "hi": {"Deva"},
    "ja": KANA | {"Hani"},
    "ko": {"Hang", "Hani"},
    "ru": {"Cyrl"},
    "zh": {"Hani"},
}
"""What a language is written in, where that is not Latin (ISO 15924)."""

BY_LETTERS = ("el", "he", "ru", "ar", "hi", "zh", "ko")
"""Languages that letters let expect: of those with the same ones the first."""

SAMPLE = 400
"""So many letters tell the script of a text."""


def phrases_in(language: str) -> Phrases | None:
    """The phrases of a language, by its tag; None if there are none.

    >>> phrases_in("de-AT").contents
    'Inhalt'
    """
    parts = language.replace("_", "-").casefold().split("-")
    tags = ("-".join(parts[:count]) for count in range(len(parts), 0, -1))
    return next((said for tag in tags if (said := PHRASES.get(MEANT.get(tag, tag)))), None)


def language_of_letters(text: str) -> str:
    """The language that the letters of a text let expect, where nobody says which it is.

    >>> language_of_letters("The lamp"), language_of_letters("Маяк")
    ('en', 'ru')
    """
    scripts = [unicodedata.script(sign) for sign in text[:SAMPLE] if sign.isalpha()]
    if not KANA.isdisjoint(scripts):
        return "ja"
    return next((tag for tag in BY_LETTERS if 2 * _count(scripts, SCRIPTS[tag]) > len(scripts)), "en")


def spoken(language: str, text: str) -> str:
    """The language, if the text is written as that is; else nothing, for then the tag was left as it was.

    >>> spoken("en", "The lamp"), spoken("en", "Маяк"), spoken("ru", "Маяк")
    ('en', '', 'ru')
    """
    scripts = [unicodedata.script(sign) for sign in text[:SAMPLE] if sign.isalpha()]
    wanted = SCRIPTS.get(language.partition("-")[0].casefold(), {"Latn"})
    return language if 2 * _count(scripts, wanted) >= len(scripts) else ""


def _count(scripts: Sequence[str], wanted: Collection[str]) -> int:
    return sum(script in wanted for script in scripts)
