/* stead-price-model.c - the price answer under the handles.
 *
 * Invariants:
 *  1. Turning a knob reads nothing from the store and keeps nothing on the heap
 *     but the sentences of the answer.
 *  2. While the axis is held its range does not change, unless there is another
 *     product.
 */
#include "config.h"

#include "app/price/stead-price-model.h"

#include <math.h>

#include "draw/stead-cvp-chart.h"

struct _SteadPriceModel
{
  GObject           parent_instance;

  SteadPriceAnswer *answer;   /* (nullable) */
  gboolean          held;
  double            max_units;
  double            max_cents;
};

enum { LOADED, CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadPriceModel, stead_price_model, G_TYPE_OBJECT)

static double *
find_knob (SteadCvp  *cvp,
           SteadKnob  knob)
{
  switch (knob)
    {
    case STEAD_KNOB_PRICE:     return &cvp->price_cents;
    case STEAD_KNOB_UNIT_COST: return &cvp->variable_cents;
    case STEAD_KNOB_FIXED:     return &cvp->fixed_cents;
    case STEAD_KNOB_PLANNED:   return &cvp->planned_units;
    case STEAD_KNOB_TARGET:    return &cvp->target_cents;
    default:                   g_return_val_if_reached (NULL);
    }
}

static gint64
read_knob (const SteadCvp *cvp,
           SteadKnob       knob)
{
  SteadCvp copy = *cvp;

  return (gint64) llround (*find_knob (&copy, knob));
}

static void
fit_range (SteadPriceModel *self)
{
  if (self->answer != NULL && !self->held)
    stead_cvp_chart_range (&self->answer->cvp, &self->max_units, &self->max_cents);
}

/* Knobs turned away from what the old answer's farm said stay turned. */
static void
keep_turned (const SteadPriceAnswer *old,
             SteadPriceAnswer       *answer)
{
  SteadCvp cvp = answer->plan;

  for (int knob = 0; knob < STEAD_N_KNOBS; knob++)
    if (read_knob (&old->cvp, knob) != read_knob (&old->plan, knob))
      *find_knob (&cvp, knob) = (double) read_knob (&old->cvp, knob);
  stead_price_answer_set (answer, &cvp);
}

static void
stead_price_model_finalize (GObject *object)
{
  SteadPriceModel *self = STEAD_PRICE_MODEL (object);

  g_clear_pointer (&self->answer, stead_price_answer_free);
  G_OBJECT_CLASS (stead_price_model_parent_class)->finalize (object);
}

static void
stead_price_model_class_init (SteadPriceModelClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_price_model_finalize;

  signals[LOADED] = g_signal_new ("loaded", STEAD_TYPE_PRICE_MODEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
  signals[CHANGED] = g_signal_new ("changed", STEAD_TYPE_PRICE_MODEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
}

static void
stead_price_model_init (SteadPriceModel *self)
{
  self->max_units = 10;
  self->max_cents = 100;
}

SteadPriceModel *
stead_price_model_new (void)
{
  return g_object_new (STEAD_TYPE_PRICE_MODEL, NULL);
}

void
stead_price_model_take_answer (SteadPriceModel  *self,
                               SteadPriceAnswer *answer)
{
  SteadPriceAnswer *old;
  gboolean same;

  g_return_if_fail (STEAD_IS_PRICE_MODEL (self));

  old = g_steal_pointer (&self->answer);
  same = old != NULL && answer != NULL && old->cost->product->id == answer->cost->product->id;
  if (same)
    keep_turned (old, answer);
  else
    self->held = FALSE;
  self->answer = answer;
  g_clear_pointer (&old, stead_price_answer_free);
  fit_range (self);
  g_signal_emit (self, signals[LOADED], 0);
  g_signal_emit (self, signals[CHANGED], 0);
}

gboolean
stead_price_model_load (SteadPriceModel  *self,
                        SteadStore       *store,
                        gint64            product_id,
                        SteadPeriod       period,
                        GError          **error)
{
  SteadPriceAnswer *answer;

  g_return_val_if_fail (STEAD_IS_PRICE_MODEL (self) && STEAD_IS_STORE (store), FALSE);

  answer = stead_price_answer_new (store, product_id, period, error);
  stead_price_model_take_answer (self, answer);
  return answer != NULL;
}

const SteadPriceAnswer *
stead_price_model_get_answer (SteadPriceModel *self)
{
  g_return_val_if_fail (STEAD_IS_PRICE_MODEL (self), NULL);

  return self->answer;
}

gint64
stead_price_model_get (SteadPriceModel *self,
                       SteadKnob        knob)
{
  g_return_val_if_fail (STEAD_IS_PRICE_MODEL (self), 0);

  return self->answer != NULL ? read_knob (&self->answer->cvp, knob) : 0;
}

gint64
stead_price_model_get_farm (SteadPriceModel *self,
                            SteadKnob        knob)
{
  g_return_val_if_fail (STEAD_IS_PRICE_MODEL (self), 0);

  return self->answer != NULL ? read_knob (&self->answer->plan, knob) : 0;
}

void
stead_price_model_set (SteadPriceModel *self,
                       SteadKnob        knob,
                       gint64           value)
{
  SteadCvp cvp;

  g_return_if_fail (STEAD_IS_PRICE_MODEL (self));

  value = CLAMP (value, 0, knob == STEAD_KNOB_PLANNED ? STEAD_KNOB_MAX_UNITS : STEAD_KNOB_MAX_CENTS);
  if (self->answer == NULL || value == read_knob (&self->answer->cvp, knob))
    return;
  cvp = self->answer->cvp;
  *find_knob (&cvp, knob) = (double) value;
  stead_price_answer_set (self->answer, &cvp);
  fit_range (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

gboolean
stead_price_model_is_turned (SteadPriceModel *self,
                             SteadKnob        knob)
{
  return stead_price_model_get (self, knob) != stead_price_model_get_farm (self, knob);
}

gboolean
stead_price_model_is_any_turned (SteadPriceModel *self)
{
  for (int knob = 0; knob < STEAD_N_KNOBS; knob++)
    if (stead_price_model_is_turned (self, knob))
      return TRUE;
  return FALSE;
}

void
stead_price_model_reset (SteadPriceModel *self)
{
  g_return_if_fail (STEAD_IS_PRICE_MODEL (self));

  if (self->answer == NULL)
    return;
  self->held = FALSE;
  stead_price_answer_set (self->answer, &self->answer->plan);
  fit_range (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

void
stead_price_model_get_range (SteadPriceModel *self,
                             double          *max_units,
                             double          *max_cents)
{
  g_return_if_fail (STEAD_IS_PRICE_MODEL (self) && max_units != NULL && max_cents != NULL);

  *max_units = self->max_units;
  *max_cents = self->max_cents;
}

void
stead_price_model_hold (SteadPriceModel *self)
{
  g_return_if_fail (STEAD_IS_PRICE_MODEL (self));

  self->held = TRUE;
}

void
stead_price_model_release (SteadPriceModel *self)
{
  g_return_if_fail (STEAD_IS_PRICE_MODEL (self));

  if (!self->held)
    return;
  self->held = FALSE;
  fit_range (self);
  g_signal_emit (self, signals[CHANGED], 0);
}
