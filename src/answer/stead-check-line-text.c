/* stead-check-line-text.c - one check as a sentence. */
#include "config.h"

#include "answer/stead-check-plan-private.h"
#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

static const SteadLimit *
row_at (const SteadCheckLine *line,
        guint                 i)
{
  return i < line->rows->len ? line->rows->pdata[i] : NULL;
}

/* The number behind "name<=" or "name>=" in the conditions of a row; NAN. */
static double
condition_of (const SteadLimit *row,
              const char       *name)
{
  const char *at = strstr (row->when, name);

  if (at == NULL)
    return NAN;
  at += strlen (name);
  return g_ascii_strtod (at + strspn (at, "<>="), NULL);
}

/* One text for each row, with "or" before the last: %s, %s, or %s. */
static char *
join_or (GPtrArray *texts)
{
  g_autofree char *list = NULL;

  list = g_strdup (texts->pdata[0]);
  for (guint i = 1; i < texts->len; i++)
    {
      g_autofree char *before = g_steal_pointer (&list);
      const char *text = texts->pdata[i];

      list = i + 1 < texts->len ? g_strdup_printf (C_("limits", "%s, %s"), before, text)
                                : g_strdup_printf (C_("limits", "%s, or %s"), before, text);
    }
  return g_steal_pointer (&list);
}

/* --- lines with more than one figure ---------------------------------------------- */

static char *
ill_text (const SteadCheckLine *line)
{
  g_autofree char *free_of = NULL;

  for (guint i = 0; i < line->rows->len && free_of == NULL; i++)
    if (g_str_equal (row_at (line, i)->id, "ill-vomiting-24"))
      free_of = stead_check_row_text (row_at (line, i), STEAD_UNITS_US);
  if (free_of == NULL)
    free_of = g_strdup ("?");
  /* Translators: "24 hours". */
  return g_strcmp0 (line->subject, "HSP") == 0
         ? g_strdup_printf (_("Ask each helper about illness. Who vomits or has diarrhea stays away until %s after it "
                              "ended; who has jaundice, or a sore throat with fever, stays away."), free_of)
         : g_strdup_printf (_("Ask each helper about illness. Who vomits or has diarrhea stays away until %s after it "
                              "ended; who has jaundice stays away; who has a sore throat with fever does not work with "
                              "food."), free_of);
}

static char *
hands_text (const SteadCheckLine *line,
            SteadUnitSystem       units)
{
  g_autofree char *time = stead_check_row_text (row_at (line, 0), units);
  g_autofree char *water = row_at (line, 1) != NULL ? stead_check_row_text (row_at (line, 1), units) : NULL;

  if (water == NULL)
    return g_strdup_printf (_("Wash hands for at least %s before the work and after each dirty task."), time);
  /* Translators: a time, a temperature. */
  return g_strdup_printf (_("Wash hands for at least %1$s, with water of at least %2$s, before the work and after each "
                            "dirty task."), time, water);
}

static char *
ice_text (const SteadCheckLine *line,
          SteadUnitSystem       units)
{
  g_autofree char *ice = stead_check_temp_text (row_at (line, 0)->value, TRUE, units);
  g_autofree char *error = row_at (line, 1) != NULL ? stead_check_row_text (row_at (line, 1), units) : g_strdup ("0");

  /* Translators: two temperatures: "32 °F", "2 °F". */
  return g_strdup_printf (_("Put the thermometer in melting ice: it must show %1$s, at most %2$s off."), ice, error);
}

static char *
boil_text (const SteadCheckLine *line,
           const SteadFarm      *farm)
{
  double feet = farm->elevation_m / STEAD_FOOT_M;
  double drop = row_at (line, 1) != NULL ? row_at (line, 1)->value : 0;
  double boils_f = row_at (line, 0)->value - drop * feet / 1000;
  gboolean us = farm->units == STEAD_UNITS_US;
  g_autofree char *number = stead_number_format (us ? feet : farm->elevation_m, 0);
  g_autofree char *height = g_strdup_printf (us ? "%s ft" : "%s m", number);
  g_autofree char *boils = stead_check_temp_text (boils_f, TRUE, farm->units);
  g_autofree char *error = row_at (line, 2) != NULL ? stead_check_row_text (row_at (line, 2), farm->units)
                                                    : g_strdup ("0");

  /* Translators: an elevation and two temperatures: "1,150 ft", "209.9 °F", "2 °F". */
  return g_strdup_printf (_("Or put it in boiling water: at %1$s above the sea it must show %2$s, at most %3$s off. The "
                            "weather moves that by a degree."), height, boils, error);
}

