"""A sale day: planned, its signs printed, tallied through power cuts, cashed up $2 short, looked back at."""
import os
import subprocess

from drive import Window, run_cases, until
from farm import Farm, PROGRAM


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.go(5, 'Sell')
    return w


def exact(w, role, name):
    """The control of just this name; others begin like it."""
    return until(lambda: next((n for n in w.walk() if n.getRoleName() == role and n.name == name), None))


def press(w, name):
    exact(w, 'push button', name).queryAction().doAction(0)


def choose(w, name, *keys):
    """Choose in a drop-down by its keys: it opens, they move, Return takes."""
    w.click('push button', name)
    w.keys(*keys, 'Return')


def number(farm, sql):
    return int(farm.rows(sql)[0])


def with_money(farm):
    """A box with $40.00 and the school's account, as the cash book has them."""
    subprocess.check_call(['sqlite3', farm.path,
                           "INSERT INTO account (name, kind, opened_on, opening_cents)"
                           " VALUES ('Till box', 'till', 20000, 4000), ('School account', 'activity', 20000, 50000)"])


def today(farm):
    return farm.rows("SELECT date('now')")[0]


def plan(w, farm):
    """A winter market today, with what the dialog proposes."""
    press(w, 'Plan the first sale')
    w.wait('text', 'Name of the sale')
    w.fill('Name of the sale', 'Winter market')
    w.fill('Where', 'Town hall')
    w.fill('Day', today(farm))
    w.fill('Closes', '8:00')
    press(w, 'Save plan')
    w.wait_words('closes before it opens')
    w.fill('Closes', '1 pm')
    for face, pieces in (('$5.00 ×', '4'), ('$1.00 ×', '20')):
        w.fill(face, pieces)
    press(w, 'Save plan')
    until(lambda: number(farm, 'SELECT count(*) FROM sale_day') == 1)


def test_winter_market():
    farm = Farm()
    with_money(farm)
    w = opened(farm)
    w.wait_words('Sale days belong here')
    plan(w, farm)
    assert farm.rows('SELECT name, location, opens_min, closes_min FROM sale_day') == ['Winter market|Town hall|540|780']
    assert number(farm, 'SELECT sum(face_cents * pieces) FROM sale_float') == 4000
    # Its signs are printed by the same code without a window.
    out = os.path.join(farm.folder.name, 'signs.pdf')
    subprocess.check_call([PROGRAM, '--document', 'price-signs', '--of', 'Winter market', '--out', out, farm.path])
    text = subprocess.check_output(['pdftotext', out, '-'], text=True)
    assert 'Eggs' in text and '$4.50' in text
    # Taps from the pointer and from keys; the power goes in between, twice.
    w.wait('push button', 'Sell Eggs')
    for _ in range(3):
        w.press('push button', 'Sell Eggs')
    until(lambda: number(farm, 'SELECT count(*) FROM sale_tap') == 3)
    w.kill()
    w = opened(farm)
    w.wait('push button', 'Sell Eggs')
    for n in range(4, 9):
        w.keys('1')
        until(lambda: number(farm, 'SELECT count(*) FROM sale_tap') == n)
    w.kill()
    assert number(farm, 'SELECT count(*) FROM sale_tap') == 8
    w = opened(farm)
    w.wait_words('8 dozen sold')
    # A wrong tap is taken back; a sample is no sale.
    w.press('push button', 'Take back the last tap')
    w.wait_words('7 dozen sold')
    w.press('push button', 'Sample: Eggs')
    until(lambda: number(farm, "SELECT count(*) FROM sale_tap WHERE kind = 'sample'") == 1)
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
    until(lambda: number(farm, 'SELECT count(*) FROM cash_count WHERE sale_id IS NOT NULL') == 1)
    w.wait_words('The stall took')
    assert w.close() == 0
    # The sums agree, in the file and once it is opened anew.
    assert number(farm, "SELECT sum(cents) FROM cash_line WHERE category = 'sales'") == 3600
    assert number(farm, "SELECT sum(cents) FROM cash_line WHERE category = 'over_short'") == -200
    # $40.00 stay in the box, $34.00 went to the school.
    assert farm.rows('SELECT a.name, a.opening_cents + coalesce ((SELECT sum(cents) FROM cash_line c'
                     ' WHERE c.account_id = a.id), 0) FROM account a ORDER BY a.id') == ['Till box|4000', 'School account|53400']
    assert number(farm, 'SELECT count(*) FROM sale_left') > 0
    farm.verify()
    w = opened(farm)
    press(w, 'New sale')
    w.wait('text', 'Name of the sale')
    w.keys('Escape')
    w.click('list item', '')
    w.wait_words('1 sale took')
    assert w.nameless() == []
    assert w.close() == 0


def test_all_that_was_brought():
    """More than was brought is refused at the stall, until somebody says that more came."""
    farm = Farm()
    with_money(farm)
    w = opened(farm)
    plan(w, farm)
    subprocess.check_call(['sqlite3', '-cmd', '.timeout 5000', farm.path, 'UPDATE sale_line SET brought = 1'])
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
    until(lambda: farm.rows('SELECT price_cents FROM sale_tap ORDER BY id') == ['450', '400'])
    assert w.close() == 0
    farm.verify()


run_cases(test_winter_market, test_all_that_was_brought)
