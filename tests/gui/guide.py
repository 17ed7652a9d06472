"""Open a farm, visit its places, and save a picture of each for the help.

usage: guide.py PROGRAM FARM FOLDER PLACE...

The whole window, but of Price the chart alone: its handles are what the page is about.
"""
import os
import subprocess
import sys
import tempfile

from drive import Window, extents, until

PLACES = ['today', 'raise', 'make', 'check', 'price', 'sell', 'fund', 'keep', 'show']
WIDTH = 680    # of a picture on its page


def strip_of(look):
    """What the posts look like, as one number."""
    return subprocess.check_output(['convert', look, '-crop', 'x80+0+0', '-format', '%#', 'info:'], text=True)


def chart_part():
    """Where the largest chart is, with the line over it and some room."""
    boxes = [extents(n) for n in w.walk() if n.getRoleName() == 'image']
    box = max(boxes, key=lambda b: b.width * b.height)
    return f'{box.width + 24}x{box.height + 60}+{box.x - 8}+{box.y - 46}'


def save(look, place, folder):
    part = ['-crop', chart_part(), '+repage'] if place == 'price' else []
    subprocess.check_call(['convert', look, *part, '-resize', f'{WIDTH}x', '-strip', '-dither', 'None',
                           '-colors', '96', f'PNG8:{os.path.join(folder, place)}.png'])


program, farm, folder, *wanted = sys.argv[1:]
w = Window(os.path.abspath(program), farm)
w.fit()
with tempfile.TemporaryDirectory() as work:
    look = os.path.join(work, 'look.png')
    w.shot(look)
    for place in ['show', *wanted]:    # a new farm opens in the first place, which is to be come to as well
        before = strip_of(look)
        w.keys(f'alt+{PLACES.index(place) + 1}')
        until(lambda: w.shot(look) or strip_of(look) != before)
        if place in wanted:
            save(look, place, folder)
w.kill()
