"""Water as the IAPWS formulations give it: vapour pressure, density, viscosity.

Plain numbers in, plain numbers out; a liquid is made of them in `liquids`.
Coefficients are written as the releases print them, so that they can be
compared figure by figure.
"""

from __future__ import annotations

from math import exp, sqrt

SATURATION = (  # n1 … n10 of region 4
    0.11670521452767e4,
    -0.72421316703206e6,
    -0.17073846940092e2,
    0.12020824702470e5,
    -0.32325550322333e7,
    0.14915108613530e2,
    -0.48232657361591e4,
    0.40511340542057e6,
    -0.23855557567849,
    0.65017534844798e3,
)

ALPHA = (  # n, a_n of the volume at 0.1 MPa
    (0, 1.93763157e-2),
    (4, 6.74458446e3),
    (5, -2.22521604e5),
    (7, 1.00231247e8),
    (8, -1.63552118e9),
    (9, 8.32299658e9),
)

BETA = (  # m, b_m of the volume at 0.1 MPa
    (1, 5.78545292e-3),
    (2, -1.53195665e-2),
    (3, 3.11337859e-2),
    (4, -4.23546241e-2),
    (5, 3.38713507e-2),
    (6, -1.19946761e-2),
)

DILUTE_GAS = (1.67752, 2.20462, 0.6366564, -0.241605)  # H0 … H3

FINITE_DENSITY = (  # i, j, H_ij
    (0, 0, 5.20094e-1),
    (1, 0, 2.22531e-1),
    (2, 0, -2.81378e-1),
    (3, 0, 1.61913e-1),
    (4, 0, -3.25372e-2),
    (0, 1, 8.50895e-2),
    (1, 1, 9.99115e-1),
    (2, 1, -9.06851e-1),
    (3, 1, 2.57399e-1),
    (0, 2, -1.08374),
    (1, 2, 1.88797),
    (2, 2, -7.72479e-1),
    (0, 3, -2.89555e-1),
    (1, 3, 1.26613),
    (2, 3, -4.89837e-1),
    (4, 3, 6.98452e-2),
    (2, 4, -2.57040e-1),
    (5, 4, 8.72102e-3),
    (1, 5, 1.20573e-1),
    (6, 3, -4.35673e-3),
    (6, 5, -5.93264e-4),
)

GAS_CONSTANT = 461.51805  # [J/(kg K)] of water, as SR6-08 fixes it
CRITICAL_TEMPERATURE = 647.096  # [K]
CRITICAL_DENSITY = 322.0  # [kg/m³]


def saturation_pressure(temperature: float) -> float:
    """Pressure at which water boils.

    Parameters
    ----------
    temperature : float
        From 273.15 to 647.096. [K]

    Returns
    -------
    float
        Absolute pressure. [Pa]

    Sources
    -------
    IAPWS R7-97(2012), equation 30 (region 4). Up to 7e-5 of the value away
    from IAPWS-95 between 0 and 100 °C: the two releases differ that much.
    """
    n = SATURATION
    theta = temperature + n[8] / (temperature - n[9])
    a = theta**2 + n[0] * theta + n[1]
    b = n[2] * theta**2 + n[3] * theta + n[4]
    c = n[5] * theta**2 + n[6] * theta + n[7]
    return 1e6 * (2 * c / (sqrt(b**2 - 4 * a * c) - b)) ** 4


def liquid_density(temperature: float) -> float:
    """Density of liquid water at 0.1 MPa.

    Parameters
    ----------
    temperature : float
        From 253.15 to 383.15: supercooled and superheated liquid too. [K]

    Returns
    -------
    float
        Density. [kg/m³]

    Sources
    -------
    IAPWS SR6-08(2011), equation 2. Within 1e-6 of IAPWS-95.
    """
    alpha, beta = 10 / (593 - temperature), 10 / (temperature - 232)
    terms = sum(a * alpha**n for n, a in ALPHA) + sum(b * beta**m for m, b in BETA)
    return 1e5 / (GAS_CONSTANT * 10 * terms)


def dynamic_viscosity(temperature: float, density: float) -> float:
    """Dynamic viscosity of water at a temperature and density.

    Parameters
    ----------
    temperature : float
        From 273.15 to 1173.15. [K]
    density : float
        Above 0. [kg/m³]

    Returns
    -------
    float
        Dynamic viscosity. [Pa s]

    Notes
    -----
    Without the critical enhancement, which the release allows to leave out
    away from the critical point.

    Sources
    -------
    IAPWS R12-08, equations 10 to 12.
    """
    theta, delta = temperature / CRITICAL_TEMPERATURE, density / CRITICAL_DENSITY
    dilute = 100 * sqrt(theta) / sum(h / theta**i for i, h in enumerate(DILUTE_GAS))
    x, y = 1 / theta - 1, delta - 1
    crowded = exp(delta * sum(h * y**i * x**j for i, j, h in FINITE_DENSITY))
    return 1e-6 * dilute * crowded
