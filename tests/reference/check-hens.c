/* check-hens.c - the topics on hens, eggs and hatching. */
#include "check.h"

#include "core/stead-egg.h"
#include "core/stead-feed.h"
#include "core/stead-flock.h"
#include "core/stead-hatch.h"
#include "core/stead-hen-house.h"
#include "core/stead-lay-models.h"
#include "core/stead-lay.h"
#include "core/stead-quantity.h"

#include <math.h>
#include <string.h>

static const char * const strains[] = { "brown", NULL };

static double
in_unit (double      base,
         const char *unit)
{
  return stead_quantity_from_base (base, stead_unit_by_id (unit));
}

static double
from_unit (double      value,
           const char *unit)
{
  return stead_quantity_to_base (value, stead_unit_by_id (unit));
}

/* A count of birds or eggs must be whole. */
static gint64
count_of (CheckRow   *row,
          const char *name)
{
  double value = check_number (row, name);

  if (value < 0 || value > 1e12 || value != floor (value))
    check_bad_input (row, name);
  return (gint64) value;
}

/* hen-days */

static GArray *
changes_of (CheckRow   *row,
            const char *day_name,
            const char *hens_name)
{
  GArray *changes = g_array_new (FALSE, FALSE, sizeof (SteadFlockChange));
  gsize n = 0;
  const double *days;
  const double *hens;

  if (!check_has (row, day_name) && !check_has (row, hens_name))
    return changes;
  days = check_list (row, day_name, &n);
  hens = check_list (row, hens_name, &n);
  for (gsize i = 0; i < n; i++)
    {
      SteadFlockChange change = { (int) days[i], hens[i] };

      if (days[i] < 1 || days[i] > check_number (row, "period_d"))
        check_bad_input (row, day_name);
      g_array_append_val (changes, change);
    }
  return changes;
}

static double
hen_days (CheckRow *row)
{
  g_autoptr(GArray) deaths = changes_of (row, "died_day", "died_hens");
  g_autoptr(GArray) arrivals = changes_of (row, "added_day", "added_hens");

  return stead_flock_hen_days (check_number (row, "hens"), (int) check_number (row, "period_d"),
                               (const SteadFlockChange *) (void *) deaths->data, deaths->len,
                               (const SteadFlockChange *) (void *) arrivals->data, arrivals->len);
}

static const CheckAsk hen_days_asks[] = {
  { "hen_days", "hen-days", hen_days },
  { NULL }
};

/* laying rate */

static double
hen_day_pct (CheckRow *row)
{
  double days = check_has (row, "hen_days")
                ? check_number (row, "hen_days")
                : check_number (row, "hens") * check_number (row, "period_d");

  return 100 * stead_flock_hen_day_frac (count_of (row, "eggs"), days);
}

static double
hen_housed_pct (CheckRow *row)
{
  return 100 * stead_flock_hen_housed_frac (count_of (row, "eggs"), count_of (row, "hens_housed"),
                                            count_of (row, "period_d"));
}

static double
eggs_per_hen_housed (CheckRow *row)
{
  return stead_flock_hen_housed_frac (count_of (row, "eggs"), count_of (row, "hens_housed"), 1);
}

static const CheckAsk rate_asks[] = {
  { "hen_day_pct", "pct", hen_day_pct },
  { "hen_housed_pct", "pct", hen_housed_pct },
  { "eggs_per_hen_housed", "count", eggs_per_hen_housed },
  { NULL }
};

/* survival */

static double
survivors (CheckRow *row)
{
  double started = check_number (row, "birds_started");
  double lost = check_has (row, "mortality_pct")
                ? check_frac (row, "mortality_pct")
                : stead_flock_mortality_frac (check_number (row, "deaths"), started);

  return stead_flock_survivors (started, lost);
}

static double
mortality_pct (CheckRow *row)
{
  return 100 * stead_flock_mortality_frac (check_number (row, "deaths"),
                                           check_number (row, "birds_started"));
}

static const CheckAsk survival_asks[] = {
  { "alive", "count", survivors },
  { "mortality_pct", "pct", mortality_pct },
  { NULL }
};

/* egg mass and feed conversion */

