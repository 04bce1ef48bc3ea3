"""Which way is off in which round, so that two ways together never look like one.

Each way is off in the same number of rounds, and any two ways differ in at least two
rounds each way round.  Then what two ways do together is off in more rounds, or fewer,
than any single way; and one misread point looks like no other way.
"""

from __future__ import annotations

from functools import cache
from itertools import combinations, count


@cache
def rounds_for(ways: int) -> tuple[frozenset[int], ...]:
    """Return the rounds that tell some number of ways apart and check themselves.

    Each round is the set of the numbers of the ways that are off in it, from 0.
    """
    if ways < 1:
        return ()
    words, length = next(
        (words, length)
        for length in count(2)
        for words in [_words(length, ways)]
        if words
    )
    return tuple(
        frozenset(n for n, word in enumerate(words) if place in word)
        for place in range(length)
    )


def _words(length: int, wanted: int) -> list[frozenset[int]]:
    """Return that many words of one weight and this length; none if they do not fit."""
    for weight in range(length // 2, 1, -1) if length > 3 else (length,):
        words: list[frozenset[int]] = []
        for places in combinations(range(length), weight):
            word = frozenset(places)
            if all(len(word & other) <= weight - 2 for other in words):
                words.append(word)
            if len(words) == wanted:
                return words
    return []
