/* fault-acts.c - what a farm can be asked to do, each to be broken off anywhere. */
#include "config.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "fault-acts.h"
#include "check-fixture.h"
#include "repo-fixture.h"
#include "store/stead-backup.h"

#define PREPARED "farm.steading"
#define MADE "made.steading"

/* Ids in the farm that make_base() makes. */
enum { FEED = 1, FLOCK = 1, ADVISOR = 2, FIRST_RECEIPT = 1, READ_LIST = 1, OPEN_LIST = 2 };

/* --- the farm ---------------------------------------------------------------- */

static GBytes *
make_base (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, PREPARED, NULL);
  g_autoptr(SteadCheckList) read_list = NULL;
  g_autoptr(SteadCheckList) open_list = NULL;
  char *bytes = NULL;
  gsize length;

  g_assert_cmpint (farm->flock, ==, FLOCK);
  g_assert_cmpint (farm->advisor, ==, ADVISOR);
  g_assert_cmpint (farm_receipt (farm, farm->feed, TODAY - 60, 40, 1899, FALSE), ==, FIRST_RECEIPT);
  read_list = check_list_saved (farm, TODAY, 0, FALSE);
  check_read_all (farm, read_list->id);
  open_list = check_list_saved (farm, TODAY, 0, FALSE);
  g_assert_cmpint (read_list->id, ==, READ_LIST);
  g_assert_cmpint (open_list->id, ==, OPEN_LIST);
  for (int i = 0; i < 30; i++)
    farm_entry (farm, TODAY - 50 + i, 20, 2, 0);
  g_assert_true (stead_store_undo (farm->store, NULL));   /* something to redo */
  g_assert_true (stead_store_save_copy (farm->store, path, NULL, NULL));
  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  return g_bytes_new_take (bytes, length);
}

SteadStore *
fault_open (const char *path)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);

  g_assert_no_error (error);
  stead_store_set_today (store, TODAY);
  store->copy_tried_on = TODAY;
  return store;
}

void
fault_took (const char *what,
            clock_t     start,
            double     *inout_worst_s)
{
  double seconds = (double) (clock () - start) / CLOCKS_PER_SEC;

  if (seconds >= FAULT_LONGEST_S)
    g_test_message ("%s took %.1f s", what, seconds);
  g_assert_cmpfloat (seconds, <, FAULT_LONGEST_S);
  if (inout_worst_s != NULL)
    *inout_worst_s = MAX (*inout_worst_s, seconds);
}

void
fault_read_all (SteadStore *store)
{
  g_autoptr(GPtrArray) flocks = stead_flock_repo_list (store, TRUE, NULL);
  g_autoptr(GPtrArray) items G_GNUC_UNUSED = stead_item_repo_list (store, NULL);
  g_autoptr(GPtrArray) lots = stead_lot_repo_list (store, TRUE, NULL);
  g_autoptr(GPtrArray) receipts G_GNUC_UNUSED = stead_receipt_repo_list (store, NULL);
  g_autoptr(GPtrArray) products G_GNUC_UNUSED = stead_product_repo_list (store, TRUE, NULL);
  g_autoptr(GPtrArray) assets G_GNUC_UNUSED = stead_asset_repo_list (store, NULL);
  g_autoptr(GPtrArray) people G_GNUC_UNUSED = stead_person_repo_list (store, NULL);
  g_autoptr(GPtrArray) lists = stead_check_repo_list (store, TODAY - 100, TODAY, NULL);
  g_autoptr(GPtrArray) holds G_GNUC_UNUSED = stead_hold_repo_open (store, NULL);
  g_autofree char *undo G_GNUC_UNUSED = stead_store_get_undo_name (store);
  g_autofree char *redo G_GNUC_UNUSED = stead_store_get_redo_name (store);

  for (guint i = 0; lists != NULL && i < lists->len; i++)
    {
      g_autoptr(SteadCheckList) list = stead_check_repo_get (store, ((const SteadCheckList *) lists->pdata[i])->id, NULL);
      g_autoptr(SteadListHoles) holes G_GNUC_UNUSED = list != NULL ? stead_check_repo_holes (store, list, NULL) : NULL;
    }
  for (guint i = 0; flocks != NULL && i < flocks->len; i++)
    {
      const SteadFlock *flock = flocks->pdata[i];
      g_autoptr(GPtrArray) entries G_GNUC_UNUSED = stead_flock_repo_page_entries (store, flock->id, 0, 100, NULL);
      g_autoptr(GPtrArray) uses G_GNUC_UNUSED = stead_lot_repo_uses (store, flock->id, TODAY - 100, TODAY, NULL);
    }
  for (guint i = 0; lots != NULL && i < lots->len; i++)
    {
      g_autoptr(GPtrArray) moves G_GNUC_UNUSED = stead_lot_repo_moves (store, ((SteadLot *) lots->pdata[i])->id, NULL);
    }
}