static double
egg_mass (CheckRow *row)
{
  return stead_egg_mass_g (check_frac (row, "hen_day_pct"), check_number (row, "egg_g"));
}

static const CheckAsk mass_asks[] = {
  { "egg_mass", "g/hen/d", egg_mass },
  { NULL }
};

static double
feed_kg (CheckRow *row)
{
  return check_has (row, "feed_lb") ? from_unit (check_number (row, "feed_lb"), "lb")
                                    : check_number (row, "feed_kg");
}

static double
conversion (CheckRow *row)
{
  if (!check_has (row, "feed_g_hen_d"))
    return stead_feed_conversion (feed_kg (row),
                                  (double) count_of (row, "eggs") * check_number (row, "egg_g") / 1000);
  if (check_has (row, "egg_mass_g_hen_d"))
    return stead_feed_conversion (check_number (row, "feed_g_hen_d"),
                                  check_number (row, "egg_mass_g_hen_d"));
  return stead_feed_conversion (check_number (row, "feed_g_hen_d"), egg_mass (row));
}

static double
conversion_per_dozen (CheckRow *row)
{
  double kg = check_has (row, "feed_g_hen_d")
              ? stead_feed_per_dozen (check_number (row, "feed_g_hen_d") / 1000,
                                      check_frac (row, "hen_day_pct"))
              : stead_flock_feed_per_dozen_kg (feed_kg (row), count_of (row, "eggs"));

  return in_unit (kg, "lb");
}

static const CheckAsk conversion_asks[] = {
  { "fcr", "1", conversion },
  { "feed_per_dozen", "lb/dozen", conversion_per_dozen },
  { NULL }
};

/* feed cost per dozen, pullet cost, its spread, pullet feed */

static double
feed_cost_per_dozen (CheckRow *row)
{
  double feed = stead_feed_per_dozen (check_number (row, "feed_lb_hen_d"),
                                      check_frac (row, "hen_day_pct"));

  return stead_feed_cents (feed, check_cents (row, "bag_usd"), check_number (row, "bag_lb"));
}

static const CheckAsk feed_cost_asks[] = {
  { "cost_per_dozen", "USD/dozen", feed_cost_per_dozen },
  { NULL }
};

static double
pullet_cost (CheckRow *row)
{
  double bag = check_number (row, "bag_lb");

  return check_cents (row, "chick_usd")
         + stead_feed_cents (check_number (row, "starter_lb"), check_cents (row, "starter_bag_usd"), bag)
         + stead_feed_cents (check_number (row, "grower_lb"), check_cents (row, "grower_bag_usd"), bag);
}

static const CheckAsk pullet_asks[] = {
  { "cost_per_pullet", "USD", pullet_cost },
  { NULL }
};

static double
pullet_spread (CheckRow *row)
{
  double pullet = check_cents (row, "pullet_usd");
  double salvage = check_cents (row, "salvage_usd");
  double dozens = check_number (row, "dozens");

  if (!(dozens > 0) || salvage < 0 || salvage > pullet)
    return NAN;
  return 12 * stead_flock_bird_cents_per_egg (pullet, salvage, 12 * dozens);
}

static const CheckAsk spread_asks[] = {
  { "cost_per_dozen", "USD/dozen", pullet_spread },
  { NULL }
};

static double
pullet_feed (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  double week = check_number (row, "to_age_wk");
  double kg = 0;

  if (week != floor (week)
      || !stead_pullet_feed_kg (count_of (row, "birds"), (int) CLAMP (week, 0, 1000), &kg, &error))
    return check_bad_input (row, "to_age_wk");
  return in_unit (kg, "lb");
}

static const CheckAsk pullet_feed_asks[] = {
  { "feed", "lb", pullet_feed },
  { NULL }
};

/* egg weight class */

static SteadEggClass
class_of (CheckRow *row)
{
  const char *text = check_text (row, "class");

  for (int class = 0; class < STEAD_N_EGG_CLASSES; class++)
    if (g_str_equal (stead_egg_class_id ((SteadEggClass) class), text))
      return (SteadEggClass) class;
  check_bad_input (row, "class");
  return STEAD_EGG_CLASS_PEEWEE;
}

