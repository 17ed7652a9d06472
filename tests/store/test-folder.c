/* test-folder.c - a farm as a folder, and back. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>

#include "repo-fixture.h"
#include "store/stead-demo-farm.h"
#include "store/stead-folder.h"
#include "store/stead-folder-private.h"

typedef struct
{
  char *root, *farm, *folder, *back;
} Room;

static void
room_set_up (Room          *room,
             gconstpointer  data)
{
  room->root = fixture_folder ();
  room->farm = g_build_filename (room->root, "farm.steading", NULL);
  room->folder = g_build_filename (room->root, "Farm folder", NULL);
  room->back = g_build_filename (room->root, "back.steading", NULL);
}

static void
room_tear_down (Room          *room,
                gconstpointer  data)
{
  g_autofree char *quoted = g_shell_quote (room->root);
  g_autofree char *line = g_strdup_printf ("rm -rf %s", quoted);

  g_assert_true (g_spawn_command_line_sync (line, NULL, NULL, NULL, NULL));
  g_free (room->root);
  g_free (room->farm);
  g_free (room->folder);
  g_free (room->back);
}

/* --- all rows of all tables, and the last ids, as text ------------------------------ */

static void
dump_rows (GString    *text,
           sqlite3    *db,
           const char *table)
{
  g_autofree char *sql = g_strdup_printf ("SELECT * FROM \"%s\" ORDER BY 1, 2", table);
  sqlite3_stmt *stmt = NULL;

  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL), ==, SQLITE_OK);
  g_string_append_printf (text, "[%s]\n", table);
  while (sqlite3_step (stmt) == SQLITE_ROW)
    {
      for (int i = 0; i < sqlite3_column_count (stmt); i++)
        {
          int type = sqlite3_column_type (stmt, i);
          double real = type == SQLITE_FLOAT ? sqlite3_column_double (stmt, i) : 0;
          const guint8 *bytes = type == SQLITE_FLOAT ? (const guint8 *) &real : sqlite3_column_blob (stmt, i);
          int size = type == SQLITE_FLOAT ? (int) sizeof real : sqlite3_column_bytes (stmt, i);

          g_string_append_printf (text, "%d:", type);
          for (int at = 0; at < size; at++)
            g_string_append_printf (text, "%02x", bytes[at]);
          g_string_append_c (text, '|');
        }
      g_string_append_c (text, '\n');
    }
  g_assert_cmpint (sqlite3_finalize (stmt), ==, SQLITE_OK);
}

static char *
dump (const char *path)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_open (path, STEAD_STORE_OPEN_READ_ONLY, &error);
  g_autoptr(GPtrArray) tables = NULL;
  GString *text = g_string_new (NULL);

  g_assert_no_error (error);
  tables = stead_folder_list_tables (store, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (tables->len, >, 100);
  for (guint i = 0; i < tables->len; i++)
    dump_rows (text, stead_store_get_db (store), ((SteadFolderTable *) tables->pdata[i])->name);
  dump_rows (text, stead_store_get_db (store), "sqlite_sequence");
  return g_string_free (text, FALSE);
}

/* The number of the last step is no fact of the farm's. */
static void
assert_equal (const char *one,
              const char *other)
{
  g_autoptr(GRegex) step = g_regex_new ("\n3:73746570\\|[^\n]*", 0, 0, NULL);
  g_autofree char *first = dump (one);
  g_autofree char *second = dump (other);
  g_autofree char *plain = g_regex_replace_literal (step, first, -1, 0, "", 0, NULL);
  g_autofree char *back = g_regex_replace_literal (step, second, -1, 0, "", 0, NULL);
  g_auto(GStrv) lines = g_strsplit (plain, "\n", -1);
  g_auto(GStrv) others = g_strsplit (back, "\n", -1);

  for (guint i = 0; lines[i] != NULL && others[i] != NULL; i++)
    g_assert_cmpstr (lines[i], ==, others[i]);
  g_assert_cmpuint (g_strv_length (lines), ==, g_strv_length (others));
}

