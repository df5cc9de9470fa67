"""The page as one file that needs no server: the same modules one after the other, and all that they may show."""

from __future__ import annotations

import base64
import gzip
import hashlib
import json
import re
from pathlib import Path
from urllib.parse import quote

from ..ground.kept.disk import KeptOnDisk
from ..ground.output import put_file
from ..ground.told import told_in
from ..typesetting.standing_type import StandingType
from ..workshop import Checked, Workshop
from .last_made import made_folder
from .replies import Value
from .site_files import site_files
from .work.details import thing_told
from .work.gallery import Gallery
from .work.shown import shelf_shown

__all__ = ["bundled", "page_file", "write_page"]

START, CHARSET, END = "start.js", '<meta charset="utf-8">', "</body>"

IMPORT = re.compile(r'^import \{[^}]*\} from "\./([\w-]+\.js)";\n', re.MULTILINE)
"""How one module of the page names what it takes of another, always on a line of its own."""

EXPORT = re.compile(r"^export (?=(?:async )?(?:function|class|const)\b)", re.MULTILINE)


def write_page(shelf: Path, into: Path, kept: KeptOnDisk | None) -> int:
    """Write the page of a shelf, to look at only, into a file; how many bytes that has.

    Raises:
        ShelfFileError: the shelf cannot be used.
        OutputError: the file cannot be written, or is not one that bookmaker wrote.
    """
    with StandingType(kept).used():
        data = page_file(shelf)
    put_file(into, data)
    return len(data)


def page_file(shelf: Path) -> bytes:
    """The page of a shelf as one HTML file, to look at only.

    Raises:
        ShelfFileError: the shelf cannot be used.
    """
    script = bundled()
    kept = base64.b64encode(gzip.compress(_kept(shelf), mtime=0)).decode()
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    policy = f"default-src 'none'; script-src 'sha256-{digest}'; style-src 'unsafe-inline'; img-src blob: data:"
    page = site_files()["index.html"].decode()
    style = site_files()["page.css"].decode()
    for old, new in (
        (CHARSET, f'{CHARSET}\n<meta http-equiv="Content-Security-Policy" content="{policy}">'),
        ('<link rel="stylesheet" href="page.css">', f"<style>\n{style}</style>"),
        (f'<script type="module" src="{START}"></script>', ""),
        (END, f'<script type="text/plain" id="kept">{kept}</script>\n<script type="module">{script}</script>\n{END}'),
    ):
        assert old in page, old
        page = page.replace(old, new, 1)
    return page.encode()


def bundled(first: str = START) -> str:
    """The modules of the page in one: each after those that it takes from, without the words that join them.

    No two of them have a name in common; a test says so.
    """
    done: dict[str, str] = {}

    def add(name: str) -> None:
        if name in done:
            return
        text = site_files()[name].decode()
        done[name] = ""  # a ring ends here
        for needed in IMPORT.findall(text):
            add(needed)
        done[name] = EXPORT.sub("", IMPORT.sub("", text))
        done[name] = done.pop(name)

    add(first)
    return "\n".join(done.values())


def _kept(shelf: Path) -> bytes:
    """Everything that the page may ask for."""
    checked = Workshop().check(shelf)
    with told_in(checked.plan.spec.told):
        return _answered(shelf, checked)


def _answered(shelf: Path, checked: Checked) -> bytes:
    gallery = Gallery()
    pictures: dict[str, str] = {}
    answers: dict[str, Value] = {}
    state = shelf_shown(shelf, checked.plan, checked.drafts, checked.problems, {}, gallery)
    for id in checked.plan.plans:
        answers[f"thing?id={_quoted(id)}"] = thing_told(id, checked, gallery, made_folder(shelf))
        for number, opening in enumerate(checked.drafts[id].openings):
            seen = {"picture": gallery.hang(opening), "size": [opening.box.width, opening.box.height]}
            answers[f"opening?id={_quoted(id)}&number={number}"] = seen
    gallery.taken(lambda found: pictures.update({name: data.decode() for name, data in found.items()}))
    return json.dumps({"state": state, "answers": answers, "pictures": pictures}, ensure_ascii=False).encode()


def _quoted(id: str) -> str:
    """An id as the page writes it in an address (encodeURIComponent)."""
    return quote(id, safe="-_.!~*'()")
