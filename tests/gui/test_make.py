"""Make: a recipe of bought things, what one costs, as many as are wanted; and a batch of it in the kitchen."""
import os
import subprocess

from drive import Skip, Window, run_cases, until, x
from farm import Farm, PROGRAM

FLOUR = 'All-purpose flour'


def empty_farm():
    """A farm without items: the first one made is what each drop-down begins with."""
    farm = Farm(demo=False)
    subprocess.check_call([PROGRAM, '--new', farm.path], stdout=subprocess.DEVNULL)
    return farm


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Make')
    return w


def new_item(w, name):
    w.press_for('New item', 'text', 'Name of the item')
    w.fill('Name of the item', name)
    w.press('push button', 'Save item')
    until(lambda: w.find('text', 'Name of the item') is None)


def buy(w, amount, cost):
    """A receipt of the first item in Keep."""
    w.press('push button', 'Receipts')
    w.press_for('New receipt', 'text', 'From')
    w.fill('From', 'Mill')
    w.fill('Amount', amount)
    w.fill('Cost of the line', cost)
    w.press('push button', 'Save receipt')
    until(lambda: w.find('text', 'From') is None)


def stock_flour(w):
    """10 lb of flour for $8.00 in the store room; then Make."""
    w.place('Keep')
    w.wait('push button', 'Store room')
    new_item(w, FLOUR)
    buy(w, '10 lb', '8.00')
    w.place('Make')


def click(w, role, name):
    """Click on something in the recipe's dialog; what lies below its edge is scrolled there."""
    try:
        while w.middle(role, name)[1] > 480:
            before = w.middle(role, name)
            x('mousemove', '--window', w.id, 300, 300, 'click', 5)
            until(lambda: w.middle(role, name) != before)
    except Skip:
        pass                                       # then nothing is clicked: it is done through the tree
    w.click(role, name)


def choose(w, name, *keys):
    """Choose in a drop-down by its keys: it opens, they move, Return takes."""
    click(w, 'push button', name)
    w.keys(*keys, 'Return')


def told(w, name):
    """What is wrong with a field, said at it."""
    return until(lambda: w.find('text', name).description)


def write_recipe(w):
    """12 flat breads of 4 cups of flour, baked; the first recipe of the farm."""
    w.press_for('Write the first recipe', 'text', 'Name of the recipe')
    w.fill('Name of the recipe', 'Flat bread')
    w.fill('Name of what it makes', 'Flat bread')
    w.fill('How much it makes', '12')
    w.fill('Amount', '4 cups')
    w.wait('text', 'Weight of one cup')                # a usual weight is offered with its source
    w.fill('What is done', 'Bake')


def test_recipe_of_bought_things():
    farm = empty_farm()
    w = opened(farm)
    stock_flour(w)
    w.press_for('Write the first recipe', 'text', 'Name of the recipe')
    w.press('push button', 'Save recipe')              # what is missing is said at its field
    told(w, 'Name of the recipe')
    w.keys('Escape')
    until(lambda: w.find('text', 'Name of the recipe') is None)
    write_recipe(w)
    assert w.read('Weight of one cup').startswith('125'), w.read('Weight of one cup')
    w.wait_words('USDA FoodData Central')
    w.press('push button', 'Save recipe')
    until(lambda: farm.rows('SELECT name FROM recipe') == ['Flat bread'])
    assert farm.rows(f"SELECT round (density_kg_l, 3) FROM item WHERE name = '{FLOUR}'") == ['0.528']
    # 4 cups at 125 g are 0.5 kg of 10 lb (4.536 kg) for $8.00: $0.88 for 12, 7 cents each
    w.wait_words('$0.07')
    w.wait_words('$0.88')
    w.fill('How many to make', '24')
    w.wait_words('8 cups')
    w.wait_words('$1.76')
    assert w.nameless() == [], w.nameless()
    w.press('push button', 'Undo: the recipe')
    until(lambda: farm.rows('SELECT count (*) FROM recipe') == ['0'])
    w.press('push button', 'Redo: the recipe')
    until(lambda: farm.rows('SELECT count (*) FROM recipe') == ['1'])
    assert w.close() == 0
    farm.verify()
    w = opened(farm)
    w.wait_words('$0.07')
    assert w.close() == 0


