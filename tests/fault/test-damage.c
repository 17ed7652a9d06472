/* test-damage.c - a farm cut short or with flipped bits is refused with a message,
 * or opened and looked at honestly; nothing crashes, and no byte of it changes.
 *
 * STEAD_ROUNDS sets how many; --seed makes a run again.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "fault-acts.h"
#include "repo-fixture.h"
#include "store/stead-rescue.h"
#include "store/stead-schema.h"

#define ROUNDS 150
#define EACH_RESCUED 5

static struct { double open, read, verify, rescue, change; } worst;

static void
damage (char  *bytes,
        gsize *length)
{
  if (g_test_rand_int_range (0, 4) == 0)
    {
      *length = (gsize) g_test_rand_int_range (0, (gint32) *length);
      return;
    }
  for (int i = 1 << g_test_rand_int_range (0, 8); i > 0; i--)
    bytes[g_test_rand_int_range (0, (gint32) *length)] ^= (char) (1 << g_test_rand_int_range (0, 8));
}

/* Of this version: an older one would be brought up to date when it is opened. */
static char *
present_sample (void)
{
  g_autofree char *name = g_strdup_printf ("version-%d.steading", STEAD_SCHEMA_VERSION);

  return g_test_build_filename (G_TEST_DIST, "fixtures", name, NULL);
}

/* Something is done to what was opened: it may be refused, and may not crash. */
static void
try_to_change (const char *path)
{
  g_autoptr(SteadStore) store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, NULL);
  SteadFlockEntry entry = { .flock_id = 1, .day = TODAY - 20, .eggs = 20, .feed_kg = 2 };

  if (store == NULL)
    return;
  stead_store_set_today (store, TODAY);
  if (!stead_store_begin (store, "22 eggs", NULL))
    return;
  if (!stead_flock_repo_save_entry (store, &entry, NULL))
    stead_store_rollback (store);
  else if (!stead_store_commit (store, NULL))
    return;
  for (int i = 0; i < 5 && stead_store_undo (store, NULL); i++)
    continue;
}

typedef struct
{
  int refused, found, clean;
} Tally;

static void
look (const char *path,
      Tally      *tally)
{
  g_autofree char *before = fixture_sum (path);
  g_autofree char *after = NULL;
  g_autoptr(GPtrArray) found = NULL;
  g_autoptr(GError) error = NULL;
  g_autoptr(GError) verify_error = NULL;
  clock_t start = clock ();
  g_autoptr(SteadStore) store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);

  fault_took ("opening", start, &worst.open);
  start = clock ();
  if (store != NULL)
    fault_read_all (store);
  else
    g_assert_true (error->domain == STEAD_STORE_ERROR && *error->message != '\0');
  fault_took ("reading", start, &worst.read);
  start = clock ();
  found = stead_store_verify (path, NULL, &verify_error);
  fault_took ("--verify", start, &worst.verify);
  g_assert_true (found != NULL || verify_error->domain == STEAD_STORE_ERROR);
  if (store == NULL)   /* what cannot be opened is not called sound */
    g_assert_true (found == NULL || found->len > 0);
  tally->refused += store == NULL;
  tally->found += store != NULL && (found == NULL || found->len > 0);
  tally->clean += store != NULL && found != NULL && found->len == 0;
  g_clear_object (&store);
  after = fixture_sum (path);
  g_assert_cmpstr (after, ==, before);
}

/* What can be read of it comes into a whole farm, or nothing is left, and soon,
 * whatever the damage. */
static void
try_to_rescue (const char *path,
               const char *to)
{
  g_autofree char *before = fixture_sum (path);
  g_autofree char *after = NULL;
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) found = NULL;
  clock_t start = clock ();
  g_autoptr(SteadRescue) rescue = stead_rescue_run (path, to, NULL, &error);

  fault_took ("the rescue", start, &worst.rescue);
  after = fixture_sum (path);
  g_assert_cmpstr (after, ==, before);
  if (rescue == NULL)
    {
      g_assert_true (error->domain == STEAD_STORE_ERROR && *error->message != '\0');
      g_assert_false (g_file_test (to, G_FILE_TEST_EXISTS));
      return;
    }
  found = stead_store_verify (to, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (found->len, ==, rescue->faults->len);
  g_unlink (to);
}

static void
test_damage (void)
{
  const char *wished = g_getenv ("STEAD_ROUNDS");
  int rounds = wished != NULL ? atoi (wished) : ROUNDS;
  g_autofree char *sample = present_sample ();
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "farm.steading", NULL);
  g_autofree char *to = g_build_filename (folder, "rescued.steading", NULL);
  Tally tally = { 0 };

  for (int i = 0; i < rounds; i++)
    {
      g_autofree char *bytes = NULL;
      clock_t start;
      gsize length;

      g_assert_true (g_file_get_contents (sample, &bytes, &length, NULL));
      damage (bytes, &length);
      g_assert_true (g_file_set_contents (path, bytes, (gssize) length, NULL));
      look (path, &tally);
      if (i % EACH_RESCUED == 0)
        try_to_rescue (path, to);
      start = clock ();
      try_to_change (path);
      fault_took ("a change", start, &worst.change);
    }
  g_test_message ("%d refused, %d opened and found wrong, %d where no fact was hit",
                  tally.refused, tally.found, tally.clean);
  g_test_message ("slowest: opening %.2f s, reading %.2f s, --verify %.2f s, a rescue %.2f s, a change %.2f s",
                  worst.open, worst.read, worst.verify, worst.rescue, worst.change);
  g_assert_cmpint (tally.refused, >, rounds / 10);
}

/* Money of a signed receipt, one bit at a time: each is noticed. */
static void
test_signed_money (void)
{
  g_autofree char *sample = present_sample ();
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "farm.steading", NULL);
  g_autofree char *bytes = NULL;
  gsize length;
  int n_cells = 0;

  g_assert_true (g_file_get_contents (sample, &bytes, &length, NULL));
  /* 1899 cents as a two-byte integer: in the receipt line, its movement, its stock. */
  for (gsize at = 0; at + 1 < length; at++)
    {
      g_autoptr(GPtrArray) found = NULL;
      g_autoptr(GError) error = NULL;

      if ((guint8) bytes[at] != 0x07 || (guint8) bytes[at + 1] != 0x6b ||
          (at >= 6 && memcmp (bytes + at - 6, "\0\0\0\0\0\0", 6) == 0))   /* eight bytes: a step of undo, no fact */
        continue;
      bytes[at + 1] ^= 0x10;
      g_assert_true (g_file_set_contents (path, bytes, (gssize) length, NULL));
      bytes[at + 1] ^= 0x10;
      n_cells++;
      found = stead_store_verify (path, NULL, &error);
      g_assert_true (found == NULL || found->len > 0);
    }
  g_test_message ("%d places hold 1899", n_cells);
  g_assert_cmpint (n_cells, >=, 2);
}

int
main (int    argc,
      char **argv)
{
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fault/damage/any", test_damage);
  g_test_add_func ("/fault/damage/signed-money", test_signed_money);
  return g_test_run ();
}
