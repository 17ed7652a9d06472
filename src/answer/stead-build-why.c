/* stead-build-why.c - what a build takes, what is funded and when the money is there, worked out. */
#include "config.h"

#include "answer/stead-build-answer.h"
#include "answer/stead-build-path.h"
#include "answer/stead-build-private.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
money (const SteadBuildAnswer *self,
       gint64                  cents)
{
  return stead_money_format (cents, self->farm->currency);
}

static void
add_room_whys (const SteadBuildAnswer *self,
               GPtrArray              *whys)
{
  for (guint i = 0; i < self->rooms->len; i++)
    {
      const SteadBuildRoom *room = self->rooms->pdata[i];

      g_ptr_array_add (whys, stead_why_new (g_strdup (room->what), _("animals × room for one"),
                                            /* Translators: how many animals, and what they need together. */
                                            g_strdup_printf (_("%d animals need %s"), self->build->head, room->need),
                                            room->source));
    }
}

static void
add_bill_why (const SteadBuildAnswer *self,
              GPtrArray              *whys)
{
  g_autofree char *bought = money (self, self->bill.bought_cents);
  g_autofree char *tax = money (self, self->bill.tax_cents);
  g_autofree char *more = money (self, self->bill.contingency_cents);
  g_autofree char *cash = money (self, self->bill.cash_cents);

  g_ptr_array_add (whys, stead_why_new (g_strdup (_("What is to be raised")),
                                        _("what is bought + sales tax + a share for what was forgotten"),
                                        g_strdup_printf ("%s + %s + %s = %s", bought, tax, more, cash),
                                        _("Each line is rounded to the cent, then lines are added. The share is the farm's own; a tenth is usual.")));
}

/* "$600.00 + $90.00 + $300.00 = $990.00; ÷ $1,600.00 = 62 %" */
static void
add_share_why (const SteadBuildAnswer *self,
               GPtrArray              *whys)
{
  const char *currency = self->farm->currency;
  g_autofree char *goal = money (self, self->goal_cents), *share = stead_words_percent (self->share, 0);
  g_autofree char *missing = money (self, self->goal_cents - self->have_cents), *have = money (self, self->have_cents);
  GString *sum = g_string_new (NULL);

  stead_sum_add (sum, self->spent_cents, currency);
  stead_sum_add (sum, MAX (self->free_cents, 0), currency);
  stead_sum_add (sum, self->bound_cents, currency);
  if (self->over_cents > 0)
    stead_sum_take (sum, self->over_cents, currency);
  stead_sum_total (sum, self->have_cents, currency);
  /* Translators: goes on after a sum of money: money ÷ money = a percentage; money − money = money. */
  g_string_append_printf (sum, _("\n%1$s ÷ %2$s = %3$s\nStill missing: %2$s − %1$s = %4$s"), have, goal, share, missing);
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("Share that is funded")),
    _("(Paid already + free money in its fund + grants that fit, what is beyond the goal taken off) ÷ money needed. A pledge "
      "counts once it is received."),
    g_string_free (sum, FALSE), _("Common practice, no source.")));
}

static void
add_yearly_why (const SteadBuildAnswer *self,
                GPtrArray              *whys)
{
  const char *currency = self->farm->currency;
  g_autofree char *years = stead_number_format (STEAD_BUILD_LIFE_YEARS, 0), *wear = money (self, self->wear_cents);
  GString *worked = g_string_new ("("), *sum = g_string_new (NULL);

  stead_sum_add (sum, self->goal_cents, currency);
  if (self->bill.given_cents > 0)
    stead_sum_add (sum, self->bill.given_cents, currency);
  if (self->part_cents[STEAD_BUILD_PART_ANIMALS] > 0)
    stead_sum_take (sum, self->part_cents[STEAD_BUILD_PART_ANIMALS], currency);
  /* Translators: after a sum of money in brackets: years, money. */
  g_string_append_printf (worked, _("%1$s) ÷ %2$s years = %3$s a year"), sum->str, years, wear);
  g_string_free (sum, TRUE);
  g_ptr_array_add (whys, stead_why_new (g_strdup (_("Wear of a year")),
                                        _("(Money needed + what is given, at its fair value − animals, which do not wear down) ÷ years "
                                          "that a pen lasts"),
                                        g_string_free (worked, FALSE),
                                        _("20 years for a pen: common practice, no source.")));
  if (self->upkeeps->len == 0)
    return;
  sum = g_string_new (NULL);
  for (guint i = 0; i < self->upkeeps->len; i++)
    {
      const SteadBuildUpkeep *upkeep = self->upkeeps->pdata[i];
      g_autofree char *cents = money (self, stead_build_upkeep_cents (self, upkeep));

      stead_sum_add_named (sum, upkeep->name, cents);
    }
  stead_sum_total (sum, self->yearly_cents, currency);
  g_ptr_array_add (whys, stead_why_new (g_strdup (_("Upkeep of a year")),
                                        _("Of each line how many, for each animal where it says so × price of one; all lines added up."),
                                        g_string_free (sum, FALSE), _("Common practice, no source.")));
}

