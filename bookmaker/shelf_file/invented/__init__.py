"""Books that nobody wrote: one entry stands for many, with titles and authors made of the words of this project."""
