"""A screen of its own with a window manager, a session bus, and the program on it.

Each case starts its own, drives it with a real pointer and real keys (xdotool), and reads what a
screen reader would read (AT-SPI). Pictures of the screen are kept in the build folder.
"""
import os
import pathlib
import shutil
import signal
import subprocess
import sys
import tempfile
import time

import gi

gi.require_version("Atspi", "2.0")
from gi.repository import Atspi, GLib  # noqa: E402

import tap  # noqa: E402

# What is printed by GTK and is no fault of the program; the last by GTK 4.8 when a menu closes while
# its place is being sought.
NOISE = ("dconf", "Failed to set fd limit", "at-spi", "AT-SPI", "org.gtk.vfs",
         "gdk_monitor_get_geometry")
SIZE = (1366, 768)


def inside_bus():
    """Runs this program again under a session bus of its own, unless it is."""
    out = os.environ.get("HALFBOND_TEST_BUS")
    if out:
        sys.stdout = os.fdopen(int(out), "w", buffering=1)
        return
    for tool in ("Xvfb", "openbox", "xdotool", "import", "dbus-run-session"):
        if not shutil.which(tool):
            print("1..0 # SKIP", tool, "is not here")
            sys.exit(0)
    # The bus of accessible things lies in this folder: two runs at a time would share one.
    os.environ["XDG_RUNTIME_DIR"] = tempfile.mkdtemp(prefix="halfbond-bus-")
    # What the bus starts writes to the output it finds: it gets the errors', and TAP goes apart.
    apart = os.dup(1)
    os.set_inheritable(apart, True)
    os.dup2(2, 1)
    os.environ["HALFBOND_TEST_BUS"] = str(apart)
    # The bus's own library warns of a tree that is not ready; the program's words are read for
    # themselves.
    os.environ.pop("G_DEBUG", None)
    os.execvp("dbus-run-session", ["dbus-run-session", "--", sys.executable] + sys.argv)


def run(*words, **more):
    return subprocess.run([str(w) for w in words], check=True, capture_output=True, text=True,
                          timeout=20, **more).stdout


