"""A single value as a maker would write it in YAML: plain where it can be, in quotes where it must."""

from __future__ import annotations

import re

__all__ = ["Quotes", "in_quotes", "lines_of_block", "on_one_line", "quotes_for"]

Quotes = str
"""The sign around a text: ``"``, ``'``, or nothing."""

SIGNS = frozenset("-?:,[]{}#&*!|>'\"%@`=+<~.^$/\\")
"""What a plain text does not begin with: signs of YAML, and some that look like one."""

HARMLESS = re.compile(r"[.^$/\\+<=~-](?=[^\W_])|\./|\.\./|/")
"""A sign before a letter or a number that means nothing to YAML, as in ``-5`` or ``../texts``."""

BROKEN = re.compile(r":(?:\s|\Z)|\s#|^(?:---|\.\.\.)|^\s|\s\Z")
BROKEN_IN_BRACES = re.compile(r"[,\[\]{}]")

NOTHING = ("", "~", "null")
"""Texts that stand for no value, unless they are in quotes."""

OTHERWISE = re.compile(
    r"(?i:yes|no|y|n|true|false|on|off|null|~)"
    r"|[-+]?(?:[0-9][0-9_,]*)?\.?[0-9_]*(?:[eE][-+]?[0-9]+)?"  # 1984, 1.5, 1e3
    r"|0x[0-9a-fA-F_]+|0o?[0-7_]+|0b[01_]+|[-+]?\.(?i:inf|nan)"
    r"|[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}(?:[Tt ].*)?"  # 2001-02-03
    r"|[-+]?[0-9]+(?::[0-9]{1,2})+(?:\.[0-9]*)?"  # 12:30
)
"""What many readers of YAML take for something else than words."""

ESCAPES = {"\\": "\\\\", '"': '\\"', "\n": "\\n", "\t": "\\t", "\r": "\\r", "\0": "\\0"}

PRINTED = re.compile("[ -~\xa0-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]*")
"""Text that stands in any YAML text as it is, without line ends."""

UNSEEN = "\u2028\u2029"
"""Line ends to some programs that read the text."""


def on_one_line(text: str | None, *, braces: bool, like: Quotes = "", words: bool = False) -> str:
    """A value on one line; `braces`: between brackets or braces, `words`: never to be taken for a number or a yes.

    `like` are the quotes that the value had before, if it did not need them: it keeps them.

    >>> on_one_line("Salt: a history", braces=False), on_one_line("Salt, Rope", braces=False)
    ('"Salt: a history"', 'Salt, Rope')
    >>> on_one_line("1984", braces=False), on_one_line("1984", braces=False, words=True)
    ('1984', '"1984"')
    """
    if text is None:
        return "~"
    needed = quotes_for(text, braces=braces, words=words)
    return in_quotes(text, like or needed) if like or needed else text


def quotes_for(text: str, *, braces: bool, words: bool = False) -> Quotes:
    """The quotes that a text needs: none, or those that need fewest signs of their own within."""
    plain = (
        text not in NOTHING
        and PRINTED.fullmatch(text)
        and not set(text) & set(UNSEEN)
        and (text[0] not in SIGNS or HARMLESS.match(text))
        and not BROKEN.search(text)
        and not (braces and BROKEN_IN_BRACES.search(text))
        and not (words and OTHERWISE.fullmatch(text))
    )
    if plain:
        return ""
    return "'" if ('"' in text or "\\" in text) and "'" not in text else '"'


def in_quotes(text: str, quotes: Quotes) -> str:
    """A text between quotes; double ones stand in for single ones where something has to be spelled out.

    >>> in_quotes("it's", "'"), in_quotes("two\\nlines", "'")
    ("'it''s'", '"two\\\\nlines"')
    """
    if quotes == "'" and PRINTED.fullmatch(text) and not set(text) & set(UNSEEN):
        return "'" + text.replace("'", "''") + "'"
    return '"' + "".join(map(_spelled, text)) + '"'


def _spelled(sign: str) -> str:
    if sign in ESCAPES:
        return ESCAPES[sign]
    if PRINTED.fullmatch(sign) and sign not in UNSEEN:
        return sign
    code = ord(sign)
    return f"\\x{code:02x}" if code < 0x100 else f"\\u{code:04x}" if code < 0x10000 else f"\\U{code:08x}"


def lines_of_block(text: str) -> tuple[str, list[str]] | None:
    """The sign and the lines of a text of several lines, not indented yet; None for what needs quotes.

    >>> lines_of_block("one\\ntwo\\n"), lines_of_block("one\\ntwo")
    (('|', ['one', 'two']), ('|-', ['one', 'two']))
    """
    lines = text.removesuffix("\n").split("\n")
    printed = all(PRINTED.fullmatch(line) and not set(line) & set(UNSEEN) and not line.isspace() for line in lines)
    if len(lines) < 2 or not printed or not lines[-1] or lines[0][:1] in ("", " ") or lines[-1].endswith(" "):
        return None
    return "|" if text.endswith("\n") else "|-", lines
