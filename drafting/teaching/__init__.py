"""The draft that teaches itself: the recorded construction as steps, figures and a class sheet.

Stands beside `drawing`, whose display list and lettering it uses, and under `export`, which
writes what it makes. Knows recorded steps, places and lines, and no garment's own rules.
"""
