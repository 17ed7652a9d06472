/* stead-scheme.c - which set of colours the windows wear.
 *
 * Plain GTK 4.8 does not follow the desktop's choice of light or dark: it is read
 * from the settings portal over the session bus and followed.  No portal, no harm.
 * GTK_THEME, where somebody set it, has the last word, as GTK means it to.
 */
#include "config.h"

#include <string.h>

#include "app/stead-scheme.h"
#include "app/stead-settings.h"
#include "app/stead-ui.h"

#define PORTAL_NAME "org.freedesktop.portal.Desktop"
#define PORTAL_PATH "/org/freedesktop/portal/desktop"
#define PORTAL_SETTINGS "org.freedesktop.portal.Settings"
#define APPEARANCE "org.freedesktop.appearance"
#define KEY_SCHEME "color-scheme"   /* u: 0 no preference, 1 dark, 2 light */
#define KEY_CONTRAST "contrast"     /* u: 0 no preference, 1 higher */

typedef struct
{
  GDBusConnection *bus;             /* (nullable) */
  GtkCssProvider  *dark;            /* worn only while needed */
  GtkCssProvider  *contrast;
  guint            desktop_scheme;
  guint            desktop_contrast;
  gboolean         is_dark;
  gboolean         is_contrast;
} Scheme;

static Scheme scheme;

static void
wear (GtkCssProvider *provider,
      gboolean        worn,
      int             layer)
{
  GdkDisplay *display = gdk_display_get_default ();

  if (worn)
    gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (provider),
                                                (guint) (GTK_STYLE_PROVIDER_PRIORITY_APPLICATION + layer));
  else
    gtk_style_context_remove_provider_for_display (display, GTK_STYLE_PROVIDER (provider));
}

static gboolean
wants_dark (void)
{
  const char *forced = g_getenv ("GTK_THEME");

  if (forced != NULL && g_str_has_suffix (forced, ":dark"))
    return TRUE;
  if (stead_settings_get_look () != STEAD_LOOK_DESKTOP)
    return stead_settings_get_look () == STEAD_LOOK_DARK;
  return scheme.desktop_scheme == 1;
}

static gboolean
wants_contrast (void)
{
  g_autofree char *theme = NULL;
  const char *forced = g_getenv ("GTK_THEME");

  g_object_get (gtk_settings_get_default (), "gtk-theme-name", &theme, NULL);
  return scheme.desktop_contrast == 1
         || (forced != NULL && g_str_has_prefix (forced, "HighContrast"))
         || (theme != NULL && g_str_has_prefix (theme, "HighContrast"));
}

void
stead_scheme_update (void)
{
  GtkSettings *settings = gtk_settings_get_default ();
  gboolean dark, contrast, preferred;

  if (scheme.dark == NULL)
    return;   /* there is no screen */
  dark = wants_dark ();
  contrast = wants_contrast ();
  if (dark != scheme.is_dark)
    wear (scheme.dark, dark, 1);
  if (contrast != scheme.is_contrast)
    wear (scheme.contrast, contrast, 2);
  scheme.is_dark = dark;
  scheme.is_contrast = contrast;
  g_object_get (settings, "gtk-application-prefer-dark-theme", &preferred, NULL);
  if (dark != preferred)   /* setting it loads the theme, even where nothing changes */
    g_object_set (settings, "gtk-application-prefer-dark-theme", dark, NULL);
}

/* --- the desktop's choice ------------------------------------------------------- */

static void
take_value (const char *key,
            GVariant   *value)
{
  if (!g_variant_is_of_type (value, G_VARIANT_TYPE_UINT32))
    return;
  if (g_str_equal (key, KEY_SCHEME))
    scheme.desktop_scheme = g_variant_get_uint32 (value);
  else if (g_str_equal (key, KEY_CONTRAST))
    scheme.desktop_contrast = g_variant_get_uint32 (value);
  stead_scheme_update ();
}

static void
setting_changed_cb (GDBusConnection *bus,
                    const char      *sender,
                    const char      *path,
                    const char      *interface,
                    const char      *signal,
                    GVariant        *parameters,
                    gpointer         data)
{
  const char *space, *key;
  g_autoptr(GVariant) value = NULL;

  if (!g_variant_is_of_type (parameters, G_VARIANT_TYPE ("(ssv)")))
    return;
  g_variant_get (parameters, "(&s&sv)", &space, &key, &value);
  if (g_str_equal (space, APPEARANCE))
    take_value (key, value);
}

/* The answer is a variant in a variant. */
static void
read_cb (GObject      *bus,
         GAsyncResult *result,
         gpointer      key)
{
  g_autoptr(GVariant) answer = g_dbus_connection_call_finish (G_DBUS_CONNECTION (bus), result, NULL);
  g_autoptr(GVariant) outer = NULL;
  g_autoptr(GVariant) inner = NULL;

  if (answer == NULL)
    return;
  g_variant_get (answer, "(v)", &outer);
  if (g_variant_is_of_type (outer, G_VARIANT_TYPE_VARIANT))
    inner = g_variant_get_variant (outer);
  take_value (key, inner != NULL ? inner : outer);
}

static void
ask (const char *key)
{
  g_dbus_connection_call (scheme.bus, PORTAL_NAME, PORTAL_PATH, PORTAL_SETTINGS, "Read",
                          g_variant_new ("(ss)", APPEARANCE, key), G_VARIANT_TYPE ("(v)"),
                          G_DBUS_CALL_FLAGS_NONE, 3000, NULL, read_cb, (gpointer) key);
}

static void
bus_cb (GObject      *source,
        GAsyncResult *result,
        gpointer      data)
{
  scheme.bus = g_bus_get_finish (result, NULL);
  if (scheme.bus == NULL)
    return;
  g_dbus_connection_signal_subscribe (scheme.bus, PORTAL_NAME, PORTAL_SETTINGS, "SettingChanged", PORTAL_PATH,
                                      APPEARANCE, G_DBUS_SIGNAL_FLAGS_NONE, setting_changed_cb, NULL, NULL);
  ask (KEY_SCHEME);
  ask (KEY_CONTRAST);
}

/* --- starting ----------------------------------------------------------------------- */

static GtkCssProvider *
load (const char *path)
{
  GtkCssProvider *provider = gtk_css_provider_new ();

  gtk_css_provider_load_from_resource (provider, path);
  return provider;
}

void
stead_scheme_start (void)
{
  static gboolean started = FALSE;
  g_autoptr(GtkCssProvider) sheet = NULL;
  g_autoptr(GtkCssProvider) solid = NULL;

  if (started || gdk_display_get_default () == NULL)
    return;
  started = TRUE;
  sheet = load (STEAD_UI ("steading.css"));
  scheme.dark = load (STEAD_UI ("steading-dark.css"));
  scheme.contrast = load (STEAD_UI ("steading-contrast.css"));
  solid = load (STEAD_UI ("steading-solid.css"));
  wear (sheet, TRUE, 0);
  if (!gdk_display_is_composited (gdk_display_get_default ()))
    wear (solid, TRUE, 3);
  stead_scheme_update ();
  g_signal_connect (gtk_settings_get_default (), "notify::gtk-theme-name", G_CALLBACK (stead_scheme_update), NULL);
  if (stead_settings_get () != NULL)
    g_signal_connect (stead_settings_get (), "changed::color-scheme", G_CALLBACK (stead_scheme_update), NULL);
  g_bus_get (G_BUS_TYPE_SESSION, NULL, bus_cb, NULL);
}

gboolean
stead_scheme_is_dark (void)
{
  return scheme.is_dark;
}
