"""Where what stands on a space comes to stand: each thing or stack beside the one before it, leaning or upright."""
