"""Set Shadewright up and open it: one file, nothing but Python itself.

python3 start.py          set up, then open the demo studio
python3 start.py serve    set up, then open your own studio
python3 start.py setup    set up only
python3 start.py test     set up, then run every check and every test
python3 start.py check    set up, then the quick checks alone
python3 start.py bench    set up, then measure

What follows is handed on: --lan (let paired phones in), --port 8001, --no-browser,
--data FOLDER.
On Windows type `py` for `python3`.
"""

# An old Python must get as far as being told so: no syntax newer than 3.8 here.
from __future__ import annotations

import contextlib
import hashlib
import importlib.util
import os
import shutil
import subprocess
import sys
import time
from collections import deque
from pathlib import Path
from typing import IO, Any, Generator, Sequence

OLDEST = (3, 11)
ROOT = Path(__file__).resolve().parent
VENV = ROOT / ".venv"
STAMP = VENV / "shadewright-stamp"
BUILD = ROOT / "build"
BIN = VENV / ("Scripts" if os.name == "nt" else "bin")
EXE = ".exe" if os.name == "nt" else ""
PYTHON = BIN / f"python{EXE}"
COMMAND = BIN / f"shadewright{EXE}"
NEW_PYTHON = {
    "win32": "winget install Python.Python.3.13",
    "darwin": "brew install python",
}
AGAIN = "Close Shadewright where it is open, look to the internet, and start again."
QUIETLY = ("--no-input", "--disable-pip-version-check")
PIP: tuple[str | Path, ...] = (PYTHON, "-I", "-m", "pip", "install", *QUIETLY)
PIPES: dict[str, Any] = {
    "stdin": subprocess.DEVNULL,
    "stdout": subprocess.PIPE,
    "stderr": subprocess.STDOUT,
    "text": True,
    "errors": "replace",
}


class StopError(Exception):
    """Only the person at the keyboard can go on: what is wrong, and what to type."""

    def __init__(self, wrong: str, line: str = "") -> None:
        super().__init__(f"{wrong} Type:\n\n    {line}" if line else wrong)


