/* stead-water-say.c - the water answer's sentences. */
#include "config.h"

#include "answer/stead-tank-text.h"
#include "answer/stead-water-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* --- the last test ----------------------------------------------------------------- */

static char *
count_sentence (int      n,
                gboolean act)
{
  g_autofree char *number = stead_number_format (n, 0);

  if (act)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%s reading calls for action.</b>",
                                         "<b>%s readings call for action.</b>", (gulong) n), number);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%s reading is to be watched.</b>",
                                       "<b>%s readings are to be watched.</b>", (gulong) n), number);
}

static char *
quiet_sentence (const SteadWaterAnswer *self)
{
  g_autofree char *day = stead_day_format (self->last->day, STEAD_DAY_STYLE_MEDIUM);

  /* Translators: a day.  It is not said that the water is safe: only that the readings keep the limits. */
  return g_strdup_printf (_("Every reading of %s is <b>inside the limits</b> known here."), day);
}

static void
add_last_test (const SteadWaterAnswer *self,
               const GPtrArray        *worst,
               GString                *text)
{
  g_autofree char *act = count_sentence (self->n_act, TRUE);
  g_autofree char *watch = count_sentence (self->n_watch, FALSE);
  g_autofree char *quiet = NULL;
  g_autofree char *verdict = NULL;
  g_autofree char *escaped = NULL;

  if (worst->len == 0)
    {
      quiet = quiet_sentence (self);
      stead_words_add (text, quiet);
      return;
    }
  stead_words_add (text, self->n_act > 0 ? act : watch);
  verdict = stead_water_line_sentence (worst->pdata[0], self->farm->units);
  escaped = g_markup_escape_text (verdict, -1);
  stead_words_add (text, escaped);
}

/* Readings without which nobody knows how the fish are. */
static void
add_gaps (const SteadWaterAnswer *self,
          GString                *text)
{
  static const SteadReading for_fish[] = { STEAD_READING_TEMPERATURE, STEAD_READING_PH, STEAD_READING_TAN,
                                           STEAD_READING_NITRITE, STEAD_READING_OXYGEN };
  static const SteadReading for_plants[] = { STEAD_READING_TEMPERATURE, STEAD_READING_PH, STEAD_READING_CONDUCTIVITY };
  gboolean fish = (self->scene.sharers & STEAD_WATER_BACTERIA) != 0;
  const SteadReading *needed = fish ? for_fish : for_plants;
  gsize n = fish ? G_N_ELEMENTS (for_fish) : G_N_ELEMENTS (for_plants);
  g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *list = NULL;
  g_autofree char *sentence = NULL;

  for (gsize i = 0; i < n; i++)
    if (isnan (self->last->values[needed[i]]))
      g_ptr_array_add (names, g_strdup (stead_reading_name (needed[i])));
  if (names->len == 0)
    return;
  g_ptr_array_add (names, NULL);
  list = stead_words_list ((const char * const *) names->pdata);
  /* Translators: a list of readings. */
  sentence = g_strdup_printf (_("Not measured in it: %s."), list);
  stead_words_add (text, sentence);
}

/* --- trends ------------------------------------------------------------------------ */

static char *
per_day_text (SteadWaterMeasure measure,
              double            slope,
              SteadUnitSystem   units)
{
  g_autofree char *number = NULL;

  if (measure != STEAD_WATER_TEMPERATURE)
    {
      if (measure == STEAD_WATER_OXYGEN_SHARE)
        return stead_words_percent (fabs (slope), 1);
      number = stead_number_format (fabs (slope), fabs (slope) < 0.1 ? 3 : fabs (slope) < 10 ? 2 : 0);
      if (measure == STEAD_WATER_PH)
        return g_steal_pointer (&number);
      return g_strdup_printf (measure == STEAD_WATER_CONDUCTIVITY ? "%s µS/cm" : "%s mg/L", number);
    }
  number = stead_number_format (fabs (slope) / stead_unit_default (STEAD_DIMENSION_TEMPERATURE, units)->factor, 2);
  return g_strdup_printf ("%s %s", number,
                          stead_unit_symbol (stead_unit_default (STEAD_DIMENSION_TEMPERATURE, units)));
}

