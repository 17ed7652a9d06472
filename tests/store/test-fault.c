/* test-fault.c - the disk fails at every write in turn; nothing half done stays.
 *
 * SQLite writes through a table of system calls.  The nth write is made to fail,
 * once and from there on, until an action goes through untouched: each time the
 * farm must be wholly as before the action or wholly as after it.
 */
#include "config.h"

#include <errno.h>
#include <math.h>
#include <unistd.h>

#include "repo-fixture.h"

typedef ssize_t (*WriteCall) (int fd, const void *data, size_t size, off_t at);

static WriteCall real_write;
static int countdown;      /* writes until the next one fails; below 0: none does */
static gboolean sticky;    /* all later ones fail too */
static gboolean failed;

static ssize_t
failing_write (int         fd,
               const void *data,
               size_t      size,
               off_t       at)
{
  if (countdown == 0 || (failed && sticky))
    {
      countdown = -1;
      failed = TRUE;
      errno = ENOSPC;
      return -1;
    }
  if (countdown > 0)
    countdown--;
  return real_write (fd, data, size, at);
}

static void
install (gboolean on)
{
  sqlite3_vfs *vfs = sqlite3_vfs_find (NULL);

  if (real_write == NULL)
    real_write = (WriteCall) vfs->xGetSystemCall (vfs, "pwrite64");
  if (real_write == NULL)
    real_write = (WriteCall) vfs->xGetSystemCall (vfs, "pwrite");
  g_assert_nonnull (real_write);
  countdown = -1;
  failed = FALSE;
  for (int i = 0; i < 2; i++)
    vfs->xSetSystemCall (vfs, i == 0 ? "pwrite64" : "pwrite", on ? (sqlite3_syscall_ptr) failing_write : NULL);
}

/* --- the actions ------------------------------------------------------------------- */

typedef gboolean (*Deed) (Farm *farm, GError **error);

static gboolean
enter_eggs (Farm    *farm,
            GError **error)
{
  SteadFlockEntry entry = { .flock_id = farm->flock, .day = TODAY - 40, .eggs = 20, .feed_kg = 3 };

  return stead_flock_repo_save_entry (farm->store, &entry, error);
}

static gboolean
import (Farm    *farm,
        GError **error)
{
  g_autoptr(GPtrArray) entries = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_flock_entry_free);

  for (int i = 0; i < 90; i++)
    {
      SteadFlockEntry *entry = g_new0 (SteadFlockEntry, 1);

      *entry = (SteadFlockEntry) { .flock_id = farm->flock, .day = TODAY - i, .eggs = 20, .feed_kg = 1 };
      g_ptr_array_add (entries, entry);
    }
  return stead_flock_repo_add_entries (farm->store, entries, NULL, NULL, NULL, error);
}

static gboolean
add_receipt (Farm    *farm,
             GError **error)
{
  g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
  SteadReceiptLine line = { .item_id = farm->feed, .quantity_base = 4, .cost_cents = 400,
                            .best_by = STEAD_DAY_NONE };

  receipt->day = TODAY - 61;
  receipt->supplier = g_strdup ("Lakeside Feed & Seed");
  g_array_append_val (receipt->lines, line);
  return stead_receipt_repo_save (farm->store, receipt, error);
}

static gboolean
delete_receipt (Farm    *farm,
                GError **error)
{
  return stead_receipt_repo_delete (farm->store, 1, error);
}

static gboolean
sign_receipt (Farm    *farm,
              GError **error)
{
  return stead_receipt_repo_sign (farm->store, 2, farm->advisor, error);
}

static gboolean
use_straw (Farm    *farm,
           GError **error)
{
  return stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY, 3, 0, error);
}

static gboolean
delete_flock (Farm    *farm,
              GError **error)
{
  return stead_flock_repo_delete (farm->store, farm->flock, error);
}

static gboolean
forget (Farm    *farm,
        GError **error)
{
  return stead_person_repo_forget (farm->store, farm->student, error);
}

static const struct { const char *name; Deed deed; } deeds[] = {
  { "enter-eggs", enter_eggs }, { "import", import }, { "add-receipt", add_receipt },
  { "delete-receipt", delete_receipt }, { "sign-receipt", sign_receipt }, { "use-straw", use_straw },
  { "delete-flock", delete_flock }, { "forget", forget },
};

