/* stead-check-food.c - the lines of one food. */
#include "config.h"

#include "core/stead-check-private.h"

#include <math.h>

#define FACT_WORD(name, word) { name, word, 0 }
#define END_OF_FACTS { NULL, NULL, 0 }

/* --- the recipe's own limit ------------------------------------------------------ */

/* Of the recipe's step with this word, and this food if it names one. */
static void
add_own (SteadCheckLine       *line,
         const SteadCheckFood *food,
         const char           *step,
         const char           *subject)
{
  for (gsize i = 0; line != NULL && i < food->n_steps; i++)
    {
      const SteadCheckStep *own = &food->steps[i];

      if (g_strcmp0 (own->step, step) != 0 || (own->food != NULL && subject != NULL
                                               && !g_str_equal (own->food, subject)))
        continue;
      line->own_least_c = own->least_c;
      line->own_most_c = own->most_c;
      line->own_hold_s = own->hold_s;
      return;
    }
}

/* --- coming in ------------------------------------------------------------------- */

static void
add_received (CheckMaker       *maker,
              const CheckRoute *route)
{
  gboolean meat = FALSE;

  for (guint i = 0; i < route->n_cooked; i++)
    meat |= check_is_animal (route->cooked[i]) && !g_str_equal (route->cooked[i], "raw_egg");
  if (meat || check_has_part (route->food, "cold_tcs") || (route->bought && route->tcs
                                                           && route->hold != CHECK_HOLD_FROZEN))
    check_add (maker, STEAD_CHECK_LINE_RECEIVE_COLD, route->index, "cold_tcs",
               check_rows (maker, "receive", "cold_tcs", "food_temp", NULL));
  if (route->bought && route->hold == CHECK_HOLD_FROZEN)
    check_add (maker, STEAD_CHECK_LINE_RECEIVE_FROZEN, route->index, "frozen_food",
               check_rows (maker, "receive", "frozen_food", "state", NULL));
}

static void
add_thawing (CheckMaker       *maker,
             const CheckRoute *route)
{
  const SteadLimitFact facts[] = { FACT_WORD ("method", route->thaw), END_OF_FACTS };
  gboolean fish = check_cooks (route, "fish_intact");

  if (route->thaw == NULL || g_str_equal (route->thaw, "none"))
    return;
  if (g_str_equal (route->thaw, "refrigeration"))
    {
      check_add (maker, STEAD_CHECK_LINE_THAW_COLD, route->index, "raw_animal",
                 check_rows (maker, "thaw", "raw_animal", "food_temp", facts));
      if (fish)
        check_add (maker, STEAD_CHECK_LINE_THAW_MICROWAVE, route->index, "vacuum_packed_fish",
                   check_rows (maker, "thaw", "vacuum_packed_fish", "package_opened", facts));
    }
  else if (g_str_equal (route->thaw, "running_water"))
    {
      check_add (maker, STEAD_CHECK_LINE_THAW_WATER, route->index, "raw_animal",
                 check_rows (maker, "thaw", "raw_animal", "water_temp", facts));
      check_add (maker, STEAD_CHECK_LINE_THAW_WATER_TIME, route->index, "raw_animal",
                 check_rows (maker, "thaw", "raw_animal", "above_41F", facts));
    }
  else
    check_add (maker, STEAD_CHECK_LINE_THAW_MICROWAVE, route->index, "raw_animal",
               check_rows (maker, "thaw", "raw_animal", "next_step", facts));
}

/* --- cooking --------------------------------------------------------------------- */

static gboolean
may_be_undercooked (const CheckRoute *route,
                    const char       *word)
{
  return !g_str_equal (route->doneness, "full") && !g_str_equal (word, "poultry") && !g_str_equal (word, "stuffed_food")
         && !g_str_equal (word, "plant_food") && !g_str_equal (word, "whole_roast");
}

