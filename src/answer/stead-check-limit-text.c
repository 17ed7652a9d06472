/* stead-check-limit-text.c - rows of limits in the words of a sentence. */
#include "config.h"

#include "answer/stead-check-plan-private.h"
#include "answer/stead-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* More alternatives than a sentence can bear, as the chart of roasts has. */
#define MOST_NAMED 5

#define MINUTE_S 60.0
#define HOUR_S 3600.0
#define DAY_S 86400.0

char *
stead_check_span_text (double seconds)
{
  double amount = seconds;
  gulong n;
  g_autofree char *number = NULL;

  if (seconds >= 3 * DAY_S)
    amount = seconds / DAY_S;
  else if (seconds >= 2 * HOUR_S)
    amount = seconds / HOUR_S;
  else if (seconds > 90)
    amount = seconds / MINUTE_S;
  number = stead_number_format (amount, 1);
  n = (gulong) ceil (amount);
  if (seconds >= 3 * DAY_S)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s day", "%s days", n), number);
  if (seconds >= 2 * HOUR_S)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s hour", "%s hours", n), number);
  if (seconds > 90)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s minute", "%s minutes", n), number);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s second", "%s seconds", n), number);
}

char *
stead_check_temp_text (double          temp_f,
                       gboolean        up,
                       SteadUnitSystem units)
{
  g_autofree char *f = stead_number_format (temp_f, 1);
  double tenths = (temp_f - 32) / 1.8 * 10;
  g_autofree char *c = NULL;

  if (units == STEAD_UNITS_US)
    return g_strdup_printf ("%s °F", f);
  /* What is exact in binary noise stays where it is. */
  tenths = up ? ceil (tenths - 1e-6) : floor (tenths + 1e-6);
  c = stead_number_format (tenths / 10, 1);
  return g_strdup_printf ("%s °C (%s °F)", c, f);
}

static char *
value_text (const SteadLimit *row,
            SteadUnitSystem   units)
{
  gboolean up = row->direction == STEAD_LIMIT_AT_LEAST || row->direction == STEAD_LIMIT_ABOVE;
  g_autofree char *number = NULL;

  if (row->word != NULL)
    return g_strdup (row->word);
  if (g_str_equal (row->unit, "F"))
    return stead_check_temp_text (row->value, up, units);
  if (!isnan (stead_limit_value_in (row, "s")))
    return stead_check_span_text (stead_limit_value_in (row, "s"));
  number = stead_number_format (row->value, 4);
  if (g_str_equal (row->unit, "Fdiff") && units == STEAD_UNITS_METRIC)
    {
      g_autofree char *c = stead_number_format (floor (row->value / 1.8 * 10 + 1e-6) / 10, 1);

      return g_strdup_printf ("%s °C", c);
    }
  if (g_str_equal (row->unit, "Fdiff"))
    return g_strdup_printf ("%s °F", number);
  if (g_str_equal (row->unit, "Cdiff") && units == STEAD_UNITS_US)
    {
      g_autofree char *f = stead_number_format (row->value * 1.8, 1);

      return g_strdup_printf ("%s °F", f);
    }
  if (g_str_equal (row->unit, "Cdiff"))
    return g_strdup_printf ("%s °C", number);
  if (g_str_equal (row->unit, "pH"))
    return g_strdup_printf ("pH %s", number);
  if (g_str_equal (row->unit, "y"))
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s year", "%s years", (gulong) row->value), number);
  if (g_str_equal (row->unit, "in") && units == STEAD_UNITS_METRIC)
    {
      g_autofree char *cm = stead_number_format (row->value * 2.54, 1);

      return g_strdup_printf ("%s cm", cm);
    }
  return g_strdup_printf ("%s %s", number, row->unit);
}

char *
stead_check_row_text (const SteadLimit *row,
                      SteadUnitSystem   units)
{
  g_autofree char *value = value_text (row, units);
  g_autofree char *time = NULL;

  if (!row->has_time || !(row->time_s > 0))
    return g_steal_pointer (&value);
  time = stead_check_span_text (row->time_s);
  if (row->time_direction == STEAD_LIMIT_AT_MOST)
    /* Translators: a temperature that must be reached in a time: "70 °F within 2 hours". */
    return g_strdup_printf (C_("limit", "%s within %s"), value, time);
  /* Translators: a temperature that must be held for a time: "155 °F for 17 seconds". */
  return g_strdup_printf (C_("limit", "%s for %s"), value, time);
}

/* "a, b, or c": each is a text of its own. */
static char *
join (const GPtrArray *texts,
      gboolean         all)
{
  g_autofree char *list = NULL;

  if (texts->len == 1)
    return g_strdup (texts->pdata[0]);
  list = g_strdup (texts->pdata[0]);
  for (guint i = 1; i + 1 < texts->len; i++)
    {
      g_autofree char *before = g_steal_pointer (&list);

      /* Translators: a list of limits, not yet at its end. */
      list = g_strdup_printf (C_("limits", "%s, %s"), before, (const char *) texts->pdata[i]);
    }
  /* Translators: the end of a list of limits: all must be met, or any one is enough. */
  return all ? g_strdup_printf (C_("limits", "%s, and %s"), list, (const char *) texts->pdata[texts->len - 1])
             : g_strdup_printf (C_("limits", "%s, or %s"), list, (const char *) texts->pdata[texts->len - 1]);
}

static char *
directed (SteadLimitDirection  direction,
          const char          *text)
{
  switch (direction)
    {
    case STEAD_LIMIT_AT_LEAST: return g_strdup_printf (C_("limit", "at least %s"), text);
    case STEAD_LIMIT_AT_MOST: return g_strdup_printf (C_("limit", "at most %s"), text);
    case STEAD_LIMIT_ABOVE: return g_strdup_printf (C_("limit", "above %s"), text);
    case STEAD_LIMIT_BELOW: return g_strdup_printf (C_("limit", "below %s"), text);
    case STEAD_LIMIT_IS:
    default: return g_strdup (text);
    }
}

/* Rows of one direction name it once: "at least 150 °F for 60 seconds, or 158 °F". */
char *
stead_check_limit_text (const GPtrArray *rows,
                        gboolean         all,
                        SteadUnitSystem  units)
{
  g_autoptr(GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  SteadLimitDirection direction = STEAD_LIMIT_IS;
  gboolean one = TRUE;
  g_autofree char *joined = NULL;

  g_return_val_if_fail (rows != NULL, NULL);
  for (guint i = 0; i < rows->len; i++)
    {
      const SteadLimit *row = rows->pdata[i];

      if (row->direction == STEAD_LIMIT_IS)
        return NULL;
      one &= i == 0 || row->direction == direction;
      direction = row->direction;
    }
  if (rows->len == 0)
    return NULL;
  for (guint i = 0; i < rows->len; i++)
    {
      g_autofree char *text = stead_check_row_text (rows->pdata[i], units);

      if (rows->len > MOST_NAMED && i > 0 && i + 1 < rows->len)
        continue;
      g_ptr_array_add (texts, one ? g_steal_pointer (&text)
                                  : directed (((const SteadLimit *) rows->pdata[i])->direction, text));
    }
  if (rows->len > MOST_NAMED)
    /* Translators: instead of a long list of pairs of temperature and time. */
    g_ptr_array_insert (texts, 1, g_strdup (_("a pair of the chart between")));
  joined = join (texts, all);
  return one ? directed (direction, joined) : g_steal_pointer (&joined);
}
