"""Words made into lines."""