static double
class_dozen (CheckRow *row)
{
  return stead_egg_class_dozen_oz (class_of (row));
}

static double
class_case (CheckRow *row)
{
  return stead_egg_class_case_lb (class_of (row), check_number_or (row, "case_dozens", 30));
}

static double
class_mean (CheckRow *row)
{
  return stead_egg_class_mean_g (class_of (row));
}

static double
class_single (CheckRow *row)
{
  double oz = stead_egg_class_single_oz (class_of (row));

  return isnan (oz) ? check_bad_input (row, "class") : oz;
}

static double
class_word (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  SteadEggClass class;
  double oz = check_has (row, "dozen_net_g")
              ? in_unit (check_number (row, "dozen_net_g") / 1000, "oz")
              : check_number (row, "dozen_net_oz");

  if (!stead_egg_class_of_dozen (oz, &class, &error))
    return check_answer_none (row, error);
  return check_answer_word (row, stead_egg_class_id (class));
}

static const CheckAsk class_asks[] = {
  { "min_dozen_net", "oz", class_dozen },
  { "min_case_net", "lb", class_case },
  { "min_mean_egg", "g", class_mean },
  { "min_single_egg_dozen_rate", "oz", class_single },
  { "class", "text", class_word },
  { NULL }
};

/* haugh unit */

static double
haugh_units (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  double units;

  if (!stead_haugh_units (check_number (row, "egg_g"), check_number (row, "albumen_mm"), &units, &error))
    return check_answer_none (row, error);
  return units;
}

static double
haugh_grade (CheckRow *row)
{
  static const char * const grades[] = { "AA", "A", "B" };

  return check_answer_word (row, grades[stead_haugh_grade (check_number (row, "haugh"))]);
}

static const CheckAsk haugh_asks[] = {
  { "haugh", "HU", haugh_units },
  { "grade", "text", haugh_grade },
  { NULL }
};

/* laying curve */

static const char * const lay_models[] = {
  "grossman_koops", "grossman_persistency", "wood", "mcnally", "yang", "adams_bell", NULL,
};

static SteadLayIndividual
individual_of (CheckRow *row)
{
  return (SteadLayIndividual) { check_number (row, "max_eggs_wk"), check_number (row, "k1"),
                                check_number (row, "k2"), check_number (row, "c2_wk") };
}

static double
lay_week (CheckRow *row)
{
  double t = check_number (row, "lay_wk");

  if (t < 0 || t > STEAD_LAY_LAST_WEEK)
    check_bad_input (row, "lay_wk");
  return t;
}

static double
lay_eggs (CheckRow *row)
{
  double t = lay_week (row);
  SteadLayIndividual individual;
  SteadLayPersistency persistency;

  switch (check_word (row, "model", lay_models, -1))
    {
    case 0:
      individual = individual_of (row);
      return stead_lay_individual (&individual, t);
    case 1:
      persistency = (SteadLayPersistency) {
        check_number (row, "plateau_eggs_wk"), check_number (row, "t1_wk"),
        check_number (row, "t2_wk"), check_number (row, "r_wk"),
        check_number (row, "persistency_wk"), check_number (row, "b4_eggs_wk2"),
      };
      return stead_lay_persistency (&persistency, t);
    case 2:
      return stead_lay_gamma (check_number (row, "wood_a_eggs_wk"), check_number (row, "wood_b"),
                              check_number (row, "wood_c"), t);
    case 3:
      return stead_lay_gamma_root (check_number (row, "mcnally_a_eggs_wk"),
                                   check_number (row, "mcnally_b"), check_number (row, "mcnally_c"),
                                   check_number (row, "mcnally_d"), t);
    default:
      return check_bad_input (row, "model");
    }
}

static double
lay_eggs_sum (CheckRow *row)
{
  SteadLayIndividual individual = individual_of (row);

  if (check_word (row, "model", lay_models, -1) != 0)
    return check_bad_input (row, "model");
  return stead_lay_individual_sum (&individual, lay_week (row));
}