static void
add_cook (CheckMaker       *maker,
          const CheckRoute *route,
          const char       *word)
{
  gboolean egg = g_str_equal (word, "raw_egg");
  const char *use = egg ? route->egg_use : "hot_holding";
  const SteadLimitFact facts[] = { FACT_WORD ("use", use), END_OF_FACTS };
  SteadCheckLine *line;

  /* Plant food that is not held hot has no limit of its own. */
  if (may_be_undercooked (route, word)
      || (g_str_equal (word, "plant_food") && route->hold != CHECK_HOLD_HOT && route->hold != CHECK_HOLD_TIME))
    return;
  line = check_add (maker, STEAD_CHECK_LINE_COOK, route->index, word,
                    check_rows (maker, "cook", word, "food_temp", facts));
  if (line == NULL)
    return;
  line->use = egg ? g_string_chunk_insert_const (maker->plan->strings, use) : NULL;
  add_own (line, route->food, "cook", word);
}

/* The microwave asks for more; whether there is one is asked once. */
static void
add_microwave (CheckMaker       *maker,
               const CheckRoute *route)
{
  for (guint i = 0; i < route->n_cooked; i++)
    {
      const char *word = route->cooked[i];

      if (!check_is_animal (word) || may_be_undercooked (route, word)
          || !check_ask_yes (maker, STEAD_CHECK_KEY_MICROWAVE, -1, FALSE))
        continue;
      check_add (maker, STEAD_CHECK_LINE_COOK_MICROWAVE, route->index, word,
                 check_rows (maker, "cook_microwave", word, "food_temp", NULL));
      check_add (maker, STEAD_CHECK_LINE_STAND, route->index, word,
                 check_rows (maker, "cook_microwave", word, "stand_covered", NULL));
    }
}

static void
add_undercooked (CheckMaker       *maker,
                 const CheckRoute *route)
{
  static const struct { const char *word, *subject; } names[] = {
    { "raw_egg", "egg" }, { "meat_ground", "ground_meat" }, { "meat_intact", "meat" }, { "fish_intact", "fish" },
    { "fish_comminuted", "fish" },
  };
  const SteadLimitFact facts[] = { FACT_WORD ("cooking", "undercooked"), END_OF_FACTS };
  gboolean fish = check_cooks (route, "fish_intact") || check_cooks (route, "fish_comminuted");

  if (g_str_equal (route->doneness, "full"))
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    if (check_cooks (route, names[i].word))
      check_add (maker, STEAD_CHECK_LINE_ADVISORY, route->index, names[i].subject,
                 check_rows (maker, "advisory", names[i].subject, "action", facts));
  if (!fish)
    return;
  {
    static const char * const feeds[] = { "other", "pellets", NULL };
    const char *feed = check_ask (maker, STEAD_CHECK_KEY_FISH_FEED, route->index, feeds, "other");

    if (g_str_equal (feed, "pellets"))
      check_add (maker, STEAD_CHECK_LINE_FISH_RECORDS, route->index, "fish",
                 check_ids (maker, "freeze-fish-records-90", "freeze-fish-pellets", NULL));
    else
      check_add (maker, STEAD_CHECK_LINE_FISH_FREEZING, route->index, "fish",
                 check_ids (maker, "freeze-fish-168h", "freeze-fish-15h", "freeze-fish-24h", NULL));
  }
}

/* --- cooling, heating again -------------------------------------------------------- */

static void
add_cool (CheckMaker       *maker,
          const CheckRoute *route,
          const char       *start)
{
  const char *rule = maker->given->cooling != NULL ? maker->given->cooling : "food_code";
  static const char * const stages[] = { "stage_1", "stage_2", "total" };
  GPtrArray *rows = g_ptr_array_new ();
  SteadCheckLine *line;

  for (gsize i = 0; i < G_N_ELEMENTS (stages); i++)
    {
      const SteadLimitFact facts[] = { FACT_WORD ("rule", rule), FACT_WORD ("stage", stages[i]), END_OF_FACTS };
      const SteadLimit *row = stead_limit_table_find (maker->table, "cool", start, "food_temp", facts, NULL);

      if (row != NULL)
        g_ptr_array_add (rows, (gpointer) row);
    }
  line = check_add (maker, g_str_equal (start, "cooked") ? STEAD_CHECK_LINE_COOL : STEAD_CHECK_LINE_CHILL_PREPARED,
                    route->index, start, rows);
  if (line == NULL)
    return;
  line->all = TRUE;
  add_own (line, route->food, "cool", NULL);
}

