/* stead-check-text.c - readings, times and people of a checklist as they are written. */
#include "config.h"

#include "answer/stead-check-answer.h"
#include "answer/stead-check-plan-private.h"
#include "core/stead-clock.h"

#include <glib/gi18n-lib.h>
#include <math.h>

char *
stead_check_initials (const char *name)
{
  g_autoptr(GString) out = g_string_new (NULL);
  gboolean start = TRUE;

  for (const char *at = name; at != NULL && *at != '\0'; at = g_utf8_next_char (at))
    {
      gunichar sign = g_utf8_get_char (at);

      if (start && g_unichar_isalpha (sign))
        {
          if (out->len > 0)
            g_string_append_c (out, ' ');
          g_string_append_unichar (out, g_unichar_toupper (sign));
          g_string_append_c (out, '.');
          start = FALSE;
        }
      if (g_unichar_isspace (sign) || sign == '-')
        start = TRUE;
    }
  return g_strdup (out->str);
}

char *
stead_check_time_text (gint64 at)
{
  g_autoptr(GDateTime) time = at != STEAD_TIME_NONE ? g_date_time_new_from_unix_local (at) : NULL;

  if (time == NULL)
    return g_strdup ("");
  return stead_minute_format (g_date_time_get_hour (time) * 60 + g_date_time_get_minute (time));
}

static gboolean
is_temperature (const SteadShown *shown,
                const char       *unit)
{
  return g_strcmp0 (unit, "F") == 0 || g_strcmp0 (unit, "C") == 0 || g_str_has_suffix (shown->kind, "_temp")
         || g_str_equal (shown->kind, STEAD_SHOWN_ICE_BATH) || g_str_equal (shown->kind, STEAD_SHOWN_BOILING_WATER);
}

static char *
bare_text (const SteadShown *shown,
           const char       *unit,
           SteadUnitSystem   units)
{
  gboolean celsius = shown->scale != 0 ? shown->scale == 'C' : units == STEAD_UNITS_METRIC;
  g_autofree char *number = NULL;

  if (g_str_equal (shown->kind, "strength"))
    {
      number = stead_number_format (shown->value, 1);
      return g_strdup_printf ("%s mg/L", number);
    }
  if (g_str_equal (shown->kind, "hardness"))
    {
      number = stead_number_format (shown->value, 0);
      /* Translators: how hard water is. */
      return g_strdup_printf (_("hardness %s mg/L"), number);
    }
  if (!g_str_equal (shown->kind, "ph") && is_temperature (shown, unit))
    {
      number = stead_number_format (celsius ? shown->value : stead_fahrenheit_from_celsius (shown->value), 1);
      return g_strdup_printf (celsius ? "%s °C" : "%s °F", number);
    }
  number = stead_number_format (shown->value, 2);
  if (g_strcmp0 (unit, "pH") == 0 || g_str_equal (shown->kind, "ph"))
    return g_strdup_printf ("pH %s", number);
  if (g_strcmp0 (unit, "s") == 0)
    return stead_check_span_text (shown->value);
  return unit != NULL ? g_strdup_printf ("%s %s", number, unit) : g_steal_pointer (&number);
}

char *
stead_check_value_text (const SteadShown *shown,
                        const char       *unit,
                        SteadUnitSystem   units)
{
  g_autofree char *bare = NULL;
  g_autofree char *held = NULL;

  g_return_val_if_fail (shown != NULL, NULL);
  if (g_str_equal (shown->kind, STEAD_MEASURE_DONE))
    return g_strdup (shown->value > 0 ? C_("check", "done") : C_("check", "not done"));
  bare = bare_text (shown, unit, units);
  if (!(shown->held_s > 0))
    return g_steal_pointer (&bare);
  held = stead_check_span_text (shown->held_s);
  /* Translators: a temperature, how long it was held: "155 °F for 17 seconds". */
  return g_strdup_printf (C_("reading", "%1$s for %2$s"), bare, held);
}
