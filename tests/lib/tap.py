"""Cases as functions, results as TAP: what the tests written in Python share."""
import sys
import traceback

_cases = []


class Skip(Exception):
    """Raised by a case that cannot be tried here, with the reason."""


def case(name, *arguments):
    """Marks a function as a case; may be given several times, with different arguments."""
    def mark(function):
        _cases.append((name, function, arguments))
        return function
    return mark


def comment(text):
    for line in str(text).splitlines():
        print(f"# {line}")


def _run_one(number, name, function, arguments, tries):
    for left in range(tries - 1, -1, -1):
        try:
            function(*arguments)
        except Skip as skip:
            print(f"ok {number} {name} # SKIP {skip}")
            return True
        except Exception:  # any kind of trouble fails the case, and the next one still runs
            if not left:
                print(f"not ok {number} {name}")
            comment(traceback.format_exc())
        else:
            print(f"ok {number} {name}" + (" (second try)" if left < tries - 1 else ""))
            return True
    return False


def main(tries=1):
    """Runs every case in the order of the file; with words in the call, those whose name has one.

    With 2 tries a case that fails is done once more, from its beginning. What the first try said is
    printed, and that there was one is told at the end of the whole suite (count.py).
    """
    words = [word for word in sys.argv[2:] if word.startswith("/")]
    cases = [c for c in _cases if not words or any(word in c[0] for word in words)]
    print(f"1..{len(cases)}")
    good = True
    for number, (name, function, arguments) in enumerate(cases, 1):
        good = _run_one(number, name, function, arguments, tries) and good
        sys.stdout.flush()
    return 0 if good else 1


def equal(got, expected, what=""):
    if got != expected:
        raise AssertionError(f"{what}: got {got!r}, expected {expected!r}")


def contains(text, word, what=""):
    if word not in text:
        raise AssertionError(f"{what}: {word!r} is not in {text!r}")
