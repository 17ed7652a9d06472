/* test-backup.c - dated copies, restoring one, copies by hand. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>
#include <utime.h>

#include "store-fixture.h"
#include "store/stead-backup.h"
#include "store/stead-copy.h"

#define NOBODY 65534

typedef struct
{
  char       *folder;
  char       *path;
  SteadStore *store;
} Room;

static void
set_up (Room          *room,
        gconstpointer  data)
{
  g_autoptr(GError) error = NULL;

  room->folder = fixture_folder ();
  room->path = g_build_filename (room->folder, "our farm.steading", NULL);
  room->store = stead_store_create (room->path, "Farm", &error);
  g_assert_no_error (error);
}

static void
tear_down (Room          *room,
           gconstpointer  data)
{
  g_clear_object (&room->store);
  g_free (room->path);
  fixture_remove (room->folder);
}

static void
add_person (SteadStore *store,
            int         number)
{
  g_autofree char *sql = g_strdup_printf ("INSERT INTO person (name, role) VALUES ('P%d', 'student')", number);

  fixture_act (store, "Add a person", sql);
}

static void
change_on (Room     *room,
           SteadDay  day)
{
  stead_store_set_today (room->store, day);
  add_person (room->store, day);
  stead_backup_wait (room->store);
}

/* The days of the copies, newest first; "m" marks a monthly one. */
static char *
list_days (const char *path)
{
  g_autoptr(GPtrArray) backups = stead_store_list_backups (path);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < backups->len; i++)
    {
      const SteadBackup *backup = backups->pdata[i];
      g_autofree char *day = stead_day_format (backup->day, STEAD_DAY_STYLE_ISO);

      g_assert_true (g_file_test (backup->path, G_FILE_TEST_IS_REGULAR));
      g_string_append_printf (text, "%s%s%s", i > 0 ? " " : "", day, backup->monthly ? "m" : "");
    }
  return g_string_free (text, FALSE);
}

static gint64
people_in (const char *path)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_open (path, STEAD_STORE_OPEN_READ_ONLY, &error);

  g_assert_no_error (error);
  return fixture_number (store, "SELECT count(*) FROM person");
}

/* --- the copy of a day ------------------------------------------------------ */

static void
test_first_of_day (Room          *room,
                   gconstpointer  data)
{
  SteadDay day = stead_day_new (2026, 3, 2);
  g_autofree char *days = NULL;
  g_autofree char *copy = g_build_filename (room->folder, "our farm.copies", "our farm 2026-03-03.steading", NULL);

  change_on (room, day);
  days = list_days (room->path);
  g_assert_cmpstr (days, ==, "");   /* a farm made just now holds nothing to keep */
  g_clear_pointer (&days, g_free);

  change_on (room, day + 1);
  add_person (room->store, 1);
  add_person (room->store, 2);
  days = list_days (room->path);
  g_assert_cmpstr (days, ==, "2026-03-03");
  g_assert_cmpint (people_in (copy), ==, 1);   /* as it was before the first change of the day */
  g_assert_null (stead_store_take_notice (room->store));
}

/* Whoever may not read the farm may not read its copies. */
static void
test_mode (Room          *room,
           gconstpointer  data)
{
  SteadDay day = stead_day_new (2026, 3, 2);
  g_autofree char *copy = g_build_filename (room->folder, "our farm.copies", "our farm 2026-03-03.steading", NULL);
  GStatBuf about;

  g_assert_cmpint (g_chmod (room->path, 0600), ==, 0);
  change_on (room, day);
  change_on (room, day + 1);
  g_assert_cmpint (g_stat (copy, &about), ==, 0);
  g_assert_cmpint (about.st_mode & 0777, ==, 0600);
}

static void
test_opened_again (Room          *room,
                   gconstpointer  data)
{
  SteadDay day = stead_day_new (2026, 3, 2);
  g_autofree char *copy = g_build_filename (room->folder, "our farm.copies", "our farm 2026-03-03.steading", NULL);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  change_on (room, day);
  change_on (room, day + 1);
  before = fixture_sum (copy);
  g_clear_object (&room->store);
  room->store = stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, NULL);
  stead_store_set_today (room->store, day + 1);
  add_person (room->store, 1);
  stead_backup_wait (room->store);
  after = fixture_sum (copy);
  g_assert_cmpstr (after, ==, before);   /* the copy of the morning stays the copy of the day */
}

