"""Raise: a water with its tank is tested; what passes a limit says what to do, here and in Today.

Of ammonia as a whole the share that harms fish is worked out here by the formula of
Emerson and others (1975), as the core's own test has it.
"""
import datetime

from drive import Window, run_cases, until
from farm import Farm, PROGRAM

OURS = "(SELECT id FROM water WHERE name = 'Test loop')"


def days_ago(n):
    return (datetime.date.today() - datetime.timedelta(days=n)).isoformat()


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Raise')
    w.wait('push button', 'New batch')
    return w


def record(w):
    w.press('push button', 'Record the test')


def count(farm):
    return int(farm.rows(f'SELECT count(*) FROM water_test WHERE water_id = {OURS}')[0])


def nh3_frac(temp_c, ph):
    return 1 / (10 ** (0.09018 + 2729.92 / (temp_c + 273.15) - ph) + 1)


def add_water(w, farm):
    w.press('push button', 'New batch')
    # The choice can be pressed once it has come up, and is gone after that.
    until(lambda: w.find('text', 'Name of the water') or w.press_if('push button', 'New water'))
    w.press('push button', 'Save water')
    until(lambda: w.find('text', 'Name of the water').description)          # nothing entered yet
    w.fill('Name of the water', 'Test loop')
    w.press('push button', 'New tank')
    w.wait('text', 'Name of the tank')
    w.fill('Name of the tank', 'Test tank')
    w.fill('Diameter', '6 ft')
    w.press('push button', 'Save tank')
    until(lambda: w.find('text', 'Depth of the water').description)          # a tank has a depth
    w.fill('Depth of the water', '3 ft')
    w.wait_words('635 gal')                                                     # 84.8 cubic feet, in gallons
    w.press('push button', 'Save tank')
    until(lambda: farm.rows("SELECT count(*) FROM tank JOIN place ON id = place_id WHERE name = 'Test tank'") == ['1'])
    until(lambda: w.find('text', 'Name of the water') is None or w.press_if('push button', 'Save water'))
    # A tank that was just made stands in the water from which it was made.
    until(lambda: farm.rows(f"SELECT count(*) FROM place WHERE name = 'Test tank' AND water_id = {OURS}") == ['1'])
    w.wait('push button', 'Test loop')


def test_water_out_of_its_limits_says_what_to_do():
    farm = Farm()
    w = opened(farm)
    add_water(w, farm)
    record(w)                                                                # nothing measured yet
    assert count(farm) == 0
    w.fill('pH', '15')
    record(w)
    until(lambda: w.wait('text', 'pH').description)                         # no water has that
    assert count(farm) == 0
    w.fill('Day', days_ago(1))
    for name, number in (('Temperature', '78.8'), ('pH', '7.0'), ('Total ammonia', '0.3'), ('Oxygen', '7')):
        w.fill(name, number)
    record(w)
    until(lambda: count(farm) == 1)
    w.wait_words('inside the limits known here')
    # 26 °C and pH 8.6: a fifth of the ammonia is the kind that harms.
    for name, number in (('Temperature', '78.8'), ('pH', '8.6'), ('Total ammonia', '3'), ('Oxygen', '7')):
        w.fill(name, number)
    record(w)
    until(lambda: count(farm) == 2)
    w.wait_words('Un-ionized ammonia is ' + f'{3 * nh3_frac(26, 8.6):.3f}'.rstrip('0'))
    w.wait_words('Stop feeding for 1 to 2 days')
    kept = farm.rows(f'SELECT round (temperature_c, 2), ph FROM water_test WHERE water_id = {OURS} ORDER BY day DESC LIMIT 1')
    assert kept == ['26.0|8.6'], kept
    assert w.nameless() == [], w.nameless()
    w.place('Today')
    w.wait_words('Test loop: Un-ionized ammonia')
    w.press('push button', 'Undo: ')
    until(lambda: count(farm) == 1)
    assert w.close() == 0
    farm.verify()
    w = opened(farm)
    w.click('push button', 'Test loop')
    w.wait_words('inside the limits known here')
    assert w.close() == 0
    farm.verify()


run_cases(test_water_out_of_its_limits_says_what_to_do)
