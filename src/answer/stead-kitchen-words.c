/* stead-kitchen-words.c - how a kitchen batch stands, and what came of it, in words. */
#include "config.h"

#include "answer/stead-kitchen-private.h"
#include "answer/stead-recipe-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
amount_of (const SteadKitchenAnswer *self,
           double                    base)
{
  return stead_recipe_amount (base, self->kitchen->item_unit, self->kitchen->item_name);
}

/* --- the sentence ----------------------------------------------------------------------- */

static char *
finished_sentence (const SteadKitchenAnswer *self)
{
  g_autofree char *day = stead_day_format (self->harvest->day, STEAD_DAY_STYLE_SHORT);
  g_autofree char *good = amount_of (self, self->harvest->quantity_base);
  g_autofree char *planned = stead_quantity_format (self->kitchen->wanted_base, self->kitchen->item_unit);
  g_autofree char *share = stead_words_percent (self->yield_frac, 0);

  if (!(self->harvest->quantity_base > 0))
    /* Translators: name of a kitchen batch, a day. */
    return g_markup_printf_escaped (_("Nothing good came of “%s” on %s: no lot was made."), self->kitchen->batch.name,
                                    day);
  /* Translators: amount, amount planned, name of a kitchen batch, a day, "90 %". */
  return g_markup_printf_escaped (_("<b>%s</b> of %s planned came out of “%s” on %s: %s."), good, planned,
                                  self->kitchen->batch.name, day, share);
}

static char *
lost_sentence (const SteadKitchenAnswer *self)
{
  const SteadHarvest *harvest = self->harvest;
  g_autofree char *lost = NULL;
  g_autofree char *tasted = NULL;

  if (harvest->lost_base > 0)
    lost = stead_quantity_format (harvest->lost_base, self->kitchen->item_unit);
  if (harvest->tasted_base > 0)
    tasted = stead_quantity_format (harvest->tasted_base, self->kitchen->item_unit);
  if (lost != NULL && tasted != NULL)
    /* Translators: amount, why, amount. */
    return g_markup_printf_escaped (_("%s spoiled (%s), and %s was tasted or kept."), lost, harvest->reason, tasted);
  if (lost != NULL)
    /* Translators: amount, why. */
    return g_markup_printf_escaped (_("%s spoiled (%s)."), lost, harvest->reason);
  return tasted != NULL ? g_markup_printf_escaped (_("%s was tasted or kept."), tasted) : NULL;
}

static char *
planned_sentence (const SteadKitchenAnswer *self,
                  SteadDay                  today)
{
  g_autofree char *day = stead_day_format (self->kitchen->batch.started_on, STEAD_DAY_STYLE_LONG);
  g_autofree char *amount = amount_of (self, self->kitchen->wanted_base);

  if (self->kitchen->batch.started_on > today)
    /* Translators: name of a kitchen batch, a day, an amount. */
    return g_markup_printf_escaped (_("“%s” is planned for %s: <b>%s</b>."), self->kitchen->batch.name, day, amount);
  return g_markup_printf_escaped (_("“%s” is to give <b>%s</b>."), self->kitchen->batch.name, amount);
}

static char *
steps_sentence (const SteadKitchenAnswer *self)
{
  gulong n = self->kitchen->steps->len;

  if (n == 0)
    return NULL;
  return g_strdup_printf (ngettext ("%d of %d step is done.", "%d of %d steps are done.", n), self->n_done, (int) n);
}

static char *
taken_sentence (const SteadKitchenAnswer *self)
{
  g_autofree char *cents = stead_money_format (self->used_cents, self->farm->currency);

  if (self->used_cents == 0 && !self->all_taken)
    return g_strdup (_("Nothing was taken out of the store room yet."));
  if (self->all_taken)
    return g_strdup_printf (_("All ingredients are taken, for %s."), cents);
  return g_strdup_printf (_("Ingredients for %s are taken; some are still to be."), cents);
}

static char *
sentence_of (const SteadKitchenAnswer *self,
             SteadDay                  today)
{
  GString *text = g_string_new (NULL);
  g_autofree char *first = self->harvest != NULL ? finished_sentence (self) : planned_sentence (self, today);
  g_autofree char *second = self->harvest != NULL ? lost_sentence (self) : steps_sentence (self);
  g_autofree char *third = self->harvest != NULL ? NULL : taken_sentence (self);

  stead_words_add (text, first);
  stead_words_add (text, second);
  stead_words_add (text, third);
  return stead_words_end (text);
}

/* --- the cost ------------------------------------------------------------------------------ */

char *
stead_kitchen_unit_money (const SteadKitchenAnswer *self,
                          double                    unit_cents)
{
  double one = stead_quantity_to_base (1, self->kitchen->item_unit);

  return stead_money_format (stead_money_round (unit_cents * one), self->farm->currency);
}

/* "one “Bowl”", "1 qt" */
static char *
one_of (const SteadKitchenAnswer *self)
{
  const SteadUnit *unit = self->kitchen->item_unit;

  if (g_str_equal (unit->id, "ea"))
    return g_strdup_printf (_("one “%s”"), self->kitchen->item_name);
  return stead_quantity_format (stead_quantity_to_base (1, unit), unit);
}

static char *
cost_of (const SteadKitchenAnswer *self)
{
  g_autofree char *one = one_of (self);
  g_autofree char *settled = NULL;
  g_autofree char *planned = isnan (self->planned_unit_cents) ? NULL : stead_kitchen_unit_money (self, self->planned_unit_cents);
  g_autofree char *all = stead_money_format (self->used_cents, self->farm->currency);

  if (self->harvest != NULL && isnan (self->unit_cents))
    /* Translators: money. */
    return g_strdup_printf (_("%s of ingredients was lost."), all);
  if (self->harvest == NULL)
    /* Translators: "1 qt", money. */
    return planned != NULL ? g_strdup_printf (_("Planned cost of %s: %s at today's prices."), one, planned)
                           : g_strdup (_("A price is not known yet, so the planned cost is not known."));
  settled = stead_kitchen_unit_money (self, self->unit_cents);
  if (planned == NULL)
    /* Translators: money, "1 qt", money. */
    return g_strdup_printf (_("The lot carries %s: %s costs %s."), all, one, settled);
  /* Translators: money, "1 qt", money, money. */
  return g_strdup_printf (_("The lot carries %s: %s costs %s; planned at today's prices, %s."), all, one, settled, planned);
}

/* --- the caution ------------------------------------------------------------------------------ */

static char *
caution_of (const SteadKitchenAnswer *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *not_met = NULL;
  g_autofree char *open = NULL;

  if (self->n_not_met > 0)
    not_met = g_strdup_printf (ngettext ("%d limit was not met: do not sell it before your advisor has decided.",
                                         "%d limits were not met: do not sell it before your advisor has decided.",
                                         (gulong) self->n_not_met), self->n_not_met);
  if (self->n_open > 0 && self->harvest != NULL)
    open = g_strdup_printf (ngettext ("%d limit has no reading that shows it was met.",
                                      "%d limits have no reading that shows they were met.",
                                      (gulong) self->n_open), self->n_open);
  stead_words_add (text, not_met);
  stead_words_add (text, open);
  if (self->lines->len > 0 && (self->n_open > 0 || self->n_not_met > 0))
    stead_words_add (text, _("Each limit names its source. Your health department may ask for more."));
  return stead_words_end (text);
}

void
stead_kitchen_put_words (SteadKitchenAnswer *self,
                         SteadDay            today)
{
  self->sentence = sentence_of (self, today);
  self->cost_text = cost_of (self);
  self->caution = caution_of (self);
}
