"""What is kept of work that was done, in memory and on disk."""

from __future__ import annotations

from .memory import Kept, digest

__all__ = ["Kept", "digest"]
