"""Skirts: a chapter of several kinds that share their pages on waist, lining and assembly.

Source: each page names its own.
"""
