/* stead-check-common.c - foods that a menu names without a recipe, and allergens by name. */
#include "config.h"

#include "answer/stead-check-menu-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define MOST_WORDS 4

/* What is usually in it.  All else is asked. */
typedef struct
{
  const char     *names;                /* parts of names, with | between; translated as a list */
  SteadCheckForm  form;
  const char     *parts[MOST_WORDS];
  const char     *allergens[MOST_WORDS];
  gboolean        no_cook, jar, tomato;
} Common;

#define DISH STEAD_CHECK_FORM_DISH

static const Common commons[] = {
  /* Translators: in all lists like this: parts of names of foods, in lower case, with | between. */
  { N_("breakfast bowl|breakfast burrito|breakfast sandwich"), DISH, { "raw_egg", "plant_food" }, { "egg" }, FALSE, FALSE, FALSE },
  { N_("scrambled egg|fried egg|poached egg|omelet|frittata|quiche|egg bake"), DISH, { "raw_egg" }, { "egg" }, FALSE, FALSE, FALSE },
  { N_("boiled egg|hard-cooked egg|deviled egg|egg salad"), DISH, { "raw_egg" }, { "egg" }, FALSE, FALSE, FALSE },
  { N_("mayonnaise|hollandaise|eggnog|mousse"), DISH, { "raw_egg" }, { "egg", "milk" }, FALSE, FALSE, FALSE },
  { N_("pancake|waffle|french toast"), DISH, { "raw_egg" }, { "egg", "milk", "wheat" }, FALSE, FALSE, FALSE },
  { N_("eggs|fresh egg|shell egg|carton of egg|dozen egg"), STEAD_CHECK_FORM_SHELL_EGGS, { NULL }, { "egg" }, FALSE, FALSE, FALSE },
  { N_("muffin|bread|cookie|biscuit|scone|brownie|cake|dinner roll"), STEAD_CHECK_FORM_BAKED, { "raw_egg" },
    { "egg", "milk", "wheat" }, FALSE, FALSE, FALSE },
  { N_("tomato sauce|pasta sauce|marinara|salsa|ketchup"), DISH, { "plant_food" }, { NULL }, FALSE, TRUE, TRUE },
  { N_("pickle|relish|jam|jelly|apple butter|apple sauce"), DISH, { "plant_food" }, { NULL }, FALSE, TRUE, FALSE },
  { N_("rice|beans|potato|pasta|noodle|vegetables|oatmeal|corn on the cob"), DISH, { "plant_food" }, { NULL }, FALSE, FALSE, FALSE },
  { N_("soup|chili|stew|casserole"), DISH, { NULL }, { NULL }, FALSE, FALSE, FALSE },
  { N_("burger|meatball|meatloaf|meat loaf|taco|sausage"), DISH, { "meat_ground" }, { NULL }, FALSE, FALSE, FALSE },
  { N_("chicken|turkey|poultry"), DISH, { "poultry" }, { NULL }, FALSE, FALSE, FALSE },
  { N_("pork|beef|steak|lamb|brisket"), DISH, { "meat_intact" }, { NULL }, FALSE, FALSE, FALSE },
  { N_("fish fry|fried fish|grilled fish|baked fish|fish taco|fried catfish|grilled trout|sushi|ceviche"), DISH,
    { "fish_intact" }, { "fish" }, FALSE, FALSE, FALSE },
  { N_("fish|catfish|tilapia|trout|fillet"), STEAD_CHECK_FORM_RAW_ANIMAL, { NULL }, { "fish" }, FALSE, FALSE, FALSE },
  { N_("salad|bruschetta|pico de gallo|tomato slices"), DISH, { "cut_leafy_greens", "cut_tomatoes" }, { NULL }, TRUE, FALSE, FALSE },
  { N_("fruit salad|cut melon|melon slices"), DISH, { "cut_melons" }, { NULL }, TRUE, FALSE, FALSE },
  { N_("sprouts"), DISH, { "sprouts" }, { NULL }, TRUE, FALSE, FALSE },
  { N_("sandwich|wrap"), DISH, { "cut_tomatoes", "cold_tcs" }, { "wheat" }, TRUE, FALSE, FALSE },
  { N_("milk|cheese|yogurt"), DISH, { "cold_tcs" }, { "milk" }, TRUE, FALSE, FALSE },
  { N_("tomatoes|apples|squash|pumpkin|cucumber|peppers|onions|herbs|berries|carrots|lettuce head|melons"),
    STEAD_CHECK_FORM_WHOLE_PRODUCE, { NULL }, { NULL }, FALSE, FALSE, FALSE },
  { N_("honey|popcorn|chips|granola bar|candy|coffee|tea bag|bottled water"), STEAD_CHECK_FORM_PACKAGE, { NULL }, { NULL },
    FALSE, FALSE, FALSE },
};

static const struct { const char *names, *word; } allergens[] = {
  /* Translators: in all lists like this: names of an allergen, in lower case, with | between. */
  { N_("milk|dairy|butter|cream|cheese|lactose"), "milk" },
  { N_("egg|eggs"), "egg" },
  { N_("crustacean|shellfish|shrimp|crab|lobster|crayfish"), "crustacean_shellfish" },
  { N_("fish"), "fish" },
  { N_("peanut|groundnut"), "peanuts" },
  { N_("tree nut|nuts|almond|walnut|pecan|cashew|hazelnut|pistachio"), "tree_nuts" },
  { N_("wheat|gluten|flour"), "wheat" },
  { N_("soy|tofu"), "soybeans" },
  { N_("sesame|tahini"), "sesame" },
};

/* The length of the longest name of a list that stands in @folded, at the beginning of a word. */
static gsize
longest_in (const char *folded,
            const char *list)
{
  g_auto(GStrv) names = g_strsplit (list, "|", -1);
  gsize longest = 0;

  for (gsize i = 0; names[i] != NULL; i++)
    {
      const char *at = names[i][0] != '\0' ? strstr (folded, names[i]) : NULL;

      if (at != NULL && (at == folded || !g_unichar_isalpha (g_utf8_get_char (g_utf8_prev_char (at)))))
        longest = MAX (longest, strlen (names[i]));
    }
  return longest;
}

static gsize
fits (const char *folded,
      const char *list)
{
  gsize english = longest_in (folded, list);
  gsize own = longest_in (folded, _(list));

  return MAX (english, own);
}

gboolean
stead_check_common_find (const char     *name,
                         SteadCheckFood *out)
{
  g_autofree char *folded = g_utf8_casefold (name, -1);
  const Common *best = NULL;
  gsize longest = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (commons); i++)
    {
      gsize length = fits (folded, commons[i].names);

      if (length > longest)
        {
          longest = length;
          best = &commons[i];
        }
    }
  if (best == NULL)
    return FALSE;
  *out = (SteadCheckFood) {
    .form = best->form, .parts = best->parts[0] != NULL ? best->parts : NULL, .no_cook = best->no_cook,
    .allergens = best->allergens[0] != NULL ? best->allergens : NULL, .kept = STEAD_CHECK_KEPT_UNKNOWN,
    .jar = best->jar, .tomato = best->tomato, .ph = NAN, .aw = NAN,
  };
  return TRUE;
}

const char *
stead_check_common_allergen (const char *name)
{
  g_autofree char *folded = g_utf8_casefold (name, -1);

  for (gsize i = 0; i < G_N_ELEMENTS (allergens); i++)
    if (fits (folded, allergens[i].names) > 0)
      return allergens[i].word;
  return NULL;
}
