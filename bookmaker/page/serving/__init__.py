"""What answers the browser: the server, who is let in, the news, the watched files, and who hands out the work."""
