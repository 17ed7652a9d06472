/* stead-water-words.c - readings of water, their limits and what to do, in words.
 *
 * The rule for every one of them: say the reading, the limit, whose limit it is and
 * where it is printed, then what to check first.  No number is called safe.
 */
#include "config.h"

#include "answer/stead-water-scene.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Of how many of the worst readings the first steps are told at once. */
#define MAX_STEPS 2

const char *
stead_water_measure_name (SteadWaterMeasure measure)
{
  if (measure == STEAD_WATER_NH3N)
    return _("Un-ionized ammonia");
  if (measure == STEAD_WATER_OXYGEN_SHARE)
    return _("Oxygen saturation");
  for (int i = 0; i < STEAD_N_READINGS; i++)
    if (stead_reading_measure ((SteadReading) i) == measure)
      return stead_reading_name ((SteadReading) i);
  g_return_val_if_reached ("");
}

const char *
stead_water_sharer_name (SteadWaterSharers whose)
{
  switch (whose)
    {
    case STEAD_WATER_WARM_FISH: return C_("who shares the water", "warm-water fish");
    case STEAD_WATER_COLD_FISH: return C_("who shares the water", "cold-water fish");
    case STEAD_WATER_PLANTS: return C_("who shares the water", "plants");
    case STEAD_WATER_BACTERIA: return C_("who shares the water", "the bacteria of the filter");
    case STEAD_WATER_TOGETHER: return C_("who shares the water", "fish and plants together");
    case STEAD_WATER_FRY: return C_("who shares the water", "young fish");
    case STEAD_WATER_TILAPIA:
    case STEAD_WATER_CHANNEL_CATFISH:
    case STEAD_WATER_RAINBOW_TROUT:
      for (int i = 0; i < STEAD_N_FISH_SPECIES; i++)
        if ((stead_water_sharers_of_fish ((SteadFishSpecies) i) & whose) != 0)
          return stead_fish_name ((SteadFishSpecies) i);
      G_GNUC_FALLTHROUGH;
    default:
      g_return_val_if_reached ("");
    }
}

char *
stead_water_scene_sentence (const SteadWaterScene *scene)
{
  static const SteadWaterSharers order[] = {
    STEAD_WATER_TILAPIA, STEAD_WATER_CHANNEL_CATFISH, STEAD_WATER_RAINBOW_TROUT, STEAD_WATER_WARM_FISH,
    STEAD_WATER_COLD_FISH, STEAD_WATER_FRY, STEAD_WATER_PLANTS, STEAD_WATER_BACTERIA,
  };
  const SteadWaterSharers species = STEAD_WATER_TILAPIA | STEAD_WATER_CHANNEL_CATFISH | STEAD_WATER_RAINBOW_TROUT;
  g_autoptr(GPtrArray) names = g_ptr_array_new ();
  g_autofree char *list = NULL;
  g_autofree char *judged = NULL;
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (order); i++)
    {
      gboolean kind = order[i] == STEAD_WATER_WARM_FISH || order[i] == STEAD_WATER_COLD_FISH;

      /* A species says its kind. */
      if ((scene->sharers & order[i]) != 0
          && !(kind && (scene->sharers & species) != 0 && scene->unknown_species == NULL))
        g_ptr_array_add (names, (gpointer) stead_water_sharer_name (order[i]));
    }
  g_ptr_array_add (names, NULL);
  list = stead_words_list ((const char * const *) names->pdata);
  /* Translators: a list of who shares the water: "channel catfish, plants and the bacteria of the filter". */
  judged = g_strdup_printf (_("Judged for %s."), list);
  stead_words_add (text, judged);
  if (scene->assumed)
    stead_words_add (text, _("No fish are entered in this water."));
  if (scene->unknown_species != NULL)
    {
      g_autofree char *unknown = g_strdup_printf (_("No limits of “%s” are known here; ask your extension office."),
                                                  scene->unknown_species);

      stead_words_add (text, unknown);
    }
  return stead_words_end (text);
}

char *
stead_water_source_text (SteadSource source)
{
  const char *where = stead_source_where (source);

  if (where == NULL)
    return g_strdup (stead_source_title (source));
  /* Translators: a publication, and where in it. */
  return g_strdup_printf (C_("source", "%s, %s"), stead_source_title (source), where);
}