def test_sealed_food_asks_a_process_authority():
    """At pH 4.6 or below a food with acid added is acidified, above it low-acid: 21 CFR 114.3."""
    farm = empty_farm()
    w = opened(farm)
    w.place('Keep')
    w.wait('push button', 'Store room')
    new_item(w, FLOUR)
    w.place('Make')
    write_recipe(w)
    choose(w, 'Kept until it is sold', 'End')                      # at room temperature
    w.wait('text', 'Measured pH')
    click(w, 'check box', 'In sealed jars or packs')
    click(w, 'check box', 'Acid is added')
    w.fill('Measured pH', '4.2')
    w.press('push button', 'Save recipe')
    told(w, 'Day of that measurement')                 # a pH without its day says little
    w.fill('Day of that measurement', '2026-01-05')
    w.press('push button', 'Save recipe')
    w.wait_words('this is an acidified food')
    w.wait_words('a process authority must approve')
    w.press_for('Change…', 'text', 'Measured pH')
    w.fill('Measured pH', '5.2')
    w.press('push button', 'Save recipe')
    w.wait_words('not for sale sealed at room temperature')
    assert w.close() == 0
    farm.verify()


def save_cooked_recipe(w, farm):
    """The same with the limit of eggs that are held: 158 °F, FDA Food Code 2022, 3-401.11(A)(2) chart."""
    write_recipe(w)
    choose(w, 'A limit of food safety', 'Down')
    w.wait('combo box', 'Food')
    w.press('push button', 'Save recipe')
    until(lambda: farm.rows('SELECT step, food FROM recipe_step') == ['cook|raw_egg'])


def plan_batch(w, farm):
    w.press_for('Plan a batch of it', 'text', 'How many are wanted')
    w.fill('How many are wanted', '0')
    w.press('push button', 'Plan it')                  # nothing is planned of nothing
    told(w, 'How many are wanted')
    w.press('push button', 'As many as what is on hand gives')
    # 10 lb are 4.536 kg; 0.5 kg make 12
    until(lambda: w.read('How many are wanted') == '108')
    w.fill('How many are wanted', '24')
    w.click('check box', 'Robin')
    w.press('push button', 'Plan it')
    until(lambda: farm.rows('SELECT wanted_base FROM kitchen') == ['24.0'])


def take_lots(w, farm):
    w.wait('push button', f'Choose a lot of {FLOUR}')
    w.press('push button', f'Choose a lot of {FLOUR}')
    w.wait('text', 'How much')
    w.fill('How much', '11')                           # more than the lot holds
    w.press('push button', 'Take it')
    assert '10 lb' in told(w, 'How much')
    w.fill('How much', '1')
    w.press('push button', 'Take it')
    until(lambda: farm.rows("SELECT count (*) FROM movement WHERE kind = 'used'") == ['1'])
    w.press('push button', 'Take all as proposed')     # the rest
    # 8 cups at 125 g
    until(lambda: farm.rows("SELECT round (-sum (quantity_base), 3) FROM movement WHERE kind = 'used'") == ['1.0'])
    w.press('push button', 'Give back')
    until(lambda: farm.rows("SELECT count (*) FROM movement WHERE kind = 'used'") == ['1'])
    w.press('push button', 'Undo: giving back')
    until(lambda: farm.rows("SELECT count (*) FROM movement WHERE kind = 'used'") == ['2'])


def change_amount(w, farm):
    """More of an ingredient than the recipe has, in this batch alone; then taken back."""
    before = farm.rows('SELECT amount, need_base FROM kitchen_part')
    w.press_for(f'Change the amount of {FLOUR}', 'text', 'Amount in this batch')
    w.fill('Amount in this batch', '0')
    w.press('push button', 'Save the amount')
    told(w, 'Amount in this batch')
    w.fill('Amount in this batch', '12')
    w.press('push button', 'Save the amount')
    # 12 cups at 125 g; 8 cups are taken, the rest is proposed
    until(lambda: farm.rows('SELECT amount, round (need_base, 3) FROM kitchen_part') == ['12.0|1.5'])
    w.wait('push button', 'Take all as proposed')
    w.press('push button', 'Undo: 12 cups')
    until(lambda: farm.rows('SELECT amount, need_base FROM kitchen_part') == before)


