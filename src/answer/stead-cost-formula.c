/* stead-cost-formula.c - what a line of the cost sheet is called, the formula behind it in
 * words, and the source of the formula.
 */
#include "config.h"

#include "answer/stead-cost-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>

static char *
start_title (SteadBatchKind  batch,
             const char     *unit)
{
  if (batch == STEAD_BATCH_KITCHEN)
    return g_strdup_printf (_("Cost of the ingredients in %s"), unit);
  if (batch == STEAD_BATCH_FISH)
    return g_strdup_printf (_("Cost of the fingerlings in %s"), unit);
  if (batch == STEAD_BATCH_FLOCK)
    return g_strdup_printf (_("Cost of the pullets in %s"), unit);
  return g_strdup_printf (_("Cost of seed and plants in %s"), unit);
}

char *
stead_cost_title (const SteadCostAnswer *answer,
                  SteadCostKind          kind)
{
  const char *unit = stead_words_per_unit (answer->product->pack);

  switch (kind)
    {
    /* Translators: in each of these titles %s is "a dozen", "a jar". */
    case STEAD_COST_FEED: return g_strdup_printf (_("Cost of feed in %s"), unit);
    case STEAD_COST_START: return start_title (stead_cost_batch_kind (answer), unit);
    case STEAD_COST_BEDDING: return g_strdup_printf (_("Cost of bedding in %s"), unit);
    case STEAD_COST_SUPPLIES: return g_strdup_printf (_("Cost of other supplies in %s"), unit);
    case STEAD_COST_ASSETS:
      return g_strdup_printf (answer->flock != NULL ? _("Cost of coop and equipment in %s")
                                                    : _("Cost of equipment in %s"), unit);
    case STEAD_COST_PACKAGING: return g_strdup_printf (_("Cost of packaging in %s"), unit);
    case STEAD_COST_LABOR: return g_strdup_printf (_("Unpaid student work in %s"), unit);
    default: g_return_val_if_reached (NULL);
    }
}

/* Of a batch that is harvested at its end. */
static const char *
money_formula_of (SteadCostKind kind)
{
  switch (kind)
    {
    case STEAD_COST_FEED:
      return _("(What the feed cost that was eaten, oldest bag first, + what is still to be fed) ÷ all that can be "
               "sold of it. Fish and fruit that are lost ate and grew too, so the good ones carry it all.");
    case STEAD_COST_START:
      return _("What it began with ÷ all that can be sold of it.");
    case STEAD_COST_BEDDING:
    case STEAD_COST_SUPPLIES:
      return _("(What was used, oldest first, + what is still to come) ÷ all that can be sold of it.");
    case STEAD_COST_ASSETS:
      return _("What each thing loses in value until the end × the share that this batch bears, ÷ all that can be sold of it.");
    case STEAD_COST_OVERHEAD:
    case STEAD_COST_PACKAGING:
    case STEAD_COST_LABOR:
    default:
      return NULL;
    }
}

/* Of what the kitchen makes. */
static const char *
kitchen_formula_of (SteadCostKind kind)
{
  switch (kind)
    {
    case STEAD_COST_START:
      return _("What the ingredients cost that were used, ÷ all that can be sold of it. What was lost in the kitchen "
               "used ingredients too, so the good ones carry it all.");
    case STEAD_COST_ASSETS:
      return _("What each thing loses in value by its use in the kitchen, ÷ all that can be sold of it.");
    case STEAD_COST_LABOR:
      return _("(Minutes in the kitchen + minutes of packing × units) ÷ 60 × pay for an hour, ÷ what can be sold. "
               "Nobody is paid it: it stands apart.");
    case STEAD_COST_FEED:
    case STEAD_COST_BEDDING:
    case STEAD_COST_SUPPLIES:
    case STEAD_COST_PACKAGING:
    default:
      return NULL;
    }
}

const char *
stead_cost_formula (const SteadCostAnswer *answer,
                    SteadCostKind          kind)
{
  if (answer->kitchen != NULL && kitchen_formula_of (kind) != NULL)
    return kitchen_formula_of (kind);
  if (answer->money != NULL && money_formula_of (kind) != NULL)
    return money_formula_of (kind);
  switch (kind)
    {
    case STEAD_COST_FEED:
      return _("What the feed cost that was eaten, oldest bag first, ÷ what can be sold. "
               "Cracked and unsold eggs ate too, so the good ones carry it all.");
    case STEAD_COST_START:
      return _("(Price of the birds − their worth at the end) ÷ eggs expected of them × eggs laid, ÷ what can be sold. "
               "Each egg carries the same, so a poor month carries less.");
    case STEAD_COST_BEDDING:
      return _("What the bedding cost that was used, oldest first, ÷ what can be sold.");
    case STEAD_COST_SUPPLIES:
      return _("What the other supplies cost that were used, oldest first, ÷ what can be sold.");
    case STEAD_COST_ASSETS:
      return _("What each thing loses in value in these days × the share that this flock bears, ÷ what can be sold.");
    case STEAD_COST_PACKAGING:
      return _("What the next packaging to be taken costs, for one unit sold.");
    case STEAD_COST_LABOR:
      return _("(Minutes of care × days + minutes of packing × units) ÷ 60 × pay for an hour, ÷ what can be sold. "
               "Nobody is paid it: it stands apart.");
    default:
      g_return_val_if_reached ("");
    }
}

const char *
stead_cost_source (const SteadCostAnswer *answer,
                   SteadCostKind          kind)
{
  if (answer->money != NULL && kind != STEAD_COST_PACKAGING && kind != STEAD_COST_LABOR)
    return _("All cost over all output, finished or expected: OpenStax, Principles of Accounting, vol. 2, sections 5.3 "
             "and 5.4. First in, first out, and wear: the same, vol. 1, sections 10.2 and 11.3.");
  if (answer->kitchen != NULL && kind == STEAD_COST_START)
    return _("What leaves the store room: OpenStax, Principles of Accounting, vol. 1, section 10.2. "
             "Normal loss carried by the good units: common practice.");
  switch (kind)
    {
    case STEAD_COST_FEED:
    case STEAD_COST_BEDDING:
    case STEAD_COST_SUPPLIES:
      return _("First in, first out: OpenStax, Principles of Accounting, vol. 1, section 10.2. "
               "Normal loss carried by the good units: common practice.");
    case STEAD_COST_START:
      return _("A hen's value falls over her lay: UC Davis, Hen value, September 2002. "
               "Spread by units: OpenStax, Principles of Accounting, vol. 1, section 11.3.");
    case STEAD_COST_ASSETS:
      return _("Depreciation: OpenStax, Principles of Accounting, vol. 1, section 11.3. "
               "A year of 365 days and the farm's own shares: common practice, no source.");
    case STEAD_COST_PACKAGING:
      return _("Common practice, no source.");
    case STEAD_COST_LABOR:
      return _("Cost with and without unpaid work, side by side: common practice, no source.");
    default:
      g_return_val_if_reached ("");
    }
}
