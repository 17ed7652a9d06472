/* stead-check-id.c - how files and programs call the questions, lines and stops of a plan of checks. */
#include "config.h"

#include "core/stead-check-plan.h"

static const char * const key_ids[STEAD_N_CHECK_KEYS] = {
  [STEAD_CHECK_KEY_EATERS] = "eaters", [STEAD_CHECK_KEY_FORM] = "form", [STEAD_CHECK_KEY_MADE] = "made",
  [STEAD_CHECK_KEY_COOKED] = "cooked", [STEAD_CHECK_KEY_DONENESS] = "doneness", [STEAD_CHECK_KEY_HELD] = "held",
  [STEAD_CHECK_KEY_EGG_USE] = "egg_use", [STEAD_CHECK_KEY_PASTEURIZED] = "pasteurized",
  [STEAD_CHECK_KEY_COMBINED] = "combined", [STEAD_CHECK_KEY_AHEAD] = "ahead",
  [STEAD_CHECK_KEY_TIME_OPTION] = "time_option", [STEAD_CHECK_KEY_KEPT_LONG] = "kept_long",
  [STEAD_CHECK_KEY_AMBIENT] = "ambient", [STEAD_CHECK_KEY_THAW] = "thaw", [STEAD_CHECK_KEY_SHELF] = "shelf",
  [STEAD_CHECK_KEY_MADE_IN] = "made_in", [STEAD_CHECK_KEY_FISH_FEED] = "fish_feed",
  [STEAD_CHECK_KEY_EGGS_COLD] = "eggs_cold", [STEAD_CHECK_KEY_MICROWAVE] = "microwave",
  [STEAD_CHECK_KEY_CARRIED] = "carried", [STEAD_CHECK_KEY_SANITIZER] = "sanitizer",
  [STEAD_CHECK_KEY_WATER_PH] = "water_ph", [STEAD_CHECK_KEY_WASH] = "wash",
  [STEAD_CHECK_KEY_THERMOMETER] = "thermometer",
};

static const char * const line_ids[STEAD_N_CHECK_LINE_KINDS] = {
  [STEAD_CHECK_LINE_ILL] = "ill", [STEAD_CHECK_LINE_HANDS] = "hands", [STEAD_CHECK_LINE_BARE_HANDS] = "bare_hands",
  [STEAD_CHECK_LINE_THERMOMETER_ICE] = "thermometer_ice", [STEAD_CHECK_LINE_THERMOMETER_BOIL] = "thermometer_boil",
  [STEAD_CHECK_LINE_SANITIZER] = "sanitizer", [STEAD_CHECK_LINE_SANITIZER_CONTACT] = "sanitizer_contact",
  [STEAD_CHECK_LINE_SURFACES] = "surfaces", [STEAD_CHECK_LINE_SEPARATE_RAW] = "separate_raw",
  [STEAD_CHECK_LINE_ALLERGENS] = "allergens", [STEAD_CHECK_LINE_DRY_STORE] = "dry_store",
  [STEAD_CHECK_LINE_EGGS_COLD] = "eggs_cold", [STEAD_CHECK_LINE_EGGS_SOUND] = "eggs_sound",
  [STEAD_CHECK_LINE_RECEIVE_COLD] = "receive_cold", [STEAD_CHECK_LINE_RECEIVE_FROZEN] = "receive_frozen",
  [STEAD_CHECK_LINE_PRODUCE_WASH] = "produce_wash", [STEAD_CHECK_LINE_THAW_COLD] = "thaw_cold",
  [STEAD_CHECK_LINE_THAW_WATER] = "thaw_water", [STEAD_CHECK_LINE_THAW_WATER_TIME] = "thaw_water_time",
  [STEAD_CHECK_LINE_THAW_MICROWAVE] = "thaw_microwave", [STEAD_CHECK_LINE_FISH_FREEZING] = "fish_freezing",
  [STEAD_CHECK_LINE_FISH_RECORDS] = "fish_records", [STEAD_CHECK_LINE_CHILL_PREPARED] = "chill_prepared",
  [STEAD_CHECK_LINE_COOK] = "cook", [STEAD_CHECK_LINE_COOK_MICROWAVE] = "cook_microwave",
  [STEAD_CHECK_LINE_STAND] = "stand", [STEAD_CHECK_LINE_COOL] = "cool", [STEAD_CHECK_LINE_REHEAT] = "reheat",
  [STEAD_CHECK_LINE_REHEAT_MICROWAVE] = "reheat_microwave", [STEAD_CHECK_LINE_REHEAT_STAND] = "reheat_stand",
  [STEAD_CHECK_LINE_REHEAT_TIME] = "reheat_time", [STEAD_CHECK_LINE_HOLD_HOT] = "hold_hot",
  [STEAD_CHECK_LINE_HOLD_COLD] = "hold_cold", [STEAD_CHECK_LINE_HOLD_FROZEN] = "hold_frozen",
  [STEAD_CHECK_LINE_TIME_START] = "time_start", [STEAD_CHECK_LINE_TIME_DURING] = "time_during",
  [STEAD_CHECK_LINE_TIME_END] = "time_end", [STEAD_CHECK_LINE_DATE_MARK] = "date_mark",
  [STEAD_CHECK_LINE_JAR_PH] = "jar_ph", [STEAD_CHECK_LINE_JAR_PROCESS] = "jar_process",
  [STEAD_CHECK_LINE_JAR_RECORDS] = "jar_records", [STEAD_CHECK_LINE_CARRY_HOT] = "carry_hot",
  [STEAD_CHECK_LINE_CARRY_COLD] = "carry_cold", [STEAD_CHECK_LINE_CARRY_FROZEN] = "carry_frozen",
  [STEAD_CHECK_LINE_ADVISORY] = "advisory", [STEAD_CHECK_LINE_ALLERGEN_NOTICE] = "allergen_notice",
  [STEAD_CHECK_LINE_EGG_CARTON] = "egg_carton", [STEAD_CHECK_LINE_UTENSILS] = "utensils",
  [STEAD_CHECK_LINE_LEFTOVERS] = "leftovers", [STEAD_CHECK_LINE_WASH_HAND] = "wash_hand",
  [STEAD_CHECK_LINE_WASH_MACHINE] = "wash_machine",
};

