"""Running heads: a line over the text that says where the reader is, the book on the left, the chapter on the right.

All heads of a text are set alike: smaller, down to a bound, if one of them is too long; what is too long even then
is shortened at a word. They keep clear of the trim.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from .....ground.art import NOTHING, Written
from .....ground.drawing import Art
from .....ground.geometry import Point
from .....ground.problems import Problem, Severity
from .....ground.typefaces import TextLine
from .....ground.units import print_mm
from .....typesetting.chosen_faces import listed
from .....typesetting.galleys.made_pages import MadePage
from .....typesetting.galleys.setting import Setting, reach
from .....typesetting.lines.fount import Fount, Style
from .....typesetting.manuscripts.passage import Role
from .....typesetting.page import PageFrame

__all__ = ["RunningHeads", "running_heads"]

HEAD_SIZE = 0.85
"""Size of running heads, as a share of the size of the text."""

CAPITALS_SIZE = 0.65
"""The same where the typeface has no small capitals, and its capitals stand in for them; Chinese and Japanese have
neither."""

SPACED = 0.06
"""How far their letters stand apart, in ems (common practice: 5 to 10 % for capitals and small capitals)."""

SMALLEST = 0.8
"""No head is set smaller than this share of the usual size."""

WIDEST_GAP, NARROWEST_GAP = 1.5, 1.2
"""From the first line of the text up to the running head, in lines: usually, and where the margin is narrow."""

CLEARANCE = 0.8
"""From the ink of a head to the edge of the page, in mm: what knife and folds may be off (common practice)."""

SHORT_WORD = 3
"""Letters; a shortened head does not end with so short a word, which promises another."""


@dataclass(frozen=True, slots=True)
class RunningHeads:
    """The heads of a text: what each page says, how each of these is set, and what there is to say of them."""

    frame: PageFrame
    words: tuple[str, ...] = ()
    lines: Mapping[str, TextLine] = field(default_factory=dict)
    over: float = 0.0
    problems: tuple[Problem, ...] = ()

    def head(self, number: int) -> Art:
        """The head of page `number`, in the middle over its text."""
        line = self.lines.get(self.words[number - 1]) if number <= len(self.words) else None
        if not line:
            return NOTHING
        area = self.frame.type_area(number)
        return Written(line, Point(area.centre.x - line.width / 2, area.top + self.over))


def running_heads(
    pages: Sequence[MadePage], title: str, setting: Setting, frame: PageFrame, fount: Fount
) -> RunningHeads:
    """The heads over pages: the title on even ones, the chapter on odd ones."""
    typeface = fount.roman
    problems = list(_letters_missing(fount, title))
    over = _over(setting, frame, fount)
    if over is None:
        return RunningHeads(frame, problems=(*problems, _without_room(setting, frame, fount)))
    words = tuple(_words(page, title, frame.folio(number)) for number, page in enumerate(pages, start=1))
    # a text without a heading opens with its first page all the same
    words = tuple("" if number == 0 or typeface.missing(said) else said for number, said in enumerate(words))
    different = [said for said in dict.fromkeys(words) if said]
    size = _size(different, setting, fount)
    lines: dict[str, TextLine] = {}
    for said in different:
        line, cut = _fitted(said, size, setting, fount)
        if line:
            lines[said] = line
        if cut or not line:
            problems.append(_cut_short(said, cut, frame.folio(words.index(said) + 1), is_title=said == title))
    return RunningHeads(frame, words, lines, over, tuple(problems))


def _words(page: MadePage, title: str, folio: int) -> str:
    """What stands over a page; nothing over a chapter's beginning, a plate, or where there is no text."""
    if page.opens or not page.slots or page.slots[0].matter.role is Role.PLATE:
        return ""
    return title if folio % 2 == 0 else page.chapter or title


def _usual(setting: Setting, fount: Fount) -> float:
    return setting.size * (HEAD_SIZE if fount.solid or "smcp" in fount.roman.features else CAPITALS_SIZE)


