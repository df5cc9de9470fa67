"""Pages of running text, from a plain or Markdown file, set like a book."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from .....ground.problems import Problem, ShelfFileError
from .....ground.typefaces import Typeface, vertical_of
from .....typesetting.chosen_faces import HEAVY, SLANTED, downwards, face_of
from .....typesetting.figures import with_figures
from .....typesetting.lines.fount import Fount, Style
from .....typesetting.lines.hyphens import known_language
from .....typesetting.manuscripts.manuscript import read_manuscript
from .....typesetting.stand_ins import latin_stand_in
from ..pictured.text_plates import as_figures, load_plates
from .loaded_text import LoadedText, TextSource
from .text_keys import UNPARTED, TextKeys

__all__ = ["TextInside"]


class TextInside(TextKeys):
    """A text file, plain or Markdown, set like a book.

    The default size, 2.2 pt, gives an x-height of 0.42 mm: just below what a sharp eye reads at 300 mm
    (0.436 mm), ten printer dots at 600 to the inch, and crisp through a lens.
    """

    def load(self, folder: Path) -> LoadedText:
        """Read the text, its typefaces and its pictures.

        Raises:
            ShelfFileError: one of them cannot be used.
        """
        problems: list[Problem] = []
        faces = _faces(self, folder, problems)
        file = folder / self.file
        manuscript = None
        try:
            styled: dict[Style, Typeface] = {style: face for style, face in faces.items() if style != Style.ROMAN}
            manuscript = read_manuscript(
                file, faces.get(Style.ROMAN), styled, self.marks, self.file, end_notes=self.notes == "text"
            )
        except ShelfFileError as refusal:
            problems += refusal.problems
        if manuscript is None:
            raise ShelfFileError(problems)
        plates, lost = load_plates(manuscript.name, manuscript.passages, file.parent)
        problems += lost
        if problems:
            raise ShelfFileError([*problems, *manuscript.problems])
        if self.pictures == "figures":
            turned = self.setting == "vertical"
            manuscript = replace(manuscript, passages=as_figures(manuscript.passages, plates, turned=turned))
        language = None if self.language == UNPARTED else known_language(self.language)
        spoken = "" if self.language == UNPARTED else self.language
        stand_in = latin_stand_in(faces[Style.ROMAN])
        down = self.setting == "vertical"
        fount = Fount(
            downwards(faces) if down else faces,
            language,
            spoken,
            right_to_left=manuscript.right_to_left,
            stand_in=vertical_of(stand_in) if stand_in and down else stand_in,
        )
        source = TextSource(manuscript, fount, plates)
        return LoadedText(self, source)


def _faces(entry: TextInside, folder: Path, problems: list[Problem]) -> dict[Style, Typeface]:
    """The typeface of each style that the text can be set in."""
    italic = entry.italic_face or SLANTED.get(entry.face)
    bold = entry.bold_face or HEAVY.get(entry.face)
    both = SLANTED.get(bold or "") or bold or italic
    wanted = {Style.ROMAN: ("face", entry.face), Style.TYPEWRITER: ("face", "typewriter")}
    wanted |= {Style.ITALIC: ("italic_face", italic)} if italic else {}
    wanted |= {Style.BOLD: ("bold_face", bold)} if bold else {}
    wanted |= {Style.BOLD_ITALIC: ("bold_face", both)} if both else {}
    faces: dict[Style, Typeface] = {}
    for style, (key, name) in wanted.items():
        try:
            faces[style] = with_figures(face_of(name, folder, key), entry.figures)
        except ShelfFileError as refusal:
            problems += refusal.problems
    return faces
