"""Phones: let in and put out at the desk; the door that a phone comes to."""
