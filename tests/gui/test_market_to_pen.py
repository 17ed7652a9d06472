"""From a market to the pen that it pays for: signs, 150 taps through power cuts, a till that is $2 short,
left-overs, the path of the fund, a pen drawn for six sheep, its bill and its proposal."""
import os
import subprocess

from build import ask as open_dialog, begin
from drive import run_cases, until
from farm import Farm, PROGRAM
from stall import LINES, SALE, TAPS, choose, number, opened, plan, press

# CASE-01 of build-and-records, worked by hand: 48 by 24 ft, a gate of 12 ft in the middle of a short side, one of
# 4 ft at 8 ft of a long one.  Spacing 8 ft: 11 line posts; 128 ft of wire, with 5 % waste 134.4 ft: one roll of 330 ft.
# The rails are one for each brace, two braces a corner; 31 bags of 80 lb fill the holes of corner and gate posts.
CASE_01 = {'corner_post': 4, 'gate_post': 4, 'line_post': 11, 'brace_rail': 8, 'wire_roll_100584': 1, 'concrete_80': 31}


def paper(farm, name, of):
    """The text of a paper, made without the window."""
    out = os.path.join(farm.folder.name, name + '.pdf')
    subprocess.check_call([PROGRAM, '--document', name, '--of', of, '--out', out, farm.path])
    return subprocess.check_output(['pdftotext', '-layout', out, '-'], text=True)


def sell(w, farm, eggs, halves):
    """Tap on, see it, and cut the power; what was seen is in the file afterwards."""
    before = number(farm, TAPS)
    w.wait('push button', 'Sell Eggs')
    keys = dict(row.split('|') for row in farm.rows(f'''SELECT p.name, l.key FROM sale_line l JOIN product p ON p.id = l.product_id
                                                         WHERE l.id IN {LINES}'''))
    w.keys(*[keys['Eggs']] * eggs, *[keys['Half dozen']] * halves)
    until(lambda: number(farm, TAPS) == before + eggs + halves, 60)
    w.kill()
    assert number(farm, TAPS) == before + eggs + halves
    return opened(farm)


def sell_150(w, farm):
    for _ in range(5):
        w = sell(w, farm, 6, 24)
    w.wait_words('30 dozen sold')
    w.wait_words('120 half dozens sold')
    return w


def cash_up(w, farm):
    """30 dozen at $4.50 and 120 half dozens at $2.50 are $435.00, with the float $475.00; $473.00 are there."""
    press(w, 'Cash up')
    for face, pieces in (('$100.00 ×', '4'), ('$50.00 ×', '1'), ('$20.00 ×', '1'), ('$1.00 ×', '3')):
        w.fill(face, pieces)
    w.wait_words('$2.00 short')
    choose(w, 'Who counted', 'Down')
    choose(w, 'Who counted again', 'Down', 'Down')
    w.fill('Why it differs', 'Two dollars in the wrong pocket')
    left = int(w.read('Eggs: Store room'))
    w.fill('Eggs: Store room', str(left - 2))
    w.fill('Eggs: Donated', '2')
    press(w, 'Post the cash-up')
    until(lambda: number(farm, f'SELECT count(*) FROM cash_count WHERE sale_id = {SALE}') == 1)
    w.wait_words('The stall took')
    assert number(farm, f"SELECT sum(cents) FROM cash_line WHERE sale_id = {SALE} AND category = 'sales'") == 43500
    assert number(farm, f"SELECT sum(cents) FROM cash_line WHERE sale_id = {SALE} AND category = 'over_short'") == -200
    assert number(farm, f"SELECT CAST (units AS INTEGER) FROM sale_left WHERE line_id IN {LINES} AND goes_to = 'given'") == 2


def draw_pen(w, farm):
    """A pen for six sheep, typed and with its second gate."""
    begin(w, 'Six sheep')
    w.fill('Width of the gate', '12')
    w.fill('How many animals', '6')
    w.press('push button', 'Save build')
    w.wait_words('have no price yet')                # the new one is looked at, not the one before
    w.wait_words('1,152 sq ft')
    open_dialog(w, 'Gates…', 'Width of gate 2')
    w.fill('Width of gate 2', '4')
    w.fill("Gate 2, from its side's first corner", '8')
    w.press('push button', 'Save gates')
    until(lambda: len([t for t in farm.ask('build', 'Six sheep')['bill'] if t['key'] == 'gate_post' and t['drawn'] == 4]) == 1)
    drawn = {thing['key']: thing['drawn'] for thing in farm.ask('build', 'Six sheep')['bill']}
    assert {key: drawn.get(key) for key in CASE_01} == CASE_01, drawn


def test_market_to_pen():
    farm = Farm()
    # A farm that brings 150 half dozens, out of no lot.
    farm.rows("UPDATE product SET item_id = NULL, planned_units = 150 WHERE name = 'Half dozen'")
    w = opened(farm)
    plan(w, farm)
    signs = paper(farm, 'price-signs', 'Test market')
    assert 'Eggs' in signs and '$4.50' in signs and '$2.50' in signs, signs
    before = farm.ask('build', 'Sheep pen')
    w = sell_150(w, farm)
    cash_up(w, farm)
    # What the sale was to bring is no chance any more: the path of the fund is another one.
    after = farm.ask('build', 'Sheep pen')
    assert after['chance_by_wanted_day'] != before['chance_by_wanted_day'], (before, after)
    w.place('Fund')
    w.press('push button', 'Money')
    w.wait_words('The chance to have it by the wanted day')
    w.press('push button', 'Plan')
    draw_pen(w, farm)
    assert w.close() == 0
    proposal = paper(farm, 'build-proposal', 'Six sheep')
    for words in ('Proposal: Six sheep', '1,152 sq ft', '144 ft round', 'What it takes', 'Corner post', 'Be careful', '811'):
        assert words in proposal, words
    farm.verify()


run_cases(test_market_to_pen)