static void
write_folder (Room *room)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_open (room->farm, STEAD_STORE_OPEN_READ_ONLY, &error);

  g_assert_no_error (error);
  g_assert_true (stead_folder_write (store, room->folder, NULL, NULL, &error));
  g_assert_no_error (error);
}

static void
assert_round_trip (Room *room)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) wrong = NULL;

  write_folder (room);
  g_assert_true (stead_folder_read (room->folder, room->back, NULL, &error));
  g_assert_no_error (error);
  assert_equal (room->farm, room->back);
  wrong = stead_store_verify (room->back, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (wrong->len, ==, 0);
}

/* --- farms ------------------------------------------------------------------------------ */

static void
make_demo (Room *room)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store G_GNUC_UNUSED = stead_demo_farm_create (room->farm, NULL, TODAY, &error);

  g_assert_no_error (error);
}

/* A picture of 24 by 16 pixels as far as its markers go; @words stand in its comment. */
static GBytes *
picture (gboolean with_place)
{
  static const guint8 head[] = { 0xff, 0xd8 };
  static const guint8 place[] = { 0xff, 0xe1, 0, 14, 'E', 'x', 'i', 'f', 0, 0, 'G', 'P', 'S', '4', '1', 'N' };
  static const guint8 rest[] = { 0xff, 0xc0, 0, 11, 8, 0, 16, 0, 24, 1, 1, 0x11, 0, 0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0,
                                 0x12, 0x34, 0xff, 0xd9 };
  GByteArray *bytes = g_byte_array_new ();

  g_byte_array_append (bytes, head, sizeof head);
  if (with_place)
    g_byte_array_append (bytes, place, sizeof place);
  g_byte_array_append (bytes, rest, sizeof rest);
  return g_byte_array_free_to_bytes (bytes);
}

static gint64
add_picture (SteadStore *store,
             gboolean    with_place)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GBytes) bytes = picture (with_place);
  gint64 id = stead_picture_repo_add (store, bytes, 24, 16, &error);

  g_assert_no_error (error);
  return id;
}

static const char * const hard_texts[] = {
  "مريم الأحمد", "Nguyễn Thị Hồng", "王小明", "Žofie \"Žo\" Řeháková", "Εὐδοκία", "👩‍🌾🐔", "שרה", "O'Neil, Ada",
  "=1+1", "+1", "-1", "@sum", " =HYPERLINK(\"x\")", "\tTab", "'quoted", "'=1", "''", "＝1", "two\r\nlines", "two\nlines",
  "\rodd", "\n", "\"", "\"\"", ",", ";", " blanks ", "\xef\xbb\xbf" "mark", "\xe2\x80\xae" "turned\xe2\x80\xac", "NULL", "0", "1e5",
  "2026-03-03", "TRUE",
};

static void
bind_and_run (SteadStore *store,
              const char *sql,
              const char *text,
              double      number)
{
  sqlite3_stmt *stmt = NULL;

  g_assert_cmpint (sqlite3_prepare_v2 (stead_store_get_db (store), sql, -1, &stmt, NULL), ==, SQLITE_OK);
  sqlite3_bind_text (stmt, 1, text, -1, SQLITE_TRANSIENT);
  if (sqlite3_bind_parameter_count (stmt) > 1)
    sqlite3_bind_double (stmt, 2, number);
  if (sqlite3_step (stmt) != SQLITE_DONE)
    g_error ("%s: %s", sql, sqlite3_errmsg (stead_store_get_db (store)));
  sqlite3_finalize (stmt);
}

/* Any amount of feed that a double can hold, from 0 up. */
static double
any_amount (GRand *rand)
{
  double value = g_rand_double_range (rand, 0, 1) * g_rand_double_range (rand, 0, 500);

  switch (g_rand_int_range (rand, 0, 4))
    {
    case 0: return 0;
    case 1: return 0.1 + 0.2;
    case 2: return value / 1e300;
    default: return value;
    }
}

