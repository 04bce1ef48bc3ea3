"""A tall tree in parts that fit a page, each part saying from where it goes on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from app.drawing.tree import Node, Tree

# About how tall a thing and what goes out from it are, against a page's 74.
_NODE, _OUT, _PAGE = 4, 5, 74


Begins = tuple[str, bool] | None


@dataclass(slots=True)
class _Part:
    """Roots of a part, what they feed there, and how tall that is."""

    roots: list[str] = field(default_factory=list)
    fed: dict[str, list[str]] = field(default_factory=dict)
    begins: dict[str, tuple[str, bool]] = field(default_factory=dict)
    nodes: dict[str, Node] = field(default_factory=dict)
    tall: int = 0


def in_parts(tree: Tree) -> tuple[Tree, ...]:
    """Return a tree whole if it fits a page, else in parts that do.

    What hangs on one thing is kept together as far as it fits; where it does not, the
    next part begins with a node that stands for that thing once more.
    """
    tall = _heights(tree)
    parts = [_Part()]
    waiting = [(ref, tree.begins.get(ref)) for ref in reversed(tree.roots)]
    while waiting:
        root, begins = waiting.pop()
        worth_it = tall[root] <= _PAGE or parts[-1].tall > _PAGE / 2
        if parts[-1].roots and worth_it and not _fits(parts[-1], tall[root]):
            parts.append(_Part())
        later = _fill(tree, tall, parts, root, begins)
        waiting += reversed(later)
    return tuple(_tree_of(tree, part) for part in parts)


def _fits(part: _Part, tall: int) -> bool:
    return part.tall + tall <= _PAGE


def _fill(
    tree: Tree,
    tall: Mapping[str, int],
    parts: list[_Part],
    root: str,
    begins: Begins,
) -> list[tuple[str, Begins]]:
    """Put a root into the last part; return what is too tall, to be a root itself."""
    part = parts[-1]
    _add_root(part, root, begins)
    if _fits(part, tall[root]):
        _add_all(part, tree, tall, root)
        return []
    last = _head(part, tree, root)
    later: list[tuple[str, Begins]] = []
    above, used = last, 0
    for child in tree.fed.get(last, ()):
        if tall[child] > _PAGE:
            later.append((child, (f"Goes on from {tree.nodes[last].title}", True)))
            continue
        if used and not _fits(part, tall[child]):
            part, above = _Part(), f"{last} again {len(parts)}"
            parts.append(part)
            again = replace(tree.nodes[last], ref=above, outs=(), facts=(), href=None)
            part.nodes[above] = replace(again, title=f"{again.title}, once more")
            part.roots.append(above)
        part.fed.setdefault(above, []).append(child)
        _add_all(part, tree, tall, child)
        used += 1
    return later


def _head(part: _Part, tree: Tree, root: str) -> str:
    """Add what stands straight below a root; return the first that feeds several."""
    part.tall += _own(tree.nodes[root])
    while len(tree.fed.get(root, ())) == 1:
        [only] = tree.fed[root]
        part.fed[root] = [only]
        part.tall += _own(tree.nodes[only])
        root = only
    return root


def _add_root(part: _Part, root: str, begins: Begins) -> None:
    part.roots.append(root)
    if begins:
        part.begins[root] = begins


def _add_all(part: _Part, tree: Tree, tall: Mapping[str, int], ref: str) -> None:
    part.tall += tall[ref]
    waiting = [ref]
    while waiting:
        here = waiting.pop()
        fed = list(tree.fed.get(here, ()))
        if fed:
            part.fed[here] = fed
        waiting += fed


def _tree_of(tree: Tree, part: _Part) -> Tree:
    refs = {*part.roots, *(ref for fed in part.fed.values() for ref in fed)}
    nodes = {ref: tree.nodes[ref] for ref in refs if ref in tree.nodes}
    return Tree(
        roots=tuple(part.roots),
        nodes=nodes | part.nodes,
        fed={ref: tuple(fed) for ref, fed in part.fed.items()},
        begins=part.begins,
    )


def _own(node: Node) -> int:
    return _NODE + _OUT * len(node.outs)


def _heights(tree: Tree) -> dict[str, int]:
    """Return how tall each thing is with all that hangs on it."""
    order: list[str] = []
    waiting: list[str] = list(tree.roots)
    while waiting:
        here = waiting.pop()
        order.append(here)
        waiting += tree.fed.get(here, ())
    tall: dict[str, int] = {}
    for ref in reversed(order):
        below = sum(tall[fed] for fed in tree.fed.get(ref, ()))
        tall[ref] = _own(tree.nodes[ref]) + below
    return tall
