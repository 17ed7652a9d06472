/* class-farm.c - a farm with a whole class, for what is done for each student. */
#include "config.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <glib/gstdio.h>
#include <sqlite3.h>

#include "class-farm.h"
#include "store/stead-demo-farm.h"

#define WIDTH 1600
#define HEIGHT 1200

/* (transfer full): as large in bytes as a camera's: a smooth ground with some grain */
static char *
make_picture (gsize *out_size)
{
  g_autoptr(GdkPixbuf) picture = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, WIDTH, HEIGHT);
  guchar *dots = gdk_pixbuf_get_pixels (picture);
  gsize stride = (gsize) gdk_pixbuf_get_rowstride (picture);
  g_autoptr(GError) error = NULL;
  guint32 grain = 1;
  char *jpeg;

  for (gsize y = 0; y < HEIGHT; y++)
    for (gsize x = 0; x < 3 * WIDTH; x++)
      {
        grain = grain * 1664525u + 1013904223u;
        dots[y * stride + x] = (guchar) ((x / 30 + y / 12 + (grain >> 28)) & 0xff);
      }
  gdk_pixbuf_save_to_buffer (picture, &jpeg, out_size, "jpeg", &error, "quality", "80", NULL);
  g_assert_no_error (error);
  return jpeg;
}

static void
run (sqlite3    *db,
     const char *sql)
{
  g_autofree char *problem = NULL;

  if (sqlite3_exec (db, sql, NULL, NULL, &problem) != SQLITE_OK)
    g_error ("%s", problem);
}

static void
add_pictures (sqlite3 *db,
              int      students,
              int      pictures)
{
  gsize size;
  g_autofree char *jpeg = make_picture (&size);
  g_autofree char *shots = g_strdup_printf (
    "WITH RECURSIVE n (i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i + 1 < %1$d)"
    " INSERT INTO shot (id, picture_id, day, caption, person_id)"
    " SELECT 100000 + i, 100000 + i, %2$d - i %% 180, 'Picture ' || i, 1001 + i %% %3$d FROM n;"
    "INSERT INTO packet (id, name, person_id, from_on, to_on, with_pictures)"   /* its pictures leave with it */
    " SELECT id, name, id, %2$d - 180, %2$d, 1 FROM person WHERE id > 1000;"
    "INSERT INTO packet_section SELECT p.id, s.position, s.section FROM packet p, packet_section s"
    " WHERE p.id > 1000 AND s.packet_id = (SELECT min (packet_id) FROM packet_section WHERE section = 'photos')",
    pictures, CLASS_TODAY, students);
  sqlite3_stmt *stmt = NULL;

  g_assert_cmpint (sqlite3_prepare_v2 (db, "INSERT INTO picture (id, width, height, jpeg) VALUES (?, ?, ?, ?)", -1, &stmt,
                                       NULL), ==, SQLITE_OK);
  sqlite3_bind_int (stmt, 2, WIDTH);
  sqlite3_bind_int (stmt, 3, HEIGHT);
  sqlite3_bind_blob (stmt, 4, jpeg, (int) size, SQLITE_STATIC);
  for (int i = 0; i < pictures; i++)
    {
      sqlite3_bind_int (stmt, 1, 100000 + i);
      g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_DONE);
      sqlite3_reset (stmt);
    }
  sqlite3_finalize (stmt);
  run (db, shots);
}

SteadStore *
class_farm_new (const char *path,
                int         students,
                int         entries,
                int         pictures)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *sql = NULL;
  SteadStore *store = stead_demo_farm_create (path, NULL, CLASS_TODAY, &error);
  sqlite3 *db = NULL;

  g_assert_no_error (error);
  g_object_unref (store);
  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  sql = g_strdup_printf (
    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %1$d)"
    " INSERT INTO person (id, name, role) SELECT 1000 + i, 'Student ' || i, 'student' FROM n;"
    "WITH RECURSIVE n (i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i + 1 < %2$d)"
    " INSERT INTO work_span (person_id, day, minutes, break_minutes, duty, paid, batch_id, entered_on)"
    " SELECT 1001 + i %% %1$d, %3$d - i %% 180, 30 + i %% 60, 0, 'Duty ' || (i %% 7), 0,"
    "  (SELECT min (id) FROM batch WHERE kind = 'flock'), %3$d - i %% 180 FROM n", students, entries, CLASS_TODAY);
  run (db, "BEGIN");
  run (db, sql);
  if (pictures > 0)
    add_pictures (db, students, pictures);
  run (db, "COMMIT");
  sqlite3_close (db);
  store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);
  g_assert_no_error (error);
  stead_store_set_today (store, CLASS_TODAY);
  return store;
}

void
class_farm_remove_folder (const char *path)
{
  g_autoptr(GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *file = g_build_filename (path, name, NULL);

      g_remove (file);
    }
  g_remove (path);
}
