"""The work at the shelf, in a process of its own: what is shown of it, told of it, and changed in it."""