def _over(setting: Setting, frame: PageFrame, fount: Fount) -> float | None:
    """How far the baseline stands over the type area, in mm; None if the ink would come near the trim."""
    ink = reach(fount.roman)[0] * _usual(setting, fount)
    highest = frame.height - CLEARANCE - ink - frame.type_area(1).top
    lowest = NARROWEST_GAP * setting.leading - setting.above
    return min(highest, WIDEST_GAP * setting.leading - setting.above) if highest >= lowest - 1e-9 else None


def _line(words: Sequence[str], size: float, fount: Fount) -> TextLine:
    small = "smcp" in fount.roman.features
    said = " ".join(Style.SMALL_CAPITALS + word for word in words) if small else " ".join(words).upper()
    return fount.line(said, size, tracking=fount.tracked(SPACED).after(said) * size)


def _size(different: Sequence[str], setting: Setting, fount: Fount) -> float:
    """The size of all heads: that of the longest which needs not be shortened."""
    usual = _usual(setting, fount)
    shares = [setting.measure / _line(words.split(), usual, fount).width for words in different]
    return usual * min((share for share in shares if SMALLEST <= share < 1.0), default=1.0)


def _fitted(words: str, size: float, setting: Setting, fount: Fount) -> tuple[TextLine | None, str]:
    """A head on its line, and what it says if it had to be shortened; no line if not one word of it has room."""
    line = _line(words.split(), size, fount)
    measure = setting.measure + 1e-9
    if line.width <= measure:
        return line, ""
    # one that is too long even in the smallest type is shortened as little as can be
    for kept in _shortened(words.split(), "\u2026" if fount.roman.covers("\u2026") else "..."):
        line = _line(kept, size, fount)
        if line.width <= measure:
            return line, " ".join(kept)
    return None, ""


def _shortened(words: Sequence[str], ellipsis: str) -> Iterator[list[str]]:
    """Ever shorter heads: a word less each, with an ellipsis; no word is cut."""
    for count in range(len(words) - 1, 0, -1):
        last = words[count - 1].rstrip(".,:;!?\u2014\u2013-\u2026")
        if len(last) > SHORT_WORD or count == 1:
            yield [*words[: count - 1], last + ellipsis]


def _letters_missing(fount: Fount, title: str) -> Iterator[Problem]:
    typeface = fount.roman
    lost = typeface.missing(title)
    if lost:
        yield Problem(
            f"{typeface.name} has no glyph for {listed(lost)} of the title, so even pages have no running head",
            "write face: with a typeface that has them, or running_heads: no",
            Severity.WARNING,
            field=("running_heads",),
        )
    if "smcp" not in typeface.features and not fount.solid:
        yield Problem(
            f"{typeface.name} has no small capitals; running heads are set in its capitals, smaller",
            severity=Severity.NOTE,
            field=("running_heads",),
        )


def _without_room(setting: Setting, frame: PageFrame, fount: Fount) -> Problem:
    ink = reach(fount.roman)[0] * _usual(setting, fount)
    needed = NARROWEST_GAP * setting.leading - setting.above + ink + CLEARANCE
    top = frame.height - frame.type_area(1).top
    return Problem(
        f"the margin of {print_mm(top, 2)} at the head has no room for running heads {print_mm(CLEARANCE, 1)} clear "
        "of the edge: they are left out",
        f"write margins: with top: {print_mm(needed + 0.005, 2)} or more, a smaller size, or running_heads: no",
        Severity.WARNING,
        field=("running_heads",),
    )


def _cut_short(words: str, cut: str, page: int, *, is_title: bool) -> Problem:
    key = "running_title:" if is_title else "[running title]: under the heading,"
    remedy = f"write {key} with a shorter one"
    done = f"shortened to {cut!r}" if cut else "left out"
    return Problem(
        f"the running head {words!r} is wider than the text and {done}, first on page {page}",
        remedy,
        Severity.NOTE,
        field=("running_heads",),
    )
