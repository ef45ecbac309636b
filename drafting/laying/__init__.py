"""Pieces on cloth."""
