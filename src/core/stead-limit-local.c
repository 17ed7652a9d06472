/* stead-limit-local.c - stricter local rules in the place of shipped rows. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-limit-private.h"
#include "core/stead-quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static gboolean
is_looser (SteadLimitDirection direction,
           double              local,
           double              shipped)
{
  int order = stead_limit_compare (local, shipped);

  return direction == STEAD_LIMIT_AT_LEAST || direction == STEAD_LIMIT_ABOVE ? order < 0 : order > 0;
}

/* As people write it. */
static const char *
symbol_of (const char *unit)
{
  if (g_str_equal (unit, "F") || g_str_equal (unit, "Fdiff"))
    return "°F";
  return g_str_equal (unit, "C") || g_str_equal (unit, "Cdiff") ? "°C" : unit;
}

static gboolean
set_looser_error (const SteadLimit  *limit,
                  double             local,
                  double             shipped,
                  const char        *unit,
                  GError           **error)
{
  g_autofree char *local_text = stead_number_format (local, 3);
  g_autofree char *shipped_text = stead_number_format (shipped, 3);

  g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
               _("%s %s is looser than %s %s of %s %s. A local rule may only be stricter: "
                 "keep the stricter one, or ask your health authority."),
               local_text, symbol_of (unit), shipped_text, symbol_of (unit), limit->source, limit->where);
  return FALSE;
}

static gboolean
can_replace (const SteadLimit       *limit,
             const SteadLimitLocal  *local,
             GError                **error)
{
  if (local->source == NULL || *local->source == '\0' || local->where == NULL || *local->where == '\0')
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("A local rule needs its source: name the code and the section."));
      return FALSE;
    }
  if (limit == NULL || limit->direction == STEAD_LIMIT_IS
      || (!isnan (local->time_s) && !limit->has_time) || isinf (local->value) || isinf (local->time_s))
    {
      g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                   _("“%s” is no limit that a local rule can make stricter."), local->id);
      return FALSE;
    }
  if (!isnan (local->value) && is_looser (limit->direction, local->value, limit->value))
    return set_looser_error (limit, local->value, limit->value, limit->unit, error);
  if (!isnan (local->time_s) && is_looser (limit->time_direction, local->time_s, limit->time_s))
    return set_looser_error (limit, local->time_s, limit->time_s, "s", error);
  return TRUE;
}

gboolean
stead_limit_check_local (const SteadLimitTable  *table,
                         const SteadLimitLocal  *local,
                         GError                **error)
{
  const LimitRow *row;

  g_return_val_if_fail (table != NULL && local != NULL && local->id != NULL, FALSE);
  row = g_hash_table_lookup (table->by_id, local->id);
  /* A local rule may be corrected: it is held against the shipped row, not the last one. */
  if (row != NULL && row->shipped != NULL)
    row = row->shipped;
  return can_replace (row != NULL ? &row->limit : NULL, local, error);
}

static LimitRow *
row_with_local (SteadLimitTable       *table,
                const LimitRow        *shipped,
                const SteadLimitLocal *local)
{
  LimitRow *row = g_new0 (LimitRow, 1);
  g_autofree char *replaces = g_strdup_printf ("%s %s", shipped->limit.source, shipped->limit.where);
  const char *version = local->version != NULL ? local->version : "undated";

  row->limit = shipped->limit;
  row->subjects = g_strdupv (shipped->subjects);
  row->conditions = limit_conditions_parse (shipped->limit.when);
  row->shipped = shipped;
  if (!isnan (local->value))
    row->limit.value = local->value;
  if (!isnan (local->time_s))
    row->limit.time_s = local->time_s;
  row->limit.replaces = g_string_chunk_insert_const (table->strings, replaces);
  row->limit.source = g_string_chunk_insert_const (table->strings, local->source);
  row->limit.where = g_string_chunk_insert_const (table->strings, local->where);
  row->limit.version = g_string_chunk_insert_const (table->strings, version);
  row->limit.status = g_string_chunk_insert_const (table->strings, "local");
  return row;
}

gboolean
stead_limit_table_add_local (SteadLimitTable        *table,
                             const SteadLimitLocal  *local,
                             GError                **error)
{
  LimitRow *row;
  LimitRow *stricter;
  const LimitRow *shipped;
  guint place = 0;

  g_return_val_if_fail (table != NULL && local != NULL && local->id != NULL, FALSE);

  row = g_hash_table_lookup (table->by_id, local->id);
  /* A local rule may be corrected: it is held against the shipped row, not the last one. */
  shipped = row != NULL && row->shipped != NULL ? row->shipped : row;
  if (!can_replace (shipped != NULL ? &shipped->limit : NULL, local, error))
    return FALSE;
  stricter = row_with_local (table, shipped, local);
  g_ptr_array_find (table->rows, row, &place);
  /* Whoever still looks at the former row may go on doing so. */
  g_ptr_array_add (table->own, stricter);
  table->rows->pdata[place] = stricter;
  g_hash_table_insert (table->by_id, (char *) stricter->limit.id, stricter);
  return TRUE;
}
