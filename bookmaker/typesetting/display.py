"""Lines that stand for themselves: titles, captions, imprints. Broken at their spaces, made smaller if they must."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import accumulate

from ..ground.art import Group, Written
from ..ground.drawing import BLACK, Colour
from ..ground.geometry import Point
from ..ground.typefaces import TextLine, Typeface
from .book_type import Family
from .lines.fount import SIGNS, Fount
from .lines.ties import tied

__all__ = ["LEADING", "DisplayType", "bound", "broken", "centred", "largest", "titled"]

LEADING = 1.22
"""From line to line, in ems."""

SHRINK = 0.94
"""Lines that do not fit are tried again so much smaller."""

SMALLEST_TITLE = 0.66
"""A title may become so much smaller for the sake of better lines."""

WEAK_END = 0.15
"""What a short word at the end of a line costs: as much as a line that is two fifths shorter than the longest."""

SHORT_WORD = 3
"""Letters of articles and prepositions, which belong to the word after them."""


@dataclass(frozen=True, slots=True)
class DisplayType:
    """What such lines are set in: a typeface, or a fount where words have the signs of styles."""

    typeface: Typeface
    right_to_left: bool = False
    fount: Fount | None = None

    def line(self, text: str, size: float) -> TextLine:
        """Words on one line, `size` being the em in mm."""
        if self.fount:
            return self.fount.line(text, size)
        return TextLine(size, ((0.0, self.typeface.shape(text, right_to_left=self.right_to_left)),))

    def width(self, text: str) -> float:
        """How wide words are on one line, in ems."""
        return self.line(text, 1.0).width

    def fits(self, measure: float, text: str) -> bool:
        """Whether words have room on one line of a measure in ems."""
        return self.width(text) <= measure

    def lines(
        self, words: Sequence[str], measure: float, turned: float | None = None, *, even: bool = True
    ) -> list[str]:
        """Words on as few lines as a measure in ems needs: about equally long, or each as full as it goes.

        A word wider than the measure has a line of its own. `turned` is the measure of the second and later lines.
        """
        full = list(_filled(words, self.width, measure, turned))
        return _evened(words, self.width, full, measure, turned) if even else full


def largest(size: float, fits: Callable[[float], bool], least: float = 0.0) -> float:
    """The largest size, from a given one down in steps, that fits; none is tried under the `least`.

    >>> round(largest(2.0, lambda size: size <= 1.8), 4)
    1.7672
    """
    while size >= least and not fits(size):
        size *= SHRINK
    return size


def broken(
    typeface: Typeface,
    text: str,
    size: float,
    measure: float,
    most_lines: int,
    *,
    right_to_left: bool = False,
    even: bool = True,
    family: Family | None = None,
) -> tuple[TextLine, ...]:
    """A text on as few lines of `measure` mm as `size` (the em in mm) needs: about equally long, or each full.

    If that takes more than `most_lines`, or a word is wider than the measure, the size is made smaller. A text with
    the signs of styles needs the `family` of typefaces it is set in.
    """
    fount = Fount(family, None, right_to_left=right_to_left) if family and SIGNS.search(text) else None
    type = DisplayType(typeface, right_to_left, fount)
    words = bound(text.split(), partial(type.fits, measure / size))
    if not words:
        return ()

    def fits(size: float) -> bool:
        lines = type.lines(words, measure / size, even=False)
        return len(lines) <= most_lines and all(type.width(line) * size <= measure + 1e-9 for line in lines)

    size = largest(size, fits)
    return tuple(type.line(line, size) for line in type.lines(words, measure / size, even=even))


def titled(
    typeface: Typeface, text: str, size: float, measure: float, most_lines: int, *, right_to_left: bool = False
) -> tuple[TextLine, ...]:
    """A title as a designer would break it: somewhat smaller, if that makes lines of a better shape."""
    found, least = broken(typeface, text, size, measure, most_lines, right_to_left=right_to_left), 0.0
    tried = found
    while tried:
        loss = _raggedness(tried) + 1 - tried[0].size / size
        if tried is found or loss < least - 1e-9:
            found, least = tried, loss
        smaller = tried[0].size * SHRINK
        if smaller < size * SMALLEST_TITLE:
            break
        tried = broken(typeface, text, smaller, measure, most_lines, right_to_left=right_to_left)
    return found


def bound(words: Sequence[str], fits: Callable[[str], bool] = bool) -> list[str]:
    """Words between which a line may end: a dash or a point in the middle stays with the word before it.

    So do words that are tied to the next one, if both together still `fit` a line.

    >>> bound(["Fog", "·", "Ice", "&", "Snow"])
    ['Fog ·', 'Ice &', 'Snow']
    >>> bound(["Old", "Mrs", "Quill"])
    ['Old', 'Mrs Quill']
    """
    found: list[str] = []
    for word in words:
        alone = not any(sign.isalnum() for sign in word)
        before = found[-1] if found else ""
        together = tied(before.rpartition(" ")[2], word) and fits(f"{before} {word}")
        if found and (alone or together or not any(sign.isalnum() for sign in before)):
            found[-1] = f"{before} {word}"
        else:
            found.append(word)
    return found


def _filled(
    words: Sequence[str], width: Callable[[str], float], measure: float, turned: float | None = None
) -> Iterator[str]:
    """Each line as full as it goes; a word wider than the measure has a line of its own.

    `turned` is the measure of the second and later lines, if they are shorter.
    """
    line = words[0]
    for word in words[1:]:
        longer = f"{line} {word}"
        if width(longer) <= measure + 1e-9:
            line = longer
        else:
            yield line
            line, measure = word, measure if turned is None else turned
    yield line


def centred(lines: tuple[TextLine, ...], middle: float, first_baseline: float, colour: Colour = BLACK) -> Group:
    """Lines one below the other about an upright axis, in mm; empty ones are left free."""
    placed = (
        Written(line, Point(middle - line.width / 2, first_baseline - number * LEADING * line.size), colour)
        for number, line in enumerate(lines)
        if line.runs
    )
    return Group(tuple(placed))


def _evened(
    words: Sequence[str],
    width: Callable[[str], float],
    lines: list[str],
    measure: float,
    turned: float | None = None,
) -> list[str]:
    """The same number of lines, as alike as can be, and none that ends in a short word if that can be helped.

    `turned` is the measure of the second and later lines, if they are shorter.
    `costs[n][end]` is the least cost of the words before `end` on n lines, with where the last of them begins.
    """
    reached = list(accumulate((width(f"{word} ") for word in words), initial=0.0))
    space, ideal = width(" "), reached[-1] / len(lines)
    costs: list[dict[int, tuple[float, int]]] = [{0: (0.0, 0)}]
    for number in range(len(lines)):
        room = measure if number == 0 or turned is None else turned
        following: dict[int, tuple[float, int]] = {}
        for start, (cost, _) in costs[-1].items():
            for end in range(start + 1, len(words) + 1):
                wide = reached[end] - reached[start] - space
                if wide > room + 1e-9:
                    break
                own = cost + (1 - wide / ideal) ** 2
                if end < len(words) and _is_weak(words[end - 1]):
                    own += WEAK_END
                if end not in following or own < following[end][0]:
                    following[end] = (own, start)
        costs.append(following)
    found: list[str] = []
    end = len(words)
    for following in reversed(costs[1:]):
        if end not in following:
            return lines  # kerned with their spaces the words are a trifle too wide
        start = following[end][1]
        found.insert(0, " ".join(words[start:end]))
        end = start
    rooms = [measure, *[measure if turned is None else turned] * (len(found) - 1)]
    return found if all(width(line) <= room + 1e-9 for line, room in zip(found, rooms, strict=True)) else lines


def _raggedness(lines: Sequence[TextLine]) -> float:
    """How far lines are from being equally long, and how many of them end in a short word; 0 is perfect."""
    longest = max(line.width for line in lines)
    ends = sum(WEAK_END for line in lines[:-1] if _is_weak(line.text))
    return sum((1 - line.width / longest) ** 2 for line in lines) + ends


def _is_weak(words: str) -> bool:
    last = words.rsplit(maxsplit=1)[-1]
    return last.islower() and len(last) <= SHORT_WORD
