"""Making a stock: the plan, the guided steps, and one that was made already."""