static void
add_reheat (CheckMaker       *maker,
            const CheckRoute *route)
{
  const char *subject = route->bought ? "commercial_package" : "cooked_on_site";
  const SteadLimitFact facts[] = { FACT_WORD ("purpose", "hot_holding"), END_OF_FACTS };
  SteadCheckLine *line;

  /* For one order that is served at once there is no limit. */
  if (!route->reheats || route->hold == CHECK_HOLD_AT_ONCE)
    return;
  line = check_add (maker, STEAD_CHECK_LINE_REHEAT, route->index, subject,
                    check_rows (maker, "reheat", subject, "food_temp", facts));
  add_own (line, route->food, "reheat", NULL);
  check_add (maker, STEAD_CHECK_LINE_REHEAT_TIME, route->index, subject,
             check_rows (maker, "reheat", subject, "elapsed", facts));
  if (!check_ask_yes (maker, STEAD_CHECK_KEY_MICROWAVE, -1, FALSE))
    return;
  check_add (maker, STEAD_CHECK_LINE_REHEAT_MICROWAVE, route->index, subject,
             check_rows (maker, "reheat_microwave", subject, "food_temp", facts));
  check_add (maker, STEAD_CHECK_LINE_REHEAT_STAND, route->index, subject,
             check_rows (maker, "reheat_microwave", subject, "stand_covered", facts));
}

/* --- holding ---------------------------------------------------------------------- */

static const char *
time_subject (const CheckRoute *route)
{
  if (route->shell_eggs && !g_str_equal (route->doneness, "full"))
    return "raw_eggs";
  if (!check_heats (route) && (check_has_part (route->food, "cut_tomatoes") || check_has_part (route->food, "cut_melons")
                               || check_has_part (route->food, "cut_leafy_greens")))
    return "cut_produce_or_opened_sealed";
  return "tcs";
}

static void
add_time (CheckMaker       *maker,
          const CheckRoute *route)
{
  static const char * const options[] = { "4", "6", NULL };
  gboolean hot = check_heats (route) || route->bought;
  const char *subject = time_subject (route);
  /* Six hours are for cold food only. */
  const char *option = hot ? "4" : check_ask (maker, STEAD_CHECK_KEY_TIME_OPTION, route->index, options, "4");
  const SteadLimitFact facts[] = { { "option_h", NULL, g_ascii_strtod (option, NULL) }, END_OF_FACTS };

  check_add (maker, STEAD_CHECK_LINE_TIME_START, route->index, subject,
             check_rows (maker, "time_control", subject, hot ? "start_hot" : "start_cold", facts));
  check_add (maker, STEAD_CHECK_LINE_TIME_DURING, route->index, subject,
             check_rows (maker, "time_control", subject, "food_temp", facts));
  check_add (maker, STEAD_CHECK_LINE_TIME_END, route->index, subject,
             check_rows (maker, "time_control", subject, "elapsed", facts));
}

static gboolean
carried (CheckMaker *maker)
{
  return check_ask_yes (maker, STEAD_CHECK_KEY_CARRIED, -1, TRUE);
}

static void
add_hold (CheckMaker       *maker,
          const CheckRoute *route)
{
  SteadCheckLine *line = NULL;

  if (!route->tcs || route->form == STEAD_CHECK_FORM_SHELL_EGGS)
    return;
  switch (route->hold)
    {
    case CHECK_HOLD_HOT:
      line = check_add (maker, STEAD_CHECK_LINE_HOLD_HOT, route->index, "tcs",
                        check_rows (maker, "hold_hot", "tcs", "food_temp", NULL));
      add_own (line, route->food, "hold_hot", NULL);
      if (carried (maker))
        check_add (maker, STEAD_CHECK_LINE_CARRY_HOT, route->index, "tcs",
                   check_rows (maker, "hold_hot", "tcs", "food_temp", NULL));
      break;
    case CHECK_HOLD_COLD:
      line = check_add (maker, STEAD_CHECK_LINE_HOLD_COLD, route->index, "tcs",
                        check_rows (maker, "hold_cold", "tcs", "food_temp", NULL));
      add_own (line, route->food, "hold_cold", NULL);
      if (carried (maker))
        check_add (maker, STEAD_CHECK_LINE_CARRY_COLD, route->index, "tcs",
                   check_rows (maker, "hold_cold", "tcs", "food_temp", NULL));
      break;
    case CHECK_HOLD_FROZEN:
      check_add (maker, STEAD_CHECK_LINE_HOLD_FROZEN, route->index, "frozen_food",
                 check_rows (maker, "hold_frozen", "frozen_food", "state", NULL));
      if (carried (maker))
        check_add (maker, STEAD_CHECK_LINE_CARRY_FROZEN, route->index, "frozen_food",
                   check_rows (maker, "hold_frozen", "frozen_food", "state", NULL));
      break;
    case CHECK_HOLD_TIME:
      add_time (maker, route);
      break;
    case CHECK_HOLD_AT_ONCE:
    case CHECK_HOLD_SEALED:
    case CHECK_HOLD_SHELF:
    default:
      break;
    }
}

