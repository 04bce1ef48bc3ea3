"""The words of the trade, and our own, that the screens use: each explained once.

Written in our own words from common practice and from memory of BS 7671:2018+A2:2022,
Part 2; a figure given here is the usual one and is used in no calculation.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Term:
    """A word and what it means.

    Attributes:
        word: The word as a heading.
        text: One to three plain sentences.
        see: Slugs of terms that help to understand it.
    """

    word: str
    text: str
    see: tuple[str, ...] = ()


TERMS: dict[str, Term] = {
    "afdd": Term(
        "AFDD",
        "Arc fault detection device: opens a circuit when it senses the pattern of "
        "an arc, as at a broken or crushed wire. Many hold a circuit-breaker or an "
        "RCBO as well.",
        ("circuit-breaker", "rcbo"),
    ),
    "backup": Term(
        "Backup",
        "A supply that goes on when the network is off, as from a battery or a "
        "generator. It feeds some outlets or circuits, and may come on by itself.",
        ("source", "isolation"),
    ),
    "board": Term(
        "Board, consumer unit",
        "An enclosure where the supply is split into circuits, each with a device of "
        "its own. Consumer unit and fuse box are names for the board of a home.",
        ("way", "device", "sub-board"),
    ),
    "borrowed-neutral": Term(
        "Borrowed neutral",
        "A neutral that returns through another circuit than the one that feeds the "
        "line; common on old stair and landing lights. It shows no voltage until it "
        "is parted, and then it may be live with its own circuit off.",
        ("neutral", "two-way-switching", "isolation"),
    ),
    "breaking-capacity": Term(
        "Breaking capacity",
        "The largest fault current that a device can stop without harm to itself, in "
        "kA. It is printed in a box on a circuit-breaker, in amperes: 6000 is 6 kA.",
        ("prospective-fault-current", "circuit-breaker"),
    ),
    "building-control": Term(
        "Building control",
        "Whoever looks after building regulations: the local authority, or a "
        "registered approver. In England and Wales it is told of some work.",
        ("competent-person-scheme", "special-location"),
    ),
    "building-warrant": Term(
        "Building warrant",
        "Leave to do building work in Scotland, asked of the verifier before the work "
        "begins. Much electrical work in a lower house needs none.",
        ("verifier",),
    ),
    "care": Term(
        "Missed if it goes off",
        "What someone would miss when a point loses its supply: a freezer, a care "
        "alarm, the router. The answer for a way lists such points by themselves.",
        ("point",),
    ),
    "cartridge-fuse": Term(
        "Cartridge fuse",
        "A fuse in a closed tube that is replaced whole: BS 1361 in older boards, "
        "BS 88-3 since. Plugs and fused connection units hold small ones to BS 1362.",
        ("rewirable-fuse", "fused-connection-unit"),
    ),
    "chain": Term(
        "Chain",
        "Everything between a source and a point, in order: each thing that the "
        "supply passes through, whose it is, what it protects against and what it "
        "opens.",
        ("source", "point", "ownership-boundary"),
    ),
    "circuit": Term(
        "Circuit",
        "The wiring that leaves a way, with all that hangs on it, guarded by the "
        "device there.",
        ("way", "point", "ring-final", "radial"),
    ),
    "circuit-breaker": Term(
        "Circuit-breaker",
        "A device that opens its circuit on an overload or a short circuit and can "
        "be closed again; also called MCB. It guards the cable, and with the earthing "
        "it cuts off an earth fault; it is no additional protection for a person who "
        "touches a live part.",
        ("tripping-type", "rated-current", "poles"),
    ),
    "competent-person-scheme": Term(
        "Competent person scheme",
        "A body that the government has authorised to register installers. One who is "
        "registered may tell building control through it, after the work.",
        ("building-control",),
    ),
    "connected-load": Term(
        "Load, connected load",
        "The power that a thing takes when it works as hard as it can, in watts. A "
        "circuit's connected load is that of everything on it together.",
        ("diversity",),
    ),
    "contactor": Term(
        "Contactor",
        "A switch worked by a coil, on the orders of a clock, a meter or a control. "
        "It is no isolator: what it feeds may come on by itself.",
        ("off-peak", "isolation"),
    ),
    "cut-out": Term(
        "Cut-out, service head",
        "The sealed box where the street's cable ends, with the network's fuse in "
        "it. It belongs to the network and nobody else opens it.",
        ("network", "seal", "tails"),
    ),
    "device": Term(
        "Device",
        "Any one thing on a board: a switch, a circuit-breaker, an RCD, a fuse, a "
        "blank.",
        ("board", "module"),
    ),
    "distribution-circuit": Term(
        "Distribution circuit",
        "A circuit that feeds another board instead of points; also called a submain.",
        ("sub-board", "circuit"),
    ),
    "diversity": Term(
        "Diversity",
        "The allowance for things not all running at once. It makes the demand used "
        "to judge a supply smaller than the sum of all loads.",
        ("connected-load", "rated-current"),
    ),
    "earth-electrode": Term(
        "Earth electrode",
        "A rod, plate or other metal in the ground that gives a home its own earth.",
        ("tt", "earthing-conductor"),
    ),
    "earth-fault": Term(
        "Earth fault",
        "Current going from the line to earth: through a protective conductor, metal "
        "that someone may touch, or a person.",
        ("protective-conductor", "rcd", "zs"),
    ),
    "earthing-arrangement": Term(
        "Earthing arrangement",
        "How the home's earth is joined to the supply: TN-C-S, TN-S or TT. Take it "
        "from a document or from the network, never from how it looks.",
        ("tn-c-s", "tn-s", "tt"),
    ),
    "earthing-conductor": Term(
        "Earthing conductor",
        "The green and yellow wire from the main earthing terminal to the means of "
        "earthing: the network's terminal, a cable's sheath or an earth electrode.",
        ("earthing-terminal", "earthing-arrangement"),
    ),
    "earthing-terminal": Term(
        "Main earthing terminal",
        "The bar or block where the earthing conductor, the main bonding and the "
        "circuits' protective conductors meet. It may be inside the board.",
        ("earthing-conductor", "main-bonding", "protective-conductor"),
    ),
    "extra-low-voltage": Term(
        "Extra-low voltage",
        "Not above 50 V a.c. or 120 V d.c., as for bells, network cables and many "
        "spotlights. It comes from a transformer or driver that has a mains side.",
        ("point",),
    ),
    "fused-connection-unit": Term(
        "Fused connection unit",
        "A plate with a fuse of its own that joins one appliance or a spur, often "
        "with a switch. Everything behind it depends on that fuse.",
        ("spur", "cartridge-fuse"),
    ),
    "grade": Term(
        "Grade, how it is known",
        "How sure it is that a point is on a circuit, from not known, through what a "
        "label or a person says, to seen once, then confirmed by a second look or by "
        "elimination (no two ways would explain the rounds as well), and stated in an "
        "electrician's document.",
        ("tie",),
    ),
    "installation-method": Term(
        "Installation method",
        "How a cable is laid, by the number or letter of the wiring rules: clipped "
        "to a wall, in conduit, under insulation. The better it sheds heat, the more "
        "current it can carry.",
        ("overload", "rated-current"),
    ),
    "isolation": Term(
        "Isolation",
        "Cutting a part off from every supply and keeping it off, so that it can be "
        "worked on. A record only says what to switch off; proof is made on the day, "
        "at the place of work, with a proper tester.",
        ("isolator", "poles", "source"),
    ),
    "isolator": Term(
        "Isolator",
        "A switch made to cut off what is behind it and to show that it is open. The "
        "side that feeds it stays live.",
        ("isolation", "main-switch"),
    ),
    "label-as-found": Term(
        "Label as found",
        "The very words written beside a way when it was first recorded, right or "
        "wrong. Each change of them is kept in the change log.",
        ("way", "grade"),
    ),
    "line": Term(
        "Line",
        "The conductor at mains voltage, brown now and red in older wiring; also "
        "called phase or, at home, live. The colour is a hint, not proof.",
        ("neutral", "phase"),
    ),
    "live": Term(
        "Live",
        "Having a voltage on it, or able to. In the trade's words line and neutral "
        "are both live conductors, since both carry current in use.",
        ("line", "neutral"),
    ),
    "looped-supply": Term(
        "Looped supply",
        "Two homes fed from one service cable, the second through the first one's "
        "cut-out. The network has to know before a charger or a heat pump is added.",
        ("cut-out", "network"),
    ),
    "main-bonding": Term(
        "Main bonding",
        "Green and yellow wires that join gas, water and oil pipes and metal frames "
        "to the main earthing terminal, so that in a fault they stand at nearly one "
        "voltage.",
        ("earthing-terminal",),
    ),
    "main-switch": Term(
        "Main switch",
        "The switch meant to cut off all of a board, in a home in both poles. With it "
        "off the tails and its own incoming terminals stay live, and a home may have "
        "more than one.",
        ("board", "poles", "tails"),
    ),
    "meter": Term(
        "Meter",
        "The sealed thing that counts the electricity used. It is not yours; one with "
        "a switched output feeds an off-peak supply too.",
        ("meter-operator", "off-peak"),
    ),
    "meter-operator": Term(
        "Meter operator",
        "Whoever fits and looks after the meter for the supplier on the bill. Ask "
        "the supplier.",
        ("meter", "network"),
    ),
    "module": Term(
        "Module",
        "The unit of width on a board, about 18 mm: a circuit-breaker takes one, "
        "most main switches and RCDs take two.",
        ("device", "board"),
    ),
    "mpan": Term(
        "MPAN",
        "The 13-digit number of the supply in Great Britain, printed on the bill; "
        "Northern Ireland uses another form. It is not the number of the meter, and "
        "it is private.",
        ("meter", "network"),
    ),
    "network": Term(
        "Network",
        "The company that owns the cables in the street and the cut-out; not the "
        "supplier that sends the bill. Ring it about a power cut or a danger at the "
        "cut-out.",
        ("cut-out", "meter-operator", "ownership-boundary"),
    ),
    "neutral": Term(
        "Neutral",
        "The conductor by which the current returns, blue now and black in older "
        "wiring. Most ways do not switch it, so it stays joined with a way off.",
        ("line", "poles", "borrowed-neutral"),
    ),
    "odd-one-out": Term(
        "Odd one out",
        "A point that is not on the circuit on which its room or floor would lead "
        "one to expect it. It may be right; it is shown because it surprises.",
        ("point", "circuit"),
    ),
    "off-peak": Term(
        "Off-peak",
        "A supply that comes on at set hours only, mostly at night, for storage "
        "heaters and hot water. No voltage by day says nothing about the night.",
        ("contactor", "meter"),
    ),
    "overload": Term(
        "Overload",
        "More current than a cable can carry for long, in a circuit with nothing "
        "wrong but too much on it. The cable warms up over minutes or hours.",
        ("circuit-breaker", "short-circuit", "rated-current"),
    ),
    "ownership-boundary": Term(
        "Ownership boundary",
        "Any place along the supply where the owner changes, such as the meter's "
        "outgoing terminals. It decides who may open what.",
        ("network", "meter-operator"),
    ),
    "phase": Term(
        "Phase",
        "One of the three lines, L1, L2 and L3, that the street's cable carries. Most "
        "homes have one; between two of them there are 400 V.",
        ("line",),
    ),
    "point": Term(
        "Point",
        "Anything that a circuit feeds or passes through in a room: a socket-outlet, "
        "a light, a switch, a shower, a boiler, a junction box.",
        ("way", "circuit", "tie"),
    ),
    "poles": Term(
        "Poles",
        "The conductors that a device opens. Line only, or single-pole, leaves the "
        "neutral joined; line and neutral, or double-pole, opens both.",
        ("line", "neutral", "isolation"),
    ),
    "prospective-fault-current": Term(
        "Prospective fault current",
        "The largest current that a fault at a place could draw, in kA. The devices "
        "there must be able to break it.",
        ("breaking-capacity", "short-circuit"),
    ),
    "protective-conductor": Term(
        "Protective conductor (cpc)",
        "The earth wire that goes with a circuit, bare or green and yellow. It "
        "carries the current of an earth fault long enough for the device to open.",
        ("earth-fault", "earthing-terminal"),
    ),
    "radial": Term(
        "Radial",
        "A circuit that goes from point to point and ends at the last, with or "
        "without branches.",
        ("circuit", "ring-final"),
    ),
    "rated-current": Term(
        "Rated current",
        "The current that a device is made to carry all the time, in amperes, as "
        "printed on it. It does not open the moment that this is exceeded.",
        ("overload", "tripping-type"),
    ),
    "rcbo": Term(
        "RCBO",
        "A circuit-breaker and an RCD in one device, for one circuit. Some break the "
        "line only, some both poles.",
        ("circuit-breaker", "rcd", "poles"),
    ),
    "rcd": Term(
        "RCD",
        "Residual current device: compares what goes out by the line with what comes "
        "back by the neutral, and opens when some is missing. It does nothing "
        "against overload, or against a shock between line and neutral.",
        ("residual-current", "rcd-types", "rcbo"),
    ),
    "rcd-types": Term(
        "RCD types AC, A, F and B",
        "Which forms of leakage an RCD senses: AC only plain alternating, A also "
        "pulsing direct, F also mixed frequencies, B also smooth direct current. The "
        "type is printed as letters or as small wave signs.",
        ("rcd", "time-delayed"),
    ),
    "record-fault": Term(
        "Record fault",
        "Something in the record that cannot be so or is not finished, such as a "
        "board that feeds itself. It is a fault of the notes, not of the wiring.",
        ("chain", "tie"),
    ),
    "residual-current": Term(
        "Rated residual current, IΔn",
        "The leakage at which an RCD must open, in mA. 30 mA or less is for "
        "protection of people; 100 mA and more is for fire or for a whole home.",
        ("rcd", "time-delayed"),
    ),
    "rewirable-fuse": Term(
        "Rewirable fuse",
        "A pull-out carrier with a bare wire that melts, to BS 3036. The wire may have "
        "been changed for the wrong one, and it is slow on a small overload.",
        ("cartridge-fuse", "overload"),
    ),
    "ring-final": Term(
        "Ring final",
        "A socket circuit whose cable goes round all its points and comes back to "
        "the same way, so that each is fed from two sides. Usual at 32 A or 30 A.",
        ("spur", "radial"),
    ),
    "seal": Term(
        "Seal",
        "A wire, tag or plug that shows that something has not been opened by anyone "
        "but its owner. A missing one is reported; leave it as it is.",
        ("cut-out", "meter"),
    ),
    "service-connector-block": Term(
        "Service connector block",
        "A closed block that splits one pair of tails into several. Behind it there "
        "may be more than one main switch.",
        ("tails", "main-switch"),
    ),
    "short-circuit": Term(
        "Short circuit",
        "Line and neutral, or two lines, touching with almost nothing between. The "
        "current is very large and has to be broken at once.",
        ("prospective-fault-current", "overload", "earth-fault"),
    ),
    "source": Term(
        "Source",
        "Anything that can feed the home: the network, solar panels, a battery, a "
        "generator, a vehicle, next door. One that nobody has answered for counts as "
        "there.",
        ("backup", "isolation"),
    ),
    "spare": Term(
        "Spare",
        "A way with no cable on it, as someone has seen or a document says. A way on "
        "which nothing was found is not spare: what it feeds is not known.",
        ("way",),
    ),
    "spd": Term(
        "Surge protective device, SPD",
        "Leads short, sharp peaks of voltage to earth, as from lightning nearby. Its "
        "window or light tells when it is worn out.",
        ("device",),
    ),
    "special-location": Term(
        "Special location",
        "Where more work has to be told: close to a bath or shower, or in a room with "
        "a pool or sauna. How far it reaches differs between England and Wales.",
        ("building-control",),
    ),
    "split-load": Term(
        "Split load",
        "A board whose ways are in two or more groups, each behind an RCD or a switch "
        "of its own.",
        ("board", "rcd"),
    ),
    "spur": Term(
        "Spur",
        "A branch off a ring or a radial. One without a fuse may feed one single or "
        "one double socket-outlet; for more it starts at a fused connection unit.",
        ("ring-final", "fused-connection-unit"),
    ),
    "sub-board": Term(
        "Sub-board",
        "A board fed from a way of another, as in a garage. With its own main switch "
        "off, the cable that comes into it stays live.",
        ("board", "distribution-circuit"),
    ),
    "switch-fuse": Term(
        "Switch-fuse",
        "A switch and a fuse in one box, for long tails, for another board or for "
        "one large load. The main switch of the board may not cut off what it feeds.",
        ("main-switch", "tails"),
    ),
    "tails": Term(
        "Tails",
        "The single cables from cut-out to meter and from meter to board. Those "
        "after the meter are yours, but only the network's fuse guards them.",
        ("cut-out", "meter", "ownership-boundary"),
    ),
    "tie": Term(
        "Tie",
        "The note that a point belongs to a circuit: that it is fed from there, that "
        "its neutral returns there, or that its wires are in the same box. Each tie "
        "says how it is known.",
        ("point", "circuit", "grade"),
    ),
    "time-delayed": Term(
        "Time-delayed, S",
        "An RCD that waits a moment, so that one further down opens first. It is "
        "marked S, and is no substitute for one that opens at once.",
        ("rcd", "residual-current"),
    ),
    "tn-c-s": Term(
        "TN-C-S",
        "The network's neutral and earth are one conductor in the street and part at "
        "the cut-out; also called PME. If that conductor breaks, earthed metal may "
        "become live.",
        ("earthing-arrangement", "main-bonding"),
    ),
    "tn-s": Term(
        "TN-S",
        "The network gives an earth that is kept apart from the neutral, mostly as "
        "the metal sheath of its cable.",
        ("earthing-arrangement",),
    ),
    "tripping-type": Term(
        "Type B, C or D",
        "How large a sudden current opens a circuit-breaker at once: B at 3 to 5 "
        "times its rated current, C at 5 to 10, D at 10 to 20. Older ones say Type 1 "
        "to 4.",
        ("circuit-breaker", "rated-current"),
    ),
    "tt": Term(
        "TT",
        "The home has its own earth electrode and none from the network. Protection "
        "then leans on RCDs, and isolation on switches that open both poles.",
        ("earth-electrode", "rcd", "poles"),
    ),
    "two-way-switching": Term(
        "Two-way switching",
        "One light worked from two places. The wires between the switches may join "
        "the circuits of two floors.",
        ("borrowed-neutral",),
    ),
    "unknown": Term(
        "Not known",
        "An answer like any other: nobody has found out yet. It never counts as no, "
        "and it is shown wherever it matters.",
        ("grade",),
    ),
    "verifier": Term(
        "Verifier",
        "Whoever grants building warrants in Scotland and accepts the work as done: "
        "usually the council.",
        ("building-warrant",),
    ),
    "voltage-drop": Term(
        "Voltage drop",
        "The voltage lost along a cable when current flows. It grows with length and "
        "current and shrinks with a thicker conductor.",
        ("circuit", "connected-load"),
    ),
    "way": Term(
        "Way",
        "A position on a board that feeds something or could: a circuit-breaker, an "
        "RCBO or a fuse, with its number.",
        ("board", "circuit", "spare"),
    ),
    "ze": Term(
        "Ze",
        "External loop impedance: the resistance, more exactly impedance, in ohms of "
        "the path of an earth fault outside the home. It is measured or asked from "
        "the network.",
        ("zs", "earthing-arrangement"),
    ),
    "zs": Term(
        "Zs",
        "Loop impedance of a whole circuit: Ze and the circuit's line and protective "
        "conductors together. The lower it is, the faster a device opens on an earth "
        "fault.",
        ("ze", "earth-fault"),
    ),
}
