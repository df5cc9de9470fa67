"""A signal book of eight pages in a PDF: flags that no harbour flies, and what they mean on Harrowmere Skerry."""

from __future__ import annotations

from pathlib import Path
from random import Random

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

__all__ = ["draw_signals"]

WIDTH, HEIGHT = 288.0, 432.0
"""The page in points: 4 × 6 in, as a pocket book has it."""

COLUMNS, ROWS = 2, 3
FLAG = (84.0, 60.0)
INKS = ((0.72, 0.16, 0.14), (0.10, 0.24, 0.48), (0.93, 0.76, 0.22), (0.98, 0.97, 0.93), (0.10, 0.11, 0.13))
FONTS = Path(__file__).parent.parent / "fonts" / "open-sans"
MEANINGS = (
    "The kettle is on", "Send up the good rope", "Fog, and more of it", "Visitor of no importance",
    "The lamp is lit", "The lamp is out", "Bring tar", "Bring no more tar",
    "Seal on the steps", "Bishop on the steps", "Tea has run out", "I am reading",
    "Wind from everywhere", "Wind from nowhere", "Your washing is adrift", "Mine too",
    "Gannets in the pantry", "Do not land today", "Land if you must", "Whale, probably",
    "Herring, certainly", "Ladder removed", "Ladder mislaid", "Send a book",
    "Send a longer book", "The bell has cracked", "The bell is mended", "Ice on the gallery",
    "Pie on Thursday", "Pie postponed", "Strange sail", "Strange sail with cheese",
    "Boat leaks", "Boat leaks more", "All is well", "All is tolerable",
    "Clock stopped", "What day is it", "Paint is wet", "Mind the dog",
    "Dog gone fishing", "Post has come", "Post has blown away", "Moon too bright",
    "Low water", "Very low water", "Good night", "Read this upside down",
)  # fmt: skip


def _flag(canvas: Canvas, chance: Random, x: float, y: float) -> None:
    """One flag: a field, a figure on it, a line around it."""
    width, height = FLAG
    field, figure, third = chance.sample(INKS, 3)
    canvas.setFillColorRGB(*field)
    canvas.rect(x, y, width, height, stroke=0, fill=1)
    canvas.setFillColorRGB(*figure)
    match chance.randrange(6):
        case 0:  # pales
            for stripe in (1, 3):
                canvas.rect(x + stripe * width / 5, y, width / 5, height, stroke=0, fill=1)
        case 1:  # cross
            canvas.rect(x, y + height * 0.4, width, height * 0.2, stroke=0, fill=1)
            canvas.rect(x + width * 0.42, y, width * 0.16, height, stroke=0, fill=1)
        case 2:  # disc
            canvas.circle(x + width / 2, y + height / 2, height * 0.3, stroke=0, fill=1)
        case 3:  # quarters
            canvas.rect(x, y, width / 2, height / 2, stroke=0, fill=1)
            canvas.rect(x + width / 2, y + height / 2, width / 2, height / 2, stroke=0, fill=1)
        case 4:  # pile from the hoist
            pile = canvas.beginPath()
            pile.moveTo(x, y)
            pile.lineTo(x + width * 0.7, y + height / 2)
            pile.lineTo(x, y + height)
            canvas.drawPath(pile, stroke=0, fill=1)
        case _:  # border and square
            canvas.rect(x + width * 0.18, y + height * 0.2, width * 0.64, height * 0.6, stroke=0, fill=1)
            canvas.setFillColorRGB(*third)
            canvas.rect(x + width * 0.36, y + height * 0.38, width * 0.28, height * 0.24, stroke=0, fill=1)
    canvas.setLineWidth(1.2)
    canvas.setStrokeColorRGB(0.1, 0.11, 0.13)
    canvas.rect(x, y, width, height)
    canvas.line(x, y - 6, x, y + height + 6)


def draw_signals(file: Path) -> None:
    """Write the signal book."""
    for name, font in (("sans", "OpenSans_400Regular.ttf"), ("sans bold", "OpenSans_700Bold.ttf")):
        pdfmetrics.registerFont(TTFont(name, str(FONTS / font)))
    chance = Random(1907)
    canvas = Canvas(str(file), pagesize=(WIDTH, HEIGHT), invariant=1, pageCompression=1)
    canvas.setTitle("Signals")
    for page in range(len(MEANINGS) // (COLUMNS * ROWS)):
        for place in range(COLUMNS * ROWS):
            row, column = divmod(place, COLUMNS)
            number = page * COLUMNS * ROWS + place
            x, y = 40 + column * 124, HEIGHT - 108 - row * 130
            _flag(canvas, chance, x, y)
            canvas.setFillColorRGB(0.1, 0.11, 0.13)
            canvas.setFont("sans bold", 15)
            canvas.drawCentredString(x + FLAG[0] / 2, y - 19, str(number + 1))
            canvas.setFont("sans", 9.5)
            canvas.drawCentredString(x + FLAG[0] / 2, y - 32, MEANINGS[number])
        canvas.showPage()
    canvas.save()
