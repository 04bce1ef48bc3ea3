"""A circuit's earth fault path against its device, from the record."""

from __future__ import annotations

from decimal import Decimal

from app.domain.circuits._working import (
    CannotTell,
    Figure,
    Need,
    Outcome,
    Working,
    assumed,
    recorded,
    tabled,
    told,
    worked,
)
from app.domain.circuits.fault import (
    fault_current,
    rcd_limit,
    smallest_size,
)
from app.domain.circuits.guard import TWO_WAYS
from app.domain.circuits.loop import (
    BREAKERS,
    CMIN,
    FUSES,
    U0,
    r1r2,
    ring_r1r2,
    warm,
    zs,
    zs_limit,
)
from app.domain.circuits.needed import needs_elsewhere
from app.domain.circuits.subject import Subject
from app.domain.rcd_times import delay_of
from app.domain.record import Home
from app.domain.record.choices import EARTHINGS, SUPPLY_BASES
from app.domain.tables import TABLES

ZE, R1R2, ZS, LIMIT = "Ze", "R1+R2", "Loop impedance, Zs", "Largest Zs for the device"
TIME, SIZE = "Time to cut off", "Smallest protective conductor"
RA = "Largest earth resistance with the RCD"
COPPER = frozenset(
    {"twin_and_earth", "twin_no_earth", "singles_in_conduit", "armoured"}
)
CORE = "The protective conductor is taken as a copper core, the armour left out."
FINAL = "It is taken as a final circuit: that asks for the shorter time."
WITH_SOCKETS = (
    "It is taken as a final circuit with sockets: that asks for the shorter time."
)
NOT_DELAYED = "The RCD is taken as not time-delayed: the record does not say."
AT_ONCE = "The breaker is taken as opening within 0.1 s, which its maker may better."
# BS EN 61008 and 61009, from memory: the longest time of a general RCD at IΔn.
BY_RCD, RCD_S = "The RCD is taken as opening within 0.3 s.", Decimal("0.3")
FAR_END = "The fault is taken at the far end; nearer the board it is larger."
TYPICAL = {"tn_c_s": "Ze, TN-C-S (Ω)", "tn_s": "Ze, TN-S (Ω)"}
FIXED_TO, SOCKETS_TO = Decimal(32), Decimal(63)


def outside_loop(subject: Subject) -> Figure | CannotTell:
    """Return Ze: recorded, else the usual worst for the earthing, as assumed."""
    home = subject.net.record.home
    if subject.own_electrode:
        why = "its board has earthing of its own, and the record holds no figure for it"
        return CannotTell(label=ZE, why=why)
    missing = list(subject.earthing_needed())
    if home.ze_ohm is None and home.earthing not in TYPICAL:
        missing = [Need(ref=home.ref, name="ze_ohm", label="Ze"), *missing]
    if missing and (home.ze_ohm is None or subject.board_open):
        return CannotTell(label=ZE, needs=tuple(missing))
    if home.ze_ohm is not None:
        return _recorded_ze(home, home.ze_ohm)
    value = TABLES["supply"].at(TYPICAL[home.earthing], "Figure")
    why = (
        f"Ze is not recorded: {value.value} Ω, the usual worst for "
        f"{EARTHINGS[home.earthing]}, stands in."
    )
    return assumed(ZE, value.value, "Ω", why)


@told(R1R2)
def own_r1r2(subject: Subject) -> Outcome:
    """Return R1+R2 of a circuit, cold: at its far end, or at a socket of a ring."""
    circuit, length = subject.circuit, subject.figure("length_m")
    if circuit.has_cpc == "no":
        return CannotTell(label=R1R2, why="it has no protective conductor")
    line, cpc = circuit.line_mm2, circuit.cpc_mm2
    unknown = "unknown" in (circuit.cable, circuit.arrangement)
    if line is None or cpc is None or length is None or unknown:
        names = ("cable", "arrangement", "line_mm2", "cpc_mm2", "length_m")
        return subject.cannot(R1R2, *names)
    if circuit.cable not in COPPER:
        why = "no table here has the conductors of this kind of cable"
        return CannotTell(label=R1R2, why=why)
    found = (ring_r1r2 if subject.is_ring else r1r2)(line, cpc, length)
    core = (CORE,) if circuit.cable == "armoured" else ()
    return found.model_copy(update={"assumes": (*found.assumes, *core)})


def loop_impedance(subject: Subject) -> Outcome:
    """Return Zs at the far end of a circuit, warm, from the origin on."""
    ze, before = outside_loop(subject), subject.before
    if before is None:
        return CannotTell(label=ZS, why=TWO_WAYS)
    every = (*before, subject.circuit)
    colds = [(each, own_r1r2(subject.of(each))) for each in every]
    known = [cold for _, cold in colds if isinstance(cold, Working)]
    open_ones = [
        needs_elsewhere(cold, each, subject.circuit)
        for each, cold in colds
        if isinstance(cold, CannotTell)
    ]
    if isinstance(ze, CannotTell):
        return _all_missing([ze, *open_ones])
    if open_ones:
        return _all_missing(open_ones)
    return zs(ze, *(worked(warm(worked(cold))) for cold in known))


