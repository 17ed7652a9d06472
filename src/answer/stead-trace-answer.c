/* stead-trace-answer.c - "Where did this lot come from, and where is all of it now?" */
#include "config.h"

#include "answer/stead-trace-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Amounts nearer to each other than this are the same: a milligram. */
#define SAME 1e-6

static void
row_free (gpointer data)
{
  SteadTraceRow *row = data;

  g_free (row->name);
  g_free (row->from);
  g_free (row->in);
  g_free (row->found);
  g_free (row->used);
  g_free (row->sold);
  g_free (row->given);
  g_free (row->lost);
  g_free (row->left);
  g_free (row);
}

static void
batch_row_free (gpointer data)
{
  SteadTraceBatchRow *row = data;

  g_free (row->people);
  g_free (row->checks);
  g_free (row);
}

void
stead_trace_answer_free (SteadTraceAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->back, g_ptr_array_unref);
  g_clear_pointer (&self->ahead, g_ptr_array_unref);
  g_clear_pointer (&self->batches, g_ptr_array_unref);
  g_clear_pointer (&self->suppliers, g_ptr_array_unref);
  g_clear_pointer (&self->flow, stead_flow_free);
  g_clear_pointer (&self->trace, stead_trace_free);
  g_free (self->sentence);
  g_free (self->caution);
  g_free (self);
}

/* --- rows ---------------------------------------------------------------------- */

char *
stead_trace_amount (double           base,
                    const SteadUnit *unit)
{
  g_return_val_if_fail (unit != NULL, NULL);

  return fabs (base) > SAME ? stead_quantity_format (base, unit) : NULL;
}

static char *
from_text (const SteadTrace    *trace,
           const SteadTraceLot *lot)
{
  const SteadTraceBatch *batch = lot->batch_id != 0 ? stead_trace_find_batch (trace, lot->batch_id) : NULL;
  g_autofree char *day = stead_day_format (lot->day, STEAD_DAY_STYLE_MEDIUM);

  if (lot->batch_id != 0 && batch == NULL)
    /* Translators: a day. */
    return g_strdup_printf (_("made on %s"), day);
  if (batch != NULL)
    /* Translators: a batch, a day. */
    return g_strdup_printf (_("made by %s on %s"), batch->name, day);
  if (lot->is_gift)
    /* Translators: who gave it, a day. */
    return g_strdup_printf (_("given by %s on %s"), lot->supplier, day);
  if (lot->reference != NULL)
    /* Translators: a shop, a day, the number on the receipt. */
    return g_strdup_printf (_("%s, %s, receipt %s"), lot->supplier, day, lot->reference);
  /* Translators: a shop, a day. */
  return g_strdup_printf (C_("where a lot came from", "%s, %s"), lot->supplier != NULL ? lot->supplier : "?", day);
}

static SteadTraceRow *
row_new (const SteadTrace    *trace,
         const SteadTraceLot *lot)
{
  SteadTraceRow *row = g_new0 (SteadTraceRow, 1);

  row->lot = lot;
  row->name = g_strdup_printf ("%s, %s", lot->item_name, lot->code);
  row->from = from_text (trace, lot);
  row->in = stead_trace_amount (lot->in_base, lot->unit);
  row->found = stead_trace_amount (lot->found_base, lot->unit);
  row->used = stead_trace_amount (lot->used_base, lot->unit);
  row->sold = stead_trace_amount (lot->sold_base, lot->unit);
  row->given = stead_trace_amount (lot->given_base, lot->unit);
  row->lost = stead_trace_amount (lot->lost_base, lot->unit);
  row->left = stead_trace_amount (lot->left_base, lot->unit);
  row->balances = fabs (stead_trace_lot_gap (lot)) <= SAME;
  return row;
}

static void
add_rows (SteadTraceAnswer *self)
{
  self->back = g_ptr_array_new_with_free_func (row_free);
  self->ahead = g_ptr_array_new_with_free_func (row_free);
  self->balances = TRUE;
  for (guint i = 0; i < self->trace->lots->len; i++)
    {
      const SteadTraceLot *lot = self->trace->lots->pdata[i];
      SteadTraceRow *row = row_new (self->trace, lot);

      g_ptr_array_add (lot->step < 0 ? self->back : self->ahead, row);
      self->balances = self->balances && row->balances;
    }
}

static void
add_supplier (SteadTraceAnswer *self,
              const char       *supplier)
{
  if (supplier != NULL && !g_ptr_array_find_with_equal_func (self->suppliers, supplier, g_str_equal, NULL))
    g_ptr_array_add (self->suppliers, g_strdup (supplier));
}

static int
compare_names (gconstpointer a,
               gconstpointer b)
{
  return g_utf8_collate (*(char * const *) a, *(char * const *) b);
}

