/* stead-cost-kitchen.c - the cost of one unit of what the kitchen makes, or of what is
 * sold out of the store room as it came.
 *
 * What was cooked in the days of the sheet: all that the kitchen batches used, over all
 * the good that came of them; each lot carries what its batch used, so the sheet agrees
 * with the ledger.  Nothing cooked in these days: the recipe at today's prices, which are
 * those of the next lot (or the average, if the farm averages).  Without a recipe: the
 * item itself at the price of the next lot.
 */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-cost-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"
#include "store/stead-kitchen-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

void
stead_kitchen_run_free (SteadKitchenRun *run)
{
  if (run == NULL)
    return;
  g_free (run->name);
  g_free (run);
}

void
stead_kitchen_sheet_free (SteadKitchenSheet *sheet)
{
  if (sheet == NULL)
    return;
  stead_recipe_free (sheet->recipe);
  stead_item_free (sheet->item);
  g_ptr_array_unref (sheet->runs);
  g_free (sheet);
}

/* --- what was cooked ---------------------------------------------------------------- */

static gboolean
read_minutes (SteadStore          *store,
              const SteadKitchen  *batch,
              SteadKitchenRun     *run,
              GError             **error)
{
  g_autoptr(GPtrArray) people = stead_kitchen_repo_people (store, batch->batch.id, error);

  for (guint i = 0; people != NULL && i < people->len; i++)
    run->minutes += ((const SteadBatchPerson *) people->pdata[i])->minutes;
  if (people != NULL && people->len == 0)
    run->minutes = batch->minutes;
  return people != NULL;
}

/* Adds what one batch used to the item's row. */
static void
add_use (GPtrArray *uses,
         SteadUse  *use)
{
  for (guint i = 0; i < uses->len; i++)
    {
      SteadUse *sum = uses->pdata[i];

      if (sum->item_id != use->item_id)
        continue;
      sum->quantity_base += use->quantity_base;
      sum->cost_cents += use->cost_cents;
      sum->gift_cents += use->gift_cents;
      stead_use_free (use);
      return;
    }
  g_ptr_array_add (uses, use);
}

static gboolean
read_uses (SteadStore          *store,
           SteadCostAnswer     *answer,
           const SteadKitchen  *batch,
           SteadKitchenRun     *run,
           GError             **error)
{
  g_autoptr(GPtrArray) uses = stead_lot_repo_uses (store, batch->batch.id, batch->batch.started_on,
                                                   batch->batch.ended_on, error);

  while (uses != NULL && uses->len > 0)
    {
      SteadUse *use = g_ptr_array_steal_index (uses, 0);

      run->cents += use->cost_cents;
      add_use (answer->uses, use);
    }
  return uses != NULL;
}

static gboolean
read_run (SteadStore          *store,
          SteadCostAnswer     *answer,
          const SteadKitchen  *batch,
          GError             **error)
{
  SteadKitchenSheet *sheet = answer->kitchen;
  g_autoptr(SteadKitchenRun) run = g_new0 (SteadKitchenRun, 1);
  SteadHarvestTotals totals;

  run->batch_id = batch->batch.id;
  run->name = g_strdup (batch->batch.name);
  run->started_on = batch->batch.started_on;
  run->day = batch->batch.ended_on;
  if (!stead_harvest_repo_totals (store, run->batch_id, batch->batch.started_on, run->day, &totals, error)
      || !read_minutes (store, batch, run, error)
      || !read_uses (store, answer, batch, run, error))
    return FALSE;
  run->good_base = totals.good_base;
  sheet->good_base += totals.good_base;
  sheet->made_base += totals.good_base + totals.lost_base;
  sheet->minutes += run->minutes;
  g_ptr_array_add (sheet->runs, g_steal_pointer (&run));
  return TRUE;
}

/* Finished ones of the item, in the days of the sheet. */
static gboolean
read_runs (SteadStore       *store,
           SteadCostAnswer  *answer,
           GError          **error)
{
  g_autoptr(GPtrArray) batches = stead_kitchen_repo_list (store, TRUE, error);
  SteadDay first = STEAD_DAY_NONE;

  for (guint i = 0; batches != NULL && i < batches->len; i++)
    {
      const SteadKitchen *batch = batches->pdata[batches->len - 1 - i];
      SteadDay day = batch->batch.ended_on;

      if (batch->item_id != answer->kitchen->item->id || day == STEAD_DAY_NONE || batch->harvest_id == 0)
        continue;
      if (first == STEAD_DAY_NONE || day < first)
        first = day;
      if (day >= answer->from && day <= answer->to && !read_run (store, answer, batch, error))
        return FALSE;
    }
  if (answer->period == STEAD_PERIOD_WHOLE_BATCH && first != STEAD_DAY_NONE)
    answer->from = first;
  return batches != NULL;
}

