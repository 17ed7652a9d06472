/* stead-asset-answer.c - what the things that last cost, and what they are worth. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-asset-answer.h"
#include "answer/stead-cash-words.h"
#include "answer/stead-cost-private.h"

#include "core/stead-money.h"
#include "store/stead-batch-repo.h"
#include "store/stead-farm-repo.h"

void
stead_asset_line_free (SteadAssetLine *line)
{
  if (line == NULL)
    return;
  g_clear_pointer (&line->asset, stead_asset_free);
  g_free (line->life);
  g_free (line->borne_by);
  g_free (line);
}

void
stead_asset_answer_free (SteadAssetAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_free (self->currency);
  g_free (self->sentence);
  g_free (self);
}

const char *
stead_asset_answer_method_name (SteadDepreciationMethod method)
{
  switch (method)
    {
    case STEAD_DEPRECIATION_STRAIGHT_LINE:
      return _("Evenly over its years");
    case STEAD_DEPRECIATION_DOUBLE_DECLINING:
      return _("More in its first years");
    case STEAD_DEPRECIATION_UNITS:
      return _("By how much it is used");
    default:
      g_return_val_if_reached (NULL);
    }
}

static char *
life_text (const SteadAsset *asset)
{
  g_autofree char *number = NULL;

  if (asset->method == STEAD_DEPRECIATION_UNITS)
    {
      number = stead_number_format (asset->life_units, 1);
      /* Translators: a number, then the unit that a person named: "2,000 hours" */
      return g_strdup_printf (C_("life of a thing", "%s %s"), number,
                              asset->unit_name != NULL ? asset->unit_name : _("uses"));
    }
  number = stead_number_format (asset->life_years, 1);
  if (asset->method == STEAD_DEPRECIATION_DOUBLE_DECLINING)
    return g_strdup_printf (ngettext ("%s year, more at first", "%s years, more at first",
                                      (gulong) asset->life_years), number);
  return g_strdup_printf (ngettext ("%s year, evenly", "%s years, evenly", (gulong) asset->life_years), number);
}

/* "Brown hens 60 %, Ducks 40 %"; @names: batch id → name. */
static char *
borne_text (const SteadAsset *asset,
            GHashTable       *names)
{
  g_autoptr(GString) text = g_string_new (NULL);

  for (guint i = 0; i < asset->shares->len; i++)
    {
      const SteadAssetShare *share = &g_array_index (asset->shares, SteadAssetShare, i);
      const char *name = g_hash_table_lookup (names, &share->batch_id);
      g_autofree char *percent = stead_words_percent (share->frac, 0);

      if (name == NULL)
        continue;
      if (asset->share_by != STEAD_SHARE_PARTS)
        g_string_append (text, name);
      else
        /* Translators: a batch's name and its share: "Brown hens 60 %" */
        g_string_append_printf (text, C_("share of a thing", "%s %s"), name, percent);
      if (i + 1 < asset->shares->len)
        g_string_append (text, C_("between items of a list", ", "));
    }
  if (text->len > 0 && asset->share_by != STEAD_SHARE_PARTS)
    /* Translators: names of batches, and the rule by which they share: "Brown hens, Ducks: by days". */
    return g_strdup_printf (C_("share of a thing", "%s: %s"), text->str, stead_cash_words_share_by (asset->share_by));
  return text->len > 0 ? g_string_free (g_steal_pointer (&text), FALSE) : g_strdup (_("nobody yet"));
}

static gboolean
charge_by_use (SteadStore       *store,
               const SteadAsset *asset,
               SteadDay          today,
               SteadAssetLine   *line,
               GError          **error)
{
  SteadDepreciable thing = stead_asset_depreciable (asset);
  double units, before;

  if (!stead_asset_repo_uses (store, asset->id, 0, today - 364, today, &units, &before, error))
    return FALSE;
  line->year_cents = stead_money_round (stead_depreciation_for_use (&thing, before, units));
  line->worth_cents = asset->cost_cents + asset->extra_cents
                      - stead_money_round (stead_depreciation_for_use (&thing, 0, before + units));
  return TRUE;
}