static char *
change_sentence (const SteadWaterAnswer *self,
                 SteadWaterMeasure       measure)
{
  const SteadWaterTrend *trend = &self->trends[measure];
  const char *name = stead_water_measure_name (measure);
  g_autofree char *slope = per_day_text (measure, trend->line.slope, self->farm->units);
  g_autofree char *half = per_day_text (measure, STEAD_TREND_BAND * sqrt (trend->line.slope_var), self->farm->units);
  gulong n = (gulong) trend->line.n;

  if (!trend->told)
    /* Translators: a measure, how many tests. */
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s: up or down cannot be told from %d test.",
                                         "%s: up or down cannot be told from %d tests.", n), name, (int) n);
  if (trend->line.slope > 0)
    /* Translators: a measure, an amount a day, how far that may be off, how many tests. */
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s rises by %s a day, give or take %s, by the last %d test.",
                                         "%s rises by %s a day, give or take %s, by the last %d tests.", n),
                            name, slope, half, (int) n);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s falls by %s a day, give or take %s, by the last %d test.",
                                       "%s falls by %s a day, give or take %s, by the last %d tests.", n),
                          name, slope, half, (int) n);
}

static char *
limit_text (const SteadWaterAnswer *self,
            SteadWaterMeasure       measure,
            const SteadWaterTrend  *trend)
{
  const SteadWaterLimit *limit = trend->there.limit;
  double end = trend->there.low ? limit->min : limit->max;

  if (trend->there.verdict == STEAD_WATER_ACT)
    end = trend->there.low ? limit->act_below : limit->act_above;
  return stead_water_value_text (measure, end, self->farm->units);
}

static char *
meeting_sentence (const SteadWaterAnswer *self,
                  SteadWaterMeasure       measure)
{
  const SteadWaterTrend *trend = &self->trends[measure];
  g_autofree char *limit = limit_text (self, measure, trend);
  g_autofree char *on = stead_day_format (trend->met_on, STEAD_DAY_STYLE_SHORT);
  g_autofree char *early = stead_day_format (trend->met_early, STEAD_DAY_STYLE_SHORT);
  g_autofree char *late = trend->met_late == STEAD_DAY_NONE ? NULL
                          : stead_day_format (trend->met_late, STEAD_DAY_STYLE_SHORT);

  if (late == NULL)
    /* Translators: a limit, whose it is, a day, the earliest day. */
    return g_strdup_printf (_("If it goes on so, it meets the limit of %s for %s about %s; perhaps as soon as %s, "
                              "perhaps much later."), limit, stead_water_sharer_name (trend->there.limit->whose), on,
                            early);
  /* Translators: a limit, whose it is, a day, the earliest and the latest day (8 times in 10). */
  return g_strdup_printf (_("If it goes on so, it meets the limit of %s for %s about %s, 8 times in 10 between %s "
                            "and %s."), limit, stead_water_sharer_name (trend->there.limit->whose), on, early, late);
}

char *
stead_water_answer_trend_sentence (const SteadWaterAnswer *self,
                                   SteadWaterMeasure       measure)
{
  GString *text;
  g_autofree char *change = NULL;
  g_autofree char *meeting = NULL;

  g_return_val_if_fail (self != NULL, NULL);
  g_return_val_if_fail ((guint) measure < STEAD_N_WATER_MEASURES, NULL);

  if (!self->trends[measure].fitted)
    return NULL;
  change = change_sentence (self, measure);
  if (self->trends[measure].meets)
    meeting = meeting_sentence (self, measure);
  text = g_string_new (NULL);
  stead_words_add (text, change);
  stead_words_add (text, meeting);
  return stead_words_end (text);
}

/* The limit that is met first, of those that lie ahead. */
static void
add_soonest (const SteadWaterAnswer *self,
             GString                *text)
{
  int soonest = -1;
  g_autofree char *sentence = NULL;
  g_autofree char *escaped = NULL;

  for (int i = 0; i < STEAD_N_WATER_MEASURES; i++)
    if (self->trends[i].meets && self->trends[i].met_on > self->today
        && (soonest < 0 || self->trends[i].met_on < self->trends[soonest].met_on))
      soonest = i;
  if (soonest < 0)
    return;
  sentence = stead_water_answer_trend_sentence (self, (SteadWaterMeasure) soonest);
  escaped = g_markup_escape_text (sentence, -1);
  stead_words_add (text, escaped);
}

/* --- the rest ----------------------------------------------------------------------- */

char *
stead_water_answer_due_sentence (const SteadWaterAnswer *self)
{
  g_autofree char *day = NULL;
  g_autofree char *late = NULL;

  g_return_val_if_fail (self != NULL, NULL);

  if (self->due_on == STEAD_DAY_NONE)
    {
      day = stead_day_format (self->water->ended_on, STEAD_DAY_STYLE_MEDIUM);
      return g_strdup_printf (_("This water was in use until %s."), day);
    }
  day = stead_day_format (self->due_on, STEAD_DAY_STYLE_LONG);
  if (self->due_on > self->today)
    /* Translators: a day with its weekday. */
    return g_strdup_printf (_("The next test is due on %s."), day);
  if (self->due_on == self->today)
    return g_strdup (_("A test is due <b>today</b>."));
  late = stead_words_days (self->today - self->due_on);
  /* Translators: "3 days". */
  return g_strdup_printf (_("The next test is <b>%s late</b>."), late);
}

