"""Times, boiled down."""

import statistics
from collections.abc import Sequence


def spread(times: Sequence[float]) -> dict[str, float]:
    """Median, 95th of a hundred, least and most, and of how many; to a tenth."""
    ordered = sorted(times)
    return {
        "p50": round(statistics.median(ordered), 1),
        "p95": round(ordered[min(len(ordered) - 1, int(len(ordered) * 0.95))], 1),
        "least": round(ordered[0], 1),
        "most": round(ordered[-1], 1),
        "count": len(ordered),
    }
