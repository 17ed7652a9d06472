"""Check: slips at a pot that cools, on a farm with °C; a list whose recipe was changed since; a time to come."""
import pyatspi
from drive import Window, run_cases, until
from farm import Farm, PROGRAM

FOOD = 'Roasted tomato sauce'
LIST = '(SELECT max (id) FROM checklist)'
MADE = f'SELECT name FROM checklist WHERE signed_at IS NULL AND id <> {LIST}'    # from its recipe
POT = 'SELECT group_concat (round (value, 1)) FROM (SELECT value FROM reading WHERE pot_id IS NOT NULL ORDER BY at, id)'


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Check')
    return w


def is_shown(node):
    return node is not None and node.getState().contains(pyatspi.STATE_VISIBLE)


def make_list(farm):
    """From a menu typed in; it stands last in the choice of what is checked."""
    w = opened(farm)
    w.press('push button', 'New checklist')
    until(lambda: w.find('text', 'On'), 40)
    if not is_shown(w.find('text', 'Menu')):
        w.click('push button', 'What is to be checked')
        w.keys('End', 'Return')
        until(lambda: is_shown(w.find('text', 'Menu')))
    w.fill('Menu', FOOD)
    w.wait_words('1 food')
    w.press('push button', 'people of all kinds')
    w.press('push button', 'Make the list')
    until(lambda: farm.rows(f'SELECT name FROM checklist WHERE id = {LIST}') == [FOOD])
    assert w.close() == 0, w.said()


def age(farm):
    """The list is of the day before yesterday: its times are over, at night too, when a pot of yesterday may still
    be read.  Since then a recipe was changed, and the farm has °C."""
    farm.rows(f"UPDATE checklist SET day = day - 2, name = 'Slips' WHERE id = {LIST}")
    farm.rows("UPDATE recipe_step SET text = text || ' Stir.'")
    farm.rows("UPDATE farm SET units = 'metric'")


def number_of(w, words):
    """The number that a check bears, by the words of its sentence."""
    before = None
    for node in w.walk():
        if node.getRoleName() == 'label':
            if words in node.name and before is not None and before.isdigit():
                return int(before)
            before = node.name
    return None


def read(w, temp, at=None):
    w.fill('Reading of Big pot', temp)
    if at is not None:
        w.fill('Time of the reading of Big pot', at)
    w.press('push button', 'Record the reading of Big pot')


def said_at(w, field):
    return (w.find('text', field).description or '') if w.find('text', field) is not None else ''


def add_pot(w):
    n = until(lambda: number_of(w, 'Cool it to'))
    w.press('push button', f'Pots of check {n}')
    w.fill('Name of the pot', 'Big pot')
    w.press('push button', 'Add the pot')
    w.wait('text', 'Reading of Big pot')


def slips_at_a_pot(w, farm):
    read(w, '57')                                       # of an earlier day: when?
    until(lambda: 'at what time' in said_at(w, 'Time of the reading of Big pot'))
    read(w, '212', '10:00')                             # typed as °F: asked, nothing is kept
    w.wait_words('Which scale was it?')
    assert farm.rows(POT) == [''], farm.rows(POT)
    read(w, '57', '10:00')
    until(lambda: farm.rows(POT) == ['57.0'])
    read(w, '40', '10:00')                              # another reader, of the same minute
    until(lambda: 'a reading of that minute' in said_at(w, 'Reading of Big pot'))
    w.press('push button', 'Correct 10:00 AM')          # both stand there
    read(w, '56', '')
    until(lambda: farm.rows(POT) == ['57.0,56.0'])
    w.wait_words('wrong, corrected')
    read(w, '54', '9:30')                               # a clock that was put back: it seems to get warmer
    w.wait_words('Warmer at 10:00 AM than before')
    read(w, '20', '11:00')                              # in time for the first mark; nobody looked at the second
    w.wait_words('nobody looked')
    w.wait('push button', 'Why? The figures worked out')


def a_time_to_come(w, farm):
    before = farm.rows('SELECT count (*) FROM reading WHERE place_id IS NOT NULL')
    w.press('push button', 'Back to the list')
    w.press('push button', 'Coolers')
    w.fill('Air of Kitchen refrigerator', '3')
    w.fill('Time at Kitchen refrigerator', '23:59')
    w.press('push button', 'Record the reading of Kitchen refrigerator')
    until(lambda: said_at(w, 'Air of Kitchen refrigerator') or said_at(w, 'Time at Kitchen refrigerator'))
    assert farm.rows('SELECT count (*) FROM reading WHERE place_id IS NOT NULL') == before


def test_slips():
    farm = Farm()
    make_list(farm)
    age(farm)
    w = opened(farm)
    w.click('list item', farm.rows(MADE)[0])
    w.wait_words('The recipe was changed since: Egg-and-potato breakfast bowls')
    w.click('list item', 'Slips')
    add_pot(w)
    slips_at_a_pot(w, farm)
    a_time_to_come(w, farm)
    assert w.nameless() == [], w.nameless()
    assert w.close(leaving=True) == 0, w.said()
    farm.verify()


run_cases(test_slips)
