/* stead-check-text.c - readings, times and people of a checklist as they are written. */
#include "config.h"

#include "answer/stead-answer-error.h"
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

/* Letters alone, in one case. */
static char *
fold (const char *text)
{
  g_autofree char *folded = g_utf8_casefold (text, -1);
  GString *out = g_string_new (NULL);

  for (const char *at = folded; *at != '\0'; at = g_utf8_next_char (at))
    if (g_unichar_isalnum (g_utf8_get_char (at)))
      g_string_append_unichar (out, g_utf8_get_char (at));
  return g_string_free (out, FALSE);
}

/* How many of those who are still here fit; @out_id: the last of them. */
static guint
count_people (const GPtrArray *people,
              const char      *wanted,
              gboolean         by_initials,
              gint64          *out_id)
{
  guint n = 0;

  for (guint i = 0; i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];
      g_autofree char *initials = stead_check_initials (person->name);
      g_autofree char *folded = fold (by_initials ? initials : person->name);

      if (person->left_on != STEAD_DAY_NONE ||
          !(by_initials ? g_str_equal (folded, wanted) : g_str_has_prefix (folded, wanted)))
        continue;
      *out_id = person->id;
      n++;
    }
  return n;
}

gint64
stead_check_find_person (const GPtrArray  *people,
                         const char       *text,
                         GError          **error)
{
  g_autofree char *wanted = NULL;
  gint64 id = 0;
  guint n;

  g_return_val_if_fail (people != NULL && text != NULL, 0);
  wanted = fold (text);
  n = *wanted != '\0' ? count_people (people, wanted, TRUE, &id) : 0;
  if (n == 0 && *wanted != '\0')
    n = count_people (people, wanted, FALSE, &id);
  if (n == 1)
    return id;
  g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT,
                       n > 1 ? _("Several people are meant by this. Write the name.")
                             : _("Nobody here has these initials. Write them, or the name, as the list of people has it."));
  return 0;
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
