"""For each remark a home that it remarks on, one it leaves alone, one it cannot judge.

The homes are as small as the remark allows.  A remark that never lacks anything says
why, and has no home of the third sort.
"""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Any, NamedTuple

from app.domain.record import Occasion, Record, Result
from tests.builders import (
    Part,
    board,
    circuit,
    control,
    cutout,
    device,
    fcu,
    home,
    intake,
    light,
    main_switch,
    meter,
    one_way,
    point,
    rcbo,
    rcd,
    room,
    socket,
    source,
    street,
    tails,
    tie,
    way,
)

TODAY = date(2026, 11, 25)
BATH = {"kind": "bathroom", "name": "Bathroom", "has_bath": "yes"}


class Case(NamedTuple):
    found: Record
    quiet: Record
    cannot: Record | None = None


def of_intake(kind: str = "cutout", **fields: Any) -> Record:
    return home(intake("I1", kind=kind, fed_from=None, **fields))


def of_board(*inner: Part, **fields: Any) -> Record:
    return home(street(board("B1", main_switch("MS", *inner), **fields)))


def of_polarity(
    polarity: str, on: date | None = None, about: str | None = "C1"
) -> Result:
    """What a paper says of the polarity of a thing."""
    ref = f"V-{polarity}"
    return Result(ref=ref, about=about, polarity=polarity, tested_on=on)


def with_result(**fields: str) -> Record:
    """A circuit on a B32 breaker with one result."""
    texts = {"live_earth_over"}
    values = {n: v if n in texts else Decimal(v) for n, v in fields.items()}
    result = Result.model_validate({"ref": "V1", "about": "C1", **values})
    return measured().having(results=(result,))


def behind_rcds(ms: str, *rcds: dict[str, Any]) -> Record:
    """A circuit behind RCDs, the first of them nearest the street, with one time."""
    part = way("W1", circuit("C1", socket("P1")))
    for number, fields in enumerate(reversed(rcds)):
        part = rcd(f"RCD{len(rcds) - number}", part, **fields)
    result = Result(ref="V1", about="C1", rcd_ms=Decimal(ms))
    return of_board(part).having(results=(result,))


def with_button(outcome: str, on: date) -> Record:
    """A board whose RCD's button was pressed on a day."""
    record = of_board(rcd("RCD", way("W1", circuit("C1", socket("P1")))))
    pressed = Occasion(
        ref="O1", kind="rcd_button", about="RCD", done_on=on, outcome=outcome
    )
    return record.having(occasions=(pressed,))


def of_circuit(
    *inner: Part, of_way: dict[str, Any] | None = None, **fields: Any
) -> Record:
    return home(one_way(circuit("C1", *inner, **fields), **(of_way or {})))


def of_tails(fuse: int | None, **fields: Any) -> Record:
    return home(
        source("GRID", cutout("CUT", tails("T", **fields), rated_current_a=fuse))
    )


def of_earth(kind: str, earthing: str = "tn_c_s", **fields: Any) -> Record:
    return home(
        tails("T", csa_mm2=25), intake("E1", kind=kind, **fields), earthing=earthing
    )


def in_bath(kind: str, **fields: Any) -> Record:
    return home(room("R1", **BATH), point("P1", kind=kind, room="R1", **fields))


def covered(ma: int | None, *inner: Part, **fields: Any) -> Record:
    """A circuit behind an RCD; none where IΔn is 0."""
    hung = way("W1", circuit("C1", *inner, **fields))
    if ma == 0:
        return of_board(hung)
    return of_board(rcd("RCD", hung, residual_current_ma=ma))


def two_lights(**fields: Any) -> tuple[Part, Part]:
    return (
        way("W1", circuit("C1", use="lighting", **fields)),
        way("W2", circuit("C2", use="lighting", **fields)),
    )


def shared(ma: int, *first: Part, use: str = "sockets", **of_rcd: Any) -> Record:
    """Two circuits behind one RCD, the second with a socket."""
    return of_board(
        rcd(
            "RCD",
            way("W1", circuit("C1", *first, use=use)),
            way("W2", circuit("C2", socket("P9"), use="sockets")),
            residual_current_ma=ma,
            **of_rcd,
        )
    )


