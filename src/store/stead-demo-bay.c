/* stead-demo-bay.c - the demo farm's tomatoes: the house that they stand in, its
 * thermometer, the crops with their log and routine, the fuel, and what was picked.
 *
 * The house has days of its own, which scatter about a usual year in runs; most of
 * them are read.  A crop gets ripe by the core's own law with a need of its own, which
 * the farm does not know.  Chance comes from a generator of its own, so that what
 * happens here leaves the hens and the fish as they are.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#include "core/stead-greenhouse.h"
#include "core/stead-harvest.h"
#include "core/stead-money.h"
#include "core/stead-typical-year.h"
#include "store/stead-crop-repo.h"
#include "store/stead-demo-writer-private.h"
#include "store/stead-harvest-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-routine-repo.h"

#define POUND_KG 0.45359237
#define GALLON_L 3.785411784

/* The last days are quiet, so that only what the description wants is out of place. */
#define CALM_DAYS 10

/* Fuel is measured, and laid on the crop that stands there, every so many days. */
#define FUEL_DAYS 14

/* How long a warm or cold spell holds on: what is left of it the next day. */
#define SPELL 0.6

/* One crop as it really is. */
typedef struct
{
  char     *group;        /* of the description */
  gint64    id;           /* 0: not sown yet */
  gint64    routine_id;
  int       sown_at, set_out_at;
  int       ends_at;      /* -1: under way today */
  gint64    plants;
  double    need_c;       /* the true one */
  double    plant_kg;     /* the true one */
  int       pick_days;
  double    sum_c;
  int       ripe_at;      /* -1: not yet */
  int       picked_at;
  gint64    cost_cents;   /* of seed and fuel, not carried away by a lot yet */
} Crop;

struct _SteadDemoBay
{
  gsl_rng          *rng;
  GPtrArray        *crops;        /* of Crop */
  gint64            place_id;     /* of the thermometer; 0: the house is not built yet */
  int               begins_at;
  SteadTypicalYear  outdoors, inside;
  SteadGlasshouse   house;
  double            off_c;        /* what today's spell is off the usual day */
};

static void
crop_free (gpointer data)
{
  Crop *crop = data;

  g_free (crop->group);
  g_free (crop);
}

/* --- reading the description --------------------------------------------------- */

/* Twelve temperatures in °F, January first. */
static void
read_year (SteadDemoReader *reader,
           const char      *group,
           const char      *key,
           double          *out_c)
{
  g_auto(GStrv) months = stead_demo_list (reader, group, key);

  if (g_strv_length (months) != 12)
    {
      stead_demo_fault (reader, group, key);
      return;
    }
  for (int i = 0; i < 12; i++)
    out_c[i] = (stead_demo_number_of (reader, months[i]) - 32) / 1.8;
}

static void
read_crops (SteadDemoWriter *writer,
            SteadDemoBay    *bay)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) names = stead_demo_groups (reader, "crop");

  for (char **name = names; *name != NULL; name++)
    {
      Crop *crop = g_new0 (Crop, 1);

      crop->group = g_strdup (*name);
      crop->sown_at = stead_demo_days_back (writer, *name, "sown", 0);
      crop->set_out_at = stead_demo_days_back (writer, *name, "set_out", 0);
      crop->ends_at = stead_demo_days_back (writer, *name, "ended", -1);
      crop->plants = (gint64) stead_demo_number (reader, *name, "plants");
      crop->need_c = stead_demo_number (reader, *name, "true_need");
      crop->plant_kg = POUND_KG * stead_demo_number (reader, *name, "true_yield_lb");
      crop->pick_days = (int) (7 * stead_demo_number (reader, *name, "pick_weeks"));
      crop->ripe_at = crop->picked_at = -1;
      g_ptr_array_add (bay->crops, crop);
    }
}

