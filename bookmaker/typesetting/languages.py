"""The languages a text can be in, by their English names: for makers who do not know the tags."""

from __future__ import annotations

from collections.abc import Iterator

from ..ground.problems import Problem, Severity, near_match
from .lines.hyphens import languages

__all__ = ["LANGUAGES", "UNPARTABLE", "meant_language", "unparted"]

LANGUAGES = {
    "af": "Afrikaans",
    "as": "Assamese",
    "be": "Belarusian",
    "bg": "Bulgarian",
    "ca": "Catalan",
    "cs": "Czech",
    "da": "Danish",
    "de": "German",
    "el": "Greek",
    "en": "English",
    "eo": "Esperanto",
    "es": "Spanish",
    "et": "Estonian",
    "eu": "Basque",
    "fr": "French",
    "gl": "Galician",
    "hr": "Croatian",
    "hu": "Hungarian",
    "id": "Indonesian",
    "is": "Icelandic",
    "it": "Italian",
    "kn": "Kannada",
    "lt": "Lithuanian",
    "lv": "Latvian",
    "mn": "Mongolian",
    "mr": "Marathi",
    "nb": "Norwegian Bokmål",
    "nl": "Dutch",
    "nn": "Norwegian Nynorsk",
    "or": "Odia",
    "pa": "Punjabi",
    "pl": "Polish",
    "pt": "Portuguese",
    "ro": "Romanian",
    "ru": "Russian",
    "sa": "Sanskrit",
    "sk": "Slovak",
    "sl": "Slovenian",
    "sq": "Albanian",
    "sr": "Serbian",
    "sv": "Swedish",
    "te": "Telugu",
    "th": "Thai",
    "uk": "Ukrainian",
    "zu": "Zulu",
}
"""Languages whose words can be parted: tags (BCP 47) without their regions, and what they are called in English."""

UNPARTABLE = {
    "ar": "Arabic",
    "fa": "Persian",
    "fi": "Finnish",
    "he": "Hebrew",
    "hi": "Hindi",
    "tr": "Turkish",
    "vi": "Vietnamese",
}
"""Languages whose punctuation is known, but no places where their words may be parted."""

WITHOUT_BLANKS = {"ja": "Japanese", "ko": "Korean", "zh": "Chinese"}
"""Languages whose lines may end between any two signs, but for those that `lines.ideographs` knows of."""

NEVER_PARTED = frozenset({"ar", "fa", "he", "vi"})
"""Languages whose words nobody parts: those read from right to left, and one written syllable by syllable."""

OTHER_NAMES = {
    "british": "en-GB",
    "british english": "en-GB",
    "american": "en-US",
    "american english": "en-US",
    "norwegian": "nb",
}
"""What makers may call them as well."""


def meant_language(written: str) -> str:
    """What to write in place of a language that is not known: the tag of a name like it, or one of all.

    >>> meant_language("english"), meant_language("Itallian")
    ('did you mean en, English?', 'did you mean it, Italian?')
    """
    every = LANGUAGES | UNPARTABLE | WITHOUT_BLANKS
    names = {name.casefold(): tag for tag, name in every.items()} | OTHER_NAMES
    tag = names.get(near_match(written, names), "") or _near_tag(written)
    if tag:
        return f"did you mean {tag}, {every[tag.partition('-')[0]]}?"
    return f"write none for no hyphens, or one of {', '.join(sorted(every))}"


def unparted(language: str) -> Iterator[Problem]:
    """A note on a language whose words are left whole although their maker did not ask for that."""
    tag = language.replace("_", "-").partition("-")[0].casefold()
    if tag in UNPARTABLE:
        yield Problem(
            f"where {UNPARTABLE[tag]} words can be hyphenated is not known here: they are left whole",
            "" if tag in NEVER_PARTED else "write soft hyphens into the text, where lines are too loose",
            Severity.NOTE,
            field=("language",),
        )


def _near_tag(written: str) -> str:
    """The tag that one with a slip in it may mean; two letters alone are too few to tell."""
    return near_match(written, languages()) if len(written) > 2 else ""
