/* stead-best-use.c - "What is the best use of what is scarce?" */
#include "config.h"

#include "answer/stead-best-use.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-price-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"
#include "core/stead-product-mix.h"

#define FIRST_MORE_FRAC 0.5
#define MINUTES_PER_HOUR 60.0

static void
scarce_free (SteadScarce *scarce)
{
  g_free (scarce->name);
  g_free (scarce);
}

static void
line_free (SteadBestUseLine *line)
{
  g_free (line->name);
  g_free (line);
}

void
stead_best_use_free (SteadBestUse *self)
{
  if (self == NULL)
    return;
  g_free (self->currency);
  g_ptr_array_unref (self->lines);
  g_ptr_array_unref (self->scarce);
  g_free (self->sentence);
  g_free (self->scarce_text);
  g_free (self);
}

SteadBestUse *
stead_best_use_new_empty (const char *currency)
{
  SteadBestUse *self = g_new0 (SteadBestUse, 1);

  self->currency = g_strdup (currency);
  self->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) line_free);
  self->scarce = g_ptr_array_new_with_free_func ((GDestroyNotify) scarce_free);
  self->more_frac = FIRST_MORE_FRAC;
  return self;
}

void
stead_best_use_add_scarce (SteadBestUse      *self,
                           const SteadScarce *scarce)
{
  SteadScarce *copy = g_memdup2 (scarce, sizeof *scarce);

  copy->name = g_strdup (scarce->name);
  g_ptr_array_add (self->scarce, copy);
}

void
stead_best_use_add_line (SteadBestUse           *self,
                         const SteadBestUseLine *line)
{
  SteadBestUseLine *copy = g_memdup2 (line, sizeof *line);

  copy->name = g_strdup (line->name);
  g_ptr_array_add (self->lines, copy);
}

/* --- reading ---------------------------------------------------------------------------- */

static SteadScarce *
scarce_at (const SteadBestUse *self,
           guint               i)
{
  return self->scarce->pdata[i];
}

static SteadBestUseLine *
line_at (const SteadBestUse *self,
         guint               i)
{
  return self->lines->pdata[i];
}

static int
source_of (SteadBestUse          *self,
           const SteadCostAnswer *cost)
{
  const char *name = stead_cost_answer_source (cost);
  SteadScarce scarce = { .name = (char *) name, .pack = cost->product->pack, .base_per_pack = cost->product->base_per_unit };

  for (guint i = 0; i < self->scarce->len; i++)
    if (g_strcmp0 (scarce_at (self, i)->name, name) == 0)
      return (int) i;
  stead_best_use_add_scarce (self, &scarce);
  return (int) self->scarce->len - 1;
}

static void
add_product (SteadBestUse           *self,
             const SteadPriceAnswer *price)
{
  const SteadCostAnswer *cost = price->cost;
  SteadBestUseLine line = { .name = cost->product->name, .pack = cost->product->pack,
                            .base_per_unit = cost->product->base_per_unit, .minutes = cost->product->pack_minutes,
                            .price_cents = price->plan.price_cents,
                            .own_cents = (double) cost->sheet.parts[STEAD_COST_PACKAGING].shown_cents,
                            .planned = price->plan.planned_units };

  line.source = source_of (self, cost);
  scarce_at (self, (guint) line.source)->planned += line.planned * line.base_per_unit;
  stead_best_use_add_line (self, &line);
}

static void
add_minutes (SteadBestUse *self)
{
  SteadScarce minutes = { .name = (char *) _("Time for packing") };

  for (guint i = 0; i < self->lines->len; i++)
    minutes.planned += line_at (self, i)->planned * line_at (self, i)->minutes;
  if (minutes.planned > 0)
    stead_best_use_add_scarce (self, &minutes);
  for (guint i = 0; i < self->scarce->len; i++)
    scarce_at (self, i)->amount = scarce_at (self, i)->planned;
}

SteadBestUse *
stead_best_use_new (SteadStore   *store,
                    SteadPeriod   period,
                    GError      **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);
  g_autoptr(GPtrArray) products = farm != NULL ? stead_product_repo_list (store, FALSE, error) : NULL;
  g_autoptr(SteadBestUse) self = NULL;

  if (products == NULL)
    return NULL;
  self = stead_best_use_new_empty (farm->currency);
  for (guint i = 0; i < products->len; i++)
    {
      g_autoptr(GError) local_error = NULL;
      g_autoptr(SteadPriceAnswer) price = stead_price_answer_new (store, ((SteadProduct *) products->pdata[i])->id, period,
                                                                  &local_error);

      if (price == NULL && !g_error_matches (local_error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING))
        {
          g_propagate_error (error, g_steal_pointer (&local_error));
          return NULL;
        }
      if (price != NULL && price->price_on_file >= 0 && price->plan.planned_units > 0)
        add_product (self, price);
    }
  add_minutes (self);
  self->whole = TRUE;
  stead_best_use_settle (self);
  return g_steal_pointer (&self);
}

/* --- solving ------------------------------------------------------------------------------- */

static double
use_of (const SteadBestUse *self,
        guint               scarce,
        guint               line)
{
  if (!(scarce_at (self, scarce)->base_per_pack > 0))
    return line_at (self, line)->minutes;
  return line_at (self, line)->source == (int) scarce ? line_at (self, line)->base_per_unit : 0;
}

/* The worth of a base unit or a minute, as one of a pack or of an hour. */
static double
telling (const SteadScarce *scarce)
{
  return scarce->base_per_pack > 0 ? scarce->base_per_pack : MINUTES_PER_HOUR;
}

