"""Tests of the page in the browser."""
