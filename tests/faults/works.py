"""The kinds of work that are under way when the program is ended.

Each does one thing under a name that nothing else has, and returns whether the program
said that it was done.
"""

from __future__ import annotations

import random
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

from app.domain.record import Home, Record, Room
from app.interchange import to_document
from tests import photographs
from tests.builders import (
    board,
    circuit,
    home,
    main_switch,
    room,
    socket,
    street,
    switched_off,
    way,
)
from tests.faults.sender import Sender

Work = Callable[[Sender, Path, str], bool]
HOME = "/homes/H1"


def first_record() -> Record:
    """A home with a round that is under way."""
    sockets = [socket(f"P{n}", room="R1") for n in range(1, 9)]
    return home(
        room("R1", name="Kitchen"),
        street(board("B1", main_switch("MS", way("W1", circuit("C1", *sockets))))),
        *switched_off("N1", "W1", stage="marking"),
    )


def add_room(sender: Sender, _data: Path, name: str) -> bool:
    return _send(sender, f"{HOME}/new/rooms", name=name)


def add_point(sender: Sender, _data: Path, name: str) -> bool:
    return _send(sender, f"{HOME}/new/points", name=name, kind="light", room="R1")


def mark(sender: Sender, _data: Path, name: str) -> bool:
    point = f"P{random.randint(1, 8)}"  # noqa: S311 - no secret
    fields = {"point": point, "seen": "dead", "by": name, "key": name}
    return sender.post(f"{HOME}/rounds/N1/marks", fields).status == 303


def upload(sender: Sender, _data: Path, name: str) -> bool:
    """Send a picture that nobody has sent before."""
    data = photographs.picture(form="PNG") + name.encode()
    fields = (("caption", name), ("of", ""), ("then", ""))
    return sender.upload(f"{HOME}/files/new", "file", data, fields).status == 303


def bring_in(sender: Sender, _data: Path, name: str) -> bool:
    rooms = tuple(Room(ref=f"R{n}", name=f"Room {n}") for n in range(1, 30))
    record = Record(home=Home(ref=name, name=name), rooms=rooms)
    document = to_document(record).encode()
    return sender.upload("/import", "document", document).status == 303


def take_list_in(_sender: Sender, data: Path, name: str) -> bool:
    """Take in a list of three points, by the command."""
    file = data.parent / f"{name}.csv"
    rows = [f"{name} {n},light,Kitchen" for n in (1, 2, 3)]
    file.write_text("\n".join(("Name,Kind,Room", *rows)), "utf-8")
    command = ["import-table", "points", str(file), "--home", "H1"]
    return _run(data, *command) == 0


def back_up(sender: Sender, _data: Path, _name: str) -> bool:
    return sender.post("/copies/make", {}).status == 303


def back_up_apart(_sender: Sender, data: Path, name: str) -> bool:
    return _run(data, "db", "backup", str(data.parent / f"{name}.sqlite3")) == 0


WORKS: dict[str, Work] = {
    work.__name__: work
    for work in (
        add_room,
        add_point,
        mark,
        upload,
        bring_in,
        take_list_in,
        back_up,
        back_up_apart,
    )
}


def _send(sender: Sender, path: str, **typed: str) -> bool:
    """Open a form, type into it, and send it."""
    return sender.post(path, sender.form_at(path) | typed).status == 303


def _run(data: Path, *arguments: str) -> int:
    command = [sys.executable, "-m", "app", *arguments, "--data", str(data)]
    return subprocess.run(command, capture_output=True, check=False).returncode
