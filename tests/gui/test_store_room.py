"""The store room: two count it, waste and gifts leave a lot, a lot goes to another place; the places."""
from drive import Window, run_cases, until
from farm import Farm, PROGRAM


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Keep')
    w.wait('push button', 'Store room')
    return w


def choose(w, name, *keys):
    """Choose in a drop-down by its keys: it opens, they move, Return takes."""
    w.click('push button', name)
    w.keys(*keys, 'Return')


def held(farm, code):
    return float(farm.rows(f"SELECT round (base, 4) FROM lot_stock s JOIN lot l ON l.id = s.lot_id WHERE l.code = '{code}'")[0])


def lot_of(farm, item):
    return farm.rows(f"""SELECT l.code FROM lot l JOIN item i ON i.id = l.item_id JOIN lot_stock s ON s.lot_id = l.id
                         WHERE i.name = '{item}' AND s.base > 5 ORDER BY l.day LIMIT 1""")[0]


def counts(farm):
    return int(farm.rows('SELECT count (*) FROM stock_count')[0])


def test_two_count_the_store_room():
    farm = Farm()
    code = lot_of(farm, 'Half carton')
    before, known = counts(farm), held(farm, code)
    w = opened(farm)
    w.press('push button', 'Count the store room…')
    w.wait('text', f'Counted of {code}')
    w.fill(f'Counted of {code}', f'{known:g}')
    w.wait_words('as on record')
    w.press('push button', 'Save count')
    w.wait_words('Choose who counted.')
    choose(w, 'Who counted', 'Down')
    choose(w, 'Who counted again', 'Down')                                # the same person
    w.press('push button', 'Save count')
    until(lambda: not any(n.name == 'Choose who counted.' for n in w.walk()))
    w.wait_words('two people count the store room together')
    assert counts(farm) == before
    choose(w, 'Who counted again', 'Down', 'Down')
    w.fill(f'Counted of {code}', 'many')
    w.press('push button', 'Save count')
    until(lambda: w.find('text', f'Counted of {code}').description)     # named at the field
    w.fill(f'Counted of {code}', f'{known - 3:g}')
    w.wait_words('missing')
    w.press('push button', 'Save count')
    until(lambda: w.find('text', f'Why {code} differs').description)
    assert counts(farm) == before
    w.fill(f'Why {code} differs', 'fell behind the shelf')
    assert w.nameless() == [], w.nameless()
    w.press('push button', 'Save count')
    until(lambda: counts(farm) == before + 1)
    assert held(farm, code) == known - 3
    # Only what was typed is counted.
    assert farm.rows('SELECT count (*) FROM stock_count_line WHERE count_id = (SELECT max (id) FROM stock_count)') == ['1']
    w.press('push button', 'Past counts…')
    w.wait_words('1 lot, of which 1 differed')
    w.wait_words('fell behind the shelf', rows=True)
    w.keys('Escape')
    w.kill()
    w = opened(farm)
    w.press('push button', 'Undo: count of the store room')
    until(lambda: counts(farm) == before)
    assert held(farm, code) == known
    assert w.close() == 0
    farm.verify()


