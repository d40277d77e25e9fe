"""Times the pack of 30 students against the same pages set by WeasyPrint, Chromium and the Typst compiler.

    cargo build --release --bin coursewright
    python3 -m venv target/print && target/print/bin/pip install weasyprint typst
    target/print/bin/python tests/models/print_speed.py target/release/coursewright

Needs pdfinfo (poppler-utils), and Chromium for its row. All runs follow each other on one machine, each document
in one go. What each is given: the words, tables and lists of the printed pages as HTML, taken from the tags of our
own PDFs, and the drawings as SVG where the pages have them, with the same paper, size of letters and typeface. What
each writes is tagged, as the pages are. A row without the drawings is in the others' favour. The Typst compiler is
given our own templates with the same data and drawings; two elements it has only behind a switch that its Python
package lacks are left out, in its favour.
"""

import html
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parents[2]
PAGES, FONTS = ROOT / "lessons/pages", ROOT / "src-tauri/crates/press/fonts"
STUDENTS, TIMES = 30, 3

STYLE = """
@font-face { font-family: Page; src: url(%s/AtkinsonHyperlegibleNext-Regular.ttf) }
@font-face { font-family: Page; font-weight: bold; src: url(%s/AtkinsonHyperlegibleNext-Bold.ttf) }
@page { size: A4; margin: 21mm 15mm 18mm; @bottom-right { content: counter(page) " of " counter(pages) } }
body { font: 12pt Page; margin: 0 } h1 { font-size: 26pt } h2 { font-size: 17pt; break-after: avoid }
table { width: 100%%; border-collapse: collapse } td, th { border-bottom: 0.5pt solid; text-align: left; padding: 1.6mm }
tr { break-inside: avoid }
""" % (FONTS.as_uri(), FONTS.as_uri())

# Where a drawing belongs, until it is put there.
DRAWING = "<!-- drawing -->"

# Of the tags of a PDF, those with a meaning in HTML; the others are passed through.
TAGS = {"H1": "h1", "H2": "h2", "H3": "h3", "P": "p", "Table": "table", "TR": "tr", "TH": "th", "TD": "td",
        "L": "ul", "LI": "li", "Div": "div"}


# A cell that heads nothing.
PLAIN_CELL = "#let plain-cell(scope: none, body) = body\n"


def run(*call):
    return subprocess.run([str(it) for it in call], check=True, capture_output=True, text=True)


def course(folder):
    text = (ROOT / "lessons/examples/hollin-bank.walling").read_text()
    group = re.search(r"\[group\].*?(?=\n\[)", text, re.S).group(0)
    text = text.replace(group, f"[group]\ninstructors = 5\nnovices = {STUDENTS}\n")
    path = folder / "course.walling"
    path.write_text(text)
    return path


def as_html(pdf):
    """The tagged words of a PDF as HTML."""
    told = run("pdfinfo", "-struct-text", pdf).stdout
    out, open_tags = [], []
    for line in told.splitlines():
        deep, line = len(line) - len(line.lstrip()), line.strip()
        while open_tags and deep <= open_tags[-1][0]:
            out.append(f"</{open_tags.pop()[1]}>")
        if line.startswith("Figure"):
            out.append(DRAWING)
        if line.startswith('"'):
            out.append(html.escape(line.strip('"')))
            continue
        tag = TAGS.get(re.split(r"[ :]", line, maxsplit=1)[0])
        if tag:
            out.append(f"<{tag}>")
            open_tags.append((deep, tag))
    out += [f"</{tag}>" for _, tag in reversed(open_tags)]
    return f"<!doctype html><html lang=en><title>{pdf.stem}</title><style>{STYLE}</style>{''.join(out)}"


def pages(folder):
    return sum(int(re.search(r"Pages:\s+(\d+)", run("pdfinfo", pdf).stdout)[1]) for pdf in folder.glob("*.pdf"))