static void
read_house (SteadDemoReader *reader,
            SteadGlasshouse *out)
{
  const char *group = "glasshouse";

  *out = (SteadGlasshouse) {
    .cover_m2 = stead_demo_number (reader, group, "cover_m2"),
    .u_w_m2_k = stead_cover_u_w_m2_c (STEAD_COVER_DOUBLE_FILM),
    .volume_m3 = stead_demo_number (reader, group, "volume_m3"),
    .changes_hour = STEAD_AIR_CHANGES_TIGHT,
    .inside_c = stead_demo_number (reader, group, "inside_c"),
    .sun_lift_c = stead_demo_number (reader, group, "sun_lift_c"),
    .fuel = STEAD_FUEL_PROPANE,
    .efficiency_frac = stead_demo_number (reader, group, "efficiency"),
    .fuel_cents = (double) stead_demo_cents (reader, group, "fuel_gallon") / GALLON_L,
  };
}

/**
 * stead_demo_bay_new:
 *
 * Returns: (transfer full): the bay before its first day; the reader keeps faults
 */
SteadDemoBay *
stead_demo_bay_new (SteadDemoWriter *writer)
{
  SteadDemoBay *bay = g_new0 (SteadDemoBay, 1);
  SteadDemoReader *reader = &writer->story->reader;

  bay->rng = gsl_rng_alloc (gsl_rng_mt19937);
  gsl_rng_set (bay->rng, 1 + (unsigned long) stead_demo_number (reader, "farm", "seed"));
  bay->crops = g_ptr_array_new_with_free_func (crop_free);
  bay->begins_at = stead_demo_days_back (writer, "glasshouse", "built", 0);
  read_year (reader, "weather", "high", bay->outdoors.max_c);
  read_year (reader, "weather", "low", bay->outdoors.min_c);
  read_year (reader, "glasshouse", "high", bay->inside.max_c);
  read_year (reader, "glasshouse", "low", bay->inside.min_c);
  bay->outdoors.spread_c = 4;
  read_house (reader, &bay->house);
  read_crops (writer, bay);
  return bay;
}

void
stead_demo_bay_free (SteadDemoBay *bay)
{
  if (bay == NULL)
    return;
  gsl_rng_free (bay->rng);
  g_ptr_array_unref (bay->crops);
  g_free (bay);
}

/* --- building ------------------------------------------------------------------- */

static gboolean
write_usual (SteadDemoWriter         *writer,
             gint64                   place,
             const SteadTypicalYear  *year,
             GError                 **error)
{
  SteadUsualYear usual;

  for (int i = 0; i < 12; i++)
    {
      usual.min_c[i] = year->min_c[i];
      usual.max_c[i] = year->max_c[i];
    }
  return stead_climate_repo_set_usual (writer->store, place, &usual, error);
}

static gboolean
write_bay (SteadDemoWriter  *writer,
           gconstpointer     what,
           GError          **error)
{
  SteadDemoBay *bay = writer->bay;
  g_autofree char *place = stead_demo_text (&writer->story->reader, "glasshouse", "place");

  bay->place_id = stead_demo_id_of (writer, "place", place);
  bay->house.place_id = bay->place_id;
  return stead_demo_sound (writer, error) &&
         stead_typical_year_is_valid (&bay->outdoors) && stead_typical_year_is_valid (&bay->inside) &&
         write_usual (writer, 0, &bay->outdoors, error) &&
         write_usual (writer, bay->place_id, &bay->inside, error) &&
         stead_glasshouse_repo_save (writer->store, &bay->house, error);
}

/* --- the thermometer --------------------------------------------------------------- */

/* In cold weeks the heater falls short. */
static double
cold_c (SteadDemoWriter *writer)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *on = stead_demo_text (reader, "event cold snap", "on");
  int from = stead_demo_day_of_year (writer->story, "event cold snap", on, 30) - writer->story->first;
  int days = (int) stead_demo_number (reader, "event cold snap", "days");

  return writer->at >= from && writer->at < from + days ? 5 : 0;
}

/* What the house was like today. */
static SteadDayTemps
live_house (SteadDemoWriter *writer)
{
  SteadDemoBay *bay = writer->bay;
  double cold = cold_c (writer);
  SteadDayTemps temps;

  stead_typical_year_day (&bay->inside, stead_demo_day_at (writer, writer->at), &temps);
  bay->off_c = SPELL * bay->off_c + gsl_ran_gaussian (bay->rng, 1.6 * sqrt (1 - SPELL * SPELL));
  temps.max_c += bay->off_c + gsl_ran_gaussian (bay->rng, 0.8) - cold / 2;
  temps.min_c += 0.4 * bay->off_c + gsl_ran_gaussian (bay->rng, 0.5) - cold;
  temps.max_c = MAX (temps.max_c, temps.min_c + 1);
  return temps;
}

