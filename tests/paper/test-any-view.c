/* test-any-view.c - every document of the demo farm in meters and euros, and long after its last entry. */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "demo.h"
#include "farm.h"
#include "paper/stead-paper.h"

/* Short and long side in points: US Letter and A4; of a wall card the double, Ledger and A3 (ISO 216). */
static const double sheets[2][2][2] = {
  [STEAD_UNITS_US] = { { 612, 792 }, { 792, 1224 } },
  [STEAD_UNITS_METRIC] = { { 595.28, 841.89 }, { 841.89, 1190.55 } },
};

static const DemoView views[] = {
  { "/paper/any-view/feet-and-dollars", STEAD_UNITS_US, "USD", 0 },
  { "/paper/any-view/meters-and-euros", STEAD_UNITS_METRIC, "EUR", 0 },
  { "/paper/any-view/years-later", STEAD_UNITS_METRIC, "JPY", 1100 },
};

/* What hangs on a wall. */
static gboolean
is_wall_card (const char *name)
{
  return g_str_has_prefix (name, "limit-card");
}

/* On the paper of its country, either way up, and each page can be drawn. */
static void
assert_pages (SteadPaper     *paper,
              const char     *name,
              const DemoView *view)
{
  const double *sheet = sheets[view->units][is_wall_card (name)];
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double width, height;

  stead_paper_get_size (paper, &width, &height);
  g_assert_cmpfloat_with_epsilon (MIN (width, height), sheet[0], 1);
  g_assert_cmpfloat_with_epsilon (MAX (width, height), sheet[1], 1);
  g_assert_cmpint (stead_paper_get_n_pages (paper), >, 0);
  for (int page = 0; page < stead_paper_get_n_pages (paper); page++)
    stead_paper_draw_page (paper, page, cr);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* Returns: whether it was made; if not, the reason was told */
static gboolean
make (Demo                 *demo,
      const SteadPaperKind *kind,
      const char           *of,
      const DemoView       *view)
{
  const SteadPaperOptions season = { .has_days = TRUE, .from = DEMO_TODAY - 120, .to = DEMO_TODAY };
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPaper) paper = stead_paper_new (demo->store, kind->name, of, of == NULL ? &season : NULL, &error);

  if (paper != NULL)
    assert_pages (paper, kind->name, view);
  else
    g_assert_cmpint (error->domain, ==, STEAD_ANSWER_ERROR);
  return paper != NULL;
}

static void
test_view (Demo          *demo,
           gconstpointer  data)
{
  gsize n;
  const SteadPaperKind *kinds = stead_paper_list (&n);
  guint tried = 0, made = 0;

  demo_look (demo, data);
  for (gsize i = 0; i < n; i++)
    {
      g_autoptr(GPtrArray) names = demo_names (demo, kinds[i].of);

      if ((kinds[i].formats & STEAD_FORMAT_PDF) == 0)
        continue;
      g_test_message ("%s", kinds[i].name);
      for (guint k = 0; k < names->len; k++, tried++)
        made += make (demo, &kinds[i], names->pdata[k], data);
    }
  g_test_message ("%u of %u made", made, tried);
  g_assert_cmpuint (made, >, tried / 2);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (views); i++)
    g_test_add (views[i].path, Demo, &views[i], demo_set_up, test_view, demo_tear_down);
  return g_test_run ();
}