def read_temperatures(w, farm):
    w.press('push button', 'Start step 1')
    w.wait_words('0:0')                                # a clock runs
    w.fill('Reading of step 1', 'warm')
    w.press('push button', 'Record the reading of step 1')
    told(w, 'Reading of step 1')
    w.fill('Reading of step 1', '130')
    w.fill('At', '25:00')                              # no such time
    w.press('push button', 'Record the reading of step 1')
    told(w, 'At')
    w.fill('At', '')
    w.press('push button', 'Record the reading of step 1')
    w.wait_words('not met: 15 °F off')                 # of 145 °F, the least that the chart has
    w.wait_words('do not sell it before your advisor has decided')
    w.fill('Reading of step 1', '70 C')                # in another unit: 158 °F
    w.press('push button', 'Record the reading of step 1')
    w.wait_words('158 °F: met')
    until(lambda: not any('do not sell it' in n.name for n in w.walk()))
    w.fill('Reading of step 1', '160')
    w.click('check box', 'Corrects the last reading of step 1')
    w.press('push button', 'Record the reading of step 1')
    w.wait_words('158 °F (wrong, corrected)')
    # Nothing is rewritten: the last one names the one that it corrects.
    assert farm.rows('SELECT round (value, 1), corrects_id FROM reading') == ['54.4|', '70.0|', '71.1|2']
    w.press('push button', 'Step 1 is done')
    w.wait_words('Done at')
    assert farm.rows('SELECT count (*) FROM kitchen_step WHERE done_at IS NOT NULL') == ['1']


def record_minutes(w, farm):
    assert farm.rows('SELECT minutes FROM batch_person') == ['0.0']
    w.press('push button', 'Record minutes')
    told(w, 'Minutes of work')
    w.fill('Minutes of work', '45')
    w.press('push button', 'Record minutes')
    until(lambda: farm.rows('SELECT minutes FROM batch_person') == ['45.0'])
    w.wait_words('45 minutes of work.')


def finish(w, farm):
    w.press('push button', 'Finish the batch')
    w.wait('text', 'Good, into the store room')
    w.press('push button', 'Save what came out')
    told(w, 'Good, into the store room')
    w.fill('Good, into the store room', '22')
    w.fill('Spoiled or spilled', '1')
    w.wait('text', 'Why it was lost')
    w.press('push button', 'Save what came out')
    told(w, 'Why it was lost')
    w.fill('Why it was lost', 'burnt')
    w.fill('Tasted, or kept as a sample', '1')
    w.press('push button', 'Save what came out')
    until(lambda: w.find('text', 'Good, into the store room') is None)
    # What was used is what the lot carries, to the cent: 1 kg of 4.536 kg for $8.00.
    assert farm.rows("SELECT quantity_base, cost_cents FROM movement WHERE kind = 'made'") == ['22.0|176']
    w.wait_words('one “Flat bread” costs $0.08')


def check_paper(farm):
    path = os.path.join(farm.folder.name, 'run.pdf')
    subprocess.check_call([PROGRAM, '--document', 'run-sheet', '--out', path, farm.path], stdout=subprocess.DEVNULL)
    text = subprocess.check_output(['pdftotext', '-layout', path, '-'], text=True)
    for words in ('8 cups', '3-401.11', '130 °F', '160 °F', 'Robin', 'burnt'):
        assert words in text, (words, text)


def test_batch_in_the_kitchen():
    farm = empty_farm()
    farm.rows("INSERT INTO person (name, role) VALUES ('Robin', 'student')")
    w = opened(farm)
    stock_flour(w)
    save_cooked_recipe(w, farm)
    plan_batch(w, farm)
    w.wait('push button', 'Make, in the kitchen')      # the live figure
    take_lots(w, farm)
    change_amount(w, farm)
    read_temperatures(w, farm)
    record_minutes(w, farm)
    finish(w, farm)
    w.wait('push button', 'Make, no day planned')
    assert w.nameless() == [], w.nameless()
    w.press('push button', 'Print labels…')
    w.wait('push button', 'Show the sheet')
    w.keys('Escape')
    w.press('push button', 'Open lot')
    w.wait_words('Flat bread')                         # in Keep
    assert w.close() == 0
    farm.verify()
    check_paper(farm)
    w = opened(farm)
    w.press('push button', 'Kitchen batches')
    w.wait_words('160 °F: met')                        # all is there again
    w.press('push button', 'Open it again')
    until(lambda: farm.rows("SELECT count (*) FROM movement WHERE kind = 'made'") == ['0'])
    w.wait('push button', 'Finish the batch')
    assert w.close() == 0
    farm.verify()


run_cases(test_recipe_of_bought_things, test_sealed_food_asks_a_process_authority, test_batch_in_the_kitchen)
