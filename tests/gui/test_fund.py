"""Fund, as a teacher uses it: a pen from its sides to a thing of the farm, and what is refused on the way."""
import time

from build import ask, begin, opened
from drive import run_cases, until
from farm import Farm


def holds(test):
    """What was saved is in the file; a slow machine takes a while."""
    until(test, 30)


def view(w, name):
    w.press('push button', name)


def test_teacher_builds_a_pen():
    """CASE-01 of build-and-records: 48 by 24 ft with a 12 ft gate; 1,152 sq ft, 144 ft round."""
    farm = Farm()
    farm.rows('PRAGMA foreign_keys = ON; DELETE FROM build')
    w = opened(farm)
    begin(w, 'Goat pen', first=True)
    # A gate wider than its side is told at its field.
    w.fill('Width of the gate', '25')
    w.press('push button', 'Save build')
    w.wait_words('The gate is wider than its side.')
    w.fill('Width of the gate', '12')
    w.press('push button', 'Save build')
    w.wait_words('1,152 sq ft')
    w.wait_words('144 ft round')
    holds(lambda: farm.ask('build', 'Goat pen')['perimeter_m'] > 43)
    things = {thing['key']: thing for thing in farm.ask('build', 'Goat pen')['bill']}
    # 4 corners; two at the gate; each side in bays of 8 ft: 5 + 5 + 2 on the whole sides, 0 beside the gate.
    assert (things['corner_post']['drawn'], things['gate_post']['drawn'], things['line_post']['drawn']) == (4, 2, 12), things

    # Prices: one thing is entered, everything else left out, so that the sums are told by hand.
    view(w, 'Bill')
    ask(w, 'Add a line…', 'What is needed')
    w.fill('What is needed', 'Posts and wire')
    w.fill('How many', '10')
    w.fill('Price of one', '40')
    w.press('push button', 'Save line')
    holds(lambda: farm.ask('build', 'Goat pen')['goal_cents'] == 44000)   # 400.00 and a tenth

    # The path: ten sales of 50.00 for sure bring 440.00 with the ninth.
    view(w, 'Money')
    ask(w, 'Plan sales…', 'What is sold, and where')
    w.fill('What is sold, and where', 'Stand')
    w.fill('First day', '2030-01-05')
    w.fill('How many times', '10')
    w.fill('Days until the next', '7')
    w.fill('What one clears', '50')
    w.press('push button', 'Save plan')
    w.wait_words('Stand')

    # A pledge beyond the goal is refused at its field; then it is made, and received.
    ask(w, 'New pledge…', 'Who promises')
    w.fill('Who promises', 'A neighbor')
    w.fill('How much', '1000')
    w.fill('Due on', '2030-01-01')
    w.press('push button', 'Save pledge')
    w.wait_words('more than the whole build costs')
    w.fill('How much', '100')
    w.press('push button', 'Save pledge')
    w.wait_words('A neighbor')
    ask(w, 'Received… A neighbor', 'How much came')
    w.fill('How much came', '100')
    w.press('push button', 'Save money received')
    w.wait_words('came of')
    holds(lambda: farm.rows("SELECT count (*) FROM cash_line WHERE who = 'A neighbor' AND cents = 10000") == ['1'])

    # Bought: the receipt goes into the cash book, and the bill knows it.
    view(w, 'Bill')
    ask(w, 'Bought…', 'Bought from')
    w.fill('Bought from', 'Harbor Lumber')
    w.fill('How many: Posts and wire', '10')
    w.fill('Cost: Posts and wire', '380')
    w.press('push button', 'Save receipt')
    holds(lambda: farm.ask('build', 'Goat pen')['spent_cents'] == 38000)
    view(w, 'Afterwards')
    w.wait_words('planned at $400.00 and cost $380.00')

    # Finished into a thing of the farm.
    ask(w, 'It stands…', 'Years that it will stand')
    w.fill('Years that it will stand', '20')
    w.press('push button', 'Finish the build')
    w.wait_words('is a thing of the farm in Keep')
    holds(lambda: farm.rows("SELECT cost_cents FROM asset WHERE name = 'Goat pen'") == ['38000'])
    assert w.nameless() == [], w.nameless()
    assert w.close() == 0

    w = opened(farm)
    w.wait_words('1,152 sq ft')
    view(w, 'Afterwards')
    w.wait_words('is a thing of the farm in Keep')
    assert w.close() == 0
    farm.verify()


def test_demo_is_full():
    """The demo farm's pen is priced and on its way: each view has something to show."""
    farm = Farm()
    w = opened(farm)
    w.wait_words('62% funded')
    for name, words in (('Plan', 'Floor under a roof: needs 90 sq ft'), ('Bill', 'North Shore Supply'),
                        ('Money', 'with 80 of 100'), ('Work', '1 of 6 stretches are done'),
                        ('Afterwards', 'Ember Lake Lumber'), ('Why?', 'What is to be raised')):
        view(w, name)
        w.wait_words(words, rows=name == 'Bill')
    # A stretch of work for somebody too young is told, never hidden.
    view(w, 'Work')
    w.wait_words('not for those of 16')
    assert w.fits()
    assert w.close() == 0


def test_fan_follows_its_handle():
    """What if each sale clears more: the fan and its dates move with the handle, by mouse and by keys, and come back."""
    farm = Farm()
    w = opened(farm)
    view(w, 'Money')
    planned = w.wait_words('The chance to have it by the wanted day')
    name = 'Percent that each sale clears of what is planned'
    w.wait('slider', name)
    w.drag('slider', name, 80)
    until(lambda: w.value(name) > 105)
    until(lambda: w.wait_words('The chance to have it by the wanted day') != planned)
    while w.value(name) > 97:
        w.keys('Left')
        time.sleep(.1)
    w.wait_words('of what is planned:')
    until(lambda: w.wait_words('The chance to have it by the wanted day') != planned)
    assert w.nameless() == []
    assert w.close() == 0
    farm.verify()


run_cases(test_teacher_builds_a_pen, test_demo_is_full, test_fan_follows_its_handle)
