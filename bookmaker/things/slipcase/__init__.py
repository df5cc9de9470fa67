"""Slipcases: open-fronted boxes for rows of finished books."""
