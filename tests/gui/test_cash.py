"""The cash book: accounts, money in and out and between them, a count by two, statements, the bank's
statement, closing, correcting."""
import datetime
import os
import subprocess

from drive import Window, run_cases, until, x
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


def day_of(text):
    """A day as the file holds it: days since January 1, 1970."""
    return (datetime.date.fromisoformat(text) - datetime.date(1970, 1, 1)).days


def begun_book(farm):
    """A cash book with a till box, the school's account and a fund, as another program would write it."""
    farm.forget_cash()
    farm.rows(f"""INSERT INTO account (id, name, kind, opened_on, opening_cents)
                  VALUES (1, 'Till box', 'till', {day_of('2026-01-01')}, 10000),
                         (2, 'School account', 'activity', {day_of('2026-01-01')}, 50000);
                  INSERT INTO fund (id, name) VALUES (1, 'Sheep pen')""")


def put_lines(farm, *rows):
    """Lines of the school's account: day, cents, category, who."""
    for day, cents, category, who in rows:
        farm.rows(f"""INSERT INTO cash_line (day, account_id, cents, category, who)
                      VALUES ({day_of(day)}, 2, {cents}, '{category}', '{who}')""")


def tell(w, name, role='text'):
    """What is wrong with a field, said at it."""
    return until(lambda: w.find(role, name).description)


def lines(farm):
    return int(farm.rows('SELECT count(*) FROM cash_line')[0])


def total(farm):
    return int(farm.rows('SELECT (SELECT sum (opening_cents) FROM account) + sum (cents) FROM cash_line')[0])


def balance(farm, account):
    return int(farm.rows(f"""SELECT opening_cents + (SELECT coalesce (sum (cents), 0) FROM cash_line
                             WHERE account_id = {account}) FROM account WHERE id = {account}""")[0])


def in_fund(farm, fund):
    return int(farm.rows(f'SELECT coalesce (sum (cents), 0) FROM cash_line WHERE fund_id = {fund}')[0])


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
    w.tab_to('table row')
    w.keys('Home')                                     # the newest
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
    w.wait('image', 'Cash flow')
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
    w.tab_to('table row')
    w.keys('Home', 'Down', 'Up')
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


def test_money_moves_between_accounts_and_funds():
    farm = Farm()
    begun_book(farm)
    w = opened(farm)
    book(w)
    w.click('push button', 'Till box $100.00')
    w.press('push button', 'Move money…')
    w.wait('text', 'Amount')
    w.fill('Day', '2026-10-05')
    w.fill('Amount', '0')
    press_last(w, 'Move money')
    tell(w, 'Amount')                                  # nothing moves
    w.fill('Amount', '61.50')
    choose(w, 'To account', 'End')                     # the account that it comes from
    press_last(w, 'Move money')
    w.wait_words('Choose another account, or another fund.')
    choose(w, 'To account', 'Home')
    choose(w, 'Who took it there', 'Down')
    choose(w, 'Second person who watched', 'Down')     # the same person
    press_last(w, 'Move money')
    w.wait_words('two people handle money together')
    assert lines(farm) == 0
    choose(w, 'Second person who watched', 'Down', 'Down')
    w.fill('Number of the slip', '0417')
    press_last(w, 'Move money')
    until(lambda: lines(farm) == 2)
    assert (balance(farm, 1), balance(farm, 2)) == (3850, 56150)
    assert farm.rows('SELECT count (*) FROM cash_line a JOIN cash_line b ON b.id = a.pair_id AND a.id = b.pair_id'
                     " AND a.cents = -b.cents AND a.reference = '0417'") == ['2']

    # Half of it was right: both halves change together.
    w.click('entry', 'Find a line')
    w.tab_to('table row')
    w.keys('Home', 'Down', 'Up')
    press_last(w, 'Open…')
    w.wait('text', 'Number of the slip')
    assert w.read('Amount') == '61.50', w.read('Amount')
    w.fill('Amount', '60')
    press_last(w, 'Save')
    until(lambda: (balance(farm, 1), balance(farm, 2)) == (4000, 56000))
    assert lines(farm) == 2

    # Within one account it goes into the fund; the account keeps what it has.
    w.click('push button', 'School account $560.00')
    w.press('push button', 'Move money…')
    w.wait('text', 'Amount')
    w.fill('Amount', '200')
    choose(w, 'To account', 'Home')
    choose(w, 'To fund', 'End')
    assert w.nameless() == [], w.nameless()
    press_last(w, 'Move money')
    until(lambda: in_fund(farm, 1) == 20000)
    assert (balance(farm, 1), balance(farm, 2)) == (4000, 56000)
    w.wait('link', 'Sheep pen $200.00') if w.find('link', 'Sheep pen') else w.wait('push button', 'Sheep pen $200.00')
    w.press('push button', 'Undo: moving')
    until(lambda: in_fund(farm, 1) == 0)
    assert w.close() == 0
    farm.verify()


STATEMENT = """Date,Description,Amount
2026-10-06,Deposit,61.50
2026-10-12,Check 0231,-22.48
2026-10-30,Fee for checks,-3.00
2026-10-30,Fee of another club,-9.99
2026-11-02,Deposit,12.00
"""


def bank_lines(farm, more=''):
    return int(farm.rows('SELECT count (*) FROM bank_line' + more)[0])


def compare(w):
    more(w, 'Compare with a statement…')
    w.wait('text', 'Statement through')


