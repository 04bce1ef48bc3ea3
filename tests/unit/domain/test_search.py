"""Words that are looked for, and numbers that count as a whole."""

from __future__ import annotations

import pytest

from app.domain.search import find_items
from tests import builders as b

HOME = b.home(
    b.board(
        "B1",
        b.way("D1", way="1", rated_current_a=40, note="Cable of 2.5 mm²."),
        b.way("D2", way="2", label_found="B32"),
        b.way("D12", way="12", note="Was way 2, once. Cooker 32A."),
    )
)


@pytest.mark.parametrize(
    ("query", "found"),
    [
        ("way 2", ["D2", "D12"]),
        ("way 12", ["D12"]),
        ("way 40", ["D1"]),
        ("way 2.5", ["D1"]),
        ("way 5", []),
        ("way b3", ["D2"]),
        ("cooker 32", ["D12"]),
        ("cooker 3", []),
        ("d2", ["D2"]),
    ],
)
def test_a_number_is_found_as_a_whole(query: str, found: list[str]) -> None:
    assert [item.ref for item in find_items(HOME, query)] == found
