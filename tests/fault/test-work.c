/* test-work.c - the program is killed amid work of every kind, and each change that
 * was said to be kept is there, none by half.
 *
 * A child works at random on a farm: entries, taps of a tally, imports, receipts,
 * undo and redo, forgetting people, going back to a copy, bringing an old farm up to
 * date.  It says what it is about to do, and what the farm is like once that is kept.
 * The parent kills it, opens the farm, and compares.  What was under way is there
 * wholly, which undo proves, or not at all.  STEAD_ROUNDS sets how often.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "fault-acts.h"
#include "repo-fixture.h"
#include "store/stead-sale-tally.h"
#include "store/stead-store-internal.h"

#define ROUNDS 100
#define SHORTEST_US 2000
#define LONGEST_US 120000
#define DIGEST 65
#define IMPORTED 30

typedef enum { OPEN, ENTRY, TAP, IMPORT, RECEIPT, UNDO, REDO, PERSON, FORGET, RESTORE, MIGRATE, N_KINDS } Kind;

static const char * const names[N_KINDS] = {
  "open", "entry", "tap", "import", "receipt", "undo", "redo", "person", "forget", "restore", "migrate",
};

/* What the child says, whole or not at all (it is shorter than PIPE_BUF). */
typedef struct
{
  Kind     kind;
  gboolean is_kept;        /* else: about to be done */
  gboolean was_done;       /* not refused */
  gint64   change_no;
  char     digest[DIGEST];
} Word;

typedef struct
{
  SteadStore *store;
  char       *folder, *path, *copy, *old, *sample;
  GRand      *rand;
} Work;

static void
digest_of (SteadStore *store,
           char       *out)
{
  g_autofree char *dump = fixture_dump (store);
  g_autofree char *sum = g_compute_checksum_for_string (G_CHECKSUM_SHA256, dump, -1);

  g_strlcpy (out, sum, DIGEST);
}

/* --- the child ------------------------------------------------------------------- */

static gboolean
finish (SteadStore *store,
        gboolean    done)
{
  if (done)
    return stead_store_commit (store, NULL);
  stead_store_rollback (store);
  return FALSE;
}

static SteadFlockEntry *
entry_new (Work *work)
{
  SteadFlockEntry *entry = g_new0 (SteadFlockEntry, 1);

  entry->flock_id = 1;
  entry->day = TODAY - g_rand_int_range (work->rand, 1, 90);
  entry->eggs = g_rand_int_range (work->rand, 0, 30);
  entry->feed_kg = 0.5;
  return entry;
}

static gboolean
do_entry (Work *work)
{
  g_autofree SteadFlockEntry *entry = entry_new (work);

  return stead_store_begin (work->store, "entry", NULL) &&
         finish (work->store, stead_flock_repo_save_entry (work->store, entry, NULL));
}

static gboolean
do_import (Work *work)
{
  g_autoptr(GPtrArray) entries = g_ptr_array_new_with_free_func (g_free);

  for (int i = 0; i < IMPORTED; i++)
    g_ptr_array_add (entries, entry_new (work));
  return stead_store_begin (work->store, "import", NULL) &&
         finish (work->store, stead_flock_repo_add_entries (work->store, entries, NULL, NULL, NULL, NULL));
}

static gboolean
do_tap (Work *work)
{
  gint64 line = fixture_number (work->store, "SELECT min (id) FROM sale_line");

  return stead_store_begin (work->store, "tap", NULL) &&
         finish (work->store, stead_sale_tally_add (work->store, line, STEAD_TAP_SOLD, 1,
                                                    stead_sale_time (TODAY, 600), NULL, NULL));
}

static gboolean
do_receipt (Work *work)
{
  g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
  SteadReceiptLine line = { .item_id = 1, .quantity_base = 40, .cost_cents = g_rand_int_range (work->rand, 1, 9999),
                            .best_by = STEAD_DAY_NONE };

  receipt->day = TODAY - g_rand_int_range (work->rand, 1, 60);
  receipt->supplier = g_strdup ("Lakeside Feed & Seed");
  g_array_append_val (receipt->lines, line);
  return stead_store_begin (work->store, "receipt", NULL) &&
         finish (work->store, stead_receipt_repo_save (work->store, receipt, NULL));
}

