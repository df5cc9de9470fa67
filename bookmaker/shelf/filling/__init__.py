"""Blocks that take what is left on their space: how much there is, how it is shared, which thicknesses there are."""
