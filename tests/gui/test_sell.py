"""A sale day: planned, its signs printed, tallied through power cuts, cashed up $2 short, looked back at."""
import os
import subprocess

from drive import run_cases, until
from farm import Farm, PROGRAM
from stall import LINES, SALE, TAPS, choose, number, opened, plan, press


def test_market():
    farm = Farm()
    w = opened(farm)
    plan(w, farm)
    assert farm.rows(f'SELECT location, opens_min, closes_min FROM sale_day WHERE id = {SALE}') == ['Town hall|540|780']
    assert number(farm, f'SELECT sum(face_cents * pieces) FROM sale_float WHERE sale_id = {SALE}') == 4000
    # Its signs are printed by the same code without a window.
    out = os.path.join(farm.folder.name, 'signs.pdf')
    subprocess.check_call([PROGRAM, '--document', 'price-signs', '--of', 'Test market', '--out', out, farm.path])
    text = subprocess.check_output(['pdftotext', out, '-'], text=True)
    assert 'Eggs' in text and '$4.50' in text
    # Taps from the pointer and from keys; the power goes in between, twice.
    w.wait('push button', 'Sell Eggs')
    for n in (1, 2, 3):
        w.press('push button', 'Sell Eggs')
        until(lambda: number(farm, TAPS) == n)
    w.kill()
    w = opened(farm)
    w.wait('push button', 'Sell Eggs')
    for n in range(4, 9):
        w.keys('1')
        until(lambda: number(farm, TAPS) == n)
    w.kill()
    assert number(farm, TAPS) == 8
    w = opened(farm)
    w.wait_words('8 dozen sold')
    # A wrong tap is taken back; a sample is no sale.
    w.press('push button', 'Take back the last tap')
    w.wait_words('7 dozen sold')
    w.press('push button', 'Sample: Eggs')
    until(lambda: number(farm, TAPS + " AND kind = 'sample'") == 1)
    # Change to give: $5.00 for one dozen.
    press(w, 'Next customer')
    w.press('push button', 'Sell Eggs')
    w.wait_words('To pay: $4.50')
    w.fill('Money given', '5')
    w.wait_words('Give back $0.50')
    assert w.nameless() == []
    # 8 dozen at $4.50 are $36.00; with the float $76.00; $74.00 are there.
    press(w, 'Cash up')
    for face, pieces in (('$20.00 ×', '3'), ('$5.00 ×', '2'), ('$1.00 ×', '4')):
        w.fill(face, pieces)
    w.wait_words('$2.00 short')
    press(w, 'Post the cash-up')
    w.wait_words('Two people count money together')
    choose(w, 'Who counted', 'Down')
    choose(w, 'Who counted again', 'Down', 'Down')
    press(w, 'Post the cash-up')
    w.wait_words('write down what may be the reason')
    w.fill('Why it differs', 'A wrong change, likely')
    assert w.nameless() == []
    press(w, 'Post the cash-up')
    until(lambda: number(farm, f'SELECT count(*) FROM cash_count WHERE sale_id = {SALE}') == 1)
    w.wait_words('The stall took')
    assert w.close() == 0
    # The sums agree, in the file and once it is opened anew.
    of = f'SELECT sum(cents) FROM cash_line WHERE sale_id = {SALE} AND category = '
    assert number(farm, of + "'sales'") == 3600
    assert number(farm, of + "'over_short'") == -200
    # The float stays in the box; what was counted above it went on.
    assert number(farm, f"""SELECT a.opening_cents + coalesce ((SELECT sum(cents) FROM cash_line WHERE account_id = a.id), 0)
                            FROM account a JOIN sale_day s ON s.account_id = a.id WHERE s.id = {SALE}""") == 4000
    assert number(farm, f'SELECT count(*) FROM sale_left WHERE line_id IN {LINES}') > 0
    farm.verify()
    w = opened(farm)
    press(w, 'New sale')
    w.wait('text', 'Name of the sale')
    w.keys('Escape')
    w.click('list item', '')
    w.wait_words(' took ')
    w.press('push button', 'Why? The figures worked out')
    w.press('push button', 'Taken in an hour')
    w.wait_words(' h = ')
    w.press('push button', 'Is it chance?')
    w.wait_words('seldom chance')
    assert w.nameless() == []
    assert w.close() == 0


def test_all_that_was_brought():
    """More than was brought is refused at the stall, until somebody says that more came."""
    farm = Farm()
    w = opened(farm)
    plan(w, farm)
    subprocess.check_call(['sqlite3', '-cmd', '.timeout 5000', farm.path,
                           f'UPDATE sale_line SET brought = 1 WHERE id IN {LINES}'])
    w.close()
    w = opened(farm)
    w.press('push button', 'Sell Eggs')
    w.wait_words('1 dozen sold, sold out')
    w.press('push button', 'Sell Eggs')
    w.wait_words('all that was brought is tallied')
    w.press('push button', 'Change…: Eggs')
    w.fill('Brought', '3')
    w.fill('Price from now on', '4')
    press(w, 'Save')
    w.wait_words('2 dozen left')
    w.press('push button', 'Sell Eggs')
    until(lambda: farm.rows(f'SELECT price_cents FROM sale_tap WHERE line_id IN {LINES} ORDER BY id') == ['450', '400'])
    assert w.close() == 0
    farm.verify()


run_cases(test_market, test_all_that_was_brought)
