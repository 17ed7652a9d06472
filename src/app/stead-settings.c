/* stead-settings.c - habits of one person on one machine.
 *
 * g_settings_new() ends the program when its schema is missing; a copy of the
 * program that was merely unpacked must still start, so the schema is looked up.
 */
#include "config.h"

#include "app/stead-settings.h"

#define KEY_LOOK "color-scheme"

GSettings *
stead_settings_get (void)
{
  static GSettings *settings = NULL;
  static gsize done = 0;

  if (g_once_init_enter (&done))
    {
      GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
      g_autoptr(GSettingsSchema) schema = NULL;

      if (source != NULL)
        schema = g_settings_schema_source_lookup (source, STEAD_APP_ID, TRUE);
      if (schema != NULL)
        settings = g_settings_new_full (schema, NULL, NULL);
      g_once_init_leave (&done, 1);
    }
  return settings;
}

/* For this run only, where nothing can be remembered. */
static SteadLook present_look = STEAD_LOOK_DESKTOP;

SteadLook
stead_settings_get_look (void)
{
  GSettings *settings = stead_settings_get ();

  return settings != NULL ? (SteadLook) g_settings_get_enum (settings, KEY_LOOK) : present_look;
}

void
stead_settings_set_look (SteadLook look)
{
  GSettings *settings = stead_settings_get ();

  present_look = look;
  if (settings != NULL)
    g_settings_set_enum (settings, KEY_LOOK, (int) look);
}

char *
stead_settings_get_text (const char *key)
{
  GSettings *settings = stead_settings_get ();

  return settings != NULL ? g_settings_get_string (settings, key) : g_strdup ("");
}

void
stead_settings_set_text (const char *key,
                         const char *value)
{
  GSettings *settings = stead_settings_get ();

  if (settings != NULL)
    g_settings_set_string (settings, key, value);
}
