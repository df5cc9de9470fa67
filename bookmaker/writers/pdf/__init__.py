"""PDF files: pages as vectors, small fonts, pictures, layers, and pages of other files.

`file` is the whole of it and `canvas` draws; each of the others is one thing that a file holds.

"""

from .file import PdfFile

__all__ = ["PdfFile"]
