"""The record contradicts itself.

Looks at:
    What cannot be true as it is written.
Why it matters:
    Everything that is worked out from it may be wrong.
What to do:
    Put it right under open questions, before you rely on anything else.
Source:
    What the record itself says.
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.remarks._kind import Found, Outcome, RemarkKind
from app.domain.remarks._sight import Sight

KIND = RemarkKind(
    code="record-contradicts-itself",
    rank="record",
    group="look",
    always_tells="A contradiction is there or it is not.",
)


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each contradiction, by what it is about."""
    said: dict[str, list[str]] = {}
    about: dict[str, list[str]] = {}
    for fault in sight.faults:
        if fault.wrong:
            subject = fault.subjects[0] if fault.subjects else sight.home
            said.setdefault(subject, []).append(fault.sentence)
            about.setdefault(subject, []).extend(fault.subjects)
    for subject, sentences in said.items():
        refs = tuple(dict.fromkeys((subject, *about[subject])))
        yield Found(refs, " ".join(dict.fromkeys(sentences)))