def test_a_lot_leaves_in_parts():
    farm = Farm()
    farm.rows("INSERT INTO item (name, kind, unit) VALUES ('AAA grit', 'supply', 'lb')")
    w = opened(farm)
    w.click('push button', 'Receipts')
    w.press('push button', 'New receipt')
    w.wait('text', 'From')
    w.fill('From', 'Lakeside Feed & Seed')
    w.fill('Amount', '10')
    w.fill('Cost of the line', '5.00')
    w.press('push button', 'Save receipt')
    until(lambda: farm.rows("SELECT count (*) FROM lot l JOIN item i ON i.id = l.item_id WHERE i.name = 'AAA grit'") == ['1'])
    code = farm.rows("SELECT l.code FROM lot l JOIN item i ON i.id = l.item_id WHERE i.name = 'AAA grit'")[0]
    whole = held(farm, code)
    w.click('push button', 'Lots')
    w.wait_words('lots, $')                            # where they lie, with their cost
    w.tab_to('table row')
    w.keys('Home')                                     # the first lot
    w.press('push button', 'Waste…')
    w.wait('text', 'How much')
    w.fill('How much', '11')
    w.press('push button', 'Record waste')
    until(lambda: 'is left of this lot' in w.find('text', 'How much').description)
    w.fill('How much', '2')
    w.press('push button', 'Record waste')
    until(lambda: farm.rows("SELECT reason FROM movement WHERE kind = 'lost' ORDER BY id DESC LIMIT 1")
          == ['Past its best-by day'])
    w.press('push button', 'Give away…')
    w.wait('text', 'How much')
    w.fill('How much', '3')
    choose(w, 'Why', 'End')
    w.press('push button', 'Record gift')
    until(lambda: w.find('text', 'Why, in your own words').description)
    w.fill('Why, in your own words', 'the fourth grade has hens too')
    w.press('push button', 'Record gift')
    until(lambda: farm.rows("SELECT reason FROM movement WHERE kind = 'given' ORDER BY id DESC LIMIT 1")
          == ['the fourth grade has hens too'])
    assert abs(held(farm, code) - whole / 2) < 1e-4
    w.press('push button', 'Put in a place…')
    w.wait('push button', 'Put it there')
    w.press('push button', 'Put it there')
    w.wait_words('It lies there now.')
    choose(w, 'Where it lies from now on', 'Home')
    w.press('push button', 'Put it there')
    until(lambda: farm.rows(f"SELECT place_id IS NOT NULL FROM lot WHERE code = '{code}'") == ['1'])
    w.press('push button', 'Undo: ')
    until(lambda: farm.rows(f"SELECT place_id IS NOT NULL FROM lot WHERE code = '{code}'") == ['0'])
    w.press('push button', 'Undo: gift')
    until(lambda: abs(held(farm, code) - whole * 0.8) < 1e-4)
    assert w.close() == 0
    farm.verify()


def put_in_a_new_place(w, farm):
    w.click('push button', 'Lots')
    w.wait_words('lots, $')
    w.tab_to('table row')
    w.keys('Home')
    w.press('push button', 'Put in a place…')
    w.wait('push button', 'Put it there')
    w.press('push button', 'New place…')
    w.fill('Name of the place', 'Market cooler')
    w.press('push button', 'Save place')
    until(lambda: farm.rows("SELECT kind FROM place WHERE name = 'Market cooler'") == ['store'])
    w.press('push button', 'Put it there')              # what is new is chosen
    until(lambda: farm.rows("SELECT count (*) FROM lot l JOIN place p ON p.id = l.place_id"
                            " WHERE p.name = 'Market cooler'") == ['1'])


def take_the_place_away(w, farm):
    w.click('push button', 'Places')
    w.wait_words('The farm has')
    w.tab_to('table row')
    w.keys('Home')
    until(lambda: 'Market cooler' in w.focused().name or w.keys('Down'))
    w.press('push button', 'Change…')
    w.press('push button', 'Delete place')
    w.wait_words('belongs to this place, so it is kept')
    w.fill('Name of the place', 'Market cooler')
    w.press('push button', 'Save place')
    until(lambda: w.find('push button', 'Save place') is None)


def test_places_of_the_farm():
    """A cooler is made where it is needed, takes a lot, cannot go while one lies there, and is watched in Check."""
    farm = Farm()
    farm.rows('UPDATE lot SET place_id = NULL')
    w = opened(farm)
    w.click('push button', 'Places')
    w.wait_words('The farm has')
    w.press('push button', 'New place…')
    w.press('push button', 'Save place')
    until(lambda: w.find('text', 'Name of the place').description)      # it has no name yet
    w.fill('Name of the place', 'Walk-in cooler')
    w.fill('Floor', '-4')
    w.press('push button', 'Save place')
    until(lambda: w.find('text', 'Floor').description)
    w.fill('Floor', '40')
    choose(w, 'What it is', 'Home', 'Down')
    w.press('push button', 'Save place')
    until(lambda: farm.rows("SELECT kind, round (area_m2, 2) FROM place WHERE name = 'Walk-in cooler'") == ['store|3.72'])
    w.press('push button', 'Undo: ')
    until(lambda: farm.rows("SELECT count (*) FROM place WHERE name = 'Walk-in cooler'") == ['0'])
    put_in_a_new_place(w, farm)
    take_the_place_away(w, farm)
    w.place('Check')
    w.press('push button', 'Coolers')
    w.fill('Air of Market cooler', '38')
    w.press('push button', 'Record the reading of Market cooler')
    until(lambda: farm.rows("SELECT round (value, 1) FROM reading r JOIN place p ON p.id = r.place_id"
                            " WHERE p.name = 'Market cooler'") == ['3.3'])
    assert w.close() == 0
    farm.verify()


run_cases(test_two_count_the_store_room, test_a_lot_leaves_in_parts, test_places_of_the_farm)
