/* stead-kitchen-run.c - a step of the run sheet: its limit, its source, its reading. */
#include "config.h"

#include "answer/stead-kitchen-private.h"
#include "answer/stead-limits.h"
#include "core/stead-check-judge.h"
#include "core/stead-cooling.h"

#include <glib/gi18n-lib.h>
#include <math.h>

void
stead_run_line_free (SteadRunLine *line)
{
  if (line == NULL)
    return;
  g_free (line->limit);
  g_free (line->source);
  g_free (line->own);
  g_free (line->measure);
  g_free (line->reading);
  g_free (line->verdict_text);
  g_free (line->who);
  g_free (line);
}

/* --- the limit ------------------------------------------------------------------------ */

/* What the tables call the food of a step that names none. */
static const char *
food_of (const SteadKitchenStep *step)
{
  static const char * const usual[][2] = {
    { "hold_hot", "tcs" }, { "hold_cold", "tcs" }, { "cool", "cooked" }, { "reheat", "cooked_on_site" },
  };

  if (step->food != NULL)
    return step->food;
  for (gsize i = 0; i < G_N_ELEMENTS (usual); i++)
    if (g_strcmp0 (step->step, usual[i][0]) == 0)
      return usual[i][1];
  return "any";
}

static gboolean
is_cooling (const SteadKitchenStep *step)
{
  return g_strcmp0 (step->step, "cool") == 0;
}

/* A kitchen batch is held and served later: the stricter of two uses. */
static GPtrArray *
rows_of (const SteadKitchenStep *step)
{
  const char *food = food_of (step);
  const char *use = g_str_equal (food, "raw_egg") ? "pooled_or_held" : "hot_holding";
  const SteadLimitFact facts[] = { { "use", use, 0 }, { "purpose", "hot_holding", 0 }, { "rule", "food_code", 0 },
                                   { NULL } };
  static const char * const stages[] = { "stage_1", "total" };
  g_autoptr(GPtrArray) rows = NULL;

  if (g_strcmp0 (step->step, "ph") == 0)
    return stead_limit_table_list (stead_limits_get (), "acidified", "any", "ph", NULL);
  if (!is_cooling (step))
    {
      rows = stead_limit_table_list (stead_limits_get (), step->step, food, "food_temp", facts);
      return rows->len > 0 ? g_steal_pointer (&rows)
                           : stead_limit_table_list (stead_limits_get (), step->step, food, "air_temp", facts);
    }
  rows = g_ptr_array_new ();
  for (gsize i = 0; i < G_N_ELEMENTS (stages); i++)
    {
      const SteadLimitFact stage[] = { { "stage", stages[i], 0 }, { "rule", "food_code", 0 }, { NULL } };
      const SteadLimit *row = stead_limit_table_find (stead_limits_get (), "cool", food, "food_temp", stage, NULL);

      if (row != NULL)
        g_ptr_array_add (rows, (gpointer) row);
    }
  return g_steal_pointer (&rows);
}

/* Alternatives, of which one is enough; the stages of cooling must all be met. */
static char *
rows_text (const GPtrArray *rows,
           gboolean         all)
{
  g_autofree char *text = stead_limits_text (rows->pdata[0]);

  for (guint i = 1; i < rows->len; i++)
    {
      g_autofree char *before = g_steal_pointer (&text);
      g_autofree char *next = stead_limits_text (rows->pdata[i]);

      /* Translators: two limits of which one is enough; or that must both be met. */
      text = all ? g_strdup_printf (C_("limits", "%s, and %s"), before, next)
                 : g_strdup_printf (C_("limits", "%s, or %s"), before, next);
    }
  return g_steal_pointer (&text);
}

static char *
temperature_text (double          temp_c,
                  SteadUnitSystem units)
{
  return stead_quantity_format (temp_c, stead_unit_default (STEAD_DIMENSION_TEMPERATURE, units));
}

char *
stead_run_value_text (const SteadShown *shown,
                      SteadUnitSystem   units)
{
  g_autofree char *number = NULL;

  g_return_val_if_fail (shown != NULL && shown->kind != NULL, NULL);
  if (!g_str_equal (shown->kind, "ph"))
    return temperature_text (shown->value, units);
  number = stead_number_format (shown->value, 2);
  /* Translators: how sour it is: "pH 4.2". */
  return g_strdup_printf (_("pH %s"), number);
}

