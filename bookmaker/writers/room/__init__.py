"""The room to try out: everything in it as outlines of plain paper at true size."""
