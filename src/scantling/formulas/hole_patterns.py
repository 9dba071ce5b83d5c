"""Holes made by hand that must meet the holes of what is screwed to them: does a screw go into every one?

The part is pushed and turned until it fits best; what is left between a hole and its screw must be within the play of
both. Holes of one sheet share the scale of their template, holes beyond a seam the shift of their tile.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from scantling.formulas.chains import SIGMAS

if TYPE_CHECKING:
    from numpy import float64
    from numpy.typing import NDArray

    Array = NDArray[float64]

SAMPLES = 10_000
_FINE_RATIO = 0.1  # of the samples: those of the largest play, on which its quantile hangs
_ROUNDS = 12  # of weighing anew: within a hundredth of the best place


@dataclass(frozen=True)
class Pattern:
    """The holes that one part is screwed to.

    points_mm : of the holes    play_mm : how far a screw may be off the middle, both sides together
    scatter_mm, mate_mm : ± of each hole in each direction, here and in the part; three standard deviations
    sheet : whose holes share the scale of one template    seam_mm : x beyond which they lie on another tile
    slot_mm, slot_turn_rad : how much longer than wide the holes are, and which way
    """

    points_mm: tuple[tuple[float, float], ...]
    play_mm: float
    scatter_mm: float
    mate_mm: float
    sheet: str = ""
    seam_mm: float | None = None
    slot_mm: float = 0.0
    slot_turn_rad: float = 0.0


def least_play_mm(errors_mm: Array, points_mm: Sequence[tuple[float, float]], enough_mm: float = 0.0) -> Array:
    """The play that a screw needs in the worst hole when the part is set as well as it goes.

    errors_mm : deviations of the holes against the part's, samples × holes × 2
    points_mm : where the holes lie
    enough_mm : a play that is less, and not among the largest tenth, need not be found any finer

    Returns one play for each sample, never too small: for three holes and more within about 1 % of the least.

    Valid for: errors that are small against the pattern.
    Source: exact for one and two holes; else the least greatest distance by weighing the worst ever more (Lawson 1961).

    >>> import numpy as np
    >>> least_play_mm(np.array([[[0.0, 0.0], [0.4, 0.0]]]), [(0, 0), (30, 0)]).tolist()
    [0.2]
    """
    import numpy as np

    at = np.array(points_mm, dtype=float)
    if len(at) == 1:
        return np.zeros(len(errors_mm))
    if len(at) == 2:
        along = (at[1] - at[0]) / np.hypot(*(at[1] - at[0]))
        pair: Array = np.abs((errors_mm[:, 1] - errors_mm[:, 0]) @ along) / 2
        return pair
    even = np.full(errors_mm.shape[:2], 1 / len(at))
    least: Array = _left_mm(errors_mm, at, even).max(axis=1)
    rest = np.flatnonzero(least > min(enough_mm, float(np.quantile(least, 1 - _FINE_RATIO))))
    errors, weights = errors_mm[rest], even[rest]
    for _ in range(_ROUNDS):
        left = _left_mm(errors, at, weights)
        least[rest] = np.minimum(least[rest], left.max(axis=1))
        weights = weights * np.maximum(left, 1e-12)
        weights /= weights.sum(axis=1, keepdims=True)
    return least


def going_together(
    patterns_mm: Sequence[Pattern],
    scale_ratio: float,
    seam_mm: float,
    wanted_ratio: float,
    seed: int,
    samples: int = SAMPLES,
) -> list[list[float]]:
    """The share of machines in which all patterns go together; of each pattern its own share and the play it wants.

    patterns_mm : of one machine
    scale_ratio : ± of the scale of a template, across and along; three standard deviations
    seam_mm : ± of the shift of a tile at a seam
    wanted_ratio : yield for which the wanted play is told
    seed : of the random stream
    samples : how many machines

    Returns ``[[all], shares, plays]``.

    Valid for: shares outside above about 100 / samples.
    Source: sampling; errors normal.

    >>> one = Pattern(((0.0, 0.0), (30.0, 0.0)), 0.3, 0.3, 0.0)
    >>> [[round(x, 1) for x in row] for row in going_together([one, one], 0.0, 0.0, 0.997, seed=1)]
    [[1.0], [1.0, 1.0], [0.2, 0.2]]
    """
    import numpy as np

    stream = np.random.default_rng(seed)
    scales = {
        name: stream.standard_normal((samples, 2)) / SIGMAS for name in dict.fromkeys(p.sheet for p in patterns_mm)
    }
    whole = np.ones(samples, dtype=bool)
    shares, plays = [], []
    for pattern in patterns_mm:
        at = np.array(pattern.points_mm, dtype=float)
        each = (pattern.scatter_mm**2 + pattern.mate_mm**2) ** 0.5 / SIGMAS
        errors = each * stream.standard_normal((samples, len(at), 2))
        errors += scale_ratio * scales[pattern.sheet][:, None, :] * (at - at.mean(axis=0))
        if pattern.seam_mm is not None:
            shift = seam_mm / SIGMAS * stream.standard_normal((samples, 1, 2))
            errors += shift * (at[:, 0] > pattern.seam_mm)[None, :, None]
        needed = least_play_mm(_slotted_mm(errors, pattern), pattern.points_mm, pattern.play_mm)
        kept = needed <= pattern.play_mm
        whole &= kept
        shares.append(float(kept.mean()))
        plays.append(float(np.quantile(needed, wanted_ratio)))
    return [[float(whole.mean())], shares, plays]


def _left_mm(errors: Array, at: Array, weights: Array) -> Array:
    """What is left of the errors after the weighted best move and turn of the part."""
    import numpy as np

    middle = weights @ at
    move = np.einsum("sh,shk->sk", weights, errors)
    arm = at[None, :, :] - middle[:, None, :]
    rest = errors - move[:, None, :]
    across = np.einsum("sh,sh->s", weights, arm[..., 0] * rest[..., 1] - arm[..., 1] * rest[..., 0])
    turn = across / np.maximum(np.einsum("sh,sh->s", weights, (arm**2).sum(axis=2)), 1e-12)
    x = rest[..., 0] + turn[:, None] * arm[..., 1]
    y = rest[..., 1] - turn[:, None] * arm[..., 0]
    left: Array = np.hypot(x, y)
    return left


def _slotted_mm(errors: Array, pattern: Pattern) -> Array:
    """Errors with what slots take up along their length."""
    import numpy as np

    if not pattern.slot_mm:
        return errors
    way = np.array([np.cos(pattern.slot_turn_rad), np.sin(pattern.slot_turn_rad)])
    along = errors @ way
    taken = np.clip(along, -pattern.slot_mm / 2, pattern.slot_mm / 2)
    left: Array = errors - taken[..., None] * way
    return left
