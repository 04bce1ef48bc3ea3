"""How fast it is, as ratios measured in one run on one machine.

``python -m tests.bench`` prints a table.  Each ratio sets two things beside each other
that are measured in turn; no time of its own is ever asked for.
"""
