"""The panes beside the wall and what goes out of the program: lists, properties, sheets."""
import pathlib
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

TWO_WALLS = """<?xml version="1.0" encoding="UTF-8"?>
<project xmlns="urn:halfbond:project:1" title="Shed">
  <block id="b1" name="Large block" length="600" height="200" thickness="250" density="500"/>
  <wall id="w1" name="Front" block="b1" length="6000" height="2446">
    <opening id="o1" name="W1" kind="window" x="1800" width="1200" sill="1028" height="1010"/>
  </wall>
  <wall id="w2" name="Back" block="b1" length="4000" height="2446"/>
</project>
"""


def two_walls(name):
    path = WORK / name
    path.write_text(TWO_WALLS, encoding="utf-8")
    return path


def saved(program, path):
    """The file's text once it was written."""
    before = path.stat().st_mtime_ns
    program.keys("ctrl+s")
    wait_for(lambda: path.stat().st_mtime_ns != before)
    return path.read_text(encoding="utf-8")


def walls(program):
    """Names in the list, from the top."""
    rows = [(program.box(node)[1], node.get_name().split(",")[0]) for node in program.everything()
            if node.get_role_name() == "list item" and " cut" in (node.get_name() or "")
            and " m · " in node.get_name()]
    return [name for _, name in sorted(rows)]


def entry(program, name, which=0):
    """The control of that name that is on the screen."""
    def look():
        found = [node for node in program.everything()
                 if node.get_role_name() in ("text", "entry") and node.get_name() == name
                 and node.get_state_set().contains(desk.Atspi.StateType.VISIBLE)]
        return found[which] if len(found) > which else None
    look.__doc__ = f"entry “{name}”"
    return wait_for(look)


def fill(program, node, text, key="Return"):
    program.click(node)
    program.keys("ctrl+a")
    program.type(text)
    program.keys(key)


def button(program, name):
    return program.find("push button", name)


def write_file(program, path):
    """Answers the dialog that asks where to; it would ask again for a file that is there."""
    path.unlink(missing_ok=True)
    program.find("push button", "Cancel")
    program.settle(0.5)
    program.keys("ctrl+a")
    program.type(str(path))
    program.keys("Return")
    wait_for(path.exists, 8)
    program.settle()


