/* stead-knob-words.c - names of the knobs of the place Price, and their values in words. */
#include "config.h"

#include "app/price/stead-knob-words.h"

#include <glib/gi18n-lib.h>

#include "core/stead-money.h"

gboolean
stead_knob_is_count (SteadKnob knob)
{
  return knob == STEAD_KNOB_PLANNED;
}

const char *
stead_knob_name (SteadKnob knob)
{
  switch (knob)
    {
    case STEAD_KNOB_PRICE:     return C_("field of the price page", "Price");
    case STEAD_KNOB_UNIT_COST: return C_("field of the price page", "Unit cost");
    case STEAD_KNOB_FIXED:     return C_("field of the price page", "Day's costs");
    case STEAD_KNOB_PLANNED:   return C_("field of the price page", "Planned");
    case STEAD_KNOB_TARGET:    return C_("field of the price page", "Target profit");
    default:                   g_return_val_if_reached (NULL);
    }
}

char *
stead_knob_said (const SteadPriceAnswer *answer,
                       SteadKnob               knob,
                       gint64                  value)
{
  SteadPack pack = answer->cost->product->pack;
  g_autofree char *text = stead_knob_is_count (knob)
                          ? stead_words_units (pack, (double) value)
                          : stead_money_format (value, answer->cost->farm->currency);

  switch (knob)
    {
    case STEAD_KNOB_PRICE:
      /* Translators: a handle and its value: "Price, $4.50 a dozen". */
      return g_strdup_printf (_("Price, %s %s"), text, stead_words_per_unit (pack));
    case STEAD_KNOB_UNIT_COST:
      /* Translators: a handle and its value: "Unit cost, $2.41 a dozen". */
      return g_strdup_printf (_("Unit cost, %s %s"), text, stead_words_per_unit (pack));
    case STEAD_KNOB_FIXED:
      /* Translators: a handle and its value: "Day's costs, $96.00". */
      return g_strdup_printf (_("Day's costs, %s"), text);
    case STEAD_KNOB_PLANNED:
      /* Translators: a handle and its value: "Planned, 72 dozen". */
      return g_strdup_printf (_("Planned, %s"), text);
    case STEAD_KNOB_TARGET:
      /* Translators: a field and its value: "Target profit, $50.00". */
      return g_strdup_printf (_("Target profit, %s"), text);
    default:
      g_return_val_if_reached (NULL);
    }
}
