/* stead-rules.c - the tables of building and work that the program ships, read once. */
#include "config.h"

#include "answer/stead-rules.h"
#include "data/rules/steading-rules.h"

#include <gio/gio.h>

#define RULES "/farm/steading/Steading/rules/"

/* They are part of the program: one that cannot be read is a bug, found by the tests. */
static SteadLimitTable *
read_all (void)
{
  GResource *resource = steading_rules_get_resource ();
  g_autoptr(SteadLimitTable) table = stead_limit_table_new ();
  g_auto(GStrv) names = g_resource_enumerate_children (resource, RULES, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);

  for (gsize i = 0; names != NULL && names[i] != NULL; i++)
    {
      g_autofree char *path = g_strconcat (RULES, names[i], NULL);
      g_autoptr(GBytes) csv = g_resource_lookup_data (resource, path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
      g_autoptr(GError) error = NULL;

      if (!stead_limit_table_add_csv (table, names[i], csv, &error))
        g_critical ("%s", error->message);
    }
  return g_steal_pointer (&table);
}

const SteadLimitTable *
stead_rules_get (void)
{
  static SteadLimitTable *table;

  if (table == NULL)
    table = read_all ();
  return table;
}

const SteadLimit *
stead_rules_figure (const char *process,
                    const char *subject,
                    const char *measure)
{
  const SteadLimitTable *table = stead_rules_get ();

  g_return_val_if_fail (process != NULL && subject != NULL && measure != NULL, NULL);
  for (guint i = 0; i < stead_limit_table_get_n_rows (table); i++)
    {
      const SteadLimit *row = stead_limit_table_get_row (table, i);

      if (row->direction == STEAD_LIMIT_IS && g_str_equal (row->process, process) &&
          g_str_equal (row->subject, subject) && g_str_equal (row->measure, measure))
        return row;
    }
  return NULL;
}
