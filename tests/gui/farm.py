"""Farms to drive: made anew for each test, in a folder that goes with it."""
import atexit
import json
import os
import shutil
import subprocess
import sys
import tempfile

PROGRAM = os.path.abspath(sys.argv[1])


class Farm:
    """A farm file in a folder of its own."""

    made = None                                    # the demo farm, made once for all cases of a script

    def __init__(self, demo=True):
        self.folder = tempfile.TemporaryDirectory()
        self.path = os.path.join(self.folder.name, 'farm.steading')
        if demo:
            shutil.copyfile(self.demo(), self.path)

    @classmethod
    def demo(cls):
        if cls.made is None:
            folder = tempfile.TemporaryDirectory()
            atexit.register(folder.cleanup)
            path = os.path.join(folder.name, 'farm.steading')
            subprocess.check_call([PROGRAM, '--demo', path], stdout=subprocess.DEVNULL)
            cls.made = path
        return cls.made

    def forget_cash(self):
        """Make it a farm that keeps no cash book yet; call it before the window opens."""
        self.rows('PRAGMA foreign_keys = ON; UPDATE movement SET sale_id = NULL, sale_line_id = NULL;'
                  ' DELETE FROM cash_count_piece; DELETE FROM cash_count; UPDATE cash_line SET pair_id = NULL;'
                  ' DELETE FROM cash_line; DELETE FROM work_span WHERE sale_id IS NOT NULL; DELETE FROM sale_day;'
                  ' DELETE FROM build_grant; UPDATE build SET fund_id = NULL; DELETE FROM account; DELETE FROM fund')
        self.verify()

    def ask(self, question, of=None):
        """The figures that the program gives for a question, without a window."""
        words = [PROGRAM, '--ask', question] + (['--of', of] if of else []) + [self.path]
        text = subprocess.check_output(words, text=True)
        return json.loads(text[text.index('{'):])

    def rows(self, sql):
        """What the file holds, read by another program."""
        return subprocess.check_output(['sqlite3', '-cmd', '.timeout 5000', self.path, sql], text=True).split('\n')[:-1]

    def write(self, name, data):
        """A file beside the farm; returns its path."""
        path = os.path.join(self.folder.name, name)
        with open(path, 'wb') as out:
            out.write(data if isinstance(data, bytes) else data.encode())
        return path

    def verify(self):
        subprocess.check_call([PROGRAM, '--verify', self.path], stdout=subprocess.DEVNULL)
