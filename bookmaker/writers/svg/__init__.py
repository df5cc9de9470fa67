"""Art as SVG: a picture that a browser or a notebook shows, at true size, with everything it needs in itself.

`document` makes the whole of it; `canvas` draws, `definitions` holds what is written once, `paths`, `outlines` and
`images` are what the parts are written as.
"""

from .document import svg_picture

__all__ = ["svg_picture"]
