/* stead-check-stop.c - what cannot be sold as planned, and by which row. */
#include "config.h"

#include "core/stead-check-private.h"
#include "core/stead-food-kind.h"
#include "core/stead-food-time.h"

#include <math.h>

#define END_OF_FACTS { NULL, NULL, 0 }

/* Tomato sauces between the limit of acidified food and that of low-acid food: hold, and ask. */
static void
stop (CheckMaker         *maker,
      SteadCheckStopKind  kind,
      int                 food,
      int                 lot,
      const SteadLimit   *row,
      SteadCheckWay       way)
{
  SteadCheckStop *made;

  if (row == NULL)
    return;
  made = g_new0 (SteadCheckStop, 1);
  *made = (SteadCheckStop) { kind, food, lot, row, way };
  g_ptr_array_add (maker->plan->stops, made);
}

static const SteadLimit *
row_of (CheckMaker           *maker,
        const char           *process,
        const char           *subject,
        const char           *measure,
        const SteadLimitFact *facts)
{
  return stead_limit_table_find (maker->table, process, subject, measure, facts, NULL);
}

/* --- jars ------------------------------------------------------------------------- */

static const SteadLimit *
class_row (CheckMaker           *maker,
           const SteadCheckFood *food)
{
  const SteadLimitFact facts[] = {
    { "acid_added", food->acid_added ? "yes" : "no", 0 }, { "ph", NULL, food->ph },
    { "aw", NULL, isnan (food->aw) ? 1 : food->aw }, END_OF_FACTS,
  };

  return row_of (maker, "acidified", food->tomato ? "tomato" : "other", "class", facts);
}

static void
stop_untested_jar (CheckMaker       *maker,
                   const CheckRoute *route)
{
  const SteadCheckFood *food = route->food;
  const SteadLimit *limit = row_of (maker, "acidified", "any", "ph", NULL);
  const SteadAcidFood acid = { food->tomato, food->acid_added, FALSE, food->ph, food->aw };
  SteadAcidKind kind;

  if (!stead_acid_kind (maker->table, &acid, &kind, NULL))
    stop (maker, STEAD_CHECK_STOP_UNTESTED, route->index, -1, limit, STEAD_CHECK_WAY_TEST);
  else if (kind == STEAD_ACID_LOW_ACID)
    stop (maker, STEAD_CHECK_STOP_LOW_ACID, route->index, -1, class_row (maker, food), STEAD_CHECK_WAY_COLD);
  else if (kind == STEAD_ACID_NOT_LOW_ACID && !stead_acid_ph_in_order (maker->table, food->ph))
    stop (maker, STEAD_CHECK_STOP_DOUBT, route->index, -1, limit, STEAD_CHECK_WAY_AUTHORITY);
}

static void
stop_jar (CheckMaker       *maker,
          const CheckRoute *route)
{
  static const char * const places[] = { "processing_plant", "school_kitchen", "private_home", NULL };
  const SteadLimitFact home[] = { { "made_in", "private_home", 0 }, END_OF_FACTS };
  const SteadLimitFact kitchen[] = { { "place", "retail_kitchen", 0 }, END_OF_FACTS };
  const char *place;

  if (route->hold != CHECK_HOLD_SEALED)
    return;
  place = check_ask (maker, STEAD_CHECK_KEY_MADE_IN, route->index, places, "school_kitchen");
  stop_untested_jar (maker, route);
  if (g_str_equal (place, "private_home"))
    stop (maker, STEAD_CHECK_STOP_HOME, route->index, -1, row_of (maker, "food_source", "sealed_jar", NULL, home),
          STEAD_CHECK_WAY_AUTHORITY);
  else if (g_str_equal (place, "school_kitchen") && route->food->acid_added)
    stop (maker, STEAD_CHECK_STOP_AUTHORITY, route->index, -1,
          row_of (maker, "variance", "acid_added_to_make_non_TCS", NULL, kitchen), STEAD_CHECK_WAY_AUTHORITY);
  else if (route->food->authority == NULL)
    stop (maker, STEAD_CHECK_STOP_AUTHORITY, route->index, -1,
          row_of (maker, "acidified", "any", "scheduled_process", NULL), STEAD_CHECK_WAY_AUTHORITY);
}

/* --- eggs and people at risk -------------------------------------------------------- */

/* How the tables call what is done with the eggs. */
static const char *
egg_cooking (const CheckRoute *route)
{
  if (route->form == STEAD_CHECK_FORM_BAKED)
    return "baked";
  return g_str_equal (route->doneness, "raw") ? "none" : route->doneness;
}

