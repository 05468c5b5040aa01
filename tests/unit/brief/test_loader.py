from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from parametric.brief.loader import load, parse
from parametric.brief.model import Brief
from parametric.brief.template import template_text
from parametric.core.errors import BriefError

Refused = Callable[..., list[str]]


def test_a_file_is_read(tmp_path: Path, minimal: str) -> None:
    file = tmp_path / "b.toml"
    file.write_text(minimal, encoding="utf-8")
    assert load(file).name == "small"
    assert load(str(file)) == load(file)


@pytest.mark.parametrize("change", [lambda t: "\ufeff" + t, lambda t: t.replace("\n", "\r\n")])
def test_what_editors_on_windows_write_is_read(tmp_path: Path, minimal: str, change: Callable[[str], str]) -> None:
    file = tmp_path / "b.toml"
    file.write_bytes(change(minimal).encode("utf-8"))
    assert load(file).name == "small"


def test_missing_file(tmp_path: Path) -> None:
    with pytest.raises(BriefError, match=r"nowhere\.toml: there is no such file; `parametric new FILE` writes one"):
        load(tmp_path / "nowhere.toml")


def test_folder(tmp_path: Path) -> None:
    with pytest.raises(BriefError, match="is a folder; name the brief in it"):
        load(tmp_path)


def test_a_path_through_a_file(tmp_path: Path) -> None:
    (tmp_path / "f").write_text("x")
    with pytest.raises(BriefError, match="cannot be read: "):
        load(tmp_path / "f" / "b.toml")


@pytest.mark.parametrize("name", ["nul\0", "n" * 5000])
def test_impossible_paths(name: str) -> None:
    with pytest.raises(BriefError, match="cannot be read: "):
        load(name)


def test_unreadable_file(monkeypatch: pytest.MonkeyPatch) -> None:
    def deny(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", deny)
    with pytest.raises(BriefError, match=r"b\.toml: may not be read; change its permissions"):
        load("b.toml")


def test_not_utf8(tmp_path: Path) -> None:
    file = tmp_path / "b.toml"
    file.write_bytes(b'name = "a"\nnote = "caf\xe9"\n')
    with pytest.raises(BriefError, match=r"b\.toml:2: is not UTF-8 text; save it as UTF-8"):
        load(file)


def test_a_picture_is_no_brief(tmp_path: Path) -> None:
    file = tmp_path / "b.png"
    file.write_bytes(b"\x89PNG\r\n\x1a\n\0\0\0")
    with pytest.raises(BriefError, match="is not UTF-8 text"):
        load(file)


def test_too_long_to_be_a_brief(tmp_path: Path) -> None:
    file = tmp_path / "b.toml"
    file.write_bytes(b"#" * 1_000_001)
    with pytest.raises(BriefError, match="is longer than 1000000 bytes"):
        load(file)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("a = 1\n[van", r"b\.toml:2: is not valid TOML: Expected ']'"),
        ("a = 1\n[van\nb = 2", r"b\.toml:2: is not valid TOML: .* at column 5"),
        (
            "\nstature = 1.98 m\n",
            r'b\.toml:2: is not valid TOML: .*; a figure with a unit needs quotes, for example "1\.98 m"',
        ),
        ("stature = 6'6\"", r"b\.toml:1: is not valid TOML: .*needs quotes"),
        ("name = 'a'\nname = 'b'", r"b\.toml:2: is not valid TOML: Cannot overwrite a value"),
        ("[van]\na = 1\n[van]\n", r"b\.toml:3: is not valid TOML: Cannot declare"),
        ("a = " + "[" * 20_000, r"b\.toml: is not valid TOML: lists are nested too deep"),
        ("a = " + "1" * 5000, r"b\.toml: is not valid TOML: Exceeds the limit"),
        ("a = 2024-13-45", r"b\.toml:1: is not valid TOML"),
        ("a = \0", r"b\.toml:1: is not valid TOML"),
    ],
)
def test_broken_toml(text: str, message: str) -> None:
    with pytest.raises(BriefError, match=message):
        parse(text, "b.toml")


def before_bed(lines: str) -> tuple[str, str]:
    return "[bed]", f"{lines}\n[bed]"


def measured(line: str) -> tuple[str, str]:
    return "1960", f"1960\n[sleeper.measured]\n{line}"


