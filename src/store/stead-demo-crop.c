/* stead-demo-crop.c - what is done to a crop of the demo farm: sown, looked after, picked and sold.
 *
 * A crop gets ripe by the core's own law with a need of its own, which the farm does
 * not know.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#include "core/stead-harvest.h"
#include "core/stead-money.h"
#include "core/stead-us-units.h"
#include "store/stead-demo-bay-private.h"
#include "store/stead-harvest-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-routine-repo.h"

/* --- sowing ------------------------------------------------------------------------ */

static gboolean
write_routine (SteadDemoWriter  *writer,
               SteadDemoCrop    *crop,
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
  SteadDemoCrop *now = (SteadDemoCrop *) what;
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

gboolean
stead_demo_sow (SteadDemoWriter  *writer,
                SteadDemoCrop    *crop,
                GError          **error)
{
  return stead_demo_act (writer, stead_demo_group_name (crop->group), write_crop, crop, error);
}

/* --- the log ------------------------------------------------------------------------- */

static gboolean
write_routine_done (SteadDemoWriter  *writer,
                    gconstpointer     what,
                    GError          **error)
{
  const SteadDemoCrop *crop = what;

  return stead_routine_repo_done (writer->store, crop->routine_id, stead_demo_day_at (writer, writer->at),
                                  stead_demo_person_on (writer, writer->at), NULL, error);
}

static gboolean
write_lost_plant (SteadDemoWriter  *writer,
                  gconstpointer     what,
                  GError          **error)
{
  SteadDemoCrop *crop = (SteadDemoCrop *) what;
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

gboolean
stead_demo_live_log (SteadDemoWriter  *writer,
                     SteadDemoCrop    *crop,
                     GError          **error)
{
  const char *name = stead_demo_group_name (crop->group);
  int age = writer->at - crop->set_out_at;

  if (age > 0 && age % 7 == 0 && !stead_demo_act (writer, name, write_routine_done, crop, error))
    return FALSE;
  if (age < 1 || writer->at >= writer->story->n_days - STEAD_DEMO_CALM_DAYS || gsl_rng_uniform (writer->bay->rng) >= 0.012)
    return TRUE;
  return stead_demo_act (writer, name, write_lost_plant, crop, error);
}

/* --- picking --------------------------------------------------------------------------- */

/* What got ripe since the last pick. */
static double
ripe_kg (SteadDemoWriter     *writer,
         const SteadDemoCrop *crop)
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
  return round (4 * kg / STEAD_POUND_KG) / 4 * STEAD_POUND_KG;
}

/* The lot takes its share of what the crop has cost, over all that is still to come. */
static gint64
take_cost (SteadDemoWriter *writer,
           SteadDemoCrop   *crop,
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
  SteadDemoCrop     *crop;
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

gboolean
stead_demo_live_pick (SteadDemoWriter  *writer,
                      SteadDemoCrop    *crop,
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
gboolean
stead_demo_live_sale (SteadDemoWriter      *writer,
                      const SteadDemoCrop  *crop,
                      GError              **error)
{
  g_autofree char *gives = stead_demo_text (&writer->story->reader, crop->group, "gives");
  gint64 item = stead_demo_id_of (writer, "item", gives);

  if (crop->picked_at < 0 || stead_day_weekday (stead_demo_day_at (writer, writer->at)) != 6 ||
      writer->at >= writer->story->n_days - 4)
    return TRUE;
  return stead_demo_sound (writer, error) &&
         stead_demo_act (writer, _("Sold at the market"), write_sale, &item, error);
}
