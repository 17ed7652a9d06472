"""A dialog that is opened and saved, with nothing typed into it, changes nothing; one that is left
by mistake, with something typed into it, can be gone on with.

An amount stands in a field in the unit of the farm, with a few digits after the point: 9.3 m² as
100.1044 sq ft.  Read back from there, each saving would move it by a hair, and a day that the field
does not show would be lost.
"""
import collections
import sqlite3

import pyatspi

from drive import Window, run_cases, until
from farm import Farm, PROGRAM

PLACES = ['Today', 'Raise', 'Make', 'Check', 'Price', 'Sell', 'Fund', 'Keep', 'Show']

# Place, the buttons that lead there, whether a row is chosen first, what opens, what saves.
DIALOGS = [
    ('Raise', ['Brown hens'], False, 'Change this flock…', 'Save flock'),
    ('Raise', ['Catfish, tank A'], False, 'Change this group…', 'Save group'),
    ('Raise', ['Catfish, tank A', 'Weighings'], True, 'Change…', 'Save weighing'),
    ('Raise', ['Tomatoes, bay 1'], False, 'Change this crop…', 'Save crop'),
    ('Raise', ['Catfish loop'], False, 'Change this water…', 'Save water'),
    ('Make', ['Recipes'], False, 'Change…', 'Save recipe'),
    ('Make', ['Kitchen batches'], False, 'Change the plan…', 'Save changes'),
    ('Check', ['Instruments'], False, 'Change… Probe thermometer', 'Save'),
    ('Price', [], False, 'Edit product…', 'Save product'),
    ('Sell', ['Tally'], False, 'Edit…: Bus barn', 'Save order'),
    ('Fund', ['Plan'], False, 'Gates…', 'Save'),
    ('Fund', ['Plan'], False, 'Sides and slope…', 'Save'),
    ('Fund', ['Plan'], False, 'Shelter…', 'Save'),
    ('Fund', ['Plan'], False, 'Fence and holes…', 'Save'),
    ('Fund', ['Plan'], False, 'Digging and permits…', 'Save'),
    ('Fund', ['Plan'], False, 'Change build…', 'Save'),
    ('Fund', ['Money'], False, 'Change… Friends of the farm', 'Save'),
    ('Fund', ['Money'], False, 'Change… County grant for young farmers', 'Save'),
    ('Fund', ['Work'], False, 'Change… Wire and gate', 'Save'),
    ('Fund', ['Afterwards'], False, 'Change… Hay', 'Save'),
    ('Keep', ['Store room'], True, 'Change item…', 'Save item'),
    ('Keep', ['Things that last'], True, 'Change…', 'Save'),
    ('Keep', ['Cash book'], True, 'Open…', 'Save'),
    ('Keep', ['Places'], True, 'Change…', 'Save'),
    ('Show', ['Hours', 'Week before'], True, 'Change or correct…', 'Save'),
    ('Show', ['Rota'], True, 'Change turn…', 'Save'),
    ('Show', ['Trainings'], True, 'Change training…', 'Save'),
    ('Show', ['Skills'], True, 'Change the skill…', 'Save skill'),
    ('Show', ['Events'], False, 'Change the event…', 'Save event'),
    ('Show', ['Packets'], False, 'Change the packet…', 'Save packet'),
    ('Show', ['Class'], True, 'Change person…', 'Save'),
]
MOST_MISSED = 3                                    # what the demo farm holds hangs on the day

# What counts the changes, and undoes them.
OF_THE_STORE = {'step', 'change_count', 'sqlite_sequence'}


def held(path, but=frozenset()):
    """All that the farm holds, and the steps to undo: what was saved unread is no step."""
    with sqlite3.connect(f'file:{path}?mode=ro', uri=True) as db:
        tables = [name for (name,) in db.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")
                  if name not in but and not name.startswith('find')]
        return {table: collections.Counter(db.execute(f'SELECT * FROM "{table}"')) for table in tables}


def changed(before, after):
    return [f'{table}: {list((before[table] - after[table]).items())[:2]} → {list((after[table] - before[table]).items())[:2]}'
            for table in before if before[table] != after[table]]


def press_live(w, name):
    """Press the button of the last window, once it can be pressed: a row that was just chosen makes it so."""
    def live():
        top = [top for top in map(w.app.getChildAtIndex, range(w.app.childCount)) if top is not None][-1]
        return next((n for n in w.walk(top) if n.getRoleName() == 'push button' and n.name.startswith(name)
                     and n.getState().contains(pyatspi.STATE_SENSITIVE)), None)
    until(live, 10).queryAction().doAction(0)


def test_saved_unread():
    farm = Farm()
    w = Window(PROGRAM, farm.path)
    w.fit()
    before = held(farm.path)
    faults, missed = [], []
    for place, way, row, opener, save in DIALOGS:
        where = ', '.join([place] + way + [opener])
        w.keys(f'alt+{PLACES.index(place) + 1}')
        for button in way:
            w.press('push button', button)
        if way:
            until(lambda: w.is_pressed('push button', way[0]))
        if row:
            w.tab_to('table row')
            w.keys('Home')
        windows = len(w.windows())
        try:
            press_live(w, opener)
            until(lambda: len(w.windows()) > windows, 10)
            press_live(w, save)
        except AssertionError:                     # today's first row may be one that can only be corrected
            missed.append(where)
            if len(w.windows()) > windows:
                w.keys('Escape')
                until(lambda: len(w.windows()) == windows)
            continue
        try:
            until(lambda: len(w.windows()) == windows, 10)
        except AssertionError:
            faults.append(f'{where}: does not go')
            w.keys('Escape')
            until(lambda: len(w.windows()) == windows)
        after = held(farm.path)
        faults.extend(f'{where}: {fault}' for fault in changed(before, after))
        before = after
    assert not faults, '\n'.join(faults)
    assert len(missed) <= MOST_MISSED, '\n'.join(missed)
    assert w.close() == 0, w.said()
    farm.verify()


