"""Pieces that are set by hand in a real window: pinned, cut in two, joined, listed, let go."""
import pathlib
import re
import shutil
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).parent))
import desk  # noqa: E402

desk.inside_bus()

import tap  # noqa: E402
from desk import Program, Screen, wait_for  # noqa: E402

HALFBOND = str(pathlib.Path(sys.argv[1]).resolve())
WORK = pathlib.Path(tempfile.mkdtemp(prefix="halfbond-test-"))

# Five blocks and a half without an opening: every piece is known.
WALL = """<?xml version="1.0" encoding="UTF-8"?>
<project xmlns="urn:halfbond:project:1" title="Shed">
  <block id="b1" name="Large block" length="600" height="200" thickness="250" density="500"/>
  <wall id="w1" name="Front" block="b1" length="3315" height="1220">%s</wall>
</project>
"""


def made(name, inside=""):
    path = WORK / name
    path.write_text(WALL % inside, encoding="utf-8")
    return path


def pins(path):
    """(course, x, length or 0) of each pin in the file."""
    found = []
    for tag in re.findall(r"<pin [^>]*>", path.read_text(encoding="utf-8")):
        values = dict(re.findall(r'([a-z]+)="([^"]*)"', tag))
        found.append((int(values["course"]), float(values["x"]), float(values.get("length", 0))))
    return found


def saved(program, path, right):
    """The pins of the saved file, as soon as they are right."""
    def look():
        program.keys("ctrl+s")
        return right(pins(path))
    look.__doc__ = "the right pins in " + str(pins(path))
    wait_for(look, 6)
    return pins(path)


def light_first(program):
    """Nothing is selected, and the first piece is lit."""
    program.wait_cuts(lambda n: n >= 0)
    x, y, width, height = program.box(program.wall())
    program.click((x + width // 2, y + height + 60))
    program.keys("Right")
    wait_for(lambda: "Course 1, piece 1:" in lit(program))


def lit(program):
    return program.describe(program.wall())


def measures(program):
    """Left face and length of the lit piece."""
    found = re.search(r": ([\d.]+) mm, .*left face at ([\d.]+)", lit(program))
    return float(found.group(2)), float(found.group(1))


def press(program, name):
    program.find("push button", name).get_action_iface().do_action(0)
    program.settle()


@tap.case("/pins/p-pins-the-lit-piece-and-lets-it-go")
def pin():
    path = made("pin.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        light_first(program)
        program.keys("Right")
        x, length = measures(program)
        program.keys("p")
        tap.equal(saved(program, path, len), [(1, x, length)])
        tap.equal(measures(program), (x, length), "the same piece is lit")
        program.picture("pinned")
        program.keys("p")
        tap.equal(saved(program, path, lambda found: not found), [])
        program.keys("ctrl+z")
        tap.equal(saved(program, path, len), [(1, x, length)], "one step")


@tap.case("/pins/c-cuts-and-j-joins")
def split():
    path = made("split.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        light_first(program)
        x, length = measures(program)
        program.keys("c")
        ((course, face, no_length),) = saved(program, path, len)
        tap.equal((course, no_length), (1, 0))
        tap.equal(abs(face - (x + length / 2)) < 10, True, "in the middle")
        wait_for(lambda: measures(program)[1] < length)
        tap.equal(measures(program)[0], x)
        program.picture("cut-in-two")
        # The pin between the halves gives way.
        program.keys("j")
        saved(program, path, lambda found: len(found) == 1 and found[0][2] > 0)
        program.keys("ctrl+z", "ctrl+z")
        saved(program, path, lambda found: not found)


@tap.case("/pins/what-is-too-long-is-not-joined")
def too_long():
    path = made("long.halfbond", '<pin course="1" x="0" length="600"/>'
                                 '<pin course="1" x="603" length="600"/>')
    before = path.read_text(encoding="utf-8")
    with Program(HALFBOND, path, title="Shed") as program:
        light_first(program)
        program.keys("j")
        wait_for(lambda: [name for name in program.names("label") + program.names("status bar")
                          if name.startswith("Joined, the two pieces are 12")])
        tap.equal(path.read_text(encoding="utf-8"), before)


@tap.case("/pins/are-listed-and-let-go-one-by-one-or-all")
def listed():
    path = made("listed.halfbond", '<pin course="1" x="0" length="450"/><pin course="2" x="1500"/>'
                                   '<pin course="9" x="0"/>')
    with Program(HALFBOND, path, title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        program.find("label", "Set by hand")
        program.find("label", "Course 1: 450 mm from 0")
        program.picture("pins-listed")
        press(program, "Remove the pin: Course 2: a perpend at 1500")
        tap.equal(saved(program, path, lambda found: len(found) == 2),
                  [(1, 0, 450), (9, 0, 0)])
        wait_for(lambda: not program.has("label", "a perpend at 1500"))
        press(program, "Remove all pins")
        saved(program, path, lambda found: not found)
        program.keys("ctrl+z")
        tap.equal(saved(program, path, len), [(1, 0, 450), (9, 0, 0)], "one step")
        program.keys("ctrl+z")
        saved(program, path, lambda found: len(found) == 3)


@tap.case("/pins/go-with-the-left-end")
def left_end():
    path = made("left.halfbond", '<pin course="1" x="1200" length="450"/>')
    with Program(HALFBOND, path, title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        x, y, width, height = program.box(program.wall())
        program.drag((x, y + height // 2), (-40, 0))

        def length():
            return float(re.search(r' length="([\d.]+)" height="1220"',
                                   path.read_text(encoding="utf-8")).group(1))
        saved(program, path, lambda found: length() > 3315)
        tap.equal(pins(path), [(1, 1200 + length() - 3315, 450)])


@tap.case("/pins/a-wall-without-has-no-list")
def none():
    with Program(HALFBOND, made("none.halfbond"), title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        showing = desk.Atspi.StateType.SHOWING
        tap.equal([node.get_name() for node in program.everything()
                   if node.get_name() in ("Set by hand", "Remove all pins")
                   and node.get_state_set().contains(showing)], [])


screen = Screen()
try:
    code = tap.main(tries=2)
finally:
    screen.close()
    shutil.rmtree(WORK, ignore_errors=True)
sys.exit(code)
