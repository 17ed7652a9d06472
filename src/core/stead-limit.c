/* stead-limit.c - the table of limits: what is in it, and which row fits. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-limit-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define EDITION_NOW 2022

SteadLimitTable *
stead_limit_table_new (void)
{
  SteadLimitTable *table = g_new0 (SteadLimitTable, 1);

  table->rows = g_ptr_array_new ();
  table->own = g_ptr_array_new_with_free_func ((GDestroyNotify) limit_row_free);
  table->by_id = g_hash_table_new (g_str_hash, g_str_equal);
  table->strings = g_string_chunk_new (4096);
  table->edition = EDITION_NOW;
  return table;
}

SteadLimitTable *
stead_limit_table_new_over (const SteadLimitTable *base)
{
  SteadLimitTable *table;

  g_return_val_if_fail (base != NULL, NULL);
  table = stead_limit_table_new ();
  table->edition = base->edition;
  for (guint i = 0; i < base->rows->len; i++)
    {
      LimitRow *row = base->rows->pdata[i];

      g_ptr_array_add (table->rows, row);
      g_hash_table_insert (table->by_id, (char *) row->limit.id, row);
    }
  return table;
}

void
stead_limit_table_free (SteadLimitTable *table)
{
  if (table == NULL)
    return;
  g_hash_table_unref (table->by_id);
  g_ptr_array_unref (table->rows);
  g_ptr_array_unref (table->own);
  g_string_chunk_free (table->strings);
  g_free (table);
}

void
limit_row_free (LimitRow *row)
{
  if (row == NULL)
    return;
  g_strfreev (row->subjects);
  g_clear_pointer (&row->conditions, g_array_unref);
  g_free (row);
}

void
stead_limit_table_set_edition (SteadLimitTable *table,
                               int              edition)
{
  g_return_if_fail (table != NULL && edition > 0);
  table->edition = edition;
}

guint
stead_limit_table_get_n_rows (const SteadLimitTable *table)
{
  g_return_val_if_fail (table != NULL, 0);
  return table->rows->len;
}

const SteadLimit *
stead_limit_table_get_row (const SteadLimitTable *table,
                           guint                  i)
{
  g_return_val_if_fail (table != NULL && i < table->rows->len, NULL);
  return &((LimitRow *) table->rows->pdata[i])->limit;
}

const SteadLimit *
stead_limit_table_by_id (const SteadLimitTable *table,
                         const char            *id)
{
  const LimitRow *row;

  g_return_val_if_fail (table != NULL && id != NULL, NULL);
  row = g_hash_table_lookup (table->by_id, id);
  return row != NULL ? &row->limit : NULL;
}

/* Whether a row fits */

static const SteadLimitFact *
fact_by_name (const SteadLimitFact *facts,
              const SteadLimitFact *edition,
              const char           *name)
{
  for (; facts != NULL && facts->name != NULL; facts++)
    if (g_str_equal (facts->name, name))
      return facts;
  return g_str_equal (name, edition->name) ? edition : NULL;
}

static gboolean
condition_holds (const LimitCondition *condition,
                 const SteadLimitFact *fact)
{
  int order;

  if (condition->words != NULL)
    return fact->word != NULL && g_strv_contains ((const char * const *) condition->words, fact->word);
  if (fact->word != NULL || isnan (fact->number))
    return FALSE;
  order = stead_limit_compare (fact->number, condition->number);
  switch (condition->op)
    {
    case LIMIT_IF_EQUAL: return order == 0;
    case LIMIT_IF_LESS: return order < 0;
    case LIMIT_IF_AT_MOST: return order <= 0;
    case LIMIT_IF_MORE: return order > 0;
    case LIMIT_IF_AT_LEAST: return order >= 0;
    default: g_return_val_if_reached (FALSE);
    }
}

/* @missing gets the name of a fact that nobody gave, if it would have mattered. */
static gboolean
conditions_hold (const SteadLimitTable *table,
                 const LimitRow        *row,
                 const SteadLimitFact  *facts,
                 const char           **missing)
{
  const SteadLimitFact edition = { "edition", NULL, table->edition };
  const char *absent = NULL;

  for (guint i = 0; i < row->conditions->len; i++)
    {
      const LimitCondition *condition = &g_array_index (row->conditions, LimitCondition, i);
      const SteadLimitFact *fact = fact_by_name (facts, &edition, condition->name);

      if (fact == NULL)
        absent = condition->name;
      else if (!condition_holds (condition, fact))
        return FALSE;
    }
  if (absent != NULL && missing != NULL && *missing == NULL)
    *missing = absent;
  return absent == NULL;
}

