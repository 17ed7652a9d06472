/* test-skill-words.c - what shows a skill, in words, and where a jump from it leads. */
#include "farm.h"

#include "answer/stead-skill-answer.h"

#include <math.h>
#include <string.h>

#define DAY (stead_day_new (2026, 3, 3))

static void
assert_text (const SteadEvidence *evidence,
             SteadUnitSystem      units,
             const char          *words)
{
  SteadFarm farm = { .units = units, .currency = (char *) "USD" };
  g_autofree char *text = stead_evidence_text (evidence, &farm);

  if (farm_in_english ())
    g_assert_cmpstr (text, ==, words);
  else
    g_assert_cmpuint (strlen (text), >, 5);
}

static void
test_texts (void)
{
  static const struct { SteadEvidenceKind what; const char *name, *words; double a; } rows[] = {
    { STEAD_EVIDENCE_ENTRY, "Brown hens", "22 eggs in the log of Brown hens on Mar 3, 2026", 22 },
    { STEAD_EVIDENCE_ENTRY, "Brown hens", "The log of Brown hens on Mar 3, 2026", NAN },
    { STEAD_EVIDENCE_HARVEST, "Bed 1", "A harvest of Bed 1 on Mar 3, 2026", NAN },
    { STEAD_EVIDENCE_WEIGHING, "Tilapia 2", "A weighing of Tilapia 2 on Mar 3, 2026", NAN },
    { STEAD_EVIDENCE_WATER, "Loop", "A water test of Loop on Mar 3, 2026", NAN },
    { STEAD_EVIDENCE_KITCHEN, "Bowls 1", "The kitchen batch Bowls 1 on Mar 3, 2026", NAN },
    { STEAD_EVIDENCE_CHECKLIST, "Bowls", "The checklist “Bowls” on Mar 3, 2026", NAN },
    { STEAD_EVIDENCE_RECEIPT, "Feed & Seed", "The receipt of Feed & Seed over $64.00 on Mar 3, 2026", 6400 },
    { STEAD_EVIDENCE_RECEIPT, "Feed & Seed", "The receipt of Feed & Seed over $0.00 on Mar 3, 2026", NAN },
    { STEAD_EVIDENCE_PRODUCT, "Eggs", "The cost sheet of Eggs", NAN },
    { STEAD_EVIDENCE_SALE, "Market", "The sale day Market on Mar 3, 2026", NAN },
    { STEAD_EVIDENCE_BUILD, "Pen", "The build Pen", NAN },
    { STEAD_EVIDENCE_WORK, "Feeding", "3:25 h of Feeding on Mar 3, 2026", 205 },
    { STEAD_EVIDENCE_SHOT, "The pen", "The picture “The pen” of Mar 3, 2026", NAN },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const SteadEvidence evidence = { .what = rows[i].what, .day = DAY, .name = (char *) rows[i].name, .a = rows[i].a };

      assert_text (&evidence, STEAD_UNITS_US, rows[i].words);
    }
}

/* Degrees as the farm has them, other readings as they are; a list need have no name. */
static void
test_readings (void)
{
  SteadEvidence evidence = { .what = STEAD_EVIDENCE_READING, .day = DAY, .name = (char *) "Bowls", .a = 70,
                             .detail = (char *) "food_temp" };

  assert_text (&evidence, STEAD_UNITS_METRIC, "A reading of 70 °C for “Bowls” on Mar 3, 2026");
  assert_text (&evidence, STEAD_UNITS_US, "A reading of 158 °F for “Bowls” on Mar 3, 2026");   /* 70 × 9 / 5 + 32 */
  evidence.detail = (char *) "ice_bath";
  evidence.a = 0;
  evidence.name = (char *) "Probe 1";
  assert_text (&evidence, STEAD_UNITS_US, "A reading of 32 °F for “Probe 1” on Mar 3, 2026");
  evidence.detail = (char *) "ph";
  evidence.a = 4.25;
  evidence.name = NULL;
  assert_text (&evidence, STEAD_UNITS_US, "A reading of 4.3 for “no list” on Mar 3, 2026");
}

