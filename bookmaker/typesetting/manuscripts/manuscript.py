"""The text of a book as its author left it: a plain text or Markdown file, read and tidied."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path
from typing import NoReturn

from ...ground.demands import demand
from ...ground.files import Wanted, read_file
from ...ground.kept import digest
from ...ground.problems import Problem, Severity, ShelfFileError
from ...ground.scripts import reads_from_right
from ...ground.typefaces import Typeface
from ...ground.visible import HIGHEST_PILE, composed, high_pile
from ..chosen_faces import face_that_has
from ..galleys.mottoes import under_next_head, with_mottoes
from ..lines.fount import Style, as_read
from ..lines.hyphens import SOFT_HYPHEN
from ..punctuation import AS_WRITTEN, Punctuation
from ..stand_ins import lacking, latin_stand_in
from .decoding import SAVE_AS_TEXT, decoded
from .markdown import passages_of
from .passage import Passage, Role
from .plain_text import plain_passages
from .ranks import Rank, ranked
from .unseen import without_unseen

__all__ = ["Manuscript", "read_manuscript"]

TEXT = Wanted(
    "text",
    20_000_000,  # three million words, far more than any book here can hold
    "split it into volumes, one book each",
    instead="write the name of one text file",
)

MOST_NAMED = 24
"""So many missing characters are named one by one."""

KEPT = "\u200c\u200d" + SOFT_HYPHEN
"""Invisible characters that shape or part words; all other invisible ones are left out."""

NONE: Mapping[Style, Typeface] = {}

STYLE_KEYS = {Style.ITALIC: "italic_face", Style.BOLD: "bold_face", Style.BOLD_ITALIC: "bold_face"}
"""What the maker writes to set a style in another typeface."""

STYLED_PARTS = re.compile("([" + "".join(Style) + "])")

MARKDOWN = frozenset({".md", ".markdown", ".mkd"})
"""Names that end so are Markdown."""


@dataclass(frozen=True)
class Manuscript:
    """A text ready to be set: its passages, and the problems that do not keep it from being set."""

    name: str
    passages: tuple[Passage, ...]
    problems: tuple[Problem, ...] = ()
    right_to_left: bool = False
    punctuation: Punctuation = AS_WRITTEN

    @classmethod
    def plain(cls, name: str, text: str) -> Manuscript:
        """A text of paragraphs parted by line feeds."""
        return cls(name, tuple(Passage(paragraph) for paragraph in text.split("\n")))

    @property
    def text(self) -> str:
        """What it says, without style; a line feed after each passage."""
        return as_read("\n".join(passage.text for passage in self.passages if passage.text))

    @cached_property
    def key(self) -> str:
        """What stands for its passages."""
        return digest([tuple(map(str, passage)) for passage in self.passages])

    @cached_property
    def signs(self) -> frozenset[str]:
        """Every sign in it, those of styles too."""
        return frozenset().union(*(passage.text for passage in self.passages))

    @property
    def letters(self) -> frozenset[str]:
        """Every letter and other sign that is printed."""
        return frozenset(as_read("".join(self.signs))) - {"\n", "\t"}

    @cached_property
    def words(self) -> int:
        """How many words it has."""
        return sum(passage.words for passage in self.passages)

    @cached_property
    def rows(self) -> int:
        """How many rows its tables have: each takes a line of its own at least, whatever it is set in."""
        return sum(passage.text.count("\n") + 1 for passage in self.passages if passage.role is Role.TABLE)

    @property
    def title(self) -> str:
        """The title that it begins with, or nothing."""
        first = self.passages[0]
        return as_read(first.text) if first.role is Role.HEADING and first.level == Rank.TITLE else ""

    @cached_property
    def untitled(self) -> Manuscript:
        """The text without the title that it begins with."""
        return replace(self, passages=under_next_head(self.passages[1:])) if self.title else self


def read_manuscript(
    path: Path,
    typeface: Typeface | None = None,
    styled: Mapping[Style, Typeface] = NONE,
    punctuation: Punctuation = AS_WRITTEN,
    written: str = "",
    *,
    end_notes: bool = False,
) -> Manuscript:
    """Read a text file; one that is to be set in a typeface is checked for letters which that does not have.

    `styled` are the typefaces of other styles; what the text has in these is checked too. `punctuation` is left
    as it is written where one of the typefaces does not have it, or the text is read from right to left and the
    marks are not. `written`
    is the path as the shelf file has it. With `end_notes` all notes stand at the end, not each at that of its chapter.

    Raises:
        ShelfFileError: the file is missing, not plain text in UTF-8, empty, too large, or in a script that
            is read from right to left and that the typeface does not have.
    """
    name = path.name
    data = read_file(path, TEXT, written, ("file",)).data
    demand("letters", len(data), name=name, field=("file",))
    raw = decoded(name, data).replace("\r\n", "\n").replace("\r", "\n")
    if "\0" in raw:
        _refuse(f"{name} has a null byte in line {_line_of(raw, chr(0))}: it is not plain text", SAVE_AS_TEXT)
    if (pile := high_pile(raw)) is not None:
        line = raw.count("\n", 0, pile) + 1
        _refuse(
            f"{name} has a letter with more than {HIGHEST_PILE} marks on it in line {line}", "take most of them out"
        )
    raw = composed(raw)
    kept, notes = _without_hidden(name, raw)
    if path.suffix.casefold() in MARKDOWN:
        passages, left_out = passages_of(kept, name, end_notes=end_notes, spoken=punctuation.speech)
        passages, unseen = without_unseen(passages, name)
        passages, on_headings = ranked(passages, name)
        passages = with_mottoes(passages)
        notes += [*left_out, *unseen, *on_headings]
    else:
        passages, unseen = without_unseen([*plain_passages(kept)], name)
        notes = [*_tabs(name, kept), *notes, *unseen]
    if not any(passage.text or passage.role is Role.PLATE for passage in passages):
        _refuse(f"{name} has no words in it", "write a text into it, or choose kind: blank", notes)
    right_to_left = reads_from_right("".join(passage.text for passage in passages))
    # in typewriter nothing is done about marks
    faces = [typeface, *(face for style, face in styled.items() if style is not Style.TYPEWRITER)]
    stand_in = latin_stand_in(typeface) if typeface else None
    marks = punctuation.covered(lambda sign: not any(lacking(face, stand_in, sign) for face in faces if face))
    if right_to_left and not marks.in_words:
        marks = AS_WRITTEN
    passages = _punctuated(passages, marks)
    signs = _signs(passages, raw)
    missing = lacking(typeface, stand_in, "".join(signs)) if typeface else []
    backwards = [sign for sign in signs if unicodedata.bidirectional(sign) in {"R", "AL"}]
    lost = next((sign for sign in backwards if sign in missing), None)
    if lost and typeface:
        _refuse(
            f"{name} has letters read from right to left ({_named(lost, raw)}), which the typeface {typeface.name} "
            "does not have",
            "write face: with the path of a typeface that has them, or give these pages as pictures",
            notes,
        )
    problems = [*notes, *_missing_glyphs(name, missing, raw, typeface, signs)]
    for style, face in styled.items():
        said = _in_style(passages, style)
        its = [sign for sign in lacking(face, stand_in, said) if sign not in missing]
        problems += _missing_glyphs(name, its, raw, face, said, STYLE_KEYS.get(style, "face"))
    return Manuscript(name, tuple(passages), tuple(problems), right_to_left, marks)


def _punctuated(passages: list[Passage], marks: Punctuation) -> list[Passage]:
    """The passages with the marks of their language, without pauses between which nothing stands."""
    kept: list[Passage] = []
    for passage in passages:
        text = marks.set(passage.text)
        following = passage if text is passage.text else passage._replace(text=text)
        if passage.short:
            following = following._replace(short=marks.set(passage.short))
        if kept and kept[-1].role is Role.BREAK and following.role in {Role.BREAK, Role.HEADING}:
            kept.pop()
        if kept or following.role is not Role.BREAK:
            kept.append(following)
    return kept[:-1] if kept[-1].role is Role.BREAK else kept


def _refuse(message: str, remedy: str, notes: Sequence[Problem] = ()) -> NoReturn:
    """Refuse the text; `notes` is what else was found in it, of which mere notes are not worth a word now."""
    others = (note for note in notes if note.severity is not Severity.NOTE)
    raise ShelfFileError((Problem(message, remedy, field=("file",)), *others))


def _without_hidden(name: str, text: str) -> tuple[str, list[Problem]]:
    """The text without control and other invisible characters, and what to say of those."""
    hidden = {sign for sign in set(text) - set(KEPT) if unicodedata.category(sign) in {"Cc", "Cf"}}
    spaces = {sign for sign in hidden if sign.isspace()}
    control = {sign for sign in hidden - spaces if unicodedata.category(sign) == "Cc"}
    kept = text.translate({ord(sign): None for sign in hidden - spaces}) if hidden - spaces else text
    notes = []
    if control:
        first = min(control, key=text.index)
        count = sum(text.count(sign) for sign in control)
        said = f"{name} has {count} control {'characters' if count > 1 else 'character'}, left out"
        where = f"the first is U+{ord(first):04X} in line {_line_of(text, first)}"
        notes.append(Problem(f"{said}; {where}", severity=Severity.WARNING, field=("file",)))
    return kept, notes


def _tabs(name: str, text: str) -> Iterator[Problem]:
    if "\t" in text:
        yield Problem(f"{name} has tabs, set as spaces", severity=Severity.NOTE, field=("file",))


def _line_of(text: str, sign: str) -> int:
    # a sign that Markdown spells out, as in &hearts;, is told of the first line
    return text.count("\n", 0, max(0, text.find(sign))) + 1


def _signs(passages: list[Passage], raw: str) -> list[str]:
    """The visible characters of a text, in the order in which they first appear in the file."""
    used = set().union(*(passage.text + passage.short for passage in passages))
    return sorted((sign for sign in used if sign.isprintable() and not sign.isspace()), key=raw.find)


def _named(sign: str, raw: str) -> str:
    return f"{sign} U+{ord(sign):04X}, line {_line_of(raw, sign)}"


def _in_style(passages: list[Passage], style: Style) -> str:
    """All that a text has in one style."""
    found: list[str] = []
    for passage in passages:
        if style in passage.text:
            for word in passage.text.split():
                now = Style.ROMAN
                for part in STYLED_PARTS.split(word):
                    if STYLED_PARTS.fullmatch(part):
                        now = Style(part)
                    elif now is style:
                        found.append(part)
    return "".join(found)


def _missing_glyphs(
    name: str, missing: list[str], raw: str, typeface: Typeface | None, said: Iterable[str], key: str = "face"
) -> Iterator[Problem]:
    """An error that names the letters which a typeface lacks; `said` is all that is to be set in it."""
    if not missing or typeface is None:
        return
    named = [_named(sign, raw) for sign in missing[:MOST_NAMED]]
    if len(missing) > MOST_NAMED:
        named.append(f"and {len(missing) - MOST_NAMED} more")
    whole = face_that_has("".join(said), key)
    other = f"{whole}, which has them all" if whole else "with the path of a typeface that has them"
    yield Problem(
        f"{name}: the typeface {typeface.name} has no glyph for " + "; ".join(named),
        f"write {key}: {other}, or write the text without them",
        field=("file",),
    )
