/* stead-check-ask-text.c - questions and answers, stops and the way round, in words. */
#include "config.h"

#include "answer/stead-check-plan-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* --- questions ------------------------------------------------------------------------ */

char *
stead_check_question_text (SteadCheckKey key)
{
  static const char * const texts[STEAD_N_CHECK_KEYS] = {
    [STEAD_CHECK_KEY_EATERS] = N_("Who eats it?"),
    [STEAD_CHECK_KEY_FORM] = N_("What is it?"),
    [STEAD_CHECK_KEY_MADE] = N_("Is it cooked here, or bought ready to eat?"),
    [STEAD_CHECK_KEY_COOKED] = N_("What is cooked in it? Take the first of these that is in it."),
    [STEAD_CHECK_KEY_DONENESS] = N_("How far is it cooked?"),
    [STEAD_CHECK_KEY_HELD] = N_("How is it kept until it is eaten or sold?"),
    [STEAD_CHECK_KEY_EGG_USE] = N_("How are the eggs cooked?"),
    [STEAD_CHECK_KEY_PASTEURIZED] = N_("Are pasteurized eggs used?"),
    [STEAD_CHECK_KEY_COMBINED] = N_("When are the eggs mixed in?"),
    [STEAD_CHECK_KEY_AHEAD] = N_("When is it made?"),
    [STEAD_CHECK_KEY_TIME_OPTION] = N_("For how many hours does time stand in for cold?"),
    [STEAD_CHECK_KEY_KEPT_LONG] = N_("Is it kept cold for more than a day?"),
    [STEAD_CHECK_KEY_AMBIENT] = N_("Is it made from ingredients at room temperature?"),
    [STEAD_CHECK_KEY_THAW] = N_("Is the meat or fish thawed, and how?"),
    [STEAD_CHECK_KEY_SHELF] = N_("What is it that stands at room temperature?"),
    [STEAD_CHECK_KEY_MADE_IN] = N_("Where are the jars filled and heated?"),
    [STEAD_CHECK_KEY_FISH_FEED] = N_("Where is the fish from?"),
    [STEAD_CHECK_KEY_EGGS_COLD] = N_("Were all the eggs kept as cold as raw eggs must be since they were gathered?"),
    [STEAD_CHECK_KEY_MICROWAVE] = N_("Is any of it cooked or heated in a microwave oven?"),
    [STEAD_CHECK_KEY_CARRIED] = N_("Is food carried to another place?"),
    [STEAD_CHECK_KEY_SANITIZER] = N_("With what do you sanitize?"),
    [STEAD_CHECK_KEY_WATER_PH] = N_("What is the pH of the sanitizer in your water?"),
    [STEAD_CHECK_KEY_WASH] = N_("How are dishes washed?"),
    [STEAD_CHECK_KEY_THERMOMETER] = N_("Which scale does the thermometer have?"),
  };

  g_return_val_if_fail ((gsize) key < G_N_ELEMENTS (texts), NULL);
  return g_strdup (_(texts[key]));
}

