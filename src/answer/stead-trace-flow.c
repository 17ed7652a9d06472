/* stead-trace-flow.c - a trace as cards in columns.
 *
 * A step of the trace is two columns: the batches, and to their right the lots that
 * they made; backward as forward.  Where a column would be too long, lots of one
 * item, and batches of one kind, become one card that says how many they are.
 */
#include "config.h"

#include "answer/stead-trace-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Lots and batches that stand on one card. */
typedef struct
{
  int        column;
  gint64     key;        /* item, or kind of batch; unique where each has a card of its own */
  GPtrArray *lots;       /* of SteadTraceLot (unowned) */
  GPtrArray *batches;    /* of SteadTraceBatch (unowned) */
} Card;

static void
card_free (gpointer data)
{
  Card *card = data;

  g_ptr_array_unref (card->lots);
  g_ptr_array_unref (card->batches);
  g_free (card);
}

/* --- columns ---------------------------------------------------------------------- */

/* Lots at even columns; a batch behind a lot stands before it, one ahead of it after. */
static int
raw_column (const SteadTraceLot   *lot,
            const SteadTraceBatch *batch)
{
  if (lot != NULL)
    return 2 * lot->step;
  return batch->step < 0 ? 2 * batch->step + 1 : 2 * batch->step - 1;
}

static int
first_column (const SteadTrace *trace)
{
  int first = 0;

  for (guint i = 0; i < trace->lots->len; i++)
    first = MIN (first, raw_column (trace->lots->pdata[i], NULL));
  for (guint i = 0; i < trace->batches->len; i++)
    first = MIN (first, raw_column (NULL, trace->batches->pdata[i]));
  return first;
}

static GHashTable *
count_columns (const SteadTrace *trace)
{
  GHashTable *counts = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < trace->lots->len + trace->batches->len; i++)
    {
      int column = i < trace->lots->len ? raw_column (trace->lots->pdata[i], NULL)
                                        : raw_column (NULL, trace->batches->pdata[i - trace->lots->len]);
      gpointer key = GINT_TO_POINTER (column);

      g_hash_table_insert (counts, key, GINT_TO_POINTER (GPOINTER_TO_INT (g_hash_table_lookup (counts, key)) + 1));
    }
  return counts;
}

/* --- cards ------------------------------------------------------------------------- */

static Card *
card_for (GPtrArray *cards,
          int        column,
          gint64     key)
{
  Card *card;

  for (guint i = 0; i < cards->len; i++)
    {
      card = cards->pdata[i];
      if (card->column == column && card->key == key)
        return card;
    }
  card = g_new0 (Card, 1);
  card->column = column;
  card->key = key;
  card->lots = g_ptr_array_new ();
  card->batches = g_ptr_array_new ();
  g_ptr_array_add (cards, card);
  return card;
}

static GPtrArray *
make_cards (const SteadTrace *trace)
{
  GPtrArray *cards = g_ptr_array_new_with_free_func (card_free);
  g_autoptr(GHashTable) counts = count_columns (trace);

  for (guint i = 0; i < trace->lots->len; i++)
    {
      SteadTraceLot *lot = trace->lots->pdata[i];
      int column = raw_column (lot, NULL);
      gboolean many = GPOINTER_TO_INT (g_hash_table_lookup (counts, GINT_TO_POINTER (column))) > STEAD_TRACE_CARDS;

      g_ptr_array_add (card_for (cards, column, many && lot->step != 0 ? -lot->item_id : lot->id)->lots, lot);
    }
  for (guint i = 0; i < trace->batches->len; i++)
    {
      SteadTraceBatch *batch = trace->batches->pdata[i];
      int column = raw_column (NULL, batch);
      gboolean many = GPOINTER_TO_INT (g_hash_table_lookup (counts, GINT_TO_POINTER (column))) > STEAD_TRACE_CARDS;

      g_ptr_array_add (card_for (cards, column, many ? -1 - (gint64) batch->kind : batch->id)->batches, batch);
    }
  return cards;
}

/* --- words ------------------------------------------------------------------------- */

/* (nullable) */
static char *
part (double           base,
      const SteadUnit *unit)
{
  return fabs (base) > 1e-6 ? stead_quantity_format (base, unit) : NULL;
}

/* Takes @words over. */
static void
add_part (GString *text,
          char    *words)
{
  if (text->len > 0)
    g_string_append (text, ", ");
  g_string_append (text, words);
  g_free (words);
}

char *
stead_trace_state (const SteadTraceLot *lot)
{
  g_autofree char *used = part (lot->used_base, lot->unit);
  g_autofree char *sold = part (lot->sold_base, lot->unit);
  g_autofree char *given = part (lot->given_base, lot->unit);
  g_autofree char *lost = part (lot->lost_base, lot->unit);
  g_autofree char *left = part (lot->left_base, lot->unit);
  GString *text = g_string_new (NULL);

  if (used != NULL)
    add_part (text, g_strdup_printf (C_("part of a lot", "%s used"), used));
  if (sold != NULL)
    add_part (text, g_strdup_printf (C_("part of a lot", "%s sold"), sold));
  if (given != NULL)
    add_part (text, g_strdup_printf (C_("part of a lot", "%s given away"), given));
  if (lost != NULL)
    add_part (text, g_strdup_printf (C_("part of a lot", "%s lost"), lost));
  if (left != NULL)
    add_part (text, g_strdup_printf (C_("part of a lot", "%s left"), left));
  return g_string_free (text, FALSE);
}

