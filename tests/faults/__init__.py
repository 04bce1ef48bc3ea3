"""Faults made on purpose: kills at random moments, and many who write at once.

``python -m tests.faults`` runs the whole; the suite runs the same with small numbers.
"""
