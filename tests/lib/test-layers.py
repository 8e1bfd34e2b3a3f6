#!/usr/bin/env python3
"""Gives layers.py trees that break its rules, one by one, and expects to hear of each."""
import pathlib
import sys
import tempfile

import layers

# Name, rule, the files of the tree, and a word that the fault must have; None: there is no fault.
CASES = [
    ("upward", layers.folder_faults, {"src/model/a.c": '#include "bond/b.h"\n', "src/bond/b.h": ""},
     "model may not include bond/b.h"),
    ("downward", layers.folder_faults, {"src/bond/b.c": '#include "model/a.h"\n', "src/model/a.h": ""}, None),
    ("sideways", layers.folder_faults, {"src/app/a.c": '#include "cli/b.h"\n', "src/cli/b.h": ""},
     "app may not include cli/b.h"),
    ("store-knows-model-only", layers.folder_faults,
     {"src/store/a.c": '#include "bond/b.h"\n', "src/bond/b.h": ""}, "store may not include bond/b.h"),
    ("bare-name", layers.folder_faults, {"src/model/a.c": '#include "b.h"\n'}, "with its folder"),
    ("commented-spacing", layers.folder_faults,
     {"src/model/a.c": '  #  include   <app/b.h>\n', "src/app/b.h": ""}, "model may not include app/b.h"),
    ("gtk-in-paint", layers.library_faults, {"src/paint/a.c": "#include <gtk/gtk.h>\n"}, "GTK"),
    ("gdk-in-cli", layers.library_faults, {"src/cli/a.c": "#include <gdk/gdk.h>\n"}, "GTK"),
    ("gtk-in-app", layers.library_faults, {"src/app/a.c": "#include <gtk/gtk.h>\n"}, None),
    ("cairo-in-bond", layers.library_faults, {"src/bond/a.c": "#include <cairo.h>\n"}, "cairo"),
    ("cairo-pdf-in-takeoff", layers.library_faults, {"src/takeoff/a.c": "#include <cairo-pdf.h>\n"}, "cairo"),
    ("libxml2-in-model", layers.library_faults, {"src/model/a.h": "#include <libxml/tree.h>\n"}, "libxml2"),
    ("private-header", layers.private_faults, {"src/app/a.c": '#include "store/b-private.h"\n'}, "private"),
    ("no-first-line", layers.header_faults, {"src/model/a.h": "#pragma once\n"}, "first line"),
    ("no-guard", layers.header_faults, {"src/model/a.h": "/* a.h - a */\n"}, "pragma once"),
    ("own-header-late", layers.own_header_faults,
     {"src/model/a.c": '#include <glib.h>\n#include "model/a.h"\n', "src/model/a.h": ""}, "first"),
    ("unknown-room", layers.room_faults, {"src/attic/a.c": ""}, "not in the table"),
    ("stray-at-top", layers.top_faults, {"notes.txt": ""}, "notes.txt"),
    ("gone-from-top", layers.top_faults, {"README.md": ""}, "LICENSE"),
    ("unlisted-string", layers.potfiles_faults, {"src/app/a.c": '_("Wall")', "po/POTFILES": ""}, "src/app/a.c"),
    ("unlisted-screen", layers.potfiles_faults,
     {"src/app/a.c": "", "ui/a.ui": 'translatable="yes"', "po/POTFILES": ""}, "ui/a.ui"),
    ("listed-but-gone", layers.potfiles_faults, {"src/app/b.c": "", "po/POTFILES": "src/app/a.c\n"}, "no src/app/a.c"),
    ("language-without-file", layers.languages_faults, {"po/LINGUAS": "de\n"}, "po/de.po"),
    ("file-without-language", layers.languages_faults, {"po/LINGUAS": "", "po/de.po": ""}, "de is missing"),
]


def plant(root, files):
    for name, text in files.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)


def holds(rule, files, word):
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder)
        plant(root, files)
        faults = list(rule(root))
    return (not faults) if word is None else any(word in fault for fault in faults)


def main():
    print(f"1..{len(CASES)}")
    bad = 0
    for number, (name, rule, files, word) in enumerate(CASES, 1):
        good = holds(rule, files, word)
        bad += not good
        print(f"{'ok' if good else 'not ok'} {number} /layers/hears-of/{name}")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
