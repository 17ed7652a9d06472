/* fuzz-farm.c - whatever bytes a farm file holds, opening it ends in a farm or a message.
 *
 * From memory, without a disk.  What opens is read, looked at as --verify does,
 * changed and undone.  A budget of steps stands in for the person's patience.
 */
#include "config.h"

#include <stdio.h>
#include <string.h>

#include "fault-acts.h"
#include "repo-fixture.h"
#include "store/stead-store-internal.h"

#define LOOK_EACH 1000
#define MOST_LOOKS 20000
#define ROUNDS 400

int LLVMFuzzerTestOneInput (const guint8 *data, size_t size);

static int looks;

static int
budget_cb (gpointer data)
{
  return ++looks > MOST_LOOKS;
}

static void
change (SteadStore *store)
{
  SteadFlockEntry entry = { .flock_id = 1, .day = TODAY - 20, .eggs = 20, .feed_kg = 2 };

  stead_store_set_today (store, TODAY);
  for (int i = 0; i < 3 && stead_store_undo (store, NULL); i++)
    continue;
  for (int i = 0; i < 3 && stead_store_redo (store, NULL); i++)
    continue;
  if (!stead_store_begin (store, "22 eggs", NULL))
    return;
  if (!stead_flock_repo_save_entry (store, &entry, NULL))
    stead_store_rollback (store);
  else if (stead_store_commit (store, NULL) && !stead_store_undo (store, NULL))
    return;
}

static void
assert_told (const GError *error)
{
  g_assert_true (error != NULL && error->domain == STEAD_STORE_ERROR);
  g_assert_cmpuint (strlen (error->message), >, 10);
}

int
LLVMFuzzerTestOneInput (const guint8 *data,
                        size_t        size)
{
  g_autoptr(GPtrArray) found = g_ptr_array_new_with_free_func (g_free);
  g_autoptr(SteadStore) store = NULL;
  g_autoptr(sqlite3) db = NULL;
  g_autoptr(GError) error = NULL;
  g_autoptr(GError) verify_error = NULL;
  int version;

  looks = 0;
  db = stead_connection_open_bytes (data, size, &stead_schema, &error);
  if (db == NULL || !stead_connection_recognize (db, &stead_schema, &version, &error) ||
      !stead_connection_check (db, "PRAGMA quick_check(1)", &error))
    {
      assert_told (error);
      return 0;
    }
  if (!stead_store_verify_connection (db, NULL, found, &verify_error))
    assert_told (verify_error);
  sqlite3_progress_handler (db, LOOK_EACH, budget_cb, NULL);
  store = stead_store_wrap (g_steal_pointer (&db), NULL, &stead_schema);
  fault_read_all (store);
  change (store);
  return 0;
}

#ifndef STEAD_LIBFUZZER
/* Where a change is felt: the header, the schema, the head of a page, a step. */
static gsize
pick (GRand *rand,
      gsize  length)
{
  gsize page = (gsize) g_rand_int_range (rand, 0, (gint32) (length / 4096) + 1) * 4096;

  switch (g_rand_int_range (rand, 0, 4))
    {
    case 0:
      return (gsize) g_rand_int_range (rand, 0, 100);
    case 1:
      return MIN (length - 1, page + (gsize) g_rand_int_range (rand, 0, 40));
    default:
      return (gsize) g_rand_int_range (rand, 0, (gint32) length);
    }
}

/* The file as it is, cut short, and with bytes changed. */
static void
try_file (const char *bytes,
          gsize       length,
          GRand      *rand)
{
  g_autofree guint8 *copy = g_malloc (length);

  LLVMFuzzerTestOneInput ((const guint8 *) bytes, length);
  for (int round = 0; round < ROUNDS; round++)
    {
      gsize cut = (gsize) g_rand_int_range (rand, 0, (gint32) length + 1);

      memcpy (copy, bytes, length);
      for (int n = g_rand_int_range (rand, 1, 6); n > 0; n--)
        copy[pick (rand, length)] = (guint8) g_rand_int_range (rand, 0, 256);
      LLVMFuzzerTestOneInput (copy, g_rand_int_range (rand, 0, 8) == 0 ? cut : length);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (20260303);

  printf ("1..%d\n", argc - 1);
  for (int i = 1; i < argc; i++)
    {
      g_autofree char *bytes = NULL;
      gsize length;

      if (!g_file_get_contents (argv[i], &bytes, &length, NULL) || length == 0)
        {
          printf ("Bail out! %s cannot be read\n", argv[i]);
          return 1;
        }
      try_file (bytes, length, rand);
      printf ("ok %d %s\n", i, argv[i]);
    }
  return argc < 2;
}
#endif
