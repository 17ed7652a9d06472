/* stead-sale-tally-why.c - what the stall shows while it sells, worked with the farm's numbers. */
#include "config.h"

#include "answer/stead-sale-private.h"
#include "answer/stead-sale-tally-answer.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>

#define NO_SOURCE N_("Common practice, no source.")

static SteadWhy *
taken_why (const SteadTallyAnswer *self)
{
  GString *worked = g_string_new (NULL), *sum = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadTallyLine *line = self->lines->pdata[i];

      if (!(line->sum.sold > 0))
        continue;
      stead_sale_why_add_taken (worked, line->good, &line->sum, (double) line->sum.takings_cents / line->sum.sold,
                                self->farm->currency);
      stead_sum_add (sum, line->sum.takings_cents, self->farm->currency);
      n++;
    }
  stead_sum_total (sum, self->till.takings_cents + self->till.ahead_cents, self->farm->currency);
  if (n > 1)
    g_string_append_printf (worked, "\n%s", sum->str);
  g_string_free (sum, TRUE);
  return stead_why_new (g_strdup (_("Taken so far")),
                        _("Each tap counts at the price of its moment: number sold × price. A tap that was taken back does not "
                          "count. What was paid before the day is among it."),
                        g_string_free (worked, FALSE), _(NO_SOURCE));
}

static SteadWhy *
left_why (const SteadTallyAnswer *self)
{
  GString *worked = g_string_new (NULL);

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadTallyLine *line = self->lines->pdata[i];

      stead_sale_why_add_left (worked, line->good, stead_sale_sum_tallied (&line->sum), line->left_units);
    }
  return stead_sale_left_why (worked);
}

GPtrArray *
stead_tally_answer_whys (const SteadTallyAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  if (self->till.takings_cents + self->till.ahead_cents != 0)
    g_ptr_array_add (whys, taken_why (self));
  g_ptr_array_add (whys, stead_sale_box_why (&self->till, self->farm->currency));
  if (self->lines->len > 0)
    g_ptr_array_add (whys, left_why (self));
  return whys;
}

SteadWhy *
stead_tally_due_why (const SteadFarm *farm,
                     const GArray    *prices,
                     gint64           due_cents,
                     gint64           given_cents)
{
  GString *worked = g_string_new (NULL);

  g_return_val_if_fail (farm != NULL && prices != NULL, NULL);
  for (guint i = 0; i < prices->len; i++)
    stead_sum_add (worked, g_array_index (prices, gint64, i), farm->currency);
  if (prices->len > 0)
    stead_sum_total (worked, due_cents, farm->currency);
  if (given_cents > due_cents)
    {
      GString *back = g_string_new (NULL);

      stead_sum_add (back, given_cents, farm->currency);
      stead_sum_take (back, due_cents, farm->currency);
      stead_sum_total (back, given_cents - due_cents, farm->currency);
      g_string_append_printf (worked, "%s%s", worked->len > 0 ? "\n" : "", back->str);
      g_string_free (back, TRUE);
    }
  return stead_why_new (g_strdup (_("To pay, and the change")),
                        _("The prices of what this customer takes, one by one; what is taken back goes off. Change = money given − "
                          "to pay, with as few bills and coins as can be."),
                        g_string_free (worked, FALSE), _(NO_SOURCE));
}
