"""The “Why?” of each dialog that works a figure out while one types.

What is unfolded works out the very figure that the dialog shows, and goes with what is typed.  What a figure
must be is read off the dialog, or out of the file: it does not hang on the day.
"""
import math
import re

import pyatspi

import stall
from drive import Window, run_cases, until
from farm import Farm, PROGRAM

FOLD = 'Why? The figures worked out'
MONEY = r'−?\$[\d,]+\.\d\d'
FISH = 'Catfish, tank A'


def opened(place, farm=None):
    farm = farm or Farm()
    w = Window(PROGRAM, farm.path)
    w.farm = farm                                  # its folder goes with it
    w.fit()
    w.place(place)
    return w


def tops(w):
    return [top for top in map(w.app.getChildAtIndex, range(w.app.childCount)) if top is not None]


def below(w, role, name, top=None):
    """The control of the last window whose name begins so."""
    return next((n for n in w.walk(top or tops(w)[-1]) if n.getRoleName() == role and n.name.startswith(name)
                 and n.getState().contains(pyatspi.STATE_SENSITIVE)), None)


def go(w, name, arrived):
    """To a view that is made when it is come to first; of several buttons of this name the last is the one."""
    def arrive():
        [n for n in w.walk() if n.getRoleName() == 'push button' and n.name == name][-1].queryAction().doAction(0)
        return below(w, 'push button', arrived)
    until(arrive, 60)


def press(w, name):
    until(lambda: below(w, 'push button', name)).queryAction().doAction(0)


def ask(w, button, field):
    """The button opens a dialog, which has this field."""
    before = len(w.windows())
    press(w, button)
    until(lambda: len(w.windows()) > before and below(w, 'text', field), 60)


def put(w, field, text):
    until(lambda: below(w, 'text', field)).queryEditableText().setTextContents(text)


def leave(w):
    """What was typed is not wanted."""
    before = len(w.windows())
    press(w, 'Cancel')
    until(lambda: len(w.windows()) < before)
    w.focus()


# --- what is unfolded ------------------------------------------------------------------

def is_open(node):
    return node.getState().contains(pyatspi.STATE_EXPANDED)


def unfold(w, name):
    """Press what folds it, if it is folded; return its node, unfolded."""
    def row():
        return next((n for n in w.walk(tops(w)[-1]) if n.getRoleName() == 'push button' and n.name == name), None)

    until(row)
    if not is_open(row()):
        row().queryAction().doAction(0)
    return until(lambda: row() if is_open(row()) else None)


def why(w, title):
    """What the dialog works out under that title: formula, worked, source."""
    def texts():
        names = [n.name for n in w.walk(unfold(w, title)) if n.getRoleName() == 'label' and n.name != title]
        return names if len(names) == 3 else None

    unfold(w, FOLD)
    formula, worked, source = until(texts)
    assert source.startswith('Source: ') and formula and worked, (title, formula, worked, source)
    return worked


def result(w, title, line=0):
    """What stands after the last equals sign of one of its lines."""
    return why(w, title).split('\n')[line].rsplit(' = ', 1)[1]


def shown(w, pattern):
    """The parts of what the dialog says outside of its “Why?”."""
    def found():
        fold = next((n for n in w.walk(tops(w)[-1]) if n.name == FOLD), None)
        within = [n.name for n in w.walk(fold)] if fold is not None else []
        said = [n.name for n in w.walk(tops(w)[-1]) if n.name not in within]
        return next((m for m in (re.search(pattern, text) for text in said) if m), None)
    try:
        return until(found).groups()
    except AssertionError:
        raise AssertionError(f'nothing says {pattern!r}; there are {[n.name for n in w.walk(tops(w)[-1]) if n.name]}') from None


def cents(text):
    return round(float(text.replace('−', '-').replace('$', '').replace(',', '')) * 100)


def numbers(text):
    return [float(n.replace('−', '-').replace(',', '')) for n in re.findall(r'−?\d[\d,]*(?:\.\d+)?', text)]


# --- money -------------------------------------------------------------------------------

def counted(w, money):
    """The sentence over a count beside what is worked out of it."""
    said, = shown(w, f'({re.escape(money)})')
    until(lambda: result(w, 'What was counted') == said)
    return cents(result(w, 'Over or short'))


def test_till():
    w = opened('Keep')
    press(w, 'Cash book')
    ask(w, 'Count the till…', '$20.00 ×')
    seen = []
    for pieces in ('5', '900'):
        put(w, '$20.00 ×', pieces)
        total = f'{int(pieces) * 20:,}.00'
        over = counted(w, '$' + total)
        said, book, off, way = shown(w, rf'Counted (\${total}); the book says ({MONEY}): ({MONEY}) (over|short)')
        assert result(w, 'What the book says') == book, (book, why(w, 'What the book says'))
        assert over == cents(said) - cents(book) == cents(off) * (1 if way == 'over' else -1), (said, book, off, over)
        seen.append(over)
    assert seen[1] - seen[0] == 895 * 2000, seen
    put(w, 'Stays in the box for change', '40')
    until(lambda: result(w, 'What can be taken to an account') == '$17,960.00')
    leave(w)
    assert w.close() == 0, w.said()


