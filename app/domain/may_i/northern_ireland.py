"""Northern Ireland: no rule about telling anyone of electrical work in a home.

The one file to change when Northern Ireland's rules do.
"""

from __future__ import annotations

from datetime import date

from app.domain.may_i._case import Case, Rules, Ruling

RULES = Rules(
    nation="northern_ireland",
    checked=date(2026, 11, 25),
    authority=(
        "No counterpart of Part P. The Electricity Safety, Quality and Continuity "
        "Regulations (NI) 2012 hold for the supply side."
    ),
    decides="No one has to be told; an electrician and the network can still be asked.",
    allowed=(
        "Yes, on your side of the meter. No law keeps work in a home for one trade; "
        "the standard still counts."
    ),
    allowed_basis=(
        "A safety charity's page on building regulations, read November 2026"
    ),
    standard=(
        "BS 7671 is the yardstick all the same, and the building regulations hold for "
        "what goes with the work, such as alarms, structure and ventilation."
    ),
    routes={},
    not_checked="The Building Regulations (NI) 2012 were not read for related matters.",
)


def northern_ireland(case: Case) -> Ruling:
    """Return what holds in Northern Ireland."""
    if case.work == "network_side":
        return Ruling(
            verdict="not_yours",
            rule="NI0",
            because="It is on the network's or the meter's side.",
            cite="ESQC Regulations (NI) 2012 (NISR 2012/381), reg 25",
        )
    return Ruling(
        verdict="no_regime",
        rule="NI1",
        because="There is no statutory rule for electrical work in a home here. "
        "Certificates and the network's own rules still matter.",
        cite="Statement of a safety charity, read November 2026",
    )
