"""Raise: a day is recorded, refused, taken back; a flock is made; a log is imported."""
import datetime

from drive import Window, run_cases, until
from farm import Farm, PROGRAM


def days_ago(n):
    return (datetime.date.today() - datetime.timedelta(days=n)).isoformat()


def count(farm):
    return int(farm.rows('SELECT count(*) FROM batch_entry')[0])


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Raise')
    w.wait('push button', 'Record the day')
    return w


def test_day_is_recorded_and_undone():
    farm = Farm()
    before = count(farm)
    w = opened(farm)
    w.fill('Eggs collected', '22')
    w.fill('Of them cracked', '1')
    w.fill('Feed given', '6.8')
    w.press('push button', 'Record the day')
    w.wait_words('22 eggs')
    until(lambda: count(farm) == before + 1)
    entry = farm.rows('SELECT eggs, cracked, round (feed_kg, 4) FROM batch_entry ORDER BY id DESC LIMIT 1')
    assert entry == ['22|1|3.0844'], entry            # 6.8 lb of 0.45359237 kg
    assert w.read('Eggs collected') == ''
    w.keys('ctrl+z')
    until(lambda: count(farm) == before)
    w.keys('ctrl+shift+z')
    until(lambda: count(farm) == before + 1)
    assert w.nameless() == [], w.nameless()
    assert w.close() == 0
    farm.verify()


def test_what_cannot_be_is_told_at_its_field():
    farm = Farm()
    before = count(farm)
    w = opened(farm)
    w.fill('Eggs collected', '700')
    w.press('push button', 'Record the day')
    w.wait_words('more than they can lay')
    assert w.read('Eggs collected') == '700'          # what was typed stays
    w.fill('Eggs collected', '5')
    w.fill('Of them cracked', '6')
    w.press('push button', 'Record the day')
    until(lambda: 'crack' in (w.find('text', 'Of them cracked').description or ''))
    w.fill('Of them cracked', '')
    w.fill('Day', '2099-01-01')
    w.press('push button', 'Record the day')
    until(lambda: w.find('text', 'Day').description)
    assert count(farm) == before
    w.kill()


def test_entry_is_changed_in_the_table():
    farm = Farm()
    w = opened(farm)
    w.click('push button', 'Log')
    w.wait('heading', 'What was written down')
    newest = farm.rows('SELECT id, eggs FROM batch_entry ORDER BY day DESC, id DESC LIMIT 1')[0].split('|')
    w.tab_to('table row')
    w.keys('Home', 'Down', 'Up', 'Right', 'F2')
    w.keys('ctrl+a')
    w.type('8')
    w.keys('Return')
    until(lambda: farm.rows(f'SELECT eggs FROM batch_entry WHERE id = {newest[0]}') == ['8'])
    w.keys('ctrl+z')
    until(lambda: farm.rows(f'SELECT eggs FROM batch_entry WHERE id = {newest[0]}') == [newest[1]])
    w.kill()


def test_flock_is_made_and_survives_a_kill():
    farm = Farm()
    w = opened(farm)
    w.press('push button', 'New batch')
    # The choice can be pressed once it has come up, and is gone after that.
    until(lambda: w.find('text', 'Name of the flock') or w.press_if('push button', 'New flock'))
    w.press('push button', 'Save flock')              # nothing entered yet
    until(lambda: w.find('text', 'Name of the flock').description)
    w.fill('Name of the flock', 'Ducks')
    w.fill('Birds that moved in', '12')
    w.fill('Cost of all birds', '84.00')
    w.fill('Where they live', 'Pond house')
    w.fill('Worth of all birds', '90')
    w.press('push button', 'Save flock')
    w.wait_words('cannot be worth more')
    w.fill('Worth of all birds', '12')
    w.press('push button', 'Save flock')
    until(lambda: 'Ducks|Pond house' in farm.rows('SELECT batch.name, place.name FROM batch JOIN place ON place.id = place_id'))
    w.kill()
    w = opened(farm)
    w.wait('push button', 'Ducks')
    assert w.close() == 0
    farm.verify()