static char *
own_text (const SteadKitchenStep *step,
          SteadUnitSystem         units)
{
  g_autofree char *least = isnan (step->least_c) ? NULL : temperature_text (step->least_c, units);
  g_autofree char *most = isnan (step->most_c) ? NULL : temperature_text (step->most_c, units);
  g_autofree char *whole = NULL;
  g_autofree char *number = NULL;
  g_autofree char *minutes = NULL;

  if (least == NULL && most == NULL)
    return NULL;
  if (least != NULL && most != NULL)
    /* Translators: two temperatures. */
    whole = g_strdup_printf (_("%s to %s"), least, most);
  else
    whole = least != NULL ? g_strdup_printf (C_("limit", "at least %s"), least)
                          : g_strdup_printf (C_("limit", "at most %s"), most);
  if (!(step->hold_s > 0))
    return g_steal_pointer (&whole);
  number = step->hold_s < 120 ? stead_number_format (step->hold_s, 0) : stead_number_format (step->hold_s / 60, 1);
  minutes = g_strdup_printf (step->hold_s < 120 ? C_("time", "%s s") : C_("time", "%s min"), number);
  return g_strdup_printf (C_("limit", "%s for %s"), whole, minutes);
}

/* --- the reading ------------------------------------------------------------------------ */

static const SteadShown *
last_reading (const SteadKitchenStep *step,
              const char             *measure,
              const GPtrArray        *readings)
{
  for (guint i = readings->len; i > 0; i--)
    {
      const SteadShown *shown = readings->pdata[i - 1];

      if (shown->step_id == step->id && !shown->corrected && g_strcmp0 (shown->kind, measure) == 0)
        return shown;
    }
  return NULL;
}

/* What Check calls the line of a step. */
static SteadCheckLineKind
line_kind (const SteadKitchenStep *step)
{
  static const struct { const char *step; SteadCheckLineKind kind; } kinds[] = {
    { "cook", STEAD_CHECK_LINE_COOK }, { "reheat", STEAD_CHECK_LINE_REHEAT }, { "hold_hot", STEAD_CHECK_LINE_HOLD_HOT },
    { "cool", STEAD_CHECK_LINE_COOL }, { "hold_cold", STEAD_CHECK_LINE_HOLD_COLD }, { "ph", STEAD_CHECK_LINE_JAR_PH },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_strcmp0 (step->step, kinds[i].step) == 0)
      return kinds[i].kind;
  return STEAD_CHECK_LINE_COOK;
}

/* The reading by the law of Check's own lines: there is one judge. */
static gboolean
judge_reading (const SteadRunLine  *line,
               GPtrArray           *rows,
               SteadCheckJudgement *out)
{
  const SteadKitchenStep *step = line->step;
  gboolean warmth = !g_str_equal (line->measure, "ph");
  const char *unit = rows->len > 0 ? ((const SteadLimit *) rows->pdata[0])->unit : "F";
  const SteadCheckLine checked = {
    .kind = line_kind (step), .food = 0, .subject = food_of (step), .measure = line->measure, .unit = unit,
    .rows = rows, .own_least_c = warmth ? step->least_c : NAN, .own_most_c = warmth ? step->most_c : NAN,
    .own_hold_s = warmth && line->own != NULL ? step->hold_s : NAN,
  };
  const SteadCheckReading reading = {
    .shown = { .value = line->shown->value, .unit = warmth ? "C" : unit,
               .time_s = line->shown->held_s > 0 ? line->shown->held_s : NAN },
    .at = line->shown->at, .now = line->shown->at, .began = STEAD_CHECK_NO_TIME, .elapsed_h = NAN, .since_good_h = NAN,
    .confirmed = TRUE,
  };

  return stead_check_judge (stead_limits_get (), &checked, &reading, out, NULL);
}

static char *
short_text (const SteadCheckJudgement *judged,
            const char                *measure,
            SteadUnitSystem            units)
{
  gboolean us = units == STEAD_UNITS_US, warmth = !g_str_equal (measure, "ph");
  double off = fabs (judged->margin);
  g_autofree char *number = stead_number_format (warmth && !us ? off / 1.8 : off, warmth ? 1 : 2);

  if (judged->margin >= 0 && judged->short_s > 0)
    return g_strdup (_("not met: held too short"));
  /* Translators: a difference of temperature: "4 °F". */
  return g_strdup_printf (_("not met: %s %s off"), number, !warmth ? "pH" : us ? "°F" : "°C");
}

static void
judge (SteadRunLine    *line,
       GPtrArray       *rows,
       SteadUnitSystem  units)
{
  SteadCheckJudgement judged;

  if (!judge_reading (line, rows, &judged))
    return;
  switch (judged.outcome)
    {
    case STEAD_CHECK_IF_HELD:
      line->verdict = STEAD_RUN_IF_HELD;
      line->verdict_text = g_strdup (_("met, if it was held so long"));
      break;
    case STEAD_CHECK_NOT_MET:
      line->verdict = STEAD_RUN_NOT_MET;
      line->verdict_text = short_text (&judged, line->measure, units);
      break;
    case STEAD_CHECK_MET:
    case STEAD_CHECK_WITHIN_ERROR:
    case STEAD_CHECK_OPEN:
    default:
      line->verdict = STEAD_RUN_MET;
      line->verdict_text = g_strdup (_("met"));
      break;
    }
}

/* --- cooling ---------------------------------------------------------------------------- */

