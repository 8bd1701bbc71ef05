#!/usr/bin/env python3
# What pages.mjs has made of pages, held against what paper and dark nights ask for:
#
#   python3 tests/exports/printed.py FOLDER PAGE.html...
#
#   drawings  every svg element of the page is XML by itself (Python's parser, which is expat)
#   paper     pages of the right size, a sensible number of them, none empty, no heading left alone at a page's foot
#   night     nothing on the screen but red: green and blue light undo dark adaptation
#
# Prints a line for each fault; exit status 1 if there is one.
import re
import subprocess
import sys
import xml.etree.ElementTree as xml
from pathlib import Path

# In points of 1/72 inch. ISO 216: A4 is 210 x 297 mm. ANSI/ASME Y14.1: size A is 8.5 x 11 inches.
PAPERS = {"a4": (595.3, 841.9), "letter": (612.0, 792.0)}
WITHIN_POINTS = 1.0  # Chromium rounds paper to whole points
PAGES = range(4, 11)  # common practice, no source: two to five sheets of paper, printed on both sides; now 6 to 8
LEAST_LETTERS = 40  # on a page: less is nothing but the tail of a paragraph, whatever fonts there are
MOST_GREEN_OR_BLUE = 8  # of 255: what rounding leaves of none at all


def output_of(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def faults_of_drawings(page):
    for drawing in re.findall(r"<svg.*?</svg>", page.read_text(encoding="utf-8"), re.DOTALL):
        try:
            xml.fromstring(drawing)
        except xml.ParseError as error:
            yield f"a drawing is no XML: {error}"


def headings_of(page):
    return set(re.findall(r"<h2>(.*?)</h2>", page.read_text(encoding="utf-8")))


def faults_of_paper(pdf, paper, headings):
    about = output_of("pdfinfo", "-f", "1", "-l", "999", pdf)
    sizes = [tuple(map(float, size)) for size in re.findall(r"Page +\d+ size: +([\d.]+) x ([\d.]+)", about)]
    if len(sizes) not in PAGES:
        yield f"has {len(sizes)} pages, not {PAGES.start} to {PAGES.stop - 1}"
    for number, size in enumerate(sizes, 1):
        if any(abs(is_ - should_be) > WITHIN_POINTS for is_, should_be in zip(size, PAPERS[paper])):
            yield f"page {number} measures {size} points, not {PAPERS[paper]}"
    for number, text in enumerate(output_of("pdftotext", "-layout", pdf, "-").split("\f")[: len(sizes)], 1):
        letters = len(re.sub(r"\s", "", text))
        if letters < LEAST_LETTERS:
            yield f"page {number} is almost empty: {letters} letters"
        lines = text.split("\n")
        last = next((line.strip() for line in reversed(lines) if line.strip()), "")
        if last in headings:
            yield f"page {number} ends with a heading: {last}"


def faults_of_night(picture):
    channels = output_of("identify", "-format", "%[fx:255*maxima.r] %[fx:255*maxima.g] %[fx:255*maxima.b]", picture)
    red, green, blue = map(float, channels.split())
    if max(green, blue) > MOST_GREEN_OR_BLUE:
        yield f"not red alone: green up to {green:.0f}, blue up to {blue:.0f} of 255"
    if red < 64:
        yield f"too dark to read: red up to {red:.0f} of 255"


def faults_of(page, folder):
    yield from faults_of_drawings(page)
    if 'class="night"' in page.read_text(encoding="utf-8")[:400]:
        yield from faults_of_night(folder / f"{page.stem}.png")
        return
    for paper in PAPERS:
        for fault in faults_of_paper(folder / f"{page.stem}.{paper}.pdf", paper, headings_of(page)):
            yield f"{paper}: {fault}"


def main():
    folder, *pages = map(Path, sys.argv[1:])
    faults = [f"{page.name}: {fault}" for page in pages for fault in faults_of(page, folder)]
    print("\n".join(faults), end="\n" if faults else "")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