/* A thermometer is read to the degree. */
static double
read_degree (double temp_c)
{
  return (round (temp_c * 1.8 + 32) - 32) / 1.8;
}

/* Sun on the bench: most in June, least in December, from memory. */
static double
light_mol (SteadDemoWriter *writer)
{
  int doy = stead_day_of_year (stead_demo_day_at (writer, writer->at));
  double usual = 15 + 8 * cos (2 * G_PI * (doy - 172) / 365.25);
  double today = usual + gsl_ran_gaussian (writer->bay->rng, 2.5);

  return round (10 * MAX (3, today)) / 10;
}

static gboolean
write_reading (SteadDemoWriter  *writer,
               gconstpointer     what,
               GError          **error)
{
  const SteadDayTemps *temps = what;
  gsl_rng *rng = writer->bay->rng;
  SteadClimateDay day = { .place_id = writer->bay->place_id, .day = stead_demo_day_at (writer, writer->at),
                          .min_c = read_degree (temps->min_c), .max_c = read_degree (temps->max_c),
                          .person_id = stead_demo_person_on (writer, writer->at) };
  double rh_frac = 0.66 + gsl_ran_gaussian (rng, 0.03);

  day.rh_frac = round (100 * CLAMP (rh_frac, 0.5, 0.75)) / 100;
  day.light_mol = light_mol (writer);
  if (gsl_rng_uniform (rng) < 0.3)
    day.light_mol = NAN;
  return stead_climate_repo_save (writer->store, &day, FALSE, error);
}

static gboolean
live_thermometer (SteadDemoWriter      *writer,
                  const SteadDayTemps  *temps,
                  GError              **error)
{
  gboolean missed = gsl_rng_uniform (writer->bay->rng) < 0.04 &&
                    writer->at < writer->story->n_days - CALM_DAYS;

  return missed || stead_demo_act (writer, _("Temperatures of the bay"), write_reading, temps, error);
}

/* --- sowing ------------------------------------------------------------------------ */

static gboolean
write_routine (SteadDemoWriter  *writer,
               Crop             *crop,
               GError          **error)
{
  g_autoptr(SteadRoutine) routine = stead_routine_new ();

  routine->batch_id = crop->id;
  routine->name = stead_demo_text (&writer->story->reader, crop->group, "routine");
  routine->every_days = 7;
  routine->start_on = stead_demo_day_at (writer, crop->set_out_at + 7);
  if (!stead_demo_sound (writer, error) || !stead_routine_repo_save (writer->store, routine, error))
    return FALSE;
  crop->routine_id = routine->id;
  return TRUE;
}

static gboolean
write_crop (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  static const char * const systems[] = { "soil", "hydroponic", "aquaponic", NULL };
  Crop *now = (Crop *) what;
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadCrop) crop = stead_crop_new ();
  g_autofree char *place = stead_demo_text (reader, now->group, "place");

  crop->batch.name = g_strdup (stead_demo_group_name (now->group));
  crop->batch.place_id = stead_demo_id_of (writer, "place", place);
  crop->batch.started_on = crop->sown_on = stead_demo_day_at (writer, now->sown_at);
  crop->batch.care_minutes_day = stead_demo_number (reader, now->group, "care_minutes");
  crop->batch.note = stead_demo_text_if (reader, now->group, "note");
  crop->variety = stead_demo_text (reader, now->group, "variety");
  crop->system = (SteadGrowSystem) stead_demo_word_of (writer, now->group, "system", systems);
  crop->set_out_on = stead_demo_day_at (writer, now->set_out_at);
  crop->plants = now->plants;
  crop->area_m2 = stead_demo_number (reader, now->group, "area_m2");
  crop->cost_cents = stead_demo_cents (reader, now->group, "cost");
  crop->pick_weeks = now->pick_days / 7.0;
  crop->climate_id = writer->bay->place_id;
  if (!stead_demo_sound (writer, error) || !stead_crop_repo_save (writer->store, crop, error))
    return FALSE;
  now->id = crop->batch.id;
  now->cost_cents = crop->cost_cents;
  stead_demo_set_id (writer, now->group, now->id);
  return stead_demo_cash_begin_batch (writer, now->group, now->id, crop->cost_cents, error) &&
         write_routine (writer, now, error);
}