static char *
sentence_of (const SteadWaterAnswer *self)
{
  g_autoptr(GPtrArray) worst = stead_water_answer_worst (self);
  g_autofree char *due = stead_water_answer_due_sentence (self);
  GString *text = g_string_new (NULL);

  if (self->last == NULL)
    stead_words_add (text, _("No test of this water is entered yet. Enter the first one."));
  else
    {
      add_last_test (self, worst, text);
      add_gaps (self, text);
      /* What is ahead waits while there is something to do now. */
      if (self->n_act == 0)
        add_soonest (self, text);
    }
  if (self->last != NULL || self->due_on == STEAD_DAY_NONE)
    stead_words_add (text, due);
  return stead_words_end (text);
}

static char *
caution_of (const SteadWaterAnswer *self)
{
  if (self->n_act == 0)
    return NULL;
  return g_strdup ((self->scene.sharers & STEAD_WATER_BACTERIA) != 0
                   ? _("Sick or dying fish need a veterinarian or a fish disease laboratory. Chemicals burn: gloves, "
                       "goggles, and an adult.")
                   : _("Chemicals burn: gloves, goggles, and an adult."));
}

/* The bed that the feed keeps, beside the bed that is there. */
static void
add_beds (const SteadWaterAnswer *self,
          GString                *text)
{
  const SteadWaterBudget *budget = &self->budget;
  const SteadUnit *area = stead_unit_default (STEAD_DIMENSION_AREA, self->farm->units);
  g_autofree char *least = stead_tank_text_round (budget->bed_min_m2, area);
  g_autofree char *most = stead_tank_text_round (budget->bed_max_m2, area);
  g_autofree char *keeps = NULL, *bed = NULL, *has = NULL;

  /* Translators: two areas. */
  keeps = g_strdup_printf (_("So much feed keeps %s to %s of fruiting plants."), least, most);
  stead_words_add (text, keeps);
  if (isnan (budget->bed_m2))
    return;
  bed = stead_tank_text_round (budget->bed_m2, area);
  has = g_strdup_printf (_("The beds in this water have %s."), bed);
  stead_words_add (text, has);
}

char *
stead_water_answer_budget_sentence (const SteadWaterAnswer *self)
{
  const SteadWaterBudget *budget = &self->budget;
  g_autofree char *feed = NULL, *tan = NULL, *alkalinity = NULL;
  g_autofree char *made = NULL, *nitrate = NULL, *rise = NULL;
  GString *text;

  g_return_val_if_fail (self != NULL, NULL);

  if (budget->days == 0)
    return NULL;
  if (!(budget->feed_kg_day > 0))
    return g_strdup (_("No feed is entered for the fish in this water in the last seven days."));
  feed = stead_quantity_format (budget->feed_kg_day, stead_unit_default (STEAD_DIMENSION_MASS, self->farm->units));
  tan = stead_words_number (budget->tan_g_day);
  alkalinity = stead_words_number (budget->alkalinity_g_day);
  /* Translators: feed a day, grams of ammonia, grams of alkalinity. */
  made = g_strdup_printf (_("The fish got %s of feed a day in the last seven days. It gives about %s g of ammonia (as N) "
                            "a day; to turn that into nitrate the filter uses about %s g of alkalinity (as CaCO₃)."),
                          feed, tan, alkalinity);
  text = g_string_new (NULL);
  stead_words_add (text, made);
  if (self->scene.planted)
    add_beds (self, text);
  else if (!isnan (budget->nitrate_mgl_day))
    {
      nitrate = stead_water_value_text (STEAD_WATER_NITRATE, budget->nitrate_mgl_day, self->farm->units);
      rise = g_strdup_printf (_("Without plants nitrate rises by up to %s a day."), nitrate);
      stead_words_add (text, rise);
    }
  return stead_words_end (text);
}

void
stead_water_answer_say (SteadWaterAnswer *self)
{
  self->sentence = sentence_of (self);
  self->todo = stead_water_todo (self->lines);
  self->caution = caution_of (self);
}

char *
stead_water_answer_test_name (const SteadWaterTest *test,
                              const char           *water_name)
{
  g_autofree char *day = NULL;

  g_return_val_if_fail (test != NULL && water_name != NULL, NULL);

  day = stead_day_format (test->day, STEAD_DAY_STYLE_SHORT);
  /* Translators: the name of a water, and a day; the name of a step to undo. */
  return g_strdup_printf (_("water test of %s on %s"), water_name, day);
}
