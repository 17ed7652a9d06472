"""Raise: fish go into a new tank, are logged and weighed, harvested, and priced by the pound.

The weights, the cost of a pound and the share of it that leaves with the harvest are
worked out here by hand.
"""
import datetime

from drive import Window, run_cases, until
from farm import Farm, PROGRAM

OURS = "(SELECT id FROM batch WHERE name = 'Test tilapia')"
OUNCE_G = 28.349523125                                  # NIST SP 811, appendix B
POUND_KG = 0.45359237


def days_ago(n):
    return (datetime.date.today() - datetime.timedelta(days=n)).isoformat()


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Raise')
    w.wait('push button', 'New batch')
    return w


def add_tank(w):
    """From the dialog of the group, which then has it chosen."""
    w.press('push button', 'New tank')
    w.wait('text', 'Name of the tank')
    w.fill('Name of the tank', 'Test tank')
    w.fill('Diameter', '6 ft')
    w.fill('Depth of the water', '3 ft')
    w.press('push button', 'Save tank')


def add_group(w, farm):
    w.press('push button', 'New batch')
    # The choice can be pressed once it has come up, and is gone after that.
    until(lambda: w.find('text', 'Name of the group') or w.press_if('push button', 'New group of fish'))
    w.fill('Name of the group', 'Test tilapia')
    w.fill('Day they were put in', days_ago(60))
    w.fill('Fish put in', '100')
    w.fill('Cost of all of them', '60.00')
    w.press('push button', 'Save group')
    until(lambda: w.find('text', 'Weight of one then').description)         # one must be weighed
    w.fill('Weight of one then', '50 g')
    w.press('push button', 'Save group')
    w.wait_words('Choose the tank that the fish live in')
    add_tank(w)
    until(lambda: farm.rows("SELECT round (diameter_m, 4) FROM tank JOIN place ON id = place_id WHERE name = 'Test tank'")
          == ['1.8288'])
    # Of the feeds, "not said" comes first.
    feeds = farm.rows("SELECT name FROM item WHERE kind = 'feed' ORDER BY name, id")
    w.click('combo box', 'Feed they get')
    w.keys('Home', *['Down'] * (feeds.index('Fish feed, 32% protein') + 1), 'Return')
    until(lambda: w.find('text', 'Name of the group') is None or w.press_if('push button', 'Save group'))
    row = farm.rows(f'SELECT f.stocked, f.stocked_g, f.cost_cents, p.name, i.name FROM fish f JOIN batch b ON b.id = f.batch_id'
                    f' JOIN place p ON p.id = b.place_id JOIN item i ON i.id = b.feed_item_id WHERE f.batch_id = {OURS}')
    assert row == ['100|50.0|6000|Test tank|Fish feed, 32% protein'], row
    w.wait('push button', 'Test tilapia')


def add_logs(w, farm):
    """A log and three weighings out of tables."""
    log = farm.write('log.csv', 'Date,Feed (lb),Water temp (F),Died\n'
                     + ''.join(f'{days_ago(n)},0.5,80.6,{1 if n == 30 else 0}\n' for n in range(60, 0, -1)))
    w.press('push button', 'Log')
    w.press('push button', 'Import a log')
    w.choose_file('Import a log of fish', log)
    w.press('push button', 'Take 60 rows')
    until(lambda: farm.rows(f'SELECT count(*) FROM batch_entry WHERE batch_id = {OURS}') == ['60'])
    scale = farm.write('scale.csv', 'Date,Number,Total weight (lb)\n'
                       f'{days_ago(40)},20,3.2\n{days_ago(20)},20,5.4\n{days_ago(1)},200,90\n{days_ago(1)},20,8.2\n')
    w.press('push button', 'Weighings')
    w.press('push button', 'Import weighings')
    w.choose_file('Import weighings', scale)
    w.wait_words('only 99 were alive', rows=True)              # 200 of them cannot be
    w.press('push button', 'Take 3 rows')
    until(lambda: farm.rows(f'SELECT count(*) FROM weighing WHERE batch_id = {OURS}') == ['3'])
    mean = farm.rows(f'SELECT round (total_kg * 1000 / n, 1) FROM weighing WHERE batch_id = {OURS} ORDER BY day DESC LIMIT 1')
    assert mean == [str(round(8.2 * 16 * OUNCE_G / 20, 1))], mean


MOVED = f'SELECT count (*), sum (n) FROM fish_move WHERE from_id = {OURS}'


def move_back(w, farm):
    """A move to the wrong tank is taken back, unless some of the fish have died where they went."""
    w.press('push button', 'Move fish')
    w.press('push button', 'Some of them')
    w.fill('Name of the new group', 'Test small ones')
    w.fill('Number of fish', '30')
    w.press('push button', 'Move the fish')                                  # the first tank that is another one
    until(lambda: farm.rows(MOVED) == ['1|30'])
    w.wait_words('30 fish went to “Test small ones”')
    w.press('push button', 'Take the move back')
    until(lambda: farm.rows(MOVED)[0].startswith('0'))
    until(lambda: not w.find('push button', 'Take the move back'))
    w.press('push button', 'Undo: deleting')
    until(lambda: farm.rows(MOVED) == ['1|30'])
    w.click('push button', 'Test small ones')
    w.wait_words('30 fish came from “Test tilapia”')
    w.fill('Found dead', '5')
    w.press('push button', 'Record the day')
    until(lambda: farm.rows("SELECT sum (deaths) FROM batch_entry JOIN batch b ON b.id = batch_id"
                            " WHERE b.name = 'Test small ones'") == ['5'])
    w.press('push button', 'Take the move back')
    w.wait_words('5 of these fish have died or left “Test small ones” since')
    assert farm.rows(MOVED) == ['1|30']
    w.press('push button', 'Undo: ')
    until(lambda: farm.rows("SELECT count (*) FROM batch_entry JOIN batch b ON b.id = batch_id"
                            " WHERE b.name = 'Test small ones'") == ['0'])
    w.press('push button', 'Take the move back')
    until(lambda: farm.rows(MOVED)[0].startswith('0'))
    w.click('push button', 'Test tilapia')


