"""Before you isolate, label: ways of a plan whose labels are not to be relied on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from app.domain.answers import Named
from app.domain.isolation.shapes import LabelFirst
from app.domain.labels import feeding_ties, label_problems
from app.domain.network import Network
from app.domain.record import Board, Device

# What the check of labels finds that may send a hand to the wrong way.
MISLEADS = frozenset(
    {
        "no_main_switch",
        "not_spare",
        "other_use",
        "other_room",
        "other_storey",
        "same_name",
        "same_number",
    }
)
_WEAK = frozenset({"0", "1", "2"})


def labels_first(net: Network, ways: Iterable[Device]) -> tuple[LabelFirst, ...]:
    """Return what is wrong, missing or doubtful about the labels of some ways.

    A label is doubtful while nobody has seen every point of its way go off with it.
    """
    found: list[LabelFirst] = []
    for way in ways:
        board = net.record.find(Board, way.board)
        name = board.name if board else way.board
        found += [
            LabelFirst(
                way=Named(ref=way.ref, title=way.title), board=name, sentence=said
            )
            for said in dict.fromkeys(_wrong(net, way, board))
        ]
    return tuple(found)


def _wrong(net: Network, way: Device, board: Board | None) -> Iterator[str]:
    if way.label_found is None:
        yield "The label found on it is not recorded."
    elif not way.label_found.strip():
        yield "Nothing is written at it."
    for problem in label_problems(net, board) if board else ():
        if way.ref in problem.ways and problem.code in MISLEADS:
            yield problem.sentence
    if any(tie.grade in _WEAK for tie in feeding_ties(net, way)):
        yield "Nobody has seen all its points go off with it."