def on_storeys(*, tied: bool) -> Record:
    return home(
        room("R1", storey="ground"),
        room("R2", storey="first", kind="bedroom"),
        one_way(circuit("C1", socket("P1", room="R1"), socket("P2", room="R2"))),
        socket("P3", room="R1") if not tied else room("R3"),
    )


def two_boards(second: str, earthing: str = "tn_c_s") -> Record:
    return home(
        room("R1"),
        street(
            board(
                "B1",
                way("W1", circuit("C1", light("P1", room="R1"))),
                earthing="supply",
            ),
            board(
                "B2", way("W2", circuit("C2", light("P2", room="R1"))), earthing=second
            ),
        ),
        earthing=earthing,
    )


def of_fcu(*behind: Part, **fields: Any) -> Record:
    return of_circuit(fcu("F1", *behind, **fields))


def of_ring(*inner: Part, rated: int | None = 32, **fields: Any) -> Record:
    return of_circuit(
        *inner, of_way={"rated_current_a": rated}, arrangement="ring", **fields
    )


def solar(**fields: Any) -> Part:
    return source("PV", kind="solar", owner="consumer", **fields)


def of_load(use: str, watts: int | None, *inner: Part) -> Record:
    return of_circuit(*inner, use=use, connected_w=watts)


def of_cable(arrangement: str = "radial", **fields: Any) -> Record:
    cable = {"cable": "twin_and_earth", "arrangement": arrangement, **fields}
    return of_circuit(**cable)


def one_board(*inner: Part) -> Part:
    return street(board("B1", main_switch("MS", *inner), earthing="supply"))


def measured(**fields: Any) -> Record:
    """A circuit of a home whose Ze was measured."""
    cable = {"cable": "twin_and_earth", "arrangement": "radial", "use": "fixed"}
    return home(
        one_board(way("W1", circuit("C1", **cable, **fields))),
        earthing="tn_c_s",
        ze_ohm=0.3,
        ze_basis="measured",
    )


def lit() -> Part:
    return circuit("C1", light("P1"))


def neutral_of(*inner: Part) -> Record:
    """A light on one circuit, with its neutral on another one."""
    return home(one_board(*inner), tie("P1", "C2", "neutral"))


def on_electrode(*inner: Part, **fields: Any) -> Record:
    return home(one_board(*inner), earthing="tt", **fields)


def of_fault(cpc: float | None, *, rating: int) -> Record:
    cable = {"cable": "twin_and_earth", "arrangement": "radial", "use": "fixed"}
    hung = circuit("C1", **cable, line_mm2=6, cpc_mm2=cpc, length_m=10)
    fuse = device("W1", hung, kind="fuse_bs88", rated_current_a=rating)
    return home(
        one_board(fuse),
        earthing="tn_c_s",
        ze_ohm=0.3,
        ze_basis="measured",
    )


def of_street(fuse: int | None, *inner: Part) -> Record:
    hung = main_switch("MS", way("W1", *inner, rated_current_a=63))
    return home(source("GRID", cutout("CUT", board("B1", hung), rated_current_a=fuse)))


def at_night(watts: int | None) -> Record:
    hung = way("W1", circuit("C1", use="storage_heating", connected_w=watts))
    timed = device("K", hung, kind="contactor", when="off_peak")
    return home(source("GRID", cutout("CUT", board("B1", timed))))


def on_three_phases(watts: int) -> Record:
    """A home with so much on each of three phases behind 60 A."""
    ways = (
        way(f"W{n}", circuit(f"C{n}", use="shower", connected_w=watts), phase=f"l{n}")
        for n in (1, 2, 3)
    )
    fuse = cutout("CUT", board("B1", *ways), rated_current_a=60)
    return home(source("GRID", fuse), phases="three")


