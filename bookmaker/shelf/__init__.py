"""The whole shelf: what the maker wrote, worked out, with spaces, fit, filling and findings."""