static void
charge_by_time (const SteadAsset *asset,
                SteadDay          today,
                SteadAssetLine   *line)
{
  SteadDepreciable thing = stead_asset_depreciable (asset);
  SteadDay end = asset->gone_on != STEAD_DAY_NONE ? MIN (asset->gone_on, today) : today;
  double now = MAX (0, end + 1 - asset->bought_on) / STEAD_DAYS_A_YEAR;
  double year_ago = MAX (0, today - 364 - asset->bought_on) / STEAD_DAYS_A_YEAR;

  line->worth_cents = stead_money_round (stead_depreciation_book_value (&thing, now));
  if (now > year_ago)
    line->year_cents = stead_money_round (stead_depreciation_between (&thing, year_ago, now));
}

static SteadAssetLine *
line_new (SteadStore  *store,
          SteadAsset  *asset,     /* (transfer full) */
          GHashTable  *names,
          GError     **error)
{
  g_autoptr(SteadAssetLine) line = g_new0 (SteadAssetLine, 1);
  SteadDay today = stead_store_get_today (store);

  line->asset = asset;
  line->life = life_text (asset);
  line->borne_by = borne_text (asset, names);
  if (asset->method != STEAD_DEPRECIATION_UNITS)
    charge_by_time (asset, today, line);
  else if (!charge_by_use (store, asset, today, line, error))
    return NULL;
  if (asset->gone_on != STEAD_DAY_NONE && asset->gone_on <= today)
    line->worth_cents = 0;
  return g_steal_pointer (&line);
}

static GHashTable *
batch_names (SteadStore  *store,
             GError     **error)
{
  g_autoptr(GPtrArray) batches = stead_batch_repo_list (store, TRUE, error);
  g_autoptr(GHashTable) names = NULL;

  if (batches == NULL)
    return NULL;
  names = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  for (guint i = 0; i < batches->len; i++)
    {
      const SteadBatch *batch = batches->pdata[i];

      g_hash_table_insert (names, g_memdup2 (&batch->id, sizeof batch->id), g_strdup (batch->name));
    }
  return g_steal_pointer (&names);
}

static char *
sentence_new (const SteadAssetAnswer *self,
              const SteadFarm        *farm)
{
  g_autofree char *worth = stead_money_format (self->worth_cents, farm->currency);
  g_autofree char *year = stead_money_format (self->year_cents, farm->currency);

  if (self->lines->len == 0)
    return g_strdup (_("Things that last for years belong here: a coop, a cooler, a scale."));
  /* Translators: two sums of money */
  return g_strdup_printf (_("What lasts for years is worth <b>%s</b> today; it wore down by <b>%s</b> in the last "
                            "twelve months."), worth, year);
}

SteadAssetAnswer *
stead_asset_answer_new (SteadStore  *store,
                        GError     **error)
{
  g_autoptr(SteadAssetAnswer) self = g_new0 (SteadAssetAnswer, 1);
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);
  g_autoptr(GPtrArray) assets = farm != NULL ? stead_asset_repo_list (store, error) : NULL;
  g_autoptr(GHashTable) names = assets != NULL ? batch_names (store, error) : NULL;

  if (names == NULL)
    return NULL;
  self->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_asset_line_free);
  for (guint i = 0; i < assets->len; i++)
    {
      SteadAssetLine *line = line_new (store, g_steal_pointer (&assets->pdata[i]), names, error);

      if (line == NULL)
        return NULL;
      g_ptr_array_add (self->lines, line);
      self->worth_cents += line->worth_cents;
      self->year_cents += line->year_cents;
    }
  self->currency = g_strdup (farm->currency);
  self->sentence = sentence_new (self, farm);
  return g_steal_pointer (&self);
}
