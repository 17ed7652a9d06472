/* test-people.c - the class, its hours and the shares of its result. */
#include "config.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#include "answer/stead-class-answer.h"
#include "answer/stead-hours-answer.h"
#include "answer/stead-results-answer.h"
#include "core/stead-money.h"

typedef struct
{
  SteadStore *store;
} Farm;

static Farm *
farm_new (void)
{
  Farm *farm = g_new0 (Farm, 1);

  farm->store = stead_store_create_memory ("Test farm", NULL);
  stead_store_set_today (farm->store, stead_day_new (2026, 3, 3));
  return farm;
}

static void
farm_free (Farm *farm)
{
  g_object_unref (farm->store);
  g_free (farm);
}
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Farm, farm_free)

static gint64
add_person (Farm            *farm,
            const char      *name,
            SteadPersonRole  role)
{
  SteadPerson person = { .name = (char *) name, .role = role, .left_on = STEAD_DAY_NONE };

  g_assert_true (stead_store_begin (farm->store, "person", NULL));
  g_assert_true (stead_person_repo_save (farm->store, &person, NULL));
  g_assert_true (stead_store_commit (farm->store, NULL));
  return person.id;
}

static void
add_hours (Farm       *farm,
           gint64      person_id,
           double      minutes,
           const char *duty,
           gboolean    paid)
{
  SteadWorkSpan span = { .person_id = person_id, .day = stead_store_get_today (farm->store), .from_at = G_MININT64,
                         .to_at = G_MININT64, .minutes = minutes, .duty = (char *) duty, .paid = paid };

  g_assert_true (stead_store_begin (farm->store, "hours", NULL));
  g_assert_true (stead_work_repo_enter (farm->store, &span, NULL, NULL));
  g_assert_true (stead_store_commit (farm->store, NULL));
}

/* Three times 20 min are one hour (row HRS-12 of tests/reference/hours.csv). */
static void
test_hours (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadHoursAnswer) answer = NULL;
  gint64 ada = add_person (farm, "Ada أ.", STEAD_PERSON_STUDENT);
  SteadDay today = stead_store_get_today (farm->store);
  g_autofree char *hour = stead_hours_words (60), *odd = stead_hours_words (205), *quarter = stead_hours_quarter (67);

  g_assert_cmpstr (hour, ==, "1 h");
  g_assert_cmpstr (odd, ==, "3 h 25 min");
  /* 7 minutes past go down (University of Arizona payroll, rounding reported hours). */
  g_assert_cmpstr (quarter, ==, "1.00");
  for (int i = 0; i < 3; i++)
    add_hours (farm, ada, 20, "Hens", FALSE);
  add_hours (farm, ada, 30, "Stall", TRUE);
  answer = stead_hours_answer_new (farm->store, today, today, 0, &error);
  g_assert_no_error (error);
  g_assert_cmpint (answer->unpaid_min, ==, 60);
  g_assert_cmpint (answer->paid_min, ==, 30);
  g_assert_cmpuint (answer->duties->len, ==, 2);
  g_assert_cmpstr (((SteadHoursDuty *) answer->duties->pdata[0])->duty, ==, "Hens");
  g_assert_cmpuint (answer->people->len, ==, 1);
  g_assert_cmpint (((SteadHoursPerson *) answer->people->pdata[0])->day_min[0], ==, 90);
  g_assert_nonnull (strstr (answer->sentence, "1 h 30 min"));
  g_assert_nonnull (strstr (answer->sentence, "4 entries are not checked"));
}

