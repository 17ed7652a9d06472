"""Keep: receipts bring lots, what is used and counted leaves them, signed stays."""
from drive import Window, run_cases, until
from farm import Farm, PROGRAM


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Keep')
    w.wait('push button', 'Store room')
    return w


def on_hand(farm, item):
    return float(farm.rows(f"""SELECT round (coalesce (sum (m.quantity_base), 0), 6) FROM movement m
                               JOIN lot ON lot.id = m.lot_id JOIN item ON item.id = lot.item_id
                               WHERE item.name = '{item}'""")[0])


def receipts(farm):
    return int(farm.rows('SELECT count(*) FROM receipt')[0])


def test_receipt_with_a_new_item():
    farm = Farm()
    w = opened(farm)
    w.press('push button', 'New item')
    w.wait('text', 'Name of the item')
    w.fill('Name of the item', 'Grit')
    w.fill('Name on a label, if it is another', 'Oyster shell')
    w.press('push button', 'Save item')
    until(lambda: farm.rows("SELECT label_name FROM item WHERE name = 'Grit'") == ['Oyster shell'])
    w.press('push button', 'Receipts')
    w.wait_words('receipts: ')
    w.press('push button', 'New receipt')
    w.wait('text', 'From')
    w.press('push button', 'Save receipt')
    until(lambda: w.find('text', 'From').description)
    w.fill('From', 'Lakeside Feed & Seed')
    w.fill('Amount', '25')
    w.fill('Cost of the line', '12,50')               # a decimal comma is understood
    before = receipts(farm)
    w.press('push button', 'Save receipt')
    until(lambda: receipts(farm) == before + 1)
    newest = farm.rows('SELECT cost_cents FROM receipt_line ORDER BY id DESC LIMIT 1')
    assert newest == ['1250'], newest
    w.press('push button', 'New receipt')              # the same paper once more
    w.wait('text', 'From')
    w.fill('From', 'Lakeside Feed & Seed')
    w.fill('Amount', '25')
    w.fill('Cost of the line', '12.50')
    w.press('push button', 'Save receipt')
    w.wait_words('with the same sum or number was entered')
    assert receipts(farm) == before + 1
    w.press('push button', 'Save receipt')             # it is another one
    until(lambda: receipts(farm) == before + 2)
    assert w.nameless() == [], w.nameless()
    assert w.close() == 0
    farm.verify()


def test_a_corrected_receipt_does_not_count():
    farm = Farm()
    w = opened(farm)
    w.click('push button', 'Receipts')
    w.wait_words('receipts: ')
    count = receipts(farm)
    w.tab_to('table row')
    w.keys('Home', 'End')                              # the oldest, which is signed
    w.press('push button', 'Open…')
    w.wait('text', 'From')
    w.fill('From', 'Somebody else')
    w.press('push button', 'Save as correction')
    until(lambda: receipts(farm) == count + 1)
    w.wait_words(f'{count} receipts: ')                # as many as before: one of two counts
    w.wait_words('1 more was corrected and does not count.')
    assert farm.rows("SELECT count (*) FROM receipt WHERE corrects_id IS NOT NULL") == ['1']
    assert w.close() == 0
    farm.verify()


def test_use_leaves_the_oldest_lot():
    farm = Farm()
    before = on_hand(farm, 'Pine shavings')
    assert before > 0
    w = opened(farm)
    w.press('push button', 'Use in a batch')
    w.wait('text', 'How much')
    w.fill('How much', '100000')
    w.press('push button', 'Record use')
    until(lambda: any('on hand' in (n.name or '') and n.getRoleName() == 'label' for n in w.walk()))
    assert on_hand(farm, 'Pine shavings') == before
    w.kill()


def test_count_needs_a_reason():
    farm = Farm()
    w = opened(farm)
    w.click('push button', 'Lots')
    w.wait_words('Each lot came')
    w.tab_to('table row')
    w.keys('Home', 'Down', 'Up')                       # the first lot
    w.press('push button', "Open the lot's card")
    w.wait('text', 'How much is really there')
    moves = int(farm.rows('SELECT count(*) FROM movement')[0])
    w.fill('How much is really there', '1')
    w.press('push button', 'Record change')
    until(lambda: w.find('text', 'Why').description)
    assert int(farm.rows('SELECT count(*) FROM movement')[0]) == moves
    w.fill('Why', 'counted by two')
    w.press('push button', 'Record change')
    until(lambda: int(farm.rows('SELECT count(*) FROM movement')[0]) == moves + 1)
    assert w.close() == 0
    farm.verify()