/* --- the acts ---------------------------------------------------------------- */

static gboolean
finish (SteadStore  *store,
        gboolean     done,
        GError     **error)
{
  if (done)
    return stead_store_commit (store, error);
  stead_store_rollback (store);
  return FALSE;
}

static gboolean
act_entry (SteadStore  *store,
           const char  *path,
           GError     **error)
{
  SteadFlockEntry entry = { .flock_id = FLOCK, .day = TODAY - 45, .eggs = 22, .feed_kg = 2.5 };

  return stead_store_begin (store, "22 eggs", error) &&
         finish (store, stead_flock_repo_save_entry (store, &entry, error), error);
}

static gboolean
act_receipt (SteadStore  *store,
             const char  *path,
             GError     **error)
{
  g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
  SteadReceiptLine line = { .item_id = FEED, .quantity_base = 40, .cost_cents = 2000, .best_by = STEAD_DAY_NONE };

  receipt->day = TODAY - 55;
  receipt->supplier = g_strdup ("Lakeside Feed & Seed");
  g_array_append_val (receipt->lines, line);
  return stead_store_begin (store, "Receipt", error) &&
         finish (store, stead_receipt_repo_save (store, receipt, error), error);
}

static gboolean
act_delete_flock (SteadStore  *store,
                  const char  *path,
                  GError     **error)
{
  return stead_store_begin (store, "Delete the flock", error) &&
         finish (store, stead_flock_repo_delete (store, FLOCK, error), error);
}

static gboolean
act_sign (SteadStore  *store,
          const char  *path,
          GError     **error)
{
  return stead_store_begin (store, "Sign", error) &&
         finish (store, stead_receipt_repo_sign (store, FIRST_RECEIPT, ADVISOR, error), error);
}

/* A list with its foods, lines, limits and stops. */
static gboolean
act_checklist (SteadStore  *store,
               const char  *path,
               GError     **error)
{
  g_autoptr(SteadCheckList) list = check_list_new (TODAY, 0, TRUE);

  return stead_store_begin (store, "A checklist", error) &&
         finish (store, stead_check_repo_save (store, list, error), error);
}

/* Eggs too cool: the reading, and what was done about it, in one step. */
static gboolean
act_check_read (SteadStore  *store,
                const char  *path,
                GError     **error)
{
  g_autoptr(SteadCheckList) list = NULL;
  g_autoptr(SteadShown) shown = g_new0 (SteadShown, 1);
  SteadDone done = { .at = EIGHT + 120, .text = (char *) "Cooked on." };

  list = stead_check_repo_get (store, OPEN_LIST, error);
  if (list == NULL)
    return FALSE;
  *shown = check_shown_f (((const SteadListLine *) list->lines->pdata[LINE_COOK])->id, EIGHT + 60, 140);
  if (!stead_store_begin (store, "A reading", error))
    return FALSE;
  if (stead_shown_repo_add (store, shown, error))
    {
      done.reading_id = shown->id;
      return finish (store, stead_done_repo_add (store, &done, error), error);
    }
  return finish (store, FALSE, error);
}

static gboolean
act_check_sign (SteadStore  *store,
                const char  *path,
                GError     **error)
{
  return stead_store_begin (store, "Sign the list", error) &&
         finish (store, stead_check_repo_sign (store, READ_LIST, ADVISOR, error), error);
}

static gboolean
act_forget (SteadStore  *store,
            const char  *path,
            GError     **error)
{
  return stead_store_begin (store, "Forget", error) &&
         finish (store, stead_person_repo_forget (store, ADVISOR, error), error);
}

static gboolean
act_undo (SteadStore  *store,
          const char  *path,
          GError     **error)
{
  return stead_store_undo (store, error);
}

static gboolean
act_redo (SteadStore  *store,
          const char  *path,
          GError     **error)
{
  return stead_store_redo (store, error);
}

static char *
beside (const char *path,
        const char *name)
{
  g_autofree char *folder = g_path_get_dirname (path);

  return g_build_filename (folder, name, NULL);
}

