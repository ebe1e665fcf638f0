#!/usr/bin/env python3
"""Fails when the man pages and the source name other refusals, or other commands."""
import pathlib
import re
import sys

root = pathlib.Path(sys.argv[1]).resolve()
PAGE = "packaging/meterfirst-cli.1"


def text_of(*folders):
    return "\n".join(
        path.read_text(encoding="utf-8") for folder in folders for path in sorted((root / folder).glob("*.cpp"))
    )


def section(page, title):
    return re.search(rf"^\.Sh {title}\n(.*?)(?=^\.Sh )", page, re.S | re.M).group(1)


def refusals():
    """Every code a session can answer with, from where it is made."""
    gate = re.findall(r'\{\s*RefusalCode::\w+,\s*"(\w+)"', (root / "core/gate/refusal.h").read_text(encoding="utf-8"))
    readings = re.search(r"std::string_view word\(Misread::Code.*?\n}", text_of("core/reading"), re.S).group(0)
    session = re.findall(r"\bDenial\{([^;]*?)[,}]", text_of("core/session", "app/cli"))
    codes = {code for first in session for code in re.findall(r'"([a-z_]+)"', first)}
    return set(gate) | set(re.findall(r'"([a-z_]+)"', readings)) | codes


def faults():
    page = (root / PAGE).read_text(encoding="utf-8")
    listed = re.findall(r"^\.It Li (\w+)$", section(page, "REFUSALS"), re.M)
    made = refusals()
    yield from (f"{code} is listed twice" for code in sorted({c for c in listed if listed.count(c) > 1}))
    yield from (f"refusal {code} is not in it" for code in sorted(made - set(listed)))
    yield from (f"refusal {code} is in it, but nothing answers with it" for code in sorted(set(listed) - made))
    commands = set(re.findall(r'add_subcommand\(\s*"(\w+)"', text_of("app/cli")))
    described = set(re.findall(r"^\.It Cm (\w+)$", section(page, "DESCRIPTION"), re.M))
    yield from (f"command {name} is not in it" for name in sorted(commands - described))
    yield from (f"command {name} is in it, but not in the program" for name in sorted(described - commands))


found = list(faults())
for what in found:
    print(f"{PAGE}:1: {what}")
sys.exit(1 if found else 0)
