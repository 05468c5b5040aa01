from __future__ import annotations

import tomllib

import pytest

from parametric.brief.loader import parse
from parametric.brief.model import Brief
from parametric.brief.sentences import model_in
from parametric.brief.template import template_text


def test_template_is_a_valid_brief() -> None:
    brief = parse(template_text("first"), "first.toml")
    assert brief.name == "first"
    assert brief.van.length_day == 2600
    assert brief.van.roof is not None
    assert brief.van.roof.front == 1900
    assert [o.way_out for o in brief.van.opening] == [True, True]
    assert (brief.sleeper[0].sex, brief.sleeper[0].stature, brief.sleeper[0].mass) == ("male", 1960, 88)
    assert (brief.bed.width, brief.bed.side) == (1150, "right")


@pytest.mark.parametrize(
    ("given", "slug"),
    [
        ("a b", "a_b"),
        ("../x", "x"),
        ("-rf", "rf"),
        ("", "my_van"),
        ("ä", "my_van"),
        ("n" * 99, "n" * 64),
        ('q"\n', "q"),
    ],
)
def test_any_name_gives_a_valid_brief(given: str, slug: str) -> None:
    assert parse(template_text(given), "t.toml").name == slug


def test_template_shows_the_defaults() -> None:
    """What the template writes as a default is the default, so leaving the line out changes nothing."""
    brief = parse(template_text("x"), "x.toml")
    for table in ("sitting", "arrangement", "stock", "shop", "rules"):
        model = Brief.model_fields[table].default_factory
        assert model is not None
        assert getattr(brief, table) == model()  # type: ignore[call-arg]


def test_every_field_is_named_in_the_template() -> None:
    text = template_text("x")
    roles = {"batten", "bearer", "post", "ledger", "cleat", "strip", "stiffener"}  # named by two examples of the table

    def names(model: type) -> set[str]:
        found: set[str] = set()
        for name, field in model.model_fields.items():  # type: ignore[attr-defined]
            inner = model_in(field.annotation)
            found |= {name} | (names(inner) if inner else set())
        return found

    assert {name for name in names(Brief) if name not in text} - roles == set()


def test_lines_that_are_off_are_valid_too() -> None:
    """Take the # off every example line; two tables that exclude each other are left as they are."""
    lines = template_text("x").splitlines()
    skip = ("# [[van.station]]", "# x = 0", "# left =", "# right =")
    on = [
        line.removeprefix("# ")
        if line.startswith(("# [", "# "))
        and ("=" in line or line.startswith("# ["))
        and not line.startswith(skip)
        and "[height, clear width]" not in line
        else line
        for line in lines
    ]
    text = "\n".join(on)
    tomllib.loads(text)
    brief = parse(text, "x.toml")
    assert brief.van.fixed[0].name == "left wheel arch"
    assert brief.van.anchor[0].at == (1500, -700, 0)
    assert brief.sleeper[0].measured["popliteal_height"] == 490
    assert brief.stock.sections.slat == (70, 20)
    assert brief.bed.platform_length == 1550
