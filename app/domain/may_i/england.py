"""England: a short list of what building control has to be told.

The one file to change when England's rules do.
"""

from __future__ import annotations

from datetime import date

from app.domain.may_i._case import Case, Confidence, Route, Rules, Ruling

_REG = "Building Regulations 2010 (SI 2010/2214) reg 12(6A)"
_ADP = "Approved Document P, 2013 edition, section 2"

RULES = Rules(
    nation="england",
    checked=date(2026, 11, 25),
    authority=(
        "Building Regulations 2010, reg 12(6A) and 12(9), in force since 6 April 2013; "
        "Approved Document P, 2013 edition."
    ),
    decides="Building control decides, not this record.",
    allowed=(
        "Yes, on your side of the meter. No law keeps work in a home for one trade; "
        "it has to meet the standard, and to be told where it must be told."
    ),
    allowed_basis=(
        "A safety charity's page on building regulations, read November 2026; in part "
        "from memory"
    ),
    standard=(
        "Told or not, all work on the fixed installation has to meet Part P: "
        "reasonable provision against fire and injury. BS 7671 is the usual way of "
        "meeting it."
    ),
    routes={
        "notice": (
            Route(
                who="An installer registered with a competent person scheme",
                when="The installer tells the scheme after the work.",
                paper="Building Regulations compliance certificate, and a BS 7671 "
                "Electrical Installation Certificate.",
            ),
            Route(
                who="You, with a registered third-party certifier",
                when="Appointed before the work begins.",
                paper="Building Regulations compliance certificate, and the "
                "certifier's report.",
            ),
            Route(
                who="You, through building control",
                when="A building notice and its fee before the work begins.",
                paper="Completion certificate.",
            ),
            Route(
                who="After the fact: regularisation by the local authority",
                when="When work was done without telling; it may have to be opened up.",
                paper="Regularisation certificate.",
            ),
        )
    },
    not_checked=(
        "The full present text of reg 12 and paragraphs 2.6 to 2.9 of Approved "
        "Document P were not read."
    ),
)


def england(case: Case) -> Ruling:
    """Return what England's rules say; the first that fits counts."""
    if case.work == "network_side":
        return Ruling(
            verdict="not_yours",
            rule="EN0",
            because="It is on the network's or the meter's side.",
            cite="Electricity Safety, Quality and Continuity Regulations 2002, reg 25",
        )
    if case.work == "plug_in":
        return Ruling(
            verdict="no_notice",
            rule="EN1",
            because="What only plugs in is not part of the fixed installation.",
            cite="Building Regulations 2010 reg 2(1), “electrical installation”",
        )
    return _fixed_work(case)


def _fixed_work(case: Case) -> Ruling:
    if case.work == "consumer_unit":
        return Ruling(
            verdict="notice",
            rule="EN2",
            because="A consumer unit is replaced.",
            cite=f"{_REG}(b)",
        )
    if case.makes_circuit:
        return Ruling(
            verdict="notice",
            rule="EN3",
            because="A new circuit is installed.",
            cite=f"{_REG}(a)",
        )
    if case.renews or case.work == "bonding":
        return Ruling(
            verdict="no_notice",
            rule="EN5",
            because="Replacing, mending and looking after what is there need no notice "
            "anywhere, a bathroom included.",
            cite=_ADP,
        )
    return _addition(case)


def _addition(case: Case) -> Ruling:
    if case.place in ("bath_zone", "pool_room"):
        return Ruling(
            verdict="notice",
            rule="EN4",
            because="A circuit is added to or altered inside a special location.",
            cite=f"{_REG}(c); reg 12(9)",
        )
    if case.place == "bath_void":
        return Ruling(
            verdict="ask",
            rule="EN4",
            because="Whether the space above the ceiling or under the bath counts as "
            "the special location is a matter of judgement.",
            cite="Building Regulations 2010 reg 12(9)",
            confidence="low",
        )
    return Ruling(
        verdict="no_notice",
        rule="EN5",
        because="An addition to an existing circuit outside a special location. "
        "Kitchens, gardens and outside walls are no special locations in England.",
        cite=_ADP,
        confidence=_confidence(case),
    )


def _confidence(case: Case) -> Confidence:
    """A cable taken out to an outbuilding is read by some as a new circuit."""
    return "medium" if case.outdoor_wiring and case.place == "outbuilding" else "high"