static void
add_suppliers (SteadTraceAnswer *self)
{
  self->suppliers = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < self->trace->lots->len; i++)
    {
      const SteadTraceLot *lot = self->trace->lots->pdata[i];

      if (lot->step <= 0)
        add_supplier (self, lot->supplier);
    }
  g_ptr_array_sort (self->suppliers, compare_names);
}

/* --- batches --------------------------------------------------------------------- */

static char *
checks_text (const SteadTraceBatch *batch)
{
  GString *text = g_string_new (NULL);

  if (batch->n_tests > 0)
    {
      gulong n = stead_words_plural (batch->n_tests);
      g_autofree char *day = stead_day_format (batch->last_test, STEAD_DAY_STYLE_MEDIUM);
      g_autofree char *line = g_strdup_printf (ngettext ("%d water test, on %s.", "%d water tests, the last on %s.", n),
                                               (int) batch->n_tests, day);

      stead_words_add (text, line);
    }
  if (batch->n_treatments > 0)
    {
      gulong n = stead_words_plural (batch->n_treatments);
      g_autofree char *line = g_strdup_printf (ngettext ("%d treatment: %s.", "%d treatments, the last: %s.", n),
                                               (int) batch->n_treatments, batch->treatment);

      stead_words_add (text, line);
    }
  if (batch->n_steps > 0)
    {
      /* Translators: of a run sheet in the kitchen. */
      g_autofree char *line = g_strdup_printf (ngettext ("%d of %d step is signed off.", "%d of %d steps are signed off.",
                                                         stead_words_plural (batch->n_steps)),
                                               (int) batch->n_done, (int) batch->n_steps);

      stead_words_add (text, line);
    }
  return stead_words_end (text);
}

static void
add_batches (SteadTraceAnswer *self)
{
  self->batches = g_ptr_array_new_with_free_func (batch_row_free);
  for (guint i = 0; i < self->trace->batches->len; i++)
    {
      SteadTraceBatchRow *row = g_new0 (SteadTraceBatchRow, 1);

      row->batch = self->trace->batches->pdata[i];
      row->people = g_strdup (row->batch->people);
      row->checks = checks_text (row->batch);
      g_ptr_array_add (self->batches, row);
    }
}

/* --- sentences --------------------------------------------------------------------- */

static char *
came_sentence (const SteadTraceAnswer *self)
{
  const SteadTraceLot *lot = self->lot;
  g_autofree char *how_much = stead_quantity_format (lot->in_base, lot->unit);
  g_autofree char *name = g_markup_escape_text (lot->item_name, -1);
  g_autofree char *from = from_text (self->trace, lot);
  g_autofree char *escaped = g_markup_escape_text (from, -1);

  /* Translators: a lot code, a thing, an amount, where it is from: "made by Sauce 4 on March 3". */
  return g_strdup_printf (_("Lot <b>%s</b>, %s, is %s: %s."), lot->code, name, how_much, escaped);
}

static char *
back_sentence (const SteadTraceAnswer *self)
{
  guint n = self->back->len;

  if (n == 0)
    return NULL;
  return g_strdup_printf (ngettext ("<b>%u lot</b> went into it.", "<b>%u lots</b> went into it, step by step.", n), n);
}

static char *
ahead_sentence (const SteadTraceAnswer *self)
{
  guint n = self->ahead->len - 1;

  if (n == 0)
    return NULL;
  return g_strdup_printf (ngettext ("<b>%u other lot</b> was made of it.", "<b>%u other lots</b> were made of it.", n), n);
}

static char *
left_sentence (const SteadTraceAnswer *self)
{
  g_autofree char *state = stead_trace_state (self->lot);

  /* Translators: what became of a lot: "10 sold, 1 lost, 13 left". */
  return *state != '\0' ? g_strdup_printf (_("Of it: %s."), state) : NULL;
}

static void
say (SteadTraceAnswer *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *came = came_sentence (self);
  g_autofree char *left = left_sentence (self);
  g_autofree char *back = back_sentence (self);
  g_autofree char *ahead = ahead_sentence (self);

  stead_words_add (text, came);
  stead_words_add (text, left);
  stead_words_add (text, back);
  stead_words_add (text, ahead);
  self->sentence = stead_words_end (text);
  if (!self->balances)
    self->caution = g_strdup (_("A lot in this trace does not add up. Check the file before you rely on it."));
}

SteadTraceAnswer *
stead_trace_answer_new (SteadStore  *store,
                        gint64       lot_id,
                        GError     **error)
{
  g_autoptr(SteadTraceAnswer) self = g_new0 (SteadTraceAnswer, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->trace = stead_trace_repo_get (store, lot_id, error);
  if (self->trace == NULL)
    return NULL;
  self->lot = stead_trace_find_lot (self->trace, lot_id);
  add_rows (self);
  add_suppliers (self);
  add_batches (self);
  self->flow = stead_trace_flow_new (self->trace);
  say (self);
  return g_steal_pointer (&self);
}
