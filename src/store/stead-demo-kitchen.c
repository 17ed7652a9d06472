/* stead-demo-kitchen.c - the demo farm's kitchen: what is written down of its recipes,
 * what is bought for them, and each batch from its plan to its lot.
 *
 * A batch is one action here.  It is planned, its lots are taken first-expiring-first,
 * each step is done and read by somebody, and what comes out goes into a lot; hot food is
 * sold the same morning, what is held cold over the days that it keeps.  Chance comes
 * from a generator of its own, so that what happens here leaves the rest as it is.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#include "store/stead-cash-repo.h"
#include "store/stead-count-repo.h"
#include "store/stead-demo-writer-private.h"
#include "store/stead-kitchen-repo.h"

/* The kitchen day of the week, Monday being 1. */
#define KITCHEN_WEEKDAY 5

struct _SteadDemoKitchen
{
  gsl_rng *rng;
  int      next_at;      /* the next kitchen day: today or after */
  int      n_cooked;     /* of all recipes */
};

/**
 * stead_demo_kitchen_new:
 *
 * Returns: (transfer full): the kitchen before its first batch; the reader keeps faults
 */
SteadDemoKitchen *
stead_demo_kitchen_new (SteadDemoWriter *writer)
{
  SteadDemoKitchen *kitchen = g_new0 (SteadDemoKitchen, 1);
  SteadDay today = writer->story->today;

  kitchen->rng = gsl_rng_alloc (gsl_rng_mt19937);
  gsl_rng_set (kitchen->rng, 3 + (unsigned long) stead_demo_number (&writer->story->reader, "farm", "seed"));
  kitchen->next_at = writer->story->n_days + (KITCHEN_WEEKDAY - stead_day_weekday (today) + 7) % 7;
  return kitchen;
}

void
stead_demo_kitchen_free (SteadDemoKitchen *kitchen)
{
  if (kitchen == NULL)
    return;
  gsl_rng_free (kitchen->rng);
  g_free (kitchen);
}

/* --- a batch ------------------------------------------------------------------------------ */

/* One batch being cooked. */
typedef struct
{
  const char *group;      /* of its recipe */
  int         number;     /* of this recipe, the first 0 */
  double      wanted;     /* in the unit of its item */
  gint64      id;
  gint64      at_s;       /* the clock, seconds since 1970 */
} Cooking;

/* The clock in the kitchen when the day's work begins. */
static gint64
begins_at (SteadDemoWriter *writer,
           const char      *group)
{
  int minute = (int) stead_demo_number (&writer->story->reader, group, "begins");
  int year, month, mday;
  g_autoptr(GDateTime) time = NULL;

  stead_day_split (stead_demo_day_at (writer, writer->at), &year, &month, &mday);
  time = g_date_time_new_local (year, month, mday, minute / 60, minute % 60, 0);
  return time != NULL ? g_date_time_to_unix (time) : STEAD_TIME_NONE;
}

static gboolean
add_reading (SteadDemoWriter         *writer,
             const SteadKitchenStep  *step,
             const Cooking           *cooking,
             const char              *kind,
             double                   value,
             double                   minutes,
             const char              *note,
             GError                 **error)
{
  SteadShown shown = { .at = cooking->at_s + (gint64) (60 * minutes), .kind = (char *) kind, .value = value,
                       .batch_id = cooking->id, .step_id = step->id,
                       .person_id = stead_demo_person_on (writer, writer->at), .note = (char *) note };

  return stead_kitchen_repo_add_reading (writer->store, &shown, error);
}

/* "food_temp:163-170:12": a thermometer shows whole °F, a meter tenths of a pH. */
static gboolean
write_reading (SteadDemoWriter         *writer,
               const SteadKitchenStep  *step,
               const Cooking           *cooking,
               const char              *text,
               GError                 **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) words = g_strsplit (text, ":", 3);
  g_auto(GStrv) span = NULL;
  double low, value;

  if (g_strv_length (words) != 3)
    {
      stead_demo_fault (reader, cooking->group, "steps");
      return stead_demo_sound (writer, error);
    }
  span = g_strsplit (words[1], "-", 2);
  low = stead_demo_number_of (reader, span[0]);
  value = low;
  if (span[1] != NULL)
    value += (stead_demo_number_of (reader, span[1]) - low) * gsl_rng_uniform (writer->kitchen->rng);
  value = g_str_equal (words[0], "ph") ? round (10 * value) / 10 : (round (value) - 32) / 1.8;
  return stead_demo_sound (writer, error) &&
         add_reading (writer, step, cooking, g_strstrip (words[0]), value, stead_demo_number_of (reader, words[2]), NULL, error);
}