def import_statement(w, farm):
    w.press('push button', 'Import its lines…')
    w.choose_file('Import a statement of an account', farm.write('october.csv', STATEMENT))
    w.press('push button', 'Take 5 rows')
    until(lambda: bank_lines(farm) == 5)
    until(lambda: len(w.windows()) == 2)
    x('windowfocus', w.windows()[-1])


def keep_statement(w, farm, closing):
    w.fill('Statement through', '2026-10-31')
    w.fill('It says there is', closing)
    w.press('push button', 'Keep it')
    until(lambda: farm.rows('SELECT closing_cents FROM bank_sheet') == [closing.replace('.', '')])


def of_another_account(w, farm):
    """A statement that was kept by mistake goes, and comes back by Undo; its lines stay."""
    w.press('push button', 'Delete the statement')
    until(lambda: farm.rows('SELECT count (*) FROM bank_sheet') == ['0'])
    until(lambda: w.read('It says there is') == '')
    assert bank_lines(farm) == 5
    w.press('push button', 'Undo: deleting a statement of an account')
    until(lambda: farm.rows('SELECT closing_cents FROM bank_sheet') == ['52000'])
    until(lambda: w.read('It says there is') == '520.00')


def in_table(w, *keys):
    """To a row of the statement's table: it comes after the field and the buttons “Keep it” and “Delete the statement”."""
    w.click('text', 'It says there is')
    w.keys('Tab', 'Tab', 'Tab', *keys)


def close_dialog(w):
    press_last(w, 'Close')                             # the first one is the main window's
    until(lambda: len(w.windows()) == 1)
    w.focus()


def compare_once(w, farm):
    """Nothing agrees yet: lines wait, and two figures of what it says are swapped."""
    compare(w)
    w.wait_words('No line of this account’s statements is here yet.')
    import_statement(w, farm)
    # What the book has is matched at once, the deposit that was under way at the month's end too.
    assert farm.rows('SELECT b.cents, c.who FROM bank_line b JOIN cash_line c ON c.id = b.line_id ORDER BY b.day') == [
        '6150|Saturday market', '1200|Customers']
    keep_statement(w, farm, '520.00')
    w.wait_words('3 lines of the statement are not matched yet.')
    of_another_account(w, farm)
    w.press('push button', 'They agree')
    w.wait_words('Choose who compared it.')
    choose(w, 'Who compared it', 'Down')
    w.press('push button', 'They agree')
    w.wait_words('3 lines of the statement are not in the book by its day yet.')
    w.press('push button', 'Match')
    w.wait_words('Choose a row of the table first.')
    in_table(w, 'Home', 'Down', 'Up')
    w.press('push button', 'Match')
    w.wait_words('The cash book has no line like it.')
    close_dialog(w)


def match_the_rest(w, farm):
    """What was missing in the book, what only the bank has, and what is of somebody else."""
    in_table(w, 'Home', 'Down', 'Up')
    w.press('push button', 'Match')
    until(lambda: farm.rows('SELECT c.who FROM bank_line b JOIN cash_line c ON c.id = b.line_id WHERE b.cents = -2248')
          == ['Lakeside Feed & Seed'])
    in_table(w, 'Home', 'Down', 'Up')
    w.press('push button', 'Enter in the cash book…')
    w.wait('text', 'Number of the check or slip')
    assert w.read('Amount') == '3.00', w.read('Amount')
    w.press('push button', 'Save money out')
    until(lambda: farm.rows("SELECT cents, note FROM cash_line WHERE category = 'fees'") == ['-300|Fee for checks'])
    w.press('push button', 'Match all that fit')
    w.wait_words('1 line of the statement is not matched yet.')
    in_table(w, 'Home', 'Down', 'Up')
    w.press('push button', 'Take the line away')
    until(lambda: bank_lines(farm) == 4)
    w.wait_words('Every line of the statement is matched.')
    assert bank_lines(farm, ' WHERE line_id IS NULL') == 0


def test_a_statement_agrees_with_the_book():
    farm = Farm()
    begun_book(farm)
    put_lines(farm, ('2026-10-05', 6150, 'sales', 'Saturday market'), ('2026-10-31', 1200, 'sales', 'Customers'))
    w = opened(farm)
    book(w)
    compare_once(w, farm)
    w.click('push button', 'School account $573.50')
    w.press('push button', 'Money out…')
    w.wait('text', 'To whom')
    w.fill('Day', '2026-10-08')
    w.fill('Amount', '22.48')
    w.fill('To whom', 'Lakeside Feed & Seed')
    w.press('push button', 'Save money out')
    w.wait('push button', 'School account $551.02')
    compare(w)
    match_the_rest(w, farm)
    assert w.nameless() == [], w.nameless()

    # 500.00 + 61.50 - 22.48 - 3.00; the deposit of October 31 is under way until November 2.
    w.wait_words('the statement comes to $532.00 and the book to $548.02: $16.02 apart.')
    choose(w, 'Who compared it', 'Down')
    w.press('push button', 'They agree')
    w.wait_words('The two sides differ.')
    keep_statement(w, farm, '536.02')
    w.wait_words('Both sides come to $548.02.')
    w.press('push button', 'They agree')
    until(lambda: farm.rows('SELECT agreed_on IS NOT NULL FROM bank_sheet') == ['1'])
    close_dialog(w)
    w.wait_words('on the statement ✓', rows=True)
    assert w.close() == 0
    farm.verify()


run_cases(test_first_accounts_are_offered, test_a_receipt_is_paid_once, test_from_a_sale_to_a_closed_month,
          test_money_moves_between_accounts_and_funds, test_a_statement_agrees_with_the_book)
