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


def covered_loss_w_k(area_mm2: float, thickness_mm: float, conductivity_w_m_k: float, transfer_w_m2_k: float) -> float:
    """Loss per kelvin of a face with insulation on it; of a bare one where the thickness is 0.

    area_mm2 : of the face [mm2]
    thickness_mm : of the insulation [mm]
    conductivity_w_m_k : of the insulation [W/(m K)]
    transfer_w_m2_k : from its outer face to still air [W/(m2 K)]

    Valid for: flat layers; edges left out.
    Source: ISO 6946, resistances in series: d / λ + 1 / h.

    >>> round(covered_loss_w_k(40000.0, 6.0, 0.045, 5.9), 4)
    0.1321
    """
    resistance_m2_k_w = thickness_mm / 1000 / conductivity_w_m_k + 1 / transfer_w_m2_k
    return area_mm2 * 1e-6 / resistance_m2_k_w


def sun_rise_k(absorbed_ratio: float, sun_w_m2: float, transfer_w_m2_k: float) -> float:
    """Rise of a thin thing in the sun above the air around.

    absorbed_ratio : share of the light that it takes up, 0.3 white to 0.95 black [-]
    sun_w_m2 : on its face; about 800 behind a window at noon [W/m2]
    transfer_w_m2_k : from all its faces together, for each m2 of the lit one [W/(m2 K)]

    Valid for: steady sun, still air, sky radiation left out.
    Source: sol-air temperature, α I / h.

    >>> round(sun_rise_k(0.9, 800.0, 16.0), 1)
    45.0
    """
    return absorbed_ratio * sun_w_m2 / transfer_w_m2_k


def growth_mm(length_mm: float, growth_um_m_k: float, warmer_k: float) -> float:
    """How much longer a length gets with heat.

    length_mm : length when cold [mm]
    growth_um_m_k : coefficient of growth [um/(m K)]
    warmer_k : how much warmer it gets [K]

    Valid for: free to grow; small against the length.
    Source: definition, α L ΔT.

    >>> round(growth_mm(200.0, 23.0, 80.0), 3)
    0.368
    """
    return length_mm * growth_um_m_k * 1e-6 * warmer_k


def stands_for_hours_c(glass_point_c: float, creep_margin_k: float) -> float:
    """Temperature that a loaded plastic stands for hours.

    glass_point_c : glass point, or softening as of a data sheet, which holds for minutes [C]
    creep_margin_k : to stay below it, 15 to 20 [K]

    Valid for: amorphous plastics under steady load.
    Source: practice of design with plastics: the glass point less a margin.

    >>> stands_for_hours_c(80.0, 17.5)
    62.5
    """
    return glass_point_c - creep_margin_k
