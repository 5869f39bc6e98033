"""The jars of powder: what is left, what came in, what went out."""