static int
digits_of (SteadWaterMeasure measure)
{
  switch (measure)
    {
    case STEAD_WATER_TEMPERATURE: return 1;
    case STEAD_WATER_NH3N:
    case STEAD_WATER_CHLORINE: return 3;
    case STEAD_WATER_NITRATE:
    case STEAD_WATER_OXYGEN: return 1;
    case STEAD_WATER_ALKALINITY:
    case STEAD_WATER_HARDNESS:
    case STEAD_WATER_CONDUCTIVITY:
    case STEAD_WATER_CHLORIDE: return 0;
    case STEAD_WATER_PH:
    case STEAD_WATER_TAN:
    case STEAD_WATER_NITRITE:
    case STEAD_WATER_OXYGEN_SHARE:
    default: return 2;
    }
}

char *
stead_water_value_text (SteadWaterMeasure measure,
                        double            value,
                        SteadUnitSystem   units)
{
  g_autofree char *number = NULL;

  if (isnan (value))
    return g_strdup ("–");
  if (measure == STEAD_WATER_OXYGEN_SHARE)
    return stead_words_percent (value, 0);
  if (measure == STEAD_WATER_TEMPERATURE)
    {
      const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_TEMPERATURE, units);

      number = stead_number_format (stead_quantity_from_base (value, unit), 1);
      return g_strdup_printf ("%s %s", number, stead_unit_symbol (unit));
    }
  number = stead_number_format (value, digits_of (measure));
  if (measure == STEAD_WATER_PH)
    return g_steal_pointer (&number);
  return g_strdup_printf (measure == STEAD_WATER_CONDUCTIVITY ? "%s µS/cm" : "%s mg/L", number);
}

/* --- the verdict --------------------------------------------------------------- */

/* What a sentence is made of. */
typedef struct
{
  const char *name;
  const char *whose;
  char       *value;
  char       *limit;
  char       *other;    /* the other end of a range */
  char       *source;
} Parts;

static void
parts_clear (Parts *parts)
{
  g_free (parts->value);
  g_free (parts->limit);
  g_free (parts->other);
  g_free (parts->source);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Parts, parts_clear)

static void
parts_fill (Parts                *parts,
            const SteadWaterLine *line,
            SteadUnitSystem       units)
{
  const SteadWaterLimit *limit = line->judgement.limit;
  gboolean act = line->judgement.verdict == STEAD_WATER_ACT;
  double end, other;

  parts->name = stead_water_measure_name (line->measure);
  parts->value = stead_water_value_text (line->measure, line->value, units);
  if (limit == NULL)
    return;
  end = line->judgement.low ? limit->min : limit->max;
  other = line->judgement.low ? limit->max : limit->min;
  if (act && !isnan (line->judgement.low ? limit->act_below : limit->act_above))
    end = line->judgement.low ? limit->act_below : limit->act_above;
  parts->whose = stead_water_sharer_name (limit->whose);
  parts->limit = stead_water_value_text (line->measure, end, units);
  parts->other = stead_water_value_text (line->measure, other, units);
  parts->source = stead_water_source_text (act ? limit->act_source : limit->source);
}

static char *
act_sentence (const Parts *p,
              gboolean     low)
{
  if (low)
    /* Translators: "pH", a reading, who is harmed, a limit, its source. */
    return g_strdup_printf (_("%s is %s. Harm to %s begins below %s (%s)."), p->name, p->value, p->whose, p->limit,
                            p->source);
  /* Translators: "Un-ionized ammonia", a reading, who is harmed, a limit, its source. */
  return g_strdup_printf (_("%s is %s. Harm to %s begins above %s (%s)."), p->name, p->value, p->whose, p->limit,
                          p->source);
}

