#!/usr/bin/env python3
"""How halfbond-cli is called: help, version, wrong calls, exit statuses, progress, what it loads."""
import os
import pty
import subprocess
import sys

import tap
from program import GARDEN, PROGRAM, STREET, VERBS, Folder, call, project
from tap import contains, equal

GOOD = project(STREET, GARDEN)


def help_works(*words):
    for option in ("--help", "-h"):
        code, out, err = call(*words, option)
        equal(code, 0, "exit status")
        equal(err, "", "standard error")
        contains(out, words[0] if words else "takeoff", "help")


def version_works(*words):
    code, out, err = call(*words, "--version")
    equal((code, err), (0, ""))
    equal(out.split()[0], "halfbond-cli")
    equal(len(out.split()[1].split(".")), 3, "parts of the version")


for name in [None, *VERBS]:
    given = [name] if name else []
    tap.case(f"/call/{name or 'program'}/help", *given)(help_works)
    tap.case(f"/call/{name or 'program'}/version", *given)(version_works)


# Words of the call ("@": a good project's path), and a word of the message.
WRONG = [
    ("no-verb", [], "lay"),
    ("unknown-verb", ["build"], "build"),
    ("no-file", ["lay"], "project file"),
    ("two-files", ["lay", "@", "@"], "one word too many"),
    ("unknown-option", ["lay", "@", "--frobnicate"], "--frobnicate"),
    ("unknown-wall", ["lay", "@", "--wall", "w9"], "w1, w2"),
    ("option-without-value", ["lay", "@", "--wall"], "--wall"),
    ("json-and-csv", ["takeoff", "@", "--json", "--csv"], "--csv"),
    ("work-gang-nobody", ["work", "@", "--gang", "0"], "--gang: 0 is not within 1 to 1000"),
    ("work-no-hours", ["work", "@", "--hours-a-day", "0"], "--hours-a-day: it must be more than 0, and 24 at most"),
    ("work-endless-hours", ["work", "@", "--hours-a-day", "inf"], "--hours-a-day"),
    ("work-hours-no-number", ["work", "@", "--hours-a-day", "nan"], "--hours-a-day"),
    ("work-minutes-negative", ["work", "@", "--minutes-a-cut", "-1"], "--minutes-a-cut: it must be 0 or more"),
    ("work-pallet-negative", ["work", "@", "--blocks-a-pallet", "-1"], "--blocks-a-pallet"),
    ("work-rise-nothing", ["work", "@", "--rise", "0"], "--rise: it must be more than 0 mm"),
    ("plan-block-alone", ["plan", "@", "--block", "b1"], "go with --outline"),
    ("plan-into-alone", ["plan", "@", "--into", "x"], "--into goes with"),
    ("plan-block-unknown", ["plan", "@", "--outline", "8000 x 6000", "--block", "b9"], "no block “b9”"),
    ("rod-into-alone", ["rod", "@", "--into", "x"], "--into goes with --to-gauge"),
    ("rod-span-backwards", ["rod", "@", "--first-bed", "40..10"], "the lesser first"),
    ("rod-span-no-length", ["rod", "@", "--bed", "thin..thick"], "--bed"),
    ("rod-wall-unknown", ["rod", "@", "--wall", "w9"], "no wall “w9”"),
    ("level-json-and-csv", ["level", "@", "--json", "--csv"], "--csv"),
    ("level-book-without-csv", ["level", "@", "--book"], "--book goes with --csv"),
    ("cut-without-stock", ["cut"], "--stock"),
    ("cut-with-a-file", ["cut", "@", "--stock", "600"], "one word too many"),
    ("cut-stock-no-number", ["cut", "--stock", "long"], "long"),
    ("cut-stock-nothing", ["cut", "--stock", "0"], "--stock: it must be more than 0 mm, not 0 mm"),
    ("cut-stock-negative", ["cut", "--stock", "-5"], "--stock: it must be more than 0 mm, not -5 mm"),
    ("cut-stock-endless", ["cut", "--stock", "1000001"], "1000000 at most"),
    ("cut-kerf-eats-the-stock", ["cut", "--stock", "600", "--kerf", "600"], "less than the stock of 600 mm"),
    ("cut-stock-exponent", ["cut", "--stock", "6e2"], "6e2"),
    ("cut-kerf-negative", ["cut", "--stock", "600", "--kerf", "-1"], "--kerf"),
    ("advise-without-opening", ["advise", "@"], "--opening"),
    ("advise-opening-and-all", ["advise", "@", "--opening", "o1", "--all"], "--opening goes without --all"),
    ("advise-edge-without-opening", ["advise", "@", "--all", "--edge", "sill"], "--edge goes with --opening"),
    ("advise-unknown-edge", ["advise", "@", "--opening", "o1", "--edge", "lintel"], "jamb, sill, head"),
    ("advise-into-without-all", ["advise", "@", "--wall", "w1", "--into", "x"], "--into goes with --all"),
    ("advise-unknown-wall", ["advise", "@", "--wall", "w9"], "w9"),
    ("advise-unknown-opening", ["advise", "@", "--opening", "o9"], "o9"),
    ("advise-step-nothing", ["advise", "@", "--opening", "o1", "--step", "0"], "--step: it must be more than 0 mm, not 0 mm"),
    ("advise-too-many-places", ["advise", "@", "--opening", "o1", "--within", "20000", "--step", "1"], "40001"),
    ("advise-within-too-much", ["advise", "@", "--opening", "o1", "--within", "7000", "--step", "0.5"],
     "with --step 0.5, --within is 5000 at most"),
    ("output-of-no-name", ["lay", "@", "-o", ""], "-o needs a file name"),
    ("output-is-a-folder", ["export", "@", "--to", "svg", "-o", "gone/"], "gone/"),
    ("several-into-a-folder", ["export", "@", "--to", "svg", "-o", "."], "is a folder"),
    ("sheets-into-a-folder", ["sheet", "@", "--kind", "client", "-o", "./"], "names a folder"),
    ("sheet-without-kind", ["sheet", "@", "-o", "x.pdf"], "--kind"),
    ("sheet-unknown-kind", ["sheet", "@", "--kind", "roof", "-o", "x.pdf"], "elevation, client"),
    ("sheet-unknown-paper", ["sheet", "@", "--kind", "client", "--paper", "B7", "-o", "x.pdf"], "A4, A3"),
    ("sheet-scale-no-number", ["sheet", "@", "--kind", "client", "--scale", "big", "-o", "x.pdf"], "big"),
    ("sheet-scale-nothing", ["sheet", "@", "--kind", "client", "--scale", "0", "-o", "x.pdf"], "--scale"),
    ("sheet-of-several-to-output", ["sheet", "@", "--kind", "client"], "--wall"),
    ("export-without-format", ["export", "@", "-o", "x"], "--to"),
    ("export-unknown-format", ["export", "@", "--to", "gif", "-o", "x"], "svg, png, csv"),
    ("export-ods-not-yet", ["export", "@", "--to", "ods", "-o", "x"], "not write ods yet"),
    ("export-ifc-not-yet", ["export", "@", "--to", "ifc", "-o", "x"], "not write ifc yet"),
    ("export-width-out-of-range", ["export", "@", "--to", "png", "--width", "9", "-o", "x"], "--width"),
]


