/* stead-sale-say.c - the plan of a sale day in sentences. */
#include "config.h"

#include "answer/stead-sale-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
money (const SteadSaleAnswer *self,
       double                 cents)
{
  return stead_money_format (stead_money_round (cents), self->farm->currency);
}

static char *
units (const SteadSaleLineAnswer *line,
       double                     n)
{
  return stead_words_units (line->good->pack, round (n));
}

/* "People may ask for about 12 dozen.  With 10 dozen you sell out in 7 of 10 days …" */
static char *
line_text (const SteadSaleAnswer     *self,
           const SteadSaleLineAnswer *line)
{
  g_autofree char *asked = NULL;
  g_autofree char *chance = NULL;
  g_autofree char *left = NULL;
  g_autofree char *best = NULL;
  g_autofree char *ratio = NULL;
  GString *text = g_string_new (NULL);
  double ready = (isnan (line->on_hand_units) ? 0 : line->on_hand_units) + (isnan (line->coming_units) ? 0 : line->coming_units);
  gboolean known = !isnan (line->on_hand_units);

  if (known && line->good->planned > ready + 0.5)
    {
      g_autofree char *there = units (line, ready);
      g_autofree char *sentence = ready < 0.5 ? g_strdup (_("There is none for it yet: make or harvest some by then."))
                                              : g_strdup_printf (_("Only about %s will be there by then."), there);

      stead_words_add (text, sentence);
    }
  if (!line->has_demand)
    stead_words_add (text, _("Guess what people may ask for, and the best number to bring is worked out."));
  if (line->has_demand)
    {
      g_autofree char *sentence = NULL;

      asked = units (line, line->demand_units);
      /* Translators: an amount: "12 dozen". */
      sentence = g_strdup_printf (_("People may ask for about %s."), asked);
      stead_words_add (text, sentence);
    }
  if (line->has_demand && line->good->planned > 0)
    {
      g_autofree char *sentence = NULL;

      chance = stead_words_chance (line->sold_out_frac);
      left = units (line, line->left_units);
      /* Translators: a chance, and an amount. */
      sentence = g_strdup_printf (_("The chance to sell out is %s; expect %s left over."), chance, left);
      stead_words_add (text, sentence);
    }
  if (!isnan (line->best_units))
    {
      g_autofree char *sentence = NULL;

      best = units (line, line->best_units);
      ratio = stead_words_percent (line->ratio, 0);
      /* Translators: an amount, and a chance. */
      sentence = g_strdup_printf (_("It pays best to bring %s: enough on %s of such days."), best, ratio);
      stead_words_add (text, sentence);
    }
  return stead_words_end (text);
}

static char *
plan_sentence (const SteadSaleAnswer *self)
{
  g_autofree char *full = money (self, (double) self->full_cents);
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;
  g_autofree char *even = NULL;
  g_autofree char *profit = NULL;
  g_autofree char *loss = NULL;

  if (self->lines->len == 0)
    return g_strdup (_("Choose what is sold, and the plan is worked out."));
  if (self->has_band)
    {
      low = money (self, self->profit.low);
      high = money (self, self->profit.high);
      profit = money (self, self->profit.likely);
      loss = stead_words_chance (self->loss_frac);
      /* Translators: three sums of money, and a chance. */
      return g_strdup_printf (_("This day likely leaves <b>%s</b> after all costs; on 8 of 10 such days between %s and %s. "
                                "The chance of a loss is <b>%s</b>."), profit, low, high, loss);
    }
  if (isnan (self->even_cents))
    return g_strdup_printf (_("If all is sold, the stall takes <b>%s</b>."), full);
  even = money (self, self->even_cents);
  return g_strdup_printf (_("If all is sold, the stall takes <b>%s</b>; it covers its costs from <b>%s</b> on."), full, even);
}

static char *
plan_caution (const SteadSaleAnswer *self)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = self->lines->pdata[i];

      if (isnan (line->unit_cents))
        {
          g_autofree char *sentence = g_strdup_printf (_("What one of “%s” costs is not known yet."), line->good->name);

          stead_words_add (text, sentence);
        }
      else if (line->good->planned > 0 && (double) line->good->price_cents < line->unit_cents)
        {
          g_autofree char *cost = money (self, line->unit_cents);
          g_autofree char *sentence = g_strdup_printf (_("“%s” is sold below what it costs (%s)."), line->good->name, cost);

          stead_words_add (text, sentence);
        }
    }
  if (self->lines->len > 0)
    stead_words_add (text, _("What food may be sold, and how it must be kept and labeled, is for your local health department "
                             "and your school to say. Ask before the sale."));
  return stead_words_end (text);
}

void
stead_sale_answer_say (SteadSaleAnswer *self)
{
  for (guint i = 0; i < self->lines->len; i++)
    {
      SteadSaleLineAnswer *line = self->lines->pdata[i];

      line->text = line_text (self, line);
    }
  self->sentence = plan_sentence (self);
  self->caution = plan_caution (self);
}