static char *
watch_sentence (const Parts           *p,
                const SteadWaterLimit *limit,
                gboolean               low)
{
  SteadWaterLimitTraits out = low ? STEAD_WATER_LIMIT_MIN_OUT : STEAD_WATER_LIMIT_MAX_OUT;

  /* Translators: in these four: "Nitrite", a reading, whose limit it is, the limit, its source. */
  if (low && (limit->traits & out) != 0)
    return g_strdup_printf (_("%s is %s. For %s it should be above %s (%s)."), p->name, p->value, p->whose, p->limit,
                            p->source);
  if (low)
    return g_strdup_printf (_("%s is %s. For %s the limit is %s at least (%s)."), p->name, p->value, p->whose,
                            p->limit, p->source);
  if ((limit->traits & out) != 0)
    return g_strdup_printf (_("%s is %s. For %s it should be below %s (%s)."), p->name, p->value, p->whose, p->limit,
                            p->source);
  return g_strdup_printf (_("%s is %s. For %s the limit is %s at most (%s)."), p->name, p->value, p->whose, p->limit,
                          p->source);
}

static char *
chloride_sentence (const Parts          *p,
                   const SteadWaterLine *line,
                   SteadUnitSystem       units)
{
  g_autofree char *need = stead_water_value_text (STEAD_WATER_CHLORIDE, 10 * line->value, units);
  g_autofree char *source = stead_water_source_text (STEAD_SOURCE_SRAC_462);

  /* Translators: a reading of nitrite, an amount of chloride, the source. */
  return g_strdup_printf (_("%s is %s. There should be at least 10 parts of chloride to 1 of nitrite, here %s (%s)."),
                          p->name, p->value, need, source);
}

static char *
ok_sentence (const Parts           *p,
             const SteadWaterLimit *limit)
{
  if (isnan (limit->min))
    /* Translators: "Nitrite", a reading, whose limit it is, the limit, its source. */
    return g_strdup_printf (_("%s is %s, not above the limit of %s, %s (%s)."), p->name, p->value, p->whose, p->limit,
                            p->source);
  if (isnan (limit->max) || (limit->traits & STEAD_WATER_LIMIT_LOW_ONLY) != 0)
    /* Translators: "Alkalinity", a reading, whose limit it is, the limit, its source. */
    return g_strdup_printf (_("%s is %s, not below the limit of %s, %s (%s)."), p->name, p->value, p->whose, p->other,
                            p->source);
  /* Translators: "pH", a reading, whose limits these are, from, to, their source. */
  return g_strdup_printf (_("%s is %s, between the limits of %s, %s and %s (%s)."), p->name, p->value, p->whose,
                          p->other, p->limit, p->source);
}

static char *
missing_sentence (const Parts          *p,
                  const SteadWaterLine *line)
{
  if (line->measure == STEAD_WATER_NH3N)
    return g_strdup (_("Un-ionized ammonia can be worked out when total ammonia, pH and temperature are read "
                       "in one test."));
  if (line->measure == STEAD_WATER_OXYGEN_SHARE)
    return g_strdup (_("Oxygen saturation can be worked out when oxygen and temperature are read in one test."));
  /* Translators: "Nitrite". */
  return g_strdup_printf (_("%s was not measured."), p->name);
}

static char *
impossible_sentence (const SteadWaterLine *line)
{
  for (int i = 0; i < STEAD_N_READINGS; i++)
    {
      g_autoptr(GError) error = NULL;

      if (stead_reading_measure ((SteadReading) i) == line->measure
          && !stead_reading_check ((SteadReading) i, line->value, &error))
        return g_strdup (error->message);
    }
  return g_strdup (_("This cannot be. Check the readings that it is worked out from."));
}

char *
stead_water_line_sentence (const SteadWaterLine *line,
                           SteadUnitSystem       units)
{
  g_auto(Parts) parts = { 0 };

  g_return_val_if_fail (line != NULL, NULL);

  parts_fill (&parts, line, units);
  if (isnan (line->value))
    return missing_sentence (&parts, line);
  if (line->judgement.verdict == STEAD_WATER_IMPOSSIBLE)
    return impossible_sentence (line);
  if (line->judgement.chloride_short)
    return chloride_sentence (&parts, line, units);
  if (line->judgement.limit == NULL)
    /* Translators: "Hardness", a reading. */
    return g_strdup_printf (_("%s is %s. No limit for it is known here."), parts.name, parts.value);
  if (line->judgement.verdict == STEAD_WATER_ACT)
    return act_sentence (&parts, line->judgement.low);
  if (line->judgement.verdict == STEAD_WATER_WATCH)
    return watch_sentence (&parts, line->judgement.limit, line->judgement.low);
  return ok_sentence (&parts, line->judgement.limit);
}

