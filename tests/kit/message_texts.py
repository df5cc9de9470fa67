"""All messages there are, read off the source: what each says, and what it says to write instead.

    python -m tests.kit.message_texts

writes them into the chapter of the manual that lists them, with the causes that stand in message_causes.md: family by
family, which modules say its messages, what they have in common, and after `=>` why one of them comes and what helps.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from bookmaker.writers.manual.places import SAYS, row_anchor

__all__ = ["CHAPTER", "Message", "chapter_text", "families", "messages_of", "modules_that_speak"]

PACKAGE = Path(__file__).parents[2] / "bookmaker"
CHAPTER = PACKAGE / "manual" / "every-message.md"
MESSAGES = PACKAGE / "manual" / "messages.md"
CAUSES = Path(__file__).with_name("message_causes.md")

SAYING = ("Problem", "refuse", "NotAMeasure")
"""Who is called with a message and its remedy, in this order."""

ALSO_SAYING = ("_problem", "_note", "_warning", "problem", "note", "_refused", "_refuse")
"""Who is called with them among other things."""

UNSAID = "…"

NEAR = 16
"""So many lines above a message its words stand, if they are not in it."""

HEAD = """\
# Every message

What messages say, what they come from, and what helps; … stands for your own names and numbers. Under "what helps" \
stands what the message itself proposes; where it proposes nothing, the cause says what to do. The list is made from \
the program itself. How a message is read, and what the commonest come from, stands in [messages](messages.md).
"""


@dataclass(frozen=True)
class Message:
    """What is said, with all remedies that go with it."""

    says: str
    helps: tuple[str, ...]


@dataclass(frozen=True)
class Family:
    """Messages that belong together: the modules that say them, what they have in common, the causes of some."""

    title: str
    modules: tuple[str, ...]
    about: str
    causes: Mapping[str, str]


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
    """What is assigned to names in a function, by its loops too."""
    found: dict[str, list[ast.expr]] = {}
    for target, value in _given(function):
        if isinstance(target, ast.Name):
            found.setdefault(target.id, []).append(value)
        elif isinstance(target, ast.Tuple) and isinstance(value, ast.Tuple):
            for name, one in zip(target.elts, value.elts, strict=True):
                if isinstance(name, ast.Name):
                    found.setdefault(name.id, []).append(one)
    return found


def _given(function: ast.AST) -> Iterator[tuple[ast.expr, ast.expr]]:
    for node in ast.walk(function):
        if isinstance(node, ast.Assign):
            yield from ((target, node.value) for target in node.targets)
        elif isinstance(node, ast.For) and isinstance(node.iter, (ast.Tuple, ast.List)):
            yield from ((node.target, item) for item in node.iter.elts)


def _calls(tree: ast.Module) -> Iterator[tuple[ast.Call, dict[str, list[ast.expr]]]]:
    seen: set[int] = set()
    functions = [node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)]
    for function in sorted(functions, key=lambda one: one.end_lineno or 0):
        named = _names(function)
        for node in ast.walk(function):
            saying = isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
            if isinstance(node, ast.Call) and saying and id(node) not in seen:
                seen.add(id(node))
                yield node, named


def _plain(text: str) -> str:
    tidy = " ".join(text.split()).replace("|", "/").replace("<", "‹").replace(">", "›")
    return re.sub(r"…(?:[ ,]*…)+", UNSAID, tidy)


def _marked(text: str) -> str:
    """As Markdown, in which its signs are meant as they stand."""
    return re.sub(r"(\\(?=\W)|\*)", r"\\\1", text)


def _pairs(call: ast.Call, named: dict[str, list[ast.expr]]) -> Iterator[tuple[str, str]]:
    """What a call says, with its remedies."""
    who = call.func.id if isinstance(call.func, ast.Name) else ""
    if who not in (*SAYING, *ALSO_SAYING):
        return
    arguments = [*call.args, *(one.value for one in call.keywords if one.arg in ("message", "remedy"))]
    texts = [[_plain(text) for text in _said(one, named)] for one in arguments]
    sayings = texts if who in SAYING else [alike for alike in texts if any(" " in text for text in alike)]
    yield from _of_texts(sayings)


def _of_texts(sayings: Sequence[Sequence[str]]) -> Iterator[tuple[str, str]]:
    remedies = sayings[1] if len(sayings) > 1 else ()
    for text in sayings[0] if sayings else ():
        if " " in text and len(re.sub(r"[^a-z]", "", text)) > 4:
            yield text, "; ".join(dict.fromkeys(remedy for remedy in remedies if remedy.strip(UNSAID + " ")))


def _listed(tree: ast.Module) -> Iterator[tuple[str, str]]:
    """Messages with their remedies in tables of a module, and those that its functions yield."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Dict):
            values = node.values
        elif isinstance(node, ast.Yield) and node.value is not None:
            values = [node.value]
        else:
            continue
        for value in values:
            if isinstance(value, ast.Tuple) and len(value.elts) == 2:
                texts = [[_plain(text) for text in _said(one, {})] for one in value.elts]
                if all(any(" " in text for text in alike) for alike in texts):
                    yield from _of_texts(texts)


