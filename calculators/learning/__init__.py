"""Exercises, their marking, and assignments: the same in the browser and on the command line.

Every question is drawn from a seed, so that it can be drawn again and marked again anywhere.
"""
