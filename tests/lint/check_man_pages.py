#!/usr/bin/env python3
"""Fails when the man pages and the source name other refusals, or other commands."""
import pathlib
import re
import sys

root = pathlib.Path(sys.argv[1]).resolve()
CLI = "packaging/meterfirst-cli.1"
WINDOW = "packaging/meterfirst.1"


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


def differences(page, what, made, listed):
    """Both ways: what the source has and the page has not, and the other way round."""
    yield from ((page, f"{what} {name} is not in it") for name in sorted(set(made) - set(listed)))
    yield from ((page, f"{what} {name} is in it, but not in the source") for name in sorted(set(listed) - set(made)))


def options(text):
    return set(re.findall(r"\.(?:Op )?Fl -(\w+)", section(text, "SYNOPSIS"))) - {"help", "version"}


def faults():
    page = (root / CLI).read_text(encoding="utf-8")
    source = text_of("app/cli")
    listed = re.findall(r"^\.It Li (\w+)$", section(page, "REFUSALS"), re.M)
    yield from ((CLI, f"{code} is listed twice") for code in sorted({c for c in listed if listed.count(c) > 1}))
    yield from differences(CLI, "refusal", refusals(), listed)
    described = re.findall(r"^\.It Cm (\w+)$", section(page, "DESCRIPTION"), re.M)
    yield from differences(CLI, "command", re.findall(r'add_subcommand\(\s*"(\w+)"', source), described)
    yield from differences(CLI, "option", re.findall(r'add_(?:flag|option)\(\s*"--(\w+)"', source), options(page))
    window = re.findall(r'addOption\(\{QStringLiteral\("(\w+)"', text_of("app/main"))
    yield from differences(WINDOW, "option", window, options((root / WINDOW).read_text(encoding="utf-8")))


found = list(faults())
for page, what in found:
    print(f"{page}:1: {what}")
sys.exit(1 if found else 0)