def messages_of(module: str) -> tuple[Message, ...]:
    """What a module of the package says, each message once, with all that helps."""
    tree = ast.parse((PACKAGE / module).with_suffix(".py").read_text(encoding="utf-8"))
    calls = [*_calls(tree)]
    pairs = [pair for call, named in calls for pair in _pairs(call, named)]
    if any(isinstance(call.func, ast.Name) and call.func.id in SAYING for call, _ in calls):
        pairs += _listed(tree)
    said: dict[str, dict[str, None]] = {}
    for message, remedy in pairs:
        said.setdefault(message, {}).update(dict.fromkeys([remedy] if remedy else []))
    return tuple(Message(message, tuple(remedies)) for message, remedies in said.items())


def modules_that_speak() -> Mapping[str, tuple[Message, ...]]:
    """All modules with messages, by their paths in the package without the ending."""
    paths = (path.relative_to(PACKAGE).with_suffix("").as_posix() for path in sorted(PACKAGE.rglob("*.py")))
    return {path: found for path in paths if (found := messages_of(path))}


def families() -> tuple[Family, ...]:
    """The families as they are written."""
    return tuple(map(_family, re.split(r"^## ", CAUSES.read_text(encoding="utf-8"), flags=re.MULTILINE)[1:]))


def _family(text: str) -> Family:
    title, modules, about, *causes = (line for line in text.splitlines() if line)
    return Family(title, tuple(modules.split(", ")), about, dict(map(_cause, causes)))


def _cause(line: str) -> tuple[str, str]:
    message, _, why = line.removeprefix("- ").partition(" => ")
    return message, why


def chapter_text() -> str:
    """The chapter as it has to be: each message once, where it comes first, with its cause and all that helps."""
    rows_known = re.findall(r"^\| ([^|]+) \|", MESSAGES.read_text(encoding="utf-8"), re.MULTILINE)
    seen = {row_anchor(SAYS, row) for row in rows_known}
    spoken = modules_that_speak()
    parts = []
    for family in families():
        said: dict[str, tuple[str, dict[str, None]]] = {}
        for message in (one for module in family.modules for one in spoken.get(module, ())):
            anchor = row_anchor(SAYS, message.says)
            if anchor not in seen:
                said.setdefault(anchor, (message.says, {}))[1].update(dict.fromkeys(message.helps))
        seen |= said.keys()
        rows = (
            f"| {_marked(says)} | {family.causes.get(says, '–')} | {_marked('; '.join(helps) or '–')} |"
            for says, helps in said.values()
        )
        table = "\n".join(("| the message says | cause | what helps |", "|---|---|---|", *rows))
        parts.append(f"## {family.title}\n\n{family.about}\n" + (f"\n{table}\n" if said else ""))
    return HEAD + "\n" + "\n".join(parts)


if __name__ == "__main__":
    CHAPTER.write_text(chapter_text(), encoding="utf-8")
