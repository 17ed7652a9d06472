/* stead-check-route.c - the way of one food from the door to the eater: what is known, what is asked. */
#include "config.h"

#include "core/stead-check-private.h"
#include "core/stead-food-kind.h"

#include <math.h>

/* --- words of foods ------------------------------------------------------------- */

gboolean
check_has_part (const SteadCheckFood *food,
                const char           *part)
{
  return food->parts != NULL && g_strv_contains (food->parts, part);
}

gboolean
check_cooks (const CheckRoute *route,
             const char       *word)
{
  for (guint i = 0; i < route->n_cooked; i++)
    if (g_str_equal (route->cooked[i], word))
      return TRUE;
  return FALSE;
}

static const char * const animals[] = {
  "raw_egg", "poultry", "stuffed_food", "meat_ground", "meat_intact", "whole_roast", "fish_intact",
  "fish_comminuted", NULL,
};

/* May be eaten with less heat by who wants to, after an advisory. */
static const char * const tender[] = {
  "raw_egg", "meat_ground", "meat_intact", "fish_intact", "fish_comminuted", NULL,
};

/* The first that is in it asks for the most heat. */
static const char * const cooked_words[] = {
  "poultry", "meat_ground", "raw_egg", "fish_intact", "meat_intact", "plant_food", "none", NULL,
};

gboolean
check_is_animal (const char *word)
{
  return g_strv_contains (animals, word);
}

gboolean
check_heats (const CheckRoute *route)
{
  return route->n_cooked > 0 && !g_str_equal (route->doneness, "raw");
}

static void
add_cooked (CheckRoute *route,
            const char *word)
{
  if (route->n_cooked < CHECK_COOKED_MOST && !check_cooks (route, word))
    route->cooked[route->n_cooked++] = word;
}

static gboolean
has_step (const SteadCheckFood *food,
          const char           *step)
{
  for (gsize i = 0; i < food->n_steps; i++)
    if (g_strcmp0 (food->steps[i].step, step) == 0)
      return TRUE;
  return FALSE;
}

static gboolean
cooks_tender (const CheckRoute *route)
{
  for (gsize i = 0; tender[i] != NULL; i++)
    if (check_cooks (route, tender[i]))
      return TRUE;
  return FALSE;
}

/* --- what is cooked ------------------------------------------------------------- */

static void
find_cooked (CheckMaker *maker,
             CheckRoute *route)
{
  const SteadCheckFood *food = route->food;
  const char *word;
  gboolean unsaid = FALSE, said = FALSE;

  for (gsize i = 0; i < food->n_steps; i++)
    said |= food->steps[i].step != NULL;
  for (gsize i = 0; i < food->n_steps; i++)
    if (g_strcmp0 (food->steps[i].step, "cook") == 0)
      {
        if (food->steps[i].food != NULL)
          add_cooked (route, food->steps[i].food);
        else
          unsaid = TRUE;
      }
  route->from_recipe = food->recipe && route->n_cooked > 0;
  for (gsize i = 0; !food->recipe && food->parts != NULL && food->parts[i] != NULL; i++)
    if (g_strv_contains (animals, food->parts[i]) || g_str_equal (food->parts[i], "plant_food"))
      add_cooked (route, food->parts[i]);
  /* A recipe that cooks nothing is taken at its word only if its steps are told in words of the tables. */
  if (route->n_cooked > 0 || food->no_cook || (food->recipe && said && !unsaid))
    return;
  word = check_ask (maker, STEAD_CHECK_KEY_COOKED, route->index, cooked_words, "poultry");
  if (!g_str_equal (word, "none"))
    add_cooked (route, word);
}

/* Whether eggs or meat are cooked through is a recipe's to say, where it says so. */
static void
find_doneness (CheckMaker *maker,
               CheckRoute *route)
{
  static const char * const words[] = { "full", "undercooked", "raw", NULL };
  gboolean raw_eggs_in = check_has_part (route->food, "raw_shell_eggs") && !check_cooks (route, "raw_egg");
  gboolean asks = route->form == STEAD_CHECK_FORM_DISH && (route->food->recipe ? raw_eggs_in : cooks_tender (route));

  route->doneness = "full";
  if (!asks || route->bought)
    return;
  route->doneness = check_ask (maker, STEAD_CHECK_KEY_DONENESS, route->index, words, "full");
  if (raw_eggs_in)
    add_cooked (route, "raw_egg");
}

/* --- how it is kept ------------------------------------------------------------- */

