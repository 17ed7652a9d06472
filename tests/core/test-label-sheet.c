/* test-label-sheet.c - labels lie on their page, beside each other and not over each other. */
#include "config.h"

#include "core/stead-label-sheet.h"

static void
test_all_lie_on_the_page (void)
{
  gsize n;
  const SteadLabelSheet *sheets = stead_label_sheet_list (&n);

  g_assert_cmpuint (n, >, 5);
  for (gsize i = 0; i < n; i++)
    {
      const SteadLabelSheet *sheet = &sheets[i];
      double width = sheet->metric ? STEAD_A4_WIDTH : STEAD_LETTER_WIDTH;
      double height = sheet->metric ? STEAD_A4_HEIGHT : STEAD_LETTER_HEIGHT;
      double right = sheet->left + (sheet->columns - 1) * sheet->step_x + sheet->width;
      double bottom = sheet->top + (sheet->rows - 1) * sheet->step_y + sheet->height;

      g_test_message ("%s", sheet->id);
      g_assert_true (stead_label_sheet_find (sheet->id) == sheet);
      g_assert_cmpfloat (right, <=, width + 0.05);
      g_assert_cmpfloat (bottom, <=, height + 0.05);
      g_assert_cmpfloat (sheet->step_x, >=, sheet->columns > 1 ? sheet->width : 0);
      g_assert_cmpfloat (sheet->step_y, >=, sheet->rows > 1 ? sheet->height : 0);
      /* What is left of the page lies evenly on both sides: a sheet can be fed either way up. */
      g_assert_cmpfloat_with_epsilon (width - right, sheet->left, 1.5);
      g_assert_cmpfloat_with_epsilon (height - bottom, sheet->top, 1.5);
    }
}

static void
test_places (void)
{
  const SteadLabelSheet *sheet = stead_label_sheet_find ("letter-2x5");
  double x, y;
  int page;

  stead_label_sheet_place (sheet, 0, &page, &x, &y);
  g_assert_cmpint (page, ==, 0);
  g_assert_cmpfloat_with_epsilon (x, 11.25, 1e-9);
  g_assert_cmpfloat_with_epsilon (y, 36, 1e-9);
  stead_label_sheet_place (sheet, 13, &page, &x, &y);
  g_assert_cmpint (page, ==, 1);
  g_assert_cmpfloat_with_epsilon (x, 11.25 + 301.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (y, 36 + 144, 1e-9);
}

static void
test_pages (void)
{
  const SteadLabelSheet *sheet = stead_label_sheet_find ("letter-2x5");

  g_assert_cmpint (stead_label_sheet_pages (sheet, 0, 0), ==, 0);
  g_assert_cmpint (stead_label_sheet_pages (sheet, 0, 10), ==, 1);
  g_assert_cmpint (stead_label_sheet_pages (sheet, 0, 11), ==, 2);
  g_assert_cmpint (stead_label_sheet_pages (sheet, 9, 2), ==, 2);
  g_assert_cmpint (stead_label_sheet_pages (sheet, 9, 1), ==, 1);
  /* A packet begun earlier: only what is gone of its first page counts. */
  g_assert_cmpint (stead_label_sheet_pages (sheet, 10, 10), ==, 1);
}

static void
test_defaults_are_of_the_farms_paper (void)
{
  g_assert_false (stead_label_sheet_default (FALSE)->metric);
  g_assert_true (stead_label_sheet_default (TRUE)->metric);
  g_assert_null (stead_label_sheet_find ("no-such"));
  g_assert_null (stead_label_sheet_find (NULL));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/label-sheet/all-lie-on-the-page", test_all_lie_on_the_page);
  g_test_add_func ("/core/label-sheet/places", test_places);
  g_test_add_func ("/core/label-sheet/pages", test_pages);
  g_test_add_func ("/core/label-sheet/defaults-are-of-the-farms-paper", test_defaults_are_of_the_farms_paper);
  return g_test_run ();
}
