/* stead-batch-rows.c - the table of a batch: plan beside actual, and what to expect at the end. */
#include "config.h"

#include "answer/stead-batch-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-money.h"

/* Nearer to the plan than this share of it is as planned. */
#define AS_PLANNED 0.005

/* --- texts ---------------------------------------------------------------------- */

char *
stead_batch_money_text (const SteadBatchAnswer *self,
                        double                  cents)
{
  return stead_money_format (stead_money_round (cents), self->farm->currency);
}

char *
stead_batch_unit_text (const SteadBatchAnswer *self,
                       double                  base_cents)
{
  g_autofree char *money = stead_batch_money_text (self, base_cents * self->pack_base);

  /* Translators: money and "a pound": "$4.18 a pound". */
  return g_strdup_printf (C_("price of a unit", "%s %s"), money, stead_words_per_unit (self->pack));
}

char *
stead_batch_feed_text (const SteadBatchAnswer *self,
                       double                  kg)
{
  return stead_quantity_format (kg, stead_unit_default (STEAD_DIMENSION_MASS, self->farm->units));
}

static char *
feed_price_text (const SteadBatchAnswer *self,
                 double                  cents_kg)
{
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, self->farm->units);
  g_autofree char *money = stead_batch_money_text (self, cents_kg * stead_quantity_to_base (1, unit));

  /* Translators: money for one unit of weight: "$0.82/lb". */
  return g_strdup_printf (C_("price of a unit", "%s/%s"), money, stead_unit_symbol (unit));
}

static char *
hours_text (const SteadBatchAnswer *self,
            double                  minutes)
{
  g_autofree char *hours = stead_number_format (minutes / 60, 1);

  return g_strdup_printf (_("%s hours"), hours);
}

static char *
percent_text (const SteadBatchAnswer *self,
              double                  frac)
{
  return stead_words_percent (frac, 1);
}

char *
stead_batch_answer_output (const SteadBatchAnswer *self,
                           double                  base)
{
  double count;

  g_return_val_if_fail (self != NULL, NULL);
  count = base / self->pack_base;
  return stead_words_units_exact (self->pack, count, fabs (count) >= 100 ? 0 : 1);
}

const char *
stead_batch_started_name (SteadBatchKind kind)
{
  switch (kind)
    {
    case STEAD_BATCH_FLOCK: return C_("what is lost", "Hens");
    case STEAD_BATCH_FISH: return C_("what is lost", "Fish");
    case STEAD_BATCH_CROP: return C_("what is lost", "Plants");
    case STEAD_BATCH_KITCHEN:
    default: return C_("what is lost", "Pieces");
    }
}

char *
stead_batch_loss_text (const SteadLoss *loss)
{
  g_autofree char *n = stead_number_format ((double) loss->n, 0);

  /* Translators: why some were lost, and how many: "Fox: 3". */
  return g_strdup_printf (C_("reason and count", "%s: %s"),
                          loss->reason != NULL ? loss->reason : _("no reason given"), n);
}

