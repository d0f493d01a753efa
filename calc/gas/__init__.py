"""Trapped gas: one module a law."""
