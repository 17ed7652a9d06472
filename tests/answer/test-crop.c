/* test-crop.c - how a crop is doing, against sums worked out by hand.
 *
 * Ten tomato plants were set out on 2026-03-01.  Every day had 25 and 15 °C: 10
 * °C-days over the base of 10.  They need 400, so the 40th day, April 9, is the one.
 */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-batch-outlook.h"
#include "answer/stead-crop-pick.h"
#include "answer/stead-due-answer.h"
#include "answer/stead-question.h"
#include "store/stead-fish-repo.h"
#include "store/stead-harvest-repo.h"
#include "store/stead-place-repo.h"
#include "store/stead-water-repo.h"

#include <math.h>
#include <string.h>

#define LB 0.45359237

static SteadDay
march (int mday)
{
  return stead_day_new (2026, 3, mday);
}

static SteadCrop *
tomatoes (void)
{
  SteadCrop *crop = stead_crop_new ();

  crop->batch.name = g_strdup ("Tomatoes");
  crop->batch.started_on = march (1);
  crop->set_out_on = march (1);
  crop->plants = 10;
  crop->area_m2 = 4;
  crop->ripe_need = 400;
  crop->yield_kg = 4;
  crop->pick_weeks = 10;
  return crop;
}

static gint64
plant (Farm      *farm,
       SteadCrop *crop)
{
  FARM_DO (farm, stead_crop_repo_save (farm->store, crop, &farm_error));
  return crop->batch.id;
}

static void
read_day (Farm     *farm,
          SteadDay  day,
          double    max_c,
          double    min_c,
          double    rh_frac)
{
  SteadClimateDay climate = { .day = day, .min_c = min_c, .max_c = max_c, .rh_frac = rh_frac, .light_mol = NAN };

  FARM_DO (farm, stead_climate_repo_save (farm->store, &climate, FALSE, &farm_error));
}

static void
read_march (Farm *farm,
            int   last)
{
  for (int i = 1; i <= last; i++)
    read_day (farm, march (i), 25, 15, NAN);
}

static void
pick (Farm     *farm,
      gint64    crop_id,
      SteadDay  day,
      double    kg,
      double    lost_kg)
{
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();
  static gint64 item_id;

  if (kg > 0)
    {
      g_autoptr(SteadItem) item = g_new0 (SteadItem, 1);

      item->name = g_strdup_printf ("Tomatoes %d", day);
      item->kind = STEAD_ITEM_PRODUCE;
      item->unit = stead_unit_by_id ("lb");
      FARM_DO (farm, stead_item_repo_save (farm->store, item, &farm_error));
      item_id = item->id;
    }
  harvest->batch_id = crop_id;
  harvest->day = day;
  harvest->item_id = kg > 0 ? item_id : 0;
  harvest->quantity_base = kg;
  harvest->lost_base = lost_kg;
  harvest->reason = lost_kg > 0 ? g_strdup ("cracked") : NULL;
  FARM_DO (farm, stead_harvest_repo_save (farm->store, harvest, &farm_error));
}

static SteadCropAnswer *
ask (Farm   *farm,
     gint64  id)
{
  g_autoptr(GError) error = NULL;
  SteadCropAnswer *answer = stead_crop_answer_new (farm->store, id, &error);

  g_assert_no_error (error);
  g_assert_nonnull (answer);
  return answer;
}

static void
assert_whys (const SteadCropAnswer *answer,
             guint                  n)
{
  g_autoptr(GPtrArray) whys = stead_crop_answer_whys (answer);

  g_assert_cmpuint (whys->len, ==, n);
  for (guint i = 0; i < whys->len; i++)
    {
      const SteadWhy *why = whys->pdata[i];

      g_assert_true (why->title[0] && why->formula[0] && why->worked[0] && why->source[0]);
      g_assert_null (strstr (why->worked, "nan"));
    }
}

/* --- ripening ------------------------------------------------------------------- */

