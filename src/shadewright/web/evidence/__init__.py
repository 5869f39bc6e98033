"""Evidence: what teaches the palette, the fits of it, and what they foretold."""
