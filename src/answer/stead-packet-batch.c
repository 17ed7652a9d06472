/* stead-packet-batch.c - what each line of a batch's table is made of: rows of the log, movements
 * of the store room, things that last, and other lines of the table.
 *
 * Found out once a source and batch: a class shares its flocks.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-batch-private.h"
#include "answer/stead-cost-private.h"
#include "answer/stead-packet-private.h"
#include "core/stead-money.h"
#include "store/stead-crop-repo.h"
#include "store/stead-fish-repo.h"

void
stead_packet_lines_free (SteadPacketLines *lines)
{
  for (int line = 0; line < STEAD_N_BATCH_LINES; line++)
    g_clear_pointer (&lines->of[line], g_ptr_array_unref);
  g_free (lines);
}

typedef struct
{
  SteadPacketMaking      *making;
  const SteadBatchAnswer *batch;
  SteadPacketLines       *lines;
} Gathering;

/* @text: (transfer full) */
static void
add (const Gathering *self,
     SteadBatchLine   line,
     char            *text,
     SteadTarget      target,
     gint64           id)
{
  SteadPacketEntry *entry = g_new0 (SteadPacketEntry, 1);

  if (self->lines->of[line] == NULL)
    self->lines->of[line] = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_packet_entry_free);
  entry->text = text;
  entry->target = target;
  entry->id = id;
  g_ptr_array_add (self->lines->of[line], entry);
}

/* --- the log -------------------------------------------------------------------------- */

/* @what: (transfer full) */
static void
add_logged (const Gathering *self,
            SteadBatchLine   line,
            SteadDay         day,
            char            *what)
{
  g_autofree char *words = what, *text = stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);

  /* Translators: a day, and what was entered on it: "22 eggs". */
  add (self, line, g_strdup_printf (C_("entry of a log", "%1$s: %2$s"), text, words), STEAD_TARGET_BATCH,
       self->batch->money.batch->id);
}

static void
add_feed (const Gathering *self,
          SteadDay         day,
          double           kg)
{
  g_autofree char *amount = kg > 0 ? stead_batch_feed_text (self->batch, kg) : NULL;

  if (amount != NULL)
    /* Translators: an amount: "6 lb". */
    add_logged (self, STEAD_BATCH_LINE_FEED, day, g_strdup_printf (_("%s of feed"), amount));
}

static void
add_lost (const Gathering *self,
          SteadDay         day,
          int              n)
{
  if (n > 0)
    add_logged (self, STEAD_BATCH_LINE_LOST, day, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d lost", "%d lost",
                                                                                (gulong) n), n));
}

/* Those that are not entered count nothing. */
static int
sum_of (gint32 one,
        gint32 two)
{
  return MAX (one, 0) + MAX (two, 0);
}

static gboolean
gather_flock (const Gathering  *self,
              GError          **error)
{
  const SteadBatchMoney *money = &self->batch->money;
  g_autoptr(GPtrArray) log = stead_flock_repo_entries (self->making->store, money->batch->id, money->from, money->to, error);

  for (guint i = 0; log != NULL && i < log->len; i++)
    {
      const SteadFlockEntry *entry = log->pdata[i];

      if (entry->eggs > 0)
        add_logged (self, STEAD_BATCH_LINE_OUTPUT, entry->day, stead_words_eggs (entry->eggs));
      add_feed (self, entry->day, entry->feed_kg);
      add_lost (self, entry->day, sum_of (entry->deaths, entry->culled));
    }
  return log != NULL;
}

static gboolean
gather_fish (const Gathering  *self,
             GError          **error)
{
  const SteadBatchMoney *money = &self->batch->money;
  g_autoptr(GPtrArray) log = stead_fish_repo_entries (self->making->store, money->batch->id, money->from, money->to, error);

  for (guint i = 0; log != NULL && i < log->len; i++)
    {
      const SteadFishEntry *entry = log->pdata[i];

      add_feed (self, entry->day, entry->feed_kg);
      add_lost (self, entry->day, sum_of (entry->deaths, entry->culled));
    }
  return log != NULL;
}

static gboolean
gather_crop (const Gathering  *self,
             GError          **error)
{
  const SteadBatchMoney *money = &self->batch->money;
  g_autoptr(GPtrArray) log = stead_crop_repo_entries (self->making->store, money->batch->id, money->from, money->to, error);

  for (guint i = 0; log != NULL && i < log->len; i++)
    add_lost (self, ((const SteadCropEntry *) log->pdata[i])->day, ((const SteadCropEntry *) log->pdata[i])->lost);
  return log != NULL;
}

