"""Picking the best of a larger lot, and how many more than needed are worth buying."""

from __future__ import annotations

from math import comb, erf, exp, lgamma, log, pi, sqrt

_REACH = 9.0  # standard deviations either way; beyond, a normal density is below 1e-18
_STEPS = 1800  # of Simpson's rule; the error is below 1e-9
_MOST_SPARES = 4  # times what is needed: beyond, a lot is not worth sorting


def normal_order_mean(rank: int, size: int) -> float:
    """Return the expected value of the ``rank``-th smallest of ``size`` draws, in standard deviations from the mean.

    rank : 1 for the smallest [-]
    size : how many are drawn [-]
    Returns the mean place of that draw [-], in standard deviations from the middle.

    Valid for: normal spread, independent draws; ValueError unless 1 <= rank <= size.
    Source: order statistics, size! / ((rank-1)! (size-rank)!) ∫ x Φ^(rank-1) (1-Φ)^(size-rank) φ dx.

    >>> round(normal_order_mean(10, 10), 4), round(normal_order_mean(1, 2), 4)
    (1.5388, -0.5642)
    """
    if not 1 <= rank <= size:
        raise ValueError(f"there is no number {rank} of {size}")
    log_count = lgamma(size + 1) - lgamma(rank) - lgamma(size - rank + 1)
    step = 2 * _REACH / _STEPS
    total = 0.0
    for n in range(_STEPS + 1):
        x = -_REACH + n * step
        below, above = (1 + erf(x / sqrt(2))) / 2, (1 - erf(x / sqrt(2))) / 2
        if below > 0 and above > 0:
            weight = 1 if n in (0, _STEPS) else 4 if n % 2 else 2
            density = exp(log_count + (rank - 1) * log(below) + (size - rank) * log(above) - x * x / 2)
            total += weight * x * density
    return total * step / 3 / sqrt(2 * pi)


def uniform_order_mean_ratio(rank: int, size: int) -> float:
    """Expected place of the ``rank``-th smallest of ``size`` draws from an even band, 0 its low end, 1 its high end.

    rank : 1 for the smallest [-]
    size : how many are drawn [-]

    Valid for: even spread, independent draws; ValueError unless 1 <= rank <= size.
    Source: order statistics, rank / (size + 1).

    >>> uniform_order_mean_ratio(3, 3)
    0.75
    """
    if not 1 <= rank <= size:
        raise ValueError(f"there is no number {rank} of {size}")
    return rank / (size + 1)


def worst_of_best_um(mean_um: float, deviation_um: float, needed: int, bought: int) -> float:
    """Expected clearance of the loosest of the ``needed`` tightest out of ``bought``.

    mean_um : mean clearance of the lot [µm]
    deviation_um : its standard deviation [µm]
    needed : how many are used [-]
    bought : how many there are to pick from [-]

    Valid for: normal spread; 1 <= needed <= bought.
    Source: order statistics, see normal_order_mean.

    >>> round(worst_of_best_um(10.0, 3.0, 3, 3), 2), round(worst_of_best_um(10.0, 3.0, 3, 6), 2)
    (12.54, 9.4)
    """
    return mean_um + deviation_um * normal_order_mean(needed, bought)


def enough_ratio(needed: int, bought: int, rough_ratio: float) -> float:
    """Chance that a lot holds enough good pieces.

    needed : good pieces wanted [-]
    bought : pieces in the lot [-]
    rough_ratio : share of pieces that are not good [-]

    Valid for: pieces that fail independently; a whole bad batch is another matter.
    Source: binomial distribution.

    >>> round(enough_ratio(12, 15, 0.1), 3)
    0.944
    """
    good = 1 - rough_ratio
    return sum(comb(bought, k) * good**k * rough_ratio ** (bought - k) for k in range(needed, bought + 1))


def spares_for(needed: int, rough_ratio: float, wanted_ratio: float) -> int | None:
    """Return the fewest spares with which the chance of enough good pieces is as wanted; None where too many would be.

    needed : good pieces wanted [-]
    rough_ratio : share of pieces that are not good [-]
    wanted_ratio : wanted chance [-]

    Valid for: as enough_ratio; up to four times what is needed.
    Source: binomial distribution.

    >>> spares_for(144, 0.1, 0.95), spares_for(12, 0.1, 0.95)
    (23, 4)
    """
    tries = range(_MOST_SPARES * needed + 1)
    return next((n for n in tries if enough_ratio(needed, needed + n, rough_ratio) >= wanted_ratio), None)


def spares_worth(needed: int, rough_ratio: float, price_minor: float, short_minor: float) -> int:
    """Return the number of spares at which their price and the expected cost of running short are least together.

    needed : good pieces wanted [-]
    rough_ratio : share of pieces that are not good [-]
    price_minor : price of one more piece, in minor units [1/100]
    short_minor : cost of running short: another order's shipping and the days lost, in minor units [1/100]

    Valid for: as enough_ratio; up to four times what is needed; of equal ones the fewest.
    Source: expected cost, price · n + short · (1 - chance of enough).

    >>> spares_worth(12, 0.1, 190, 2000), spares_worth(12, 0.1, 190, 0)
    (3, 0)
    """
    costs_minor = [
        price_minor * n + short_minor * (1 - enough_ratio(needed, needed + n, rough_ratio))
        for n in range(_MOST_SPARES * needed + 1)
    ]
    return costs_minor.index(min(costs_minor))