static double
lay_hen_day (CheckRow *row)
{
  double t = lay_week (row);

  switch (check_word (row, "model", lay_models, -1))
    {
    case 4:
      return stead_lay_compartment (check_number (row, "yang_a_pct"), check_number (row, "yang_x"),
                                    check_number (row, "yang_c"), check_number (row, "yang_d_wk"), t);
    case 5:
      return stead_lay_decline (check_number (row, "adams_a"), check_number (row, "adams_r"),
                                check_number (row, "adams_c_pct_wk"),
                                check_number (row, "adams_d_wk"), t);
    default:
      return check_bad_input (row, "model");
    }
}

static const CheckAsk curve_asks[] = {
  { "eggs_per_week", "eggs/wk", lay_eggs },
  { "eggs_cumulative", "count", lay_eggs_sum },
  { "hen_day_pct", "pct", lay_hen_day },
  { NULL }
};

/* default laying curve and egg weight */

static double
default_hen_day (CheckRow *row)
{
  SteadLayCurve curve;

  check_word (row, "strain", strains, -1);
  stead_lay_curve_default (&curve);
  return 100 * stead_lay_curve_frac (&curve, check_number (row, "age_wk"));
}

static const CheckAsk default_curve_asks[] = {
  { "hen_day_pct", "pct", default_hen_day },
  { NULL }
};

static double
default_egg_weight (CheckRow *row)
{
  check_word (row, "strain", strains, -1);
  return stead_egg_weight_default_g (check_number (row, "age_wk"));
}

static const CheckAsk default_weight_asks[] = {
  { "egg_weight", "g", default_egg_weight },
  { NULL }
};

/* flock feed, flock water, hen house, feeder count */

static double
flock_feed (CheckRow *row)
{
  static const char * const rules[] = { "old_college", NULL };

  check_word (row, "rule", rules, -1);
  return in_unit (stead_hen_feed_kg (count_of (row, "hens")), "lb");
}

static const CheckAsk flock_feed_asks[] = {
  { "feed", "lb/d", flock_feed },
  { NULL }
};

static double
flock_water (CheckRow *row)
{
  return in_unit (stead_hen_water_least_l (count_of (row, "hens")), "gal");
}

static const CheckAsk flock_water_asks[] = {
  { "min_water", "gal/d", flock_water },
  { NULL }
};

static double
house_least (CheckRow *row)
{
  return in_unit (stead_hen_floor_least_m2 (count_of (row, "hens")), "sqft");
}

static double
house_usual (CheckRow *row)
{
  return in_unit (stead_hen_floor_usual_m2 (count_of (row, "hens")), "sqft");
}

static double
house_boxes (CheckRow *row)
{
  double each = check_number (row, "hens_per_box");

  if (!(each > 0))
    return check_bad_input (row, "hens_per_box");
  return (double) stead_hen_nest_boxes (count_of (row, "hens"), each);
}

static double
house_perch (CheckRow *row)
{
  double each_m = from_unit (check_number (row, "perch_each_in"), "in");

  return in_unit (each_m * (double) count_of (row, "hens"), "ft");
}

static double
house_feeder (CheckRow *row)
{
  double each_m = from_unit (check_number (row, "feeder_each_in"), "in");

  return in_unit (each_m * (double) count_of (row, "hens"), "in");
}

static const CheckAsk house_asks[] = {
  { "min_floor", "sqft", house_least },
  { "usual_floor", "sqft", house_usual },
  { "boxes", "count", house_boxes },
  { "perch_length", "ft", house_perch },
  { "feeder_length", "in", house_feeder },
  { NULL }
};

static double
trough_count (CheckRow   *row,
              const char *each_name,
              const char *rim_name)
{
  double rim_m = from_unit (check_number (row, rim_name), "in");

  if (!(rim_m > 0))
    return check_bad_input (row, rim_name);
  return (double) stead_hen_troughs (count_of (row, "birds"),
                                     from_unit (check_number (row, each_name), "in"), rim_m);
}

static double
feeder_count (CheckRow *row)
{
  return trough_count (row, "feeder_each_in", "feeder_rim_in");
}

static double
waterer_count (CheckRow *row)
{
  return trough_count (row, "waterer_each_in", "waterer_rim_in");
}

