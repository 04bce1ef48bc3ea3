"""Drawings of the record: from its values to a scene, from a scene to SVG text.

Pure: nothing is read or written, and the same record gives the same bytes.
"""
