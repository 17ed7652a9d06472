/* test-agenda.c - what comes as a calendar, what came month by month, and what left the farm. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "answer/stead-agenda-answer.h"
#include "answer/stead-release-answer.h"
#include "farm.h"
#include "store/stead-event-repo.h"
#include "store/stead-months-repo.h"
#include "store/stead-people-repo.h"
#include "store/stead-purge.h"
#include "store/stead-sale-repo.h"
#include "store/stead-work-repo.h"

static gint64
add_person (Farm       *farm,
            const char *name)
{
  SteadPerson person = { .name = (char *) name, .role = STEAD_PERSON_STUDENT, .left_on = STEAD_DAY_NONE };

  FARM_DO (farm, stead_person_repo_save (farm->store, &person, &farm_error));
  return person.id;
}

static void
add_event (Farm       *farm,
           const char *name,
           int         in_days)
{
  SteadEvent event = { .name = (char *) name, .kind = (char *) "sales", .day = farm->today + in_days };

  FARM_DO (farm, stead_event_repo_save (farm->store, &event, &farm_error));
}

/* --- the calendar ------------------------------------------------------------------ */

static void
test_agenda (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadAgendaAnswer) before = stead_agenda_answer_new (farm->store, NULL);
  g_autoptr(SteadAgendaAnswer) answer = NULL;

  add_person (farm, "Maya Nobody");
  add_event (farm, "Contest, near", 5);
  add_event (farm, "Contest, distant", STEAD_AGENDA_DAYS + 1);
  add_event (farm, "Contest, over", -1);
  answer = stead_agenda_answer_new (farm->store, NULL);
  g_assert_nonnull (answer);
  g_assert_cmpuint (answer->things->len, ==, before->things->len + 1);
  /* RFC 5545: a comma within a text is escaped (3.3.11); a day is DATE (3.3.4). */
  g_assert_nonnull (strstr (answer->ics, "SUMMARY:Contest\\, near\r\n"));
  g_assert_nonnull (strstr (answer->ics, "DTSTART;VALUE=DATE:20260405\r\n"));
  g_assert_null (strstr (answer->ics, "distant"));
  g_assert_null (strstr (answer->ics, "over"));
  g_assert_null (strstr (answer->ics, "Maya"));
}

/* --- the months ---------------------------------------------------------------------- */

/* Eight eggs a day from January 1 on: 31, 28 and 31 days. */
static void
test_months (Farm          *farm,
             gconstpointer  data)
{
  static const gint64 eggs[] = { 0, 248, 224, 248 };
  gint64 who = add_person (farm, "Maya");
  SteadWorkSpan span = { .person_id = who, .day = farm->today - 40, .from_at = G_MININT64, .to_at = G_MININT64,
                         .minutes = 90, .duty = (char *) "Feeding" };
  g_autoptr(GPtrArray) months = NULL;

  farm_log (farm);
  FARM_DO (farm, stead_work_repo_add (farm->store, &span, &farm_error));
  months = stead_months_repo_list (farm->store, stead_day_new (2025, 12, 15), farm->today, NULL);
  g_assert_cmpuint (months->len, ==, G_N_ELEMENTS (eggs));
  for (guint i = 0; i < months->len; i++)
    {
      const SteadMonth *month = months->pdata[i];

      g_assert_cmpint (month->year * 12 + month->month, ==, 2025 * 12 + 12 + (int) i);
      g_assert_cmpint (month->eggs, ==, eggs[i]);
      /* 40 days before March 31 is February 19. */
      g_assert_cmpfloat (month->minutes, ==, month->month == 2 ? 90 : 0);
    }
}

/* --- what left, and who is to be removed ------------------------------------------------ */

static void
set_keep (Farm     *farm,
          gint64    who,
          SteadDay  until)
{
  SteadDay day = 1;

  FARM_DO (farm, stead_purge_set_keep_until (farm->store, who, until, &farm_error));
  g_assert_true (stead_purge_get_keep_until (farm->store, who, &day, NULL));
  g_assert_cmpint (day, ==, until);
}

static void
test_release (Farm          *farm,
              gconstpointer  data)
{
  SteadRelease release = { .day = farm->today, .what = (char *) "The class", .to_whom = (char *) "The district",
                           .ground = (char *) "consent" };
  gint64 maya = add_person (farm, "Maya"), devon = add_person (farm, "Devon");
  g_autoptr(SteadReleaseAnswer) none = stead_release_answer_new (farm->store, NULL);
  g_autoptr(SteadReleaseAnswer) left = NULL;
  g_autoptr(SteadReleaseAnswer) due = NULL;
  g_autoptr(SteadReleaseAnswer) again = NULL;

  g_assert_cmpuint (none->releases->len, ==, 0);
  g_assert_cmpuint (none->due, ==, 0);
  FARM_DO (farm, stead_release_repo_add (farm->store, &release, NULL, &farm_error));
  /* The day itself still belongs to the time of keeping. */
  set_keep (farm, maya, farm->today);
  set_keep (farm, devon, farm->today + 300);
  left = stead_release_answer_new (farm->store, NULL);
  g_assert_cmpuint (left->releases->len, ==, 1);
  g_assert_cmpuint (left->due, ==, 0);
  set_keep (farm, maya, farm->today - 1);
  due = stead_release_answer_new (farm->store, NULL);
  g_assert_cmpuint (due->due, ==, 1);
  g_assert_cmpstr (due->sentence, !=, left->sentence);
  set_keep (farm, maya, STEAD_DAY_NONE);
  again = stead_release_answer_new (farm->store, NULL);
  g_assert_cmpuint (again->due, ==, 0);
}

#define ADD(path, test) g_test_add (path, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("/answer/agenda/calendar", test_agenda);
  ADD ("/answer/agenda/months", test_months);
  ADD ("/answer/agenda/release", test_release);
  return g_test_run ();
}
