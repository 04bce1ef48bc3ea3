"""What one does with the record, with nothing but the keyboard: one home, one desk.

Each journey changes its own part of the demo home, so that they may go in any order.
"""

from __future__ import annotations

import re
from pathlib import Path

from PIL import Image
from playwright.sync_api import expect

from tests.browser.keys import Keys

HOME = "/homes/demo/"


def head(keys: Keys, text: str) -> None:
    expect(keys.page.get_by_role("heading", level=1)).to_have_text(text)


def test_a_question_is_asked_of_the_lists(keys: Keys) -> None:
    page = keys.page
    keys.open(HOME + "ask/")
    keys.choose(page.get_by_label("What feeds this point"), "Fridge socket (P29)")
    keys.send("Ask about the point")
    head(keys, "Fridge socket")
    keys.open(HOME + "ask/")
    keys.choose(page.get_by_label("Which ways serve this room"), "Landing (R-LANDING)")
    keys.send("Ask about the room")
    head(keys, "Landing")


def test_labels_are_chosen_and_taken(keys: Keys) -> None:
    page = keys.page
    keys.open(HOME + "labels/")
    keys.follow("Night board")
    keys.choose(page.get_by_label("Print on"), "Strips as wide as the devices")
    keys.tick(page.get_by_role("checkbox", name="Main switch"))
    keys.send("Show them")
    expect(page.get_by_role("checkbox", name="Main switch")).to_be_checked()
    link = page.get_by_role("link", name="Open the PDF")
    keys.to(link)
    made = page.request.get(str(link.get_attribute("href")))
    assert made.body().startswith(b"%PDF-")


def test_a_plan_is_followed_step_by_step(keys: Keys) -> None:
    page = keys.page
    keys.open(HOME + "isolate/")
    keys.choose(page.get_by_label("In a room"), "Landing (R-LANDING)")
    keys.send("Plan for this room")
    head(keys, "Isolation: Landing")
    keys.follow("Begin, step by step")
    keys.skip()
    first = page.get_by_role("heading", level=1).inner_text()
    keys.unfold("Leave this step out")
    keys.refused("Leave out, for this reason")
    keys.write(page.get_by_label("Why it is left out"), "Looked at it yesterday.")
    keys.send("Leave out, for this reason")
    expect(page.get_by_role("heading", level=1)).not_to_have_text(first)
    keys.skip()
    keys.follow("Step before")
    head(keys, first)


def test_someone_is_asked_and_work_is_planned_done_and_taken_back(keys: Keys) -> None:
    page = keys.page
    keys.open(HOME + "may-i/")
    keys.write(page.get_by_label("Find a job by a word"), "rewire")
    keys.send("Find a job")
    keys.follow("Rewire, in whole or in part")
    keys.send("Plan this work")
    keys.follow("Change")
    keys.write(page.get_by_label("What is done"), "")
    keys.refused("Save")
    keys.write(page.get_by_label("What is done"), "New wires throughout")
    keys.send("Save")
    head(keys, "New wires throughout")
    keys.follow("It is done")
    keys.choose(page.get_by_label("Paper that came of it"), "Minor Works Certificate")
    keys.write(page.get_by_label("Its number"), "17/26")
    keys.send("Write it down")
    head(keys, "New wires throughout")
    keys.undo()


def test_a_trip_is_walked_through_and_kept(keys: Keys) -> None:
    keys.open(HOME + "tripped/")
    for answer in ("No, none of these", "A device with a test button"):
        keys.follow(answer)
    keys.follow("RCD B2.R1, “RCD”")
    for answer in ("Done", "It trips again"):
        keys.follow(answer)
    keys.follow("Back")
    keys.follow("It trips again")
    keys.follow("It still trips")
    keys.follow("What to tell them")
    keys.send("Keep this as an entry")
    head(keys, "What has tripped")
    keys.undo()


def test_a_load_is_added_on_paper(keys: Keys) -> None:
    page = keys.page
    keys.open(HOME + "load/")
    keys.write(page.get_by_label("Electric shower"), "a lot")
    keys.refused("Work it out")
    keys.write(page.get_by_label("Electric shower"), "8.5")
    keys.send("Work it out")
    expect(
        page.get_by_role("heading", name="With Electric shower, 8.5 kW")
    ).to_be_visible()
    keys.skip()
    keys.follow("Without it")
    expect(page.get_by_text("Today beside then")).to_be_hidden()


def test_results_are_copied_and_taken_back(keys: Keys) -> None:
    page = keys.page
    keys.open(HOME + "results/board/B4/copy")
    keys.choose(page.get_by_label("From which paper"), "No paper")
    keys.write(page.get_by_label("Zs, Ω").first, "high")
    keys.refused("Save")
    keys.write(page.get_by_label("Zs, Ω").first, "0.62")
    keys.send("Save")
    keys.undo()


def test_a_reminder_is_done_put_right_and_taken_back(keys: Keys) -> None:
    page = keys.page
    keys.open(HOME + "reminders/")
    keys.press(page.get_by_role("button", name=re.compile("^It worked today")))
    expect(page.get_by_role("status").first).to_be_visible()
    keys.undo()
    keys.open(HOME + "reminders/")
    another = page.get_by_role("article").filter(has_text="Test the alarm")
    keys.press(another.get_by_role("link", name=re.compile("^Another day")))
    keys.turn(page.get_by_label("It worked"), page.get_by_label("It did not work"))
    keys.send("Write it down")
    keys.undo()


