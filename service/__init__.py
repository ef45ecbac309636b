"""Tapeline over HTTP: decode an order, call the craft, encode the pattern. Nothing is stored."""
