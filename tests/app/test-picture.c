/* test-picture.c - pictures come out small, upright and whole, or with a clear message. */
#include "config.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <glib/gstdio.h>
#include <string.h>

#include "app/stead-picture.h"

static char *folder;

static char *
path_of (const char *name)
{
  return g_build_filename (folder, name, NULL);
}

/* Noise is what shrinks worst. */
static GdkPixbuf *
noise (int      width,
       int      height,
       gboolean alpha)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (1);
  GdkPixbuf *pixbuf = gdk_pixbuf_new (GDK_COLORSPACE_RGB, alpha, 8, width, height);
  guchar *pixels = gdk_pixbuf_get_pixels (pixbuf);
  gsize length = gdk_pixbuf_get_byte_length (pixbuf);

  for (gsize i = 0; i < length; i++)
    pixels[i] = (guchar) g_rand_int_range (rand, 0, 256);
  return pixbuf;
}

static char *
save (const char *name,
      GdkPixbuf  *pixbuf,
      const char *type)
{
  char *path = path_of (name);
  g_autoptr(GError) error = NULL;

  g_assert_true (gdk_pixbuf_save (pixbuf, path, type, &error, NULL));
  g_assert_no_error (error);
  return path;
}

static GdkPixbuf *
decode (const SteadPicture *picture)
{
  g_autoptr(GInputStream) stream = g_memory_input_stream_new_from_bytes (picture->jpeg);
  g_autoptr(GError) error = NULL;
  GdkPixbuf *pixbuf = gdk_pixbuf_new_from_stream (stream, NULL, &error);

  g_assert_no_error (error);
  return pixbuf;
}

static void
assert_fine (const SteadPicture *picture)
{
  g_autoptr(GdkPixbuf) pixbuf = decode (picture);
  const guchar *bytes = g_bytes_get_data (picture->jpeg, NULL);

  /* A JPEG begins with FF D8 FF (ISO/IEC 10918-1, annex B). */
  g_assert_true (bytes[0] == 0xff && bytes[1] == 0xd8 && bytes[2] == 0xff);
  g_assert_cmpuint (g_bytes_get_size (picture->jpeg), <, 100000);
  g_assert_cmpint (MAX (picture->width, picture->height), <=, 1280);
  g_assert_cmpint (gdk_pixbuf_get_width (pixbuf), ==, picture->width);
  g_assert_cmpint (gdk_pixbuf_get_height (pixbuf), ==, picture->height);
}

static void
test_large (void)
{
  g_autoptr(GdkPixbuf) pixbuf = noise (2400, 1200, FALSE);
  g_autofree char *path = save ("large.png", pixbuf, "png");
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPicture) picture = stead_picture_read (path, &error);

  g_assert_no_error (error);
  assert_fine (picture);
  g_assert_cmpint (ABS (picture->width - 2 * picture->height), <=, 2);
}

static void
test_small (void)
{
  g_autoptr(GdkPixbuf) pixbuf = noise (60, 90, FALSE);
  g_autofree char *path = save ("small.jpg", pixbuf, "jpeg");
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPicture) picture = stead_picture_read (path, &error);

  g_assert_no_error (error);
  assert_fine (picture);
  g_assert_cmpint (picture->width, ==, 60);
  g_assert_cmpint (picture->height, ==, 90);
}

/* What shines through is white. */
static void
test_transparent (void)
{
  g_autoptr(GdkPixbuf) pixbuf = gdk_pixbuf_new (GDK_COLORSPACE_RGB, TRUE, 8, 40, 40);
  g_autoptr(GdkPixbuf) seen = NULL;
  g_autofree char *path = NULL;
  g_autoptr(SteadPicture) picture = NULL;

  gdk_pixbuf_fill (pixbuf, 0x00000000);
  path = save ("clear.png", pixbuf, "png");
  picture = stead_picture_read (path, NULL);
  assert_fine (picture);
  seen = decode (picture);
  g_assert_cmpint (gdk_pixbuf_get_pixels (seen)[0], >, 250);
}

/* A camera held upright writes a picture that lies, and says so in Exif (tag 0x0112, value 6: turn
 * right; CIPA DC-008, section 4.6.4): the least such block, put behind the first two bytes. */
