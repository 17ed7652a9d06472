/* stead-asset-whys.c - how the worth and the wear of things that last come about. */
#include "config.h"

#include "answer/stead-asset-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>

/* The first thing, still in use, whose worth is reckoned so. */
static const SteadAssetLine *
example_of (const SteadAssetAnswer  *self,
            SteadDepreciationMethod  method)
{
  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadAssetLine *line = self->lines->pdata[i];

      if (line->asset->method == method && line->asset->gone_on == STEAD_DAY_NONE)
        return line;
    }
  return NULL;
}

static const char *
title_of (SteadDepreciationMethod method)
{
  switch (method)
    {
    case STEAD_DEPRECIATION_STRAIGHT_LINE: return _("Wear, evenly over the years");
    case STEAD_DEPRECIATION_DOUBLE_DECLINING: return _("Wear, more in the first years");
    case STEAD_DEPRECIATION_UNITS: return _("Wear, by use");
    default: g_return_val_if_reached ("");
    }
}

static const char *
formula_of (SteadDepreciationMethod method)
{
  switch (method)
    {
    case STEAD_DEPRECIATION_STRAIGHT_LINE:
      return _("Wear of a year = (cost − worth at the end) ÷ years that it lasts. Worth today = cost − wear so far.");
    case STEAD_DEPRECIATION_DOUBLE_DECLINING:
      return _("Wear of a year = 2 ÷ years that it lasts × worth when that year began, until the worth at the end is "
               "reached. Worth today = cost − wear so far.");
    case STEAD_DEPRECIATION_UNITS:
      return _("Wear = (cost − worth at the end) ÷ uses that it lasts × uses so far. Worth today = cost − wear so far.");
    default:
      g_return_val_if_reached ("");
    }
}

static char *
worked_of (const SteadAssetAnswer *self,
           const SteadAssetLine   *line)
{
  const char *currency = self->currency;
  const SteadAsset *asset = line->asset;
  gint64 basis_cents = asset->cost_cents + asset->extra_cents;
  gboolean by_use = asset->method == STEAD_DEPRECIATION_UNITS;
  g_autofree char *basis = stead_money_format (basis_cents, currency);
  g_autofree char *end = stead_money_format (asset->salvage_cents, currency);
  g_autofree char *life = stead_number_format (by_use ? asset->life_units : asset->life_years, 1);
  g_autofree char *wear = stead_money_format (basis_cents - line->worth_cents, currency);
  g_autofree char *worth = stead_money_format (line->worth_cents, currency);
  g_autofree char *step = NULL;

  if (asset->method == STEAD_DEPRECIATION_DOUBLE_DECLINING)
    {
      step = stead_words_percent (2 / asset->life_years, 1);
      /* Translators: a thing, years, a percentage, then sums of money: cost, wear so far, worth. */
      return g_strdup_printf (_("%s: 2 ÷ %s = %s of the worth a year; %s − %s = %s"), asset->name, life, step, basis,
                              wear, worth);
    }
  step = stead_money_format (stead_money_round ((double) (basis_cents - asset->salvage_cents)
                                                / (by_use ? asset->life_units : asset->life_years)), currency);
  if (by_use)
    /* Translators: a thing, cost, worth at the end, uses, money for a use; cost, wear so far, worth. */
    return g_strdup_printf (_("%s: (%s − %s) ÷ %s = %s a use; %s − %s = %s"), asset->name, basis, end, life, step, basis,
                            wear, worth);
  /* Translators: a thing, cost, worth at the end, years, money for a year; cost, wear so far, worth. */
  return g_strdup_printf (_("%s: (%s − %s) ÷ %s = %s a year; %s − %s = %s"), asset->name, basis, end, life, step, basis,
                          wear, worth);
}

GPtrArray *
stead_asset_answer_whys (const SteadAssetAnswer *self)
{
  GPtrArray *whys;

  g_return_val_if_fail (self != NULL, NULL);

  whys = stead_whys_new ();
  for (int i = 0; i <= STEAD_DEPRECIATION_UNITS; i++)
    {
      SteadDepreciationMethod method = (SteadDepreciationMethod) i;
      const SteadAssetLine *line = example_of (self, method);

      if (line != NULL)
        g_ptr_array_add (whys, stead_why_new (g_strdup (title_of (method)), formula_of (method), worked_of (self, line),
                                              _("OpenStax Principles of Accounting, volume 1, section 11.3.")));
    }
  return whys;
}
