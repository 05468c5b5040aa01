from __future__ import annotations

import math
import subprocess
import sys

import pint
import pytest

from parametric.brief.quantities import DENSITY, FORCE, LENGTH, MASS, Kind, Quantity, kg, mm, newton

STATURE = mm(1200, 2300)


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        (1980, 1980.0),
        (1980.5, 1980.5),
        ("1980", 1980.0),
        ("1980 mm", 1980.0),
        ("198 cm", 1980.0),
        ("1.98 m", 1980.0),
        ("1.98m", 1980.0),
        (" 1.98  m ", 1980.0),
        ("+1.98 m", 1980.0),
        ("1.98e3 mm", 1980.0),
        ("78 in", 1981.2),
        ('78"', 1981.2),
        ("78 1/2 in", 1993.9),
        ("6 ft 6 in", 1981.2),
        ("6ft6in", 1981.2),
        ("6 feet 6 inches", 1981.2),
        ("6'6\"", 1981.2),
        ("6'6", 1981.2),
        ("6 ft 6", 1981.2),
        ("6\u2032 6\u2033", 1981.2),
        ("6'6''", 1981.2),
        ("6 ft", 1828.8),
        ("2 yd", 1828.8),
        ("1 m 98 cm", 1980.0),
        ("198 CM", 1980.0),
    ],
)
def test_lengths_as_people_write_them(written: object, expected: float) -> None:
    assert STATURE.read(written) == pytest.approx(expected, abs=1e-6)


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        (82, 82.0),
        ("82", 82.0),
        ("82 kg", 82.0),
        ("180 lb", 81.6466266),
        ("180 lbs", 81.6466266),
        ("13 stone", 82.55381),
    ],
)
def test_masses_as_people_write_them(written: object, expected: float) -> None:
    assert kg(30, 250).read(written) == pytest.approx(expected, abs=1e-4)


def test_forces_take_units_too() -> None:
    assert newton(1, 100_000).read("0.5 kN") == 500.0
    assert newton(1, 100_000).read("50 kgf") == pytest.approx(490.3325)


def test_a_sign_holds_for_the_whole_figure() -> None:
    assert mm(-1500, 1500).read("-1 ft 2 in") == pytest.approx(-355.6)


@pytest.mark.parametrize("kind", [LENGTH, MASS, FORCE])
def test_everyday_factors_agree_with_pint(kind: Kind) -> None:
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    for unit, factor in kind.everyday.items():
        if unit.isalpha():
            assert factor == pytest.approx(registry.Quantity(1.0, unit).to(kind.unit).magnitude, rel=1e-12)


@pytest.mark.parametrize(
    "written", ["abc", "", "  ", "-", "m", "1.2.3 m", "1/0 in", "nan", "inf", "6 in 6 ft", "6 ft 6 ft"]
)
def test_nonsense_is_shown_with_what_would_be_right(written: str) -> None:
    with pytest.raises(ValueError, match=r"cannot read '.*' as a length: write 1980, \"1.98 m\" or \"6 ft 6 in\""):
        STATURE.read(written)


def test_nonsense_exact_wording() -> None:
    with pytest.raises(ValueError, match=r"^cannot read 'abc' as a length: write 1980, \"1\.98 m\" or \"6 ft 6 in\"$"):
        STATURE.read("abc")


def test_decimal_comma_is_explained() -> None:
    with pytest.raises(ValueError, match="decimals take a point, not a comma"):
        STATURE.read("1,98 m")


@pytest.mark.parametrize("written", ["1.98 kg", "2 bananas", "2 degC", "2 s", "9**9**9 m", "__import__ m"])
def test_what_is_no_length_is_refused(written: str) -> None:
    with pytest.raises(ValueError, match=r"cannot read .* a length: write"):
        STATURE.read(written)


@pytest.mark.parametrize("written", [True, False, None, [1], {"a": 1}])
def test_what_is_no_figure_is_refused(written: object) -> None:
    with pytest.raises(ValueError, match=r"^read .*; write 1980"):
        STATURE.read(written)


@pytest.mark.parametrize("written", [math.nan, math.inf, -math.inf, 10**400, "1e999 m", 1e400])
def test_what_is_not_finite_is_refused(written: object) -> None:
    with pytest.raises(ValueError, match=r"; write a length from 1200 to 2300 mm$"):
        STATURE.read(written)


@pytest.mark.parametrize(
    ("written", "hint"),
    [
        (1.98, 'read 1.98; allowed are 1200 to 2300 mm; plain numbers are mm: write "1.98 m" or 1980'),
        (198, 'read 198; allowed are 1200 to 2300 mm; plain numbers are mm: write "198 cm" or 1980'),
        (78, 'read 78; allowed are 1200 to 2300 mm; plain numbers are mm: write "78 in" or 1981.2'),
        ("1.98", 'read "1.98"; allowed are 1200 to 2300 mm; plain numbers are mm: write "1.98 m" or 1980'),
        (-1960, "read -1960; allowed are 1200 to 2300 mm; plain numbers are mm"),
        ("19.8 m", 'read "19.8 m" = 19800 mm; allowed are 1200 to 2300 mm'),
    ],
)
def test_out_of_bounds_guesses_the_unit_meant(written: object, hint: str) -> None:
    with pytest.raises(ValueError, match="allowed are") as caught:
        STATURE.read(written)
    assert str(caught.value) == hint


@pytest.mark.parametrize("edge", [1200, 2300])
def test_both_bounds_belong(edge: float) -> None:
    assert STATURE.read(edge) == edge


def test_a_long_text_is_not_echoed_whole() -> None:
    with pytest.raises(ValueError, match="cannot read") as caught:
        STATURE.read("1 m " * 10_000)
    assert len(str(caught.value)) < 200


def test_a_huge_integer_is_refused_without_printing_it() -> None:
    with pytest.raises(ValueError, match=r"^read a huge number; "):
        STATURE.read(1 << 40_000)


def test_figures_without_units_refuse_them() -> None:
    with pytest.raises(ValueError, match='cannot read "kg" as the unit of a density: write a plain number'):
        Quantity(DENSITY, 10, 150).read("35 kg")


@pytest.mark.parametrize(("written", "loaded"), [("1980", False), ("6 ft 6 in", False), ("2 yd", True)])
def test_pint_is_loaded_only_for_rare_units(written: str, loaded: bool) -> None:
    code = (
        "import sys; from parametric.brief.quantities import mm; "
        f"mm(0, 3000).read({written!r}); print('pint' in sys.modules)"
    )
    out = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert out.stdout.strip() == str(loaded)
