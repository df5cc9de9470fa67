"""Runs that write an output folder without making anything."""

from __future__ import annotations

import json
from pathlib import Path

from bookmaker.ground.output import UNSEALED, digest_of, replaced_folder, sealed

__all__ = ["Path", "Tree", "contents", "run", "write"]

Tree = dict[str, bytes]


def contents(folder: Path) -> Tree:
    """Every file under a folder; whatever else is there as empty."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() if path.is_file() else b"" for path in folder.rglob("*")
    }


def write(folder: Path, word: str) -> None:
    """What a run writes: some files, one of them deeper, and the plan that lists them."""
    (folder / "machine").mkdir()
    names = [f"{word}.pdf", "guide.pdf", "machine/a.svg"]
    for name in names:
        (folder / name).write_text(word, encoding="utf-8")
    digests = {name: digest_of(folder / name) for name in names} | {"plan.json": UNSEALED}
    report = json.dumps({"made_by": "bookmaker", "files": [*names, "plan.json"], "digests": digests})
    (folder / "plan.json").write_bytes(sealed(report.encode()))


def run(out: Path, word: str) -> list[str]:
    with replaced_folder(out) as folder:
        write(folder.path, word)
    return [problem.message for problem in folder.remarks]
