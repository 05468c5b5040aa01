"""A result folder is the old one or the new one, never a mixture."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from parametric.core.errors import OutputError
from parametric.exports.folder import replacing, write

WAIT = """
import sys, time
from pathlib import Path
from parametric.exports.folder import replacing, write
with replacing(Path(sys.argv[1])) as folder:
    write(folder / "design.json", b"new")
    print("ready", flush=True)
    time.sleep(60)
"""


@pytest.fixture
def old(tmp_path: Path) -> Path:
    """An earlier result."""
    folder = tmp_path / "van"
    write(folder / "design.json", b"old")
    write(folder / "step" / "gone.step", b"old")
    return folder


def _names(folder: Path) -> list[str]:
    return sorted(str(p.relative_to(folder)) for p in folder.rglob("*") if p.is_file())


def _assert_untouched(old: Path) -> None:
    assert _names(old) == ["design.json", "step/gone.step"]
    assert (old / "design.json").read_bytes() == b"old"
    assert os.listdir(old.parent) == ["van"]


def _write_half(folder: Path, error: BaseException) -> None:
    write(folder / "design.json", b"half")
    raise error


def _waiting(target: Path) -> subprocess.Popen[str]:
    run = subprocess.Popen(
        [sys.executable, "-c", WAIT, str(target)],
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
        env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)},
    )
    assert run.stdout is not None
    assert run.stdout.readline() == "ready\n"
    run.stdout.close()
    return run


def test_new_folder_with_its_parents(tmp_path: Path) -> None:
    target = tmp_path / "a" / "b" / "van"
    with replacing(target) as folder:
        assert not target.exists()
        write(folder / "stl" / "parts" / "x.stl", b"x")
    assert _names(target) == ["stl/parts/x.stl"]
    assert os.listdir(target.parent) == ["van"]


def test_old_folder_is_replaced_as_a_whole(old: Path) -> None:
    with replacing(old) as folder:
        write(folder / "design.json", b"new")
        assert (old / "design.json").read_bytes() == b"old"
    assert _names(old) == ["design.json"]
    assert (old / "design.json").read_bytes() == b"new"
    assert os.listdir(old.parent) == ["van"]


def test_empty_folder_is_taken(tmp_path: Path) -> None:
    (tmp_path / "van").mkdir()
    with replacing(tmp_path / "van") as folder:
        write(folder / "design.json", b"new")
    assert _names(tmp_path / "van") == ["design.json"]


@pytest.mark.parametrize("error", [RuntimeError("broken"), KeyboardInterrupt()])
def test_failing_writer_leaves_the_old_folder(old: Path, error: BaseException) -> None:
    with pytest.raises(type(error)), replacing(old) as folder:
        _write_half(folder, error)
    _assert_untouched(old)


def test_failing_writer_leaves_no_new_parents(tmp_path: Path) -> None:
    with pytest.raises(RuntimeError, match="broken"), replacing(tmp_path / "a" / "b" / "van"):
        raise RuntimeError("broken")
    assert os.listdir(tmp_path) == []


def test_failing_swap_puts_the_old_folder_back(old: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    rename = Path.rename

    def failing(self: Path, target: Path) -> Path:
        if self.name.endswith(".partial"):
            raise OSError(28, "No space left on device", str(self))
        return rename(self, target)

    monkeypatch.setattr(Path, "rename", failing)
    with pytest.raises(OutputError, match="No space left on device"), replacing(old) as folder:
        write(folder / "design.json", b"new")
    _assert_untouched(old)


def test_full_disc_while_writing_is_told(old: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def failing(self: Path, data: bytes) -> int:
        raise OSError(28, "No space left on device", str(self))

    monkeypatch.setattr(Path, "write_bytes", failing)
    with pytest.raises(OutputError, match=r"design\.json cannot be written.*No space left"), replacing(old) as folder:
        write(folder / "design.json", b"new")
    _assert_untouched(old)


def test_terminated_writer_leaves_the_old_folder(old: Path) -> None:
    run = _waiting(old)
    run.send_signal(signal.SIGTERM)
    assert run.wait(20) == 128 + signal.SIGTERM
    _assert_untouched(old)


def test_killed_writer_leaves_the_old_folder_and_the_next_run_clears_up(old: Path) -> None:
    run = _waiting(old)
    run.kill()
    run.wait(20)
    assert (old / "design.json").read_bytes() == b"old"
    assert sorted(os.listdir(old.parent)) == [".van.partial", "van"]
    with replacing(old) as folder:
        assert os.listdir(folder) == []
        write(folder / "design.json", b"newer")
    assert os.listdir(old.parent) == ["van"]
    assert (old / "design.json").read_bytes() == b"newer"


def test_run_killed_between_the_two_moves_is_mended(old: Path) -> None:
    old.rename(old.with_name(".van.previous"))
    with pytest.raises(RuntimeError, match="broken"), replacing(old):
        raise RuntimeError("broken")
    _assert_untouched(old)


def test_run_killed_after_the_two_moves_is_cleared_up(old: Path) -> None:
    write(old.with_name(".van.previous") / "design.json", b"older")
    with pytest.raises(RuntimeError, match="broken"), replacing(old):
        raise RuntimeError("broken")
    _assert_untouched(old)


def test_second_writer_is_refused_and_the_first_goes_on(old: Path) -> None:
    run = _waiting(old)
    with pytest.raises(OutputError, match="being written by another run"), replacing(old):
        pytest.fail("two writers at once")
    assert run.poll() is None
    run.terminate()
    run.wait(20)
    _assert_untouched(old)


def test_file_is_refused(tmp_path: Path) -> None:
    (tmp_path / "van").write_text("mine")
    with pytest.raises(OutputError, match=r"van is a file; name a folder"), replacing(tmp_path / "van"):
        pytest.fail("entered")
    assert (tmp_path / "van").read_text() == "mine"


def test_folder_of_other_things_is_refused(tmp_path: Path) -> None:
    write(tmp_path / "van" / "letter.txt", b"mine")
    with pytest.raises(OutputError, match=r"holds other things and no design\.json"), replacing(tmp_path / "van"):
        pytest.fail("entered")
    assert _names(tmp_path) == ["van/letter.txt"]


def test_link_is_refused(old: Path) -> None:
    link = old.with_name("link")
    link.symlink_to(old)
    with pytest.raises(OutputError, match=r"link is a link; name the folder it points to, .*van"), replacing(link):
        pytest.fail("entered")
    assert link.is_symlink()


def test_link_in_the_place_of_the_partial_folder_is_not_followed(old: Path, tmp_path: Path) -> None:
    write(tmp_path / "other" / "letter.txt", b"mine")
    old.with_name(".van.partial").symlink_to(tmp_path / "other")
    with pytest.raises(OutputError, match="cannot be written"), replacing(old):
        pytest.fail("entered")
    assert (tmp_path / "other" / "letter.txt").read_bytes() == b"mine"


def test_own_folder_is_refused(old: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(old / "step")
    with pytest.raises(OutputError, match="the folder you are in or above it"), replacing(old):
        pytest.fail("entered")


def test_file_in_the_path_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    with pytest.raises(OutputError, match=r"van cannot be written: .*file"), replacing(tmp_path / "file" / "van"):
        pytest.fail("entered")


def test_forbidden_place_is_told() -> None:
    # even root makes no folder there
    with pytest.raises(OutputError, match=r"/proc/van cannot be written"), replacing(Path("/proc/van")):
        pytest.fail("entered")


def test_sigterm_is_handled_as_before_afterwards(old: Path) -> None:
    before = signal.getsignal(signal.SIGTERM)
    with replacing(old) as folder:
        assert signal.getsignal(signal.SIGTERM) is not before
        write(folder / "design.json", b"new")
    assert signal.getsignal(signal.SIGTERM) is before