static char *
lot_detail (const SteadTraceLot *lot)
{
  g_autofree char *amount = stead_quantity_format (lot->in_base, lot->unit);
  g_autofree char *day = stead_day_format (lot->day, STEAD_DAY_STYLE_SHORT);

  if (lot->batch_id != 0)
    /* Translators: a lot code, an amount, a day: "K26062-1: 24 made on Mar 3". */
    return g_strdup_printf (_("%s: %s made on %s"), lot->code, amount, day);
  if (lot->is_gift)
    /* Translators: a lot code, an amount, a person or shop, a day. */
    return g_strdup_printf (_("%s: %s given by %s, %s"), lot->code, amount, lot->supplier, day);
  return g_strdup_printf (_("%s: %s from %s, %s"), lot->code, amount, lot->supplier != NULL ? lot->supplier : "?", day);
}

static char *
lots_detail (const Card *card)
{
  const SteadTraceLot *first = card->lots->pdata[0], *last = card->lots->pdata[card->lots->len - 1];
  g_autofree char *from = stead_day_format (first->day, STEAD_DAY_STYLE_SHORT);
  g_autofree char *to = stead_day_format (last->day, STEAD_DAY_STYLE_SHORT);

  return g_strdup_printf (ngettext ("%u lot, %s to %s", "%u lots, %s to %s", card->lots->len), card->lots->len, from, to);
}

static const char *
kind_text (SteadBatchKind kind)
{
  switch (kind)
    {
    case STEAD_BATCH_FLOCK:
      return C_("kind of batch", "hens");
    case STEAD_BATCH_FISH:
      return C_("kind of batch", "fish");
    case STEAD_BATCH_CROP:
      return C_("kind of batch", "crop");
    case STEAD_BATCH_KITCHEN:
    default:
      return C_("kind of batch", "kitchen");
    }
}

static char *
batch_detail (const SteadTraceBatch *batch)
{
  g_autofree char *day = stead_day_format (batch->started_on, STEAD_DAY_STYLE_SHORT);

  /* Translators: "kitchen, begun on Mar 3". */
  return g_strdup_printf (_("%s, begun on %s"), kind_text (batch->kind), day);
}

/* --- nodes ------------------------------------------------------------------------- */

static SteadTraceLot
sum_of (const Card *card)
{
  SteadTraceLot sum = *(const SteadTraceLot *) card->lots->pdata[0];

  for (guint i = 1; i < card->lots->len; i++)
    {
      const SteadTraceLot *lot = card->lots->pdata[i];

      sum.in_base += lot->in_base;
      sum.found_base += lot->found_base;
      sum.used_base += lot->used_base;
      sum.sold_base += lot->sold_base;
      sum.given_base += lot->given_base;
      sum.lost_base += lot->lost_base;
      sum.left_base += lot->left_base;
    }
  return sum;
}

static SteadFlowNode
lot_node (const Card *card,
          int         first)
{
  SteadTraceLot lot = sum_of (card);
  double had = lot.in_base + MAX (lot.found_base, 0);

  return (SteadFlowNode) {
    .column = card->column - first,
    .kind = lot.batch_id != 0 ? STEAD_FLOW_MADE : STEAD_FLOW_CAME,
    .title = g_strdup (lot.item_name),
    .detail = card->lots->len == 1 ? lot_detail (&lot) : lots_detail (card),
    .state = stead_trace_state (&lot),
    .is_subject = lot.step == 0,
    .left_frac = had > 0 ? CLAMP (lot.left_base / had, 0, 1) : NAN,
    .n = card->lots->len,
  };
}

static SteadFlowNode
batch_node (const Card *card,
            int         first)
{
  const SteadTraceBatch *batch = card->batches->pdata[0];
  guint n = card->batches->len;

  return (SteadFlowNode) {
    .column = card->column - first,
    .kind = STEAD_FLOW_BATCH,
    .title = n == 1 ? g_strdup (batch->name) : g_strdup_printf (ngettext ("%u batch", "%u batches", n), n),
    .detail = n == 1 ? batch_detail (batch) : g_strdup (kind_text (batch->kind)),
    .state = n == 1 ? g_strdup (batch->people) : NULL,
    .left_frac = NAN,
    .n = n,
  };
}

static int
compare_cards (gconstpointer a,
               gconstpointer b)
{
  const Card *x = *(Card * const *) a, *y = *(Card * const *) b;

  return x->column - y->column;
}

/* --- all --------------------------------------------------------------------------- */

SteadFlow *
stead_trace_flow_new (const SteadTrace *trace)
{
  SteadFlow *flow = stead_flow_new ();
  g_autoptr(GPtrArray) cards = make_cards (trace);
  g_autoptr(GHashTable) lots = g_hash_table_new (g_int64_hash, g_int64_equal);
  g_autoptr(GHashTable) batches = g_hash_table_new (g_int64_hash, g_int64_equal);
  int first = first_column (trace);

  g_ptr_array_sort (cards, compare_cards);
  for (guint i = 0; i < cards->len; i++)
    {
      const Card *card = cards->pdata[i];
      guint node = stead_flow_add (flow, card->lots->len > 0 ? lot_node (card, first) : batch_node (card, first));

      for (guint j = 0; j < card->lots->len; j++)
        g_hash_table_insert (lots, &((SteadTraceLot *) card->lots->pdata[j])->id, GUINT_TO_POINTER (node));
      for (guint j = 0; j < card->batches->len; j++)
        g_hash_table_insert (batches, &((SteadTraceBatch *) card->batches->pdata[j])->id, GUINT_TO_POINTER (node));
    }
  for (guint i = 0; i < trace->links->len; i++)
    {
      const SteadTraceLink *link = &g_array_index (trace->links, SteadTraceLink, i);

      stead_flow_link (flow, GPOINTER_TO_UINT (g_hash_table_lookup (lots, &link->lot_id)),
                       GPOINTER_TO_UINT (g_hash_table_lookup (batches, &link->batch_id)));
    }
  return flow;
}