/* "2:5:131:30:The lid was off …": in which batch, at which step, what was read when, and
 * what was done. */
static gboolean
write_trouble (SteadDemoWriter         *writer,
               const SteadKitchenStep  *step,
               int                      number,
               const Cooking           *cooking,
               GError                 **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *text = stead_demo_text_if (reader, cooking->group, "trouble");
  g_auto(GStrv) words = text != NULL ? g_strsplit (text, ":", 5) : NULL;

  if (words == NULL || g_strv_length (words) != 5 ||
      (int) stead_demo_number_of (reader, words[0]) != cooking->number ||
      (int) stead_demo_number_of (reader, words[1]) != number)
    return TRUE;
  return add_reading (writer, step, cooking, "food_temp", (stead_demo_number_of (reader, words[2]) - 32) / 1.8,
                      stead_demo_number_of (reader, words[3]), words[4], error);
}

static gboolean
write_step (SteadDemoWriter         *writer,
            const SteadKitchenStep  *step,
            int                      number,
            const char              *text,
            Cooking                 *cooking,
            GError                 **error)
{
  g_auto(GStrv) words = stead_demo_step_words (writer, cooking->group, text);
  g_auto(GStrv) readings = g_strv_length (words) == 5 ? g_strsplit (words[4], ",", -1) : NULL;
  gint64 person = stead_demo_person_on (writer, writer->at);
  double minutes = isnan (step->minutes) ? 0 : step->minutes;

  if (!stead_demo_sound (writer, error) ||
      !stead_kitchen_repo_step_start (writer->store, step->id, cooking->at_s, person, error) ||
      !write_trouble (writer, step, number, cooking, error))
    return FALSE;
  for (char **reading = readings; reading != NULL && *reading != NULL; reading++)
    if (*g_strstrip (*reading) != '\0' && !write_reading (writer, step, cooking, *reading, error))
      return FALSE;
  cooking->at_s += (gint64) (60 * minutes);
  return stead_kitchen_repo_step_done (writer->store, step->id, cooking->at_s, person, NULL, error);
}

static gboolean
write_steps (SteadDemoWriter  *writer,
             Cooking          *cooking,
             GError          **error)
{
  g_auto(GStrv) texts = stead_demo_list (&writer->story->reader, cooking->group, "steps");
  g_autoptr(SteadKitchen) kitchen = stead_kitchen_repo_get (writer->store, cooking->id, error);

  cooking->at_s = begins_at (writer, cooking->group);
  for (guint i = 0; kitchen != NULL && i < kitchen->steps->len && texts[i] != NULL; i++)
    if (!write_step (writer, kitchen->steps->pdata[i], (int) i + 1, texts[i], cooking, error))
      return FALSE;
  return kitchen != NULL;
}

static gboolean
write_people (SteadDemoWriter  *writer,
              const Cooking    *cooking,
              double            share,
              GError          **error)
{
  double minutes = share * stead_demo_number (&writer->story->reader, cooking->group, "minutes");
  gint64 first = stead_demo_person_on (writer, writer->at), second = stead_demo_second_on (writer, writer->at);

  return stead_kitchen_repo_set_person (writer->store, cooking->id, first, 5 * round (0.6 * minutes / 5), error) &&
         stead_kitchen_repo_set_person (writer->store, cooking->id, second, 5 * round (0.4 * minutes / 5), error);
}

