/* test-work-repo.c - hours: what is refused and where, the check that freezes, corrections, timer, drafts. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-work-repo.h"

#define HOUR 3600

/* Half past three on the day before, local time (the tests run in UTC). */
static gint64
afternoon (SteadDay day)
{
  return (gint64) day * 86400 + 15 * HOUR + 1800;
}

static SteadWorkSpan *
span_new (Farm   *farm,
          gint64  from_at,
          double  minutes)
{
  SteadWorkSpan *span = g_new0 (SteadWorkSpan, 1);

  span->person_id = farm->student;
  span->day = TODAY - 1;
  span->from_at = from_at;
  span->to_at = from_at != G_MININT64 ? from_at + (gint64) (minutes * 60) : G_MININT64;
  span->minutes = minutes;
  span->duty = g_strdup (" Feed the hens ");
  return span;
}

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadWorkSpan) span = span_new (farm, afternoon (TODAY - 1), 90);
  g_autoptr(SteadWorkSpan) again = NULL;

  span->batch_id = farm->flock;
  span->paid = TRUE;
  span->to_at += 15 * 60;
  span->break_minutes = 15;
  ACT (farm, stead_work_repo_enter (farm->store, span, NULL, err));
  again = stead_work_repo_get (farm->store, span->id, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (again->duty, ==, "Feed the hens");
  g_assert_cmpstr (again->about, ==, "Hens 1");
  g_assert_cmpstr (again->person_name, ==, "Ada B.");
  g_assert_cmpfloat (again->minutes, ==, 90);
  g_assert_cmpfloat (again->break_minutes, ==, 15);
  g_assert_true (again->paid);
  g_assert_cmpint (again->entered_on, ==, TODAY);
  g_assert_cmpint (again->checked_by, ==, 0);
  g_assert_true (isnan (again->was_minutes));
  again->minutes = 80;
  ACT (farm, stead_work_repo_enter (farm->store, again, NULL, err));
  stead_work_span_free (span);
  span = stead_work_repo_get (farm->store, again->id, &error);
  g_assert_cmpfloat (span->minutes, ==, 80);
  farm_assert_undo (farm);
}

static void
refuse (Farm           *farm,
        SteadWorkSpan  *span,
        SteadWorkFault  fault,
        const char     *words)
{
  SteadWorkFault at = STEAD_WORK_FAULT_NONE;

  INVALID (farm, stead_work_repo_enter (farm->store, span, &at, err), words);
  g_assert_cmpint (at, ==, fault);
}

static void
test_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadWorkSpan) first = span_new (farm, afternoon (TODAY - 1), 90), second = NULL, untimed = NULL;

  ACT (farm, stead_work_repo_enter (farm->store, first, NULL, err));
  second = span_new (farm, afternoon (TODAY - 1) + 89 * 60, 30);
  refuse (farm, second, STEAD_WORK_FAULT_TIME, "already has hours");
  /* What begins as another ends does not overlap it. */
  second->from_at += 60;
  second->to_at += 60;
  second->to_at = second->from_at;
  refuse (farm, second, STEAD_WORK_FAULT_TIME, "later than the start");
  second->to_at = second->from_at + 30 * 60;
  ACT (farm, stead_work_repo_enter (farm->store, second, NULL, err));
  second->id = 0;
  second->person_id = farm->advisor;
  ACT (farm, stead_work_repo_enter (farm->store, second, NULL, err));
  untimed = span_new (farm, G_MININT64, 1440 - 120 + 1);
  refuse (farm, untimed, STEAD_WORK_FAULT_TIME, "more than 24 hours");
  untimed->minutes = 1500;
  refuse (farm, untimed, STEAD_WORK_FAULT_TIME, "24 hours");
  untimed->minutes = 10;
  untimed->day = TODAY + 1;
  refuse (farm, untimed, STEAD_WORK_FAULT_DAY, "up to today");
  untimed->day = TODAY;
  untimed->person_id = 0;
  refuse (farm, untimed, STEAD_WORK_FAULT_PERSON, "who worked");
  untimed->person_id = farm->student;
  g_free (untimed->duty);
  untimed->duty = g_strdup ("");
  refuse (farm, untimed, STEAD_WORK_FAULT_DUTY, "name");
}

