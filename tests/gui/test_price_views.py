"""Price: all products of a sale day together, turned by keys and shown as a table.

What the window says is worked out here anew from what the command line reads.
"""
import pyatspi

from drive import Window, run_cases, until
from farm import Farm, PROGRAM


def opened(farm, view):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.press('push button', 'Price')
    w.press('push button', view)
    return w


def dollars(cents):
    return f'{"−" if cents < 0 else ""}${abs(cents) // 100:,}.{abs(cents) % 100:02}'


def plan_profit(farm):
    """Of all products that have a price and a plan: what one leaves × plan, less the day."""
    names = [row for row in farm.rows('SELECT name FROM product WHERE retired_on IS NULL ORDER BY name')]
    profit = 0
    for name in names:
        f = farm.ask('price', name)
        planned = f['planned_units']
        steps = max(1, -(-planned // f['step_units'])) if f['step_units'] else 0
        profit += (f['price_cents'] - f['unit_cents']) * planned - f['fixed_cents'] - steps * f['step_cents']
    return round(profit)


def tab_to(w, name, limit=60):
    """Press Tab until what begins so has the focus: it must be reachable that way."""
    def focused():                       # one walk a step, past the rows of tables: it is slow enough
        return next((n for n in w.walk() if n.getState().contains(pyatspi.STATE_FOCUSED)), None)

    for _ in range(limit):
        if until(focused, 60).name.startswith(name):
            return
        w.keys('Tab')
    raise AssertionError(f'Tab never came to {name!r}')


def test_all_products_together():
    farm = Farm()
    profit = plan_profit(farm)
    w = opened(farm, 'All products together')
    w.wait_words(f'The plan clears {dollars(profit)}')
    assert w.nameless() == [], w.nameless()
    eggs = farm.ask('price', 'Eggs')
    start = int(eggs['planned_units'])
    w.wait('slider', f'Eggs, {start} dozen')
    tab_to(w, f'Eggs, {start} dozen')
    w.keys('Right')
    w.wait('slider', f'Eggs, {start + 1} dozen')
    w.wait_words(f'The plan clears {dollars(profit + round(eggs["price_cents"] - eggs["unit_cents"]))}')
    w.press('push button', 'Show as table')
    until(lambda: any(n.name.startswith(f'Eggs, {start + 1} dozen') or f'{start + 1} dozen' in n.name
                      for n in w.walk(rows=True)), 30)
    w.press('push button', 'Reset to the log')
    w.wait_words(f'The plan clears {dollars(profit)}')
    assert w.close() == 0
    assert 'CRITICAL' not in w.said() and 'WARNING' not in w.said(), w.said()


def test_what_if_and_its_scenarios():
    farm = Farm()
    w = opened(farm, 'What if')
    feed = farm.ask('cost', 'Eggs')['parts']['feed']['unit_cents']
    planned = farm.ask('price', 'Eggs')['planned_units']
    w.wait('slider', 'Price of feed, as it is')
    tab_to(w, 'Price of feed, as it is')
    w.keys('Prior')                      # Page Up: a tenth
    w.wait('slider', 'Price of feed, +10%')
    w.wait_words(f'That is {dollars(round(feed * .1 * planned))} less')
    w.fill('Name of this scenario', 'Dear feed')
    w.press('push button', 'Keep as a scenario')
    until(lambda: farm.rows('SELECT name, knob, value FROM scenario_value') == ['Dear feed|input|1.1'])
    until(lambda: any(n.name.startswith('Dear feed') for n in w.walk(rows=True)), 30)
    w.press('push button', 'Reset to the log')
    w.wait('slider', 'Price of feed, as it is')
    w.press('push button', 'Undo: scenario Dear feed')
    until(lambda: farm.rows('SELECT name FROM scenario_value') == [])
    assert w.nameless() == [], w.nameless()
    assert w.close() == 0
    assert 'CRITICAL' not in w.said() and 'WARNING' not in w.said(), w.said()
    farm.verify()


def test_step_by_step():
    farm = Farm()
    cost = farm.ask('cost', 'Eggs')
    w = opened(farm, 'Step by step')
    w.wait_words(f'One dozen costs us {dollars(round(cost["unit_cents"]))}')
    chart = w.wait('image', 'Cost of one, step by step')
    assert dollars(round(cost['unit_cents'])) in chart.description, chart.description
    w.press('push button', 'Feed, $')    # a step opens to its entries
    until(lambda: any('Layer feed, lot' in n.name for n in w.walk(rows=True)), 30)
    assert w.nameless() == [], w.nameless()
    assert w.close() == 0
    assert 'CRITICAL' not in w.said() and 'WARNING' not in w.said(), w.said()


def a_slip_goes(w, farm):
    """A day with a slip of the pen is deleted, and comes back by Undo."""
    slip = 'SELECT count (*) FROM price_trial WHERE price_cents = 45000'
    w.fill('Price that day', '450.00')
    w.fill('How many were sold', '70')
    w.press('push button', 'Add this day')
    until(lambda: farm.rows(slip) == ['1'])
    w.wait_words('at $450.00')
    w.press('push button', 'Delete this day')                # the newest stands first
    until(lambda: farm.rows(slip) == ['0'])
    until(lambda: not any(n.getRoleName() == 'label' and 'at $450.00' in n.name for n in w.walk()))
    w.press('push button', 'Undo: deleting the price and number sold')
    w.wait_words('at $450.00')
    assert farm.rows(slip) == ['1']


def test_which_price():
    farm = Farm()
    farm.forget_cash()                   # no sale day tells what was sold at which price
    w = opened(farm, 'Which price')
    figures = farm.ask('price', 'Eggs')
    price, unit = figures['price_cents'], figures['unit_cents']
    w.wait_words(f'{round((price - unit) / unit * 100)}% markup')
    w.wait_words(f'{round((price - unit) / price * 100)}% margin')
    w.wait_words('3 more days')
    for cents, sold in ((4.00, 90), (4.50, 70), (5.00, 52)):
        w.fill('Price that day', f'{cents:.2f}')
        w.fill('How many were sold', str(sold))
        w.press('push button', 'Add this day')
        until(lambda: f'{round(cents * 100)}|{sold}.0' in farm.rows('SELECT price_cents, units FROM price_trial'))
    w.wait_words('should earn most')
    w.wait('image', 'Number sold, by price')
    a_slip_goes(w, farm)
    assert w.nameless() == [], w.nameless()
    assert w.close() == 0
    assert 'CRITICAL' not in w.said() and 'WARNING' not in w.said(), w.said()
    farm.verify()


def test_best_use():
    farm = Farm()
    figures = farm.ask('best-use')
    w = opened(farm, 'Best use')
    w.wait_words(f'The best use brings {dollars(round(figures["best_cents"]))}')
    chart = w.wait('image', 'Best use, by product')
    assert dollars(round(figures['best_cents'])) in chart.description
    w.wait('slider', 'Brown hens, ')
    tab_to(w, 'Brown hens, ')
    before = w.wait('slider', 'Brown hens, ').name
    w.keys('Left')                       # a dozen less
    until(lambda: w.wait('slider', 'Brown hens, ').name != before)
    w.wait_words('Brown hens: ')

    # Twice as many eggs promised as there are: the three that clash are named, and no other.
    eggs = next(s for s in figures['scarce'] if s['name'] == 'Brown hens')
    w.press('push button', 'As the plan uses it')
    w.wait_words(f'The best use brings {dollars(round(figures["best_cents"]))}')
    bound = w.press_for('Eggs: 0 dozen to', 'slider', 'Eggs: at most, ')
    bound.queryValue().currentValue = 200
    least = w.wait('slider', 'Eggs: at least, ')
    least.queryValue().currentValue = 100
    words = w.wait_words('These cannot all be kept: ')
    lacking = 100 - eggs['amount'] / 12
    assert 'at least 100 dozen of “Eggs” and no more than' in words and 'of “Brown hens”' in words, words
    assert f': {lacking:.2f}'.rstrip('0').rstrip('.') in words, (words, lacking)
    least.queryValue().currentValue = 60
    bound.queryValue().currentValue = 50  # upside down
    w.wait_words('at least 60 dozen of “Eggs” and at most 50 dozen of “Eggs”')
    w.press('push button', 'As the plan uses it')
    w.wait_words(f'The best use brings {dollars(round(figures["best_cents"]))}')
    assert w.nameless() == [], w.nameless()
    assert w.close() == 0
    assert 'CRITICAL' not in w.said() and 'WARNING' not in w.said(), w.said()


def test_shared_cost():
    farm = Farm()
    farm.rows("DELETE FROM joint_figure; DELETE FROM joint_split")    # nobody has said yet what a hen weighs
    figures = farm.ask('joint', 'Brown hens')
    w = opened(farm, 'Shared cost')
    w.wait_words(f'{dollars(figures["joint_cents"])} in all goes into Brown hens')
    share = next(p for p in figures['parts'] if p['part'] == 'hens')['share_cents']['net_value']
    w.wait_words(f'Hens at the end {dollars(share)}')
    w.wait('image', 'One cost, shared in several ways')
    w.wait_words('put in what one weighs')
    tab_to(w, 'Hens at the end: weight of one, ')
    w.keys('Prior', 'Prior')             # Page Up: a pound each
    until(lambda: 'put in what one weighs' not in ' '.join(n.name for n in w.walk()))
    w.press('push button', 'Keep way and figures')
    until(lambda: farm.rows("SELECT field FROM joint_figure WHERE part = 'hens'") == ['weight'])
    kept = farm.ask('joint', 'Brown hens')
    assert sum(p['share_cents']['physical'] for p in kept['parts']) == kept['joint_cents'], kept
    w.press('push button', 'Undo: how Brown hens shares its cost')
    until(lambda: farm.rows('SELECT field FROM joint_figure') == [])
    assert w.nameless() == [], w.nameless()
    assert w.close() == 0
    assert 'CRITICAL' not in w.said() and 'WARNING' not in w.said(), w.said()
    farm.verify()


def test_how_sure():
    farm = Farm()
    figures = farm.ask('how-sure')
    w = opened(farm, 'How sure')
    w.wait_words(f'leave between {dollars(round(figures["low_cents"]))} and {dollars(round(figures["high_cents"]))}')
    w.wait('image', 'How often each result comes')
    w.wait('image', 'Profit of the season at both ends of a range')
    w.wait('slider', 'Sale days, 12 days')
    tab_to(w, 'Sale days, 12 days')
    w.keys('Right')                      # a day more, and all is a thirteenth more
    w.wait('slider', 'Sale days, 13 days')
    w.wait_words(f'leave between {dollars(round(figures["low_cents"] * 13 / 12))}')

    # A long draw says how far it is, can be stopped, and leaves the window free.
    w.wait_words('The figures are of 20,000 seasons.')
    draw = w.wait('push button', 'Draw 1,000,000')
    done = w.wait('progress bar', 'How much of it is drawn').queryValue()
    days = w.wait('slider', 'Sale days, 13 days').queryValue()
    w.click_at_once(('push button', 'Draw 1,000,000'), ('push button', 'Stop'))
    w.wait_words('Stopped. The figures are of 20,000 seasons.')
    draw.queryAction().doAction(0)
    until(lambda: done.currentValue == 1)
    w.wait_words('The figures are of 1,000,000 seasons.')
    days.currentValue = 14               # other ranges: as many as fit into a frame
    w.wait_words('The figures are of 20,000 seasons.')
    w.click('push button', 'Draw 1,000,000')
    days.currentValue = 13               # a handle that is turned stops the draw
    w.wait_words('The figures are of 20,000 seasons.')

    w.press('push button', 'Price of feed and supplies: ')
    lowest = 'Price of feed and supplies: lowest'
    w.wait('slider', lowest).queryValue().currentValue = 1.5
    w.wait_words('“Price of feed and supplies” is upside down')
    w.press('push button', 'Reset to the log')
    w.wait_words(f'leave between {dollars(round(figures["low_cents"]))}')
    assert w.nameless() == [], w.nameless()
    assert w.close() == 0
    assert 'CRITICAL' not in w.said() and 'WARNING' not in w.said(), w.said()


run_cases(test_all_products_together,
          test_what_if_and_its_scenarios,
          test_step_by_step,
          test_which_price,
          test_best_use,
          test_how_sure,
          test_shared_cost)
