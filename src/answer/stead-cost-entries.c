/* stead-cost-entries.c - the entries behind a line of the cost sheet.
 *
 * Invariant: the cents of a line's entries sum to the line's total, rounded
 * once.  Movements carry whole cents already; what is computed takes the rest,
 * split so that nothing is lost.
 */
#include "config.h"

#include "answer/stead-cost-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

void
stead_cost_entry_free (SteadCostEntry *entry)
{
  if (entry == NULL)
    return;
  g_free (entry->what);
  g_free (entry->quantity);
  g_free (entry);
}

static SteadCostEntry *
add_entry (GPtrArray *entries,
           SteadDay   day,
           char      *what,
           char      *quantity)
{
  SteadCostEntry *entry = g_new0 (SteadCostEntry, 1);

  entry->day = day;
  entry->what = what;
  entry->quantity = quantity;
  entry->base = NAN;
  g_ptr_array_add (entries, entry);
  return entry;
}

/* As add_entry(), of an amount that can be added up with others. */
static SteadCostEntry *
add_amount (GPtrArray       *entries,
            SteadDay         day,
            char            *what,
            double           base,
            const SteadUnit *unit)
{
  SteadCostEntry *entry = add_entry (entries, day, what, stead_quantity_format (base, unit));

  entry->base = base;
  entry->unit = unit;
  return entry;
}

/* Hands @cents out over the entries from @first on, by @weights. */
static void
split_over (GPtrArray *entries,
            guint      first,
            gint64     cents,
            GArray    *weights)
{
  g_autofree gint64 *shares = NULL;
  double sum = 0;

  for (guint i = 0; i < weights->len; i++)
    sum += g_array_index (weights, double, i);
  if (weights->len == 0 || !(sum > 0))
    return;
  shares = g_new0 (gint64, weights->len);
  stead_money_split (cents, (const double *) (gpointer) weights->data, weights->len, shares);
  for (guint i = 0; i < weights->len; i++)
    ((SteadCostEntry *) entries->pdata[first + i])->cents = shares[i];
}

/* Supplier by lot, so that each movement costs no query. */
static GHashTable *
read_suppliers (SteadStore  *store,
                GError     **error)
{
  g_autoptr(GPtrArray) lots = stead_lot_repo_list (store, TRUE, error);
  GHashTable *suppliers;

  if (lots == NULL)
    return NULL;
  suppliers = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  for (guint i = 0; i < lots->len; i++)
    {
      const SteadLot *lot = lots->pdata[i];

      if (lot->supplier != NULL)
        g_hash_table_insert (suppliers, g_memdup2 (&lot->id, sizeof lot->id), g_strdup (lot->supplier));
    }
  return suppliers;
}

static gint64
add_moves (GPtrArray  *entries,
           GPtrArray  *moves,
           GHashTable *suppliers)
{
  gint64 sum = 0;

  for (guint i = 0; i < moves->len; i++)
    {
      const SteadMove *move = moves->pdata[i];
      const char *supplier = g_hash_table_lookup (suppliers, &move->lot_id);
      SteadCostEntry *entry;

      entry = add_amount (entries, move->day,
                          supplier != NULL
                          ? g_strdup_printf (_("%s, lot %s, %s"), move->item_name, move->lot_code, supplier)
                          : g_strdup_printf (_("%s, lot %s"), move->item_name, move->lot_code),
                          -move->quantity_base, move->unit);
      entry->cents = -move->cost_cents;
      entry->receipt_id = move->receipt_id;
      sum += entry->cents;
    }
  return sum;
}

/* What a tank or a bed began with. */
static gint64
add_start (const SteadCostAnswer *self,
           GPtrArray             *entries)
{
  const SteadBatchMoney *money = self->money;
  gint64 sum = 0;
  SteadCostEntry *entry;

  if (money->start_cents > 0)
    {
      entry = add_entry (entries, self->from, g_strdup (self->batch->name), NULL);
      sum += entry->cents = stead_money_round (money->start_cents);
    }
  if (money->moved_in_cents > 0)
    {
      entry = add_entry (entries, self->from, g_strdup (_("Brought along by fish that moved in")), NULL);
      sum += entry->cents = stead_money_round (money->moved_in_cents);
    }
  return sum;
}

/* Takes off what moved out took along; without an estimate beside it, it takes the rest. */
static gint64
add_moved_out (const SteadCostAnswer *self,
               SteadCostKind          kind,
               GPtrArray             *entries,
               gint64                 rest,
               gboolean               takes_rest)
{
  const SteadBatchMoney *money = self->money;
  double gross = money->kept_frac > 0 ? money->so_far[kind] / money->kept_frac : 0;
  SteadCostEntry *entry;

  if (!(money->kept_frac < 1))
    return rest;
  entry = add_entry (entries, self->to, g_strdup (_("Taken along by fish that moved out")), NULL);
  entry->cents = takes_rest ? rest : -stead_money_round (gross * (1 - money->kept_frac));
  return rest - entry->cents;
}

