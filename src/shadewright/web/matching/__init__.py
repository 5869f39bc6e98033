"""Find a recipe for a colour, and keep the colours that are wanted."""