def test_left_by_mistake():
    farm = Farm()
    w = Window(PROGRAM, farm.path)
    w.fit()
    before = held(farm.path, OF_THE_STORE)
    w.keys('alt+8')

    def open_new(opener='New item…'):
        press_live(w, opener)
        until(lambda: len(w.windows()) == 2)

    def offered():
        return w.find('push button', 'Go on with it') is not None

    def left():
        until(lambda: len(w.windows()) == 1)

    # Nothing typed, nothing offered; Cancel is meant as it is said.
    open_new()
    w.keys('Escape')
    left()
    assert not offered()
    open_new()
    w.fill('Name of the item', 'Cinnamon')
    press_live(w, 'Cancel')
    left()
    assert not offered()

    # Escape by mistake, twice, and gone on with; then it is saved whole.
    open_new()
    w.fill('Name of the item', 'Cinnamon')
    w.fill('Where and how it is kept', 'On the shelf')
    for _ in range(2):
        w.keys('Escape')
        left()
        w.wait_words('was closed before it was saved')
        assert held(farm.path, OF_THE_STORE) == before
        w.press('push button', 'Go on with it')
        until(lambda: len(w.windows()) == 2)
        assert not offered()
        assert w.read('Name of the item') == 'Cinnamon'
        assert w.read('Where and how it is kept') == 'On the shelf'
    press_live(w, 'Save item')
    left()
    until(lambda: farm.rows("SELECT storage FROM item WHERE name = 'Cinnamon'") == ['On the shelf'])
    until(lambda: not offered())

    # What is said next takes its place; a window that closes takes what was left with it.
    open_new()
    w.fill('Name of the item', 'Nutmeg')
    w.keys('Escape')
    left()
    until(offered)
    w.keys('ctrl+z')
    until(lambda: not offered())
    open_new()
    w.fill('Name of the item', 'Cloves')
    w.keys('Escape')
    left()
    until(offered)
    assert held(farm.path, OF_THE_STORE) == before
    assert w.close() == 0, w.said()
    farm.verify()


def test_typed_into_a_page():
    farm = Farm()
    w = Window(PROGRAM, farm.path)
    w.fit()
    before = held(farm.path)
    w.place('Raise')
    w.wait('push button', 'Record the day')

    def turn(name, field):
        w.press('push button', name)
        until(lambda: w.is_pressed('push button', name))
        w.wait('text', field)

    # Each thing keeps what is typed for it, whatever the form shows meanwhile.
    w.fill('Eggs collected', '22')
    w.fill('Note', 'One was soft')
    turn('Young hens', 'Eggs collected')
    until(lambda: w.read('Eggs collected') == '')
    w.fill('Eggs collected', '7')
    turn('Catfish, tank A', 'Found dead')
    w.fill('Found dead', '1')
    w.place('Today')
    w.place('Raise')
    turn('Brown hens', 'Eggs collected')
    until(lambda: w.read('Eggs collected') == '22')
    assert w.read('Note') == 'One was soft'
    turn('Young hens', 'Eggs collected')
    until(lambda: w.read('Eggs collected') == '7')
    w.fill('Eggs collected', '')
    turn('Catfish, tank A', 'Found dead')
    until(lambda: w.read('Found dead') == '1')
    w.fill('Found dead', '')

    # Only the brown hens are left: the window asks for them, wherever it is, and stays.
    w.place('Today')
    w.ask_to_close()
    w.wait_words('What is typed for Brown hens is not saved yet.')
    until(lambda: w.is_at('Raise'))
    turn('Brown hens', 'Eggs collected')
    w.press('push button', 'Record the day')
    w.wait_words('Saved: 22 eggs')
    until(lambda: farm.rows("SELECT eggs FROM batch_entry WHERE note = 'One was soft'") == ['22'])
    w.keys('ctrl+z')
    until(lambda: farm.rows("SELECT count(*) FROM batch_entry WHERE note = 'One was soft'") == ['0'])
    assert {table: held(farm.path)[table] for table in ('batch_entry', 'movement')} == \
        {table: before[table] for table in ('batch_entry', 'movement')}

    # A line of Today counts as well, and to quit is to close.
    w.place('Today')
    w.type('22 eggs')
    w.keys('ctrl+q')
    w.wait_words('What is typed for Today is not saved yet.')
    w.keys('ctrl+a', 'Delete')
    w.place('Raise')
    w.fill('Eggs collected', '22')
    w.ask_to_close()
    w.press('push button', 'Close without it')
    assert w.process.wait(30) == 0, w.said()
    farm.verify()


run_cases(test_saved_unread, test_left_by_mistake, test_typed_into_a_page)
