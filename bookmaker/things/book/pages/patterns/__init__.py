"""Pages of lines and patterns, which need no source."""
