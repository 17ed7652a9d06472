/* check-food-clean.c - the topics on thermometers, sanitizing, hands and health. */
#include "check-food.h"

#include "core/stead-quantity.h"
#include "core/stead-sanitizer.h"

#include <math.h>

/* thermometer */

static SteadThermometer
thermometer (CheckRow *row)
{
  static const char * const scales[] = { "F_only", "C_only", "dual", NULL };
  static const char * const measures[] = { "food", "air_or_water", NULL };

  return (SteadThermometer) { check_one_of (row, "scale", scales, -1), check_one_of (row, "measures", measures, 0) };
}

static double
thermometer_limit (CheckRow   *row,
                   const char *measure,
                   const char *unit)
{
  SteadThermometer which = thermometer (row);
  g_autoptr(GError) error = NULL;
  double value = NAN;

  if (!stead_thermometer_limit (check_limits (row), &which, measure, unit, &value, &error))
    return check_answer_none (row, error);
  return value;
}

static double
error_f (CheckRow *row)
{
  return thermometer_limit (row, "error", "Fdiff");
}

static double
error_c (CheckRow *row)
{
  return thermometer_limit (row, "error", "Cdiff");
}

static double
increment_f (CheckRow *row)
{
  return thermometer_limit (row, "step", "Fdiff");
}

static double
increment_c (CheckRow *row)
{
  return thermometer_limit (row, "step", "Cdiff");
}

static double
thermometer_verdict (CheckRow *row)
{
  SteadThermometer which = thermometer (row);
  g_autoptr(GError) error = NULL;
  gboolean good = FALSE;

  if (!stead_thermometer_judge (check_limits (row), &which, check_temp (row, "ice_bath_reading"),
                                stead_ice_point_f (check_limits (row)), NULL, &good, &error))
    return check_answer_none (row, error);
  return check_answer_word (row, good ? "pass" : "fail");
}

static const CheckAsk thermometer_asks[] = {
  { "max_error_F", "F", error_f },
  { "max_error_C", "C", error_c },
  { "max_increment_F", "F", increment_f },
  { "max_increment_C", "C", increment_c },
  { "verdict", "text", thermometer_verdict },
  { NULL }
};

/* boiling point */

static double
altitude_ft (CheckRow *row)
{
  if (!check_has (row, "altitude_m"))
    return check_number (row, "altitude_ft");
  return stead_quantity_from_base (check_number (row, "altitude_m"), stead_unit_by_id ("ft"));
}

static double
boiling_temp (CheckRow *row)
{
  return stead_boiling_point_f (check_limits (row), altitude_ft (row));
}

CHECK_IN_CELSIUS (boiling_temp)

static const CheckAsk boiling_asks[] = {
  CHECK_TEMP_ASK ("temp", boiling_temp),
  { NULL }
};

/* sanitizer */

static SteadSolution
solution (CheckRow *row)
{
  static const char * const kinds[] = { "chlorine", "iodine", "quat", NULL };

  return (SteadSolution) {
    .kind = check_one_of (row, "chemical", kinds, -1),
    .strength_mgl = check_number_or (row, "concentration_mgL", NAN),
    .ph = check_number_or (row, "pH", NAN),
    .temp_f = check_temp_or (row, "temp", NAN),
    .hardness_mgl = check_number_or (row, "hardness_mgL", NAN),
  };
}

static double
solution_temp (CheckRow *row)
{
  SteadSolution mixed = solution (row);
  g_autoptr(GError) error = NULL;
  double temp = NAN;

  if (g_str_equal (mixed.kind, "chlorine"))
    check_need (row, "concentration_mgL pH");
  if (!stead_sanitizer_least_temp_f (check_limits (row), &mixed, &temp, &error))
    return check_answer_none (row, error);
  return temp;
}

static double
solution_contact (CheckRow *row)
{
  SteadSolution mixed = solution (row);
  g_autoptr(GError) error = NULL;
  double seconds = NAN;

  if (!stead_sanitizer_contact_s (check_limits (row), &mixed, &seconds, &error))
    return check_answer_none (row, error);
  return seconds;
}