static const char * const stage_ids[STEAD_N_CHECK_STAGES] = {
  [STEAD_CHECK_STAGE_BEFORE] = "before", [STEAD_CHECK_STAGE_RECEIVE] = "receive",
  [STEAD_CHECK_STAGE_PREPARE] = "prepare", [STEAD_CHECK_STAGE_COOK] = "cook", [STEAD_CHECK_STAGE_COOL] = "cool",
  [STEAD_CHECK_STAGE_REHEAT] = "reheat", [STEAD_CHECK_STAGE_HOLD] = "hold", [STEAD_CHECK_STAGE_CARRY] = "carry",
  [STEAD_CHECK_STAGE_SERVE] = "serve", [STEAD_CHECK_STAGE_AFTER] = "after",
};

static const char * const stop_ids[STEAD_N_CHECK_STOPS] = {
  [STEAD_CHECK_STOP_LOW_ACID] = "low_acid", [STEAD_CHECK_STOP_UNTESTED] = "untested",
  [STEAD_CHECK_STOP_DOUBT] = "doubt", [STEAD_CHECK_STOP_AUTHORITY] = "authority", [STEAD_CHECK_STOP_HOME] = "home",
  [STEAD_CHECK_STOP_EGGS_WARM] = "eggs_warm", [STEAD_CHECK_STOP_EGGS_UNDERCOOKED] = "eggs_undercooked",
  [STEAD_CHECK_STOP_EGGS_POOLED] = "eggs_pooled", [STEAD_CHECK_STOP_EGGS_TIME] = "eggs_time",
  [STEAD_CHECK_STOP_RAW_ANIMAL] = "raw_animal", [STEAD_CHECK_STOP_GROUND_MEAT] = "ground_meat",
  [STEAD_CHECK_STOP_SPROUTS] = "sprouts", [STEAD_CHECK_STOP_ROOM] = "room", [STEAD_CHECK_STOP_LOT_OVER] = "lot_over",
};

static const char * const way_ids[] = {
  [STEAD_CHECK_WAY_COLD] = "cold", [STEAD_CHECK_WAY_TEST] = "test", [STEAD_CHECK_WAY_AUTHORITY] = "authority",
  [STEAD_CHECK_WAY_DISCARD_EGGS] = "discard_eggs", [STEAD_CHECK_WAY_PASTEURIZED] = "pasteurized",
  [STEAD_CHECK_WAY_COOK_THROUGH] = "cook_through", [STEAD_CHECK_WAY_LEAVE_OUT] = "leave_out",
  [STEAD_CHECK_WAY_HOLD] = "hold", [STEAD_CHECK_WAY_DISCARD] = "discard",
};

/* The place of an id; -1: there is none. */
static int
place_of (const char * const *ids,
          gsize               n,
          const char         *id)
{
  for (gsize i = 0; i < n; i++)
    if (g_str_equal (ids[i], id))
      return (int) i;
  return -1;
}

const char *
stead_check_key_id (SteadCheckKey key)
{
  g_return_val_if_fail ((gsize) key < G_N_ELEMENTS (key_ids), "");
  return key_ids[key];
}

gboolean
stead_check_key_by_id (const char    *id,
                       SteadCheckKey *out)
{
  int place;

  g_return_val_if_fail (id != NULL && out != NULL, FALSE);
  place = place_of (key_ids, G_N_ELEMENTS (key_ids), id);
  if (place >= 0)
    *out = (SteadCheckKey) place;
  return place >= 0;
}

const char *
stead_check_line_kind_id (SteadCheckLineKind kind)
{
  g_return_val_if_fail ((gsize) kind < G_N_ELEMENTS (line_ids), "");
  return line_ids[kind];
}

gboolean
stead_check_line_kind_by_id (const char         *id,
                             SteadCheckLineKind *out)
{
  int place;

  g_return_val_if_fail (id != NULL && out != NULL, FALSE);
  place = place_of (line_ids, G_N_ELEMENTS (line_ids), id);
  if (place >= 0)
    *out = (SteadCheckLineKind) place;
  return place >= 0;
}

const char *
stead_check_stage_id (SteadCheckStage stage)
{
  g_return_val_if_fail ((gsize) stage < G_N_ELEMENTS (stage_ids), "");
  return stage_ids[stage];
}

const char *
stead_check_stop_id (SteadCheckStopKind kind)
{
  g_return_val_if_fail ((gsize) kind < G_N_ELEMENTS (stop_ids), "");
  return stop_ids[kind];
}

const char *
stead_check_way_id (SteadCheckWay way)
{
  g_return_val_if_fail ((gsize) way < G_N_ELEMENTS (way_ids), "");
  return way_ids[way];
}