static const struct { SteadCheckKey key; const char *word, *text; } answers[] = {
  { STEAD_CHECK_KEY_EATERS, "general", N_("people of all kinds, and no group at risk") },
  { STEAD_CHECK_KEY_EATERS, "hsp", N_("young children, old or ill people who are cared for") },
  { STEAD_CHECK_KEY_FORM, "dish", N_("a dish to be eaten") },
  { STEAD_CHECK_KEY_FORM, "baked", N_("bread, cookies or the like") },
  { STEAD_CHECK_KEY_FORM, "shell_eggs", N_("raw eggs in the shell") },
  { STEAD_CHECK_KEY_FORM, "raw_animal", N_("raw fish or meat that the buyer cooks") },
  { STEAD_CHECK_KEY_FORM, "whole_produce", N_("whole fruit or vegetables") },
  { STEAD_CHECK_KEY_FORM, "package", N_("dry goods in a sealed pack") },
  { STEAD_CHECK_KEY_MADE, "here", N_("cooked or made here") },
  { STEAD_CHECK_KEY_MADE, "bought", N_("bought ready to eat, in a sealed pack") },
  { STEAD_CHECK_KEY_COOKED, "poultry", N_("poultry, or anything stuffed") },
  { STEAD_CHECK_KEY_COOKED, "meat_ground", N_("ground meat") },
  { STEAD_CHECK_KEY_COOKED, "raw_egg", N_("eggs") },
  { STEAD_CHECK_KEY_COOKED, "fish_intact", N_("fish") },
  { STEAD_CHECK_KEY_COOKED, "meat_intact", N_("meat in whole pieces") },
  { STEAD_CHECK_KEY_COOKED, "plant_food", N_("only vegetables, fruit or grain") },
  { STEAD_CHECK_KEY_COOKED, "none", N_("nothing is cooked") },
  { STEAD_CHECK_KEY_DONENESS, "full", N_("cooked through") },
  { STEAD_CHECK_KEY_DONENESS, "undercooked", N_("soft, pink or runny, if a guest wants it so") },
  { STEAD_CHECK_KEY_DONENESS, "raw", N_("raw") },
  { STEAD_CHECK_KEY_HELD, "at_once", N_("it is served at once") },
  { STEAD_CHECK_KEY_HELD, "hot", N_("held hot") },
  { STEAD_CHECK_KEY_HELD, "cold", N_("held cold") },
  { STEAD_CHECK_KEY_HELD, "frozen", N_("frozen") },
  { STEAD_CHECK_KEY_HELD, "time", N_("neither: by a time written on it") },
  { STEAD_CHECK_KEY_HELD, "sealed_jar", N_("in sealed jars at room temperature") },
  { STEAD_CHECK_KEY_EGG_USE, "pooled_or_held", N_("several together, or for later") },
  { STEAD_CHECK_KEY_EGG_USE, "immediate_service", N_("for one order at a time, served at once") },
  { STEAD_CHECK_KEY_PASTEURIZED, "no", N_("no, eggs in the shell") },
  { STEAD_CHECK_KEY_PASTEURIZED, "yes", N_("yes") },
  { STEAD_CHECK_KEY_COMBINED, "just_before_baking", N_("just before it is baked") },
  { STEAD_CHECK_KEY_COMBINED, "ahead", N_("longer before it is baked") },
  { STEAD_CHECK_KEY_COMBINED, "pasteurized", N_("any time: the eggs are pasteurized") },
  { STEAD_CHECK_KEY_AHEAD, "same_day", N_("on the day, and it stays hot") },
  { STEAD_CHECK_KEY_AHEAD, "reheated", N_("ahead: cooled, kept cold and heated again") },
  { STEAD_CHECK_KEY_TIME_OPTION, "4", N_("4 hours") },
  { STEAD_CHECK_KEY_TIME_OPTION, "6", N_("6 hours, and it stays cool all the time") },
  { STEAD_CHECK_KEY_THAW, "none", N_("it is not frozen") },
  { STEAD_CHECK_KEY_THAW, "refrigeration", N_("in the refrigerator") },
  { STEAD_CHECK_KEY_THAW, "running_water", N_("under cold running water") },
  { STEAD_CHECK_KEY_THAW, "microwave", N_("in the microwave, or while it cooks") },
  { STEAD_CHECK_KEY_SHELF, "other", N_("moist food") },
  { STEAD_CHECK_KEY_SHELF, "dry", N_("dry food: bread, cookies, candy, dry mixes") },
  { STEAD_CHECK_KEY_MADE_IN, "processing_plant", N_("in a regulated plant") },
  { STEAD_CHECK_KEY_MADE_IN, "school_kitchen", N_("in a school or other licensed kitchen") },
  { STEAD_CHECK_KEY_MADE_IN, "private_home", N_("at home") },
  { STEAD_CHECK_KEY_FISH_FEED, "other", N_("caught, or fed otherwise") },
  { STEAD_CHECK_KEY_FISH_FEED, "pellets", N_("raised in a tank or pond on pellets, with a statement") },
  { STEAD_CHECK_KEY_SANITIZER, "chlorine", N_("chlorine (bleach)") },
  { STEAD_CHECK_KEY_SANITIZER, "iodine", N_("iodine") },
  { STEAD_CHECK_KEY_SANITIZER, "quat", N_("quat (quaternary ammonium)") },
  { STEAD_CHECK_KEY_SANITIZER, "hot_water", N_("hot water") },
  { STEAD_CHECK_KEY_WATER_PH, "above_8", N_("above 8, or not known") },
  { STEAD_CHECK_KEY_WATER_PH, "up_to_8", N_("8 or less") },
  { STEAD_CHECK_KEY_WASH, "by_hand", N_("by hand") },
  { STEAD_CHECK_KEY_WASH, "machine", N_("in a machine with hot water") },
  { STEAD_CHECK_KEY_THERMOMETER, "F_only", N_("only °F") },
  { STEAD_CHECK_KEY_THERMOMETER, "C_only", N_("only °C") },
  { STEAD_CHECK_KEY_THERMOMETER, "dual", N_("both") },
};

char *
stead_check_answer_text (SteadCheckKey  key,
                         const char    *word)
{
  for (gsize i = 0; i < G_N_ELEMENTS (answers); i++)
    if (answers[i].key == key && g_str_equal (answers[i].word, word))
      return g_strdup (_(answers[i].text));
  /* Yes and no are the same of all others. */
  return g_strdup (g_str_equal (word, "yes") ? _("yes") : _("no"));
}

/* --- stops ------------------------------------------------------------------------------ */

