"""What to mix, what to pour away: what comes and goes on the shelf."""
