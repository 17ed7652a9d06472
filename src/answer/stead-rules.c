/* stead-rules.c - the tables of building and work that the program ships, read once. */
#include "config.h"

#include "answer/stead-rules.h"

#include "answer/stead-limits.h"
#include "data/rules/steading-rules.h"

#define RULES "/farm/steading/Steading/rules/"

const SteadLimitTable *
stead_rules_get (void)
{
  static SteadLimitTable *table;

  if (g_once_init_enter (&table))
    g_once_init_leave (&table, stead_limits_read (steading_rules_get_resource (), RULES));
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
