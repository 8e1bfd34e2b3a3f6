#!/usr/bin/env python3
"""Holds the house together: what each folder of src may include, and the few rules beside it.

An upward include of a header alone compiles without a word, so this reads every #include against the
table below (the one of DEVELOPERS.md). Each rule is one TAP case.
"""
import pathlib
import re
import sys

# Folder: the folders whose headers it may include. Its own are always allowed.
CORE = ["model", "bond", "cutting", "concrete", "site", "takeoff", "advice"]
MAY_INCLUDE = {
    "model": [],
    "bond": ["model"],
    "cutting": ["model"],
    "concrete": ["model", "bond", "cutting"],
    "site": ["model", "bond"],
    "takeoff": ["model", "bond", "cutting", "concrete", "site"],
    "advice": ["model", "bond", "cutting", "concrete", "site", "takeoff"],
    "store": ["model"],
    "paint": CORE,
    "export": CORE + ["store", "paint"],
    "cli": CORE + ["store", "paint", "export"],
    "app": CORE + ["store", "paint", "export"],
}

# Libraries that only some folders may know: how their headers begin, and the folders.
LIBRARIES = [
    ("GTK", re.compile(r"(gtk|gdk|gsk|graphene|adwaita)([/.-])"), {"app"}),
    ("cairo", re.compile(r"cairo"), {"paint", "export", "app"}),
    ("Pango", re.compile(r"pango/"), {"paint", "export", "app"}),
    ("libxml2", re.compile(r"libxml/"), {"store", "export"}),
    ("libzip", re.compile(r"zip\.h"), {"export"}),
    ("GLPK", re.compile(r"glpk\.h"), {"cutting"}),
    ("Gio", re.compile(r"gio/"), {"store", "export", "cli", "app"}),
]

INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', re.MULTILINE)


def sources(root):
    for path in sorted((root / "src").rglob("*.[ch]")):
        yield path, path.relative_to(root / "src").parts[0], path.read_text(encoding="utf-8")


def folder_faults(root):
    """Includes of a folder that stands beside or below."""
    for path, folder, text in sources(root):
        for quote, header in INCLUDE.findall(text):
            target = header.split("/")[0]
            if quote == '"' and "/" not in header:
                yield f"{path.relative_to(root)}: \"{header}\" is to be written with its folder"
            elif quote == '"' and not (root / "src" / header).is_file() and target in MAY_INCLUDE:
                yield f"{path.relative_to(root)}: there is no {header}"
            elif target in MAY_INCLUDE and target != folder and target not in MAY_INCLUDE[folder]:
                yield f"{path.relative_to(root)}: {folder} may not include {header}"


def private_faults(root):
    """A NAME-private.h is for its own folder only."""
    for path, folder, text in sources(root):
        for _, header in INCLUDE.findall(text):
            if header.endswith("-private.h") and header.split("/")[0] != folder:
                yield f"{path.relative_to(root)}: {header} is private to its folder"


def library_faults(root):
    for path, folder, text in sources(root):
        for _, header in INCLUDE.findall(text):
            for library, begins, folders in LIBRARIES:
                if begins.match(header) and folder not in folders:
                    yield f"{path.relative_to(root)}: {folder} may not know {library} ({header})"


def header_faults(root):
    """Every header guards itself and says on its first line what it is."""
    for path, _, text in sources(root):
        if path.suffix != ".h":
            continue
        if not text.startswith(f"/* {path.name} - "):
            yield f"{path.relative_to(root)}: its first line is to say what it is: /* {path.name} - ... */"
        if "#pragma once" not in text:
            yield f"{path.relative_to(root)}: has no #pragma once"


def own_header_faults(root):
    """A source file includes its own header first, so that each header is proved to be enough."""
    for path, folder, text in sources(root):
        if path.suffix != ".c":
            continue
        own = path.with_suffix(".h")
        if not own.is_file():
            continue
        included = INCLUDE.search(text)
        if not included or included[2] != f"{folder}/{own.name}":
            yield f"{path.relative_to(root)}: is to include {folder}/{own.name} first"


