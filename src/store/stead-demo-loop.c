/* stead-demo-loop.c - the demo farm's fish: tanks, the water that goes round, the
 * groups in them, their log, weighings, tests, and what was harvested.
 *
 * The fish grow by the core's own law with a coefficient of their own, which the
 * farm does not know; what is written down scatters about that.  Everything is
 * read from the groups "water", "tank", "fish" and "bad week" of the description.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#include "core/stead-fish-growth.h"
#include "core/stead-us-units.h"
#include "store/stead-demo-writer-private.h"
#include "store/stead-fish-repo.h"
#include "store/stead-harvest-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-water-repo.h"

/* The last days are quiet, so that only what the description wants is out of place. */
#define CALM_DAYS 10

/* One group of fish as it really is. */
typedef struct
{
  char     *group;        /* of the description */
  gint64    id;           /* 0: not stocked yet */
  int       stocked_at;
  int       ends_at;      /* -1: under way today */
  gint64    alive;
  double    mean_g;
  double    spread_frac;
  double    tgc_x100;     /* the true one */
  double    feed_kg;      /* of a usual day now */
} Group;

/* One day of the bad week: what was read, and what was done about it. */
typedef struct
{
  int    back;
  double ph, tan, nitrite, oxygen;
  char  *action;
} BadTest;

struct _SteadDemoLoop
{
  GPtrArray *groups;      /* of Group */
  GArray    *bad;         /* of BadTest */
  gint64     water_id;    /* 0: the loop is not built yet */
  int        begins_at;
  int        test_days;
  double     alkalinity;
  double     nitrate;
};

static void
group_free (gpointer data)
{
  Group *group = data;

  g_free (group->group);
  g_free (group);
}

static void
bad_clear (gpointer data)
{
  g_free (((BadTest *) data)->action);
}

/* --- reading the description --------------------------------------------------- */

static void
read_groups (SteadDemoWriter *writer,
             SteadDemoLoop   *loop)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) names = stead_demo_groups (reader, "fish");

  for (char **name = names; *name != NULL; name++)
    {
      Group *group = g_new0 (Group, 1);

      group->group = g_strdup (*name);
      group->stocked_at = stead_demo_days_back (writer, *name, "stocked", 0);
      group->ends_at = stead_demo_days_back (writer, *name, "ended", -1);
      group->alive = (gint64) stead_demo_number (reader, *name, "number");
      group->mean_g = stead_demo_number (reader, *name, "weight_g");
      group->spread_frac = stead_demo_number (reader, *name, "spread");
      group->tgc_x100 = stead_demo_number (reader, *name, "true_growth");
      g_ptr_array_add (loop->groups, group);
    }
}

/* "47 : 6.9 : 2.6 : 0.9 : 3.2 : what was done" */
static void
read_bad_week (SteadDemoWriter *writer,
               SteadDemoLoop   *loop)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) tests = stead_demo_list (reader, "bad week", "tests");

  for (char **text = tests; *text != NULL; text++)
    {
      g_auto(GStrv) parts = g_strsplit (*text, ":", 6);
      BadTest test = { 0 };

      if (g_strv_length (parts) != 6)
        {
          stead_demo_fault (reader, "bad week", "tests");
          return;
        }
      for (int i = 0; i < 6; i++)
        g_strstrip (parts[i]);
      test.back = (int) stead_demo_number_of (reader, parts[0]);
      test.ph = stead_demo_number_of (reader, parts[1]);
      test.tan = stead_demo_number_of (reader, parts[2]);
      test.nitrite = stead_demo_number_of (reader, parts[3]);
      test.oxygen = stead_demo_number_of (reader, parts[4]);
      test.action = g_strdup (parts[5]);
      g_array_append_val (loop->bad, test);
    }
}

/**
 * stead_demo_loop_new:
 *
 * Returns: (transfer full): the loop before its first day; the reader keeps faults
 */
SteadDemoLoop *
stead_demo_loop_new (SteadDemoWriter *writer)
{
  SteadDemoLoop *loop = g_new0 (SteadDemoLoop, 1);

  loop->groups = g_ptr_array_new_with_free_func (group_free);
  loop->bad = g_array_new (FALSE, FALSE, sizeof (BadTest));
  g_array_set_clear_func (loop->bad, bad_clear);
  loop->begins_at = stead_demo_days_back (writer, "water", "built", 0);
  loop->test_days = (int) stead_demo_number (&writer->story->reader, "water", "test_days");
  loop->alkalinity = 80;
  loop->nitrate = 30;
  read_groups (writer, loop);
  read_bad_week (writer, loop);
  return loop;
}

