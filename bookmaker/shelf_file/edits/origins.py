"""Where a book of the shelf as read is written: which entry, item of a row or line of a table; and edits put there.

A shelf is read with its rows, volumes and tables written out, and with the defaults under every book. An edit names
a book by its number there, as ``("books", 7, "block", "pages")``; here it becomes an edit of the file that has it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from ...ground.problems import FieldPath, Place
from ...ground.quantities import show
from ..volumes import is_volume
from ..yaml_nodes import GroupNode, ListNode, Node, ScalarNode
from ..yaml_tree import Plain, Tree
from .edit import Copy, Edit, Insert, Move, Remove, Reorder, SetValue
from .reach import reach
from .refusal import refused, refused_of
from .written import Written

__all__ = ["Origin", "origins_of", "placed"]

BOOKS = "books"

FROM = "from "

BY_HAND = "move it in the file by hand"

OWN_ROW = "beside volumes write a row with an item for each, and change its item"


@dataclass(frozen=True, slots=True)
class Origin:
    """Where a book is written: the file, the list in it, and its number there.

    `entry` is the item of the list of books that it comes from, alone or with others. A volume that nothing is
    written about has no place of its own: `alone` is not true of it.
    """

    file: str
    around: FieldPath
    at: int
    entry: int
    alone: bool = True

    @property
    def path(self) -> FieldPath:
        """The path of the book in its file."""
        return (*self.around, self.at)


def origins_of(tree: Tree, written: Written) -> list[Origin]:
    """Those of all books; `tree` is the shelf as read, `written` its file."""
    books = tree.child(BOOKS)
    items = dict(_items(written))
    lines = _lines_of_tables(books.value if books and isinstance(books.value, list) else [], tree.place.file)
    tables = dict(_tables(written))
    found: list[Origin] = []
    for number, book in enumerate(books.value if books and isinstance(books.value, list) else []):
        place, alone = book.place, not is_volume(tree, (BOOKS, number))
        if place.file != tree.place.file:
            found.append(Origin(place.file, (), lines[place.file].index(place.line), tables.get(place.file, 0), alone))
            continue
        path = items.get((place.line, place.column))
        if path is None:  # a volume stands where the set says how many there are
            entry = _entry_at(place, items)
            found.append(Origin(place.file, (BOOKS,), entry, entry, alone=False))
        else:
            found.append(Origin(place.file, path[:-1], int(path[-1]), int(path[1]), alone))
    return found


def _items(written: Written) -> Iterator[tuple[tuple[int, int], FieldPath]]:
    """Every entry of a list of books, and every item of a row, by its line and column."""
    for key, node in _pairs(written.root):
        for number, item in enumerate(node.items if isinstance(node, ListNode) else ()):
            yield _place(written, item), (key, number)
            for name, below in _pairs(item):
                for at, one in enumerate(below.items if name == "row" and isinstance(below, ListNode) else ()):
                    yield _place(written, one), (key, number, name, at)


def _pairs(node: Node) -> Iterator[tuple[str, Node]]:
    for key, value in node.entries if isinstance(node, GroupNode) else ():
        if isinstance(key, ScalarNode):
            yield key.text, value


def _place(written: Written, node: Node) -> tuple[int, int]:
    line, column = written.lines.number(node.start)
    return line + 1, column + 1


def _tables(written: Written) -> Iterator[tuple[str, int]]:
    """The tables that are named among the books, each with its number there."""
    for key, node in _pairs(written.root):
        items = node.items if isinstance(node, ListNode) else (node,)
        for number, item in enumerate(items if key == BOOKS else ()):
            if isinstance(item, ScalarNode) and item.text.startswith(FROM):
                yield item.text.removeprefix(FROM).strip(), number


def _lines_of_tables(books: list[Tree], own: str) -> dict[str, list[int]]:
    """The lines of every table that have a book, in order."""
    found: dict[str, dict[int, None]] = {}
    for book in books:
        if book.place.file != own:
            found.setdefault(book.place.file, {})[book.place.line] = None
    return {file: sorted(lines) for file, lines in found.items()}


def _entry_at(place: Place, items: dict[tuple[int, int], FieldPath]) -> int:
    """The entry that a place stands in: the last that begins before it."""
    before = [path for start, path in items.items() if start <= (place.line, place.column) and len(path) == 2]
    return int(before[-1][-1]) if before else 0


def placed(tree: Tree, written: Written, edit: Edit) -> tuple[str, Edit]:
    """The name of the file that an edit of the shelf as read belongs in, and the edit as it is made there.

    Raises:
        EditRefused: what is to be changed has no place of its own, or stands in a file that is not edited here.
    """
    if edit.path[:1] != (BOOKS,) or (len(edit.path) == 1 and not isinstance(edit, Reorder)):
        place = tree.place_of(edit.path)
        # what is set in the shelf file goes before what a profile says
        if place.file != tree.place.file and not isinstance(edit, SetValue):
            raise refused_of(edit.path, f"stands in {show(place.file)}", "change it there")
        return tree.place.file, edit
    origins = origins_of(tree, written)
    if isinstance(edit, Reorder) and len(edit.path) == 1:
        return _reordered(origins, edit)
    if len(edit.path) == 2 and isinstance(edit, Remove | Insert | Move | Copy):
        return _of_whole_books(written, origins, edit)
    return _within(written, origins, edit)


def _origin(origins: list[Origin], path: FieldPath, *, of_set: bool = False) -> Origin:
    number = path[1]
    if not isinstance(number, int) or not 0 <= number < len(origins):
        raise refused(f"there is no book number {number}", f"count from 0 to {len(origins) - 1}", path)
    origin = origins[number]
    if not origin.alone and not of_set:
        raise refused("this volume is written only as one of its set", OWN_ROW, path)
    return origin


def _within(written: Written, origins: list[Origin], edit: Edit) -> tuple[str, Edit]:
    """An edit of something in a book."""
    of_set = isinstance(edit, SetValue) and edit.of_set
    origin, rest = _origin(origins, edit.path, of_set=of_set), edit.path[2:]
    if not origin.around:
        return origin.file, _put(edit, origin.path, rest)
    item = reach(written, origin.path).node
    if len(origin.around) > 1 and rest == ("block", "thickness") and "thickness" in dict(_pairs(item)):
        rest = ("thickness",)
    if isinstance(item, ScalarNode):  # a title alone
        return origin.file, _of_title_alone(origin, item.text, edit)
    return origin.file, _put(edit, origin.path, rest)


def _put(edit: Edit, book: FieldPath, rest: FieldPath) -> Edit:
    """An edit of something in a book, where the book is written."""
    if isinstance(edit, Move | Copy):
        if edit.to[:2] != edit.path[:2]:
            raise refused("what is in a book stays in it", "set it in the other book, and remove it here", edit.path)
        return replace(edit, path=(*book, *rest), to=(*book, *edit.to[2:]))
    return replace(edit, path=(*book, *rest))


def _of_title_alone(origin: Origin, title: str, edit: Edit) -> Edit:
    """An edit of a book that is a title alone: it becomes a group, if it gets more keys."""
    rest = edit.path[2:]
    if not isinstance(edit, SetValue) or not rest:
        return _put(edit, origin.path, rest)
    if rest == ("title",):
        return SetValue(origin.path, edit.value)
    value: Plain = edit.value
    for key in reversed(rest[1:]):
        value = {str(key): value}
    return SetValue(origin.path, {"title": title, str(rest[0]): value})


def _of_whole_books(written: Written, origins: list[Origin], edit: Remove | Insert | Move | Copy) -> tuple[str, Edit]:
    """A book removed, inserted, moved or copied as a whole."""
    if isinstance(edit, Insert):
        gap = _gap(origins, edit.path, origins)
        return _inserted(written, gap, edit)
    origin = _origin(origins, edit.path)
    if isinstance(edit, Remove):
        in_row = [one for one in origins if one.around == origin.around] if len(origin.around) > 1 else []
        # the last item of a row goes with its entry
        return origin.file, Remove(origin.around[:-1] if len(in_row) == 1 else origin.path)
    left = [one for one in origins if one != origin] if isinstance(edit, Move) else origins
    to = _within_list(origin, _gap(origins, edit.to, left), edit)
    return origin.file, replace(edit, path=origin.path, to=to)


def _gap(origins: list[Origin], to: FieldPath, left: list[Origin]) -> tuple[Origin | None, Origin | None]:
    """The books before and behind a place among those that are left."""
    number = to[1] if to[:1] == (BOOKS,) and len(to) == 2 else None
    if not isinstance(number, int) or not 0 <= number <= len(left):
        raise refused("there is no such place among the books", f"count from 0 to {len(origins)}", to)
    return left[number - 1] if number else None, left[number] if number < len(left) else None


def _is_inner(before: Origin | None, behind: Origin | None) -> bool:
    """Whether a gap is one between books of one entry."""
    return before is not None and behind is not None and before.entry == behind.entry


def _within_list(origin: Origin, gap: tuple[Origin | None, Origin | None], edit: Move | Copy) -> FieldPath:
    """Where a book goes that stays in its list, row or table."""
    before, behind = gap
    gone = isinstance(edit, Move)
    if origin.around == (BOOKS,):
        at = before.entry + 1 if before else 0
        if not _is_inner(before, behind):
            return (BOOKS, at - (gone and origin.entry < at))
    else:
        for one, after in ((before, 1), (behind, 0)):
            if one and (one.file, one.around) == (origin.file, origin.around):
                at = one.at + after
                return (*origin.around, at - (gone and origin.at < at))
    raise refused("this book would have to leave the list, row or table it is written in", BY_HAND, edit.path)


def _inserted(written: Written, gap: tuple[Origin | None, Origin | None], edit: Insert) -> tuple[str, Edit]:
    """A new book: in the list of books; between those of one row or table, or where one table is all, in that."""
    before, behind = gap
    beside = before or behind
    is_all = not isinstance(dict(_pairs(written.root)).get(BOOKS), ListNode)
    if beside is None or not (_is_inner(before, behind) or is_all):
        return written.tree.place.file, Insert((BOOKS, before.entry + 1 if before else 0), edit.value)
    if not beside.alone:
        raise refused("volumes of a set stand together", "choose a place before or behind them", edit.path)
    return beside.file, Insert((*beside.around, beside.at + (beside is before)), edit.value)


def _reordered(origins: list[Origin], edit: Reorder) -> tuple[str, Edit]:
    """All books in another order: entries that stand for several are moved as a whole."""
    if sorted(edit.order) != list(range(len(origins))):
        raise refused("this is not an order of all books", "give the number of each of them once", edit.path)
    tables = {origin.file for origin in origins if origin.alone and not origin.around}
    if len(tables) == 1 and all(origin.alone and not origin.around for origin in origins):
        return tables.pop(), Reorder((), edit.order)
    entries = [origins[number].entry for number in edit.order]
    in_order = list(dict.fromkeys(entries))
    shared = [number for entry in in_order for number in range(len(origins)) if origins[number].entry == entry]
    if shared != list(edit.order):
        raise refused("books that share an entry, a row or a table stay together, as they are", BY_HAND, edit.path)
    file = next((origin.file for origin in origins if origin.around), "")
    return file, Reorder((BOOKS,), tuple(in_order))
