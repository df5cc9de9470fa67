"""What is read on the ruler page becomes the profile of a printer; what looks like a slip is asked again."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import sqrt
from typing import Any

from pydantic import ValidationError

from ..ground.problems import Problem
from ..ground.thin import print_um
from ..ground.told import in_units, print_mm
from ..ground.units import MM_PER_INCH, NotAMeasure, parse_length, parse_offset
from ..paper.papers import SheetFormat
from ..paper.printer_entry import RULE_LENGTH, SKEW_BASE, Diagonals, PrinterEntry, Profile, Rules
from ..paper.stock import lean
from ..shelf_file.spec_errors import explain
from .rules import division

__all__ = ["PROFILE_MARK", "Ask", "measure", "profile_text"]

PROFILE_MARK = "# Printer profile"
"""How the file of a profile begins, so that no other file is written over."""

Ask = Callable[[str, str], str]
"""Shows a question and the answer that an empty line gives; returns what was typed."""

Answers = dict[str, Any]

Say = Callable[[Problem], None]
"""Tells what is wrong with an answer."""


@dataclass(frozen=True, slots=True)
class Question:
    """One reading: the group and the key it is written to, what to ask, and what an empty line means.

    `written` turns what was typed into what the profile says, given the answers before.
    """

    group: str
    key: str
    words: str
    usual: str
    written: Callable[[str, Answers], str] = lambda typed, _: typed


IDENTITY = (Question("", "name", "printer and paper path, such as study inkjet, rear tray", ""),)
FINEST = (Question("", "resolution", "finest lines that stay apart", "600 dpi"),)


def _rounds() -> tuple[tuple[Question, ...], ...]:
    """Questions that are checked together, and asked again together if they contradict each other."""
    return IDENTITY, _lengths(), _edges(), FINEST, _ink(), _reverse()


def _lengths() -> tuple[Question, ...]:
    rule, diagonal = print_mm(division().rule), print_mm(division().square * sqrt(2), 2)
    return (
        Question("rules", "across", "rule across, outer edge to outer edge of its end ticks", rule),
        Question("rules", "up", "rule up", rule),
        Question("diagonals", "rising", "square, lower left corner to upper right", diagonal),
        Question("diagonals", "falling", "square, upper left corner to lower right", diagonal),
    )


def _edges() -> tuple[Question, ...]:
    return tuple(
        Question("margins", side, f"white edge {side}: first line printed whole", in_units("5 mm", "0.2 in"))
        for side in ("left", "right", "top", "bottom")
    )


def _ink() -> tuple[Question, ...]:
    words = f"ink: the mark from which on the white wedge is unbroken, such as {print_um(0.08)}"
    return (Question("", "ink_spread", words, print_um(0.0), _spread),)


def _reverse() -> tuple[Question, ...]:
    return tuple(
        Question("reverse_offset", key, f"reverse: how far the hole lies {words}", print_mm(0), _turned)
        for key, words in (
            ("right", "to the right of the middle"),
            ("up", "above the middle"),
            ("skew", "farther to the right on the upper grid than on the lower one"),
        )
    )


def _as_drawn(group: str) -> Answers:
    """How long the rules or the sides of the square of this page are, where that is not the usual."""
    by = division()
    lengths = {"rules": by.rule, "diagonals": by.square}
    return {"drawn": lengths[group]} if group in lengths and by.rule != RULE_LENGTH else {}


def measure(sheet: SheetFormat, ask: Ask, say: Say) -> PrinterEntry:
    """Ask for every reading on the page of a sheet format until it can be true.

    A hole that lies to the right of the middle means that the reverse is printed too far to the left.
    """
    answers: Answers = {"sheet": sheet}
    for questions in _rounds():
        while True:
            found = answers
            for question in questions:
                found = _asked(question, found, ask, say)
            problems = _wrong(found)
            if not problems:
                break
            for problem in problems:
                say(problem)
        answers = found
    return _without_the_lean(PrinterEntry.model_validate(answers))


def _without_the_lean(printer: PrinterEntry) -> PrinterEntry:
    """The printer with the skew that is left when its lean is undone, if its reverse was read at all.

    What leans to the right on both sides lies farther apart by twice that: a lean of 1 mrad makes 0.24 mm of skew.
    """
    read = printer.reverse_offset
    if not (read.right or read.up or read.skew):
        return printer
    skew = read.skew - 2 * SKEW_BASE * lean(printer)
    return printer.model_copy(update={"reverse_offset": read.model_copy(update={"skew": skew})})


def _asked(question: Question, before: Answers, ask: Ask, say: Say) -> Answers:
    """The answers with one more that is sound by itself."""
    while True:
        typed = ask(question.words, question.usual).strip() or question.usual
        try:
            written = question.written(typed, before)
        except NotAMeasure as trouble:
            say(Problem(trouble.message, trouble.remedy))
            continue
        problems = _wrong(_with(question, written, _usual(question))) or _beyond_the_stairs(question, written)
        if not problems:
            return _with(question, written, before)
        for problem in problems:
            say(problem)


def _beyond_the_stairs(question: Question, written: str) -> Sequence[Problem]:
    """A white edge that cannot have been read on the page: its lines do not reach so far in."""
    deepest = division().deep * division().step
    if question.group != "margins" or parse_offset(written) <= deepest + 1e-6:
        return ()
    said = f"{written} cannot be the white edge of this page: its lines stand 0 to {print_mm(deepest)} from the edge"
    return (Problem(said, "read the number of the first line that is printed whole"),)


def _usual(question: Question) -> Answers:
    """The other readings of a question's group as they usually are: a group is not checked by halves."""
    if not question.group:
        return {}
    alike = {other.key: other.usual for asked in _rounds() for other in asked if other.group == question.group}
    return {question.group: {**_as_drawn(question.group), **alike}}


