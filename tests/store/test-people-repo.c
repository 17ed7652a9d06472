/* test-people-repo.c - groups, duties and turns, trainings, consent. */
#include "config.h"

#include "repo-fixture.h"
#include "store/stead-people-repo.h"
#include "store/stead-people-repo.h"
#include "store/stead-release-repo.h"

static void
test_groups (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadGroup) group = stead_group_new (), twin = stead_group_new ();
  g_autoptr(GPtrArray) groups = NULL;
  const SteadGroup *again;

  group->name = g_strdup ("Saturday – 土曜日");
  g_array_append_val (group->person_ids, farm->student);
  g_array_append_val (group->person_ids, farm->advisor);
  ACT_LEAVING (farm, stead_group_repo_save (farm->store, group, err), group->id == 0);
  twin->name = g_strdup ("Saturday – 土曜日");
  REFUSE (farm, stead_group_repo_save (farm->store, twin, err), STEAD_STORE_ERROR_INVALID, "Saturday");
  g_free (twin->name);
  twin->name = g_strdup ("Nobody yet");
  ACT (farm, stead_group_repo_save (farm->store, twin, err));
  groups = stead_group_repo_list (farm->store, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (groups->len, ==, 2);
  again = groups->pdata[0];
  g_assert_cmpuint (again->person_ids->len, ==, 0);
  again = groups->pdata[1];
  g_assert_cmpuint (again->person_ids->len, ==, 2);
  g_assert_cmpint (g_array_index (again->person_ids, gint64, 0), ==, farm->student);   /* by name */
  g_array_set_size (group->person_ids, 1);
  ACT (farm, stead_group_repo_save (farm->store, group, err));
  ACT (farm, stead_group_repo_remove (farm->store, twin->id, err));
  farm_assert_undo (farm);
}

static void
test_turns (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  SteadDuty duty = { .name = (char *) "Feed the hens", .needs = (char *) "Feed mill", .retired_on = STEAD_DAY_NONE };
  SteadTurn turn = { .weekday = 1, .at_minute = 7 * 60, .from_on = TODAY, .to_on = STEAD_DAY_NONE };
  g_autoptr(SteadGroup) group = stead_group_new ();
  g_autoptr(GPtrArray) turns = NULL;
  const SteadTurn *again;

  group->name = g_strdup ("Early birds");
  ACT (farm, stead_group_repo_save (farm->store, group, err));
  ACT (farm, stead_duty_repo_save (farm->store, &duty, err));
  turn.duty_id = duty.id;
  INVALID (farm, stead_turn_repo_save (farm->store, &turn, err), "one person's or one group's");
  turn.group_id = group->id;
  ACT (farm, stead_turn_repo_save (farm->store, &turn, err));
  INVALID (farm, stead_group_repo_remove (farm->store, group->id, err), "turns in the rota");
  turns = stead_turn_repo_list (farm->store, TODAY, &error);
  g_assert_cmpuint (turns->len, ==, 1);
  again = turns->pdata[0];
  g_assert_cmpstr (again->duty_name, ==, "Feed the hens");
  g_assert_cmpstr (again->needs, ==, "Feed mill");
  g_assert_cmpstr (again->who, ==, "Early birds");
  g_assert_cmpint (again->at_minute, ==, 420);
  g_ptr_array_unref (turns);
  turns = stead_turn_repo_list (farm->store, TODAY - 1, &error);
  g_assert_cmpuint (turns->len, ==, 0);
  ACT (farm, stead_duty_repo_remove (farm->store, duty.id, err));
  g_ptr_array_unref (turns);
  turns = stead_turn_repo_list (farm->store, TODAY, &error);
  g_assert_cmpuint (turns->len, ==, 0);
  farm_assert_undo (farm);
}

