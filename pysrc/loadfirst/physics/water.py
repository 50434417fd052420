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

GIBBS = (  # I, J, n of region 1; terms 1 to 8 have I = 0 and no part in the density
    (1, -9, 0.28319080123804e-3),
    (1, -7, -0.60706301565874e-3),
    (1, -1, -0.18990068218419e-1),
    (1, 0, -0.32529748770505e-1),
    (1, 1, -0.21841717175414e-1),
    (1, 3, -0.52838357969930e-4),
    (2, -3, -0.47184321073267e-3),
    (2, 0, -0.30001780793026e-3),
    (2, 1, 0.47661393906987e-4),
    (2, 3, -0.44141845330846e-5),
    (2, 17, -0.72694996297594e-15),
    (3, -4, -0.31679644845054e-4),
    (3, 0, -0.28270797985312e-5),
    (3, 6, -0.85205128120103e-9),
    (4, -5, -0.22425281908000e-5),
    (4, -2, -0.65171222895601e-6),
    (4, 10, -0.14341729937924e-12),
    (5, -8, -0.40516996860117e-6),
    (8, -11, -0.12734301741641e-8),
    (8, -6, -0.17424871230634e-9),
    (21, -29, -0.68762131295531e-18),
    (23, -31, 0.14478307828521e-19),
    (29, -38, 0.26335781662795e-22),
    (30, -39, -0.11947622640071e-22),
    (31, -40, 0.18228094581404e-23),
    (32, -41, -0.93537087292458e-25),
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

GAS_CONSTANT = 461.526  # [J/(kg K)] of water, as IF97 fixes it
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


def liquid_density(temperature: float, pressure: float) -> float:
    """Density of liquid water.

    Parameters
    ----------
    temperature : float
        From 273.15 to 623.15. [K]
    pressure : float
        Absolute, from the saturation pressure to 100 MPa. [Pa]

    Returns
    -------
    float
        Density. [kg/m³]

    Sources
    -------
    IAPWS R7-97(2012), equation 7 (region 1): the pressure derivative of the
    Gibbs energy is the specific volume.
    """
    pi, tau = 7.1 - pressure / 16.53e6, 1386.0 / temperature - 1.222
    gamma_pi = -sum(n * i * pi ** (i - 1) * tau**j for i, j, n in GIBBS)
    return 16.53e6 / (GAS_CONSTANT * temperature * gamma_pi)


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