void
stead_demo_loop_free (SteadDemoLoop *loop)
{
  if (loop == NULL)
    return;
  g_ptr_array_unref (loop->groups);
  g_array_unref (loop->bad);
  g_free (loop);
}

/* --- building ------------------------------------------------------------------- */

static gboolean
write_water (SteadDemoWriter  *writer,
             gconstpointer     what,
             GError          **error)
{
  SteadDemoLoop *loop = writer->loop;
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadWater) water = stead_water_new ();
  g_auto(GStrv) places = stead_demo_list (reader, "water", "places");

  water->name = stead_demo_text (reader, "water", "name");
  water->kind = STEAD_WATER_AQUAPONIC;
  water->volume_l = stead_demo_number (reader, "water", "volume_l");
  water->test_days = loop->test_days;
  water->note = stead_demo_text_if (reader, "water", "note");
  if (!stead_demo_sound (writer, error) || !stead_water_repo_save (writer->store, water, error))
    return FALSE;
  loop->water_id = water->id;
  for (char **place = places; *place != NULL; place++)
    {
      gint64 id = stead_demo_id_of (writer, "place", *place);

      if (!stead_demo_sound (writer, error) ||
          !stead_water_repo_set_place (writer->store, id, water->id, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_tank (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  const char *group = what;
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadTank) tank = stead_tank_new ();
  g_autofree char *place = NULL;

  tank->name = g_strdup (stead_demo_group_name (group));
  tank->shape = STEAD_TANK_ROUND;
  tank->diameter_m = stead_demo_number (reader, group, "diameter_m");
  tank->depth_m = stead_demo_number (reader, group, "depth_m");
  tank->flow_l_min = stead_demo_number (reader, group, "flow_l_min");
  tank->water_id = writer->loop->water_id;
  if (!stead_demo_sound (writer, error) || !stead_tank_repo_save (writer->store, tank, error))
    return FALSE;
  place = g_strconcat ("place ", tank->name, NULL);
  stead_demo_set_id (writer, place, tank->place_id);
  return TRUE;
}

/* --- stocking ---------------------------------------------------------------------- */

static gboolean
write_group (SteadDemoWriter  *writer,
             gconstpointer     what,
             GError          **error)
{
  Group *group = (Group *) what;
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadFish) fish = stead_fish_new ();
  g_autofree char *tank = stead_demo_text (reader, group->group, "tank");
  g_autofree char *feed = stead_demo_text (reader, group->group, "feed");

  fish->batch.name = g_strdup (stead_demo_group_name (group->group));
  fish->batch.place_id = stead_demo_id_of (writer, "place", tank);
  fish->batch.started_on = stead_demo_day_at (writer, writer->at);
  fish->batch.feed_item_id = stead_demo_id_of (writer, "item", feed);
  fish->batch.care_minutes_day = stead_demo_number (reader, group->group, "care_minutes");
  fish->batch.note = stead_demo_text_if (reader, group->group, "note");
  g_free (fish->species);
  fish->species = stead_demo_text (reader, group->group, "species");
  fish->stocked = group->alive;
  fish->stocked_g = group->mean_g;
  fish->cost_cents = stead_demo_cents (reader, group->group, "cost");
  fish->protein_frac = stead_demo_number (reader, group->group, "protein");
  fish->tgc = stead_demo_number (reader, group->group, "growth");
  fish->sale_g = stead_demo_number (reader, group->group, "sale_g");
  fish->sale_frac = stead_demo_number (reader, group->group, "sale_share");
  fish->spread_frac = group->spread_frac;
  fish->deaths_year = 0.06;
  fish->purge_days = 4;
  if (!stead_demo_sound (writer, error) || !stead_fish_repo_save (writer->store, fish, error))
    return FALSE;
  group->id = fish->batch.id;
  stead_demo_set_id (writer, group->group, group->id);
  return stead_demo_cash_begin_batch (writer, group->group, group->id, fish->cost_cents, error);
}

/* --- feed comes when there is little ------------------------------------------------- */

static gboolean
buy_feed (SteadDemoWriter  *writer,
          const Group      *group,
          GError          **error)
{
  g_autofree char *feed = stead_demo_text (&writer->story->reader, group->group, "feed");

  return stead_demo_buy_for (writer, feed, 6 * group->feed_kg, error);
}

/* --- one day of one group --------------------------------------------------------------- */

/* The greenhouse keeps the water warm; summer is warmest about July 25. */
static double
water_c (SteadDemoWriter *writer)
{
  int doy = stead_day_of_year (stead_demo_day_at (writer, writer->at));

  return 25.2 + 2.3 * cos (2 * G_PI * (doy - 206) / 365.25) + gsl_ran_gaussian (writer->story->rng, 0.4);
}

static const BadTest *
bad_test_on (SteadDemoWriter *writer)
{
  for (guint i = 0; i < writer->loop->bad->len; i++)
    {
      const BadTest *test = &g_array_index (writer->loop->bad, BadTest, i);

      if (writer->story->n_days - test->back == writer->at)
        return test;
    }
  return NULL;
}

static gboolean
in_bad_week (SteadDemoWriter *writer)
{
  const GArray *bad = writer->loop->bad;

  return bad->len > 0 &&
         writer->at >= writer->story->n_days - g_array_index (bad, BadTest, 0).back &&
         writer->at < writer->story->n_days - g_array_index (bad, BadTest, bad->len - 1).back;
}

/* Share of the body weight fed a day; the fish eat less as they grow. */
static double
feed_frac (double mean_g)
{
  return mean_g < 60 ? 0.03 : mean_g < 200 ? 0.022 : 0.015;
}

typedef struct
{
  Group  *group;
  double  water_c;
} FishDay;

static gboolean
write_fish_day (SteadDemoWriter  *writer,
                gconstpointer     what,
                GError          **error)
{
  const FishDay *now = what;
  Group *group = now->group;
  gsl_rng *rng = writer->story->rng;
  gboolean first_bad = bad_test_on (writer) != NULL && bad_test_on (writer)->oxygen < 4;
  SteadFishEntry entry = { .fish_id = group->id, .day = stead_demo_day_at (writer, writer->at), .feed_kg = NAN,
                           .water_c = NAN, .person_id = stead_demo_person_on (writer, writer->at) };
  double lb = group->feed_kg / STEAD_POUND_KG * (1 + gsl_ran_gaussian (rng, 0.05));

  if (!in_bad_week (writer))
    entry.feed_kg = MAX (0.05, round (20 * lb) / 20) * STEAD_POUND_KG;
  if (gsl_rng_uniform (rng) < 0.8)
    entry.water_c = round (2 * (now->water_c * 1.8 + 32)) / 2;
  if (!isnan (entry.water_c))
    entry.water_c = (entry.water_c - 32) / 1.8;
  if (first_bad)
    {
      entry.deaths = group->mean_g > 150 ? 2 : 1;
      entry.reason = stead_demo_text (&writer->story->reader, "bad week", "reason");
    }
  else if (writer->at < writer->story->n_days - CALM_DAYS && gsl_rng_uniform (rng) < 0.012)
    entry.deaths = 1;
  entry.deaths = (gint32) MIN (entry.deaths, group->alive);
  group->alive -= entry.deaths;
  if (isnan (entry.feed_kg) && isnan (entry.water_c) && entry.deaths == 0)
    {
      g_free (entry.reason);
      return TRUE;
    }
  {
    gboolean saved = stead_fish_repo_save_entry (writer->store, &entry, error);

    g_free (entry.reason);
    return saved;
  }
}

static gboolean
write_weighing (SteadDemoWriter  *writer,
                gconstpointer     what,
                GError          **error)
{
  const Group *group = what;
  gsl_rng *rng = writer->story->rng;
  g_autoptr(SteadWeighing) weighing = stead_weighing_new ();
  guint n = (guint) MIN (24, group->alive);

  weighing->batch_id = group->id;
  weighing->day = stead_demo_day_at (writer, writer->at);
  weighing->person_id = stead_demo_person_on (writer, writer->at);
  weighing->single = g_array_new (FALSE, FALSE, sizeof (SteadWeighed));
  for (guint i = 0; i < n; i++)
    {
      double sigma = sqrt (log1p (group->spread_frac * group->spread_frac));
      double g = group->mean_g * exp (gsl_ran_gaussian (rng, sigma) - sigma * sigma / 2);
      SteadWeighed fish = { round (g), NAN };

      /* Condition of a well-fed channel catfish is near 1 (common practice, no source). */
      fish.length_cm = round (10 * cbrt (100 * g / (0.98 + gsl_ran_gaussian (rng, 0.05)))) / 10;
      g_array_append_val (weighing->single, fish);
    }
  return stead_weighing_repo_save (writer->store, weighing, error);
}

/* --- harvest ------------------------------------------------------------------------------- */

typedef struct
{
  Group   *group;
  gboolean is_last;
} FishHarvest;

static gboolean
write_fish_harvest (SteadDemoWriter  *writer,
                    gconstpointer     what,
                    GError          **error)
{
  const FishHarvest *now = what;
  Group *group = now->group;
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();
  g_autofree char *item = stead_demo_text (reader, group->group, "gives");
  gint64 n = now->is_last ? group->alive : group->alive / 2;

  harvest->batch_id = group->id;
  harvest->day = stead_demo_day_at (writer, writer->at);
  harvest->item_id = stead_demo_id_of (writer, "item", item);
  harvest->pieces = n;
  harvest->live_kg = (double) n * group->mean_g / 1000;
  harvest->quantity_base = harvest->live_kg * stead_demo_number (reader, group->group, "dressed");
  harvest->cost_cents = (gint64) (harvest->quantity_base / STEAD_POUND_KG
                                  * (double) stead_demo_cents (reader, group->group, "cost_lb"));
  harvest->is_last = now->is_last;
  harvest->person_id = writer->advisor_id;
  if (!stead_demo_sound (writer, error) || !stead_harvest_repo_save (writer->store, harvest, error))
    return FALSE;
  group->alive -= n;
  return !now->is_last || stead_batch_repo_end (writer->store, group->id, harvest->day, error);
}

static gboolean
write_fish_sale (SteadDemoWriter  *writer,
                 gconstpointer     what,
                 GError          **error)
{
  const Group *group = what;
  g_autofree char *item = stead_demo_text (&writer->story->reader, group->group, "gives");
  gint64 id = stead_demo_id_of (writer, "item", item);
  SteadDay day = stead_demo_day_at (writer, writer->at);
  SteadStock stock;

  if (!stead_demo_sound (writer, error) || !stead_lot_repo_stock (writer->store, id, day, 1, &stock, error))
    return FALSE;
  stead_demo_cash_sold_of (writer, id, stock.on_hand_base);
  return stead_lot_repo_sell (writer->store, id, day, stock.on_hand_base, _("Sold on ice at the market"),
                              writer->helper_id, error);
}

/* Half of the group goes two weeks before the rest; each half is sold the day after. */
static gboolean
live_end (SteadDemoWriter  *writer,
          Group            *group,
          GError          **error)
{
  FishHarvest now = { group, writer->at == group->ends_at };
  g_autofree char *name = g_strdup_printf (_("Harvest of %s"), stead_demo_group_name (group->group));

  if (writer->at == group->ends_at - 14 || now.is_last)
    return stead_demo_act (writer, name, write_fish_harvest, &now, error);
  if (writer->at == group->ends_at - 13 || writer->at == group->ends_at + 1)
    return stead_demo_act (writer, _("Sold on ice at the market"), write_fish_sale, group, error);
  return TRUE;
}

static gboolean
live_group (SteadDemoWriter  *writer,
            Group            *group,
            double            temp_c,
            GError          **error)
{
  const SteadFishKind *kind = stead_fish_kind (STEAD_FISH_CHANNEL_CATFISH);
  /* Translators: steps of undo; %s is a group of fish. */
  g_autofree char *name = g_strdup_printf (_("Day of %s"), stead_demo_group_name (group->group));
  g_autofree char *weighed = g_strdup_printf (_("Weighing of %s"), stead_demo_group_name (group->group));
  FishDay now = { group, temp_c };
  int age = writer->at - group->stocked_at;

  if (writer->at == group->stocked_at && !stead_demo_act (writer, name, write_group, group, error))
    return FALSE;
  if (group->id == 0)
    return TRUE;
  if (group->ends_at >= 0 && writer->at > group->ends_at - 15 && !live_end (writer, group, error))
    return FALSE;
  if (group->ends_at >= 0 && writer->at >= group->ends_at)
    return TRUE;
  group->mean_g = pow (cbrt (group->mean_g) + group->tgc_x100 / 100 * stead_fish_degree_day (kind, temp_c), 3);
  group->feed_kg = (double) group->alive * group->mean_g / 1000 * feed_frac (group->mean_g);
  return buy_feed (writer, group, error) &&
         stead_demo_act (writer, name, write_fish_day, &now, error) &&
         (age % 21 != 20 || stead_demo_act (writer, weighed, write_weighing, group, error));
}

/* --- tests of the water -------------------------------------------------------------------- */

/* What a kit can tell apart. */
static double
read_off (double value,
          double step)
{
  return MAX (0, round (value / step) * step);
}

static gboolean
write_test (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  SteadDemoLoop *loop = writer->loop;
  gsl_rng *rng = writer->story->rng;
  const BadTest *bad = bad_test_on (writer);
  g_autoptr(SteadWaterTest) test = stead_water_test_new ();
  double *values = test->values;

  test->water_id = loop->water_id;
  test->day = stead_demo_day_at (writer, writer->at);
  test->minute = 8 * 60 + 5 * (int) gsl_rng_uniform_int (rng, 10);
  test->person_id = stead_demo_person_on (writer, writer->at);
  loop->alkalinity -= 5 + gsl_ran_gaussian (rng, 1.5);
  loop->nitrate = CLAMP (0.85 * loop->nitrate + 0.15 * 60 + gsl_ran_gaussian (rng, 7), 20, 110);
  if (loop->alkalinity < 52)
    {
      loop->alkalinity += 40;
      test->action = g_strdup (_("Added potassium bicarbonate, half today and half tomorrow."));
    }
  values[STEAD_READING_TEMPERATURE] = (read_off (*(const double *) what * 1.8 + 32, 0.5) - 32) / 1.8;
  values[STEAD_READING_PH] = read_off (6.95 + gsl_ran_gaussian (rng, 0.08), 0.1);
  values[STEAD_READING_TAN] = read_off (0.4 + gsl_ran_gaussian (rng, 0.12), 0.1);
  values[STEAD_READING_NITRITE] = read_off (0.25 + gsl_ran_gaussian (rng, 0.1), 0.05);
  values[STEAD_READING_NITRATE] = read_off (loop->nitrate, 5);
  values[STEAD_READING_OXYGEN] = read_off (6.4 + gsl_ran_gaussian (rng, 0.3), 0.1);
  values[STEAD_READING_ALKALINITY] = read_off (loop->alkalinity, 5);
  if (writer->at % (4 * loop->test_days) < loop->test_days)
    {
      values[STEAD_READING_HARDNESS] = read_off (140 + gsl_ran_gaussian (rng, 10), 10);
      values[STEAD_READING_CONDUCTIVITY] = read_off (900 + 3 * loop->nitrate, 10);
      values[STEAD_READING_CHLORIDE] = read_off (60 + gsl_ran_gaussian (rng, 5), 5);
    }
  if (bad != NULL)
    {
      values[STEAD_READING_PH] = bad->ph;
      values[STEAD_READING_TAN] = bad->tan;
      values[STEAD_READING_NITRITE] = bad->nitrite;
      values[STEAD_READING_OXYGEN] = bad->oxygen;
      g_free (test->action);
      test->action = g_strdup (bad->action);
    }
  return stead_water_test_repo_save (writer->store, test, error);
}

/* --- the whole ---------------------------------------------------------------------------------- */

/**
 * stead_demo_live_loop:
 *
 * One day of the fish and their water; the loop is built on its first day.
 *
 * Returns: %TRUE, or %FALSE with @error
 */
gboolean
stead_demo_live_loop (SteadDemoWriter  *writer,
                      GError          **error)
{
  SteadDemoLoop *loop = writer->loop;
  double temp_c;

  if (writer->at < loop->begins_at)
    return TRUE;
  if (loop->water_id == 0 &&
      (!stead_demo_act (writer, "water", write_water, NULL, error) ||
       !stead_demo_write_groups (writer, "tank", write_tank, error)))
    return FALSE;
  temp_c = water_c (writer);
  for (guint i = 0; i < loop->groups->len; i++)
    if (!live_group (writer, loop->groups->pdata[i], temp_c, error))
      return FALSE;
  if (bad_test_on (writer) == NULL &&
      (in_bad_week (writer) || (writer->story->n_days - 1 - writer->at) % loop->test_days != loop->test_days - 1))
    return TRUE;
  return stead_demo_act (writer, _("Water test"), write_test, &temp_c, error);
}
