"""Codes that the record's fields may hold, each with its words.

Codes are stored and never change; words may be bettered.  *Not known* is a choice in
every list, so that a blank never reads as "no".
"""

from __future__ import annotations

NOT_KNOWN = "Not known"

YES_NO = {"yes": "Yes", "no": "No", "unknown": NOT_KNOWN}
NATIONS = {
    "england": "England",
    "wales": "Wales",
    "scotland": "Scotland",
    "northern_ireland": "Northern Ireland",
    "unknown": "Not said yet",
}
DWELLINGS = {
    "house": "House",
    "bungalow": "Bungalow",
    "flat": "Flat",
    "maisonette": "Maisonette",
    "other": "Something else",
    "unknown": "Not said yet",
}
TENURES = {
    "owner": "Lived in by its owner",
    "let": "Let to tenants",
    "rents": "I rent it",
    "other": "Something else",
    "unknown": "Not said yet",
}
STOREYS = {
    "cellar": "Cellar or basement",
    "ground": "Ground floor",
    "first": "First floor",
    "second": "Second floor",
    "third": "Third floor or higher",
    "loft": "Loft or roof",
    "outside": "Outside",
    "unknown": NOT_KNOWN,
}
ROOM_KINDS = {
    "kitchen": "Kitchen",
    "living": "Living room",
    "dining": "Dining room",
    "bedroom": "Bedroom",
    "bedroom_with_shower": "Bedroom with a shower",
    "bathroom": "Bathroom",
    "shower_room": "Shower room",
    "toilet": "Toilet",
    "hall": "Hall",
    "landing": "Landing",
    "stairs": "Stairs",
    "utility": "Utility room",
    "office": "Office or study",
    "cupboard": "Cupboard",
    "loft": "Loft",
    "cellar": "Cellar",
    "conservatory": "Conservatory",
    "porch": "Porch",
    "garage": "Garage",
    "outbuilding": "Outbuilding",
    "outside": "Garden or outside wall",
    "common": "Shared part of the building",
    "other": "Something else",
    "unknown": NOT_KNOWN,
}
LOOKED_AT = {
    "not_yet": "Not yet",
    "part": "In part",
    "all": "All of it",
    "no_access": "Could not get in",
}
SOURCE_KINDS = {
    "network": "The network in the street",
    "solar": "Solar panels",
    "battery": "Battery",
    "generator": "Generator or its inlet",
    "vehicle": "Vehicle that can feed the home",
    "neighbour": "Next door",
    "landlord": "Landlord or the building's shared supply",
    "other": "Something else",
}
WHEN = {
    "always": "All the time",
    "off_peak": "Off-peak hours only",
    "daylight": "In daylight only",
    "backup": "When the network is off",
    "controlled": "When something switches it on",
    "unknown": NOT_KNOWN,
}
OWNERS = {
    "network": "Network",
    "meter_operator": "Meter operator",
    "consumer": "Yours",
    "landlord": "Landlord or building",
    "shared": "Shared",
    "unknown": "Whose is not known",
}
BASES = {
    "unknown": NOT_KNOWN,
    "printed": "Printed on it",
    "seen": "Seen",
    "told": "Told, or on paper",
    "document": "In an electrician's document",
}
SUPPLY_BASES = {
    "unknown": NOT_KNOWN,
    "measured": "Measured, from a document",
    "enquiry": "Told by the network",
    "typical": "The usual figure for this kind of supply",
}
EARTHINGS = {
    "tn_c_s": "TN-C-S",
    "tn_s": "TN-S",
    "tt": "TT, an earth rod or plate",
    "unknown": NOT_KNOWN,
}
BOARD_EARTHINGS = {"supply": "From the supply, as the home", **EARTHINGS}
PHASES = {"single": "Single-phase", "three": "Three-phase", "unknown": NOT_KNOWN}
PHASE = {"l1": "L1", "l2": "L2", "l3": "L3", "all": "All three", "unknown": NOT_KNOWN}
ENCLOSURES = {
    "metal": "Metal",
    "plastic": "Plastic",
    "wood": "Wood, or open at the back",
    "other": "Something else",
    "unknown": NOT_KNOWN,
}
CABLE_ENTRIES = {
    "underground": "Underground",
    "overhead": "Overhead",
    "building": "From the building's own riser",
    "unknown": NOT_KNOWN,
}
SERVICES = {
    "gas": "Gas",
    "water": "Water",
    "oil": "Oil",
    "structure": "Metal structure",
    "other": "Something else",
    "unknown": NOT_KNOWN,
}
CONDITIONS = {
    "sound": "Nothing odd seen",
    "hot": "Hot, buzzing, scorched or smelling",
    "damaged": "Broken, cracked or open",
    "wet": "Wet",
    "leaking": "Leaking pitch or oil",
    "loose": "Loose or hanging",
    "old_cloth": "Old rubber or cloth covered cable",
    "asbestos": "May hold asbestos",
    "unknown": "Not looked at",
}
POINT_CONDITIONS = {
    "sound": "Nothing odd seen",
    "hot": "Hot, buzzing, scorched or smelling",
    "damaged": "Broken, cracked or open",
    "wet": "Wet",
    "loose": "Loose",
    "unknown": NOT_KNOWN,
}
PAPERS = {
    "certificate": "An electrician's certificate",
    "none": "Looked for, none found",
    "unknown": NOT_KNOWN,
}
CURVES = {
    "B": "B",
    "C": "C",
    "D": "D",
    "1": "Type 1",
    "2": "Type 2",
    "3": "Type 3",
    "4": "Type 4",
    "unknown": NOT_KNOWN,
}
RCD_TYPES = {"AC": "AC", "A": "A", "F": "F", "B": "B", "unknown": NOT_KNOWN}
POLES = {
    "line": "Line only",
    "line_and_neutral": "Line and neutral",
    "three_line": "Three lines",
    "three_line_and_neutral": "Three lines and neutral",
    "unknown": NOT_KNOWN,
}
USES = {"in_use": "In use", "spare": "Spare, no cable seen", "unknown": NOT_KNOWN}
CIRCUIT_USES = {
    "sockets": "Sockets",
    "lighting": "Lighting",
    "cooker": "Cooker",
    "shower": "Shower or other instant water heater",
    "water_heating": "Water heating with a tank",
    "space_heating": "Space heating",
    "storage_heating": "Storage heating",
    "vehicle": "Vehicle charging",
    "heat_pump": "Heat pump",
    "alarm": "Alarms",
    "generation": "Solar or other generation",
    "battery": "Battery",
    "fixed": "Other fixed equipment",
    "distribution": "Feeds another board",
    "other": "Something else",
    "unknown": NOT_KNOWN,
}
ARRANGEMENTS = {
    "ring": "Ring final",
    "radial": "Radial",
    "distribution": "Distribution, to a board",
    "unknown": NOT_KNOWN,
}
CABLES = {
    "twin_and_earth": "Flat twin and earth, PVC",
    "twin_no_earth": "Flat twin without earth, PVC",
    "imperial_twin_and_earth": "Flat twin and earth, imperial strands",
    "singles_in_conduit": "Single cores in conduit or trunking",
    "armoured": "Steel wire armoured",
    "flex": "Flexible cord",
    "mineral": "Mineral insulated",
    "rubber": "Rubber or cloth insulated",
    "lead": "Lead sheathed",
    "other": "Something else",
    "unknown": NOT_KNOWN,
}
METHODS = {
    "A": "A: in conduit in an insulated wall",
    "B": "B: in conduit or trunking on a wall",
    "C": "C: clipped to a surface, or in plaster",
    "D": "D: in the ground",
    "E": "E: in free air",
    "100": "100: above a ceiling, under thin insulation",
    "101": "101: above a ceiling, under thick insulation",
    "102": "102: in a wall with insulation, touching the inside",
    "103": "103: in a wall with insulation, touching nothing",
    "unknown": NOT_KNOWN,
}
COLOURS = {
    "old": "Red and black",
    "harmonised": "Brown and blue",
    "both": "Both",
    "unknown": NOT_KNOWN,
}
CONNECTIONS = {
    "in_ring": "In the ring",
    "on_radial": "On the radial",
    "spur": "On a spur without a fuse",
    "spur_off_spur": "On a spur off a spur",
    "fused_spur": "Behind a fused connection unit",
    "via_switch": "Behind a local switch",
    "unknown": NOT_KNOWN,
}
LOOKED_BEHIND = {
    "yes": "Yes",
    "no": "No",
    "no_access": "Could not get at it",
    "unknown": NOT_KNOWN,
}
CURRENT_KINDS = {
    "mains": "Mains",
    "extra_low": "Extra-low voltage",
    "dc": "Direct current",
    "unknown": NOT_KNOWN,
}
CARE = {
    "medical": "Medical equipment",
    "care_alarm": "Care or panic alarm",
    "stairlift": "Stairlift or hoist",
    "alarm": "Smoke, fire or burglar alarm",
    "router": "Router, phone or this computer",
    "freezer": "Freezer",
    "fridge": "Fridge",
    "heating": "Heating or boiler",
    "water": "Water supply or sump pump",
    "livestock": "Livestock, fence or fish tank",
    "washing": "Washing machine or dryer",
    "work": "Work machine or computer",
    "other": "Something else",
}
TIE_ROLES = {
    "feeds": "Feeds it",
    "neutral": "Its neutral returns here",
    "present": "Its conductors are in the box too",
}
GRADES = {
    "0": "Not known",
    "1": "Label says so",
    "2": "Told, or on paper",
    "3": "Seen: went off and came back",
    "4": "Seen, confirmed by a second look or by elimination",
    "5": "In an electrician's document",
}
DAY_OR_NIGHT = {"day": "By day", "night": "By night, in off-peak hours"}
MANNERS = {
    "hand": "Chosen by hand",
    "one_at_a_time": "One at a time",
    "halving": "Halving",
    "self_checking": "Self-checking",
}
STAGES = {
    "planned": "Planned",
    "marking": "Under way",
    "done": "Ended, all put back on",
    "stopped": "Stopped early",
}
SEEN = {"dead": "No sign of life", "live": "Live", "not_looked": "Not looked"}
OFF_SEEN = {"dead": "Went dead", "live": "Stayed live", "not_looked": "Not looked"}
# In a first look nothing is switched off: nothing goes dead, nothing is put back.
FIRST_STAGES = {**STAGES, "done": "All looked at"}
FIRST_SEEN = {"live": "Works", "dead": "No sign of life", "not_looked": "Not looked"}
HOW_SEEN = {
    "lamp": "A lamp",
    "socket_tester": "A plug-in socket tester",
    "thing": "The thing itself",
    "two_pole": "A two-pole voltage detector",
    "other": "Something else",
    "unknown": NOT_KNOWN,
}
WORK_STATES = {
    "planned": "Planned",
    "done": "Done",
    "given_up": "Given up",
    "unknown": NOT_KNOWN,
}
WORKERS = {
    "self": "Ourselves",
    "electrician": "An electrician",
    "registered": "An electrician registered with a scheme",
    "builder": "A builder, plumber or fitter",
    "network": "The network operator",
    "meter_operator": "The meter operator",
    "earlier": "Someone before us",
    "other": "Someone else",
    "unknown": NOT_KNOWN,
}
TOLD = {
    "yes": "Yes",
    "no": "Not yet",
    "not_needed": "Nobody had to be told",
    "unknown": NOT_KNOWN,
}
PAPER_KINDS = {
    "installation_certificate": "Electrical Installation Certificate",
    "minor_works": "Minor Works Certificate",
    "condition_report": "Condition report",
    "compliance": "Building Regulations compliance certificate",
    "completion": "Completion certificate",
    "regularisation": "Regularisation certificate",
    "network_letter": "Letter from the network or the supplier",
    "manual": "Maker's instructions",
    "invoice": "Invoice or quotation",
    "plan": "Plan or sketch",
    "other": "Something else",
    "unknown": NOT_KNOWN,
}
MEDIA_TYPES = {
    "image/jpeg": "JPEG picture",
    "image/png": "PNG picture",
    "image/webp": "WebP picture",
    "image/heic": "HEIC picture",
    "application/pdf": "PDF",
}
MEASURED = {"exact": "As written", "over": "More than that", "under": "Less than that"}
POLARITY = {"correct": "Correct", "wrong": "Not correct", "unknown": "Not written down"}
WORKED = {
    "worked": "It worked",
    "failed": "It did not work",
    "done": "Done",
    "unknown": NOT_KNOWN,
}
# What the report of an inspection asks for.
REPORTED = {
    "in_order": "The report asks for nothing to be put right",
    "put_right": "The report asks for something to be put right",
}
OUTCOMES = {**WORKED, **REPORTED}
REMINDER_KINDS = {
    "rcd_button": "Press the test button",
    "inspection": "Have the installation inspected",
    "alarm_test": "Test the alarm",
    "alarm_replace": "Replace the alarm",
    "own": "Something of your own",
}
TIME_UNITS = {"day": "Days", "week": "Weeks", "month": "Months", "year": "Years"}
REMINDER_STATES = {"on": "On", "off": "Off"}
MOVED = {
    "rcd": "RCD",
    "breaker": "Fuse or circuit-breaker",
    "main_switch": "Main switch",
    "nothing": "Nothing on the board",
    "unknown": NOT_KNOWN,
}
TRIP_OUTCOMES = {
    "found": "Found, and unplugged or left off",
    "stays_on": "Stays on again, cause not found",
    "left_off": "Left off",
    "called": "Left off, and somebody called",
    "mended": "Mended",
    "unknown": NOT_KNOWN,
}