/* --- the log ------------------------------------------------------------------------- */

static gboolean
write_routine_done (SteadDemoWriter  *writer,
                    gconstpointer     what,
                    GError          **error)
{
  const Crop *crop = what;

  return stead_routine_repo_done (writer->store, crop->routine_id, stead_demo_day_at (writer, writer->at),
                                  stead_demo_person_on (writer, writer->at), NULL, error);
}

static gboolean
write_lost_plant (SteadDemoWriter  *writer,
                  gconstpointer     what,
                  GError          **error)
{
  Crop *crop = (Crop *) what;
  g_auto(GStrv) reasons = stead_demo_list (&writer->story->reader, crop->group, "lost");
  SteadCropEntry entry = { .crop_id = crop->id, .day = stead_demo_day_at (writer, writer->at), .lost = 1,
                           .person_id = stead_demo_person_on (writer, writer->at) };
  guint n = g_strv_length (reasons);

  if (n == 0)
    return TRUE;
  entry.reason = reasons[gsl_rng_uniform_int (writer->bay->rng, n)];
  crop->plants--;
  return stead_crop_repo_save_entry (writer->store, &entry, error);
}

static gboolean
live_log (SteadDemoWriter  *writer,
          Crop             *crop,
          GError          **error)
{
  const char *name = stead_demo_group_name (crop->group);
  int age = writer->at - crop->set_out_at;

  if (age > 0 && age % 7 == 0 && !stead_demo_act (writer, name, write_routine_done, crop, error))
    return FALSE;
  if (age < 1 || writer->at >= writer->story->n_days - CALM_DAYS || gsl_rng_uniform (writer->bay->rng) >= 0.012)
    return TRUE;
  return stead_demo_act (writer, name, write_lost_plant, crop, error);
}

/* --- picking --------------------------------------------------------------------------- */

/* What got ripe since the last pick. */
static double
ripe_kg (SteadDemoWriter *writer,
         const Crop      *crop)
{
  SteadDay start = stead_demo_day_at (writer, crop->ripe_at);
  SteadHarvestPlan plan = {
    .shape = STEAD_HARVEST_PLATEAU, .plants = (double) crop->plants, .plant_kg = crop->plant_kg,
    .plant_low_kg = crop->plant_kg, .plant_high_kg = crop->plant_kg,
    .start = start, .start_early = start, .start_late = start,
    .span = crop->pick_days, .last_day = start + crop->pick_days - 1,
  };
  int from = MAX (crop->picked_at + 1, crop->ripe_at);
  double luck = 1 + gsl_ran_gaussian (writer->bay->rng, 0.15);
  SteadHarvestSpan span;

  stead_harvest_between (&plan, stead_demo_day_at (writer, from), stead_demo_day_at (writer, writer->at), &span);
  return span.kg * MAX (0.3, luck);
}

/* A scale that tells a quarter of a pound. */
static double
weigh (double kg)
{
  return round (4 * kg / POUND_KG) / 4 * POUND_KG;
}

/* The lot takes its share of what the crop has cost, over all that is still to come. */
static gint64
take_cost (SteadDemoWriter *writer,
           Crop            *crop,
           double           kg,
           double           rest_kg)
{
  double part = (writer->at - crop->ripe_at) / (double) crop->pick_days;
  double left_kg = (double) crop->plants * crop->plant_kg * (1 - stead_harvest_share (STEAD_HARVEST_PLATEAU, part));
  gint64 cents = stead_money_round ((double) crop->cost_cents * kg / (kg + rest_kg + MAX (left_kg, 0)));

  crop->cost_cents -= cents;
  return cents;
}

typedef struct
{
  Crop     *crop;
  double    good_kg, lost_kg;
  double    rest_kg;    /* that goes into another lot on the same day */
  gboolean  second;
} Pick;