/* A copy by hand is whole, or it is not there. */
static gboolean
act_save_copy (SteadStore  *store,
               const char  *path,
               GError     **error)
{
  g_autofree char *copy = beside (path, MADE);

  return stead_store_save_copy (store, copy, NULL, error);
}

/* The change is made whatever becomes of the dated copy. */
static gboolean
act_dated_copy (SteadStore  *store,
                const char  *path,
                GError     **error)
{
  store->copy_tried_on = STEAD_DAY_NONE;
  stead_backup_of_day (store);
  stead_backup_wait (store);
  return act_entry (store, path, error);
}

static gboolean
act_open (SteadStore  *none,
          const char  *path,
          GError     **error)
{
  g_autoptr(SteadStore) store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, error);

  return store != NULL;
}

static gboolean
act_verify (SteadStore  *none,
            const char  *path,
            GError     **error)
{
  g_autoptr(GPtrArray) found = stead_store_verify (path, NULL, error);

  return found != NULL;
}

static gboolean
act_create (SteadStore  *none,
            const char  *path,
            GError     **error)
{
  g_autofree char *made = beside (path, MADE);
  g_autoptr(SteadStore) store = stead_store_create (made, "New Farm", error);

  return store != NULL;
}

static gboolean
act_restore (SteadStore  *none,
             const char  *path,
             GError     **error)
{
  g_autofree char *source = beside (path, "copy 2026-03-01.steading");

  return stead_store_restore (source, path, error);
}

/* The program of tomorrow. */
static const SteadSchema *
next_schema (void)
{
  static const char *steps[STEAD_SCHEMA_VERSION + 1];
  static const SteadSchema next = { steps, STEAD_SCHEMA_VERSION + 1 };

  for (int i = 0; i < STEAD_SCHEMA_VERSION; i++)
    steps[i] = stead_schema.steps[i];
  steps[STEAD_SCHEMA_VERSION] = "ALTER TABLE person ADD COLUMN nickname TEXT";
  return &next;
}

static gboolean
act_migrate (SteadStore  *none,
             const char  *path,
             GError     **error)
{
  g_autofree char *made = beside (path, MADE);
  g_autofree char *bytes = NULL;
  g_autoptr(SteadStore) store = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  g_assert_true (g_file_set_contents (made, bytes, (gssize) length, NULL));
  store = stead_store_open_as (made, STEAD_STORE_OPEN_DEFAULT, next_schema (), error);
  if (store == NULL)
    return FALSE;
  g_clear_object (&store);
  g_unlink (made);          /* of no use to the program of today */
  return TRUE;
}

const FaultAct fault_acts[] = {
  { "entry", FALSE, act_entry },
  { "receipt", FALSE, act_receipt },
  { "delete-flock", FALSE, act_delete_flock },
  { "sign", FALSE, act_sign },
  { "checklist", FALSE, act_checklist },
  { "check-read", FALSE, act_check_read },
  { "check-sign", FALSE, act_check_sign },
  { "forget", FALSE, act_forget },
  { "undo", FALSE, act_undo },
  { "redo", FALSE, act_redo },
  { "save-copy", FALSE, act_save_copy },
  { "dated-copy", FALSE, act_dated_copy },
  { "open", TRUE, act_open },
  { "verify", TRUE, act_verify },
  { "create", TRUE, act_create },
  { "restore", TRUE, act_restore },
  { "migrate", TRUE, act_migrate },
};
const gsize fault_n_acts = G_N_ELEMENTS (fault_acts);

/* --- wholly or not at all ----------------------------------------------------- */

static void
assert_sound (const char *path)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) found = stead_store_verify (path, NULL, &error);

  if (g_error_matches (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NEWER))
    {
      /* Broken off at the very end of a migration: its program takes it back. */
      g_autoptr(GPtrArray) taken_back = stead_store_verify_as (path, next_schema (), NULL, NULL);

      g_assert_true (taken_back != NULL && taken_back->len == 0);
      g_clear_error (&error);
      found = stead_store_verify (path, NULL, &error);
      /* Or it had come to its end, and nothing was there to take back. */
      if (g_error_matches (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NEWER))
        return;
    }
  g_assert_no_error (error);
  for (guint i = 0; i < found->len; i++)
    g_test_message ("%s: %s", path, (char *) found->pdata[i]);
  g_assert_cmpuint (found->len, ==, 0);
}

static char *
dump_of (const char *path)
{
  g_autoptr(SteadStore) store = fault_open (path);

  return fixture_dump (store);
}

