// A window of WPE WebKit 2.38 that nobody sees, as narrow as a phone, whose profile
// lasts: webkit-old-window PROFILE LOG WIDTH HEIGHT, started by WPEWebDriver. What the
// engine writes to its console goes to LOG.
#include <fcntl.h>
#include <stdlib.h>
#include <unistd.h>
#include <wpe/fdo.h>
#include <wpe/unstable/fdo-shm.h>
#include <wpe/webkit.h>

static GMainLoop *loop;
static WebKitWebContext *context;
static unsigned width, height, windows;

typedef struct {
  struct wpe_view_backend_exportable_fdo *exportable;
} Window;

// What was painted is let go at once, and the next is asked for at the pace of a screen.
static gboolean next_frame(gpointer window) {
  wpe_view_backend_exportable_fdo_dispatch_frame_complete(((Window *)window)->exportable);
  return G_SOURCE_REMOVE;
}

static void painted(void *window, struct wpe_fdo_shm_exported_buffer *buffer) {
  wpe_view_backend_exportable_fdo_dispatch_release_shm_exported_buffer(
      ((Window *)window)->exportable, buffer);
  g_timeout_add(16, next_frame, window);
}

static const struct wpe_view_backend_exportable_fdo_client client = {
    .export_shm_buffer = painted,
};

static void end_backend(gpointer window) {
  wpe_view_backend_exportable_fdo_destroy(((Window *)window)->exportable);
}

static void closed(WebKitWebView *view, gpointer unused) {
  g_object_unref(view);
  if (--windows == 0) g_main_loop_quit(loop);
}

static WebKitWebView *open_view(WebKitAutomationSession *session, gpointer unused) {
  Window *window = g_new0(Window, 1);
  window->exportable = wpe_view_backend_exportable_fdo_create(&client, window, width, height);
  struct wpe_view_backend *wpe = wpe_view_backend_exportable_fdo_get_view_backend(window->exportable);
  WebKitSettings *settings =
      webkit_settings_new_with_settings("enable-write-console-messages-to-stdout", TRUE, NULL);
  WebKitWebView *view = g_object_new(
      WEBKIT_TYPE_WEB_VIEW, "backend", webkit_web_view_backend_new(wpe, end_backend, window),
      "web-context", context, "settings", settings, "is-controlled-by-automation", TRUE, NULL);
  wpe_view_backend_add_activity_state(
      wpe, wpe_view_activity_state_visible | wpe_view_activity_state_focused |
               wpe_view_activity_state_in_window);
  g_signal_connect(view, "close", G_CALLBACK(closed), NULL);
  windows++;
  return view;
}

static void begin(WebKitWebContext *from, WebKitAutomationSession *session, gpointer unused) {
  WebKitApplicationInfo *about = webkit_application_info_new();
  webkit_application_info_set_name(about, "webkit-old");
  webkit_application_info_set_version(about, webkit_get_major_version(),
                                      webkit_get_minor_version(), webkit_get_micro_version());
  webkit_automation_session_set_application_info(session, about);
  webkit_application_info_unref(about);
  g_signal_connect(session, "create-web-view", G_CALLBACK(open_view), NULL);
}

int main(int argc, char **argv) {
  if (argc != 5) return 2;
  int log = open(argv[2], O_WRONLY | O_CREAT | O_APPEND, 0600);
  dup2(log, 1); // the web processes write there too
  dup2(log, 2);
  width = atoi(argv[3]);
  height = atoi(argv[4]);
  if (!wpe_loader_init("libWPEBackend-fdo-1.0.so") || !wpe_fdo_initialize_shm()) return 1;

  char *data = g_build_filename(argv[1], "data", NULL);
  char *cache = g_build_filename(argv[1], "cache", NULL);
  context = webkit_web_context_new_with_website_data_manager(webkit_website_data_manager_new(
      "base-data-directory", data, "base-cache-directory", cache, NULL));
  webkit_web_context_set_automation_allowed(context, TRUE);
  g_signal_connect(context, "automation-started", G_CALLBACK(begin), NULL);
  loop = g_main_loop_new(NULL, FALSE);
  g_main_loop_run(loop);
  return 0;
}
