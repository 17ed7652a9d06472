"""Plan and review: a batch is planned, harvested, noted, treated, ended, reviewed, begun again."""
import datetime

from drive import Skip, Window, extents, run_cases, until, x
from farm import Farm, PROGRAM

FISH = 'Catfish, tank A'


def days_ahead(n):
    return (datetime.date.today() + datetime.timedelta(days=n)).isoformat()


def one(farm, sql):
    return farm.rows(sql)[0]


def shown(w, role, name):
    """Each kind of batch has a view of its own, and the one come to last is last in the tree."""
    return until(lambda: [n for n in w.walk() if n.getRoleName() == role and n.name.startswith(name)])[-1]


def press(w, name):
    shown(w, 'push button', name).queryAction().doAction(0)


def show_panel(w, batch):
    """The view is made when it is come to first: press until the panel speaks of the batch."""
    def speaks():
        return any(n.name.startswith(f'“{batch}”') and 'cost' in n.name for n in w.walk())

    def go():
        w.press('push button', batch)
        press(w, 'Plan and review')
    until(lambda: speaks() or go(), 60)


def opened(farm, batch):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Raise')
    w.wait('push button', batch)
    show_panel(w, batch)
    return w


class Dialog:
    """The dialog that a button opens; fields of the page behind it may bear the same names."""

    def __init__(self, w, button, title, save):
        self.w, self.title, self.save = w, title, save
        press(w, button)
        until(self.node)
        until(lambda: self.find('push button', save))

    def node(self):
        """Its window, while it is open."""
        tops = (self.w.app.getChildAtIndex(i) for i in range(self.w.app.childCount))
        return next((top for top in tops if top is not None and top.name == self.title), None)

    def find(self, role, name):
        return next((n for n in self.w.walk(self.node()) if n.getRoleName() == role and n.name.startswith(name)), None)

    def put(self, name, text):
        until(lambda: self.find('text', name)).queryEditableText().setTextContents(text)

    def click(self, role, name):
        """Without a window manager a dialog stands where the screen begins."""
        node = until(lambda: self.find(role, name))
        try:
            e = extents(node)
            x('mousemove', e.x + e.width // 2, e.y + e.height // 2, 'click', 1)
        except Skip:
            self.w.act_by_tab(node)

    def press_save(self):
        until(lambda: self.find('push button', self.save)).queryAction().doAction(0)

    def done(self):
        self.press_save()
        self.gone()

    def gone(self):
        until(lambda: self.node() is None)


def plan(w, farm, batch_id):
    dialog = Dialog(w, 'Plan…', 'Plan of the batch', 'Save plan')
    dialog.put('Harvest in all', '60')
    dialog.put('Price, a pound', '7')
    dialog.put('Feed in all', '110')
    dialog.put('Price of feed, for 1 lb', '0.90')
    dialog.put('All other costs', '12')
    dialog.put('Expected loss of all', '140')
    dialog.put('Ends on', days_ahead(30))
    dialog.press_save()
    until(lambda: dialog.find('text', 'Expected loss of all').description)   # refused beside its field
    dialog.put('Expected loss of all', '5')
    dialog.done()
    until(lambda: one(farm, f'SELECT count(*) FROM batch_plan WHERE batch_id = {batch_id}') == '7')
    kilograms = float(one(farm, f"SELECT value FROM batch_plan WHERE batch_id = {batch_id} AND what = 'output_base'"))
    assert abs(kilograms - 60 * 0.45359237) < 1e-9, kilograms
    w.wait_words('left over')


def harvest(w, farm, batch_id, pounds, fish):
    """Into a lot, whose cost and code are told before."""
    dialog = Dialog(w, 'Harvest…', 'Harvest', 'Save harvest')
    dialog.put('Good', str(pounds))
    dialog.press_save()
    until(lambda: 'store room' in (dialog.find('text', 'Good').description or ''))   # nothing is taken for granted
    dialog.click('combo box', 'Goes into')
    w.keys('Down', 'Return')                                                 # the first line only asks
    dialog.put('Fish taken out', str(fish))
    w.wait_words('of the cost')
    dialog.done()
    until(lambda: one(farm, f'SELECT count(*) FROM harvest WHERE batch_id = {batch_id}') == '1')
    lot = one(farm, f'SELECT id, code FROM lot WHERE batch_id = {batch_id}').split('|')
    w.wait('push button', 'Lot ' + lot[1])
    return lot


def test_batch_from_plan_to_review():
    farm = Farm()
    batch_id = one(farm, f"SELECT id FROM batch WHERE name = '{FISH}'")
    w = opened(farm, FISH)
    plan(w, farm, batch_id)
    lot = harvest(w, farm, batch_id, 10, 12)
    cents = int(one(farm, f"SELECT cost_cents FROM movement WHERE lot_id = {lot[0]} AND kind = 'made'"))
    assert cents > 0, cents

    dialog = Dialog(w, 'Note…', 'Note', 'Save note')
    dialog.put('Note', 'The filter was cleaned; the water is clear again.')
    dialog.done()
    w.wait_words('The filter was cleaned')

    dialog = Dialog(w, 'Treatment…', 'Treatment', 'Save treatment')
    dialog.put('What was given', 'Medicated feed')
    dialog.put('Dose and way', '2 g a kg of feed')
    dialog.put('Wait up to and including', days_ahead(21))
    dialog.press_save()
    until(lambda: dialog.find('text', 'Ordered by').description)             # not without a veterinarian
    dialog.put('Ordered by', 'Dr. Vale')
    dialog.done()
    w.wait_words('waits after a treatment')
    assert farm.ask('batch', FISH)['wait_until'] == days_ahead(21)
    w.press('push button', 'Lot ' + lot[1])                                  # its lot was harvested too soon
    w.wait_words('do not sell or eat it')
    press(w, 'Cancel')
    until(lambda: len(w.windows()) == 1)
    w.focus()
    w.place('Raise')
    assert w.nameless() == [], w.nameless()

    dialog = Dialog(w, 'Plan…', 'Plan of the batch', 'Save plan')                                 # what was saved stands there again
    assert dialog.find('text', 'Feed in all').queryText().getText(0, 3) == '110'
    dialog.find('push button', 'Cancel').queryAction().doAction(0)
    dialog.gone()

    dialog = Dialog(w, 'End this batch…', 'End this batch', 'End the batch')
    dialog.done()
    until(lambda: one(farm, f'SELECT ended_on IS NOT NULL FROM batch WHERE id = {batch_id}') == '1')
    w.wait('heading', 'Why it came out so')
    w.wait_words('was meant to give 60 pounds')
    # How many died in the demo hangs on the day on which it is made.
    lost = one(farm, f'SELECT sum(deaths + culled) FROM batch_entry WHERE batch_id = {batch_id}')
    stocked = one(farm, f'SELECT stocked FROM fish WHERE batch_id = {batch_id}')
    w.wait_words(f"Losses: {'none' if lost == '0' else lost} of {stocked}")

    dialog = Dialog(w, 'Start again from this plan…', 'Start again', 'Start it')
    dialog.put('Name', 'Catfish, next year')
    dialog.put('How many fish', '80')
    dialog.put('Cost of all of them', '72')
    dialog.done()
    until(lambda: farm.rows("SELECT stocked, cost_cents FROM fish JOIN batch ON batch.id = batch_id"
                            " WHERE name = 'Catfish, next year'") == ['80|7200'])
    w.press('push button', 'Undo')
    until(lambda: one(farm, "SELECT count(*) FROM batch WHERE name = 'Catfish, next year'") == '0')
    assert one(farm, f'SELECT ended_on IS NOT NULL FROM batch WHERE id = {batch_id}') == '1'
    assert w.close() == 0
    farm.verify()

    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Raise')
    w.wait('push button', 'Also what is over')
    w.press('push button', 'Also what is over')
    w.wait('push button', FISH)
    show_panel(w, FISH)
    w.wait_words('was meant to give 60 pounds')
    w.wait_words('The filter was cleaned')
    press(w, 'Go on with it')
    until(lambda: one(farm, f'SELECT ended_on IS NULL FROM batch WHERE id = {batch_id}') == '1')
    assert w.close() == 0
    farm.verify()


def test_card_is_looked_at():
    farm = Farm()
    w = opened(farm, 'Brown hens')
    press(w, 'Batch card…')
    w.wait_words('Page 1 of')
    w.wait('push button', 'Save as PDF…')
    assert w.nameless() == [], w.nameless()
    press(w, 'Close')
    assert w.close() == 0


def test_what_is_counted_is_read_as_a_count():
    """What was typed is read in the measure of the item that is chosen after it."""
    farm = Farm()
    farm.rows("INSERT INTO item (name, kind, unit) VALUES ('A whole catfish', 'produce', 'ea')")
    w = opened(farm, FISH)
    dialog = Dialog(w, 'Harvest…', 'Harvest', 'Save harvest')
    dialog.put('Good', '12')
    dialog.click('combo box', 'Goes into')
    w.keys('Down', 'Return')
    until(lambda: 'ea' in dialog.find('text', 'Good').name)
    dialog.put('Fish taken out', '12')
    dialog.done()
    until(lambda: farm.rows("SELECT quantity_base FROM movement JOIN lot ON lot.id = lot_id JOIN item ON item.id = item_id"
                            " WHERE item.name = 'A whole catfish'") == ['12.0'])
    assert w.close() == 0
    farm.verify()


run_cases(test_batch_from_plan_to_review, test_what_is_counted_is_read_as_a_count, test_card_is_looked_at)
