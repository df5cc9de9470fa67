"""The wheel, installed: the demo is made from it in an empty folder, with the checkout out of reach."""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
import sysconfig
import tarfile
import tomllib
import venv
import zipfile
from pathlib import Path

import pypdfium2 as pdfium
import pytest

from bookmaker.ground.typefaces.names import BUNDLED
from tests.kit.manual import CHAPTERS

ROOT = Path(__file__).parents[2]
PARTS = ("bookmaker", "fonts", "pyproject.toml", "README.md")
"""What a wheel is built from."""


def run(*command: str | Path, folder: Path) -> subprocess.CompletedProcess[str]:
    """Run a command in a folder, with nothing in the environment that leads Python elsewhere."""
    environment = {name: value for name, value in os.environ.items() if not name.startswith(("PYTHON", "PYTEST"))}
    return subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True, check=False)


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built from a copy of the sources so that the checkout stays clean."""
    folder = tmp_path_factory.mktemp("build")
    source = folder / "source"
    source.mkdir()
    for part in PARTS:
        if (ROOT / part).is_dir():
            shutil.copytree(ROOT / part, source / part, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            shutil.copy(ROOT / part, source / part)
    built = run(
        sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", folder / "dist", source, folder=folder
    )
    assert built.returncode == 0, built.stdout + built.stderr
    (found,) = (folder / "dist").glob("*.whl")
    return found


@pytest.fixture(scope="module")
def scripts(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The scripts folder of a fresh environment with the wheel in it.

    The libraries bookmaker needs are those of the running environment, lent by a path file; bookmaker itself
    is installed from the wheel and stands before them.
    """
    home = tmp_path_factory.mktemp("environment")
    venv.create(home, with_pip=False, symlinks=os.name != "nt")
    folder = Path(sysconfig.get_path("scripts", "venv", {"base": str(home), "installed_base": str(home)}))
    packages = Path(sysconfig.get_path("purelib", "venv", {"base": str(home), "platbase": str(home)}))
    python = folder / Path(sys.executable).name
    installed = run(
        sys.executable,
        *("-m", "pip", "--python", python, "install", "-q", "--no-deps", "--no-index", wheel),
        folder=home,
    )
    assert installed.returncode == 0, installed.stdout + installed.stderr
    lent = dict.fromkeys((sysconfig.get_path("purelib"), sysconfig.get_path("platlib")))
    (packages / "lent.pth").write_text("\n".join(lent), encoding="utf-8")
    return folder


def test_wheel_holds_every_typeface_with_its_licence(wheel: Path) -> None:
    names = set(zipfile.ZipFile(wheel).namelist())
    for file in BUNDLED.values():
        assert f"bookmaker/fonts/{file}" in names
        assert f"bookmaker/fonts/{file.split('/')[0]}/OFL.txt" in names
    assert "bookmaker/fonts/README.md" in names


def test_wheel_holds_the_page(wheel: Path) -> None:
    names = set(zipfile.ZipFile(wheel).namelist())
    site = ROOT / "bookmaker" / "page" / "site"
    assert {f"bookmaker/page/site/{file.name}" for file in site.iterdir()} <= names