/* Undo is a change as any other. */
static void
test_undo_first (Room          *room,
                 gconstpointer  data)
{
  SteadDay day = stead_day_new (2026, 3, 2);
  g_autofree char *days = NULL;

  change_on (room, day);
  stead_store_set_today (room->store, day + 1);
  g_assert_true (stead_store_undo (room->store, NULL));
  stead_backup_wait (room->store);
  days = list_days (room->path);
  g_assert_cmpstr (days, ==, "2026-03-03");
}

/* Eighteen months of days: a fortnight, and the last of each of twelve months before. */
static void
test_rotation (Room          *room,
               gconstpointer  data)
{
  SteadDay first = stead_day_new (2025, 1, 1);
  SteadDay last = stead_day_new (2026, 7, 10);
  g_autofree char *days = NULL;

  for (SteadDay day = first; day <= last; day++)
    change_on (room, day);
  days = list_days (room->path);
  g_assert_cmpstr (days, ==,
                   "2026-07-10 2026-07-09 2026-07-08 2026-07-07 2026-07-06 2026-07-05 2026-07-04 2026-07-03"
                   " 2026-07-02 2026-07-01 2026-06-30 2026-06-29 2026-06-28 2026-06-27"
                   " 2026-05-31m 2026-04-30m 2026-03-31m 2026-02-28m 2026-01-31m 2025-12-31m 2025-11-30m"
                   " 2025-10-31m 2025-09-30m 2025-08-31m 2025-07-31m 2025-06-30m");
}

static void
test_clock_set_back (Room          *room,
                     gconstpointer  data)
{
  SteadDay day = stead_day_new (2026, 3, 1);
  g_autofree char *days = NULL;

  for (int i = 0; i <= 16; i++)
    change_on (room, day + i);
  change_on (room, stead_day_new (2025, 12, 24));
  change_on (room, stead_day_new (2025, 12, 23));
  days = list_days (room->path);
  g_assert_nonnull (strstr (days, "2025-12-23m"));
  g_assert_true (g_str_has_prefix (days, "2026-03-17 "));
  g_assert_null (stead_store_take_notice (room->store));
}

/* What is in the folder beside our copies is not ours to delete. */
static void
test_strangers_stay (Room          *room,
                     gconstpointer  data)
{
  static const char * const names[] = {
    "notes.txt", "2026-02-30.steading", "our farm 2026-02-30.steading", "our farm 2026-3-1.steading",
    "x2026-03-01.steading", "our farm 2026-03-01.steading.bak", "fresh.part",
  };
  g_autofree char *folder = stead_store_backup_folder (room->path);
  SteadDay day = stead_day_new (2026, 3, 2);

  g_mkdir (folder, 0777);
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = g_build_filename (folder, names[i], NULL);

      g_assert_true (g_file_set_contents (path, "x", 1, NULL));
    }
  for (int i = 0; i < 40; i++)
    change_on (room, day + i);
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = g_build_filename (folder, names[i], NULL);

      g_test_message ("%s", names[i]);
      g_assert_true (g_file_test (path, G_FILE_TEST_EXISTS));
    }
}

/* A power cut leaves half a copy; it goes with the next one, a day later. */
static void
test_sweep (Room          *room,
            gconstpointer  data)
{
  g_autofree char *folder = stead_store_backup_folder (room->path);
  g_autofree char *old = g_build_filename (folder, "our farm 2026-03-01.steading.0000000a.part", NULL);
  struct utimbuf long_ago = { 1700000000, 1700000000 };

  g_mkdir (folder, 0777);
  g_assert_true (g_file_set_contents (old, "x", 1, NULL));
  g_assert_cmpint (g_utime (old, &long_ago), ==, 0);
  change_on (room, stead_day_new (2026, 3, 2));
  change_on (room, stead_day_new (2026, 3, 3));
  g_assert_false (g_file_test (old, G_FILE_TEST_EXISTS));
}

