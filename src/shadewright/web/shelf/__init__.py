"""The shelf: what stands there, what is gone, and entering what stands there."""
