"""A stand-in for the desktop's settings portal, on the test's own bus.

    with Portal(1) as portal:      # 1: the desktop is dark
        ...
        portal.change(2)           # 2: it is light now

Run as a program it serves until its input ends; each line read is a new value.
"""
import subprocess
import sys

NAME = 'org.freedesktop.portal.Desktop'
PATH = '/org/freedesktop/portal/desktop'
SETTINGS = 'org.freedesktop.portal.Settings'
APPEARANCE = 'org.freedesktop.appearance'
XML = f"""<node><interface name="{SETTINGS}">
  <method name="Read"><arg type="s" direction="in"/><arg type="s" direction="in"/><arg type="v" direction="out"/></method>
  <signal name="SettingChanged"><arg type="s"/><arg type="s"/><arg type="v"/></signal>
</interface></node>"""


class Portal:
    def __init__(self, value):
        self.process = subprocess.Popen([sys.executable, __file__, str(value)], text=True,
                                        stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        assert self.process.stdout.readline() == 'ready\n'

    def change(self, value):
        self.process.stdin.write(f'{value}\n')
        self.process.stdin.flush()

    def __enter__(self):
        return self

    def __exit__(self, *unused):
        self.process.stdin.close()
        self.process.wait(10)


def serve(value):
    from gi.repository import Gio, GLib
    loop = GLib.MainLoop()
    bus = Gio.bus_get_sync(Gio.BusType.SESSION)
    state = {'color-scheme': value, 'contrast': 0}

    def called(connection, sender, path, interface, method, arguments, invocation):
        space, key = arguments.unpack()
        if space != APPEARANCE or key not in state:
            invocation.return_dbus_error('org.freedesktop.portal.Error.NotFound', 'no such setting')
        else:                                     # a variant in a variant
            inner = GLib.Variant('v', GLib.Variant('u', state[key]))
            invocation.return_value(GLib.Variant('(v)', (inner,)))

    def read(channel, condition):
        line = sys.stdin.readline()
        if not line:
            loop.quit()
            return False
        state['color-scheme'] = int(line)
        bus.emit_signal(None, PATH, SETTINGS, 'SettingChanged',
                        GLib.Variant('(ssv)', (APPEARANCE, 'color-scheme', GLib.Variant('u', int(line)))))
        return True

    bus.register_object(PATH, Gio.DBusNodeInfo.new_for_xml(XML).interfaces[0], called)
    Gio.bus_own_name_on_connection(bus, NAME, Gio.BusNameOwnerFlags.NONE,
                                   lambda *unused: print('ready', flush=True), None)
    GLib.io_add_watch(sys.stdin, GLib.IO_IN | GLib.IO_HUP, read)
    loop.run()


if __name__ == '__main__':
    serve(int(sys.argv[1]))
