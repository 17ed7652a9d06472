"""The plan of a build under the hand: corners dragged and stepped with keys, and what cannot be built."""
import os
import subprocess
import tempfile

import pyatspi
from drive import extents, run_cases, until, x
from farm import Farm
from build import ask, begin, opened

CORNERS = "SELECT round(x_m / 0.3048) || ' ' || round(y_m / 0.3048) FROM build_corner ORDER BY position"


def dark_runs(w, left, top, width):
    """Where a row of the screen is as dark as the fence, from its left; the screen is light."""
    with tempfile.TemporaryDirectory() as folder:
        shot = os.path.join(folder, 'shot.png')
        w.shot(shot)
        gray = subprocess.check_output(['convert', shot, '-crop', f'{width}x1+{left}+{top}', '-depth', '8', 'gray:-'])
    return [i for i, value in enumerate(gray) if value < 90]


class Plan:
    """The drawing of a pen of 48 by 24 ft: it stands in the middle, over the bar that tells its scale."""

    def __init__(self, w):
        self.w = w
        self.node = w.wait('image', 'Plan of the build')
        e = extents(self.node)
        middle_y = e.y + e.height // 2 - 14
        dark = dark_runs(w, e.x, middle_y, e.width // 2)
        self.x = e.x + max(dark)                    # the left side of the fence
        self.scale = (e.x + e.width / 2 - self.x) / 24
        self.y = middle_y - 12 * self.scale

    def at(self, right, down):
        return round(self.x + right * self.scale), round(self.y + down * self.scale)

    def drag(self, here, there):
        (x0, y0), (x1, y1) = self.at(*here), self.at(*there)
        x('mousemove', '--window', self.w.id, x0, y0, 'mousedown', 1)
        for i in range(1, 9):
            x('mousemove', '--window', self.w.id, x0 + (x1 - x0) * i // 8, y0 + (y1 - y0) * i // 8)
        x('mouseup', 1)

    def said(self):
        return self.node.description


def pen(farm):
    farm.rows('PRAGMA foreign_keys = ON; DELETE FROM build')
    w = opened(farm)
    begin(w, 'Goat pen', first=True)
    w.press('push button', 'Save build')
    w.wait_words('1,152 sq ft')
    return w


def test_corners():
    """By mouse to 52 ft, by keys back to 48, undone; the corner that has the focus is told and seen."""
    farm = Farm()
    w = pen(farm)
    plan = Plan(w)
    plan.drag((48, 0), (52, 0))
    # 24 times the mean of 52 and 48.
    w.wait_words('1,200 sq ft')
    until(lambda: farm.rows(CORNERS)[1] == '52.0 0.0', 30)
    until(lambda: plan.node.getState().contains(pyatspi.STATE_FOCUSED))
    until(lambda: plan.said().startswith('Corner 2: 52 ft'))
    w.keys('Left', 'Left', 'Left', 'Left')
    w.wait_words('1,152 sq ft')
    until(lambda: farm.rows(CORNERS)[1] == '48.0 0.0', 30)
    # Tab goes on to the next corner, and is seen to; the last one leaves the plan.
    with tempfile.TemporaryDirectory() as folder:
        looks = [os.path.join(folder, name) for name in ('second.png', 'third.png')]
        w.shot(looks[0])
        w.keys('Tab')
        until(lambda: plan.said().startswith('Corner 3: 48 ft'))
        w.shot(looks[1])
        with open(looks[0], 'rb') as a, open(looks[1], 'rb') as b:
            assert a.read() != b.read()
    w.keys('Down')
    until(lambda: farm.rows(CORNERS)[2] == '48.0 25.0', 30)
    w.keys('Tab', 'Tab')
    until(lambda: not plan.node.getState().contains(pyatspi.STATE_FOCUSED))
    w.keys('ctrl+z')
    until(lambda: farm.rows(CORNERS)[2] == '48.0 24.0', 30)
    assert w.close() == 0
    farm.verify()


def test_what_cannot_be_built():
    """Sides that cross, a gate that is wider than its side, a day that has gone by: told, and nothing is changed."""
    farm = Farm()
    w = pen(farm)
    before = farm.rows(CORNERS)
    Plan(w).drag((48, 0), (24, 34))
    w.wait_words('Two sides of the plan cross or touch each other.')
    w.wait_words('1,152 sq ft')
    assert farm.rows(CORNERS) == before
    ask(w, 'Gates…', 'Width of gate 1')
    w.fill('Width of gate 1', '49')
    w.press('push button', 'Save gates')
    w.wait_words('This is wider than its side.')
    w.fill('Width of gate 1', '12')
    w.fill("Gate 1, from its side's first corner", '40')
    w.press('push button', 'Save gates')
    w.wait_words('There the gate reaches past its side.')
    w.keys('Escape')
    ask(w, 'Change build…', 'Wanted by')
    w.fill('Wanted by', '2020-01-01')
    w.press('push button', 'Save build')
    w.wait_words('has gone by')
    w.fill('Wanted by', '2031-01-01')
    w.press('push button', 'Save build')
    until(lambda: farm.ask('build', 'Goat pen')['wanted_by'] == '2031-01-01', 30)
    assert w.close() == 0
    farm.verify()


run_cases(test_corners, test_what_cannot_be_built)