def timed(name, work, folder):
    took = []
    for _ in range(TIMES):
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir()
        before = time.perf_counter()
        work(folder)
        took.append(time.perf_counter() - before)
    best = min(took)
    print(f"{name:60} {best:8.2f} s {pages(folder):5} pages", flush=True)
    return best


def fed(program, file, name, folder):
    """What the template of a document is fed: its data, and its drawings."""
    run(program, "print", file, "--json", name, "--out", folder)
    return sorted(folder.glob("*.svg"))


def with_drawings(sheet, drawings, to):
    """The page with its drawings, one after the other, each where the printed page has one."""
    drawings = iter(drawings)

    def one(_):
        drawing = next(drawings, None)
        return f'<img src="{drawing.as_uri()}">' if drawing else ""

    to.write_text(re.sub(DRAWING, one, sheet.read_text()))


def typst_files(fed_to, names, folder):
    """Our templates beside their data and drawings, a folder for each document."""
    for name in names:
        own = shutil.copytree(fed_to / name, folder / name)
        shutil.copytree(PAGES, own, dirs_exist_ok=True)
        shutil.copytree(ROOT / "lessons/sketches", own / "sketches")
        look = (own / "look.typ").read_text()
        (own / "look.typ").write_text(PLAIN_CELL + look.replace("pdf.header-cell(", "plain-cell("))
    return [folder / name / f"{name}.typ" for name in names]


def main():
    program = pathlib.Path(sys.argv[1]).resolve()
    with tempfile.TemporaryDirectory() as made:
        made = pathlib.Path(made)
        file, out = course(made), made / "out"
        names = [line.split()[0] for line in run(program, "print", "--list").stdout.splitlines()]
        ours = timed("Coursewright, planning and all", lambda to: run(program, "print", file, "--out", to, "--only", ",".join(names)), out)
        fed_to = made / "fed"
        drawings = {name: fed(program, file, name, fed_to / name) for name in names}
        bare, whole = made / "bare", made / "whole"
        for folder in (bare, whole):
            folder.mkdir()
        for pdf in sorted(out.glob("*.pdf")):
            sheet = bare / f"{pdf.stem}.html"
            sheet.write_text(as_html(pdf))
            with_drawings(sheet, drawings[pdf.stem], whole / sheet.name)

        import weasyprint

        def in_python(sheet, to):
            weasyprint.HTML(sheet).write_pdf(to, pdf_variant="pdf/ua-1")

        others = {}
        browser = shutil.which("chromium")
        for folder, what in ((whole, "with drawings"), (bare, "words alone")):
            sheets = sorted(folder.glob("*.html"))
            name = f"WeasyPrint {weasyprint.__version__}, {what}"
            others[name] = timed(name, lambda to: [in_python(it, to / f"{it.stem}.pdf") for it in sheets], out)
            if browser:
                name = run(browser, "--version").stdout.split(" built")[0] + f", headless, {what}"
                call = [browser, "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer"]
                others[name] = timed(name, lambda to: [run(*call, f"--print-to-pdf={to / it.stem}.pdf", it.as_uri()) for it in sheets], out)

        import importlib.metadata

        import typst

        templates = typst_files(fed_to, [name for name in names if (PAGES / f"{name}.typ").exists()], made / "typst")
        name = f"Typst compiler, typst {importlib.metadata.version('typst')} of PyPI"

        def compile_all(to):
            for it in templates:
                typst.compile(str(it), output=str(to / f"{it.stem}.pdf"), root=str(it.parent), font_paths=[str(FONTS)],
                              ignore_system_fonts=True, pdf_standards=["ua-1"])

        try:
            others[name] = timed(name, compile_all, out)
        except Exception as wrong:  # told, not hidden: the other rows still count
            print(f"{name}: {wrong}")
        for name, took in others.items():
            print(f"{took / ours:8.1f} times as long: {name}")


if __name__ == "__main__":
    main()