static char *
any_text (GRand *rand)
{
  GString *text = g_string_new (NULL);

  for (int i = g_rand_int_range (rand, 0, 5); i >= 0; i--)
    g_string_append (text, hard_texts[g_rand_int_range (rand, 0, G_N_ELEMENTS (hard_texts))]);
  return g_string_free (text, FALSE);
}

static void
make_any (Room    *room,
          guint32  seed)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_create (room->farm, "Ember Lake 🐟 farm", &error);
  GRand *rand = g_rand_new_with_seed (seed);

  fixture_fill (store);
  g_assert_true (stead_store_begin (store, "any", &error));
  for (gsize i = 0; i < G_N_ELEMENTS (hard_texts); i++)
    bind_and_run (store, "INSERT INTO person (name, role) VALUES (?1, 'student')", hard_texts[i], 0);
  for (int i = g_rand_int_range (rand, 1, 60); i > 0; i--)
    {
      g_autofree char *text = any_text (rand);

      bind_and_run (store, "INSERT INTO batch_entry (batch_id, day, note, feed_kg) VALUES (1, 20100, ?1, ?2)", text,
                    any_amount (rand));
      bind_and_run (store, "INSERT INTO reflection (person_id, day, text) VALUES (1, -25000, ?1)", text, 0);
      bind_and_run (store, "INSERT INTO reading (at, kind, value, note) VALUES (1772546700, 'temperature', ?2, ?1)", text,
                    any_amount (rand));
    }
  bind_and_run (store, "INSERT INTO reflection (person_id, day, question, text) VALUES (1, 20000, ?1, 'x')", "", 0);
  for (int i = g_rand_int_range (rand, 0, 4); i > 0; i--)
    add_picture (store, FALSE);
  fixture_run (store, "DELETE FROM person WHERE id = (SELECT max (id) FROM person)");   /* its id is not given again */
  g_assert_true (stead_store_commit (store, &error));
  g_assert_no_error (error);
  g_rand_free (rand);
}

static void
test_demo (Room          *room,
           gconstpointer  data)
{
  make_demo (room);
  assert_round_trip (room);
}

static void
test_any (void)
{
  for (guint32 seed = 1; seed <= 5; seed++)
    {
      Room room;

      g_test_message ("seed %u", seed);
      room_set_up (&room, NULL);
      make_any (&room, seed);
      assert_round_trip (&room);
      room_tear_down (&room, NULL);
    }
}

/* --- what is in the folder ----------------------------------------------------------------- */

static char *
contents (Room       *room,
          const char *name)
{
  g_autofree char *path = g_build_filename (room->folder, name, NULL);
  char *text = NULL;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  return text;
}

static void
assert_mode (const char *path,
             guint       mode)
{
  GStatBuf about;

  g_assert_cmpint (g_stat (path, &about), ==, 0);
  g_assert_cmphex (about.st_mode & 0777, ==, mode);
}

static void
test_form (Room          *room,
           gconstpointer  data)
{
  g_autofree char *people = NULL;
  g_autofree char *log = NULL;
  g_autofree char *readings = NULL;
  g_autofree char *inside = NULL;

  make_any (room, 3);
  write_folder (room);
  people = contents (room, "tables/person.csv");
  g_assert_true (g_str_has_prefix (people, "id,name,role,class_year,left_on,redacted_on,keep_until\r\n"
                                           "1,\"Ada\",\"student\",,,,\r\n"));
  g_assert_nonnull (strstr (people, ",\"'=1+1\",\"student\""));
  g_assert_nonnull (strstr (people, ",\"''=1\",\"student\""));
  g_assert_nonnull (strstr (people, ",\"مريم الأحمد\",\"student\""));
  log = contents (room, "tables/batch_entry.csv");
  g_assert_nonnull (strstr (log, "1,1,2024-10-05,22,1,0,0,3.3,"));   /* date -u -d @$((20001 * 86400)) */
  readings = contents (room, "tables/reading.csv");
  g_assert_nonnull (strstr (readings, "1,2026-03-03T14:05:00Z,\"temperature\","));   /* date -u -d @1772546700 */
  assert_mode (room->folder, 0700);
  inside = g_build_filename (room->folder, "tables", "person.csv", NULL);
  assert_mode (inside, 0600);
}

