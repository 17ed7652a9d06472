/* stead-kitchen-run.c - a step of the run sheet: its limit, its source, its reading. */
#include "config.h"

#include "answer/stead-kitchen-private.h"
#include "answer/stead-limits.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Longer than any hold: what was hot enough would be met if it was held. */
#define LONG_ENOUGH_S 1e9

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

static SteadRunVerdict
judge_table (const SteadKitchenStep *step,
             const GPtrArray        *rows,
             double                  temp_c,
             double                 *out_short_c)
{
  SteadRunVerdict best = STEAD_RUN_NOT_MET;

  *out_short_c = INFINITY;
  for (guint i = 0; i < rows->len; i++)
    {
      const SteadLimit *row = rows->pdata[i];
      SteadLimitReading reading = { temp_c, "C", 0, 0, NAN };
      SteadJudgement judgement;

      if (!stead_limit_judge (row, &reading, &judgement, NULL))
        continue;
      *out_short_c = MIN (*out_short_c, -judgement.margin / 1.8);
      if (judgement.verdict != STEAD_LIMIT_NOT_MET)
        return STEAD_RUN_MET;
      reading.time_s = LONG_ENOUGH_S;
      if (stead_limit_judge (row, &reading, &judgement, NULL) && judgement.verdict != STEAD_LIMIT_NOT_MET)
        best = STEAD_RUN_IF_HELD;
    }
  return best;
}

/* The recipe's own limit, where it has one; @out_short_c: how much is missing. */
static SteadRunVerdict
judge_own (const SteadKitchenStep *step,
           double                  temp_c,
           double                 *out_short_c)
{
  double below = isnan (step->least_c) ? -INFINITY : step->least_c - temp_c;
  double above = isnan (step->most_c) ? -INFINITY : temp_c - step->most_c;

  *out_short_c = MAX (below, above);
  if (*out_short_c > 1e-9)
    return STEAD_RUN_NOT_MET;
  return step->hold_s > 0 ? STEAD_RUN_IF_HELD : STEAD_RUN_MET;
}

static char *
short_text (double          short_c,
            SteadUnitSystem units)
{
  gboolean us = units == STEAD_UNITS_US;
  g_autofree char *number = stead_number_format (us ? short_c * 1.8 : short_c, 1);

  /* Translators: a difference of temperature: "4 °F". */
  return g_strdup_printf (_("not met: %s %s off"), number, us ? "°F" : "°C");
}

static void
judge (SteadRunLine    *line,
       const GPtrArray *rows,
       gboolean         has_own,
       SteadUnitSystem  units)
{
  double temp_c = line->shown->value, off = -INFINITY, own_off = -INFINITY;
  SteadRunVerdict table = rows->len > 0 ? judge_table (line->step, rows, temp_c, &off) : STEAD_RUN_MET;
  SteadRunVerdict own = has_own ? judge_own (line->step, temp_c, &own_off) : STEAD_RUN_MET;

  line->verdict = MAX (table, own);
  switch (line->verdict)
    {
    case STEAD_RUN_MET:
      line->verdict_text = g_strdup (_("met"));
      break;
    case STEAD_RUN_IF_HELD:
      line->verdict_text = g_strdup (_("met, if it was held so long"));
      break;
    case STEAD_RUN_NOT_MET:
      line->verdict_text = short_text (MAX (table == STEAD_RUN_NOT_MET ? off : -INFINITY,
                                            own == STEAD_RUN_NOT_MET ? own_off : -INFINITY), units);
      break;
    case STEAD_RUN_NO_LIMIT:
    case STEAD_RUN_OPEN:
    default:
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

/* A stage is met by any reading that was low enough in time. */
static SteadRunVerdict
judge_stage (const SteadRunLine *line,
             const SteadLimit   *row,
             const GPtrArray    *readings,
             gint64              began)
{
  for (guint i = 0; i < readings->len; i++)
    {
      const SteadShown *shown = readings->pdata[i];
      const SteadLimitReading reading = { shown->value, "C", 0, 0, (double) (shown->at - began) };
      SteadJudgement judgement;

      if (is_of (shown, line) && stead_limit_judge (row, &reading, &judgement, NULL)
          && judgement.verdict != STEAD_LIMIT_NOT_MET)
        return STEAD_RUN_MET;
    }
  return (double) (line->shown->at - began) > row->time_s ? STEAD_RUN_NOT_MET : STEAD_RUN_OPEN;
}

/* All stages count.  The clock starts with the step, or with its first reading. */
static void
judge_cooling (SteadRunLine    *line,
               const GPtrArray *rows,
               const GPtrArray *readings)
{
  gint64 began = line->step->started_at;
  gboolean open = FALSE;

  for (guint i = 0; began == STEAD_TIME_NONE && i < readings->len; i++)
    if (is_of (readings->pdata[i], line))
      began = ((const SteadShown *) readings->pdata[i])->at;
  line->verdict = STEAD_RUN_MET;
  for (guint i = 0; i < rows->len && line->verdict != STEAD_RUN_NOT_MET; i++)
    {
      SteadRunVerdict stage = judge_stage (line, rows->pdata[i], readings, began);

      open |= stage == STEAD_RUN_OPEN;
      if (stage == STEAD_RUN_NOT_MET)
        line->verdict = STEAD_RUN_NOT_MET;
    }
  if (line->verdict == STEAD_RUN_MET && open)
    line->verdict = STEAD_RUN_OPEN;
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
  line->reading = temperature_text (line->shown->value, units);
  if (is_cooling (step))
    judge_cooling (line, rows, readings);
  else
    judge (line, rows, line->own != NULL, units);
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