def harvest(w, farm):
    w.press('push button', 'Plan and review')
    w.press('push button', 'Harvest')
    w.wait('text', 'Fish taken out')
    w.fill('Good', '20')
    w.press('push button', 'Save harvest')
    until(lambda: 'store room' in (w.find('text', 'Good').description or ''))   # nothing is taken for granted
    w.click('combo box', 'Goes into')
    w.keys('Down', 'Return')                                                 # the first line only asks
    w.press('push button', 'Save harvest')
    until(lambda: w.find('text', 'Fish taken out').description)             # the rest must be known
    w.fill('Fish taken out', '40')
    w.fill('Weight alive', '16.4')
    w.press('push button', 'Save harvest')
    w.wait_words('cannot weigh more than the animals did alive')
    w.fill('Good', '10')
    w.press('push button', 'Save harvest')
    lot = f'SELECT round (sum (m.quantity_base), 4) FROM lot JOIN movement m ON m.lot_id = lot.id WHERE lot.batch_id = {OURS}'
    until(lambda: farm.rows(lot) == ['4.5359'])                              # 10 lb of 0.45359237 kg
    w.wait_words('59 fish')


def add_product(w, farm):
    names = farm.rows("SELECT name FROM batch ORDER BY CASE kind WHEN 'flock' THEN 0 WHEN 'fish' THEN 1 WHEN 'crop'"
                      ' THEN 2 ELSE 3 END, ended_on IS NOT NULL, name, id')
    w.place('Price')
    w.press('push button', 'New product')
    w.wait('text', 'Name of the product')
    w.fill('Name of the product', 'Tilapia by the pound')
    w.click('combo box', 'Comes from')
    w.keys('Home', *['Down'] * (names.index('Test tilapia') + 1), 'Return')  # the first choice is "not said yet"
    w.wait('text', 'Weight of one')                                          # fish are weighed
    w.fill('Planned for the next sale day', '8')
    w.fill('Price, if there is one already', '9.00')
    w.press('push button', 'Save product')
    until(lambda: farm.rows("SELECT pack, round (base_per_unit, 4) FROM product WHERE name = 'Tilapia by the pound'")
          == ['pound|0.4536'])


def unit_cost_is_by_hand(w, farm):
    """The fish and the feed out of the ledger, over the pounds harvested and those to come."""
    cost = farm.ask('cost', 'Tilapia by the pound')
    feed = -float(farm.rows("SELECT coalesce (sum (m.cost_cents), 0) FROM movement m JOIN lot l ON l.id = m.lot_id"
                            f" WHERE m.batch_id = {OURS} AND m.kind = 'used'")[0])
    fed = -float(farm.rows("SELECT coalesce (sum (m.quantity_base), 0) FROM movement m"
                           f" WHERE m.batch_id = {OURS} AND m.kind = 'used'")[0])
    # What the other tanks have not left of 60 half pounds counts at what such feed was bought for.
    rest = 30 * POUND_KG - fed
    prices = [float(p) for p in farm.rows(
        "SELECT m.cost_cents / m.quantity_base FROM movement m JOIN lot l ON l.id = m.lot_id JOIN item i ON i.id = l.item_id"
        " WHERE i.name = 'Fish feed, 32% protein' AND m.kind = 'received'")]
    assert fed > 0 and rest >= 0, fed
    so_far = 6000 + feed
    assert so_far + rest * min(prices) - 1 < cost['cost_so_far_cents'] < so_far + rest * max(prices) + 1, (cost, feed)
    pounds = 10 + cost['output_expected'] / POUND_KG
    # Overhead goes by the hour of work, which the demo farm counts at $9.00.
    hours = cost['parts']['labor']['total_cents'] / 900
    overhead = hours * float(farm.rows("SELECT planned_cents / planned_base FROM overhead WHERE base = 'hours'")[0])
    assert hours > 0 and overhead > 0, (hours, overhead)
    each = (cost['cost_so_far_cents'] + cost['cost_to_come_cents'] + overhead) / pounds
    assert abs(cost['unit_cents'] - each) < 1, (cost, each)
    w.wait_words(f"Unit cost, ${cost['unit_cents'] / 100:.2f} a pound")


def test_fish_from_a_tank_to_a_price():
    farm = Farm()
    w = opened(farm)
    add_group(w, farm)
    w.wait_words('without it no growth can be foretold')
    add_logs(w, farm)
    # 99 fish of 8.2 lb in 20 weigh 40.6 lb; the fit lies a little beside the last weighing.
    w.wait_words('99 fish weigh about')
    w.wait_words('reach')
    move_back(w, farm)
    harvest(w, farm)
    add_product(w, farm)
    w.wait_words('a pound')
    unit_cost_is_by_hand(w, farm)
    assert w.nameless() == [], w.nameless()
    w.press('push button', 'Undo: ')
    until(lambda: farm.rows("SELECT count(*) FROM product WHERE name = 'Tilapia by the pound'") == ['0'])
    assert w.close() == 0
    farm.verify()
    w = opened(farm)
    w.click('push button', 'Test tilapia')
    w.wait_words('59 fish weigh about')
    assert w.close() == 0
    farm.verify()


run_cases(test_fish_from_a_tank_to_a_price)
