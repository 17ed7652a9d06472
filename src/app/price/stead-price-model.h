/* stead-price-model.h - the price answer under the handles.
 *
 * One object that the chart, its handles, the fields, the figures and the
 * sentence all follow.  It reads the farm once and then only computes.
 */
#pragma once

#include <gio/gio.h>

#include "answer/stead-price-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PRICE_MODEL (stead_price_model_get_type ())
G_DECLARE_FINAL_TYPE (SteadPriceModel, stead_price_model, STEAD, PRICE_MODEL, GObject)

/* What a handle or a field turns.  Money in minor units, the plan in whole units. */
typedef enum
{
  STEAD_KNOB_PRICE,
  STEAD_KNOB_UNIT_COST,
  STEAD_KNOB_FIXED,     /* the day's costs, without the steps */
  STEAD_KNOB_PLANNED,
  STEAD_KNOB_TARGET,    /* has a field, but no handle */
} SteadKnob;

#define STEAD_N_KNOBS (STEAD_KNOB_TARGET + 1)
#define STEAD_N_HANDLES STEAD_KNOB_TARGET

/* The largest value that a knob takes: a million units, ten million in money. */
#define STEAD_KNOB_MAX_UNITS G_GINT64_CONSTANT (1000000)
#define STEAD_KNOB_MAX_CENTS G_GINT64_CONSTANT (1000000000)

/* Signals:
 *  "loaded" ()    another answer was read, or there is none now
 *  "changed" ()   a knob was turned, or the axis moved; also after "loaded" */

SteadPriceModel *stead_price_model_new (void);

/**
 * stead_price_model_load:
 * @store: the farm
 * @product_id: which product
 * @period: over which days the cost is built up
 * @error: %STEAD_ANSWER_ERROR_MISSING says what to enter first
 *
 * Knobs that were turned away from the farm's figures stay where they are as
 * long as the product is the same; the others follow the farm.
 *
 * Returns: %TRUE, or %FALSE with no answer held
 */
gboolean stead_price_model_load (SteadPriceModel  *self,
                                 SteadStore       *store,
                                 gint64            product_id,
                                 SteadPeriod       period,
                                 GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): for tests and for farms made by hand */
void stead_price_model_take_answer (SteadPriceModel  *self,
                                    SteadPriceAnswer *answer);

/* (nullable) (transfer none): as it stands now */
const SteadPriceAnswer *stead_price_model_get_answer (SteadPriceModel *self);

gint64   stead_price_model_get      (SteadPriceModel *self, SteadKnob knob);
/* What the farm says. */
gint64   stead_price_model_get_farm (SteadPriceModel *self, SteadKnob knob);
/* Out of range is brought into it. */
void     stead_price_model_set      (SteadPriceModel *self, SteadKnob knob, gint64 value);
gboolean stead_price_model_is_turned (SteadPriceModel *self, SteadKnob knob);
gboolean stead_price_model_is_any_turned (SteadPriceModel *self);
/* Back to the farm's figures. */
void     stead_price_model_reset    (SteadPriceModel *self);

/* Ends of the chart's axes.  Held still from stead_price_model_hold() until the
 * release, so that the line moves under the pointer and not the axis under the line. */
void     stead_price_model_get_range (SteadPriceModel *self, double *max_units, double *max_cents);
void     stead_price_model_hold      (SteadPriceModel *self);
void     stead_price_model_release   (SteadPriceModel *self);

G_END_DECLS