def test_wheel_holds_the_fonts_unaltered(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as archive:
        for file in (ROOT / "fonts").rglob("*"):
            if file.is_file():
                inside = f"bookmaker/fonts/{file.relative_to(ROOT / 'fonts').as_posix()}"
                assert archive.read(inside) == file.read_bytes()


def test_wheel_says_its_licences_and_holds_them(wheel: Path) -> None:
    """The metadata by PEP 639: an SPDX expression, and the files it stands for."""
    with zipfile.ZipFile(wheel) as archive:
        (name,) = (each for each in archive.namelist() if each.endswith(".dist-info/METADATA"))
        metadata = archive.read(name).decode("utf-8")
        held = {each.partition("/licenses/")[2] for each in archive.namelist() if "/licenses/" in each}
        mit = archive.read(f"{name.partition('/')[0]}/licenses/bookmaker/LICENSE.txt").decode("utf-8")
    assert "\nLicense-Expression: MIT AND OFL-1.1\n" in metadata
    assert held == set(re.findall(r"^License-File: (\S+)$", metadata, re.MULTILINE))
    assert held == {"bookmaker/LICENSE.txt", *(f"fonts/{file.split('/')[0]}/OFL.txt" for file in BUNDLED.values())}
    assert mit.startswith("MIT License\n")


def test_sdist_holds_what_tests_need(tmp_path: Path) -> None:
    built = run(sys.executable, "-m", "build", "--sdist", "--no-isolation", "--outdir", tmp_path, ROOT, folder=tmp_path)
    assert built.returncode == 0, built.stdout + built.stderr
    (found,) = tmp_path.glob("*.tar.gz")
    with tarfile.open(found) as archive:
        names = {name.partition("/")[2] for name in archive.getnames()}
    assert {"README.md", "DEVELOPERS.md", "pyproject.toml", "demo/shelf.yaml", "fonts/README.md"} <= names
    assert {"bookmaker/LICENSE.txt", "bookmaker/manual/contents.md", "tests/house/test_wheel.py"} <= names
    assert not any(name.split("/")[0] in {".venv", "out", ".git"} for name in names)


def test_wheel_holds_every_chapter_of_the_manual(wheel: Path) -> None:
    names = set(zipfile.ZipFile(wheel).namelist())
    assert {f"bookmaker/manual/{name}" for name in ("contents.md", *CHAPTERS)} <= names


def test_wheel_holds_nothing_else(wheel: Path) -> None:
    version = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]["version"]
    with zipfile.ZipFile(wheel) as archive:
        tops = {name.split("/")[0] for name in archive.namelist()}
    assert tops == {"bookmaker", f"bookmaker-{version}.dist-info"}


def test_installed_command_makes_the_demo(scripts: Path, tmp_path: Path) -> None:
    shutil.copytree(ROOT / "demo", tmp_path / "demo", ignore=shutil.ignore_patterns("*.py", "__pycache__"))
    made = run(scripts / "bookmaker", "make", "demo/shelf.yaml", "--into", "out", folder=tmp_path)
    assert made.returncode == 0, made.stdout + made.stderr
    files = {path.name for path in (tmp_path / "out").iterdir()}
    assert files == set(json.loads((tmp_path / "out" / "plan.json").read_text(encoding="utf-8"))["files"])
    assert len(files) > 2
    filled = shares_filled(tmp_path / "out" / "guide.pdf")
    assert len(filled) <= 45, "too long to be followed"
    assert min(filled) > 1 / 3, "a page with a few steps that were left over"


def shares_filled(guide: Path) -> list[float]:
    """How far down each page of a guide goes, as a share of its height, the line at its foot aside."""
    with pdfium.PdfDocument(guide) as document:
        shares = []
        for page in document:
            text, high = page.get_textpage(), page.get_height()
            lows = [text.get_charbox(index)[1] for index in range(text.count_chars())]
            shares.append(1 - min(low for low in lows if low > 50) / high)
        return shares


def test_installed_command_works_in_an_empty_folder(scripts: Path, tmp_path: Path) -> None:
    for command in (("new", "mine"), ("check", "mine/shelf.yaml"), ("make", "mine/shelf.yaml", "--into", "out")):
        done = run(scripts / "bookmaker", *command, folder=tmp_path)
        assert done.returncode == 0, done.stdout + done.stderr


def test_the_installed_package_is_the_one_that_runs(scripts: Path, tmp_path: Path) -> None:
    where = run(
        scripts / Path(sys.executable).name, "-c", "import bookmaker; print(bookmaker.__file__)", folder=tmp_path
    )
    assert where.returncode == 0, where.stderr
    assert Path(where.stdout.strip()).is_relative_to(scripts.parent)