static gboolean
gather_log (const Gathering  *self,
            GError          **error)
{
  switch (self->batch->money.batch->kind)
    {
    case STEAD_BATCH_FLOCK:   return gather_flock (self, error);
    case STEAD_BATCH_FISH:    return gather_fish (self, error);
    case STEAD_BATCH_CROP:    return gather_crop (self, error);
    case STEAD_BATCH_KITCHEN:
    default:                  return TRUE;
    }
}

/* --- what came, and what went in ---------------------------------------------------------- */

static gboolean
gather_harvests (const Gathering  *self,
                 GError          **error)
{
  for (guint i = 0; i < self->batch->harvests->len; i++)
    {
      const SteadHarvest *harvest = self->batch->harvests->pdata[i];
      g_autoptr(SteadItem) item = NULL;
      g_autofree char *day = stead_day_format (harvest->day, STEAD_DAY_STYLE_MEDIUM), *what = NULL;

      if (self->batch->money.batch->kind == STEAD_BATCH_FLOCK)
        continue;                   /* its output is what was laid, and a harvest would count it twice */
      if (harvest->item_id != 0
          && (item = stead_item_repo_get (self->making->store, harvest->item_id, error)) == NULL)
        return FALSE;
      what = stead_batch_harvest_text (self->batch, harvest, item);
      add (self, STEAD_BATCH_LINE_OUTPUT, g_strdup_printf (C_("entry of a log", "%1$s: %2$s"), day, what),
           harvest->lot_id != 0 ? STEAD_TARGET_LOT : STEAD_TARGET_BATCH,
           harvest->lot_id != 0 ? harvest->lot_id : self->batch->money.batch->id);
    }
  return TRUE;
}

/* Feed makes both its cost and its price. */
static gboolean
gather_moves (const Gathering  *self,
              GError          **error)
{
  const SteadBatchMoney *money = &self->batch->money;
  g_autoptr(GPtrArray) moves = stead_lot_repo_batch_moves (self->making->store, money->batch->id, error);

  for (guint i = 0; moves != NULL && i < moves->len; i++)
    {
      const SteadMove *move = moves->pdata[i];
      SteadStatementEntry entry = { move->day, STEAD_FACT_MOVEMENT, move->id, -move->cost_cents };
      gboolean is_feed = move->item_kind == STEAD_ITEM_FEED;

      if (move->day < money->from || move->day > money->to)
        continue;
      add (self, is_feed ? STEAD_BATCH_LINE_FEED_COST : STEAD_BATCH_LINE_OTHER,
           stead_packet_posting_text (self->making, &entry), STEAD_TARGET_LOT, move->lot_id);
      if (is_feed)
        add (self, STEAD_BATCH_LINE_FEED_PRICE, stead_packet_posting_text (self->making, &entry), STEAD_TARGET_LOT, move->lot_id);
    }
  return moves != NULL;
}

static gboolean
gather_charges (const Gathering  *self,
                GError          **error)
{
  const SteadBatchMoney *money = &self->batch->money;
  g_autoptr(GPtrArray) charges = stead_asset_charges (self->making->store, money->batch->id, money->from, money->to, error);

  for (guint i = 0; charges != NULL && i < charges->len; i++)
    {
      const SteadAssetCharge *charge = charges->pdata[i];
      g_autofree char *cents = stead_packet_money (self->making, stead_money_round (charge->cents));

      /* Translators: a thing that lasts, and what the batch bears of its wear. */
      add (self, STEAD_BATCH_LINE_OTHER, g_strdup_printf (_("Wear of %1$s: %2$s"), charge->asset->name, cents),
           STEAD_TARGET_ASSET, charge->asset->id);
    }
  return charges != NULL;
}

static void
gather_price (const Gathering *self)
{
  const SteadProduct *product = self->batch->product;

  if (product != NULL)
    /* Translators: a product. */
    add (self, STEAD_BATCH_LINE_PRICE, g_strdup_printf (_("The price of %s"), product->name), STEAD_TARGET_PRODUCT, product->id);
}

/* --- sums of other lines ------------------------------------------------------------------- */

