"""Cut-out, or service head: ends the street's cable and holds the network's fuse.

It is the sealed box on the end of the service cable. The figure printed on it is what
the carrier may hold, not proof of the fuse inside. Write down that figure, and whether
there is a seal; a missing seal is reported, and no one is accused. Never open it, cut
the seal or pull the fuse, and take it as live even where there is no meter.
"""

from __future__ import annotations

from app.domain.kinds._kind import IntakeKind

KIND = IntakeKind(
    code="cutout",
    label="Cut-out",
    order=20,
    symbol=(
        '<rect x="3.5" y="3.5" width="17" height="17"/>'
        '<rect x="9" y="7.5" width="6" height="9"/>'
        '<path d="M12 1v22"/>'
    ),
    usual_owner="network",
    who_opens="Only the network, or someone that it has authorised.",
    fields=("rated_current_a", "seal"),
    protects=("overload", "short_circuit"),
    # Withdrawing its fuse opens the line, but it is nobody's switch: none.
    opens="none",
)
