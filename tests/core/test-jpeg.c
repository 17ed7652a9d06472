/* test-jpeg.c - the markers of a JPEG picture (ITU-T T.81, 1992, annex B). */
#include "config.h"

#include <string.h>

#include "core/stead-jpeg.h"

/* SOI, APP0, DQT (cut short), SOF0 of 24 by 16 pixels, SOS, three bytes of scan, EOI;
 * laid out by hand after figures B.2 to B.4: SOF is Lf, P, Y, X, Nf. */
#define START 0xff, 0xd8
#define DENSITY 0xff, 0xe0, 0x00, 0x10, 'J', 'F', 'I', 'F', 0, 1, 2, 0, 0, 1, 0, 1, 0, 0
#define PLACE 0xff, 0xe1, 0x00, 0x0e, 'E', 'x', 'i', 'f', 0, 0, 'G', 'P', 'S', '4', '1', 'N'
#define WORDS 0xff, 0xfe, 0x00, 0x06, 'h', 'o', 'm', 'e'
#define COLORS 0xff, 0xee, 0x00, 0x07, 'A', 'd', 'o', 'b', 'e'
#define FRAME 0xff, 0xc0, 0x00, 0x0b, 8, 0x00, 0x10, 0x00, 0x18, 1, 1, 0x11, 0
#define SCAN 0xff, 0xda, 0x00, 0x08, 1, 1, 0, 0, 0x3f, 0, 0x12, 0xff, 0x00, 0x34
#define END 0xff, 0xd9

static const guint8 bare[] = { START, DENSITY, COLORS, FRAME, SCAN, END };
static const guint8 talking[] = { START, DENSITY, PLACE, WORDS, COLORS, 0xff, PLACE, FRAME, SCAN, END };

static void
test_size (void)
{
  int width = 0, height = 0;

  g_assert_true (stead_jpeg_read_size (bare, sizeof bare, &width, &height));
  g_assert_cmpint (width, ==, 24);
  g_assert_cmpint (height, ==, 16);
  g_assert_true (stead_jpeg_read_size (talking, sizeof talking, &width, &height));
}

static void
test_strip (void)
{
  g_autoptr(GBytes) with = g_bytes_new_static (talking, sizeof talking);
  g_autoptr(GBytes) without = stead_jpeg_strip (with);
  g_autoptr(GBytes) again = stead_jpeg_strip (without);

  g_assert_cmpmem (g_bytes_get_data (without, NULL), (int) g_bytes_get_size (without), bare, sizeof bare);
  g_assert_true (again == without);
}

static void
test_not_one (void)
{
  static const guint8 png[] = { 0x89, 'P', 'N', 'G', 13, 10, 26, 10, 0, 0, 0, 13 };
  static const guint8 no_frame[] = { START, DENSITY, SCAN, END };
  static const guint8 no_scan[] = { START, DENSITY, FRAME, END };
  int width = -1, height = -1;

  g_assert_false (stead_jpeg_read_size (png, sizeof png, &width, &height));
  g_assert_false (stead_jpeg_read_size (no_frame, sizeof no_frame, &width, &height));
  g_assert_false (stead_jpeg_read_size (no_scan, sizeof no_scan, &width, &height));
  for (gsize cut = 0; cut < sizeof talking; cut++)
    {
      /* A copy of its own size, so that a read beyond it is found. */
      guint8 *part = g_memdup2 (talking, cut);
      g_autoptr(GBytes) bytes = g_bytes_new_take (part, cut);
      g_autoptr(GBytes) same = stead_jpeg_strip (bytes);

      g_assert_false (stead_jpeg_read_size (part, cut, &width, &height));
      g_assert_true (same == bytes);
    }
  g_assert_cmpint (width, ==, -1);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/jpeg/size", test_size);
  g_test_add_func ("/core/jpeg/strip", test_strip);
  g_test_add_func ("/core/jpeg/not-one", test_not_one);
  return g_test_run ();
}