/* --- what it would cost today ---------------------------------------------------------- */

static gboolean
price_use (SteadStore  *store,
           SteadUse    *use,
           double       need_base,
           GError     **error)
{
  SteadStock stock;

  if (!stead_lot_repo_stock (store, use->item_id, stead_store_get_today (store), 1, &stock, error))
    return FALSE;
  use->uncovered_cents = NAN;
  if (isnan (stock.next_unit_cents))
    use->uncovered_base = need_base;
  else
    {
      use->quantity_base = need_base;
      use->cost_cents = stead_money_round (need_base * stock.next_unit_cents);
      use->gift_cents = stock.next_is_gift ? use->cost_cents : 0;
    }
  return TRUE;
}

static gboolean
read_recipe (SteadStore       *store,
             SteadCostAnswer  *answer,
             GError          **error)
{
  SteadKitchenSheet *sheet = answer->kitchen;
  g_autoptr(GPtrArray) needs = stead_recipe_repo_needs (store, sheet->recipe->id, 1, error);

  for (guint i = 0; needs != NULL && i < needs->len; i++)
    {
      const SteadRecipeNeed *need = needs->pdata[i];
      SteadUse *use = g_new0 (SteadUse, 1);

      use->item_id = need->item_id;
      use->item_name = g_strdup (need->item_name);
      use->kind = need->item_kind;
      use->unit = need->item_unit;
      g_ptr_array_add (answer->uses, use);
      if (!price_use (store, use, need->need_base, error))
        return FALSE;
    }
  sheet->basis = STEAD_KITCHEN_RECIPE;
  sheet->good_base = sheet->made_base = sheet->recipe->yield_base;
  return needs != NULL && stead_recipe_repo_minutes (store, sheet->recipe->id, 1, &sheet->minutes, error);
}

/* The item itself, as it came: enough for a hundred units, so that no cent is lost. */
static gboolean
read_item (SteadStore       *store,
           SteadCostAnswer  *answer,
           GError          **error)
{
  SteadKitchenSheet *sheet = answer->kitchen;
  SteadUse *use = g_new0 (SteadUse, 1);

  sheet->basis = STEAD_KITCHEN_STORE;
  sheet->good_base = sheet->made_base = 100 * answer->product->base_per_unit;
  use->item_id = sheet->item->id;
  use->item_name = g_strdup (sheet->item->name);
  use->kind = STEAD_ITEM_INGREDIENT;
  use->unit = sheet->item->unit;
  g_ptr_array_add (answer->uses, use);
  return price_use (store, use, sheet->good_base, error);
}

/* --- the sheet --------------------------------------------------------------------------- */

static void
set_days (SteadStore      *store,
          SteadCostAnswer *answer)
{
  answer->to = stead_store_get_today (store);
  answer->from = answer->to - 83;
  if (answer->period == STEAD_PERIOD_4_WEEKS)
    answer->from = answer->to - 27;
  else if (answer->period == STEAD_PERIOD_SCHOOL_YEAR)
    answer->from = stead_school_year_start (answer->to, answer->farm->school_year_month,
                                            answer->farm->school_year_mday);
  else if (answer->period == STEAD_PERIOD_WHOLE_BATCH)
    answer->from = 0;
  answer->from -= 28 * answer->spans_back;
  answer->to -= 28 * answer->spans_back;
}

gboolean
stead_cost_kitchen_read (SteadStore       *store,
                         SteadCostAnswer  *answer,
                         GError          **error)
{
  SteadKitchenSheet *sheet = g_new0 (SteadKitchenSheet, 1);
  gint64 recipe;

  answer->kitchen = sheet;
  answer->uses = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_use_free);
  sheet->runs = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_kitchen_run_free);
  sheet->item = stead_item_repo_get (store, answer->product->item_id, error);
  recipe = sheet->item != NULL ? stead_recipe_repo_of_item (store, sheet->item->id, error) : -1;
  if (recipe > 0)
    sheet->recipe = stead_recipe_repo_get (store, recipe, error);
  if (recipe < 0 || (recipe > 0 && sheet->recipe == NULL))
    return FALSE;
  set_days (store, answer);
  if (!read_runs (store, answer, error))
    return FALSE;
  if (sheet->good_base > 0)
    return TRUE;
  if (sheet->runs->len > 0)
    {
      g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                   _("Nothing good came of “%s” in these days, so there is nothing to divide its cost by."),
                   sheet->item->name);
      return FALSE;
    }
  answer->from = answer->to;
  return sheet->recipe != NULL ? read_recipe (store, answer, error) : read_item (store, answer, error);
}

