"""Many write at once: nobody's change is lost, and nobody is told of a lock."""

from __future__ import annotations

import random
import threading
import time
from collections import Counter
from pathlib import Path

from app.config import Config
from app.domain.record import Point, Record
from app.services.homes import add_home, open_home
from app.store.changes import latest_changes
from app.store.engine import make_engine, reading, writing
from app.store.migrate import upgrade
from tests.browser.served import Served
from tests.faults.sender import Answer, Sender
from tests.faults.works import HOME, first_record

SHARED = ("P1", "P2", "P3")


class Told:
    """How often the writers were told what."""

    def __init__(self) -> None:
        self.counts: Counter[str] = Counter()
        self._lock = threading.Lock()

    def say(self, what: str) -> None:
        with self._lock:
            self.counts[what] += 1


def written_at_once(folder: Path, writers: int, seconds: float) -> Counter[str]:
    """Let several count up the notes of three points; return what they were told.

    Each reads the number that stands in the form, and sends it back with one more.  A
    save that took another's place would leave the sum short of the saves.
    """
    config = Config(data=folder / "data")
    config.data.mkdir(parents=True)
    upgrade(config.database, config.backups)
    record = first_record()
    with writing(make_engine(config.database)) as connection:
        add_home(connection, record)
    told = Told()
    server = Served(config.data)
    try:
        server.start()
        _let_write(int(server.port), writers, seconds, told)
    finally:
        server.close()
    _hold_against(config, told.counts)
    return told.counts


def _let_write(port: int, writers: int, seconds: float, told: Told) -> None:
    ends = time.monotonic() + seconds
    threads = [
        threading.Thread(target=_write, args=(Sender(port), f"w{n}", ends, told))
        for n in range(writers)
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()


def _write(sender: Sender, name: str, ends: float, told: Told) -> None:
    while time.monotonic() < ends:
        if random.random() < 0.5:  # noqa: S311 - no secret
            fields = sender.form_at(f"{HOME}/new/rooms") | {"name": name}
            answer = sender.post(f"{HOME}/new/rooms", fields)
            told.say(_said(answer, "added"))
        else:
            answer = _count_up(sender, random.choice(SHARED), name)  # noqa: S311
            told.say(_said(answer, "counted"))


def _count_up(sender: Sender, ref: str, name: str) -> Answer:
    path = f"{HOME}/points/{ref}/edit"
    fields = sender.form_at(path)
    fields["note"] = f"{_number(fields['note']) + 1} by {name}"
    return sender.post(path, fields)


def _said(answer: Answer, done: str) -> str:
    if answer.status == 409:
        assert "changed" in answer.text
        return "conflict"
    return done if answer.status == 303 else f"status {answer.status}"


def _hold_against(config: Config, told: Counter[str]) -> None:
    with reading(make_engine(config.database)) as connection:
        here = open_home(connection, "H1")
        log = latest_changes(connection, here.key, 1_000_000)
    before = len(first_record().rooms)
    assert set(told) <= {"added", "counted", "conflict"}, told
    assert len(here.record.rooms) - before == told["added"]
    assert _sum(here.record) == told["counted"]
    assert len(log) == told["added"] + told["counted"]


def _sum(record: Record) -> int:
    return sum(_number(_point(record, ref).note) for ref in SHARED)


def _number(note: str) -> int:
    return int(note.partition(" ")[0] or 0)


def _point(record: Record, ref: str) -> Point:
    return next(point for point in record.points if point.ref == ref)
