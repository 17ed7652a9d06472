/* stead-best-use.c - "What is the best use of what is scarce?": the plan and its limits.
 *
 * Limits are laid in a row: what is scarce, the most of each product, the least of each.
 */
#include "config.h"

#include "answer/stead-best-use-private.h"

#include <math.h>

#include "core/stead-product-clash.h"

#define MINUTES_PER_HOUR 60.0

/* How long whole units are looked for: while a handle moves, and when it rests. */
#define QUICK_MS 10
#define PATIENT_MS 500

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
  g_array_unref (line->uses);
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
  g_ptr_array_unref (self->missing);
  g_free (self->sentence);
  g_free (self->advice);
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
  self->missing = g_ptr_array_new_with_free_func (g_free);
  return self;
}

guint
stead_best_use_add_scarce (SteadBestUse      *self,
                           const SteadScarce *scarce)
{
  SteadScarce *copy = g_memdup2 (scarce, sizeof *scarce);

  copy->name = g_strdup (scarce->name);
  g_ptr_array_add (self->scarce, copy);
  for (guint i = 0; i < self->lines->len; i++)
    g_array_set_size (line_at (self, i)->uses, self->scarce->len);
  return self->scarce->len - 1;
}

guint
stead_best_use_add_line (SteadBestUse           *self,
                         const SteadBestUseLine *line)
{
  SteadBestUseLine *copy = g_memdup2 (line, sizeof *line);

  copy->name = g_strdup (line->name);
  copy->uses = g_array_new (FALSE, TRUE, sizeof (double));
  g_array_set_size (copy->uses, self->scarce->len);
  if (!(copy->most > 0))
    copy->most = 2 * copy->planned;
  g_ptr_array_add (self->lines, copy);
  return self->lines->len - 1;
}

double
stead_best_use_taken (const SteadBestUse *self,
                      guint               line,
                      guint               scarce)
{
  g_return_val_if_fail (self != NULL && line < self->lines->len && scarce < self->scarce->len, 0);

  return g_array_index (line_at (self, line)->uses, double, scarce);
}

void
stead_best_use_set_taken (SteadBestUse *self,
                          guint         line,
                          guint         scarce,
                          double        amount)
{
  double *use;

  g_return_if_fail (self != NULL && line < self->lines->len && scarce < self->scarce->len);

  use = &g_array_index (line_at (self, line)->uses, double, scarce);
  scarce_at (self, scarce)->planned += (amount - *use) * line_at (self, line)->planned;
  *use = amount;
}

void
stead_best_use_take (SteadBestUse *self,
                     guint         line,
                     guint         scarce,
                     double        amount)
{
  stead_best_use_set_taken (self, line, scarce, stead_best_use_taken (self, line, scarce) + amount);
}

void
stead_best_use_set_more (SteadBestUse *self,
                         double        frac)
{
  g_return_if_fail (self != NULL);

  for (guint i = 0; i < self->lines->len; i++)
    line_at (self, i)->most = floor (line_at (self, i)->planned * (1 + frac) + 1e-9);
}

double
stead_scarce_telling (const SteadScarce *scarce)
{
  switch (scarce->kind)
    {
    case STEAD_SCARCE_PACKS: return scarce->base_per_pack;
    case STEAD_SCARCE_MINUTES: return MINUTES_PER_HOUR;
    case STEAD_SCARCE_PLAIN:
    default: return 1;
    }
}

/* --- solving ------------------------------------------------------------------------------- */

/* All limits of the day: m scarce things, then the most of n products, then the least. */
typedef struct
{
  guint       n, m;
  double     *margins;     /* (array length=n) */
  double     *use;         /* (array length=n * (m + 2n)) */
  SteadMixLimit *limits;      /* (array length=m + 2n) */
} Programme;

static void
programme_clear (Programme *programme)
{
  g_free (programme->margins);
  g_free (programme->use);
  g_free (programme->limits);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Programme, programme_clear)

static guint
n_limits (const Programme *programme)
{
  return programme->m + 2 * programme->n;
}

