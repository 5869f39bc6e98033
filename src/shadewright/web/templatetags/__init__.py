"""Template tags and filters; ``house`` is known to every template."""
