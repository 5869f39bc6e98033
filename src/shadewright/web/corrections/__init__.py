"""A lot that is off: correct it, overdye it, or dye an old one again."""
