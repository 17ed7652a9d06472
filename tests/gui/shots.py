"""Open a farm, visit its places, save a picture of each.

usage: shots.py PROGRAM FARM PREFIX [PLACE...]

The farm is copied first, so that looking never changes it.
"""
import os
import shutil
import sys
import tempfile

from drive import Window

program, farm, prefix, *places = sys.argv[1:]
places = places or ['today', 'raise', 'make', 'check', 'price', 'sell', 'fund', 'keep', 'show']

with tempfile.TemporaryDirectory() as folder:
    copy = os.path.join(folder, os.path.basename(farm))
    shutil.copy(farm, copy)
    w = Window(os.path.abspath(program), copy)
    w.fit()
    faults = []
    for place in places:
        w.place(place.capitalize())
        w.shot(f'{prefix}-{place}.png')
        faults += [f'{place}: a control without a name: {control}' for control in w.nameless()]
        if not w.fits():
            faults.append(f'{place}: the window is larger than the screen')
    status = w.close()
    faults += [line for line in w.said().splitlines() if 'WARNING' in line or 'CRITICAL' in line]

print('\n'.join(faults))
sys.exit(1 if faults or status else 0)
