/* test-batch-repo.c - what all batches share: days, plan, notes with pictures, treatments. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "repo-fixture.h"
#include "store/stead-batch-private.h"

/* --- batches ------------------------------------------------------------------ */

static void
test_list (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) all = NULL;
  g_autoptr(GPtrArray) open = NULL;
  g_autoptr(SteadBatch) copy = NULL;
  SteadBatch crop = { .kind = STEAD_BATCH_CROP, .name = g_strdup (" Tomatoes "), .started_on = TODAY - 30,
                      .ended_on = STEAD_DAY_NONE, .care_minutes_day = 12.5, .note = g_strdup ("Bay 2") };
  gint64 first = farm_fish (farm, "Catfish 1", 50);

  farm_fish (farm, "Catfish 2", 40);
  ACT (farm, stead_batch_write (farm->store, &crop, err));
  ACT (farm, stead_batch_repo_end (farm->store, first, TODAY - 1, err));
  all = stead_batch_repo_list (farm->store, TRUE, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (all->len, ==, 4);
  g_assert_cmpstr (((SteadBatch *) all->pdata[0])->name, ==, "Hens 1");
  g_assert_cmpstr (((SteadBatch *) all->pdata[1])->name, ==, "Catfish 2");
  g_assert_cmpstr (((SteadBatch *) all->pdata[2])->name, ==, "Catfish 1");
  g_assert_cmpint (((SteadBatch *) all->pdata[2])->ended_on, ==, TODAY - 1);
  g_assert_cmpint (((SteadBatch *) all->pdata[2])->kind, ==, STEAD_BATCH_FISH);
  open = stead_batch_repo_list (farm->store, FALSE, &error);
  g_assert_cmpuint (open->len, ==, 3);
  copy = stead_batch_copy (open->pdata[2]);
  g_assert_cmpstr (copy->name, ==, "Tomatoes");
  g_assert_cmpstr (copy->note, ==, "Bay 2");
  g_assert_cmpint (copy->kind, ==, STEAD_BATCH_CROP);
  g_assert_cmpfloat (copy->care_minutes_day, ==, 12.5);
  g_assert_cmpint (copy->feed_item_id, ==, 0);
  stead_batch_clear (&crop);
  farm_assert_undo (farm);
}

static void
test_check (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadBatch batch = { .kind = STEAD_BATCH_CROP, .name = (char *) "Beans", .started_on = TODAY - 30,
                       .ended_on = STEAD_DAY_NONE };

  ACT (farm, stead_batch_check (farm->store, &batch, err));
  batch.name = (char *) "Hens 1";
  INVALID (farm, stead_batch_check (farm->store, &batch, err), "taken");
  batch.name = (char *) "Beans";
  batch.started_on = STEAD_DAY_NONE;
  INVALID (farm, stead_batch_check (farm->store, &batch, err), "the day it began");
  batch.started_on = TODAY + 1;
  INVALID (farm, stead_batch_check (farm->store, &batch, err), "still to come");
  batch.started_on = TODAY - 5;
  batch.ended_on = TODAY - 6;
  INVALID (farm, stead_batch_check (farm->store, &batch, err), "end before it began");
  batch.ended_on = TODAY + 1;
  INVALID (farm, stead_batch_check (farm->store, &batch, err), "still to come");
  batch.ended_on = TODAY;
  batch.care_minutes_day = NAN;
  INVALID (farm, stead_batch_check (farm->store, &batch, err), "minutes of care");
  batch.care_minutes_day = 0;
  batch.feed_item_id = farm->carton;
  INVALID (farm, stead_batch_check (farm->store, &batch, err), "not weighed");
}

