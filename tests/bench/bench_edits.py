"""One edit of one book, answered by a workshop that remembers, for every book of the demo, against a fresh run.

    python -m tests.bench.bench_edits [SHELVES]

Each edit of a title, an author, a colour, a page count or a thickness is written into the file; then CPU seconds count
from the saved file to plan, problems and new pictures of that book as SVG: the parts of its cover, front, spine, back,
and two pages that face each other. SHELVES (1) times the demo's books stand in one file. Median and worst over all
edits, what nothing changed costs, and a fresh run.
"""

from __future__ import annotations

import shutil
import statistics
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from bookmaker.ground.collection import uncollected
from bookmaker.shelf_file.edits.edit import Insert, SetValue
from bookmaker.shelf_file.edits.yaml_text import edit_yaml
from bookmaker.shelf_file.yaml_tree import Plain, parse_tree
from bookmaker.workshop import Checked, Workshop
from bookmaker.writers.svg import svg_picture
from tests.kit.book_pictures import pictures_of

DEMO = Path(__file__).parents[2] / "demo"

PLACES = ("space", "stack", "id")
"""Where a book stands and what it goes by: copies stand nowhere, and there is one of each id."""


def edits_of(tree: Plain, number: int) -> Iterator[tuple[str, SetValue]]:
    """What may be changed in a book as it is written."""
    assert isinstance(tree, dict)
    books = tree["books"]
    assert isinstance(books, list)
    book = books[number]
    if not isinstance(book, dict) or {"row", "volumes", "list"} & book.keys():
        return
    path = ("books", number)
    yield "title", SetValue((*path, "title"), f"{book['title']} Again")
    yield "author", SetValue((*path, "author"), "N. Obody")
    block, design = book.get("block"), book.get("design")
    if isinstance(design, dict) and design.get("style") not in (None, "artwork", "picture"):
        yield "colour", SetValue((*path, "design", "colour"), "#7a4b32")
    if isinstance(block, dict) and str(block.get("pages", "")).isdecimal():
        yield "pages", SetValue((*path, "block", "pages"), str(int(str(block["pages"])) + 8))
    if isinstance(block, dict) and str(block.get("thickness", "")).endswith("mm"):
        yield "thickness", SetValue((*path, "block", "thickness"), "5.5 mm")


@uncollected()
def answered(workshop: Workshop, path: Path, before: Checked | None) -> tuple[float, Checked]:
    """CPU seconds to an answer with the pictures of all that changed."""
    start = time.process_time()
    checked = workshop.check(path)
    for id, draft in checked.drafts.items():
        if before is not None and before.drafts.get(id) is not draft:
            for one in pictures_of(draft):
                svg_picture(one.art, one.box)
    return time.process_time() - start, checked


def larger(text: str, times: int) -> str:
    """A shelf file with its books so many times, each time under other titles."""
    tree = parse_tree(text, "shelf.yaml").plain()
    assert isinstance(tree, dict)
    books = tree["books"]
    assert isinstance(books, list)
    alone = [
        {key: value for key, value in book.items() if key not in PLACES}
        for book in books
        if isinstance(book, dict) and not {"row", "volumes"} & book.keys() and "fill" not in str(book.get("block"))
    ]
    copies = ({**book, "title": f"{book['title']} {again}"} for again in range(2, times + 1) for book in alone)
    more = [Insert(("books", at), book) for at, book in enumerate(copies, start=len(books))]
    edited = edit_yaml(text, more)
    assert isinstance(edited, str), edited
    return edited


def main() -> None:
    """Run the benchmark and print what was measured."""
    times = int(sys.argv[1]) if len(sys.argv) > 1 else 1
    with tempfile.TemporaryDirectory() as folder:
        shutil.copytree(DEMO, Path(folder) / "demo")
        path = Path(folder) / "demo" / "shelf.yaml"
        text = path.read_text(encoding="utf-8")
        text = larger(text, times) if times > 1 else text
        path.write_text(text, encoding="utf-8")
        workshop = Workshop()
        fresh, before = answered(workshop, path, None)
        nothing = [answered(workshop, path, before)[0] for _ in range(5)]
        plain = parse_tree(text, path.name).plain()
        assert isinstance(plain, dict)
        books = plain["books"]
        assert isinstance(books, list)
        taken: dict[str, list[float]] = {}
        for number in range(len(books)):
            for kind, edit in edits_of(plain, number) if number < (60 if times == 1 else 8) else ():
                edited = edit_yaml(text, [edit])
                assert isinstance(edited, str), edited
                path.write_text(text, encoding="utf-8")
                _, before = answered(workshop, path, None)
                path.write_text(edited, encoding="utf-8")
                try:
                    seconds, _ = answered(workshop, path, before)
                except Exception as refusal:
                    print(f"{kind} of {number + 1} is refused: {refusal}"[:120])
                    continue
                taken.setdefault(kind, []).append(seconds)
    print(f"{len(before.drafts)} things; a fresh run {fresh:.3f} s; nothing changed {statistics.median(nothing):.4f} s")
    everything = [one for each in taken.values() for one in each]
    for kind, seconds_each in {**taken, "all": everything}.items():
        median, worst = statistics.median(seconds_each), max(seconds_each)
        print(f"{kind:10} {len(seconds_each):3} edits   median {median:.3f} s   worst {worst:.3f} s")


if __name__ == "__main__":
    main()
