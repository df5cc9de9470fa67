"""Framed pictures: what is printed, cut and sawn for one, and how its frame comes out square."""