static void
test_ripe (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  gint64 id = plant (farm, crop);
  g_autoptr(SteadCropAnswer) answer = NULL;

  read_march (farm, 30);
  answer = ask (farm, id);
  g_assert_cmpfloat_with_epsilon (answer->sum_c, 300, 1e-6);
  g_assert_cmpuint (answer->n_read, ==, 30);
  g_assert_cmpuint (answer->n_gaps, ==, 0);
  g_assert_cmpint (answer->last_read, ==, march (30));
  g_assert_true (answer->has_ripe);
  g_assert_cmpint (answer->ripe.day, ==, stead_day_new (2026, 4, 9));
  /* 340: the 34th day, and 460: the 46th; a day for those needs that have been met already. */
  g_assert_cmpint (ABS (answer->ripe.early - stead_day_new (2026, 4, 3)), <=, 1);
  g_assert_cmpint (ABS (answer->ripe.late - stead_day_new (2026, 4, 15)), <=, 1);
  /* 300 and 400 °C-days are 540 and 720 °F-days. */
  g_assert_nonnull (strstr (answer->sentence, "540"));
  g_assert_nonnull (strstr (answer->sentence, "720"));
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (answer->sentence, "<b>Apr 9</b>"));
      g_autofree char *early = stead_day_format (answer->ripe.early, STEAD_DAY_STYLE_SHORT);
      g_autofree char *late = stead_day_format (answer->ripe.late, STEAD_DAY_STYLE_SHORT);
      g_autofree char *band = g_strdup_printf ("between %s and %s", early, late);

      g_assert_nonnull (strstr (answer->sentence, band));
      g_assert_null (strstr (answer->sentence, "too far ahead"));
    }
  g_assert_cmpfloat_with_epsilon (answer->density_m2, 2.5, 1e-9);
  assert_whys (answer, 6);
}

/* Two weeks of warmth say little of a date that is far away; a usual year does. */
static void
test_far_ahead (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(SteadCropAnswer) recent = NULL, usual = NULL;
  SteadUsualYear year;
  gint64 id;

  crop->ripe_need = 800;
  id = plant (farm, crop);
  read_march (farm, 30);
  recent = ask (farm, id);
  /* 500 °C-days are missing, 10 a day. */
  g_assert_cmpint (recent->ripe.day, ==, march (30) + 50);
  for (int i = 0; i < 12; i++)
    {
      year.min_c[i] = 15;
      year.max_c[i] = 25;
    }
  FARM_DO (farm, stead_climate_repo_set_usual (farm->store, 0, &year, &farm_error));
  usual = ask (farm, id);
  g_assert_cmpint (usual->ripe.day, ==, march (30) + 50);
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (recent->sentence, "too far ahead"));
      g_assert_null (strstr (usual->sentence, "too far ahead"));
    }
}

/* A day that nobody read is told, and filled in from its neighbors, not counted as cold. */
static void
test_gap (Farm          *farm,
          gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  gint64 id = plant (farm, crop);
  g_autoptr(SteadCropAnswer) answer = NULL;

  for (int i = 1; i <= 30; i++)
    if (i != 7 && i != 8)
      read_day (farm, march (i), 25, 15, NAN);
  answer = ask (farm, id);
  g_assert_cmpfloat_with_epsilon (answer->sum_c, 280, 1e-6);
  g_assert_cmpfloat_with_epsilon (answer->assumed_c, 20, 1e-6);
  g_assert_cmpuint (answer->n_gaps, ==, 2);
  g_assert_cmpint (answer->ripe.day, ==, stead_day_new (2026, 4, 9));
  g_assert_nonnull (strstr (answer->sentence, farm_in_english () ? "2 days have no reading" : "2 días"));
}

static void
test_no_readings (Farm          *farm,
                  gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  gint64 id = plant (farm, crop);
  g_autoptr(SteadCropAnswer) answer = ask (farm, id);

  g_assert_false (answer->has_ripe);
  g_assert_nonnull (answer->no_ripe);
  g_assert_nonnull (strstr (answer->sentence, answer->no_ripe));
  g_assert_true (isnan (answer->next_week.likely));
  g_assert_cmpint (answer->series.first_ripe, ==, STEAD_DAY_NONE);
  if (farm_in_english ())
    g_assert_nonnull (strstr (answer->sentence, "enter a typical year"));
  assert_whys (answer, 3);
}

/* The usual year stands in for days without readings. */
static void
test_usual_year (Farm          *farm,
                 gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  gint64 id = plant (farm, crop);
  g_autoptr(SteadCropAnswer) answer = NULL;
  SteadUsualYear year;

  for (int i = 0; i < 12; i++)
    {
      year.min_c[i] = 15;
      year.max_c[i] = 25;
    }
  FARM_DO (farm, stead_climate_repo_set_usual (farm->store, 0, &year, &farm_error));
  answer = ask (farm, id);
  g_assert_true (answer->has_ripe);
  g_assert_cmpint (answer->ripe.outlook, ==, STEAD_RIPE_BY_NORMALS);
  g_assert_cmpint (answer->ripe.day, ==, stead_day_new (2026, 4, 9));
}

