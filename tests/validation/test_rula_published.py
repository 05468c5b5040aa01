"""RULA against printed tables and worked examples.

Sources:
    McAtamney and Corlett 1993, Applied Ergonomics 24(2):91-99 (the method; its printed table A was not seen).
    Tables A, B, C: a Spanish sheet; A, wrist 1 and 2, also in a Chilean handout; B also in an Indonesian thesis after
    Stanton 2005 and in an older English worksheet; C also in an Indonesian thesis.
    Worked examples: the Spanish sheet, a Spanish solved exercise, a US thesis (a laptop and a desktop at home), an
    Indonesian thesis. The US thesis used the other table A in circulation, so of its desktop only the final score is
    the same here.
"""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest

from parametric.posture.scoring.rula import Rula, grand_score, rula_from_scores, score_a, score_b

# rows upper arm, lower arm; columns wrist 1 to 4, each twist 1 and 2
PRINTED_A = """
    1 1  1 2 2 2 2 3 3 3
    1 2  2 2 2 2 3 3 3 3
    1 3  2 3 3 3 3 3 4 4
    2 1  2 3 3 3 3 4 4 4
    2 2  3 3 3 3 3 4 4 4
    2 3  3 4 4 4 4 4 5 5
    3 1  3 3 4 4 4 4 5 5
    3 2  3 4 4 4 4 4 5 5
    3 3  4 4 4 4 4 5 5 5
    4 1  4 4 4 4 4 5 5 5
    4 2  4 4 4 4 4 5 5 5
    4 3  4 4 4 5 5 5 6 6
    5 1  5 5 5 5 5 6 6 7
    5 2  5 6 6 6 6 7 7 7
    5 3  6 6 6 7 7 7 7 8
    6 1  7 7 7 7 7 8 8 9
    6 2  8 8 8 8 8 9 9 9
    6 3  9 9 9 9 9 9 9 9
"""
# rows neck; columns trunk 1 to 6, each legs 1 and 2
PRINTED_B = """
    1  1 3 2 3 3 4 5 5 6 6 7 7
    2  2 3 2 3 4 5 5 5 6 7 7 7
    3  3 3 3 4 4 5 5 6 6 7 7 7
    4  5 5 5 6 6 7 7 7 7 7 8 8
    5  7 7 7 7 7 8 8 8 8 8 8 8
    6  8 8 8 8 8 8 8 9 9 9 9 9
"""
# rows C 1 to 8; columns D 1 to 7
PRINTED_C = """
    1  1 2 3 3 4 5 5
    2  2 2 3 4 4 5 5
    3  3 3 3 4 4 5 6
    4  3 3 3 4 5 6 6
    5  4 4 4 5 6 7 7
    6  4 4 5 6 6 7 7
    7  5 5 6 6 7 7 7
    8  5 5 6 7 7 7 7
"""


def lines(printed: str) -> list[list[int]]:
    return [[int(cell) for cell in line.split()] for line in printed.strip().splitlines()]


def scored(arm: tuple[int, int, int, int], body: tuple[int, int, int]) -> Rula:
    """Scores with one for muscle use in both groups and no force, as in all the examples."""
    upper_arm, lower_arm, wrist, wrist_twist = arm
    neck, trunk, legs = body
    return rula_from_scores(
        upper_arm=upper_arm,
        lower_arm=lower_arm,
        wrist=wrist,
        wrist_twist=wrist_twist,
        neck=neck,
        trunk=trunk,
        legs=legs,
        arms_muscle=1,
        body_muscle=1,
    )


A_CELLS = [
    (upper, lower, wrist, twist, cells[2 * (wrist - 1) + twist - 1])
    for upper, lower, *cells in lines(PRINTED_A)
    for wrist, twist in product(range(1, 5), (1, 2))
]
B_CELLS = [
    (neck, trunk, legs, cells[2 * (trunk - 1) + legs - 1])
    for neck, *cells in lines(PRINTED_B)
    for trunk, legs in product(range(1, 7), (1, 2))
]
C_CELLS = [(c, d, cells[d - 1]) for c, *cells in lines(PRINTED_C) for d in range(1, 8)]


def test_the_tables_were_typed_whole() -> None:
    assert (len(A_CELLS), len(B_CELLS), len(C_CELLS)) == (144, 72, 56)


@pytest.mark.parametrize(("upper", "lower", "wrist", "twist", "printed"), A_CELLS)
def test_table_a(upper: int, lower: int, wrist: int, twist: int, printed: int) -> None:
    assert score_a(upper, lower, wrist, twist) == printed


@pytest.mark.parametrize(("neck", "trunk", "legs", "printed"), B_CELLS)
def test_table_b(neck: int, trunk: int, legs: int, printed: int) -> None:
    assert score_b(neck, trunk, legs) == printed


@pytest.mark.parametrize(("c", "d", "printed"), C_CELLS)
def test_table_c(c: int, d: int, printed: int) -> None:
    assert grand_score(c, d) == printed


@pytest.mark.parametrize(
    ("arm", "body", "a", "b", "c", "d", "grand"),
    [
        pytest.param((4, 3, 3, 1), (3, 4, 2), 5, 6, 6, 7, 7, id="Spanish sheet"),
        pytest.param((2, 2, 1, 1), (1, 1, 1), 3, 1, 4, 2, 3, id="Spanish solved exercise"),
        pytest.param((2, 1, 1, 1), (1, 1, 2), 2, 3, 3, 4, 4, id="US thesis, laptop at home"),
    ],
)
def test_worked_example(
    arm: tuple[int, int, int, int], body: tuple[int, int, int], a: int, b: int, c: int, d: int, grand: int
) -> None:
    found = scored(arm, body)
    assert (found.a, found.b, found.c, found.d, found.grand) == (a, b, c, d, grand)


def test_worked_example_from_scores_a_and_b() -> None:
    """Indonesian thesis: A 4, B 4, one more each for muscle use, C 5, D 5, final 6; the parts are made up to suit."""
    found = scored((2, 1, 3, 2), (1, 3, 2))
    assert (found.a, found.b) == (4, 4)
    assert (found.c, found.d, found.grand) == (5, 5, 6)


def test_final_score_of_the_desktop_at_home() -> None:
    """US thesis, a desktop at home: final 3. It prints A 2 after the other table A, this one gives 3."""
    found = scored((2, 2, 1, 1), (1, 2, 1))
    assert found.grand == 3
    assert (found.b, found.d) == (2, 3)


def test_every_score_at_once() -> None:
    upper, lower, wrist, twist, printed = np.array(A_CELLS).T
    assert np.array_equal(score_a(upper, lower, wrist, twist), printed)
    neck, trunk, legs, printed = np.array(B_CELLS).T
    assert np.array_equal(score_b(neck, trunk, legs), printed)
    c, d, printed = np.array(C_CELLS).T
    assert np.array_equal(grand_score(c, d), printed)