/* "1:Dropped by the door": how many of each batch in turn were lost, and why. */
static gboolean
write_result (SteadDemoWriter  *writer,
              const Cooking    *cooking,
              double           *out_good,
              GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();
  g_autofree char *makes = stead_demo_text (reader, cooking->group, "makes");
  g_autofree char *group = g_strconcat ("item ", makes, NULL);
  g_auto(GStrv) lost = stead_demo_list (reader, cooking->group, "lost");
  guint n = g_strv_length (lost);
  g_auto(GStrv) words = n > 0 ? g_strsplit (lost[(guint) cooking->number % n], ":", 2) : NULL;
  double tasted = stead_demo_number_if (reader, cooking->group, "tasted", 0), spoiled = 0;

  if (words != NULL && g_strv_length (words) == 2)
    {
      spoiled = stead_demo_number_of (reader, words[0]);
      harvest->reason = g_strdup (words[1]);
    }
  *out_good = cooking->wanted - tasted - spoiled;
  harvest->batch_id = cooking->id;
  harvest->day = stead_demo_day_at (writer, writer->at);
  harvest->quantity_base = stead_demo_base_of (writer, makes, *out_good);
  harvest->lost_base = stead_demo_base_of (writer, makes, spoiled);
  harvest->tasted_base = stead_demo_base_of (writer, makes, tasted);
  harvest->person_id = stead_demo_person_on (writer, writer->at);
  return stead_demo_sound (writer, error) && stead_kitchen_repo_finish (writer->store, harvest, error) &&
         stead_demo_put (writer, group, harvest->lot_id, error);
}

/* --- what becomes of it -------------------------------------------------------------------- */

/* Packed and over the table, at most so many units of the product. */
static gboolean
sell (SteadDemoWriter  *writer,
      const char       *group,
      double            most,
      GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  SteadDay day = stead_demo_day_at (writer, writer->at);
  g_autofree char *name = stead_demo_text (reader, group, "makes");
  g_autofree char *sold_as = stead_demo_text (reader, group, "sold_as");
  g_autofree char *product = g_strconcat ("product ", sold_as, NULL);
  g_auto(GStrv) parts = stead_demo_list (reader, product, "parts");
  gint64 item = stead_demo_id_of (writer, "item", name), person = stead_demo_person_on (writer, writer->at);
  double each = stead_demo_number (reader, product, "eggs"), units;
  SteadStock stock;

  if (!stead_demo_sound (writer, error) || !stead_lot_repo_stock (writer->store, item, day, 1, &stock, error))
    return FALSE;
  units = MIN (most, floor (stock.on_hand_base / each + 1e-6));
  if (units < 1)
    return TRUE;
  if (stead_demo_market_is_on (writer))
    {
      stead_demo_market_sold (writer, product, units);
      return TRUE;
    }
  for (char **part = parts; *part != NULL; part++)
    if (!stead_lot_repo_sell (writer->store, stead_demo_id_of (writer, "item", *part), day, units,
                              _("Packed for the sale"), person, error))
      return FALSE;
  stead_demo_cash_sold (writer, product, units);
  return stead_lot_repo_sell (writer->store, item, day, units * each, _("Sold at the market"), person, error);
}

/* What is left on the last day that it keeps is tasted by guests. */
static gboolean
give_rest (SteadDemoWriter  *writer,
           const char       *group,
           GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  SteadDay day = stead_demo_day_at (writer, writer->at);
  g_autofree char *name = stead_demo_text (reader, group, "makes");
  g_autofree char *reason = stead_demo_text (reader, group, "given");
  gint64 item = stead_demo_id_of (writer, "item", name);
  g_autoptr(GPtrArray) lots = NULL;

  if (!stead_demo_sound (writer, error))
    return FALSE;
  lots = stead_kitchen_repo_lots (writer->store, item, day, error);
  for (guint i = 0; lots != NULL && i < lots->len; i++)
    {
      const SteadKitchenTake *take = lots->pdata[i];

      if (take->best_by <= day + 2 &&
          !stead_lot_repo_adjust (writer->store, take->lot_id, STEAD_MOVE_GIVEN, day, -take->base, reason,
                                  writer->advisor_id, error))
        return FALSE;
    }
  return lots != NULL;
}

static gboolean
write_sold (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  return sell (writer, what, stead_demo_number (&writer->story->reader, what, "sold"), error);
}