static void
test_not_set_out (Farm          *farm,
                  gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(SteadCropAnswer) answer = NULL;

  crop->sown_on = march (1);
  crop->set_out_on = STEAD_DAY_NONE;
  answer = ask (farm, plant (farm, crop));
  g_assert_false (answer->has_ripe);
  if (farm_in_english ())
    g_assert_nonnull (strstr (answer->sentence, "set out"));
}

/* Last year's plants of the variety needed 500, and the book says 400: it counts as one year. */
static void
test_own_year (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadCrop) last = tomatoes ();
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(SteadCropAnswer) answer = NULL;
  SteadDay first = stead_day_new (2025, 5, 1);
  gint64 id;

  g_free (last->batch.name);
  last->batch.name = g_strdup ("Tomatoes 2025");
  last->batch.started_on = last->set_out_on = first;
  last->first_ripe_on = first + 49;
  last->batch.ended_on = first + 120;
  plant (farm, last);
  for (int i = 0; i < 50; i++)
    read_day (farm, first + i, 25, 15, NAN);
  id = plant (farm, crop);
  read_march (farm, 30);
  answer = ask (farm, id);
  g_assert_cmpuint (answer->learned.n_years, ==, 1);
  g_assert_cmpfloat_with_epsilon (answer->need_c.likely, 450, 1e-6);
  g_assert_cmpint (answer->ripe.day, ==, stead_day_new (2026, 4, 14));
  /* Two years so far apart say less than one book: 15 percent would be 68. */
  g_assert_cmpfloat (answer->need_c.likely - answer->need_c.low, >, 0.15 * 450);
}

/* --- picking -------------------------------------------------------------------- */

static double
sum_weeks (const SteadCropAnswer *answer)
{
  double kg = 0;

  for (gsize i = 0; i < answer->series.n_weeks; i++)
    kg += answer->series.weeks[i].picked_kg;
  return kg;
}

static void
test_picks (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(SteadCropAnswer) answer = NULL;
  gint64 id = plant (farm, crop);
  double share;

  pick (farm, id, march (18), 2 * LB, 0);
  pick (farm, id, march (29), 3 * LB, 0.5 * LB);
  answer = ask (farm, id);
  g_assert_cmpint (answer->began_on, ==, march (18));
  g_assert_cmpint (answer->last_pick, ==, march (29));
  g_assert_cmpfloat_with_epsilon (answer->picked.good_base, 5 * LB, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->plant_kg, 0.5 * LB, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->m2_kg, 1.25 * LB, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->plan_kg, 40, 1e-9);
  g_assert_cmpfloat_with_epsilon (sum_weeks (answer), 5 * LB, 1e-9);
  /* 14 of 70 days have gone by: the rising part of the plateau, u² / (2 x 0.25) x 1 / 0.8125. */
  share = 0.2 * 0.2 / 0.5 / 0.8125;
  g_assert_cmpfloat_with_epsilon (answer->due_kg, 40 * share, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->factor.likely, (10 + 5.5 * LB) / (10 + 40 * share), 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->rest_kg.likely, 40 * (1 - share) * answer->factor.likely, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->total_kg.likely, 5 * LB + answer->rest_kg.likely, 1e-9);
  g_assert_cmpint (answer->ends_on, ==, march (18) + 69);
  g_assert_cmpfloat (answer->next_week.low, <, answer->next_week.likely);
  g_assert_cmpfloat (answer->next_week.likely, <, answer->next_week.high);
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (answer->sentence, "10 plants have given <b>5 lb</b> so far, of 88 lb planned."));
      g_assert_nonnull (strstr (answer->sentence, "The next seven days should give about"));
    }
}

/* Beyond the weeks that were planned nothing is foretold. */
static void
test_picked_on (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(SteadCropAnswer) answer = NULL;
  gint64 id;

  crop->pick_weeks = 2;
  id = plant (farm, crop);
  pick (farm, id, march (10), 2, 0);
  answer = ask (farm, id);
  g_assert_cmpint (answer->ends_on, ==, march (23));
  if (farm_in_english ())
    g_assert_nonnull (strstr (answer->sentence, "planned are over"));
}

