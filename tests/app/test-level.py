"""The level book in a real window: typed, reduced as it is typed, undone, saved, mended."""
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
ROOT = pathlib.Path(__file__).resolve().parents[2]
EXAMPLE = ROOT / "data" / "examples" / "uneven-footing.halfbond"
WORK = pathlib.Path(tempfile.mkdtemp(prefix="halfbond-test-"))

SHED = """<?xml version="1.0" encoding="UTF-8"?>
<project xmlns="urn:halfbond:project:1" title="Shed">
  <block id="b1" name="Large block" length="600" height="200" thickness="250" density="500"/>
  <wall id="w1" name="Front" block="b1" length="3608" height="1233"/>
  <wall id="w2" name="Side" block="b1" length="3006" height="1233"/>
</project>
"""


def made(name):
    path = WORK / name
    path.write_text(SHED, encoding="utf-8")
    return path


def is_open(program):
    """the level book beside the window"""
    tops = [program.application.get_child_at_index(i)
            for i in range(program.application.get_child_count())]
    return [top for top in tops if top and top.get_name() == "Level of the footing"]


def open_book(program):
    program.wait_cuts(lambda n: n >= 0)
    x, y, width, height = program.box(program.wall())
    program.click((x + width // 2, y + height + 60))
    program.keys("l")
    wait_for(lambda: is_open(program))
    program.settle()


def readings(path):
    """The sights of the saved book, row by row."""
    return [dict(re.findall(r'([a-z]+)="([^"]*)"', tag))
            for tag in re.findall(r"<reading[^>]*>", path.read_text(encoding="utf-8"))]


def saved(program, path, right):
    """The readings of the file as soon as they are right; the book is closed for it."""
    program.keys("ctrl+w")
    wait_for(lambda: not is_open(program))
    return program.saved(path, right, readings)


def reads(program, words):
    """Waits until a label says that."""
    def look():
        return [name for name in program.names("label") if words in name]
    look.__doc__ = f"“{words}” among the labels"
    return wait_for(look)


def cell(program, name):
    for role in ("entry", "text"):
        try:
            return program.find(role, name, 1.5)
        except AssertionError:
            pass
    raise AssertionError(f"no cell “{name}”")


def focus(program, name):
    """Clicks the cell; places are told from the book's own window."""
    extents = cell(program, name).get_component_iface().get_extents(desk.Atspi.CoordType.WINDOW)
    shown = desk.run("xdotool", "search", "--onlyvisible", "--name", "Level of the footing").split()
    desk.run("xdotool", "mousemove", "--window", shown[0], extents.x + extents.width // 2,
             extents.y + extents.height // 2)
    program.settle(0.1)
    desk.run("xdotool", "click", 1)
    program.settle()


@tap.case("/level/rows-are-typed-as-they-are-called-out")
def quick():
    path = made("quick.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        open_book(program)
        for row in ("Peg b1.412 =100.000", "A 1437 @1 left", "B 1431 @1 right, 2 left", "Peg f1410"):
            program.type(row)
            program.keys("Return")
        reads(program, "Course 1 on 100002 mm")
        reads(program, "Row 4 (Peg): closes 2 mm too high after 1 set-up; 5 mm are allowed.")
        program.picture("level-typed")
        # A word that is not understood stays where it is, with a sentence.
        program.type("C seven")
        program.keys("Return")
        reads(program, "The row has no reading")
        found = saved(program, path, lambda rows: len(rows) == 4)
        tap.equal(found[0], {"point": "Peg", "back": "1412", "level": "100000"})
        tap.equal(found[3], {"point": "Peg", "fore": "1410"})
        tap.equal(re.findall(r'<at wall="(\w+)" x="(\d+)"/>', path.read_text(encoding="utf-8")),
                  [("w1", "0"), ("w1", "3608"), ("w2", "0")])
        # Each row was a step.
        program.keys("ctrl+z")
        program.keys("ctrl+s")
        wait_for(lambda: len(readings(path)) == 3)


@tap.case("/level/cells-are-typed-and-tell-at-once")
def cells():
    path = made("cells.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        open_book(program)
        program.type("Peg b1412 =0")
        program.keys("Return")
        program.type("A 1400 @1 left")
        program.keys("Return")
        reads(program, "Course 1 on 37 mm")
        # While it is typed, before it counts.
        focus(program, "Intermediate sight, row 2")
        program.keys("ctrl+a")
        program.type("1390")
        reads(program, "Course 1 on 47 mm")
        # Escape takes it back.
        program.keys("Escape")
        reads(program, "Course 1 on 37 mm")
        # What is not understood stays, and does not count.
        program.keys("ctrl+a")
        program.type("12x")
        program.keys("Tab")
        reads(program, "“12x” is not understood")
        reads(program, "Course 1 on 37 mm")
        program.keys("ctrl+w")
        reads(program, "Close again to leave it out")
        focus(program, "Intermediate sight, row 2")
        program.keys("ctrl+a")
        program.type("1.380")
        program.keys("Return")
        reads(program, "Course 1 on 57 mm")
        # Down, up, a row between, and away with it.
        focus(program, "Intermediate sight, row 2")
        program.keys("Insert")
        cell(program, "Point, row 4")
        program.keys("ctrl+Delete")
        wait_for(lambda: not program.has("text", "Point, row 4") and not program.has("entry", "Point, row 4"))
        found = saved(program, path, lambda rows: len(rows) == 2 and rows[1].get("inter") == "1380")
        tap.equal(found[1], {"point": "A", "inter": "1380"})


@tap.case("/level/undo-takes-rows-away-under-the-focus")
def undo():
    path = made("undo.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        open_book(program)
        for row in ("Peg b1412 =0", "A 1400 @1 left", "B 1398 @1 right"):
            program.type(row)
            program.keys("Return")
        focus(program, "Intermediate sight, row 3")
        reads(program, "Course 1 on 38 mm")
        program.keys("ctrl+z")
        reads(program, "Course 1 on 37 mm")
        focus(program, "Point, row 3")
        program.keys("ctrl+z", "ctrl+z")
        reads(program, "First course: not known")
        program.keys("ctrl+shift+z", "ctrl+shift+z", "ctrl+shift+z")
        reads(program, "Course 1 on 38 mm")
        # From the line above it, too.
        focus(program, "Add a row")
        program.keys("ctrl+z")
        reads(program, "Course 1 on 37 mm")
        program.keys("ctrl+y")
        reads(program, "Course 1 on 38 mm")
        saved(program, path, lambda rows: len(rows) == 3)


@tap.case("/level/the-example-light-and-dark")
def example():
    path = WORK / "example.halfbond"
    shutil.copy(EXAMPLE, path)
    with Program(HALFBOND, path, title="Bicycle") as program:
        open_book(program)
        reads(program, "Course 1 on 99998 mm")
        reads(program, "A to C: the corner is open")
        reads(program, "By 3-4-5: 5200, 3900, 6500 mm.")
        program.settle(0.5)
        program.picture("level-light")
        program.act("colours", "dark")
        program.settle(1)
        program.picture("level-dark")
        # A limit, and a level that is asked for.
        focus(program, "First course at")
        program.type("99.990")
        program.keys("Return")
        reads(program, "Course 1 on 99990 mm")
        reads(program, "Outside: only from 99993.3 to 100002.7 mm")
        reads(program, "grind the footing down, by 3.3 mm")
        program.picture("level-grind-dark")
        program.act("colours", "light")
        program.settle(1)
        program.picture("level-grind")
        program.keys("ctrl+w")
        wait_for(lambda: not is_open(program))
        # It is a finding of the wall, too, and undone from here.
        reads(program, "the levelling bed is too thin")
        program.picture("level-finding")
        program.keys("ctrl+z")
        wait_for(lambda: not [n for n in program.names("label") if "the levelling bed is too thin" in n])


screen = Screen()
try:
    code = tap.main(tries=2)
finally:
    screen.close()
    shutil.rmtree(WORK, ignore_errors=True)
sys.exit(code)
