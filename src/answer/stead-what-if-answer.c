/* stead-what-if-answer.c - "What if feed gets dearer, or the hens lay less?" */
#include "config.h"

#include "answer/stead-what-if-answer.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "answer/stead-crop-answer.h"
#include "answer/stead-fish-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-fish-growth.h"
#include "core/stead-money.h"

#define FIRST_FRAC 0.1
#define MOST_MULTIPLE 2.0
#define LEAST_MULTIPLE 0.5
#define MOST_DEATHS 0.5
/* No season is so much colder or warmer; nor is the rule good for more. */
#define MOST_AWAY_C 5.0
#define F_PER_C 1.8

/* Words of the file for each assumption, in their order. */
static const char * const knobs[STEAD_N_ASSUMPTIONS] = {
  "price", "planned", "fixed", "input", "yield", "unsold", "packaging", "work", "deaths", "warmth",
};

void
stead_what_if_free (SteadWhatIf *self)
{
  if (self == NULL)
    return;
  stead_price_answer_free (self->price);
  g_clear_pointer (&self->scenarios, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self->matters);
  g_free (self);
}

/* --- reading --------------------------------------------------------------------------- */

static gboolean
is_kitchen (const SteadWhatIf *self)
{
  return self->price->cost->kitchen != NULL;
}

static gboolean
is_crop (const SteadWhatIf *self)
{
  return self->price->cost->batch != NULL && self->price->cost->batch->kind == STEAD_BATCH_CROP;
}

/* Of a flock the pullets go with each egg; of all else the start is spread over what comes. */
static void
split_parts (SteadWhatIf *self)
{
  const SteadCostSheet *sheet = &self->price->cost->sheet;
  SteadUnitParts *parts = &self->parts;
  double start = sheet->parts[STEAD_COST_START].unit_cents;
  double supplies = sheet->parts[STEAD_COST_BEDDING].unit_cents + sheet->parts[STEAD_COST_SUPPLIES].unit_cents;

  parts->shared_cents = sheet->parts[STEAD_COST_ASSETS].unit_cents + sheet->parts[STEAD_COST_OVERHEAD].unit_cents;
  parts->input_cents = sheet->parts[STEAD_COST_FEED].unit_cents;
  if (self->price->cost->flock != NULL)
    parts->good_cents = start;
  else if (is_kitchen (self) || is_crop (self))
    parts->input_cents += start;
  else
    parts->shared_cents += start;
  if (is_crop (self))
    parts->input_cents += supplies;
  else
    parts->shared_cents += supplies;
  parts->pack_cents = sheet->parts[STEAD_COST_PACKAGING].unit_cents;
  parts->work_cents = sheet->parts[STEAD_COST_LABOR].unit_cents;
  parts->unsold_frac = self->price->cost->product->unsold_frac;
  parts->rounding_cents = (double) sheet->unit_cents - (parts->input_cents + parts->shared_cents + parts->good_cents
                                                        + parts->pack_cents);
}

/* The warmth of a day by which fish or a crop grow; NAN where that is not known. */
static gboolean
read_warmth (SteadWhatIf  *self,
             SteadStore   *store,
             GError      **error)
{
  const SteadBatch *batch = self->price->cost->batch;

  self->warm_c = NAN;
  self->warm_most = INFINITY;
  if (batch != NULL && batch->kind == STEAD_BATCH_FISH)
    {
      g_autoptr(SteadFishAnswer) fish = stead_fish_answer_new_now (store, batch->id, error);

      if (fish == NULL)
        return FALSE;
      if (fish->is_known && isfinite (fish->water_c))
        self->warm_c = stead_fish_degree_day (stead_fish_kind (fish->species), fish->water_c);
      if (self->warm_c > 0)
        self->warm_most = stead_fish_kind (fish->species)->optimum_c / self->warm_c;
    }
  if (is_crop (self))
    {
      g_autoptr(SteadCropAnswer) crop = stead_crop_answer_new (store, batch->id, error);

      if (crop == NULL)
        return FALSE;
      if (crop->n_read > 0)
        self->warm_c = crop->sum_c / (double) crop->n_read;
    }
  return TRUE;
}

