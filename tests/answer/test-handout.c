/* test-handout.c - whom a document tells of that is saved or printed, as it goes into the log. */
#include "config.h"

#include <string.h>

#include "answer/stead-handout-answer.h"
#include "answer/stead-answer-error.h"
#include "answer/stead-packet-answer.h"
#include "answer/stead-packet-state.h"
#include "farm.h"
#include "store/stead-event-repo.h"
#include "store/stead-work-repo.h"

static gint64
person (Farm       *farm,
        const char *name)
{
  SteadPerson one = { .name = (char *) name, .role = STEAD_PERSON_STUDENT, .left_on = STEAD_DAY_NONE };

  FARM_DO (farm, stead_person_repo_save (farm->store, &one, &farm_error));
  return one.id;
}

static void
work (Farm     *farm,
      gint64    who,
      SteadDay  day)
{
  SteadWorkSpan span = { .person_id = who, .day = day, .from_at = G_MININT64, .minutes = 30,
                         .duty = (char *) "Feeding", .batch_id = farm->flock };

  FARM_DO (farm, stead_work_repo_add (farm->store, &span, &farm_error));
}

static void
packet (Farm       *farm,
        const char *name,
        gint64      who,
        gint64      event_id,
        gboolean    with_all)
{
  g_autoptr(SteadPacket) made = stead_packet_usual (farm->store, farm->today, NULL);

  made->name = g_strdup (name);
  made->person_id = who;
  made->event_id = event_id;
  made->with_pictures = made->with_names = with_all;
  FARM_DO (farm, stead_packet_repo_save (farm->store, made, &farm_error));
}

static SteadHandoutAnswer *
handout (Farm       *farm,
         const char *paper,
         const char *of,
         SteadDay    from)
{
  g_autoptr(GError) error = NULL;
  SteadHandoutAnswer *answer = stead_handout_answer_new (farm->store, paper, of, from, from + 6, &error);

  g_assert_no_error (error);
  g_assert_nonnull (answer);
  g_assert_nonnull (answer->what);
  return answer;
}

static void
assert_tells_of (const SteadHandoutAnswer *answer,
                 gint64                    a,
                 gint64                    b)
{
  g_assert_cmpuint (answer->people->len, ==, (a != 0) + (b != 0));
  for (guint i = 0; i < answer->people->len; i++)
    {
      gint64 id = g_array_index (answer->people, gint64, i);

      g_assert_true (id == a || id == b);
      g_assert_true (i == 0 || id != g_array_index (answer->people, gint64, 0));
    }
}

static void
test_kinds (Farm          *farm,
            gconstpointer  data)
{
  g_assert_true (stead_handout_is_personal ("packet"));
  g_assert_true (stead_handout_is_personal ("hours-week"));
  g_assert_true (stead_handout_is_personal ("hours-person"));
  g_assert_false (stead_handout_is_personal ("price-page"));
}

/* A packet of one is of that one alone; that of a team, of the whole team. */
static void
test_packets (Farm          *farm,
              gconstpointer  data)
{
  SteadEvent event = { .name = (char *) "Contest", .kind = (char *) "sales", .day = farm->today + 9 };
  gint64 maya = person (farm, "Maya <b>"), devon = person (farm, "Devon");
  g_autoptr(SteadHandoutAnswer) one = NULL;
  g_autoptr(SteadHandoutAnswer) team = NULL;

  person (farm, "Kai");
  FARM_DO (farm, stead_event_repo_save (farm->store, &event, &farm_error));
  FARM_DO (farm, stead_event_repo_join (farm->store, event.id, maya, NULL, &farm_error));
  FARM_DO (farm, stead_event_repo_join (farm->store, event.id, devon, NULL, &farm_error));
  packet (farm, "Alone", maya, 0, FALSE);
  packet (farm, "Together", 0, event.id, TRUE);
  one = handout (farm, "packet", "Alone", STEAD_DAY_NONE);
  assert_tells_of (one, maya, 0);
  g_assert_nonnull (strstr (one->what, "Alone"));
  g_assert_nonnull (strstr (one->sentence, "Maya &lt;b&gt;"));
  g_assert_null (strstr (one->sentence, "Devon"));
  team = handout (farm, "packet", "Together", STEAD_DAY_NONE);
  assert_tells_of (team, maya, devon);
  g_assert_null (strstr (team->sentence, "Kai"));
  if (farm_in_english ())
    {
      g_assert_null (strstr (one->what, "pictures"));
      g_assert_nonnull (strstr (team->what, "pictures"));
      g_assert_nonnull (strstr (team->what, "names others"));
    }
}

/* Of whom the sheet of a week has hours; one who worked in another week is not on it. */
static void
test_hours (Farm          *farm,
            gconstpointer  data)
{
  gint64 maya = person (farm, "Maya"), devon = person (farm, "Devon"), kai = person (farm, "Kai");
  SteadDay monday = farm->today - 1;      /* 2026-03-30 */
  g_autoptr(SteadHandoutAnswer) week = NULL;
  g_autoptr(SteadHandoutAnswer) before = NULL;
  g_autoptr(SteadHandoutAnswer) own = NULL;

  work (farm, maya, monday);
  work (farm, maya, monday + 1);
  work (farm, devon, monday);
  work (farm, kai, monday - 1);
  week = handout (farm, "hours-week", NULL, monday);
  assert_tells_of (week, maya, devon);
  before = handout (farm, "hours-week", NULL, monday - 14);
  assert_tells_of (before, 0, 0);
  g_assert_null (before->sentence);
  own = handout (farm, "hours-person", "Kai", STEAD_DAY_NONE);
  assert_tells_of (own, kai, 0);
  g_assert_nonnull (strstr (own->what, "Kai"));
}

static void
test_unknown (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(GError) none = NULL;
  g_autoptr(GError) nobody = NULL;

  g_assert_null (stead_handout_answer_new (farm->store, "packet", "Mine", STEAD_DAY_NONE, STEAD_DAY_NONE, &none));
  g_assert_error (none, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING);
  g_assert_null (stead_handout_answer_new (farm->store, "hours-person", "Zoe", STEAD_DAY_NONE, STEAD_DAY_NONE, &nobody));
  g_assert_nonnull (nobody);
}

#define ADD(path, test) g_test_add (path, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("/answer/handout/kinds", test_kinds);
  ADD ("/answer/handout/packets", test_packets);
  ADD ("/answer/handout/hours", test_hours);
  ADD ("/answer/handout/unknown", test_unknown);
  return g_test_run ();
}