gboolean
stead_limit_fits (const SteadLimit     *limit,
                  const SteadLimitFact *facts)
{
  g_autoptr(GArray) conditions = NULL;

  g_return_val_if_fail (limit != NULL && facts != NULL, FALSE);

  conditions = limit_conditions_parse (limit->when != NULL ? limit->when : "");
  for (guint i = 0; conditions != NULL && i < conditions->len; i++)
    {
      const LimitCondition *condition = &g_array_index (conditions, LimitCondition, i);
      const SteadLimitFact *fact = facts;

      while (fact->name != NULL && !g_str_equal (fact->name, condition->name))
        fact++;
      if (fact->name == NULL || !condition_holds (condition, fact))
        return FALSE;
    }
  return conditions != NULL;
}

static gboolean
is_about (const LimitRow *row,
          const char     *process,
          const char     *subject,
          const char     *measure)
{
  return g_str_equal (row->limit.process, process)
         && (measure == NULL || g_str_equal (row->limit.measure, measure))
         && (g_strv_contains ((const char * const *) row->subjects, subject)
             || g_str_equal (row->limit.subject, "any"));
}

/* "altitude ft" for "altitude_ft". */
static char *
readable (const char *id)
{
  return g_strdelimit (g_strdup (id), "_", ' ');
}

static void
set_not_found (const char  *process,
               const char  *subject,
               const char  *missing,
               GError     **error)
{
  g_autofree char *fact = missing != NULL ? readable (missing) : NULL;
  g_autofree char *food = readable (subject);
  g_autofree char *work = readable (process);

  if (fact != NULL)
    g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                 _("The limit depends on “%s”. Enter it first."), fact);
  else
    g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                 _("The tables have no limit for “%s” (%s). Ask your local health authority."),
                 food, work);
}

const SteadLimit *
stead_limit_table_find (const SteadLimitTable  *table,
                        const char             *process,
                        const char             *subject,
                        const char             *measure,
                        const SteadLimitFact   *facts,
                        GError                **error)
{
  const char *missing = NULL;

  g_return_val_if_fail (table != NULL && process != NULL && subject != NULL, NULL);

  for (guint i = 0; i < table->rows->len; i++)
    {
      const LimitRow *row = table->rows->pdata[i];

      if (is_about (row, process, subject, measure)
          && conditions_hold (table, row, facts, &missing))
        return &row->limit;
    }
  set_not_found (process, subject, missing, error);
  return NULL;
}

static GPtrArray *
list_rows (const SteadLimitTable *table,
           const char            *process,
           const char            *subject,
           const char            *measure,
           const SteadLimitFact  *facts,
           const char           **missing)
{
  GPtrArray *list = g_ptr_array_new ();

  for (guint i = 0; i < table->rows->len; i++)
    {
      LimitRow *row = table->rows->pdata[i];

      if (is_about (row, process, subject, measure) && conditions_hold (table, row, facts, missing))
        g_ptr_array_add (list, &row->limit);
    }
  return list;
}

GPtrArray *
stead_limit_table_list (const SteadLimitTable *table,
                        const char            *process,
                        const char            *subject,
                        const char            *measure,
                        const SteadLimitFact  *facts)
{
  g_return_val_if_fail (table != NULL && process != NULL && subject != NULL, NULL);
  return list_rows (table, process, subject, measure, facts, NULL);
}

const SteadLimit *
stead_limit_table_lowest (const SteadLimitTable  *table,
                          const char             *process,
                          const char             *subject,
                          const char             *measure,
                          const SteadLimitFact   *facts,
                          GError                **error)
{
  g_autoptr(GPtrArray) list = NULL;
  const SteadLimit *lowest = NULL;
  const char *missing = NULL;

  g_return_val_if_fail (table != NULL && process != NULL && subject != NULL, NULL);

  list = list_rows (table, process, subject, measure, facts, &missing);
  for (guint i = 0; i < list->len; i++)
    {
      const SteadLimit *limit = list->pdata[i];

      if (!isnan (limit->value) && (lowest == NULL || limit->value < lowest->value))
        lowest = limit;
    }
  if (lowest == NULL)
    set_not_found (process, subject, missing, error);
  return lowest;
}

const SteadLimit *
stead_limit_table_step (const SteadLimitTable  *table,
                        const char             *process,
                        const char             *subject,
                        const char             *measure,
                        const SteadLimitFact   *facts,
                        double                  value,
                        GError                **error)
{
  g_autoptr(GPtrArray) list = NULL;
  const SteadLimit *step = NULL;
  const char *missing = NULL;

  g_return_val_if_fail (table != NULL && process != NULL && subject != NULL, NULL);

  list = list_rows (table, process, subject, measure, facts, &missing);
  for (guint i = 0; i < list->len; i++)
    {
      const SteadLimit *limit = list->pdata[i];

      if (limit->direction == STEAD_LIMIT_AT_LEAST && stead_limit_compare (value, limit->value) >= 0
          && (step == NULL || limit->value > step->value))
        step = limit;
    }
  if (step != NULL)
    return step;
  if (list->len == 0)
    set_not_found (process, subject, missing, error);
  else
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                         _("The reading lies below the first row of the table: no time there is enough."));
  return NULL;
}
