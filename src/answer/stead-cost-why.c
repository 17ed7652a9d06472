/* stead-cost-why.c - how each line of the cost sheet comes about.
 *
 * Each Why ends with a division whose numbers, as they are printed, give the
 * printed cents: a student can do it again on paper.  Digits are added until
 * that holds.
 */
#include "config.h"

#include "answer/stead-cost-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A value as it is read back from a text with @digits after the point. */
static double
as_printed (double value,
            int    digits)
{
  double scale = pow (10, digits);

  return round (value * scale) / scale;
}

/* Money with more digits than coins have, without a symbol: "0.3167". */
static char *
fine_money (double      cents,
            const char *currency,
            int         extra_digits)
{
  int digits = stead_currency_digits (currency);

  return stead_number_format (cents / pow (10, digits), MIN (6, digits + extra_digits));
}

/* The last line: "$139.20 ÷ 95.4 dozen = $1.46". */
static char *
division (const SteadCostAnswer *answer,
          double                 total_cents,
          gint64                 shown_cents)
{
  const char *currency = answer->farm->currency;
  double good = answer->sheet.good_units;
  gint64 whole = stead_money_round (total_cents);
  g_autofree char *total = stead_money_format (whole, currency);
  g_autofree char *units = NULL;
  g_autofree char *shown = stead_money_format (shown_cents, currency);
  int digits = 2;
  int extra = 0;

  while (digits < 6 && stead_money_round ((double) whole / as_printed (good, digits)) != shown_cents)
    digits++;
  /* Near half a cent the total's own rounding tips it: print the total finer. */
  while (extra < 4 && stead_money_round (as_printed (extra == 0 ? (double) whole : total_cents, extra)
                                         / as_printed (good, digits)) != shown_cents)
    extra++;
  if (extra > 0)
    {
      g_free (total);
      total = fine_money (total_cents, currency, extra);
    }
  units = stead_words_units_exact (answer->product->pack, good, digits);
  /* Translators: a cost, divided by "95.4 dozen", gives the cost of one. */
  return g_strdup_printf (_("%s ÷ %s = %s"), total, units, shown);
}

/* "(1,187 − 21) eggs ÷ 12 × (1 − 5%) = 92.3 dozen" */
static char *
good_units (const SteadCostAnswer *answer)
{
  g_autofree char *eggs = stead_number_format ((double) answer->totals.eggs, 0);
  g_autofree char *cracked = stead_number_format ((double) answer->totals.cracked, 0);
  g_autofree char *each = stead_number_format (answer->product->base_per_unit, 3);
  g_autofree char *good = stead_words_units_exact (answer->product->pack, answer->sheet.good_units, 2);
  g_autofree char *unsold = stead_words_percent (answer->product->unsold_frac, 1);

  if (answer->kitchen != NULL)
    return stead_cost_kitchen_good (answer);
  if (answer->money != NULL)
    return stead_cost_money_good (answer);
  if (answer->product->unsold_frac > 0)
    /* Translators: eggs laid, of them cracked, eggs in one unit, share unsold, units that are sold. */
    return g_strdup_printf (_("(%s − %s cracked) eggs ÷ %s × (100%% − %s unsold) = %s"),
                            eggs, cracked, each, unsold, good);
  /* Translators: eggs laid, of them cracked, eggs in one unit, units that can be sold. */
  return g_strdup_printf (_("(%s − %s cracked) eggs ÷ %s = %s"), eggs, cracked, each, good);
}

static void
add_line (GString    *lines,
          const char *line)
{
  if (lines->len > 0)
    g_string_append_c (lines, '\n');
  g_string_append (lines, line);
}