def _turned(typed: str, _: Answers) -> str:
    return f"{-parse_offset(typed):.3f} mm"


def _spread(typed: str, answers: Answers) -> str:
    """How far ink spreads at every edge: white is unbroken where more than a dot is left of it.

    At 600 dpi 80 µm of white that ink leaves a dot of have lost 19 µm on either side.
    """
    dot = MM_PER_INCH / Profile.model_validate({"printer": {"resolution": answers["resolution"]}}).printer.resolution
    return f"{max(0.0, (parse_length(typed) - dot) / 2) * 1000:.0f} um"


def _with(question: Question, written: str, answers: Mapping[str, Any]) -> Answers:
    if not question.group:
        return {**answers, question.key: written}
    return {
        **answers,
        question.group: {**_as_drawn(question.group), **answers.get(question.group, {}), question.key: written},
    }


def _wrong(answers: Mapping[str, Any]) -> Sequence[Problem]:
    """What the check of a printer finds in answers."""
    try:
        Profile.model_validate({"printer": answers})
    except ValidationError as failure:
        return tuple(explain(failure, Profile))
    return ()


def profile_text(printer: PrinterEntry) -> str:
    """The profile as a file.

    Numbers are written to a hundredth of a millimetre or a thousandth of an inch, finer than anyone reads them.
    """
    return "\n".join(_lines(printer)) + "\n"


def _said(read: Rules | Diagonals) -> Mapping[str, float]:
    """Readings, and how long was drawn what was read, where that is not the usual."""
    usual = type(read).model_fields["drawn"].default
    return {key: value for key, value in read.model_dump().items() if key != "drawn" or value != usual}


def _lines(printer: PrinterEntry) -> Iterator[str]:
    def group(name: str, values: Mapping[str, float]) -> str:
        return f"{name}: {{{', '.join(f'{key}: {print_mm(value, 2)}' for key, value in values.items())}}}"

    yield f"{PROFILE_MARK}, measured on the ruler page. A shelf file names it: printer: and the name of this file."
    yield f"name: {json.dumps(printer.name, ensure_ascii=False)}"
    yield f"sheet: {printer.sheet.name}"
    yield group("margins", printer.margins.model_dump())
    yield f"resolution: {printer.resolution:g} dpi"
    if printer.ink_spread:
        yield f"ink_spread: {print_um(printer.ink_spread)}"
    yield group("rules", _said(printer.rules))
    if printer.diagonals is not None:
        yield group("diagonals", _said(printer.diagonals))
    yield group("reverse_offset", printer.reverse_offset.model_dump())
