"""What goes with a thing that is deleted, where staying would say something else."""

from __future__ import annotations

from app.domain.edits import removed
from app.domain.record import Attachment, Record, Reminder, Result, Work
from tests.builders import circuit, home, one_way, socket


def record() -> Record:
    picture = {"sha256": "0" * 64, "media_type": "image/jpeg", "size": 1}
    return home(one_way(circuit("C1", socket("P1"), socket("P2")))).having(
        results=(Result(ref="V1", about="C1"), Result(ref="V2")),
        reminders=(Reminder(ref="E1", about="P1"), Reminder(ref="E2")),
        works=(Work(ref="W1", name="New socket", about=("P1", "C1")),),
        attachments=(
            Attachment.model_validate({"ref": "F1", "of": ("P1",), **picture}),
            Attachment.model_validate({"ref": "F2", "of": ("P1", "P2"), **picture}),
            Attachment.model_validate({"ref": "F3", **picture}),
        ),
    )


def test_results_of_a_circuit_go_with_it_and_are_not_those_of_the_supply() -> None:
    assert [r.ref for r in removed(record(), "C1").results] == ["V2"]


def test_a_reminder_goes_with_what_it_is_about() -> None:
    assert [r.ref for r in removed(record(), "P1").reminders] == ["E2"]


def test_work_stays_and_no_longer_names_what_is_gone() -> None:
    assert removed(record(), "P1").works[0].about == ("C1",)


def test_a_picture_goes_with_the_last_thing_that_it_belongs_to() -> None:
    one_less = removed(record(), "P1")
    assert [(a.ref, a.of) for a in one_less.attachments] == [
        ("F2", ("P2",)),
        ("F3", ()),
    ]
    assert [a.ref for a in removed(one_less, "P2").attachments] == ["F3"]
