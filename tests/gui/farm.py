"""Farms to drive: made anew for each test, in a folder that goes with it."""
import atexit
import json
import os
import shutil
import sqlite3
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
        """Make it a farm that keeps no cash book yet; call it before the window opens.

        What names the cash book, or a sale, forgets it, or goes if it cannot be without.
        """
        gone = ['cash_count_piece', 'cash_count', 'cash_line', 'account', 'fund', 'sale_day']
        with sqlite3.connect(self.path, isolation_level=None) as db:
            triggers = db.execute("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'").fetchall()
            tables = [row[0] for row in db.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")]
            db.execute('BEGIN')
            for name, _ in triggers:               # they keep what is signed
                db.execute(f'DROP TRIGGER {name}')
            for parent in gone:
                self.cut(db, tables, parent, gone)
                db.execute(f'DELETE FROM {parent}')
            for _, sql in triggers:
                db.execute(sql)
            db.execute('COMMIT')
        self.verify()

    def cut(self, db, tables, parent, gone):
        """Cut what other tables say of a table whose rows go."""
        for table in tables:
            if table in gone:
                continue
            needed = {row[1] for row in db.execute(f'PRAGMA table_info ({table})') if row[3]}
            for link in db.execute(f'PRAGMA foreign_key_list ({table})').fetchall():
                if link[2] != parent:
                    continue
                if link[3] in needed:
                    self.cut(db, tables, table, gone + [table])
                    db.execute(f'DELETE FROM {table}')
                    continue
                try:
                    db.execute(f'UPDATE {table} SET {link[3]} = NULL')
                except sqlite3.IntegrityError:     # the one or the other must be said
                    self.cut(db, tables, table, gone + [table])
                    db.execute(f'DELETE FROM {table} WHERE {link[3]} IS NOT NULL')

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
