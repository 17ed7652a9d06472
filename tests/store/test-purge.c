/* test-purge.c - people who left are removed for good; what left the farm is logged. */
#include "config.h"

#include <string.h>

#include "repo-fixture.h"
#include "store/stead-purge.h"
#include "store/stead-release-repo.h"

#define NAME "Zephyrine Quillfeather"

typedef struct
{
  char       *root, *path;
  SteadStore *store;
} Room;

/* She left, and the school's day was yesterday.  Her name is in a note of somebody else's
 * and in the name of a step. */
static void
room_set_up (Room          *room,
             gconstpointer  data)
{
  g_autoptr(GError) error = NULL;

  room->root = fixture_folder ();
  room->path = g_build_filename (room->root, "farm.steading", NULL);
  room->store = stead_store_create (room->path, "Farm", &error);
  g_assert_no_error (error);
  stead_store_set_today (room->store, TODAY);
  fixture_fill (room->store);
  fixture_act (room->store, "Add " NAME, "INSERT INTO person (name, role, class_year, left_on, keep_until)"
               " VALUES ('" NAME "', 'student', 2025, 20200, 20500);"
               "INSERT INTO person (name, role, left_on, keep_until) VALUES ('Still Kept', 'student', 20200, 30000);");
  fixture_act (room->store, "her work",
               "INSERT INTO work_span (person_id, day, minutes, break_minutes, duty, paid, note, entered_on)"
               " VALUES (3, 20100, 90, 0, 'Coop', 0, 'with " NAME "', 20100);"
               "INSERT INTO reflection (person_id, day, text) VALUES (3, 20100, 'I, " NAME ", saw hens.');"
               "INSERT INTO goal (person_id, words, set_on) VALUES (3, 'Sell eggs', 20100);"
               "INSERT INTO batch_note (batch_id, day, text) VALUES (1, 20100, '" NAME "''s hens; not " NAME "s');"
               "INSERT INTO picture (width, height, jpeg) VALUES (4, 4, x'ffd8ffd9');"
               "INSERT INTO shot (picture_id, day, caption, person_id) VALUES (1, 20100, 'Her hen', 3);"
               "INSERT INTO shot_person VALUES (1, 3);");
}

static void
room_tear_down (Room          *room,
                gconstpointer  data)
{
  g_autofree char *quoted = g_shell_quote (room->root);
  g_autofree char *line = g_strdup_printf ("rm -rf %s", quoted);

  g_clear_object (&room->store);
  g_assert_true (g_spawn_command_line_sync (line, NULL, NULL, NULL, NULL));
  g_free (room->root);
  g_free (room->path);
}

/* Whether @words stand anywhere in the bytes of the file, in either case. */
static gboolean
file_holds (const char *path,
            const char *words)
{
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  for (gsize i = 0; i + strlen (words) <= length; i++)
    if (g_ascii_strncasecmp (bytes + i, words, strlen (words)) == 0)
      return TRUE;
  return FALSE;
}

static void
test_list (Room          *room,
           gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) people = stead_purge_list (room->store, &error);
  const SteadPurgePerson *first;

  g_assert_no_error (error);
  g_assert_cmpuint (people->len, ==, 2);
  first = people->pdata[0];
  g_assert_cmpstr (first->name, ==, NAME);
  g_assert_true (first->due);
  g_assert_false (((const SteadPurgePerson *) people->pdata[1])->due);
}

static SteadPurged *
purge (Room  *room,
       gint64 id)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  SteadPurged *purged;

  g_array_append_val (ids, id);
  purged = stead_purge_people (room->store, ids, &error);
  g_assert_no_error (error);
  return purged;
}