static gboolean
solve (SteadBestUse *self)
{
  guint n = self->lines->len, m = self->scarce->len;
  g_autofree double *margins = g_new0 (double, n), *use = g_new0 (double, (gsize) n * (n + m));
  g_autofree SteadLimit *limits = g_new0 (SteadLimit, n + m);
  g_autofree SteadProductPlan *plans = g_new0 (SteadProductPlan, n);
  g_autofree double *wholes = g_new0 (double, n);
  g_autofree SteadLimitPlan *ends = g_new0 (SteadLimitPlan, n + m);

  for (guint i = 0; i < n; i++)
    margins[i] = line_at (self, i)->price_cents - line_at (self, i)->own_cents;
  for (guint k = 0; k < n + m; k++)
    {
      for (guint i = 0; i < n; i++)
        use[k * n + i] = k < m ? use_of (self, k, i) : (double) (k - m == i);
      limits[k] = (SteadLimit) { use + k * n, STEAD_LIMIT_AT_MOST,
                                 k < m ? scarce_at (self, k)->amount : line_at (self, k - m)->most };
    }
  if (!stead_product_mix_solve (margins, n, limits, n + m, plans, ends, &self->best_cents, NULL))
    return FALSE;
  if (self->whole && !stead_product_mix_solve_whole (margins, n, limits, n + m, wholes, &self->best_cents, NULL))
    return FALSE;
  for (guint i = 0; i < n; i++)
    line_at (self, i)->best = self->whole ? wholes[i] : plans[i].quantity;
  for (guint k = 0; k < m; k++)
    {
      SteadScarce *scarce = scarce_at (self, k);

      scarce->unused = scarce->amount;
      for (guint i = 0; i < n; i++)
        scarce->unused -= use[k * n + i] * line_at (self, i)->best;
      scarce->worth_cents = ends[k].shadow_price * telling (scarce);
      scarce->low = ends[k].low;
      scarce->high = ends[k].high;
    }
  return TRUE;
}

/* --- words ------------------------------------------------------------------------------------ */

char *
stead_scarce_amount (const SteadScarce *scarce,
                     double             amount)
{
  g_autofree char *hours = NULL;

  if (scarce->base_per_pack > 0)
    return stead_words_units (scarce->pack, amount / scarce->base_per_pack);
  hours = stead_number_format (amount / MINUTES_PER_HOUR, 1);
  /* Translators: hours, short. */
  return g_strdup_printf (_("%s h"), hours);
}

static char *
money (const SteadBestUse *self,
       double              cents)
{
  return stead_money_format (stead_money_round (cents), self->currency);
}

static char *
sentence_of (const SteadBestUse *self)
{
  g_autofree char *best = money (self, self->best_cents), *plan = money (self, self->plan_cents);
  g_autofree char *more = money (self, self->best_cents - self->plan_cents);

  if (!self->solved)
    return g_strdup (_("With these limits no best use can be worked out. Give each more than nothing."));
  if (stead_money_round (self->best_cents - self->plan_cents) == 0)
    return g_strdup_printf (_("The plan is already the best use: it brings <b>%s</b> after packaging."), plan);
  if (self->best_cents < self->plan_cents)
    return g_strdup_printf (_("There is not enough for the plan of %s: the best that can be made brings <b>%s</b> after packaging."),
                            plan, best);
  return g_strdup_printf (_("The best use brings <b>%s</b> after packaging, <b>%s</b> more than the plan of %s."), best, more, plan);
}

static char *
scarce_sentence (const SteadBestUse *self,
                 const SteadScarce  *scarce)
{
  g_autofree char *name = g_markup_escape_text (scarce->name, -1);
  g_autofree char *worth = money (self, scarce->worth_cents);
  g_autofree char *left = stead_scarce_amount (scarce, scarce->unused);
  g_autofree char *one = stead_scarce_amount (scarce, telling (scarce));
  g_autofree char *high = isfinite (scarce->high) ? stead_scarce_amount (scarce, scarce->high) : NULL;

  if (stead_money_round (scarce->worth_cents) <= 0)
    /* Translators: something that is scarce, and how much of it stays over. */
    return g_strdup_printf (_("%s: enough; %s stay over."), name, left);
  if (high == NULL)
    return g_strdup_printf (_("%s: %s more is worth <b>%s</b>."), name, one, worth);
  /* Translators: something scarce, "1 dozen", what it is worth, and up to which amount that holds. */
  return g_strdup_printf (_("%s: %s more is worth <b>%s</b>, up to %s in all."), name, one, worth, high);
}

void
stead_best_use_settle (SteadBestUse *self)
{
  GString *text = g_string_new (NULL);

  g_return_if_fail (self != NULL);
  self->plan_cents = self->best_cents = 0;
  for (guint i = 0; i < self->lines->len; i++)
    {
      SteadBestUseLine *line = line_at (self, i);

      line->most = line->planned * (1 + self->more_frac);
      line->best = 0;
      self->plan_cents += line->planned * (line->price_cents - line->own_cents);
    }
  self->solved = self->lines->len > 0 && solve (self);
  for (guint i = 0; self->solved && i < self->scarce->len; i++)
    {
      g_autofree char *line = scarce_sentence (self, scarce_at (self, i));

      g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", line);
    }
  g_free (self->sentence);
  g_free (self->scarce_text);
  self->sentence = sentence_of (self);
  self->scarce_text = g_string_free (text, FALSE);
}
