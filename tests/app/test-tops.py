"""Tops that are not level and stepped footings in a real window: pulled, typed, added, refused."""
import pathlib
import re
import shutil
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).parent))
import desk  # noqa: E402

desk.inside_bus()

import tap  # noqa: E402
from desk import Program, Screen, run, wait_for  # noqa: E402

HALFBOND = str(pathlib.Path(sys.argv[1]).resolve())
WORK = pathlib.Path(tempfile.mkdtemp(prefix="halfbond-test-"))

LENGTH = 6000
WALL = """<?xml version="1.0" encoding="UTF-8"?>
<project xmlns="urn:halfbond:project:1" title="Shed">
  <block id="b1" name="Large block" length="600" height="200" thickness="250" density="500"/>
  <wall id="w1" name="Side" block="b1" length="6000" height="%s">%s</wall>
</project>
"""
GABLE = '<top x="0" below="1400"/><top x="3000" below="0"/><top x="6000" below="1400"/>'
WINDOW = '<opening id="o1" name="W1" kind="window" x="600" width="900" sill="1030" height="1200"/>'


def made(name, height, inside=""):
    path = WORK / name
    path.write_text(WALL % (height, inside), encoding="utf-8")
    return path


def elements(path, name):
    """The attributes of every element of that name, as numbers where they are."""
    found = []
    for tag in re.findall(rf"<{name} [^>]*>", path.read_text(encoding="utf-8")):
        found.append(dict(re.findall(r'([a-z-]+)="([^"]*)"', tag)))
    return found


def tops(path):
    """Place and height of each point of the top."""
    height = float(elements(path, "wall")[0]["height"])
    return [(float(t["x"]), height - float(t["below"])) for t in elements(path, "top")]


def feet(path):
    return [(float(f["x"]), float(f["up"])) for f in elements(path, "foot")]


def saved(program, path, right, read=tops):
    return program.saved(path, right, read)


class Sheet:
    """Places of the wall on the screen."""

    def __init__(self, program, height):
        program.wait_cuts(lambda n: n >= 0)
        self.left, self.top, self.width, self.tall = program.box(program.wall())
        self.height = height

    def at(self, x, z):
        scale = self.width / LENGTH
        return (round(self.left + x * scale), round(self.top + self.tall - z * scale))

    def px(self, mm):
        return round(mm * self.width / LENGTH)


def said(program):
    return " ".join(program.names("label") + program.names("status bar"))


def entry(program, name):
    return program.find("text", name)


def bring(program, node):
    """Into sight, as a hand that scrolls does: the inspector is longer than its place."""
    x, y, width, height = program.box(program.find("combo box", "Shape of the top"))
    for _ in range(30):
        at = program.box(node)
        pane = program.box(program.find("combo box", "Shape of the top"))
        if 560 < at[1] < 730:
            return program.box(node)
        run("xdotool", "mousemove", 1215, 680)
        run("xdotool", "click", 5 if at[1] >= 730 else 4)
        program.settle(0.15)
    raise AssertionError(f"“{node.get_name()}” does not come into sight: {at}, {pane}")


def type_into(program, name, text):
    node = entry(program, name)
    bring(program, node)
    program.click(program.middle(node))
    program.keys("ctrl+a")
    program.type(text)
    program.keys("Return")


def press(program, name):
    program.find("push button", name).get_action_iface().do_action(0)
    program.settle()


def choose(program, shape):
    """Of the shapes, by keys: they are in one order."""
    shapes = ["Level", "Sloped", "Gabled", "Stepped", "As drawn"]
    node = program.find("combo box", "Shape of the top")
    bring(program, node)
    program.click(program.middle(node))
    program.settle(0.4)
    program.keys("Home", *["Down"] * shapes.index(shape), "Return")
    program.settle(0.4)


