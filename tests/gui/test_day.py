"""The whole path of a student, once: from nothing to a price and its page.

New farm, flock, log from a table, receipt, product, the price turned by keys, the
page as PDF; then the power fails, and everything is there.  What the window says
is held against a sum worked out here from the same facts.
"""
import datetime
import math
import os
import subprocess

from drive import Window, run_cases, until
from farm import PROGRAM, Farm

DAYS = 40
EGGS, CRACKED, FEED_LB = 24, 2, 7


def day(ago):
    return (datetime.date.today() - datetime.timedelta(days=ago)).isoformat()


def expected_unit_cents():
    """One dozen by hand: feed and hens over the good eggs, and nothing else yet."""
    good = DAYS * (EGGS - CRACKED) / 12
    feed = DAYS * FEED_LB * 60.00 / 300                   # a receipt of 300 lb for $60.00
    hens = (360.00 - 60.00) / (30 * 330) * DAYS * EGGS    # spread over 330 eggs a hen
    return sum(math.floor(100 * part / good + 0.5) for part in (feed, hens))


def make_farm(w):
    w.press('push button', 'Start a new farm')
    w.fill('Name of the farm', 'Hill Farm')
    w.press('push button', 'Make the farm')
    for step in ('Step 2 of 3', 'Step 3 of 3'):
        w.wait_words(step)
        w.press('push button', 'Skip this step')
    w.wait('push button', 'Today')


def make_feed(w):
    w.place('Keep')
    w.wait('push button', 'New item')
    w.wait_words('Feed, litter, cartons belong here')
    w.press('push button', 'New item')
    w.fill('Name of the item', 'Layer feed')
    w.press('push button', 'Save item')
    w.wait_words('Saved: new item Layer feed')


def make_flock(w):
    w.place('Raise')
    w.press('push button', 'New flock')
    w.fill('Name of the flock', 'Brown hens')
    w.fill('Day they moved in', day(60))
    w.fill('Birds that moved in', '30')
    w.fill('Eggs expected of one bird', '330')
    w.fill('Cost of all birds', '360.00')
    w.fill('Worth of all birds', '60')
    w.press('push button', 'Save flock')
    w.wait('push button', 'Record the day')


def import_log(w, folder):
    path = os.path.join(folder, 'log.csv')
    with open(path, 'w', encoding='utf-8') as out:
        out.write('Date,Eggs,Cracked,Feed (lb)\n')
        out.writelines(f'{day(n)},{EGGS},{CRACKED},{FEED_LB}\n' for n in range(DAYS, 0, -1))
    w.press('push button', 'Log')
    w.wait('heading', 'What was written down')
    w.press('push button', 'Import a log')
    w.choose_file("Import a flock's log", path)
    w.press('push button', f'Take {DAYS} rows')
    w.wait_words(f'Imported: {DAYS} rows')


def enter_receipt(w):
    """Dated before the feed was given: it covers the log that came before it."""
    w.place('Keep')
    w.press('push button', 'Receipts')
    w.wait_words('Every purchase')
    w.press('push button', 'New receipt')
    w.fill('From', 'Lakeside Feed & Seed')
    # Raise has a field of that name too: the dialog's is the last one.
    days = [n for n in w.walk() if n.getRoleName() == 'text' and n.name.startswith('Day')]
    days[-1].queryEditableText().setTextContents(day(59))
    w.fill('Amount', '300')
    w.fill('Cost of the line', '60.00')
    w.press('push button', 'Save receipt')
    w.wait_words('Saved: receipt from Lakeside')


def make_product(w):
    w.place('Price')
    w.press('push button', 'New product')
    w.fill('Name of the product', 'Eggs')
    w.fill('Planned for the next sale day', '40')
    w.press('push button', 'Add a cost')
    w.fill('Cost', 'Table')
    w.fill('Amount', '30.00')
    w.press('push button', 'Save product')
    w.wait('slider', 'Price, $')


def turn_price(w, cents):
    """By Tab and the arrows alone; then keep it."""
    for _ in range(80):
        if w.focused() is not None and w.focused().name.startswith('Price, $'):
            break
        w.keys('Tab')
    while w.value('Price, $') != cents:
        at = w.value('Price, $')
        w.keys('Right' if at < cents else 'Left')
        until(lambda: w.value('Price, $') != at)
    w.press('push button', 'Use $')
    w.wait_words('Saved: ')


def save_page(w, path):
    w.press('push button', 'Price page…')
    w.wait('image', 'Page 1 of')
    w.press('push button', 'Save as PDF…')
    w.wait('text', 'Name:').queryEditableText().setTextContents(path)
    until(lambda: [n for n in w.walk() if n.getRoleName() == 'push button'
                   and n.name in ('Save', 'Save Save')])[-1].queryAction().doAction(0)
    until(lambda: os.path.exists(path))


def test_from_nothing_to_a_page():
    folder = Farm(demo=False).folder
    pdf = os.path.join(folder.name, 'price.pdf')
    w = Window(PROGRAM)
    w.fit()
    make_farm(w)
    make_feed(w)
    make_flock(w)
    import_log(w, folder.name)
    enter_receipt(w)
    make_product(w)
    unit = expected_unit_cents()
    price = unit + 100                     # so that the table's $30.00 take 30 dozen
    turn_price(w, price)
    sentence = f'At ${price / 100:.2f} a dozen, 30 dozen cover'
    w.wait_words(sentence)
    save_page(w, pdf)
    w.kill()

    text = ' '.join(subprocess.check_output(['pdftotext', '-layout', pdf, '-'], text=True).split())
    assert sentence in text, text
    farm = Farm(demo=False)
    farm.path = os.path.join(os.environ['HOME'], 'Hill Farm.steading')
    farm.verify()
    figures = farm.ask('price', 'Eggs')
    assert round(figures['unit_cents']) == unit, (figures, unit)
    assert farm.rows('SELECT count(*), sum (eggs) FROM batch_entry') == [f'{DAYS}|{DAYS * EGGS}']
    left = farm.rows('SELECT sum (cost_cents) FROM movement')
    assert left == [str(6000 - DAYS * FEED_LB * 20)], left
    w = Window(PROGRAM, farm.path)
    w.place('Price')
    w.wait_words(sentence)
    assert w.close() == 0, w.said()


run_cases(test_from_nothing_to_a_page)
