/* test-journal.c - goals, roles, thoughts and pictures of one person, and what is said of them. */
#include "config.h"

#include <string.h>

#include "answer/stead-journal-answer.h"
#include "farm.h"
#include "store/stead-batch-repo.h"
#include "store/stead-people-repo.h"
#include "store/stead-reflection-repo.h"
#include "store/stead-shot-repo.h"

static gint64
person (Farm       *farm,
        const char *name)
{
  SteadPerson one = { .name = (char *) name, .role = STEAD_PERSON_STUDENT, .left_on = STEAD_DAY_NONE };

  FARM_DO (farm, stead_person_repo_save (farm->store, &one, &farm_error));
  return one.id;
}

static const SteadJournalRow *
row_of (const SteadJournalAnswer *answer,
        const char               *text)
{
  for (guint i = 0; i < answer->rows->len; i++)
    if (g_str_equal (((SteadJournalRow *) answer->rows->pdata[i])->text, text))
      return answer->rows->pdata[i];
  g_assert_not_reached ();
}

static void
goal (Farm       *farm,
      gint64      who,
      const char *words,
      SteadDay    due_on,
      SteadDay    reached_on)
{
  SteadGoal one = { .person_id = who, .words = (char *) words, .set_on = farm->today - 60, .due_on = due_on,
                    .reached_on = reached_on };

  FARM_DO (farm, stead_goal_repo_save (farm->store, &one, &farm_error));
}

static void
picture (Farm       *farm,
         gint64      whose,
         gint64      also,
         const char *caption)
{
  static const guint8 bytes[] = { 0xff, 0xd8, 0xff, 0xd9 };
  g_autoptr(GBytes) jpeg = g_bytes_new_static (bytes, sizeof bytes);
  g_autoptr(SteadShot) shot = g_new0 (SteadShot, 1);

  shot->caption = g_strdup (caption);
  shot->day = farm->today - 1;
  shot->person_id = whose;
  shot->people = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_array_append_val (shot->people, also);
  FARM_DO (farm, (shot->picture_id = stead_picture_repo_add (farm->store, jpeg, 1, 1, &farm_error)) != 0);
  FARM_DO (farm, stead_shot_repo_save (farm->store, shot, &farm_error));
}

static void
consent (Farm   *farm,
         gint64  who)
{
  SteadConsent one = { .person_id = who, .what = STEAD_CONSENT_PICTURE, .given_on = farm->today - 9,
                       .ended_on = STEAD_DAY_NONE };

  FARM_DO (farm, stead_consent_repo_save (farm->store, &one, &farm_error));
}

static void
test_all (Farm          *farm,
          gconstpointer  data)
{
  gint64 maya = person (farm, "Maya"), devon = person (farm, "Devon & Co");
  SteadRoleHeld role = { .person_id = maya, .words = (char *) "Treasurer", .from_on = farm->today - 30,
                         .to_on = STEAD_DAY_NONE };
  SteadReflection thought = { .person_id = maya, .day = farm->today - 2, .text = (char *) "First line\nsecond line" };
  g_autoptr(SteadJournalAnswer) answer = NULL;
  g_autoptr(SteadJournalAnswer) other = NULL;

  goal (farm, maya, "Reached goal", farm->today - 5, farm->today - 7);
  goal (farm, maya, "Open goal", farm->today + 5, STEAD_DAY_NONE);
  goal (farm, maya, "Missed goal", farm->today - 5, STEAD_DAY_NONE);
  FARM_DO (farm, stead_role_held_repo_save (farm->store, &role, &farm_error));
  FARM_DO (farm, stead_reflection_repo_save (farm->store, &thought, &farm_error));
  consent (farm, maya);
  picture (farm, maya, maya, "Alone");
  picture (farm, maya, devon, "With somebody");
  answer = stead_journal_answer_new (farm->store, maya, NULL);
  g_assert_nonnull (answer);
  g_assert_cmpuint (answer->rows->len, ==, 7);
  g_assert_cmpint (answer->n_goals, ==, 3);
  g_assert_cmpint (answer->n_reached, ==, 1);
  g_assert_cmpint (answer->n_thoughts, ==, 1);
  g_assert_cmpint (answer->n_chosen, ==, 0);
  g_assert_cmpint (answer->n_pictures, ==, 2);
  g_assert_cmpint (answer->n_agreed, ==, 1);
  /* The latest first; a thought stands on one line. */
  g_assert_cmpint (((SteadJournalRow *) answer->rows->pdata[0])->kind, ==, STEAD_JOURNAL_PICTURE);
  g_assert_cmpint (row_of (answer, "First line second line")->kind, ==, STEAD_JOURNAL_THOUGHT);
  g_assert_nonnull (strstr (row_of (answer, "With somebody")->state, "Devon & Co"));
  g_assert_null (strstr (row_of (answer, "Alone")->state, "Maya"));
  if (farm_in_english ())
    {
      g_assert_true (g_str_has_prefix (row_of (answer, "Reached goal")->state, "reached on "));
      g_assert_true (g_str_has_prefix (row_of (answer, "Open goal")->state, "due on "));
      g_assert_true (g_str_has_prefix (row_of (answer, "Missed goal")->state, "was due on "));
      g_assert_cmpstr (row_of (answer, "Treasurer")->state, ==, "still held");
      g_assert_cmpstr (answer->sentence, ==, "Maya reached <b>1 of 3</b> goals, chose <b>0 of 1</b> thought for the packet "
                                             "and may show <b>1 of 2</b> pictures.");
    }
  /* Another's journal is another's, and a name is no markup. */
  other = stead_journal_answer_new (farm->store, devon, NULL);
  g_assert_cmpuint (other->rows->len, ==, 0);
  g_assert_nonnull (strstr (other->sentence, "Devon &amp; Co"));
}

static void
test_nobody (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(GError) error = NULL;

  g_assert_null (stead_journal_answer_new (farm->store, 99, &error));
  g_assert_nonnull (error);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add ("/answer/journal/all", Farm, NULL, farm_set_up, test_all, farm_tear_down);
  g_test_add ("/answer/journal/nobody", Farm, NULL, farm_set_up, test_nobody, farm_tear_down);
  return g_test_run ();
}