def time_to_cut_off(subject: Subject) -> Figure | CannotTell:
    """Return how fast a fault of a circuit has to be cut off.

    BS 7671:2018+A2:2022, 411.3.2 and Table 41.1. While its use is not known, a circuit
    up to 63 A may have a socket-outlet on it, so the shorter time is taken.
    """
    rated = subject.rated()
    if rated is None:
        return subject.cannot(TIME, "rated_current_a")
    if subject.earthing == "unknown":
        return CannotTell(label=TIME, needs=subject.earthing_needed())
    unsaid = subject.circuit.use == "unknown"
    most = SOCKETS_TO if subject.has_sockets or unsaid else FIXED_TO
    final = not subject.feeds_board and rated.value <= most
    column = "TT" if subject.earthing == "tt" else "TN"
    value = TABLES["times"].at("final" if final else "other", column)
    if not (final and unsaid):
        return tabled(TIME, value)
    bare = rated.value > FIXED_TO and not subject.has_sockets
    return tabled(TIME, value, assumes=(WITH_SOCKETS if bare else FINAL,))


def device_limit(subject: Subject) -> Outcome:
    """Return the largest Zs for a circuit's device."""
    rated, seconds = subject.rated(), time_to_cut_off(subject)
    if isinstance(seconds, CannotTell):
        return seconds.model_copy(update={"label": LIMIT})
    if rated is None or subject.guard is None:
        return subject.cannot(LIMIT, "rated_current_a")
    if subject.kind in BREAKERS and subject.curve == "unknown":
        ref, label = subject.guard.item.ref, "the type of its circuit-breaker"
        need = Need(ref=ref, name="curve", label=label)
        return CannotTell(label=LIMIT, needs=(need,))
    found = zs_limit(subject.kind, rated, subject.curve, seconds.value)
    if isinstance(found, CannotTell):
        return found
    return found.model_copy(
        update={
            "figures": (*found.figures, seconds),
            "assumes": (*found.assumes, *seconds.assumes),
        }
    )


def rcd_earth_limit(subject: Subject) -> Outcome | None:
    """Return the largest earth resistance with a circuit's RCD; None without one.

    With an electrode an RCD whose IΔn is not recorded leaves it open.
    """
    rcd = subject.rcd
    if rcd is None or rcd.residual_current_ma is None:
        unrated = subject.rcds_unrated if subject.earthing == "tt" else ()
        label = "the IΔn of its RCD"
        needs = tuple(
            Need(ref=step.ref, name="residual_current_ma", label=label)
            for step in unrated
        )
        return CannotTell(label=RA, needs=needs) if needs else None
    if rcd.time_delayed == "yes":
        why = "the table is for an RCD without delay, and this one is time-delayed"
        return CannotTell(label=RA, why=why)
    where = f"{rcd.title} ({rcd.ref})"
    residual = recorded("IΔn", rcd.residual_current_ma, "mA", where)
    if delay_of(rcd) == "open":
        residual = residual.model_copy(update={"assumes": (NOT_DELAYED,)})
    return rcd_limit(residual)


@told(SIZE)
def conductor_needed(
    subject: Subject, found: Outcome, limit: Outcome, rcd: Outcome | None = None
) -> Outcome:
    """Return the protective conductor that the adiabatic equation asks for.

    Args:
        subject: The circuit.
        found: Its loop impedance.
        limit: The largest that its device allows.
        rcd: The largest that its RCD allows, where that cuts off the fault.
    """
    if isinstance(found, CannotTell):
        return found.model_copy(update={"label": SIZE})
    by_device = isinstance(limit, Working) and found.value <= limit.value
    if isinstance(rcd, Working) and found.value <= rcd.value and not by_device:
        return _needed(found, assumed("Time", RCD_S, "s", BY_RCD))
    if isinstance(limit, CannotTell):
        return limit.model_copy(update={"label": SIZE})
    if found.value > limit.value:
        why = "the loop impedance is above the limit, so the time is not known"
        return CannotTell(label=SIZE, why=why)
    if subject.kind in FUSES:
        seconds = next(f for f in limit.figures if f.label == TIME)
        volts = assumed(
            "Voltage, times Cmin",
            U0.value * CMIN.value,
            "V",
            "The fault is taken as the smallest that the fuse opens on in time.",
        )
        return smallest_size(worked(fault_current(volts, worked(limit))), seconds, _k())
    return _needed(found, assumed("Time", Decimal("0.1"), "s", AT_ONCE))


def _needed(found: Working, seconds: Figure) -> Outcome:
    volts = tabled("Voltage to earth", U0, assumes=(FAR_END,))
    return smallest_size(worked(fault_current(volts, worked(found))), seconds, _k())


def _k() -> Figure:
    return tabled("k", TABLES["adiabatic-k"].at("copper, 70 °C PVC, in cable"))


def _all_missing(missing: list[CannotTell]) -> CannotTell:
    """Return one answer for several: a reason that no field would mend goes first."""
    why = next((each.why for each in missing if each.why), "")
    needs = () if why else tuple(need for each in missing for need in each.needs)
    return CannotTell(label=ZS, needs=needs, why=why)


def _recorded_ze(home: Home, ohm: Decimal) -> Figure:
    known = SUPPLY_BASES[home.ze_basis]
    if home.ze_basis == "measured":
        return Figure(label=ZE, value=ohm, unit="Ω", came="measured", source=known)
    if home.ze_basis == "typical":
        why = f"Ze, {ohm} Ω, is the usual figure for this kind of supply, as recorded."
        return assumed(ZE, ohm, "Ω", why)
    return recorded(ZE, ohm, "Ω", f"{home.name}; how it is known: {known.lower()}")
