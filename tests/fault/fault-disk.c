/* fault-disk.c - a disk that fails, or loses power, at a chosen moment. */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "fault-disk.h"
#include "store-fixture.h"

#define SECTOR 512

typedef enum { OFF, FAIL, CUT } Mode;

typedef struct
{
  sqlite3_file  base;
  const char   *path;    /* (nullable) */
} File;                  /* the real one stands behind it */

typedef enum { MAKE, WRITE, RESIZE, DELETE } Kind;

/* Something that was done and not synced. */
typedef struct
{
  Kind    kind;
  gint64  at;
  GBytes *bytes;
} Deed;

typedef struct
{
  GByteArray *durable;   /* as the last sync left it */
  gboolean    is_there;  /* its name, durably */
  GPtrArray  *deeds;
} Image;

static struct
{
  sqlite3_vfs  own;
  sqlite3_vfs *real;
  Mode         mode;
  int          left;
  gboolean     struck;
  GHashTable  *images;   /* path -> Image */
} disk;

static sqlite3_file *
real_of (sqlite3_file *file)
{
  return (sqlite3_file *) ((File *) file + 1);
}

/* Whether the moment has come, or is past on a disk without power. */
static gboolean
strikes (void)
{
  if (disk.mode == CUT && disk.struck)
    return TRUE;
  if (disk.mode == OFF || disk.left == 0 || --disk.left > 0)
    return FALSE;
  disk.struck = TRUE;
  return TRUE;
}

/* --- what is durable ---------------------------------------------------------- */

static void
deed_free (Deed *deed)
{
  g_clear_pointer (&deed->bytes, g_bytes_unref);
  g_free (deed);
}

static void
image_free (Image *image)
{
  g_byte_array_unref (image->durable);
  g_ptr_array_unref (image->deeds);
  g_free (image);
}

static gboolean
is_followed (const char *path)
{
  return disk.mode == CUT && path != NULL && strstr (path, ".part") == NULL;
}

static void
read_whole (sqlite3_file *real,
            GByteArray   *into)
{
  sqlite3_int64 size = 0;

  g_assert_cmpint (real->pMethods->xFileSize (real, &size), ==, SQLITE_OK);
  g_byte_array_set_size (into, (guint) size);
  if (size > 0)
    g_assert_cmpint (real->pMethods->xRead (real, into->data, (int) size, 0), ==, SQLITE_OK);
}

/* @real: (nullable): the open file; without one it is there by name or not at all */
static Image *
image_of (const char   *path,
          sqlite3_file *real,
          gboolean      is_there)
{
  Image *image = g_hash_table_lookup (disk.images, path);

  if (image != NULL)
    return image;
  image = g_new0 (Image, 1);
  image->durable = g_byte_array_new ();
  image->deeds = g_ptr_array_new_with_free_func ((GDestroyNotify) deed_free);
  image->is_there = is_there;
  if (real != NULL && is_there)
    read_whole (real, image->durable);
  g_hash_table_insert (disk.images, g_strdup (path), image);
  return image;
}

static void
note (Image         *image,
      Kind           kind,
      gint64         at,
      gconstpointer  bytes,
      gsize          length)
{
  Deed *deed = g_new0 (Deed, 1);

  deed->kind = kind;
  deed->at = at;
  deed->bytes = bytes != NULL ? g_bytes_new (bytes, length) : NULL;
  g_ptr_array_add (image->deeds, deed);
}

/* --- a file --------------------------------------------------------------------- */

static int
close_file (sqlite3_file *file)
{
  return real_of (file)->pMethods->xClose (real_of (file));
}

static int
read_file (sqlite3_file  *file,
           void          *bytes,
           int            length,
           sqlite3_int64  at)
{
  if (disk.mode == CUT ? disk.struck : strikes ())
    return SQLITE_IOERR_READ;
  return real_of (file)->pMethods->xRead (real_of (file), bytes, length, at);
}

