"""A build sheet's settings as CSV."""

from decimal import Decimal

from calculators.learning.class_table import csv_text

from .sheet_lines import Line, OrderSheet

HEADS = (
    "Station", "Setting", "Planned", "Unit", "Shown", "Inch", "Low", "High", "Gauge", "Measured",
    "Verdict", "Initials",
)  # fmt: skip


def settings_csv(sheet: OrderSheet) -> bytes:
    """The settings in UTF-8: a row each, numbers at full precision, heads first."""
    rows = [[_text(cell) for cell in cells(line)] for line in sheet.all_lines()]
    return csv_text([HEADS, *rows]).encode()


def cells(line: Line) -> tuple[str | float | None, ...]:
    """A line in the order of ``HEADS``; figures for people have a true minus sign."""
    one = line.setting
    measured = line.measured if line.measured is not None else line.record or None
    return (
        line.station, one.label, line.planned, line.unit, minus(one.shown), minus(one.inch),
        line.limit("low"), line.limit("high"), line.gauge, measured, line.verdict, line.initials,
    )  # fmt: skip


def minus(text: str) -> str:
    """A figure in words with a true minus sign: no spreadsheet takes it for a formula."""
    return f"−{text[1:]}" if text.startswith("-") else text


def number_text(value: float) -> str:
    """A number with every digit it has, and without an exponent."""
    text = repr(value)
    return f"{Decimal(text):f}" if "e" in text else text


def _text(cell: str | float | None) -> str:
    return "" if cell is None else cell if isinstance(cell, str) else number_text(cell)