static double
solution_least (CheckRow *row)
{
  SteadSolution mixed = solution (row);
  g_autoptr(GError) error = NULL;
  double mgl = NAN;

  if (!stead_sanitizer_least_strength_mgl (check_limits (row), &mixed, &mgl, &error))
    return check_answer_none (row, error);
  return mgl;
}

static double
solution_most (CheckRow *row)
{
  return check_find_in (row, "sanitizer", solution (row).kind, "strength_most", NULL, "mg/L");
}

static double
solution_ph (CheckRow *row)
{
  return check_find_in (row, "sanitizer", solution (row).kind, "ph", NULL, "pH");
}

static double
solution_hardness (CheckRow *row)
{
  return check_find_in (row, "sanitizer", solution (row).kind, "hardness", NULL, "mg/L");
}

static double
solution_verdict (CheckRow *row)
{
  SteadSolution mixed = solution (row);
  g_autoptr(GError) error = NULL;
  SteadSolutionFaults faults = STEAD_SOLUTION_GOOD;

  check_temp (row, "temp");
  if (!g_str_equal (mixed.kind, "quat"))
    check_need (row, "concentration_mgL pH");
  if (!stead_sanitizer_judge (check_limits (row), &mixed, &faults, &error))
    return check_answer_none (row, error);
  return check_answer_word (row, faults == STEAD_SOLUTION_GOOD ? "pass" : "fail");
}

CHECK_IN_CELSIUS (solution_temp)

static const CheckAsk sanitizer_asks[] = {
  CHECK_TEMP_ASK ("min_temp", solution_temp),
  { "min_contact", "s", solution_contact },
  { "min_concentration", "mg/L", solution_least },
  { "max_concentration", "mg/L", solution_most },
  { "max_pH", "pH", solution_ph },
  { "max_hardness", "mg/L", solution_hardness },
  { "verdict", "text", solution_verdict },
  { NULL }
};

/* warewashing */

static double
ware_temp (CheckRow *row)
{
  static const char * const methods[] = { "manual", "machine", NULL };
  static const char * const measures[] = {
    "wash_solution", "sanitizing_water", "utensil_surface", "final_rinse", NULL,
  };
  static const char * const machines[] = { "stationary_rack_single_temp", "other", NULL };
  const SteadLimitFact facts[] = { { "machine_type", check_one_of (row, "machine_type", machines, 1), 0 }, { NULL } };

  return check_find_in (row, "warewash", check_one_of (row, "method", methods, -1),
                        check_one_of (row, "measure", measures, -1), facts, "F");
}

static double
ware_most (CheckRow *row)
{
  static const char * const methods[] = { "machine", NULL };
  static const char * const measures[] = { "final_rinse", NULL };

  check_one_of (row, "measure", measures, -1);
  return check_find_in (row, "warewash", check_one_of (row, "method", methods, -1), "final_rinse_most", NULL, "F");
}

CHECK_IN_CELSIUS (ware_temp)

static const CheckAsk ware_asks[] = {
  CHECK_TEMP_ASK ("min_temp", ware_temp),
  { "max_temp", "F", ware_most },
  { NULL }
};

/* bleach dilution */

static double
litres (CheckRow   *row,
        const char *name,
        const char *unit)
{
  return stead_quantity_to_base (check_number (row, name), stead_unit_by_id (unit));
}

static double
water_l (CheckRow *row)
{
  return check_has (row, "water_l") ? check_number (row, "water_l") : litres (row, "water_gal", "gal");
}

static double
bleach_l (CheckRow *row)
{
  return check_has (row, "bleach_ml") ? litres (row, "bleach_ml", "ml") : litres (row, "bleach_tbsp", "tbsp");
}

static double
bleach_strength (CheckRow *row)
{
  return stead_bleach_mgl (check_frac (row, "bleach_pct"), bleach_l (row), water_l (row));
}

static double
bleach_amount (CheckRow   *row,
               const char *unit)
{
  return stead_quantity_from_base (stead_bleach_l (check_frac (row, "bleach_pct"),
                                                   check_number (row, "concentration_mgL"), water_l (row)),
                                   stead_unit_by_id (unit));
}

static double
bleach_tbsp (CheckRow *row)
{
  return bleach_amount (row, "tbsp");
}

static double
bleach_ml (CheckRow *row)
{
  return bleach_amount (row, "ml");
}