def refused(words, word):
    with Folder() as folder:
        path = folder.file(GOOD)
        code, out, err = call(*[path if w == "@" else w for w in words], cwd=folder.name)
        equal(code, 2, f"exit status ({err})")
        equal(out, "", "standard output")
        contains(err, word, "message")
        equal(os.listdir(folder.name), ["trial.halfbond"], "files")


for name, words, word in WRONG:
    tap.case(f"/call/wrong/{name}", words, word)(refused)


@tap.case("/call/loads-no-gtk")
def loads_no_gtk():
    done = subprocess.run(["ldd", PROGRAM], capture_output=True, encoding="utf-8", check=True)
    contains(done.stdout, "libglib-2.0", "libraries")
    for library in ("libgtk", "libgdk-", "libX11-xcb", "libwayland-client"):
        if library in done.stdout and library in ("libgtk", "libgdk-"):
            raise AssertionError(f"loads {library}: {done.stdout}")


@tap.case("/call/needs-no-display-and-no-home")
def needs_nothing():
    with Folder() as folder:
        path = folder.file(GOOD)
        env = {"PATH": "/nowhere", "LD_LIBRARY_PATH": os.environ.get("LD_LIBRARY_PATH", "")}
        code, out, err = call("lay", path, env=env)
        equal((code, err), (0, ""))
        contains(out, "w1", "result")


def on_terminal(words, folder):
    """What the program writes on a terminal's standard error."""
    master, slave = pty.openpty()
    with subprocess.Popen([PROGRAM, *words], stdout=subprocess.PIPE, stderr=slave, cwd=folder) as running:
        os.close(slave)
        running.communicate(timeout=100)
        seen = b""
        try:
            while chunk := os.read(master, 65536):
                seen += chunk
        except OSError:  # the other end is closed
            pass
        os.close(master)
        return running.returncode, seen.decode()


LONG = ["advise", "trial.halfbond", "--opening", "o1", "--within", "1700", "--step", "0.5"]


@tap.case("/call/progress-on-a-terminal-and-wiped")
def progress_on_terminal():
    with Folder() as folder:
        folder.file(GOOD)
        code, seen = on_terminal(LONG, folder.name)
        equal(code, 0, "exit status")
        contains(seen, " of ", "progress")
        equal(seen.endswith("\r\033[K"), True, "wiped at the end")


@tap.case("/call/no-progress-elsewhere")
def no_progress_elsewhere():
    with Folder() as folder:
        folder.file(GOOD)
        code, _, err = call(*LONG, cwd=folder.name)
        equal((code, err), (0, ""))


if __name__ == "__main__":
    sys.exit(tap.main())