static int
write_file (sqlite3_file  *file,
            const void    *bytes,
            int            length,
            sqlite3_int64  at)
{
  const char *path = ((File *) file)->path;
  gboolean was_off = disk.struck;

  if (is_followed (path) && !was_off)
    note (image_of (path, real_of (file), TRUE), WRITE, at, bytes, (gsize) length);
  if (strikes ())
    return disk.mode == FAIL && g_test_rand_bit () ? SQLITE_FULL : SQLITE_IOERR_WRITE;
  return real_of (file)->pMethods->xWrite (real_of (file), bytes, length, at);
}

static int
truncate_file (sqlite3_file  *file,
               sqlite3_int64  size)
{
  const char *path = ((File *) file)->path;

  if (is_followed (path) && !disk.struck)
    note (image_of (path, real_of (file), TRUE), RESIZE, size, NULL, 0);
  if (strikes ())
    return SQLITE_IOERR_TRUNCATE;
  return real_of (file)->pMethods->xTruncate (real_of (file), size);
}

/* The first sync of a new file puts its name onto the disk, too. */
static int
sync_file (sqlite3_file *file,
           int           flags)
{
  const char *path = ((File *) file)->path;
  Image *image;

  if (strikes ())
    return SQLITE_IOERR_FSYNC;
  if (is_followed (path))
    {
      image = image_of (path, real_of (file), TRUE);
      g_ptr_array_set_size (image->deeds, 0);
      read_whole (real_of (file), image->durable);
      image->is_there = TRUE;
    }
  return real_of (file)->pMethods->xSync (real_of (file), flags);
}

static int
size_of_file (sqlite3_file  *file,
              sqlite3_int64 *out_size)
{
  return real_of (file)->pMethods->xFileSize (real_of (file), out_size);
}

static int
lock_file (sqlite3_file *file,
           int           level)
{
  return real_of (file)->pMethods->xLock (real_of (file), level);
}

static int
unlock_file (sqlite3_file *file,
             int           level)
{
  return real_of (file)->pMethods->xUnlock (real_of (file), level);
}

static int
check_lock (sqlite3_file *file,
            int          *out)
{
  return real_of (file)->pMethods->xCheckReservedLock (real_of (file), out);
}

static int
control_file (sqlite3_file *file,
              int           what,
              void         *data)
{
  return real_of (file)->pMethods->xFileControl (real_of (file), what, data);
}

static int
sector_size (sqlite3_file *file)
{
  return real_of (file)->pMethods->xSectorSize (real_of (file));
}

static int
characteristics (sqlite3_file *file)
{
  return real_of (file)->pMethods->xDeviceCharacteristics (real_of (file));
}

static const sqlite3_io_methods methods = {
  .iVersion = 1,
  .xClose = close_file,
  .xRead = read_file,
  .xWrite = write_file,
  .xTruncate = truncate_file,
  .xSync = sync_file,
  .xFileSize = size_of_file,
  .xLock = lock_file,
  .xUnlock = unlock_file,
  .xCheckReservedLock = check_lock,
  .xFileControl = control_file,
  .xSectorSize = sector_size,
  .xDeviceCharacteristics = characteristics,
};

/* --- the disk ---------------------------------------------------------------------- */

static int
open_on_disk (sqlite3_vfs  *vfs,
              const char   *path,
              sqlite3_file *file,
              int           flags,
              int          *out_flags)
{
  gboolean makes = (flags & SQLITE_OPEN_CREATE) != 0 && path != NULL && !g_file_test (path, G_FILE_TEST_EXISTS);
  int rc;

  memset (file, 0, sizeof (File));
  if (makes && strikes ())
    return SQLITE_CANTOPEN;
  rc = disk.real->xOpen (disk.real, path, real_of (file), flags, out_flags);
  if (rc != SQLITE_OK)
    return rc;
  file->pMethods = &methods;
  ((File *) file)->path = path;
  if (makes && is_followed (path))
    note (image_of (path, real_of (file), FALSE), MAKE, 0, NULL, 0);
  return SQLITE_OK;
}