char *
stead_water_line_short (const SteadWaterLine *line,
                        SteadUnitSystem       units)
{
  g_auto(Parts) parts = { 0 };
  const SteadWaterJudgement *judgement;

  g_return_val_if_fail (line != NULL, NULL);

  judgement = &line->judgement;
  if (isnan (line->value))
    return g_strdup ("");
  if (judgement->verdict == STEAD_WATER_IMPOSSIBLE)
    return impossible_sentence (line);
  parts_fill (&parts, line, units);
  if (judgement->chloride_short)
    return g_strdup (judgement->verdict == STEAD_WATER_ACT ? _("Act: too little chloride beside it.")
                                                           : _("Watch: too little chloride beside it."));
  /* Translators: in these four: a limit, and whose it is. */
  if (judgement->verdict == STEAD_WATER_ACT)
    return g_strdup_printf (judgement->low ? _("Act: below %s harm to %s begins.") : _("Act: above %s harm to %s begins."),
                            parts.limit, parts.whose);
  if (judgement->verdict == STEAD_WATER_WATCH)
    return g_strdup_printf (judgement->low ? _("Watch: the least for %2$s is %1$s.") : _("Watch: the most for %2$s is %1$s."),
                            parts.limit, parts.whose);
  return g_strdup (judgement->limit != NULL ? _("Within the limits known here.") : _("No limit for it is known here."));
}

/* What is worked out from a reading, said before the verdict. */
static char *
derived_words (SteadReading          reading,
               const SteadWaterLine *derived,
               SteadUnitSystem       units)
{
  g_autofree char *value = NULL;

  if (derived == NULL || isnan (derived->value))
    return NULL;
  value = stead_water_value_text (derived->measure, derived->value, units);
  if (reading == STEAD_READING_TAN)
    /* Translators: under the field of total ammonia; mg/L. */
    return g_strdup_printf (_("Un-ionized %s."), value);
  /* Translators: under the field of oxygen; a percentage. */
  return g_strdup_printf (_("%s of what the water holds."), value);
}

char *
stead_water_reading_short (const SteadWaterLine *lines,
                           SteadReading          reading,
                           SteadUnitSystem       units,
                           SteadWaterVerdict    *out_verdict)
{
  const SteadWaterLine *line, *derived = NULL, *worst;
  g_autofree char *worked_out = NULL;
  g_autofree char *verdict = NULL;
  GString *text;

  g_return_val_if_fail (lines != NULL && out_verdict != NULL, NULL);
  g_return_val_if_fail ((guint) reading < STEAD_N_READINGS, NULL);

  line = worst = &lines[stead_reading_measure (reading)];
  if (reading == STEAD_READING_TAN || reading == STEAD_READING_OXYGEN)
    derived = &lines[reading == STEAD_READING_TAN ? STEAD_WATER_NH3N : STEAD_WATER_OXYGEN_SHARE];
  if (derived != NULL && derived->judgement.verdict > line->judgement.verdict)
    worst = derived;
  *out_verdict = worst->judgement.verdict;
  if (isnan (line->value))
    return g_strdup ("");
  worked_out = derived_words (reading, derived, units);
  verdict = stead_water_line_short (worst, units);
  text = g_string_new (NULL);
  stead_words_add (text, worked_out);
  stead_words_add (text, verdict);
  return stead_words_end (text);
}

const char *
stead_water_verdict_word (const SteadWaterLine *line)
{
  g_return_val_if_fail (line != NULL, "");

  if (isnan (line->value))
    return C_("verdict on a reading", "not measured");
  switch (line->judgement.verdict)
    {
    case STEAD_WATER_ACT: return C_("verdict on a reading", "act");
    case STEAD_WATER_WATCH: return C_("verdict on a reading", "watch");
    case STEAD_WATER_OK: return C_("verdict on a reading", "inside its limits");
    case STEAD_WATER_IMPOSSIBLE: return C_("verdict on a reading", "cannot be");
    case STEAD_WATER_UNKNOWN:
    default: return C_("verdict on a reading", "no limit known");
    }
}

