"""Buyers: skeins that went out, complaints, and who must be told."""