/* A file where the folder should be: the change is made, and the person is told once. */
static void
test_cannot_copy (Room          *room,
                  gconstpointer  data)
{
  g_autofree char *folder = stead_store_backup_folder (room->path);
  g_autofree char *notice = NULL;
  SteadDay day = stead_day_new (2026, 3, 2);

  g_assert_true (g_file_set_contents (folder, "in the way", -1, NULL));
  change_on (room, day);
  change_on (room, day + 1);
  notice = stead_store_take_notice (room->store);
  g_assert_nonnull (notice);
  g_test_message ("%s", notice);
  g_assert_null (stead_store_take_notice (room->store));
  add_person (room->store, 1);
  g_assert_null (stead_store_take_notice (room->store));
  g_assert_cmpint (fixture_number (room->store, "SELECT count(*) FROM person"), ==, 3);
}

static void
test_folder_name (void)
{
  g_autofree char *one = stead_store_backup_folder ("/a/our farm.steading");
  g_autofree char *other = stead_store_backup_folder ("/a/our farm");
  g_autofree char *odd = stead_store_backup_folder ("/a/.steading");
  g_autoptr(GPtrArray) none = stead_store_list_backups ("/no such folder/farm.steading");

  g_assert_cmpstr (one, ==, "/a/our farm.copies");
  g_assert_cmpstr (other, ==, "/a/our farm.copies");
  g_assert_cmpstr (odd, ==, "/a/.steading.copies");
  g_assert_cmpuint (none->len, ==, 0);
}

/* --- restoring -------------------------------------------------------------- */

static char *
the_kept_one (Room *room)
{
  SteadDay today = stead_store_clock_day ();
  g_autofree char *day = stead_day_format (today, STEAD_DAY_STYLE_ISO);
  g_autofree char *name = g_strdup_printf ("our farm before %s.steading", day);

  return g_build_filename (room->folder, name, NULL);
}

static void
test_restore (Room          *room,
              gconstpointer  data)
{
  SteadDay day = stead_day_new (2026, 3, 2);
  g_autoptr(GPtrArray) backups = NULL;
  g_autofree char *kept = the_kept_one (room);
  g_autofree char *undo = NULL;
  g_autoptr(GError) error = NULL;

  change_on (room, day);
  change_on (room, day + 1);
  add_person (room->store, 1);
  backups = stead_store_list_backups (room->path);
  g_clear_object (&room->store);
  g_assert_true (stead_store_restore (((SteadBackup *) backups->pdata[0])->path, room->path, &error));
  g_assert_no_error (error);
  g_assert_cmpint (people_in (room->path), ==, 1);
  g_assert_cmpint (people_in (kept), ==, 3);
  room->store = stead_store_open (room->path, STEAD_STORE_OPEN_DEFAULT, &error);
  undo = stead_store_get_undo_name (room->store);
  g_assert_cmpstr (undo, ==, "Add a person");
}

static void
test_restore_twice (Room          *room,
                    gconstpointer  data)
{
  SteadDay day = stead_day_new (2026, 3, 2);
  g_autoptr(GPtrArray) backups = NULL;
  g_autofree char *kept = the_kept_one (room);
  g_autofree char *first_sum = NULL;
  g_autofree char *first_sum_later = NULL;
  g_autoptr(GError) error = NULL;

  change_on (room, day);
  change_on (room, day + 1);
  backups = stead_store_list_backups (room->path);
  g_clear_object (&room->store);
  g_assert_true (stead_store_restore (((SteadBackup *) backups->pdata[0])->path, room->path, &error));
  first_sum = fixture_sum (kept);
  g_assert_true (stead_store_restore (((SteadBackup *) backups->pdata[0])->path, room->path, &error));
  first_sum_later = fixture_sum (kept);
  g_assert_cmpstr (first_sum_later, ==, first_sum);   /* what was kept before is never written over */
}

static void
test_restore_to_nothing (Room          *room,
                         gconstpointer  data)
{
  SteadDay day = stead_day_new (2026, 3, 2);
  g_autoptr(GPtrArray) backups = NULL;
  g_autoptr(GError) error = NULL;

  change_on (room, day);
  change_on (room, day + 1);
  backups = stead_store_list_backups (room->path);
  g_clear_object (&room->store);
  g_unlink (room->path);
  g_assert_true (stead_store_restore (((SteadBackup *) backups->pdata[0])->path, room->path, &error));
  g_assert_cmpint (people_in (room->path), ==, 1);
}

