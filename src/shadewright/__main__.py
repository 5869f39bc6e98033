"""``python -m shadewright``: the same as the ``shadewright`` command."""

import sys

from shadewright.cli import main

if __name__ == "__main__":
    sys.exit(main())