/* An end must not leave what was written down outside; it can be taken back. */
static void
test_end (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadBatch) batch = NULL;

  farm_entry (farm, TODAY - 3, 20, 3, 0);
  INVALID (farm, stead_batch_repo_end (farm->store, farm->flock, TODAY - 4, err), "cannot end before");
  INVALID (farm, stead_batch_repo_end (farm->store, farm->flock, TODAY + 1, err), "still to come");
  ACT (farm, stead_batch_repo_end (farm->store, farm->flock, TODAY - 3, err));
  farm_harvest (farm, farm->flock, farm_item (farm, "Eggs", STEAD_ITEM_PRODUCE, "ea"), TODAY - 3, 30, 30, 500);
  ACT (farm, stead_batch_repo_end (farm->store, farm->flock, STEAD_DAY_NONE, err));
  batch = stead_batch_repo_get (farm->store, farm->flock, &error);
  g_assert_no_error (error);
  g_assert_cmpint (batch->ended_on, ==, STEAD_DAY_NONE);
  batch->started_on = TODAY - 2;
  INVALID (farm, stead_batch_check (farm->store, batch, err), "cannot begin after");
  REFUSE (farm, stead_batch_repo_end (farm->store, 99, TODAY, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  farm_assert_undo (farm);
}

static void
test_losses (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) losses = NULL;
  const struct { int days_ago, deaths, culled; const char *reason; } lost[] = {
    { 50, 1, 0, "Fox" }, { 40, 0, 2, "Broody" }, { 30, 2, 0, " fox " }, { 20, 1, 0, NULL }, { 5, 0, 0, NULL },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (lost); i++)
    {
      SteadFlockEntry entry = { .flock_id = farm->flock, .day = TODAY - lost[i].days_ago, .eggs = 10, .feed_kg = NAN,
                                .deaths = lost[i].deaths, .culled = lost[i].culled, .reason = (char *) lost[i].reason };

      ACT (farm, stead_flock_repo_save_entry (farm->store, &entry, err));
    }
  losses = stead_batch_repo_losses (farm->store, farm->flock, TODAY - 60, TODAY, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (losses->len, ==, 3);
  g_assert_cmpint (((SteadLoss *) losses->pdata[0])->n, ==, 3);
  g_assert_cmpstr (((SteadLoss *) losses->pdata[0])->reason, ==, "Fox");
  g_assert_cmpint (((SteadLoss *) losses->pdata[1])->n, ==, 2);
  g_assert_cmpstr (((SteadLoss *) losses->pdata[1])->reason, ==, "Broody");
  g_assert_cmpint (((SteadLoss *) losses->pdata[2])->n, ==, 1);
  g_assert_null (((SteadLoss *) losses->pdata[2])->reason);
  g_clear_pointer (&losses, g_ptr_array_unref);
  losses = stead_batch_repo_losses (farm->store, farm->flock, TODAY - 45, TODAY - 25, &error);
  g_assert_cmpuint (losses->len, ==, 2);
}

/* --- the plan ------------------------------------------------------------------- */

static void
test_plan (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  SteadBatchPlan plan, read;

  g_assert_true (stead_batch_repo_plan (farm->store, farm->flock, &read, &error));
  g_assert_true (isnan (read.output_base) && isnan (read.lost_frac));
  g_assert_cmpint (read.ends_on, ==, STEAD_DAY_NONE);
  stead_batch_plan_init (&plan);
  plan.output_base = 7500;
  plan.feed_cents_kg = 83.75;
  plan.lost_frac = 0.06;
  plan.ends_on = TODAY + 200;
  ACT (farm, stead_batch_repo_set_plan (farm->store, farm->flock, &plan, err));
  plan.output_base = NAN;
  plan.price_cents = 37.5;
  ACT (farm, stead_batch_repo_set_plan (farm->store, farm->flock, &plan, err));
  g_assert_true (stead_batch_repo_plan (farm->store, farm->flock, &read, &error));
  g_assert_no_error (error);
  g_assert_true (isnan (read.output_base) && isnan (read.other_cents) && isnan (read.feed_kg));
  g_assert_cmpfloat (read.price_cents, ==, 37.5);
  g_assert_cmpfloat (read.feed_cents_kg, ==, 83.75);
  g_assert_cmpfloat (read.lost_frac, ==, 0.06);
  g_assert_cmpint (read.ends_on, ==, TODAY + 200);
  farm_assert_undo (farm);
}

static void
test_plan_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadBatchPlan plan;

  stead_batch_plan_init (&plan);
  plan.lost_frac = 1.01;
  INVALID (farm, stead_batch_repo_set_plan (farm->store, farm->flock, &plan, err), "share");
  stead_batch_plan_init (&plan);
  plan.output_base = -1;
  INVALID (farm, stead_batch_repo_set_plan (farm->store, farm->flock, &plan, err), "output");
  stead_batch_plan_init (&plan);
  plan.feed_kg = INFINITY;
  INVALID (farm, stead_batch_repo_set_plan (farm->store, farm->flock, &plan, err), "feed");
  stead_batch_plan_init (&plan);
  plan.other_cents = -1;
  INVALID (farm, stead_batch_repo_set_plan (farm->store, farm->flock, &plan, err), "money");
  stead_batch_plan_init (&plan);
  plan.care_minutes_day = 1441;
  INVALID (farm, stead_batch_repo_set_plan (farm->store, farm->flock, &plan, err), "minutes");
  stead_batch_plan_init (&plan);
  plan.ends_on = TODAY - 101;
  INVALID (farm, stead_batch_repo_set_plan (farm->store, farm->flock, &plan, err), "before the batch began");
  REFUSE (farm, stead_batch_repo_set_plan (farm->store, 99, &plan, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
}

/* --- notes and pictures --------------------------------------------------------- */

static gint64 picture_id;

static gboolean
add_picture (SteadStore  *store,
             const char  *text,
             int          width,
             GError     **error)
{
  g_autoptr(GBytes) jpeg = g_bytes_new (text, strlen (text));

  picture_id = stead_picture_repo_add (store, jpeg, width, 30, error);
  return picture_id != 0;
}

static gboolean
add_large (SteadStore  *store,
           GError     **error)
{
  g_autofree char *text = g_strnfill (1000001, 'x');

  return add_picture (store, text, 40, error);
}

static void
test_notes (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) notes = NULL;
  g_autoptr(GBytes) jpeg = NULL;
  SteadBatchNote note = { .batch_id = farm->flock, .day = TODAY - 2, .text = (char *) "  Molting began. ",
                          .person_id = farm->student };
  SteadBatchNote shot = { .batch_id = farm->flock, .day = TODAY - 1 };

  ACT (farm, stead_batch_repo_save_note (farm->store, &note, err));
  ACT (farm, add_picture (farm->store, "first", 40, err));
  shot.picture_id = picture_id;
  ACT (farm, stead_batch_repo_save_note (farm->store, &shot, err));
  notes = stead_batch_repo_notes (farm->store, farm->flock, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (notes->len, ==, 2);
  g_assert_cmpint (((SteadBatchNote *) notes->pdata[0])->picture_id, ==, shot.picture_id);
  g_assert_null (((SteadBatchNote *) notes->pdata[0])->text);
  g_assert_cmpstr (((SteadBatchNote *) notes->pdata[1])->text, ==, "Molting began.");
  g_assert_cmpint (((SteadBatchNote *) notes->pdata[1])->person_id, ==, farm->student);
  jpeg = stead_picture_repo_get (farm->store, shot.picture_id, &error);
  g_assert_cmpmem (g_bytes_get_data (jpeg, NULL), (int) g_bytes_get_size (jpeg), "first", 5);

  /* Another picture takes the place of the first; the note takes its own along. */
  ACT (farm, add_picture (farm->store, "second", 40, err));
  shot.picture_id = picture_id;
  ACT (farm, stead_batch_repo_save_note (farm->store, &shot, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM picture"), ==, 1);
  ACT (farm, stead_batch_repo_delete_note (farm->store, shot.id, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM picture"), ==, 0);
  g_assert_null (stead_picture_repo_get (farm->store, shot.picture_id, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND);
  farm_assert_undo (farm);
}

static void
test_notes_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadBatchNote note = { .batch_id = farm->flock, .day = TODAY, .text = (char *) "  " };

  INVALID (farm, stead_batch_repo_save_note (farm->store, &note, err), "Write something");
  note.text = (char *) "x";
  note.day = TODAY + 1;
  INVALID (farm, stead_batch_repo_save_note (farm->store, &note, err), "still to come");
  note.day = STEAD_DAY_NONE;
  INVALID (farm, stead_batch_repo_save_note (farm->store, &note, err), "Enter the day");
  INVALID (farm, add_picture (farm->store, "", 40, err), "empty or too large");
  INVALID (farm, add_picture (farm->store, "x", 8001, err), "empty or too large");
  INVALID (farm, add_large (farm->store, err), "empty or too large");
}

/* A batch that is deleted takes its notes, pictures, plan and treatments along; undo brings them back. */
static void
test_cascade (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadBatchNote note = { .batch_id = farm->flock, .day = TODAY };
  SteadTreatment treatment = { .batch_id = farm->flock, .day = TODAY - 9, .last_day = TODAY - 7,
                               .wait_until = TODAY + 7, .what = (char *) "Dewormer", .ordered_by = (char *) "Dr. Vale" };
  SteadBatchPlan plan;

  stead_batch_plan_init (&plan);
  plan.output_base = 100;
  ACT (farm, stead_batch_repo_set_plan (farm->store, farm->flock, &plan, err));
  ACT (farm, add_picture (farm->store, "picture", 40, err));
  note.picture_id = picture_id;
  ACT (farm, stead_batch_repo_save_note (farm->store, &note, err));
  ACT (farm, stead_treatment_repo_save (farm->store, &treatment, err));
  ACT (farm, stead_flock_repo_delete (farm->store, farm->flock, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT (SELECT count (*) FROM picture)"
                                                " + (SELECT count (*) FROM batch_note) + (SELECT count (*) FROM treatment)"
                                                " + (SELECT count (*) FROM batch_plan)"), ==, 0);
  farm_assert_undo (farm);
}

/* --- treatments ----------------------------------------------------------------- */

static void
test_treatments (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) list = NULL;
  const SteadTreatment *read;
  SteadTreatment treatment = { .batch_id = farm->flock, .day = TODAY - 9, .last_day = TODAY - 5,
                               .wait_until = TODAY + 5, .what = (char *) " Dewormer ", .dose = (char *) "1 mL a liter",
                               .ordered_by = (char *) "Dr. Vale", .note = (char *) "Scours", .person_id = farm->advisor };

  ACT (farm, stead_treatment_repo_save (farm->store, &treatment, err));
  list = stead_treatment_repo_list (farm->store, farm->flock, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (list->len, ==, 1);
  read = list->pdata[0];
  g_assert_cmpint (read->id, ==, treatment.id);
  g_assert_cmpstr (read->what, ==, "Dewormer");
  g_assert_cmpstr (read->dose, ==, "1 mL a liter");
  g_assert_cmpstr (read->ordered_by, ==, "Dr. Vale");
  g_assert_cmpstr (read->note, ==, "Scours");
  g_assert_cmpint (read->day, ==, TODAY - 9);
  g_assert_cmpint (read->last_day, ==, TODAY - 5);
  g_assert_cmpint (read->person_id, ==, farm->advisor);
  /* The wait begins with the first dose and ends after its last day. */
  g_assert_cmpint (stead_treatment_repo_wait (farm->store, farm->flock, TODAY - 10, &error), ==, STEAD_DAY_NONE);
  g_assert_cmpint (stead_treatment_repo_wait (farm->store, farm->flock, TODAY - 9, &error), ==, TODAY + 5);
  g_assert_cmpint (stead_treatment_repo_wait (farm->store, farm->flock, TODAY + 5, &error), ==, TODAY + 5);
  g_assert_cmpint (stead_treatment_repo_wait (farm->store, farm->flock, TODAY + 6, &error), ==, STEAD_DAY_NONE);
  treatment.wait_until = TODAY + 8;
  ACT (farm, stead_treatment_repo_save (farm->store, &treatment, err));
  g_assert_cmpint (stead_treatment_repo_wait (farm->store, farm->flock, TODAY + 6, &error), ==, TODAY + 8);
  ACT (farm, stead_treatment_repo_delete (farm->store, treatment.id, err));
  g_assert_cmpint (stead_treatment_repo_wait (farm->store, farm->flock, TODAY, &error), ==, STEAD_DAY_NONE);
  g_assert_no_error (error);
  farm_assert_undo (farm);
}

static void
test_treatments_refused (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadTreatment treatment = { .batch_id = farm->flock, .day = TODAY - 9, .last_day = TODAY - 5,
                               .wait_until = TODAY + 5, .what = (char *) "Dewormer", .ordered_by = (char *) " " };

  INVALID (farm, stead_treatment_repo_save (farm->store, &treatment, err), "veterinarian who ordered it");
  treatment.ordered_by = (char *) "Dr. Vale";
  treatment.what = NULL;
  INVALID (farm, stead_treatment_repo_save (farm->store, &treatment, err), "what was given");
  treatment.what = (char *) "Dewormer";
  treatment.wait_until = TODAY - 6;
  INVALID (farm, stead_treatment_repo_save (farm->store, &treatment, err), "until when to wait");
  treatment.wait_until = STEAD_DAY_NONE;
  INVALID (farm, stead_treatment_repo_save (farm->store, &treatment, err), "until when to wait");
  treatment.wait_until = TODAY + 5;
  treatment.last_day = TODAY - 10;
  INVALID (farm, stead_treatment_repo_save (farm->store, &treatment, err), "cannot be before the first");
  treatment.last_day = TODAY - 5;
  treatment.day = TODAY + 1;
  INVALID (farm, stead_treatment_repo_save (farm->store, &treatment, err), "still to come");
  treatment.day = TODAY - 101;
  INVALID (farm, stead_treatment_repo_save (farm->store, &treatment, err), "before “Hens 1” began");
}

/* Treated on day -20 in group 1, which waits to day 10; they move to 2 on -10, from there to 3 on -5. */
static void
test_wait_moves_along (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GError) error = NULL;
  g_autofree char *moves = NULL;
  gint64 one = farm_fish (farm, "Catfish 1", 50);
  gint64 two = farm_fish (farm, "Catfish 2", 50);
  gint64 three = farm_fish (farm, "Catfish 3", 50);
  SteadTreatment treatment = { .batch_id = one, .day = TODAY - 20, .last_day = TODAY - 18, .wait_until = TODAY + 10,
                               .what = (char *) "Antibiotic feed", .ordered_by = (char *) "Dr. Vale" };

  moves = g_strdup_printf ("INSERT INTO fish_move (day, from_id, to_id, n, mean_g, cost_cents) VALUES"
                           " (%d, %d, %d, 50, 20, 0), (%d, %d, %d, 5, 20, 0)", TODAY - 10, (int) one, (int) two,
                           TODAY - 5, (int) two, (int) three);
  fixture_act (farm->store, "Move", moves);
  ACT (farm, stead_treatment_repo_save (farm->store, &treatment, err));
  g_assert_cmpint (stead_treatment_repo_wait (farm->store, two, TODAY - 11, &error), ==, STEAD_DAY_NONE);
  g_assert_cmpint (stead_treatment_repo_wait (farm->store, two, TODAY - 10, &error), ==, TODAY + 10);
  g_assert_cmpint (stead_treatment_repo_wait (farm->store, three, TODAY - 6, &error), ==, STEAD_DAY_NONE);
  g_assert_cmpint (stead_treatment_repo_wait (farm->store, three, TODAY, &error), ==, TODAY + 10);
  /* Treated after they had left: that is no concern of those that left before. */
  treatment.day = treatment.last_day = TODAY - 9;
  ACT (farm, stead_treatment_repo_save (farm->store, &treatment, err));
  g_assert_cmpint (stead_treatment_repo_wait (farm->store, one, TODAY, &error), ==, TODAY + 10);
  g_assert_cmpint (stead_treatment_repo_wait (farm->store, two, TODAY, &error), ==, STEAD_DAY_NONE);
  g_assert_cmpint (stead_treatment_repo_wait (farm->store, three, TODAY, &error), ==, STEAD_DAY_NONE);
  g_assert_no_error (error);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/batch-repo/list", test_list);
  g_test_add_func ("/store/batch-repo/check", test_check);
  g_test_add_func ("/store/batch-repo/end", test_end);
  g_test_add_func ("/store/batch-repo/losses", test_losses);
  g_test_add_func ("/store/batch-repo/plan", test_plan);
  g_test_add_func ("/store/batch-repo/plan-refused", test_plan_refused);
  g_test_add_func ("/store/batch-repo/notes", test_notes);
  g_test_add_func ("/store/batch-repo/notes-refused", test_notes_refused);
  g_test_add_func ("/store/batch-repo/cascade", test_cascade);
  g_test_add_func ("/store/batch-repo/treatments", test_treatments);
  g_test_add_func ("/store/batch-repo/treatments-refused", test_treatments_refused);
  g_test_add_func ("/store/batch-repo/wait-moves-along", test_wait_moves_along);
  return g_test_run ();
}
