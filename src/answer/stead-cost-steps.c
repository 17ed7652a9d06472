/* stead-cost-steps.c - what each step adds to the cost, and what changed since the month before. */
#include "config.h"

#include "answer/stead-cost-steps.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-cost-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#define LEAST_MOVE_CENTS 0.05

void
stead_cost_steps_free (SteadCostSteps *self)
{
  if (self == NULL)
    return;
  stead_cost_answer_free (self->cost);
  stead_cost_answer_free (self->before);
  stead_cost_answer_free (self->now);
  g_clear_pointer (&self->moves, g_array_unref);
  g_free (self->sentence);
  g_free (self->change);
  g_free (self);
}

/* --- what moved -------------------------------------------------------------------------- */

/* What goes in is reckoned for each bird and day, or for each unit made. */
static double
effort (const SteadCostAnswer *cost)
{
  return cost->flock != NULL ? cost->totals.hen_days : cost->sheet.made_units;
}

static double
days_of (const SteadCostAnswer *cost)
{
  return cost->to - cost->from + 1;
}

static double
yield_of (const SteadCostAnswer *cost)
{
  return cost->sheet.good_units / effort (cost);
}

static void
use_totals (const SteadUse *use,
            double         *quantity,
            double         *cents)
{
  gboolean priced = use->uncovered_base > 0 && isfinite (use->uncovered_cents);

  *quantity = use->quantity_base + (priced ? use->uncovered_base : 0);
  *cents = (double) use->cost_cents + (priced ? use->uncovered_cents : 0);
}

static const SteadUse *
find_use (const SteadCostAnswer *cost,
          gint64                 item_id)
{
  for (guint i = 0; i < cost->uses->len; i++)
    if (((const SteadUse *) cost->uses->pdata[i])->item_id == item_id)
      return cost->uses->pdata[i];
  return NULL;
}

/* Of one thing used; @other (nullable): the same in the other month, whose price it has
 * where none was used. */
static SteadCostFactors
use_factors (const SteadCostAnswer *cost,
             const SteadUse        *use,
             const SteadUse        *other)
{
  SteadCostFactors factors = { 0, 0, yield_of (cost), 1 };
  double quantity = 0, cents = 0;

  if (use != NULL)
    use_totals (use, &quantity, &cents);
  if (quantity > 0)
    {
      factors.price = cents / quantity;
      factors.use = quantity / effort (cost);
      return factors;
    }
  if (other != NULL)
    use_totals (other, &quantity, &cents);
  factors.price = quantity > 0 ? cents / quantity : 0;
  return factors;
}

static SteadCostMove *
move_of (SteadCostSteps *self,
         SteadCostKind   kind)
{
  SteadCostMove fresh = { .kind = kind };

  for (guint i = 0; i < self->moves->len; i++)
    if (g_array_index (self->moves, SteadCostMove, i).kind == kind)
      return &g_array_index (self->moves, SteadCostMove, i);
  g_array_append_val (self->moves, fresh);
  return &g_array_index (self->moves, SteadCostMove, self->moves->len - 1);
}

static void
add_change (SteadCostSteps         *self,
            SteadCostKind           kind,
            const SteadCostFactors *before,
            const SteadCostFactors *after)
{
  double cents[STEAD_N_CHANGE_KINDS];
  SteadCostMove *move;

  stead_cost_change (before, after, cents);
  move = move_of (self, kind);
  for (int i = 0; i < STEAD_N_CHANGE_KINDS; i++)
    move->cents[i] += cents[i];
}

static void
add_use_change (SteadCostSteps *self,
                gint64          item_id,
                SteadItemKind   item_kind)
{
  const SteadUse *before = find_use (self->before, item_id), *now = find_use (self->now, item_id);
  SteadCostFactors a = use_factors (self->before, before, now), b = use_factors (self->now, now, before);

  add_change (self, stead_cost_kind_of_use (stead_cost_batch_kind (self->cost), item_kind), &a, &b);
}

/* What costs the same for each day, however many birds share it. */
static SteadCostFactors
daily_factors (const SteadCostAnswer *cost,
               SteadCostKind          kind)
{
  return (SteadCostFactors) { cost->sheet.parts[kind].total_cents / days_of (cost), 1, yield_of (cost),
                              effort (cost) / days_of (cost) };
}

/* What each egg carries, and how many eggs go into one that is sold. */
static SteadCostFactors
bird_factors (const SteadCostAnswer *cost)
{
  double eggs = (double) cost->totals.eggs;

  return (SteadCostFactors) { cost->sheet.parts[STEAD_COST_START].total_cents / eggs, 1, cost->sheet.good_units / eggs, 1 };
}

