"""A window of WebKitGTK as narrow as a phone, whose profile lasts.

webkit-window.py PROFILE DOWNLOADS LOG WIDTH HEIGHT, started by WebKitWebDriver. What
the engine writes to its console goes to LOG.
"""

import os
import sys

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import Gtk, WebKit2  # noqa: E402

# What Safari has, and this port leaves off.
SAFARI_HAS = {
    "StorageAPI",
    "StorageAPIEstimate",
    "VerticalFormControls",
    "WebShare",
    "WebShareFileAPI",
}

profile, downloads, log, width, height = sys.argv[1:]
for stream in (1, 2):  # the web processes write there too
    os.dup2(os.open(log, os.O_WRONLY | os.O_CREAT | os.O_APPEND, 0o600), stream)

manager = WebKit2.WebsiteDataManager(
    base_data_directory=os.path.join(profile, "data"),
    base_cache_directory=os.path.join(profile, "cache"),
)
context = WebKit2.WebContext.new_with_website_data_manager(manager)
context.set_automation_allowed(True)

settings = WebKit2.Settings()
settings.set_enable_write_console_messages_to_stdout(True)
features = WebKit2.Settings.get_all_features()
for feature in (features.get(n) for n in range(features.get_length())):
    if feature.get_identifier() in SAFARI_HAS:
        settings.set_feature_enabled(feature, True)

windows = []


def closed(window):
    windows.remove(window)
    if not windows:
        Gtk.main_quit()


def open_view(*_):
    view = WebKit2.WebView(
        web_context=context, settings=settings, is_controlled_by_automation=True
    )
    window = Gtk.Window(decorated=False)
    window.set_default_size(int(width), int(height))
    window.add(view)
    view.connect("close", lambda _: window.destroy())
    window.connect("destroy", closed)
    windows.append(window)
    window.show_all()
    return view


def save(_, download):
    def decide(_, name):
        download.set_destination(f"file://{downloads}/{name}")
        return True

    download.connect("decide-destination", decide)


def begin(_, session):
    about = WebKit2.ApplicationInfo()
    about.set_name("webkit")
    about.set_version(
        WebKit2.get_major_version(),
        WebKit2.get_minor_version(),
        WebKit2.get_micro_version(),
    )
    session.set_application_info(about)
    session.connect("create-web-view", open_view)


context.connect("automation-started", begin)
context.connect("download-started", save)
Gtk.main()
