"""The storey rod in a real window: read, moved to gauge, its beds taken, undone, saved."""
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

# The window's sill is 62 mm over the top of course 4 (826): 60 over course 5's bottom. Its head, 2088, is
# 50 over the bottom of course 11 (2040), 152 under its top. The top, 2500, is 60 over course 13's bottom.
SHED = """<?xml version="1.0" encoding="UTF-8"?>
<project xmlns="urn:halfbond:project:1" title="Shed">
  <block id="b1" name="Large block" length="600" height="200" thickness="250" density="500"/>
  <wall id="w1" name="Front" block="b1" length="3608" height="2500">
    <opening id="o1" name="W1" kind="window" x="1200" width="1200" sill="888" height="1200"/>
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


def open_tops(program, title):
    tops = [program.application.get_child_at_index(i)
            for i in range(program.application.get_child_count())]
    return [top for top in tops if top and top.get_name() == title]


def open_beside(program, key, title):
    """Opens the window of that title with its key, the focus being on the wall."""
    program.keys(key)

    def look():
        return open_tops(program, title)
    look.__doc__ = f"the window “{title}”"
    wait_for(look)
    program.settle()


def on_the_wall(program):
    program.wait_cuts(lambda n: n >= 0)
    x, y, width, height = program.box(program.wall())
    program.click((x + width // 2, y + height + 60))


def press(program, name):
    program.find("push button", name).get_action_iface().do_action(0)
    program.settle()


def labels(program):
    """What the window beside the wall says; all that is said, where none is open."""
    heap = open_tops(program, "Storey rod") + open_tops(program, "Work and pallets") or [program.application]
    found = []
    while heap:
        node = heap.pop()
        try:
            if node.get_role() == desk.Atspi.Role.LABEL:
                found.append(node.get_name() or "")
            heap += [child for child in map(node.get_child_at_index, range(node.get_child_count())) if child]
        except desk.GLib.Error:
            pass
    return found


def reads(program, words):
    """Waits until a label says that."""
    def look():
        return [name for name in labels(program) if words in name]
    look.__doc__ = f"“{words}” among the labels"
    return wait_for(look)


def wall(path):
    return re.search(r'height="([\d.]+)">\s*(?:<laying ([^>]*)/>\s*)?<opening [^>]*sill="([\d.]+)" height="([\d.]+)"',
                     path.read_text(encoding="utf-8")).groups()


def saved(program, path, right):
    """What wall() finds as soon as it is right; the window beside is closed for it."""
    program.keys("ctrl+w")
    program.settle()
    return program.saved(path, right, wall)


@tap.case("/rod/heights-are-moved-to-gauge")
def gauge():
    path = made("gauge.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        on_the_wall(program)
        open_beside(program, "g", "Storey rod")
        reads(program, "Front: courses of 200 mm, levelling bed 20, bed joint 2")
        reads(program, "As it is: 0 of 3")
        reads(program, "Ripped: W1 sill 60 · W1 head 152 · top 56")
        program.picture("rod")
        press(program, "Move W1 sill to 826 mm")
        reads(program, "As it is: 1 of 3")
        press(program, "Move W1 head to 2040 mm")
        reads(program, "As it is: 2 of 3")
        press(program, "Move wall’s top to 2442 mm")
        reads(program, "No strip is ripped.")
        reads(program, "As it is: 3 of 3")
        # Nothing is left to be moved, and the last button's focus went on.
        tap.equal([n for n in program.names("push button") if n.startswith("Move W1") and " to " in n], [])
        # Each was a step, undone from here.
        program.keys("ctrl+z", "ctrl+z")
        reads(program, "As it is: 1 of 3")
        press(program, "All openings to gauge")
        reads(program, "Ripped: top 56")
        # It follows the wall that is shown.
        program.click((80, 235))
        reads(program, "Side: courses of 200 mm, levelling bed 20, bed joint 2")
        reads(program, "1 mm of mortar packed")
        tap.equal(program.saved(path, lambda w: w[2] == "826", wall), ("2500", None, "826", "1214"))


@tap.case("/rod/beds-are-typed-and-taken")
def beds():
    path = made("beds.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        on_the_wall(program)
        open_beside(program, "g", "Storey rod")
        reads(program, "choices tried: 155")
        # The first field has the focus: what is typed in it is tried at once.
        program.find("text", "Levelling bed, from")
        program.keys("ctrl+a")
        program.type("82")
        reads(program, "The lesser thickness stands first.")
        program.keys("Tab", "ctrl+a")
        program.type("82")
        reads(program, "choices tried: 5")
        reads(program, "Levelling bed 82, bed joint 2")
        program.keys("Tab", "ctrl+a")
        program.type("two")
        reads(program, "A bed joint is from 0 to 20 mm thick.")
        program.keys("ctrl+a")
        program.type("2")
        program.keys("Tab", "ctrl+a")
        program.type("2")
        reads(program, "choices tried: 1")
        # With a bed of 82 the sill meets course 4 (888), the head 152 less 62 ... is 90 under course 11's top.
        press(program, "Take it: Levelling bed 82, bed joint 2")
        reads(program, "Front: courses of 200 mm, levelling bed 82, bed joint 2")
        program.find("push button", "As now: Levelling bed 82, bed joint 2")
        tap.equal(saved(program, path, lambda w: w[1] is not None)[1], 'first-bed="82" bed="2"')
        tap.equal(path.read_text().count("<laying"), 1)
        program.keys("ctrl+z")
        program.saved(path, lambda text: "<laying" not in text)


def figure(program, name):
    """The field of that name, clicked; places are told from its own window."""
    for role in ("text", "entry"):
        try:
            extents = program.find(role, name, 1.5).get_component_iface().get_extents(
                desk.Atspi.CoordType.WINDOW)
            break
        except AssertionError:
            pass
    shown = desk.run("xdotool", "search", "--onlyvisible", "--name", "Work and pallets").split()
    desk.run("xdotool", "mousemove", "--window", shown[0], extents.x + extents.width // 2,
             extents.y + extents.height // 2)
    program.settle(0.1)
    desk.run("xdotool", "click", 1)
    program.settle()


# What it comes to is worked by hand in tests/takeoff and tests/cli; here, that the figures are followed.
@tap.case("/work/figures-are-typed-and-tell-at-once")
def work():
    path = made("work.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        on_the_wall(program)
        open_beside(program, "h", "Work and pallets")
        reads(program, "h of work")
        reads(program, "with 2 at work for 8 h a day")
        reads(program, "Large block: ")
        reads(program, "within 20 kg")
        program.picture("work")
        before = [n for n in labels(program) if n.endswith("h of work")]
        figure(program, "Minutes a cut by hand saw")
        program.type("20")
        program.keys("Return")
        wait_for(lambda: [n for n in labels(program) if n.endswith("h of work")] != before)
        figure(program, "Rise of a wall in a day")
        program.type("210")
        program.keys("Tab")
        reads(program, "13 days, with 2 at work for 8 h a day")
        # What is no number is said, and Escape takes it back.
        figure(program, "Persons at work")
        program.type("two")
        program.keys("Return")
        reads(program, "“two” is not a number.")
        program.keys("Escape")
        program.type("4")
        program.keys("Return")
        reads(program, "with 4 at work for 8 h a day")
        # Each was a step; the field that has the focus gives undo to the project.
        program.keys("ctrl+z")
        reads(program, "with 2 at work for 8 h a day")
        program.keys("ctrl+y")
        program.act("colours", "dark")
        program.settle(0.8)
        program.picture("work-dark")
        program.keys("ctrl+w")
        program.saved(path, lambda text: '<work gang="4" minutes-a-cut="20" rise="210"/>' in text)


@tap.case("/rod/no-walls")
def none():
    path = made("none.halfbond", NONE)
    with Program(HALFBOND, path, title="Shed") as program:
        for key, title in (("g", "Storey rod"), ("h", "Work and pallets")):
            program.keys(key)
            wait_for(lambda: open_tops(program, title))
            reads(program, "There is no wall yet.")
            program.picture("none-" + key)
            program.keys("Escape")
            wait_for(lambda: not open_tops(program, title))


screen = Screen()
try:
    code = tap.main(tries=2)
finally:
    screen.close()
    shutil.rmtree(WORK, ignore_errors=True)
sys.exit(code)