def main(words: list[str]) -> int:
    """Do what the first word asks; return the exit status."""
    has_verb = bool(words) and (not words[0].startswith("-") or words[0] in HELP)
    verb, rest = (words[0], words[1:]) if has_verb else ("demo", words)
    if verb not in VERBS:
        print(__doc__)
        return 0 if verb in HELP else 2
    try:
        refuse_old_python()
        return VERBS[verb](rest)
    except StopError as stop:
        print(f"\n{stop}", file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        print("\nStopped.", file=sys.stderr)
        return 130


# What the words do


def demo(rest: Sequence[str]) -> int:
    """Open the demo studio."""
    set_up()
    return become(COMMAND, "demo", *rest)


def serve(rest: Sequence[str]) -> int:
    """Open a studio of one's own."""
    set_up()
    return become(COMMAND, "serve", *rest)


def setup(_rest: Sequence[str]) -> int:
    """Set up, and say where the command is."""
    set_up()
    print(f"Ready: {COMMAND}")
    return 0


def test(rest: Sequence[str]) -> int:
    """Run every check and every test."""
    if not has_venv():
        install(venv_package())
    set_up(is_dev=True)
    return run("-m", "tests.run", "test", *rest)


def check(_rest: Sequence[str]) -> int:
    """Run the checks that take less than two minutes."""
    set_up(is_dev=True)
    return run("-m", "tests.run", "check")


def bench(rest: Sequence[str]) -> int:
    """Run every file in bench, or those that are named."""
    set_up(is_dev=True)
    files = sorted((ROOT / "bench").glob("*.py"))
    return max([run(f) for f in files if f.stem in (rest or f.stem)], default=0)


def run(*words: str | Path) -> int:
    """Run the Python of .venv in our folder."""
    sys.stdout.flush()
    return subprocess.call([PYTHON, *words], cwd=ROOT, stdin=subprocess.DEVNULL)


HELP = {"-h", "--help", "help"}
VERBS = {v.__name__: v for v in (demo, serve, setup, test, check, bench)}


# Setting up


def set_up(*, is_dev: bool = False) -> None:
    """Make ``.venv`` what the lock says; do nothing where it already is."""
    if is_ready(is_dev=is_dev):
        return
    refuse_missing_venv()
    try:
        with one_at_a_time() as lock:
            if not is_ready(is_dev=is_dev):
                build_venv(lock, is_dev=is_dev)
    except OSError as fault:
        raise StopError(f"{fault.strerror}: {fault.filename}") from fault


def build_venv(lock: IO[str], *, is_dev: bool) -> None:
    """Build ``.venv`` from nothing, the stamp last.

    A set-up that was cut short leaves no stamp, so the next start begins anew.
    """
    began = time.monotonic()
    with contextlib.suppress(FileNotFoundError):
        STAMP.unlink()
    # Started by the Python in .venv itself, the one that made it must do the work.
    python = getattr(sys, "_base_executable", "") or sys.executable
    step("1/3 making room in .venv", lock, python, "-I", "-m", "venv", "--clear", VENV)
    named = lock_file(is_dev=is_dev)
    step("2/3 fetching the parts", lock, *PIP, "--require-hashes", "-r", named)
    own = ("--no-deps", "--no-index", "--no-build-isolation", "-e")
    step("3/3 making the command", lock, *PIP, *own, ROOT)
    fresh = STAMP.with_suffix(".new")
    fresh.write_text(fingerprint(is_dev=is_dev), encoding="ascii")
    fresh.replace(STAMP)
    print(f"Shadewright: set up in {time.monotonic() - began:.0f} s", flush=True)


def step(title: str, lock: IO[str], *command: str | Path) -> None:
    """Run one step of the set-up; a dot for each part, and the time it took."""
    print(f"Shadewright: {title} ", end="", flush=True)
    began, last = time.monotonic(), deque([""], maxlen=12)
    # Where this start is killed, the next one waits until its child has ended.
    held = () if os.name == "nt" else (lock.fileno(),)
    with subprocess.Popen(list(map(str, command)), pass_fds=held, **PIPES) as process:
        for line in process.stdout or ():
            last.append(line.rstrip())
            if line.startswith("Collecting "):
                print(".", end="", flush=True)
    if process.returncode:
        print(" failed", flush=True)
        raise StopError("\n".join([*last, "", AGAIN]))
    print(f" {time.monotonic() - began:.0f} s", flush=True)


def is_ready(*, is_dev: bool) -> bool:
    """Say whether ``.venv`` is whole and made for this Python, lock and folder."""
    try:
        stamp = STAMP.read_text(encoding="ascii")
    except OSError:
        return False
    enough = {fingerprint(is_dev=True)} | {fingerprint(is_dev=is_dev)}
    return stamp in enough and PYTHON.exists() and COMMAND.exists()


def fingerprint(*, is_dev: bool) -> str:
    """Return a digest of all that a set-up depends on."""
    project = (ROOT / "pyproject.toml").read_bytes().partition(b"[tool.")[0]
    named = lock_file(is_dev=is_dev).read_bytes()
    parts = [project, named, sys.version.encode(), os.fsencode(ROOT)]
    return hashlib.sha256(b"\0".join(parts)).hexdigest()


def lock_file(*, is_dev: bool) -> Path:
    """Return the list of parts, each with its hash."""
    return ROOT / ("requirements-dev.lock" if is_dev else "requirements.lock")


@contextlib.contextmanager
def one_at_a_time() -> Generator[IO[str], None, None]:
    """Wait for a set-up that is under way; one that has ended holds nothing."""
    BUILD.mkdir(exist_ok=True)
    with (BUILD / "setup.lock").open("w", encoding="ascii") as lock:
        if sys.platform == "win32":
            import msvcrt

            # It gives up after ten seconds; a set-up may take longer.
            is_ours = False
            while not is_ours:
                with contextlib.suppress(OSError):
                    msvcrt.locking(lock.fileno(), msvcrt.LK_LOCK, 1)
                    is_ours = True
        else:
            import fcntl

            fcntl.flock(lock, fcntl.LOCK_EX)
        yield lock


def become(*command: str | Path) -> int:
    """Go on as another program; Windows can only wait for it."""
    sys.stdout.flush()
    if os.name == "nt":
        return subprocess.call(command)
    os.execv(command[0], [str(word) for word in command])
    return 0


# What may be missing


def refuse_old_python() -> None:
    """Say how to start with a newer Python, where this one is too old."""
    if sys.version_info >= OLDEST:
        return
    ours = "{}.{}".format(*sys.version_info)
    found = next(filter(shutil.which, (f"python3.{n}" for n in range(20, 10, -1))), "")
    line = f"{found} start.py" if found else get_line("python3.11", "python3.11-venv")
    line = NEW_PYTHON.get(sys.platform, line)
    raise StopError(f"Shadewright needs Python 3.11 or newer; this is {ours}.", line)


def refuse_missing_venv() -> None:
    """Say how to get Python's venv, which Debian keeps apart."""
    if not has_venv():
        raise StopError("This Python comes without venv.", get_line(venv_package()))


def has_venv() -> bool:
    """Say whether this Python can make a venv with pip in it."""
    importlib.invalidate_caches()
    return all(importlib.util.find_spec(name) for name in ("venv", "ensurepip"))


def venv_package() -> str:
    """Return Debian's name for this Python's venv."""
    return "python{}.{}-venv".format(*sys.version_info)


def get_line(*packages: str) -> str:
    """Return the line to type that installs some of Debian's packages."""
    return f"{'' if is_root() else 'sudo '}apt install {' '.join(packages)}"


def is_root() -> bool:
    """Say whether this is root, who needs no sudo."""
    return hasattr(os, "geteuid") and os.geteuid() == 0


def install(*packages: str) -> None:
    """Install some of Debian's packages; where that is not ours to do, say the line."""
    if not (is_root() and shutil.which("apt-get")):
        raise StopError("Something is missing.", get_line(*packages))
    apt_get("update")
    apt_get("install", "-y", "--no-install-recommends", *packages)


def apt_get(*words: str) -> None:
    """Run apt-get; show what it says only if it fails."""
    print(f"Shadewright: apt-get {' '.join(words)}", flush=True)
    env = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    done = subprocess.run(["apt-get", "-qq", *words], env=env, check=False, **PIPES)
    if done.returncode:
        raise StopError(done.stdout)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
