"""The languages whose words can be parted, by their English names: for makers who do not know the tags."""

from __future__ import annotations

from ..errors import near_match
from .hyphens import languages

__all__ = ["LANGUAGES", "meant_language"]

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
"""Language tags (BCP 47) without their regions, and what the languages are called in English."""

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
    names = {name.casefold(): tag for tag, name in LANGUAGES.items()} | OTHER_NAMES
    tag = names.get(near_match(written, names), "") or _near_tag(written)
    if tag:
        return f"did you mean {tag}, {LANGUAGES[tag.partition('-')[0]]}?"
    return f"write none for no hyphens, or one of {', '.join(LANGUAGES)}"


def _near_tag(written: str) -> str:
    """The tag that one with a slip in it may mean; two letters alone are too few to tell."""
    return near_match(written, languages()) if len(written) > 2 else ""
