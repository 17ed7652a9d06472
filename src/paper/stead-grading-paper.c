/* stead-grading-paper.c - a blank sheet for the bench: eggs by weight, by the light, and
 * broken out.
 *
 * Two sides, to be filled in by hand and entered afterwards.  A cell that is to be
 * written in holds an empty line besides, so that there is room for a pencil.
 */
#include "config.h"

#include "answer/stead-egg-answer.h"
#include "answer/stead-subject.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define G_PER_OZ 28.349523125

/* Room for a pencil. */
#define BLANK "\n"

#define BROKEN_OUT 12
#define NOTES 4

/* Weights of the table of heights. */
#define LIGHTEST_G 50
#define STEP_G 5
#define N_HEIGHT_COLUMNS 6   /* the name of the grade, and five weights */

static void
add_head (SteadPages *pages)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 0 }, { NULL, STEAD_ALIGN_LEFT, 1 },
                                       { NULL, STEAD_ALIGN_LEFT, 0 }, { NULL, STEAD_ALIGN_LEFT, 1 } };
  const char *first[] = { _("Day of grading"), BLANK, _("Graded by"), BLANK };
  const char *second[] = { _("Laid from, to"), BLANK, _("Warmth of the eggs"), BLANK };

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, first);
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, second);
}

/* --- by weight ---------------------------------------------------------------------- */

static void
add_class (SteadPages    *pages,
           SteadEggClass  class)
{
  double single_g = stead_egg_class_single_oz (class) * G_PER_OZ / 12;
  g_autofree char *ounces = stead_number_format (stead_egg_class_dozen_oz (class), 0);
  g_autofree char *grams = stead_number_format (stead_egg_class_mean_g (class) * 12, 0);
  g_autofree char *one = isnan (single_g) ? NULL : stead_number_format (single_g, 1);
  /* Translators: weight of a dozen eggs: "24 oz (680 g)". */
  g_autofree char *dozen = g_strdup_printf (_("%s oz (%s g)"), ounces, grams);
  g_autofree char *single = one == NULL ? g_strdup ("–") : g_strdup_printf (_("%s g"), one);
  const char *cells[] = { stead_egg_class_name (class), dozen, single, BLANK, NULL };

  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, cells);
}

static void
add_classes (SteadPages *pages)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a grading sheet", "Class"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a grading sheet", "A dozen at least"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a grading sheet", "One egg at least"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a grading sheet", "Tally"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of a grading sheet", "Eggs"), STEAD_ALIGN_LEFT, 0.3 },
  };

  stead_pages_add_heading (pages, _("By weight"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (int class = STEAD_N_EGG_CLASSES - 1; class >= 0; class--)
    add_class (pages, (SteadEggClass) class);
}

/* --- with the light -------------------------------------------------------------------- */

static void
add_light (SteadPages *pages)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a grading sheet", "Found"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a grading sheet", "How it looks, and what becomes of it"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of a grading sheet", "Tally"), STEAD_ALIGN_LEFT, 0.7 },
    { C_("column of a grading sheet", "Eggs"), STEAD_ALIGN_LEFT, 0.3 },
  };
  const char *rows[][4] = {
    { _("Blood or meat spot"), _("A dark spot that moves with the egg: not for sale."), NULL, NULL },
    { _("Crack"), _("A light line in the shell: use at once, well cooked; throw out what leaks."), NULL, NULL },
    { _("Dirt"), _("Dirt on the shell: clean it by your rules, or throw it out."), NULL, NULL },
  };

  stead_pages_add_heading (pages, _("With the light"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, rows[i]);
}

/* --- broken out --------------------------------------------------------------------------- */

