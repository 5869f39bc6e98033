"""The density of water, as a published formula.

Kell [kell1975]_ fitted one expression to the measured density of air-free
water at one atmosphere from 0 to 150 °C::

    rho = (a0 + a1 t + a2 t² + a3 t³ + a4 t⁴ + a5 t⁵) / (1 + b t)

with rho in kg/m³ and t in °C. The coefficients stand here from memory; they
are checked against a second, independent table in the tests.

``EXPANSION_PER_C`` is how water grows about 20 °C, as [quam2012]_ takes it in its
example A1 (from memory). The densities of air and of the steel of weights are those
by which scales are set [iso8655]_ (from memory).
"""

KELL_A = (
    999.83952,
    16.945176,
    -7.9870401e-3,
    -46.170461e-6,
    105.56302e-9,
    -280.54253e-12,
)
KELL_B = 16.879850e-3

EXPANSION_PER_C = 2.1e-4
AIR_G_PER_ML = 0.0012
STEEL_G_PER_ML = 8.0
