#!/usr/bin/env python3
"""Fails on what may not stand in a source file, with the reason. One line of RULES is one trap."""
import pathlib
import re
import sys

TOP_LEVEL = {"CMakeLists.txt", "CMakePresets.json", "README.md", "DEVELOPERS.md", "LICENSE",
             "app", "core", "trees", "resources", "tests", "packaging", "build"}
TEXT = {".h", ".cpp", ".def", ".py", ".sh", ".cmake", ".txt", ".md", ".yaml", ".yml", ".json", ".svg", ".xml", ".desktop", ".1", ""}
CODE = {".h", ".cpp", ".def", ".py", ".sh", ".cmake", ".txt"}
MOST_LINES = 400
# Their first line or their bytes are the test: broken on purpose, or found by a machine.
AS_THEY_ARE = ("tests/golden/", "tests/fuzz/seeds/", "tests/fuzz/found/")

# (where, what must not stand there, why): looked for in code, not in comments
RULES = [
    (r"(core|app)/", r"locale::global|\bsetlocale\s*\(", "the locale of the whole program is not ours to set"),
    (r"(core|app)/", r"\b(stod|stof|stold|strtod|strtof|atof|sscanf)\s*\(|\bas<(double|float)>", "reads another number where the decimal sign is a comma"),
    (r"core/", r"std::(cout|cerr|clog)|\b(printf|fprintf|puts|perror)\s*\(|fmt::print\b", "core prints nothing"),
    (r"core/(?!base/clock)", r"(system|steady)_clock::now", "core takes the time from core/base/clock.h"),
    (r"core/(?!base/random)", r"\brandom_device\b|\bmt19937|\brand\s*\(", "core draws from core/base/random.h, which is seeded"),
    (r"app/", r"\bQ(MessageBox|ErrorMessage|InputDialog|ProgressDialog|Wizard|WhatsThis|TextBrowser)\b", "takes any text for rich text and opens files named in it"),
    (r"app/", r"\b(setHtml|insertHtml|setMarkdown|mightBeRichText)\s*\(|Qt::(RichText|AutoText|MarkdownText)", "texts are plain: a tree's text may name files to open"),
    (r"app/", r"\baddRow\s*\(\s*(tr\s*\(|u?\"|QStringLiteral)", "makes a label that takes any text for rich text: give it a label of ours"),
    (r"app/", r"\bQToolTip::showText\s*\((?!.*(toHtmlEscaped|QString\(\)))", "a tool tip takes any text for rich text: toHtmlEscaped()"),
    (r"app/", r"\bsetToolTip\s*\((?!.*(toHtmlEscaped|\(\s*\{?\s*\}?\s*\)))", "a tool tip takes any text for rich text: toHtmlEscaped()"),
    (r"app/(?!cli/)", r"\b(qDebug|printf|fprintf|puts)\s*\(|std::(cout|cerr)", "a window prints nothing"),
]
UNFINISHED = re.compile(r"\b(TO" r"DO|FIX" r"ME|XX" r"X|HA" r"CK)\b")
NEW_LABEL = re.compile(r"\bnew QLabel\b|: QLabel\(|\bQLabel \w+\s*[;({]|make_unique<QLabel>")
TEXT_ARGUMENT = re.compile(r"qs\(|[nN]ame|[tT]itle|[tT]ext|QString::from")
PLAIN = "setTextFormat(Qt::PlainText)"


def code_of(line):
    """The line without its // comment."""
    return re.sub(r"//.*", "", line)


def chained_after_text(line):
    """Whether a text is given to one arg() and more to the next: a %2 in that text would be replaced too."""
    for found in re.finditer(r"\.arg\(", line):
        depth, end = 1, found.end()
        while depth and end < len(line):
            depth += {"(": 1, ")": -1}.get(line[end], 0)
            end += 1
        if re.match(r"\s*\.arg\(", line[end:]) and TEXT_ARGUMENT.search(line[found.end() : end]):
            return True
    return False


def line_faults(name, number, line):
    if line != line.rstrip() or "\t" in line or "\r" in line:
        yield name, number, "space at the end of a line, a tab or a carriage return"
    if UNFINISHED.search(line):
        yield name, number, "unfinished work is not committed"
    if not name.startswith(("core/", "app/")):
        return
    for where, what, why in RULES:
        if re.match(where, name) and re.search(what, code_of(line)):
            yield name, number, why
    if name.startswith("app/") and chained_after_text(code_of(line)):
        yield name, number, "the second arg() replaces a %2 inside the first's text: use arg(a, b)"


def file_faults(name, text):
    lines = text.splitlines()
    for number, line in enumerate(lines, 1):
        yield from line_faults(name, number, line)
    if text and not text.endswith("\n"):
        yield name, len(lines), "no newline at the end"
    if pathlib.Path(name).suffix in CODE and len(lines) > MOST_LINES:
        yield name, len(lines), f"over {MOST_LINES} lines: split it"
    if name.endswith(".h") and not text.startswith("#pragma once\n"):
        yield name, 1, "a header begins with #pragma once"


def label_faults(root):
    """A QLabel takes any text for rich text until it is told not to: as often as one is made, PlainText is set beside it."""
    pairs = {}
    for path in sorted((root / "app").rglob("*")):
        if path.suffix in (".h", ".cpp"):
            pairs.setdefault(path.with_suffix(""), []).append(path)
    for stem, paths in pairs.items():
        text = "\n".join(code_of(line) for path in paths for line in path.read_text(encoding="utf-8").splitlines())
        made = len(NEW_LABEL.findall(text))
        if made > text.count(PLAIN):
            yield stem.relative_to(root).as_posix() + ".cpp", 1, f"{made} QLabel made, {PLAIN} {text.count(PLAIN)} times"


def faults(root):
    for path in sorted(root.iterdir()):
        if not path.name.startswith(".") and path.name not in TOP_LEVEL:
            yield path.name, 1, "does not belong at the top"
    for top in sorted(TOP_LEVEL - {"build", "LICENSE"}):
        for path in [root / top] if (root / top).is_file() else sorted((root / top).rglob("*")):
            name = path.relative_to(root).as_posix()
            if " " in name:
                yield name, 1, "a space in a file's name"
            if not path.is_file() or path.suffix not in TEXT or "__pycache__" in name or name.startswith(AS_THEY_ARE):
                continue
            try:
                text = path.read_bytes().decode("utf-8")
            except UnicodeDecodeError:
                yield name, 1, "not UTF-8"
                continue
            yield from file_faults(name, text)
    yield from label_faults(root)


if __name__ == "__main__":
    found = list(faults(pathlib.Path(sys.argv[1]).resolve()))
    for name, number, what in found:
        print(f"{name}:{number}: {what}")
    sys.exit(1 if found else 0)
