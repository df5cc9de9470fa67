"""`bookmaker looks` and `bookmaker keep`: some looks of a book, and those of all written into the file."""

from __future__ import annotations

import io
from pathlib import Path

from .. import check
from ..ground.geometry import Size
from ..ground.output import put_file
from ..ground.problems import CommandError, Problem, ShelfFileError
from ..ground.quantities import counted
from ..sheets.facsimiles import Facsimile, side_by_side
from ..sheets.flat import Role
from ..shelf.keeping import edited, freeze, looks_kept
from ..shelf_file.book_names import LISTED, UnknownBook
from ..things.book.looks import LAST_LOOK
from ..things.draft import Draft
from ..writers.looks_page import write_looks
from .terminal import progress, say_wrapped

__all__ = ["freeze_books", "keep_looks", "show_looks"]

MOST_SHOWN = 100
"""More looks at once than anybody compares."""


def show_looks(book: str, shelf: Path, into: Path | None, first: int | None, count: int) -> None:
    """Write a PDF with some looks of a book: its own, and others by their numbers from `first` on.

    Raises:
        BookmakerError: the shelf cannot be used, there is no such book, nothing of it is left to chance, or there are
            no such looks.
    """
    start = 1 if first is None else first
    if not 1 <= count <= MOST_SHOWN:
        raise CommandError((Problem(f"--count: {count} is out of range", f"write from 1 to {MOST_SHOWN}"),))
    if not 1 <= start <= LAST_LOOK - count + 1:
        said = f"--from: {start} is out of range: looks are numbered from 1 to {LAST_LOOK}"
        raise CommandError((Problem(said, f"write from 1 to {LAST_LOOK - count + 1}, for {counted(count, 'look')}"),))
    with progress() as told:
        checked = check(shelf, told)
    plan = checked.plan
    try:
        (id,) = plan.register.find(book, LISTED, one=True)
    except UnknownBook as unknown:
        raise CommandError((Problem(unknown.message, unknown.remedy),)) from None
    one, held = plan.plans[id], tuple(plan.held_by(plan.plans[id]))
    now = _seen(checked.drafts[id])
    looks = [
        (f"look: {look}", _seen(one.family.draw(one.family.in_look(one, look), held)))
        for look in range(start, start + count)
    ]
    if all(seen == now for _, seen in looks):
        said = f"nothing about the cover of {one.name} is left to chance: all looks are the same"
        raise CommandError((Problem(said, "choose a book in a drawn style"),))
    page = io.BytesIO()
    write_looks(page, f"Looks of {one.name}", [("now", now), *looks], Size(*plan.spec.printer.sheet.size))
    target = into or shelf.with_name(f"looks-{id}.pdf")
    put_file(target, page.getvalue())
    say_wrapped(f"wrote {target}; write the number you like into the book, such as look: {start}")


def keep_looks(shelf: Path, *, unlike: bool, quiet: bool) -> None:
    """Write the present looks into the files of a shelf.

    Raises:
        BookmakerError: the shelf cannot be used, or a file cannot be changed; all are as they were.
    """
    with progress(quiet=quiet) as told:
        checked = check(shelf, told)
    edits = list(looks_kept(checked.shelf, checked.plan, unlike=unlike))
    done = edited(checked.shelf, edits)
    if isinstance(done, Problem):
        raise ShelfFileError((done,))
    if quiet:
        return
    if not edits:
        say_wrapped("all looks are kept already: nothing was changed")
        return
    files = ", ".join(str(file.path) for file in done)
    say_wrapped(f"{counted(len(edits), 'look')} written into {files}; nothing changes them now but you")


def freeze_books(shelf: Path) -> None:
    """Write invented books into a shelf file as books of their own.

    Raises:
        BookmakerError: the shelf cannot be used, or the file cannot be changed; it is as it was.
    """
    done = freeze(check(shelf).shelf)
    if isinstance(done, Problem):
        raise ShelfFileError((done,))
    books = f"{counted(done, 'invented book')} written into {shelf} as books of their own"
    say_wrapped(books if done else "no books are invented: nothing was changed")


def _seen(draft: Draft) -> Facsimile:
    """Spine and front side by side, or what else there is to see."""
    faces = draft.faces
    return side_by_side([faces[role] for role in (Role.SPINE, Role.FRONT) if role in faces])
