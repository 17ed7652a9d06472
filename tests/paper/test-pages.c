/* test-pages.c - a flow of blocks is broken into pages as a reader expects. */
#include <locale.h>

#include "paper/stead-pages-private.h"

static SteadImprint imprint = { .farm_name = (char *) "Farm & <Sons>, with a name so long that no head of a page holds it whole, not even a third of it", .currency = (char *) "USD",
                                .today = 20000, .change_no = 7 };

static const SteadPagesColumn columns[] = { { "What", STEAD_ALIGN_LEFT, 1 }, { "Amount", STEAD_ALIGN_RIGHT, 0 } };

static void
add_rows (SteadPages *pages,
          int         n)
{
  stead_pages_add_table (pages, columns, 2);
  for (int i = 0; i < n; i++)
    {
      g_autofree char *text = g_strdup_printf ("row %d", i);

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, i % 2 ? STEAD_PAGES_NO_KEY : STEAD_COST_FEED,
                           (const char *[]) { text, "$1.00" });
    }
}

static const SteadPlaced *
placed (const SteadPages *pages,
        guint             i)
{
  return &g_array_index (pages->placed, SteadPlaced, i);
}

/* Nothing leaves the page's flow, nothing overlaps what was before it. */
static void
check_flow (const SteadPages *pages)
{
  double width, height;

  stead_pages_size (pages, &width, &height);
  for (guint i = 0; i < pages->placed->len; i++)
    {
      g_assert_cmpfloat (placed (pages, i)->y, >=, 60);
      g_assert_cmpfloat (placed (pages, i)->y + placed (pages, i)->height, <=, height - 50);
      if (i > 0 && placed (pages, i)->page == placed (pages, i - 1)->page)
        g_assert_cmpfloat (placed (pages, i)->y, >=, placed (pages, i - 1)->y + placed (pages, i - 1)->height - 1e-9);
      if (i > 0)
        g_assert_cmpint (placed (pages, i)->page, >=, placed (pages, i - 1)->page);
      g_assert_cmpint (placed (pages, i)->page, <, stead_pages_count (pages));
    }
}

/* Whatever comes before it, a heading has something of what it heads on its page. */
static void
test_headings_never_stand_alone (void)
{
  for (int before = 1; before < 60; before++)
    {
      g_autoptr(SteadPages) pages = stead_pages_new (&imprint, "Title", NULL);

      stead_pages_add_title (pages, "Title");
      for (int i = 0; i < before; i++)
        stead_pages_add_text (pages, "A paragraph.");
      stead_pages_add_heading (pages, "Heading");
      stead_pages_add_subheading (pages, "Under it");
      add_rows (pages, 40);
      stead_pages_settle (pages);
      check_flow (pages);
      for (guint i = 0; i + 1 < pages->placed->len; i++)
        if (placed (pages, i)->block->keep)
          g_assert_cmpint (placed (pages, i)->page, ==, placed (pages, i + 1)->page);
    }
}

static void
test_every_row_once (void)
{
  g_autoptr(SteadPages) pages = stead_pages_new (&imprint, "Title", "Mar 1 to Mar 3");
  guint next = 0;

  add_rows (pages, 200);
  stead_pages_settle (pages);
  check_flow (pages);
  g_assert_cmpint (stead_pages_count (pages), >, 3);
  for (guint i = 0; i < pages->placed->len; i++)
    {
      g_assert_cmpuint (placed (pages, i)->first_row, ==, next);
      next += placed (pages, i)->n_rows;
    }
  g_assert_cmpuint (next, ==, 200);
}

static void
test_short_tables_stay_whole (void)
{
  for (int before = 1; before < 50; before++)
    {
      g_autoptr(SteadPages) pages = stead_pages_new (&imprint, "Title", NULL);

      for (int i = 0; i < before; i++)
        stead_pages_add_text (pages, "A paragraph.");
      add_rows (pages, 9);
      stead_pages_settle (pages);
      g_assert_cmpuint (placed (pages, pages->placed->len - 1)->n_rows, ==, 9);
    }
}

/* The head of some rows goes over to the next page with them, wherever the page ends. */
static void
test_heads_go_along (void)
{
  static const SteadPagesColumn pair[] = { { "A", STEAD_ALIGN_LEFT, 1 }, { "B", STEAD_ALIGN_LEFT, 1 } };

  for (int before = 0; before < 12; before++)
    {
      g_autoptr(SteadPages) pages = stead_pages_new (&imprint, "Title", NULL);

      for (int i = 0; i < before; i++)
        stead_pages_add_text (pages, "A paragraph.");
      stead_pages_add_table (pages, pair, G_N_ELEMENTS (pair));
      for (int i = 0; i < 120; i++)
        stead_pages_add_row (pages, i % 3 == 0 ? STEAD_ROW_HEAD : STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                             (const char *[]) { "a", STEAD_PAGES_BOX "b" });
      stead_pages_settle (pages);
      check_flow (pages);
      for (guint i = 0; i + 1 < pages->placed->len; i++)
        if (placed (pages, i)->block->kind == STEAD_PAGE_BLOCK_TABLE)
          g_assert_cmpuint ((placed (pages, i)->first_row + placed (pages, i)->n_rows - 1) % 3, !=, 0);
    }
}