static char *
lot_text (const SteadCheckStop *stop,
          const SteadCheckFood *food)
{
  const SteadCheckLot *lot = &food->lots[stop->lot];
  g_autofree char *made = stead_day_format (lot->made, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *days = stead_number_format (stop->row->value, 0);

  /* Translators: a lot's code, a date, a number of days. */
  return g_strdup_printf (_("Lot %1$s was made on %2$s and is past its last day: cold food is sold for %3$s days, the day "
                            "it was made counted, and never past its own date."), lot->code, made, days);
}

char *
stead_check_stop_text (const SteadCheckStop *stop,
                       const SteadCheckFood *food,
                       SteadUnitSystem       units)
{
  g_autofree char *limit = stead_check_row_text (stop->row, units);
  g_autofree char *ph = food != NULL && !isnan (food->ph) ? stead_number_format (food->ph, 2) : g_strdup ("?");

  switch (stop->kind)
    {
    case STEAD_CHECK_STOP_LOW_ACID:
      /* Translators: %s is a pH. */
      return g_strdup_printf (_("A sealed jar at pH %s is low-acid food: it may not be sold sealed at room temperature."), ph);
    case STEAD_CHECK_STOP_UNTESTED:
      /* Translators: "pH 4.6". */
      return g_strdup_printf (_("Its acidity was not measured: a sealed jar may not be sold unless it is at most %s."), limit);
    case STEAD_CHECK_STOP_DOUBT:
      /* Translators: "pH 4.6", a pH. */
      return g_strdup_printf (_("At pH %2$s it lies above %1$s, where acidified food must be: hold it back, and ask."), limit,
                              ph);
    case STEAD_CHECK_STOP_AUTHORITY:
      return g_strdup (_("Nobody approved its process: a sealed jar may not be sold without a process authority, nor made "
                         "acid in a kitchen without a variance."));
    case STEAD_CHECK_STOP_HOME:
      return g_strdup (_("A sealed jar that was filled at home may not be sold: it must come from a regulated plant."));
    case STEAD_CHECK_STOP_EGGS_WARM:
      /* Translators: a temperature. */
      return g_strdup_printf (_("The eggs were warmer than air of %s: they may not be sold or served."), limit);
    case STEAD_CHECK_STOP_EGGS_UNDERCOOKED:
      return g_strdup (_("Raw or runny shell eggs may not be served to people at risk."));
    case STEAD_CHECK_STOP_EGGS_POOLED:
      return g_strdup (_("Shell eggs broken together ahead may not be served to people at risk."));
    case STEAD_CHECK_STOP_EGGS_TIME:
      return g_strdup (_("Where people at risk eat, raw eggs may not be kept by time alone."));
    case STEAD_CHECK_STOP_RAW_ANIMAL:
      return g_strdup (_("Raw or undercooked fish or meat may not be served to people at risk."));
    case STEAD_CHECK_STOP_GROUND_MEAT:
      return g_strdup (_("Ground meat that is not cooked through may not be served to children."));
    case STEAD_CHECK_STOP_SPROUTS:
      return g_strdup (_("Raw sprouts may not be served to people at risk."));
    case STEAD_CHECK_STOP_ROOM:
      return g_strdup (_("It may not stand at room temperature: germs grow in it, as far as its acidity and water activity "
                         "are known."));
    case STEAD_CHECK_STOP_LOT_OVER:
      return lot_text (stop, food);
    default:
      g_return_val_if_reached (NULL);
    }
}

char *
stead_check_way_text (SteadCheckWay way)
{
  static const char * const texts[] = {
    [STEAD_CHECK_WAY_COLD] = N_("Sell it cold with a date on it, or frozen, as your health department allows."),
    [STEAD_CHECK_WAY_TEST] = N_("Have the pH of the finished, cooled food measured. Until then sell it cold or frozen."),
    [STEAD_CHECK_WAY_AUTHORITY] = N_("Ask your state's food safety office for a process authority and a regulated plant. "
                                     "Until then sell it cold or frozen."),
    [STEAD_CHECK_WAY_DISCARD_EGGS] = N_("Throw these eggs away, and use eggs that stayed cold."),
    [STEAD_CHECK_WAY_PASTEURIZED] = N_("Use pasteurized eggs; or break eggs for one portion, cook it through and serve it at "
                                       "once."),
    [STEAD_CHECK_WAY_COOK_THROUGH] = N_("Cook it through."),
    [STEAD_CHECK_WAY_LEAVE_OUT] = N_("Leave the sprouts out, or cook them."),
    [STEAD_CHECK_WAY_HOLD] = N_("Hold it hot or cold, or by a time that is written on it; or have its acidity and water "
                                "activity measured."),
    [STEAD_CHECK_WAY_DISCARD] = N_("Throw the lot away, and write it down as lost."),
  };

  g_return_val_if_fail ((gsize) way < G_N_ELEMENTS (texts), NULL);
  return g_strdup (_(texts[way]));
}
