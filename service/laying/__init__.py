"""Lay plans: the request, the work, the answer's shape."""
