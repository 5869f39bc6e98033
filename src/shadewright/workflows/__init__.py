"""What the dyer does: one verb a function.

Each verb fetches from the records, works the sum out in core, and keeps the
result, in one transaction. Its answer is a frozen value for a page, a sheet
of paper or the terminal. A verb takes a :class:`~shadewright.workflows.stamps.Stamp`
that says who did it, when, and under which key, so that the same deed sent
twice is written once.
"""
