/* stead-count-sheet-why.c - a count of the store room, worked out while it is typed. */
#include "config.h"

#include "answer/stead-store-room-why.h"

#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define ON_RECORD N_("What is on record, and what is missing: Saylor, Financial Accounting, section 8.5; OpenStax, Principles of " \
                     "Accounting, vol. 1, section 10.1.")

/* Of many lots the first are named. */
#define NAMED 12

/* A line more: "E26062-1: 240 − 30 = 210" */
static void
add_line (GString              *worked,
          const SteadCountLine *line,
          double                first_base,
          double                second_base,
          double                result_base)
{
  g_autofree char *first = stead_quantity_format (first_base, line->unit);
  g_autofree char *second = stead_quantity_format (second_base, line->unit);
  g_autofree char *result = stead_quantity_format (fabs (result_base), line->unit);

  if (worked->len > 0)
    g_string_append_c (worked, '\n');
  /* Translators: a lot; two amounts and their difference, with its sign. */
  g_string_append_printf (worked, _("%1$s: %2$s − %3$s = %4$s%5$s"), line->lot_code, first, second,
                          result_base < 0 ? "−" : "", result);
}

/* FALSE: what became of the lot cannot be read. */
static gboolean
add_record (GString               *worked,
            SteadStore            *store,
            const SteadStockCount *count,
            const SteadCountLine  *line)
{
  g_autoptr(GPtrArray) moves = stead_lot_repo_moves (store, line->lot_id, NULL);
  double in = 0, out = 0;

  for (guint i = 0; moves != NULL && i < moves->len; i++)
    {
      const SteadMove *move = moves->pdata[i];

      if (move->day > count->day)
        continue;
      in += MAX (move->quantity_base, 0);
      out += MAX (-move->quantity_base, 0);
    }
  if (moves != NULL)
    add_line (worked, line, in, out, line->expected_base);
  return moves != NULL;
}

/* Nothing is told of a lot before it is counted: who knows how much should be there finds just that. */
static SteadWhy *
record_why (SteadStore            *store,
            const SteadStockCount *count)
{
  GString *worked = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; i < count->lines->len && n < NAMED; i++)
    {
      const SteadCountLine *line = count->lines->pdata[i];

      if (!isnan (line->counted_base))
        n += add_record (worked, store, count, line);
    }
  if (n == 0)
    g_string_append (worked, _("Count first, then compare."));
  return stead_why_new (g_strdup (_("What should be there")),
                        _("Of each lot, up to the end of the day: what came in or was found − what was used, sold, given away, "
                          "lost or missing."),
                        g_string_free (worked, FALSE),
                        _(ON_RECORD));
}

static SteadWhy *
difference_why (const SteadStockCount *count)
{
  GString *worked = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; i < count->lines->len && n < NAMED; i++)
    {
      const SteadCountLine *line = count->lines->pdata[i];

      if (isnan (line->counted_base))
        continue;
      add_line (worked, line, line->counted_base, line->expected_base, line->counted_base - line->expected_base);
      n++;
    }
  if (n == 0)
    {
      g_string_free (worked, TRUE);
      return NULL;
    }
  return stead_why_new (g_strdup (_("Missing or more")),
                        _("Counted − on record. What is missing takes along its share of what the lot cost; what is found more "
                          "brings no cost, for it was paid for already."), g_string_free (worked, FALSE), _(ON_RECORD));
}

GPtrArray *
stead_count_sheet_whys (SteadStore            *store,
                        const SteadStockCount *count)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (STEAD_IS_STORE (store) && count != NULL, whys);
  if (count->lines->len == 0)
    return whys;
  stead_whys_add (whys, record_why (store, count));
  stead_whys_add (whys, difference_why (count));
  return whys;
}
