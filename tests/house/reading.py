"""What the house tests read: the project's files, and the functions in them."""

import ast
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SOURCE = ROOT / "src" / "shadewright"
CORE = SOURCE / "core"
DOCS = ROOT / "docs"


@dataclass(frozen=True)
class Function:
    """A function as it is written."""

    path: Path
    node: ast.FunctionDef | ast.AsyncFunctionDef

    @property
    def where(self) -> str:
        """Where it stands, for a person."""
        name = f"{self.path.name}:{self.node.lineno} {self.node.name}"
        return f"{self.path.parent.name}/{name}"

    @property
    def body_lines(self) -> int:
        """How many lines its body has, but for its docstring and blank lines."""
        body = self.node.body[1:] if ast.get_docstring(self.node) else self.node.body
        if not body:
            return 0
        text = self.path.read_text(encoding="utf-8").splitlines()
        lines = text[body[0].lineno - 1 : self.node.end_lineno]
        return sum(bool(line.strip()) for line in lines)


@cache
def project_files() -> tuple[Path, ...]:
    """Return every file that git keeps or would keep."""
    command = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    said = subprocess.run(
        command, cwd=ROOT, capture_output=True, text=True, check=True
    ).stdout
    paths = (ROOT / name for name in said.split("\0") if name)
    return tuple(sorted(path for path in paths if path.is_file()))


def texts(*endings: str, under: Path = ROOT) -> Iterator[tuple[Path, str]]:
    """Return each text file of some kinds, with what it says."""
    for path in project_files():
        if path.suffix in endings and path.is_relative_to(under):
            yield path, path.read_text(encoding="utf-8")


def name_of(path: Path) -> str:
    """Return a file's path within the project."""
    return path.relative_to(ROOT).as_posix()


def functions(path: Path) -> Iterator[Function]:
    """Return every function of a file, those inside classes too."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            yield Function(path, node)


def public_functions(path: Path) -> Iterator[Function]:
    """Return the functions that a module of core offers to others."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    for node in tree.body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            yield Function(path, node)


def module_name(path: Path) -> str:
    """Return the dotted name of a file under src."""
    parts = path.relative_to(SOURCE.parent).with_suffix("").parts
    return ".".join(part for part in parts if part != "__init__")


def core_chapters() -> list[str]:
    """Return the names of the chapters of core."""
    return sorted(path.parent.name for path in CORE.glob("*/__init__.py"))


def sub_chapters() -> list[str]:
    """Return the chapters within chapters of core, as ``baths/acidity``."""
    found = (path.parent for path in CORE.glob("*/*/__init__.py"))
    return sorted(path.relative_to(CORE).as_posix() for path in found)
