"""What the shop computes: one module a calculation, each with one object named ``calculator``.

Standard library only: the same files run in a bare interpreter and in the browser.
"""
