"""Ornaments, bands and devices."""
