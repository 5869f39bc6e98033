"""Public functions of core are documented as a handbook documents a formula.

numpydoc checks that the parameters are those of the signature, in order; we
check that each number has its unit in square brackets, and that what a
function raises is said.
"""

import ast
import re
from importlib import import_module
from pathlib import Path
from typing import Any

import pytest
from numpydoc.docscrape import FunctionDoc, Parameter
from numpydoc.validate import validate

from tests.house.reading import CORE, Function, module_name, public_functions, texts

# Summary; parameters documented, known, in order, with type and text; returns.
RULES = {"GL08", "SS03", "PR01", "PR02", "PR03", "PR04", "PR07", "RT01", "RT03"}
NUMBER = re.compile(r"\b(float|int|ndarray|complex)\b")
UNIT = re.compile(r"\[[^\[\]]+\]\.?$")
FUNCTIONS = [
    function
    for path, _ in texts(".py", under=CORE)
    for function in public_functions(path)
]
each_function = pytest.mark.parametrize("function", FUNCTIONS, ids=lambda f: f.where)


def faults_of_units(doc: FunctionDoc) -> list[str]:
    """Return the numbers that are given or returned without a unit."""
    entries: list[Parameter] = [*doc["Parameters"], *doc["Returns"], *doc["Yields"]]
    return [
        entry.name or entry.type
        for entry in entries
        if NUMBER.search(entry.type) and not UNIT.search(" ".join(entry.desc).strip())
    ]


def faults_of_raises(node: ast.AST, doc: FunctionDoc) -> list[str]:
    """Return the errors that are raised, or let through by a guard, unsaid."""
    said = {entry.type for entry in doc["Raises"]}
    raised = {
        call.func.id
        for statement in ast.walk(node)
        if isinstance(statement, ast.Raise)
        and isinstance(call := statement.exc, ast.Call)
        and isinstance(call.func, ast.Name)
        and call.func.id.endswith("Error")
    }
    guards = {
        call.func.id
        for call in ast.walk(node)
        if isinstance(call, ast.Call)
        and isinstance(call.func, ast.Name)
        and call.func.id.startswith("require_")
    }
    return sorted((raised - said) | (set() if said else guards))


def doc_of(function: Function) -> FunctionDoc:
    module = import_module(module_name(function.path))
    return FunctionDoc(getattr(module, function.node.name))


@each_function
def test_parameters_are_those_of_the_signature(function: Function) -> None:
    name = f"{module_name(function.path)}.{function.node.name}"
    faults = [text for code, text in validate(name)["errors"] if code in RULES]
    assert faults == []


@each_function
def test_every_number_has_a_unit(function: Function) -> None:
    assert faults_of_units(doc_of(function)) == []


@each_function
def test_what_is_raised_is_said(function: Function) -> None:
    assert faults_of_raises(function.node, doc_of(function)) == []


@each_function
def test_every_number_is_given_by_name(function: Function) -> None:
    """Quantities are keyword-only: two floats in the wrong order look alike."""
    positional = function.node.args.posonlyargs + function.node.args.args
    numbers = [
        argument.arg
        for argument in positional
        if argument.annotation and NUMBER.search(ast.unparse(argument.annotation))
    ]
    assert len(numbers) <= 1


BAD = '''
def bad(mass_g: float, name: str) -> float:
    """Return something.

    Parameters
    ----------
    mass_g : float
        Without a unit.
    name : str
        A word needs none.

    Returns
    -------
    float
        Likewise.
    """
    require_mass(mass_g)
    raise OutOfRangeError(name)
'''


def test_a_bad_docstring_is_found(tmp_path: Path) -> None:
    sample = tmp_path / "bad.py"
    sample.write_text(BAD)
    scope: dict[str, Any] = {}
    exec(BAD, scope)  # ruff: ignore[exec-builtin] - the sample above
    (function,) = public_functions(sample)
    doc = FunctionDoc(scope["bad"])
    assert faults_of_units(doc) == ["mass_g", "float"]
    assert faults_of_raises(function.node, doc) == ["OutOfRangeError", "require_mass"]
