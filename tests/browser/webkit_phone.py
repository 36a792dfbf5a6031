#!/usr/bin/python3
"""A WebKitGTK window of a phone's size, for the browser tests: driven by
WebKitWebDriver, with a profile on disk that outlives it. The browser that
comes with WebKitGTK forgets everything when a driver holds it.

    webkit_phone.py PROFILE DOWNLOADS light|dark
"""

import os
import sys

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import GLib, Gtk, WebKit2  # noqa: E402

profile, downloads, light = sys.argv[1:4]

settings = Gtk.Settings.get_default()
settings.set_property("gtk-application-prefer-dark-theme", light == "dark")

window = Gtk.Window()
window.set_default_size(390, 844)
window.connect("destroy", Gtk.main_quit)

context = WebKit2.WebContext(
    website_data_manager=WebKit2.WebsiteDataManager(
        base_data_directory=f"{profile}/data",
        base_cache_directory=f"{profile}/cache",
    )
)
context.set_automation_allowed(True)
context.set_preferred_languages(["en-US"])


def make_view(_session):
    view = WebKit2.WebView(web_context=context, is_controlled_by_automation=True)
    window.add(view)
    window.show_all()
    view.grab_focus()
    return view


def on_automation(_context, session):
    info = WebKit2.ApplicationInfo()
    info.set_name("Coldsump")
    info.set_version(1, 0, 0)
    session.set_application_info(info)
    session.connect("create-web-view", make_view)


def on_download(_context, download):
    # WebKit writes a blob straight to its place: it gets its name only whole.
    names = []

    def decide(download, name):
        names.append(f"{downloads}/{name}")
        download.set_destination(GLib.filename_to_uri(f"{names[0]}.part", None))
        return True

    def finished(_download):
        os.rename(f"{names[0]}.part", names[0])

    download.connect("decide-destination", decide)
    download.connect("finished", finished)


context.connect("automation-started", on_automation)
context.connect("download-started", on_download)
Gtk.main()
