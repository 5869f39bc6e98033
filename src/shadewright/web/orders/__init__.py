"""Orders, what the shelf should hold, and what is to be dyed for both."""
