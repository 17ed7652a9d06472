/* check-fixture.c - a checklist of eggs held hot and a sauce that cools. */
#include "config.h"

#include <math.h>

#include "check-fixture.h"

/* Rows as data/limits has them. */
static SteadLimit
row (const char          *id,
     const char          *process,
     const char          *measure,
     SteadLimitDirection  direction,
     double               value,
     const char          *unit)
{
  return (SteadLimit) { .id = id, .process = process, .subject = "", .when = "", .measure = measure,
                        .direction = direction, .value = value, .unit = unit, .time_s = NAN,
                        .hazard = "pathogen_growth", .source = "FDA Food Code", .where = "§3-501.16(A)(1)",
                        .version = "2022", .status = "read", .note = "" };
}

static SteadLimit
timed (SteadLimit          limit,
       SteadLimitDirection direction,
       double              time_s)
{
  limit.has_time = TRUE;
  limit.time_direction = direction;
  limit.time_s = time_s;
  return limit;
}

static SteadListLine *
line_of (SteadCheckList *list,
         int             food,
         const char     *topic,
         const char     *measure,
         const char     *unit,
         SteadLimit      limit)
{
  SteadListLine *line = stead_check_list_add_line (list, food, topic);

  line->stage = "cook";
  line->tool = "probe";
  line->often = "portion";
  line->who = "cook";
  line->measure = measure;
  line->unit = unit;
  stead_check_list_add_row (list, line, &limit);
  return line;
}

SteadCheckList *
check_list_new (SteadDay day,
                gint64   batch_id,
                gboolean stop)
{
  SteadCheckList *list = stead_check_list_new ();
  SteadLimit washed = row ("hands-time-20", "hands", "total_time", STEAD_LIMIT_AT_LEAST, 20, "s");
  SteadLimit often = row ("often-hold-2", "check_often", "interval", STEAD_LIMIT_AT_MOST, 2, "h");
  SteadLimit cook_155 = timed (row ("cook-egg-held-155", "cook", "food_temp", STEAD_LIMIT_AT_LEAST, 155, "F"),
                               STEAD_LIMIT_AT_LEAST, 17);
  SteadLimit cook_150 = timed (row ("cook-egg-held-150", "cook", "food_temp", STEAD_LIMIT_AT_LEAST, 150, "F"),
                               STEAD_LIMIT_AT_LEAST, 60);
  SteadListLine *cook;
  SteadListLine *hot;

  list->name = "Breakfast bowls";
  list->day = day;
  list->batch_id = batch_id;
  list->edition = "2022";
  stead_check_list_add_food (list, "Eggs")->process = STEAD_PROCESS_SAME_DAY;
  stead_check_list_add_food (list, "Sauce")->process = STEAD_PROCESS_COMPLEX;
  stead_check_list_add_answer (list, -1, "eaters", "hsp");
  stead_check_list_add_answer (list, 0, "egg_use", "pooled_or_held");
  line_of (list, -1, "hands", STEAD_MEASURE_DONE, NULL, washed);
  cook = line_of (list, 0, "cook", "food_temp", "F", cook_155);
  stead_check_list_add_row (list, cook, &cook_150);
  hot = line_of (list, 0, "hold_hot", "food_temp", "F",
                 row ("hold-hot-135", "hold_hot", "food_temp", STEAD_LIMIT_AT_LEAST, 135, "F"));
  stead_check_list_set_often (list, hot, &often);
  line_of (list, 1, "cool", "food_temp", "F",
           timed (row ("cool-stage-1", "cool", "food_temp", STEAD_LIMIT_AT_MOST, 70, "F"), STEAD_LIMIT_AT_MOST, 7200));
  line_of (list, 1, "hold_cold", "air_temp", "F",
           row ("hold-cold-41", "hold_cold", "air_temp", STEAD_LIMIT_AT_MOST, 41, "F"));
  if (stop)
    stead_check_list_add_stop (list, 0, "eggs_pooled", "pasteurized", &cook_155);
  return list;
}

SteadCheckList *
check_list_saved (Farm     *farm,
                  SteadDay  day,
                  gint64    batch_id,
                  gboolean  stop)
{
  g_autoptr(SteadCheckList) list = check_list_new (day, batch_id, stop);
  g_autoptr(GError) error = NULL;
  SteadCheckList *read;

  ACT (farm, stead_check_repo_save (farm->store, list, err));
  read = stead_check_repo_get (farm->store, list->id, &error);
  g_assert_no_error (error);
  return read;
}

SteadShown
check_shown_f (gint64 line_id,
               gint64 at,
               double temp_f)
{
  return (SteadShown) { .line_id = line_id, .at = at, .value = (temp_f - 32) / 1.8, .scale = 'F' };
}

gint64
check_read (Farm   *farm,
            gint64  line_id,
            gint64  at,
            double  value,
            double  held_s)
{
  g_autoptr(SteadShown) shown = g_new0 (SteadShown, 1);

  *shown = check_shown_f (line_id, at, value);
  shown->held_s = held_s;
  ACT_LEAVING (farm, stead_shown_repo_add (farm->store, shown, err), shown->id == 0);
  return shown->id;
}

void
check_read_all (Farm   *farm,
                gint64  list_id)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckList) list = stead_check_repo_get (farm->store, list_id, &error);
  const double values[] = { 0, 158, 140, 120, 39 };

  g_assert_no_error (error);
  for (guint i = 0; i < list->lines->len; i++)
    {
      const SteadListLine *line = list->lines->pdata[i];

      if (i == LINE_HANDS)
        check_read (farm, line->id, EIGHT, 33.8, 0);   /* 1 °C: done */
      else
        check_read (farm, line->id, EIGHT + 60 * i, values[i], i == LINE_COOK ? 20 : 0);
    }
}