static char *
chlorine_text (const SteadCheckLine *line,
               SteadUnitSystem       units)
{
  g_autoptr(GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *list = NULL;
  gboolean soft = FALSE;

  for (guint i = 0; i < line->rows->len; i++)
    {
      const SteadLimit *row = row_at (line, i);
      g_autofree char *strength = stead_number_format (condition_of (row, "strength_mgl"), 0);
      g_autofree char *warm = stead_check_row_text (row, units);

      soft |= condition_of (row, "ph") < 10;
      /* Translators: strength of a sanitizer and warmth of its water: "50 mg/L at 75 °F or warmer". */
      g_ptr_array_add (texts, g_strdup_printf (_("%1$s mg/L at %2$s or warmer"), strength, warm));
    }
  list = join_or (texts);
  return soft ? g_strdup_printf (_("Test the chlorine sanitizer, in water up to pH 8: at least %s."), list)
              : g_strdup_printf (_("Test the chlorine sanitizer, in water up to pH 10: at least %s."), list);
}

static char *
sanitizer_text (const SteadCheckLine *line,
                SteadUnitSystem       units)
{
  g_autofree char *first = stead_check_row_text (row_at (line, 0), units);
  g_autofree char *second = row_at (line, 1) != NULL ? stead_check_row_text (row_at (line, 1), units) : NULL;

  if (g_strcmp0 (line->subject, "chlorine") == 0)
    return chlorine_text (line, units);
  if (g_strcmp0 (line->subject, "iodine") == 0 && line->rows->len == 4)
    {
      g_autofree char *most = stead_check_row_text (row_at (line, 2), units);
      g_autofree char *ph = stead_check_row_text (row_at (line, 3), units);

      /* Translators: two strengths, a temperature, a pH. */
      return g_strdup_printf (_("Test the iodine sanitizer: %2$s to %3$s, at %1$s or warmer, and at most %4$s."), first,
                              second, most, ph);
    }
  if (g_strcmp0 (line->subject, "quat") == 0 && second != NULL)
    /* Translators: a temperature, a hardness in mg/L. */
    return g_strdup_printf (_("Test the quat sanitizer: as strong as its label says, at %1$s or warmer, in water with a "
                              "hardness of at most %2$s."), first, second);
  /* Translators: a temperature and a time. */
  return g_strdup_printf (_("Sanitize dishes under water of at least %s."), first);
}

static const char *
allergen_name (const char *word)
{
  static const struct { const char *word, *name; } names[] = {
    { "milk", NC_("allergen", "milk") }, { "egg", NC_("allergen", "egg") }, { "fish", NC_("allergen", "fish") },
    { "crustacean_shellfish", NC_("allergen", "shellfish") }, { "tree_nuts", NC_("allergen", "tree nuts") },
    { "wheat", NC_("allergen", "wheat") }, { "peanuts", NC_("allergen", "peanuts") },
    { "soybeans", NC_("allergen", "soy") }, { "sesame", NC_("allergen", "sesame") },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_str_equal (names[i].word, word))
      return g_dpgettext2 (NULL, "allergen", names[i].name);
  return word;
}

static char *
allergens_text (const SteadCheckLine *line)
{
  g_autoptr(GPtrArray) names = g_ptr_array_new ();
  g_autofree char *list = NULL;

  for (guint i = 1; i < line->rows->len; i++)
    g_ptr_array_add (names, (gpointer) allergen_name (row_at (line, i)->subject));
  g_ptr_array_add (names, NULL);
  list = g_strjoinv (", ", (char **) names->pdata);
  /* Translators: names of allergens. */
  return g_strdup_printf (_("Keep food with these apart from food without: %s. Clean tools and hands between them, and "
                            "tell whoever asks."), list);
}

static char *
freezing_text (const SteadCheckLine *line,
               SteadUnitSystem       units)
{
  g_autoptr(GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *list = NULL;

  for (guint i = 0; i < line->rows->len; i++)
    {
      const SteadLimit *row = row_at (line, i);
      g_autofree char *freeze = stead_check_temp_text (condition_of (row, "freeze_temp_f"), FALSE, units);
      g_autofree char *store = stead_check_temp_text (condition_of (row, "store_temp_f"), FALSE, units);
      g_autofree char *time = stead_check_row_text (row, units);

      /* Translators: two temperatures and a time. */
      g_ptr_array_add (texts, g_strdup_printf (_("frozen solid at %1$s or colder and kept at %2$s or colder for %3$s"),
                                               freeze, store, time));
    }
  list = join_or (texts);
  return g_strdup_printf (_("Fish that is eaten raw or undercooked was first %s. A chest freezer is not cold enough."),
                          list);
}

static char *
cool_text (const SteadCheckLine *line,
           SteadUnitSystem       units)
{
  g_autofree char *first = stead_check_row_text (row_at (line, 0), units);
  g_autofree char *second = row_at (line, 1) != NULL ? stead_check_row_text (row_at (line, 1), units) : NULL;

  if (second == NULL)
    /* Translators: a temperature and a time: "41 °F within 4 hours". */
    return g_strdup_printf (_("Cool it to %s."), first);
  if (strstr (row_at (line, 1)->when, "stage_2") != NULL)
    /* Translators: temperatures and times: "70 °F within 2 hours", "41 °F within 4 hours". */
    return g_strdup_printf (_("Cool it to %1$s, then to %2$s after that. The clock starts when it is too cool to be held "
                              "hot."), first, second);
  return g_strdup_printf (_("Cool it to %1$s, and to %2$s in all. The clock starts when it is too cool to be held hot."),
                          first, second);
}

static char *
leftovers_text (const SteadCheckLine *line,
                SteadUnitSystem       units)
{
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;

  if (g_strcmp0 (line->subject, "time") == 0)
    return g_strdup (_("Throw away what is left when its time is up."));
  if (g_strcmp0 (line->subject, "hot") != 0 || line->rows->len < 2)
    return g_strdup (_("Throw away what stood before guests or came back from them."));
  first = stead_check_row_text (row_at (line, 0), units);
  second = stead_check_row_text (row_at (line, 1), units);
  /* Translators: temperatures and times: "70 °F within 2 hours", "41 °F within 6 hours". */
  return g_strdup_printf (_("Cool what is left at once, to %1$s and to %2$s in all, or throw it away. Throw away what "
                            "stood before guests."), first, second);
}

/* --- lines with one figure, or none -------------------------------------------------- */

/* %s is a limit: "at least 155 °F for 17 seconds, or 158 °F". */
static const char *
cook_format (const SteadCheckLine *line)
{
  static const struct { const char *subject, *format; } formats[] = {
    { "poultry", N_("Cook the poultry to %s, in its thickest part.") },
    { "stuffed_food", N_("Cook stuffed food to %s, in the middle of the stuffing.") },
    { "meat_ground", N_("Cook the ground meat to %s.") },
    { "meat_intact", N_("Cook the meat to %s.") },
    { "whole_roast", N_("Cook the roast to %s.") },
    { "fish_intact", N_("Cook the fish to %s.") },
    { "fish_comminuted", N_("Cook the chopped fish to %s.") },
    { "plant_food", N_("Cook vegetables, fruit and grain to %s, before they are held hot.") },
  };

  if (g_strcmp0 (line->subject, "raw_egg") == 0)
    return g_strcmp0 (line->use, "immediate_service") == 0 ? _("Cook the eggs to %s, and serve them at once.")
                                                           : _("Cook the pooled eggs to %s.");
  for (gsize i = 0; i < G_N_ELEMENTS (formats); i++)
    if (g_strcmp0 (formats[i].subject, line->subject) == 0)
      return _(formats[i].format);
  return _("Cook it to %s.");
}

/* Without a figure: NULL where there is one. */
static const char *
plain_text (const SteadCheckLine *line)
{
  switch ((int) line->kind)
    {
    case STEAD_CHECK_LINE_BARE_HANDS:
      return _("Touch food that is ready to eat with tongs, paper or gloves, never with bare hands.");
    case STEAD_CHECK_LINE_SEPARATE_RAW:
      return _("Keep raw eggs, meat and fish away from food that is ready to eat: below it in the cooler, on boards and "
               "with knives of their own.");
    case STEAD_CHECK_LINE_EGGS_SOUND:
      return _("Take only clean eggs without cracks.");
    case STEAD_CHECK_LINE_RECEIVE_FROZEN:
      return _("Take frozen food only if it is frozen hard.");
    case STEAD_CHECK_LINE_PRODUCE_WASH:
      return _("Wash fruit and vegetables before they are cut or cooked.");
    case STEAD_CHECK_LINE_THAW_MICROWAVE:
      return g_strcmp0 (line->subject, "vacuum_packed_fish") == 0 ? _("Open the vacuum pack of fish before it thaws.")
                                                                  : _("Cook what was thawed in the microwave at once.");
    case STEAD_CHECK_LINE_HOLD_FROZEN:
      return _("Keep it frozen hard.");
    case STEAD_CHECK_LINE_CARRY_FROZEN:
      return _("Carry it frozen hard: look when it leaves and when it arrives.");
    case STEAD_CHECK_LINE_JAR_PROCESS:
      return _("Make and heat each jar exactly as the process authority approved it.");
    case STEAD_CHECK_LINE_ADVISORY:
      return _("Tell guests in writing which food is raw or undercooked, and that it can make people ill.");
    case STEAD_CHECK_LINE_ALLERGEN_NOTICE:
      return _("Put up a written notice of the allergens in food that is sold without a pack.");
    case STEAD_CHECK_LINE_EGG_CARTON:
      return _("See that each carton bears the statement on safe handling.");
    default:
      return NULL;
    }
}

static const char *
limit_format (const SteadCheckLine *line)
{
  switch ((int) line->kind)
    {
    case STEAD_CHECK_LINE_COOK: return cook_format (line);
    case STEAD_CHECK_LINE_COOK_MICROWAVE: return _("In the microwave: cover it, stir it, and heat all parts to %s.");
    case STEAD_CHECK_LINE_STAND:
    case STEAD_CHECK_LINE_REHEAT_STAND: return _("Let it stand covered after the microwave for %s.");
    case STEAD_CHECK_LINE_SANITIZER_CONTACT: return _("Leave the sanitizer on for %s, then let it dry in the air.");
    case STEAD_CHECK_LINE_SURFACES: return _("Clean and sanitize what touches food again after %s.");
    case STEAD_CHECK_LINE_WASH_HAND:
      return _("Wash dishes by hand in water of %s, rinse, sanitize, and let them dry in the air.");
    case STEAD_CHECK_LINE_WASH_MACHINE: return _("In the machine the dishes themselves reach %s.");
    case STEAD_CHECK_LINE_DRY_STORE: return _("Keep dry food %s above the floor.");
    case STEAD_CHECK_LINE_EGGS_COLD: return _("Keep raw eggs in air of %s; measure it when they arrive, and in the cooler.");
    case STEAD_CHECK_LINE_RECEIVE_COLD: return _("Take cold food only if it measures %s.");
    case STEAD_CHECK_LINE_THAW_COLD: return _("Thaw it in the refrigerator: %s all the time.");
    case STEAD_CHECK_LINE_THAW_WATER: return _("Thaw it fully under running water of %s.");
    case STEAD_CHECK_LINE_THAW_WATER_TIME:
      return _("Under running water it is warmer than cold food may be for %s, preparing it counted.");
    case STEAD_CHECK_LINE_FISH_RECORDS: return _("Keep the statement on what the fish ate for %s after it was served.");
    case STEAD_CHECK_LINE_CHILL_PREPARED: return _("Chill what was made from food at room temperature to %s.");
    case STEAD_CHECK_LINE_REHEAT: return _("Heat it again to %s, before it is held hot.");
    case STEAD_CHECK_LINE_REHEAT_MICROWAVE: return _("Heated again in the microwave, covered and stirred, it reaches %s.");
    case STEAD_CHECK_LINE_REHEAT_TIME: return _("From the cold to that heat it takes %s.");
    case STEAD_CHECK_LINE_HOLD_HOT: return _("Hold it hot: %s.");
    case STEAD_CHECK_LINE_HOLD_COLD: return _("Hold it cold: %s.");
    case STEAD_CHECK_LINE_TIME_START: return _("Write the time on it when it leaves heat or cold; it then measures %s.");
    case STEAD_CHECK_LINE_TIME_DURING: return _("While time stands in for cold, its warmest part measures %s.");
    case STEAD_CHECK_LINE_TIME_END: return _("Serve it, cook it or throw it away after %s.");
    case STEAD_CHECK_LINE_JAR_PH: return _("Measure the pH of each batch once it has become even: %s.");
    case STEAD_CHECK_LINE_JAR_RECORDS: return _("Keep the records of each batch for %s.");
    case STEAD_CHECK_LINE_CARRY_HOT: return _("Carry it hot: %s when it leaves and when it arrives.");
    case STEAD_CHECK_LINE_CARRY_COLD:
      if (g_strcmp0 (line->subject, "raw_shell_eggs") == 0)
        return _("Carry the eggs in air of %s: measure it when they leave and when they arrive.");
      return _("Carry it cold: %s when it leaves and when it arrives.");
    case STEAD_CHECK_LINE_UTENSILS: return _("Keep spoons that are in use in the food, or in water of %s.");
    default: return "%s";
    }
}

static char *
date_text (const SteadCheckLine *line)
{
  g_autofree char *last = stead_number_format (row_at (line, 0)->value, 0);

  /* Translators: a number of days. */
  return g_strdup_printf (_("Write its last day on it: the day it was made is day 1, and day %s is the last."), last);
}

static char *
one_figure_text (const SteadCheckLine *line,
                 SteadUnitSystem       units)
{
  g_autofree char *limit = NULL;

  /* Not where a row beside the limit only tells how to measure. */
  if (line->kind == STEAD_CHECK_LINE_FISH_RECORDS || line->kind == STEAD_CHECK_LINE_EGGS_COLD)
    {
      g_autoptr(GPtrArray) first = g_ptr_array_new ();

      g_ptr_array_add (first, line->rows->pdata[0]);
      limit = stead_check_limit_text (first, TRUE, units);
    }
  else
    limit = stead_check_limit_text (line->rows, line->all, units);
  if (limit == NULL)
    limit = g_strdup ("?");
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  return g_strdup_printf (limit_format (line), limit);
#pragma GCC diagnostic pop
}

char *
stead_check_line_text (const SteadCheckLine *line,
                       const SteadFarm      *farm)
{
  const char *plain = plain_text (line);

  if (plain != NULL)
    return g_strdup (plain);
  switch ((int) line->kind)
    {
    case STEAD_CHECK_LINE_ILL: return ill_text (line);
    case STEAD_CHECK_LINE_HANDS: return hands_text (line, farm->units);
    case STEAD_CHECK_LINE_THERMOMETER_ICE: return ice_text (line, farm->units);
    case STEAD_CHECK_LINE_THERMOMETER_BOIL: return boil_text (line, farm);
    case STEAD_CHECK_LINE_SANITIZER: return sanitizer_text (line, farm->units);
    case STEAD_CHECK_LINE_ALLERGENS: return allergens_text (line);
    case STEAD_CHECK_LINE_FISH_FREEZING: return freezing_text (line, farm->units);
    case STEAD_CHECK_LINE_COOL: return cool_text (line, farm->units);
    case STEAD_CHECK_LINE_DATE_MARK: return date_text (line);
    case STEAD_CHECK_LINE_LEFTOVERS: return leftovers_text (line, farm->units);
    default: return one_figure_text (line, farm->units);
    }
}