static gboolean
write_given (SteadDemoWriter  *writer,
             gconstpointer     what,
             GError          **error)
{
  return give_rest (writer, what, error);
}

/* What is held cold is sold on the next days; the last is given away in time. */
static gboolean
live_cold (SteadDemoWriter  *writer,
           const char       *group,
           GError          **error)
{
  int weekday = stead_day_weekday (stead_demo_day_at (writer, writer->at));
  const char *name = stead_demo_group_name (group);
  /* Translators: steps of undo; %s is a recipe. */
  g_autofree char *sold = g_strdup_printf (_("%s: sold"), name);
  g_autofree char *given = g_strdup_printf (_("%s: given away"), name);

  if (weekday == 6)
    return stead_demo_act (writer, sold, write_sold, group, error);
  return weekday != 2 || stead_demo_act (writer, given, write_given, group, error);
}

/* --- the whole -------------------------------------------------------------------------------- */

static gboolean
plan (SteadDemoWriter  *writer,
      Cooking          *cooking,
      int               at,
      GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *makes = stead_demo_text (reader, cooking->group, "makes");
  g_autofree char *place = stead_demo_text (reader, "kitchen", "place");
  g_autofree char *enterprise = stead_demo_text (reader, cooking->group, "enterprise");
  gint64 recipe = stead_demo_id_of (writer, "recipe", stead_demo_group_name (cooking->group));
  gint64 place_id = stead_demo_id_of (writer, "place", place);
  gint64 part = stead_demo_id_of (writer, "enterprise", enterprise);

  return stead_demo_sound (writer, error) &&
         stead_kitchen_repo_plan (writer->store, recipe, stead_demo_base_of (writer, makes, cooking->wanted),
                                  stead_demo_day_at (writer, at), NULL, place_id, &cooking->id, error) &&
         stead_enterprise_repo_set_batch (writer->store, cooking->id, part, error);
}

static gboolean
write_cooked (SteadDemoWriter  *writer,
              gconstpointer     what,
              GError          **error)
{
  Cooking cooking = *(const Cooking *) what;
  SteadDemoReader *reader = &writer->story->reader;
  double share = cooking.wanted / stead_demo_number (reader, cooking.group, "yield"), good;

  return plan (writer, &cooking, writer->at, error) &&
         stead_kitchen_repo_take_proposed (writer->store, cooking.id, stead_demo_day_at (writer, writer->at),
                                           stead_demo_person_on (writer, writer->at), error) &&
         write_steps (writer, &cooking, error) &&
         write_people (writer, &cooking, share, error) &&
         write_result (writer, &cooking, &good, error) &&
         (stead_demo_number_if (reader, cooking.group, "sold", 0) > 0 ||
          sell (writer, cooking.group, good, error));
}

static gboolean
write_planned (SteadDemoWriter  *writer,
               gconstpointer     what,
               GError          **error)
{
  Cooking cooking = *(const Cooking *) what;

  return plan (writer, &cooking, writer->kitchen->next_at, error);
}

/* As much as the farm's own ingredient allows; in the unit of the item. */
static gboolean
most_wanted (SteadDemoWriter  *writer,
             const char       *group,
             double           *out_wanted,
             GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *own = stead_demo_text (reader, group, "own");
  double need = stead_demo_number (reader, group, "own_each"), wanted = stead_demo_number (reader, group, "wanted");
  gint64 item = stead_demo_id_of (writer, "item", own);
  SteadStock stock;

  if (!stead_demo_sound (writer, error) ||
      !stead_lot_repo_stock (writer->store, item, stead_demo_day_at (writer, writer->at), 1, &stock, error))
    return FALSE;
  /* Measures are rounded to what a cook has. */
  *out_wanted = MIN (wanted, floor (0.95 * stock.on_hand_base / stead_demo_base_of (writer, own, need)));
  return TRUE;
}

/* "7 | 14 | 21": days before the next kitchen day, the newest first; the oldest is number 0. */
static gboolean
cooks_at (SteadDemoWriter *writer,
          const char      *group,
          int              at,
          int             *out_number)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) days = stead_demo_list (reader, group, "cooked");
  int n = (int) g_strv_length (days);

  for (int i = 0; i < n; i++)
    if (writer->kitchen->next_at - (int) stead_demo_number_of (reader, days[i]) == at)
      {
        if (out_number != NULL)
          *out_number = n - 1 - i;
        return TRUE;
      }
  return FALSE;
}