int
stead_what_if_n (const SteadWhatIf *self)
{
  g_return_val_if_fail (self != NULL, 0);

  if (self->price->cost->batch == NULL)
    return STEAD_ASSUME_DEATHS;
  return self->warm_c > MOST_AWAY_C / 10 ? STEAD_N_ASSUMPTIONS : STEAD_ASSUME_WARMTH;
}

SteadWhatIf *
stead_what_if_new (SteadStore   *store,
                   gint64        product_id,
                   SteadPeriod   period,
                   GError      **error)
{
  g_autoptr(SteadWhatIf) self = g_new0 (SteadWhatIf, 1);

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->price = stead_price_answer_new (store, product_id, period, error);
  self->scenarios = self->price != NULL ? stead_scenario_repo_list (store, product_id, error) : NULL;
  if (self->scenarios == NULL || !read_warmth (self, store, error))
    return NULL;
  split_parts (self);
  self->frac = FIRST_FRAC;
  self->farm[STEAD_ASSUME_PRICE] = self->price->plan.price_cents;
  self->farm[STEAD_ASSUME_PLANNED] = self->price->plan.planned_units;
  self->farm[STEAD_ASSUME_FIXED] = self->price->plan.fixed_cents;
  self->farm[STEAD_ASSUME_INPUT] = self->farm[STEAD_ASSUME_YIELD] = self->farm[STEAD_ASSUME_PACKAGING] = 1;
  self->farm[STEAD_ASSUME_WARMTH] = 1;
  self->farm[STEAD_ASSUME_UNSOLD] = self->parts.unsold_frac;
  stead_what_if_reset (self);
  return g_steal_pointer (&self);
}

/* --- scenarios ------------------------------------------------------------------------------ */

gboolean
stead_what_if_is_turned (const SteadWhatIf *self)
{
  for (int i = 0; i < STEAD_N_ASSUMPTIONS; i++)
    if (fabs (self->values[i] - self->farm[i]) > 1e-9)
      return TRUE;
  return FALSE;
}

void
stead_what_if_reset (SteadWhatIf *self)
{
  g_return_if_fail (self != NULL);

  memcpy (self->values, self->farm, sizeof self->values);
  stead_what_if_settle (self);
}

static void
values_of (const SteadWhatIf   *self,
           const SteadScenario *scenario,
           double              *values)
{
  for (int i = 0; i < STEAD_N_ASSUMPTIONS; i++)
    values[i] = scenario != NULL ? stead_scenario_get (scenario, knobs[i], self->farm[i]) : self->farm[i];
}

void
stead_what_if_apply (SteadWhatIf         *self,
                     const SteadScenario *scenario)
{
  g_return_if_fail (self != NULL);

  values_of (self, scenario, self->values);
  stead_what_if_settle (self);
}

SteadScenario *
stead_what_if_scenario (const SteadWhatIf *self,
                        const char        *name)
{
  SteadScenario *scenario = stead_scenario_new (name);

  for (int i = 0; i < STEAD_N_ASSUMPTIONS; i++)
    if (fabs (self->values[i] - self->farm[i]) > 1e-9)
      stead_scenario_set (scenario, knobs[i], self->values[i]);
  return scenario;
}

void
stead_what_if_figures (const SteadWhatIf   *self,
                       const SteadScenario *scenario,
                       SteadCvp            *out_cvp,
                       SteadCvpFigures     *out)
{
  double values[STEAD_N_ASSUMPTIONS];

  values_of (self, scenario, values);
  stead_assume_cvp (&self->parts, &self->price->plan, values, out_cvp);
  stead_cvp_figures (out_cvp, out);
}

double
stead_what_if_profit (const SteadWhatIf *self,
                      SteadAssumption    a,
                      double             value_a,
                      SteadAssumption    b,
                      double             value_b)
{
  double values[STEAD_N_ASSUMPTIONS];
  SteadCvp cvp;

  memcpy (values, self->values, sizeof values);
  values[a] = value_a;
  values[b] = value_b;
  stead_assume_cvp (&self->parts, &self->price->plan, values, &cvp);
  return stead_cvp_profit_cents (&cvp, cvp.planned_units);
}

