/* test-batch-paper.c - the card of a batch: pictures in it, damaged ones, and who may be asked for. */
#include <gdk-pixbuf/gdk-pixbuf.h>
#include <glib/gstdio.h>
#include <string.h>

#include "answer/stead-answer-error.h"
#include "paper/stead-paper.h"
#include "shoal.h"

/* Of the fish. */
static SteadPaper *
card (Shoal *shoal)
{
  g_autoptr(SteadFish) fish = stead_fish_repo_get (shoal->farm.store, shoal->fish, NULL);
  g_autoptr(GError) error = NULL;
  SteadPaper *paper = stead_paper_new (shoal->farm.store, "batch-card", fish->batch.name, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (paper);
  return paper;
}

/* A JPEG of many dots, none of them like the next. */
static GBytes *
make_jpeg (int width,
           int height)
{
  g_autoptr(GdkPixbuf) picture = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, width, height);
  guchar *dots = gdk_pixbuf_get_pixels (picture);
  char *data;
  gsize size;

  for (int y = 0; y < height; y++)
    for (int x = 0; x < 3 * width; x++)
      dots[y * gdk_pixbuf_get_rowstride (picture) + x] = (guchar) (x * 7 + y * 13);
  g_assert_true (gdk_pixbuf_save_to_buffer (picture, &data, &size, "jpeg", NULL, NULL));
  return g_bytes_new_take (data, size);
}

static void
add_note (Shoal      *shoal,
          const char *text,
          GBytes     *jpeg)
{
  SteadBatchNote note = { .batch_id = shoal->fish, .day = shoal->farm.today, .text = (char *) text };

  if (jpeg != NULL)
    FARM_DO (&shoal->farm, (note.picture_id = stead_picture_repo_add (shoal->farm.store, jpeg, 40, 30, &farm_error)) != 0);
  FARM_DO (&shoal->farm, stead_batch_repo_save_note (shoal->farm.store, &note, &farm_error));
}

static GBytes *
pdf_of (SteadPaper *paper)
{
  g_autofree char *folder = g_dir_make_tmp ("steading-card-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "card.pdf", NULL);
  g_autoptr(GError) error = NULL;
  char *data;
  gsize size;

  g_assert_true (stead_paper_save_pdf (paper, path, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &data, &size, NULL));
  g_remove (path);
  g_rmdir (folder);
  return g_bytes_new_take (data, size);
}

static gboolean
holds (GBytes     *pdf,
       const void *what,
       gsize       size)
{
  gsize all;
  const char *data = g_bytes_get_data (pdf, &all);

  return memmem (data, all, what, size) != NULL;
}

/* The JPEG is in the file as it was taken in: one as large as a camera's, too, which the screen is
 * shown smaller. */
static void
test_picture (Shoal         *shoal,
              gconstpointer  data)
{
  g_autoptr(GBytes) jpeg = make_jpeg (GPOINTER_TO_INT (data), GPOINTER_TO_INT (data) * 3 / 4);
  g_autoptr(SteadPaper) bare = card (shoal);
  g_autoptr(GBytes) bare_pdf = pdf_of (bare);
  g_autoptr(SteadPaper) paper = NULL;
  g_autoptr(GBytes) pdf = NULL;
  gsize size;
  const void *bytes = g_bytes_get_data (jpeg, &size);

  g_assert_false (holds (bare_pdf, bytes, size));
  add_note (shoal, "They eat\nfrom the hand", jpeg);
  paper = card (shoal);
  pdf = pdf_of (paper);
  g_assert_true (holds (pdf, bytes, size));
}

/* A picture that is none any more takes no other part of the card along. */
static void
test_damaged_picture (Shoal         *shoal,
                      gconstpointer  data)
{
  g_autoptr(GBytes) none = g_bytes_new_static ("no picture", 10);
  g_autoptr(SteadPaper) paper = NULL;
  g_autoptr(GBytes) pdf = NULL;

  add_note (shoal, NULL, none);
  paper = card (shoal);
  pdf = pdf_of (paper);
  g_assert_cmpint (stead_paper_get_n_pages (paper), >=, 1);
}

/* Many pictures: each stays on a page, under its words. */
static void
test_many_pictures (Shoal         *shoal,
                    gconstpointer  data)
{
  g_autoptr(GBytes) wide = make_jpeg (1280, 300);
  g_autoptr(GBytes) high = make_jpeg (300, 1280);
  g_autoptr(SteadPaper) paper = NULL;

  for (int i = 0; i < 6; i++)
    add_note (shoal, "Another day", i % 2 == 0 ? wide : high);
  paper = card (shoal);
  g_assert_cmpint (stead_paper_get_n_pages (paper), >=, 3);
  g_assert_cmpint (stead_paper_get_n_pages (paper), <=, 5);
}

static void
test_of (Shoal         *shoal,
         gconstpointer  data)
{
  g_autoptr(SteadFish) fish = stead_fish_repo_get (shoal->farm.store, shoal->fish, NULL);
  g_autoptr(SteadPaper) paper = card (shoal);
  g_autoptr(GError) error = NULL;

  g_assert_true (g_str_has_prefix (stead_paper_get_title (paper), fish->batch.name));
  g_assert_null (stead_paper_new (shoal->farm.store, "batch-card", "Unicorns", NULL, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN);
  g_assert_nonnull (strstr (error->message, fish->batch.name));
}

#define ADD(name, test) g_test_add ("/paper/batch-paper/" name, Shoal, NULL, shoal_set_up, test, shoal_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add ("/paper/batch-paper/picture", Shoal, GINT_TO_POINTER (40), shoal_set_up, test_picture, shoal_tear_down);
  g_test_add ("/paper/batch-paper/large-picture", Shoal, GINT_TO_POINTER (1600), shoal_set_up, test_picture, shoal_tear_down);
  ADD ("damaged-picture", test_damaged_picture);
  ADD ("many-pictures", test_many_pictures);
  ADD ("of", test_of);
  return g_test_run ();
}
