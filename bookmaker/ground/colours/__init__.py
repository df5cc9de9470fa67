"""Colours: as screens have them, and how far apart they look."""