@tap.case("/tops/gabled-by-its-shape-and-figures")
def gabled():
    path = made("gabled.halfbond", 2442)
    with Program(HALFBOND, path) as program:
        program.wait_cuts(lambda n: n >= 0)
        choose(program, "Gabled")
        points = saved(program, path, lambda t: len(t) == 3)
        # 35 degrees over 3 m: 2101 mm.
        tap.equal([p[0] for p in points], [0.0, 3000.0, 6000.0], "the ridge in the middle")
        tap.equal(abs(points[1][1] - 2442 - 2100.6) < 1, True, "35 degrees")
        type_into(program, "Ridge height", "4442")
        saved(program, path, lambda t: t[1] == (3000.0, 4442.0))
        type_into(program, "Ridge at", "2000")
        saved(program, path, lambda t: t[1] == (2000.0, 4442.0))
        type_into(program, "Left pitch", "45")
        saved(program, path, lambda t: t[1] == (2000.0, 4442.0))
        type_into(program, "Right height", "3000")
        saved(program, path, lambda t: t[2] == (6000.0, 3000.0) and t[0] == (0.0, 2442.0))
        type_into(program, "Cap of concrete", "80")
        saved(program, path, lambda c: c == ["80"],
              lambda file: [c["height"] for c in elements(file, "cap")])
        program.picture("tops-gabled")
        for _ in range(2):
            press(program, "Undo")
        saved(program, path, lambda t: t[2] == (6000.0, 2442.0))
        choose(program, "Level")
        saved(program, path, lambda t: t == [])
        tap.equal(elements(path, "wall")[0]["height"], "2442", "as high as the eaves were")


@tap.case("/tops/stepped-in-rows")
def stepped():
    path = made("stepped.halfbond", 2442)
    with Program(HALFBOND, path) as program:
        program.wait_cuts(lambda n: n >= 0)
        choose(program, "Stepped")
        saved(program, path, lambda t: t == [(3000.0, 2644.0), (3000.0, 2442.0)])
        type_into(program, "Part 2: height", "2000")
        saved(program, path, lambda t: t == [(3000.0, 2644.0), (3000.0, 2000.0)])
        type_into(program, "Part 1: length", "2500")
        saved(program, path, lambda t: t == [(2500.0, 2644.0), (2500.0, 2000.0)])
        press(program, "Add a step to the top")
        saved(program, path, lambda t: len(t) == 4)
        press(program, "Take out: Part 3")
        saved(program, path, lambda t: len(t) == 2)


@tap.case("/tops/a-point-is-pulled-and-rests-on-a-course")
def pulled():
    path = made("pulled.halfbond", 4000, GABLE)
    with Program(HALFBOND, path) as program:
        sheet = Sheet(program, 4000)
        # Courses end at 20 + 202 n - 2: 4058 is the twentieth's.
        program.drag(sheet.at(3000, 4000), (0, -sheet.px(62)), let_go=False)
        program.picture("tops-pulled")
        program.let_go()
        saved(program, path, lambda t: t[1] == (3000.0, 4058.0))
        tap.equal(program.find("list item", "Point 2 of the top") is not None, True, "it has a name")
        program.picture("tops-held")
        press(program, "Undo")
        saved(program, path, lambda t: t[1] == (3000.0, 4000.0))
        sheet = Sheet(program, 4000)
        program.drag(sheet.at(3000, 4000), (sheet.px(600), 0))
        points = saved(program, path, lambda t: t[1][0] > 3400)
        tap.equal(points[1][1], 4000.0, "as high as before")
        press(program, "Undo")
        program.settle()
        # A slope goes up as it is.
        sheet = Sheet(program, 4000)
        program.drag(sheet.at(1000, 2600 + 1400 / 3), (0, -sheet.px(300)))
        points = saved(program, path, lambda t: t[0][1] > 2800)
        tap.equal(points[1][1] - points[0][1], 1400.0, "the slope is the same")
        tap.equal(points[2], (6000.0, 2600.0), "the other end stays")


@tap.case("/tops/a-double-click-adds-a-point-and-delete-takes-it-out")
def double_click():
    path = made("double.halfbond", 2442)
    with Program(HALFBOND, path) as program:
        sheet = Sheet(program, 2442)
        run("xdotool", "mousemove", *sheet.at(2000, 2442))
        program.settle()
        wait_for(lambda: "double-click for a point" in said(program))
        run("xdotool", "click", "--repeat", 2, "--delay", 80, 1)
        program.settle()
        points = saved(program, path, lambda t: len(t) == 3)
        tap.equal((points[0], points[2]), ((0.0, 2442.0), (6000.0, 2442.0)), "the ends stay")
        tap.equal(abs(points[1][0] - 2000) <= 20, True, "where the pointer was")
        program.keys("Up", "Up", "shift+Up")
        saved(program, path, lambda t: t[1][1] == 2454.0)
        program.keys("Delete")
        saved(program, path, lambda t: t == [])


