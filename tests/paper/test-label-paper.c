/* test-label-paper.c - sheets of labels: how many, which blanks are gone, and words that fit on none. */
#include "farm.h"
#include "read-back.h"

#include "answer/stead-answer-error.h"
#include "paper/stead-paper-error.h"

#include <math.h>

/* Labels of the feed before the shelf, on blanks of 30 a page unless @sheet says. */
static char *
labels_of (Farm       *farm,
           const char *sheet,
           int         first,
           int         n,
           int        *out_pages)
{
  const SteadLabelOptions labels = { .kind = STEAD_LABEL_SHELF, .sheet = sheet, .first = first, .n = n };
  const SteadPaperOptions options = { .labels = &labels };
  g_autoptr(SteadLot) lot = NULL;
  g_autoptr(GPtrArray) lots = stead_lot_repo_list (farm->store, TRUE, NULL);

  for (guint i = 0; i < lots->len; i++)
    if (((SteadLot *) lots->pdata[i])->item_id == farm->feed)
      lot = g_ptr_array_steal_index (lots, i--);
  *out_pages = read_back_pages (farm->store, "labels", lot->code, &options);
  return read_back (farm->store, "labels", lot->code, &options);
}

static void
buy_feed (Farm          *farm,
          gconstpointer  data)
{
  farm_set_up (farm, data);
  farm_buy (farm, farm->today - 3, farm->feed, 50, 6000, FALSE);
}

static void
assert_labels (Farm       *farm,
               const char *sheet,
               int         first,
               int         n,
               guint       labels,
               int         pages)
{
  int made = 0;
  g_autofree char *text = labels_of (farm, sheet, first, n, &made);

  read_back_counts (text, "Layer feed", labels);
  g_assert_cmpint (made, ==, pages);
}

/* 3 × 10 on a page of these blanks, 2 × 5 of those that are usual on US Letter. */
static void
test_counts (Farm          *farm,
             gconstpointer  data)
{
  assert_labels (farm, NULL, 0, 0, 10, 1);
  assert_labels (farm, "letter-3x10", 0, 0, 30, 1);
  assert_labels (farm, "letter-3x10", 28, 0, 2, 1);      /* what is left of the page */
  assert_labels (farm, "letter-3x10", 28, 5, 5, 2);      /* two there, three on the next */
  assert_labels (farm, "letter-3x10", -4, 1, 1, 1);
  assert_labels (farm, "letter-3x10", 1000, 0, 1, 1);    /* a page has no more than its last */
  assert_labels (farm, "letter-3x10", 0, 31, 31, 2);
}

/* 2,000 are printed at most: 66 pages of 30, and 20 more. */
static void
test_most (Farm          *farm,
           gconstpointer  data)
{
  const SteadLabelOptions labels = { .kind = STEAD_LABEL_SHELF, .sheet = "letter-3x10", .n = 5000 };
  const SteadPaperOptions options = { .labels = &labels };

  g_assert_cmpint (read_back_pages (farm->store, "labels", NULL, &options), ==, 67);
}

/* A farm in meters prints on A4, on the blanks of 2 × 5 that are sold there. */
static void
test_metric (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadFarm) own = stead_farm_repo_get (farm->store, NULL);
  g_autoptr(SteadPaper) paper = NULL;
  double width, height;

  own->units = STEAD_UNITS_METRIC;
  FARM_DO (farm, stead_farm_repo_set (farm->store, own, &farm_error));
  assert_labels (farm, NULL, 0, 0, 10, 1);
  paper = stead_paper_new (farm->store, "labels", NULL, NULL, NULL);
  stead_paper_get_size (paper, &width, &height);
  g_assert_cmpfloat_with_epsilon (width, 210 / 25.4 * 72, 0.01);     /* A4, ISO 216 */
  g_assert_cmpfloat_with_epsilon (height, 297 / 25.4 * 72, 0.01);
}

static void
assert_refused (Farm                    *farm,
                const char              *of,
                const SteadLabelOptions *labels,
                GQuark                   domain,
                int                      code)
{
  const SteadPaperOptions options = { .labels = labels };
  g_autoptr(GError) error = NULL;

  g_assert_null (stead_paper_new (farm->store, "labels", of, &options, &error));
  g_assert_error (error, domain, code);
}

/* A name as long as an item may have: in letters as high as the law asks it stands on no small blank. */
static void
test_no_room (Farm          *farm,
              gconstpointer  data)
{
  g_autofree char *name = g_strnfill (100, 'W');
  SteadItem item = { .name = name, .kind = STEAD_ITEM_PRODUCE, .unit = stead_unit_by_id ("kg"), .reorder_base = NAN };
  const SteadLabelOptions jar = { .kind = STEAD_LABEL_JAR, .panel_in2 = 400, .sheet = "letter-3x10" };

  FARM_DO (farm, stead_item_repo_save (farm->store, &item, &farm_error));
  farm_buy (farm, farm->today, item.id, 5, 100, FALSE);
  assert_refused (farm, NULL, &jar, STEAD_PAPER_ERROR, STEAD_PAPER_ERROR_UNKNOWN);
}

static void
test_no_lot (Farm          *farm,
             gconstpointer  data)
{
  assert_refused (farm, "X99", NULL, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN);
}

#define ADD(name, test) g_test_add ("/paper/label/" name, Farm, NULL, buy_feed, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("counts", test_counts);
  ADD ("most", test_most);
  ADD ("metric", test_metric);
  ADD ("no-room", test_no_room);
  ADD ("no-lot", test_no_lot);
  return g_test_run ();
}
