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

const char *
stead_knob_what_costs (SteadPack pack)
{
  switch (pack)
    {
    case STEAD_PACK_DOZEN:      return _("What one dozen costs");
    case STEAD_PACK_HALF_DOZEN: return _("What one half dozen costs");
    case STEAD_PACK_TRAY:       return _("What one tray costs");
    case STEAD_PACK_PIECE:      return _("What one piece costs");
    case STEAD_PACK_POUND:      return _("What one pound costs");
    case STEAD_PACK_KILOGRAM:   return _("What one kilogram costs");
    case STEAD_PACK_JAR:        return _("What one jar costs");
    case STEAD_PACK_PACK:       return _("What one pack costs");
    default:                    g_return_val_if_reached (NULL);
    }
}

const char *
stead_knob_one_costs (SteadPack pack)
{
  switch (pack)
    {
    case STEAD_PACK_DOZEN:      return _("One dozen costs");
    case STEAD_PACK_HALF_DOZEN: return _("One half dozen costs");
    case STEAD_PACK_TRAY:       return _("One tray costs");
    case STEAD_PACK_PIECE:      return _("One piece costs");
    case STEAD_PACK_POUND:      return _("One pound costs");
    case STEAD_PACK_KILOGRAM:   return _("One kilogram costs");
    case STEAD_PACK_JAR:        return _("One jar costs");
    case STEAD_PACK_PACK:       return _("One pack costs");
    default:                    g_return_val_if_reached (NULL);
    }
}
