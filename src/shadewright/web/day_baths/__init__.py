"""The baths of a dye day: put yarn on it, and see whether the stock will do."""
