"""Loose papers: letters, newspapers, maps, posters, cards, and how they are folded."""
