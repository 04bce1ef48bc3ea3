"""The words at a way lead astray.

Looks at:
    What is written at each way, against what the record says that it feeds.
Why it matters:
    One wrong label is worse than none: the wrong way is switched off, and what is
    worked on stays live.
What to do:
    Check it by switching, then write the label anew. Keep the old words in the record.
Source:
    BS 7671:2018+A2:2022, 514.8.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.labels.problems import FOUND, label_problems
from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(
    code="label-misleads",
    rank="knowing",
    group="labels",
    always_tells="Only words that were read are compared with what is recorded.",
)

LEADS_ASTRAY = ("not_spare", "other_use", "other_room", "other_storey")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each way whose label does not fit what it feeds."""
    for board in sight.record.boards:
        said: dict[str, str] = {}
        for problem in label_problems(sight.net, board):
            if problem.code in LEADS_ASTRAY and FOUND_WORDS in problem.sentence:
                said.setdefault(problem.ways[0], problem.sentence)
        for ref, sentence in said.items():
            yield Found((ref,), sentence)


# How the checks of labels name the words found, rather than the name to be printed.
FOUND_WORDS = FOUND.lower()