/* Without names and notes: roles in their place, and it cannot be taken for the whole. */
static void
test_part (Room          *room,
           gconstpointer  data)
{
  static const char * const chosen[] = { "person", "batch_entry", NULL };
  const SteadFolderOptions options = { .tables = chosen };
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;
  g_autofree char *people = NULL;
  g_autofree char *other = g_build_filename (room->folder, "tables", "batch.csv", NULL);

  make_any (room, 4);
  store = stead_store_open (room->farm, STEAD_STORE_OPEN_READ_ONLY, &error);
  g_assert_true (stead_folder_write (store, room->folder, &options, NULL, &error));
  g_assert_no_error (error);
  people = contents (room, "tables/person.csv");
  g_assert_nonnull (strstr (people, "\r\n1,\"Student 1\",\"student\","));
  g_assert_nonnull (strstr (people, "\r\n2,\"Advisor 2\",\"advisor\","));
  g_assert_null (strstr (people, "Ada"));
  g_assert_false (g_file_test (other, G_FILE_TEST_EXISTS));
  g_assert_false (stead_folder_read (room->folder, room->back, NULL, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID);
  farm_assert_says (error->message, "only a part of a farm");
  g_assert_false (g_file_test (room->back, G_FILE_TEST_EXISTS));
}

/* --- location data ------------------------------------------------------------------------------ */

static void
test_place (Room          *room,
            gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *path = g_build_filename (room->folder, "pictures", "1.jpg", NULL);
  g_autofree char *raw = NULL;
  g_autoptr(GBytes) bare = picture (FALSE);
  g_autoptr(GBytes) with = picture (TRUE);
  g_autoptr(GBytes) kept = NULL;
  g_autoptr(SteadStore) store = stead_store_create (room->farm, "Farm", &error);
  gsize length;

  g_assert_true (stead_store_begin (store, "picture", &error));
  add_picture (store, TRUE);
  g_assert_true (stead_store_commit (store, &error));
  g_clear_object (&store);
  write_folder (room);
  g_assert_true (g_file_get_contents (path, &raw, &length, &error));
  g_assert_cmpmem (raw, (int) length, g_bytes_get_data (bare, NULL), (int) g_bytes_get_size (bare));
  /* A picture that somebody put there says nothing either, once it is taken in. */
  g_assert_true (g_file_set_contents (path, g_bytes_get_data (with, NULL), (gssize) g_bytes_get_size (with), &error));
  g_assert_true (stead_folder_read (room->folder, room->back, NULL, &error));
  g_assert_no_error (error);
  store = stead_store_open (room->back, STEAD_STORE_OPEN_READ_ONLY, &error);
  kept = stead_picture_repo_get (store, 1, &error);
  g_assert_true (g_bytes_equal (kept, bare));
}

/* --- folders that were changed by hand ------------------------------------------------------------ */

static const struct
{
  const char *file, *old, *fresh, *says;
} bad[] = {
  { "tables/person.csv", "id,name,role", "id,role", "lacks the column “name”" },
  { "tables/person.csv", "id,name,role", "id,name,role,shoe_size", "has a column “shoe_size”" },
  { "tables/person.csv", "id,name,role", "id,name,role,name", "has a column “name”" },
  { "tables/person.csv", "1,\"Ada\",\"student\"", "1,\"Ada\",\"pirate\"", "line 2: a value is outside" },
  { "tables/person.csv", "1,\"Ada\",\"student\"", "1,,\"student\"", "line 2, column “name” is empty" },
  { "tables/person.csv", "1,\"Ada\",\"student\"", "1,\"Ada,\"student\"", "quotation mark" },
  { "tables/person.csv", "1,\"Ada\",\"student\",,,,", "1,\"Ada\",\"student\",,,", "line 2 has 6 cells" },
  { "tables/person.csv", "\r\n2,\"Mr", "\r\n1,\"Mr", "line 3: another row has the same person.id" },
  { "tables/person.csv", "\"Ada\"", "\"\xff\xfe\"", "not saved as UTF-8" },
  { "tables/batch_entry.csv", ",22,1,0,0,3.3", ",many,1,0,0,3.3", "line 2, column “eggs”: “many” is not a whole number" },
  { "tables/batch_entry.csv", ",22,1,0,0,3.3", ",22,1,0,0,\"3,3\"", "“3,3” is not a number" },
  { "tables/batch_entry.csv", ",22,1,0,0,3.3", ",22.5,1,0,0,3.3", "“22.5” is not a whole number" },
  { "tables/batch_entry.csv", "2024-10-05", "10/5/2024", "“10/5/2024” is not a day such as" },
  { "tables/batch_entry.csv", "2024-10-05", "2024-02-30", "“2024-02-30” is not a day" },
  { "tables/reading.csv", "T14:05:00Z", "T24:05:00Z", "is not a moment" },
  { "tables/batch_entry.csv", "\r\n1,1,", "\r\n1,77,", "names a row of “tables/batch.csv”" },
  { "tables/lot_stock.csv", "1,", "1,9", "do not fit together" },
  { "tables/farm.csv", "\r\n1,", "\r\n2,", "outside of what the farm can hold" },
  { "tables/picture.csv", "pictures/1.jpg", "../../etc/passwd", "is not the name of this picture" },
  { "tables/picture.csv", "pictures/1.jpg", "pictures/2.jpg", "is not the name of this picture" },
  { "pictures/1.jpg", "", "GIF89a, not a photograph", "“pictures/1.jpg” is not a JPEG picture" },
  { "pictures/1.jpg", "", NULL, "“pictures/1.jpg” is not in the folder" },
  { "tables/batch.csv", "", NULL, "lacks the file “tables/batch.csv”" },
  { "tables/batch.csv", "", "", "“tables/batch.csv” is empty" },
  { "folder.csv", "", NULL, "not the folder of a farm" },
  { "folder.csv", "\"schema\",5", "\"schema\",6", "newer version" },
  { "folder.csv", "\"whole\",1", "\"whole\",0", "only a part" },
};

/* Puts @fresh into a file in place of @old; %NULL takes the file away.  Returns: the file as it was */
static GBytes *
spoil (const char *path,
       const char *old,
       const char *fresh)
{
  char *text = NULL;
  g_autoptr(GString) changed = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &text, &length, NULL));
  if (fresh == NULL)
    g_assert_cmpint (g_unlink (path), ==, 0);
  else
    {
      changed = g_string_new (*old == '\0' ? fresh : text);
      if (*old != '\0')
        g_assert_cmpuint (g_string_replace (changed, old, fresh, 1), ==, 1);
      g_assert_true (g_file_set_contents (path, changed->str, (gssize) changed->len, NULL));
    }
  return g_bytes_new_take (text, length);
}