/* A row that is gone says so, and leads nowhere. */
static void
test_gone (void)
{
  const SteadEvidence evidence = { .what = STEAD_EVIDENCE_RECEIPT, .is_gone = TRUE, .day = STEAD_DAY_NONE, .target_id = 7 };

  assert_text (&evidence, STEAD_UNITS_US, "Receipt: this row is no longer in the log");
  g_assert_cmpint (stead_evidence_target (&evidence), ==, STEAD_TARGET_NONE);
}

static void
test_targets (void)
{
  static const struct { SteadEvidenceKind what; const char *detail; double b; SteadTarget target; } rows[] = {
    { STEAD_EVIDENCE_ENTRY, "flock", NAN, STEAD_TARGET_BATCH }, { STEAD_EVIDENCE_ENTRY, "kitchen", NAN, STEAD_TARGET_KITCHEN },
    { STEAD_EVIDENCE_HARVEST, "crop", NAN, STEAD_TARGET_BATCH },
    { STEAD_EVIDENCE_HARVEST, "kitchen", NAN, STEAD_TARGET_KITCHEN },
    { STEAD_EVIDENCE_WEIGHING, "fish", NAN, STEAD_TARGET_BATCH }, { STEAD_EVIDENCE_WATER, NULL, NAN, STEAD_TARGET_WATER },
    { STEAD_EVIDENCE_KITCHEN, NULL, NAN, STEAD_TARGET_KITCHEN },
    { STEAD_EVIDENCE_CHECKLIST, NULL, NAN, STEAD_TARGET_CHECKLIST },
    { STEAD_EVIDENCE_READING, "ph", 0, STEAD_TARGET_CHECKLIST }, { STEAD_EVIDENCE_READING, "ph", 1, STEAD_TARGET_KITCHEN },
    { STEAD_EVIDENCE_RECEIPT, NULL, NAN, STEAD_TARGET_RECEIPT }, { STEAD_EVIDENCE_PRODUCT, NULL, NAN, STEAD_TARGET_PRODUCT },
    { STEAD_EVIDENCE_SALE, NULL, NAN, STEAD_TARGET_SALE }, { STEAD_EVIDENCE_BUILD, NULL, NAN, STEAD_TARGET_BUILD },
    { STEAD_EVIDENCE_WORK, NULL, NAN, STEAD_TARGET_NONE }, { STEAD_EVIDENCE_SHOT, NULL, NAN, STEAD_TARGET_NONE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      SteadEvidence evidence = { .what = rows[i].what, .detail = (char *) rows[i].detail, .b = rows[i].b, .target_id = 7 };

      g_test_message ("row %u", (guint) i);
      g_assert_cmpint (stead_evidence_target (&evidence), ==, rows[i].target);
      evidence.target_id = 0;     /* nothing to jump to */
      g_assert_cmpint (stead_evidence_target (&evidence), ==, STEAD_TARGET_NONE);
    }
}

/* Each kind and each level has a name of its own. */
static void
test_names (void)
{
  for (int i = 0; i < STEAD_N_EVIDENCE_KINDS; i++)
    for (int k = 0; k < i; k++)
      g_assert_cmpstr (stead_evidence_kind_name ((SteadEvidenceKind) i), !=, stead_evidence_kind_name ((SteadEvidenceKind) k));
  for (int i = 0; i <= STEAD_SKILL_SHOWS; i++)
    for (int k = 0; k < i; k++)
      g_assert_cmpstr (stead_skill_level_text (i), !=, stead_skill_level_text (k));
  if (farm_in_english ())
    {
      g_assert_cmpstr (stead_skill_level_text (0), ==, "not tried yet");
      g_assert_cmpstr (stead_skill_level_text (STEAD_SKILL_SAW), ==, "saw it");
    }
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/answer/skill-words/texts", test_texts);
  g_test_add_func ("/answer/skill-words/readings", test_readings);
  g_test_add_func ("/answer/skill-words/gone", test_gone);
  g_test_add_func ("/answer/skill-words/targets", test_targets);
  g_test_add_func ("/answer/skill-words/names", test_names);
  return g_test_run ();
}