static void
find_moves (SteadCostSteps *self)
{
  SteadCostFactors a, b;

  for (guint i = 0; i < self->now->uses->len; i++)
    {
      const SteadUse *use = self->now->uses->pdata[i];

      add_use_change (self, use->item_id, use->kind);
    }
  for (guint i = 0; i < self->before->uses->len; i++)
    {
      const SteadUse *use = self->before->uses->pdata[i];

      if (find_use (self->now, use->item_id) == NULL)
        add_use_change (self, use->item_id, use->kind);
    }
  if (self->cost->flock != NULL)
    {
      a = bird_factors (self->before);
      b = bird_factors (self->now);
      add_change (self, STEAD_COST_START, &a, &b);
    }
  for (SteadCostKind kind = STEAD_COST_ASSETS; kind <= STEAD_COST_OVERHEAD; kind++)
    {
      a = daily_factors (self->before, kind);
      b = daily_factors (self->now, kind);
      add_change (self, kind, &a, &b);
    }
}

/* Each rounded once; what is missing to the shown change goes to the largest. */
static void
round_moves (SteadCostSteps *self)
{
  gint64 left = self->now->sheet.unit_cents - self->before->sheet.unit_cents;
  double all[STEAD_N_CHANGE_KINDS] = { 0 };
  int largest = 0;

  for (guint i = 0; i < self->moves->len; i++)
    for (int k = 0; k < STEAD_N_CHANGE_KINDS; k++)
      all[k] += g_array_index (self->moves, SteadCostMove, i).cents[k];
  for (int k = 0; k < STEAD_N_CHANGE_KINDS; k++)
    {
      self->shown[k] = stead_money_round (all[k]);
      left -= self->shown[k];
      if (fabs (all[k]) > fabs (all[largest]))
        largest = k;
    }
  self->shown[largest] += left;
}

static void
drop_still (SteadCostSteps *self)
{
  for (guint i = self->moves->len; i > 0; i--)
    {
      const SteadCostMove *move = &g_array_index (self->moves, SteadCostMove, i - 1);
      double most = 0;

      for (int k = 0; k < STEAD_N_CHANGE_KINDS; k++)
        most = MAX (most, fabs (move->cents[k]));
      if (most < LEAST_MOVE_CENTS)
        g_array_remove_index (self->moves, i - 1);
    }
}

/* --- the next one ---------------------------------------------------------------------------- */

/* The same amounts as in the period, at the price of the next lot of each thing. */
static gboolean
read_next (SteadStore      *store,
           SteadCostSteps  *self,
           GError         **error)
{
  double change = 0;

  self->next_cents = NAN;
  if (self->cost->money != NULL || !(self->cost->sheet.good_units > 0))
    return TRUE;
  for (guint i = 0; i < self->cost->uses->len; i++)
    {
      const SteadUse *use = self->cost->uses->pdata[i];
      double quantity, cents;
      SteadStock stock;

      if (!stead_lot_repo_stock (store, use->item_id, stead_store_get_today (store), 1, &stock, error))
        return FALSE;
      use_totals (use, &quantity, &cents);
      if (isfinite (stock.next_unit_cents))
        change += quantity * stock.next_unit_cents - cents;
    }
  self->next_more_cents = change;
  self->next_cents = (double) self->cost->sheet.unit_cents + change / self->cost->sheet.good_units;
  return TRUE;
}

/* --- in words --------------------------------------------------------------------------------- */

const char *
stead_change_name (SteadChangeKind kind)
{
  switch (kind)
    {
    case STEAD_CHANGE_USE: return C_("why a cost changed", "What was used");
    case STEAD_CHANGE_YIELD: return C_("why a cost changed", "Output");
    case STEAD_CHANGE_VOLUME: return C_("why a cost changed", "Volume");
    case STEAD_CHANGE_PRICE: return C_("why a cost changed", "Prices");
    default: g_return_val_if_reached ("");
    }
}

const char *
stead_change_about (SteadChangeKind kind)
{
  switch (kind)
    {
    case STEAD_CHANGE_USE: return _("How much went in, for each bird and day or each one made.");
    case STEAD_CHANGE_YIELD: return _("How much came out of it that can be sold.");
    case STEAD_CHANGE_VOLUME: return _("How many share what costs the same anyway.");
    case STEAD_CHANGE_PRICE: return _("What was paid for one of what goes in.");
    default: g_return_val_if_reached ("");
    }
}