/* The weeks begin on Mondays and follow each other; only those ahead have a band. */
static void
test_weeks (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(SteadCropAnswer) answer = NULL;
  const SteadPickWeek *weeks;
  gint64 id = plant (farm, crop);
  double ahead = 0, this_week = 0;

  pick (farm, id, march (18), 2, 0);
  answer = ask (farm, id);
  weeks = answer->series.weeks;
  for (gsize i = 0; i < answer->series.n_weeks; i++)
    {
      g_assert_cmpint (stead_day_weekday (weeks[i].first_day), ==, 1);
      g_assert_true (i == 0 || weeks[i].first_day == weeks[i - 1].first_day + 7);
      g_assert_true (isnan (weeks[i].likely_kg) == (weeks[i].first_day + 6 <= farm->today));
      if (!isnan (weeks[i].likely_kg))
        ahead += weeks[i].likely_kg;
      if (weeks[i].first_day == march (30))
        this_week = weeks[i].picked_kg;
    }
  g_assert_cmpfloat_with_epsilon (ahead - this_week, answer->rest_kg.likely, 1e-6);
  g_assert_cmpint (weeks[answer->series.n_weeks - 1].first_day, <=, answer->ends_on);
  g_assert_cmpint (weeks[answer->series.n_weeks - 1].first_day + 6, >=, answer->ends_on);
}

/* Half of the plants are gone: so is half of what is to come. */
static void
test_lost (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(SteadCropAnswer) before = NULL;
  g_autoptr(SteadCropAnswer) after = NULL;
  gint64 id = plant (farm, crop);
  SteadCropEntry entry = { .crop_id = id, .day = march (20), .lost = 5 };

  read_march (farm, 30);
  before = ask (farm, id);
  FARM_DO (farm, stead_crop_repo_save_entry (farm->store, &entry, &farm_error));
  after = ask (farm, id);
  g_assert_cmpint (after->plants, ==, 5);
  g_assert_cmpfloat_with_epsilon (after->rest_kg.likely, before->rest_kg.likely / 2, 1e-9);
  g_assert_null (before->caution);
  g_assert_nonnull (after->caution);
  if (farm_in_english ())
    g_assert_nonnull (strstr (after->caution, "5 plants were lost"));
}

static void
test_ended (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(SteadCropAnswer) answer = NULL;
  gint64 id = plant (farm, crop);

  pick (farm, id, march (18), 20 * LB, 0);
  FARM_DO (farm, stead_batch_repo_end (farm->store, id, march (28), &farm_error));
  answer = ask (farm, id);
  g_assert_true (isnan (answer->next_week.likely));
  g_assert_cmpint (answer->series.today, ==, STEAD_DAY_NONE);
  if (farm_in_english ())
    g_assert_cmpstr (answer->sentence, ==,
                     "This crop ended on Mar 28, 2026. It gave <b>20 lb</b> from 10 plants.");
}

/* --- air ------------------------------------------------------------------------ */

/* Fruit set fails on a day of 97 and a night of 82 °F, and in nights of 52 °F: University of
 * Maryland news report, Oklahoma extension column.  Moist air: FAO 56, equation 11. */
/* --- what the fish feed keeps ------------------------------------------------------ */

static gint64
make_tank (Farm       *farm,
           const char *name,
           gint64      water)
{
  g_autoptr(SteadTank) tank = stead_tank_new ();

  tank->name = g_strdup (name);
  tank->shape = STEAD_TANK_OTHER;
  tank->volume_l = 1500;
  tank->water_id = water;
  FARM_DO (farm, stead_tank_repo_save (farm->store, tank, &farm_error));
  return tank->place_id;
}

/* Fish that got @feed_kg on each of the last twenty days, today not among them. */
static void
feed_fish (Farm   *farm,
           gint64  tank,
           double  feed_kg)
{
  g_autoptr(SteadFish) fish = stead_fish_new ();

  fish->batch.name = g_strdup ("Catfish");
  fish->batch.started_on = farm->today - 60;
  fish->batch.place_id = tank;
  fish->stocked = 200;
  fish->stocked_g = 100;
  FARM_DO (farm, stead_fish_repo_save (farm->store, fish, &farm_error));
  for (int ago = 1; ago <= 20; ago++)
    {
      SteadFishEntry entry = { .fish_id = fish->batch.id, .day = farm->today - ago, .feed_kg = feed_kg, .water_c = NAN };

      FARM_DO (farm, stead_fish_repo_save_entry (farm->store, &entry, &farm_error));
    }
}

