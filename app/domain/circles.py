"""Circles of the record: things that, as written, feed themselves."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from graphlib import CycleError, TopologicalSorter

from app.domain.network import Network, Role, feeders_of

MOST_CIRCLES = 20


def circles(net: Network) -> tuple[tuple[str, ...], ...]:
    """Return circles in the order of feeding, `MOST_CIRCLES` at most.

    Line and neutral are looked at apart: a point that takes its line from one circuit
    and its neutral through its neighbour is no circle.
    """
    found = [*_circles_of(net, "line"), *_circles_of(net, "neutral")]
    return tuple(dict.fromkeys(found))[:MOST_CIRCLES]


def _circles_of(net: Network, role: Role) -> list[tuple[str, ...]]:
    """Sort the network from its sources down; what cannot be sorted is a circle.

    It is set aside before the next look, so that each look finds another one.
    """
    graph: Mapping[str, Sequence[str]]
    graph = {ref: list(feeders_of(net, ref, role)) for ref in net.feeders}
    found: list[tuple[str, ...]] = []
    while len(found) < MOST_CIRCLES:
        circle = _first_circle(graph)
        if not circle:
            break
        found.append(circle)
        graph = {
            ref: [feeder for feeder in feeders if feeder not in circle]
            for ref, feeders in graph.items()
            if ref not in circle
        }
    return found


def _first_circle(graph: Mapping[str, Sequence[str]]) -> tuple[str, ...]:
    try:
        TopologicalSorter(graph).prepare()
    except CycleError as error:
        refs: list[str] = error.args[1][:-1]
        start = refs.index(min(refs))
        return (*refs[start:], *refs[:start])
    return ()