static gboolean
do_person (Work *work)
{
  g_autofree char *name = g_strdup_printf ("Zora %08x", g_rand_int (work->rand));
  SteadPerson person = { .name = name, .role = STEAD_PERSON_STUDENT, .left_on = STEAD_DAY_NONE };

  return stead_store_begin (work->store, "person", NULL) &&
         finish (work->store, stead_person_repo_save (work->store, &person, NULL));
}

static gboolean
do_forget (Work *work)
{
  gint64 id = fixture_number (work->store, "SELECT coalesce (max (id), 0) FROM person WHERE name LIKE 'Zora %'");

  return id > 0 && stead_store_begin (work->store, "forget", NULL) &&
         finish (work->store, stead_person_repo_forget (work->store, id, NULL));
}

static gboolean
do_restore (Work *work)
{
  gboolean done;

  g_clear_object (&work->store);
  done = stead_store_restore (work->copy, work->path, NULL);
  work->store = fault_open (work->path);
  return done;
}

static gboolean
do_migrate (Work *work)
{
  g_autofree char *bytes = NULL;
  g_autoptr(SteadStore) store = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (work->sample, &bytes, &length, NULL));
  g_assert_true (g_file_set_contents (work->old, bytes, (gssize) length, NULL));
  store = stead_store_open (work->old, STEAD_STORE_OPEN_DEFAULT, NULL);
  return store != NULL;
}

static gboolean
do_one (Work *work,
        Kind  kind)
{
  switch (kind)
    {
    case ENTRY:   return do_entry (work);
    case TAP:     return do_tap (work);
    case IMPORT:  return do_import (work);
    case RECEIPT: return do_receipt (work);
    case UNDO:    return stead_store_undo (work->store, NULL);
    case REDO:    return stead_store_redo (work->store, NULL);
    case PERSON:  return do_person (work);
    case FORGET:  return do_forget (work);
    case RESTORE: return do_restore (work);
    case MIGRATE: return do_migrate (work);
    case OPEN:
    case N_KINDS:
    default:      return TRUE;
    }
}

static void
say (Work     *work,
     Kind      kind,
     gboolean  is_kept,
     gboolean  was_done)
{
  Word word;

  memset (&word, 0, sizeof word);
  word.kind = kind;
  word.is_kept = is_kept;
  word.was_done = was_done;
  if (is_kept)
    {
      word.change_no = stead_store_get_change_no (work->store);
      digest_of (work->store, word.digest);
    }
  g_assert_cmpint (write (STDOUT_FILENO, &word, sizeof word), ==, sizeof word);
}

/* Those that take long come seldom. */
static Kind
choose (GRand *rand)
{
  static const Kind often[] = { ENTRY, TAP, TAP, IMPORT, RECEIPT, UNDO, UNDO, REDO, PERSON, FORGET };

  if (g_rand_int_range (rand, 0, 8) > 0)
    return often[g_rand_int_range (rand, 0, G_N_ELEMENTS (often))];
  return g_rand_boolean (rand) ? RESTORE : MIGRATE;
}

static void
work_init (Work       *work,
           const char *folder)
{
  work->folder = g_strdup (folder);
  work->path = g_build_filename (folder, "farm.steading", NULL);
  work->copy = g_build_filename (folder, "copy.steading", NULL);
  work->old = g_build_filename (folder, "old.steading", NULL);
  work->sample = g_build_filename (folder, "sample.steading", NULL);
}

G_GNUC_NORETURN static void
be_child (const char *folder,
          const char *seed,
          Kind        kind)
{
  Work work = { .rand = g_rand_new_with_seed ((guint32) g_ascii_strtoull (seed, NULL, 10)) };

  work_init (&work, folder);
  work.store = fault_open (work.path);
  if (g_rand_boolean (work.rand))
    work.store->copy_tried_on = STEAD_DAY_NONE;   /* the dated copy is made on the way */
  say (&work, OPEN, TRUE, TRUE);
  while (TRUE)
    {
      say (&work, kind, FALSE, FALSE);
      say (&work, kind, TRUE, do_one (&work, kind));
      kind = choose (work.rand);
    }
}

/* --- the parent --------------------------------------------------------------------- */