/* --- words ------------------------------------------------------------------------------------ */

const char *
stead_what_if_name (const SteadWhatIf *self,
                    SteadAssumption    which)
{
  switch (which)
    {
    case STEAD_ASSUME_PRICE: return _("Price");
    case STEAD_ASSUME_PLANNED: return _("Number sold");
    case STEAD_ASSUME_FIXED: return _("Costs of the sale day");
    case STEAD_ASSUME_INPUT:
      return is_kitchen (self) ? _("Price of the ingredients")
             : is_crop (self) ? _("Price of seed and supplies") : _("Price of feed");
    case STEAD_ASSUME_YIELD:
      return is_kitchen (self) ? _("What comes out of the kitchen")
             : self->price->cost->flock != NULL ? _("Eggs laid") : _("Harvest");
    case STEAD_ASSUME_UNSOLD: return _("Share given up unsold");
    case STEAD_ASSUME_PACKAGING: return _("Price of packaging");
    case STEAD_ASSUME_WORK: return _("Helper hours that are paid");
    case STEAD_ASSUME_DEATHS: return is_crop (self) ? _("Plants lost beyond the log") : _("Deaths beyond the log");
    case STEAD_ASSUME_WARMTH: return _("Temperature");
    default: g_return_val_if_reached ("");
    }
}

static char *
money (const SteadWhatIf *self,
       double             cents)
{
  return stead_money_format (isfinite (cents) ? stead_money_round (cents) : 0, self->price->cost->farm->currency);
}

/* "+10%", "−5%", "as it is". */
static char *
change_text (double multiple)
{
  g_autofree char *share = stead_words_percent (fabs (multiple - 1), 0);

  if (fabs (multiple - 1) < 0.0005)
    return g_strdup (C_("an assumption", "as it is"));
  return g_strconcat (multiple > 1 ? "+" : "−", share, NULL);
}

/* "+2 °C", "−4 °F", "as it is". */
static char *
warmth_text (const SteadWhatIf *self,
             double             multiple)
{
  gboolean metric = self->price->cost->farm->units == STEAD_UNITS_METRIC;
  double away = (multiple - 1) * self->warm_c * (metric ? 1 : F_PER_C);
  g_autofree char *number = stead_number_format (fabs (away), 1);

  if (fabs (away) < 0.05)
    return g_strdup (C_("an assumption", "as it is"));
  return g_strdup_printf ("%s%s %s", away > 0 ? "+" : "−", number, metric ? "°C" : "°F");
}

char *
stead_what_if_text (const SteadWhatIf *self,
                    SteadAssumption    which,
                    double             value)
{
  switch (which)
    {
    case STEAD_ASSUME_PRICE:
    case STEAD_ASSUME_FIXED:
      return money (self, value);
    case STEAD_ASSUME_PLANNED:
      return stead_words_units (self->price->cost->product->pack, round (value));
    case STEAD_ASSUME_UNSOLD:
    case STEAD_ASSUME_DEATHS:
      return stead_words_percent (value, 1);
    case STEAD_ASSUME_WORK:
      return stead_words_percent (value, 0);
    case STEAD_ASSUME_WARMTH:
      return warmth_text (self, value);
    case STEAD_ASSUME_INPUT:
    case STEAD_ASSUME_YIELD:
    case STEAD_ASSUME_PACKAGING:
    default:
      return change_text (value);
    }
}

