"""Field types: text as a maker writes it comes in, plain values go out."""
