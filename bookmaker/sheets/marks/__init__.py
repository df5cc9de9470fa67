"""What stands on a sheet besides the pieces: cut and fold marks, labels, the test line, the legend, the notes.

Everything here is drawn in nominal millimetres like the pieces, so the printer's calibration keeps marks
and art together. Read `around` first; `foot` is what stands below the pieces, `ink` how it is all drawn.
"""

from .around import Furniture, furnish, furnish_reverse
from .ink import CUT, FOLD_PENS, PERFORATION, SCORE, TRIM, blot, note

__all__ = [
    "CUT",
    "FOLD_PENS",
    "PERFORATION",
    "SCORE",
    "TRIM",
    "Furniture",
    "blot",
    "furnish",
    "furnish_reverse",
    "note",
]
