"""Labels, printed and found again: by their short code or by a photo."""
