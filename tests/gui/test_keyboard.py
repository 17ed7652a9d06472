"""One whole task of each of the three users by the keyboard alone.

Each control that has the focus on the way must tell a screen reader its role, its name,
and its value or its sentence where it has one (keyboard.py).
"""
import os
import subprocess
import tempfile

import pyatspi

from drive import Window, extents, run_cases, until
from farm import Farm, PROGRAM
from keyboard import Keyboard

RING = '#b8431c'    # of what has the focus: "tomato" of the style sheet


def opened(place):
    farm = Farm()
    w = Window(PROGRAM, farm.path)
    w.fit()
    k = Keyboard(w)
    w.place(place)
    k.pump()
    return farm, w, k


def closed(farm, w, k):
    k.close()
    assert not k.faults, k.faults
    assert w.close() == 0, w.said()
    farm.verify()


def view(k, first, wanted):
    """From the first view of a place to another one, by the arrows."""
    k.tab_to('push button', first)
    node = k.tab_to('push button', wanted, key='Right', most=12)
    k.press('space', .3)
    until(lambda: node.getState().contains(pyatspi.STATE_PRESSED))


def test_student_prices_a_product():
    farm, w, k = opened('Price')
    why = k.tab_to('push button', 'Feed, ')
    k.press('space', .3)
    w.wait_words('Layer feed')                            # what is behind the line
    assert why.name.startswith('Feed, ')
    assert k.press('Tab').getRoleName() == 'list item'    # the entries are one stop, which Tab leaves again
    price = k.tab_to('slider', 'Price, $4.50')
    for _ in range(5):
        k.press('Right', .2)
    until(lambda: price.queryValue().currentValue == 455)
    assert price.name.startswith('Price, $4.55'), price.name     # the value in words as well
    w.wait_words('At $4.55 a dozen')
    k.tab_to('push button', 'Why? The figures worked out')
    k.press('space', .3)
    w.wait_words('÷')
    k.tab_to('push button', 'Use $4.55 from today')
    k.press('space', .3)
    until(lambda: farm.rows('SELECT cents FROM price ORDER BY id DESC LIMIT 1') == ['455'])
    closed(farm, w, k)


def test_teacher_plans_a_fundraiser_for_a_pen():
    farm, w, k = opened('Fund')
    k.tab_to('push button', 'New build')
    k.press('Return')
    w.type('Goat pen')
    for name, text in (('How many animals', '6'), ('Length', '32'), ('Width, ', '24'), ('Width of the gate', '4'),
                       ('Wanted by', '2027-06-01')):
        k.tab_to('text', name)
        w.type(text)
    k.tab_to('push button', 'Save build')
    k.press('Return', .5)
    until(lambda: farm.rows("SELECT count(*) FROM build WHERE name = 'Goat pen'") == ['1'])
    view(k, 'Plan', 'Money')
    w.wait_words('When will it be paid for?')
    before = farm.rows('SELECT count(*) FROM build_pledge')
    k.tab_to('push button', 'New pledge')
    k.press('Return')
    w.type('Parents of the class')
    for name, text in (('How much', '250'), ('How likely', '90'), ('Due on', '2027-03-01')):
        k.tab_to('text', name)
        w.type(text)
    k.tab_to('push button', 'Save pledge')
    k.press('Return', .5)
    until(lambda: farm.rows('SELECT count(*) FROM build_pledge') != before)
    w.wait_words('Parents of the class')
    k.tab_to('push button', 'Plan sales')
    assert k.press('Return') is not None                  # the dialog takes the focus
    k.press('Escape', .5)
    closed(farm, w, k)


def test_advisor_prepares_a_packet():
    farm, w, k = opened('Show')
    view(k, 'Class', 'Packets')
    k.tab_to('push button', 'New packet')
    k.press('Return')
    w.type('Spring fair')
    k.tab_to('push button', 'Of whom')
    for key in ('space', 'Down', 'Return'):
        k.press(key, .5)
    k.tab_to('text', 'The work in brief')
    w.type('Hens and the stall')
    k.tab_to('push button', 'Save packet')
    k.press('Return', .5)
    until(lambda: farm.rows("SELECT brief FROM packet WHERE name = 'Spring fair'") == ['Hens and the stall'])
    row = k.tab_to('table row', 'No. 1, Section Cover')
    assert 'State' in row.name                            # the whole row is said
    after = k.press('Down') or k.press('Down')             # a newer GTK begins at the row itself
    assert after.name.startswith('No. 2')
    k.tab_to('push button', 'Look at the packet')
    k.press('Return')
    w.wait('image', 'Page 1 of')
    k.press('Escape', .5)
    closed(farm, w, k)


def ring_pixels(w, node, folder):
    """How much of the ring's color is in and around a control."""
    box = extents(node)
    path = os.path.join(folder, 'look.png')
    w.shot(path)
    said = subprocess.check_output(['convert', path, '-crop', f'{box.width + 16}x{box.height + 16}+{box.x - 8}+{box.y - 8}',
                                    '+repage', '-fill', 'black', '+opaque', RING, '-fill', 'white', '-opaque', RING,
                                    '-format', '%[fx:mean*w*h]', 'info:'], text=True)
    return float(said)


def test_each_handle_shows_its_focus():
    farm, w, k = opened('Price')
    with tempfile.TemporaryDirectory() as folder:
        for name in ('Price, ', 'Unit cost, ', "Day's costs, ", 'Planned, '):
            handle = k.tab_to('slider', name)
            focused = ring_pixels(w, handle, folder)
            k.press('Tab')
            assert focused > ring_pixels(w, handle, folder) + 80, name
    closed(farm, w, k)


run_cases(test_student_prices_a_product, test_teacher_plans_a_fundraiser_for_a_pen, test_advisor_prepares_a_packet,
          test_each_handle_shows_its_focus)