def test_cash_up():
    farm = Farm()
    w = stall.opened(farm)
    stall.plan(w, farm)
    press(w, 'Cash up')
    seen = []
    for pieces in ('3', '7'):
        w.wait('text', '$20.00 ×')
        put(w, '$20.00 ×', pieces)
        until(lambda: result(w, 'What was counted') == f'${int(pieces) * 20}.00')
        off, way = shown(w, rf'({MONEY}) (over|short)')
        seen.append(cents(result(w, 'Over or short')))
        assert seen[-1] == cents(off) * (1 if way == 'over' else -1), (off, way, seen)
    assert seen[1] - seen[0] == 4 * 2000, seen
    # The float of the plan, 4 × 5 + 20, and nothing sold yet.
    assert result(w, 'What must be in the box') == '$40.00'
    assert w.close() == 0, w.said()


def test_statement():
    farm = Farm()
    w = opened('Keep', farm)
    press(w, 'Cash book')
    press(w, 'More')
    press(w, 'Compare with a statement…')
    until(lambda: below(w, 'text', 'Statement through'))
    day = farm.rows("SELECT date('now', '-1 day')")[0]
    seen = []
    for closing in ('500.00', '500.75'):
        put(w, 'Statement through', day)
        put(w, 'It says there is', closing)
        press(w, 'Keep it')
        bank, book, off = shown(w, rf'the statement comes to ({MONEY}) and the book to ({MONEY}): ({MONEY}) apart')
        until(lambda: why(w, 'What the statement comes to').startswith('$' + closing))
        bank, book, off = shown(w, rf'the statement comes to ({MONEY}) and the book to ({MONEY}): ({MONEY}) apart')
        assert result(w, 'What the statement comes to') == bank
        assert result(w, 'What the book comes to') == book
        seen.append(cents(result(w, 'How far they are apart')))
        assert abs(seen[-1]) == cents(off) and seen[-1] == cents(bank) - cents(book), (bank, book, off, seen)
    assert seen[1] - seen[0] == 75, seen
    w.kill()


# --- animals -----------------------------------------------------------------------------

def test_egg():
    w = opened('Raise')
    press(w, 'Brown hens')
    press(w, 'Grading')
    ask(w, 'Break out an egg…', 'Weight of the whole egg')
    seen = []
    for height in ('6.5', '5'):
        put(w, 'Weight of the whole egg', '60')
        put(w, 'Height of the thick white', height)
        until(lambda: float(height) in numbers(why(w, 'Haugh units')))
        units, = shown(w, r'([\d.]+) Haugh units: grade')
        assert numbers(why(w, 'Haugh units'))[-1] == float(units), (units, why(w, 'Haugh units'))
        seen.append(float(units))
    assert seen[0] > seen[1], seen
    leave(w)
    assert w.close() == 0, w.said()


def test_fish():
    w = opened('Raise')
    press(w, FISH)
    ask(w, 'Weigh fish…', 'Day')
    press(w, 'All together')
    seen = []
    for fish in ('20', '10'):
        until(lambda: below(w, 'text', 'Number of fish'))
        put(w, 'Number of fish', fish)
        put(w, 'Total weight', '12 kg')
        put(w, 'Mean length', '30 cm')
        mean, = shown(w, rf'{fish} fish, (.*) each in the mean')
        until(lambda: result(w, 'Mean weight of a fish') == mean)
        factor, = shown(w, r'Condition factor: ([\d.]+)\.')
        assert result(w, 'Condition factor') == factor, (factor, why(w, 'Condition factor'))
        seen.append(float(factor))
    assert abs(seen[1] / seen[0] - 2) < .02, seen            # half as many weigh the same
    leave(w)
    assert w.close() == 0, w.said()


