"""Many covers against few, in one run: the time and the bytes that one cover takes.

    python -m tests.bench.bench_covers

Draws 20 and then 200 covers of all drawn styles, each with its own title, and prints milliseconds and kB for a
cover, and how much longer one of 200 takes than one of 20.
"""

from __future__ import annotations

import random
import sys
import tempfile
import time
from pathlib import Path

from bookmaker.ground.geometry import Path as Outline
from bookmaker.ground.geometry import Rect, Size, Transform
from bookmaker.things.book.designs.design import DrawnDesign, Words
from bookmaker.things.book.designs.kinds import KINDS as STYLES
from bookmaker.writers.pdf import PdfFile
from tests.kit.flats import flat_of
from tests.kit.prose import SYLLABLES

FEW, MANY = 20, 200
MOST_TIMES = 1.5
MOST_BYTES = 60_000


def measure(count: int, path: Path) -> tuple[float, float]:
    """Seconds and bytes a cover."""
    chance = random.Random(count)
    models = [model for model in STYLES if issubclass(model, DrawnDesign)]
    start = time.perf_counter()
    with PdfFile(path, title="covers") as pdf:
        for number in range(count):
            entry = models[number % len(models)]()
            title = " ".join("".join(chance.choices(SYLLABLES, k=chance.randint(1, 3))) for _ in range(4)).title()
            flat = flat_of(chance.uniform(2, 9), chance.uniform(11, 18), chance.uniform(16, 27))
            dress = entry.dress(entry.load(Path()), flat, Words(title, "A. " + title.split()[0]))
            inked = Rect(0, 0, *flat.size).grown(flat.bleed)
            with (
                pdf.page(Size(*inked.size)) as canvas,
                canvas.placed(Transform.move(flat.bleed, flat.bleed), clip=Outline.rectangle(inked)),
            ):
                dress.art.draw(canvas)
    return (time.perf_counter() - start) / count, path.stat().st_size / count


def main() -> None:
    """Run the benchmark and print what was measured; ends with 1 if a bound is not kept."""
    with tempfile.TemporaryDirectory() as name:
        measure(FEW, Path(name) / "warm.pdf")
        few, _ = measure(FEW, Path(name) / "few.pdf")
        many, size = measure(MANY, Path(name) / "many.pdf")
    print(f"one of {FEW} covers: {few * 1000:.1f} ms; one of {MANY}: {many * 1000:.1f} ms, {many / few:.2f} times")
    print(f"one of {MANY} covers: {size / 1000:.1f} kB")
    sys.exit(many > MOST_TIMES * few or size > MOST_BYTES)


if __name__ == "__main__":
    main()
