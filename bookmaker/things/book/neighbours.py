"""Books that stand side by side in nearly the same colour, or show one scene in one space: told, and parted by other
looks if the maker asks for that.

Neighbours follow one another in the shelf file and stand in the same space; of a jacket with a design of its own they
see that. Nothing here changes a book by itself: what was printed stays as it is.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import replace
from itertools import pairwise

from ...ground.drawing import Colour
from ...ground.problems import Problem, Severity
from ...ground.quantities import counted, show
from .designs.colouring import UNLIKE_NEIGHBOUR, coloured
from .designs.design import Design, Words
from .designs.tones import apart
from .entry import BookEntry
from .looks import LAST_LOOK
from .plan import BookPlan

__all__ = ["alike_neighbours", "kept_looks", "repeated_scenes", "seen_design"]

MOST_NAMED = 3
"""So many pairs are named; more would only fill the screen."""

MOST_LOOKS = 200
"""So many looks are tried for a book: of a palette with eight colours each comes up often in as many."""


def seen_design(entry: BookEntry) -> Design:
    """The design that neighbours see: that of the jacket, if it has one of its own, or that of the cover."""
    return (entry.jacket and entry.jacket.design) or entry.design


def alike_neighbours(books: Sequence[BookPlan]) -> Iterator[Problem]:
    """A note for every space in which neighbours have nearly the same colour, unless the maker named both."""
    spaces: dict[str, list[tuple[BookPlan, BookPlan]]] = {}
    for one, other in pairwise(books):
        space = other.entry.space
        if space and one.entry.space == space and _alike_by_chance(one, other):
            spaces.setdefault(space, []).append((one, other))
    for space, pairs in spaces.items():
        named = "; ".join(f"{one.name} and {other.name}" for one, other in pairs[:MOST_NAMED])
        more = " and more" if len(pairs) > MOST_NAMED else ""
        yield Problem(
            f"in {show(space)} neighbours have nearly the same colour, {counted(len(pairs), 'pair')}: {named}{more}",
            "write look: with another number, or colour:, for one of them; bookmaker keep --apart finds looks",
            Severity.NOTE,
            field=("look",),
            thing=pairs[0][1].id,
        )


def repeated_scenes(books: Sequence[BookPlan]) -> Iterator[Problem]:
    """A note for every space in which books that are no set show one scene, unless the maker named it for both."""
    shown: dict[tuple[str, str], list[BookPlan]] = {}
    for book in books:
        scene, space = _scene(book, book.coat.words), book.entry.space
        if space and scene:
            alike = shown.setdefault((space, scene), [])
            if not alike or not _are_set(alike[-1], book):
                alike.append(book)
    for (space, scene), alike in shown.items():
        if len(alike) > 1 and not all(seen_design(book.entry).scene_named for book in alike):
            named = ", ".join(book.name for book in alike[:MOST_NAMED]) + (
                " and more" if len(alike) > MOST_NAMED else ""
            )
            yield Problem(
                f"in {show(space)} {counted(len(alike), 'book')} show one scene, {scene}: {named}",
                "write scene: with another one, or look: with another number; bookmaker keep --apart finds looks",
                Severity.NOTE,
                field=("look",),
                thing=alike[1].id,
            )


def kept_looks(books: Sequence[BookPlan], *, unlike: bool) -> Mapping[str, int]:
    """The look to write for each book, by its id, so that it stays as it is; for those of a set the same.

    `unlike`: a book that looks nearly like its neighbour, or shows the scene of one before it in its space, and for
    which neither look nor colour is written, is given the next look that does not.
    """
    looks = {book.id: book.coat.words.look for book in books}
    if not unlike:
        return looks
    grounds = [_ground(book) for book in books]
    scenes: dict[str | None, set[str]] = {}
    for number, book in enumerate(books):
        near = [
            (other, grounds[beside])
            for beside in (number - 1, number + 1)
            if 0 <= beside < len(books) and (other := books[beside]).entry.space == book.entry.space is not None
        ]
        # what follows has still to choose, unless it is bound
        near = [(other, ground) for other, ground in near if _is_bound(other) or other is books[number - 1]]
        shown = scenes.setdefault(book.entry.space, set())
        again = _scene(book, book.coat.words) in shown
        if not _is_bound(book) and (again or any(_are_alike(grounds[number], ground) for _, ground in near)):
            looks[book.id], grounds[number] = _other_look(book, [ground for _, ground in near if ground], shown)
        scene = _scene(book, replace(book.coat.words, look=looks[book.id]))
        shown |= {scene} if scene else set()
    return looks


def _alike_by_chance(one: BookPlan, other: BookPlan) -> bool:
    if _are_set(one, other):
        return False
    named = [seen_design(book.entry).ground is not None for book in (one, other)]
    return not all(named) and _are_alike(_ground(one), _ground(other))


def _are_alike(one: Colour | None, other: Colour | None) -> bool:
    return one is not None and other is not None and apart(one, other) < UNLIKE_NEIGHBOUR


def _ground(book: BookPlan) -> Colour | None:
    return book.coat.seen.ground


def _is_bound(book: BookPlan) -> bool:
    """Whether its colour is not left to a look of its own that is still to be written."""
    return bool(book.entry.look or book.coat.words.in_set or seen_design(book.entry).ground is not None)


def _other_look(book: BookPlan, near: Sequence[Colour], shown: Set[str]) -> tuple[int, Colour | None]:
    """The next look whose colour is unlike all near ones and whose scene is not shown yet; or the one of many whose
    scene is not, and whose colour is least like them.
    """
    words, design = book.coat.words, seen_design(book.entry)
    best: tuple[tuple[bool, float], int, Colour | None] = ((False, -1.0), words.look, _ground(book))
    for further in range(MOST_LOOKS):
        look = (words.look - 1 + further) % LAST_LOOK + 1
        ground = _coloured(design, replace(words, look=look))
        distance = min((apart(ground, other) for other in near), default=1.0) if ground else 1.0
        worth = (_scene(book, replace(words, look=look)) not in shown, min(distance, UNLIKE_NEIGHBOUR))
        if worth > best[0]:
            best = (worth, look, ground)
        if worth == (True, UNLIKE_NEIGHBOUR):
            break
    return best[1:]


def _scene(book: BookPlan, words: Words) -> str | None:
    """The scene that the book would show with these words."""
    return seen_design(book.entry).scene_for(words)


def _are_set(one: BookPlan, other: BookPlan) -> bool:
    return bool(one.coat.words.in_set and one.coat.words.set_words == other.coat.words.set_words)


def _coloured(design: Design, words: Words) -> Colour | None:
    (done,) = coloured([(design, words)])
    return done.ground