static int
delete_on_disk (sqlite3_vfs *vfs,
                const char  *path,
                int          sync_folder)
{
  gboolean was_off = disk.struck;
  Image *image = is_followed (path) && !was_off ? g_hash_table_lookup (disk.images, path) : NULL;

  if (image != NULL)
    note (image, DELETE, 0, NULL, 0);
  if (strikes ())
    return SQLITE_IOERR_DELETE;
  if (image != NULL && sync_folder)
    {
      g_ptr_array_set_size (image->deeds, 0);
      g_byte_array_set_size (image->durable, 0);
      image->is_there = FALSE;
    }
  return disk.real->xDelete (disk.real, path, sync_folder);
}

void
fault_disk_install (void)
{
  disk.real = sqlite3_vfs_find (NULL);
  disk.own = *disk.real;
  disk.own.zName = "fault-disk";
  disk.own.szOsFile = (int) sizeof (File) + disk.real->szOsFile;
  disk.own.xOpen = open_on_disk;
  disk.own.xDelete = delete_on_disk;
  disk.images = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) image_free);
  g_assert_cmpint (sqlite3_vfs_register (&disk.own, 1), ==, SQLITE_OK);
}

static void
start (Mode mode,
       int  n)
{
  g_hash_table_remove_all (disk.images);
  disk.mode = mode;
  disk.left = n;
  disk.struck = FALSE;
}

void
fault_disk_fail_at (int n)
{
  start (FAIL, n);
}

gboolean
fault_disk_mend (void)
{
  disk.mode = OFF;
  return disk.struck;
}

void
fault_disk_cut_at (int n)
{
  start (CUT, n);
}

/* --- after the power went -------------------------------------------------------------- */

static void
put_piece (GByteArray   *content,
           gint64        at,
           const guint8 *bytes,
           gsize         length)
{
  guint old = content->len;

  if (content->len < (guint) at + length)
    {
      g_byte_array_set_size (content, (guint) ((gsize) at + length));
      memset (content->data + old, 0, content->len - old);
    }
  memcpy (content->data + at, bytes, length);
}

static void
write_in_part (GByteArray *content,
               const Deed *deed)
{
  gsize length;
  const guint8 *bytes = g_bytes_get_data (deed->bytes, &length);

  for (gsize done = 0; done < length; done += SECTOR)
    if (g_test_rand_bit ())
      put_piece (content, deed->at + (gint64) done, bytes + done, MIN (SECTOR, length - done));
}

static gboolean
redo_in_part (GByteArray *content,
              gboolean    is_there,
              const Deed *deed)
{
  if (deed->kind == WRITE && is_there)
    write_in_part (content, deed);
  else if (deed->kind != WRITE && g_test_rand_bit ())
    {
      if (deed->kind == DELETE)
        g_byte_array_set_size (content, 0);
      else if (deed->kind == RESIZE && deed->at < content->len)
        g_byte_array_set_size (content, (guint) deed->at);
      return deed->kind == RESIZE ? is_there : deed->kind == MAKE;
    }
  return is_there;
}

static void
leave_on_disk (const char  *path,
               const Image *image)
{
  g_autoptr(GByteArray) content = g_byte_array_new ();
  gboolean is_there = image->is_there;

  if (image->durable->len > 0)
    g_byte_array_append (content, image->durable->data, image->durable->len);
  for (guint i = 0; i < image->deeds->len; i++)
    is_there = redo_in_part (content, is_there, image->deeds->pdata[i]);
  if (is_there)
    g_assert_true (g_file_set_contents (path, (const char *) content->data, (gssize) content->len, NULL));
  else
    g_unlink (path);
}

gboolean
fault_disk_lose_power (void)
{
  GHashTableIter at;
  gpointer path, image;

  disk.mode = OFF;
  g_hash_table_iter_init (&at, disk.images);
  while (g_hash_table_iter_next (&at, &path, &image))
    leave_on_disk (path, image);
  g_hash_table_remove_all (disk.images);
  return disk.struck;
}
