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
    return program.saved(path, right, pins)


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


def perpend(program):
    """Course and place of the perpend that the keys move; None: there is none."""
    found = re.search(r"Perpend of course (\d+) at ([\d.]+) mm", lit(program))
    return (int(found.group(1)), float(found.group(2))) if found else None


def enabled(program, name):
    node = program.find("push button", name)
    node.clear_cache()
    return node.get_state_set().contains(desk.Atspi.StateType.SENSITIVE)


def said(program):
    return " ".join(program.names("label") + program.names("status bar")
                    + program.names("statusbar"))


def place_of(program, x, course=1):
    """Where a place of the wall and the middle of a course are on the screen."""
    left, top, width, height = program.box(program.wall())
    z = 20 + (course - 1) * 202 + 100
    return round(left + width * (x - 1) / 3315), round(top + height * (1 - z / 1220))


def scale(program):
    """Pixels for a millimetre."""
    return program.box(program.wall())[2] / 3315


def first_perpend(program):
    """The face right of the first perpend of the first course."""
    light_first(program)
    x, length = measures(program)
    program.keys("Escape")
    return x + length + 2


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


def joints(path):
    """Left face of each movement joint in the file."""
    return [float(x) for x in re.findall(r'<movement-joint x="([^"]*)"',
                                         path.read_text(encoding="utf-8"))]


def saved_joints(program, path, right):
    return program.saved(path, right, joints)


