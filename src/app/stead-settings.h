/* stead-settings.h - habits of one person on one machine; never facts of a farm.
 *
 * Where the schema is not installed nothing is remembered, and nothing fails.
 */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_LOOK_DESKTOP,
  STEAD_LOOK_LIGHT,
  STEAD_LOOK_DARK,
} SteadLook;

/* (transfer none) (nullable): for binding and for "changed::" */
GSettings *stead_settings_get (void);

SteadLook stead_settings_get_look  (void);
void      stead_settings_set_look  (SteadLook look);
/* (transfer full): "" if there is none */
char     *stead_settings_get_text  (const char *key) G_GNUC_WARN_UNUSED_RESULT;
void      stead_settings_set_text  (const char *key, const char *value);

G_END_DECLS