gboolean
stead_cost_kitchen_charges (SteadStore             *store,
                            const SteadCostAnswer  *answer,
                            SteadCostFacts         *facts,
                            GError                **error)
{
  facts->charges = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_asset_charge_free);
  for (guint i = 0; i < answer->kitchen->runs->len; i++)
    {
      const SteadKitchenRun *run = answer->kitchen->runs->pdata[i];
      g_autoptr(GPtrArray) charges = stead_asset_charges (store, run->batch_id, run->started_on, run->day, error);

      if (charges == NULL)
        return FALSE;
      while (charges->len > 0)
        g_ptr_array_add (facts->charges, g_ptr_array_steal_index (charges, 0));
    }
  return TRUE;
}

void
stead_cost_kitchen_settle (SteadCostAnswer *answer,
                           SteadCostFacts  *facts)
{
  const SteadKitchenSheet *kitchen = answer->kitchen;
  SteadCostSheet *sheet = &answer->sheet;
  double minutes;

  *sheet = (SteadCostSheet) { 0 };
  sheet->made_units = kitchen->made_base / answer->product->base_per_unit;
  sheet->good_units = kitchen->good_base / answer->product->base_per_unit * (1 - answer->product->unsold_frac);
  stead_cost_add_uses (answer);
  stead_cost_add_charges (answer, facts);
  stead_cost_add_packaging (answer, facts);
  minutes = kitchen->minutes + answer->product->pack_minutes * sheet->good_units;
  sheet->parts[STEAD_COST_LABOR].total_cents = minutes / 60 * (double) answer->farm->labor_cents_hour;
  stead_cost_sheet_settle (sheet);
}

/* --- in words ---------------------------------------------------------------------------- */

/* "37 jars made × (100% − 2% unsold) = 36.26 jars" */
char *
stead_cost_kitchen_good (const SteadCostAnswer *answer)
{
  SteadPack pack = answer->product->pack;
  double each = answer->product->base_per_unit;
  g_autofree char *came = stead_words_units_exact (pack, answer->kitchen->good_base / each, 2);
  g_autofree char *good = stead_words_units_exact (pack, answer->sheet.good_units, 2);
  g_autofree char *unsold = stead_words_percent (answer->product->unsold_frac, 1);

  if (answer->product->unsold_frac > 0)
    /* Translators: "37 jars" that came out good, share unsold, "36.3 jars" that are sold. */
    return g_strdup_printf (_("%s good × (100%% − %s unsold) = %s"), came, unsold, good);
  /* Translators: "37 jars" that came out good. */
  return g_strdup_printf (_("%s good"), came);
}

/* "90 min of cooking + 2 min × 36 jars, ÷ 60 × $9.00 = $24.30" */
char *
stead_cost_kitchen_work (const SteadCostAnswer *answer)
{
  const char *currency = answer->farm->currency;
  g_autofree char *cook = stead_number_format (answer->kitchen->minutes, 1);
  g_autofree char *pack = stead_number_format (answer->product->pack_minutes, 2);
  g_autofree char *units = stead_words_units (answer->product->pack, answer->sheet.good_units);
  g_autofree char *rate = stead_money_format (answer->farm->labor_cents_hour, currency);
  g_autofree char *total = stead_money_format (
    stead_money_round (answer->sheet.parts[STEAD_COST_LABOR].total_cents), currency);

  /* Translators: minutes in the kitchen, minutes of packing one, units, pay for an hour, all of it. */
  return g_strdup_printf (_("(%s min in the kitchen + %s min × %s) ÷ 60 × %s = %s"), cook, pack, units, rate, total);
}

char *
stead_cost_kitchen_sentence (const SteadCostAnswer *answer)
{
  const SteadKitchenSheet *kitchen = answer->kitchen;
  g_autofree char *came = NULL;
  g_autofree char *times = NULL;

  switch (kitchen->basis)
    {
    case STEAD_KITCHEN_RECIPE:
      return g_strdup (_("None was made in these days: this is the recipe at today's prices."));
    case STEAD_KITCHEN_STORE:
      return g_strdup (_("It is sold as it came into the store room, at the price of the next lot."));
    case STEAD_KITCHEN_COOKED:
    default:
      came = stead_words_units (answer->product->pack, kitchen->good_base / answer->product->base_per_unit);
      times = stead_number_format (kitchen->runs->len, 0);
      /* Translators: how often it was cooked, "37 jars" that came of it. */
      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "It was made %s time, and %s came of it.",
                                           "It was made %s times, and %s came of it.",
                                           stead_words_plural (kitchen->runs->len)), times, came);
    }
}

const char *
stead_cost_answer_source (const SteadCostAnswer *self)
{
  g_return_val_if_fail (self != NULL, "");

  return self->batch != NULL ? self->batch->name
         : self->kitchen->recipe != NULL ? self->kitchen->recipe->name : self->kitchen->item->name;
}
