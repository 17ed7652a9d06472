"""More of the daily work by the keyboard alone: a stall from its plan to the cash-up, a check's
reading, the corners of a pen, money in and a till that is counted; and no way back is barred.

As in test_keyboard.py each control on the way must tell a screen reader what it is.
"""
import pyatspi

from drive import Window, is_newer, run_cases, until
from farm import Farm, PROGRAM
from keyboard import Keyboard
from stall import LINES, SALE, TAPS, number, today


def opened(place, farm=None):
    farm = farm or Farm()
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


def enter(w, k, role, name, text, most=60):
    """Tab to a field, and type over what is in it."""
    k.tab_to(role, name, most=most)
    w.keys('ctrl+a')
    w.type(text)


def choose(k, name, *keys):
    """A drop-down opens with the space bar; arrows move in it, Return takes."""
    button = k.tab_to('push button', name)
    k.press('space', .5)
    if is_newer(button):
        k.window.wait_list(button)
    for key in (*keys, 'Return'):
        k.press(key, .5)


def view(k, chosen, wanted):
    """From the chip that is chosen to another one, by the arrows."""
    k.tab_to('push button', chosen, most=120)
    node = k.tab_to('push button', wanted, key='Right', most=12)
    k.press('space', .3)
    until(lambda: node.getState().contains(pyatspi.STATE_PRESSED))


def test_stall():
    farm, w, k = opened('Sell')
    k.tab_to('push button', 'New sale')
    k.press('Return')
    w.wait('text', 'Name of the sale')
    w.keys('ctrl+a')
    w.type('Test market')
    enter(w, k, 'text', 'Where', 'Town hall')
    enter(w, k, 'text', 'Day', today(farm))
    enter(w, k, 'text', '$5.00 ×', '4', most=200)    # past the five lines of products
    enter(w, k, 'text', '$1.00 ×', '20', most=200)
    k.tab_to('push button', 'Save plan')
    k.press('Return', .5)
    until(lambda: number(farm, f'SELECT count(*) FROM sale_day WHERE id = {SALE}') == 1)
    # At the stall: a tap by its key, one by its button, a sample, and one taken back.
    w.wait('push button', 'Sell Eggs')
    w.keys('1')
    until(lambda: number(farm, TAPS) == 1)
    k.tab_to('push button', 'Sell Eggs')
    for n in (2, 3):
        k.press('space', .2)
        until(lambda: number(farm, TAPS) == n)
    k.tab_to('push button', 'Sample: Eggs')
    k.press('space', .2)
    until(lambda: number(farm, TAPS + " AND kind = 'sample'") == 1)
    k.tab_to('push button', 'Take back the last tap')
    k.press('space', .2)
    w.wait_words('3 dozen sold')
    k.tab_to('push button', 'Next customer')
    k.press('space', .2)
    k.tab_to('push button', 'Sell Eggs')
    k.press('space', .2)
    w.wait_words('To pay: $4.50')
    enter(w, k, 'text', 'Money given', '5')
    w.wait_words('Give back $0.50')
    # 4 dozen at $4.50 and the float are $58.00.
    view(k, 'Tally', 'Cash up')
    for face, pieces in (('$20.00 ×', '2'), ('$10.00 ×', '1'), ('$5.00 ×', '1'), ('$1.00 ×', '3')):
        enter(w, k, 'text', face, pieces)
    w.wait_words('it agrees')
    choose(k, 'Who counted', 'Down')
    choose(k, 'Who counted again', 'Down', 'Down')
    k.tab_to('push button', 'Post the cash-up')
    k.press('space', .5)
    until(lambda: number(farm, f'SELECT count(*) FROM cash_count WHERE sale_id = {SALE}') == 1)
    w.wait_words('The stall took')
    k.tab_to('push button', 'Why? The figures worked out')
    k.press('space', .3)
    k.tab_to('push button', 'Left after all costs')
    k.press('space', .3)
    w.wait_words('By the plan: ')
    assert number(farm, f'SELECT sum(cents) FROM cash_line WHERE sale_id = {SALE}') == 1800
    assert number(farm, f'SELECT count(*) FROM sale_left WHERE line_id IN {LINES}') > 0
    closed(farm, w, k)