static SteadCropAnswer *
plant_in_water (Farm   *farm,
                gint64  bed,
                gint64  plants)
{
  g_autoptr(SteadCrop) crop = tomatoes ();

  g_free (crop->batch.name);
  crop->batch.name = g_strdup_printf ("Tomatoes %d", (int) plants);
  crop->batch.place_id = bed;
  crop->system = STEAD_GROW_AQUAPONIC;
  crop->plants = plants;
  return ask (farm, plant (farm, crop));
}

/* FAO 589, component calculations (husbandry hu-285, hu-286): fruiting plants take 50 to 80 g
 * a square meter and day, so 800 g keep 10 to 16 m².  At 2.5 to 4 plants a square meter these
 * are 25 to 64 plants. */
static void
test_fish_feed (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(GPtrArray) whys = NULL;
  g_autoptr(SteadWater) water = stead_water_new ();
  g_autoptr(SteadCropAnswer) dry = plant_in_water (farm, 0, 20);
  g_autoptr(SteadCropAnswer) hungry = NULL, fits = NULL, few = NULL, many = NULL;
  gint64 bed;

  g_assert_true (isnan (dry->feed_g_day));
  g_assert_nonnull (dry->feeding);
  water->name = g_strdup ("Loop");
  water->kind = STEAD_WATER_AQUAPONIC;
  FARM_DO (farm, stead_water_repo_save (farm->store, water, &farm_error));
  bed = make_tank (farm, "Bed", water->id);
  hungry = plant_in_water (farm, bed, 30);
  g_assert_cmpfloat (hungry->feed_g_day, ==, 0);
  g_assert_nonnull (hungry->feeding);
  feed_fish (farm, make_tank (farm, "Tank", water->id), 0.8);
  fits = plant_in_water (farm, bed, 40);
  g_assert_cmpfloat_with_epsilon (fits->feed_g_day, 800, 1e-9);
  g_assert_cmpfloat_with_epsilon (fits->bed_min_m2, 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (fits->bed_max_m2, 16, 1e-9);
  g_assert_cmpfloat_with_epsilon (fits->feed_plants_min, 25, 1e-9);
  g_assert_cmpfloat_with_epsilon (fits->feed_plants_max, 64, 1e-9);
  /* 10 and 16 m² in square feet. */
  NUMBERS_ARE (fits->feeding, 1.8 /* lb: 0.8 kg */, 108, 172, 25, 64, 40);
  whys = stead_crop_answer_whys (fits);
  NUMBERS_ARE (farm_find_why (whys, "Bed that the fish feed supports")->worked, 800, 107.6, 172.2, 25, 64);
  few = plant_in_water (farm, bed, 24);
  many = plant_in_water (farm, bed, 65);
  NUMBERS_ARE (many->feeding, 1.8, 108, 172, 25, 64, 65);
  if (!farm_in_english ())
    return;
  g_assert_nonnull (strstr (dry->feeding, "no water yet"));
  g_assert_nonnull (strstr (hungry->feeding, "no feed"));
  g_assert_nonnull (strstr (fits->feeding, "fits"));
  g_assert_nonnull (strstr (few->feeding, "could feed more"));
  g_assert_nonnull (strstr (many->feeding, "more than that"));
}

static void
test_air (Farm          *farm,
          gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(SteadCropAnswer) hot = NULL;
  g_autoptr(SteadCropAnswer) cold = NULL;
  gint64 id = plant (farm, crop);

  read_march (farm, 23);
  for (int i = 24; i <= 30; i++)
    read_day (farm, march (i), (97 - 32) / 1.8, (82 - 32) / 1.8, 0.98);
  hot = ask (farm, id);
  /* Of the last seven days, with today, six were read. */
  g_assert_cmpint (hot->set_days, ==, 6);
  g_assert_cmpint (hot->set_poor, ==, 6);
  g_assert_cmpint (hot->set_hot, ==, 6);
  g_assert_cmpfloat_with_epsilon (hot->deficit_kpa,
                                  0.02 * 0.6108 * exp (17.27 * 31.9444444 / (31.9444444 + 237.3)), 1e-6);
  for (int i = 24; i <= 30; i++)
    read_day (farm, march (i), (80 - 32) / 1.8, (52 - 32) / 1.8, 0.7);
  cold = ask (farm, id);
  g_assert_cmpint (cold->set_poor, ==, 6);
  g_assert_cmpint (cold->set_hot, ==, 0);
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (hot->caution, "too hot"));
      g_assert_nonnull (strstr (hot->caution, "mold"));
      g_assert_nonnull (strstr (cold->caution, "too cold"));
      g_assert_null (strstr (cold->caution, "mold"));
    }
}

