"""The sections of a pack, each one module with ``section``."""