/* "Layer feed: 620 lb for $120.00", one a thing used up. */
static void
add_uses (const SteadCostAnswer *answer,
          SteadCostKind          kind,
          GString               *lines)
{
  for (guint i = 0; i < answer->uses->len; i++)
    {
      const SteadUse *use = answer->uses->pdata[i];
      g_autofree char *covered = NULL;
      g_autofree char *uncovered = NULL;

      if (stead_cost_kind_of_use (stead_cost_batch_kind (answer), use->kind) != kind)
        continue;
      if (use->quantity_base > 0)
        {
          g_autofree char *amount = stead_quantity_format (use->quantity_base, use->unit);
          g_autofree char *cost = stead_money_format (use->cost_cents, answer->farm->currency);

          covered = g_strdup_printf (_("%s: %s for %s"), use->item_name, amount, cost);
          add_line (lines, covered);
        }
      if (use->uncovered_base > 1e-6 && isfinite (use->uncovered_cents))
        {
          g_autofree char *amount = stead_quantity_format (use->uncovered_base, use->unit);
          g_autofree char *cost = stead_money_format (stead_money_round (use->uncovered_cents),
                                                      answer->farm->currency);

          uncovered = g_strdup_printf (_("%s without a receipt: %s for about %s"), use->item_name, amount, cost);
          add_line (lines, uncovered);
        }
    }
}

/* "Chicks $60.00 + feed until lay $120.00 + other $30.00 = $210.00" */
static void
add_rearing (const SteadCostAnswer *answer,
             const SteadCostFacts  *facts,
             GString               *lines)
{
  const char *currency = answer->farm->currency;
  g_autofree char *chicks = stead_money_format (answer->flock->birds_cost_cents, currency);
  g_autofree char *feed = stead_money_format (stead_money_round (facts->reared_feed_cents), currency);
  g_autofree char *other = stead_money_format (stead_money_round (facts->reared_other_cents), currency);
  g_autofree char *all = stead_money_format (stead_money_round (facts->bird_cents), currency);
  g_autofree char *line = NULL;

  /* Translators: what raising hens from chicks cost until they laid. */
  line = g_strdup_printf (_("Raised here: chicks %s + feed until lay %s + other %s = %s"), chicks, feed, other, all);
  add_line (lines, line);
}

/* "($420.00 − $60.00) ÷ (30 hens × 300 eggs) × 1,187 eggs = $47.48" */
static void
add_birds (const SteadCostAnswer *answer,
           const SteadCostFacts  *facts,
           GString               *lines)
{
  const SteadFlock *flock = answer->flock;
  const char *currency = answer->farm->currency;
  double total = answer->sheet.parts[STEAD_COST_START].total_cents;
  g_autofree char *cost = stead_money_format (stead_money_round (facts->bird_cents), currency);
  g_autofree char *salvage = stead_money_format (flock->salvage_cents, currency);
  g_autofree char *hens = stead_words_flock (flock->species, facts->hens);
  g_autofree char *expected = stead_number_format (flock->eggs_expected, 1);
  g_autofree char *eggs = stead_words_eggs (answer->totals.eggs);
  g_autofree char *charge = stead_money_format (stead_money_round (total), currency);
  g_autofree char *line = NULL;

  if (flock->reared)
    add_rearing (answer, facts, lines);
  if (facts->birds_spread)
    line = g_strdup_printf (_("The birds have laid what was expected of them. "
                              "Of %s − %s only %s was still left to spread."), cost, salvage, charge);
  else
    /* Translators: price of all birds, their worth at the end, "30 hens", eggs expected of one, "1,187 eggs" of
     * the period, and the share of the price that these eggs carry. */
    line = g_strdup_printf (_("(%s − %s) ÷ (%s × %s eggs each) × %s = %s"),
                            cost, salvage, hens, expected, eggs, charge);
  add_line (lines, line);
}

static char *
charge_by_units (const SteadAssetCharge *charge,
                 const char             *basis,
                 const char             *salvage,
                 const char             *cents)
{
  const SteadAsset *asset = charge->asset;
  g_autofree char *life = stead_number_format (asset->life_units, 2);
  g_autofree char *units = stead_number_format (charge->units, 2);

  if (charge->units_before + charge->units > asset->life_units)
    return g_strdup_printf (_("%s: the last of its value, %s"), asset->name, cents);
  /* Translators: a machine: (price − worth at the end) ÷ its life of 500 × uses = charge. */
  return g_strdup_printf (_("%s: (%s − %s) ÷ %s × %s = %s"), asset->name, basis, salvage, life, units, cents);
}

