#!/usr/bin/env python3
"""Checks the drawings, signs and icons of resources/ and prints one line a fault, as "file: fault"; exit 1 if there is one.

    check_drawings.py [root of the source]

A drawing is recoloured as text and painted by QtSvg, which knows little more than SVG Tiny 1.2; boundsOnElement ignores
the transforms of parents. So: few elements, exact colours, no transforms. Why a terminal needs its "-out": from there
the probe comes, and there a pulled wire hangs.
"""
import pathlib
import re
import sys
import xml.etree.ElementTree as ET

SVG = "{http://www.w3.org/2000/svg}"
SHAPES = {"svg", "g", "path", "rect", "circle", "ellipse", "line", "polyline", "polygon"}
GEOMETRY = {"d", "x", "y", "width", "height", "rx", "ry", "cx", "cy", "r", "x1", "y1", "x2", "y2", "points", "viewBox"}
PAINT = {"fill", "stroke", "stroke-width", "stroke-linecap", "stroke-linejoin", "stroke-dasharray"}
# line, detail, sheet metal, terminal, dark plastic, ceramic, sheet, slot, copper, display
DRAWING_COLOURS = {"#16201d", "#5b6763", "#dde3e0", "#b7c0bc", "#8d9894", "#ffffff", "#fbfcfa", "#0e1513", "#a8683a", "#d6ded6"}
# ANSI Z535.1 yellow, blue, red, green as sRGB, and the contrast colours of ISO 3864-1
SIGN_COLOURS = {"#ffd100", "#0057b8", "#c8102e", "#00843d", "#000000", "#ffffff"}
VIEW_BOX = {"meter": "0 0 200 320", "clamp_meter": "0 0 200 320"}
# kinds whose drawings have other names, because the supply or the cause decides which one is shown
DRAWN_AS = {
    "house_supply": ["receptacle_14_30", "receptacle_10_30", "receptacle_120", "receptacle_230"],
    "supply_208": ["receptacle_14_30"],
    "vent_blocked": ["vent"],
}
NEEDED = {
    "meter": {"display", "dial", "dial-ohm", "dial-continuity", "dial-voltage_ac", "dial-voltage_dc", "dial-capacitance",
              "dial-current_clamp", "jack-com", "jack-v", "jack-a"},
    "clamp_meter": {"display", "dial", "jaw", "dial-current_clamp"},
}


def shape_faults(root, allowed_extra=()):
    for element in root.iter():
        tag = element.tag.replace(SVG, "")
        if tag not in SHAPES:
            yield f"element <{tag}>"
        for name in element.attrib:
            if name not in GEOMETRY | PAINT | {"id", "display"} | set(allowed_extra):
                yield f"attribute {name} on <{tag}>"
        if (element.text or "").strip() or (element.tail or "").strip():
            yield f"words in or after <{tag}>"


def colour_faults(root, colours):
    for element in root.iter():
        for name in ("fill", "stroke"):
            value = element.get(name)
            if value not in colours | {None, "none"}:
                yield f"{name} {value} is none of the colours"


def painted(element, parents, name):
    """The colour an element inherits; SVG fills with black where nothing is said."""
    while element is not None:
        if element.get(name):
            return element.get(name)
        element = parents.get(element)
    return "black" if name == "fill" else "none"


def id_faults(root, box):
    parents = {child: parent for parent in root.iter() for child in parent}
    seen = {}
    for element in root.iter():
        name = element.get("id")
        if name in seen and name is not None:
            yield f"id {name} twice"
        seen[name] = element
    for name, element in seen.items():
        if name is None or not name.endswith("-out"):
            continue
        if name.removesuffix("-out") not in seen:
            yield f"{name} belongs to nothing"
        if element.tag != SVG + "circle" or element.get("r") != "1":
            yield f"{name} is no circle of r 1"
        elif not (0 <= float(element.get("cx")) <= box[2] and 0 <= float(element.get("cy")) <= box[3]):
            yield f"{name} is outside the drawing"
        if any(painted(element, parents, paint) != "none" for paint in ("fill", "stroke")):
            yield f"{name} is painted"


def position_faults(root):
    groups = {element.get("id"): element for element in root.iter() if element.get("id") in ("released", "pressed")}
    if groups and set(groups) != {"released", "pressed"}:
        yield "released and pressed come together"
    if groups.get("released") is not None and groups["released"].get("display"):
        yield "released is hidden"
    if groups.get("pressed") is not None and groups["pressed"].get("display") != "none":
        yield "pressed is not hidden"
    for element in root.iter():
        if element.get("display") and element.get("id") != "pressed":
            yield f"hidden: {element.get('id') or element.tag.replace(SVG, '')}"


def terminal_faults(drawings, kinds):
    """For every kind that has drawings: each of its terminals, with its "-out", in at least one of them."""
    for file in sorted(kinds.glob("*.yaml")):
        text = file.read_text(encoding="utf-8")
        kind = re.search(r"^(?:kind|condition):\s*(\w+)", text, re.M)
        terminals = re.search(r"^terminals:\s*\[([^\]]*)\]", text, re.M)
        if not kind or not terminals:
            continue
        names = [name for name in DRAWN_AS.get(kind[1], [kind[1]]) if name in drawings]
        ids = {element.get("id") for name in names for element in drawings[name].iter()}
        for terminal in (each.strip() for each in terminals[1].split(",")):
            for wanted in (terminal, terminal + "-out"):
                if names and wanted not in ids:
                    yield f"resources/drawings/{names[0]}.svg: no {wanted}, which {file.name} names"


def file_faults(path, drawings):
    try:
        root = ET.parse(path).getroot()
    except ET.ParseError as error:
        return [f"does not parse: {error}"]
    if path.parent.name == "signs":
        box = [] if root.get("viewBox") == "0 0 200 200" else ["viewBox is not 0 0 200 200"]
        return box + [*shape_faults(root, ["transform"]), *colour_faults(root, SIGN_COLOURS)]
    if path.parent.name == "icons":
        return list(shape_faults(root))
    drawings[path.stem] = root
    wanted = VIEW_BOX.get(path.stem, "0 0 400 260")
    box = [float(each) for each in wanted.split()]
    ids = {element.get("id") for element in root.iter()}
    return ([] if root.get("viewBox") == wanted else [f"viewBox is not {wanted}"]) + [
        *shape_faults(root), *colour_faults(root, DRAWING_COLOURS), *id_faults(root, box), *position_faults(root),
        *(f"no {each}" for each in sorted(NEEDED.get(path.stem, set()) - ids))]


def main():
    source = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else pathlib.Path(__file__).parents[2])
    drawings, lines = {}, []
    files = [path for folder in ("drawings", "signs", "icons") for path in sorted((source / "resources" / folder).glob("*.svg"))]
    if not files:
        lines.append("resources: no drawing found")
    for path in files:
        lines += [f"{path.relative_to(source)}: {fault}" for fault in file_faults(path, drawings)]
    lines += terminal_faults(drawings, source / "trees" / "kinds")
    print("\n".join(lines) if lines else f"{len(files)} files, no fault")
    return 1 if lines else 0


if __name__ == "__main__":
    sys.exit(main())