/* What the parent knows of the farm, from the child and from its own look. */
typedef struct
{
  Work  work;
  char  digest[DIGEST];       /* as it is known to be kept */
  char  copy_digest[DIGEST];
  Kind  first;                /* what the child begins with; the last two take longer */
  Kind  under_way;            /* OPEN: nothing */
  gint64 change_no;
  gboolean is_migrated;       /* the old farm was touched */
  int   n_lives;
  int   n_done[N_KINDS];
  int   n_cut[N_KINDS];       /* under way when the child was killed, and kept */
} Parent;

static void
make_farm (Work *work)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadSale) sale = stead_sale_new ();
  g_autoptr(SteadProduct) product = stead_product_new ();
  SteadSaleGood *good = stead_sale_good_new ();
  g_autofree char *sample = g_test_build_filename (G_TEST_DIST, "fixtures", "version-1.steading", NULL);
  g_autofree char *bytes = NULL;
  gsize length;

  farm_receipt (farm, farm->feed, TODAY - 80, 400, 18990, FALSE);
  product->name = g_strdup ("Sauce");
  product->pack = STEAD_PACK_JAR;
  product->base_per_unit = 1;
  ACT (farm, stead_product_repo_save (farm->store, product, err));
  good->product_id = product->id;
  good->price_cents = 500;
  good->planned = 100000;
  g_ptr_array_add (sale->goods, good);
  sale->name = g_strdup ("Market");
  sale->day = TODAY;
  sale->opens_min = 8 * 60;
  sale->closes_min = 14 * 60;
  ACT (farm, stead_sale_repo_save (farm->store, sale, NULL, err));
  g_assert_true (stead_store_save_copy (farm->store, work->path, NULL, NULL));
  g_assert_true (stead_store_save_copy (farm->store, work->copy, NULL, NULL));
  g_assert_true (g_file_get_contents (sample, &bytes, &length, NULL));
  g_assert_true (g_file_set_contents (work->sample, bytes, (gssize) length, NULL));
}

static GPid
start_child (Parent *parent,
             int    *out_fd)
{
  g_autofree char *self = g_file_read_link ("/proc/self/exe", NULL);
  g_autofree char *seed = g_strdup_printf ("%d", g_test_rand_int_range (0, G_MAXINT32));
  /* Each kind is the first of a life in turn. */
  g_autofree char *first = NULL;
  const char *argv[6] = { self, "--child", parent->work.folder, seed, NULL, NULL };
  g_autoptr(GError) error = NULL;
  GPid pid = 0;

  parent->first = ENTRY + (Kind) parent->n_lives++ % (N_KINDS - ENTRY);
  first = g_strdup_printf ("%d", (int) parent->first);
  argv[4] = first;
  g_spawn_async_with_pipes (NULL, (char **) argv, NULL, G_SPAWN_DO_NOT_REAP_CHILD, NULL, NULL, &pid,
                            NULL, out_fd, NULL, &error);
  g_assert_no_error (error);
  return pid;
}

static void
hear (Parent     *parent,
      const Word *word)
{
  parent->under_way = word->is_kept ? OPEN : word->kind;
  parent->is_migrated |= word->kind == MIGRATE;
  if (!word->is_kept)
    return;
  if (word->kind == OPEN)
    g_assert_cmpstr (word->digest, ==, parent->digest);   /* nothing is different after opening */
  parent->n_done[word->kind] += word->was_done;
  parent->change_no = word->change_no;
  g_strlcpy (parent->digest, word->digest, DIGEST);
}

static void
kill_once (Parent *parent)
{
  int fd, status;
  GPid pid = start_child (parent, &fd);
  Word word;

  parent->under_way = OPEN;
  if (g_test_rand_int_range (0, 10) > 0)   /* now and then while it opens */
    {
      g_assert_cmpint (read (fd, &word, sizeof word), ==, sizeof word);
      hear (parent, &word);
    }
  g_usleep ((gulong) g_test_rand_int_range (SHORTEST_US, LONGEST_US) * (parent->first >= RESTORE ? 5 : 1));
  kill (pid, SIGKILL);
  g_assert_cmpint (waitpid (pid, &status, 0), ==, pid);
  g_assert_true (WIFSIGNALED (status) && WTERMSIG (status) == SIGKILL);   /* and not by a failed assertion */
  while (read (fd, &word, sizeof word) == sizeof word)
    hear (parent, &word);
  close (fd);
}