def wait_for(what, seconds=8.0, every=0.05):
    """What `what()` gives, as soon as it is true."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        found = what()
        if found:
            return found
        time.sleep(every)
    raise AssertionError(f"waited {seconds} s for {what.__doc__ or what.__name__}")


# What later versions of the accessibility library call the same things.
ROLES = {"button": "push button", "statusbar": "status bar"}


def role_of(node):
    """The name of its role, the same with every version."""
    return ROLES.get(node.get_role_name(), node.get_role_name())


class Screen:
    """Xvfb and openbox; one for all cases of a program."""

    def __init__(self):
        read, write = os.pipe()
        self.server = subprocess.Popen(
            ["Xvfb", "-displayfd", str(write), "-screen", "0", "%dx%dx24" % SIZE, "-nolisten", "tcp"],
            pass_fds=[write], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(write)
        with os.fdopen(read) as pipe:
            self.number = pipe.readline().strip()
        os.environ["DISPLAY"] = ":" + self.number
        self.manager = subprocess.Popen(["openbox"], stdout=subprocess.DEVNULL,
                                        stderr=subprocess.DEVNULL)
        time.sleep(0.5)

    def close(self):
        shutil.rmtree(os.environ["XDG_RUNTIME_DIR"], ignore_errors=True)
        self.manager.terminate()
        self.manager.wait()
        self.server.terminate()
        self.server.wait()


class Program:
    """The running program; use as a context."""

    def __init__(self, path, *files, title="Halfbond"):
        self.path, self.files, self.title = path, [str(f) for f in files], title
        self.home = pathlib.Path(tempfile.mkdtemp(prefix="halfbond-home-"))

    def __enter__(self):
        (self.home / "run").mkdir(mode=0o700)
        environment = dict(os.environ, HOME=str(self.home), XDG_CONFIG_HOME=str(self.home / "config"),
                           XDG_DATA_HOME=str(self.home / "data"),
                           XDG_CACHE_HOME=str(self.home / "cache"), GSK_RENDERER="cairo",
                           GDK_BACKEND="x11", GSETTINGS_BACKEND="memory", LC_ALL="C.UTF-8",
                           GTK_USE_PORTAL="0", G_ENABLE_DIAGNOSTIC="0")
        environment.pop("G_DEBUG", None)
        environment.pop("GTK_A11Y", None)
        self.log = open(self.home / "log", "w+")
        self.process = subprocess.Popen([self.path] + self.files, env=environment, stdout=self.log,
                                        stderr=self.log, cwd=self.home)
        try:
            self.application = wait_for(self._find_application, 20)
            self.window = wait_for(self._find_window, 10)
        except BaseException:
            # Left running, it would take the files of all that come after it.
            self.picture("not-started")
            self.process.kill()
            self.process.wait()
            raise
        # A fixed place and size, so that a picture is the same in every run.
        run("xdotool", "windowactivate", "--sync", self.window)
        run("xdotool", "windowmove", self.window, 0, 10)
        self.settle()
        return self

    def __exit__(self, kind, error, trace):
        if kind:
            self.picture("failed")
        self.process.poll()
        died = self.process.returncode
        if died is None:
            self.process.send_signal(signal.SIGKILL)
            self.process.wait()
        self.log.flush()
        said = (self.home / "log").read_text()
        self.log.close()
        shutil.rmtree(self.home, ignore_errors=True)
        if kind:
            tap.comment(said)
            return
        if died not in (None, 0):
            raise AssertionError(f"the program ended with {died}: {said}")
        bad = [line for line in said.splitlines()
               if ("WARNING" in line or "CRITICAL" in line or "ERROR" in line)
               and not any(word in line for word in NOISE)]
        tap.equal(bad, [], "what GTK and GLib complained of")

    # ---- finding ----

    def _find_application(self):
        """the program on the accessibility bus"""
        if self.process.poll() is not None:
            raise AssertionError("the program ended: " + (self.home / "log").read_text())
        desktop = Atspi.get_desktop(0)
        for i in range(desktop.get_child_count()):
            child = desktop.get_child_at_index(i)
            try:
                if not child or child.get_process_id() != self.process.pid:
                    continue
                if child.get_child_count():
                    return child
            except GLib.Error:
                pass
        return None

    def _find_window(self):
        """a window on the screen"""
        found = subprocess.run(["xdotool", "search", "--onlyvisible", "--pid",
                                str(self.process.pid), "--name", self.title],
                               capture_output=True, text=True).stdout.split()
        return found[0] if found else None

    def everything(self):
        """All accessible things, depth first."""
        heap = [self.application]
        while heap:
            node = heap.pop()
            yield node
            try:
                for i in range(node.get_child_count() - 1, -1, -1):
                    child = node.get_child_at_index(i)
                    if child:
                        heap.append(child)
            except GLib.Error:
                pass

    def find(self, role, name, seconds=5.0):
        """The first of that role whose name contains `name`."""
        def look():
            for node in self.everything():
                try:
                    if role_of(node) == role and name in (node.get_name() or ""):
                        return node
                except GLib.Error:
                    pass
            return None
        look.__doc__ = f"{role} “{name}”"
        return wait_for(look, seconds)

    def has(self, role, name):
        try:
            self.find(role, name, 0.2)
        except AssertionError:
            return False
        return True

    def names(self, role):
        found = []
        for node in self.everything():
            try:
                if role_of(node) == role:
                    found.append(node.get_name() or "")
            except GLib.Error:
                pass
        return found

    def box(self, node):
        """Its place on the screen: x, y, width, height."""
        extents = node.get_component_iface().get_extents(Atspi.CoordType.WINDOW)
        shell = dict(line.split("=") for line in
                     run("xdotool", "getwindowgeometry", "--shell", self.window).split())
        top = self.application.get_child_at_index(0).get_component_iface().get_extents(
            Atspi.CoordType.WINDOW)
        # Older GTK counts from within the window's shadow; newer GTK from twice its width further in.
        margin = (int(shell["WIDTH"]) - top.width) // 2 - 2 * top.x
        return (int(shell["X"]) + margin + extents.x, int(shell["Y"]) + margin + extents.y,
                extents.width, extents.height)

    def middle(self, node):
        x, y, width, height = self.box(node)
        return x + width // 2, y + height // 2

    # ---- driving ----

    def settle(self, seconds=0.35):
        time.sleep(seconds)

    def keys(self, *keys):
        run("xdotool", "key", "--delay", "40", *keys)
        self.settle()

    def type(self, text):
        run("xdotool", "type", "--delay", "25", text)
        self.settle(0.2)

    def click(self, place):
        if not isinstance(place, tuple):
            place = self.middle(place)
        run("xdotool", "mousemove", place[0], place[1])
        self.settle(0.1)
        run("xdotool", "click", 1)
        self.settle()

    def drag(self, start, by, steps=12, let_go=True):
        run("xdotool", "mousemove", start[0], start[1])
        self.settle(0.1)
        run("xdotool", "mousedown", 1)
        for i in range(1, steps + 1):
            run("xdotool", "mousemove", start[0] + by[0] * i // steps, start[1] + by[1] * i // steps)
            time.sleep(0.02)
        self.settle(0.2)
        if let_go:
            run("xdotool", "mouseup", 1)
            self.settle()

    def let_go(self):
        run("xdotool", "mouseup", 1)
        self.settle()

    def saved(self, path, right, read=None, seconds=8):
        """The text of the file, or what `read` makes of its path, saved until that is right."""
        read = read or (lambda file: file.read_text(encoding="utf-8"))

        def look():
            self.keys("ctrl+s")
            return right(read(path))
        look.__doc__ = f"what is right in {path.name}, where there is {read(path)}"
        wait_for(look, seconds)
        return read(path)

    def act(self, action, word):
        """An action of the program by its name, as a desktop would ask for it over the bus."""
        run("gdbus", "call", "--session", "--dest", "org.halfbond.Halfbond", "--object-path",
            "/org/halfbond/Halfbond", "--method", "org.gtk.Actions.Activate", action,
            f"[<'{word}'>]", "{}")

    def picture(self, name):
        folder = pathlib.Path(os.environ.get("G_TEST_BUILDDIR", ".")) / "app" / "pictures"
        folder.mkdir(parents=True, exist_ok=True)
        subprocess.run(["import", "-window", "root", str(folder / (name + ".png"))],
                       capture_output=True)

    def pixels(self, node):
        """What is seen of a node, as bytes."""
        x, y, width, height = self.box(node)
        return subprocess.run(["import", "-window", "root", "-crop", f"{width}x{height}+{x}+{y}",
                               "-depth", "8", "rgb:-"], capture_output=True, check=True).stdout

    # ---- what is shown ----

    def cuts(self):
        """The count of cuts at the head of the take-off."""
        for name in self.names("label"):
            words = name.split()
            if len(words) == 2 and words[1] in ("cut", "cuts") and words[0].isdigit():
                return int(words[0])
        return None

    def wait_cuts(self, right, what="the count of cuts"):
        def look():
            n = self.cuts()
            return n is not None and right(n)
        look.__doc__ = what
        wait_for(look)
        return self.cuts()

    def wall(self):
        """The wall on the canvas: its node and its description."""
        return self.find("list item", "Wall: ")

    def opening(self, name):
        return self.find("list item", name)

    def describe(self, node):
        return node.get_description()
