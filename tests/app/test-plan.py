"""A building in plan in a real window: typed, chosen from, moved, its corners made otherwise."""
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

# 8 x 6 m: front, right, back, left, with a window in front and a partition from front to back.
HOUSE = """<?xml version="1.0" encoding="UTF-8"?>
<project xmlns="urn:halfbond:project:1" title="House">
  <block id="b1" name="Large block" length="600" height="200" thickness="250" density="500"/>
  <wall id="w1" name="Front" block="b1" length="8000" height="2400" plan-x="0" plan-y="0" runs="east">
    <end side="left" return="250" through="even"/>
    <end side="right" return="250" through="even"/>
    <tee x="4000" return="250" through="even"/>
    <opening id="o1" name="W1" kind="window" x="1000" width="1200" sill="900" height="1200"/>
  </wall>
  <wall id="w2" name="Right" block="b1" length="6000" height="2400" plan-x="8000" plan-y="0" runs="north">
    <end side="left" return="250" through="odd"/>
    <end side="right" return="250" through="odd"/>
  </wall>
  <wall id="w3" name="Back" block="b1" length="8000" height="2400" plan-x="8000" plan-y="6000" runs="west">
    <end side="left" return="250" through="even"/>
    <end side="right" return="250" through="even"/>
    <tee x="3750" return="250" through="even"/>
  </wall>
  <wall id="w4" name="Left" block="b1" length="6000" height="2400" plan-x="0" plan-y="6000" runs="south">
    <end side="left" return="250" through="odd"/>
    <end side="right" return="250" through="odd"/>
  </wall>
  <wall id="w5" name="Middle" block="b1" length="6000" height="2400" plan-x="4250" plan-y="0" runs="north">
    <end side="left" return="250" through="odd"/>
    <end side="right" return="250" through="odd"/>
  </wall>
</project>
"""


def house(name):
    path = WORK / name
    path.write_text(HOUSE, encoding="utf-8")
    return path


def in_plan(program):
    """Shows the plan, and waits until it is there."""
    program.keys("ctrl+3")
    return wall(program, "Front")


def wall(program, name):
    return program.find("list item", name + " in plan", 8)


def describes(program, role, name, words):
    """Waits until what has that name is described so."""
    def look():
        try:
            return words in program.describe(program.find(role, name, 0.5))
        except AssertionError:
            return False
    look.__doc__ = f"“{words}” said of {name}"
    wait_for(look)


def says(program, words):
    def look():
        return any(words in name for name in program.names("label") + program.names("status bar"))
    look.__doc__ = f"“{words}” to be said"
    wait_for(look)


def value(text, wall_id, attribute):
    tag = re.search(f'<wall id="{wall_id}"[^>]*>', text).group(0)
    return re.search(attribute + '="([^"]*)"', tag).group(1)


def check(right, what):
    tap.equal(bool(right), True, what)


def type_building(program, text):
    program.keys("ctrl+b")
    program.find("text", "Outer dimensions")
    program.type(text)


@tap.case("/plan/a-new-building-is-typed")
def typed():
    with Program(HALFBOND) as program:
        type_building(program, "8000 x 6000")
        says(program, "4 walls, 28 m round, 48 m")
        program.picture("building-typed")
        program.keys("Return")
        wall(program, "Front")
        for name in ("Right", "Back", "Left"):
            wall(program, name)
        program.find("list item", "Corner of Front and Right")
        program.picture("building-made")
        program.keys("ctrl+z")
        program.picture("no-plan")
        program.find("label", "No wall stands in plan")


@tap.case("/plan/an-outline-that-does-not-close-is-told")
def open_outline():
    with Program(HALFBOND) as program:
        type_building(program, "9000 4000 3000 R 3000 6000 6900")
        says(program, "does not close: its last side ends 100 mm too far north")
        program.picture("building-open")
        program.keys("Return")
        check(program.has("text", "Outer dimensions"), "nothing typed is lost")
        program.keys("BackSpace", "BackSpace", "BackSpace", "BackSpace")
        program.type("7000")
        says(program, "6 walls, 32 m round, 54 m")
        program.keys("Return")
        wall(program, "Wall 6")
        program.picture("building-angle")


