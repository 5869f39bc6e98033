"""The demo studio: invented people, dyes and yarns, and some months of work.

It is built by the verbs of the workflows alone, in the order in which a
studio would use them, from a fixed seed: the same day gives the same demo.
No row is written any other way, so the demo is also a long test of the verbs.
"""

from shadewright.workflows.demo.story import build_demo

__all__ = ["build_demo"]