static gboolean
is_of (const SteadShown   *shown,
       const SteadRunLine *line)
{
  return shown->step_id == line->step->id && !shown->corrected && g_strcmp0 (shown->kind, line->measure) == 0;
}

/* Minutes and °F, up to the last reading, as the law of cooling wants them; two at one time count once. */
static GArray *
cooling_readings (const SteadRunLine *line,
                  const GPtrArray    *readings)
{
  GArray *found = g_array_new (FALSE, TRUE, sizeof (SteadCoolingReading));

  for (guint i = 0; i < readings->len; i++)
    {
      const SteadShown *shown = readings->pdata[i];
      SteadCoolingReading reading = { (double) shown->at / 60, stead_fahrenheit_from_celsius (shown->value), FALSE };

      if (!is_of (shown, line) ||
          (found->len > 0 && g_array_index (found, SteadCoolingReading, found->len - 1).minute >= reading.minute))
        continue;
      g_array_append_val (found, reading);
    }
  return found;
}

/* About how cold the air is, °F: only for reading between two readings.  Common practice, no source. */
#define ABOUT_AIR_F 38

/* As a pot of a checklist is judged.  If no reading shows when the clock started, it started with
 * the step. */
static void
judge_cooling (SteadRunLine    *line,
               const GPtrArray *readings)
{
  g_autoptr(GArray) found = cooling_readings (line, readings);
  const SteadCoolingReading *rows = (const SteadCoolingReading *) (void *) found->data;
  SteadCoolingMarkState states[STEAD_COOLING_MARKS];
  SteadCoolingRule rule;
  gboolean known = FALSE;
  double clock_min;

  line->verdict = STEAD_RUN_OPEN;
  if (found->len > 0
      && stead_cooling_rule (stead_limits_get (), food_of (line->step), "food_code", &rule, NULL))
    {
      clock_min = stead_cooling_clock (rows, found->len, rule.start_f, ABOUT_AIR_F, &known);
      if (!known && line->step->started_at != STEAD_TIME_NONE)
        clock_min = MIN (clock_min, (double) line->step->started_at / 60);
      stead_cooling_mark_states (&rule, rows, found->len, clock_min, states);
      /* While it is as hot as where the clock starts, nothing is judged. */
      line->verdict = rows[found->len - 1].temp_f > rule.start_f ? STEAD_RUN_OPEN : STEAD_RUN_MET;
      for (gsize i = 0; i < rule.n_marks && rows[found->len - 1].temp_f <= rule.start_f; i++)
        if (states[i] == STEAD_COOLING_MARK_MISSED || states[i] == STEAD_COOLING_MARK_UNPROVEN)
          line->verdict = STEAD_RUN_NOT_MET;
        else if (states[i] == STEAD_COOLING_MARK_OPEN && line->verdict == STEAD_RUN_MET)
          line->verdict = STEAD_RUN_OPEN;
    }
  line->verdict_text = g_strdup (line->verdict == STEAD_RUN_MET ? _("cooled in time")
                                 : line->verdict == STEAD_RUN_OPEN ? _("still cooling")
                                 : _("cooled too slowly: throw it away, or ask your advisor now"));
}

SteadRunLine *
stead_kitchen_run_line (const SteadKitchenStep *step,
                        int                     number,
                        const GPtrArray        *readings,
                        SteadUnitSystem         units)
{
  SteadRunLine *line = g_new0 (SteadRunLine, 1);
  g_autoptr(GPtrArray) rows = step->step != NULL ? rows_of (step) : g_ptr_array_new ();

  line->step = step;
  line->number = number;
  line->own = own_text (step, units);
  if (rows->len > 0)
    {
      line->limit = rows_text (rows, is_cooling (step));
      line->source = stead_limits_source (rows->pdata[0]);
      line->measure = g_strdup (((const SteadLimit *) rows->pdata[0])->measure);
    }
  else if (line->own != NULL)
    {
      line->measure = g_strdup ("food_temp");
    }
  if (line->measure == NULL)
    return line;
  line->verdict = STEAD_RUN_OPEN;
  line->shown = last_reading (step, line->measure, readings);
  if (line->shown == NULL)
    return line;
  line->reading = stead_run_value_text (line->shown, units);
  if (is_cooling (step))
    judge_cooling (line, readings);
  else
    judge (line, rows, units);
  return line;
}

SteadRunLine *
stead_run_line_of_recipe (const SteadRecipeStep *step,
                          int                    number,
                          SteadUnitSystem        units)
{
  g_autoptr(GPtrArray) readings = g_ptr_array_new ();
  SteadKitchenStep plain = { .text = step->text, .minutes = step->minutes, .step = step->step, .food = step->food,
                             .least_c = step->least_c, .most_c = step->most_c, .hold_s = step->hold_s,
                             .started_at = STEAD_TIME_NONE, .done_at = STEAD_TIME_NONE };
  SteadRunLine *line = stead_kitchen_run_line (&plain, number, readings, units);

  line->step = NULL;
  return line;
}