void
stead_what_if_range (const SteadWhatIf *self,
                     SteadAssumption    which,
                     double            *low,
                     double            *high,
                     double            *step)
{
  double coin = pow (10, stead_currency_digits (self->price->cost->farm->currency));

  *low = 0;
  switch (which)
    {
    case STEAD_ASSUME_PRICE:
      *step = coin > 1 ? 5 : 1;
      *high = MAX (self->farm[which] * 3, 2 * (double) self->price->cost->sheet.unit_cents);
      break;
    case STEAD_ASSUME_PLANNED:
      *step = 1;
      *high = MAX (10, self->farm[which] * 3);
      break;
    case STEAD_ASSUME_FIXED:
      *step = coin;
      *high = MAX (100 * coin, self->farm[which] * 3);
      break;
    case STEAD_ASSUME_UNSOLD:
      *step = 0.01;
      *high = 0.9;
      break;
    case STEAD_ASSUME_WORK:
      *step = 0.05;
      *high = 1;
      break;
    case STEAD_ASSUME_DEATHS:
      *step = 0.01;
      *high = MOST_DEATHS;
      break;
    case STEAD_ASSUME_WARMTH:
      *low = MAX (0.1, 1 - MOST_AWAY_C / self->warm_c);
      *high = MIN (self->warm_most, 1 + MOST_AWAY_C / self->warm_c);
      *step = (self->price->cost->farm->units == STEAD_UNITS_METRIC ? 0.5 : 1 / F_PER_C) / self->warm_c;
      break;
    case STEAD_ASSUME_INPUT:
    case STEAD_ASSUME_YIELD:
    case STEAD_ASSUME_PACKAGING:
    default:
      *low = LEAST_MULTIPLE;
      *high = MOST_MULTIPLE;
      *step = 0.01;
    }
}

static char *
sentence_of (const SteadWhatIf *self)
{
  GString *text = g_string_new (NULL);
  SteadPack pack = self->price->cost->product->pack;
  g_autofree char *unit = money (self, self->cvp.variable_cents);
  g_autofree char *profit = money (self, fabs (self->figures.profit_cents));
  g_autofree char *gap = money (self, fabs (self->figures.profit_cents - self->plan_cents));
  g_autofree char *even = stead_words_units (pack, (double) self->figures.even_whole_units);
  g_autofree char *cost = NULL, *left = NULL, *beside = NULL;
  double more = self->figures.profit_cents - self->plan_cents;

  /* Translators: "One dozen", and what it then costs. */
  cost = g_strdup_printf (_("%s then costs <b>%s</b>."), stead_words_one_unit (pack), unit);
  if (self->figures.even_whole_units < 0)
    left = g_strdup_printf (self->figures.profit_cents < 0 ? _("The day loses <b>%s</b>, and no number of sales covers it.")
                                                           : _("The day clears <b>%s</b>."), profit);
  else
    left = g_strdup_printf (self->figures.profit_cents < 0 ? _("The day loses <b>%s</b>; %s would cover its costs.")
                                                           : _("The day clears <b>%s</b>; %s cover its costs."), profit, even);
  if (!stead_what_if_is_turned (self))
    beside = g_strdup (_("This is the day as the farm has it: turn a handle."));
  else if (fabs (more) < 0.5)
    beside = g_strdup (_("That is as much as the farm's own figures give."));
  else
    beside = g_strdup_printf (more > 0 ? _("That is %s more than the farm's own figures give.")
                                       : _("That is %s less than the farm's own figures give."), gap);
  stead_words_add (text, cost);
  stead_words_add (text, left);
  stead_words_add (text, beside);
  return stead_words_end (text);
}

static char *
matters_of (const SteadWhatIf *self)
{
  const SteadSwing *most = &self->swings[0];
  g_autofree char *share = stead_words_percent (self->frac, 0);
  g_autofree char *low = NULL, *high = NULL;

  if (self->n_swings == 0)
    return g_strdup (_("Nothing here moves the profit: plan something to sell first."));
  low = money (self, MIN (most->low_cents, most->high_cents));
  high = money (self, MAX (most->low_cents, most->high_cents));
  /* Translators: a share ("10%"), an assumption ("Price of feed"), two amounts of money. */
  return g_strdup_printf (_("If each moves by %s alone, what matters most is “%s”: the profit then lies between %s and %s."),
                          share, stead_what_if_name (self, most->assumption), low, high);
}

/* Warmth moves no egg, and nothing dies in the kitchen. */
static void
drop_senseless_swings (SteadWhatIf *self)
{
  int kept = 0;

  for (int i = 0; i < self->n_swings; i++)
    if ((int) self->swings[i].assumption < stead_what_if_n (self))
      self->swings[kept++] = self->swings[i];
  self->n_swings = kept;
}