static void
test_names (Farm          *farm,
            gconstpointer  data)
{
  SteadCropEntry lost = { .day = march (3), .lost = 2 };
  SteadClimateDay day = { .day = march (3) };
  g_autofree char *entry = stead_crop_entry_name (&lost);
  g_autofree char *climate = stead_crop_climate_name (&day);
  g_autofree char *us = stead_crop_warmth_text (100, STEAD_UNITS_US);
  g_autofree char *metric = stead_crop_warmth_text (100, STEAD_UNITS_METRIC);

  g_assert_nonnull (strstr (us, "180"));
  g_assert_nonnull (strstr (metric, "100"));
  if (!farm_in_english ())
    return;
  g_assert_cmpstr (entry, ==, "2 plants lost on Mar 3");
  g_assert_cmpstr (climate, ==, "Temperatures of Mar 3");
}

/* --- worked out -------------------------------------------------------------------- */

static void
test_whys (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(SteadCropAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  SteadCropEntry lost = { .day = march (20), .lost = 2 };
  gint64 id = plant (farm, crop);

  lost.crop_id = id;
  lost.reason = (char *) "wind";
  FARM_DO (farm, stead_crop_repo_save_entry (farm->store, &lost, &farm_error));
  for (int i = 0; i < 3; i++)
    {
      SteadClimateDay climate = { .day = march (28 + i), .min_c = 15, .max_c = 25, .rh_frac = 0.6, .light_mol = 10 + 4 * i };

      FARM_DO (farm, stead_climate_repo_save (farm->store, &climate, FALSE, &farm_error));
    }
  pick (farm, id, march (18), 2 * LB, 0);
  pick (farm, id, march (29), 3 * LB, 0.5 * LB);
  answer = ask (farm, id);
  whys = stead_crop_answer_whys (answer);
  NUMBERS_ARE (farm_find_why (whys, "Plants standing")->worked, 10, 2, 8);
  NUMBERS_ARE (farm_find_why (whys, "Planned in all")->worked, 10, 8.82, 88);
  /* 400 °C-days are 720 °F-days; 340 to 460 are 612 to 828. */
  NUMBERS_ARE (farm_find_why (whys, "Degree days to the first ripe fruit")->worked, 720, 0, 720, 612, 828);
  NUMBERS_ARE (farm_find_why (whys, "Picked so far")->worked, 2, 18, 29, 5, 0.5);
  NUMBERS_ARE (farm_find_why (whys, "Picked of one plant")->worked, 5, 10, 0.5);
  /* 4 m² are 43.06 square feet. */
  NUMBERS_ARE (farm_find_why (whys, "Picked of a square foot")->worked, 5, 43.1, 0.12);
  NUMBERS_ARE (farm_find_why (whys, "Light a day")->worked, 10, 14, 18, 3, 14);
  /* Air of 20 °C holds 2.338 kPa (FAO 56, table 2.3); four tenths are missing. */
  NUMBERS_ARE (farm_find_why (whys, "How dry the air is")->worked, 30, 20, 60, 0.94, 0.4, 1.2);
  NUMBERS_ARE (farm_find_why (whys, "Harvest to come")->worked, 88, round (answer->due_kg / LB * 10) / 10, 5.5,
               round (100 * answer->factor.likely), 5, round (answer->rest_kg.likely / LB), round (answer->total_kg.likely / LB));
}

/* $60 of plants, and three of ten bales of straw that cost $50. */
static void
test_cost_why (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(SteadWhy) why = NULL;
  gint64 id;

  crop->cost_cents = 6000;
  id = plant (farm, crop);
  farm_buy (farm, march (1), farm->straw, 10, 5000, FALSE);
  FARM_DO (farm, stead_lot_repo_use (farm->store, farm->straw, id, march (2), 3, 0, &farm_error));
  g_assert_cmpint (stead_crop_cost_in (farm->store, crop, &why, NULL), ==, 7500);
  NUMBERS_ARE (why->worked, 15, 60, 75);
}

/* --- what follows from it --------------------------------------------------------- */

/* $60 of plants; 2 kg of the 40 that are expected carry a twentieth, and the lot is named
 * after the crop. */
static void
test_pick_cost (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) picks = NULL;
  g_autoptr(SteadItem) item = NULL;
  const SteadHarvest *first;
  SteadPick pick = { .day = march (30), .good_kg = 2, .lost_kg = 0.5, .reason = "cracked", .grade = "first" };

  crop->cost_cents = 6000;
  pick.crop_id = plant (farm, crop);
  FARM_DO (farm, stead_crop_pick_save (farm->store, &pick, &farm_error));
  pick.day = march (31);
  pick.good_kg = 100;
  FARM_DO (farm, stead_crop_pick_save (farm->store, &pick, &farm_error));
  picks = stead_harvest_repo_list (farm->store, pick.crop_id, march (1), farm->today, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (picks->len, ==, 2);
  first = picks->pdata[0];
  g_assert_cmpint (first->cost_cents, ==, 300);
  g_assert_cmpstr (first->grade, ==, "first");
  g_assert_cmpstr (first->reason, ==, "cracked");
  /* Never more than went in. */
  g_assert_cmpint (((const SteadHarvest *) picks->pdata[1])->cost_cents, <=, 5700);
  g_assert_cmpint (((const SteadHarvest *) picks->pdata[1])->item_id, ==, first->item_id);
  item = stead_item_repo_get (farm->store, first->item_id, &error);
  if (farm_in_english ())
    g_assert_cmpstr (item->name, ==, "Tomatoes");
  g_assert_cmpint (item->kind, ==, STEAD_ITEM_PRODUCE);
}

static void
test_outlook (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(SteadCropAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;
  SteadBatchOutlook outlook;

  plant (farm, crop);
  g_assert_true (stead_batch_outlook_read (farm->store, &crop->batch, &outlook, &error));
  g_assert_cmpint (outlook.basis, ==, STEAD_OUTLOOK_PLAN);
  g_assert_cmpfloat_with_epsilon (outlook.expected_base, 40, 1e-9);
  pick (farm, crop->batch.id, march (18), 2, 0);
  answer = ask (farm, crop->batch.id);
  g_assert_true (stead_batch_outlook_read (farm->store, &crop->batch, &outlook, &error));
  g_assert_no_error (error);
  g_assert_cmpint (outlook.basis, ==, STEAD_OUTLOOK_FORECAST);
  g_assert_cmpfloat_with_epsilon (outlook.expected_base, answer->rest_kg.likely, 1e-9);
  g_assert_cmpfloat (outlook.low_base, <, outlook.expected_base);
  g_assert_cmpfloat (outlook.expected_base, <, outlook.high_base);
  g_assert_cmpint (outlook.ends_on, ==, march (18) + 69);
}

/* How many dues of a kind the crop has; the last one's text comes to @out. */
static int
count_dues (Farm         *farm,
            gint64        crop_id,
            SteadDueKind  kind,
            char        **out)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadDueAnswer) answer = stead_due_answer_new (farm->store, &error);
  int n = 0;

  g_assert_no_error (error);
  g_clear_pointer (out, g_free);
  for (guint i = 0; i < answer->dues->len; i++)
    {
      const SteadDue *due = answer->dues->pdata[i];

      if (due->target != STEAD_TARGET_BATCH || due->id != crop_id || due->kind != kind)
        continue;
      g_free (*out);
      *out = g_strdup (due->text);
      n++;
    }
  return n;
}

