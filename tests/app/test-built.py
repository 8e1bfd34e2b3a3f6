"""A wall as it was built, in a real window: progress and figures typed, refused, undone, saved."""
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

# Tops as planned: 220, 422, 624, 826, 1028, ... 2442 of course 12; a strip of 56 above it.
SHED = """<?xml version="1.0" encoding="UTF-8"?>
<project xmlns="urn:halfbond:project:1" title="Shed">
  <block id="b1" name="Large block" length="600" height="200" thickness="250" density="500"/>
  <wall id="w1" name="Front" block="b1" length="3608" height="2500">
    <opening id="o1" name="W1" kind="window" x="1200" width="1200" sill="826" height="1214"/>
  </wall>
  <wall id="w2" name="Side" block="b1" length="3006" height="1233"/>
</project>
"""
NONE = """<?xml version="1.0" encoding="UTF-8"?>
<project xmlns="urn:halfbond:project:1" title="Shed"/>
"""


def made(name, text=SHED):
    path = WORK / name
    path.write_text(text, encoding="utf-8")
    return path


def open_tops(program, title="As built"):
    tops = [program.application.get_child_at_index(i)
            for i in range(program.application.get_child_count())]
    return [top for top in tops if top and top.get_name() == title]


def is_open(program):
    """the window “As built”"""
    return open_tops(program)


