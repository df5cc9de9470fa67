"""Forms of papers."""