/* A journal of the damaged farm must not be played back into the copy. */
static void
test_restore_over_damage (Room          *room,
                          gconstpointer  data)
{
  SteadDay day = stead_day_new (2026, 3, 2);
  g_autoptr(GPtrArray) backups = NULL;
  g_autofree char *kept = the_kept_one (room);
  g_autofree char *journal = g_strconcat (room->path, "-journal", NULL);
  g_autofree char *text = NULL;
  g_autoptr(GError) error = NULL;

  change_on (room, day);
  change_on (room, day + 1);
  backups = stead_store_list_backups (room->path);
  g_clear_object (&room->store);
  g_assert_true (g_file_set_contents (room->path, "not a farm any more", -1, NULL));
  g_assert_true (g_file_set_contents (journal, "a journal", -1, NULL));
  g_assert_true (stead_store_restore (((SteadBackup *) backups->pdata[0])->path, room->path, &error));
  g_assert_no_error (error);
  g_assert_cmpint (people_in (room->path), ==, 1);
  g_assert_true (g_file_get_contents (kept, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "not a farm any more");
  g_assert_false (g_file_test (journal, G_FILE_TEST_EXISTS));
}

static void
test_restore_refused (Room          *room,
                      gconstpointer  data)
{
  g_autofree char *bad = g_build_filename (room->folder, "bad 2026-03-03.steading", NULL);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  g_autofree char *bytes = NULL;
  g_autoptr(GError) error = NULL;
  sqlite3 *db = NULL;
  gsize length;

  fixture_fill (room->store);
  g_clear_object (&room->store);
  before = fixture_sum (room->path);

  g_assert_true (g_file_set_contents (bad, "text", -1, NULL));
  g_assert_false (stead_store_restore (bad, room->path, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_A_FARM);
  g_clear_error (&error);

  g_assert_true (g_file_get_contents (room->path, &bytes, &length, NULL));
  memset (bytes + 5 * 4096, 0x55, 4096);
  g_assert_true (g_file_set_contents (bad, bytes, (gssize) length, NULL));
  g_assert_false (stead_store_restore (bad, room->path, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_DAMAGED);
  g_clear_error (&error);

  /* In use by another program. */
  memset (bytes, 0, length);
  g_assert_cmpint (sqlite3_open (room->path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, "BEGIN IMMEDIATE", NULL, NULL, NULL), ==, SQLITE_OK);
  {
    g_autofree char *copy = g_build_filename (room->folder, "good 2026-03-03.steading", NULL);
    g_autoptr(SteadStore) good = stead_store_create (copy, "Farm", NULL);

    g_clear_object (&good);
    g_assert_false (stead_store_restore (copy, room->path, &error));
    g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_BUSY);
  }
  sqlite3_close (db);
  after = fixture_sum (room->path);
  g_assert_cmpstr (after, ==, before);
}

/* --- copies by hand --------------------------------------------------------- */

static void
test_save_copy (Room          *room,
                gconstpointer  data)
{
  g_autofree char *copy = g_build_filename (room->folder, "copy.steading", NULL);
  g_autoptr(SteadStore) opened = NULL;
  g_autofree char *here = NULL;
  g_autofree char *there = NULL;
  g_autofree char *name = NULL;
  g_autoptr(GError) error = NULL;

  fixture_fill (room->store);
  g_assert_true (stead_store_save_copy (room->store, copy, NULL, &error));
  g_assert_no_error (error);
  opened = stead_store_open (copy, STEAD_STORE_OPEN_DEFAULT, &error);
  here = fixture_dump (room->store);
  there = fixture_dump (opened);
  g_assert_cmpstr (there, ==, here);
  name = stead_store_get_undo_name (opened);
  g_assert_cmpstr (name, ==, "price");
  g_clear_object (&opened);

  add_person (room->store, 1);
  g_assert_true (stead_store_save_copy (room->store, copy, NULL, &error));   /* the dialog asked */
  g_assert_cmpint (people_in (copy), ==, 3);
}

static void
test_save_copy_refused (Room          *room,
                        gconstpointer  data)
{
  g_autofree char *link_path = g_build_filename (room->folder, "link.steading", NULL);
  g_autofree char *lost = g_build_filename (room->folder, "no folder", "copy.steading", NULL);
  g_autofree char *stopped = g_build_filename (room->folder, "stopped.steading", NULL);
  g_autoptr(GCancellable) cancellable = g_cancellable_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GDir) dir = NULL;
  const char *name;

  fixture_fill (room->store);
  g_assert_false (stead_store_save_copy (room->store, room->path, NULL, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID);
  g_clear_error (&error);
  g_assert_cmpint (symlink (room->path, link_path), ==, 0);
  g_assert_false (stead_store_save_copy (room->store, link_path, NULL, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID);
  g_clear_error (&error);
  g_unlink (link_path);

  g_assert_false (stead_store_save_copy (room->store, lost, NULL, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);

  g_cancellable_cancel (cancellable);
  g_assert_false (stead_store_save_copy (room->store, stopped, cancellable, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_CANCELLED);
  dir = g_dir_open (room->folder, 0, NULL);
  while ((name = g_dir_read_name (dir)) != NULL)
    g_assert_cmpstr (name, ==, "our farm.steading");   /* no half copy stays */
}

static void
test_save_copy_of_memory (void)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *copy = g_build_filename (folder, "copy.steading", NULL);
  g_autoptr(SteadStore) store = stead_store_create_memory ("Farm", NULL);
  g_autoptr(GPtrArray) found = NULL;
  g_autoptr(GError) error = NULL;

  fixture_fill (store);
  g_assert_true (stead_store_save_copy (store, copy, NULL, &error));
  found = stead_store_verify (copy, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (found->len, ==, 0);
  g_assert_cmpint (people_in (copy), ==, 2);
}

/* A folder that may not be written to: the notice, and the farm goes on. */
static void
test_folder_read_only (Room          *room,
                       gconstpointer  data)
{
  if (g_test_subprocess ())
    {
      g_autoptr(GError) error = NULL;
      g_autoptr(SteadStore) store = NULL;
      g_autofree char *notice = NULL;

      if (geteuid () == 0)
        g_assert_cmpint (setuid (NOBODY), ==, 0);
      store = stead_store_open (g_getenv ("STEAD_TEST_FARM"), STEAD_STORE_OPEN_DEFAULT, &error);
      g_assert_no_error (error);
      add_person (store, 1);
      notice = stead_store_take_notice (store);
      g_assert_nonnull (notice);
      return;
    }
  {
    g_autofree char *folder = stead_store_backup_folder (room->path);

    add_person (room->store, 0);
    g_clear_object (&room->store);
    g_mkdir (folder, 0555);
    g_chmod (folder, 0555);
    g_chmod (room->folder, 0777);
    g_chmod (room->path, 0666);
    g_setenv ("STEAD_TEST_FARM", room->path, TRUE);
    g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_INHERIT_STDERR);
    g_test_trap_assert_passed ();
    g_chmod (folder, 0755);
  }
}

#define ADD(name, test) g_test_add ("/store/backup/" name, Room, NULL, set_up, test, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("first-of-day", test_first_of_day);
  ADD ("mode", test_mode);
  ADD ("opened-again", test_opened_again);
  ADD ("undo-first", test_undo_first);
  ADD ("rotation", test_rotation);
  ADD ("clock-set-back", test_clock_set_back);
  ADD ("strangers-stay", test_strangers_stay);
  ADD ("sweep", test_sweep);
  ADD ("cannot-copy", test_cannot_copy);
  ADD ("folder-read-only", test_folder_read_only);
  g_test_add_func ("/store/backup/folder-name", test_folder_name);
  ADD ("restore", test_restore);
  ADD ("restore-twice", test_restore_twice);
  ADD ("restore-to-nothing", test_restore_to_nothing);
  ADD ("restore-over-damage", test_restore_over_damage);
  ADD ("restore-refused", test_restore_refused);
  ADD ("save-copy", test_save_copy);
  ADD ("save-copy-refused", test_save_copy_refused);
  g_test_add_func ("/store/backup/save-copy-of-memory", test_save_copy_of_memory);
  return g_test_run ();
}