def on_the_wall(program):
    program.wait_cuts(lambda n: n >= 0)
    x, y, width, height = program.box(program.wall())
    program.click((x + width // 2, y + height + 60))


def open_built(program):
    on_the_wall(program)
    program.keys("a")
    wait_for(lambda: is_open(program))
    program.settle()


def beside(program):
    """All accessible things of the window; the wall's, which are many, are passed over."""
    heap = open_tops(program)
    while heap:
        node = heap.pop()
        yield node
        heap.extend(child for child in (node.get_child_at_index(i) for i in range(node.get_child_count()))
                    if child)


def says(program):
    """What its labels say."""
    return [node.get_name() or "" for node in beside(program) if desk.role_of(node) == "label"]


def reads(program, words):
    """Waits until a label of the window says that."""
    def look():
        return [name for name in says(program) if words in name]
    look.__doc__ = f"“{words}” among the labels"
    return wait_for(look)


def hears(program, words):
    """Waits until the line under the wall says that."""
    def look():
        return [name for name in program.names("label") + program.names("status bar") if words in name]
    look.__doc__ = f"“{words}” under the wall"
    return wait_for(look)


def cell(program, name):
    def look():
        for node in beside(program):
            if node.get_name() == name and desk.role_of(node) in ("entry", "text", "spin button", "spinner"):
                return node
        return None
    look.__doc__ = f"the cell “{name}”"
    return wait_for(look)


def to_cell(program, name):
    """The words that make xdotool click the cell; places are told from its own window."""
    extents = cell(program, name).get_component_iface().get_extents(desk.Atspi.CoordType.WINDOW)
    shown = desk.run("xdotool", "search", "--onlyvisible", "--name", "^As built$").split()
    return ["mousemove", "--window", shown[0], extents.x + extents.width // 2, extents.y + extents.height // 2,
            "sleep", "0.1", "click", "1", "sleep", "0.15"]


def focus(program, name):
    desk.run("xdotool", *to_cell(program, name))
    program.settle(0.2)


def shows(program, name):
    """What stands in the cell; its text is of a child of it where a screen reader is told so."""
    def text(node):
        count = desk.Atspi.Text.get_character_count(node) if desk.role_of(node) in ("entry", "text") else 0
        own = desk.Atspi.Text.get_text(node, 0, count) if count else ""
        return own or "".join(text(node.get_child_at_index(i)) for i in range(node.get_child_count()))
    return text(cell(program, name))


def type_into(program, name, text, key="Return"):
    desk.run("xdotool", *to_cell(program, name), "key", "ctrl+a",
             *(["type", "--delay", "15", text] if text else ["key", "BackSpace"]))
    desk.run("xdotool", "key", key)
    program.settle(0.2)


def standing(path):
    """How far it is laid, and the perpends of the courses that stand, as they are in the file."""
    text = path.read_text(encoding="utf-8")
    courses = re.search(r'<built [^>]*courses="(\d+)"', text)
    return (int(courses.group(1)) if courses else 0,
            [(tag[0], re.findall(r'perpends="([^"]*)"', tag[1]), re.findall(r' top="([^"]*)"', tag[1]))
             for tag in re.findall(r'<laid course="(\d+)"([^>]*)>', text)])


def saved(program, path, right):
    """What standing() finds as soon as it is right; the window beside is closed for it, and opened again."""
    program.keys("ctrl+w")
    wait_for(lambda: not is_open(program))
    found = program.saved(path, right, standing)
    program.keys("a")
    wait_for(lambda: is_open(program))
    program.settle()
    return found


@tap.case("/built/progress-and-a-measured-course")
def progress():
    path = made("progress.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        open_built(program)
        reads(program, "Nothing stands yet")
        type_into(program, "Laid up to course", "5")
        reads(program, "5 of 13 courses stand")
        reads(program, "Next beds: 2 mm, as planned")
        wait_for(lambda: any("5 of 13 courses stand" in name for name in program.names("list item")))
        before = saved(program, path, lambda found: found[0] == 5)
        tap.equal([laid[0] for laid in before[1]], ["1", "2", "3", "4", "5"])
        # Course 5 ends 6 mm too high: the rest lies on thinner beds, what stands stays.
        type_into(program, "Course 5, left end, measured", "1034")
        reads(program, "Next beds: 1 mm, planned 2 mm")
        reads(program, "From course 6 on, beds of 1 mm bring course 12 to 2441 mm, 1 mm under its plan.")
        reads(program, "Course 5 ends 6 mm too high, at 1034 mm; 16 mm either way are allowed (SIA 266")
        reads(program, "Still needed for this wall")
        after = saved(program, path, lambda found: found[1][4][2] == ["1034"])
        tap.equal([laid[1] for laid in after[1]], [laid[1] for laid in before[1]], "perpends of what stands")
        # More than may be: told by a word, too.
        type_into(program, "Length, measured", "3640")
        reads(program, "Over: The wall is 32 mm too long, 3640 mm; 16 mm either way are allowed")
        tap.contains(says(program), "over", "the word")
        program.picture("built-typed")
        # Each was a step.
        program.keys("ctrl+z", "ctrl+z")
        reads(program, "Next beds: 2 mm, as planned")
        reads(program, "Nothing was measured yet.")
        program.keys("ctrl+z")
        reads(program, "Nothing stands yet")
        program.keys("ctrl+shift+z", "ctrl+shift+z")
        reads(program, "Next beds: 1 mm, planned 2 mm")


@tap.case("/built/what-cannot-be-stays-typed")
def refused():
    path = made("refused.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        open_built(program)
        type_into(program, "Laid up to course", "3")
        type_into(program, "Course 1, left end, measured", "226")
        reads(program, "Course 1 ends 6 mm too high")
        type_into(program, "Course 2, left end, measured", "420")
        reads(program, "Course 2 cannot end at 420 mm")
        program.picture("built-refused")
        # Another wall, and back: it is still there, and closing asks for it.
        program.click((80, 235))
        reads(program, "Nothing stands yet")
        program.click((80, 130))
        reads(program, "3 of 13 courses stand")
        tap.equal(shows(program, "Course 2, left end, measured"), "420")
        focus(program, "Laid up to course")
        program.keys("ctrl+w")
        reads(program, "Close again to leave it out")
        tap.equal(shows(program, "Course 2, left end, measured"), "420")
        type_into(program, "Course 2, left end, measured", "430")
        reads(program, "Course 2 ends 8 mm too high")
        # Escape takes back what does not count, and stays in the window.
        type_into(program, "W1, left jamb, measured", "3600", "Tab")
        reads(program, "Opening W1 leaves the wall by 1192 mm on the right")
        focus(program, "W1, left jamb, measured")
        program.keys("Escape")
        wait_for(lambda: is_open(program))
        tap.equal(shows(program, "W1, left jamb, measured"), "")
        type_into(program, "W1, left jamb, measured", "1204")
        reads(program, "W1 begins 4 mm too far right, at 1204 mm")
        # Emptied, it is as planned again.
        type_into(program, "W1, left jamb, measured", "")
        wait_for(lambda: not [n for n in says(program) if "too far right" in n])
        saved(program, path, lambda found: found[1][1][2] == ["430"])
        tap.equal(re.findall(r"planned-x", path.read_text(encoding="utf-8")), [])


@tap.case("/built/marked-on-the-wall")
def marked():
    path = made("marked.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        on_the_wall(program)
        x, y, width, height = program.box(program.wall())
        # 730 mm above the foundation: in course 4.
        desk.run("xdotool", "mousemove", x + width // 10, y + height - height * 730 // 2500)
        program.keys("u")
        hears(program, "Front: laid up to course 4 of 13.")
        program.settle(0.5)
        program.picture("built-wall")
        wait_for(lambda: "4/13 laid" in program.names("label"))
        # Its pieces are not moved by hand any more.
        program.click((x + width // 2, y + height - height * 730 // 2500))
        program.keys("p")
        hears(program, "Course 4 stands: its pieces stay as they are.")
        program.keys("m")
        hears(program, "Course 4 stands: its pieces stay as they are.")
        program.keys("u")
        hears(program, "Front: laid up to course 3 of 13.")
        program.keys("ctrl+z", "ctrl+z")
        tap.equal(program.saved(path, lambda found: found[0] == 0, standing), (0, []))
        program.keys("ctrl+shift+z")
        program.act("colours", "dark")
        program.settle(1)
        program.picture("built-wall-dark")
        tap.equal(program.saved(path, lambda found: found[0] == 4, standing)[0], 4)


@tap.case("/built/no-walls")
def none():
    path = made("none.halfbond", NONE)
    with Program(HALFBOND, path, title="Shed") as program:
        program.settle()
        program.keys("a")
        wait_for(lambda: is_open(program))
        reads(program, "There is no wall yet.")
        program.keys("Escape")
        wait_for(lambda: not is_open(program))


screen = Screen()
try:
    code = tap.main(tries=2)
finally:
    screen.close()
    shutil.rmtree(WORK, ignore_errors=True)
sys.exit(code)