/* Past midnight: the next day's start is still within it. */
static void
test_midnight (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadWorkSpan) night = span_new (farm, (gint64) TODAY * 86400 - HOUR, 150);
  g_autoptr(SteadWorkSpan) morning = span_new (farm, (gint64) TODAY * 86400 + HOUR, 60);

  ACT (farm, stead_work_repo_enter (farm->store, night, NULL, err));
  morning->day = TODAY;
  refuse (farm, morning, STEAD_WORK_FAULT_TIME, "already has hours");
}

static void
test_group (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadWorkSpan) span = span_new (farm, afternoon (TODAY - 1), 60);
  g_autoptr(GArray) both = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr(GPtrArray) list = NULL;

  g_array_append_val (both, farm->advisor);
  g_array_append_val (both, farm->student);
  ACT (farm, stead_work_repo_enter_all (farm->store, span, both, NULL, err));
  list = stead_work_repo_list (farm->store, TODAY - 1, TODAY - 1, 0, &error);
  g_assert_cmpuint (list->len, ==, 2);
  /* One of them has hours already: nobody gets any. */
  g_clear_pointer (&list, g_ptr_array_unref);
  span->from_at += 3 * HOUR;
  span->to_at += 3 * HOUR;
  span->person_id = farm->student;
  ACT (farm, stead_work_repo_enter (farm->store, span, NULL, err));
  INVALID (farm, stead_work_repo_enter_all (farm->store, span, both, NULL, err), "Ada B.");
  list = stead_work_repo_list (farm->store, TODAY - 1, TODAY - 1, 0, &error);
  g_assert_cmpuint (list->len, ==, 3);
}

static void
test_check_freezes (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadWorkSpan) span = span_new (farm, afternoon (TODAY - 1), 90), right = NULL, none = NULL;
  g_autoptr(GPtrArray) list = NULL;
  int n = 0;

  ACT (farm, stead_work_repo_enter (farm->store, span, NULL, err));
  INVALID (farm, stead_work_repo_check (farm->store, TODAY - 7, TODAY, 0, farm->student, &n, err), "advisor");
  ACT (farm, stead_work_repo_check (farm->store, TODAY - 7, TODAY, 0, farm->advisor, &n, err));
  g_assert_cmpint (n, ==, 1);
  ACT (farm, stead_work_repo_check (farm->store, TODAY - 7, TODAY, farm->student, farm->advisor, &n, err));
  g_assert_cmpint (n, ==, 0);
  span->minutes = 60;
  REFUSE (farm, stead_work_repo_enter (farm->store, span, NULL, err), STEAD_STORE_ERROR_SIGNED, "signed");
  REFUSE (farm, stead_work_repo_remove (farm->store, span->id, err), STEAD_STORE_ERROR_SIGNED, "signed");
  g_assert_false (stead_store_undo (farm->store, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_SIGNED);
  g_clear_error (&error);
  /* The same time may be given anew, as a correction. */
  right = span_new (farm, afternoon (TODAY - 1), 75);
  right->corrects_id = span->id;
  ACT (farm, stead_work_repo_enter (farm->store, right, NULL, err));
  list = stead_work_repo_list (farm->store, TODAY - 7, TODAY, farm->student, &error);
  g_assert_cmpuint (list->len, ==, 1);
  g_assert_cmpfloat (((SteadWorkSpan *) list->pdata[0])->minutes, ==, 75);
  g_assert_cmpfloat (((SteadWorkSpan *) list->pdata[0])->was_minutes, ==, 90);
  /* A correction that is not checked yet can be changed, to "was not done" too. */
  right->from_at = right->to_at = G_MININT64;
  right->minutes = 0;
  ACT (farm, stead_work_repo_enter (farm->store, right, NULL, err));
  none = span_new (farm, G_MININT64, 0);
  refuse (farm, none, STEAD_WORK_FAULT_TIME, "24 hours");
}