/* Sums stay, what was hers is gone, and no byte of the name is left in the file. */
static void
test_gone (Room          *room,
           gconstpointer  data)
{
  g_autoptr(SteadPurged) purged = NULL;
  g_autofree char *undo = NULL;
  g_autoptr(GPtrArray) wrong = NULL;

  g_assert_true (file_holds (room->path, "quillfeather"));
  purged = purge (room, 3);
  g_assert_cmpuint (purged->people, ==, 1);
  g_assert_cmpuint (purged->left, ==, 0);
  g_assert_cmpint (fixture_number (room->store, "SELECT count (*) FROM reflection"), ==, 0);
  g_assert_cmpint (fixture_number (room->store, "SELECT count (*) FROM goal"), ==, 0);
  g_assert_cmpint (fixture_number (room->store, "SELECT count (*) FROM shot"), ==, 0);
  g_assert_cmpint (fixture_number (room->store, "SELECT count (*) FROM picture"), ==, 0);
  g_assert_cmpint (fixture_number (room->store, "SELECT sum (minutes) FROM work_span WHERE person_id = 3"), ==, 90);
  g_assert_cmpint (fixture_number (room->store, "SELECT redacted_on FROM person WHERE id = 3"), ==, TODAY);
  g_assert_cmpint (fixture_number (room->store, "SELECT class_year IS NULL FROM person WHERE id = 3"), ==, 1);
  g_assert_cmpint (fixture_number (room->store, "SELECT text = 'Student 3''s hens; not " NAME "s' FROM batch_note"), ==, 1);
  undo = stead_store_get_undo_name (room->store);
  g_assert_null (undo);
  fixture_run (room->store, "DELETE FROM batch_note");   /* "…feathers" is another word and stood in it */
  g_clear_object (&room->store);
  g_assert_false (file_holds (room->path, "quillfeather"));
  wrong = stead_store_verify (room->path, NULL, NULL);
  g_assert_cmpuint (wrong->len, ==, 0);
}

/* What is signed stays as it was, and is counted. */
static void
test_signed (Room          *room,
             gconstpointer  data)
{
  g_autoptr(SteadPurged) purged = NULL;

  fixture_act (room->store, "receipt",
               "INSERT INTO receipt (day, supplier, is_gift, note) VALUES (20100, 'Feed store', 0, 'fetched by " NAME "');"
               "UPDATE receipt SET signed_by = 2, signed_on = 20101, seal_no = 1, seal = 'x' WHERE id = 2");
  purged = purge (room, 3);
  g_assert_cmpuint (purged->left, ==, 1);
  g_assert_cmpint (fixture_number (room->store, "SELECT count (*) FROM receipt WHERE note LIKE '%" NAME "%'"), ==, 1);
}

/* The copy of the day still has the name: it is named, and goes when asked to. */
static void
test_copies (Room          *room,
             gconstpointer  data)
{
  g_autoptr(SteadPurged) purged = NULL;
  g_autoptr(GPtrArray) left = NULL;

  g_clear_object (&room->store);
  room->store = stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, NULL);
  stead_store_set_today (room->store, TODAY + 1);
  purged = purge (room, 3);
  g_assert_cmpuint (purged->copies->len, ==, 1);
  g_assert_true (file_holds (purged->copies->pdata[0], "quillfeather"));
  g_assert_cmpuint (stead_purge_delete_copies (purged->copies), ==, 0);
  left = stead_purge_list_copies (room->path);
  g_assert_cmpuint (left->len, ==, 0);
}

/* --- releases ---------------------------------------------------------------------- */

static void
test_release (Room          *room,
              gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GArray) people = stead_release_repo_named (room->store, &error);
  g_autoptr(GPtrArray) list = NULL;
  g_autofree char *what = g_strdup ("Everything");
  g_autofree char *whom = g_strdup ("  District office ");
  g_autofree char *ground = g_strdup ("request of the school");
  SteadRelease release = { .day = TODAY, .what = what, .to_whom = whom, .ground = ground, .by_person = 2 };
  SteadRelease nobody = { .day = TODAY, .what = what, .to_whom = (char *) " ", .ground = ground };
  const SteadRelease *read;

  g_assert_cmpuint (people->len, ==, 4);
  g_assert_true (stead_store_begin (room->store, "release", &error));
  g_assert_false (stead_release_repo_add (room->store, &nobody, NULL, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID);
  g_clear_error (&error);
  g_assert_true (stead_release_repo_add (room->store, &release, people, &error));
  g_assert_true (stead_store_commit (room->store, &error));
  list = stead_release_repo_list (room->store, &error);
  g_assert_cmpuint (list->len, ==, 1);
  read = list->pdata[0];
  g_assert_cmpstr (read->to_whom, ==, "District office");
  g_assert_cmpstr (read->by_name, ==, "Mr. Reed");
  g_assert_cmpuint (read->n_people, ==, 4);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add ("/store/purge/" name, Room, NULL, room_set_up, func, room_tear_down)
  ADD ("list", test_list);
  ADD ("gone", test_gone);
  ADD ("signed", test_signed);
  ADD ("copies", test_copies);
  ADD ("release", test_release);
  return g_test_run ();
}