static CheckHold
hold_by_word (const char *word)
{
  static const struct { const char *word; CheckHold hold; } holds[] = {
    { "at_once", CHECK_HOLD_AT_ONCE }, { "hot", CHECK_HOLD_HOT }, { "cold", CHECK_HOLD_COLD },
    { "frozen", CHECK_HOLD_FROZEN }, { "time", CHECK_HOLD_TIME }, { "sealed_jar", CHECK_HOLD_SEALED },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (holds); i++)
    if (g_str_equal (holds[i].word, word))
      return holds[i].hold;
  return CHECK_HOLD_AT_ONCE;
}

static CheckHold
ask_hold (CheckMaker *maker,
          CheckRoute *route)
{
  static const char * const cooked[] = { "at_once", "hot", "cold", "time", NULL };
  static const char * const jar[] = { "at_once", "hot", "cold", "frozen", "time", "sealed_jar", NULL };
  static const char * const raw[] = { "cold", "frozen", NULL };
  static const char * const uncooked[] = { "at_once", "cold", "time", NULL };

  if (route->form == STEAD_CHECK_FORM_RAW_ANIMAL)
    return hold_by_word (check_ask (maker, STEAD_CHECK_KEY_HELD, route->index, raw, "cold"));
  if (route->food->jar)
    return hold_by_word (check_ask (maker, STEAD_CHECK_KEY_HELD, route->index, jar, "hot"));
  if (route->n_cooked == 0)
    return hold_by_word (check_ask (maker, STEAD_CHECK_KEY_HELD, route->index, uncooked, "cold"));
  return hold_by_word (check_ask (maker, STEAD_CHECK_KEY_HELD, route->index, cooked, "hot"));
}

static CheckHold
find_hold (CheckMaker *maker,
           CheckRoute *route)
{
  const SteadCheckFood *food = route->food;

  if (route->form == STEAD_CHECK_FORM_SHELL_EGGS)
    return CHECK_HOLD_COLD;
  if (route->form == STEAD_CHECK_FORM_WHOLE_PRODUCE || route->form == STEAD_CHECK_FORM_PACKAGE)
    return CHECK_HOLD_SHELF;
  if (route->form == STEAD_CHECK_FORM_BAKED)
    return food->kept == STEAD_CHECK_KEPT_FROZEN ? CHECK_HOLD_FROZEN : CHECK_HOLD_SHELF;
  switch (food->kept)
    {
    case STEAD_CHECK_KEPT_HOT: return CHECK_HOLD_HOT;
    case STEAD_CHECK_KEPT_COLD: return CHECK_HOLD_COLD;
    case STEAD_CHECK_KEPT_FROZEN: return CHECK_HOLD_FROZEN;
    case STEAD_CHECK_KEPT_ROOM: return food->sealed ? CHECK_HOLD_SEALED : CHECK_HOLD_SHELF;
    case STEAD_CHECK_KEPT_UNKNOWN:
    default: break;
    }
  if (has_step (food, "hold_hot"))
    return CHECK_HOLD_HOT;
  return has_step (food, "hold_cold") ? CHECK_HOLD_COLD : ask_hold (maker, route);
}

/* Open at room temperature: only what is dry or sour enough may stand so. */
static void
find_control (CheckMaker *maker,
              CheckRoute *route)
{
  static const char * const words[] = { "other", "dry", NULL };
  SteadTcsClass class;

  route->tcs = route->hold != CHECK_HOLD_SEALED && route->form != STEAD_CHECK_FORM_WHOLE_PRODUCE
               && route->form != STEAD_CHECK_FORM_PACKAGE;
  if (route->hold != CHECK_HOLD_SHELF || !route->tcs)
    return;
  if (route->form == STEAD_CHECK_FORM_BAKED)
    route->tcs = FALSE;
  else if (stead_tcs_class (maker->table, FALSE, route->food->aw, route->food->ph, &class, NULL))
    route->tcs = route->unheld = class != STEAD_TCS_NO;
  else
    {
      const char *word = check_ask (maker, STEAD_CHECK_KEY_SHELF, route->index, words, "other");

      route->tcs = route->unheld = g_str_equal (word, "other");
    }
}

/* Milk and cheese come cold and stay so. */
static gboolean
comes_cold (const SteadCheckFood *food)
{
  return check_has_part (food, "cold_tcs") && g_strv_length ((char **) food->parts) == 1;
}

