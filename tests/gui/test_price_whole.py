"""Price, from the receipt to the printed page: one student's afternoon.

Sauce is priced from its receipts to the jar, its share of the tomatoes by net realizable value;
three products stand on one sale day; a target is set, a handle dragged, a scenario kept; the best
use of what is scarce is solved; the worked solution is printed.  What the window says is held
against the receipts in the file and against figures that are worked out here.
"""
import os
import subprocess
import time

from drive import Window, run_cases, until
from farm import Farm, PROGRAM

SAUCE = 'Roasted tomato sauce, pint'
KEPT = ('Eggs', 'Fresh tomatoes', SAUCE)


def dollars(cents):
    cents = round(cents)
    return f'{"−" if cents < 0 else ""}${abs(cents) // 100:,}.{abs(cents) % 100:02}'


def three_products():
    """The demo farm with three products on its sale day; the others are not sold now."""
    farm = Farm()
    names = ', '.join(f"'{name}'" for name in KEPT)
    farm.rows(f"UPDATE product SET retired_on = 20000 WHERE name NOT IN ({names})")
    farm.verify()
    return farm


def by_receipts(farm):
    """Cents of all that the sauce took: of what was bought, its share of the receipt; of the farm's
    own tomatoes, what they cost when they were picked."""
    rows = farm.rows('SELECT sum (-m.quantity_base * iif (l.id IS NULL, m.cost_cents * 1.0 / m.quantity_base,'
                     ' l.cost_cents * 1.0 / l.quantity_base))'
                     ' FROM movement AS m JOIN lot ON lot.id = m.lot_id LEFT JOIN receipt_line AS l ON l.id = lot.receipt_line_id'
                     ' JOIN kitchen ON kitchen.batch_id = m.batch_id JOIN recipe ON recipe.id = kitchen.recipe_id'
                     " WHERE m.kind = 'used' AND recipe.name = 'Roasted tomato sauce'")
    return float(rows[0])


def net_values(figures):
    """The shares by what each part brings at last, less its own further work: unrounded."""
    worth = [p['quantity'] * (p['final_cents'] - p['further_cents'] if p['final_cents'] else p['split_cents'])
             for p in figures['parts']]
    return [figures['joint_cents'] * one / sum(worth) for one in worth]


def save_page(w, button, path):
    w.press('push button', button)
    w.wait('image', 'Page 1 of')
    w.press('push button', 'Save as PDF…')
    w.wait('text', 'Name:').queryEditableText().setTextContents(path)
    until(lambda: [n for n in w.walk() if n.getRoleName() == 'push button'
                   and n.name in ('Save', 'Save Save')])[-1].queryAction().doAction(0)
    until(lambda: os.path.exists(path))
    time.sleep(.5)                       # the chooser closes; reading its tree meanwhile is a fault of GTK 4.8
    w.wait('label', f'Saved: {path}')
    [n for n in w.walk() if n.getRoleName() == 'push button' and n.name == 'Close'][-1].queryAction().doAction(0)
    until(lambda: len(w.windows()) == 1)
    time.sleep(.5)


def test_from_receipt_to_page():
    farm = three_products()
    cost, best = farm.ask('cost', SAUCE), farm.ask('best-use')
    shared = farm.ask('joint', 'Tomatoes, bay 1')
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Price')

    # Sauce, from its receipts to the jar.
    w.press('push button', SAUCE)
    w.press('push button', 'Step by step')
    w.wait_words(f'One jar costs us {dollars(cost["unit_cents"])}')
    assert abs(cost['parts']['start']['total_cents'] - by_receipts(farm)) < 12, (cost['parts'], by_receipts(farm))
    assert cost['unit_cents'] == sum(part['shown_cents'] for name, part in cost['parts'].items() if name != 'labor')
    w.press('push button', 'Ingredients, $')             # the step opens to its entries
    until(lambda: any('Garlic, lot' in n.name for n in w.walk(rows=True)))

    # Its share of the fruit, by net realizable value: as reckoned here, and whole to the cent.
    w.press('push button', 'Fresh tomatoes')             # one harvest: table fruit, seconds for sauce, waste
    w.press('push button', 'Shared cost')
    shares = [p['share_cents']['net_value'] for p in shared['parts']]
    assert sum(shares) == shared['joint_cents']
    assert all(abs(a - b) < 1 for a, b in zip(shares, net_values(shared))), (shares, net_values(shared))
    words = w.wait_words(f'{dollars(shared["joint_cents"])} in all goes into Tomatoes, bay 1')
    assert all(dollars(share) in words for share in shares if share), (words, shares)

    # Three products on one sale day; a target; a handle that is dragged.
    w.press('push button', 'All products together')
    w.wait('slider', f'{SAUCE}, ')
    w.wait('slider', 'Profit wanted, ').queryValue().currentValue = 20000
    w.wait_words('The target of $200.00')
    before = w.value('Eggs')
    profit = w.wait_words('The plan clears ')
    w.drag('slider', 'Eggs, ', 40)
    until(lambda: w.value('Eggs') != before)
    until(lambda: w.wait_words('The plan clears ') != profit)
    figures = [farm.ask('price', name) for name in KEPT]
    plan = [int(f['planned_units']) for f in figures]
    plan[0] = int(w.value('Eggs'))
    clears = sum((f['price_cents'] - f['unit_cents']) * n - f['fixed_cents']
                 - (max(1, -(-n // f['step_units'])) * f['step_cents'] if f['step_units'] else 0)
                 for f, n in zip(figures, plan))
    w.wait_words(f'The plan clears {dollars(clears)}')

    # A scenario beside the plan.
    w.press('push button', 'What if')
    w.press('push button', SAUCE)
    w.wait('slider', f'Number sold, {figures[2]["planned_units"]:.0f} jars')
    w.drag('slider', 'Number sold, ', 30)
    until(lambda: w.value('Number sold') != figures[2]['planned_units'])
    sold = w.value('Number sold')
    w.fill('Name of this scenario', 'More jars')
    w.press('push button', 'Keep as a scenario')
    until(lambda: farm.rows('SELECT name, knob, value FROM scenario_value') == [f'More jars|planned|{sold}'])

    # The best use of eggs, fruit, stove and time.
    w.press('push button', 'Best use')
    w.wait_words(f'brings {dollars(best["best_cents"])}')

    # The worked solution on paper, with this farm's numbers put in.
    w.press('push button', 'One product')
    page = os.path.join(farm.folder.name, 'sauce.pdf')
    save_page(w, 'Price page…', page)
    text = ' '.join(subprocess.check_output(['pdftotext', '-layout', page, '-'], text=True).split())
    left = figures[2]['price_cents'] - cost['unit_cents']
    assert 'How it is worked out' in text and 'Source: ' in text, text
    assert f'{dollars(figures[2]["price_cents"])} − {dollars(cost["unit_cents"])} = {dollars(left)}' in text, text
    assert w.close() == 0
    assert 'CRITICAL' not in w.said() and 'WARNING' not in w.said(), w.said()
    farm.verify()


run_cases(test_from_receipt_to_page)
