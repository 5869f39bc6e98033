"""How long a dyer waits: from a fresh clone to a page, and at the next start."""

import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from tests.clones import fetch, fresh_clone, plain_environment, running_studio

FIRST_S, SECOND_S = 60.0, 2.0


def seconds_to_a_page(clone: Path, data: Path) -> float:
    """Return how long `python3 start.py` takes until a page is there."""
    began = time.monotonic()
    with running_studio([sys.executable, clone / "start.py"], data) as url:
        fetch(url)
        return time.monotonic() - began


def seconds_of_bare_python() -> float:
    """Return the shortest of ten starts of Python with nothing to do."""
    return min(map(_one_start, range(10)))


def _one_start(_number: int) -> float:
    began = time.monotonic()
    command = [sys.executable, "-c", "pass"]
    subprocess.run(command, env=plain_environment(), check=True)
    return time.monotonic() - began


def main() -> int:
    """Print the figures; return 1 if one is above what is promised."""
    with tempfile.TemporaryDirectory(prefix="shadewright-bench-") as folder:
        clone, data = fresh_clone(Path(folder) / "clone"), Path(folder) / "demo"
        first = seconds_to_a_page(clone, data)
        second = min(seconds_to_a_page(clone, data) for _ in range(3))
    bare = seconds_of_bare_python()
    print(f"bare Python            {bare:7.3f} s")
    print(f"fresh clone to a page  {first:7.3f} s   promised {FIRST_S:.0f} s")
    print(
        f"next start to a page   {second:7.3f} s   promised {SECOND_S:.0f} s"
        f"   ({second / bare:.0f} times bare Python)"
    )
    return int(first > FIRST_S or second > SECOND_S)


if __name__ == "__main__":
    sys.exit(main())
