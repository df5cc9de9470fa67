"""Entries with ``invented`` written as rows, before the rows are written out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import accumulate
from math import ceil

from pydantic import ValidationError

from ...ground.problems import Place
from ..yaml_tree import Plain, Tree
from .keys import Invented
from .titles import Invention, ranked, titles
from .words import SUBJECTS

__all__ = ["INVENTED", "frozen", "inventions", "open_walls", "with_invented"]

INVENTED = "invented"

SLIMNESS = 0.7
"""The width of a page for its height (common practice)."""


NO_COUNTS: Mapping[int, int] = {}


def with_invented(tree: Tree, counts: Mapping[int, int] = NO_COUNTS) -> Tree:
    """The shelf with invented books as the items of rows; what is not shaped as it should be is left to be refused.

    `counts` say for entries that take as many as they do, by their numbers, how many that is; without, it is one.
    """
    books = tree.child("books")
    if not isinstance(tree.value, dict) or books is None or not isinstance(books.value, list):
        return tree
    if not any(entry.child(INVENTED) for entry in books.value):
        return tree
    used = {title.casefold() for entry in books.value for title in _titles_in(entry)}
    entries: list[Tree] = []
    for number, entry in enumerate(books.value):
        asked = _asked(entry)
        if asked is None or not isinstance(entry.value, dict):
            entries.append(entry)
            continue
        found = list(inventions(asked, asked.count or counts.get(number, 1), used))
        used |= {one["title"].casefold() for one in found if isinstance(one["title"], str)}
        group = entry.value[INVENTED]
        items = [_tree(one, group.place) for one in found]
        rest = {key: value for key, value in entry.value.items() if key != INVENTED}
        entries.append(replace(entry, value={**rest, "row": Tree(items, group.place)}))
    return replace(tree, value={**tree.value, "books": Tree(entries, books.place)})


def open_walls(tree: Tree) -> Iterator[tuple[int, Place]]:
    """The entries that take as many books as they do, by their numbers, each with the place of its inventions."""
    books = tree.child("books")
    for number, entry in enumerate(books.value if books and isinstance(books.value, list) else ()):
        asked, group = _asked(entry), entry.child(INVENTED)
        if asked and group and asked.count is None:
            yield number, group.place


def frozen(tree: Tree, counts: Mapping[int, int]) -> Iterator[tuple[int, list[Plain]]]:
    """The entries of a file that invent books, by their numbers, each with the items of the row it stands for."""
    before, after = tree.child("books"), with_invented(tree, counts).child("books")
    if before and after and isinstance(before.value, list) and isinstance(after.value, list):
        for number, (entry, row) in enumerate(zip(before.value, after.value, strict=True)):
            items = row.child("row")
            if entry is not row and items is not None and isinstance(written := items.plain(), list):
                yield number, written


def inventions(asked: Invented, count: int, used: set[str]) -> Iterator[dict[str, Plain]]:
    """The keys of each invented book, as somebody would write them."""
    seed = f"invented {asked.seed}"
    own = [Invention(title, "", "") for title in asked.titles if title.casefold() not in used]
    taken = used | {one.title.casefold() for one in own}
    made = titles(asked.subjects or SUBJECTS, asked.languages, seed, taken) if not own or asked.subjects else iter(())
    for number in range(count):
        one = own[number] if number < len(own) else next(made, None)
        if one is None:
            return
        author = asked.authors[number % len(asked.authors)] if asked.authors else one.author
        yield _book(asked, one, author, seed)


def _book(asked: Invented, one: Invention, author: str, seed: str) -> dict[str, Plain]:
    """What is drawn for a book hangs on its title: on whatever else is invented it does not."""
    low, high = asked.heights
    # two draws: middling heights come up more often
    drawn = sum(_share(seed, one.title, f"height {throw}") for throw in range(2)) / 2
    height = round(low + (high - low) * drawn, 1)
    book: dict[str, Plain] = {"title": one.title}
    if author:
        book["author"] = author
    if one.language:
        book["language"] = one.language
    book["size"] = {"height": f"{height:g} mm", "width": f"{ceil(height * SLIMNESS * 2) / 2:g} mm"}
    design: dict[str, Plain] = {
        key: _weighted(weights, _share(seed, one.title, key))
        for key, weights in (("style", asked.styles), ("palette", asked.palettes))
        if weights
    }
    return {**book, "design": design} if design else book


def _share(*texts: str) -> float:
    return ranked(*texts) / 2**64


def _weighted(weights: Mapping[str, int], drawn: float) -> str:
    """The name whose stretch of all weights a draw falls into."""
    names, ends = list(weights), list(accumulate(weights.values()))
    return next(name for name, end in zip(names, ends, strict=True) if drawn * ends[-1] < end)


def _asked(entry: Tree) -> Invented | None:
    group = entry.child(INVENTED)
    if group is None or not isinstance(group.value, dict):
        return None
    try:
        return Invented.model_validate(group.plain())
    except ValidationError:
        return None


def _titles_in(entry: Tree) -> Iterator[str]:
    title, row = entry.child("title"), entry.child("row")
    items: Sequence[Tree] = row.value if row and isinstance(row.value, list) else ()
    for one in (title, *(item if isinstance(item.value, str) else item.child("title") for item in items)):
        if one is not None and isinstance(one.value, str):
            yield one.value


def _tree(plain: Plain, place: Place) -> Tree:
    """Values as if they had been written at a place."""
    if isinstance(plain, dict):
        value = {key: _tree(below, place) for key, below in plain.items()}
        return Tree(value, place, dict.fromkeys(plain, place))
    return Tree([_tree(item, place) for item in plain] if isinstance(plain, list) else plain, place)