@tap.case("/pins/k-adds-a-movement-joint-that-is-dragged-and-taken-out")
def movement_joint():
    path = made("joint.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        light_first(program)
        program.click(place_of(program, 1400, 3))
        program.keys("k")
        (x,) = saved_joints(program, path, len)
        tap.equal(abs(x + 5 - 1400) < 8, True, "at the pointer")
        for colours in ("dark", "light"):
            program.act("colours", colours)
            program.settle(0.6)
            program.picture("movement-joint-" + colours)
        program.drag(place_of(program, x + 5, 3), (round(500 * scale(program)), 0))
        (to,) = saved_joints(program, path, lambda found: found and found[0] != x)
        tap.equal(abs(to - x - 500) < 8, True, "dragged")
        program.keys("ctrl+z")
        tap.equal(saved_joints(program, path, lambda found: found == [x]), [x], "one step")
        program.drag(place_of(program, x + 5, 3), (round(100 * scale(program)), 0))
        saved_joints(program, path, lambda found: found != [x])
        program.keys("k")
        tap.equal(saved_joints(program, path, lambda found: not found), [], "taken out")


def entry(program, name):
    for role in ("text", "entry"):
        try:
            return program.find(role, name, 1.5)
        except AssertionError:
            pass
    raise AssertionError(f"no field “{name}”")


def is_focused(program, name):
    """whether the thing of that name on the wall has the focus"""
    node = program.find("list item", name)
    node.clear_cache()
    return node.get_state_set().contains(desk.Atspi.StateType.FOCUSED)


@tap.case("/pins/a-movement-joint-is-chosen-typed-and-taken-out")
def chosen_joint():
    path = made("chosen-joint.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        light_first(program)
        program.click(place_of(program, 1400, 3))
        program.keys("k")
        (x,) = saved_joints(program, path, len)
        # The new one is chosen: arrow keys move it, each let go one step; Alt makes it wider.
        wait_for(lambda: is_focused(program, "Movement joint"))
        program.keys("Right")
        saved_joints(program, path, lambda found: found == [x + 1])
        program.keys("shift+Left", "alt+Right")
        saved_joints(program, path, lambda found: found == [x - 9])
        tap.equal(re.findall(r'width="11"', path.read_text()), ['width="11"'])
        program.keys("ctrl+z", "ctrl+z")
        saved_joints(program, path, lambda found: found == [x + 1])
        # Figures and words are typed beside the wall.
        for name, typed in (("From the left end", "1500"), ("Width", "1.2 cm"), ("Filler", "foam")):
            program.click(entry(program, name))
            program.keys("ctrl+a")
            program.type(typed)
            program.keys("Return")
        program.saved(path, lambda text: '<movement-joint x="1500" width="12" filler="foam"/>' in text)
        for colours in ("dark", "light"):
            program.act("colours", colours)
            program.settle(0.6)
            program.picture("chosen-joint-" + colours)
        # What cannot be is said, and the field shows what holds.
        program.click(entry(program, "Width"))
        program.keys("ctrl+a")
        program.type("80")
        program.keys("Return")
        wait_for(lambda: [n for n in program.names("label") if "must be from 5 to 50 mm" in n])
        program.keys("Escape")
        # A click beside it lets it go, Tab finds it again; Enter types its place on the wall.
        program.click(place_of(program, 400, 5))
        wait_for(lambda: not is_focused(program, "Movement joint"))
        program.keys("Tab")
        wait_for(lambda: is_focused(program, "Movement joint"))
        program.keys("Return")
        program.type("1600")
        program.keys("Return")
        saved_joints(program, path, lambda found: found == [1600])
        program.keys("Delete")
        saved_joints(program, path, lambda found: not found)
        program.keys("ctrl+z")
        saved_joints(program, path, lambda found: found == [1600])


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
        wait_for(lambda: perpend(program) == (1, face))
        program.picture("cut-in-two")
        # The cut is moved at once, each key a step of its own; then the piece is lit as before.
        program.keys("Right", "shift+Left", "Left")
        tap.equal(saved(program, path, lambda found: found[0][1] == face - 10),
                  [(1, face - 10, 0)])
        program.keys("ctrl+z", "ctrl+z", "ctrl+z")
        saved(program, path, lambda found: found == [(1, face, 0)])
        program.keys("Escape")
        wait_for(lambda: perpend(program) is None and measures(program)[1] < length)
        tap.equal(measures(program)[0], x)
        # The pin between the halves gives way.
        program.keys("j")
        saved(program, path, lambda found: len(found) == 1 and found[0][2] > 0)
        program.keys("ctrl+z", "ctrl+z")
        saved(program, path, lambda found: not found)


@tap.case("/pins/a-perpend-is-pulled")
def pulled():
    path = made("pulled.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        face = first_perpend(program)
        x, y = place_of(program, face)
        by = round(150 * scale(program))
        program.drag((x, y), (by, 0), let_go=False)
        wait_for(lambda: perpend(program) and perpend(program)[1] > face + 100)
        wait_for(lambda: "left," in lit(program))
        tap.equal(pins(path), [], "not saved yet")
        program.picture("perpend-pulled")
        there = perpend(program)
        program.let_go()
        ((course, at, length),) = saved(program, path, len)
        tap.equal((course, at, length), (1, there[1], 0), "where it was pulled to")
        # Within the hand's reach of where the pointer was.
        tap.equal(abs(at - face - 150) * scale(program) < 8, True, f"from {face} to {at}")
        tap.contains(lit(program), "pinned", "the description")
        # Once more: its own pin goes along.
        x, y = place_of(program, at)
        program.drag((x, y), (-by // 2, 0))
        saved(program, path, lambda found: len(found) == 1 and found[0][1] < at - 40)
        program.keys("ctrl+z")
        tap.equal(saved(program, path, lambda found: found == [(1, at, 0)]), [(1, at, 0)])
        program.keys("ctrl+z")
        tap.equal(saved(program, path, lambda found: not found), [])
        tap.equal(enabled(program, "Undo"), False, "two pulls, two steps")
        program.keys("ctrl+shift+z")
        saved(program, path, lambda found: found == [(1, at, 0)])
    with Program(HALFBOND, path, title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        program.find("label", f"Course 1: a perpend at {at:g}")


@tap.case("/pins/escape-lets-a-pulled-perpend-back")
def pulled_back():
    path = made("back.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        face = first_perpend(program)
        cuts = program.cuts()
        program.drag(place_of(program, face), (40, 0), let_go=False)
        wait_for(lambda: perpend(program) and perpend(program)[1] > face + 30)
        program.keys("Escape")
        program.let_go()
        wait_for(lambda: perpend(program) == (1, face))
        program.wait_cuts(lambda n: n == cuts)
        tap.equal(enabled(program, "Undo"), False, "no step")
        # Nor is one that was brought back by hand.
        program.drag(place_of(program, face), (60, 0), let_go=False)
        wait_for(lambda: perpend(program) and perpend(program)[1] > face + 30)
        desk.run("xdotool", "mousemove", *place_of(program, face))
        wait_for(lambda: perpend(program) == (1, face))
        program.let_go()
        tap.equal(enabled(program, "Undo"), False, "no step")


@tap.case("/pins/where-a-perpend-cannot-be-it-is-told")
def unmet():
    path = made("unmet.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        face = first_perpend(program)
        start = place_of(program, face)
        # Near to the left end; the keys bring it so near that no piece has room.
        program.drag(start, (-round((face - 12) * scale(program)), 0))
        wait_for(lambda: perpend(program) and perpend(program)[1] < 30)
        while perpend(program)[1] > 1:
            program.keys("Left")
        if perpend(program)[1] < 1:
            program.keys("Right")
        tap.equal(saved(program, path, lambda found: found and found[0][1] == 1), [(1, 1, 0)])
        wait_for(lambda: "cannot be met" in lit(program))
        tap.contains(lit(program), "it leaves no room for a piece", "the reason")
        wait_for(lambda: "cannot be met" in said(program))
        program.picture("perpend-unmet")
        program.keys("Delete")
        saved(program, path, lambda found: not found)


@tap.case("/pins/the-left-piece-is-typed")
def typed():
    path = made("typed.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        light_first(program)
        program.keys("Right", "c")
        wait_for(lambda: perpend(program) and "left," in lit(program))
        x = perpend(program)[1] - 2 - float(re.search(r"([\d.]+) mm left", lit(program)).group(1))
        program.keys("Return", "ctrl+a")
        program.picture("perpend-typing")
        program.type("250")
        program.keys("Return")
        tap.equal(saved(program, path, lambda found: found and found[0][2] > 0), [(1, x, 250)])
        wait_for(lambda: perpend(program) == (1, x + 252))
        tap.contains(lit(program), "250 mm left", "the description")
        # The pin is the piece's: a key makes it longer.
        program.keys("shift+Right")
        tap.equal(saved(program, path, lambda found: found[0][2] > 250), [(1, x, 260)])
        program.keys("Return", "ctrl+a")
        program.type("0")
        program.keys("Return")
        tap.contains(said(program), "1 mm long at least", "the line below")
        program.keys("Escape")
        tap.equal(pins(path), [(1, x, 260)])


@tap.case("/pins/m-takes-the-perpend-of-the-lit-piece")
def taken():
    path = made("taken.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        light_first(program)
        x, length = measures(program)
        program.keys("m")
        wait_for(lambda: perpend(program) == (1, x + length + 2))
        program.keys("Up")
        wait_for(lambda: lit(program).startswith("Course 2,"))
        program.keys("Right")
        x, length = measures(program)
        program.keys("m")
        wait_for(lambda: perpend(program) == (2, x))
        program.keys("m")
        wait_for(lambda: perpend(program) == (2, x + length + 2))
        program.keys("ctrl+Right")
        ((course, at, no_length),) = saved(program, path, len)
        tap.equal((course, no_length), (2, 0))
        program.keys("p")
        saved(program, path, lambda found: not found)


@tap.case("/pins/a-click-lights-the-piece")
def clicked():
    with Program(HALFBOND, made("clicked.halfbond"), title="Shed") as program:
        face = first_perpend(program)
        x, y = place_of(program, face)
        # After a key the ring round the wall goes when the button comes down: what is laid out
        # anew then must not swallow a click as quick as this.
        for _ in range(6):
            desk.run("xdotool", "mousemove", x, y + 60)
            program.keys("Right", "Escape")
            program.click((x, y))
            wait_for(lambda: lit(program).startswith("Course 1, piece "))
            program.keys("Escape")
            wait_for(lambda: not lit(program).startswith("Course"))
        program.click((x, y))
        wait_for(lambda: lit(program).startswith("Course 1, piece "))
        program.keys("Up", "Right")
        wait_for(lambda: lit(program).startswith("Course 2, piece "))
        tap.equal(enabled(program, "Undo"), False, "keys walk, and move nothing")


@tap.case("/pins/too-small-to-take")
def dense():
    path = made("dense.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        face = first_perpend(program)
        for _ in range(20):
            program.keys("ctrl+minus")
            if scale(program) * 200 < 6:
                break
        tap.equal(scale(program) * 200 < 7, True, "small enough")
        program.drag(place_of(program, face), (20, 0))
        tap.equal(enabled(program, "Undo"), False, "no step")
        tap.equal(perpend(program), None)


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
