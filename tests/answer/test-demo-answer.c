/* test-demo-answer.c - the demo farm's checklists hang together, whatever the day. */
#include "config.h"

#include <glib/gstdio.h>

#include "answer/stead-check-days-answer.h"
#include "answer/stead-demo-answer.h"
#include "store/stead-place-repo.h"

/* Days on which somebody may look: a kitchen day (Friday), a leap day, summer. */
static const int days[][3] = { { 2026, 11, 27 }, { 2028, 2, 29 }, { 2026, 7, 5 } };

typedef struct
{
  guint n_lists, n_open, n_failed, n_handled;
} Found;

static void
look_at_lines (const SteadCheckAnswer *answer,
               Found                  *found)
{
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadCheckedLine *line = answer->lines->pdata[i];

      g_assert_cmpuint (line->line->rows->len, >, 0);
      g_assert_cmpstr (line->source, !=, "");
      for (guint k = 0; k < line->reads->len; k++)
        {
          const SteadCheckRead *read = line->reads->pdata[k];

          found->n_failed += read->state == STEAD_READ_FAILED;
          found->n_handled += read->state == STEAD_READ_HANDLED;
        }
    }
}

static void
look_at (SteadStore           *store,
         const SteadCheckList *head,
         Found                *found)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckAnswer) answer = stead_check_answer_new (store, head->id, &error);

  g_assert_no_error (error);
  found->n_lists++;
  look_at_lines (answer, found);
  g_assert_cmpint (answer->n_held, ==, 0);
  if (head->signed_by != 0)
    g_assert_cmpint (answer->n_open, ==, 0);
  else
    found->n_open++;
}

/* One refrigerator crept up and was seen to; another one creeps up now. */
static void
look_at_coolers (SteadStore *store)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) places = stead_place_repo_list (store, &error);
  guint n_read = 0, n_handled = 0, n_creep = 0;

  for (guint i = 0; i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];
      g_autoptr(SteadPlaceAirAnswer) air = stead_place_air_answer_new (store, place->id, 84, &error);

      g_assert_no_error (error);
      n_read += air->readings->len > 50;
      n_creep += air->has_trend && air->trend.slope > 0;
      for (guint k = 0; k < air->spells->len; k++)
        n_handled += ((const SteadWarmSpell *) air->spells->pdata[k])->done != NULL;
      g_assert_cmpuint (n_handled, >=, air->spells->len);
    }
  g_assert_cmpuint (n_read, ==, 2);
  g_assert_cmpuint (n_handled, ==, 1);
  g_assert_cmpuint (n_creep, >=, 1);
}

static void
test_day (gconstpointer data)
{
  const int *day = data;
  SteadDay today = stead_day_new (day[0], day[1], day[2]);
  g_autoptr(GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("steading-XXXXXX", &error);
  g_autofree char *path = g_build_filename (folder, "demo.steading", NULL);
  SteadStore *store = stead_demo_answer_create (path, NULL, today, &error);
  g_autoptr(GPtrArray) lists = NULL, wrong = NULL;
  Found found = { 0 };

  g_assert_no_error (error);
  lists = stead_check_repo_list (store, today - 400, today + 30, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < lists->len; i++)
    look_at (store, lists->pdata[i], &found);
  g_assert_cmpuint (found.n_lists, >=, 8);
  g_assert_cmpuint (found.n_open, ==, 1);       /* of the batch to come */
  g_assert_cmpuint (found.n_failed, ==, 0);
  g_assert_cmpuint (found.n_handled, >=, 1);    /* the story has one */
  look_at_coolers (store);
  g_object_unref (store);
  wrong = stead_store_verify (path, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (wrong->len, ==, 0);
  g_unlink (path);
  g_rmdir (folder);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    {
      g_autofree char *name = g_strdup_printf ("/answer/demo/%d-%02d-%02d", days[i][0], days[i][1], days[i][2]);

      g_test_add_data_func (name, days[i], test_day);
    }
  return g_test_run ();
}