static void
programme_fill (Programme          *programme,
                const SteadBestUse *self)
{
  guint n = self->lines->len, m = self->scarce->len;

  *programme = (Programme) { n, m, g_new0 (double, n), g_new0 (double, (gsize) n * (m + 2 * n)),
                             g_new0 (SteadMixLimit, m + 2 * n) };
  for (guint k = 0; k < m; k++)
    {
      programme->limits[k] = (SteadMixLimit) { programme->use + k * n, STEAD_MIX_AT_MOST, scarce_at (self, k)->amount };
      for (guint i = 0; i < n; i++)
        programme->use[k * n + i] = stead_best_use_taken (self, i, k);
    }
  for (guint i = 0; i < n; i++)
    {
      const SteadBestUseLine *line = line_at (self, i);

      programme->margins[i] = line->price_cents - line->own_cents;
      programme->use[(m + i) * n + i] = programme->use[(m + n + i) * n + i] = 1;
      programme->limits[m + i] = (SteadMixLimit) { programme->use + (m + i) * n, STEAD_MIX_AT_MOST, line->most };
      programme->limits[m + n + i] = (SteadMixLimit) { programme->use + (m + n + i) * n, STEAD_MIX_AT_LEAST, line->least };
    }
}

static void
mark_clash (SteadBestUse    *self,
            const Programme *programme)
{
  g_autofree gboolean *clash = g_new0 (gboolean, n_limits (programme));

  self->n_clashing = (guint) stead_product_clash_find (programme->limits, n_limits (programme), programme->n, clash);
  for (guint k = 0; k < programme->m; k++)
    scarce_at (self, k)->clashes = clash[k];
  for (guint i = 0; i < programme->n; i++)
    {
      line_at (self, i)->most_clashes = clash[programme->m + i];
      line_at (self, i)->least_clashes = clash[programme->m + programme->n + i];
    }
}

static void
read_lines (SteadBestUse           *self,
            const Programme        *programme,
            const SteadProductPlan *plans,
            const SteadLimitPlan   *ends,
            const double           *wholes)
{
  for (guint i = 0; i < programme->n; i++)
    {
      SteadBestUseLine *line = line_at (self, i);

      line->best = self->whole ? wholes[i] : plans[i].quantity;
      line->most_cents = MAX (0, ends[programme->m + i].shadow_price);
      line->least_cents = MAX (0, -ends[programme->m + programme->n + i].shadow_price);
      line->price_low = plans[i].margin_low + line->own_cents;
      line->price_high = plans[i].margin_high + line->own_cents;
    }
}

static void
read_scarce (SteadBestUse         *self,
             const Programme      *programme,
             const SteadLimitPlan *ends)
{
  for (guint k = 0; k < programme->m; k++)
    {
      SteadScarce *scarce = scarce_at (self, k);

      scarce->unused = scarce->amount;
      for (guint i = 0; i < programme->n; i++)
        scarce->unused -= programme->use[k * programme->n + i] * line_at (self, i)->best;
      scarce->worth_cents = ends[k].shadow_price * stead_scarce_telling (scarce);
      scarce->low = ends[k].low;
      scarce->high = ends[k].high;
    }
}

static gboolean
solve (SteadBestUse *self,
       gboolean      quick)
{
  g_auto(Programme) programme = { 0 };
  g_autofree SteadProductPlan *plans = g_new0 (SteadProductPlan, self->lines->len);
  g_autofree double *wholes = g_new0 (double, self->lines->len);
  g_autofree SteadLimitPlan *ends = NULL;

  programme_fill (&programme, self);
  ends = g_new0 (SteadLimitPlan, n_limits (&programme));
  if (!stead_product_mix_solve (programme.margins, programme.n, programme.limits, n_limits (&programme), plans, ends,
                                &self->best_cents, NULL))
    {
      mark_clash (self, &programme);
      return FALSE;
    }
  if (self->whole && !stead_product_mix_solve_whole (programme.margins, programme.n, programme.limits, n_limits (&programme),
                                                     quick ? QUICK_MS : PATIENT_MS, wholes, &self->best_cents, &self->proven,
                                                     NULL))
    return FALSE;
  read_lines (self, &programme, plans, ends, wholes);
  read_scarce (self, &programme, ends);
  return TRUE;
}

void
stead_best_use_settle (SteadBestUse *self,
                       gboolean      quick)
{
  g_return_if_fail (self != NULL);

  self->plan_cents = self->best_cents = 0;
  self->n_clashing = 0;
  self->proven = TRUE;
  for (guint k = 0; k < self->scarce->len; k++)
    scarce_at (self, k)->clashes = FALSE;
  for (guint i = 0; i < self->lines->len; i++)
    {
      SteadBestUseLine *line = line_at (self, i);

      line->best = 0;
      line->least_clashes = line->most_clashes = FALSE;
      self->plan_cents += line->planned * (line->price_cents - line->own_cents);
    }
  self->solved = self->lines->len > 0 && solve (self, quick);
  stead_best_use_put_in_words (self);
}