@tap.case("/plan/a-corner-is-made-otherwise")
def corner():
    path = house("corner.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        program.click(program.find("list item", "Corner of Front and Right"))
        way = program.find("check box" if program.has("check box", "Butted") else "radio button",
                           "Butted: Right through in all courses")
        program.picture("corner-chosen")
        program.click(way)
        text = program.saved(path, lambda t: 'through="all"' in t)
        check('side="right" return="250" through="all"' in text, "Front stops at Right")
        describes(program, "list item", "Corner of Front and Right", "butted")
        program.picture("corner-butted")
        program.keys("ctrl+z")
        describes(program, "list item", "Corner of Front and Right", "bonded")
        program.saved(path, lambda t: 'through="all"' not in t)


def loose(name):
    """One wall that stands nowhere."""
    path = WORK / name
    path.write_text("""<?xml version="1.0" encoding="UTF-8"?>
<project xmlns="urn:halfbond:project:1" title="House">
  <block id="b1" name="Large block" length="600" height="200" thickness="250" density="500"/>
  <wall id="w1" name="Yard" block="b1" length="5000" height="2400"/>
</project>
""", encoding="utf-8")
    return path


def lengths(text):
    return [float(n) for n in re.findall(r'<wall id="w\d+"[^>]* length="([^"]*)"', text)]


@tap.case("/plan/an-outline-is-drawn-by-typed-lengths")
def outline_typed():
    path = WORK / "typed-outline.halfbond"
    with Program(HALFBOND) as program:
        program.keys("o")
        says(program, "type a length and press an arrow key")
        program.picture("outline-tool")
        program.type("9000")
        says(program, "9000: an arrow key draws a side")
        program.keys("Right")
        says(program, "1 side. Click, or type a length")
        program.type("4 m")
        program.keys("Up")
        program.type("3000")
        program.keys("Left")
        program.type("3000")
        program.keys("Up")
        # The last one was wrong: back with it.
        program.type("100")
        program.keys("Left", "BackSpace")
        program.type("5900")
        program.keys("Left")
        says(program, "the outline does not close by 100 mm to the west and 7000 mm to the south")
        program.picture("outline-open")
        program.keys("Return")
        says(program, "its end is 100 mm to the east and 7000 mm to the north of its beginning")
        program.keys("Left")
        says(program, "5 sides; Enter closes the outline with 7000 mm to the south")
        program.picture("outline-closing")
        program.keys("Return")
        wall(program, "Wall 6")
        program.find("list item", "Corner of Wall 8 and Wall 9")
        program.picture("outline-made")
        program.keys("ctrl+z")
        wait_for(lambda: not program.has("list item", "Wall 6 in plan"))


@tap.case("/plan/an-outline-is-drawn-with-the-pointer")
def outline_drawn():
    path = loose("drawn.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        program.keys("ctrl+3")
        program.click(program.find("push button", "Draw an outline"))
        says(program, "Click the first corner")
        x, y, width, height = program.box(program.find("panel" if program.has("panel", "The plan")
                                                       else "grouping", "The plan"))
        corners = [(0.2, 0.75), (0.8, 0.75), (0.8, 0.25), (0.2, 0.25)]
        for i, (east, down) in enumerate(corners):
            program.click((int(x + width * east), int(y + height * down)))
            if i == 1:
                program.picture("outline-drawn")
        says(program, "3 sides; Enter closes the outline with")
        program.click((int(x + width * 0.2), int(y + height * 0.75)))
        wall(program, "Front")
        text = program.saved(path, lambda t: 'name="Left"' in t)
        tap.equal(lengths(text)[1:3], lengths(text)[3:5], "opposite sides are of one length")
        program.picture("outline-by-hand")
        # One wall more, beside it, and given up.
        program.keys("ctrl+shift+n")
        says(program, "Click where the wall begins")
        program.keys("Escape")
        program.settle()
        check(not program.has("list item", "Wall 6 in plan"), "Escape draws nothing")


@tap.case("/plan/a-wall-is-drawn-on-to-another")
def one_wall():
    path = house("one.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        x, y, width, height = program.box(wall(program, "Right"))
        program.click(program.find("push button", "+ Wall"))
        # From the outer face of the right wall to the east: it goes through that wall.
        program.click((x + width, y + height // 2))
        program.type("3000")
        program.keys("Right")
        wall(program, "Wall 6")
        program.find("list item", "Tee of Wall 6 at Right")
        tap.equal(value(program.saved(path, lambda t: 'id="w6"' in t), "w6", "length"), "3250")
        program.picture("one-wall")


@tap.case("/plan/a-wall-that-stands-nowhere-is-placed")
def place():
    path = loose("place.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        program.keys("ctrl+3")
        program.picture("no-plan-yet")
        program.keys("s")
        says(program, "Yard: from 0 east, 0 north, to the east")
        program.picture("placing")
        program.keys("r")
        says(program, "to the north")
        program.keys("Escape")
        program.find("label", "No wall stands in plan")
        program.keys("s")
        program.keys("shift+Right", "shift+Up", "Right", "Return")
        wall(program, "Yard")
        text = program.saved(path, lambda t: "plan-x" in t)
        tap.equal([value(text, "w1", a) for a in ("plan-x", "plan-y", "runs")], ["110", "100", "east"])
        program.keys("ctrl+z")
        program.find("label", "No wall stands in plan")


@tap.case("/plan/openings-are-added-in-plan")
def add_openings():
    path = house("openings.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        x, y, width, height = program.box(wall(program, "Back"))
        program.keys("d")
        says(program, "Click in a wall")
        program.click((x + width // 4, y + height // 2))
        program.find("list item", "D1 in Back")
        program.keys("w")
        program.drag((x + width * 5 // 8, y + height // 2), (90, 0), let_go=False)
        program.picture("opening-drawn")
        program.let_go()
        program.find("list item", "W1 in Back")
        program.click(wall(program, "Right"))
        program.keys("w")
        program.keys("Return")
        program.find("list item", "W1 in Right")
        program.saved(path, lambda t: t.count("<opening ") == 4)
        program.picture("openings-added")


@tap.case("/plan/ties-of-a-butted-wall-are-chosen")
def ties():
    path = house("ties.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        program.click(program.find("list item", "Tee of Middle at Front"))
        way = program.find("check box" if program.has("check box", "Butted") else "radio button",
                           "Butted: Front through in all courses")
        check(not program.has("spin button", "Every so many courses"), "no ties where it is bonded")
        program.click(way)
        says(program, "Middle is tied to the other wall in its bed joints, as is common practice")
        text = program.saved(path, lambda t: "ties=" in t)
        check('through="all" ties="strip" ties-abreast="2"/>' in text, "what is usual")
        program.picture("ties")
        program.keys("Tab", "Tab", "ctrl+a")
        program.type("3")
        program.keys("Return")
        program.saved(path, lambda t: 'ties="strip" ties-every="3" ties-abreast="2"' in t)
        program.picture("ties-every")
        program.keys("shift+Tab")
        program.keys("Return")
        program.keys("End")
        program.keys("Return")
        program.saved(path, lambda t: 'ties="angle" ties-every="3" ties-abreast="2"' in t)
        program.picture("ties-angles")
        program.keys("ctrl+z", "ctrl+z")
        program.saved(path, lambda t: 'ties="strip" ties-abreast="2"' in t)
        program.click(wall(program, "Middle"))
        program.keys("Return")
        program.find("list item", "Wall: Middle")
        program.settle(1.5)
        program.picture("ties-elevation")
        program.click(program.find("list item", "Front"))
        program.settle(1.5)
        program.picture("ties-front")


@tap.case("/plan/three-walls-in-one-place-are-told")
def crowd():
    path = WORK / "crowd.halfbond"
    path.write_text(HOUSE.replace("</project>", """<wall id="w7" name="Third" block="b1" length="2000"
 height="2400" plan-x="7750" plan-y="0" runs="east"/></project>"""), encoding="utf-8")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        program.click(program.find("list item", "Right and Third in each other"))
        says(program, "want the same place: only two walls can be bonded there. Move")
        program.picture("crowd")


@tap.case("/plan/an-opening-is-pulled-along-its-wall")
def opening():
    path = house("opening.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        node = program.find("list item", "W1 in Front")
        before = program.describe(node)
        program.drag(program.middle(node), (60, 0), let_go=False)
        program.picture("opening-pulled")
        program.let_go()
        wait_for(lambda: program.describe(program.find("list item", "W1 in Front")) != before)
        text = program.saved(path, lambda t: 'x="1000"' not in t)
        x = float(re.search(r'name="W1" kind="window" x="([\d.]+)"', text).group(1))
        check(1200 < x < 3000, f"moved to {x}")
        program.keys("ctrl+z")
        describes(program, "list item", "W1 in Front", "left jamb at 1000 mm")


@tap.case("/plan/the-strip-of-cuts-is-there-in-plan")
def strip():
    path = house("strip.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        node = program.find("list item", "W1 in Front")
        x, y, width, height = program.box(node)
        program.click(node)
        program.settle(2.5)
        program.picture("strip-in-plan")
        # Over the window, inside of the wall: its middle bar is the place where it stands.
        places = set()
        for dx in range(-60, 61, 6):
            desk.run("xdotool", "mousemove", x + width // 2 + dx, y - 14 - 14)
            program.settle(0.05)
            for name in program.names("label") + program.names("status bar"):
                found = re.search(r"Left jamb at ([\d.]+) mm: .*cuts.*Click to move it there", name)
                if found:
                    places.add(float(found.group(1)))
        check(len(places) > 8, f"places told: {sorted(places)}")
        program.click((x + width // 2 + 40, y - 28))
        text = program.saved(path, lambda t: 'x="1000"' not in t)
        at = float(re.search(r'name="W1" kind="window" x="([\d.]+)"', text).group(1))
        check(at in places or abs(at - 1100) < 60, f"moved to {at}")
        program.keys("ctrl+z")
        describes(program, "list item", "W1 in Front", "left jamb at 1000 mm")
        # To the next cheap place by key.
        program.keys("ctrl+Right")
        program.saved(path, lambda t: 'x="1000"' not in t)


@tap.case("/plan/a-wall-is-moved-and-its-neighbours-follow")
def push():
    path = house("push.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        x, y, width, height = program.box(wall(program, "Back"))
        program.drag((x + width // 4, y + height // 2), (0, -30))
        text = program.saved(path, lambda t: value(t, "w2", "length") != "6000")
        length = float(value(text, "w2", "length"))
        check(6100 < length < 8000, f"Right is {length} long")
        tap.equal([float(value(text, w, "length")) for w in ("w1", "w3", "w4", "w5")],
                  [8000, 8000, length, length])
        tap.equal(float(value(text, "w3", "plan-y")), length)
        program.picture("wall-moved")
        program.keys("ctrl+z")
        describes(program, "list item", "Right in plan", "6000 mm long")
        # By keys, a millimetre at a time.
        program.click((x + width // 4, program.middle(wall(program, "Back"))[1]))
        program.keys("alt+Up", "alt+Up")
        describes(program, "list item", "Right in plan", "6002 mm long")


@tap.case("/plan/an-end-that-is-pulled-in-the-elevation-takes-the-corner-along")
def elevation():
    path = house("elevation.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        program.wait_cuts(lambda n: n >= 0)
        x, y, width, height = program.box(program.wall())
        program.drag((x + width, y + height // 3), (-20, 0))
        text = program.saved(path, lambda t: value(t, "w1", "length") != "8000")
        length = float(value(text, "w1", "length"))
        check(7000 < length < 8000, f"Front is {length} long")
        tap.equal(float(value(text, "w3", "length")), length, "Back, too")
        tap.equal(float(value(text, "w2", "plan-x")), length, "Right went along")


@tap.case("/plan/a-building-is-moved-as-one")
def building_moved():
    path = house("moved.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        x, y, width, height = program.box(wall(program, "Back"))
        desk.run("xdotool", "keydown", "shift")
        try:
            program.drag((x + width // 4, y + height // 2), (40, 25), let_go=False)
            says(program, "The whole building:")
            program.picture("building-moved")
            program.let_go()
        finally:
            desk.run("xdotool", "keyup", "shift")
        text = program.saved(path, lambda t: value(t, "w1", "plan-x") != "0")
        east, north = float(value(text, "w1", "plan-x")), float(value(text, "w1", "plan-y"))
        check(east > 200 and north < -100, f"by {east}, {north}")
        tap.equal([(float(value(text, w, "plan-x")) - east, float(value(text, w, "length"))) for w in ("w2", "w5")],
                  [(8000, 6000), (4250, 6000)])
        program.keys("ctrl+z")
        program.click((x + width // 4, program.middle(wall(program, "Back"))[1]))
        program.keys("ctrl+shift+Right")
        program.saved(path, lambda t: value(t, "w1", "plan-x") == "100")


@tap.case("/plan/a-partition-is-drawn")
def partition():
    path = house("partition.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        right = program.middle(wall(program, "Right"))
        middle = program.middle(wall(program, "Middle"))
        program.keys("t")
        says(program, "along the new partition")
        program.drag(((right[0] + middle[0]) // 2, middle[1]), (60, 0))
        program.find("list item", "Wall 6 in plan")
        program.find("list item", "Tee of Wall 6 at Right")
        program.find("list item", "Tee of Wall 6 at Middle")
        program.picture("partition")
        program.keys("Delete")
        wait_for(lambda: not program.has("list item", "Wall 6 in plan"))
        program.keys("ctrl+z")
        wall(program, "Wall 6")
        program.keys("ctrl+z")
        wait_for(lambda: not program.has("list item", "Wall 6 in plan"))


@tap.case("/plan/a-partition-is-set-by-keys-and-typed")
def partition_by_keys():
    path = house("keys.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        program.click(wall(program, "Right"))
        program.keys("t")
        says(program, "press Enter")
        program.keys("Return")
        wall(program, "Wall 6")
        entry = program.find("text", "Clear to Front")
        program.picture("partition-typed")
        program.click(entry)
        program.keys("ctrl+a")
        program.type("1500")
        program.keys("Return")
        text = program.saved(path, lambda t: 'id="w6"' in t and value(t, "w6", "plan-y") == "1750")
        tap.equal(float(value(text, "w6", "length")), 4000.0, "from wall to wall, through both")
        # More room than there is: said, and nothing is lost.
        program.click(program.find("text", "Clear to Front"))
        program.keys("ctrl+a")
        program.type("5900")
        program.keys("Return")
        says(program, "would")
        program.keys("Escape")
        tap.equal(value(program.saved(path, lambda t: True), "w6", "plan-y"), "1750")


@tap.case("/plan/a-typed-length-takes-the-corner-along")
def typed_length():
    path = house("length.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        program.click(wall(program, "Back"))
        entry = program.find("text", "Length")
        program.click(entry)
        program.keys("ctrl+a")
        program.type("9000")
        program.keys("Return")
        describes(program, "list item", "Front in plan", "9000 mm long")
        text = program.saved(path, lambda t: value(t, "w1", "length") == "9000")
        tap.equal(value(text, "w4", "plan-x"), "-1000", "Left went along")


@tap.case("/plan/a-dimension-is-typed-where-it-stands")
def dimension():
    path = house("dimension.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        x, y, width, height = program.box(wall(program, "Right"))
        # Its figure stands beside the line, which is 18 px outside of the wall.
        program.click((x + width + 18 + 24, y + height // 2))
        program.find("text", "Length of the side")
        program.picture("dimension-typed")
        program.type("6500")
        program.keys("Return")
        describes(program, "list item", "Left in plan", "6500 mm long")
        tap.equal(value(program.saved(path, lambda t: value(t, "w4", "length") == "6500"), "w3",
                        "plan-y"), "6500", "Back went along")
        program.keys("ctrl+z")
        describes(program, "list item", "Left in plan", "6000 mm long")


@tap.case("/plan/the-best-turns-are-found-and-set")
def turns():
    path = house("turns.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        program.keys("b")
        found = wait_for(lambda: [n for n in program.names("label") + program.names("static")
                                  + program.names("text")
                                  if " cuts" in n and "turn" in n and "Looking" not in n], 60)
        tap.comment(found[0])
        program.picture("turns")
        if "instead of" in found[0]:
            program.click(program.find("push button", "Turn them"))
            program.saved(path, lambda t: t != HOUSE)
            program.keys("ctrl+z")


@tap.case("/plan/the-plan-that-is-seen-is-saved-as-a-sheet")
def sheet():
    path = house("sheet.halfbond")
    out = WORK / "the-plan.pdf"
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        program.keys("ctrl+p")
        program.settle(0.8)
        program.keys("ctrl+a")
        program.type(str(out))
        program.keys("Return")
        wait_for(lambda: out.exists() and out.read_bytes().startswith(b"%PDF"))
        if shutil.which("pdftotext"):
            text = desk.run("pdftotext", "-layout", out, "-")
            check("Plan, to be set out from" in text and "10000" in text, "it is of the plan")


@tap.case("/plan/enter-opens-the-elevation")
def enter():
    path = house("enter.halfbond")
    with Program(HALFBOND, path, title="House") as program:
        in_plan(program)
        program.click(wall(program, "Left"))
        program.keys("Return")
        program.find("list item", "Wall: Left")
        in_plan(program)


screen = Screen()
try:
    code = tap.main(tries=2)
finally:
    screen.close()
    shutil.rmtree(WORK, ignore_errors=True)
sys.exit(code)
