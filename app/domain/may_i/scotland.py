"""Scotland: the building decides, not the electrical job.

The one file to change when Scotland's rules do.
"""

from __future__ import annotations

from datetime import date

from app.domain.may_i._case import Case, Route, Rules, Ruling

_SCH = "Building (Scotland) Regulations 2004 (SSI 2004/406), Schedule 3"

RULES = Rules(
    nation="scotland",
    checked=date(2026, 11, 25),
    authority=(
        "Building (Scotland) Act 2003 s.8; Building (Scotland) Regulations 2004, "
        "Schedule 3; Domestic Technical Handbook, clause 0.5."
    ),
    decides="The verifier, usually the council, decides, not this record.",
    allowed=(
        "Yes, on your side of the meter. No law keeps work in a home for one trade; "
        "it has to meet the standard, and to be told where it must be told."
    ),
    allowed_basis="From memory: ask the verifier if it matters",
    standard=(
        "With or without a warrant the work has to meet standards 4.5 and 4.6, for "
        "which BS 7671 is the usual way."
    ),
    routes={
        "warrant": (
            Route(
                who="The owner applies to the verifier",
                when="Before the work begins.",
                paper="The warrant, then the accepted completion certificate.",
            ),
            Route(
                who="With an approved certifier of construction",
                when="Named when the warrant is asked for.",
                paper="The certifier's certificate with the completion certificate.",
            ),
        )
    },
    not_checked=(
        "The type numbers of Schedule 3 as amended, and how additions and new circuits "
        "in a flat are looked at, were not read in full. At exactly three storeys the "
        "sources disagree; the stricter reading is shown."
    ),
)


def scotland(case: Case) -> Ruling:
    """Return what Scotland's rules say; the first that fits counts."""
    if case.work == "network_side":
        return Ruling(
            verdict="not_yours",
            rule="SC0",
            because="It is on the network's or the meter's side.",
            cite="Electricity Safety, Quality and Continuity Regulations 2002, reg 25",
        )
    if case.work == "plug_in" or case.renews:
        return Ruling(
            verdict="no_warrant",
            rule="SC1",
            because="Repair, or replacement by the same general type and no worse, "
            "needs no warrant in any building.",
            cite=f"{_SCH} type 24",
        )
    return _changes(case)


def _changes(case: Case) -> Ruling:
    if case.separating_wall:
        return Ruling(
            verdict="warrant",
            rule="SC2",
            because="A wall or floor to someone else's home is cut into.",
            cite="Regulation of electricians in Scotland, research report, Appendix 3",
            confidence="medium",
        )
    if case.building_change:
        return Ruling(
            verdict="ask",
            rule="SC6",
            because="Roof, structure, outside wall or floor area change, which the "
            "exemption for a house does not cover: expect a warrant.",
            cite=f"{_SCH} type 1, exceptions",
            confidence="medium",
        )
    if case.building == "low_house":
        return Ruling(
            verdict="no_warrant",
            rule="SC3",
            because="Electrical work in a house of one or two storeys is a named "
            "example of what needs none.",
            cite=f"{_SCH} type 1",
            confidence="medium" if _unusual(case) else "high",
        )
    return _flat_or_high(case)


def _unusual(case: Case) -> bool:
    return case.work == "consumer_unit" or case.special == "generator"


def _flat_or_high(case: Case) -> Ruling:
    if case.work == "rewire":
        return Ruling(
            verdict="warrant",
            rule="SC4",
            because="A flat, or a house of three storeys or more, is rewired.",
            cite="Regulation of electricians in Scotland, research report, Appendix 3",
        )
    if case.work == "bonding":
        return Ruling(
            verdict="no_warrant",
            rule="SC1",
            because="Better bonding is close to repair; ask if it goes with more work.",
            cite=f"{_SCH} type 24",
            confidence="medium",
        )
    return Ruling(
        verdict="ask",
        rule="SC5",
        because="An addition or a new circuit in a flat or a house of three storeys or "
        "more: expect a warrant to be asked for.",
        cite=f"{_SCH}; inferred from types 1 and 24",
        confidence="low",
    )