def room_faults(root):
    """Folders of src that the table does not know."""
    for path in sorted((root / "src").iterdir()):
        if path.is_dir() and path.name not in MAY_INCLUDE and path.name != "__pycache__":
            yield f"{path.relative_to(root)}: not in the table of tests/lib/layers.py"


TOP = {"README.md", "DEVELOPERS.md", "LICENSE", "meson.build", "src", "ui", "data", "tests", "po", "docs"}


def top_faults(root):
    """The top level is exactly what README.md says, beside dotfiles and build folders."""
    there = {p.name for p in root.iterdir() if not p.name.startswith(".") and not p.name.startswith("build")}
    for name in sorted(there - TOP):
        yield f"{name}: does not belong at the top"
    for name in sorted(TOP - there):
        yield f"{name}: is missing at the top"


MARKED_C = re.compile(r"\b(N_|C_|Q_|NC_|_|ngettext|g_dngettext|g_dpgettext2?)\s*\(\s*\"")
MARKED_UI = re.compile(r'translatable="(yes|true|1)"')


def marked(root):
    """Files with strings for people in them."""
    for path, _, text in sources(root):
        if MARKED_C.search(text):
            yield path.relative_to(root).as_posix()
    for path in sorted((root / "ui").rglob("*.ui")):
        if MARKED_UI.search(path.read_text(encoding="utf-8")):
            yield path.relative_to(root).as_posix()
    for pattern in ("*.desktop.in*", "*.metainfo.xml.in*", "*.gschema.xml"):
        for path in sorted((root / "data").rglob(pattern)):
            yield path.relative_to(root).as_posix()


def listed(root):
    text = (root / "po" / "POTFILES").read_text(encoding="utf-8")
    return [line.strip() for line in text.splitlines() if line.strip() and not line.startswith("#")]


def potfiles_faults(root):
    """po/POTFILES lists every file that has strings for people, and no file that is gone."""
    names = listed(root)
    for name in marked(root):
        if name not in names:
            yield f"po/POTFILES: {name} is missing (renew with: tests/lib/layers.py --potfiles)"
    for name in names:
        if not (root / name).is_file():
            yield f"po/POTFILES: there is no {name}"


def languages_faults(root):
    languages = (root / "po" / "LINGUAS").read_text(encoding="utf-8").split()
    for name in languages:
        if not (root / "po" / f"{name}.po").is_file():
            yield f"po/LINGUAS: there is no po/{name}.po"
    for path in sorted((root / "po").glob("*.po")):
        if path.stem not in languages:
            yield f"po/LINGUAS: {path.stem} is missing"


RULES = [
    ("/layers/rooms-are-known", room_faults),
    ("/layers/includes-point-up", folder_faults),
    ("/layers/private-stays-private", private_faults),
    ("/layers/libraries-where-they-belong", library_faults),
    ("/layers/headers-say-what-they-are", header_faults),
    ("/layers/own-header-first", own_header_faults),
    ("/house/top-level", top_faults),
    ("/po/potfiles-complete", potfiles_faults),
    ("/po/linguas-complete", languages_faults),
]


def judge(root):
    print(f"1..{len(RULES)}")
    bad = 0
    for number, (name, rule) in enumerate(RULES, 1):
        faults = list(rule(root))
        bad += bool(faults)
        print(f"{'not ok' if faults else 'ok'} {number} {name}")
        for fault in faults:
            print(f"# {fault}")
    return 1 if bad else 0


def main(arguments):
    root = pathlib.Path(__file__).resolve().parents[2]
    if arguments == ["--potfiles"]:
        (root / "po" / "POTFILES").write_text("".join(f"{name}\n" for name in sorted(marked(root))))
        return 0
    return judge(root)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
