/* test-check-paper.c - the papers of Check: they are made with and without readings, and say what was read.
 *
 * With STEAD_SHOW=FOLDER they are also written there, for the eye.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <math.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-check-list.h"
#include "paper/stead-paper.h"
#include "farm.h"

#define EIGHT(farm) ((gint64) (farm)->today * 86400 + 8 * 3600)

static const char * const of_list[] = { "checklist", "checklist-blank", "cooling-log", NULL };
static const char * const of_days[] = { "hold-log", "thermometer-log", "corrective-actions", "limit-card", "limit-card-english",
                                       "limit-card-spanish", NULL };

static void
make (Farm       *farm,
      const char *name,
      const char *of)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPaper) paper = stead_paper_new (farm->store, name, of, NULL, &error);
  const char *folder = g_getenv ("STEAD_SHOW");
  g_autofree char *file = g_strconcat (name, ".pdf", NULL);
  g_autofree char *path = folder != NULL ? g_build_filename (folder, file, NULL) : NULL;

  g_assert_no_error (error);
  g_assert_cmpint (stead_paper_get_n_pages (paper), >, 0);
  if (path != NULL)
    g_assert_true (stead_paper_save_pdf (paper, path, &error));
}

static SteadListLine *
line_of (SteadCheckList *list,
         const char     *topic)
{
  for (guint i = 0; i < list->lines->len; i++)
    if (g_str_equal (((SteadListLine *) list->lines->pdata[i])->topic, topic))
      return list->lines->pdata[i];
  g_test_message ("no line “%s”", topic);
  g_assert_not_reached ();
}

static gint64
read_f (Farm   *farm,
        gint64  line_id,
        gint64  pot_id,
        gint64  at,
        double  temp_f,
        double  held_s)
{
  SteadShown shown = { .line_id = line_id, .pot_id = pot_id, .at = at, .value = (temp_f - 32) / 1.8, .scale = 'F',
                       .held_s = held_s };

  FARM_DO (farm, stead_shown_repo_add (farm->store, &shown, &farm_error));
  g_free (shown.kind);
  return shown.id;
}

/* A morning: eggs too low and cooked on, a sauce that cools, a thermometer in ice. */
static void
fill (Farm *farm)
{
  const SteadCheckAnswered answers[] = {
    { STEAD_CHECK_KEY_HELD, "breakfast bowls", "hot" }, { STEAD_CHECK_KEY_HELD, "tomato sauce", "cold" },
    { STEAD_CHECK_KEY_COOKED, "tomato sauce", "plant_food" },
  };
  const SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = "breakfast bowls, tomato sauce",
                                  .day = farm->today, .answers = answers, .n_answers = G_N_ELEMENTS (answers) };
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckPlanAnswer) plan = stead_check_plan_answer_new (farm->store, &order, &error);
  g_autoptr(SteadCheckList) list = NULL;
  static const double pot[][2] = { { 0, 168 }, { 30, 138 }, { 60, 117 }, { 90, 101 }, { 120, 89 } };
  SteadDone cooked = { .text = (char *) "Cooked on for two more minutes." };
  gint64 pot_id = 0, low;
  SteadShown right = { .value = 70, .scale = 'C', .held_s = 30 };

  g_assert_no_error (error);
  list = stead_check_list_from_plan (farm->store, plan, &order, "Tuesday kitchen", &error);
  g_assert_no_error (error);
  FARM_DO (farm, stead_check_repo_save (farm->store, list, &farm_error));
  cooked.reading_id = read_f (farm, line_of (list, "cook")->id, 0, EIGHT (farm), 138, 0);
  cooked.at = EIGHT (farm) + 60;
  FARM_DO (farm, stead_done_repo_add (farm->store, &cooked, &farm_error));
  read_f (farm, line_of (list, "cook")->id, 0, EIGHT (farm) + 180, 158, 30);
  low = read_f (farm, line_of (list, "cook")->id, 0, EIGHT (farm) + 240, 100, 30);
  FARM_DO (farm, stead_shown_repo_correct (farm->store, low, &right, &farm_error));
  g_free (right.kind);
  read_f (farm, line_of (list, "thermometer_ice")->id, 0, EIGHT (farm) - 600, 33, 0);
  read_f (farm, line_of (list, "hold_hot")->id, 0, EIGHT (farm) + 3600, 141, 0);
  read_f (farm, line_of (list, "hold_hot")->id, 0, EIGHT (farm) + 2 * 3600, 131, 0);
  FARM_DO (farm, stead_check_repo_save_pot (farm->store, line_of (list, "cool")->id, &pot_id, "Large pot", "ice bath",
                                            0.1, &farm_error));
  for (gsize i = 0; i < G_N_ELEMENTS (pot); i++)
    read_f (farm, line_of (list, "cool")->id, pot_id, EIGHT (farm) + (gint64) pot[i][0] * 60, pot[i][1], 0);
}

static void
test_filled (Farm          *farm,
             gconstpointer  data)
{
  farm_stock (farm);
  farm_log (farm);
  fill (farm);
  for (gsize i = 0; of_list[i] != NULL; i++)
    make (farm, of_list[i], "Tuesday kitchen");
  for (gsize i = 0; of_days[i] != NULL; i++)
    make (farm, of_days[i], NULL);
  make (farm, "recall-report", NULL);
}

/* Without a list the logs are empty, and a checklist is missed by name. */
static void
test_empty (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(GError) error = NULL;

  for (gsize i = 0; of_days[i] != NULL; i++)
    {
      g_autoptr(GError) none = NULL;
      g_autoptr(SteadPaper) paper = stead_paper_new (farm->store, of_days[i], NULL, NULL, &none);

      g_assert_no_error (none);
      g_assert_nonnull (paper);
    }
  g_assert_null (stead_paper_new (farm->store, "checklist", NULL, NULL, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add ("/paper/check/filled", Farm, NULL, farm_set_up, test_filled, farm_tear_down);
  g_test_add ("/paper/check/empty", Farm, NULL, farm_set_up, test_empty, farm_tear_down);
  return g_test_run ();
}