static void
add_line (const Gathering *self,
          SteadBatchLine   sum,
          SteadBatchLine   of)
{
  const GPtrArray *rows = self->batch->rows;

  for (guint i = 0; i < rows->len; i++)
    {
      const SteadBatchRow *row = rows->pdata[i];

      if (row->line == of)
        add (self, sum, g_strdup_printf (_("%1$s: %2$s"), row->what, row->actual != NULL ? row->actual : "–"),
             STEAD_TARGET_BATCH, self->batch->money.batch->id);
    }
}

static void
gather_sums (const Gathering *self)
{
  add_line (self, STEAD_BATCH_LINE_WORTH, STEAD_BATCH_LINE_OUTPUT);
  add_line (self, STEAD_BATCH_LINE_WORTH, STEAD_BATCH_LINE_PRICE);
  add_line (self, STEAD_BATCH_LINE_ALL, STEAD_BATCH_LINE_START);
  add_line (self, STEAD_BATCH_LINE_ALL, STEAD_BATCH_LINE_SALVAGE);
  add_line (self, STEAD_BATCH_LINE_ALL, STEAD_BATCH_LINE_FEED_COST);
  add_line (self, STEAD_BATCH_LINE_ALL, STEAD_BATCH_LINE_OTHER);
  add_line (self, STEAD_BATCH_LINE_LEFT, STEAD_BATCH_LINE_WORTH);
  add_line (self, STEAD_BATCH_LINE_LEFT, STEAD_BATCH_LINE_ALL);
  add_line (self, STEAD_BATCH_LINE_UNIT, STEAD_BATCH_LINE_ALL);
  add_line (self, STEAD_BATCH_LINE_UNIT, STEAD_BATCH_LINE_OUTPUT);
}

/* What stands in the batch and its plan alone leads there. */
static void
gather_rest (const Gathering *self)
{
  const SteadBatch *batch = self->batch->money.batch;

  for (int line = 0; line < STEAD_N_BATCH_LINES; line++)
    if (self->lines->of[line] == NULL)
      /* Translators: the name of a batch. */
      add (self, (SteadBatchLine) line, g_strdup_printf (_("%s and its plan"), batch->name), STEAD_TARGET_BATCH, batch->id);
}

static const SteadPacketLines *
lines_of (SteadPacketMaking       *making,
          const SteadBatchAnswer  *batch,
          GError                 **error)
{
  gint64 id = batch->money.batch->id;
  SteadPacketLines *lines = g_hash_table_lookup (making->source->lines, &id);
  Gathering self = { making, batch, lines };

  if (lines != NULL)
    return lines;
  self.lines = lines = g_new0 (SteadPacketLines, 1);
  if (!gather_log (&self, error) || !gather_moves (&self, error) || !gather_charges (&self, error)
      || !gather_harvests (&self, error))
    {
      stead_packet_lines_free (lines);
      return NULL;
    }
  if (making->problem != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&making->problem));
      stead_packet_lines_free (lines);
      return NULL;
    }
  gather_price (&self);
  gather_sums (&self);
  gather_rest (&self);
  g_hash_table_insert (making->source->lines, g_memdup2 (&id, sizeof id), lines);
  return lines;
}

/* What came, or else what is expected, or was planned. */
static const char *
come_to (const SteadBatchRow *row)
{
  if (row->actual != NULL)
    return row->actual;
  if (row->end != NULL)
    return row->end;
  return row->planned != NULL ? row->planned : "–";
}

char *
stead_packet_batch_line (SteadPacketMaking       *making,
                         const SteadBatchAnswer  *batch,
                         const SteadBatchRow     *row,
                         GError                 **error)
{
  const SteadPacketLines *lines = lines_of (making, batch, error);
  const GPtrArray *entries = lines != NULL ? lines->of[row->line] : NULL;
  SteadPacketFigure *figure;

  if (entries == NULL)
    return NULL;
  /* Translators: a batch, a line of its table, and what it came to. */
  figure = stead_packet_add_figure (making, g_strdup_printf (_("%1$s, %2$s: %3$s"), batch->money.batch->name, row->what,
                                                             come_to (row)));
  for (guint i = 0; i < entries->len; i++)
    {
      const SteadPacketEntry *entry = entries->pdata[i];

      stead_packet_add_entry (figure, i < STEAD_PACKET_MOST_ENTRIES ? g_strdup (entry->text) : NULL, entry->target,
                              entry->id);
    }
  return stead_packet_marked (row->what, figure);
}