def test_log_is_imported_after_a_look():
    farm = Farm()
    before = count(farm)
    path = farm.write('sheet.csv', 'Date,Eggs,Cracked,Feed (lb),Deaths,Notes\n'
                      f'{days_ago(0)},20,1,6.5,0,windy\n'
                      f'{days_ago(0)},400,0,6.5,0,too many\n'
                      '\n'
                      '2099-05-05,20,0,6.5,0,not yet\n')
    w = opened(farm)
    w.press('push button', 'Log')
    w.wait('heading', 'What was written down')
    w.press('push button', 'Import a log')
    w.choose_file("Import a flock's log", path)
    w.wait('push button', 'Take 1 row')
    w.wait_words('more than they can lay', rows=True)
    assert count(farm) == before                      # nothing is taken while one looks
    w.press('push button', 'Take 1 row')
    until(lambda: count(farm) == before + 1)
    w.wait_words('Imported: 1 row')
    w.keys('ctrl+z')
    until(lambda: count(farm) == before)
    assert w.close() == 0
    farm.verify()


def test_why_a_hen_died_is_asked_and_kept():
    farm = Farm()
    w = opened(farm)
    assert w.find('combo box', 'What they died of') is None   # asked only of who lost one
    w.fill('Hens found dead', '1')
    w.wait('combo box', 'What they died of')
    w.click('text', 'Hens found dead')
    w.keys('Tab', 'space', 'Down', 'Return')          # the first choice is that it is not known
    w.press('push button', 'Record the day')
    until(lambda: farm.rows('SELECT deaths, reason FROM batch_entry ORDER BY id DESC LIMIT 1') == ['1|predator'])
    assert w.close() == 0
    farm.verify()


def test_eggs_are_graded_and_broken_out():
    farm = Farm()
    w = opened(farm)
    w.wait_words('a week until')                      # the forecast, as a sentence
    w.click('push button', 'Grading')
    w.press('push button', 'Grade eggs')
    w.wait('text', 'Jumbo')
    w.press('push button', 'Save sheet')
    w.wait_words('how many eggs were graded')         # nothing entered yet
    w.fill('Large', '20')
    w.fill('Medium', '4')
    w.fill('Cracked shells', '2')
    w.press('push button', 'Save sheet')
    last = 'FROM egg_grading ORDER BY id DESC LIMIT 1'
    until(lambda: farm.rows('SELECT large, medium, checked ' + last) == ['20|4|2'])
    w.wait_words('were large or heavier')
    w.press('push button', 'Break out an egg')
    w.wait('text', 'Weight of the whole egg')
    w.fill('Weight of the whole egg', '60')
    w.fill('Height of the thick white', '6.5')
    w.wait_words('grade AA')                          # at the fields, before anything is saved
    w.press('push button', 'Save egg')
    last = 'SELECT egg_g, albumen_mm FROM egg_sample ORDER BY id DESC LIMIT 1'
    until(lambda: farm.rows(last) == ['60.0|6.5'])
    w.press('push button', 'Undo')
    until(lambda: farm.rows(last) != ['60.0|6.5'])
    assert w.nameless() == [], w.nameless()
    assert w.close() == 0
    farm.verify()


def test_house_is_held_against_what_hens_need():
    farm = Farm()
    w = opened(farm)
    w.press('push button', 'Change this flock')
    w.wait('text', 'Name of the flock')
    w.fill('Nests', '2')
    w.press('push button', 'Save flock')
    w.wait_words('Add nests')
    assert farm.rows("SELECT nests FROM flock JOIN batch ON batch.id = batch_id WHERE name = 'Brown hens'") == ['2']
    assert w.close() == 0
    farm.verify()


run_cases(test_why_a_hen_died_is_asked_and_kept, test_eggs_are_graded_and_broken_out,
          test_house_is_held_against_what_hens_need, test_day_is_recorded_and_undone, test_what_cannot_be_is_told_at_its_field,
          test_entry_is_changed_in_the_table, test_flock_is_made_and_survives_a_kill,
          test_log_is_imported_after_a_look)