static void
add_hours_why (const SteadBuildAnswer *self,
               GPtrArray              *whys)
{
  GString *sum = g_string_new (NULL);
  g_autofree char *all = stead_number_format (self->hours, 1);

  for (guint i = 0; i < self->phases->len; i++)
    {
      const SteadBuildPhase *phase = self->phases->pdata[i];
      g_autofree char *hours = stead_number_format (phase->hours, 1);

      stead_sum_add_named (sum, phase->name, hours);
    }
  stead_sum_end (sum, all);
  g_ptr_array_add (whys, stead_why_new (g_strdup (_("Hours of work that are planned")), _("The hours of each stretch of the work, added up."),
                                        g_string_free (sum, FALSE), _("Common practice, no source.")));
}

GPtrArray *
stead_build_answer_whys (const SteadBuildAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  add_room_whys (self, whys);
  for (guint i = 0; i < self->rows->len; i++)
    {
      const SteadBuildRow *row = self->rows->pdata[i];
      g_autofree char *number = stead_number_format (row->drawn, 2);

      if (row->how != NULL && !isnan (row->drawn) && row->part != STEAD_BUILD_PART_ANIMALS)
        g_ptr_array_add (whys, stead_why_new (g_strdup (row->name), row->how,
                                              row->unit != NULL ? g_strdup_printf ("%s %s", number, row->unit)
                                                                : g_steal_pointer (&number),
                                              row->part == STEAD_BUILD_PART_FENCE
                                              ? _("Fence: USDA-NRCS specification CS-382 and job sheet 382(b); University of Missouri Extension")
                                              : row->part == STEAD_BUILD_PART_GROUND
                                              ? _("Concrete: hole less post, and what one bag makes; a construction reference")
                                              : _("Roof and boards: a metal roofing maker's guide; a University of Florida building booklet")));
    }
  add_bill_why (self, whys);
  if (!isnan (self->share))
    add_share_why (self, whys);
  if (self->wear_cents > 0)
    add_yearly_why (self, whys);
  if (self->phases->len > 0)
    add_hours_why (self, whys);
  return whys;
}

SteadWhy *
stead_build_answer_pledge_why (const SteadBuildAnswer *self)
{
  GString *worked;
  g_autofree char *all = NULL;

  g_return_val_if_fail (self != NULL, NULL);
  if (self->expected_cents <= 0)
    return NULL;
  worked = g_string_new (NULL);
  all = money (self, self->expected_cents);

  for (guint i = 0; i < self->pledges->len; i++)
    {
      const SteadBuildPledge *pledge = self->pledges->pdata[i];
      g_autofree char *cents = money (self, pledge->cents), *chance = stead_words_percent (pledge->chance, 0);

      if (pledge->cash_line_id == 0 && pledge->withdrawn_on == STEAD_DAY_NONE)
        /* Translators: money × a percentage. */
        g_string_append_printf (worked, _("%1$s%2$s × %3$s"), worked->len > 0 ? " + " : "", cents, chance);
    }
  stead_sum_end (worked, all);
  return stead_why_new (g_strdup (_("Open pledges, by their chances")),
                        _("Each pledge that is still to come × the chance that it comes, as entered."),
                        g_string_free (worked, FALSE), _("Expected value; the chances are the farm's own."));
}

/* --- the path to the money ------------------------------------------------------------------ */

static char *
path_money (const SteadBuildPath *self,
            double                cents)
{
  return stead_money_format (stead_money_round (cents), self->currency);
}

