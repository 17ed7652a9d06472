"""Price: turned by keys and by the pointer, kept, undone, put on paper, found again.

What the window says is held against numbers that are worked out here anew, unit
by unit, from what the command line reads in the same file.
"""
import math
import os
import re
import subprocess
import time

from drive import Window, run_cases, until
from farm import Farm, PROGRAM


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Price')
    return w


def money(cents):
    return f'{"−" if cents < 0 else ""}${abs(cents) // 100:,}.{abs(cents) % 100:02}'


def price_on_file(farm):
    return round(farm.ask('price', 'Eggs')['price_on_file_cents'])


def work_out(figures, price):
    """Break-even and profit of the plan by the definition, one unit after the other."""
    def profit(units):
        steps = max(1, math.ceil(units / figures['step_units'])) if figures['step_units'] else 0
        return ((price - figures['unit_cents']) * units - figures['fixed_cents']
                - steps * figures['step_cents'])

    even = next(n for n in range(100000) if profit(n) >= 0)
    return even, round(profit(int(figures['planned_units'])))


def sentence(w):
    return w.wait('label', 'At $').name


def says(w, price, figures):
    """Sentence, handle, field, tile and chart agree on this price."""
    even, profit = work_out(figures, price)
    until(lambda: sentence(w).startswith(f'At {money(price)} a dozen, {even} dozen cover'), 30)
    assert money(profit) in sentence(w), (sentence(w), profit)
    assert w.wait('slider', 'Price').name == f'Price, {money(price)} a dozen'
    assert w.value('Price') == price
    assert w.read('Price, a dozen', 'spin button') == f'{price / 100:.2f}'
    assert w.wait('push button', 'Break-even').name.startswith(f'Break-even: {even} dozen')
    assert w.wait('image', 'Money in and costs').description == sentence(w)


def tab_to(w, name, limit=60):
    """Press Tab until what begins so has the focus: it must be reachable that way."""
    for _ in range(limit):
        focus = w.focused()
        if focus is not None and focus.name.startswith(name):
            return focus
        w.keys('Tab')
        until(lambda: w.focused() is not None)
    raise AssertionError(f'Tab never came to {name!r}')


def type_into(w, name, text):
    """Type a number into a field, and leave it by Return."""
    w.fill(name, text, 'spin button')
    tab_to(w, name)
    w.keys('Return')


def wait_for_one_window(w):
    """Until a dialog is gone: asked of the screen, since GTK 4.8 complains when the
    accessibility tree of a closing window is read."""
    until(lambda: len(w.windows()) == 1)
    time.sleep(.5)


def save_pdf(w, path):
    w.press('push button', 'Price page…')
    w.wait('image', 'Page 1 of')
    w.press('push button', 'Save as PDF…')
    w.wait('text', 'Name:').queryEditableText().setTextContents(path)
    until(lambda: [n for n in w.walk() if n.getRoleName() == 'push button'
                   and n.name in ('Save', 'Save Save')])[-1].queryAction().doAction(0)
    until(lambda: os.path.exists(path))
    time.sleep(.5)                       # the file chooser closes: see wait_for_one_window()
    w.wait('label', f'Saved: {path}')
    [n for n in w.walk() if n.getRoleName() == 'push button'
     and n.name == 'Close'][-1].queryAction().doAction(0)
    wait_for_one_window(w)


def test_price_is_turned_by_keys_and_kept():
    farm = Farm()
    figures = farm.ask('price', 'Eggs')
    start = price_on_file(farm)
    w = opened(farm)
    assert w.nameless() == [], w.nameless()

    tab_to(w, 'Price, $')
    says(w, start, figures)
    w.keys(*['Right'] * 25)
    says(w, start + 25, figures)
    w.keys('Prior')                      # Page Up: ten more
    says(w, start + 35, figures)
    w.keys('Next')
    says(w, start + 25, figures)

    # What is tried out is also what is printed.
    page = os.path.join(farm.folder.name, 'tried.pdf')
    save_pdf(w, page)
    text = ' '.join(subprocess.check_output(['pdftotext', '-layout', page, '-'], text=True).split())
    assert f'At {money(start + 25)} a dozen' in text, text
    assert price_on_file(farm) == start

    tab_to(w, f'Use {money(start + 25)} from today')
    w.keys('space')
    until(lambda: price_on_file(farm) == start + 25)
    w.keys('ctrl+z')
    until(lambda: price_on_file(farm) == start)
    until(lambda: w.value('Price') == start)
    w.keys('ctrl+shift+z')
    until(lambda: price_on_file(farm) == start + 25)
    until(lambda: w.value('Price') == start + 25)

    w.kill()
    w = opened(farm)
    says(w, start + 25, figures)
    assert w.close() == 0
    farm.verify()


