from __future__ import annotations

import pytest

from app.domain.mpan import area, check_digit, checked_mpan


@pytest.mark.parametrize("value", ["", "1312345678907", "81123456789"])
def test_a_supply_number_that_adds_up_is_taken_as_it_is(value: str) -> None:
    assert checked_mpan(value) == value


@pytest.mark.parametrize(
    "value",
    [
        "131234567890",
        "13123456789077",
        "13 1234 5678 907",
        "131234567890x",
        "１３１２３４５６７８９０７",
        "82123456789",
        "8112345678",
    ],
)
def test_what_is_not_13_digits_is_refused(value: str) -> None:
    with pytest.raises(ValueError, match="must be the 13 digits on the bill"):
        checked_mpan(value)


@pytest.mark.parametrize("place", range(13))
def test_one_wrong_digit_is_refused(place: int) -> None:
    good = "1312345678907"
    digit = (int(good[place]) + 1) % 10
    with pytest.raises(ValueError, match="look at each digit again"):
        checked_mpan(f"{good[:place]}{digit}{good[place + 1 :]}")


def test_a_check_digit_wants_twelve_digits() -> None:
    with pytest.raises(ValueError, match="argument"):
        check_digit("13123456789")


@pytest.mark.parametrize(
    ("value", "words"),
    [
        ("1312345678907", "Merseyside and North Wales"),
        ("2499999999991", "an independent network"),
        ("81123456789", "Northern Ireland"),
        ("0912345678907", "an area that is not known here"),
        ("", ""),
    ],
)
def test_the_area_in_words(value: str, words: str) -> None:
    assert area(value) == words
