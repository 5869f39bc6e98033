"""The first page of a new studio, and who works in it."""