static char *
charge_by_time (const SteadAssetCharge *charge,
                const char             *currency,
                const char             *basis,
                const char             *salvage,
                const char             *cents)
{
  const SteadAsset *asset = charge->asset;
  SteadDepreciable thing = stead_asset_depreciable (asset);
  g_autofree char *share = stead_words_percent (charge->frac, 1);
  g_autofree char *years = stead_number_format (asset->life_years, 2);
  g_autofree char *start = NULL;
  g_autofree char *end = NULL;

  if (asset->method == STEAD_DEPRECIATION_STRAIGHT_LINE && charge->to_years <= asset->life_years)
    /* Translators: a coop: (price − worth at the end) ÷ years of life × days of 365 × share of the flock. */
    return g_strdup_printf (_("%s: (%s − %s) ÷ %s years × %d ÷ 365 × %s = %s"),
                            asset->name, basis, salvage, years, charge->days, share, cents);
  start = stead_money_format (stead_money_round (stead_depreciation_book_value (&thing, charge->from_years)),
                              currency);
  end = stead_money_format (stead_money_round (stead_depreciation_book_value (&thing, charge->to_years)), currency);
  /* Translators: a mixer: (value at the start − value at the end of the days) × share of the flock. */
  return g_strdup_printf (_("%s: (worth %s − worth %s) × %s = %s"), asset->name, start, end, share, cents);
}

static void
add_assets (const SteadCostAnswer *answer,
            const SteadCostFacts  *facts,
            GString               *lines)
{
  const char *currency = answer->farm->currency;

  for (guint i = 0; i < facts->charges->len; i++)
    {
      const SteadAssetCharge *charge = facts->charges->pdata[i];
      const SteadAsset *asset = charge->asset;
      g_autofree char *basis = stead_money_format (asset->cost_cents + asset->extra_cents, currency);
      g_autofree char *salvage = stead_money_format (asset->salvage_cents, currency);
      g_autofree char *cents = stead_money_format (stead_money_round (charge->cents), currency);
      g_autofree char *line = NULL;

      if (asset->method == STEAD_DEPRECIATION_UNITS)
        line = charge_by_units (charge, basis, salvage, cents);
      else
        line = charge_by_time (charge, currency, basis, salvage, cents);
      add_line (lines, line);
    }
}

/* An amount in the item's own unit, fine enough to reckon with; pieces are the number alone. */
static char *
exact_amount (const SteadItem *item,
              double           base)
{
  g_autofree char *number = stead_number_format (stead_quantity_from_base (base, item->unit), 6);

  if (g_str_equal (item->unit->id, "ea"))
    return g_steal_pointer (&number);
  return g_strconcat (number, " ", stead_unit_symbol (item->unit), NULL);
}

/* "Carton: $31.00 ÷ 100 × 1 = 0.31": what the lot cost, over what came in it. */
static char *
pack_line (const SteadPackCost *pack,
           const char          *currency,
           const char          *result)
{
  g_autofree char *lot_cost = stead_money_format (pack->lot_cents, currency);
  g_autofree char *lot_amount = exact_amount (pack->item, pack->lot_base);
  g_autofree char *amount = exact_amount (pack->item, pack->quantity_base);

  /* Translators: "Carton", what its lot cost ÷ how many came in it × how many go with one unit sold = its cost. */
  return g_strdup_printf (_("%s: %s ÷ %s × %s = %s"), pack->item->name, lot_cost, lot_amount, amount, result);
}

/* "Carton: $31.67 ÷ 100 × 1 = 0.3167", one a thing that goes with it, then
 * "0.3167 + 0.0633 = $0.38"; one thing alone gives the sum at once. */
static char *
packaging_worked (const SteadCostAnswer *answer,
                  const SteadCostFacts  *facts)
{
  const char *currency = answer->farm->currency;
  g_autofree char *shown = stead_money_format (answer->sheet.parts[STEAD_COST_PACKAGING].shown_cents, currency);
  GString *lines = g_string_new (NULL);
  g_autoptr(GString) sum = g_string_new (NULL);
  g_autofree char *last = NULL;
  const SteadPackCost *only = NULL;
  guint n = 0;

  for (guint i = 0; i < facts->packs->len; i++)
    {
      const SteadPackCost *pack = facts->packs->pdata[i];
      g_autofree char *cents = NULL;
      g_autofree char *line = NULL;

      if (!isfinite (pack->unit_cents))
        continue;
      cents = fine_money (pack->unit_cents, currency, 4);
      line = pack_line (pack, currency, cents);
      add_line (lines, line);
      g_string_append_printf (sum, n > 0 ? " + %s" : "%s", cents);
      only = pack;
      n++;
    }
  if (n == 1)
    {
      g_string_free (lines, TRUE);
      return pack_line (only, currency, shown);
    }
  last = g_strdup_printf ("%s = %s", sum->str, shown);
  add_line (lines, last);
  return g_string_free (lines, FALSE);
}

