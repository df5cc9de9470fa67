"""What drawings of things are made of: pens, lines, words; flats to scale, bindings from the side."""
