"""What a tie and a control are called: what they join."""

from __future__ import annotations

import pytest

from app.domain.named import called, in_a_sentence
from app.domain.record import Control, Tie
from tests import builders as b

HOME = b.home(
    b.room("R1", name="Kitchen"),
    b.point("P1", kind="double_socket", place="by the sink", room="R1"),
    b.one_way(b.circuit("C1", name="Sockets")),
)


@pytest.mark.parametrize(
    ("role", "words"),
    [
        ("feeds", "Double socket-outlet, by the sink, fed by Sockets"),
        ("neutral", "Double socket-outlet, by the sink, its neutral to Sockets"),
        ("present", "Double socket-outlet, by the sink, beside Sockets"),
    ],
)
def test_a_tie_is_called_by_what_it_joins(role: str, words: str) -> None:
    tie = Tie(ref="T1", point="P1", tied_to="C1", role=role)
    assert called(HOME, tie) == words
    assert in_a_sentence(HOME, tie) == f"{words} (T1)"


def test_what_is_not_there_is_called_by_its_reference() -> None:
    control = Control(ref="K1", controller="P9", controlled="P1")
    assert called(HOME, control) == "P9, switching Double socket-outlet, by the sink"


def test_whatever_else_has_a_name_keeps_it() -> None:
    assert in_a_sentence(HOME, HOME.rooms[0]) == "Kitchen (R1)"
