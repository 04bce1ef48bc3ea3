"""Wales: everything has to be told but for a short list of what need not be.

The one file to change when Wales's rules do.
"""

from __future__ import annotations

from datetime import date

from app.domain.may_i._case import Case, Confidence, Route, Rules, Ruling

_SCH = "Building Regulations 2010, Schedule 4 (Wales)"
_GUIDE = "Approved Document P, 2006 edition, notes (from memory)"
_BATH = ("bath_zone", "bathroom", "bath_void", "pool_room")

RULES = Rules(
    nation="wales",
    checked=date(2026, 11, 25),
    authority=(
        "Building Regulations 2010 as they stand in Wales, Schedule 4; Approved "
        "Document P, 2006 edition as amended. Amended in other respects from "
        "1 July 2026 (SI 2025/1320, SI 2026/60)."
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
                who="You, through building control",
                when="A notice and its fee before the work begins.",
                paper="Completion certificate.",
            ),
        )
    },
    not_checked=(
        "Which edition of BS 7671 the present Schedule names for special locations was "
        "not read, so the whole of a bathroom or shower room counts as one here. "
        "Nothing was found that changed the list in 2026, but not all was read."
    ),
)


def wales(case: Case) -> Ruling:
    """Return what Wales's rules say; one exemption is enough."""
    if case.work == "network_side":
        return Ruling(
            verdict="not_yours",
            rule="WA0",
            because="It is on the network's or the meter's side.",
            cite="Electricity Safety, Quality and Continuity Regulations 2002, reg 25",
        )
    if case.work == "plug_in":
        return Ruling(
            verdict="no_notice",
            rule="WA1",
            because="It only plugs in.",
            cite=f"{_SCH} para 3(c)",
        )
    return _exempt_anywhere(case) or _exempt_by_place(case) or _told(case)


def _exempt_anywhere(case: Case) -> Ruling | None:
    if case.makes_circuit:
        return None
    found: dict[str, tuple[str, str, str]] = {
        "replace": (
            "WA2",
            "Fixed equipment is replaced with no new fixed cable; no consumer unit.",
            "para 1(a)",
        ),
        "repair": (
            "WA3",
            "Damaged cable of one circuit is replaced, same size and same route.",
            "para 1(b)",
        ),
        "enclosure": (
            "WA4",
            "An enclosure is fixed again or replaced, what protects unaffected.",
            "para 1(c)",
        ),
        "mechanical": (
            "WA5",
            "Existing cable gets mechanical protection, its capacity unaffected.",
            "para 1(d)",
        ),
        "bonding": ("WA6", "Bonding is installed or made bigger.", "para 1(e)"),
        "replace_control": (
            "WA7",
            "A control of an existing fixed service is replaced or added.",
            "para 1(f)",
        ),
    }
    if case.work not in found:
        return None
    rule, because, para = found[case.work]
    return Ruling(
        verdict="no_notice", rule=rule, because=because, cite=f"{_SCH} {para}"
    )


def _exempt_by_place(case: Case) -> Ruling | None:
    """Lights and switches on any circuit, sockets and fused spurs on a socket one."""
    if case.work == "signal" and case.place not in _BATH and not case.makes_circuit:
        return Ruling(
            verdict="no_notice",
            rule="WA9",
            because="Signalling, data or other extra-low-voltage wiring outside "
            "special locations.",
            cite=f"{_SCH} para 3(a) and (b), read in part",
            confidence="medium",
        )
    if case.work != "add" or case.thing == "other" or case.makes_circuit:
        return None
    if case.place in ("kitchen", *_BATH) or case.special != "none":
        return None
    if case.outdoor_wiring:
        return None
    if case.place == "outdoors":
        return _on_the_outside_wall(case)
    return Ruling(
        verdict="no_notice",
        rule="WA8",
        because="Lights, switches, sockets or fused spurs are added to an existing "
        "circuit, outside kitchens and bathrooms and with no new wiring outdoors.",
        cite=f"{_SCH} para 2",
        confidence="medium" if case.place == "outbuilding" else "high",
    )


def _on_the_outside_wall(case: Case) -> Ruling | None:
    if case.thing != "light_or_switch":
        return None
    return Ruling(
        verdict="no_notice",
        rule="WA8",
        because="A light fixed to the outside wall, with no connection exposed "
        "outdoors, is let off by the guidance.",
        cite=_GUIDE,
        confidence="medium",
    )


def _told(case: Case) -> Ruling:
    return Ruling(
        verdict="notice",
        rule="WA10",
        because="In Wales all that is not on the short list is told.",
        grounds=_grounds(case),
        cite=f"{_SCH}: not on the list of what need not be told",
        confidence=_confidence(case),
    )


def _confidence(case: Case) -> Confidence:
    """Alarms and fans elsewhere are argued about; control wiring stands in a note."""
    if case.makes_circuit or case.special != "none":
        return "high"
    if case.work == "control_wiring":
        return "medium"
    plain = case.place in ("kitchen", "outdoors", *_BATH) or case.outdoor_wiring
    return (
        "low" if case.work == "add" and case.thing == "other" and not plain else "high"
    )


def _grounds(case: Case) -> tuple[str, ...]:
    reasons = {
        "a consumer unit is replaced": case.work == "consumer_unit",
        "a circuit is new": case.makes_circuit,
        "heating or floor wiring, a generator or the like is a special installation": (
            case.special != "none"
        ),
        "it is in a kitchen": case.place == "kitchen",
        "it is in a bathroom, shower or pool room": case.place in _BATH,
        "it is outdoors": case.outdoor_wiring or case.place == "outdoors",
        "new control wiring is named by the guidance": case.work == "control_wiring",
        "it is neither a light, a switch, a socket nor a fused spur": (
            case.thing == "other"
        ),
    }
    return tuple(reason for reason, holds in reasons.items() if holds)
