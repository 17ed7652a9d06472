/* stead-check-general.c - the lines of the whole kitchen and all who work in it. */
#include "config.h"

#include "core/stead-check-private.h"

#include <math.h>

#define END_OF_FACTS { NULL, NULL, 0 }

/* What is true of any food on the list. */
typedef struct
{
  gboolean kitchen;      /* something open is made or opened */
  gboolean ready;        /* … and eaten as it is */
  gboolean open_food;    /* sold without a pack */
  gboolean eggs;
  gboolean raw;
  gboolean produce;
  gboolean allergens;
  gboolean dry;
  gboolean served_hot;
} Whole;

static Whole
whole_of (const CheckMaker *maker)
{
  Whole whole = { 0 };

  for (gsize i = 0; i < maker->given->n_foods; i++)
    {
      const CheckRoute *route = &maker->routes[i];
      gboolean dish = route->form == STEAD_CHECK_FORM_DISH || route->form == STEAD_CHECK_FORM_BAKED;

      whole.kitchen |= dish;
      whole.ready |= dish;
      whole.open_food |= dish && !route->food->sealed && route->hold != CHECK_HOLD_SEALED;
      whole.eggs |= route->shell_eggs;
      whole.raw |= route->raw_animal;
      whole.produce |= route->produce;
      whole.allergens |= route->food->allergens != NULL && route->food->allergens[0] != NULL;
      whole.dry |= route->form == STEAD_CHECK_FORM_PACKAGE || route->form == STEAD_CHECK_FORM_WHOLE_PRODUCE || dish;
      whole.served_hot |= route->form == STEAD_CHECK_FORM_DISH && route->hold == CHECK_HOLD_HOT;
    }
  return whole;
}

/* --- people ----------------------------------------------------------------------- */

static void
add_people (CheckMaker  *maker,
            const Whole *whole)
{
  const SteadLimitFact place[] = { { "state", maker->given->state != NULL ? maker->given->state : "", 0 },
                                   END_OF_FACTS };
  const SteadLimit *water = stead_limit_table_find (maker->table, "hands", "sink", "water_temp", place, NULL);
  SteadCheckLine *line;
  GPtrArray *hands;

  line = check_add (maker, STEAD_CHECK_LINE_ILL, -1, maker->hsp ? "HSP" : "general",
                    check_ids (maker, "ill-vomiting", "ill-vomiting-24", "ill-jaundice",
                               maker->hsp ? "ill-throat-hsp" : "ill-throat",
                               maker->hsp ? "ill-diagnosis-hsp" : "ill-diagnosis", "ill-norovirus-48", "ill-stec-168",
                               NULL));
  if (line != NULL)
    line->all = TRUE;
  hands = check_ids (maker, "hands-time-20", NULL);
  if (water != NULL)
    g_ptr_array_add (hands, (gpointer) water);
  line = check_add (maker, STEAD_CHECK_LINE_HANDS, -1, "sink", hands);
  if (line != NULL)
    line->all = TRUE;
  if (whole->ready)
    check_add (maker, STEAD_CHECK_LINE_BARE_HANDS, -1, "ready_to_eat", check_ids (maker, "hands-bare", NULL));
}

/* --- the thermometer --------------------------------------------------------------- */

static gboolean
needs_probe (const CheckMaker *maker)
{
  for (guint i = 0; i < maker->plan->lines->len; i++)
    if (((const SteadCheckLine *) maker->plan->lines->pdata[i])->tool == STEAD_CHECK_TOOL_PROBE)
      return TRUE;
  return FALSE;
}

static void
add_thermometer (CheckMaker *maker)
{
  static const char * const scales[] = { "F_only", "C_only", "dual", NULL };
  const char *scale;
  SteadCheckLine *line;
  SteadLimitFact facts[] = { { "scale", NULL, 0 }, END_OF_FACTS };
  const SteadLimit *error, *step;
  GPtrArray *rows;

  if (!needs_probe (maker))
    return;
  scale = check_ask (maker, STEAD_CHECK_KEY_THERMOMETER, -1, scales, "dual");
  facts[0].word = scale;
  error = stead_limit_table_find (maker->table, "thermometer", "food", "error", facts, NULL);
  step = stead_limit_table_find (maker->table, "thermometer", "food", "step", facts, NULL);
  rows = check_ids (maker, "thermometer-ice-32", NULL);
  if (error != NULL)
    g_ptr_array_add (rows, (gpointer) error);
  if (step != NULL)
    g_ptr_array_add (rows, (gpointer) step);
  line = check_add (maker, STEAD_CHECK_LINE_THERMOMETER_ICE, -1, scale, rows);
  if (line != NULL)
    {
      line->all = TRUE;
      line->measure = "ice_bath";
      line->unit = "F";
    }
  rows = check_ids (maker, "boiling-sea-212", "boiling-drop-1.8", NULL);
  if (error != NULL)
    g_ptr_array_add (rows, (gpointer) error);
  line = check_add (maker, STEAD_CHECK_LINE_THERMOMETER_BOIL, -1, scale, rows);
  if (line != NULL)
    {
      line->all = TRUE;
      line->measure = "boiling_water";
      line->unit = "F";
    }
}

/* --- surfaces and dishes ------------------------------------------------------------- */

