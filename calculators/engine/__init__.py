"""The machinery the calculators share: declaration, formulas, units, the door, drawings.

Imports point one way: declaration and formula know nothing of the rest; compute reads both;
door reads compute; markup and drawing only turn answers into text.
"""
