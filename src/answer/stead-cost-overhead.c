/* stead-cost-overhead.c - the share of the farm's overhead that a product bears, by the rate that the
 * farm chose.
 *
 * Hours: the care of the batch or the work in the kitchen, and packing.  Space: the place of the batch,
 * a crop by its own area, for the weeks that count; what the kitchen makes takes none.  Money: what went
 * in, without packaging and unpaid work.
 */
#include "config.h"

#include "answer/stead-cost-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-words-private.h"
#include "core/stead-money.h"
#include "core/stead-overhead.h"
#include "store/stead-crop-repo.h"
#include "store/stead-place-repo.h"

#define MINUTES_PER_HOUR 60.0
#define DAYS_PER_WEEK 7.0

/* Days over which the batch costs, those to come with them. */
static double
days_of (const SteadCostAnswer *answer)
{
  return answer->money != NULL ? answer->money->days + answer->money->days_left : answer->to - answer->from + 1;
}

static double
hours_of (const SteadCostAnswer *answer)
{
  double minutes = answer->product->pack_minutes * MAX (answer->sheet.good_units, 0);

  if (answer->kitchen != NULL)
    minutes += answer->kitchen->minutes;
  else
    minutes += answer->batch->care_minutes_day * days_of (answer);
  return minutes / MINUTES_PER_HOUR;
}

static gboolean
read_area (SteadStore             *store,
           const SteadCostAnswer  *answer,
           double                 *out_m2,
           GError                **error)
{
  g_autoptr(GPtrArray) places = NULL;

  *out_m2 = 0;
  if (answer->batch == NULL)
    return TRUE;
  if (answer->batch->kind == STEAD_BATCH_CROP)
    {
      g_autoptr(SteadCrop) crop = stead_crop_repo_get (store, answer->batch->id, error);

      *out_m2 = crop != NULL && crop->area_m2 > 0 ? crop->area_m2 : 0;
      return crop != NULL;
    }
  places = stead_place_repo_list (store, error);
  for (guint i = 0; places != NULL && i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];

      if (place->id == answer->batch->place_id && place->area_m2 > 0)
        *out_m2 = place->area_m2;
    }
  return places != NULL;
}

static double
money_of (const SteadCostAnswer *answer)
{
  double cents = 0;

  for (SteadCostKind kind = 0; kind < STEAD_COST_OVERHEAD; kind++)
    cents += answer->sheet.parts[kind].total_cents;
  return cents;
}

gboolean
stead_cost_overhead_settle (SteadStore       *store,
                            SteadCostAnswer  *answer,
                            GError          **error)
{
  double area;

  if (!stead_overhead_repo_get (store, &answer->overhead, error))
    return FALSE;
  switch (answer->overhead.base)
    {
    case STEAD_OVERHEAD_HOURS: answer->overhead_used = hours_of (answer); break;
    case STEAD_OVERHEAD_SPACE:
      if (!read_area (store, answer, &area, error))
        return FALSE;
      answer->overhead_used = area * days_of (answer) / DAYS_PER_WEEK;
      break;
    case STEAD_OVERHEAD_MONEY: answer->overhead_used = money_of (answer); break;
    case STEAD_OVERHEAD_NONE:
    default: return TRUE;
    }
  answer->sheet.parts[STEAD_COST_OVERHEAD].total_cents =
    stead_overhead_rate ((double) answer->overhead.planned_cents, answer->overhead.planned_base) * answer->overhead_used;
  stead_cost_sheet_settle (&answer->sheet);
  return TRUE;
}

/* --- in words ---------------------------------------------------------------------------- */

/* "310 h", "120 sq ft for a week", "$42.10": an amount of the base. */
char *
stead_cost_overhead_amount (const SteadCostAnswer *answer,
                            double                 base)
{
  g_autofree char *text = NULL;

  switch (answer->overhead.base)
    {
    case STEAD_OVERHEAD_HOURS:
      text = stead_number_format (base, 1);
      /* Translators: hours, short. */
      return g_strdup_printf (_("%s h"), text);
    case STEAD_OVERHEAD_SPACE:
      text = stead_quantity_format (base, stead_unit_by_id (answer->farm->units == STEAD_UNITS_US ? "sqft" : "m2"));
      /* Translators: an area: "120 sq ft". */
      return g_strdup_printf (_("%s for a week"), text);
    case STEAD_OVERHEAD_MONEY:
    case STEAD_OVERHEAD_NONE:
    default:
      return stead_money_format (stead_money_round (base), answer->farm->currency);
    }
}

static const char *
formula_of (SteadOverheadBase base)
{
  switch (base)
    {
    case STEAD_OVERHEAD_HOURS:
      return _("Overhead planned for a year ÷ hours of work planned for it × hours on this, ÷ what can be sold.");
    case STEAD_OVERHEAD_SPACE:
      return _("Overhead planned for a year ÷ space planned for it × space and weeks of this, ÷ what can be sold.");
    case STEAD_OVERHEAD_MONEY:
    case STEAD_OVERHEAD_NONE:
    default:
      return _("Overhead planned for a year ÷ other cost planned for it × other cost of this, ÷ what can be sold.");
    }
}

SteadWhy *
stead_cost_overhead_why (const SteadCostAnswer *answer)
{
  const SteadCostPart *part = &answer->sheet.parts[STEAD_COST_OVERHEAD];
  const char *currency = answer->farm->currency;
  g_autofree char *year = stead_money_format (answer->overhead.planned_cents, currency);
  g_autofree char *all = stead_cost_overhead_amount (answer, answer->overhead.planned_base);
  g_autofree char *used = stead_cost_overhead_amount (answer, answer->overhead_used);
  g_autofree char *total = stead_money_format (stead_money_round (part->total_cents), currency);
  g_autofree char *good = stead_words_units_exact (answer->product->pack, answer->sheet.good_units, 2);
  g_autofree char *shown = stead_money_format (part->shown_cents, currency);

  /* Translators: "a dozen", "a jar". */
  return stead_why_new (g_strdup_printf (_("Overhead in %s"), stead_words_per_unit (answer->product->pack)),
                        formula_of (answer->overhead.base),
                        g_strdup_printf ("%s ÷ %s × %s = %s\n%s ÷ %s = %s", year, all, used, total, total, good, shown),
                        _("OpenStax Principles of Accounting vol. 2, sections 4.4 to 4.6"));
}
