/* stead-cost-money.c - the cost of one unit of a batch that is harvested at its end. */
#include "config.h"

#include "answer/stead-cost-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* --- the sheet ------------------------------------------------------------------ */

static double
unsold_off (const SteadCostAnswer *answer,
            double                 base)
{
  return base / answer->product->base_per_unit * (1 - answer->product->unsold_frac);
}

/* What is still to come is bought; of what wears out, the same share stays given. */
static double
gift_of (const SteadBatchMoney *money,
         SteadCostKind          kind)
{
  if (kind != STEAD_COST_ASSETS || !(money->so_far[kind] > 0))
    return money->gift[kind];
  return money->gift[kind] * (1 + money->to_come[kind] / money->so_far[kind]);
}

void
stead_cost_money_settle (SteadCostAnswer *answer,
                         SteadCostFacts  *facts)
{
  const SteadBatchMoney *money = answer->money;
  SteadCostSheet *sheet = &answer->sheet;
  double minutes;

  *sheet = (SteadCostSheet) { 0 };
  sheet->good_units = unsold_off (answer, money->cost.good_base + money->cost.expected_base);
  sheet->made_units = (money->cost.good_base + money->harvested.lost_base + money->cost.expected_base)
                      / answer->product->base_per_unit;
  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    {
      sheet->parts[kind].total_cents = MAX (0, money->so_far[kind] + money->to_come[kind]);
      sheet->parts[kind].gift_cents = gift_of (money, (SteadCostKind) kind);
    }
  minutes = answer->product->pack_minutes * sheet->good_units;
  sheet->parts[STEAD_COST_LABOR].total_cents += minutes / 60 * (double) answer->farm->labor_cents_hour;
  stead_cost_add_packaging (answer, facts);
  stead_cost_sheet_settle (sheet);
}

/* --- how it comes about ------------------------------------------------------------ */

/* Where the feed that is still to be given is known from. */
static const char *
feed_reason (const SteadBatchMoney *money)
{
  switch (money->feed_basis)
    {
    /* Translators: in each of these %s is an amount of money. */
    case STEAD_TO_COME_FORECAST: return _("Still to come, by the forecast: %s");
    case STEAD_TO_COME_PLAN: return _("Still to come, by the plan: %s");
    case STEAD_TO_COME_LATE:
    case STEAD_TO_COME_NOTHING:
    default: return _("Still to come, as much a day as in the last four weeks: %s");
    }
}

static const char *
reason_of (const SteadBatchMoney *money,
           SteadCostKind          kind)
{
  switch (kind)
    {
    case STEAD_COST_FEED: return feed_reason (money);
    case STEAD_COST_ASSETS: return _("Still to come, by the days until its end: %s");
    case STEAD_COST_BEDDING:
    case STEAD_COST_SUPPLIES:
    case STEAD_COST_START:
    case STEAD_COST_OVERHEAD:
    case STEAD_COST_PACKAGING:
    case STEAD_COST_LABOR:
    default:
      return isnan (money->plan.other_cents) ? _("Still to come, as much a day as in the last four weeks: %s")
                                             : _("Still to come, by the plan: %s");
    }
}

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
char *
stead_cost_money_to_come (const SteadCostAnswer *answer,
                          SteadCostKind          kind)
{
  g_autofree char *cents = NULL;

  if (answer->money == NULL || stead_money_round (answer->money->to_come[kind]) == 0)
    return NULL;
  cents = stead_money_format (stead_money_round (answer->money->to_come[kind]), answer->farm->currency);
  return g_strdup_printf (reason_of (answer->money, kind), cents);
}
#pragma GCC diagnostic pop

/* What the batch is measured in: what its product is, by the pack. */
static char *
base_units (const SteadCostAnswer *answer,
            double                 base)
{
  return stead_words_units (answer->product->pack, base / answer->product->base_per_unit);
}

/* "(41.5 pounds harvested + 320 pounds expected) × (100% − 2% unsold) = 354.27 pounds" */
char *
stead_cost_money_good (const SteadCostAnswer *answer)
{
  const SteadBatchCost *cost = &answer->money->cost;
  g_autofree char *came = base_units (answer, cost->good_base);
  g_autofree char *expected = base_units (answer, cost->expected_base);
  g_autofree char *good = stead_words_units_exact (answer->product->pack, answer->sheet.good_units, 2);
  g_autofree char *unsold = stead_words_percent (answer->product->unsold_frac, 1);

  if (answer->product->unsold_frac > 0)
    /* Translators: "40 pounds" harvested, "320 pounds" expected, share unsold, "353 pounds" that are sold. */
    return g_strdup_printf (_("(%s harvested + %s expected) × (100%% − %s unsold) = %s"),
                            came, expected, unsold, good);
  /* Translators: "40 pounds" harvested, "320 pounds" expected, "360 pounds". */
  return g_strdup_printf (_("%s harvested + %s expected = %s"), came, expected, good);
}

/* --- in words ---------------------------------------------------------------------- */

char *
stead_cost_money_sentence (const SteadCostAnswer *answer)
{
  const SteadBatchMoney *money = answer->money;
  const char *currency = answer->farm->currency;
  g_autofree char *spent = stead_money_format (stead_money_round (money->cost.so_far_cents), currency);
  g_autofree char *to_come = stead_money_format (stead_money_round (money->cost.to_come_cents), currency);
  g_autofree char *came = base_units (answer, money->cost.good_base);
  g_autofree char *expected = base_units (answer, money->cost.expected_base);

  if (money->outlook.basis == STEAD_OUTLOOK_OVER)
    /* Translators: all money, "320 pounds". */
    return g_strdup_printf (_("In all %s went in, and %s came of it."), spent, came);
  if (money->cost.good_base > 0)
    return g_strdup_printf (_("So far %s went in and %s came; %s and %s are still expected."),
                            spent, came, to_come, expected);
  return g_strdup_printf (_("So far %s went in; %s more, and %s of harvest, are expected."), spent, to_come, expected);
}

void
stead_cost_money_caution (const SteadCostAnswer *answer,
                          GString               *text)
{
  const SteadBatchMoney *money = answer->money;

  if (money->outlook.basis == STEAD_OUTLOOK_NONE)
    stead_words_add (text, _("Neither a plan nor a forecast says what is still to come, so the cost so far is spread "
                             "over what came so far, and looks too high. Enter a plan in Raise."));
  else if (money->outlook.basis == STEAD_OUTLOOK_PLAN)
    stead_words_add (text, _("There is no forecast: the harvest still expected is the plan's."));
  if (money->outlook.is_live)
    stead_words_add (text, stead_batch_outlook_live ());
  if (money->outlook.basis != STEAD_OUTLOOK_OVER && money->outlook.basis != STEAD_OUTLOOK_NONE
      && money->days_left == 0)
    stead_words_add (text, _("No day is known on which it ends, so what it will still cost is left out where it goes "
                             "by days. Enter an end in its plan in Raise."));
}