/* Of chlorine any one strength is enough, in water warm enough for it. */
static void
add_sanitizer (CheckMaker *maker)
{
  static const char * const kinds[] = { "chlorine", "iodine", "quat", "hot_water", NULL };
  static const char * const phs[] = { "above_8", "up_to_8", NULL };
  const char *kind = check_ask (maker, STEAD_CHECK_KEY_SANITIZER, -1, kinds, "chlorine");
  SteadCheckLine *line;
  gboolean soft;

  if (g_str_equal (kind, "hot_water"))
    {
      check_add (maker, STEAD_CHECK_LINE_SANITIZER, -1, kind, check_ids (maker, "wash-hand-hot-171", NULL));
      return;
    }
  if (g_str_equal (kind, "chlorine"))
    {
      soft = g_str_equal (check_ask (maker, STEAD_CHECK_KEY_WATER_PH, -1, phs, "above_8"), "up_to_8");
      line = check_add (maker, STEAD_CHECK_LINE_SANITIZER, -1, kind,
                        check_ids (maker, "chlorine-100", soft ? "chlorine-50-ph8" : "chlorine-50-ph10", "chlorine-25",
                                   NULL));
    }
  else if (g_str_equal (kind, "iodine"))
    line = check_add (maker, STEAD_CHECK_LINE_SANITIZER, -1, kind,
                      check_ids (maker, "iodine-temp", "iodine-least", "iodine-most", "iodine-ph", NULL));
  else
    line = check_add (maker, STEAD_CHECK_LINE_SANITIZER, -1, kind, check_ids (maker, "quat-temp", "quat-hardness", NULL));
  if (line != NULL)
    line->all = !g_str_equal (kind, "chlorine");
  check_add (maker, STEAD_CHECK_LINE_SANITIZER_CONTACT, -1, kind,
             g_str_equal (kind, "chlorine") ? check_ids (maker, "chlorine-contact-10", NULL)
             : g_str_equal (kind, "iodine") ? check_ids (maker, "iodine-contact", NULL)
                                            : check_ids (maker, "quat-contact", NULL));
}

static void
add_washing (CheckMaker *maker)
{
  static const char * const ways[] = { "by_hand", "machine", NULL };
  const SteadLimitFact warm[] = { { "room_temp_f", NULL, 75 }, END_OF_FACTS };

  /* A kitchen is above the last step of the chart; a cold room has longer. */
  check_add (maker, STEAD_CHECK_LINE_SURFACES, -1, "food_contact_surface",
             check_rows (maker, "clean", "food_contact_surface", "interval", warm));
  if (g_str_equal (check_ask (maker, STEAD_CHECK_KEY_WASH, -1, ways, "by_hand"), "by_hand"))
    check_add (maker, STEAD_CHECK_LINE_WASH_HAND, -1, "manual", check_ids (maker, "wash-hand-110", NULL));
  else
    check_add (maker, STEAD_CHECK_LINE_WASH_MACHINE, -1, "machine", check_ids (maker, "wash-machine-surface-160", NULL));
}

/* --- allergens ------------------------------------------------------------------------ */

/* Each allergen that any food has, once. */
static GPtrArray *
allergen_rows (CheckMaker *maker)
{
  GPtrArray *rows = check_ids (maker, "separate-allergens", NULL);
  const SteadLimitFact facts[] = { { "label_day", NULL, 99999999 }, END_OF_FACTS };

  for (gsize i = 0; i < maker->given->n_foods; i++)
    {
      const char * const *names = maker->given->foods[i].allergens;

      for (gsize a = 0; names != NULL && names[a] != NULL; a++)
        {
          const SteadLimit *row = stead_limit_table_find (maker->table, "allergen", names[a], "declare", facts, NULL);

          if (row != NULL && !g_ptr_array_find (rows, row, NULL))
            g_ptr_array_add (rows, (gpointer) row);
        }
    }
  return rows;
}

static void
add_allergens (CheckMaker  *maker,
               const Whole *whole)
{
  SteadCheckLine *line;

  if (!whole->allergens)
    return;
  line = check_add (maker, STEAD_CHECK_LINE_ALLERGENS, -1, "allergens", allergen_rows (maker));
  if (line != NULL)
    line->all = TRUE;
  if (whole->open_food)
    check_add (maker, STEAD_CHECK_LINE_ALLERGEN_NOTICE, -1, "unpackaged",
               check_rows (maker, "allergen_notice", "unpackaged", NULL, NULL));
}

void
check_general_lines (CheckMaker *maker)
{
  Whole whole = whole_of (maker);
  SteadCheckLine *line;

  add_people (maker, &whole);
  if (whole.kitchen)
    {
      add_sanitizer (maker);
      add_washing (maker);
    }
  if (whole.raw)
    check_add (maker, STEAD_CHECK_LINE_SEPARATE_RAW, -1, "raw_animal_food", check_ids (maker, "separate-raw", NULL));
  add_allergens (maker, &whole);
  if (whole.dry)
    check_add (maker, STEAD_CHECK_LINE_DRY_STORE, -1, "dry_store", check_rows (maker, "store", "dry_store", NULL, NULL));
  if (whole.produce)
    check_add (maker, STEAD_CHECK_LINE_PRODUCE_WASH, -1, "fruit_and_vegetables", check_ids (maker, "produce-wash", NULL));
  if (whole.eggs)
    {
      line = check_add (maker, STEAD_CHECK_LINE_EGGS_COLD, -1, "raw_shell_eggs",
                        check_rows (maker, "hold_cold", "raw_shell_eggs", "air_temp", NULL));
      if (line != NULL)
        line->all = TRUE;
      check_add (maker, STEAD_CHECK_LINE_EGGS_SOUND, -1, "raw_shell_eggs", check_ids (maker, "receive-eggs-grade", NULL));
    }
  if (whole.served_hot)
    check_add (maker, STEAD_CHECK_LINE_UTENSILS, -1, "water", check_rows (maker, "hold_utensils", "water", NULL, NULL));
  add_thermometer (maker);
}