/* A table of few rows that are high begins under its heading: no page is left empty for it. */
static void
test_high_rows_begin_at_once (void)
{
  static const SteadPagesColumn single[] = { { "A", STEAD_ALIGN_LEFT, 1 } };
  g_autoptr(SteadPages) pages = stead_pages_new (&imprint, "Title", NULL);

  stead_pages_add_text (pages, "A paragraph.");
  stead_pages_add_heading (pages, "Heading");
  stead_pages_add_table (pages, single, G_N_ELEMENTS (single));
  for (int i = 0; i < 10; i++)
    stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { "1\n2\n3\n4\n5\n6\n7\n8" });
  stead_pages_settle (pages);
  check_flow (pages);
  g_assert_cmpint (placed (pages, 2)->page, ==, 0);
  g_assert_cmpuint (placed (pages, 2)->n_rows, >, 3);
}

/* The end of the last page's flow, as a share of the page's height. */
static double
last_used (const SteadPages *pages)
{
  const SteadPlaced *last = placed (pages, pages->placed->len - 1);
  double width, height;

  stead_pages_size (pages, &width, &height);
  g_assert_cmpint (last->page, ==, stead_pages_count (pages) - 1);
  return (last->y + last->height) / height;
}

/* However many sections there are, no last page is left with a line or two. */
static void
test_last_page_is_used (void)
{
  static SteadWhy why = { (char *) "Why", (char *) "a over b", (char *) "1\n2", (char *) "S" };
  int tight = 0, whole = 0;

  for (int n = 1; n < 60; n++)
    {
      g_autoptr(SteadPages) pages = stead_pages_new (&imprint, "Title", NULL);

      for (int i = 0; i < n; i++)
        {
          if (i % 5 == 0)
            stead_pages_add_heading (pages, "Heading");
          if (i % 3 == 2)
            add_rows (pages, i % 7);
          stead_pages_add_why (pages, &why);
        }
      stead_pages_settle (pages);
      check_flow (pages);
      tight += pages->tightness < 1;
      whole += pages->tightness == 1;
      if (stead_pages_count (pages) > 1)
        g_assert_cmpfloat (last_used (pages), >, 0.3);
    }
  g_assert_cmpint (tight, >, 0);
  g_assert_cmpint (whole, >, tight);   /* tight is the exception */
}

static void
test_paper_size (void)
{
  SteadImprint metric = imprint;
  g_autoptr(SteadPages) letter = stead_pages_new (&imprint, "Title", NULL);
  g_autoptr(SteadPages) a4 = NULL;
  double width, height;

  metric.metric = TRUE;
  a4 = stead_pages_new (&metric, "Title", NULL);
  stead_pages_size (letter, &width, &height);
  g_assert_cmpfloat (width, ==, 8.5 * 72);
  g_assert_cmpfloat (height, ==, 11 * 72);
  stead_pages_size (a4, &width, &height);
  g_assert_cmpfloat_with_epsilon (width, 210 / 25.4 * 72, 0.01);
  g_assert_cmpfloat_with_epsilon (height, 297 / 25.4 * 72, 0.01);
}

/* A name with signs of markup is text; a page draws alike on any surface, twice. */
static void
test_draws (void)
{
  g_autoptr(SteadPages) pages = stead_pages_new (&imprint, "A < B & C", NULL);
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double x, y, w, h, width, height;

  stead_pages_add_title (pages, "A < B & C");
  stead_pages_add_lead (pages, "It costs <b>$1</b> &amp; more.");
  stead_pages_add_caution (pages, "Look & see <now>.");
  stead_pages_add_note (pages, "A note.");
  stead_pages_add_why (pages, &(SteadWhy) { (char *) "Why <x>", (char *) "a & b", (char *) "1\n2", (char *) "S & T" });
  add_rows (pages, 60);
  stead_pages_settle (pages);
  for (int page = 0; page < stead_pages_count (pages); page++)
    stead_pages_draw (pages, page, cr);
  stead_pages_size (pages, &width, &height);
  cairo_recording_surface_ink_extents (surface, &x, &y, &w, &h);
  g_assert_cmpfloat (x, >=, 36);
  g_assert_cmpfloat (y, >=, 24);
  g_assert_cmpfloat (x + w, <=, width - 36);
  g_assert_cmpfloat (y + h, <=, height - 20);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
collect_heading (const char *text,
                 int         page,
                 double      y,
                 gpointer    data)
{
  g_string_append_printf (data, "%d:%s|", page, text);
}

static void
test_headings (void)
{
  g_autoptr(SteadPages) pages = stead_pages_new (&imprint, "Title", NULL);
  g_autoptr(GString) found = g_string_new (NULL);

  stead_pages_add_title (pages, "Eggs & more");
  stead_pages_add_heading (pages, "One");
  stead_pages_add_text (pages, "x");
  stead_pages_add_heading (pages, "Two");
  stead_pages_add_subheading (pages, "Not told");
  add_rows (pages, 100);
  stead_pages_settle (pages);
  stead_pages_headings (pages, collect_heading, found);
  g_assert_cmpstr (found->str, ==, "0:Eggs & more|0:One|0:Two|");
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/paper/pages/headings-never-stand-alone", test_headings_never_stand_alone);
  g_test_add_func ("/paper/pages/every-row-once", test_every_row_once);
  g_test_add_func ("/paper/pages/short-tables-stay-whole", test_short_tables_stay_whole);
  g_test_add_func ("/paper/pages/heads-go-along", test_heads_go_along);
  g_test_add_func ("/paper/pages/high-rows-begin-at-once", test_high_rows_begin_at_once);
  g_test_add_func ("/paper/pages/last-page-is-used", test_last_page_is_used);
  g_test_add_func ("/paper/pages/paper-size", test_paper_size);
  g_test_add_func ("/paper/pages/draws-inside-the-margins", test_draws);
  g_test_add_func ("/paper/pages/headings", test_headings);
  return g_test_run ();
}