def test_wrong_text_stays_and_says_why():
    farm = Farm()
    w = opened(farm)
    type_into(w, 'Price, a dozen', 'four')
    spin = w.wait('spin button', 'Price, a dozen')
    until(lambda: spin.description != '')
    assert w.read('Price, a dozen', 'spin button') == 'four'
    assert w.value('Price') == price_on_file(farm)
    type_into(w, 'Price, a dozen', '5')
    until(lambda: w.value('Price') == 500)
    assert spin.description == ''
    w.press('push button', "Back to the farm's figures")
    until(lambda: w.value('Price') == price_on_file(farm))
    assert w.close() == 0


def test_pointer_drags_even_where_handles_are_near():
    farm = Farm()
    figures = farm.ask('price', 'Eggs')
    price = price_on_file(farm)
    w = opened(farm)
    w.drag('slider', 'Price', 0, -20)
    until(lambda: w.value('Price') > price)
    says(w, round(w.value('Price')), figures)
    w.press('push button', "Back to the farm's figures")
    until(lambda: w.value('Price') == price)

    # The unit cost that puts both ends at about the same height.
    type_into(w, 'Unit cost, a dozen', f'{(price - 90) / 100:.2f}')
    until(lambda: w.value('Unit cost') == price - 90)
    for name, other in (('Price', 'Unit cost'), ('Unit cost', 'Price')):
        mine, its = w.value(name), w.value(other)
        w.drag('slider', name, 0, 12)
        until(lambda: w.value(name) != mine)
        assert w.value(other) == its, (name, other)
        w.drag('slider', name, 0, -12)
    assert w.close() == 0


def test_plan_is_kept():
    farm = Farm()
    planned = farm.ask('price', 'Eggs')['planned_units']
    w = opened(farm)
    type_into(w, 'Planned, dozens', '80')
    until(lambda: w.value('Planned') == 80)
    w.press('push button', 'Keep this plan')
    until(lambda: farm.ask('price', 'Eggs')['planned_units'] == 80)
    w.press('push button', 'Undo: Plan of Eggs: 80 dozen')
    until(lambda: farm.ask('price', 'Eggs')['planned_units'] == planned)
    until(lambda: w.value('Planned') == planned)
    assert w.close() == 0


def test_numbers_lie_open():
    farm = Farm()
    figures = farm.ask('price', 'Eggs')
    even, profit = work_out(figures, price_on_file(farm))
    plan = f'{figures["planned_units"]:.0f} dozen'
    w = opened(farm)
    w.press('push button', 'Feed, $')
    row = until(lambda: next((n for n in w.walk(rows=True)
                              if re.search(r'Layer feed, lot .*\$\d+\.\d\d$', n.name)), None), 30)
    assert re.match(r'[A-Z][a-z]+ \d+, \d{4}, ', row.name), row.name
    w.press('push button', 'Show as table')
    until(lambda: any(n.name.startswith(f'Sold {even} dozen, ') for n in w.walk(rows=True)), 30)
    until(lambda: any(n.name.startswith(f'Sold {plan}, ') and n.name.endswith(money(profit))
                      for n in w.walk(rows=True)), 30)
    w.press('push button', 'Break-even')
    w.wait_words(f'so {even} dozen')
    assert w.nameless() == [], w.nameless()
    assert w.close() == 0
    assert 'CRITICAL' not in w.said(), w.said()


def test_new_product_is_made_with_its_price():
    farm = Farm()
    w = opened(farm)
    w.press('push button', 'New product')
    w.wait('push button', 'Save product')
    w.press('push button', 'Save product')
    w.wait_words('Please fill this in')
    w.fill('Name of the product', 'Farm eggs')
    w.fill('Planned for the next sale day', '40')
    w.fill('Price, if there is one already', '4,75')
    w.press('push button', 'Save product')
    wait_for_one_window(w)
    w.wait('push button', 'Farm eggs')
    w.wait('slider', 'Price, $4.75')
    rows = farm.rows('SELECT p.name, pack, planned_units, cents FROM product p JOIN price ON p.id = product_id'
                     " WHERE p.name = 'Farm eggs'")
    assert rows == ['Farm eggs|dozen|40|475'], rows
    assert w.close() == 0
    farm.verify()


run_cases(test_price_is_turned_by_keys_and_kept,
          test_wrong_text_stays_and_says_why,
          test_pointer_drags_even_where_handles_are_near,
          test_plan_is_kept,
          test_numbers_lie_open,
          test_new_product_is_made_with_its_price)
