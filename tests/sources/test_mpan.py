"""The supply number's check digit.

Source: MPAN core; two or more independent sources. The definition: the first twelve
digits times 3, 5, 7, 13, 17, 19, 23, 29, 31, 37, 41, 43; the sum modulo 11, modulo 10.
The first valid and the first invalid number are those on which the tests of an
independent open library agree; the others were worked out by the definition.
"""

from __future__ import annotations

import pytest

from app.domain.mpan import check_digit, checked_mpan

VALID = (
    "1312345678907",
    "2499999999991",
    "1000000000012",
    "2200000000097",
    "1234567890126",
    "2000123456780",
    "1800000000000",
    "1312345678340",
)


@pytest.mark.parametrize("number", VALID)
def test_number_is_valid(number: str) -> None:
    assert checked_mpan(number) == number
    assert check_digit(number[:12]) == int(number[12])


def test_number_is_not_valid() -> None:
    with pytest.raises(ValueError, match="does not add up"):
        checked_mpan("2499999999990")


def test_working_of_one_number() -> None:
    products = (1 * 3, 3 * 5, 1 * 7, 2 * 13, 3 * 17, 4 * 19, 5 * 23, 6 * 29)
    total = sum(products) + 7 * 31 + 8 * 37 + 9 * 41 + 0 * 43
    assert total == 1349
    assert 1349 % 11 == 7
    assert check_digit("131234567890") == 7


def test_remainder_of_ten_is_written_as_nought() -> None:
    assert (1 * 3 + 8 * 5) % 11 == 10
    assert check_digit("180000000000") == 0
