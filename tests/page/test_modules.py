"""The modules of the page: each takes what there is, none reaches out, and all of them fit into one file."""

from __future__ import annotations

import re
from collections import Counter

from bookmaker.page.single_file import bundled
from bookmaker.page.site_files import site_files

MODULES = {name: data.decode() for name, data in site_files().items() if name.endswith(".js")}
NAMED = re.compile(r"^(?:export )?(?:async )?(?:function|class|const|let) (\w+)", re.MULTILINE)
TAKEN = re.compile(r'^import \{([^}]*)\} from "\./([\w-]+\.js)";$', re.MULTILINE)

ELSEWHERE = r"https?:|[\"'(]//|\beval\(|new Function|innerHTML|outerHTML|document\.write|url\("


def test_no_two_modules_have_a_name_in_common() -> None:
    names = Counter(name for text in MODULES.values() for name in NAMED.findall(text))
    assert [name for name, count in names.items() if count > 1] == []


def test_each_takes_what_another_offers() -> None:
    for name, text in MODULES.items():
        assert len(TAKEN.findall(text)) == text.count("import "), name
        for taken, other in TAKEN.findall(text):
            for one in taken.split(","):
                offered = rf"^export (?:async )?(?:function|class|const) {one.strip()}\b"
                assert re.search(offered, MODULES[other], re.MULTILINE), (name, one)


def test_nothing_comes_from_elsewhere_and_nothing_is_run_from_text() -> None:
    for name, data in site_files().items():
        text = data.decode()
        assert not re.search(
            r"https?:|[\"'(]//|\beval\(|new Function|innerHTML|outerHTML|document\.write|url\(", text
        ), name


def test_one_module_holds_all_of_them() -> None:
    script = bundled()
    assert "import " not in script.replace("important", "") and "export " not in script
    assert all(name in script for text in MODULES.values() for name in NAMED.findall(text))
