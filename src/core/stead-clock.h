/* stead-clock.h - times of the day as the clock on the wall shows them, and their text. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Not said. */
#define STEAD_MINUTE_NONE (-1)

/**
 * stead_minute_format:
 * @minute: minutes after midnight, 0 to 1439, or %STEAD_MINUTE_NONE
 *
 * Returns: (transfer full): "7:30 AM" where the locale has morning and afternoon,
 *   else "7:30"; empty for %STEAD_MINUTE_NONE
 */
char *stead_minute_format (int minute) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_minute_parse:
 * @text: "7:30", "07.30", "19:30", "7:30 pm", "7 am", "0730"; empty is not said
 * @out_minute: (out): minutes after midnight
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE with @error set and @out_minute left alone
 */
gboolean stead_minute_parse (const char  *text,
                             int         *out_minute,
                             GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