def test_harvest_and_end():
    farm = Farm()
    w = opened('Raise', farm)
    press(w, FISH)
    go(w, 'Plan and review', 'Harvest…')
    ask(w, 'Harvest…', 'Good')
    seen = []
    for good in ('2', '4'):
        put(w, 'Good', f'{good} lb')
        amount, cost, each = shown(w, rf'gets ([\d.]+ lb) and carries ({MONEY}) of the cost: ({MONEY}) for 1 lb')
        until(lambda: result(w, 'What the lot carries') == cost)
        assert amount == f'{good} lb' and f'× {amount} = ' in why(w, 'What the lot carries')
        assert why(w, 'Cost of one') == f'{cost} ÷ {amount} = {each} for 1 lb', why(w, 'Cost of one')
        seen.append(cents(cost))
    assert abs(seen[1] - 2 * seen[0]) <= 1, seen             # each is rounded to the cent
    spent = result(w, 'Cost in, so far')
    leave(w)

    ask(w, 'End this batch…', 'Last day')
    fish, = shown(w, r'By the log ([\d,]+) fish still swim')
    group = f"(SELECT id FROM batch WHERE name = '{FISH}')"
    alive, = farm.rows(f"""SELECT f.stocked - coalesce ((SELECT sum (deaths + culled) FROM batch_entry WHERE batch_id = f.batch_id), 0)
                             - coalesce ((SELECT sum (pieces) FROM harvest WHERE batch_id = f.batch_id), 0)
                             + coalesce ((SELECT sum (n) FROM fish_move WHERE to_id = f.batch_id), 0)
                             - coalesce ((SELECT sum (n) FROM fish_move WHERE from_id = f.batch_id), 0)
                           FROM fish f WHERE f.batch_id = {group}""")
    assert result(w, 'Fish alive') == f'{fish} fish' and int(fish.replace(',', '')) == int(alive), (fish, alive)
    if below(w, 'push button', 'Cost in no lot'):            # only once some of it is in a lot
        left, = shown(w, rf'({MONEY}) of its cost is in no lot')
        assert result(w, 'Cost in no lot') == left and why(w, 'Cost in no lot').startswith(spent)
    leave(w)
    assert w.close() == 0, w.said()


# --- the store room ----------------------------------------------------------------------

def held(farm, lot):
    return float(farm.rows(f"SELECT sum (quantity_base) FROM movement WHERE lot_id = (SELECT id FROM lot WHERE code = '{lot}')")[0])


def test_count_of_the_store_room():
    farm = Farm()
    lot = farm.rows("""SELECT l.code FROM lot l JOIN item i ON i.id = l.item_id JOIN movement m ON m.lot_id = l.id
                       WHERE i.name = 'Half carton' GROUP BY l.id HAVING sum (m.quantity_base) > 3 ORDER BY l.id LIMIT 1""")[0]
    there = held(farm, lot)
    w = opened('Keep', farm)
    ask(w, 'Count the store room…', f'Counted of {lot}')
    assert why(w, 'What should be there') == 'Count first, then compare.'
    for short in (1, 3):
        put(w, f'Counted of {lot}', f'{there - short:g}')
        missing, = shown(w, r'on record: (\S+) missing')
        until(lambda: why(w, 'Missing or more').endswith(f' = −{missing}'))
        assert missing == str(short), missing
        assert why(w, 'Missing or more') == f'{lot}: {there - short:,.0f} − {there:,.0f} = −{short}'
        assert result(w, 'What should be there') == f'{there:,.0f}'
    leave(w)
    assert w.close() == 0, w.said()


def test_use():
    farm = Farm()
    w = opened('Keep', farm)
    ask(w, 'Use in a batch…', 'How much')
    seen = {}
    for step in ('Home', 'Down', 'Down'):
        combo = until(lambda: below(w, 'combo box', 'What is used'))
        for _ in range(20):
            if w.has_keys(combo, 'push button') or w.has_keys(combo, 'combo box'):
                break
            w.keys('shift+Tab')
        w.keys('space')
        w.wait_list(combo)
        w.keys(step, 'Return')
        item = until(lambda: next((n.name for n in w.walk(combo) if n.getRoleName() == 'label' and n.name), None))
        amount, = shown(w, r'On hand: (.*)\. The oldest lot is used first')
        if numbers(amount) == [0]:
            continue
        until(lambda: result(w, 'On hand') == amount)
        seen[item] = amount
    assert seen and len(set(seen.values())) == len(seen), seen
    leave(w)
    assert w.close() == 0, w.said()


def choose_row(w, words):
    """Go to the first row of the table that has the keys and bears one of these words."""
    def found():
        rows = [n for n in w.walk(rows=True) if n.getRoleName() == 'table row']
        return next((i for i, row in enumerate(rows) if any(n.name in words for n in w.walk(row, rows=True))), None)

    w.tab_to('table row')
    w.keys('Home')
    w.keys(*['Down'] * until(lambda: [found()] if found() is not None else None)[0])


