/* stead-batch-card.c - all that the farm knows of one batch, as the tables of a card. */
#include "config.h"

#include "answer/stead-batch-card-private.h"
#include "answer/stead-batch-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-money.h"
#include "store/stead-item-repo.h"

static void
row_free (gpointer data)
{
  SteadCardRow *row = data;

  for (int i = 0; i < STEAD_CARD_COLUMNS; i++)
    g_free (row->cells[i]);
  g_free (row);
}

static void
note_free (gpointer data)
{
  SteadCardNote *note = data;

  g_free (note->day);
  g_free (note->text);
  g_clear_pointer (&note->jpeg, g_bytes_unref);
  g_free (note);
}

SteadCardTable *
stead_card_table_new (void)
{
  SteadCardTable *table = g_new0 (SteadCardTable, 1);

  table->rows = g_ptr_array_new_with_free_func (row_free);
  return table;
}

void
stead_card_table_free (SteadCardTable *table)
{
  if (table == NULL)
    return;
  g_ptr_array_unref (table->rows);
  g_free (table);
}

void
stead_card_table_add_column (SteadCardTable *table,
                             const char     *title,
                             gboolean        is_figure)
{
  g_return_if_fail (table->n_columns < STEAD_CARD_COLUMNS);
  table->titles[table->n_columns] = title;
  table->is_figure[table->n_columns] = is_figure;
  table->n_columns++;
}

SteadCardRow *
stead_card_table_add_row (SteadCardTable *table)
{
  SteadCardRow *row = g_new0 (SteadCardRow, 1);

  g_ptr_array_add (table->rows, row);
  return row;
}

void
stead_batch_card_free (SteadBatchCard *self)
{
  if (self == NULL)
    return;
  stead_batch_answer_free (self->batch);
  stead_card_table_free (self->facts);
  stead_card_table_free (self->costs);
  stead_card_table_free (self->harvests);
  stead_card_table_free (self->losses);
  stead_card_table_free (self->treatments);
  stead_card_table_free (self->weeks);
  g_clear_pointer (&self->notes, g_ptr_array_unref);
  g_free (self);
}

/* --- costs ------------------------------------------------------------------------- */

static const SteadCostKind parts[] = {
  STEAD_COST_START, STEAD_COST_FEED, STEAD_COST_BEDDING, STEAD_COST_SUPPLIES, STEAD_COST_ASSETS,
};

static const char *
part_name (const SteadBatchAnswer *batch,
           SteadCostKind           part)
{
  switch (part)
    {
    case STEAD_COST_START: return stead_batch_start_name (batch->money.batch->kind);
    case STEAD_COST_FEED: return C_("line of a cost sheet", "Feed");
    case STEAD_COST_BEDDING: return C_("line of a cost sheet", "Bedding, litter");
    case STEAD_COST_ASSETS: return C_("line of a cost sheet", "Equipment");
    case STEAD_COST_SUPPLIES:
    case STEAD_COST_OVERHEAD:
    case STEAD_COST_PACKAGING:
    case STEAD_COST_LABOR:
    default: return C_("line of a cost sheet", "Other supplies");
    }
}

/* The parts in whole cents, so that they add up to their rounded sum. */
static gint64
split (const double *cents,
       gint64       *out)
{
  double weights[G_N_ELEMENTS (parts)], sum = 0;
  gint64 all;

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      weights[i] = MAX (cents[parts[i]], 0);
      sum += weights[i];
      out[i] = 0;
    }
  all = stead_money_round (sum);
  if (sum > 0)
    stead_money_split (all, weights, G_N_ELEMENTS (parts), out);
  return all;
}

static char *
money_or_none (const SteadBatchAnswer *batch,
               gint64                  cents)
{
  return cents != 0 ? stead_money_format (cents, batch->farm->currency) : NULL;
}

static void
fill_cost_row (SteadCardTable         *table,
               const SteadBatchAnswer *batch,
               const char             *name,
               gint64                  so_far,
               gint64                  to_come)
{
  SteadCardRow *row = stead_card_table_add_row (table);

  row->cells[0] = g_strdup (name);
  row->cells[1] = money_or_none (batch, so_far);
  if (table->n_columns == 2)
    return;
  row->cells[2] = money_or_none (batch, to_come);
  row->cells[3] = money_or_none (batch, so_far + to_come);
}