static gboolean
write_pick (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  const Pick *pick = what;
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();
  g_autofree char *item = stead_demo_text (reader, pick->crop->group, "gives");
  g_auto(GStrv) reasons = stead_demo_list (reader, pick->crop->group, "thrown_out");
  guint n = g_strv_length (reasons);

  harvest->batch_id = pick->crop->id;
  harvest->day = stead_demo_day_at (writer, writer->at);
  harvest->quantity_base = pick->good_kg;
  if (pick->good_kg > 0)
    {
      harvest->item_id = stead_demo_id_of (writer, "item", item);
      harvest->cost_cents = take_cost (writer, pick->crop, pick->good_kg, pick->rest_kg);
      harvest->grade = g_strdup (pick->second ? "second" : "first");
    }
  if (pick->lost_kg > 0 && n > 0)
    {
      harvest->lost_base = pick->lost_kg;
      harvest->reason = g_strdup (reasons[gsl_rng_uniform_int (writer->bay->rng, n)]);
    }
  harvest->is_last = writer->at == pick->crop->ends_at;
  harvest->person_id = stead_demo_person_on (writer, writer->at);
  return stead_demo_sound (writer, error) && stead_harvest_repo_save (writer->store, harvest, error);
}

static gboolean
live_pick (SteadDemoWriter  *writer,
           Crop             *crop,
           GError          **error)
{
  gsl_rng *rng = writer->bay->rng;
  g_autofree char *name = g_strdup_printf (_("Picking of %s"), stead_demo_group_name (crop->group));
  double kg = ripe_kg (writer, crop);
  double second_kg = weigh (kg * (0.12 + 0.06 * gsl_rng_uniform (rng)));
  double lost_kg = weigh (kg * 0.08 * gsl_rng_uniform (rng));
  Pick first = { crop, weigh (kg) - second_kg - lost_kg, lost_kg, 0, FALSE };
  Pick second = { crop, second_kg, 0, first.good_kg, TRUE };

  if (first.good_kg < 0.1)
    return TRUE;
  crop->picked_at = writer->at;
  return (second_kg < 0.1 || stead_demo_act (writer, name, write_pick, &second, error)) &&
         stead_demo_act (writer, name, write_pick, &first, error);
}

static gboolean
write_sale (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  gint64 item = *(const gint64 *) what;
  SteadDay day = stead_demo_day_at (writer, writer->at);
  SteadStock stock;

  if (!stead_lot_repo_stock (writer->store, item, day, 1, &stock, error))
    return FALSE;
  stead_demo_cash_sold_of (writer, item, stock.on_hand_base);
  return stock.on_hand_base <= 0 ||
         stead_lot_repo_sell (writer->store, item, day, stock.on_hand_base, _("Sold at the market"), writer->helper_id,
                              error);
}

/* What was picked up to Friday is sold on Saturday; the last days' lots are there to be seen. */
static gboolean
live_sale (SteadDemoWriter  *writer,
           const Crop       *crop,
           GError          **error)
{
  g_autofree char *gives = stead_demo_text (&writer->story->reader, crop->group, "gives");
  gint64 item = stead_demo_id_of (writer, "item", gives);

  if (crop->picked_at < 0 || stead_day_weekday (stead_demo_day_at (writer, writer->at)) != 6 ||
      writer->at >= writer->story->n_days - 4)
    return TRUE;
  return stead_demo_sound (writer, error) &&
         stead_demo_act (writer, _("Sold at the market"), write_sale, &item, error);
}

/* --- fuel -------------------------------------------------------------------------------- */

typedef struct
{
  Crop   *crop;
  gint64  item;
  double  liters;
} Burned;

static gboolean
write_fuel (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  const Burned *burned = what;

  return stead_lot_repo_use (writer->store, burned->item, burned->crop->id, stead_demo_day_at (writer, writer->at),
                             burned->liters, stead_demo_person_on (writer, writer->at), error);
}

static double
burned_l (SteadDemoWriter *writer)
{
  const SteadGlasshouse *house = &writer->bay->house;
  const SteadGreenhouseSkin skin = { house->cover_m2, house->u_w_m2_k };
  double ua = stead_greenhouse_ua_w_c (&skin, 1) + stead_greenhouse_leak_ua_w_c (house->volume_m3, house->changes_hour);
  double degree_days = 0;

  for (int i = 0; i < FUEL_DAYS; i++)
    degree_days += stead_typical_year_heating_degree_day (&writer->bay->outdoors, house->inside_c - house->sun_lift_c,
                                                          stead_demo_day_at (writer, writer->at - i));
  return stead_fuel_needed (house->fuel, ua * degree_days * 24 / 1000, house->efficiency_frac);
}