static void
test_timer (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) timers = NULL, list = NULL;
  const SteadWorkSpan *span;
  gint64 now = afternoon (TODAY);

  ACT (farm, stead_work_timer_start (farm->store, farm->student, "Feed the hens", now, err));
  INVALID (farm, stead_work_timer_start (farm->store, farm->student, "Clean", now, err), "running");
  ACT (farm, stead_work_timer_pause (farm->store, farm->student, now + 30 * 60, err));
  timers = stead_work_timer_list (farm->store, &error);
  g_assert_cmpuint (timers->len, ==, 1);
  /* The break does not count, however long it is. */
  g_assert_cmpfloat (stead_work_timer_minutes (timers->pdata[0], now + 50 * 60), ==, 30);
  ACT (farm, stead_work_timer_pause (farm->store, farm->student, now + 40 * 60, err));
  ACT (farm, stead_work_timer_stop (farm->store, farm->student, TODAY, now + 100 * 60, err));
  list = stead_work_repo_list (farm->store, TODAY, TODAY, 0, &error);
  g_assert_cmpuint (list->len, ==, 1);
  span = list->pdata[0];
  g_assert_cmpfloat (span->minutes, ==, 90);
  g_assert_cmpfloat (span->break_minutes, ==, 10);
  g_assert_cmpint (span->to_at - span->from_at, ==, 100 * 60);
  g_ptr_array_unref (timers);
  timers = stead_work_timer_list (farm->store, &error);
  g_assert_cmpuint (timers->len, ==, 0);
  ACT (farm, stead_work_timer_start (farm->store, farm->student, "Clean", now - 20 * HOUR, err));
  INVALID (farm, stead_work_timer_stop (farm->store, farm->student, TODAY - 1, now, err), "16 hours");
  ACT (farm, stead_work_timer_drop (farm->store, farm->student, err));
  farm_assert_undo (farm);
}

static void
test_drafts (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) drafts = NULL;
  g_autoptr(SteadWorkSpan) span = span_new (farm, G_MININT64, 20);
  SteadFlockEntry entry = { .flock_id = farm->flock, .day = TODAY - 1, .eggs = 20, .feed_kg = NAN,
                            .person_id = farm->student };
  const SteadWorkDraft *draft;

  ACT (farm, stead_flock_repo_save_entry (farm->store, &entry, err));
  drafts = stead_work_repo_drafts (farm->store, TODAY - 14, TODAY, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (drafts->len, ==, 1);
  draft = drafts->pdata[0];
  g_assert_cmpint (draft->kind, ==, STEAD_DRAFT_LOG);
  g_assert_cmpint (draft->person_id, ==, farm->student);
  g_assert_cmpint (draft->batch_id, ==, farm->flock);
  /* The flock takes 20 minutes a day, says its card. */
  g_assert_cmpfloat (draft->minutes, ==, 20);
  /* Taken over for the farm as a whole: not offered again all the same. */
  span->known_by = g_strdup (draft->known_by);
  ACT (farm, stead_work_repo_enter (farm->store, span, NULL, err));
  g_ptr_array_unref (drafts);
  drafts = stead_work_repo_drafts (farm->store, TODAY - 14, TODAY, &error);
  g_assert_cmpuint (drafts->len, ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/work-repo/round-trip", test_round_trip);
  g_test_add_func ("/store/work-repo/refused", test_refused);
  g_test_add_func ("/store/work-repo/midnight", test_midnight);
  g_test_add_func ("/store/work-repo/group", test_group);
  g_test_add_func ("/store/work-repo/check-freezes", test_check_freezes);
  g_test_add_func ("/store/work-repo/timer", test_timer);
  g_test_add_func ("/store/work-repo/drafts", test_drafts);
  return g_test_run ();
}
