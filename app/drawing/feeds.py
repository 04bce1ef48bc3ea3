"""What a device feeds, in words short enough to stand above it."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.kinds import DEVICE_KINDS
from app.domain.network import Network
from app.domain.record import Board, Device

NOT_RECORDED = "not recorded what it feeds"


def feeds_of(net: Network, device: Device) -> str:
    """Return what a device feeds by the record, or that it does not say."""
    said = list(dict.fromkeys([*_elsewhere(net, device), *_here(net, device)]))
    kind = DEVICE_KINDS[device.kind]
    if said or not kind.outgoing:
        return "; ".join(said)
    return "spare" if device.in_use == "spare" else NOT_RECORDED


def _elsewhere(net: Network, device: Device) -> Iterator[str]:
    record = net.record
    for feed in net.fed.get(device.ref, ()):
        item = record.by_ref[feed.fed]
        if not isinstance(item, Device):
            boards = [b.title for b in record.boards if b.fed_from == item.ref]
            yield " → ".join([item.title, *boards])
        elif item.board != device.board:
            board = record.find(Board, item.board)
            yield board.title if board else item.title


def _here(net: Network, device: Device) -> Iterator[str]:
    fed = [net.record.by_ref[feed.fed] for feed in net.fed.get(device.ref, ())]
    count = sum(isinstance(i, Device) and i.board == device.board for i in fed)
    if count:
        yield f"feeds {count} device{'s' if count > 1 else ''} here"
