/* check-food.c - what the areas of food safety share. */
#include "check-food.h"

#include "core/stead-calendar.h"

#include <gio/gio.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#define LIMITS "/farm/steading/Steading/limits"
#define EDITION_NOW 2022

static SteadLimitTable *
load_limits (void)
{
  SteadLimitTable *table = stead_limit_table_new ();
  g_auto(GStrv) names = g_resources_enumerate_children (LIMITS, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);

  for (gsize i = 0; names != NULL && names[i] != NULL; i++)
    {
      g_autofree char *path = g_strconcat (LIMITS "/", names[i], NULL);
      g_autoptr(GBytes) csv = g_resources_lookup_data (path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
      g_autoptr(GError) error = NULL;

      if (!stead_limit_table_add_csv (table, names[i], csv, &error))
        g_error ("%s", error->message);
    }
  return table;
}

const SteadLimitTable *
check_limits (CheckRow *row)
{
  static SteadLimitTable *table;
  static const char * const words[] = { "2013", "2017", "2022", NULL };
  static const int editions[] = { 2013, 2017, EDITION_NOW };

  if (table == NULL)
    table = load_limits ();
  stead_limit_table_set_edition (table, editions[check_word (row, "edition", words, 2)]);
  return table;
}

const char *
check_one_of (CheckRow           *row,
              const char         *name,
              const char * const *words,
              int                 fallback)
{
  return words[check_word (row, name, words, fallback)];
}

gboolean
check_yes (CheckRow   *row,
           const char *name,
           int         fallback)
{
  static const char * const words[] = { "no", "yes", NULL };

  return check_word (row, name, words, fallback) == 1;
}

/* Temperatures */

gboolean
check_has_temp (CheckRow   *row,
                const char *name)
{
  g_autofree char *in_f = g_strconcat (name, "_F", NULL);
  g_autofree char *in_c = g_strconcat (name, "_C", NULL);

  return check_has (row, in_f) || check_has (row, in_c);
}

double
check_temp (CheckRow   *row,
            const char *name)
{
  g_autofree char *in_f = g_strconcat (name, "_F", NULL);
  g_autofree char *in_c = g_strconcat (name, "_C", NULL);

  if (!check_has (row, in_c))
    return check_number (row, in_f);
  /* One or the other: both could contradict each other. */
  if (check_has (row, in_f))
    return check_bad_input (row, in_c);
  return stead_fahrenheit_from_celsius (check_number (row, in_c));
}

double
check_temp_or (CheckRow   *row,
               const char *name,
               double      fallback)
{
  return check_has_temp (row, name) ? check_temp (row, name) : fallback;
}

double
check_celsius (double temp_f)
{
  return (temp_f - 32) / 1.8;
}

/* Rows of the tables */

const SteadLimit *
check_find (CheckRow             *row,
            const char           *process,
            const char           *subject,
            const char           *measure,
            const SteadLimitFact *facts)
{
  g_autoptr(GError) error = NULL;
  const SteadLimit *limit = stead_limit_table_find (check_limits (row), process, subject, measure, facts, &error);

  if (limit == NULL)
    check_answer_none (row, error);
  return limit;
}

double
check_find_in (CheckRow             *row,
               const char           *process,
               const char           *subject,
               const char           *measure,
               const SteadLimitFact *facts,
               const char           *unit)
{
  const SteadLimit *limit = check_find (row, process, subject, measure, facts);

  return limit != NULL ? stead_limit_value_in (limit, unit) : NAN;
}

double
check_find_word (CheckRow             *row,
                 const char           *process,
                 const char           *subject,
                 const char           *measure,
                 const SteadLimitFact *facts)
{
  const SteadLimit *limit = check_find (row, process, subject, measure, facts);

  return limit != NULL && limit->word != NULL ? check_answer_word (row, limit->word) : NAN;
}

/* Days */

gint32
check_day_of (CheckRow   *row,
              const char *name,
              const char *text)
{
  int year = 0, month = 0, mday = 0, used = 0;
  SteadDay day = STEAD_DAY_NONE;

  if (strlen (text) == 10 && sscanf (text, "%4d-%2d-%2d%n", &year, &month, &mday, &used) == 3 && used == 10)
    day = stead_day_new (year, month, mday);
  if (day == STEAD_DAY_NONE)
    check_bad_input (row, name);
  return day;
}

gint32
check_day (CheckRow   *row,
           const char *name)
{
  return check_day_of (row, name, check_text (row, name));
}

double
check_answer_day (CheckRow *row,
                  gint32    day)
{
  g_autofree char *text = stead_day_format (day, STEAD_DAY_STYLE_ISO);

  return check_answer_word (row, text);
}
