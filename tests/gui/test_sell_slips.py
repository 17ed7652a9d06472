"""Slips of a sale day in the window: shifts that overlap, a price that changes, a till counted twice."""
from drive import run_cases, until
from farm import Farm
from stall import LINES, SALE, ask, choose, number, opened, plan, press


def nth(w, role, name, n):
    """The control of just this name, counted from 0: each row of a list has one."""
    def found():
        same = [node for node in w.walk() if node.getRoleName() == role and node.name == name]
        return same[n] if len(same) > n else None
    return until(found)


def test_overlapping_shifts():
    """One helper cannot be at two places at once."""
    farm = Farm()
    market = "(SELECT id FROM sale_day WHERE name = 'Winter market')"
    # The last shift is of who works the first one, and begins as that ends.
    farm.rows(f"""UPDATE sale_shift SET from_min = 660, person_id = (SELECT person_id FROM sale_shift
                  WHERE sale_id = {market} ORDER BY from_min, id LIMIT 1)
                  WHERE id = (SELECT max (id) FROM sale_shift WHERE sale_id = {market})""")
    ends = farm.rows(f'SELECT to_min FROM sale_shift WHERE sale_id = {market} ORDER BY from_min, id')
    assert ends[0] == '660', ends
    w = opened(farm)
    ask(w, 'Edit plan…', 'Name of the sale')
    nth(w, 'text', 'From', 2).queryEditableText().setTextContents('10:59')
    press(w, 'Save plan')
    w.wait_words('another shift at the same time')
    nth(w, 'text', 'From', 2).queryEditableText().setTextContents('11:01')
    press(w, 'Save plan')
    until(lambda: farm.rows(f'SELECT max (from_min) FROM sale_shift WHERE sale_id = {market}') == ['661'], 30)
    assert w.close() == 0
    farm.verify()


def test_price_changed_and_counted_once():
    """Two dozen at $4.50, one at $4.00: both prices are kept, with the time; and a till is counted once."""
    farm = Farm()
    w = opened(farm)
    plan(w, farm)
    w.wait('push button', 'Sell Eggs')
    w.keys('1', '1')
    w.wait_words('2 dozen sold')
    w.press('push button', 'Change…: Eggs')
    w.wait('text', 'Brought')
    w.fill('Price from now on', '4')
    press(w, 'Save')
    w.wait_words('$4.00, key 1')
    w.keys('1')
    w.wait_words('3 dozen sold')
    # $40.00 and $13.00.
    press(w, 'Cash up')
    for face, pieces in (('$20.00 ×', '2'), ('$10.00 ×', '1'), ('$1.00 ×', '3')):
        w.fill(face, pieces)
    w.wait_words('it agrees')
    # One dozen too many in the store room.
    left = w.read('Eggs: Store room')
    w.fill('Eggs: Store room', str(int(left) + 1))
    choose(w, 'Who counted', 'Down')
    choose(w, 'Who counted again', 'Down')
    press(w, 'Post the cash-up')
    w.wait_words('must be somebody else than the first')
    choose(w, 'Who counted again', 'Down', 'Down')
    press(w, 'Post the cash-up')
    w.wait_words('more are tallied and left over than were brought')
    w.fill('Eggs: Store room', left)
    press(w, 'Post the cash-up')
    w.wait_words('The stall took')
    w.wait_words('Eggs: $4.50 until ')
    assert farm.rows(f'SELECT price_cents FROM sale_tap WHERE line_id IN {LINES} ORDER BY id') == ['450', '450', '400']
    assert number(farm, f'SELECT count(*) FROM sale_price WHERE line_id IN {LINES} AND price_cents = 400 AND at > 1e9') == 1
    # What is counted is closed: no second count, and no tap more.
    assert w.find('push button', 'Cash up') is None
    assert w.find('push button', 'Tally') is None
    assert number(farm, f'SELECT count(*) FROM cash_count WHERE sale_id = {SALE}') == 1
    assert w.nameless() == []
    assert w.close() == 0
    farm.verify()


run_cases(test_overlapping_shifts, test_price_changed_and_counted_once)
