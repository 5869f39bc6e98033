"""A trace as a page shows it: each name leads to its own page."""

from django.urls import reverse

from shadewright.web.parts import TreeNode
from shadewright.workflows.trace_nodes import Kind, Node

_PAGES = {
    Kind.LOT: "lot",
    Kind.LOT_BEFORE: "lot",
    Kind.BOTTLE: "bottle",
    Kind.JAR: "trace-jar",
    Kind.BASE: "base",
    Kind.MILL_LOT: "base",
}


def shown_tree(node: Node, *, is_here: bool = True) -> TreeNode:
    """Return a trace for its page; the first node is where one stands."""
    return TreeNode(
        kind=node.kind,
        name=node.name,
        more=node.more,
        address="" if is_here else _address(node),
        is_missing=node.is_missing,
        is_here=is_here,
        below=tuple(shown_tree(one, is_here=False) for one in node.below),
    )


def _address(node: Node) -> str:
    if not node.key or node.kind not in {*_PAGES, Kind.BATH, Kind.LOT_AFTER}:
        return ""
    if node.kind in {Kind.BATH, Kind.LOT_AFTER}:
        return f"/baths/{node.key}/"
    return reverse(_PAGES[node.kind], args=[node.key])