static void
test_dues (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(SteadCrop) other = tomatoes ();
  g_autofree char *text = NULL;
  gint64 id = plant (farm, crop);

  /* Without a thermometer that is followed nothing is asked for. */
  g_assert_cmpint (count_dues (farm, id, STEAD_DUE_TASK, &text), ==, 0);
  read_march (farm, 30);
  g_assert_cmpint (count_dues (farm, id, STEAD_DUE_TASK, &text), ==, 1);
  if (farm_in_english ())
    g_assert_cmpstr (text, ==, "Read the thermometer: outdoors.");
  /* A crop that shares it does not ask again. */
  g_free (other->batch.name);
  other->batch.name = g_strdup ("Zucchini");
  g_assert_cmpint (count_dues (farm, plant (farm, other), STEAD_DUE_TASK, &text), ==, 0);
  read_day (farm, march (31), 25, 15, NAN);
  g_assert_cmpint (count_dues (farm, id, STEAD_DUE_TASK, &text), ==, 0);
  g_assert_cmpint (count_dues (farm, id, STEAD_DUE_DONE, &text), ==, 1);
  pick (farm, id, march (27), 2, 0);
  g_assert_cmpint (count_dues (farm, id, STEAD_DUE_TASK, &text), ==, 1);
  if (farm_in_english ())
    g_assert_cmpstr (text, ==, "Pick Tomatoes.");
  pick (farm, id, march (29), 2, 0);
  g_assert_cmpint (count_dues (farm, id, STEAD_DUE_TASK, &text), ==, 0);
  pick (farm, id, march (31), 2, 0);
  g_assert_cmpint (count_dues (farm, id, STEAD_DUE_DONE, &text), ==, 2);
}

