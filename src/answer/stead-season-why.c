/* stead-season-why.c - what the sales brought in all, worked with the farm's numbers. */
#include "config.h"

#include "answer/stead-season-answer.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>

#define NO_SOURCE N_("Common practice, no source.")

/* So many counts, the last ones, stand one by one. */
#define TOLD 12

/* The words name the two numbers. */
G_STATIC_ASSERT (STEAD_RUN_SHIFT == 6 && STEAD_RUN_TREND == 5);

static char *
money (const SteadSeasonAnswer *self,
       gint64                   cents)
{
  return stead_money_format (cents, self->farm->currency);
}

/* By product: each cent was taken for one of them. */
static SteadWhy *
taken_why (const SteadSeasonAnswer *self)
{
  GString *sum = g_string_new (NULL);

  for (guint i = 0; i < self->products->len; i++)
    stead_sum_add (sum, ((const SteadSeasonSum *) self->products->pdata[i])->takings_cents, self->farm->currency);
  stead_sum_total (sum, self->takings_cents, self->farm->currency);
  return stead_why_new (g_strdup (_("Taken")),
                        _("What was taken for each product, at all sales that are cashed up. Each tap counts at the price of its "
                          "moment."), g_string_free (sum, FALSE), _(NO_SOURCE));
}

static void
add_hour (const SteadSeasonAnswer *self,
          GString                 *worked,
          const char              *name,
          gint64                   cents,
          double                   hours,
          gint64                   hour_cents)
{
  g_autofree char *taken = money (self, cents);
  g_autofree char *time = stead_number_format (hours, 2);
  g_autofree char *one = money (self, hour_cents);

  if (worked->len > 0)
    g_string_append_c (worked, '\n');
  /* Translators: a product, a place or a sale; money ÷ hours = money. */
  g_string_append_printf (worked, _("%1$s: %2$s ÷ %3$s h = %4$s"), name, taken, time, one);
}

static SteadWhy *
hours_why (const SteadSeasonAnswer *self)
{
  GPtrArray *sums[] = { self->products, self->places };
  GString *worked = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (sums); i++)
    for (guint j = 0; j < sums[i]->len; j++)
      {
        const SteadSeasonSum *sum = sums[i]->pdata[j];

        add_hour (self, worked, sum->name, sum->takings_cents, sum->hours, sum->per_hour_cents);
      }
  return stead_why_new (g_strdup (_("Taken in an hour")),
                        _("Taken ÷ hours from the opening to the closing of the stall, by the plan. Of a product, all sales that it "
                          "was sold at; of a place, all sales that were there."),
                        g_string_free (worked, FALSE), _(NO_SOURCE));
}

/* The newest one that is done stands for all. */
static SteadWhy *
day_why (const SteadSeasonAnswer *self)
{
  for (guint i = 0; i < self->days->len; i++)
    {
      const SteadSeasonDay *day = self->days->pdata[i];
      GString *worked;

      if (day->stage != STEAD_SALE_DONE)
        continue;
      worked = g_string_new (NULL);
      add_hour (self, worked, day->sale->name, day->takings_cents,
                (day->sale->closes_min - day->sale->opens_min) / 60.0, day->per_hour_cents);
      return stead_why_new (g_strdup (_("What the last sale took in an hour")),
                            _("Taken ÷ hours from the opening to the closing of the stall, by the plan."),
                            g_string_free (worked, FALSE), _(NO_SOURCE));
    }
  return NULL;
}

static SteadWhy *
overs_why (const SteadSeasonAnswer *self)
{
  GString *sum = g_string_new (NULL);
  guint told = MIN (self->overs->len, TOLD);
  double before = 0;

  for (guint i = 0; i < self->overs->len - told; i++)
    before += g_array_index (self->overs, double, i);
  if (told < self->overs->len)
    stead_sum_add (sum, stead_money_round (before), self->farm->currency);
  for (guint i = self->overs->len - told; i < self->overs->len; i++)
    stead_sum_add (sum, stead_money_round (g_array_index (self->overs, double, i)), self->farm->currency);
  stead_sum_total (sum, self->over_cents, self->farm->currency);
  return stead_why_new (g_strdup (_("Over and short in all")),
                        _("Counted by two − what must be in the box, of each cash-up, oldest first; below zero is short. Of many "
                          "the first ones stand as one sum."),
                        g_string_free (sum, FALSE),
                        _("Petty cash, and cash over and short: OpenStax, Principles of Accounting, vol. 1, section 8.4."));
}

/* "Counts 3 to 9 lie on one side", or that none do. */
static char *
signs_text (const SteadSeasonAnswer *self)
{
  const SteadRunChart *run = &self->run;

  if (!run->can_tell)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u count is too few to tell; %u are enough.",
                                         "%u counts are too few to tell; %u are enough.", self->overs->len),
                            self->overs->len, STEAD_RUN_LEAST);
  if (run->shift.found)
    /* Translators: two numbers of counts. */
    return g_strdup_printf (_("Counts %u to %u lie on one side."), (guint) run->shift.first + 1, (guint) run->shift.last + 1);
  if (run->trend.found)
    /* Translators: two numbers of counts. */
    return g_strdup_printf (_("Counts %u to %u all rise or all fall."), (guint) run->trend.first + 1,
                            (guint) run->trend.last + 1);
  return g_strdup (_("No such row is among the counts."));
}

static SteadWhy *
chance_why (const SteadSeasonAnswer *self)
{
  g_autofree char *median = money (self, stead_money_round (self->run.median));
  g_autofree char *signs = signs_text (self);

  return stead_why_new (
    g_strdup (_("Is it chance?")),
    _("The line is the middle one of all counts. Six or more in a row on one side of it, or five or more in a row that all rise or "
      "all fall, are seldom chance."),
    /* Translators: money, and a sentence on the counts. */
    g_strdup_printf (_("The middle one is %1$s. %2$s"), median, signs),
    _("Run charts: Perla, Provost and Murray (2011), rules 1 and 2; from memory."));
}

GPtrArray *
stead_season_answer_whys (const SteadSeasonAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  if (self->n_done > 0 && self->products->len > 0)
    {
      g_ptr_array_add (whys, taken_why (self));
      g_ptr_array_add (whys, hours_why (self));
      g_ptr_array_add (whys, day_why (self));
    }
  if (self->overs->len > 0)
    {
      g_ptr_array_add (whys, overs_why (self));
      g_ptr_array_add (whys, chance_why (self));
    }
  return whys;
}