/* Shares add up to the net, to the cent, however it is shared. */
/* What is worked ends with the figure that is shown. */
static void
check_whys (const SteadResultsAnswer *answer)
{
  const SteadWhy *hour;
  g_autofree char *net = stead_money_format (answer->net_cents, answer->farm->currency);
  g_autofree char *one = stead_money_format (stead_money_round (answer->per_hour_cents), answer->farm->currency);
  g_autofree char *worked = NULL;

  g_assert_cmpuint (answer->whys->len, ==, 4);
  for (guint i = 0; i < 2; i++)
    {
      const SteadWhy *why = answer->whys->pdata[i];
      g_autofree char *end = stead_money_format (i == 0 ? answer->net_cents : answer->worth_change_cents,
                                                 answer->farm->currency);
      g_auto(GStrv) lines = g_strsplit (why->worked, "\n", -1);

      g_test_message ("%s", why->worked);
      for (int n = 0; lines[n] != NULL; n++)
        g_assert_true (g_str_has_suffix (lines[n], end));
    }
  hour = answer->whys->pdata[2];
  worked = g_strdup_printf ("%s ÷ 1 h = %s", net, one);
  g_assert_cmpstr (hour->worked, ==, worked);
}

static void
test_shares (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  gint64 people[3];
  g_autoptr(SteadShareRule) rule = NULL;

  people[0] = add_person (farm, "Zoë", STEAD_PERSON_STUDENT);
  people[1] = add_person (farm, "Bảo", STEAD_PERSON_STUDENT);
  people[2] = add_person (farm, "由紀", STEAD_PERSON_STUDENT);
  for (int i = 0; i < 3; i++)
    add_hours (farm, people[i], 20, "Hens", FALSE);
  for (int basis = -1; basis <= STEAD_SHARE_FIXED; basis++)
    {
      g_autoptr(SteadResultsAnswer) answer = NULL;
      gint64 sum = 0;

      if (basis >= 0)
        {
          SteadSharePart part = { people[0], 2.5 };

          g_clear_pointer (&rule, stead_share_rule_free);
          rule = g_new0 (SteadShareRule, 1);
          rule->parts = g_array_new (FALSE, FALSE, sizeof (SteadSharePart));
          rule->from_on = stead_store_get_today (farm->store);
          rule->basis = (SteadShareBasis) basis;
          g_array_append_val (rule->parts, part);
          part = (SteadSharePart) { people[1], 1 };
          g_array_append_val (rule->parts, part);
          g_assert_true (stead_store_begin (farm->store, "shares", NULL));
          g_assert_true (stead_share_repo_add (farm->store, rule, NULL));
          g_assert_true (stead_store_commit (farm->store, NULL));
        }
      answer = stead_results_answer_new (farm->store, 0, &error);
      g_assert_no_error (error);
      g_assert_cmpint (answer->rule->basis, ==, MAX (basis, 0));
      g_assert_cmpint (answer->unpaid_min, ==, 60);
      g_assert_cmpfloat_with_epsilon (answer->per_hour_cents, (double) answer->net_cents, 1e-6);   /* one hour */
      for (guint i = 0; i < answer->shares->len; i++)
        sum += ((SteadResultShare *) answer->shares->pdata[i])->cents;
      g_assert_cmpint (sum, ==, answer->net_cents);
      g_assert_cmpuint (answer->shares->len, ==, 3);
      check_whys (answer);
    }
}

static void
test_class (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadClassAnswer) answer = NULL;
  guint before;

  answer = stead_class_answer_new (farm->store, &error);
  g_assert_no_error (error);
  before = answer->rows->len;
  g_clear_pointer (&answer, stead_class_answer_free);
  add_hours (farm, add_person (farm, "Zoë", STEAD_PERSON_STUDENT), 45, "Hens", FALSE);
  answer = stead_class_answer_new (farm->store, &error);
  g_assert_cmpuint (answer->rows->len, ==, before + 1);
  g_assert_cmpint (answer->minutes, ==, 45);
  g_assert_cmpint (answer->n_unchecked, ==, 1);
  g_assert_nonnull (strstr (answer->sentence, "45 min"));
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/answer/people/hours", test_hours);
  g_test_add_func ("/answer/people/shares", test_shares);
  g_test_add_func ("/answer/people/class", test_class);
  return g_test_run ();
}
