from __future__ import annotations

import logging
import random
from concurrent.futures import ThreadPoolExecutor

import pytest

from app.services.pairing import (
    LASTS_S,
    LOCKED_S,
    MOST_WRONG,
    MOST_WRONG_FROM_ONE,
    Code,
    Lock,
    Pairing,
    Refusal,
)


class Clock:
    def __init__(self) -> None:
        self.now = 1000.0

    def __call__(self) -> float:
        return self.now


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def pairing(clock: Clock) -> Pairing:
    return Pairing(clock)


def wrong_for(code: Code) -> str:
    return f"{(int(code.digits) + 1) % 10**8:08}"


def test_there_is_no_code_until_one_is_asked_for(pairing: Pairing) -> None:
    assert pairing.code() is None
    refusal = pairing.take("", "a")
    assert refusal == Refusal("wrong", 1)


def test_a_code_works_once(pairing: Pairing, clock: Clock) -> None:
    code = pairing.new_code()
    assert len(code.digits) == 8
    assert code.digits.isdigit()
    assert pairing.code() == code
    assert pairing.take(code.digits, "a") is None
    assert pairing.code() is None
    refusal = pairing.take(code.digits, "b")
    assert refusal == Refusal("wrong", 1)


def test_a_code_grows_too_old(pairing: Pairing, clock: Clock) -> None:
    code = pairing.new_code()
    clock.now += LASTS_S - 1
    assert pairing.code() == Code(code.digits, 1)
    clock.now += 1
    assert pairing.code() is None
    assert pairing.take(code.digits, "a") == Refusal("wrong", 1)


def test_a_new_code_ends_the_former(pairing: Pairing) -> None:
    codes = {pairing.new_code().digits for _ in range(50)}
    assert len(codes) == 50
    last = pairing.code()
    assert last is not None
    former = next(digits for digits in codes if digits != last.digits)
    assert pairing.take(former, "a") == Refusal("wrong", 1)
    assert pairing.take(last.digits, "b") is None


def test_wrong_codes_are_slowed(pairing: Pairing, clock: Clock) -> None:
    code = pairing.new_code()
    waits = []
    for _ in range(MOST_WRONG_FROM_ONE - 1):
        refusal = pairing.take(wrong_for(code), "a")
        assert refusal is not None
        waits.append(refusal.wait_s)
        clock.now += refusal.wait_s
    assert waits == [1, 2, 4, 8, 16, 32, 60]
    assert pairing.take(code.digits, "a") is None


def test_even_the_right_code_waits(pairing: Pairing, clock: Clock) -> None:
    code = pairing.new_code()
    pairing.take(wrong_for(code), "a")
    assert pairing.take(code.digits, "a") == Refusal("soon", 2)
    clock.now += 2
    assert pairing.take(code.digits, "a") is None


def test_one_address_is_locked_and_others_are_not(
    pairing: Pairing, clock: Clock, caplog: pytest.LogCaptureFixture
) -> None:
    code = pairing.new_code()
    said = [
        pairing.take(wrong_for(code), "192.168.1.66")
        for _ in range(MOST_WRONG_FROM_ONE)
    ]
    assert said[-1] == Refusal("locked", LOCKED_S)
    assert pairing.lock() == Lock(False, ("192.168.1.66",), LOCKED_S)
    assert pairing.take(code.digits, "192.168.1.66") == Refusal("locked", LOCKED_S)
    assert "192.168.1.66" in caplog.text
    assert code.digits not in caplog.text
    assert pairing.take(code.digits, "b") is None


def test_a_lock_ends_by_itself(pairing: Pairing, clock: Clock) -> None:
    for _ in range(MOST_WRONG_FROM_ONE):
        pairing.take("x", "a")
    clock.now += LOCKED_S - 1
    refusal = pairing.take("x", "a")
    assert refusal == Refusal("locked", 1)
    clock.now += 1
    assert pairing.lock() is None
    refusal = pairing.take("x", "a")
    assert refusal == Refusal("wrong", 1)


def test_many_addresses_are_locked_together_and_the_code_is_gone(
    pairing: Pairing, clock: Clock
) -> None:
    code = pairing.new_code()
    said = [pairing.take(wrong_for(code), f"a{n}") for n in range(MOST_WRONG)]
    assert said[-1] == Refusal("locked", LOCKED_S)
    assert pairing.lock() == Lock(True, (), LOCKED_S)
    assert pairing.code() is None
    refusal = pairing.take(code.digits, "another")
    assert refusal == Refusal("locked", LOCKED_S)
    clock.now += LOCKED_S
    assert pairing.take(code.digits, "another") == Refusal("wrong", 1)


def test_a_new_code_lifts_every_lock(pairing: Pairing) -> None:
    for n in range(MOST_WRONG):
        pairing.take("x", f"a{n % 3}")
    assert pairing.lock() is not None
    code = pairing.new_code()
    assert pairing.lock() is None
    assert pairing.take(code.digits, "a0") is None


@pytest.mark.parametrize("addresses", [1, 10, 1000])
@pytest.mark.parametrize("patient", [False, True])
def test_a_thousand_guesses_are_stopped(
    pairing: Pairing, clock: Clock, addresses: int, *, patient: bool
) -> None:
    """Few are compared with the code at all, however they are spread and timed."""
    code = pairing.new_code()
    guesses = random.Random(1).sample(range(10**8), 1000)  # noqa: S311
    tried = 0
    for n, guess in enumerate(g for g in guesses if f"{g:08}" != code.digits):
        refusal = pairing.take(f"{guess:08}", f"10.0.0.{n % addresses}")
        assert refusal is not None
        tried += refusal.kind == "wrong" and pairing.code() is not None
        clock.now += min(refusal.wait_s, 60) if patient else 0
    assert tried < MOST_WRONG
    assert pairing.code() is None or pairing.lock() is not None


def test_of_many_that_come_at_once_one_is_let_in(pairing: Pairing) -> None:
    code = pairing.new_code()
    with ThreadPoolExecutor(8) as threads:
        taken = list(
            threads.map(lambda n: pairing.take(code.digits, f"a{n}"), range(8))
        )
    assert taken.count(None) == 1


def test_nothing_is_logged_of_a_code(
    pairing: Pairing, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level(logging.DEBUG)
    code = pairing.new_code()
    pairing.take(wrong_for(code), "a")
    pairing.take(code.digits, "b")
    assert code.digits not in caplog.text
    assert wrong_for(code) not in caplog.text