/* The first crop that stands in the bay bears it. */
static Crop *
crop_that_bears (SteadDemoWriter *writer)
{
  for (guint i = 0; i < writer->bay->crops->len; i++)
    {
      Crop *crop = writer->bay->crops->pdata[i];

      if (crop->id != 0 && writer->at >= crop->set_out_at && (crop->ends_at < 0 || writer->at < crop->ends_at))
        return crop;
    }
  return NULL;
}

static gboolean
live_fuel (SteadDemoWriter  *writer,
           GError          **error)
{
  g_autofree char *fuel = stead_demo_text (&writer->story->reader, "glasshouse", "fuel");
  Burned burned = { crop_that_bears (writer), stead_demo_id_of (writer, "item", fuel), 0 };

  if ((writer->at - writer->bay->begins_at) % FUEL_DAYS != FUEL_DAYS - 1 || burned.crop == NULL)
    return TRUE;
  burned.liters = round (2 * burned_l (writer) / GALLON_L) / 2 * GALLON_L;
  if (!(burned.liters > GALLON_L))
    return TRUE;
  burned.crop->cost_cents += stead_money_round (burned.liters * writer->bay->house.fuel_cents);
  /* The next two weeks' fuel is there too. */
  return stead_demo_buy_for (writer, fuel, 2 * burned.liters, error) &&
         stead_demo_act (writer, fuel, write_fuel, &burned, error);
}

/* --- the whole ---------------------------------------------------------------------------- */

static gboolean
write_end (SteadDemoWriter  *writer,
           gconstpointer     what,
           GError          **error)
{
  const Crop *crop = what;

  return stead_batch_repo_end (writer->store, crop->id, stead_demo_day_at (writer, writer->at), error);
}

static gboolean
live_crop (SteadDemoWriter      *writer,
           Crop                 *crop,
           const SteadDayTemps  *temps,
           GError              **error)
{
  static const SteadDegreeDayRule rule = { STEAD_DEGREE_DAYS_AVERAGE, 10, 30 };
  const char *name = stead_demo_group_name (crop->group);
  gboolean last = writer->at == crop->ends_at;

  if (writer->at == crop->sown_at && !stead_demo_act (writer, name, write_crop, crop, error))
    return FALSE;
  if (crop->id == 0 || writer->at < crop->set_out_at || (crop->ends_at >= 0 && writer->at > crop->ends_at))
    return TRUE;
  crop->sum_c += stead_degree_day (&rule, temps->max_c, temps->min_c);
  if (crop->ripe_at < 0 && crop->sum_c >= crop->need_c)
    crop->ripe_at = writer->at;
  if (!live_sale (writer, crop, error) || (!last && !live_log (writer, crop, error)))
    return FALSE;
  /* Mondays and Thursdays of a week of its own. */
  if (crop->ripe_at >= 0 && (last || (writer->at - crop->ripe_at) % 7 == 0 || (writer->at - crop->ripe_at) % 7 == 3)
      && !live_pick (writer, crop, error))
    return FALSE;
  return !last || stead_demo_act (writer, name, write_end, crop, error);
}

/**
 * stead_demo_live_bay:
 *
 * One day of the house and the crops in it; the house is set up on its first day.
 *
 * Returns: %TRUE, or %FALSE with @error
 */
gboolean
stead_demo_live_bay (SteadDemoWriter  *writer,
                     GError          **error)
{
  SteadDemoBay *bay = writer->bay;
  SteadDayTemps temps;

  if (writer->at < bay->begins_at)
    return TRUE;
  if (bay->place_id == 0 && !stead_demo_act (writer, "bay", write_bay, NULL, error))
    return FALSE;
  temps = live_house (writer);
  if (!live_thermometer (writer, &temps, error) || !live_fuel (writer, error))
    return FALSE;
  for (guint i = 0; i < bay->crops->len; i++)
    if (!live_crop (writer, bay->crops->pdata[i], &temps, error))
      return FALSE;
  return TRUE;
}