def test_a_pack_is_ticked_and_taken(keys: Keys) -> None:
    page = keys.page
    keys.open(HOME + "hand-over/")
    keys.tick(page.get_by_label("Notes"))
    made = keys.take(page.get_by_role("button", name="The page that opens"))
    assert made.startswith(b"<!DOCTYPE html>")


def test_what_came_back_is_accepted_and_turned_down(keys: Keys) -> None:
    page = keys.page
    keys.open(HOME + "corrections/")
    keys.refused("Take it down")
    said = page.get_by_label("What it says, one line a thing")
    keys.write(said, "B2.W8 feeds the shed, not the garage.")
    keys.send("Take it down")
    keys.press(page.get_by_role("button", name=re.compile("^Add to the note")))
    keys.undo()
    keys.open(HOME + "corrections/")
    keys.press(keys.main.get_by_role("link").first)
    keys.press(page.get_by_role("button", name=re.compile("^Turn down")))
    expect(page.get_by_role("button", name=re.compile("^Turn down"))).to_have_count(0)


def test_a_change_is_found_and_undone(keys: Keys) -> None:
    page = keys.page
    keys.open(HOME + "points/P19/edit")
    keys.write(page.get_by_label("How many alike"), "none")
    keys.refused("Save")
    keys.write(page.get_by_label("How many alike"), "2")
    keys.send("Save")
    keys.skip()
    keys.follow("History of Light, over the table")
    keys.press(page.get_by_role("button", name=re.compile("^Undo")).first)
    keys.skip()
    keys.press(keys.main.get_by_role("link", name="Undone: ").first)
    keys.skip()
    keys.press(page.get_by_role("link", name="Changed point Light, over the table"))
    expect(page.get_by_text("It has been taken back")).to_be_visible()


def test_a_thing_is_deleted_and_brought_back(keys: Keys) -> None:
    keys.open(HOME + "points/P20/")
    keys.follow("Delete")
    keys.send("Delete")
    keys.undo()
    keys.open(HOME + "points/P20/")
    head(keys, "Wall lights in the back room")


def test_a_photograph_is_added_and_taken_back(keys: Keys, tmp_path: Path) -> None:
    page = keys.page
    picture = tmp_path / "shed.png"
    Image.new("RGB", (40, 30)).save(picture)
    keys.open(HOME + "files/new")
    keys.refused("Add it")
    keys.give(page.get_by_label("Photograph or PDF"), picture)
    keys.write(page.get_by_label("Caption"), "The shed")
    keys.send("Add it")
    head(keys, "The shed")
    keys.undo()


def test_a_list_is_brought_in_and_taken_back(keys: Keys, tmp_path: Path) -> None:
    page = keys.page
    points = tmp_path / "points.csv"
    points.write_text("Room,What it is\nLoft,Light\n")
    keys.open(HOME + "spreadsheet?kind=points")
    keys.turned_down("Go on to its columns")
    keys.give(page.get_by_label("The file, CSV or XLSX"), points)
    keys.send("Go on to its columns")
    keys.tick(page.get_by_label("Make rooms that are not there"))
    keys.send("See what it would make")
    keys.send("Take all of it in")
    keys.undo()


def test_a_copy_is_made_and_a_name_is_given(keys: Keys) -> None:
    page = keys.page
    keys.open("/copies/")
    keys.write(page.get_by_label("Folder on another disk"), "not a whole path")
    keys.refused("Save and make a copy there")
    keys.send("Make a copy now")
    expect(page.get_by_role("status")).to_contain_text("A copy was made")
    keys.open("/phones/")
    keys.write(page.get_by_label("Name of this computer"), "Study")
    keys.send("Save")
    expect(page.get_by_label("Name of this computer")).to_have_value("Study")


def test_a_round_is_planned_marked_and_ended(keys: Keys) -> None:
    page = keys.page
    keys.open(HOME + "rounds/new")
    keys.refused("Plan this round")
    keys.tick(page.get_by_label("Way 3, “2”"))
    keys.send("Plan this round")
    keys.follow("Go on: get ready to look")
    keys.send("Open the next page")
    keys.follow("It is off: mark the points")
    first = page.get_by_role("button", name="Stayed live").first
    keys.to(first)
    page.keyboard.press("Enter")
    expect(first).to_have_attribute("aria-pressed", "true")
    expect(first).to_be_focused()
    keys.follow("Done marking")
    expect(page.get_by_role("heading", name="Put everything back on")).to_be_focused()
    keys.send("I stopped early; all is back on")
    head(keys, "What the rounds have shown")
    keys.undo()


def test_a_document_is_turned_down(keys: Keys, tmp_path: Path) -> None:
    document = tmp_path / "home.json"
    document.write_text("{}")
    keys.open("/import")
    keys.give(keys.page.get_by_label("The document"), document)
    keys.turned_down("Bring it in")


def test_the_past_is_looked_at_and_two_days_compared(keys: Keys) -> None:
    page = keys.page
    keys.open(HOME + "past/")
    keys.write_day(page.get_by_label("Day"), "2001-02-03")
    keys.turned_down("Show")
    keys.follow("Compare two days")
    keys.write_day(page.get_by_label("From day"), "2001-02-03")
    keys.turned_down("Compare")