/* Made the day before? */
static void
find_days (CheckMaker *maker,
           CheckRoute *route)
{
  static const char * const words[] = { "same_day", "reheated", NULL };
  gboolean hot = route->hold == CHECK_HOLD_HOT || route->hold == CHECK_HOLD_TIME || route->hold == CHECK_HOLD_AT_ONCE;
  gboolean cold = route->hold == CHECK_HOLD_COLD || route->hold == CHECK_HOLD_FROZEN;

  if (route->form != STEAD_CHECK_FORM_DISH)
    return;
  if (route->bought)
    {
      route->reheats = route->hold == CHECK_HOLD_HOT;
      return;
    }
  route->cools = has_step (route->food, "cool") || (check_heats (route) && cold);
  route->reheats = has_step (route->food, "reheat") || (route->cools && route->hold == CHECK_HOLD_HOT);
  if (check_heats (route) && hot && !route->cools && !route->reheats)
    route->reheats = g_str_equal (check_ask (maker, STEAD_CHECK_KEY_AHEAD, route->index, words, "same_day"), "reheated");
  route->cools |= route->reheats;
  if (!check_heats (route) && route->hold == CHECK_HOLD_COLD && !comes_cold (route->food))
    route->ambient = check_ask_yes (maker, STEAD_CHECK_KEY_AMBIENT, route->index, TRUE);
}

static void
find_details (CheckMaker *maker,
              CheckRoute *route)
{
  static const char * const egg_uses[] = { "pooled_or_held", "immediate_service", NULL };
  static const char * const thaws[] = { "none", "refrigeration", "running_water", "microwave", NULL };
  gboolean chilled = route->cools || route->hold == CHECK_HOLD_COLD;
  gboolean meat = FALSE;

  if (check_cooks (route, "raw_egg") && g_str_equal (route->doneness, "full"))
    {
      route->egg_use = "pooled_or_held";
      if (route->hold == CHECK_HOLD_AT_ONCE && !route->cools && route->form == STEAD_CHECK_FORM_DISH)
        route->egg_use = check_ask (maker, STEAD_CHECK_KEY_EGG_USE, route->index, egg_uses, "pooled_or_held");
    }
  if (route->form == STEAD_CHECK_FORM_DISH && route->tcs && chilled && route->hold != CHECK_HOLD_FROZEN)
    route->kept_long = check_ask_yes (maker, STEAD_CHECK_KEY_KEPT_LONG, route->index, TRUE);
  for (guint i = 0; i < route->n_cooked; i++)
    meat |= check_is_animal (route->cooked[i]) && !g_str_equal (route->cooked[i], "raw_egg");
  if (meat)
    route->thaw = check_ask (maker, STEAD_CHECK_KEY_THAW, route->index, thaws, "none");
}

void
check_route (CheckMaker *maker,
             int         index)
{
  static const char * const forms[] = {
    "dish", "baked", "shell_eggs", "raw_animal", "whole_produce", "package", NULL,
  };
  static const SteadCheckForm by_place[] = {
    STEAD_CHECK_FORM_DISH, STEAD_CHECK_FORM_BAKED, STEAD_CHECK_FORM_SHELL_EGGS, STEAD_CHECK_FORM_RAW_ANIMAL,
    STEAD_CHECK_FORM_WHOLE_PRODUCE, STEAD_CHECK_FORM_PACKAGE,
  };
  static const char * const made[] = { "here", "bought", NULL };
  CheckRoute *route = &maker->routes[index];
  gboolean made_here;

  *route = (CheckRoute) { .food = &maker->given->foods[index], .index = index, .form = maker->given->foods[index].form,
                          .doneness = "full" };
  if (route->form == STEAD_CHECK_FORM_UNKNOWN)
    {
      const char *word = check_ask (maker, STEAD_CHECK_KEY_FORM, index, forms, "dish");

      for (gsize i = 0; i < G_N_ELEMENTS (by_place); i++)
        if (g_str_equal (forms[i], word))
          route->form = by_place[i];
    }
  made_here = route->form == STEAD_CHECK_FORM_DISH || route->form == STEAD_CHECK_FORM_BAKED;
  if (route->form == STEAD_CHECK_FORM_DISH && !route->food->recipe && !route->food->no_cook)
    route->bought = g_str_equal (check_ask (maker, STEAD_CHECK_KEY_MADE, index, made, "here"), "bought");
  if (made_here && !route->bought)
    {
      find_cooked (maker, route);
      find_doneness (maker, route);
    }
  route->hold = find_hold (maker, route);
  find_control (maker, route);
  find_days (maker, route);
  find_details (maker, route);
  route->shell_eggs = !route->bought && (route->form == STEAD_CHECK_FORM_SHELL_EGGS || check_cooks (route, "raw_egg")
                                         || check_has_part (route->food, "raw_shell_eggs"));
  route->raw_animal = route->shell_eggs || route->form == STEAD_CHECK_FORM_RAW_ANIMAL;
  for (guint i = 0; i < route->n_cooked; i++)
    route->raw_animal |= check_is_animal (route->cooked[i]);
  route->produce = made_here && !route->bought
                   && (check_cooks (route, "plant_food") || check_has_part (route->food, "cut_tomatoes")
                       || check_has_part (route->food, "cut_leafy_greens") || check_has_part (route->food, "cut_melons")
                       || check_has_part (route->food, "plant_food") || check_has_part (route->food, "sprouts"));
}
