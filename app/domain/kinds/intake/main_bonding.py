"""Main bonding: joins metal pipes and frames to the earthing terminal.

It is a green and yellow wire to a clamp on the gas, water or oil pipe near where it
comes in, or on a steel frame; the clamp has a label. It keeps metal parts at one
voltage in a fault; it carries no supply. Write down what it bonds, and the size if it
is printed. Not seen is not the same as not there. Leave clamps alone, a loose one
included: tell an electrician.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="main_bonding",
    label="Main bonding",
    order=130,
    symbol=(
        '<path d="M4.5 2v20M9.5 2v20M12 12h5.5v4M13.5 16h8M15.2 18.6h4.6M16.8 '
        '21.2h1.4"/>'
        '<rect x="2" y="9" width="10" height="6" fill="currentColor"/>'
    ),
    usual_owner="consumer",
    who_opens="An electrician. Never disconnect it.",
    carries_supply=False,
    fields=("service", "csa_mm2", "length_m"),
)