static void
add_broken_out (SteadPages *pages)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a grading sheet", "Egg"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a grading sheet", "Weight, g"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of a grading sheet", "Height of the thick white, mm"), STEAD_ALIGN_LEFT, 1.4 },
    { C_("column of a grading sheet", "Haugh units"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of a grading sheet", "Grade"), STEAD_ALIGN_LEFT, 1 },
  };

  stead_pages_add_heading (pages, _("Broken out"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (int i = 1; i <= BROKEN_OUT; i++)
    {
      g_autofree char *number = stead_number_format (i, 0);
      const char *cells[] = { number, BLANK, NULL, NULL, NULL };

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, cells);
    }
}

static void
add_height_row (SteadPages    *pages,
                const char    *name,
                SteadEggGrade  grade)
{
  char *cells[N_HEIGHT_COLUMNS] = { g_strdup (name) };

  for (int i = 1; i < N_HEIGHT_COLUMNS; i++)
    {
      double least_mm = stead_haugh_albumen_mm (LIGHTEST_G + STEP_G * (i - 1), stead_haugh_least (grade));
      g_autofree char *number = stead_number_format (least_mm, 1);

      /* Translators: a height. */
      cells[i] = g_strdup_printf (_("%s mm"), number);
    }
  stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char * const *) cells);
  for (int i = 0; i < N_HEIGHT_COLUMNS; i++)
    g_free (cells[i]);
}

/* The grade without a pocket calculator. */
static void
add_heights (SteadPages *pages)
{
  SteadPagesColumn columns[N_HEIGHT_COLUMNS] = {
    { C_("column of a grading sheet", "Egg of"), STEAD_ALIGN_LEFT, 1.4 },
  };
  char *weights[N_HEIGHT_COLUMNS] = { NULL };

  for (int i = 1; i < N_HEIGHT_COLUMNS; i++)
    {
      g_autofree char *number = stead_number_format (LIGHTEST_G + STEP_G * (i - 1), 0);

      weights[i] = g_strdup_printf (_("%s g"), number);
      columns[i] = (SteadPagesColumn) { weights[i], STEAD_ALIGN_RIGHT, 1 };
    }
  stead_pages_add_subheading (pages, _("The least height of the thick white"));
  stead_pages_add_table (pages, columns, N_HEIGHT_COLUMNS);
  add_height_row (pages, _("Grade AA from"), STEAD_EGG_GRADE_AA);
  add_height_row (pages, _("Grade A from"), STEAD_EGG_GRADE_A);
  for (int i = 1; i < N_HEIGHT_COLUMNS; i++)
    g_free (weights[i]);
}

/* --- the whole ------------------------------------------------------------------------------ */

static SteadPages *
begin (const SteadImprint   *imprint,
       const SteadEggAnswer *eggs)
{
  /* Translators: title of a blank paper; the name of a flock. */
  g_autofree char *title = g_strdup_printf (_("%s: grading sheet"), eggs->flock->name);
  SteadPages *pages = stead_pages_new (imprint, title, NULL);

  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, _("Hold each egg to the light, weigh it, and make a stroke. Then enter the sheet: "
                                 "“Grade eggs…”."));
  return pages;
}

static void
add_notes (SteadPages *pages)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 } };
  const char *cells[] = { BLANK };

  stead_pages_add_heading (pages, _("Notes"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (int i = 0; i < NOTES; i++)
    stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, cells);
}

/* What sheets of the two sides rest on. */
static void
add_sources (SteadPages *pages)
{
  stead_pages_add_note (pages, _("Weights: Pennsylvania Code, title 7, section 87.42(a). Haugh units: 100 × log(height − "
                                 "1.7 × weight^0.37 + 7.57), measured at 45 to 60 °F (7 to 16 °C)."));
}

SteadPages *
stead_grading_paper_new (SteadStore               *store,
                         const char               *of,
                         const SteadPaperOptions  *options,
                         GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadEggAnswer) eggs = NULL;
  g_autoptr(SteadPages) pages = NULL;
  gint64 flock_id;

  if (imprint == NULL || !stead_subject_flock (store, of, &flock_id, error))
    return NULL;
  eggs = stead_egg_answer_new (store, flock_id, error);
  if (eggs == NULL)
    return NULL;
  pages = begin (imprint, eggs);
  add_head (pages);
  add_light (pages);
  add_classes (pages);
  if (eggs->caution != NULL)
    stead_pages_add_caution (pages, eggs->caution);
  add_notes (pages);
  add_broken_out (pages);
  stead_pages_add_caution (pages, _("Raw egg can make people ill: wash hands before and after, and clean the table. Eggs "
                                    "that were broken out do not go back into the kitchen."));
  add_heights (pages);
  add_sources (pages);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}
