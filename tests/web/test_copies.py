"""The page of the copies: the last good one, one more, a folder of one's own."""

from __future__ import annotations

import os
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from flask import Flask

from app.config import Config
from app.services.copies import Keeper
from app.store.copies import copies_in
from app.web.pages import copies
from tests.elsewhere import phone_on
from tests.pages import CheckedClient
from tests.web.test_guard import dump

MAKE, KEEP = "Make a copy now", "Save and make a copy there"


def test_without_a_copy_it_says_so(here: CheckedClient) -> None:
    assert "There is no good copy of the record yet." in here.see("/homes/").main
    page = here.see("/copies/")
    assert page.h1 == "Copies of the record"
    assert "There is no good copy on this computer yet." in page.main


def test_one_is_made_and_said_everywhere(here: CheckedClient, config: Config) -> None:
    page = here.save("/copies/", press=MAKE)
    (copy,) = copies_in(config.backups)
    assert "A copy was made" in page.main
    assert f"-m app restore {copy.path} --data {config.data}" in page.main
    assert "Your last good copy on this computer is from" in page.main
    assert "Your last good copy is from" in here.see("/homes/").main


def test_a_folder_of_ones_own_gets_a_copy_at_once(
    here: CheckedClient, tmp_path: Path
) -> None:
    stick = tmp_path / "stick"
    stick.mkdir()
    page = here.save("/copies/", press=KEEP, folder=f"  {stick} ")
    assert f"Your last good copy on {stick} is from" in page.main
    assert page.main.count("on the same disk as the record") == 1
    assert len(list(stick.glob("ways-copies-*/ways-*-asked.sqlite3"))) == 1
    stick.rename(tmp_path / "pulled out")
    gone = f"The folder {stick} is not there now"
    assert gone in here.see("/copies/").main
    again = here.submit("/copies/", press=MAKE)
    assert again.status == 503
    assert gone in again.main
    page = here.save("/copies/", press=KEEP, folder="")
    assert str(stick) not in page.main


def test_a_folder_that_may_not_be_looked_at_counts_as_gone(
    here: CheckedClient, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    stick = tmp_path / "stick"
    stick.mkdir()
    here.save("/copies/", press=KEEP, folder=str(stick))
    look = Path.stat

    def refused(path: Path, *, follow_symlinks: bool = True) -> os.stat_result:
        if stick in path.parents:
            raise PermissionError(13, "Permission denied")
        return look(path, follow_symlinks=follow_symlinks)

    monkeypatch.setattr(Path, "stat", refused)
    assert f"The folder {stick} is not there now" in here.see("/copies/").main
    assert here.submit("/copies/", press=MAKE).status == 503
    page = here.save("/copies/", press=KEEP, folder="")
    assert str(stick) not in page.main


@pytest.mark.parametrize(
    ("typed", "reason"),
    [
        ("stick", "Give the whole path of the folder"),
        ("/no/such/folder", "The folder /no/such/folder is not there now."),
    ],
)
def test_a_folder_that_will_not_do_is_said_beside_its_box(
    here: CheckedClient, database: Path, typed: str, reason: str
) -> None:
    before = dump(database)
    page = here.submit("/copies/", press=KEEP, folder=typed)
    assert page.status == 422
    assert any(reason in error for error in page.errors)
    assert page.values(KEEP)["folder"] == [typed]
    assert dump(database) == before


def test_a_phone_neither_sees_nor_makes_them(
    here: CheckedClient, app: Flask, config: Config
) -> None:
    phone = phone_on(app)
    assert phone.get("/copies/").status_code != 200
    assert phone.post("/copies/make").status_code in (400, 403)
    assert copies_in(config.backups) == ()


def test_a_change_has_the_copy_of_the_day_made(
    here: CheckedClient, app: Flask, config: Config
) -> None:
    keeper = app.extensions["keeper"] = Keeper(config)
    here.see("/homes/H1/new/rooms")
    assert copies_in(config.backups) == ()
    here.save("/homes/H1/new/rooms", name="Larder")
    assert keeper.settled(10)
    here.save("/homes/H1/new/rooms", name="Porch")
    assert keeper.settled(10)
    assert [copy.note for copy in copies_in(config.backups)] == ["daily"]


def test_what_is_in_the_way_is_shown(
    here: CheckedClient, app: Flask, config: Config
) -> None:
    keeper = app.extensions["keeper"] = Keeper(config)
    config.backups.write_text("a file where the folder should be", "utf-8")
    here.save("/homes/H1/new/rooms", name="Larder")
    assert keeper.settled(10)
    assert "cannot be made" in here.see("/copies/").main


def test_others_can_write_while_a_copy_is_made(
    here: CheckedClient, database: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def slow(*_: object) -> None:
        with closing(sqlite3.connect(database, timeout=0)) as other, other:
            other.execute("UPDATE home SET name = 'Meanwhile'")

    here.see("/copies/")
    monkeypatch.setattr(copies, "make", slow)
    here.save("/copies/", press=MAKE)
    assert "Meanwhile" in here.see("/homes/").main


def test_what_was_in_the_way_is_said_no_longer_once_copies_are_made(
    here: CheckedClient, app: Flask, config: Config
) -> None:
    keeper = app.extensions["keeper"] = Keeper(config)
    keeper.troubles = ("The folder was not there.",)
    assert "The folder was not there." in here.see("/copies/").main
    page = here.save("/copies/", press=MAKE)
    assert "The folder was not there." not in page.main
