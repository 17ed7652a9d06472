/* stead-step-words.c - the steps of a recipe that have a limit of food safety, in words. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/make/stead-step-words.h"

static const SteadStepWord kinds[] = {
  { NULL, N_("nothing to measure") },
  { "cook", N_("cook until it is hot enough") },
  { "reheat", N_("heat again to keep it hot") },
  { "hold_hot", N_("keep hot") },
  { "cool", N_("cool down") },
  { "hold_cold", N_("keep cold") },
  { "ph", N_("measure how sour it is (pH)") },
};

static const SteadStepWord cooked[] = {
  { "raw_egg", N_("eggs") },
  { "poultry", N_("poultry") },
  { "fish_intact", N_("fish, whole pieces") },
  { "fish_comminuted", N_("fish, ground or chopped") },
  { "meat_intact", N_("meat, whole pieces") },
  { "meat_ground", N_("meat, ground") },
  { "stuffed_food", N_("stuffed food") },
  { "plant_food", N_("vegetables, fruit, grain") },
};

static const SteadStepWord reheated[] = {
  { "cooked_on_site", N_("cooked here before") },
  { "commercial_package", N_("out of a sealed package that was bought") },
};

static const SteadStepWord chilled[] = {
  { "tcs", N_("food that spoils") },
  { "raw_shell_eggs", N_("eggs in the shell") },
};

static const SteadStepWord processes[] = {
  { NULL, N_("none") },
  { "standard_tomato_sauce", N_("standard tomato sauce") },
  { "tomato_juice", N_("tomato juice") },
  { "whole_tomatoes_in_water", N_("whole tomatoes in water") },
  { "whole_tomatoes_in_tomato_juice", N_("whole tomatoes in tomato juice") },
  { "tomato_ketchup", N_("tomato ketchup") },
  { "tomato_paste_salsa", N_("salsa with tomato paste") },
};

static const SteadStepWord jars[] = {
  { NULL, N_("no jar") },
  { "pint", N_("pint") },
  { "quart", N_("quart") },
};

const SteadStepWord *
stead_step_kinds (gsize *n)
{
  *n = G_N_ELEMENTS (kinds);
  return kinds;
}

const SteadStepWord *
stead_step_foods (const char *kind,
                  gsize      *n)
{
  *n = 0;
  if (g_strcmp0 (kind, "cook") == 0)
    {
      *n = G_N_ELEMENTS (cooked);
      return cooked;
    }
  if (g_strcmp0 (kind, "reheat") == 0)
    {
      *n = G_N_ELEMENTS (reheated);
      return reheated;
    }
  if (g_strcmp0 (kind, "hold_cold") == 0)
    {
      *n = G_N_ELEMENTS (chilled);
      return chilled;
    }
  return NULL;
}

gboolean
stead_step_is_hot (const char *kind)
{
  return g_strcmp0 (kind, "cool") != 0 && g_strcmp0 (kind, "hold_cold") != 0 && g_strcmp0 (kind, "ph") != 0;
}

const char *
stead_kept_label (SteadKept kept)
{
  switch (kept)
    {
    case STEAD_KEPT_HOT:
      return _("hot");
    case STEAD_KEPT_COLD:
      return _("cold");
    case STEAD_KEPT_FROZEN:
      return _("frozen");
    case STEAD_KEPT_ROOM:
      return _("at room temperature");
    default:
      g_return_val_if_reached (NULL);
    }
}

const SteadStepWord *
stead_process_words (gsize *n)
{
  *n = G_N_ELEMENTS (processes);
  return processes;
}

const SteadStepWord *
stead_jar_words (gsize *n)
{
  *n = G_N_ELEMENTS (jars);
  return jars;
}
