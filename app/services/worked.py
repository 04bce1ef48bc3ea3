"""What was read and worked out of a home, kept for as long as its file says the same.

Every write gives a home a new stamp that nothing else ever has, read in the same
transaction as the rest.  So a stamp stands for one state of one home: whoever wrote it,
in whatever file, and whatever was put in that file's place since.
"""

from __future__ import annotations

import threading
from collections import OrderedDict
from collections.abc import Callable
from datetime import date
from functools import cached_property

from app.domain.network import Network, network
from app.domain.record import Record
from app.domain.remarks import Remark
from app.services.remarks import remarks_of

# About 6,000 points with all that belongs to them.
MOST_ITEMS = 30_000


class Worked:
    """One state of a home, and what follows from it.

    Attributes:
        record: The home.
    """

    def __init__(self, record: Record) -> None:
        self.record = record
        self._remarks: tuple[date, tuple[Remark, ...]] | None = None

    @cached_property
    def net(self) -> Network:
        """The supply network."""
        return network(self.record)

    def remarks(self, today: date) -> tuple[Remark, ...]:
        """Return the remarks of a day."""
        kept = self._remarks
        if kept is None or kept[0] != today:
            kept = self._remarks = (today, remarks_of(self.record, today))
        return kept[1]


class Memory:
    """The states that were read last, as many as have room."""

    def __init__(self, most_items: int = MOST_ITEMS) -> None:
        self._most = most_items
        self._kept: OrderedDict[str, Worked] = OrderedDict()
        self._lock = threading.Lock()

    def get(self, stamp: str | None, load: Callable[[], Record]) -> Worked:
        """Return the state of a stamp, read anew where it is not kept."""
        with self._lock:
            kept = self._kept.get(stamp) if stamp else None
            if kept is not None and stamp:
                self._kept.move_to_end(stamp)
                return kept
        worked = Worked(load())
        if stamp:
            with self._lock:
                self._kept[stamp] = worked
                self._make_room()
        return worked

    def clear(self) -> None:
        """Keep nothing any longer."""
        with self._lock:
            self._kept.clear()

    def _make_room(self) -> None:
        """Let the longest unused go; the newest stays, however large it is."""
        while len(self._kept) > 1 and self._items() > self._most:
            self._kept.popitem(last=False)

    def _items(self) -> int:
        return sum(1 + len(worked.record.by_ref) for worked in self._kept.values())


memory = Memory()