static void
assert_sound (const char *path)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) found = stead_store_verify (path, NULL, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < found->len; i++)
    g_test_message ("%s: %s", path, (char *) found->pdata[i]);
  g_assert_cmpuint (found->len, ==, 0);
}

/* What was under way was kept as a whole: taken back, the farm is as before it. */
static void
prove_whole (Parent     *parent,
             SteadStore *store)
{
  char digest[DIGEST];

  g_test_message ("%s was kept at the last moment", names[parent->under_way]);
  parent->n_cut[parent->under_way]++;
  digest_of (store, digest);
  if (parent->under_way == RESTORE)
    {
      g_assert_cmpstr (digest, ==, parent->copy_digest);
      return;
    }
  g_assert_cmpint (parent->under_way, !=, OPEN);
  g_assert_cmpint (parent->under_way, !=, MIGRATE);
  g_assert_cmpint (stead_store_get_change_no (store), ==, parent->change_no + 1);
  if (parent->under_way == FORGET)
    return;   /* no undo brings a name back */
  if (parent->under_way == UNDO)
    g_assert_true (stead_store_redo (store, NULL));
  else
    g_assert_true (stead_store_undo (store, NULL));
  digest_of (store, digest);
  g_assert_cmpstr (digest, ==, parent->digest);
}

/* Farms that going back set aside, copies before a migration: sound, and out of the way. */
static void
tidy (Parent *parent)
{
  g_autoptr(GDir) dir = g_dir_open (parent->work.folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (parent->work.folder, name, NULL);

      if (strstr (name, " before ") == NULL && !g_str_has_suffix (name, ".part"))
        continue;
      if (g_str_has_suffix (name, ".steading") && g_test_rand_int_range (0, 5) == 0)
        assert_sound (path);
      g_unlink (path);
    }
}

static void
look (Parent *parent)
{
  g_autoptr(SteadStore) store = fault_open (parent->work.path);
  char digest[DIGEST];

  digest_of (store, digest);
  if (!g_str_equal (digest, parent->digest))
    prove_whole (parent, store);
  digest_of (store, parent->digest);
  parent->change_no = stead_store_get_change_no (store);
  g_clear_object (&store);
  assert_sound (parent->work.path);
  if (parent->is_migrated && g_file_test (parent->work.old, G_FILE_TEST_EXISTS))
    assert_sound (parent->work.old);
  parent->is_migrated = FALSE;
  tidy (parent);
}

static void
test_work (void)
{
  const char *wished = g_getenv ("STEAD_ROUNDS");
  int rounds = wished != NULL ? atoi (wished) : ROUNDS;
  g_autoptr(FixtureFolder) folder = fixture_folder ();
  g_autoptr(GString) told = g_string_new (NULL);
  g_autoptr(SteadStore) store = NULL;
  Parent parent = { 0 };
  int all = 0;

  work_init (&parent.work, folder);
  make_farm (&parent.work);
  store = fault_open (parent.work.copy);
  digest_of (store, parent.copy_digest);
  g_strlcpy (parent.digest, parent.copy_digest, DIGEST);
  g_clear_object (&store);
  for (int i = 0; i < rounds; i++)
    {
      kill_once (&parent);
      look (&parent);
    }
  for (int kind = ENTRY; kind < N_KINDS; kind++)
    {
      g_string_append_printf (told, " %s %d+%d", names[kind], parent.n_done[kind], parent.n_cut[kind]);
      all += parent.n_done[kind] + parent.n_cut[kind];
    }
  g_test_message ("%d kills; said and kept + kept unsaid:%s", rounds, told->str);
  g_assert_cmpint (all, >, rounds / 4);
}

int
main (int    argc,
      char **argv)
{
  if (argc == 5 && strcmp (argv[1], "--child") == 0)
    be_child (argv[2], argv[3], (Kind) atoi (argv[4]));
  if (g_access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", TRUE);   /* what a kill leaves behind is the same there, and sooner */
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fault/every-work/killed-at-any-moment", test_work);
  return g_test_run ();
}
