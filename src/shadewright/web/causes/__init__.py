"""Why a lot does not match, and how the lots of a recipe drift."""
