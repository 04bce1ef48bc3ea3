"""Days of what was done that are still to come: they count as no day, and are said.

No form takes one.  A document may hold one all the same, for the clock of the machine
that wrote it, or of this one, may be wrong.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from app.domain.days import in_words
from app.domain.fault import Fault
from app.domain.named import in_a_sentence
from app.domain.record import SORTS, FieldSpec, Home, Item, Occasion, Record, specs

# Outcomes that call for something.
AMISS = ("failed", "put_right")
_EVERY: tuple[type[Item], ...] = (Home, *SORTS.values())
_DAYS = {
    cls: days
    for cls in _EVERY
    if (days := tuple(s for s in specs(cls) if s.come and s.type == "date"))
}


def days_to_come(record: Record, today: date) -> Iterator[tuple[Item, FieldSpec, date]]:
    """Yield each day of what was done that has not come: its thing, its field, it."""
    for cls, days in _DAYS.items():
        for item in (record.home,) if cls is Home else record.of(cls):
            for spec in days:
                day = getattr(item, spec.name)
                if day is not None and day > today:
                    yield item, spec, day


def without_days_to_come(record: Record, today: date) -> Record:
    """Return a record in which what is still to come is not written down as done.

    The days that follow from it go with it.  What did not work stays as of today: no
    slip of a clock hides it.
    """
    emptied: dict[tuple[str, str], dict[str, None]] = {}
    for item, spec, _ in days_to_come(record, today):
        gone = (spec.name, *(s.name for s in specs(type(item)) if s.after == spec.name))
        emptied.setdefault((item.sort, item.ref), {}).update(dict.fromkeys(gone))
    if not emptied:
        return record
    home = record.home.model_copy(update=emptied.get(("home", record.home.ref), {}))
    lists = {
        cls.plural: tuple(
            item.model_copy(update=emptied[key]) if key in emptied else item
            for item in record.of(cls)
            for key in ((item.sort, item.ref),)
        )
        for cls in _DAYS
        if cls not in (Home, Occasion)
    }
    times = tuple(
        time.model_copy(update={"done_on": today})
        if (time.sort, time.ref) in emptied
        else time
        for time in record.occasions
        if (time.sort, time.ref) not in emptied or time.outcome in AMISS
    )
    return record.having(home=home, **lists, occasions=times)


def days_as_faults(record: Record, today: date) -> Iterator[Fault]:
    """Yield each such day as what cannot be true as written."""
    for item, spec, day in days_to_come(record, today):
        where = f"{in_words(day)} as “{spec.label.lower()}”"
        yield Fault(
            code="day_to_come",
            wrong=True,
            subjects=() if isinstance(item, Home) else (item.ref,),
            sentence=f"{in_a_sentence(record, item)} has {where}, a day that is still "
            "to come. It counts as no day.",
            remedy="Write the right day, or look at the clock of this machine.",
        )
