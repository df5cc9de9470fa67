"""Flats and pieces, nested on sheets with their marks, and what a printer and a cutting machine do to them."""
