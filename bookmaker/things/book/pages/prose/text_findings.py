"""What there is to say of a text on its pages: too much, too little, too small, too loose."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import replace

from .....ground.geometry import Rect
from .....ground.pictures import Picture, effective_dpi, fitting, show_dpi
from .....ground.problems import Problem, Severity
from .....ground.typefaces.strokes import strokes_of
from .....ground.units import from_pt, print_pt, to_pt
from .....paper.eyesight import FEWEST_DOTS
from .....typesetting.galleys.setting import Setting
from .....typesetting.galleys.text_captions import depth_of, most_rows
from .....typesetting.lines.fount import Style
from .....typesetting.lines.hyphens import has_own_script
from .....typesetting.manuscripts.manuscript import Manuscript
from .....typesetting.manuscripts.passage import Role
from ..part import OR_FILLED
from .copyfit import LARGEST_FIT, MOST_PAGES, Bounds, Copy, Proof, is_largest
from .loosest import Loosest
from .remark_findings import quoted, remark_findings
from .text_room import few_letters

__all__ = ["findings", "nothing_fits"]

LOOSE = 3.0
"""Lines are reported whose spaces are more times as wide as usual than this."""

HARDLY_THINNER = 0.05
"""What is so little under a dot is a dot when it is printed."""

LOWEST_RESOLUTION = 300.0
"""Dots per inch; below, a print held close looks coarse (common practice)."""

OTHER_LETTERS = 0.2
"""Where a greater share of the words is in Latin letters that are not those of the language, it is told."""

LATIN_WORD = re.compile(r"[A-Za-z\u00c0-\u024f]{5,}")

MOST_VOLUMES = 40
"""In more volumes nobody parts a text."""


def findings(
    copy: Copy, proof: Proof, plates: Mapping[str, Picture], bounds: Bounds | None, loosest: Loosest | None
) -> tuple[Problem, ...]:
    """Everything there is to say of a text on its pages; `bounds` are those between which it was fitted."""
    setting = proof.setting
    # where hardly a word fits a line, how the lines came out is no news
    crowded = list(few_letters(copy, setting, bounds))
    remarks = remark_findings(proof.remarks, copy.manuscript.name, setting, copy.frame, fitted=bounds is not None)
    lines = (*remarks, *_too_loose(copy.manuscript.name, loosest))
    if crowded:
        lines = (*crowded, *(line for line in lines if line.severity is not Severity.NOTE))
    return (
        *_plates(copy, setting, plates),
        *_other_direction(copy),
        *_without_forms(copy),
        *_without_faces(copy),
        *_in_other_letters(copy),
        *_too_small(copy, setting, bounds),
        *_thin_hairlines(copy, setting),
        *lines,
        *_extent(copy, proof, bounds),
    )


def nothing_fits(setting: Setting, problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """The problems of a text that was fitted: what is lost, is lost in spite of the smallest size allowed."""
    return tuple(
        replace(problem, message=f"{problem.message} even in the smallest type allowed, {print_pt(setting.size)}")
        if problem.severity is Severity.ERROR
        else problem
        for problem in problems
    )


def _too_small(copy: Copy, setting: Setting, bounds: Bounds | None) -> Iterator[Problem]:
    smallest = copy.smallest_legible
    if setting.size < smallest - 1e-9:
        dots = FEWEST_DOTS * setting.size / smallest
        yield Problem(
            f"small letters in {print_pt(setting.size)} type are only {dots:.1f} printer dots high: "
            "they print as texture",
            _to_be_read(copy, math.ceil(to_pt(smallest) * 10 - 1e-6) / 10, bounds),
            Severity.WARNING,
            field=("size",),
        )


def _thin_hairlines(copy: Copy, setting: Setting) -> Iterator[Problem]:
    """A note on strokes thinner than a printer's dot, which is printed whole or not at all.

    A line of 0.8 dots that lies across two rows of dots covers less than half of either in a fifth of all places.
    """
    strokes = strokes_of(setting.typeface)
    dots = strokes.hairline * setting.size / copy.frame.dot if strokes else 1.0
    if copy.weight:
        yield from copy.weight.lacking(setting.typeface, setting.size, copy.frame.dot)
    elif dots < 1 - HARDLY_THINNER and setting.size >= copy.smallest_legible:
        yield Problem(
            f"the hairlines of {setting.typeface.name} in {print_pt(setting.size)} type are {dots:.1f} of a printer's "
            "dot and may print broken",
            "write weight: 1 dot, a larger size, or a sturdier face, such as sans",
            Severity.NOTE,
            field=("face",),
        )


def _to_be_read(copy: Copy, points: float, bounds: Bounds | None) -> str:
    """What to write for type of so many points, which a lens makes readable."""
    size, why = from_pt(points), "to be read through a lens"
    if bounds is None:
        return f"write size: {points:g} pt or larger, {why}"
    if copy.largest_filled < size:
        return f"choose a wider page or narrower margins, {why}"
    pages = copy.extent(size)
    if pages > MOST_PAGES:
        return f"split it into volumes, {why}"
    ways = [f"largest: {points:g} pt"] if bounds.largest < size else []
    ways += [copy.frame.to_write(pages)] if pages > copy.frame.pages else []
    return f"write {' and '.join(ways)} for {points:g} pt type, {why}"


def _plates(copy: Copy, setting: Setting, plates: Mapping[str, Picture]) -> Iterator[Problem]:
    """What is to be said of the pictures, each as large as the type area allows, or the rows of a figure."""
    area = copy.frame.type_area(1)
    if any(passage.role is Role.FIGURE for passage in copy.manuscript.passages):
        area = Rect(area.x, area.y, area.width, min(area.height, depth_of(most_rows(setting), setting)))
    if copy.frame.standing:  # where pictures are not turned as the lines are
        area = Rect(0.0, 0.0, area.height, area.width)
    for picture in plates.values():
        for note in picture.notes:
            yield Problem(f"{picture.path.name} {note}", severity=Severity.NOTE, field=("file",))
        resolution = effective_dpi(picture, *fitting(picture, area).size)
        if resolution < LOWEST_RESOLUTION - 0.5:
            yield Problem(
                f"{picture.path.name} prints at only {show_dpi(resolution)}",
                f"use a picture with {LOWEST_RESOLUTION / resolution:.1f} times as many pixels each way",
                Severity.WARNING,
                field=("file",),
            )


def _other_direction(copy: Copy) -> Iterator[Problem]:
    if (copy.manuscript.right_to_left or copy.frame.standing) and not copy.frame.upright.right_to_left:
        yield Problem(
            f"{copy.manuscript.name} is read from right to left, but its book from left to right",
            "write direction: right-to-left in the book",
            Severity.WARNING,
            field=("file",),
        )


def _without_forms(copy: Copy) -> Iterator[Problem]:
    """A typeface whose marks are drawn for lines that run across alone."""
    face = copy.fount.roman
    if copy.frame.standing and "vert" not in face.features:
        yield Problem(
            f"{face.name} has no forms of marks and brackets for lines that run down: they look as in other lines",
            "choose a typeface that has them (OpenType: vert)",
            Severity.NOTE,
            field=("face",),
        )


def _in_other_letters(copy: Copy) -> Iterator[Problem]:
    """Words in Latin letters in a text of a language that has others: nobody knows of which language they are."""
    language = copy.fount.language
    if language is None or not has_own_script(language):
        return
    words = copy.manuscript.text.split()
    latin = sum(LATIN_WORD.search(word) is not None for word in words)
    if latin > OTHER_LETTERS * len(words):
        yield Problem(
            f"{latin} of the {len(words)} words of {copy.manuscript.name} are in Latin letters and never hyphenated, "
            f"for its language is {language.replace('_', '-')}",
            "give them a file of their own, as another part of the inside, with its own language:",
            Severity.NOTE,
            field=("language",),
        )


def _without_faces(copy: Copy) -> Iterator[Problem]:
    """Styles that the text asks for and that there is no typeface for."""
    used = copy.manuscript.signs
    for style, what, key in ((Style.ITALIC, "italic", "italic_face"), (Style.BOLD, "bold", "bold_face")):
        if style in used and style not in copy.fount.faces:
            yield Problem(
                f"{copy.fount.roman.name} has no {what} here, so {copy.manuscript.name} is set without",
                f"write {key}: with a typeface, or leave the emphasis out",
                Severity.NOTE,
                field=("face",),
            )


def _too_loose(name: str, loosest: Loosest | None) -> Iterator[Problem]:
    if loosest and loosest.times > LOOSE:
        yield Problem(
            f"the loosest line of {name}, on page {loosest.page}, has spaces {loosest.times:.1f} "
            f"times as wide as usual: {quoted(loosest.words)}",
            "write a smaller size, another wording, or justified: no",
            Severity.NOTE,
            field=("file",),
        )


def _extent(copy: Copy, proof: Proof, bounds: Bounds | None) -> Iterator[Problem]:
    """Whether the text is longer or shorter than the pages."""
    manuscript, pages, used = copy.manuscript, copy.frame.pages, len(proof.pages)
    done = next((page.done for page in reversed(proof.pages) if page.done >= 0), 0)
    lost = manuscript.words - done
    if not proof.whole:
        which = _counted(lost, manuscript.words, manuscript.name) if lost else f"the end of {manuscript.name} does"
        remedy = _what_would_fit(copy, proof.setting.size, "smallest" if bounds else "size")
        remedy = remedy or _how_much_fits(done, manuscript)
        yield Problem(f"{which} not fit in {copy.frame.count}", remedy, field=("file",))
    elif pages - used >= 2:
        in_type, or_else = _larger(copy, proof.setting.size, bounds, used)
        why, filled = ("", "") if copy.frame.loose else (" for a thinner book", OR_FILLED)
        yield Problem(
            f"{manuscript.name} fills {used} of {pages} pages{in_type}; the others stay empty",
            f"write {copy.frame.to_write(used)}{why}{or_else}{filled}",
            Severity.NOTE,
            field=("file",),
        )


def _larger(copy: Copy, size: float, bounds: Bounds | None, used: int) -> tuple[str, str]:
    """In which size of type a text was fitted and why in no larger one, and what else would fill more pages.

    Only what was tried is offered, and no type so large that words must be broken or lines have too few letters.
    """
    largest = copy.largest_filled
    if bounds is None:
        return "", ", or a larger size" if size < largest else ""
    in_type = f" in {print_pt(size)} type"
    if copy.frame.fitted is not None:
        return f"{in_type}, the size of all texts that are to be fitted", ""
    pages = copy.frame.pages
    if not is_largest(size, bounds.largest) or copy.size_for(pages, LARGEST_FIT, size) <= size:
        return f"{in_type}, and would need more than all in larger type", ""
    larger = copy.size_for(pages, largest, size)
    proof = copy.proof(copy.setting(larger), pages) if larger > size else None
    offered = proof and len(proof.pages) > used and not proof.remarks.wide
    or_else = f", or largest: {to_pt(larger):.4g} pt to fill {len(proof.pages)}" if proof and offered else ""
    return f"{in_type}, {bounds.what}", or_else


def _counted(lost: int, words: int, name: str) -> str:
    which, do = ("1 word", "does") if lost == 1 else (f"{lost} words", "do")
    return f"{which} of the {words} of {name} {do}"


def _what_would_fit(copy: Copy, size: float, key: str) -> str:
    """The number of pages that holds the text, and the size, written under a key; empty if there is neither."""
    pages = copy.extent(size)
    smaller = copy.size_for(copy.frame.pages, min(size, copy.largest_filled), copy.smallest_legible)
    ways = [copy.frame.to_write(pages)] if pages <= MOST_PAGES else []
    ways += [f"{key}: {to_pt(smaller):.4g} pt"] if smaller else []
    return f"write {' or '.join(ways)}" if ways else ""


def _how_much_fits(done: int, manuscript: Manuscript) -> str:
    """To what a text must be shortened that neither more pages nor smaller type hold, or how it may be split."""
    volumes = math.ceil(manuscript.words / done) if done else MOST_VOLUMES + 1
    shorter = f"shorten it to {done} words" if done else "shorten it"
    split = f"split it into {volumes} volumes" if volumes <= MOST_VOLUMES else "split it into volumes"
    return f"{shorter}, or {split}: even {MOST_PAGES} pages do not hold it"