LENGTHS = 'write 1980, "1.98 m" or "6 ft 6 in"'
ONE_PROBLEM = [
    (("[bed]", "[bed]\nwidht = 3"), ":10: bed.widht:", 'is not a known key; did you mean "width"?'),
    (("[bed]", "[bed]\nstature = 3"), ":10: bed.stature:", 'is not a known key; it belongs in "sleeper"'),
    (before_bed("[bde]\nx = 3"), ":9: bde:", 'is not a known key; did you mean "bed"?'),
    (before_bed("[shop]\nqq = 3"), ":10: shop.qq:", "is not a known key; known are cut, kerf, cutter, tolerance"),
    (("1150", "true"), ":10: bed.width:", f"read true; {LENGTHS}"),
    (("1150", "[1150]"), ":10: bed.width:", f"read a list of 1; {LENGTHS}"),
    (("1150", "2024-01-02"), ":10: bed.width:", f"read 2024-01-02; {LENGTHS}"),
    (("1150", "'x'"), ":10: bed.width:", f"cannot read 'x' as a length: {LENGTHS}"),
    (("1150", "nan"), ":10: bed.width:", "read nan; write a length from 500 to 2200 mm"),
    (("1150", "-1150"), ":10: bed.width:", "read -1150; allowed are 500 to 2200 mm; plain numbers are mm"),
    (
        ("1960", "1.96"),
        ":8: sleeper[0].stature:",
        'read 1.96; allowed are 1200 to 2300 mm; plain numbers are mm: write "1.96 m" or 1960',
    ),
    (
        ("1960", '1960\nmass = "82 m"'),
        ":9: sleeper[0].mass:",
        'cannot read "m" as the unit of a mass: write 82, "82 kg" or "180 lb"',
    ),
    (('"male"', '"man"'), ":7: sleeper[0].sex:", 'read "man"; write "male", "female" or "unspecified"'),
    (
        ('"male"', '"femal"'),
        ":7: sleeper[0].sex:",
        'read "femal"; write "male", "female" or "unspecified"; did you mean "female" or "male"?',
    ),
    (('"male"', "1"), ":7: sleeper[0].sex:", 'read 1; write "male", "female" or "unspecified"'),
    (("1960", "1960\nworks = 1"), ":9: sleeper[0].works:", "read 1; write true or false"),
    (("[[sleeper]]", "[sleeper]"), ":6: sleeper:", "read a table; write a [[sleeper]] table, in double brackets"),
    (("[bed]", "[[bed]]"), ":9: bed:", "read a list of 1; write a [bed] table"),
    (("width = 1150", ""), ":9: bed.width:", "is missing: width of the platform, mm"),
    (("[bed]\nwidth = 1150", ""), ": bed:", "is missing: write a [bed] table (the bed wanted)"),
    (('"small"', "5"), ":1: name:", 'read 5; write text in "quotes"'),
    (
        before_bed("[stock]\ntimber = 'C99'"),
        ":10: stock.timber:",
        'read "C99"; known are C14, C16, C18, C20, C22, C24, C27, C30, D18, D24, D30, D35, D40',
    ),
    (
        before_bed("[stock]\nsheet = 'oak'"),
        ":10: stock.sheet:",
        'read "oak"; write "birch_plywood", "poplar_plywood" or "spruce_plywood"',
    ),
    (
        before_bed("[stock]\npanel_thickness = 19"),
        ":10: stock.panel_thickness:",
        "birch_plywood is not sold 19 mm thick; known are 4, 6.5, 9, 12, 15, 18, 21, 24, 27, 30 mm",
    ),
    (
        before_bed("[stock]\npanel_measured = 12"),
        ":10: stock.panel_measured:",
        "read 12; birch_plywood sold as 18 measures 17.1 to 18.1: measure again or name the nominal thickness sold",
    ),
    (
        measured("elbow_height = 262"),
        ":10: sleeper[0].measured.elbow_height:",
        'is not a body dimension; did you mean "elbow_height_sitting" or "knee_height"?',
    ),
    (
        measured("body_mass = 82"),
        ":10: sleeper[0].measured.body_mass:",
        "belongs one table up, as mass of [[sleeper]]",
    ),
    (
        measured("knee_height = 'x'"),
        ":10: sleeper[0].measured.knee_height:",
        f"cannot read 'x' as a length: {LENGTHS}",
    ),
    (
        before_bed("[[van.fixed]]\nname='a'\nx=[9, 5]\ny=[0, 5]\nz=[0, 5]"),
        ":11: van.fixed[0].x:",
        "read [9, 5]; write the smaller first: [from, to]",
    ),
    (
        before_bed("[[van.fixed]]\nname=''\nx=[1, 5]\ny=[0, 5]\nz=[0, 5]"),
        ":10: van.fixed[0].name:",
        'read ""; write 1 to 64 characters on one line, no blanks around them',
    ),
]


