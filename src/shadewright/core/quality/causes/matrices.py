"""Three numbers by three: what little of linear algebra a colour needs."""

from collections.abc import Sequence
from math import exp, pi, sqrt

Three = tuple[float, float, float]
Matrix = tuple[Three, Three, Three]

UNIT: Matrix = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))


def three(parts: Sequence[float]) -> Three:
    """Return three numbers as a vector.

    Parameters
    ----------
    parts : sequence of float
        Three numbers, as of a colour or a shift. [1]

    Returns
    -------
    tuple of float
        The same. [1]
    """
    first, second, third = parts
    return (first, second, third)


def combined(*terms: tuple[float, Matrix]) -> Matrix:
    """Return a sum of matrices, each times a number.

    Parameters
    ----------
    *terms : tuple of (float, Matrix)
        Weight and matrix. [any]

    Returns
    -------
    Matrix
        Σ w_k A_k. [any]

    Examples
    --------
    >>> combined((2.0, UNIT), (1.0, UNIT))[0]
    (3.0, 0.0, 0.0)
    """
    rows = [
        three([sum(w * m[i][j] for w, m in terms) for j in range(3)]) for i in range(3)
    ]
    return (rows[0], rows[1], rows[2])


def outer(vector: Three) -> Matrix:
    """Return a vector times itself, v vᵀ.

    Parameters
    ----------
    vector : tuple of float
        The vector, v. [1]

    Returns
    -------
    Matrix
        Each number times each. [1]

    Examples
    --------
    >>> outer((1.0, 2.0, 0.0))[1]
    (2.0, 4.0, 0.0)
    """
    rows = [three([a * b for b in vector]) for a in vector]
    return (rows[0], rows[1], rows[2])


def trace(matrix: Matrix) -> float:
    """Return the sum of the diagonal.

    Parameters
    ----------
    matrix : Matrix
        Three by three. [any]

    Returns
    -------
    float
        tr A. [as matrix]

    Examples
    --------
    >>> trace(UNIT)
    3.0
    """
    return matrix[0][0] + matrix[1][1] + matrix[2][2]


def determinant(matrix: Matrix) -> float:
    """Return the determinant.

    Parameters
    ----------
    matrix : Matrix
        Three by three. [any]

    Returns
    -------
    float
        |A|, by its first row. [as matrix, cubed]

    Examples
    --------
    >>> determinant(combined((2.0, UNIT)))
    8.0
    """
    (a, b, c), (d, e, f), (g, h, i) = matrix
    return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)


def squared_distance(vector: Three, matrix: Matrix) -> float:
    """Return how far a vector reaches, counted in a covariance: vᵀ A⁻¹ v.

    Parameters
    ----------
    vector : tuple of float
        The vector, v. [1]
    matrix : Matrix
        The covariance, A; symmetric, with a determinant above zero. [1]

    Returns
    -------
    float
        The square of the distance, by Cramer's rule. [1]

    Examples
    --------
    >>> squared_distance((3.0, 4.0, 0.0), UNIT)
    25.0
    """
    whole = determinant(matrix)
    columns = list(zip(*matrix, strict=True))
    found = 0.0
    for place, part in enumerate(vector):
        swapped = [vector if j == place else columns[j] for j in range(3)]
        found += part * determinant((swapped[0], swapped[1], swapped[2])) / whole
    return found


def normal_density(vector: Three, covariance: Matrix) -> float:
    """Return the density of three normal numbers about nought.

    φ(v) = exp(−vᵀ A⁻¹ v / 2) / √((2π)³ |A|)                       (1)

    Parameters
    ----------
    vector : tuple of float
        Where, v. [1]
    covariance : Matrix
        Their covariance, A. [1]

    Returns
    -------
    float
        The density. [1]

    References
    ----------
    .. [anderson2003] 2.3, equation 40

    Examples
    --------
    >>> round(normal_density((0.0, 0.0, 0.0), UNIT), 5)
    0.06349
    """
    shape = sqrt((2.0 * pi) ** 3 * determinant(covariance))
    return exp(-0.5 * squared_distance(vector, covariance)) / shape