static char *
lay_out (const char *folder,
         GBytes     *base)
{
  static const char * const names[] = { PREPARED, "copy 2026-03-01.steading" };
  gsize length;
  const char *bytes = g_bytes_get_data (base, &length);

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = g_build_filename (folder, names[i], NULL);

      g_assert_true (g_file_set_contents (path, bytes, (gssize) length, NULL));
    }
  return g_build_filename (folder, PREPARED, NULL);
}

/* The facts after the act, undisturbed. */
static char *
expected_after (const FaultAct *act,
                GBytes         *base)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = lay_out (folder, base);
  g_autoptr(SteadStore) store = act->is_alone ? NULL : fault_open (path);
  g_autoptr(GError) error = NULL;

  g_assert_true (act->act (store, path, &error));
  g_assert_no_error (error);
  g_clear_object (&store);
  return dump_of (path);
}

FaultPlan *
fault_plan_new (const FaultAct *act)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  FaultPlan *plan = g_new0 (FaultPlan, 1);
  g_autofree char *path = NULL;

  plan->act = act;
  plan->base = make_base ();
  path = lay_out (folder, plan->base);
  plan->before = dump_of (path);
  plan->after = expected_after (act, plan->base);
  return plan;
}

void
fault_plan_free (FaultPlan *plan)
{
  g_bytes_unref (plan->base);
  g_free (plan->before);
  g_free (plan->after);
  g_free (plan);
}

/* A journal that no longer counts may stay beside its farm: the farm is opened
 * over it here, and found sound.  Nothing else stays. */
static gboolean
is_spent_journal (const char *path)
{
  g_autofree char *farm = g_strndup (path, strlen (path) - strlen ("-journal"));

  if (!g_str_has_suffix (path, ".steading-journal") || !g_file_test (farm, G_FILE_TEST_EXISTS))
    return FALSE;
  assert_sound (farm);
  return TRUE;
}

/* No half of a copy or of a new farm stays. */
static void
assert_no_litter (const char *folder)
{
  g_autoptr(GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      if (g_file_test (path, G_FILE_TEST_IS_DIR))
        assert_no_litter (path);
      else if (g_str_has_suffix (name, ".steading"))
        assert_sound (path);
      else if (!is_spent_journal (path))
        g_error ("%s was left behind", name);
    }
}

static void
assert_told (const GError *error)
{
  g_assert_true (error != NULL && error->domain == STEAD_STORE_ERROR);
  switch (error->code)
    {
    case STEAD_STORE_ERROR_FULL:
    case STEAD_STORE_ERROR_IO:
    case STEAD_STORE_ERROR_READ_ONLY:
    case STEAD_STORE_ERROR_BUSY:
      return;
    default:
      g_error ("code %d: %s", error->code, error->message);
    }
}

gboolean
fault_round (const FaultPlan *plan,
             void           (*arm) (int n),
             gboolean       (*disarm) (void),
             int              n)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = lay_out (folder, plan->base);
  g_autofree char *here = NULL;
  g_autofree char *there = NULL;
  g_autoptr(SteadStore) store = plan->act->is_alone ? NULL : fault_open (path);
  g_autoptr(GError) error = NULL;
  gboolean done, failed;

  arm (n);
  done = plan->act->act (store, path, &error);
  failed = disarm ();
  if (!done)
    assert_told (error);
  g_assert_true (done || failed);

  if (store != NULL)
    {
      here = fixture_dump (store);
      g_assert_cmpstr (here, ==, done ? plan->after : plan->before);
    }
  g_clear_object (&store);
  there = dump_of (path);
  g_assert_cmpstr (there, ==, done ? plan->after : plan->before);
  assert_no_litter (folder);
  return failed;
}

gboolean
fault_power_round (const FaultPlan *plan,
                   void           (*cut) (int n),
                   gboolean       (*lose) (void),
                   int              n)
{
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autofree char *path = lay_out (folder, plan->base);
  g_autofree char *there = NULL;
  g_autoptr(SteadStore) store = plan->act->is_alone ? NULL : fault_open (path);
  g_autoptr(GError) error = NULL;
  gboolean done, went;

  cut (n);
  done = plan->act->act (store, path, &error);
  g_clear_object (&store);
  went = lose ();
  g_assert_true (done || went);
  there = dump_of (path);
  if (done || !g_str_equal (there, plan->before))
    g_assert_cmpstr (there, ==, plan->after);
  assert_no_litter (folder);
  return went;
}