@tap.case("/panes/properties-of-an-opening-are-typed")
def opening():
    path = two_walls("opening.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        program.click(program.opening("Window W1"))
        fill(program, entry(program, "Left jamb at"), "150 cm")
        fill(program, entry(program, "Name"), "Kitchen", key="Tab")
        program.picture("properties-opening")
        text = saved(program, path)
        tap.contains(text, 'x="1500"')
        tap.contains(text, 'name="Kitchen"')


@tap.case("/panes/undo-in-an-entry-is-the-entrys")
def entry_undo():
    with Program(HALFBOND, two_walls("entry.halfbond"), title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        program.click(program.opening("Window W1"))
        program.keys("Right")
        program.click(entry(program, "Name"))
        program.keys("End")
        program.type("x")
        program.keys("ctrl+z")
        # What was typed is gone, and the window stays where the key put it.
        tap.contains(program.describe(program.opening("Window W1")), "left jamb at 1801")


@tap.case("/panes/what-cannot-be-is-refused-in-words")
def refused():
    with Program(HALFBOND, two_walls("refused.halfbond"), title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        program.click(program.opening("Window W1"))
        fill(program, entry(program, "Left jamb at"), "5500")
        said = wait_for(lambda: [n for n in program.names("label") if "leaves the wall" in n])
        tap.contains(said[0], "700", "by how much")
        program.picture("refused")
        program.keys("Escape")
        tap.contains(program.describe(program.opening("Window W1")), "left jamb at 1800")
        said = [n for n in program.names("label") if "leaves the wall" in n]
        tap.equal(said, [], "what is said after Escape")
        # With the focus goes what was refused; the sentence stays until the next change.
        jamb = entry(program, "Left jamb at")
        fill(program, jamb, "5500", key="Tab")
        # GTK gives nothing for an end of -1.
        text = desk.Atspi.Text
        tap.equal(text.get_text(jamb, 0, text.get_character_count(jamb)), "1800", "the field")
        wait_for(lambda: [n for n in program.names("label") if "leaves the wall" in n])
        fill(program, jamb, "1700")
        said = [n for n in program.names("label") if "leaves the wall" in n]
        tap.equal(said, [], "what is said after a change")


@tap.case("/panes/a-joint-goes-back-to-its-default")
def default():
    path = two_walls("default.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        fill(program, entry(program, "Levelling bed"), "30")
        tap.contains(saved(program, path), 'first-bed="30"')
        program.click(entry(program, "Levelling bed"))
        program.keys("ctrl+a", "BackSpace", "Return")
        tap.equal("first-bed" in saved(program, path), False, "the file still says it")


def go_to(program, choice):
    """By keys from the wall's height, for the list scrolls."""
    program.click(entry(program, "Height"))
    for _ in range(60):
        if choice.get_state_set().contains(desk.Atspi.StateType.FOCUSED) or any(
                child.get_state_set().contains(desk.Atspi.StateType.FOCUSED)
                for child in [choice.get_child_at_index(i)
                              for i in range(choice.get_child_count())] if child):
            return
        program.keys("Tab")
        choice.clear_cache()


@tap.case("/panes/a-rule-has-its-number-while-it-is-on")
def rule():
    path = two_walls("rule.halfbond")
    said = '<laying>\n      <rule kind="bearing" keep="must"/>\n    </laying>\n    <opening id="o1"'
    path.write_text(TWO_WALLS.replace('<opening id="o1"', said), encoding="utf-8")
    with Program(HALFBOND, path, title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        go_to(program, program.find("combo box", "No perpend under a lintel's end, … mm"))
        program.picture("rule")
        tap.equal(len([node for node in program.everything()
                       if node.get_name() == "Distance from the jamb's line"
                       and node.get_state_set().contains(desk.Atspi.StateType.SHOWING)]), 0,
                  "numbers of rules that are off")
        program.keys("Tab")
        program.type("250")
        program.keys("Return")
        tap.contains(saved(program, path), '<rule kind="bearing" keep="must" length="250"/>')


@tap.case("/panes/symmetry-is-asked-for")
def symmetry():
    """About openings, as far as is typed. A perpend that is pinned where it mirrors nothing is told."""
    path = two_walls("symmetry.halfbond")
    said = ('<laying>\n      <rule kind="symmetry-wall" keep="prefer"/>\n      <rule kind="symmetry-openings" keep="must"/>'
            '\n    </laying>\n    <opening id="o1"')
    pins = '\n    <pin course="6" x="1500" length="300"/>\n    <pin course="6" x="3100"/>\n  </wall>'
    path.write_text(TWO_WALLS.replace('<opening id="o1"', said).replace("\n  </wall>", pins, 1), encoding="utf-8")
    with Program(HALFBOND, path, title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        go_to(program, program.find("combo box", "Symmetrical about openings, to … mm"))
        for colours in ("dark", "light"):
            program.act("colours", colours)
            program.settle(0.6)
            program.picture("symmetry-" + colours)
        program.keys("Tab")
        program.type("450")
        program.keys("Return")
        text = saved(program, path)
        tap.contains(text, '<rule kind="symmetry-openings" keep="must" length="450"/>')
        tap.contains(text, '<rule kind="symmetry-wall" keep="prefer"/>')


@tap.case("/panes/a-new-block-is-one-step")
def block():
    path = two_walls("block.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        go_to(program, program.find("combo box", "The wall is of"))
        program.picture("block")
        program.keys("Return", "Down", "Return")
        text = saved(program, path)
        tap.equal(text.count("<block "), 2, "blocks in the file")
        tap.contains(text, 'name="Front" block="b2"')
        program.keys("ctrl+z")
        tap.equal(saved(program, path).count("<block "), 1, "after one undo")


@tap.case("/panes/walls-are-chosen-renamed-moved-copied-removed")
def list_of_walls():
    path = two_walls("list.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        wait_for(lambda: walls(program) == ["Front", "Back"])
        program.click(program.find("list item", "Back, "))
        wait_for(lambda: program.wall().get_name() == "Wall: Back")
        program.keys("F2")
        program.keys("ctrl+a")
        program.type("Yard")
        program.keys("Return")
        wait_for(lambda: walls(program) == ["Front", "Yard"])
        program.click(program.find("list item", "Yard, "))
        program.keys("alt+Up")
        wait_for(lambda: walls(program) == ["Yard", "Front"])
        program.click(program.find("list item", "Front, "))
        program.keys("Delete")
        wait_for(lambda: walls(program) == ["Yard"])
        tap.equal(program.wall().get_name(), "Wall: Yard", "its neighbour is shown")
        program.keys("ctrl+z")
        wait_for(lambda: walls(program) == ["Yard", "Front"])
        tap.contains(saved(program, path), 'name="Yard"')


def menus(program):
    """Where rows have a menu: a button in a button, by the rows' heights."""
    found = [node for node in program.everything()
             if "can be done with this wall" in (node.get_name() or "")]
    return {program.box(node)[1] // 20: node for node in found}


@tap.case("/panes/the-chosen-wall-has-a-menu")
def row_menu():
    path = two_walls("menu.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        wait_for(lambda: walls(program) == ["Front", "Back"])
        for name in ("Back", "Front", "Back"):
            program.click(program.find("list item", name + ", "))
            wait_for(lambda name=name: program.wall().get_name() == "Wall: " + name)
            tap.equal(len(menus(program)), 1, "one menu, whatever is chosen")
        program.click(list(menus(program).values())[0])
        program.find("menu item", "Copy")
        program.picture("row-menu")
        program.keys("c")
        wait_for(lambda: walls(program) == ["Front", "Back", "Back"])
        tap.contains(saved(program, path), 'name="Back, copy"')
        tap.equal(len(menus(program)), 1, "one menu still")


@tap.case("/panes/a-wall-is-dragged-to-another-place")
def reorder():
    with Program(HALFBOND, two_walls("reorder.halfbond"), title="Shed") as program:
        wait_for(lambda: walls(program) == ["Front", "Back"])
        start = program.middle(program.find("list item", "Back, "))
        end = program.middle(program.find("list item", "Front, "))
        program.drag(start, (0, end[1] - start[1]), steps=20)
        wait_for(lambda: walls(program) == ["Back", "Front"])


@tap.case("/panes/keep-mine-writes-over")
def keep_mine():
    path = two_walls("mine.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        program.click(program.opening("Window W1"))
        program.keys("Right")
        path.write_text(TWO_WALLS.replace("6000", "7000"))
        program.keys("ctrl+s")
        program.click(button(program, "Keep mine"))
        wait_for(lambda: 'x="1801"' in path.read_text())
        tap.contains(path.read_text(), 'length="6000"')


@tap.case("/panes/empty-lists-say-so")
def empty():
    with Program(HALFBOND, two_walls("empty.halfbond"), title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        program.keys("ctrl+n")
        said = wait_for(lambda: [n for n in program.names("label") if "No wall yet" in n])
        tap.equal(len(said) >= 1, True)
        tap.contains(" ".join(program.names("label")), "as soon as there is a wall")
        program.picture("empty")
        program.click(button(program, "Add one of"))
        wait_for(lambda: program.wall().get_name() == "Wall: Wall 1")
        program.wait_cuts(lambda n: n >= 0)


@tap.case("/panes/sheets-and-lists-are-written")
def exports():
    with Program(HALFBOND, two_walls("sheets.halfbond"), title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        program.settle(1)
        pdf = WORK / "sheet.pdf"
        program.keys("ctrl+p")
        write_file(program, pdf)
        tap.equal(pdf.read_bytes()[:5], b"%PDF-")
        for row, (name, begin) in enumerate((("wall.svg", b"<?xml"), ("wall.png", b"\x89PNG"),
                                             ("quantities.csv", b"key,"), ("pieces.csv", b"id,")),
                                            1):
            path = WORK / name
            program.click(button(program, "Sheets and lists"))
            # A menu is a window of its own, whose place is not told: by keys, then.
            program.keys(*["Down"] * row, "Return")
            write_file(program, path)
            tap.equal(path.read_bytes()[:len(begin)], begin, name)


@tap.case("/panes/a-file-on-the-recent-list-opens-again")
def recent():
    path = two_walls("recent.halfbond")
    with Program(HALFBOND, path, title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        program.keys("ctrl+n")
        wait_for(lambda: walls(program) == [])
        program.settle(0.5)
        program.settle(1)
        program.keys("F10")
        program.find("menu item", "recent.halfbond")
        program.keys("Down", "Down", "Return")
        program.settle(0.4)
        program.picture("recent")
        program.keys("Down", "Return")
        wait_for(lambda: walls(program) == ["Front", "Back"])


@tap.case("/panes/panes-are-put-away-by-a-key")
def put_away():
    with Program(HALFBOND, two_walls("away.halfbond"), title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        before = program.box(program.wall())
        program.keys("alt+1", "alt+2", "alt+3")
        wait_for(lambda: program.cuts() is None)
        program.settle(0.5)
        after = program.box(program.wall())
        tap.equal(after[2] > before[2] + 200, True, f"the wall has their room: {before} {after}")
        program.picture("put-away")
        program.keys("alt+1", "alt+2", "alt+3")
        program.wait_cuts(lambda n: n >= 0)


def top_of(program, name):
    return program.box(program.find("label", name))[1]


@tap.case("/panes/a-divider-takes-what-is-on-it-alone")
def divider():
    with Program(HALFBOND, two_walls("divider.halfbond"), title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        before = top_of(program, "Findings")
        status = [node for node in program.everything()
                  if desk.role_of(node) == "status bar"][0]

        def line():
            x, y, width, height = program.box(status)
            return x + width // 2, y + height
        x, y = line()
        # The list below begins where it is seen to begin.
        program.drag((x, y + 10), (0, -60))
        tap.equal(top_of(program, "Findings"), before, "10 px below it")
        program.drag((x, y + 3), (0, -60))
        wait_for(lambda: top_of(program, "Findings") < before - 40)
        x, y = line()
        program.drag((x, y - 3), (0, 60))
        wait_for(lambda: top_of(program, "Findings") > before - 30)


@tap.case("/panes/a-long-explanation-leaves-room-for-the-fields")
def explained():
    with Program(HALFBOND, two_walls("explained.halfbond"), title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        x, y, width, height = program.box(program.wall())
        program.click((x + width // 2, y + height + 60))
        program.keys("Right")
        longest = 0
        for _ in range(12):
            program.keys("Up", "Right")
            room = program.box(entry(program, "Length"))[1] - top_of(program, "Wall: Front")
            longest = max(longest, room)
        program.picture("explained")
        tap.equal(longest > 60, True, "something is explained")
        tap.equal(longest < 165, True, f"the fields begin {longest} px below the title")


@tap.case("/panes/dark-and-light")
def dark():
    with Program(HALFBOND, two_walls("dark.halfbond"), title="Shed") as program:
        program.wait_cuts(lambda n: n >= 0)
        program.settle(0.5)
        light = program.pixels(program.wall())
        for colours in ("dark", "light"):
            program.act("colours", colours)
            program.settle(0.6)
            program.picture("colours-" + colours)
            tap.equal(program.pixels(program.wall()) == light, colours == "light", colours)


screen = Screen()
try:
    code = tap.main(tries=2)
finally:
    screen.close()
    shutil.rmtree(WORK, ignore_errors=True)
sys.exit(code)