static const CheckAsk bleach_asks[] = {
  { "concentration", "mg/L", bleach_strength },
  { "bleach", "tbsp", bleach_tbsp },
  { "bleach", "mL", bleach_ml },
  { NULL }
};

/* cleaning frequency, handwashing */

static double
cleaning_time (CheckRow *row)
{
  const SteadLimitFact facts[] = { { "room_temp_f", NULL, check_temp (row, "room_temp") }, { NULL } };

  return check_find_in (row, "clean", "food_contact_surface", "interval", facts, "h");
}

static const CheckAsk cleaning_asks[] = {
  { "max_time", "h", cleaning_time },
  { NULL }
};

static double
hands (CheckRow   *row,
       const char *measure,
       const char *unit)
{
  static const char * const states[] = { "none", "Washington", NULL };
  const SteadLimitFact facts[] = { { "state", states[0], 0 }, { NULL } };
  const SteadLimitFact washington[] = { { "state", states[1], 0 }, { NULL } };

  return check_find_in (row, "hands", "sink", measure,
                        check_word (row, "state", states, 0) == 1 ? washington : facts, unit);
}

static double
hands_temp (CheckRow *row)
{
  return hands (row, "water_temp", "F");
}

static double
hands_time (CheckRow *row)
{
  return hands (row, "total_time", "s");
}

static double
hands_flow (CheckRow *row)
{
  return hands (row, "faucet_flow", "s");
}

CHECK_IN_CELSIUS (hands_temp)

static const CheckAsk hands_asks[] = {
  CHECK_TEMP_ASK ("min_water_temp", hands_temp),
  { "min_total_time", "s", hands_time },
  { "min_faucet_flow", "s", hands_flow },
  { NULL }
};

/* employee health */

static const char * const symptoms[] = { "vomiting_or_diarrhea", "jaundice", "sore_throat_with_fever", "none", NULL };
static const char * const diagnoses[] = { "none", "norovirus", "STEC", "Shigella", NULL };
static const char * const eaters[] = { "general", "HSP", NULL };

/* What the tables want to know of an ill worker. */
static void
health_facts (CheckRow       *row,
              SteadLimitFact *facts)
{
  *facts++ = (SteadLimitFact) { "symptom", check_one_of (row, "symptom", symptoms, 3), 0 };
  *facts++ = (SteadLimitFact) { "population", check_one_of (row, "population", eaters, 0), 0 };
  if (check_has (row, "onset_d"))
    *facts++ = (SteadLimitFact) { "onset_d", NULL, check_number (row, "onset_d") };
  *facts = (SteadLimitFact) { NULL };
}

static double
health_free (CheckRow *row)
{
  SteadLimitFact facts[4];
  const char *diagnosis = check_one_of (row, "diagnosis", diagnoses, 0);

  health_facts (row, facts);
  /* With a diagnosis, time alone lets nobody back. */
  if (!g_str_equal (diagnosis, "none") && !check_yes (row, "regulator_approval", 1))
    return NAN;
  return check_find_in (row, "ill_worker", diagnosis, "symptom_free", facts, "h");
}

static double
health_action (CheckRow *row)
{
  SteadLimitFact facts[4];

  health_facts (row, facts);
  return check_find_word (row, "ill_worker", check_one_of (row, "diagnosis", diagnoses, 0), "action", facts);
}

static const CheckAsk health_asks[] = {
  { "min_symptom_free", "h", health_free },
  { "action", "text", health_action },
  { NULL }
};

const CheckTopic check_food_clean_topics[] = {
  { "thermometer", "scale measures ice_bath_reading_F ice_bath_reading_C", thermometer_asks },
  { "boiling point", "altitude_ft altitude_m", boiling_asks },
  { "sanitizer", "chemical concentration_mgL pH temp_F temp_C hardness_mgL", sanitizer_asks },
  { "warewashing", "method measure machine_type", ware_asks },
  { "bleach dilution", "bleach_pct bleach_tbsp bleach_ml water_gal water_l concentration_mgL", bleach_asks },
  { "cleaning frequency", "room_temp_F room_temp_C", cleaning_asks },
  { "handwashing", "edition state", hands_asks },
  { "employee health", "symptom diagnosis population onset_d regulator_approval", health_asks },
  { NULL }
};