static gboolean
add_used (SteadStore             *store,
          const SteadCostAnswer  *self,
          SteadCostKind           kind,
          GPtrArray              *entries,
          GError                **error)
{
  g_autoptr(GHashTable) suppliers = read_suppliers (store, error);
  g_autoptr(GArray) weights = g_array_new (FALSE, FALSE, sizeof (double));
  gint64 left = stead_money_round (self->sheet.parts[kind].total_cents);
  guint first;

  if (suppliers == NULL)
    return FALSE;
  for (guint i = 0; i < self->uses->len; i++)
    {
      const SteadUse *use = self->uses->pdata[i];
      g_autoptr(GPtrArray) moves = NULL;

      if (stead_cost_kind_of_use (stead_cost_batch_kind (self), use->kind) != kind)
        continue;
      moves = stead_lot_repo_use_moves (store, self->batch->id, use->item_id, self->from, self->to, error);
      if (moves == NULL)
        return FALSE;
      left -= add_moves (entries, moves, suppliers);
    }
  if (self->money != NULL && kind == STEAD_COST_START)
    left -= add_start (self, entries);
  first = entries->len;
  for (guint i = 0; i < self->uses->len; i++)
    {
      const SteadUse *use = self->uses->pdata[i];

      if (stead_cost_kind_of_use (stead_cost_batch_kind (self), use->kind) != kind
          || !(use->uncovered_base > 0) || !isfinite (use->uncovered_cents))
        continue;
      g_array_append_val (weights, use->uncovered_cents);
      add_amount (entries, self->to, g_strdup_printf (_("%s, no receipt yet"), use->item_name),
                  use->uncovered_base, use->unit);
    }
  if (self->money != NULL && self->money->to_come[kind] > 0)
    {
      g_array_append_val (weights, self->money->to_come[kind]);
      add_entry (entries, self->to, g_strdup (_("Still to come")), NULL);
    }
  if (self->money != NULL)
    left = add_moved_out (self, kind, entries, left, weights->len == 0);
  split_over (entries, first, left, weights);
  return TRUE;
}

/* The movements of every batch of the kitchen; without one, what would be taken. */
static gboolean
add_kitchen (SteadStore             *store,
             const SteadCostAnswer  *self,
             SteadCostKind           kind,
             GPtrArray              *entries,
             GError                **error)
{
  g_autoptr(GHashTable) suppliers = read_suppliers (store, error);

  for (guint i = 0; suppliers != NULL && i < self->uses->len; i++)
    {
      const SteadUse *use = self->uses->pdata[i];

      if (stead_cost_kind_of_use (STEAD_BATCH_KITCHEN, use->kind) != kind)
        continue;
      if (self->kitchen->basis != STEAD_KITCHEN_COOKED && use->quantity_base > 0)
        add_amount (entries, self->to, g_strdup_printf (_("%s, at today's price"), use->item_name),
                    use->quantity_base, use->unit)->cents = use->cost_cents;
      for (guint j = 0; j < self->kitchen->runs->len; j++)
        {
          const SteadKitchenRun *run = self->kitchen->runs->pdata[j];
          g_autoptr(GPtrArray) moves = stead_lot_repo_use_moves (store, run->batch_id, use->item_id,
                                                                 run->started_on, run->day, error);

          if (moves == NULL)
            return FALSE;
          add_moves (entries, moves, suppliers);
        }
    }
  return suppliers != NULL;
}

static void
add_charges (const SteadCostAnswer *self,
             const SteadCostFacts  *facts,
             GPtrArray             *entries)
{
  g_autoptr(GArray) weights = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint i = 0; i < facts->charges->len; i++)
    {
      const SteadAssetCharge *charge = facts->charges->pdata[i];
      const SteadAsset *asset = charge->asset;
      SteadCostEntry *entry;
      g_autofree char *units = stead_number_format (charge->units, 2);

      entry = add_entry (entries, asset->bought_on, g_strdup (asset->name),
                         asset->method != STEAD_DEPRECIATION_UNITS
                         ? stead_words_days (charge->days)
                         : asset->unit_name != NULL
                         /* Translators: a number and what it counts: "6 hours". */
                         ? g_strdup_printf (_("%s %s"), units, asset->unit_name)
                         : g_strdup (units));
      entry->asset_id = asset->id;
      g_array_append_val (weights, charge->cents);
    }
  if (self->money != NULL && self->money->to_come[STEAD_COST_ASSETS] > 0)
    {
      g_array_append_val (weights, self->money->to_come[STEAD_COST_ASSETS]);
      add_entry (entries, self->to, g_strdup (_("Still to come")), stead_words_days (self->money->days_left));
    }
  split_over (entries, 0, stead_money_round (self->sheet.parts[STEAD_COST_ASSETS].total_cents), weights);
}

