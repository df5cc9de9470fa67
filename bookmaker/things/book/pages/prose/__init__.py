"""Pages of running text."""