static char *
sentence_of (const SteadCostSteps *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *next = isfinite (self->next_cents)
                          ? stead_money_format (stead_money_round (self->next_cents), self->cost->farm->currency) : NULL;
  g_autofree char *ahead = NULL;

  stead_words_add (text, self->cost->sentence);
  if (next != NULL && stead_money_round (self->next_cents) != self->cost->sheet.unit_cents)
    {
      /* Translators: "a dozen", and what the next one costs. */
      ahead = g_strdup_printf (_("At the prices of the next lots, the next one (%s) will cost <b>%s</b>."),
                               stead_words_per_unit (self->cost->product->pack), next);
      stead_words_add (text, ahead);
    }
  return stead_words_end (text);
}

static char *
change_of (const SteadCostSteps *self)
{
  const char *currency = self->cost->farm->currency;
  gint64 more;
  int most = 0;
  g_autofree char *gap = NULL, *from = NULL, *to = NULL, *why = NULL, *what = NULL;

  if (self->cost->money != NULL)
    return g_strdup (_("Its cost is worked out over the whole batch, so there is no month to compare with."));
  if (self->before == NULL)
    return g_strdup (_("There are no two months of it yet to compare."));
  more = self->now->sheet.unit_cents - self->before->sheet.unit_cents;
  for (int k = 1; k < STEAD_N_CHANGE_KINDS; k++)
    if (ABS (self->shown[k]) > ABS (self->shown[most]))
      most = k;
  gap = stead_money_format (ABS (more), currency);
  from = stead_money_format (self->before->sheet.unit_cents, currency);
  to = stead_money_format (self->now->sheet.unit_cents, currency);
  if (more == 0)
    return g_strdup_printf (_("In the last four weeks it cost %s, as much as in the four before."), to);
  /* Translators: how much more (less), the cost before, the cost now. */
  what = g_strdup_printf (more > 0 ? _("In the last four weeks it cost <b>%s more</b> than in the four before: %s, now %s.")
                                   : _("In the last four weeks it cost <b>%s less</b> than in the four before: %s, now %s."),
                          gap, from, to);
  {
    g_autofree char *part = stead_money_format (ABS (self->shown[most]), currency);

    /* Translators: "Prices", "What was used": what changed the cost most; money. */
    why = g_strdup_printf (self->shown[most] > 0 ? _("What changed most: “%s”, %s more.") : _("What changed most: “%s”, %s less."),
                           stead_change_name ((SteadChangeKind) most), part);
  }
  return g_strconcat (what, " ", why, NULL);
}

/* --- reading ------------------------------------------------------------------------------------- */

static gboolean
read_months (SteadStore      *store,
             SteadCostSteps  *self,
             gint64           product_id,
             GError         **error)
{
  g_autoptr(GError) local_error = NULL;

  if (self->cost->money != NULL)
    return TRUE;
  self->now = stead_cost_answer_new_span (store, product_id, 0, &local_error);
  if (self->now != NULL)
    self->before = stead_cost_answer_new_span (store, product_id, 1, &local_error);
  if (local_error != NULL && !g_error_matches (local_error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING))
    {
      g_propagate_error (error, g_steal_pointer (&local_error));
      return FALSE;
    }
  /* Of the kitchen only months in which something was made can be compared. */
  if (self->before == NULL || (self->now->kitchen != NULL && (self->now->kitchen->basis != STEAD_KITCHEN_COOKED
                                                              || self->before->kitchen->basis != STEAD_KITCHEN_COOKED)))
    {
      g_clear_pointer (&self->now, stead_cost_answer_free);
      g_clear_pointer (&self->before, stead_cost_answer_free);
    }
  return TRUE;
}

SteadCostSteps *
stead_cost_steps_new (SteadStore   *store,
                      gint64        product_id,
                      SteadPeriod   period,
                      GError      **error)
{
  g_autoptr(SteadCostSteps) self = g_new0 (SteadCostSteps, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->moves = g_array_new (FALSE, TRUE, sizeof (SteadCostMove));
  self->cost = stead_cost_answer_new (store, product_id, period, error);
  if (self->cost == NULL || !read_next (store, self, error) || !read_months (store, self, product_id, error))
    return NULL;
  if (self->before != NULL)
    {
      find_moves (self);
      round_moves (self);
      drop_still (self);
    }
  self->sentence = sentence_of (self);
  self->change = change_of (self);
  return g_steal_pointer (&self);
}