/* What stands in the cold between making and heating again must be cold too. */
static void
add_cold_between (CheckMaker       *maker,
                  const CheckRoute *route)
{
  if (route->cools && route->hold != CHECK_HOLD_COLD && route->hold != CHECK_HOLD_FROZEN)
    check_add (maker, STEAD_CHECK_LINE_HOLD_COLD, route->index, "tcs",
               check_rows (maker, "hold_cold", "tcs", "food_temp", NULL));
  if (route->kept_long)
    check_add (maker, STEAD_CHECK_LINE_DATE_MARK, route->index, "ready_to_eat_tcs",
               check_ids (maker, "date-days-7", "date-needed-24h", NULL));
}

/* --- jars, cartons, leftovers -------------------------------------------------------- */

static void
add_jar (CheckMaker       *maker,
         const CheckRoute *route)
{
  SteadCheckLine *line;

  if (route->hold != CHECK_HOLD_SEALED)
    return;
  line = check_add (maker, STEAD_CHECK_LINE_JAR_PH, route->index, "any",
                    check_rows (maker, "acidified", "any", "ph", NULL));
  if (line != NULL)
    line->all = TRUE;
  check_add (maker, STEAD_CHECK_LINE_JAR_PROCESS, route->index, "any",
             check_rows (maker, "acidified", "any", "scheduled_process", NULL));
  check_add (maker, STEAD_CHECK_LINE_JAR_RECORDS, route->index, "any",
             check_rows (maker, "acidified", "any", "records", NULL));
}

static void
add_leftovers (CheckMaker       *maker,
               const CheckRoute *route)
{
  if (route->form != STEAD_CHECK_FORM_DISH || !route->tcs)
    return;
  check_add (maker, STEAD_CHECK_LINE_LEFTOVERS, route->index,
             route->hold == CHECK_HOLD_HOT ? "hot" : route->hold == CHECK_HOLD_TIME ? "time" : "served",
             route->hold == CHECK_HOLD_HOT ? check_ids (maker, "cool-stage-1", "cool-total", "leftovers-served", NULL)
             : route->hold == CHECK_HOLD_TIME ? check_ids (maker, "correct-time", "leftovers-served", NULL)
             : check_ids (maker, "leftovers-served", NULL));
}

/* Of eggs in the shell the air counts, not the egg. */
static void
add_eggs (CheckMaker       *maker,
          const CheckRoute *route)
{
  SteadCheckLine *line;

  check_add (maker, STEAD_CHECK_LINE_EGG_CARTON, route->index, "carton",
             check_rows (maker, "egg_label", "carton", "statement", NULL));
  if (!carried (maker))
    return;
  line = check_add (maker, STEAD_CHECK_LINE_CARRY_COLD, route->index, "raw_shell_eggs",
                    check_rows (maker, "hold_cold", "raw_shell_eggs", "air_temp", NULL));
  if (line != NULL)
    line->tool = STEAD_CHECK_TOOL_AIR;
}

void
check_food_lines (CheckMaker       *maker,
                  const CheckRoute *route)
{
  add_received (maker, route);
  add_thawing (maker, route);
  for (guint i = 0; i < route->n_cooked; i++)
    add_cook (maker, route, route->cooked[i]);
  add_microwave (maker, route);
  add_undercooked (maker, route);
  if (route->ambient)
    add_cool (maker, route, "ambient_ingredients");
  if (route->cools)
    add_cool (maker, route, "cooked");
  add_reheat (maker, route);
  add_cold_between (maker, route);
  add_hold (maker, route);
  add_jar (maker, route);
  add_leftovers (maker, route);
  if (route->form == STEAD_CHECK_FORM_SHELL_EGGS)
    add_eggs (maker, route);
}
