"""A plan in an address: what is worked on, and every answer given on the day.

Nothing of it is kept elsewhere, so a page that is reloaded, or opened again from the
history, is where it was.
"""

from __future__ import annotations

from dataclasses import dataclass
from urllib.parse import urlencode

from flask import request, url_for
from werkzeug.datastructures import MultiDict

from app.domain.isolation import JOBS, OnTheDay
from app.domain.record.choices import SOURCE_KINDS

MOST = 200
ANSWERS = frozenset({"yes", "no", "unknown"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What an address asks for.

    Attributes:
        refs: What is to be worked on.
        job: The kind of work.
        day: The answers of the day.
    """

    refs: tuple[str, ...]
    job: str
    day: OnTheDay

    @property
    def pairs(self) -> tuple[tuple[str, str], ...]:
        """Names and values that say all of it in an address or a form."""
        day = self.day
        return (
            *(("ref", ref) for ref in self.refs),
            *((("job", self.job),) if self.job != "any" else ()),
            *((("who", day.who),) if day.who else ()),
            *((("when", day.when),) if day.when else ()),
            *((f"source-{kind}", said) for kind, said in day.sources.items()),
            *(("done", code) for code in day.done),
            *((f"skip-{code}", why) for code, why in day.skipped.items()),
            *(("settled", code) for code in day.settled),
        )

    def url(self, endpoint: str, home: str, **more: str) -> str:
        """Return the address of a page of this plan."""
        pairs = [*self.pairs, *more.items()]
        return f"{url_for(endpoint, home=home)}?{urlencode(pairs)}"


def asked() -> Asked:
    """Return what the address of this request asks for."""
    return read(request.args)


def read(args: MultiDict[str, str]) -> Asked:
    """Return what names and values say; what no plan knows is left out."""
    job = args.get("job", "any")
    sources = {kind: args.get(f"source-{kind}", "") for kind in SOURCE_KINDS}
    day = OnTheDay(
        who=_text(args, "who"),
        when=_text(args, "when"),
        sources={kind: said for kind, said in sources.items() if said in ANSWERS},
        done=tuple(dict.fromkeys(args.getlist("done"))),
        skipped={
            name.removeprefix("skip-"): _text(args, name)
            for name in args
            if name.startswith("skip-") and _text(args, name)
        },
        settled=tuple(dict.fromkeys(args.getlist("settled"))),
    )
    refs = tuple(ref for ref in dict.fromkeys(args.getlist("ref")) if ref)
    return Asked(refs=refs, job=job if job in JOBS else "any", day=day)


def _text(args: MultiDict[str, str], name: str) -> str:
    return " ".join(args.get(name, "").split())[:MOST]
