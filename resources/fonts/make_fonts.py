#!/usr/bin/python3
"""Makes MeterFirstSans-Regular.otf and MeterFirstSans-Bold.otf from Debian's fonts-b612: the same glyphs, another name."""
import pathlib
from fontTools.ttLib import TTFont

SOURCE = pathlib.Path("/usr/share/fonts/opentype/b612")
FAMILY = "Meter First Sans"


def rename(style):
    font = TTFont(SOURCE / f"B612-{style}.otf", recalcTimestamp=False)
    postscript = FAMILY.replace(" ", "") + "-" + style
    version = font["name"].getDebugName(5)
    names = {1: FAMILY, 2: style, 3: f"{postscript}: {version}", 4: f"{FAMILY} {style}", 6: postscript,
             16: FAMILY, 17: style}
    for number, text in names.items():
        font["name"].setName(text, number, 3, 1, 0x409)
    cff = font["CFF "].cff
    cff.fontNames = [postscript]
    cff[0].FullName, cff[0].FamilyName = names[4], FAMILY
    font.save(pathlib.Path(__file__).with_name(postscript + ".otf"))


for style in ("Regular", "Bold"):
    rename(style)