def test_check_reading():
    """A list is made, a reading that is too low is answered by what was done, and read once more."""
    farm, w, k = opened('Check')
    n = number(farm, 'SELECT count (*) FROM checklist')
    k.tab_to('push button', 'New checklist')
    k.press('Return')
    w.wait('text', 'On')
    choose(k, 'What is to be checked', 'End')
    enter(w, k, 'text', 'Menu', 'Egg-and-potato breakfast bowls')
    w.wait_words('1 food')
    k.tab_to('push button', 'people of all kinds')
    k.press('space', .5)
    k.tab_to('push button', 'Make the list')
    k.press('Return', .5)
    until(lambda: number(farm, 'SELECT count (*) FROM checklist') == n + 1)
    check = numbered(w, 'Cook the pooled eggs')
    reading = f'Reading of check {check}'
    record = f'Record the reading of check {check}'
    enter(w, k, 'text', reading, '140', most=120)
    k.tab_to('push button', record)
    k.press('space', .5)
    w.wait_words('Not met')
    k.tab_to('push button', f'I did what check {check} says', key='shift+Tab', most=12)
    k.press('space', .5)
    w.wait_words('What was done: Cook it on')
    enter(w, k, 'text', reading, '156', most=200)
    enter(w, k, 'text', f'Check {check} held for', '20')
    k.tab_to('push button', record)
    k.press('space', .5)
    w.wait_words('Met by')
    closed(farm, w, k)


def numbered(w, words):
    """The number that a check bears, by the words of its sentence."""
    def found():
        before = None
        for node in w.walk():
            if node.getRoleName() == 'label':
                if words in node.name and before is not None and before.isdigit():
                    return int(before)
                before = node.name
        return None
    return until(found)


CORNERS = "SELECT round(x_m / 0.3048) || ' ' || round(y_m / 0.3048) FROM build_corner WHERE build_id = {} ORDER BY position"


def test_corners_of_a_pen():
    """Tab comes to the plan and goes from corner to corner; arrows move one; Ctrl+Z takes it back."""
    farm, w, k = opened('Fund')
    corners = CORNERS.format(number(farm, 'SELECT max (id) FROM build'))
    before = farm.rows(corners)
    plan = k.tab_to('image', 'Plan of the build')
    until(lambda: plan.description.startswith('Corner 1'))
    w.keys('Tab')
    until(lambda: plan.description.startswith('Corner 2'))
    w.keys('Right', 'Right')
    until(lambda: farm.rows(corners)[1] != before[1])
    x, y = map(float, before[1].split())
    until(lambda: farm.rows(corners)[1] == f'{x + 2} {y}')
    for _ in range(2):
        w.keys('ctrl+z')
    until(lambda: farm.rows(corners) == before)
    closed(farm, w, k)


def test_money():
    """Money comes in, and two people count the till, from the largest note down."""
    farm, w, k = opened('Keep')
    view(k, 'Store room', 'Cash book')
    lines = number(farm, 'SELECT count (*) FROM cash_line')
    k.tab_to('push button', 'Why? The figures worked out')
    k.press('space', .3)
    k.tab_to('push button', 'What is there')
    k.press('space', .3)
    w.wait_words('Together: ')
    assert k.press('Tab').name == 'What came in and went out'    # what is worked out there holds nobody up
    k.tab_to('push button', 'Money in…')
    k.press('Return')
    w.wait('text', 'Amount')
    w.type('12.50')
    enter(w, k, 'text', 'From whom', 'A neighbor')
    k.tab_to('push button', 'Save money in')
    k.press('Return', .5)
    until(lambda: number(farm, 'SELECT count (*) FROM cash_line') == lines + 1)
    assert number(farm, 'SELECT cents FROM cash_line ORDER BY id DESC LIMIT 1') == 1250
    counts = number(farm, 'SELECT count (*) FROM cash_count')
    k.tab_to('push button', 'Count the till…')
    k.press('Return')
    w.wait('text', '$100.00 ×')
    choose(k, 'Who counted', 'Down')
    choose(k, 'Who counted again', 'Down', 'Down')
    enter(w, k, 'text', '$100.00 ×', '1')
    assert k.press('Tab').name.startswith('$50.00 ×')      # down the column, not across it
    w.type('2')
    enter(w, k, 'text', 'Why it differs', 'counted for practice')
    k.tab_to('push button', 'Save count')
    k.press('Return', .5)
    until(lambda: number(farm, 'SELECT count (*) FROM cash_count') == counts + 1)
    closed(farm, w, k)


def test_lists_are_one_stop():
    """Tab comes to the sale that is chosen and leaves the list; arrows choose another one."""
    farm, w, k = opened('Sell')
    row = k.tab_to('list item', '')
    assert k.press('Tab').getRoleName() != 'list item'
    k.press('shift+Tab')
    after = k.press('Down')
    assert after is not None and after.getRoleName() == 'list item' and after != row
    closed(farm, w, k)


def test_back_again():
    """Shift+Tab goes back over what Tab came by: no field keeps the focus."""
    farm, w, k = opened('Keep')
    view(k, 'Store room', 'Cash book')
    k.tab_to('push button', 'Money in…')
    k.press('Return')
    w.wait('text', 'Amount')
    came = [k.press('Tab').name for _ in range(8)]
    back = [k.press('shift+Tab').name for _ in range(7)]
    assert back == came[-2::-1], (came, back)
    k.press('Escape')
    closed(farm, w, k)


run_cases(test_stall, test_check_reading, test_corners_of_a_pen, test_money, test_lists_are_one_stop,
          test_back_again)