@pytest.mark.parametrize(("edit", "place", "says"), ONE_PROBLEM)
def test_one_problem_one_message(edit: tuple[str, str], place: str, says: str, refused: Refused) -> None:
    assert refused(edit) == [f"small.toml{place} {says}"]


@pytest.mark.parametrize("name", ["../up", "a/b", "a b", "", ".", "..", "-rf", "x" * 65, "a\\nb", "ü", "C:"])
def test_names_that_could_leave_the_output_folder(name: str, refused: Refused) -> None:
    (line,) = refused(('"small"', f'"{name}"'))
    assert line.startswith("small.toml:1: name: read ")
    assert line.endswith("; write 1 to 64 letters (a-z), digits, _ or -, not starting with -")


def test_all_problems_at_once_in_the_order_of_the_file(refused: Refused) -> None:
    lines = refused(('"small"', '"../x"'), ("1320\n", "nan\n"), ("1960", '"abc"'), ("1150", "9\nfoo = 1"))
    assert [line.split(" ")[:2] for line in lines] == [
        ["small.toml:1:", "name:"],
        ["small.toml:4:", "van.ceiling:"],
        ["small.toml:8:", "sleeper[0].stature:"],
        ["small.toml:10:", "bed.width:"],
        ["small.toml:11:", "bed.foo:"],
    ]


def test_an_empty_brief_names_what_is_needed() -> None:
    with pytest.raises(BriefError, match="is missing") as caught:
        parse("", "b.toml")
    assert [p.key for p in caught.value.problems] == ["name", "van", "sleeper", "bed"]
    assert "write a [[sleeper]] table (who sleeps and works in it)" in str(caught.value)


def test_three_sleepers_are_too_many(refused: Refused) -> None:
    more = '[[sleeper]]\nsex = "male"\nstature = 1700\n' * 2
    assert refused(("[bed]", f"{more}[bed]")) == ["small.toml:6: sleeper: read a list of 3; write 1 to 2"]


def test_a_bad_sleeper_does_not_hide_another(refused: Refused) -> None:
    lines = refused(("1960", "1"), ("[bed]", '[[sleeper]]\nsex = "x"\nstature = 1700\n[bed]'))
    assert [line.split(" ")[1] for line in lines] == ["sleeper[0].stature:", "sleeper[1].sex:"]


def test_hundreds_of_problems_are_cut_short(refused: Refused) -> None:
    lines = refused(("[bed]", "[bed]\n" + "\n".join(f"k{i} = 1" for i in range(300))))
    assert len(lines) == 51
    assert lines[-1] == "small.toml: and 250 more problems"


def test_messages_stay_short_and_printable(refused: Refused) -> None:
    lines = refused(
        ("1150", '"' + "9" * 5000 + '"'),
        ('"male"', '"\\u001b[31m' + "x" * 5000 + '"'),
        ("[bed]", '[bed]\n"' + "k" * 5000 + '" = 1'),
    )
    assert len(lines) == 3
    assert all(len(line) < 400 and line.isprintable() for line in lines)


def test_problems_carry_key_and_line(minimal: str) -> None:
    with pytest.raises(BriefError, match="stature") as caught:
        parse(minimal.replace("1960", "1"), "b.toml")
    (problem,) = caught.value.problems
    assert (problem.key, problem.line) == ("sleeper[0].stature", 8)
    assert caught.value.path == "b.toml"


def test_reading_a_brief_loads_nothing_heavy(tmp_path: Path) -> None:
    file = tmp_path / "b.toml"
    file.write_text(template_text("x").replace("1960", '"1.96 m"'), encoding="utf-8")
    code = (
        "import sys; from parametric.brief.loader import load; "
        f"load({str(file)!r}); "
        "print([m for m in ('pint', 'numpy', 'scipy', 'trimesh', 'cadquery') if m in sys.modules])"
    )
    out = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert out.stdout.strip() == "[]"


def test_load_returns_a_brief(tmp_path: Path, minimal: str) -> None:
    file = tmp_path / "b.toml"
    file.write_text(minimal, encoding="utf-8")
    assert isinstance(load(file), Brief)
