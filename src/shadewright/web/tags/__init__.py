"""Tags of skeins, what they say, and bleed and rub tests."""