/* --- what to do ------------------------------------------------------------------ */

const char *
stead_water_action_steps (SteadWaterAction action)
{
  switch (action)
    {
    case STEAD_WATER_ACTION_TEST_AGAIN:
      return _("Test again, and check the unit.");
    case STEAD_WATER_ACTION_OXYGEN:
      return _("Stop feeding, turn all air on, start the spare pump, add fresh water as warm as this, and take out "
               "the dead. Test again at dawn, when oxygen is lowest.");
    case STEAD_WATER_ACTION_GAS:
      return _("There is more gas than the water can hold, which hurts fish. Look for a pump that sucks in air, let "
               "the water splash, and test again.");
    case STEAD_WATER_ACTION_AMMONIA:
      return _("Stop feeding for 1 to 2 days, change 20 to 30 of 100 parts of the water for water as warm as this, and "
               "check the filter and the pH. Do not raise the pH now: it makes ammonia more poisonous.");
    case STEAD_WATER_ACTION_NITRITE:
      return _("Test the chloride, add salt by the dose sheet, give more air, and feed half. If gills turn brown, act "
               "at once.");
    case STEAD_WATER_ACTION_PH_LOW:
      return _("Test the ammonia first. Then add base by the dose sheet or change some water, and move the pH by 0.3 a "
               "day at most. Under 6 the filter stalls.");
    case STEAD_WATER_ACTION_PH_HIGH:
      return _("Add no more base. Test the ammonia, which a high pH makes more poisonous. Change some water, and move "
               "the pH by 0.3 a day at most.");
    case STEAD_WATER_ACTION_NITRATE_HIGH:
      return _("Grow more plants, feed less, or change some of the water.");
    case STEAD_WATER_ACTION_NITRATE_LOW:
      return _("The plants starve: feed the fish more if the water allows it, or keep fewer plants.");
    case STEAD_WATER_ACTION_COLD:
      return _("Cover the water and warm it slowly, and feed by the table for this temperature or not at all. A heater "
               "in water needs residual-current protection.");
    case STEAD_WATER_ACTION_WARM:
      return _("Shade the water, give more air, add cooler water little by little, and feed less.");
    case STEAD_WATER_ACTION_ALKALINITY_LOW:
      return _("Add bicarbonate by the dose sheet, in parts over some days: the filter uses it up all the time.");
    case STEAD_WATER_ACTION_HARDNESS_LOW:
      return _("Add calcium little by little, as limestone or calcium chloride.");
    case STEAD_WATER_ACTION_SALTS_HIGH:
      return _("Change some water for water with less salt, and look where the salt comes from: feed, base or "
               "fertilizer.");
    case STEAD_WATER_ACTION_CHLORINE:
      return _("Add no more of this water. Let it stand with air, or neutralize it, until a test finds no chlorine.");
    case STEAD_WATER_ACTION_CHLORIDE_LOW:
      return _("Add salt or calcium chloride by the dose sheet, before nitrite rises.");
    case STEAD_WATER_ACTION_NONE:
    default:
      return NULL;
    }
}

/* The steps of the worst readings, each once. */
char *
stead_water_todo (const SteadWaterLine *lines)
{
  g_autoptr(GPtrArray) worst = stead_water_worst_lines (lines);
  g_autoptr(GPtrArray) said = g_ptr_array_new ();
  gboolean act = worst->len > 0 && ((const SteadWaterLine *) worst->pdata[0])->judgement.verdict == STEAD_WATER_ACT;
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < worst->len && said->len < MAX_STEPS; i++)
    {
      const SteadWaterLine *line = worst->pdata[i];
      const char *steps = stead_water_action_steps (line->judgement.action);

      /* What is only to be watched waits behind what calls for action. */
      if (steps == NULL || g_ptr_array_find (said, steps, NULL)
          || (said->len > 0 && act && line->judgement.verdict != STEAD_WATER_ACT))
        continue;
      g_ptr_array_add (said, (gpointer) steps);
      stead_words_add (text, steps);
    }
  return stead_words_end (text);
}