static guint
count_named (const char *folder,
             const char *prefix)
{
  g_autoptr(GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint n = 0;

  while ((name = g_dir_read_name (dir)) != NULL)
    n += g_str_has_prefix (name, prefix);
  return n;
}

static void
make_with_picture (Room *room)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;

  make_any (room, 5);
  store = stead_store_open (room->farm, STEAD_STORE_OPEN_DEFAULT, &error);
  g_assert_true (stead_store_begin (store, "picture", &error));
  fixture_run (store, "DELETE FROM picture");
  fixture_run (store, "DELETE FROM sqlite_sequence WHERE name = 'picture'");
  add_picture (store, FALSE);
  g_assert_true (stead_store_commit (store, &error));
}

static void
test_bad (Room          *room,
          gconstpointer  data)
{
  make_with_picture (room);
  write_folder (room);
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr(GError) error = NULL;
      g_autofree char *path = g_build_filename (room->folder, bad[i].file, NULL);
      g_autoptr(GBytes) before = spoil (path, bad[i].old, bad[i].fresh);

      g_test_message ("%s: %s", bad[i].file, bad[i].says);
      g_assert_false (stead_folder_read (room->folder, room->back, NULL, &error));
      g_assert_nonnull (error);
      g_assert_true (error->domain == STEAD_STORE_ERROR);
      farm_assert_says (error->message, bad[i].says);
      g_assert_cmpuint (count_named (room->root, "back"), ==, 0);
      g_assert_true (g_file_set_contents (path, g_bytes_get_data (before, NULL), (gssize) g_bytes_get_size (before), NULL));
    }
}

