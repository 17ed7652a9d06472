"""The cash book: accounts, money in and out, a count by two, statements, closing, correcting."""
import os
import subprocess

from drive import Window, run_cases, until
from farm import Farm, PROGRAM


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Keep')
    w.wait('push button', 'Store room')
    return w


def book(w):
    w.click('push button', 'Cash book')


def new_account(w, button, opening):
    """Make an account from a button of the empty book."""
    w.press('push button', button)
    w.wait('text', 'Name of the account')
    w.fill('Used since', '2026-01-01')
    w.fill('What was in it', opening)
    w.press('push button', 'Save account')


def two_accounts(w):
    book(w)
    w.wait_words('The cash book begins with an account')
    new_account(w, 'Till box…', '40')
    w.wait('push button', 'Money in…')
    more(w, 'New account…')
    w.wait('text', 'Name of the account')
    w.fill('Name of the account', 'School account')
    w.fill('Used since', '2026-01-01')
    w.fill('What was in it', '500')
    w.press('push button', 'Save account')
    w.wait('push button', 'All $540.00')


def more(w, action):
    w.press('push button', 'More')
    until(lambda: w.find('push button', action) is not None)
    w.press('push button', action)


def choose(w, name, *keys):
    """Choose in a drop-down by its keys: it opens, they move, Return takes."""
    w.click('push button', name)
    w.keys(*keys, 'Return')


def press_last(w, name):
    """Of several buttons of one name in Keep's panes the last one is that of the cash book."""
    [n for n in w.walk() if n.getRoleName() == 'push button' and n.name == name][-1].queryAction().doAction(0)


def lines(farm):
    return int(farm.rows('SELECT count(*) FROM cash_line')[0])


def total(farm):
    return int(farm.rows('SELECT (SELECT sum (opening_cents) FROM account) + sum (cents) FROM cash_line')[0])


def picture(farm):
    """A photo far larger than what is kept."""
    path = os.path.join(farm.folder.name, 'paper.png')
    subprocess.check_call(['convert', '-size', '3000x2000', 'plasma:', path])
    return path


def test_first_accounts_are_offered():
    farm = Farm()
    farm.forget_cash()
    w = opened(farm)
    two_accounts(w)
    assert farm.rows('SELECT name, opening_cents FROM account ORDER BY id') == ['Till box|4000', 'School account|50000']
    assert w.nameless() == [], w.nameless()
    assert w.close() == 0
    farm.verify()


def test_a_receipt_is_paid_once():
    farm = Farm()
    farm.forget_cash()
    w = opened(farm)
    two_accounts(w)
    w.click('push button', 'Receipts')
    w.wait_words('receipts: ')
    w.press('push button', 'New receipt')
    w.wait('text', 'From')
    w.fill('From', 'Lakeside Feed & Seed')
    w.fill('Amount', '25')
    w.fill('Cost of the line', '12.50')
    w.press('push button', 'Choose a picture…')
    w.choose_file('Choose a picture', picture(farm))
    w.wait('push button', 'Take it off')
    w.press('push button', 'Save receipt')
    until(lambda: farm.rows('SELECT count(*) FROM receipt_picture') == ['1'])
    assert int(farm.rows('SELECT max (length (jpeg)) FROM picture')[0]) < 100000
    w.wait_words('to pay: $12.50', rows=True)
    w.click('push button', 'Receipts')
    w.keys('Tab', 'Home')
    w.press('push button', 'Pay…')
    w.wait('text', 'To whom')
    assert w.read('Amount') == '12.50', w.read('Amount')
    assert w.read('To whom') == 'Lakeside Feed & Seed'
    w.press('push button', 'Save money out')
    until(lambda: farm.rows('SELECT cents FROM cash_line WHERE receipt_id IS NOT NULL') == ['-1250'])
    w.press('push button', 'Pay…')                     # the same receipt once more
    w.wait_words('is paid already')
    w.fill('Amount', '12.50')
    w.press('push button', 'Save money out')
    until(lambda: w.find('text', 'Amount').description)
    assert lines(farm) == 1
    w.keys('Escape')
    assert w.close() == 0
    farm.verify()


