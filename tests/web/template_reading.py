"""Read a template with the types of its page, and say which names do not fit.

Follows ``extends``, ``include``, ``with``, ``for`` and ``if``; looks each name
up in the type hints. What a filter or a tag returns is not followed.
"""

import types
import typing
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, fields, is_dataclass
from enum import Enum

from django.forms import BaseForm
from django.template import NodeList, Variable
from django.template.base import FilterExpression, Node, Template
from django.template.defaulttags import ForNode, IfNode, WithNode
from django.template.loader import get_template
from django.template.loader_tags import ExtendsNode, IncludeNode

Hint = object
"""What stands in an annotation: a class, a tuple of one, a union with None."""
Scope = Mapping[str, Hint]
UNKNOWN = object


@dataclass
class Reading:
    """What a template asks of the classes of its page."""

    wrong: list[str] = field(default_factory=list)
    used: set[tuple[type, str]] = field(default_factory=set)


def read(template: Template, scope: Scope) -> Reading:
    """Read a compiled template with these types in its context."""
    reading = Reading()
    _nodes(template.nodelist, scope, reading)
    return reading


def unused(page: type, reading: Reading) -> list[str]:
    """Name the fields of a page, and of what is declared beside it, that idle."""
    return [
        f"{each.__name__}.{one.name}"
        for each in _reachable(page, set())
        if each.__module__ == page.__module__
        for one in fields(each)
        if not any(
            issubclass(each, owner) and name == one.name for owner, name in reading.used
        )
    ]


def _reachable(kind: Hint, seen: set[type]) -> set[type]:
    if is_dataclass(kind) and isinstance(kind, type) and kind not in seen:
        seen.add(kind)
        for hint in typing.get_type_hints(kind).values():
            _reachable(hint, seen)
    for inner in typing.get_args(kind):
        _reachable(inner, seen)
    return seen


def _nodes(nodes: NodeList, scope: Scope, reading: Reading) -> None:
    for node in nodes:
        if isinstance(node, ForNode):
            _for(node, scope, reading)
        elif isinstance(node, WithNode):
            _nodes(node.nodelist, {**scope, **_extra(node, scope, reading)}, reading)
        elif isinstance(node, IncludeNode):
            _include(node, scope, reading)
        else:
            _other(node, scope, reading)


def _for(node: ForNode, scope: Scope, reading: Reading) -> None:
    sequence = _expression(_given(node.sequence), scope, reading)
    names = node.loopvars
    element = _element(sequence) if len(names) == 1 else UNKNOWN
    inner = {**scope, "forloop": UNKNOWN, **dict.fromkeys(names, element)}
    _nodes(_list(node.nodelist_loop), inner, reading)
    _nodes(_list(node.nodelist_empty), scope, reading)


def _include(node: IncludeNode, scope: Scope, reading: Reading) -> None:
    extra = _extra(node, scope, reading)
    inner = extra if node.isolated_context else {**scope, **extra}
    _nodes(_template(_given(node.template)).nodelist, inner, reading)


def _extra(
    node: WithNode | IncludeNode, scope: Scope, reading: Reading
) -> dict[str, Hint]:
    return {
        name: _expression(given, scope, reading)
        for name, given in node.extra_context.items()
    }


def _other(node: Node, scope: Scope, reading: Reading) -> None:
    if isinstance(node, ExtendsNode):
        _nodes(_template(_given(node.parent_name)).nodelist, scope, reading)
    if isinstance(node, IfNode):
        for condition, _ in node.conditions_nodelists:
            _condition(condition, scope, reading)
    for expression in _expressions(node):
        _expression(expression, scope, reading)
    for name in node.child_nodelists:
        if nodes := getattr(node, name, None):
            _nodes(nodes, scope, reading)


def _template(name: FilterExpression) -> Template:
    return compiled(get_template(str(name.var)))


def compiled(loaded: object) -> Template:
    """Return what Django's engine wraps."""
    template = getattr(loaded, "template", None)
    assert isinstance(template, Template)
    return template


def _given(part: object) -> FilterExpression:
    assert isinstance(part, FilterExpression)
    return part


def _list(part: object) -> NodeList:
    return part if isinstance(part, NodeList) else NodeList()


def _expressions(node: Node) -> Iterator[FilterExpression]:
    for value in vars(node).values():
        inner = value.values() if isinstance(value, dict) else value
        several = inner if isinstance(value, list | tuple | dict) else (value,)
        yield from (one for one in several if isinstance(one, FilterExpression))


def _condition(part: object, scope: Scope, reading: Reading) -> None:
    if part is None:
        return
    value = getattr(part, "value", None)
    if isinstance(value, FilterExpression):
        _expression(value, scope, reading)
    for side in ("first", "second"):
        _condition(getattr(part, side, None), scope, reading)


def _expression(expression: FilterExpression, scope: Scope, reading: Reading) -> Hint:
    kind = _variable(expression.var, scope, reading)
    for _, arguments in expression.filters:
        for is_name, argument in arguments:
            if is_name:
                _variable(argument, scope, reading)
    return UNKNOWN if expression.filters else kind


def _variable(variable: object, scope: Scope, reading: Reading) -> Hint:
    if not isinstance(variable, Variable) or variable.lookups is None:
        return UNKNOWN
    head, *names = variable.lookups
    kind = scope.get(head, UNKNOWN)
    for name in names:
        kind = _attribute(kind, name, reading)
    return kind


def _attribute(kind: Hint, name: str, reading: Reading) -> Hint:
    kind = _without_none(kind)
    if kind is UNKNOWN or not isinstance(kind, type):
        return _element(kind) if name.isdecimal() else UNKNOWN
    if issubclass(kind, BaseForm):
        known = name in getattr(kind, "base_fields", ()) or hasattr(kind, name)
    else:
        known = name in _names(kind)
        reading.used.add((kind, name))
    if not known:
        reading.wrong.append(f"{kind.__name__}.{name}")
    return _hint(kind, name)


def _names(kind: type) -> set[str]:
    declared = {one.name for one in fields(kind)} if is_dataclass(kind) else set()
    return declared | set(dir(kind))


def _hint(kind: type, name: str) -> Hint:
    found = getattr(kind, name, None)
    if isinstance(found, property) and found.fget:
        return typing.get_type_hints(found.fget).get("return", UNKNOWN)
    if issubclass(kind, Enum) or issubclass(kind, BaseForm):
        return UNKNOWN
    return typing.get_type_hints(kind).get(name, UNKNOWN)


def _element(kind: Hint) -> Hint:
    inner = typing.get_args(_without_none(kind))
    return inner[0] if inner else UNKNOWN


def _without_none(kind: Hint) -> Hint:
    if typing.get_origin(kind) in {typing.Union, types.UnionType}:
        rest = [one for one in typing.get_args(kind) if one is not type(None)]
        return rest[0] if len(rest) == 1 else UNKNOWN
    return kind
