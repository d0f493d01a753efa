"""The build: each module is one step, run in the order that build.py gives.

environment, places and stamp run before the environment exists and import only the standard library.
"""