static void
test_turned (void)
{
  static const guchar exif[] = {
    0xff, 0xe1, 0x00, 0x22, 'E', 'x', 'i', 'f', 0, 0, 'M', 'M', 0, 42, 0, 0, 0, 8, 0, 1,
    0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0
  };
  g_autoptr(GdkPixbuf) pixbuf = noise (120, 40, FALSE);
  g_autofree char *path = save ("lying.jpg", pixbuf, "jpeg");
  g_autoptr(GByteArray) turned = g_byte_array_new ();
  g_autofree char *bytes = NULL;
  g_autoptr(SteadPicture) picture = NULL;
  gsize size;

  g_assert_true (g_file_get_contents (path, &bytes, &size, NULL));
  g_byte_array_append (turned, (guchar *) bytes, 2);
  g_byte_array_append (turned, exif, sizeof exif);
  g_byte_array_append (turned, (guchar *) bytes + 2, (guint) size - 2);
  g_assert_true (g_file_set_contents (path, (char *) turned->data, turned->len, NULL));
  picture = stead_picture_read (path, NULL);
  assert_fine (picture);
  g_assert_cmpint (picture->width, ==, 40);
  g_assert_cmpint (picture->height, ==, 120);
  /* Nothing of what the camera wrote is left. */
  g_assert_null (memmem (g_bytes_get_data (picture->jpeg, NULL), g_bytes_get_size (picture->jpeg), "Exif", 4));
}

static void
assert_refused (const char *path,
                const char *words)
{
  g_autoptr(GError) error = NULL;

  g_assert_null (stead_picture_read (path, &error));
  g_assert_nonnull (error);
  if (strstr (error->message, words) == NULL)
    g_error ("“%s” does not say “%s”", error->message, words);
}

static void
test_refused (void)
{
  g_autoptr(GdkPixbuf) pixbuf = noise (300, 300, FALSE);
  g_autofree char *damaged = save ("damaged.png", pixbuf, "png");
  g_autofree char *text = path_of ("text.jpg");
  g_autofree char *nothing = path_of ("empty.jpg");
  g_autofree char *huge = path_of ("huge.pgm");
  g_autofree char *none = path_of ("none.jpg");
  g_autofree char *bytes = NULL;
  gsize size;

  g_assert_true (g_file_get_contents (damaged, &bytes, &size, NULL));
  g_assert_true (g_file_set_contents (damaged, bytes, (gssize) size / 2, NULL));
  assert_refused (damaged, "damaged");
  g_assert_true (g_file_set_contents (text, "This is a letter.", -1, NULL));
  assert_refused (text, "no picture");
  g_assert_true (g_file_set_contents (nothing, "", 0, NULL));
  assert_refused (nothing, "no picture");
  /* A head alone that promises 40,000 x 40,000 dots. */
  g_assert_true (g_file_set_contents (huge, "P5 40000 40000 255\n", -1, NULL));
  assert_refused (huge, "too many dots");
  assert_refused (none, "No such file");
  assert_refused (folder, "no file");
}

typedef struct
{
  GMainLoop    *loop;
  SteadPicture *picture;
} Waiting;

static void
read_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  Waiting *waiting = data;

  waiting->picture = stead_picture_read_finish (result, NULL);
  g_main_loop_quit (waiting->loop);
}

static void
test_async (void)
{
  g_autoptr(GdkPixbuf) pixbuf = noise (1500, 200, FALSE);
  g_autofree char *path = save ("thread.png", pixbuf, "png");
  g_autoptr(GMainLoop) loop = g_main_loop_new (NULL, FALSE);
  Waiting waiting = { loop, NULL };

  stead_picture_read_async (path, NULL, read_cb, &waiting);
  g_main_loop_run (loop);
  assert_fine (waiting.picture);
  stead_picture_free (waiting.picture);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr(GDir) dir = NULL;
  const char *name;
  int result;

  g_test_init (&argc, &argv, NULL);
  folder = g_dir_make_tmp ("stead-picture-XXXXXX", NULL);
  g_test_add_func ("/app/picture/large", test_large);
  g_test_add_func ("/app/picture/small", test_small);
  g_test_add_func ("/app/picture/transparent", test_transparent);
  g_test_add_func ("/app/picture/turned", test_turned);
  g_test_add_func ("/app/picture/refused", test_refused);
  g_test_add_func ("/app/picture/async", test_async);
  result = g_test_run ();
  dir = g_dir_open (folder, 0, NULL);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = path_of (name);

      g_unlink (path);
    }
  g_rmdir (folder);
  g_free (folder);
  return result;
}