static SteadCardTable *
make_costs (const SteadBatchAnswer *batch)
{
  SteadCardTable *table = stead_card_table_new ();
  gint64 salvage = -stead_money_round (batch->money.salvage_cents);
  gint64 so_far[G_N_ELEMENTS (parts)], to_come[G_N_ELEMENTS (parts)];
  gint64 spent = split (batch->money.so_far, so_far);
  gint64 left = split (batch->money.to_come, to_come);

  stead_card_table_add_column (table, C_("column of a cost sheet", "Part"), FALSE);
  stead_card_table_add_column (table, batch->is_over ? C_("column of costs", "Amount")
                                                     : C_("column of a plan", "So far"), TRUE);
  if (!batch->is_over)
    {
      stead_card_table_add_column (table, C_("column of costs", "Still to come"), TRUE);
      stead_card_table_add_column (table, C_("column of a cost sheet", "In all"), TRUE);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (so_far[i] != 0 || to_come[i] != 0)
      fill_cost_row (table, batch, part_name (batch, parts[i]), so_far[i], to_come[i]);
  if (salvage != 0)
    fill_cost_row (table, batch, C_("line of a plan", "Worth of the birds at the end"),
                   batch->is_over ? salvage : 0, batch->is_over ? 0 : salvage);
  fill_cost_row (table, batch, C_("last line of a cost sheet", "All costs"), spent + (batch->is_over ? salvage : 0),
                 left + (batch->is_over ? 0 : salvage));
  table->has_total = TRUE;
  return table;
}

/* --- harvests ------------------------------------------------------------------------ */

static gboolean
add_harvest (SteadStore              *store,
             const SteadBatchAnswer  *batch,
             const SteadHarvest      *harvest,
             SteadCardTable          *table,
             GError                 **error)
{
  g_autoptr(SteadItem) item = NULL;
  SteadCardRow *row;

  if (harvest->item_id != 0)
    {
      item = stead_item_repo_get (store, harvest->item_id, error);
      if (item == NULL)
        return FALSE;
    }
  row = stead_card_table_add_row (table);
  row->cells[0] = stead_day_format (harvest->day, STEAD_DAY_STYLE_MEDIUM);
  row->cells[1] = stead_batch_harvest_text (batch, harvest, item);
  row->cells[2] = g_strdup (harvest->lot_code);
  row->cells[3] = harvest->lot_id != 0 ? stead_money_format (harvest->cost_cents, batch->farm->currency) : NULL;
  return TRUE;
}

static SteadCardTable *
read_harvests (SteadStore              *store,
               const SteadBatchAnswer  *batch,
               GError                 **error)
{
  g_autoptr(SteadCardTable) table = stead_card_table_new ();

  stead_card_table_add_column (table, C_("column of harvests", "Day"), FALSE);
  stead_card_table_add_column (table, C_("column of harvests", "What came"), FALSE);
  stead_card_table_add_column (table, C_("column of harvests", "Lot"), FALSE);
  stead_card_table_add_column (table, C_("column of harvests", "Cost it carries"), TRUE);
  for (guint i = 0; i < batch->harvests->len; i++)
    if (!add_harvest (store, batch, batch->harvests->pdata[i], table, error))
      return NULL;
  return g_steal_pointer (&table);
}

/* --- losses and treatments ------------------------------------------------------------ */

static void
fill_loss_row (SteadCardTable         *table,
               const SteadBatchAnswer *batch,
               const char             *name,
               gint64                  n)
{
  SteadCardRow *row = stead_card_table_add_row (table);

  row->cells[0] = g_strdup (name);
  row->cells[1] = stead_number_format ((double) n, 0);
  if (batch->started > 0)
    row->cells[2] = stead_words_percent ((double) n / (double) batch->started, 1);
}

static SteadCardTable *
make_losses (const SteadBatchAnswer *batch)
{
  SteadCardTable *table = stead_card_table_new ();

  stead_card_table_add_column (table, C_("column of losses", "Reason"), FALSE);
  stead_card_table_add_column (table, stead_batch_started_name (batch->money.batch->kind), TRUE);
  stead_card_table_add_column (table, C_("column of losses", "Of all"), TRUE);
  for (guint i = 0; i < batch->losses->len; i++)
    {
      const SteadLoss *loss = batch->losses->pdata[i];

      fill_loss_row (table, batch, loss->reason != NULL ? loss->reason : _("no reason given"), loss->n);
    }
  if (batch->losses->len > 1)
    {
      fill_loss_row (table, batch, C_("last line of a table", "Together"), batch->lost);
      table->has_total = TRUE;
    }
  return table;
}

/* "Mar 1 to Mar 9, 2026" */
static char *
days_text (SteadDay from,
           SteadDay to)
{
  g_autofree char *first = stead_day_format (from, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *last = NULL;

  if (from == to)
    return g_steal_pointer (&first);
  last = stead_day_format (to, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: the first and the last day of a period. */
  return g_strdup_printf (_("%s to %s"), first, last);
}

static SteadCardTable *
make_treatments (const SteadBatchAnswer *batch)
{
  SteadCardTable *table = stead_card_table_new ();

  stead_card_table_add_column (table, C_("column of treatments", "What was given"), FALSE);
  stead_card_table_add_column (table, C_("column of treatments", "Days"), FALSE);
  stead_card_table_add_column (table, C_("column of treatments", "Ordered by"), FALSE);
  stead_card_table_add_column (table, C_("column of treatments", "Wait up to and including"), FALSE);
  for (guint i = batch->treatments->len; i > 0; i--)
    {
      const SteadTreatment *treatment = batch->treatments->pdata[i - 1];
      SteadCardRow *row = stead_card_table_add_row (table);

      /* Translators: a medicine and its dose. */
      row->cells[0] = treatment->dose != NULL ? g_strdup_printf (_("%s (%s)"), treatment->what, treatment->dose)
                                              : g_strdup (treatment->what);
      row->cells[1] = days_text (treatment->day, treatment->last_day);
      row->cells[2] = g_strdup (treatment->ordered_by);
      row->cells[3] = stead_day_format (treatment->wait_until, STEAD_DAY_STYLE_MEDIUM);
    }
  return table;
}

/* --- notes ------------------------------------------------------------------------------ */

static GPtrArray *
read_notes (SteadStore  *store,
            gint64       batch_id,
            GError     **error)
{
  g_autoptr(GPtrArray) all = stead_batch_repo_notes (store, batch_id, error);
  g_autoptr(GPtrArray) notes = g_ptr_array_new_with_free_func (note_free);

  if (all == NULL)
    return NULL;
  for (guint i = all->len; i > 0; i--)
    {
      const SteadBatchNote *its = all->pdata[i - 1];
      SteadCardNote *note = g_new0 (SteadCardNote, 1);

      g_ptr_array_add (notes, note);
      note->day = stead_day_format (its->day, STEAD_DAY_STYLE_MEDIUM);
      note->text = g_strdup (its->text);
      if (its->picture_id == 0)
        continue;
      note->jpeg = stead_picture_repo_get (store, its->picture_id, error);
      if (note->jpeg == NULL)
        return NULL;
    }
  return g_steal_pointer (&notes);
}

SteadBatchCard *
stead_batch_card_new (SteadStore  *store,
                      gint64       batch_id,
                      GError     **error)
{
  g_autoptr(SteadBatchCard) self = g_new0 (SteadBatchCard, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->batch = stead_batch_answer_new (store, batch_id, error);
  if (self->batch == NULL)
    return NULL;
  self->facts = stead_batch_card_facts (store, self->batch, error);
  self->harvests = self->facts == NULL ? NULL : read_harvests (store, self->batch, error);
  self->weeks = self->harvests == NULL ? NULL : stead_batch_card_weeks (store, self->batch, error);
  self->notes = self->weeks == NULL ? NULL : read_notes (store, batch_id, error);
  if (self->notes == NULL)
    return NULL;
  self->costs = make_costs (self->batch);
  self->losses = make_losses (self->batch);
  self->treatments = make_treatments (self->batch);
  return g_steal_pointer (&self);
}
