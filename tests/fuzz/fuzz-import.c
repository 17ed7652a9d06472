/* fuzz-import.c - whatever the file holds, an import ends in a sound preview or a message.
 *
 * Built with -DSTEAD_LIBFUZZER and clang -fsanitize=fuzzer this is a target for
 * the fuzzer; built plainly it runs over the files named on its command line, and
 * over cuts and flips of them, which the ordinary tests do with the fixtures.
 */
#include "answer/shoal.h"
#include "answer/stead-answer-error.h"
#include "answer/stead-import-answer.h"

#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>

int LLVMFuzzerTestOneInput (const guint8 *data,
                            size_t        size);

static Shoal shoal;
static char *path;

static void
make_farm (void)
{
  g_autofree char *folder = g_dir_make_tmp ("stead-fuzz-XXXXXX", NULL);

  shoal_set_up (&shoal, NULL);
  farm_stock (&shoal.farm);
  path = g_build_filename (folder, "table.csv", NULL);
}

static void
check_row (SteadImport          *import,
           const SteadImportRow *row)
{
  g_assert_cmpuint (row->line, >, 0);
  g_assert_nonnull (row->cells);
  g_assert_true ((row->state == STEAD_ROW_TAKE) == (row->fact != NULL));
  g_assert_true ((row->state == STEAD_ROW_TAKE) == (row->understood != NULL));
  g_assert_true (row->state == STEAD_ROW_TAKE || row->message != NULL);
}

/* What the preview takes, the farm takes: the same rules stand in both. */
static void
take (SteadImport *import)
{
  g_autoptr(GError) error = NULL;

  if (stead_import_count (import, STEAD_ROW_TAKE) == 0)
    return;
  if (!stead_import_take (import, shoal.farm.store, NULL, NULL, NULL, &error))
    g_error ("the preview took what the farm refuses: %s", error->message);
  g_assert_true (stead_store_undo (shoal.farm.store, &error));
  g_assert_no_error (error);
}

static void
try_kind (SteadImportKind kind,
          SteadDateOrder  order)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadImport) import = NULL;
  guint n;

  import = stead_import_read (shoal.farm.store, kind, 0, path, order, NULL, NULL, NULL, &error);
  if (import == NULL)
    {
      g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT);
      g_assert_cmpuint (strlen (error->message), >, 10);
      return;
    }
  n = stead_import_get_n_rows (import);
  g_assert_cmpuint (n, ==, stead_import_count (import, STEAD_ROW_TAKE) + stead_import_count (import, STEAD_ROW_SKIP)
                           + stead_import_count (import, STEAD_ROW_WRONG));
  for (guint i = 0; i < n; i++)
    check_row (import, stead_import_get_row (import, i));
  take (import);
}

int
LLVMFuzzerTestOneInput (const guint8 *data,
                        size_t        size)
{
  if (path == NULL)
    make_farm ();
  g_assert_true (g_file_set_contents_full (path, (const char *) data, (gssize) size, G_FILE_SET_CONTENTS_NONE, 0600,
                                           NULL));
  try_kind (STEAD_IMPORT_FLOCK_LOG, STEAD_DATE_ORDER_UNKNOWN);
  try_kind (STEAD_IMPORT_FLOCK_LOG, STEAD_DATE_ORDER_DMY);
  try_kind (STEAD_IMPORT_RECEIPTS, STEAD_DATE_ORDER_UNKNOWN);
  try_kind (STEAD_IMPORT_FISH_LOG, STEAD_DATE_ORDER_MDY);
  try_kind (STEAD_IMPORT_WEIGHINGS, STEAD_DATE_ORDER_UNKNOWN);
  return 0;
}

#ifndef STEAD_LIBFUZZER
/* The file as it is, cut short, and with bytes changed. */
static void
try_file (const char *bytes,
          gsize       length,
          GRand      *rand)
{
  g_autofree guint8 *copy = g_malloc (length + 1);

  LLVMFuzzerTestOneInput ((const guint8 *) bytes, length);
  for (int round = 0; round < 40 && length > 0; round++)
    {
      gsize cut = (gsize) g_rand_int_range (rand, 0, (gint32) length + 1);

      memcpy (copy, bytes, length);
      for (int flips = g_rand_int_range (rand, 0, 4); flips > 0; flips--)
        copy[(gsize) g_rand_int_range (rand, 0, (gint32) length)] =
          g_rand_boolean (rand) ? (guint8) ",;\"\n\r\t0/-"[g_rand_int_range (rand, 0, 9)]
                                : (guint8) g_rand_int_range (rand, 0, 256);
      LLVMFuzzerTestOneInput (copy, g_rand_boolean (rand) ? cut : length);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (20260303);
  g_autofree char *folder = NULL;

  printf ("1..%d\n", argc - 1);
  for (int i = 1; i < argc; i++)
    {
      g_autofree char *bytes = NULL;
      gsize length;

      if (!g_file_get_contents (argv[i], &bytes, &length, NULL))
        {
          printf ("Bail out! %s cannot be read\n", argv[i]);
          return 1;
        }
      try_file (bytes, length, rand);
      printf ("ok %d %s\n", i, argv[i]);
    }
  if (path != NULL)
    {
      folder = g_path_get_dirname (path);
      g_remove (path);
      g_rmdir (folder);
      g_free (path);
      shoal_tear_down (&shoal, NULL);
    }
  return argc < 2;
}
#endif