CASES: dict[str, Case] = {
    "intake-hot-or-damaged": Case(
        of_intake(condition="hot"), of_intake(condition="sound"), of_intake()
    ),
    "intake-loose": Case(
        of_intake("meter", condition="loose"),
        of_intake("meter", condition="sound"),
        of_intake("meter"),
    ),
    "intake-old-cable": Case(
        of_intake("tails", condition="old_cloth"),
        of_intake("tails", condition="sound"),
        of_intake("tails"),
    ),
    "intake-asbestos": Case(
        of_intake(condition="asbestos"), of_intake(condition="sound"), of_intake()
    ),
    "seal-missing": Case(
        of_intake("meter", owner="meter_operator", seal="no"),
        of_intake("meter", owner="meter_operator", seal="yes"),
        of_intake("meter", owner="meter_operator"),
    ),
    "main-fuse-unknown": Case(of_intake(), of_intake(rated_current_a=80), home()),
    "supply-looped": Case(home(looped="yes"), home(looped="no"), home()),
    "owner-not-known": Case(of_intake(owner="unknown"), of_intake()),
    "no-isolator-after-meter": Case(
        of_board(way("W1")),
        home(
            source(
                "GRID",
                meter(
                    "MET",
                    intake("SW", board("B1", main_switch("MS")), kind="isolator"),
                ),
            )
        ),
        home(),
    ),
    "tails-small-for-fuse": Case(
        of_tails(100, csa_mm2=16), of_tails(80, csa_mm2=16), of_tails(100)
    ),
    "tails-long": Case(
        of_tails(100, length_m=4), of_tails(100, length_m=2), of_tails(100)
    ),
    "cylinder-beside-intake": Case(
        home(
            room("R1"),
            meter("MET", room="R1"),
            point("P1", kind="water_heater", room="R1"),
        ),
        home(
            room("R1"),
            room("R2"),
            meter("MET", room="R1"),
            point("P1", kind="water_heater", room="R2"),
        ),
        home(room("R1"), meter("MET"), point("P1", kind="water_heater", room="R1")),
    ),
    "earthing-unknown": Case(home(), home(earthing="tt")),
    "earthing-part-damaged": Case(
        of_intake("earth_electrode", condition="damaged"),
        of_intake("earth_electrode", condition="sound"),
        of_intake("earth_electrode"),
    ),
    "earthing-conductor-small": Case(
        of_earth("earthing_conductor", csa_mm2=6),
        of_earth("earthing_conductor", csa_mm2=16),
        of_earth("earthing_conductor", "unknown", csa_mm2=6),
    ),
    "main-bonding-small": Case(
        of_earth("main_bonding", csa_mm2=6, basis="seen"),
        of_earth("main_bonding", csa_mm2=10, basis="seen"),
        of_earth("main_bonding", "unknown", csa_mm2=6, basis="seen"),
    ),
    "main-bonding-not-confirmed": Case(
        home(
            intake("E1", kind="main_bonding", service="gas", basis="unknown"),
            intake("E2", kind="main_bonding", service="water", basis="seen"),
        ),
        home(
            intake("E1", kind="main_bonding", service="gas", basis="seen"),
            intake("E2", kind="main_bonding", service="water", basis="seen"),
        ),
        home(),
    ),
    "electrode-reading-missing": Case(
        of_earth("earth_electrode", "tt"),
        of_earth("earth_electrode", "tt", resistance_ohm=80),
        of_earth("earth_electrode", "unknown"),
    ),
    "electrode-without-rcd": Case(
        on_electrode(way("W1", circuit("C1"))),
        on_electrode(rcd("R", way("W1", circuit("C1")))),
        on_electrode(device("W1", circuit("C1"), kind="afdd")),
    ),
    "electrode-resistance-high": Case(
        of_earth("earth_electrode", "tt", resistance_ohm=240),
        of_earth("earth_electrode", "tt", resistance_ohm=80),
        of_earth("earth_electrode", "tt"),
    ),
    "two-earthings-in-reach": Case(
        two_boards("tt"), two_boards("tn_c_s"), two_boards("unknown", "tt")
    ),
    "charger-on-network-earth": Case(
        home(point("P1", kind="vehicle_charger"), earthing="tn_c_s"),
        home(point("P1", kind="vehicle_charger"), earthing="tt"),
        home(point("P1", kind="vehicle_charger")),
    ),
    "board-hot-or-damaged": Case(
        of_board(condition="hot"), of_board(condition="sound"), of_board()
    ),
    "opening-without-blank": Case(
        of_board(blanks_missing="yes"), of_board(blanks_missing="no"), of_board()
    ),
    "enclosure-not-metal": Case(
        of_board(enclosure="plastic"), of_board(enclosure="metal"), of_board()
    ),
    "enclosure-open-or-wood": Case(
        of_board(enclosure="wood"), of_board(enclosure="metal"), of_board()
    ),
    "main-switch-one-pole": Case(
        home(board("B1", main_switch("MS", poles="line"))),
        home(board("B1", main_switch("MS", poles="line_and_neutral"))),
        home(board("B1", main_switch("MS"))),
    ),
    "no-main-switch": Case(
        home(board("B1", way("W1"), way("W2"))),
        of_board(way("W1"), way("W2")),
        home(board("B1", way("W1"), device("D", kind="unknown"))),
    ),
    "rcd-may-be-overloaded": Case(
        of_board(rcd("RCD", way("W1", rated_current_a=40), way("W2"))),
        of_board(rcd("RCD", way("W1"))),
        of_board(rcd("RCD", way("W1"), rated_current_a=None)),
    ),
    "switch-may-be-overloaded": Case(
        home(
            street(
                board(
                    "B1",
                    main_switch(
                        "MS", way("W1"), way("W2"), way("W3"), rated_current_a=63
                    ),
                )
            )
        ),
        of_board(way("W1")),
        home(street(board("B1", main_switch("MS", rated_current_a=None)))),
    ),
    "all-on-one-rcd": Case(
        of_board(rcd("RCD", *(way(f"W{n}", circuit(f"C{n}")) for n in (1, 2, 3)))),
        of_board(
            rcd("RCD", *(way(f"W{n}", circuit(f"C{n}")) for n in (1, 2, 3))),
            way("W4", circuit("C4")),
        ),
        home(
            board(
                "B1", rcd("RCD", *(way(f"W{n}", circuit(f"C{n}")) for n in (1, 2, 3)))
            ),
            circuit("C4"),
        ),
    ),
    "rcd-takes-much-with-it": Case(
        shared(30, socket("P1", care=("freezer",)), point("P2", kind="boiler")),
        shared(30, socket("P1", care=("freezer",))),
        of_board(rcd("RCD", *two_lights())),
    ),
    "storey-dark-with-its-sockets": Case(
        home(
            room("R1"),
            one_way(),
            board(
                "B2",
                rcd(
                    "RCD",
                    way("W2", circuit("C1", light("P1", room="R1"))),
                    way("W3", circuit("C2", socket("P2", room="R1"))),
                ),
            ),
        ),
        home(
            room("R1"),
            board(
                "B2",
                way("W2", circuit("C1", light("P1", room="R1"))),
                rcd("RCD", way("W3", circuit("C2", socket("P2", room="R1")))),
            ),
        ),
        home(
            room("R1"),
            board("B2", rcd("RCD", way("W2", circuit("C1", light("P1", room="R1"))))),
            socket("P2", room="R1"),
        ),
    ),
    "all-lights-on-one-rcd": Case(
        of_board(rcd("RCD", *two_lights())),
        of_board(*two_lights()),
        home(board("B1", rcd("RCD", *two_lights())), circuit("C3", use="lighting")),
    ),
    "alarm-shares-circuit": Case(
        of_circuit(light("P1"), point("P2", kind="smoke_alarm")),
        of_circuit(point("P2", kind="smoke_alarm")),
        home(point("P2", kind="smoke_alarm")),
    ),
    "no-surge-protection": Case(
        of_board(surge_protection="no"), of_board(surge_protection="yes"), of_board()
    ),
    "rewirable-fuses": Case(
        of_board(device("F1", kind="fuse_rewirable")),
        of_board(way("W1")),
        of_board(device("F1", kind="unknown")),
    ),
    "fuse-wire-too-thick": Case(
        of_board(
            device("F1", kind="fuse_rewirable", rated_current_a=5, fuse_wire_a=15)
        ),
        of_board(device("F1", kind="fuse_rewirable", rated_current_a=5, fuse_wire_a=5)),
        of_board(device("F1", kind="fuse_rewirable", rated_current_a=5)),
    ),
    "rcd-type-ac": Case(
        of_board(rcd("RCD", rcd_type="AC")),
        of_board(rcd("RCD", rcd_type="A")),
        of_board(rcd("RCD")),
    ),
    "rcd-type-for-dc": Case(
        of_board(rcbo("W1", circuit("C1", use="vehicle"), rcd_type="AC")),
        of_board(rcbo("W1", circuit("C1", use="vehicle"), rcd_type="B")),
        of_board(rcbo("W1", circuit("C1", use="vehicle"), rcd_type="A")),
    ),
    "rcds-in-series": Case(
        of_board(rcd("R1", rcbo("W1"), time_delayed="no")),
        of_board(rcd("R1", rcbo("W1"), time_delayed="yes")),
        of_board(rcd("R1", rcbo("W1"))),
    ),
    "main-switch-not-whole-home": Case(
        home(
            street(
                board("B1", main_switch("M1", way("W1", circuit("C1")))),
                board("B2", main_switch("M2", way("W2", circuit("C2")))),
            )
        ),
        of_board(way("W1", circuit("C1"))),
        home(one_way(circuit("C1")), circuit("C2")),
    ),
    "off-peak-wakes-by-itself": Case(
        home(
            board(
                "B1",
                device(
                    "K", way("W1", circuit("C1")), kind="contactor", when="off_peak"
                ),
            )
        ),
        of_circuit(),
        home(board("B1", device("K", way("W1", circuit("C1")), kind="contactor"))),
    ),
    "generation-on-shared-rcd": Case(
        shared(30, use="generation"),
        of_board(rcbo("W1", circuit("C1", use="generation"))),
        home(circuit("C1", use="generation")),
    ),
    "second-supply-notice": Case(
        home(solar(), board("B1", second_supply_notice="no")),
        home(solar(), board("B1", second_supply_notice="yes")),
        home(solar(), board("B1")),
    ),
    "board-fed-from-elsewhere": Case(
        of_circuit(board("B2", main_switch("M2")), arrangement="distribution"),
        of_circuit(),
        home(board("B1", main_switch("MS"))),
    ),
    "way-without-label": Case(
        of_circuit(of_way={"label_found": "-"}),
        of_circuit(of_way={"label_found": "LIGHTS"}),
        of_circuit(),
    ),
    "labels-alike": Case(
        of_board(way("W1", label_found="LIGHTS"), way("W2", label_found="Lights")),
        of_board(way("W1", label_found="LIGHTS"), way("W2", label_found="SOCKETS")),
    ),
    "label-says-nothing": Case(
        of_circuit(of_way={"label_found": "3"}),
        of_circuit(of_way={"label_found": "WATER"}),
    ),
    "label-misleads": Case(
        of_circuit(light("P1"), of_way={"label_found": "SPARE"}),
        of_circuit(light("P1"), of_way={"label_found": "LIGHTS"}),
    ),
    "label-names-one-thing": Case(
        of_circuit(socket("P1"), light("P2"), of_way={"label_found": "FREEZER"}),
        of_circuit(socket("P1"), of_way={"label_found": "FREEZER"}),
        of_circuit(of_way={"label_found": "FREEZER"}),
    ),
    "label-leaves-out": Case(
        home(
            room("R1"),
            street(
                board(
                    "B1",
                    main_switch(
                        "MS",
                        way(
                            "W1",
                            circuit(
                                "C1", socket("P1", room="R1"), socket("P2", room="R1")
                            ),
                        ),
                        way("W2", circuit("C2", socket("P3", room="R1"))),
                    ),
                )
            ),
        ),
        home(room("R1"), one_way(circuit("C1", socket("P1", room="R1")))),
    ),
    "chart-missing": Case(of_board(chart="no"), of_board(chart="yes"), of_board()),
    "two-supplies-at-one-point": Case(
        home(
            street(
                board(
                    "B1",
                    way("W1", circuit("C1", light("P1"))),
                    way("W2", circuit("C2")),
                )
            ),
            tie("P1", "C2"),
        ),
        of_circuit(light("P1")),
    ),
    "borrowed-neutral": Case(
        home(
            one_way(circuit("C1", light("P1"))),
            circuit("C2"),
            tie("P1", "C2", "neutral"),
        ),
        of_circuit(light("P1")),
        home(
            room("R1", kind="landing"),
            one_way(circuit("C1", light("P1", room="R1"), use="lighting")),
            circuit("C2", use="lighting"),
            point("P2", kind="two_way_switch"),
            control("P2", "P1"),
        ),
    ),
    "neutral-past-its-rcd": Case(
        neutral_of(way("W2", circuit("C2")), rcd("R", way("W1", lit()))),
        neutral_of(rcd("R", way("W1", lit()), way("W2", circuit("C2")))),
        home(
            one_board(rcd("R", way("W1", lit()))),
            circuit("C2"),
            tie("P1", "C2", "neutral"),
        ),
    ),
    "two-circuits-in-one-box": Case(
        home(
            one_way(circuit("C1", light("P1"))),
            circuit("C2"),
            tie("P1", "C2", "present"),
        ),
        of_circuit(light("P1")),
    ),
    "odd-one-out": Case(
        home(
            room("R1"),
            one_way(circuit("C1", socket("P1", room="R1"), socket("P2", room="R1"))),
            circuit("C2", socket("P3", room="R1")),
        ),
        home(room("R1"), one_way(circuit("C1", socket("P1", room="R1")))),
        home(socket("P1")),
    ),
    "missed-behind-many-boards": Case(
        of_circuit(
            board("B2", way("W2", circuit("C2", socket("P1", care=("water",))))),
            arrangement="distribution",
        ),
        of_circuit(socket("P1", care=("water",))),
        home(socket("P1", care=("water",))),
    ),
    "source-not-answered": Case(
        home(),
        home(
            *(
                source(f"S-{k}", kind=k, present="no")
                for k in (
                    "solar",
                    "battery",
                    "generator",
                    "vehicle",
                    "neighbour",
                    "landlord",
                )
            )
        ),
    ),
    "source-without-isolator": Case(
        home(source("G", point("P1", kind="inverter"), kind="generator")),
        home(source("G", point("P1", kind="isolator"), kind="generator")),
        home(source("G", kind="generator")),
    ),
    "fed-from-outside": Case(
        home(source("N", light("P1"), kind="neighbour")),
        home(source("N", kind="neighbour", present="no")),
        home(source("N", kind="neighbour")),
    ),
    "live-without-the-network": Case(
        home(source("S", socket("P1"), kind="battery", runs_without_network="yes")),
        home(source("S", socket("P1"), kind="battery", runs_without_network="no")),
        home(source("S", socket("P1"), kind="battery")),
    ),
    "panels-live-by-day": Case(
        home(solar()), home(solar(present="no")), home(solar(present="unknown"))
    ),
    "sockets-without-30-ma": Case(
        covered(0, socket("P1")), covered(30, socket("P1")), covered(None, socket("P1"))
    ),
    "outdoors-without-30-ma": Case(
        covered(100, point("P1", kind="outdoor_socket")),
        covered(30, point("P1", kind="outdoor_socket")),
        home(point("P1", kind="outdoor_socket")),
    ),
    "bathroom-without-30-ma": Case(
        home(room("R1", **BATH), one_way(circuit("C1", light("P1", room="R1")))),
        home(
            room("R1", **BATH),
            street(board("B1", rcbo("W1", circuit("C1", light("P1", room="R1"))))),
        ),
        in_bath("light"),
    ),
    "lights-without-30-ma": Case(
        covered(0, light("P1")), covered(30, light("P1")), covered(None, light("P1"))
    ),
    "hidden-cable-without-30-ma": Case(
        covered(0, point("P1", kind="cooker"), method="103"),
        covered(30, point("P1", kind="cooker"), method="103"),
        covered(0, point("P1", kind="cooker")),
    ),
    "local-rcd-only": Case(
        of_circuit(fcu("F1", socket("P1"), residual_current_ma=30)),
        covered(30, fcu("F1", socket("P1"), residual_current_ma=30)),
        home(fcu("F1", socket("P1"), residual_current_ma=30)),
    ),
    "lights-without-earth": Case(
        of_circuit(use="lighting", has_cpc="no"),
        of_circuit(use="lighting", has_cpc="yes"),
        of_circuit(use="lighting"),
    ),
    "circuit-without-earth": Case(
        of_circuit(use="sockets", has_cpc="no"),
        of_circuit(use="sockets", has_cpc="yes"),
        of_circuit(use="sockets"),
    ),
    "metal-without-earth": Case(
        of_circuit(light("P1", metal="yes"), has_cpc="no"),
        of_circuit(light("P1", metal="no"), has_cpc="no"),
        of_circuit(light("P1"), has_cpc="no"),
    ),
    "old-rubber-cable": Case(
        of_circuit(cable="rubber"), of_circuit(cable="twin_and_earth"), of_circuit()
    ),
    "old-and-new-colours": Case(
        of_circuit(colours="both"), of_circuit(colours="old"), of_circuit()
    ),
    "board-newer-than-wiring": Case(
        home(board("B1", way("W1", circuit("C1", installed="about 1962")), year=2015)),
        home(board("B1", way("W1", circuit("C1", installed="2015")), year=2015)),
        home(board("B1", way("W1", circuit("C1", installed="about 1962")))),
    ),
    "ring-device-rating": Case(of_ring(rated=40), of_ring(), of_ring(rated=None)),
    "ring-cable-small": Case(of_ring(line_mm2=1.5), of_ring(line_mm2=2.5), of_ring()),
    "ring-old-thin-earth": Case(of_ring(cpc_mm2=1), of_ring(cpc_mm2=1.5), of_ring()),
    "floor-area-large": Case(
        of_ring(use="sockets", floor_area_m2=120),
        of_ring(use="sockets", floor_area_m2=90),
        of_ring(use="sockets"),
    ),
    "sockets-of-home-on-one-circuit": Case(
        on_storeys(tied=True), of_circuit(socket("P1")), on_storeys(tied=False)
    ),
    "spur-off-spur": Case(
        of_ring(socket("P1", socket("P2", connection="spur"), connection="spur")),
        of_ring(socket("P1", socket("P2", connection="spur"), connection="in_ring")),
        of_ring(socket("P1", socket("P2", connection="spur"))),
    ),
    "spurs-outnumber-ring": Case(
        of_ring(
            socket("P1", connection="in_ring"),
            socket("P2", connection="spur"),
            socket("P3", connection="spur"),
        ),
        of_ring(socket("P1", connection="in_ring"), socket("P2", connection="spur")),
        of_ring(socket("P1", connection="spur"), socket("P2")),
    ),
    "connection-unit-overloaded": Case(
        of_fcu(point("P1", kind="heater", load_w=2000), fuse_a=3),
        of_fcu(point("P1", kind="heater", load_w=500), fuse_a=3),
        of_fcu(socket("P1"), socket("P2")),
    ),
    "shower-over-rating": Case(
        of_load("shower", 10500), of_load("shower", 7000), of_load("shower", None)
    ),
    "cooker-over-rating": Case(
        of_load("cooker", 22000), of_load("cooker", 10000), of_load("cooker", None)
    ),
    "charger-over-rating": Case(
        of_load("vehicle", 7400 + 100),
        of_load("vehicle", 7300),
        of_load("vehicle", None),
    ),
    "fixed-load-over-rating": Case(
        of_load("water_heating", 9000),
        of_load("water_heating", 3000),
        of_load("water_heating", None),
    ),
    "device-over-cable": Case(
        of_cable(method="103", line_mm2=1),
        of_cable(method="C", line_mm2=6),
        of_cable(line_mm2=6),
    ),
    "ring-cable-capacity": Case(
        of_cable("ring", method="103", line_mm2=2.5),
        of_cable("ring", method="C", line_mm2=2.5),
        of_cable("ring", line_mm2=2.5),
    ),
    "voltage-drop-large": Case(
        of_cable(line_mm2=1, length_m=200, use="fixed", connected_w=3000),
        of_cable(line_mm2=6, length_m=10, use="fixed", connected_w=3000),
        of_cable(line_mm2=6, use="fixed", connected_w=3000),
    ),
    "loop-impedance-high": Case(
        measured(line_mm2=1, cpc_mm2=1, length_m=60),
        measured(line_mm2=6, cpc_mm2=2.5, length_m=10),
        measured(line_mm2=6, cpc_mm2=2.5),
    ),
    "earth-wire-small-in-fault": Case(
        of_fault(1, rating=45),
        of_fault(4, rating=32),
        of_fault(None, rating=32),
    ),
    "demand-above-main-fuse": Case(
        of_street(60, circuit("C1", use="shower", connected_w=20000)),
        of_street(60, circuit("C1", use="shower", connected_w=7000)),
        of_street(None, circuit("C1", use="shower", connected_w=7000)),
    ),
    "little-left-for-more": Case(
        of_street(60, circuit("C1", use="shower", connected_w=9000)),
        of_street(100, circuit("C1", use="shower", connected_w=7000)),
        of_street(None, circuit("C1", use="shower", connected_w=7000)),
    ),
    "night-load": Case(at_night(9000), at_night(2000), at_night(None)),
    "outdoors-on-indoor-circuit": Case(
        home(
            room("R1"),
            room("R2", kind="outside", storey="outside"),
            street(
                board(
                    "B1",
                    rcd(
                        "RCD",
                        way(
                            "W1",
                            circuit(
                                "C1", socket("P1", room="R1"), light("P2", room="R2")
                            ),
                        ),
                    ),
                )
            ),
        ),
        home(
            room("R1"),
            street(
                board(
                    "B1", rcd("RCD", way("W1", circuit("C1", socket("P1", room="R1"))))
                )
            ),
        ),
        of_circuit(socket("P1")),
    ),
    "socket-near-bath": Case(
        in_bath("socket", from_bath_m=1),
        in_bath("socket", from_bath_m=3.5),
        in_bath("socket"),
    ),
    "splash-cover-near-bath": Case(
        in_bath("light", from_bath_m=0.3, ip="IP20"),
        in_bath("light", from_bath_m=0.3, ip="IPX4"),
        in_bath("light"),
    ),
    "switch-near-bath": Case(
        in_bath("switch", from_bath_m=0.3),
        in_bath("switch", from_bath_m=1),
        in_bath("switch"),
    ),
    "rain-cover-outdoors": Case(
        home(light("P1", outdoor="yes", ip="IP20")),
        home(light("P1", outdoor="yes", ip="IP65")),
        home(light("P1", outdoor="yes")),
    ),
    "point-hot-or-damaged": Case(
        home(socket("P1", condition="hot")),
        home(socket("P1", condition="sound")),
        home(socket("P1")),
    ),
    "no-smoke-alarm": Case(
        home(room("R1")),
        home(room("R1"), point("P1", kind="smoke_alarm")),
        home(room("R1", looked_at="not_yet")),
    ),
    "fed-by-nobody-knows": Case(home(socket("P1")), of_circuit(socket("P1"))),
    "known-by-label-only": Case(
        of_circuit(socket("P1", tied="1")), of_circuit(socket("P1"))
    ),
    "seen-before-later-work": Case(
        home(
            board("B1", way("W1", circuit("C1")), year=2020),
            socket("P1"),
            tie("P1", "C1", seen_on=date(2018, 5, 1)),
        ),
        home(
            board("B1", way("W1", circuit("C1")), year=2020),
            socket("P1"),
            tie("P1", "C1", seen_on=date(2024, 5, 1)),
        ),
        home(
            board("B1", way("W1", circuit("C1")), year=2020),
            socket("P1"),
            tie("P1", "C1"),
        ),
    ),
    "rooms-not-looked-at": Case(home(room("R1", looked_at="part")), home(room("R1"))),
    "record-contradicts-itself": Case(
        home(source("S", socket("P1"), present="no")), of_circuit(socket("P1"))
    ),
    "work-without-paper": Case(
        of_board(year=2015, paper="none"),
        of_board(year=2015, paper="certificate"),
        of_board(year=2015),
    ),
    "inspection-due": Case(
        home(tenure="owner", inspected_on=date(2012, 3, 1)),
        home(tenure="owner", inspected_on=date(2021, 3, 1)),
        home(tenure="let", nation="england"),
    ),
    "test-button-due": Case(
        of_board(rcd("RCD", button_pressed_on=date(2026, 1, 5))),
        of_board(rcd("RCD", button_pressed_on=date(2026, 9, 5))),
        of_board(rcd("RCD")),
    ),
    "insulation-low": Case(
        with_result(live_earth_mohm="0.4", live_live_mohm="200"),
        with_result(live_earth_mohm="200", live_earth_over="over"),
        of_circuit(),
    ),
    "measured-loop-high": Case(
        with_result(zs_ohm="1.2"),
        with_result(zs_ohm="1"),
        of_circuit(),
    ),
    "button-failed": Case(
        with_button("failed", date(2026, 3, 1)),
        with_button("worked", date(2026, 3, 1)),
    ),
    "polarity-wrong": Case(
        measured().having(results=(of_polarity("wrong"),)),
        measured().having(results=(of_polarity("correct"),)),
    ),
    "rcd-slow": Case(
        behind_rcds("310", {"time_delayed": "no"}),
        behind_rcds("310", {"time_delayed": "yes", "residual_current_ma": 100}),
        behind_rcds("310", {"residual_current_ma": 100}),
    ),
}
