"""The code that pairs a phone: it works once, not for long, and cannot be guessed.

All of it is held in memory: no code is ever in a file or a log, and none outlives the
program.
"""

from __future__ import annotations

import hmac
import logging
import math
import secrets
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

log = logging.getLogger(__name__)

DIGITS = 8
LASTS_S = 10 * 60
LOCKED_S = 15 * 60
SLOWEST_S = 60
# Of 10^8 codes, each is given this many tries at the most before it is withdrawn.
MOST_WRONG = 24
MOST_WRONG_FROM_ONE = 8


@dataclass(frozen=True, slots=True)
class Code:
    """The code that pairs the next phone, and for how long it still does.

    Attributes:
        digits: The digits.
        left_s: Seconds until it is too old.
    """

    digits: str
    left_s: int


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why a code was not taken.

    Attributes:
        kind: It was wrong; it came too soon after a wrong one; or too many were wrong.
        wait_s: Seconds until the next one is looked at.
    """

    kind: Literal["wrong", "soon", "locked"]
    wait_s: int


@dataclass(frozen=True, slots=True)
class Lock:
    """That no code is looked at for a while.

    Attributes:
        everywhere: Whether from no address at all.
        addresses: The addresses that too many wrong codes came from.
        left_s: Seconds until the last lock ends.
    """

    everywhere: bool
    addresses: tuple[str, ...]
    left_s: int


@dataclass(slots=True)
class _Tries:
    wrong: int = 0
    next_at: float = -math.inf
    locked_until: float = -math.inf


class Pairing:
    """The one code there is at a time, and the tries at it; threads may share it."""

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._guard = threading.Lock()
        self._digits = ""
        self._ends = -math.inf
        self._used = ("", -math.inf)
        self._wrong = 0
        self._locked_until = -math.inf
        self._tries: dict[str, _Tries] = {}

    def new_code(self) -> Code:
        """Make a code in the place of the former one; this lifts every lock."""
        with self._guard:
            self._digits = f"{secrets.randbelow(10**DIGITS):0{DIGITS}}"
            self._ends = self._clock() + LASTS_S
            self._begin_anew()
            return Code(self._digits, LASTS_S)

    def code(self) -> Code | None:
        """Return the code that pairs the next phone, if there is one now."""
        with self._guard:
            left = self._ends - self._clock()
            return Code(self._digits, math.ceil(left)) if left > 0 else None

    def lock(self) -> Lock | None:
        """Return what is locked now."""
        with self._guard:
            now = self._clock()
            ends = {a: t.locked_until for a, t in self._tries.items()}
            locked = tuple(sorted(a for a, end in ends.items() if end > now))
            left = max([self._locked_until, *ends.values()]) - now
            everywhere = self._locked_until > now
            return Lock(everywhere, locked, math.ceil(left)) if left > 0 else None

    def take(self, digits: str, address: str) -> Refusal | None:
        """Use a code up; return why it was not taken, or None when it was.

        Args:
            digits: What was typed.
            address: Where it came from.
        """
        with self._guard:
            now = self._clock()
            if self._locked_until > now:
                return _refusal("locked", self._locked_until - now)
            tries = self._tries.setdefault(address, _Tries())
            if tries.locked_until > now:
                return _refusal("locked", tries.locked_until - now)
            # Too soon counts as wrong, or a program could go on asking for ever.
            if tries.next_at > now:
                return self._count(tries, address, "soon")
            right = self._ends > now and hmac.compare_digest(
                digits.encode(), self._digits.encode()
            )
            if not right:
                return self._count(tries, address, "wrong")
            self._used = (self._digits, self._ends)
            self._digits, self._ends = "", -math.inf
            self._begin_anew()
            return None

    def give_back(self) -> None:
        """Let the code that was used serve after all: no phone came of it."""
        with self._guard:
            if not self._digits:
                self._digits, self._ends = self._used

    def _begin_anew(self) -> None:
        self._wrong, self._locked_until = 0, -math.inf
        self._tries.clear()

    def _count(
        self, tries: _Tries, address: str, kind: Literal["wrong", "soon"]
    ) -> Refusal:
        now = self._clock()
        tries.wrong += 1
        self._wrong += 1
        wait = min(2 ** (tries.wrong - 1), SLOWEST_S)
        tries.next_at = now + wait
        if self._wrong >= MOST_WRONG:
            self._digits, self._ends = "", -math.inf
            self._wrong, self._locked_until = 0, now + LOCKED_S
            log.warning("Too many wrong pairing codes: none is taken for a while.")
            return _refusal("locked", LOCKED_S)
        if tries.wrong >= MOST_WRONG_FROM_ONE:
            tries.wrong, tries.locked_until = 0, now + LOCKED_S
            log.warning("Too many wrong pairing codes came from %s.", address)
            return _refusal("locked", LOCKED_S)
        return _refusal(kind, wait)


def _refusal(kind: Literal["wrong", "soon", "locked"], wait: float) -> Refusal:
    return Refusal(kind, math.ceil(wait))
