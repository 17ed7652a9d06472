/* test-farm-repo.c - settings and people. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"

static void
test_settings (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFarm) facts = stead_farm_repo_get (farm->store, &error);
  g_autoptr(SteadFarm) again = NULL;

  g_assert_no_error (error);
  g_assert_cmpstr (facts->name, ==, "Test Farm");
  g_assert_cmpint (facts->units, ==, STEAD_UNITS_US);
  g_assert_cmpstr (facts->currency, ==, "USD");
  g_assert_cmpint (facts->school_year_month, ==, 8);
  g_assert_cmpint (facts->school_year_mday, ==, 1);
  g_free (facts->name);
  facts->name = g_strdup (" Ember Lake ");
  facts->units = STEAD_UNITS_METRIC;
  g_free (facts->currency);
  facts->currency = g_strdup ("EUR");
  facts->elevation_m = 360.5;
  facts->school_year_month = 9;
  facts->school_year_mday = 15;
  facts->labor_cents_hour = 900;
  ACT (farm, stead_farm_repo_set (farm->store, facts, err));
  again = stead_farm_repo_get (farm->store, &error);
  g_assert_cmpstr (again->name, ==, "Ember Lake");
  g_assert_cmpint (again->units, ==, STEAD_UNITS_METRIC);
  g_assert_cmpstr (again->currency, ==, "EUR");
  g_assert_cmpfloat (again->elevation_m, ==, 360.5);
  g_assert_cmpint (again->school_year_month, ==, 9);
  g_assert_cmpint (again->school_year_mday, ==, 15);
  g_assert_cmpint (again->labor_cents_hour, ==, 900);
  farm_assert_undo (farm);
}

#define BAD(struct, save, field, value, words) \
  G_STMT_START { \
    __typeof__ (struct->field) kept = struct->field; \
    struct->field = (value); \
    INVALID (farm, save (farm->store, struct, err), words); \
    struct->field = kept; \
  } G_STMT_END

static void
test_settings_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFarm) facts = stead_farm_repo_get (farm->store, &error);
  char blank[] = "\t", coins[] = "XXQ";

  BAD (facts, stead_farm_repo_set, name, blank, "Enter a name");
  BAD (facts, stead_farm_repo_set, currency, coins, "“XXQ” is not known");
  BAD (facts, stead_farm_repo_set, currency, NULL, "is not known");
  BAD (facts, stead_farm_repo_set, elevation_m, 9001, "9,000");
  BAD (facts, stead_farm_repo_set, elevation_m, (double) NAN, "9,000");
  BAD (facts, stead_farm_repo_set, school_year_month, 13, "every year has");
  BAD (facts, stead_farm_repo_set, school_year_mday, 32, "every year has");
  facts->school_year_month = 2;
  BAD (facts, stead_farm_repo_set, school_year_mday, 29, "every year has");
  BAD (facts, stead_farm_repo_set, labor_cents_hour, -1, "Rate for an hour");
}

static void
test_people (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) people = NULL;
  SteadPerson person = { .name = (char *) " Zoë K. ", .role = STEAD_PERSON_HELPER, .class_year = 2027,
                         .left_on = TODAY };
  SteadPerson *bad = &person;
  char taken[] = "Ada B.";

  ACT (farm, stead_person_repo_save (farm->store, &person, err));
  people = stead_person_repo_list (farm->store, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (people->len, ==, 3);
  g_assert_cmpstr (((SteadPerson *) people->pdata[0])->name, ==, "Ada B.");
  g_assert_cmpint (((SteadPerson *) people->pdata[0])->class_year, ==, 0);
  g_assert_cmpint (((SteadPerson *) people->pdata[0])->left_on, ==, STEAD_DAY_NONE);
  g_assert_cmpint (((SteadPerson *) people->pdata[1])->role, ==, STEAD_PERSON_ADVISOR);
  g_assert_cmpstr (((SteadPerson *) people->pdata[2])->name, ==, "Zoë K.");
  g_assert_cmpint (((SteadPerson *) people->pdata[2])->role, ==, STEAD_PERSON_HELPER);
  g_assert_cmpint (((SteadPerson *) people->pdata[2])->class_year, ==, 2027);
  g_assert_cmpint (((SteadPerson *) people->pdata[2])->left_on, ==, TODAY);
  BAD (bad, stead_person_repo_save, name, taken, "“Ada B.” is taken");
  BAD (bad, stead_person_repo_save, class_year, 27, "class year 27");
  person.name = (char *) "Nobody";
  REFUSE (farm, (person.id = 99, stead_person_repo_save (farm->store, &person, err)), STEAD_STORE_ERROR_NOT_FOUND,
          "no longer");
  farm_assert_undo (farm);
}

/* The name is nowhere in the file any more, the entry is still counted, and no undo brings it back. */
static void
test_forget (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  SteadFlockEntry entry = { .flock_id = farm->flock, .day = TODAY, .eggs = 20, .feed_kg = NAN,
                            .person_id = farm->student };
  SteadPerson other = { .name = (char *) "Student 1", .role = STEAD_PERSON_STUDENT, .class_year = 2028,
                        .left_on = STEAD_DAY_NONE };

  g_assert_cmpint (farm->student, ==, 1);
  ACT (farm, stead_flock_repo_save_entry (farm->store, &entry, err));
  ACT (farm, stead_person_repo_save (farm->store, &other, err));
  REFUSE (farm, stead_person_repo_forget (farm->store, 99, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  ACT (farm, stead_person_repo_forget (farm->store, farm->student, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM person WHERE id = 1 AND name = 'Student 2'"
                                                " AND class_year IS NULL"), ==, 1);
  g_assert_cmpint (fixture_number (farm->store, "SELECT person_id FROM batch_entry"), ==, 1);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM step"), ==, 0);
  g_assert_false (stead_store_undo (farm->store, &error));
  g_clear_error (&error);
  ACT (farm, stead_person_repo_forget (farm->store, farm->advisor, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM person WHERE name = 'Advisor 2'"), ==, 1);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/farm/settings", test_settings);
  g_test_add_func ("/store/farm/settings-refused", test_settings_refused);
  g_test_add_func ("/store/farm/people", test_people);
  g_test_add_func ("/store/farm/forget", test_forget);
  return g_test_run ();
}
