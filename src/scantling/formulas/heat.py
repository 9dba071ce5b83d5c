"""Heating a bed: how long it takes, what it holds."""

from __future__ import annotations

from math import exp, inf, log


def heat_capacity_j_k(mass_kg: float, specific_j_kg_k: float) -> float:
    """Heat that warms a body by a kelvin.

    mass_kg : mass [kg]
    specific_j_kg_k : specific heat, 897 aluminium, 840 glass [J/(kg K)]

    Valid for: even temperature.
    Source: definition.

    >>> round(heat_capacity_j_k(0.324, 897.0), 1)
    290.6
    """
    return mass_kg * specific_j_kg_k


def warm_up_s(power_w: float, capacity_j_k: float, loss_w_k: float, rise_k: float) -> float:
    """Time to warm up from the surroundings; infinite where the losses eat the power before.

    power_w : heating power [W]
    capacity_j_k : heat capacity of all that warms up together [J/K]
    loss_w_k : loss per kelvin above the surroundings [W/K]
    rise_k : wanted rise above the surroundings [K]

    Valid for: one lump at an even temperature, loss in proportion to the rise.
    Source: energy balance, -(C / k) ln(1 - k ΔT / P).

    >>> round(warm_up_s(120.0, 539.0, 0.70, 68.0) / 60, 2)
    6.48
    """
    if rise_k <= 0:
        return 0.0
    if power_w <= loss_w_k * rise_k:
        return inf
    if loss_w_k == 0:
        return capacity_j_k * rise_k / power_w
    return -capacity_j_k / loss_w_k * log(1 - loss_w_k * rise_k / power_w)


def rise_after_k(power_w: float, capacity_j_k: float, loss_w_k: float, time_s: float) -> float:
    """Rise above the surroundings after a time of heating.

    power_w : heating power [W]
    capacity_j_k : heat capacity [J/K]
    loss_w_k : loss per kelvin [W/K]
    time_s : time since the start [s]

    Valid for: as warm_up_s.
    Source: energy balance, (P / k) (1 - exp(-k t / C)).

    >>> round(rise_after_k(120.0, 539.0, 0.70, 388.8), 1)
    68.0
    """
    if loss_w_k == 0:
        return power_w * time_s / capacity_j_k
    return power_w / loss_w_k * (1 - exp(-loss_w_k * time_s / capacity_j_k))


def highest_rise_k(power_w: float, loss_w_k: float) -> float:
    """Rise at which losses eat all the power: what a stuck switch leads to.

    power_w : heating power [W]
    loss_w_k : loss per kelvin [W/K]

    Valid for: as warm_up_s; at high temperature radiation makes the loss grow and the rise smaller.
    Source: energy balance, P / k.

    >>> round(highest_rise_k(120.0, 0.70), 1)
    171.4
    """
    return power_w / loss_w_k


def holding_power_w(loss_w_k: float, rise_k: float) -> float:
    """Power that keeps a temperature.

    loss_w_k : loss per kelvin [W/K]
    rise_k : rise above the surroundings [K]

    Valid for: as warm_up_s.
    Source: energy balance, k ΔT.

    >>> round(holding_power_w(0.70, 68.0), 1)
    47.6
    """
    return loss_w_k * rise_k


def plate_loss_w_k(area_mm2: float, transfer_w_m2_k: float) -> float:
    """Loss per kelvin of a plate's faces.

    area_mm2 : area of all faces that lose heat [mm2]
    transfer_w_m2_k : 10 to 12 in still air, less with insulation [W/(m2 K)]

    Valid for: still air, up to 100 °C.
    Source: heat transfer coefficient times area.

    >>> round(plate_loss_w_k(2 * 220.0 * 220.0, 10.0), 3)
    0.968
    """
    return area_mm2 * 1e-6 * transfer_w_m2_k
