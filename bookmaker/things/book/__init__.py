"""Books: blocks, covers, pages and designs."""