/* --- the loop ------------------------------------------------------------------------ */

static char *
make_sample (const char *folder)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  char *path = g_build_filename (folder, "sample.steading", NULL);

  farm_receipt (farm, farm->feed, TODAY - 60, 50, 5000, FALSE);
  farm_receipt (farm, farm->straw, TODAY - 60, 50, 5000, FALSE);
  for (int i = 1; i < 30; i++)
    farm_entry (farm, TODAY - i, 20, 3, 0);
  g_assert_true (stead_store_save_copy (farm->store, path, NULL, &error));
  g_assert_no_error (error);
  return path;
}

static void
copy (const char *from,
      const char *to)
{
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (from, &bytes, &length, NULL));
  g_assert_true (g_file_set_contents (to, bytes, (gssize) length, NULL));
}

static Farm *
farm_at (const char *path)
{
  g_autoptr(GError) error = NULL;
  Farm *farm = g_new0 (Farm, 1);

  farm->store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);
  g_assert_no_error (error);
  stead_store_set_today (farm->store, TODAY);
  farm->feed = 1;
  farm->straw = 2;
  farm->student = 1;
  farm->advisor = 2;
  farm->flock = 1;
  return farm;
}

static gboolean
act (Farm    *farm,
     Deed     deed,
     GError **error)
{
  if (!stead_store_begin (farm->store, "deed", error))
    return FALSE;
  if (deed (farm, error))
    return stead_store_commit (farm->store, error);
  stead_store_rollback (farm->store);
  return FALSE;
}

static char *
dump_at (const char *path)
{
  g_autoptr(Farm) farm = farm_at (path);

  farm_assert_ledger (farm);
  return fixture_dump (farm->store);
}

static void
do_untouched (const char *path,
              Deed        deed)
{
  g_autoptr(Farm) farm = farm_at (path);
  g_autoptr(GError) error = NULL;

  g_assert_true (act (farm, deed, &error));
  g_assert_no_error (error);
}

/* Returns: whether the nth write was reached; the action may have gone through all the
 * same, when only the dated copy could not be made */
static gboolean
fail_nth (const char *sample,
          const char *path,
          Deed        deed,
          int         n,
          const char *before,
          const char *after)
{
  g_autoptr(Farm) farm = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *found = NULL;
  gboolean done, reached;

  copy (sample, path);
  farm = farm_at (path);
  install (TRUE);
  countdown = n;
  done = act (farm, deed, &error);
  reached = failed;
  install (FALSE);
  g_clear_pointer (&farm, farm_free);
  found = dump_at (path);
  if (done)
    g_assert_cmpstr (found, ==, after);
  else
    {
      g_assert_true (reached);
      g_assert_nonnull (error);
      g_assert_true (error->domain == STEAD_STORE_ERROR);
      g_assert_cmpstr (found, ==, before);
    }
  return reached;
}

static void
test_deed (gconstpointer data)
{
  Deed deed = deeds[GPOINTER_TO_SIZE (data)].deed;
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *sample = make_sample (folder);
  g_autofree char *path = g_build_filename (folder, "farm.steading", NULL);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  gboolean each = g_getenv ("STEAD_ROUNDS") != NULL;
  int failures = 0;

  copy (sample, path);
  before = dump_at (path);
  do_untouched (path, deed);
  after = dump_at (path);
  g_assert_cmpstr (before, !=, after);
  /* Each of the first writes; of the many after them, fewer and fewer, unless STEAD_ROUNDS asks for all. */
  for (int kind = 0; kind < 2; kind++)
    {
      sticky = kind == 1;
      for (int n = 0; fail_nth (sample, path, deed, n, before, after); n += each ? 1 : 1 + n / 10)
        failures++;
    }
  g_test_message ("%d failing writes", failures);
  g_assert_cmpint (failures, >, 10);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  if (access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", TRUE);   /* hundreds of farms need not wear out the disk */
  for (gsize i = 0; i < G_N_ELEMENTS (deeds); i++)
    {
      g_autofree char *path = g_strconcat ("/store/fault/", deeds[i].name, NULL);

      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_deed);
    }
  return g_test_run ();
}