/* What a tank or a bed began with: bought for it, carried here, or taken out of the store room. */
static void
add_start (const SteadCostAnswer *answer,
           GString               *lines)
{
  const SteadBatchMoney *money = answer->money;
  const char *currency = answer->farm->currency;
  g_autofree char *bought = stead_money_format (stead_money_round (money->start_cents), currency);
  g_autofree char *moved = stead_money_format (stead_money_round (money->moved_in_cents), currency);
  g_autofree char *line = NULL;

  if (money->start_cents > 0)
    {
      line = g_strdup_printf (answer->batch->kind == STEAD_BATCH_FISH ? _("Fish put in at the start: %s")
                                                                      : _("Seed and plants at the start: %s"), bought);
      add_line (lines, line);
    }
  if (money->moved_in_cents > 0)
    {
      g_autofree char *of_moved = g_strdup_printf (_("Fish that moved in brought along: %s"), moved);

      add_line (lines, of_moved);
    }
  add_uses (answer, STEAD_COST_START, lines);
}

/* Fish that moved to another tank took their part of every cost along. */
static void
add_kept (const SteadCostAnswer *answer,
          GString               *lines)
{
  g_autofree char *share = NULL;
  g_autofree char *line = NULL;

  if (answer->money == NULL || !(answer->money->kept_frac < 1))
    return;
  share = stead_words_percent (1 - answer->money->kept_frac, 1);
  line = g_strdup_printf (_("Of what went in, fish that moved out took %s along."), share);
  add_line (lines, line);
}

/* "(45 min × 84 days + 2 min × 92.3 dozen) ÷ 60 × $9.00 = $613.00" */
static void
add_labor (const SteadCostAnswer *answer,
           const SteadCostFacts  *facts,
           GString               *lines)
{
  const char *currency = answer->farm->currency;
  g_autofree char *kitchen = answer->kitchen != NULL ? stead_cost_kitchen_work (answer) : NULL;
  g_autofree char *care = stead_number_format (answer->batch != NULL ? answer->batch->care_minutes_day : 0, 1);
  g_autofree char *days = stead_words_days (facts->days + (answer->money != NULL ? answer->money->days_left : 0));
  g_autofree char *pack = stead_number_format (answer->product->pack_minutes, 2);
  g_autofree char *units = stead_words_units (answer->product->pack, answer->sheet.good_units);
  g_autofree char *rate = stead_money_format (answer->farm->labor_cents_hour, currency);
  g_autofree char *total = stead_money_format (
    stead_money_round (answer->sheet.parts[STEAD_COST_LABOR].total_cents), currency);
  g_autofree char *line = NULL;

  if (kitchen != NULL)
    {
      add_line (lines, kitchen);
      return;
    }
  /* Translators: minutes of care a day, days, minutes of packing one, units, pay for an hour, all of it. */
  line = g_strdup_printf (_("(%s min × %s + %s min × %s) ÷ 60 × %s = %s"), care, days, pack, units, rate, total);
  add_line (lines, line);
}