/* A cold night in a heated house, and a hot day, are warnings. */
static void
test_night (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autofree char *text = NULL;
  SteadPlaceFacts place = { .name = g_strdup ("Bay 1"), .kind = STEAD_PLACE_BAY, .area_m2 = NAN };
  SteadGlasshouse house = { 0, 100, 4, 200, 0.75, 15, 0, STEAD_FUEL_OIL, 0.8, 90 };
  SteadClimateDay day = { .day = march (31), .min_c = 12.5, .max_c = 25, .rh_frac = NAN, .light_mol = NAN };

  FARM_DO (farm, stead_place_repo_save (farm->store, &place, &farm_error));
  crop->climate_id = house.place_id = day.place_id = place.id;
  plant (farm, crop);
  FARM_DO (farm, stead_glasshouse_repo_save (farm->store, &house, &farm_error));
  FARM_DO (farm, stead_climate_repo_save (farm->store, &day, FALSE, &farm_error));
  g_assert_cmpint (count_dues (farm, crop->batch.id, STEAD_DUE_WARNING, &text), ==, 0);
  day.min_c = 11.5;
  FARM_DO (farm, stead_climate_repo_save (farm->store, &day, FALSE, &farm_error));
  g_assert_cmpint (count_dues (farm, crop->batch.id, STEAD_DUE_WARNING, &text), ==, 1);
  g_assert_nonnull (strstr (text, "59"));      /* 15 °C */
  day.min_c = 16;
  day.max_c = 36;
  FARM_DO (farm, stead_climate_repo_save (farm->store, &day, FALSE, &farm_error));
  g_assert_cmpint (count_dues (farm, crop->batch.id, STEAD_DUE_WARNING, &text), ==, 1);
  g_free (place.name);
}

static void
test_question (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = tomatoes ();
  g_autoptr(SteadCropAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *sentence = NULL, *plain = NULL;
  g_autoptr(JsonNode) figures = NULL;

  g_assert_false (stead_question_ask (farm->store, "crop", NULL, &sentence, &figures, &error));
  g_assert_nonnull (error);
  g_clear_error (&error);
  plant (farm, crop);
  read_march (farm, 30);
  g_assert_true (stead_question_ask (farm->store, "crop", "tomatoes", &sentence, &figures, &error));
  g_assert_no_error (error);
  answer = ask (farm, crop->batch.id);
  plain = stead_words_plain (answer->sentence);
  g_assert_cmpstr (sentence, ==, plain);
  g_assert_cmpstr (json_object_get_string_member (json_node_get_object (figures), "first_pick"), ==, "2026-04-09");
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (json_node_get_object (figures), "degree_days_c"),
                                  300, 1e-6);
}

#define ADD(path, func) g_test_add ("/answer/crop/" path, Farm, NULL, farm_set_up, func, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("ripe", test_ripe);
  ADD ("far-ahead", test_far_ahead);
  ADD ("gap", test_gap);
  ADD ("no-readings", test_no_readings);
  ADD ("usual-year", test_usual_year);
  ADD ("not-set-out", test_not_set_out);
  ADD ("own-year", test_own_year);
  ADD ("picks", test_picks);
  ADD ("picked-on", test_picked_on);
  ADD ("weeks", test_weeks);
  ADD ("lost", test_lost);
  ADD ("ended", test_ended);
  ADD ("air", test_air);
  ADD ("fish-feed", test_fish_feed);
  ADD ("whys", test_whys);
  ADD ("cost-why", test_cost_why);
  ADD ("names", test_names);
  ADD ("pick-cost", test_pick_cost);
  ADD ("outlook", test_outlook);
  ADD ("dues", test_dues);
  ADD ("night", test_night);
  ADD ("question", test_question);
  return g_test_run ();
}
