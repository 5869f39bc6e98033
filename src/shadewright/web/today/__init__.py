"""Today: what waits, and the way into a studio of one's own."""