SteadWhy *
stead_cost_why (const SteadCostAnswer *answer,
                const SteadCostFacts  *facts,
                SteadCostKind          kind)
{
  const SteadCostPart *part = &answer->sheet.parts[kind];
  g_autofree char *good = good_units (answer);
  g_autofree char *to_come = stead_cost_money_to_come (answer, kind);
  g_autofree char *last = NULL;
  GString *lines;

  if (kind == STEAD_COST_OVERHEAD)
    return stead_cost_overhead_why (answer);
  if (kind == STEAD_COST_PACKAGING)
    return stead_why_new (stead_cost_title (answer, kind), stead_cost_formula (answer, kind), packaging_worked (answer, facts),
                          stead_cost_source (answer, kind));
  lines = g_string_new (NULL);
  switch (kind)
    {
    case STEAD_COST_START:
      if (answer->flock != NULL)
        add_birds (answer, facts, lines);
      else if (answer->kitchen != NULL)
        add_uses (answer, kind, lines);
      else
        add_start (answer, lines);
      break;
    case STEAD_COST_ASSETS: add_assets (answer, facts, lines); break;
    case STEAD_COST_LABOR: add_labor (answer, facts, lines); break;
    case STEAD_COST_FEED:
    case STEAD_COST_BEDDING:
    case STEAD_COST_SUPPLIES:
    case STEAD_COST_PACKAGING:
    default: add_uses (answer, kind, lines); break;
    }
  if (kind != STEAD_COST_LABOR)
    {
      add_kept (answer, lines);
      if (to_come != NULL)
        add_line (lines, to_come);
    }
  last = division (answer, part->total_cents, part->shown_cents);
  add_line (lines, good);
  add_line (lines, last);
  return stead_why_new (stead_cost_title (answer, kind), stead_cost_formula (answer, kind), g_string_free (lines, FALSE),
                        stead_cost_source (answer, kind));
}

/* "$1.46 + $0.42 + $0.38 = $2.26"; a sum of one would only say "$1.46 = $1.46". */
static char *
sum_line (const SteadCostAnswer *answer)
{
  const char *currency = answer->farm->currency;
  g_autofree char *total = stead_money_format (answer->sheet.unit_cents, currency);
  g_autoptr(GString) sum = g_string_new (NULL);
  int n = 0;

  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    {
      g_autofree char *line = stead_money_format (answer->sheet.parts[kind].shown_cents, currency);

      if (answer->sheet.parts[kind].total_cents > 0)
        g_string_append_printf (sum, n++ > 0 ? " + %s" : "%s", line);
    }
  if (n == 0)
    return g_strdup (_("Nothing in it has cost anything so far."));
  if (n == 1)
    return g_strdup_printf (_("Only one line has a cost so far: %s."), total);
  return g_strdup_printf ("%s = %s", sum->str, total);
}

SteadWhy *
stead_cost_total_why (const SteadCostAnswer *answer)
{
  const SteadCostSheet *sheet = &answer->sheet;
  const char *currency = answer->farm->currency;
  GString *lines = g_string_new (NULL);
  g_autofree char *sum = sum_line (answer);
  g_autofree char *loss = stead_money_format (stead_money_round (sheet->loss_unit_cents), currency);
  g_autofree char *cash = stead_money_format (sheet->unit_cash_cents, currency);
  g_autofree char *of_loss = NULL;
  g_autofree char *of_gifts = NULL;

  if (stead_money_round (sheet->loss_unit_cents) > 0)
    {
      of_loss = g_strdup_printf (_("Of it, cracked and unsold units add %s."), loss);
      add_line (lines, of_loss);
    }
  if (sheet->unit_cash_cents != sheet->unit_cents)
    {
      of_gifts = g_strdup_printf (_("Paid in cash: %s. The rest was given, and counts at its fair value."), cash);
      add_line (lines, of_gifts);
    }
  add_line (lines, sum);
  return stead_why_new (g_strdup_printf (_("Cost of %s"), stead_words_per_unit (answer->product->pack)),
                        answer->flock != NULL
                        ? _("Each line is rounded once, then the lines are added up. "
                            "One egg carries the same cost whichever product it ends in. "
                            "Unpaid student work is not in it.")
                        : answer->kitchen != NULL
                        ? _("Each line is rounded once, then the lines are added up. "
                            "Unpaid student work is not in it.")
                        : _("Each line is rounded once, then the lines are added up. "
                            "What is harvested early and late carries the same cost. "
                            "Unpaid student work is not in it."),
                        g_string_free (lines, FALSE),
                        answer->kitchen != NULL
                        ? _("Rounding each line: common practice, no source. "
                            "Gifts at fair value: FASB Accounting Standards Update 2020-07.")
                        : answer->flock == NULL
                        ? _("Sharing by weight or count: Saylor, Managerial Accounting, appendix 7.10. "
                            "Rounding each line: common practice, no source. "
                            "Gifts at fair value: FASB Accounting Standards Update 2020-07.")
                        : _("Rounding each line, sharing by eggs: common practice, no source. "
                          "Gifts at fair value: FASB Accounting Standards Update 2020-07."));
}
