"""Whatever was acknowledged is in the file, however the program ended."""

from __future__ import annotations

import random
import subprocess
import sys
import time
from pathlib import Path

from app.domain.record import Home, Record
from app.services.homes import add_home, open_home
from app.store.backup import check
from app.store.changes import latest_changes
from app.store.engine import make_engine, reading, writing
from app.store.migrate import upgrade

ROUNDS = 8
MOST_SECONDS = 10
# Each save adds a point and renames the home: both, or neither.
SAVING = """
import itertools, sys
from pathlib import Path
from app.domain.edits import added, replaced
from app.domain.record import Point
from app.services.homes import open_home, save
from app.store.engine import make_engine, writing

engine = make_engine(Path(sys.argv[1]))
for number in itertools.count(int(sys.argv[2])):
    with writing(engine) as connection:
        here = open_home(connection, "a")
        new = added(here.record, Point(ref=f"P{number}", kind="light"))
        home = new.home.model_copy(update={"name": f"{number}"})
        save(connection, here, replaced(new, "a", home), f"{number}")
    print(number, flush=True)
"""


def test_nothing_acknowledged_is_lost_by_kill(database: Path) -> None:
    with writing(make_engine(database)) as connection:
        add_home(connection, Record(home=Home(ref="a", name="0")))
    stored, ends = 0, time.monotonic() + MOST_SECONDS
    for done in range(ROUNDS):
        if done and time.monotonic() > ends:
            break
        acknowledged = killed_while_saving(database, stored + 1)
        assert upgrade(database, database.parent / "copies") is None
        check(database)
        stored = saved_whole(database)
        # The one under way may be stored, and its answer lost.
        assert stored in (acknowledged, acknowledged + 1)
    assert stored > 0


def killed_while_saving(database: Path, first: int) -> int:
    """Save in a row, end it at a random moment; return the last one acknowledged."""
    command = [sys.executable, "-c", SAVING, str(database), str(first)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as child:
        assert child.stdout is not None
        count = random.randint(1, 60)  # noqa: S311 - no secret
        said = [child.stdout.readline() for _ in range(count)]
        time.sleep(random.uniform(0, 0.02))  # noqa: S311 - no secret
        child.kill()
        said += child.stdout.read().splitlines()
    return int(said[-1])


def saved_whole(database: Path) -> int:
    """Return how many saves the file holds; every part of each is there, or none."""
    with reading(make_engine(database)) as connection:
        here = open_home(connection, "a")
        count = len(here.record.points)
        refs = [point.ref for point in here.record.points]
        assert refs == [f"P{number}" for number in range(1, count + 1)]
        assert here.record.home.name == str(count)
        log = latest_changes(connection, here.key, 10_000)
        assert [change.sentence for change in log[::-1]] == refs_without_letter(refs)
    return count


def refs_without_letter(refs: list[str]) -> list[str]:
    return [ref.removeprefix("P") for ref in refs]