void
stead_what_if_settle (SteadWhatIf *self)
{
  g_return_if_fail (self != NULL);

  stead_assume_cvp (&self->parts, &self->price->plan, self->values, &self->cvp);
  stead_cvp_figures (&self->cvp, &self->figures);
  self->plan_cents = stead_cvp_profit_cents (&self->price->plan, self->price->plan.planned_units);
  self->n_swings = stead_assume_tornado (&self->parts, &self->price->plan, self->values, self->frac, self->swings);
  drop_senseless_swings (self);
  g_free (self->sentence);
  g_free (self->matters);
  self->sentence = sentence_of (self);
  self->matters = matters_of (self);
}

/* --- worked out -------------------------------------------------------------------------------- */

static SteadWhy *
unit_why (const SteadWhatIf *self)
{
  const SteadUnitParts *parts = &self->parts;
  g_autofree char *input = stead_number_format (parts->input_cents, 2);
  g_autofree char *price = stead_number_format (self->values[STEAD_ASSUME_INPUT], 2);
  g_autofree char *shared = stead_number_format (parts->shared_cents, 2);
  g_autofree char *yield = stead_number_format (self->values[STEAD_ASSUME_YIELD], 2);
  g_autofree char *good = stead_number_format (parts->good_cents, 2);
  g_autofree char *before = stead_number_format (1 - parts->unsold_frac, 3);
  g_autofree char *after = stead_number_format (1 - self->values[STEAD_ASSUME_UNSOLD], 3);
  g_autofree char *pack = stead_number_format (parts->pack_cents, 2);
  g_autofree char *dear = stead_number_format (self->values[STEAD_ASSUME_PACKAGING], 2);
  g_autofree char *warmth = stead_number_format (self->values[STEAD_ASSUME_WARMTH], 2);
  g_autofree char *alive = stead_number_format (1 - self->values[STEAD_ASSUME_DEATHS], 2);
  g_autofree char *work = stead_number_format (parts->work_cents, 2);
  g_autofree char *paid = stead_number_format (self->values[STEAD_ASSUME_WORK], 2);
  g_autofree char *unit = money (self, self->cvp.variable_cents);

  return stead_why_new (g_strdup (_("What one then costs")),
                        _("((What goes in × its price + the rest of the keep ÷ warmth ÷ share alive) ÷ what comes out + what "
                          "goes with each one ÷ share alive) × share sold before ÷ share sold now + packaging × its price "
                          "+ unpaid work × share paid. In cents; prices, output and warmth as multiples of the farm's own. "
                          "Half the warmth takes twice the days of keep, and as much feed."),
                        g_strdup_printf ("((%s × %s + %s ÷ %s ÷ %s) ÷ %s + %s ÷ %s) × %s ÷ %s + %s × %s + %s × %s = %s",
                                         input, price, shared, warmth, alive, yield, good, alive, before, after, pack, dear,
                                         work, paid, unit),
                        _("Normal loss carried by the good units: common practice, no source. Growth by degree days: as in "
                          "the forecast in Raise."));
}

static SteadWhy *
swing_why (const SteadWhatIf *self)
{
  const SteadSwing *most = &self->swings[0];
  g_autofree char *low_at = stead_what_if_text (self, most->assumption, most->low);
  g_autofree char *high_at = stead_what_if_text (self, most->assumption, most->high);
  g_autofree char *low = money (self, most->low_cents);
  g_autofree char *high = money (self, most->high_cents);
  g_autofree char *swing = money (self, fabs (most->high_cents - most->low_cents));

  return stead_why_new (g_strdup (_("How long a bar is")),
                        _("Profit of the day with one assumption moved up − profit with it moved down by the same share; all "
                          "else stays."),
                        /* Translators: an assumption, its two values with the profit at each, and the difference. */
                        g_strdup_printf (_("%s: %s gives %s, %s gives %s: %s apart"),
                                         stead_what_if_name (self, most->assumption), low_at, low, high_at, high, swing),
                        _("Saylor, Managerial Accounting, section 6.3."));
}

GPtrArray *
stead_what_if_whys (const SteadWhatIf *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_ptr_array_add (whys, unit_why (self));
  if (self->n_swings > 0)
    g_ptr_array_add (whys, swing_why (self));
  return whys;
}