static void
add_days_why (const SteadBuildPath *self,
              GPtrArray            *whys)
{
  double expected_cents = 0;
  g_autofree char *goal = path_money (self, self->goal_cents), *there = path_money (self, self->start_cents);
  g_autofree char *missing = path_money (self, self->goal_cents - self->start_cents), *expected = NULL;
  GString *worked = g_string_new (NULL);

  for (guint i = 0; i < self->events->len; i++)
    {
      const SteadOutlookEvent *event = &g_array_index (self->events, SteadOutlookEvent, i);

      expected_cents += event->mean_cents * event->chance;
    }
  expected = path_money (self, expected_cents);
  /* Translators: money − money = money; money. */
  g_string_append_printf (worked, _("Missing: %1$s − %2$s = %3$s. What is planned and promised is expected to bring %4$s."), goal,
                          there, missing, expected);
  for (int i = 0; i < STEAD_BUILD_N_SURETIES; i++)
    {
      g_autofree char *surety = stead_number_format (100 * stead_build_sureties[i], 0), *day = NULL;

      if (self->days[i] == STEAD_DAY_NONE)
        continue;
      day = stead_day_format (self->days[i], STEAD_DAY_STYLE_MEDIUM);
      /* Translators: on a line of its own: a number of 100, a day. */
      g_string_append_printf (worked, _("\n%1$s of 100 paths are there by %2$s"), surety, day);
    }
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("When the money is there")),
    _("Money that is there + what each planned sale clears and each pledge brings, drawn many thousand times: a sale with its "
      "scatter, part of which all sales share; a pledge comes or does not, by its chance. The day on which so many of 100 paths "
      "have reached the goal."),
    g_string_free (worked, FALSE), _("Monte Carlo; how much sales scatter is the farm's own, what they share is common practice, no "
                                     "source.")));
}

static void
add_next_why (const SteadBuildPath *self,
              GPtrArray            *whys)
{
  double missing_cents = self->goal_cents - self->start_cents;
  g_autofree char *missing = path_money (self, missing_cents), *rest = path_money (self, missing_cents - self->next_cents);
  g_autofree char *next = path_money (self, self->next_cents);

  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("What the next sale has to clear")),
    _("What is missing − what all else is expected to bring until the wanted day: other sales, and pledges by their chances"),
    /* Translators: money − money = money. */
    g_strdup_printf (_("%1$s − %2$s = %3$s"), missing, rest, next), _("Common practice, no source.")));
}

static void
add_sales_why (const SteadBuildPath *self,
               GPtrArray            *whys)
{
  g_autofree char *mean = path_money (self, self->sale_mean), *sd = path_money (self, self->sale_sd);
  g_autofree char *needed = stead_number_format (self->sales_needed, 0);

  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("Sale days that it takes")),
    _("The least number of days like the best one planned that brings, 80 times in 100, what is missing after pledges by their "
      "chances."),
    /* Translators: money, money, a number of days. */
    g_strdup_printf (_("One clears %1$s, give or take %2$s: it takes %3$s."), mean, sd, needed),
    _("Normal distribution of the sum; days of a sale go up and down together in part: common practice, no source.")));
}

static void
add_steps_why (const SteadBuildPath *self,
               GPtrArray            *whys)
{
  GString *worked = g_string_new (NULL);

  for (guint i = 0; i < self->steps->len; i++)
    {
      const SteadBuildStep *step = self->steps->pdata[i];
      g_autofree char *can = NULL, *by = NULL, *spare = NULL;

      if (step->can_begin == STEAD_DAY_NONE)
        continue;
      can = stead_day_format (step->can_begin, STEAD_DAY_STYLE_SHORT);
      by = stead_day_format (step->begin_by, STEAD_DAY_STYLE_SHORT);
      spare = stead_number_format (step->spare, 0);
      /* Translators: on a line of its own: a step, two days, a number of days. */
      g_string_append_printf (worked, _("%1$s%2$s: %3$s − %4$s = %5$s"), worked->len > 0 ? "\n" : "", step->name, by, can, spare);
    }
  if (worked->len == 0)
    {
      g_string_free (worked, TRUE);
      return;
    }
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("Days to spare")),
    _("Begin by − can begin. Can begin: when all that it waits for is done, if everything begins now. Begin by: the wanted day less "
      "the days of all that comes after. The steps with the fewest days to spare decide."),
    g_string_free (worked, FALSE), _("Critical path method; the durations are the farm's own.")));
}

GPtrArray *
stead_build_path_whys (const SteadBuildPath *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  if (self->goal_cents > 0 && self->events->len > 0)
    add_days_why (self, whys);
  if (self->next_on != STEAD_DAY_NONE && self->next_cents >= 0.5)
    add_next_why (self, whys);
  if (self->sales_needed > 0)
    add_sales_why (self, whys);
  add_steps_why (self, whys);
  return whys;
}
