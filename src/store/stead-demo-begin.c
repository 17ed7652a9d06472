/* stead-demo-begin.c - what is there before the first day: people, places, things, hens. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-asset-repo.h"
#include "store/stead-demo-writer-private.h"
#include "store/stead-farm-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-joint-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-overhead-repo.h"
#include "store/stead-place-repo.h"

/* One cup in mL (NIST Special Publication 811, appendix B). */
#define CUP_ML 236.5882365

/* --- the farm, its people, places and things ---------------------------------------- */

/* A description without a rate gives a farm that charges none. */
static gboolean
write_overhead (SteadDemoWriter  *writer,
                GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  SteadOverhead overhead = { STEAD_OVERHEAD_HOURS, (gint64) round (100 * stead_demo_number_if (reader, "farm", "overhead_cost", 0)),
                             stead_demo_number_if (reader, "farm", "overhead_hours", 0) };

  return overhead.planned_cents == 0 || stead_overhead_repo_set (writer->store, &overhead, error);
}

static gboolean
write_farm (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  static const char * const units[] = { "us", "metric", NULL };
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *name = stead_demo_text (reader, "farm", "name");
  g_autofree char *address = stead_demo_text (reader, "farm", "address");
  g_autofree char *currency = stead_demo_text (reader, "farm", "currency");
  g_autofree char *school = stead_demo_text (reader, "farm", "school_year");
  SteadDay start = stead_demo_day_of_year (writer->story, "farm", school, 0);
  SteadFarm farm = { .name = name, .address = address, .currency = currency,
                     .units = (SteadUnitSystem) stead_demo_word_of (writer, "farm", "units", units),
                     .elevation_m = stead_demo_number (reader, "farm", "elevation_m"),
                     .labor_cents_hour = stead_demo_cents (reader, "farm", "labor_hour") };

  if (!stead_demo_sound (writer, error))
    return FALSE;
  stead_day_split (start, NULL, &farm.school_year_month, &farm.school_year_mday);
  return stead_farm_repo_set (writer->store, &farm, error) && write_overhead (writer, error);
}

/* School ends in early June; students come and go with it. */
static SteadDay
graduation (SteadDemoWriter *writer,
            int              years)
{
  int year, month;

  stead_day_split (writer->story->today, &year, &month, NULL);
  return stead_day_new (year + (month >= 6) + years, 6, 5);
}

static void
remember_student (SteadDemoWriter *writer,
                  gint64           id,
                  SteadDay         to)
{
  SteadDemoStudent *student = g_new0 (SteadDemoStudent, 1);

  *student = (SteadDemoStudent) { id, to - 4 * 365, to };
  g_ptr_array_add (writer->students, student);
}

static gboolean
write_person (SteadDemoWriter  *writer,
              gconstpointer     what,
              GError          **error)
{
  static const char * const roles[] = { "student", "advisor", "helper", NULL };
  const char *group = what;
  SteadDay graduates = graduation (writer, (int) stead_demo_number_if (&writer->story->reader, group,
                                                                       "graduates_in", 0));
  g_autofree char *name = g_strdup (stead_demo_group_name (group));
  SteadPerson person = { .name = name, .left_on = STEAD_DAY_NONE,
                         .role = (SteadPersonRole) stead_demo_word_of (writer, group, "role", roles) };

  if (person.role == STEAD_PERSON_STUDENT)
    {
      stead_day_split (graduates, &person.class_year, NULL, NULL);
      person.left_on = graduates < writer->story->today ? graduates : STEAD_DAY_NONE;
    }
  if (!stead_demo_sound (writer, error) || !stead_person_repo_save (writer->store, &person, error))
    return FALSE;
  if (person.role == STEAD_PERSON_STUDENT)
    remember_student (writer, person.id, graduates);
  else if (person.role == STEAD_PERSON_ADVISOR)
    writer->advisor_id = person.id;
  else
    writer->helper_id = person.id;
  return TRUE;
}

static gboolean
write_place (SteadDemoWriter  *writer,
             gconstpointer     what,
             GError          **error)
{
  static const char * const kinds[] = { "coop", "tank", "bay", "kitchen", "stall", "store", NULL };
  const char *group = what;
  g_autofree char *name = g_strdup (stead_demo_group_name (group));
  SteadPlaceFacts place = { .name = name,
                            .kind = (SteadPlaceKind) stead_demo_word_of (writer, group, "kind", kinds),
                            .area_m2 = stead_demo_number_if (&writer->story->reader, group, "area_m2", NAN) };

  if (!stead_demo_sound (writer, error) || !stead_place_repo_save (writer->store, &place, error))
    return FALSE;
  stead_demo_set_id (writer, group, place.id);
  return TRUE;
}

static gboolean
write_item (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  static const char * const kinds[] = { "feed", "bedding", "packaging", "ingredient", "seed", "supply", "livestock", "produce", NULL };
  const char *group = what;
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *name = g_strdup (stead_demo_group_name (group));
  g_autofree char *storage = stead_demo_text_if (reader, group, "storage");
  const SteadUnit *unit = stead_demo_unit_of (writer, group);
  double reorder = stead_demo_number_if (reader, group, "reorder", NAN);
  g_autofree char *allergens = stead_demo_text_if (reader, group, "allergens");
  g_autofree char *food = stead_demo_text_if (reader, group, "food");
  g_autofree char *label = stead_demo_text_if (reader, group, "label");
  g_autofree char *source = stead_demo_text_if (reader, group, "measured");
  SteadItem item = { .name = name, .storage = storage, .unit = unit,
                     .kind = (SteadItemKind) stead_demo_word_of (writer, group, "kind", kinds),
                     .shelf_life_days = (int) stead_demo_number_if (reader, group, "shelf_life_days", 0),
                     .allergens = allergens, .food = food, .label_name = label, .measure_source = source,
                     .density_kg_l = stead_demo_number_if (reader, group, "cup_g", NAN) / CUP_ML,
                     .piece_kg = stead_demo_number_if (reader, group, "piece_g", NAN) / 1000,
                     .yield_frac = stead_demo_number_if (reader, group, "yield", 0) };

  if (!stead_demo_sound (writer, error))
    return FALSE;
  item.reorder_base = stead_quantity_to_base (reorder, unit);
  if (!stead_item_repo_save (writer->store, &item, error))
    return FALSE;
  stead_demo_set_id (writer, group, item.id);
  return TRUE;
}

