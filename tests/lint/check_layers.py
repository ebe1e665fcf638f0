#!/usr/bin/env python3
"""Fails when a file includes, or a library links, what its folder may not. The tables below are the architecture."""
import pathlib
import re
import sys

# Includes go only downwards: a folder may include what stands above it in its list, less what FORBIDDEN takes away.
CORE = ["base", "diag", "tree", "load", "circuit", "reading", "belief", "verdict", "plan", "gate", "session", "check", "sim"]
APP = ["store", "shared", "draw", "paper", "walk", "counter", "desk", "book", "author", "practice", "cli", "main"]
PLACES = {"walk", "counter", "desk", "book", "author", "practice"}  # where a person is: none knows another

FORBIDDEN = {
    # the engine works on values and does not care where they were read
    **{f"core/{name}": {"core/load"} for name in ("circuit", "reading", "belief", "verdict", "plan")},
    # the gate knows no tree
    "core/gate": {f"core/{name}" for name in CORE} - {"core/base"},
    **{f"app/{name}": {f"app/{other}" for other in PLACES - {name}} for name in PLACES},
    "app/cli": {"app/main"} | {f"app/{name}" for name in PLACES},
}
ONLY_HERE = {"yaml-cpp/": "core/load", "yaml.h": "core/load", "QSql": "app/store", "QtSql": "app/store"}
WIDGETS = re.compile(r"Q(Widget|Application|Dialog|MessageBox|Label|Painter|Paint|Pixmap|Style|Layout|MainWindow|tWidgets|tGui)")
INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]')
LINKS = re.compile(r"^(core|app)_layer\((\w+)([^)]*)\)")


def allowed(folder):
    """The folders whose headers a file of `folder` may include."""
    top, name = folder.split("/")
    order = CORE if top == "core" else APP
    below = {f"{top}/{other}" for other in order[: order.index(name) + 1]}
    if top == "app":
        below |= {f"core/{other}" for other in CORE}
    return (below - FORBIDDEN.get(folder, set())) | {folder}


def fault_of(folder, quote, name):
    """What is wrong with this include, or None."""
    for prefix, home in ONLY_HERE.items():
        if quote == "<" and name.startswith(prefix) and folder != home:
            return f"<{name}> is for {home} alone"
    if quote == "<" and re.match(r"Q[A-Z]|Qt", name):
        if folder.startswith("core/"):
            return f"<{name}>: core is free of Qt"
        if folder == "app/store" and WIDGETS.match(name):
            return f"<{name}>: app/store knows no widgets"
    if quote == '"':
        if "/" not in name:
            return None if name.endswith(".moc") else f'"{name}" is not written from the root'
        target = name.rsplit("/", 1)[0]
        if target not in allowed(folder):
            return f"{folder} may not include {target}"
    return None


def sources(root):
    for top in ("core", "app"):
        yield from sorted(p for p in (root / top).rglob("*") if p.suffix in (".h", ".cpp", ".def"))


def include_faults(root):
    known = {f"core/{name}" for name in CORE} | {f"app/{name}" for name in APP}
    for path in sources(root):
        folder = path.parent.relative_to(root).as_posix()
        if folder not in known:
            yield path, 1, f"folder {folder} is not in the tables of tests/lint/check_layers.py"
            continue
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            found = INCLUDE.match(line)
            fault = fault_of(folder, *found.groups()) if found else None
            if fault:
                yield path, number, fault


def link_faults(root):
    """`core_layer(name libs...)` in CMake says the same as the tables."""
    for top in ("core", "app"):
        path = root / top / "CMakeLists.txt"
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            found = LINKS.match(line)
            for library in re.findall(r"\b(?:core|app)_\w+", found.group(3)) if found else []:
                target = library.replace("_", "/", 1)
                if target not in allowed(f"{top}/{found.group(2)}"):
                    yield path, number, f"{top}/{found.group(2)} may not link {library}"


def faults(root):
    for path, number, what in [*include_faults(root), *link_faults(root)]:
        yield path.relative_to(root).as_posix(), number, what


if __name__ == "__main__":
    found = list(faults(pathlib.Path(sys.argv[1]).resolve()))
    for name, number, what in found:
        print(f"{name}:{number}: {what}")
    sys.exit(1 if found else 0)
