"""Raise: a crop is made, its temperatures name the day of the first pick, a pick becomes a lot."""
import datetime

from drive import Window, run_cases, until
from farm import Farm, PROGRAM


# The crop of the test, whatever else grows on the demo farm.
OURS = "(SELECT id FROM batch WHERE name = 'Tomatoes, test bay')"


def days_ago(n):
    return (datetime.date.today() - datetime.timedelta(days=n)).isoformat()


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Raise')
    w.wait('push button', 'New batch')
    return w


def record(w):
    w.press('push button', 'Record the day')


def add_crop(w, farm):
    w.press('push button', 'New batch')
    until(lambda: (w.focused() or w.app).name == 'New flock')  # the choice is up
    w.press('push button', 'New crop')
    w.wait('text', 'Name of the crop')
    w.fill('Name of the crop', 'Tomatoes, test bay')
    w.fill('Plants', '40')
    w.fill('Day the plants are set out', days_ago(9))
    w.fill('Bay, bed or field', 'Test bay')
    w.fill('Cost of seed and plants', '60.00')
    w.press('push button', 'Save crop')
    until(lambda: farm.rows(f"SELECT plants FROM crop WHERE batch_id = {OURS}") == ['40'])
    w.wait('push button', 'Tomatoes, test bay')


def add_day(w, day, highest, lowest):
    w.fill('Day', day)
    w.fill('Highest temperature', highest)
    w.fill('Lowest temperature', lowest)
    record(w)


def test_crop_from_temperatures_to_a_lot():
    farm = Farm()
    w = opened(farm)
    add_crop(w, farm)
    # Its thermometer hangs where it stands.
    assert farm.rows(f"SELECT p.name FROM crop JOIN place p ON p.id = climate_id WHERE batch_id = {OURS}") == ['Test bay']
    w.wait_words('40 plants stand')
    for i in range(9, 1, -1):
        add_day(w, days_ago(i), '80', '60')
        until(lambda: farm.rows('SELECT count(*) FROM climate JOIN place p ON p.id = place_id'
                                " WHERE p.name = 'Test bay'") == [str(10 - i)])
    # Eight days of 20 °F-days over 50 °F.
    w.wait_words('The first pick is expected about')
    w.wait_words('40 plants have had 1')
    w.fill('Picked', '12')
    w.fill('Grade', 'first')
    w.fill('Thrown out', '0.5')
    record(w)
    until(lambda: w.wait('text', 'Reason').description)       # why?
    w.fill('Reason', 'cracked')
    record(w)
    w.wait_words('12 lb picked')
    w.wait_words('have given')
    lot = farm.rows("SELECT i.name, round (sum (m.quantity_base), 3) FROM lot JOIN item i ON i.id = item_id"
                    f" JOIN movement m ON m.lot_id = lot.id WHERE lot.batch_id = {OURS} GROUP BY lot.id")
    assert lot == ['Tomatoes|5.443'], lot                      # 12 lb of 0.45359237 kg
    assert w.nameless() == [], w.nameless()
    w.place('Keep')
    w.wait_row('Tomatoes')
    assert w.close() == 0
    farm.verify()
    w = opened(farm)
    w.click('push button', 'Tomatoes, test bay')
    w.wait_words('have given')
    w.press('push button', 'Undo: ')                                           # the pick is a step of before
    until(lambda: farm.rows(f"SELECT count(*) FROM harvest WHERE batch_id = {OURS}") == ['0'])
    assert w.close() == 0
    farm.verify()


def test_usual_year_and_house_give_the_cost_of_heat():
    farm = Farm()
    w = opened(farm)
    add_crop(w, farm)
    w.click('push button', 'Heat')
    w.wait('heading', 'What keeping it warm costs')
    w.press('push button', 'The house')
    w.wait('text', 'Area of the cover')
    w.fill('Area of the cover', '3000')
    w.fill('Air in the house', '20000')
    w.fill('Price of the fuel', '2.80')
    w.press('push button', 'Save the house')
    until(lambda: farm.rows("SELECT count(*) FROM glasshouse JOIN place p ON p.id = place_id WHERE p.name = 'Test bay'") == ['1'])
    w.press('push button', 'Usual year outdoors')
    w.wait('text', 'January, lowest')
    for month, low, high in (('January', '20', '38'), ('February', '22', '40'), ('March', '30', '50'),
                             ('April', '40', '62'), ('May', '50', '72'), ('June', '60', '80'), ('July', '64', '85'),
                             ('August', '62', '83'), ('September', '55', '76'), ('October', '43', '64'),
                             ('November', '33', '50'), ('December', '24', '41')):
        w.fill(month + ', lowest', low)
        w.fill(month + ', highest', high)
    w.press('push button', 'Save the usual year')
    until(lambda: farm.rows('SELECT count(*) FROM usual_month WHERE place_id IS NULL') == ['12'])
    w.wait_words('In a usual year this house needs heat for about')
    w.wait_words('carbon monoxide')
    assert w.nameless() == [], w.nameless()
    assert w.close() == 0
    farm.verify()


def test_two_stocks_are_thinned():
    farm = Farm()
    w = opened(farm)
    add_crop(w, farm)
    w.press('push button', 'Feeding')
    # How to mix a concentrate for an injector, example 1: 200 out of 20,000 in 1,000 L take 10 L.
    w.fill('Nutrient solution wanted', '1000 L')
    for name, number in (('Conductivity now', '0'), ('Conductivity wanted', '200'), ('Label: one part', '100'),
                         ('That adds', '200')):
        w.fill(name, number)
    w.wait_words('Stir 10 L (2.64 gal) of stock A')
    w.wait_words('Never mix stock A and stock B undiluted')
    assert w.nameless() == [], w.nameless()
    assert w.close() == 0


run_cases(test_crop_from_temperatures_to_a_lot, test_usual_year_and_house_give_the_cost_of_heat,
          test_two_stocks_are_thinned)