def test_where_a_lot_came_from():
    farm = Farm()
    w = opened(farm)
    w.click('push button', 'Lots')
    w.wait_words('Each lot came')
    w.tab_to('table row')
    w.keys('Home', 'Down', 'Up')                       # the first lot
    w.press('push button', "Open the lot's card")
    w.wait('text', 'How much is really there')
    w.press('push button', 'Where it came from and went…')
    w.wait('image', 'Chart of where the lot came from and went')
    w.wait_words('Came from', rows=True)
    assert w.nameless() == [], w.nameless()
    w.press('push button', 'Print…')
    w.wait_words('Page 1 of')
    assert w.close() == 0, w.said()


def describe_washer(w):
    w.press('push button', 'Things that last')
    w.wait_words('What lasts for years')
    w.press('push button', 'New thing')
    w.wait('text', 'What it is')
    w.fill('What it is', 'Egg washer')
    w.fill('Price', '240')


def test_thing_that_lasts():
    farm = Farm()
    w = opened(farm)
    describe_washer(w)
    w.fill('Lasts how many years', '0')
    w.press('push button', 'Save thing')
    w.wait_words('more than zero')
    w.fill('Lasts how many years', '6')
    w.press('push button', 'Save thing')
    until(lambda: 'Egg washer' in farm.rows('SELECT name FROM asset'))
    w.kill()
    w = opened(farm)
    w.press('push button', 'Things that last')
    w.wait_words('Egg washer', rows=True)
    assert w.close() == 0
    farm.verify()


def test_thing_that_is_sold():
    farm = Farm()
    before = farm.ask('statement')['net_cents']
    w = opened(farm)
    describe_washer(w)
    w.fill('Lasts how many years', '6')
    w.fill('Sold for, if it is sold', '90')
    w.press('push button', 'Save thing')
    w.wait_words('Enter the day on which it was sold.')
    w.fill('Last day, if it is sold or broken', w.read('Day it was bought or built'))
    w.press('push button', 'Save thing')
    sold = "SELECT gone_cents FROM asset WHERE name = 'Egg washer' AND gone_on = bought_on"
    until(lambda: farm.rows(sold) == ['9000'])
    assert w.close() == 0
    assert farm.ask('statement')['net_cents'] == before - 24000 + 9000
    farm.verify()


def test_batches_share_a_thing():
    farm = Farm()
    w = opened(farm)
    w.click('push button', 'Things that last')
    w.wait_words('What lasts for years')
    w.tab_to('table row')
    w.keys('Home', 'Down', 'Up')
    w.press('push button', 'Change…')
    w.wait('text', 'What it is')
    thing = w.read('What it is')
    w.click('push button', 'How batches share its cost')
    w.keys('Down', 'Return')                           # by days
    w.wait('check box', 'Brown hens')                  # who bore it so far shares it
    w.keys('Tab', 'Tab', 'space')                      # and the second batch
    w.press('push button', 'Save thing')
    until(lambda: farm.rows(f"SELECT share_by FROM asset WHERE name = '{thing}'") == ['days'])
    assert farm.rows(f"SELECT count (*) FROM asset_share s JOIN asset a ON a.id = s.asset_id WHERE a.name = '{thing}'") == ['2']
    w.wait_words(': By days', rows=True)
    w.press('push button', 'Undo: ')
    until(lambda: farm.rows(f"SELECT share_by FROM asset WHERE name = '{thing}'") == ['parts'])
    assert w.close() == 0
    farm.verify()


def test_thing_that_wears_by_use():
    farm = Farm()
    w = opened(farm)
    w.click('push button', 'Things that last')
    w.wait_words('What lasts for years')
    w.tab_to('table row')
    w.keys('Home', 'Down', 'Up')
    w.press('push button', 'Record use')              # the first thing wears by time
    w.wait_words('wears by time, not by use')
    w.press('push button', 'Change…')
    w.wait('text', 'What it is')
    w.click('push button', 'How it wears down')       # the drop-down: its last choice
    w.keys('End', 'Return')
    w.fill('Lasts for how much use', '100')
    w.fill('Use is counted in', 'hours')
    w.press('push button', 'Save thing')
    until(lambda: farm.rows("SELECT count(*) FROM asset WHERE method = 'units'") == ['1'])
    w.wait_words('What lasts for years')
    w.tab_to('table row')
    w.keys('Home', 'Down', 'Up')
    w.press('push button', 'Record use')
    w.wait('text', 'How much it was used')
    w.fill('How much it was used', '10')
    [n for n in w.walk() if n.getRoleName() == 'push button' and n.name == 'Record use'][-1].queryAction().doAction(0)
    until(lambda: farm.rows('SELECT units FROM asset_use') == ['10.0'])
    w.kill()
    farm.verify()


run_cases(test_thing_that_is_sold, test_receipt_with_a_new_item, test_a_corrected_receipt_does_not_count,
          test_use_leaves_the_oldest_lot, test_count_needs_a_reason, test_where_a_lot_came_from, test_thing_that_lasts,
          test_batches_share_a_thing, test_thing_that_wears_by_use)
