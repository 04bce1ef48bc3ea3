"""The program is ended at random moments; nothing acknowledged is lost or doubled."""

from __future__ import annotations

import random
import threading
import time
from collections import Counter
from dataclasses import dataclass, field
from itertools import count
from pathlib import Path

from app.config import Config, files_beside
from app.domain.record import Record
from app.services.copies import look_through
from app.services.files import not_here, unsound
from app.services.homes import add_home, open_home
from app.store.backup import check
from app.store.changes import latest_changes
from app.store.copies import ASKED, DAILY, copies_in
from app.store.engine import make_engine, reading, writing
from app.store.files import digests_in, is_sound
from app.store.homes import home_refs
from app.store.migrate import upgrade
from tests.browser.served import Served
from tests.faults.sender import CUT_OFF, Sender
from tests.faults.works import WORKS, first_record

SENDERS = 4
LONGEST_LIFE_S = 0.8
FIRST_WITHIN_S = 60
# A command takes as long to begin as many forms to be sent.
WEIGHTS = [1 if kind in ("take_list_in", "back_up_apart") else 6 for kind in WORKS]


@dataclass
class Told:
    """What was tried under which name, and what the program said was done."""

    tried: dict[str, str] = field(default_factory=dict)
    done: dict[str, str] = field(default_factory=dict)
    refused: list[str] = field(default_factory=list)


def killed(folder: Path, kills: int, seed: int) -> Counter[str]:
    """Work and end the program as often as told; return how much was acknowledged.

    Each time the program is started again as it is, nothing being repaired in between,
    and what it holds is held against what was acknowledged.
    """
    config = Config(data=folder / "data")
    config.data.mkdir(parents=True)
    upgrade(config.database, config.backups)
    with writing(make_engine(config.database)) as connection:
        add_home(connection, first_record())
    told, numbers, chance = Told(), count(), random.Random(seed)  # noqa: S311
    server = Served(config.data)
    try:
        for _ in range(kills):
            server.start()
            work_until_killed(server, told, numbers, chance)
            hold_against(config, told)
        server.start()
        assert Sender(int(server.port)).get("/homes/H1/").status == 200
    finally:
        server.close()
    assert told.refused == [], told.refused
    return Counter(told.done.values())


def work_until_killed(
    server: Served, told: Told, numbers: count[int], chance: random.Random
) -> None:
    """Let several work at once, and end the program at a random moment."""
    data = server.data
    threads = [
        threading.Thread(target=_work, args=(int(server.port), data, told, numbers))
        for _ in range(SENDERS)
    ]
    for thread in threads:
        thread.start()
    # Before anything is acknowledged there is nothing to lose.
    end = time.monotonic() + FIRST_WITHIN_S
    while not told.done and time.monotonic() < end:
        time.sleep(0.01)
    time.sleep(chance.uniform(0, LONGEST_LIFE_S))
    server.kill()
    for thread in threads:
        thread.join()


def _work(port: int, data: Path, told: Told, numbers: count[int]) -> None:
    """Work until the program answers no more."""
    sender = Sender(port)
    while True:
        name = f"n{next(numbers):06d}"
        kind = random.choices(list(WORKS), WEIGHTS)[0]  # noqa: S311 - no secret
        told.tried[name] = kind
        try:
            if WORKS[kind](sender, data, name):
                told.done[name] = kind
            elif _answers(sender):
                told.refused.append(f"{kind} {name}")
        except CUT_OFF:
            return


def _answers(sender: Sender) -> bool:
    return sender.get("/homes/H1/").status == 200


def hold_against(config: Config, told: Told) -> None:
    """Hold the file against what was acknowledged; it is as the end left it."""
    assert upgrade(config.database, config.backups) is None
    check(config.database)
    with reading(make_engine(config.database)) as connection:
        here = open_home(connection, "H1")
        log = latest_changes(connection, here.key, 1_000_000)
        homes = home_refs(connection)
    held = names_in(here.record, homes)
    for name, kind in told.tried.items():
        expected = 3 if kind == "take_list_in" else 1
        if kind not in ("back_up", "back_up_apart"):
            least = expected if name in told.done else 0
            assert held[name] in (least, expected), (name, kind, held[name])
    added = [e.after for change in log for e in change.entries if e.after]
    logged = Counter(item.ref for item in added)
    assert set(logged.values()) <= {1}
    assert logged.keys() == here.record.by_ref.keys() - first_record().by_ref.keys()
    _files_are_whole(config, here.record)
    _copies_are_whole(config, told)


def names_in(record: Record, homes: set[str]) -> Counter[str]:
    """Return how often each name stands in what is held."""
    names = [room.name for room in record.rooms]
    names += [(point.name or "").partition(" ")[0] for point in record.points]
    names += [reading.seen_by for reading in record.readings]
    names += [attachment.caption for attachment in record.attachments]
    return Counter([*names, *homes])


def _files_are_whole(config: Config, record: Record) -> None:
    assert list(unsound(config.files, record.attachments)) == []
    assert not_here(config) == 0


def _copies_are_whole(config: Config, told: Told) -> None:
    """Whatever has the name of a copy opens, and has its photographs beside it."""
    copies = copies_in(config.backups)
    asked = [copy.path for copy in copies if copy.note == ASKED]
    daily = [copy.path for copy in copies if copy.note == DAILY]
    done = Counter(told.done.values())
    assert len(asked) >= done["back_up"]
    apart = [name for name, kind in told.done.items() if kind == "back_up_apart"]
    newest = [config.data.parent / f"{name}.sqlite3" for name in apart[-1:]]
    for path in (*newest, *asked[:2], *daily[:1]):
        check(path)
        look_through(path)
        beside = files_beside(path)
        assert all(is_sound(beside, digest) for digest in digests_in(path))
