"""Ahead of a sale: its lots, orders, and the next one like it; and a battery that goes flat amid taps."""
import os
import subprocess

from drive import run_cases, until
from farm import Farm, PROGRAM
from stall import LINES, TAPS, ask, number, opened, plan, press, today


def paper(farm, name):
    """The text of a paper of the test market."""
    out = os.path.join(farm.folder.name, name + '.pdf')
    subprocess.check_call([PROGRAM, '--document', name, '--of', 'Test market', '--out', out, farm.path])
    return subprocess.check_output(['pdftotext', '-layout', out, '-'], text=True)


def test_lots():
    """The lots are proposed, first-expiring-first; chosen by hand they are kept, and printed."""
    farm = Farm()
    w = opened(farm)
    plan(w, farm)
    lots = farm.ask('sale', 'Test market')
    assert lots['lines'][0]['product'] == 'Eggs', lots
    assert not farm.rows(f'SELECT 1 FROM sale_lot WHERE line_id IN {LINES}')
    press(w, 'Plan')
    proposed = w.wait_words(' dozen out of lot ')
    code = proposed.split(' out of lot ')[1].split(',')[0]
    assert code in paper(farm, 'sale-plan')
    ask(w, 'Edit plan…', 'Name of the sale')
    w.press('push button', 'Choose lots: Eggs')
    w.wait('text', code)
    whole = farm.rows('SELECT code FROM lot JOIN lot_stock ON lot_id = id WHERE base BETWEEN 12 AND 999 * 12')
    code = next(code for code in whole if w.find('text', code))              # the first to use up may hold less
    first = w.wait('text', code).name
    w.fill(first, '999')
    press(w, 'Save plan')
    w.wait_words('holds only')
    w.fill(first, '1')
    press(w, 'Save plan')
    until(lambda: farm.rows(f"SELECT base FROM sale_lot WHERE line_id IN {LINES} AND lot_id = "
                            f"(SELECT id FROM lot WHERE code = '{code}')") == ['12.0'], 30)
    press(w, 'Plan')                                # a sale of today goes on with its tally
    w.wait_words(f'1 dozen out of lot {code}')
    assert '1 dozen' in next(line for line in paper(farm, 'sale-plan').split('\n') if code in line)
    assert w.nameless() == []
    assert w.close() == 0
    farm.verify()


def order(w, who, units):
    ask(w, 'New order…', 'Who (may be left out)')
    w.fill('Who (may be left out)', who)
    w.fill('How many', units)
    press(w, 'Save order')


def test_orders_and_next_time():
    """Orders with and without a name; collected once; then the same sale a week later."""
    farm = Farm()
    w = opened(farm)
    plan(w, farm)
    w.press('push button', 'Tally')
    order(w, 'Bakery', '2')
    w.wait_words('Bakery: Eggs, 2 dozen, to pay')
    order(w, '', '1')
    w.wait_words('no name: Eggs, 1 dozen, to pay')
    text = paper(farm, 'order-list')
    assert 'Bakery' in text and '2 dozen' in text, text
    press(w, 'Collected: Bakery')
    until(lambda: number(farm, TAPS) == 1)
    w.wait_words('2 dozen sold')
    until(lambda: w.find('push button', 'Collected: Bakery') is None)
    # Taken back, it is to be collected again.
    w.press('push button', 'Take back the last tap')
    w.wait('push button', 'Collected: Bakery')
    # Next week the same: products, float and what to bring, but no orders.
    press(w, 'Plan')
    ask(w, 'Plan it once more…', 'Day of the next sale')
    w.fill('Day of the next sale', today(farm))
    press(w, 'Plan it')
    w.wait_words('of this name on that day')
    w.fill('Day of the next sale', farm.rows("SELECT date('now', '+7 days')")[0])
    press(w, 'Plan it')
    until(lambda: number(farm, "SELECT count(*) FROM sale_day WHERE name = 'Test market'") == 2)
    first, second = farm.rows("""SELECT location, opens_min, closes_min,
        (SELECT sum(face_cents * pieces) FROM sale_float WHERE sale_id = s.id),
        (SELECT group_concat(product_id || ' ' || planned) FROM sale_line WHERE sale_id = s.id)
        FROM sale_day s WHERE name = 'Test market' ORDER BY day""")
    assert first == second, (first, second)
    assert number(farm, f"""SELECT count(*) FROM sale_order WHERE sale_id NOT IN
                            (SELECT id FROM sale_day WHERE day = (SELECT min(day) FROM sale_day WHERE name = 'Test market'))
                            AND sale_id IN (SELECT id FROM sale_day WHERE name = 'Test market')""") == 0
    assert w.nameless() == []
    assert w.close() == 0
    farm.verify()


def shown(w):
    """Dozens of eggs that the tally on the screen says are sold."""
    return int(w.wait_words(' dozen sold, ').split(' ')[0])


def test_flat_battery():
    """The power goes amid a row of taps, three times: whatever the screen had shown is in the file."""
    farm = Farm()
    w = opened(farm)
    plan(w, farm)
    tapped = 0
    for _ in range(3):
        w.wait('push button', 'Sell Eggs')
        before = number(farm, TAPS)
        assert before >= tapped, (before, tapped)   # nothing that was seen is lost
        assert shown(w) == before
        w.keys(*['1'] * 5)
        until(lambda: shown(w) >= before + 3)
        tapped = shown(w)
        w.keys(*['1'] * 5)
        w.kill()                                    # these taps are on their way
        w = opened(farm)
    w.wait_words(f'{number(farm, TAPS)} dozen sold')
    assert tapped <= number(farm, TAPS) <= 30
    assert w.close() == 0
    farm.verify()


run_cases(test_lots, test_orders_and_next_time, test_flat_battery)