@tap.case("/tops/keys-go-to-a-point-move-it-and-type-its-height")
def keys():
    path = made("keys.halfbond", 4000, GABLE + WINDOW)
    with Program(HALFBOND, path) as program:
        program.wait_cuts(lambda n: n >= 0)
        sheet = Sheet(program, 4000)
        program.click((sheet.left + sheet.width // 2, sheet.top + sheet.tall + 60))
        # The wall, its window, the left end of the top, the ridge.
        program.keys("Tab", "Tab", "Tab")
        ridge = program.find("list item", "Point 2 of the top")
        wait_for(lambda: ridge.get_state_set().contains(desk.Atspi.StateType.FOCUSED))
        tap.equal(program.describe(ridge), "Point of the top at 3000 mm: 4000 mm high", "told")
        program.picture("tops-focus")
        program.keys("Right", "shift+Right")
        saved(program, path, lambda t: t[1] == (3011.0, 4000.0))
        program.keys("ctrl+Up")
        saved(program, path, lambda t: t[1] == (3011.0, 4058.0))
        program.keys("Return")
        program.type("3.9 m")
        program.keys("Return")
        saved(program, path, lambda t: t[1] == (3011.0, 3900.0))
        program.keys("Delete")
        saved(program, path, lambda t: t == [])
        # A new one without a pointer over the wall: in the middle.
        run("xdotool", "mousemove", 700, 720)
        program.settle()
        program.keys("n")
        saved(program, path, lambda t: len(t) == 3 and t[1][0] == 3000.0)


@tap.case("/tops/an-opening-that-would-leave-is-told")
def refused():
    path = made("refused.halfbond", 4000, GABLE + WINDOW)
    with Program(HALFBOND, path) as program:
        sheet = Sheet(program, 4000)
        # The window's left upper corner is at 600, 2230; the slope there at 2880.
        program.drag(sheet.at(0, 2600), (0, sheet.px(1500)), let_go=False)
        wait_for(lambda: "Opening W1 leaves the wall by" in said(program))
        program.let_go()
        program.settle()
        type_into(program, "Left height", "900")
        wait_for(lambda: "Opening W1 leaves the wall by" in said(program))
        points = saved(program, path, lambda t: True)
        tap.equal(points[0][1] > 1500, True, "what was refused does not hold")


@tap.case("/tops/a-pitch-and-a-height-are-typed-where-they-stand")
def typed():
    path = made("typed.halfbond", 4000, GABLE)
    with Program(HALFBOND, path) as program:
        sheet = Sheet(program, 4000)
        x, y = sheet.at(1500, 3300)
        program.click((x - 18, y - 13))
        wait_for(lambda: "Pitch of the slope, degrees" in said(program))
        program.type("45")
        program.keys("Return")
        saved(program, path, lambda t: t[1] == (3000.0, 5600.0))
        sheet = Sheet(program, 5600)
        x, y = sheet.at(3000, 5600)
        program.click((x, y - 14))
        wait_for(lambda: "Height of the top there" in said(program))
        program.type("5000")
        program.keys("Return")
        saved(program, path, lambda t: t[1] == (3000.0, 5000.0))


@tap.case("/tops/steps-of-the-footing")
def footing():
    path = made("footing.halfbond", 2442)
    with Program(HALFBOND, path) as program:
        program.wait_cuts(lambda n: n >= 0)
        press(program, "Add a step to the footing")
        saved(program, path, lambda f: f == [(3000.0, 202.0)], feet)
        sheet = Sheet(program, 2442)
        program.drag(sheet.at(3000, 202), (-sheet.px(500), 0))
        got = saved(program, path, lambda f: f[0][0] < 2600, feet)
        tap.equal(got[0][1], 202.0, "as high as before")
        type_into(program, "Step 1: up", "404")
        saved(program, path, lambda f: f[0][1] == 404.0, feet)
        type_into(program, "Step 1: from", "2000")
        saved(program, path, lambda f: f == [(2000.0, 404.0)], feet)
        program.picture("tops-footing")
        press(program, "Take out: Step 1")
        saved(program, path, lambda f: f == [], feet)
        press(program, "Undo")
        saved(program, path, lambda f: f == [(2000.0, 404.0)], feet)


screen = Screen()
try:
    code = tap.main(tries=2)
finally:
    screen.close()
    shutil.rmtree(WORK, ignore_errors=True)
sys.exit(code)