static void
test_taken (Room          *room,
            gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  make_any (room, 6);
  write_folder (room);
  before = fixture_sum (room->farm);
  g_assert_false (stead_folder_read (room->folder, room->farm, NULL, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID);
  after = fixture_sum (room->farm);
  g_assert_cmpstr (before, ==, after);
  g_clear_error (&error);
  store = stead_store_open (room->farm, STEAD_STORE_OPEN_READ_ONLY, &error);
  g_assert_false (stead_folder_write (store, room->folder, NULL, NULL, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID);
}

static void
test_stopped (Room          *room,
              gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GCancellable) stop = g_cancellable_new ();
  g_autoptr(SteadStore) store = NULL;

  make_any (room, 7);
  store = stead_store_open (room->farm, STEAD_STORE_OPEN_READ_ONLY, &error);
  g_cancellable_cancel (stop);
  g_assert_false (stead_folder_write (store, room->folder, NULL, stop, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_false (g_file_test (room->folder, G_FILE_TEST_EXISTS));
  g_clear_error (&error);
  write_folder (room);
  g_assert_false (stead_folder_read (room->folder, room->back, stop, &error));
  g_assert_nonnull (error);
  g_assert_false (g_file_test (room->back, G_FILE_TEST_EXISTS));
}

/* Farm, dated copy and what is made of a folder, whatever the person's umask lets through. */
static void
test_owner_only (Room          *room,
                 gconstpointer  data)
{
  mode_t mask = umask (0);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = NULL;
  g_autofree char *copies = stead_store_backup_folder (room->farm);
  g_autoptr(GPtrArray) list = NULL;

  make_any (room, 8);
  store = stead_store_open (room->farm, STEAD_STORE_OPEN_DEFAULT, &error);
  fixture_act (store, "more", "INSERT INTO place (name, kind) VALUES ('Coop 2', 'coop')");
  g_clear_object (&store);
  write_folder (room);
  g_assert_true (stead_folder_read (room->folder, room->back, NULL, &error));
  assert_mode (room->farm, 0600);
  assert_mode (room->back, 0600);
  assert_mode (copies, 0700);
  list = stead_store_list_backups (room->farm);
  g_assert_cmpuint (list->len, ==, 1);
  assert_mode (((const SteadBackup *) list->pdata[0])->path, 0600);
  umask (mask);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add ("/store/folder/" name, Room, NULL, room_set_up, func, room_tear_down)
  ADD ("demo", test_demo);
  g_test_add_func ("/store/folder/any", test_any);
  ADD ("form", test_form);
  ADD ("part", test_part);
  ADD ("place", test_place);
  ADD ("bad", test_bad);
  ADD ("owner-only", test_owner_only);
  ADD ("taken", test_taken);
  ADD ("stopped", test_stopped);
  return g_test_run ();
}