def test_from_a_sale_to_a_closed_month():
    farm = Farm()
    farm.forget_cash()
    w = opened(farm)
    two_accounts(w)
    w.click('push button', 'Till box $40.00')
    w.press('push button', 'Money in…')
    w.wait('text', 'Amount')
    w.fill('Day', '2026-10-03')
    w.fill('Amount', '61.50')
    w.fill('From whom', 'Saturday market')
    w.press('push button', 'Save money in')
    until(lambda: farm.rows('SELECT cents, category FROM cash_line') == ['6150|sales'])

    # Two people count it, and one dollar fifty is missing.
    w.press('push button', 'Count the till…')
    w.wait('text', '$20.00 ×')
    w.fill('Day', '2026-10-03')
    w.fill('$20.00 ×', '5')
    w.wait_words('short')
    w.fill('Stays in the box for change', '40')
    w.press('push button', 'Save count')
    w.wait_words('Choose who counted.')
    choose(w, 'Who counted', 'Down')
    choose(w, 'Who counted again', 'Down')             # the same person
    w.press('push button', 'Save count')
    w.wait_words('two people count money together')
    choose(w, 'Who counted again', 'Down', 'Down')
    w.press('push button', 'Save count')
    until(lambda: w.find('text', 'Why it differs').description)
    w.fill('Why it differs', 'wrong change')
    w.keys('Tab', 'Tab', 'Tab', 'space')               # over change and note to “Take the rest”
    w.wait('text', 'Number of the deposit slip')
    w.press('push button', 'Save count')
    until(lambda: farm.rows('SELECT count(*) FROM cash_count') == ['1'])
    assert total(farm) == 54000 + 6150 - 150, total(farm)
    w.wait('push button', 'Till box $40.00')

    # The statement of the time: what came in stands there and opens its entries.
    w.click('push button', 'Statements')
    w.press('push button', 'Sales: $61.50')
    w.wait_words('made of these entries')
    w.keys('Escape')

    # The advisor closes October.
    book(w)
    more(w, 'Close the books…')
    w.wait('text', 'Close through')
    w.fill('Close through', '2026-10-31')
    w.press('push button', 'Close the books')
    until(lambda: farm.rows('SELECT count(*) FROM closing') == ['1'])

    # Nothing of it changes any more.
    w.press('push button', 'Money out…')
    w.wait('text', 'Amount')
    w.fill('Day', '2026-10-20')
    w.fill('Amount', '5')
    count = lines(farm)
    w.press('push button', 'Save money out')
    until(lambda: 'closed through' in w.find('text', 'Day').description)
    assert lines(farm) == count
    w.keys('Escape')

    # What was wrong is corrected by a line of today that names it.
    w.wait('push button', 'Money in…')
    w.click('push button', 'All $')
    w.click('entry', 'Find a line')
    w.type('Saturday market')
    w.wait_words('Saturday market', rows=True)
    w.keys('Tab', 'Home', 'Down', 'Up')
    press_last(w, 'Open…')
    w.wait_words('writes a correction beside it')
    w.fill('Amount', '60.00')
    w.press('push button', 'Save as correction')
    until(lambda: w.find('text', 'What was wrong').description)
    w.fill('What was wrong', 'one carton was counted twice')
    w.press('push button', 'Save as correction')
    until(lambda: lines(farm) == count + 2)
    assert farm.rows('SELECT count(*) FROM cash_line WHERE corrects_id IS NOT NULL') == ['2']
    assert total(farm) == 54000 + 6000 - 150

    # One step back, and it stays so.
    w.press('push button', 'Undo: ')
    until(lambda: lines(farm) == count)
    assert w.close() == 0
    farm.verify()
    w = opened(farm)
    book(w)
    w.wait('push button', 'All $600.00')
    assert w.close() == 0
    farm.verify()


run_cases(test_first_accounts_are_offered, test_a_receipt_is_paid_once, test_from_a_sale_to_a_closed_month)
