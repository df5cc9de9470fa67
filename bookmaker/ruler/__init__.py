"""The ruler page, which shows what a printer does, and what is read on it.

`write_ruler` writes the page, front and reverse. `measure` asks for what it measures and gives a profile, and
`profile_text` is that profile as a file.
"""

from .page import write_ruler
from .readings import PROFILE_MARK, measure, profile_text

__all__ = ["PROFILE_MARK", "measure", "profile_text", "write_ruler"]