static void
test_trainings (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  SteadTraining training = { .person_id = farm->student, .subject = (char *) "Power drill", .given_on = TODAY - 30,
                             .until_on = TODAY + 5, .given_by = farm->advisor };
  g_autoptr(GPtrArray) trainings = NULL;

  ACT (farm, stead_training_repo_save (farm->store, &training, err));
  trainings = stead_training_repo_list (farm->store, farm->student, &error);
  g_assert_cmpuint (trainings->len, ==, 1);
  g_assert_cmpstr (((SteadTraining *) trainings->pdata[0])->given_by_name, ==, "Mx. Reed");
  g_assert_true (stead_training_holds (trainings, farm->student, "power DRILL", TODAY + 5));
  g_assert_false (stead_training_holds (trainings, farm->student, "Power drill", TODAY + 6));
  g_assert_false (stead_training_holds (trainings, farm->student, "Power drill", TODAY - 31));
  g_assert_false (stead_training_holds (trainings, farm->advisor, "Power drill", TODAY));
  training.until_on = TODAY - 31;
  INVALID (farm, stead_training_repo_save (farm->store, &training, err), "on or after");
  training.given_on = TODAY + 1;
  INVALID (farm, stead_training_repo_save (farm->store, &training, err), "up to today");
  ACT (farm, stead_training_repo_remove (farm->store, training.id, err));
  farm_assert_undo (farm);
}

static void
test_consent (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  SteadConsent consent = { .person_id = farm->student, .what = STEAD_CONSENT_PICTURE, .given_on = TODAY - 9,
                           .ended_on = STEAD_DAY_NONE };
  g_autoptr(GPtrArray) consents = NULL;

  ACT (farm, stead_consent_repo_save (farm->store, &consent, err));
  consents = stead_consent_repo_list (farm->store, 0, &error);
  g_assert_true (stead_consent_holds (consents, farm->student, STEAD_CONSENT_PICTURE, TODAY));
  g_assert_false (stead_consent_holds (consents, farm->student, STEAD_CONSENT_NAME, TODAY));
  g_assert_false (stead_consent_holds (consents, farm->advisor, STEAD_CONSENT_PICTURE, TODAY));
  g_assert_false (stead_consent_holds (consents, farm->student, STEAD_CONSENT_PICTURE, TODAY - 10));
  /* Taken back: from that day on it does not hold. */
  consent.ended_on = TODAY;
  ACT (farm, stead_consent_repo_save (farm->store, &consent, err));
  g_ptr_array_unref (consents);
  consents = stead_consent_repo_list (farm->store, farm->student, &error);
  g_assert_false (stead_consent_holds (consents, farm->student, STEAD_CONSENT_PICTURE, TODAY));
  g_assert_true (stead_consent_holds (consents, farm->student, STEAD_CONSENT_PICTURE, TODAY - 1));
  farm_assert_undo (farm);
}

/* A rule and a note on what left the farm that could not be written whole are as before. */
static void
test_new_again (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadShareRule) rule = g_new0 (SteadShareRule, 1);
  g_autoptr(GArray) people = g_array_new (FALSE, FALSE, sizeof (gint64));
  SteadSharePart part = { farm->student, 2 };
  SteadRelease release = { .day = TODAY, .what = (char *) "Hours", .to_whom = (char *) "Office",
                           .ground = (char *) "request", .by_person = farm->advisor };

  rule->parts = g_array_new (FALSE, FALSE, sizeof (SteadSharePart));
  rule->from_on = TODAY;
  rule->basis = STEAD_SHARE_FIXED;
  g_array_append_val (rule->parts, part);
  g_array_append_val (people, farm->student);
  ACT_LEAVING (farm, stead_share_repo_add (farm->store, rule, err), rule->id == 0);
  ACT_LEAVING (farm, stead_release_repo_add (farm->store, &release, people, err), release.id == 0);
  g_assert_cmpint (rule->id, !=, 0);
  g_assert_cmpint (release.id, !=, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/people-repo/groups", test_groups);
  g_test_add_func ("/store/people-repo/new-again", test_new_again);
  g_test_add_func ("/store/people-repo/turns", test_turns);
  g_test_add_func ("/store/people-repo/trainings", test_trainings);
  g_test_add_func ("/store/people-repo/consent", test_consent);
  return g_test_run ();
}