char *
stead_batch_treatment_text (const SteadTreatment *treatment)
{
  g_autofree char *from = stead_day_format (treatment->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *to = stead_day_format (treatment->last_day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *until = stead_day_format (treatment->wait_until, STEAD_DAY_STYLE_MEDIUM);

  if (treatment->dose == NULL)
    /* Translators: a medicine, first and last day, a veterinarian, a day. */
    return g_strdup_printf (_("%s, %s to %s, ordered by %s; waits up to and including %s"),
                            treatment->what, from, to, treatment->ordered_by, until);
  /* Translators: a medicine, its dose, first and last day, a veterinarian, a day. */
  return g_strdup_printf (_("%s (%s), %s to %s, ordered by %s; waits up to and including %s"),
                          treatment->what, treatment->dose, from, to, treatment->ordered_by, until);
}

char *
stead_batch_harvest_text (const SteadBatchAnswer *self,
                          const SteadHarvest     *harvest,
                          const SteadItem        *item)
{
  gboolean counted = self->pack == STEAD_PACK_DOZEN || self->pack == STEAD_PACK_PIECE;
  const SteadUnit *unit = item != NULL ? item->unit
                          : stead_unit_default (counted ? STEAD_DIMENSION_COUNT : STEAD_DIMENSION_MASS,
                                                self->farm->units);
  const char *reason = harvest->reason != NULL ? harvest->reason : _("no reason given");
  g_autofree char *good = stead_quantity_format (harvest->quantity_base, unit);
  g_autofree char *lost = stead_quantity_format (harvest->lost_base, unit);
  g_autofree char *named = item == NULL ? NULL
                           : harvest->grade != NULL ? g_strdup_printf ("%s, %s", item->name, harvest->grade)
                           : g_strdup (item->name);

  if (named == NULL)
    /* Translators: an amount and why it was lost. */
    return g_strdup_printf (_("%s lost: %s"), lost, reason);
  if (harvest->lost_base > 0)
    /* Translators: what it is, an amount, an amount lost and why: "Eggs: 168; 5 lost: cracked". */
    return g_strdup_printf (_("%s: %s; %s lost: %s"), named, good, lost, reason);
  /* Translators: what it is and an amount: "Catfish, dressed: 20 kg". */
  return g_strdup_printf (C_("harvest", "%s: %s"), named, good);
}

const char *
stead_batch_answer_end_title (const SteadBatchAnswer *self)
{
  g_return_val_if_fail (self != NULL, "");
  return self->is_over ? C_("column of a plan", "Difference") : C_("column of a plan", "Expected at the end");
}

/* --- rows ------------------------------------------------------------------------- */

typedef char *(*TextFunc) (const SteadBatchAnswer *self, double value);

static SteadBatchRow *
add_row (SteadBatchAnswer *self,
         SteadBatchLine    line,
         const char       *what)
{
  SteadBatchRow *row = g_new0 (SteadBatchRow, 1);

  row->line = line;
  row->what = g_strdup (what);
  g_ptr_array_add (self->rows, row);
  return row;
}

static char *
text_or_none (const SteadBatchAnswer *self,
              double                  value,
              TextFunc                text)
{
  return isfinite (value) ? text (self, value) : NULL;
}

/* "+$12.00", "−8.5 lb", "as planned". */
static char *
difference_text (const SteadBatchAnswer *self,
                 double                  difference,
                 double                  planned,
                 TextFunc                text)
{
  g_autofree char *size = NULL;

  if (!isfinite (difference))
    return NULL;
  if (fabs (difference) <= AS_PLANNED * fabs (planned) || !(fabs (difference) > 0))
    return g_strdup (_("as planned"));
  size = text (self, fabs (difference));
  return g_strconcat (difference < 0 ? "−" : "+", size, NULL);
}

static SteadTone
tone_of (double planned,
         double came,
         int    more_is)
{
  double difference = (came - planned) * more_is;

  if (!isfinite (difference) || fabs (difference) <= AS_PLANNED * fabs (planned))
    return STEAD_TONE_PLAIN;
  return difference > 0 ? STEAD_TONE_GOOD : difference < 0 ? STEAD_TONE_POOR : STEAD_TONE_PLAIN;
}

/* @more_is: 1 if more is better, -1 if less is, 0 if it says nothing.  What nothing is
 * known of has no line. */
static void
add_figure (SteadBatchAnswer *self,
            SteadBatchLine    line,
            const char       *what,
            double            planned,
            double            so_far,
            double            end,
            TextFunc          text,
            int               more_is)
{
  SteadBatchRow *row;

  if (!isfinite (planned) && !isfinite (so_far) && !isfinite (end))
    return;
  row = add_row (self, line, what);
  row->planned = text_or_none (self, planned, text);
  row->actual = text_or_none (self, so_far, text);
  row->end = self->is_over ? difference_text (self, so_far - planned, planned, text) : text_or_none (self, end, text);
  row->tone = tone_of (planned, self->is_over ? so_far : end, more_is);
}

static double
over_or_none (double value,
              double by)
{
  return by > 0 ? value / by : NAN;
}

static const char *
output_name (SteadBatchKind kind)
{
  switch (kind)
    {
    case STEAD_BATCH_FLOCK: return C_("line of a plan", "Good eggs");
    case STEAD_BATCH_FISH: return C_("line of a plan", "Fish harvested");
    case STEAD_BATCH_CROP:
    case STEAD_BATCH_KITCHEN:
    default: return C_("line of a plan", "Harvest");
    }
}

const char *
stead_batch_start_name (SteadBatchKind kind)
{
  switch (kind)
    {
    case STEAD_BATCH_FLOCK: return C_("line of a plan", "Birds");
    case STEAD_BATCH_FISH: return C_("line of a plan", "Fingerlings");
    case STEAD_BATCH_CROP:
    case STEAD_BATCH_KITCHEN:
    default: return C_("line of a plan", "Seed and plants");
    }
}

static void
add_output (SteadBatchAnswer        *self,
            const SteadBatchFigures *planned,
            const SteadBatchFigures *so_far,
            const SteadBatchFigures *end)
{
  add_figure (self, STEAD_BATCH_LINE_OUTPUT,
              output_name (self->money.batch->kind), planned->output, so_far->output, end->output,
              stead_batch_answer_output, 1);
  add_figure (self, STEAD_BATCH_LINE_PRICE, C_("line of a plan", "Price"), self->money.plan.price_cents,
              self->price_cents, over_or_none (end->value_cents, end->output), stead_batch_unit_text, 1);
  add_figure (self, STEAD_BATCH_LINE_WORTH,
              C_("line of a plan", "Worth at that price"), planned->value_cents, so_far->value_cents,
              end->value_cents, stead_batch_money_text, 1);
}

static void
add_feed (SteadBatchAnswer        *self,
          const SteadBatchFigures *planned,
          const SteadBatchFigures *so_far,
          const SteadBatchFigures *end)
{
  if (!(end->feed_kg > 0) && !(end->feed_cents > 0) && isnan (planned->feed_kg))
    return;
  add_figure (self, STEAD_BATCH_LINE_FEED,
              C_("line of a plan", "Feed"), planned->feed_kg, so_far->feed_kg, end->feed_kg,
              stead_batch_feed_text, -1);
  add_figure (self, STEAD_BATCH_LINE_FEED_PRICE,
              C_("line of a plan", "Price of feed"), self->money.plan.feed_cents_kg,
              over_or_none (so_far->feed_cents, so_far->feed_kg), over_or_none (end->feed_cents, end->feed_kg),
              feed_price_text, -1);
  add_figure (self, STEAD_BATCH_LINE_FEED_COST,
              C_("line of a plan", "Cost of feed"), planned->feed_cents, so_far->feed_cents, end->feed_cents,
              stead_batch_money_text, -1);
}

static void
add_costs (SteadBatchAnswer        *self,
           const SteadBatchFigures *planned,
           const SteadBatchFigures *so_far,
           const SteadBatchFigures *end)
{
  double start = self->money.so_far[STEAD_COST_START];
  double salvage = self->money.salvage_cents;

  if (start > 0)
    add_figure (self, STEAD_BATCH_LINE_START,
                stead_batch_start_name (self->money.batch->kind), start, start, isfinite (end->cost_cents) ? start : NAN,
                stead_batch_money_text, 0);
  if (salvage > 0)
    add_figure (self, STEAD_BATCH_LINE_SALVAGE,
                C_("line of a plan", "Worth of the birds at the end"), -salvage, self->is_over ? -salvage : 0,
                isfinite (end->cost_cents) ? -salvage : NAN, stead_batch_money_text, 0);
  add_figure (self, STEAD_BATCH_LINE_OTHER, C_("line of a plan", "Other costs"), self->money.plan.other_cents,
              so_far->other_cents - start + (self->is_over ? salvage : 0), end->other_cents - start + salvage,
              stead_batch_money_text, -1);
  add_figure (self, STEAD_BATCH_LINE_ALL,
              C_("line of a plan", "All costs"), planned->cost_cents, so_far->cost_cents, end->cost_cents,
              stead_batch_money_text, -1);
  add_figure (self, STEAD_BATCH_LINE_LEFT,
              C_("line of a plan", "Left over"), planned->value_cents - planned->cost_cents,
              so_far->value_cents - so_far->cost_cents, end->value_cents - end->cost_cents, stead_batch_money_text, 1);
  add_figure (self, STEAD_BATCH_LINE_UNIT,
              C_("line of a plan", "Cost of one"), over_or_none (planned->cost_cents, planned->output),
              self->is_over ? self->unit_cents : NAN, isfinite (end->cost_cents) ? self->unit_cents : NAN,
              stead_batch_unit_text, -1);
}

static void
add_care (SteadBatchAnswer        *self,
          const SteadBatchFigures *planned,
          const SteadBatchFigures *so_far,
          const SteadBatchFigures *end)
{
  double lost = self->started > 0 ? (double) self->lost / (double) self->started : NAN;

  if (end->care_minutes > 0 || planned->care_minutes > 0)
    add_figure (self, STEAD_BATCH_LINE_CARE,
                C_("line of a plan", "Work, unpaid"), planned->care_minutes, so_far->care_minutes,
                end->care_minutes, hours_text, -1);
  add_figure (self, STEAD_BATCH_LINE_LOST,
              C_("line of a plan", "Lost of all"), self->money.plan.lost_frac, lost, NAN, percent_text, -1);
}

/* The last day of what came, or of what is expected. */
static SteadDay
last_day (const SteadBatchAnswer *self)
{
  if (!self->is_over)
    return self->money.outlook.ends_on;
  if (self->money.batch->ended_on != STEAD_DAY_NONE)
    return self->money.batch->ended_on;
  return self->harvests->len > 0 ? ((SteadHarvest *) self->harvests->pdata[self->harvests->len - 1])->day
                                 : STEAD_DAY_NONE;
}

static void
add_end (SteadBatchAnswer *self)
{
  SteadDay planned = self->money.plan.ends_on;
  SteadDay last = last_day (self);
  SteadBatchRow *row;

  if (planned == STEAD_DAY_NONE && last == STEAD_DAY_NONE)
    return;
  row = add_row (self, STEAD_BATCH_LINE_END, C_("line of a plan", "End"));
  row->planned = planned != STEAD_DAY_NONE ? stead_day_format (planned, STEAD_DAY_STYLE_MEDIUM) : NULL;
  if (self->is_over)
    {
      row->actual = last != STEAD_DAY_NONE ? stead_day_format (last, STEAD_DAY_STYLE_MEDIUM) : NULL;
      if (planned != STEAD_DAY_NONE && last != STEAD_DAY_NONE && last != planned)
        {
          g_autofree char *days = stead_words_days (ABS (last - planned));

          /* Translators: "9 days" after (before) the planned day. */
          row->end = g_strdup_printf (last > planned ? _("%s later") : _("%s earlier"), days);
        }
    }
  else if (last != STEAD_DAY_NONE)
    row->end = stead_day_format (last, STEAD_DAY_STYLE_MEDIUM);
}

void
stead_batch_answer_put_in_rows (SteadBatchAnswer *self)
{
  SteadBatchFigures planned, so_far, end;

  self->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_batch_row_free);
  stead_batch_figures_planned (self, &planned);
  stead_batch_figures_so_far (self, &so_far);
  stead_batch_figures_at_end (self, &end);
  /* Without any idea of what is to come, an expected end would only repeat the present. */
  if (self->money.outlook.basis == STEAD_OUTLOOK_NONE)
    end = (SteadBatchFigures) { NAN, NAN, NAN, NAN, NAN, NAN, NAN };
  add_output (self, &planned, &so_far, &end);
  add_feed (self, &planned, &so_far, &end);
  add_costs (self, &planned, &so_far, &end);
  add_care (self, &planned, &so_far, &end);
  add_end (self);
}
