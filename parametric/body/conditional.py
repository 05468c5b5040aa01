"""The normal distribution of some dimensions given others."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from parametric.catalogue.survey import Array

_LEAST_EIGENVALUE = 1e-9  # of a correlation matrix; what lies below is a direction without information


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Conditional:
    """Distribution left after some of k dimensions became known.

    Attributes:
        mean: (k,) means; the known ones are the values given.
        cov: (k, k) covariances; rows and columns of the known ones are 0.
        log_likelihood: Logarithm of the density of the known values, less a constant for their number.
    """

    mean: Array
    cov: Array
    log_likelihood: float


def condition(mean: Array, cov: Array, at: Sequence[int], values: Array) -> Conditional:
    """Condition a normal distribution on exact values of some dimensions.

    Works on correlations and drops directions without information, so that dimensions that determine one another,
    or values that contradict one another, still give an answer.

    Args:
        mean: (k,) means.
        cov: (k, k) covariances, positive on the diagonal.
        at: Indices of the m known dimensions, each once.
        values: (m,) their values.
    """
    at = list(at)
    scale = np.sqrt(np.diag(cov))
    inverse, log_determinant = _inverse(cov, at)
    residual = values - mean[at]
    gain = cov[:, at] @ inverse
    new_mean = mean + gain @ residual
    new_cov = cov - gain @ cov[at]
    new_cov = 0.5 * (new_cov + new_cov.T)
    new_mean[at] = values
    new_cov[at, :] = 0.0
    new_cov[:, at] = 0.0
    variance = np.clip(np.diag(new_cov), 0.0, scale**2)
    np.fill_diagonal(new_cov, variance)
    log_likelihood = -0.5 * (float(residual @ inverse @ residual) + log_determinant)
    return Conditional(mean=new_mean, cov=new_cov, log_likelihood=log_likelihood)


def left_out(mean: Array, cov: Array, at: Sequence[int], values: Array) -> tuple[Array, Array]:
    """Each known value against what the other known ones let expect.

    Returns:
        (m,) expected values, and (m,) distances from them in standard deviations of that expectation.
    """
    at = list(at)
    inverse, _ = _inverse(cov, at)
    pull = inverse @ (values - mean[at])
    precision = np.diag(inverse)
    return values - pull / precision, pull / np.sqrt(precision)


def _inverse(cov: Array, at: list[int]) -> tuple[Array, float]:
    block = cov[np.ix_(at, at)]
    scale = np.sqrt(np.diag(block))
    eigenvalues, vectors = np.linalg.eigh(block / np.outer(scale, scale))
    kept = eigenvalues > _LEAST_EIGENVALUE
    vectors, eigenvalues = vectors[:, kept], eigenvalues[kept]
    inverse = (vectors / eigenvalues) @ vectors.T / np.outer(scale, scale)
    return inverse, float(np.log(eigenvalues).sum() + 2.0 * np.log(scale).sum())