def test_labels():
    farm = Farm()
    lots = farm.rows("""SELECT l.code FROM lot l JOIN item i ON i.id = l.item_id JOIN movement m ON m.lot_id = l.id
                        WHERE i.kind = 'produce' GROUP BY l.id HAVING sum (m.quantity_base) > 1e-6""")
    w = opened('Keep', farm)
    press(w, 'Lots')
    w.wait_words('Each lot came')
    choose_row(w, lots)
    press(w, 'Open the lot')
    until(lambda: below(w, 'push button', 'Labels…'))
    ask(w, 'Labels…', 'How many labels')
    title = 'Labels and pages'
    for used, n in ((0, 5), (3, 400)):
        put(w, 'Used up already', str(used))
        put(w, 'How many labels', str(n))
        until(lambda: n in numbers(why(w, title)))
        columns, rows, each = numbers(why(w, title))[:3]
        assert columns * rows == each and numbers(why(w, title))[-1] == math.ceil((used + n) / each), why(w, title)
    pages = numbers(why(w, title))[-1]
    press(w, 'Show the sheet')
    w.wait_words(f'of {pages:g}')
    w.kill()


# --- the kitchen ------------------------------------------------------------------------------

def test_cook():
    w = opened('Make')
    ask(w, 'Plan a batch of it…', 'How many are wanted')
    title = 'What is needed, and what is missing'
    seen = []
    for wanted in ('50000', '100000'):
        put(w, 'How many are wanted', wanted)
        until(lambda: float(wanted) in numbers(why(w, title)))
        lacks, = shown(w, rf'^For {int(wanted):,}\b.* the store room lacks (.*?)\. ')
        lines = [line for line in why(w, title).split('\n') if ' needed, ' in line]
        for line in lines:
            name, amounts = line.split(': ')
            needed, there = numbers(amounts)
            missing = numbers(re.search(rf'([\d,.]+)(?: [a-z]+)? {name}', lacks)[1])[0] if name in lacks else 0
            assert abs(missing - max(0, needed - there)) < .011, (line, lacks)
        # A share that is nearly none is told with digits enough to be reckoned with.
        share, of_it, makes = numbers(why(w, 'How much can be made'))[-3:]
        assert of_it == float(wanted) and -.1 < share / 100 * of_it - makes < 1.1, why(w, 'How much can be made')
        seen.append(lines)
    assert len(seen[0]) == len(seen[1]) and seen[0] != seen[1], seen
    leave(w)
    assert w.close() == 0, w.said()


# --- a build ---------------------------------------------------------------------------------

def test_quotes():
    w = opened('Fund')
    press(w, 'Bill')
    for number, price in (('One', '12.34'), ('Two', '11.07')):
        w.tab_to('table row')
        w.keys('Home')
        ask(w, 'Quotes…', 'Supplier')
        put(w, 'Supplier', f'Test yard {number}')
        put(w, 'Price of one', price)
        press(w, 'Add quote')
        until(lambda: len(w.windows()) == 1)
        w.focus()
    w.tab_to('table row')
    w.keys('Home')
    ask(w, 'Quotes…', 'Supplier')
    for number, price in (('One', '12.34'), ('Two', '11.07')):
        together, = shown(w, rf'\${price} each, ({MONEY}) together')
        line, = [line for line in why(w, 'What all of it costs').split('\n') if line.startswith(f'Test yard {number}: ')]
        assert line.endswith(f' × ${price} = {together}'), (line, together)
    leave(w)
    assert w.close() == 0, w.said()


def test_bought():
    farm = Farm()
    w = opened('Fund', farm)
    press(w, 'Bill')
    ask(w, 'Bought…', 'Bought from')
    title = 'What it was planned to cost'
    line = why(w, title).split('\n')[0]
    name, all_of_it = line.split(': ')[0], numbers(line.split(': ')[1])[0]
    assert all_of_it >= 1, line
    for packs in ('0.25', '0.5'):
        put(w, f'How many: {name}', packs)
        until(lambda: why(w, title).split('\n')[0].startswith(f'{name}: {packs} × '))
    planned = cents(result(w, title))
    # A cost that is left empty is entered so.
    put(w, 'Bought from', 'Test yard')
    press(w, 'Save receipt')
    until(lambda: farm.rows('SELECT packs, cents FROM build_buy ORDER BY id DESC LIMIT 1') == [f'0.5|{planned}'])
    until(lambda: len(w.windows()) == 1)
    w.focus()
    ask(w, 'Bought…', 'Bought from')
    open_line, = [line for line in why(w, 'Still to come').split('\n') if line.startswith(name + ': ')]
    packs, came, left = numbers(open_line.split(': ')[-1])
    assert left == packs - came and f'{name} ({left:g} to come)' in [n.name for n in w.walk(tops(w)[-1])], open_line
    leave(w)
    assert w.close() == 0, w.said()
    farm.verify()


run_cases(test_till, test_cash_up, test_statement, test_egg, test_fish, test_harvest_and_end, test_count_of_the_store_room,
          test_use, test_labels, test_cook, test_quotes, test_bought)
