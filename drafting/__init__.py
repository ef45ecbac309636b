"""The craft: from a body's measures to a pattern that can be cut and sewn.

Knows no HTTP and no pydantic. Lengths are centimetres, angles degrees, Y grows upward.
"""

DRAFTING_VERSION = "1.0.0"
"""Changes with every change of a drawn line, so that clients can tell two drafts apart."""
