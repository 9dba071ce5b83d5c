"""What a choice gives back: a build, its purchase, its cuts and the proof, as plain data."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from scantling.model.build import Build, Key

Unit = Literal["piece", "g", "length", "board"]


@dataclass(frozen=True)
class OrderLine:
    """Packs of one offer.

    pack : pieces, bars, boards or grams in one pack    price_minor : of a pack at the level reached, as stated
    goods_minor : packs × price    tax_minor : of the line where tax is rounded per pack or line, else 0
    for_level : packs above need, bought to reach a price level    top_up : packs above need, as wished spares
    grams : mass of the line as posted    lead_days : until it arrives
    """

    offer: str
    part: str
    unit: Unit
    packs: int
    pack: int
    price_minor: int
    goods_minor: int
    tax_minor: int
    grams: int
    lead_days: int
    bar_um: int = 0
    board_um: tuple[int, int] = (0, 0)
    for_level: int = 0
    top_up: int = 0


@dataclass(frozen=True)
class Order:
    """One parcel of one vendor; amounts in minor units of ``currency``, ``home_minor`` in the workshop's.

    total = goods + tax + shipping + payment fee + customs (duty + handling + per kind)
    rate : home minor units per minor unit of ``currency``; the total is rounded half up once
    """

    vendor: str
    currency: str
    lines: tuple[OrderLine, ...]
    goods_minor: int
    tax_minor: int
    shipping_minor: int
    payment_fee_minor: int
    duty_minor: int
    handling_minor: int
    per_kind_minor: int
    total_minor: int
    rate: Fraction
    home_minor: int
    grams: int
    kinds: tuple[str, ...]
    lead_days: int

    @property
    def customs_minor(self) -> int:
        """Return all that is due at the border."""
        return self.duty_minor + self.handling_minor + self.per_kind_minor

    @property
    def goods_with_tax_minor(self) -> int:
        """Return the basis of free shipping and of the minimum order."""
        return self.goods_minor + self.tax_minor


@dataclass(frozen=True)
class Cut:
    """Bars that are cut alike.

    offer : where the bars are bought, or "" for bars in hand    bar_um : length of each bar
    pieces : (length in µm, count) out of one bar, longest first    times : bars cut so
    left_um : what remains of each bar    whole : the bar is used as it comes, with no cut
    """

    part: str
    offer: str
    bar_um: int
    pieces: tuple[tuple[int, int], ...]
    times: int
    left_um: int
    whole: bool = False


@dataclass(frozen=True)
class Supply:
    """How one resource is met, for all copies together.

    need : what the machines take    spares : extra on purpose    in_hand : taken from the drawer
    bought : what the packs hold    left = in_hand + bought - need - spares (boards: of the size chosen)
    length_um : of the pieces where unit is ``length``; then in_hand and bought count pieces, cut from bars
    """

    part: str
    unit: Unit
    need: int
    spares: int
    in_hand: int
    bought: int
    length_um: int = 0
    board_um: tuple[int, int] = (0, 0)

    @property
    def left(self) -> int:
        """Return what is over."""
        return self.in_hand + self.bought - self.need - self.spares


@dataclass(frozen=True)
class Purchase:
    """Everything that is bought, taken from the drawer and cut for one build; sorted by vendor, part, length."""

    orders: tuple[Order, ...]
    supplies: tuple[Supply, ...]
    cuts: tuple[Cut, ...]
    currency: str

    @property
    def cost_minor(self) -> int:
        """Return the outlay in the workshop's currency."""
        return sum(order.home_minor for order in self.orders)

    @property
    def lead_days(self) -> int:
        """Return the days until everything has arrived."""
        return max((order.lead_days for order in self.orders), default=0)


@dataclass(frozen=True)
class Choice:
    """The cheapest sound build that was found, with its purchase.

    bound_minor : no sound build is cheaper    proven : the bound is the cost and no costly check is left failing
    rounds : solves that costly checks asked for, the first included
    lazy : codes and subjects of the checks that ran on answers instead of being tabulated
    failing : costly checks that still fail, where the cap on rounds was met
    """

    build: Build
    purchase: Purchase
    cost_minor: int
    bound_minor: int
    proven: bool
    rounds: int
    lazy: tuple[tuple[str, str], ...] = ()
    failing: tuple[tuple[str, str], ...] = ()


ConcernKind = Literal["check", "pin", "supply", "date", "budget", "orders", "rule"]


@dataclass(frozen=True, order=True)
class Concern:
    """One demand on a choice that can be waived or be part of a conflict.

    kind : ``check`` (code and subject), ``pin`` (subject: the question, detail: the answer), ``supply`` (subject: the
    part), ``date`` (subject: the part that comes too late; days), ``budget``, ``orders`` (the cap), ``rule`` (an
    option's requires, forbids, also-fills: code is the word, subject the place)
    """

    kind: ConcernKind
    code: str = ""
    subject: str = ""
    detail: str = ""


@dataclass(frozen=True)
class Waived:
    """A concern that the nearest miss does not meet, and by how much.

    shortfall_permille : distance to the limit in thousandths of it (1000 where there is no scale)
    amount : in its own unit: minor units over budget, pieces that cannot be had, days late, orders too many; else 0
    """

    concern: Concern
    shortfall_permille: int
    amount: int = 0


@dataclass(frozen=True)
class Miss:
    """The nearest miss: the build with the fewest demands waived, then the least shortfall, then the least cost."""

    build: Build
    purchase: Purchase
    waived: tuple[Waived, ...]
    cost_minor: int
    proven: bool


@dataclass(frozen=True)
class Conflict:
    """Demands that cannot all be met although all but any one of them can; in fixed order.

    smallest : proven that no conflict has fewer demands
    """

    concerns: tuple[Concern, ...]
    smallest: bool


@dataclass(frozen=True)
class Infeasible:
    """No sound build exists: what comes nearest, and which demands stand against each other."""

    miss: Miss | None
    conflict: Conflict
    rounds: int = 1


@dataclass(frozen=True)
class WhyOption:
    """What another answer at one place would cost.

    outcome : ``best`` (the answer chosen), ``costs`` (extra_minor more, exactly), ``at least`` (sound, and extra_minor
    more or dearer still: not looked at further), ``impossible`` (conflict says what forbids it)
    choice : the best with that answer, where it was found
    """

    key: Key
    answer: str
    outcome: Literal["best", "costs", "at least", "impossible"]
    extra_minor: int = 0
    choice: Choice | None = None
    conflict: Conflict | None = None
