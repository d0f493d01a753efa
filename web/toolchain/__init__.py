"""The build: each module is one step, run in the order that build.py gives. Only the standard library at import."""
