"""Passages set one after the other, and made up into pages."""
