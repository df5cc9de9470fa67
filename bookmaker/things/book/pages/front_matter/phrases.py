"""What a book says of itself where its maker says nothing, in the languages that we can say it in.

Where names would have to be inflected the phrases leave them as they are: a label and the name.
"""

from __future__ import annotations

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
    "da": Phrases("Indhold", "af {}", "lavet til {}", "og sat med {}"),
    "de": Phrases("Inhalt", "von {}", "gemacht für {}", "und gesetzt aus {}"),
    "el": Phrases("Περιεχόμενα", "Συγγραφέας: {}", "Φτιάχτηκε για: {}", "Στοιχεία: {}"),
    "es": Phrases("Índice", "de {}", "hecho para {}", "y compuesto en {}"),
    "fr": Phrases("Table", "par {}", "fait pour {}", "et composé en {}"),
    "he": Phrases("תוכן העניינים", "מאת {}", "נעשה עבור {}", "ונסדר באות {}"),
    "it": Phrases("Indice", "di {}", "fatto per {}", "e composto in {}"),
    "nb": Phrases("Innhold", "av {}", "laget for {}", "og satt med {}"),
    "nl": Phrases("Inhoud", "door {}", "gemaakt voor {}", "en gezet in {}"),
    "pl": Phrases("Spis treści", "Autor: {}", "Wykonano dla: {}", "Złożono krojem {}"),
    "pt": Phrases("Índice", "de {}", "feito para {}", "e composto em {}"),
    "ru": Phrases("Содержание", "Автор: {}", "Сделано для: {}", "Набрано шрифтом {}"),
    "sv": Phrases("Innehåll", "av {}", "gjord för {}", "och satt med {}"),
}
"""By language."""

SCRIPTS = {"el": "Grek", "he": "Hebr", "ru": "Cyrl"}
"""What a language is written in, where that is not Latin (ISO 15924)."""

SAMPLE = 400
"""So many letters tell the script of a text."""


def phrases_in(language: str) -> Phrases | None:
    """The phrases of a language, by its tag; None if there are none.

    >>> phrases_in("de-AT").contents
    'Inhalt'
    """
    first = language.replace("_", "-").partition("-")[0].casefold()
    return PHRASES.get({"no": "nb", "nn": "nb"}.get(first, first))


def language_of_letters(text: str) -> str:
    """The language that the letters of a text let expect, where nobody says which it is.

    >>> language_of_letters("The lamp"), language_of_letters("Маяк")
    ('en', 'ru')
    """
    scripts = [unicodedata.script(sign) for sign in text[:SAMPLE] if sign.isalpha()]
    return next((tag for tag, script in SCRIPTS.items() if 2 * scripts.count(script) > len(scripts)), "en")


def spoken(language: str, text: str) -> str:
    """The language, if the text is written as that is; else nothing, for then the tag was left as it was.

    >>> spoken("en", "The lamp"), spoken("en", "Маяк"), spoken("ru", "Маяк")
    ('en', '', 'ru')
    """
    scripts = [unicodedata.script(sign) for sign in text[:SAMPLE] if sign.isalpha()]
    wanted = SCRIPTS.get(language.partition("-")[0].casefold(), "Latn")
    return language if 2 * scripts.count(wanted) >= len(scripts) else ""