/* --- the flock and what lasts --------------------------------------------------------- */

/* By which the cost of the flock can be shared between eggs and hens. */
static gboolean
write_hen_weight (SteadDemoWriter  *writer,
                  GError          **error)
{
  g_autoptr(SteadJointPlan) plan = stead_joint_plan_new ();
  double pounds = stead_demo_number_if (&writer->story->reader, "flock", "hen_weight_lb", 0);

  if (!(pounds > 0))
    return TRUE;
  stead_joint_plan_set (plan, "hens", "weight", stead_quantity_to_base (pounds, stead_unit_by_id ("lb")));
  return stead_joint_repo_save (writer->store, writer->flock_id, plan, error);
}

static gboolean
write_flock (SteadDemoWriter  *writer,
             gconstpointer     what,
             GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadFlock) flock = stead_flock_new ();
  g_autofree char *place = stead_demo_text (reader, "flock", "place");
  g_autofree char *feed = stead_demo_text (reader, "flock", "feed");

  flock->name = stead_demo_text (reader, "flock", "name");
  flock->strain = stead_demo_text_if (reader, "flock", "strain");
  flock->note = stead_demo_text_if (reader, "flock", "note");
  flock->place_id = stead_demo_id_of (writer, "place", place);
  flock->housed_on = writer->story->first;
  flock->hatched_on = writer->story->first - (SteadDay) (7 * stead_demo_number (reader, "flock", "age_weeks"));
  flock->birds = (gint64) stead_demo_number (reader, "flock", "hens");
  flock->birds_cost_cents = flock->birds * stead_demo_cents (reader, "flock", "hen_cost");
  flock->salvage_cents = flock->birds * stead_demo_cents (reader, "flock", "hen_salvage");
  flock->eggs_expected = stead_demo_number (reader, "flock", "eggs_expected");
  flock->care_minutes_day = stead_demo_number (reader, "flock", "care_minutes");
  flock->feed_item_id = stead_demo_id_of (writer, "item", feed);
  flock->bedding_days = (int) stead_demo_number (reader, "flock", "bedding_days");
  if (!stead_demo_sound (writer, error) || !stead_flock_repo_save (writer->store, flock, error))
    return FALSE;
  writer->flock_id = flock->id;
  if (!write_hen_weight (writer, error))
    return FALSE;
  return stead_demo_cash_begin_batch (writer, "flock", flock->id, flock->birds_cost_cents, error);
}

static gboolean
write_asset (SteadDemoWriter  *writer,
             gconstpointer     what,
             GError          **error)
{
  const char *group = what;
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadAsset) asset = stead_asset_new ();
  SteadAssetShare share = { writer->flock_id, stead_demo_number (reader, group, "share") };

  asset->name = g_strdup (stead_demo_group_name (group));
  asset->bought_on = stead_demo_day_at (writer, -(int) stead_demo_number (reader, group, "days_before"));
  asset->cost_cents = stead_demo_cents (reader, group, "cost");
  asset->extra_cents = (gint64) round (100 * stead_demo_number_if (reader, group, "extra", 0));
  asset->salvage_cents = (gint64) round (100 * stead_demo_number_if (reader, group, "salvage", 0));
  asset->life_years = stead_demo_number (reader, group, "years");
  g_array_append_val (asset->shares, share);
  return stead_demo_sound (writer, error) && stead_asset_repo_save (writer->store, asset, error) &&
         stead_demo_cash_buy_asset (writer, asset, error);
}

static gboolean
write_spill (SteadDemoWriter  *writer,
             gconstpointer     what,
             GError          **error)
{
  double base = stead_quantity_to_base (writer->story->spilled_lb, stead_unit_by_id ("lb"));
  g_autoptr(GPtrArray) lots = stead_lot_repo_list (writer->store, FALSE, error);

  for (guint i = 0; lots != NULL && i < lots->len; i++)
    {
      const SteadLot *lot = lots->pdata[i];

      if (lot->item_kind == STEAD_ITEM_FEED)
        return stead_lot_repo_adjust (writer->store, lot->id, STEAD_MOVE_LOST,
                                      stead_demo_day_at (writer, 0), -base,
                                      _("A bag tore open on the way; wet feed was thrown out"), writer->helper_id,
                                      error);
    }
  return lots != NULL;
}

/* --- all --------------------------------------------------------------------------- */

gboolean
stead_demo_begin_farm (SteadDemoWriter  *writer,
                       GError          **error)
{
  return stead_demo_act (writer, "farm", write_farm, NULL, error) &&
         stead_demo_write_groups (writer, "person", write_person, error) &&
         stead_demo_write_groups (writer, "place", write_place, error) &&
         stead_demo_write_groups (writer, "item", write_item, error);
}

gboolean
stead_demo_begin_flock (SteadDemoWriter  *writer,
                        GError          **error)
{
  return stead_demo_act (writer, "flock", write_flock, NULL, error) &&
         stead_demo_write_groups (writer, "asset", write_asset, error) &&
         (!(writer->story->spilled_lb > 0) || stead_demo_act (writer, "feed", write_spill, NULL, error));
}
