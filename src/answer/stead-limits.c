/* stead-limits.c - the tables of food safety that the program ships, read once. */
#include "config.h"

#include "answer/stead-limits.h"
#include "answer/stead-words.h"
#include "data/limits/steading-limits.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define LIMITS "/farm/steading/Steading/limits/"

SteadLimitTable *
stead_limits_read (GResource  *resource,
                   const char *folder)
{
  g_autoptr(SteadLimitTable) table = stead_limit_table_new ();
  g_auto(GStrv) names = g_resource_enumerate_children (resource, folder, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);

  for (gsize i = 0; names != NULL && names[i] != NULL; i++)
    {
      g_autofree char *path = g_strconcat (folder, names[i], NULL);
      g_autoptr(GBytes) csv = g_resource_lookup_data (resource, path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
      g_autoptr(GError) error = NULL;

      if (!stead_limit_table_add_csv (table, names[i], csv, &error))
        g_critical ("%s", error->message);
    }
  return g_steal_pointer (&table);
}

const SteadLimitTable *
stead_limits_get (void)
{
  static SteadLimitTable *table;

  if (g_once_init_enter (&table))
    g_once_init_leave (&table, stead_limits_read (steading_limits_get_resource (), LIMITS));
  return table;
}

SteadLimitTable *
stead_limits_new (const SteadLimitLocal  *local,
                  gsize                   n,
                  int                     edition,
                  GError                **error)
{
  g_autoptr(SteadLimitTable) table = NULL;

  g_return_val_if_fail (local != NULL || n == 0, NULL);
  table = stead_limit_table_new_over (stead_limits_get ());
  if (edition > 0)
    stead_limit_table_set_edition (table, edition);
  for (gsize i = 0; i < n; i++)
    if (!stead_limit_table_add_local (table, &local[i], error))
      return NULL;
  return g_steal_pointer (&table);
}

/* --- in words ------------------------------------------------------------------- */

/* The value with its unit as the code prints it. */
static char *
value_text (const SteadLimit *limit)
{
  g_autofree char *number = stead_number_format (limit->value, 4);

  if (g_str_equal (limit->unit, "F") || g_str_equal (limit->unit, "Fdiff"))
    return g_strdup_printf ("%s °F", number);
  if (g_str_equal (limit->unit, "Cdiff"))
    return g_strdup_printf ("%s °C", number);
  if (g_str_equal (limit->unit, "pH"))
    return g_strdup_printf ("pH %s", number);
  return g_strdup_printf ("%s %s", number, limit->unit);
}

static char *
time_text (double time_s)
{
  double amount = time_s >= 7200 ? time_s / 3600 : time_s >= 120 ? time_s / 60 : time_s;
  g_autofree char *number = stead_number_format (amount, 1);

  return g_strdup_printf (time_s >= 7200 ? C_("time", "%s h") : time_s >= 120 ? C_("time", "%s min")
                          : C_("time", "%s s"), number);
}

static const char *
direction_format (SteadLimitDirection direction)
{
  switch (direction)
    {
    case STEAD_LIMIT_AT_LEAST: return C_("limit", "at least %s");
    case STEAD_LIMIT_AT_MOST: return C_("limit", "at most %s");
    case STEAD_LIMIT_ABOVE: return C_("limit", "above %s");
    case STEAD_LIMIT_BELOW: return C_("limit", "below %s");
    case STEAD_LIMIT_IS:
    default: return "%s";
    }
}

char *
stead_limits_text (const SteadLimit *limit)
{
  g_autofree char *value = NULL;
  g_autofree char *time = NULL;
  g_autofree char *whole = NULL;

  g_return_val_if_fail (limit != NULL, NULL);
  value = limit->word != NULL ? g_strdup (limit->word) : value_text (limit);
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  whole = g_strdup_printf (direction_format (limit->direction), value);
#pragma GCC diagnostic pop
  if (!limit->has_time || !(limit->time_s > 0))
    return g_steal_pointer (&whole);
  time = time_text (limit->time_s);
  if (limit->time_direction == STEAD_LIMIT_AT_MOST)
    /* Translators: a limit that must be reached in time: "at most 70 °F within 2 h". */
    return g_strdup_printf (C_("limit", "%s within %s"), whole, time);
  /* Translators: a limit that must be held: "at least 155 °F for 17 s". */
  return g_strdup_printf (C_("limit", "%s for %s"), whole, time);
}

char *
stead_limits_source (const SteadLimit *limit)
{
  g_autofree char *source = NULL;

  g_return_val_if_fail (limit != NULL, NULL);
  if (g_str_equal (limit->status, "practice"))
    return g_strdup (_("common practice, no source"));
  source = g_str_equal (limit->version, "undated") ? g_strdup_printf ("%s, %s", limit->source, limit->where)
                                                   : g_strdup_printf ("%s %s, %s", limit->source, limit->version,
                                                                      limit->where);
  if (g_str_equal (limit->status, "memory"))
    /* Translators: a source; its text was not at hand when the limit was entered. */
    return g_strdup_printf (_("%s (from memory: check it)"), source);
  return g_steal_pointer (&source);
}