static const CheckAsk feeder_asks[] = {
  { "feeders", "count", feeder_count },
  { "waterers", "count", waterer_count },
  { NULL }
};

/* incubation, brooder, ducks */

static SteadHatchSpecies
species_of (CheckRow *row)
{
  static const char * const species[] = {
    "chicken", "duck", "muscovy_duck", "turkey", "goose", "guinea", "peafowl",
    "ringneck_pheasant", "japanese_quail", NULL,
  };

  return (SteadHatchSpecies) check_word (row, "species", species, -1);
}

static double
hatch_days (CheckRow *row)
{
  double least = NAN;
  double most = NAN;

  stead_hatch_days (species_of (row), &least, &most);
  return (least + most) / 2;
}

static double
hatch_order (CheckRow *row)
{
  double before = stead_hatch_set_before_chicken_days (species_of (row));

  if (before == 0)
    return NAN;
  return check_answer_word (row, before > 0 ? "earlier" : "later");
}

static const CheckAsk hatch_asks[] = {
  { "incubation_time", "d", hatch_days },
  { "set_with_chicken", "text", hatch_order },
  { NULL }
};

static double
brooder_temp (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  double week = check_number (row, "age_wk");
  double temp_c;

  if (week != floor (week) || fabs (week) > 1000)
    return check_bad_input (row, "age_wk");
  if (!stead_brooder_temperature_c ((int) week, &temp_c, &error))
    return check_bad_input (row, "age_wk");
  return in_unit (temp_c, "degF");
}

static const CheckAsk brooder_asks[] = {
  { "temp", "F", brooder_temp },
  { NULL }
};

static double
duck_egg_weight (CheckRow *row)
{
  return 1000 * from_unit (check_number (row, "eggs_weight_lb"), "lb") / check_number (row, "eggs");
}

static const CheckAsk duck_asks[] = {
  { "egg_weight", "g", duck_egg_weight },
  { NULL }
};

const CheckTopic check_hens_topics[] = {
  { "hen-days", "hens period_d died_day died_hens added_day added_hens", hen_days_asks },
  { "laying rate", "eggs hen_days hens period_d hens_housed", rate_asks },
  { "survival", "birds_started mortality_pct deaths", survival_asks },
  { "egg mass", "hen_day_pct egg_g", mass_asks },
  { "feed conversion",
    "feed_g_hen_d egg_mass_g_hen_d hen_day_pct feed_kg eggs egg_g feed_lb", conversion_asks },
  { "feed cost per dozen", "feed_lb_hen_d hen_day_pct bag_usd bag_lb", feed_cost_asks },
  { "pullet cost",
    "chick_usd starter_lb starter_bag_usd grower_lb grower_bag_usd bag_lb", pullet_asks },
  { "pullet cost spread", "pullet_usd salvage_usd dozens", spread_asks },
  { "pullet feed", "birds to_age_wk", pullet_feed_asks },
  { "egg weight class", "class dozen_net_oz dozen_net_g case_dozens", class_asks },
  { "haugh unit", "egg_g albumen_mm haugh", haugh_asks },
  { "laying curve",
    "model lay_wk max_eggs_wk k1 k2 c2_wk plateau_eggs_wk t1_wk t2_wk r_wk persistency_wk "
    "b4_eggs_wk2 wood_a_eggs_wk wood_b wood_c mcnally_a_eggs_wk mcnally_b mcnally_c mcnally_d "
    "yang_a_pct yang_x yang_c yang_d_wk adams_a adams_r adams_c_pct_wk adams_d_wk", curve_asks },
  { "default laying curve", "strain age_wk", default_curve_asks },
  { "default egg weight", "strain age_wk", default_weight_asks },
  { "flock feed", "hens rule", flock_feed_asks },
  { "flock water", "hens", flock_water_asks },
  { "hen house", "hens hens_per_box perch_each_in feeder_each_in", house_asks },
  { "feeder count",
    "birds feeder_each_in feeder_rim_in waterer_each_in waterer_rim_in", feeder_asks },
  { "incubation", "species", hatch_asks },
  { "brooder temperature", "age_wk", brooder_asks },
  { "duck eggs", "eggs eggs_weight_lb", duck_asks },
  { NULL }
};
