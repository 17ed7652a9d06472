/* test-import-people.c - a class list: who is new, who is known, what cannot be read. */
#include "farm.h"

#include "answer/stead-import-answer.h"
#include "store/stead-people-repo.h"

#include <glib/gstdio.h>
#include <string.h>

static SteadImport *
read_text (Farm        *farm,
           const char  *text,
           GError     **error)
{
  g_autofree char *path = NULL;
  int file = g_file_open_tmp ("stead-import-XXXXXX.csv", &path, NULL);
  SteadImport *import;

  g_assert_true (g_close (file, NULL));
  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  import = stead_import_read (farm->store, STEAD_IMPORT_PEOPLE, 0, path, STEAD_DATE_ORDER_UNKNOWN, NULL, NULL, NULL,
                              error);
  g_unlink (path);
  return import;
}

static const SteadPerson *
find_person (const GPtrArray *people,
             const char      *name)
{
  for (guint i = 0; i < people->len; i++)
    if (g_str_equal (((const SteadPerson *) people->pdata[i])->name, name))
      return people->pdata[i];
  g_error ("%s is not on the farm's list", name);
}

static void
assert_person (const GPtrArray *people,
               const char      *name,
               SteadPersonRole  role,
               int              year)
{
  const SteadPerson *person = find_person (people, name);

  g_assert_cmpint (person->role, ==, role);
  g_assert_cmpint (person->class_year, ==, year);
}

/* Roles in both languages, a group that is made, one column that is nobody's business. */
static void
test_take (Farm          *farm,
           gconstpointer  data)
{
  static const char text[] =
    "Name,Class year,Role,Group,Birthday\n"
    "Mara K.,2027,student,Tuesday,2009-05-01\n"
    "Jonas P.,,Asesor,,\n"
    "Lin T.,2028,,Tuesday,\n"
    "Old Sam,,volunteer,,\n";
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadImport) import = read_text (farm, text, &error);
  g_autoptr(GPtrArray) people = NULL, groups = NULL;

  g_assert_no_error (error);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_TAKE), ==, 4);
  g_assert_null (strstr (stead_import_get_row (import, 0)->understood, "2009"));
  g_assert_nonnull (strstr (stead_import_get_row (import, 0)->understood, "Tuesday"));
  g_assert_true (stead_import_take (import, farm->store, NULL, NULL, NULL, &error));
  people = stead_person_repo_list (farm->store, &error);
  assert_person (people, "Mara K.", STEAD_PERSON_STUDENT, 2027);
  assert_person (people, "Jonas P.", STEAD_PERSON_ADVISOR, 0);
  assert_person (people, "Lin T.", STEAD_PERSON_STUDENT, 2028);
  assert_person (people, "Old Sam", STEAD_PERSON_HELPER, 0);
  groups = stead_group_repo_list (farm->store, &error);
  g_assert_cmpuint (groups->len, ==, 1);
  g_assert_cmpuint (((const SteadGroup *) groups->pdata[0])->person_ids->len, ==, 2);
}

/* Nothing of a row that is in doubt is guessed. */
static void
test_doubtful (Farm          *farm,
               gconstpointer  data)
{
  static const struct { const char *row; SteadRowState state; const char *says; } rows[] = {
    { "Mara K.,2027,student", STEAD_ROW_SKIP, "on the farm's list already" },
    { "Ann B.,2027,", STEAD_ROW_TAKE, NULL },
    { "ann b.,2028,", STEAD_ROW_WRONG, "second" },
    { ",2027,student", STEAD_ROW_WRONG, "missing" },
    { "Tom C.,27,", STEAD_ROW_WRONG, "four digits" },
    { "Eve D.,2027,captain", STEAD_ROW_WRONG, "student, advisor or helper" },
  };
  g_autoptr(GString) text = g_string_new ("Name,Class of,Role\n");
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadImport) import = NULL;
  SteadPerson mara = { .name = (char *) "Mara K.", .left_on = STEAD_DAY_NONE };

  FARM_DO (farm, stead_person_repo_save (farm->store, &mara, &farm_error));
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    g_string_append_printf (text, "%s\n", rows[i].row);
  for (int i = 0; i < 201; i++)
    g_string_append_c (text, 'x');
  import = read_text (farm, text->str, &error);
  g_assert_no_error (error);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const SteadImportRow *row = stead_import_get_row (import, (guint) i);

      g_test_message ("%s: %s", rows[i].row, row->message);
      g_assert_cmpint (row->state, ==, rows[i].state);
      if (rows[i].says != NULL)
        g_assert_nonnull (strstr (row->message, rows[i].says));
    }
  g_assert_nonnull (strstr (stead_import_get_row (import, G_N_ELEMENTS (rows))->message, "too long"));
  g_assert_true (stead_import_take (import, farm->store, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
  {
    g_autoptr(GPtrArray) people = stead_person_repo_list (farm->store, &error);

    g_assert_cmpuint (people->len, ==, 2);
    assert_person (people, "Ann B.", STEAD_PERSON_STUDENT, 2027);
  }
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add ("/answer/import-people/take", Farm, NULL, farm_set_up, test_take, farm_tear_down);
  g_test_add ("/answer/import-people/doubtful", Farm, NULL, farm_set_up, test_doubtful, farm_tear_down);
  return g_test_run ();
}