static gboolean
live_recipe (SteadDemoWriter  *writer,
             const char       *group,
             GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  const char *name = stead_demo_group_name (group);
  /* Translators: steps of undo; %s is a recipe. */
  g_autofree char *cooked = g_strdup_printf (_("%s: cooked"), name);
  g_autofree char *planned = g_strdup_printf (_("%s: planned"), name);
  Cooking cooking = { .group = group };
  gboolean last = writer->at == writer->story->n_days - 1;

  if (cooks_at (writer, group, writer->at, &cooking.number))
    {
      if (!most_wanted (writer, group, &cooking.wanted, error))
        return FALSE;
      if (cooking.wanted >= stead_demo_number (reader, group, "least") &&
          !stead_demo_act (writer, cooked, write_cooked, &cooking, error))
        return FALSE;
    }
  if (stead_demo_number_if (reader, group, "sold", 0) > 0 && !live_cold (writer, group, error))
    return FALSE;
  cooking.wanted = stead_demo_number_if (reader, group, "planned", 0);
  return !last || !(cooking.wanted > 0) || stead_demo_act (writer, planned, write_planned, &cooking, error);
}

/* --- the count of the store room --------------------------------------------------------------- */

static gboolean
write_count (SteadDemoWriter  *writer,
             gconstpointer     what,
             GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *place = stead_demo_text (reader, "count", "place");
  g_autofree char *item = stead_demo_text (reader, "count", "short");
  gint64 place_id = stead_demo_id_of (writer, "place", place);
  g_autoptr(SteadStockCount) count = NULL;

  if (!stead_demo_sound (writer, error))
    return FALSE;
  count = stead_count_repo_sheet (writer->store, place_id, stead_demo_day_at (writer, writer->at), error);
  if (count == NULL)
    return FALSE;
  count->person_id = stead_demo_person_on (writer, writer->at);
  count->second_id = stead_demo_second_on (writer, writer->at);
  count->note = stead_demo_text_if (reader, "count", "note");
  for (guint i = 0; i < count->lines->len; i++)
    {
      SteadCountLine *line = count->lines->pdata[i];
      double missing = stead_demo_number (reader, "count", "missing");

      line->counted_base = line->expected_base;
      if (!g_str_equal (line->item_name, item) || !(line->expected_base > missing))
        continue;
      line->counted_base -= missing;
      line->reason = stead_demo_text (reader, "count", "reason");
    }
  return stead_demo_sound (writer, error) && stead_count_repo_save (writer->store, count, error);
}

/**
 * stead_demo_live_kitchen:
 *
 * One day of the kitchen.  Recipes are written down some weeks before the first batch.
 *
 * Returns: %TRUE, or %FALSE with @error
 */
gboolean
stead_demo_live_kitchen (SteadDemoWriter  *writer,
                         GError          **error)
{
  int first = writer->kitchen->next_at - (int) stead_demo_number (&writer->story->reader, "kitchen", "begins");
  g_auto(GStrv) groups = NULL;

  if (writer->at < first)
    return TRUE;
  if (writer->at == first && !stead_demo_write_groups (writer, "recipe", stead_demo_write_recipe, error))
    return FALSE;
  groups = stead_demo_groups (&writer->story->reader, "recipe");
  for (char **group = groups; *group != NULL; group++)
    if (!live_recipe (writer, *group, error))
      return FALSE;
  /* After today's cooking, for tomorrow's. */
  for (char **group = groups; *group != NULL; group++)
    if (cooks_at (writer, *group, writer->at + 1, NULL) &&
        !stead_demo_act (writer, _("Shopping for the kitchen"), stead_demo_shop, *group, error))
      return FALSE;
  if (writer->at == stead_demo_days_back (writer, "count", "back", -1) &&
      !stead_demo_act (writer, _("count of the store room"), write_count, NULL, error))
    return FALSE;
  return stead_demo_sound (writer, error);
}