static void
stop_eggs_at_risk (CheckMaker       *maker,
                   const CheckRoute *route)
{
  static const char * const yes_no[] = { "no", "yes", NULL };
  static const char * const when[] = { "just_before_baking", "ahead", "pasteurized", NULL };
  gboolean baked = route->form == STEAD_CHECK_FORM_BAKED;
  gboolean one_order = g_strcmp0 (route->egg_use, "immediate_service") == 0;
  SteadLimitFact facts[] = {
    { "cooking", egg_cooking (route), 0 }, { "servings", NULL, one_order ? 1 : 2 }, { "eggs_combined", NULL, 2 },
    { "combined", "ahead", 0 }, END_OF_FACTS,
  };
  const SteadLimit *row;
  gboolean through = g_str_equal (route->doneness, "full");

  if (!maker->hsp || !check_cooks (route, "raw_egg"))
    return;
  row = row_of (maker, "raw_egg_use", "HSP", "action", facts);
  if (row == NULL || g_strcmp0 (row->word, "raw_eggs_allowed") == 0)
    return;
  /* Only an answer stops it; until then the question stands. */
  if (baked ? !g_str_equal (check_ask (maker, STEAD_CHECK_KEY_COMBINED, route->index, when, "pasteurized"), "ahead")
            : !g_str_equal (check_ask (maker, STEAD_CHECK_KEY_PASTEURIZED, route->index, yes_no, "yes"), "no"))
    return;
  stop (maker, through ? STEAD_CHECK_STOP_EGGS_POOLED : STEAD_CHECK_STOP_EGGS_UNDERCOOKED, route->index, -1, row,
        STEAD_CHECK_WAY_PASTEURIZED);
  if (route->hold == CHECK_HOLD_TIME && !through)
    {
      const SteadLimitFact population[] = { { "population", "HSP", 0 }, END_OF_FACTS };

      stop (maker, STEAD_CHECK_STOP_EGGS_TIME, route->index, -1,
            row_of (maker, "time_control", "raw_eggs", "use", population), STEAD_CHECK_WAY_PASTEURIZED);
    }
}

static void
stop_meat_at_risk (CheckMaker       *maker,
                   const CheckRoute *route)
{
  const SteadLimitFact facts[] = { { "cooking", "undercooked", 0 }, { "menu", "childrens", 0 }, END_OF_FACTS };

  if (!maker->hsp)
    return;
  if (check_has_part (route->food, "sprouts") && !route->bought)
    stop (maker, STEAD_CHECK_STOP_SPROUTS, route->index, -1, row_of (maker, "sprout_use", "HSP", "action", NULL),
          STEAD_CHECK_WAY_LEAVE_OUT);
  if (g_str_equal (route->doneness, "full"))
    return;
  if (check_cooks (route, "meat_ground"))
    stop (maker, STEAD_CHECK_STOP_GROUND_MEAT, route->index, -1,
          row_of (maker, "advisory", "ground_meat", "action", facts), STEAD_CHECK_WAY_COOK_THROUGH);
  if (check_cooks (route, "fish_intact") || check_cooks (route, "fish_comminuted") || check_cooks (route, "meat_intact"))
    stop (maker, STEAD_CHECK_STOP_RAW_ANIMAL, route->index, -1,
          row_of (maker, "raw_animal_use", "HSP", "action", facts), STEAD_CHECK_WAY_COOK_THROUGH);
}

/* --- what stands too warm or too long ------------------------------------------------- */

static void
stop_unheld (CheckMaker       *maker,
             const CheckRoute *route)
{
  SteadLimitFact facts[] = { { "ph", NULL, route->food->ph }, { "aw", NULL, route->food->aw }, END_OF_FACTS };
  const SteadLimit *row;

  if (!route->unheld)
    return;
  row = row_of (maker, "tcs_table", "B", "class", facts);
  if (row == NULL || isnan (route->food->ph) || isnan (route->food->aw))
    row = row_of (maker, "tcs_name", check_cooks (route, "plant_food") ? "cooked_plant_food" : "cooked_animal_food",
                  "class", NULL);
  stop (maker, STEAD_CHECK_STOP_ROOM, route->index, -1, row, STEAD_CHECK_WAY_HOLD);
}

static void
stop_lots (CheckMaker       *maker,
           const CheckRoute *route)
{
  gboolean dated = route->tcs && route->form == STEAD_CHECK_FORM_DISH && route->hold != CHECK_HOLD_FROZEN;
  const SteadLimit *row = stead_limit_table_by_id (maker->table, "date-days-7");

  for (gsize i = 0; dated && i < route->food->n_lots; i++)
    {
      const SteadCheckLot *lot = &route->food->lots[i];
      const SteadFoodDays days = { &lot->made, 1, STEAD_DAY_NONE, STEAD_DAY_NONE, STEAD_DAY_NONE, STEAD_DAY_NONE };
      SteadDay last = STEAD_DAY_NONE;
      gboolean over;

      if (lot->made == STEAD_DAY_NONE || !stead_date_mark (maker->table, &days, &last, NULL))
        continue;
      over = maker->given->day > last || (lot->best_by != STEAD_DAY_NONE && maker->given->day > lot->best_by);
      if (over)
        stop (maker, STEAD_CHECK_STOP_LOT_OVER, route->index, (int) i, row, STEAD_CHECK_WAY_DISCARD);
    }
}

void
check_stops (CheckMaker       *maker,
             const CheckRoute *route)
{
  stop_jar (maker, route);
  stop_eggs_at_risk (maker, route);
  stop_meat_at_risk (maker, route);
  stop_unheld (maker, route);
  stop_lots (maker, route);
}

void
check_egg_stop (CheckMaker *maker)
{
  gboolean eggs = FALSE;

  for (gsize i = 0; i < maker->given->n_foods; i++)
    eggs |= maker->routes[i].shell_eggs;
  if (eggs && !check_ask_yes (maker, STEAD_CHECK_KEY_EGGS_COLD, -1, TRUE))
    stop (maker, STEAD_CHECK_STOP_EGGS_WARM, -1, -1, row_of (maker, "hold_cold", "raw_shell_eggs", "air_temp", NULL),
          STEAD_CHECK_WAY_DISCARD_EGGS);
}
