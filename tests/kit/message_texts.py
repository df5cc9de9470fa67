"""All messages there are, read off the source: what each says, and what it says to write instead.

    python -m tests.kit.message_texts

writes them into the chapter of the manual that lists them.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator, Sequence
from pathlib import Path

from bookmaker.writers.manual.places import SAYS, row_anchor

__all__ = ["CHAPTER", "chapter_text"]

PACKAGE = Path(__file__).parents[2] / "bookmaker"
CHAPTER = PACKAGE / "manual" / "every-message.md"
MESSAGES = PACKAGE / "manual" / "messages.md"

SAYING = ("Problem", "refuse", "NotAMeasure", "_problem", "_note", "_warning", "problem", "note", "_refused", "_refuse")
"""Who is called with a message and its remedy."""

UNSAID = "…"

NEAR = 16
"""So many lines above a message its words stand, if they are not in it."""

HEAD = """\
# Every message

What messages say, part by part, with what helps; … stands for your own names and numbers. The list is made from \
the program itself. How a message is read, and what the commonest come from, stands in [messages](messages.md).
"""


def _said(node: ast.expr | None, named: dict[str, list[ast.expr]], depth: int = 0) -> Iterator[str]:
    """All texts that an expression may be."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        yield node.value
    elif isinstance(node, ast.JoinedStr):
        yield "".join(str(part.value) if isinstance(part, ast.Constant) else UNSAID for part in node.values)
    elif isinstance(node, ast.IfExp):
        yield from _said(node.body, named, depth)
        yield from _said(node.orelse, named, depth)
    elif isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add):
        lefts, rights = [*_said(node.left, named, depth)], [*_said(node.right, named, depth)]
        yield from (left + right for left in lefts or [UNSAID] for right in rights or [UNSAID])
    elif isinstance(node, ast.Name) and depth < 2:
        for value in _last_given(named.get(node.id, []), node.lineno):
            yield from _said(value, named, depth + 1)


def _last_given(values: Sequence[ast.expr], line: int) -> Sequence[ast.expr]:
    """What a name may stand for on a line: of values given one after the other in its function those on all branches
    that lead there, which are those that follow one another closely before it."""
    before = [value for value in values if value.lineno < line]
    near = [value for value in before if line - value.lineno <= NEAR]
    return near or before[-1:]


def _names(function: ast.AST) -> dict[str, list[ast.expr]]:
    """What is assigned to names in a function."""
    found: dict[str, list[ast.expr]] = {}
    for node in ast.walk(function):
        targets = node.targets if isinstance(node, ast.Assign) else []
        for target in targets:
            if isinstance(target, ast.Name) and isinstance(node, ast.Assign):
                found.setdefault(target.id, []).append(node.value)
            elif isinstance(target, ast.Tuple) and isinstance(node, ast.Assign) and isinstance(node.value, ast.Tuple):
                for name, value in zip(target.elts, node.value.elts, strict=True):
                    if isinstance(name, ast.Name):
                        found.setdefault(name.id, []).append(value)
    return found


def _calls(tree: ast.Module) -> Iterator[tuple[ast.Call, dict[str, list[ast.expr]]]]:
    seen: set[int] = set()
    functions = [node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)]
    for function in sorted(functions, key=lambda one: one.end_lineno or 0):
        named = _names(function)
        for node in ast.walk(function):
            saying = isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in SAYING
            if isinstance(node, ast.Call) and saying and id(node) not in seen:
                seen.add(id(node))
                yield node, named


def _plain(text: str) -> str:
    tidy = " ".join(text.split()).replace("|", "/").replace("<", "‹").replace(">", "›")
    shortened = re.sub(r"…(?:[ ,]*…)+", UNSAID, tidy)
    return re.sub(r"(\\(?=\W)|\*)", r"\\\1", shortened)  # signs of Markdown are meant as they stand


def _pairs(call: ast.Call, named: dict[str, list[ast.expr]]) -> Iterator[tuple[str, str]]:
    """What a call says, with its remedies."""
    arguments = [*call.args, *(one.value for one in call.keywords if one.arg in ("message", "remedy"))]
    texts = [[_plain(text) for text in _said(one, named)] for one in arguments]
    sayings = [alike for alike in texts if any(" " in text for text in alike)]
    if not sayings:
        return
    remedies = sayings[1] if len(sayings) > 1 else []
    for text in sayings[0]:
        if len(re.sub(r"[^a-z]", "", text)) > 4:
            yield text, "; ".join(dict.fromkeys(remedy for remedy in remedies if remedy.strip(UNSAID + " ")))


def _parts() -> Iterator[tuple[str, list[tuple[str, str]]]]:
    """Each module that has something to say, by what it is, with that."""
    for path in sorted(PACKAGE.rglob("*.py")):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        found = [pair for call, named in _calls(tree) for pair in _pairs(call, named)]
        if found:
            first = " ".join((ast.get_docstring(tree) or path.stem).split("\n\n")[0].split())
            yield first.split(": ")[0].rstrip(".").replace("`", ""), list(dict.fromkeys(found))


def chapter_text() -> str:
    """The chapter as it has to be: each message once, where it comes first, with all that helps."""
    rows_known = re.findall(r"^\| ([^|]+) \|", MESSAGES.read_text(encoding="utf-8"), re.MULTILINE)
    known = {row_anchor(SAYS, row) for row in rows_known}
    said: dict[str, tuple[str, str, dict[str, None]]] = {}
    for what, pairs in _parts():
        for message, remedy in pairs:
            _, _, remedies = said.setdefault(row_anchor(SAYS, message), (what, message, {}))
            remedies |= dict.fromkeys([remedy] if remedy else [])
    rows: dict[str, list[str]] = {}
    for anchor, (what, message, remedies) in said.items():
        if anchor not in known:
            rows.setdefault(what, []).append(f"| {message} | {'; '.join(remedies) or '–'} |")
    parts = (
        f"## {what}\n\n| the message says | what helps |\n|---|---|\n" + "\n".join(some) for what, some in rows.items()
    )
    return HEAD + "\n" + "\n\n".join(parts) + "\n"


if __name__ == "__main__":
    CHAPTER.write_text(chapter_text(), encoding="utf-8")
