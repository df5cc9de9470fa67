"""Draws every picture of the demo anew: `python demo/draw_pictures.py`. The same each time."""

from __future__ import annotations

from pathlib import Path

from draw_birds import draw_birds
from draw_charts import draw_charts, draw_general_chart
from draw_covers import draw_covers
from draw_signals import draw_signals

if __name__ == "__main__":
    pictures = Path(__file__).parent / "pictures"
    draw_birds(pictures / "birds")
    draw_charts(pictures / "charts")
    draw_general_chart(pictures / "haven" / "1 Candle Haven and its roads.png")
    draw_covers(pictures)
    draw_signals(Path(__file__).parent / "texts" / "signals.pdf")