static void
add_packs (const SteadCostAnswer *self,
           const SteadCostFacts  *facts,
           GPtrArray             *entries)
{
  g_autoptr(GArray) weights = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint i = 0; i < facts->packs->len; i++)
    {
      const SteadPackCost *pack = facts->packs->pdata[i];

      if (!isfinite (pack->unit_cents))
        continue;
      add_amount (entries, self->to, g_strdup (pack->item->name),
                  pack->quantity_base * self->sheet.good_units, pack->item->unit);
      g_array_append_val (weights, pack->unit_cents);
    }
  split_over (entries, 0, stead_money_round (self->sheet.parts[STEAD_COST_PACKAGING].total_cents), weights);
}

static void
add_birds (const SteadCostAnswer *self,
           GPtrArray             *entries)
{
  SteadCostEntry *entry;
  g_autofree char *hens = stead_words_flock (self->flock->species, self->flock->birds);

  /* Translators: "Brown hens, 30 hens". */
  entry = add_entry (entries, self->flock->housed_on, g_strdup_printf (_("%s, %s"), self->flock->name, hens),
                     stead_words_eggs (self->totals.eggs));
  entry->cents = stead_money_round (self->sheet.parts[STEAD_COST_START].total_cents);
}

static void
add_work (const SteadCostAnswer *self,
          const SteadCostFacts  *facts,
          GPtrArray             *entries)
{
  g_autoptr(GArray) weights = g_array_new (FALSE, FALSE, sizeof (double));
  int days = facts->days + (self->money != NULL ? self->money->days_left : 0);
  double care = self->kitchen != NULL ? self->kitchen->minutes : self->batch->care_minutes_day * days;
  double pack = self->product->pack_minutes * self->sheet.good_units;
  g_autofree char *care_hours = stead_number_format (care / 60, 1);
  g_autofree char *pack_hours = stead_number_format (pack / 60, 1);

  add_entry (entries, self->to, g_strdup (self->kitchen != NULL ? _("Work in the kitchen")
                                         : self->flock != NULL ? _("Care of the flock") : _("Daily care")),
             g_strdup_printf (_("%s hours"), care_hours));
  g_array_append_val (weights, care);
  add_entry (entries, self->to, g_strdup (_("Packing")), g_strdup_printf (_("%s hours"), pack_hours));
  g_array_append_val (weights, pack);
  split_over (entries, 0, stead_money_round (self->sheet.parts[STEAD_COST_LABOR].total_cents), weights);
}

static void
add_overhead (const SteadCostAnswer *self,
              GPtrArray             *entries)
{
  SteadCostEntry *entry = add_entry (entries, self->to, g_strdup (C_("line of a cost sheet", "Overhead")),
                                     stead_cost_overhead_amount (self, self->overhead_used));

  entry->cents = stead_money_round (self->sheet.parts[STEAD_COST_OVERHEAD].total_cents);
}

GPtrArray *
stead_cost_answer_entries (SteadStore             *store,
                           const SteadCostAnswer  *self,
                           SteadCostKind           kind,
                           GError                **error)
{
  g_autoptr(GPtrArray) entries = NULL;
  g_auto(SteadCostFacts) facts = { 0 };

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  g_return_val_if_fail (self != NULL, NULL);
  g_return_val_if_fail (kind < STEAD_N_COST_KINDS, NULL);

  entries = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_cost_entry_free);
  if (!(self->sheet.parts[kind].total_cents > 0))
    return g_steal_pointer (&entries);
  if (self->kitchen != NULL && (kind == STEAD_COST_FEED || kind == STEAD_COST_BEDDING
                                || kind == STEAD_COST_SUPPLIES || kind == STEAD_COST_START))
    return add_kitchen (store, self, kind, entries, error) ? g_steal_pointer (&entries) : NULL;
  if (kind == STEAD_COST_FEED || kind == STEAD_COST_BEDDING || kind == STEAD_COST_SUPPLIES
      || (kind == STEAD_COST_START && self->flock == NULL))
    return add_used (store, self, kind, entries, error) ? g_steal_pointer (&entries) : NULL;
  if (kind == STEAD_COST_START)
    {
      add_birds (self, entries);
      return g_steal_pointer (&entries);
    }
  if (!stead_cost_facts_read (store, self, &facts, error))
    return NULL;
  if (kind == STEAD_COST_OVERHEAD)
    add_overhead (self, entries);
  else if (kind == STEAD_COST_ASSETS)
    add_charges (self, &facts, entries);
  else if (kind == STEAD_COST_PACKAGING)
    add_packs (self, &facts, entries);
  else
    add_work (self, &facts, entries);
  return g_steal_pointer (&entries);
}
