"""Make: a recipe of bought things, what one costs, and as many as are wanted."""
import subprocess

from drive import Window, run_cases, until
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
    w.go(3, 'Make')
    return w


def new_item(w, name):
    w.press('push button', 'New item')
    w.wait('text', 'Name of the item')
    w.fill('Name of the item', name)
    w.press('push button', 'Save item')
    until(lambda: w.find('text', 'Name of the item') is None)


def buy(w, amount, cost):
    """A receipt of the first item in Keep."""
    w.press('push button', 'Receipts')
    w.press('push button', 'New receipt')
    w.wait('text', 'From')
    w.fill('From', 'Mill')
    w.fill('Amount', amount)
    w.fill('Cost of the line', cost)
    w.press('push button', 'Save receipt')
    until(lambda: w.find('text', 'From') is None)


def test_recipe_of_bought_things():
    farm = empty_farm()
    w = opened(farm)
    w.keys('alt+5')
    w.wait('push button', 'Store room')
    new_item(w, FLOUR)
    buy(w, '10 lb', '8.00')
    w.go(3, 'Make')
    w.press('push button', 'Write the first recipe')
    w.wait('text', 'Name of the recipe')
    w.press('push button', 'Save recipe')              # what is missing is said at its field
    until(lambda: w.find('text', 'Name of the recipe').description)
    w.fill('Name of the recipe', 'Flat bread')
    w.fill('Name of what it makes', 'Flat bread')
    w.fill('How much it makes', '12')
    w.fill('Amount', '4 cups')
    w.wait('text', 'Weight of one cup')                # a usual weight is offered with its source
    assert w.read('Weight of one cup').startswith('125'), w.read('Weight of one cup')
    w.wait_words('USDA FoodData Central')
    w.fill('What is done', 'Bake')
    w.press('push button', 'Save recipe')
    until(lambda: farm.rows('SELECT name FROM recipe') == ['Flat bread'])
    assert farm.rows(f"SELECT round (density_kg_l, 3) FROM item WHERE name = '{FLOUR}'") == ['0.528']
    # 4 cups at 125 g are 0.5 kg of 10 lb (4.536 kg) for $8.00: $0.88 for 12, 7 cents each
    w.wait_words('$0.07')
    w.wait_words('$0.88')
    w.fill('How many to make', '24')
    w.wait_words('8 cup')
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


run_cases(test_recipe_of_bought_things)
