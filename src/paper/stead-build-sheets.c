/* stead-build-sheets.c - a build on single sheets: what to buy, what may be given, how far
 * it is. */
#include "config.h"

#include "core/stead-money.h"
#include "paper/stead-build-figure.h"
#include "paper/stead-build-paper-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Of the jar, where the drawing stands under it; points. */
#define POSTER_HEIGHT 320.0
#define DRAWING_HEIGHT 200.0

static char *
money (const SteadBuildAnswer *answer,
       gint64                  cents)
{
  return stead_money_format (cents, answer->farm->currency);
}

/* --- what to buy ------------------------------------------------------------------------ */

static void
add_cuts (SteadPages             *pages,
          const SteadBuildAnswer *answer)
{
  for (guint i = 0; answer->takeoff != NULL && i < answer->takeoff->cuts->len; i++)
    {
      const SteadBuildCut *cut = answer->takeoff->cuts->pdata[i];
      /* Translators: head of a list of cuts; size of the boards: "2x4". */
      g_autofree char *head = g_strdup_printf (_("How to cut %s"), cut->size);

      stead_pages_add_subheading (pages, head);
      for (guint k = 0; k < cut->plan->bars->len; k++)
        {
          const SteadCutBar *bar = cut->plan->bars->pdata[k];
          g_autofree char *stock = stead_build_length_text (g_array_index (cut->stocks, SteadCutStock, bar->stock).length_m,
                                                            answer->farm->units);
          g_autofree char *left = stead_build_length_text (bar->left_m, answer->farm->units);
          g_autoptr(GString) pieces = g_string_new (NULL);
          g_autofree char *text = NULL;

          for (gsize p = 0; p < cut->plan->n_kinds; p++)
            {
              g_autofree char *length = stead_build_length_text (g_array_index (cut->pieces, SteadCutPiece, p).length_m,
                                                                 answer->farm->units);

              if (bar->pieces[p] > 0)
                g_string_append_printf (pieces, pieces->len == 0 ? "%u × %s" : " + %u × %s", bar->pieces[p], length);
            }
          /* Translators: "3 of 12 ft: 1 x 8 ft + 1 x 4 ft; left over 0 ft". */
          text = g_strdup_printf (_("%u of %s: %s; left over: %s"), bar->times, stock, pieces->str, left);
          stead_pages_add_text (pages, text);
        }
    }
}

/* What has to be taken along. */
static void
add_total (SteadPages             *pages,
           const SteadBuildAnswer *answer)
{
  g_autofree char *tax = money (answer, answer->bill.tax_cents);
  g_autofree char *all = money (answer, answer->bill.bought_cents + answer->bill.tax_cents);

  if (answer->bill.tax_cents > 0)
    stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { "", _("Sales tax"), "", "", "", tax });
  stead_pages_add_row (pages, STEAD_ROW_TOTAL, STEAD_PAGES_NO_KEY, (const char *[]) { "", _("All together"), "", "", "", all });
}

SteadPages *
stead_build_shopping_new (SteadStore               *store,
                          const char               *of,
                          const SteadPaperOptions  *options,
                          GError                  **error)
{
  const SteadPagesColumn columns[] = {
    { "", STEAD_ALIGN_LEFT, 0 }, { C_("column of a bill", "Thing"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of a bill", "How many"), STEAD_ALIGN_RIGHT, 0 }, { C_("column of a bill", "Where"), STEAD_ALIGN_LEFT, 0.6 },
    { C_("column of a bill", "Price of one"), STEAD_ALIGN_RIGHT, 0 }, { C_("column of a bill", "Cost"), STEAD_ALIGN_RIGHT, 0 },
  };
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadBuildAnswer) answer = imprint == NULL ? NULL : stead_build_paper_read (store, of, error);
  g_autofree char *title = NULL;
  SteadPages *pages;

  if (answer == NULL)
    return NULL;
  /* Translators: title of a paper; name of the build. */
  title = g_strdup_printf (_("To buy: %s"), answer->build->name);
  pages = stead_pages_new (imprint, title, NULL);
  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, answer->sentence);
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->rows->len; i++)
    {
      const SteadBuildRow *row = answer->rows->pdata[i];
      g_autofree char *amount = stead_build_row_amount (row, row->open);
      g_autofree char *price = row->price_cents < 0 ? NULL : money (answer, row->price_cents);
      g_autofree char *cost = row->price_cents < 0 ? NULL : money (answer, row->cents - row->paid_cents);

      if (!row->left_out && !row->given && !row->is_bought)
        stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                             (const char *[]) { "☐", row->name, amount,
                                                row->supplier != NULL ? row->supplier : row->best_supplier, price, cost });
    }
  add_total (pages, answer);
  add_cuts (pages, answer);
  stead_pages_settle (pages);
  return pages;
}

/* --- what may be given ------------------------------------------------------------------ */

SteadPages *
stead_build_donor_new (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  const SteadPagesColumn columns[] = {
    { C_("column of gifts", "What would help"), STEAD_ALIGN_LEFT, 1 }, { C_("column of a bill", "How many"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of gifts", "Worth"), STEAD_ALIGN_RIGHT, 0 }, { C_("column of gifts", "I give it (name)"), STEAD_ALIGN_LEFT, 0.9 },
  };
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadBuildAnswer) answer = imprint == NULL ? NULL : stead_build_paper_read (store, of, error);
  g_autofree char *title = NULL;
  SteadPages *pages;

  if (answer == NULL)
    return NULL;
  /* Translators: title of a paper; name of the build. */
  title = g_strdup_printf (_("Help us build: %s"), answer->build->name);
  pages = stead_pages_new (imprint, title, NULL);
  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, answer->money_sentence);
  if (answer->takeoff != NULL && answer->build->corners->len > 2)
    stead_pages_add_figure (pages, 190, stead_plan_figure_print,
                            stead_plan_figure_new (answer->build, answer->farm->units, FALSE), stead_plan_figure_free);
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->rows->len; i++)
    {
      const SteadBuildRow *row = answer->rows->pdata[i];
      g_autofree char *amount = stead_build_row_amount (row, row->open);
      g_autofree char *worth = row->price_cents < 0 ? NULL : money (answer, row->cents - row->paid_cents);

      if (!row->left_out && !row->given && !row->is_bought)
        stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                             (const char *[]) { row->name, amount, worth, "________________" });
    }
  stead_pages_add_note (pages, _("Money is paid to the school, which writes a receipt. Say what a gift is for; it is used for that alone."));
  stead_pages_settle (pages);
  return pages;
}

/* --- how far it is ---------------------------------------------------------------------- */

typedef struct
{
  double  share;
  char   *percent;
  char   *have;
  char   *goal;
} Poster;

static void
poster_free (gpointer data)
{
  Poster *self = data;

  g_free (self->percent);
  g_free (self->have);
  g_free (self->goal);
  g_free (self);
}

/* A tall jar that fills, and three large words beside it. */
static void
poster_print (cairo_t  *cr,
              double    width,
              double    height,
              gpointer  data)
{
  const Poster *self = data;
  SteadDrawStyle style = { STEAD_SCHEME_PRINT, 20, NULL, NULL };
  double w = width * 0.32, full = height - 8, filled = full * CLAMP (self->share, 0, 1);

  cairo_new_path (cr);
  cairo_rectangle (cr, 4, 4 + full - filled, w, filled);
  stead_fill_pattern (cr, &style, STEAD_ROLE_WATER, STEAD_PATTERN_RISING, FALSE);
  cairo_new_path (cr);
  cairo_rectangle (cr, 4, 4, w, full);
  stead_stroke_line (cr, &style, STEAD_ROLE_INK, STEAD_LINE_SOLID, 4);
  for (int i = 1; i < 4; i++)
    {
      cairo_new_path (cr);
      cairo_move_to (cr, 4, 4 + full * i / 4);
      cairo_rel_line_to (cr, w * 0.2, 0);
      stead_stroke_line (cr, &style, STEAD_ROLE_INK, STEAD_LINE_SOLID, 2);
    }
  stead_text_paint (cr, &style, STEAD_ROLE_INK, self->percent, 4.5, TRUE, STEAD_ALIGN_LEFT, w + 32, height * 0.18);
  stead_text_paint_block (cr, &style, STEAD_ROLE_INK, self->have, 1.7, TRUE, STEAD_ALIGN_LEFT, width - w - 36, w + 32, height * 0.50);
  stead_text_paint_block (cr, &style, STEAD_ROLE_INK, self->goal, 1.3, FALSE, STEAD_ALIGN_LEFT, width - w - 36, w + 32, height * 0.78);
}

SteadPages *
stead_build_poster_new (SteadStore               *store,
                        const char               *of,
                        const SteadPaperOptions  *options,
                        GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadBuildAnswer) answer = imprint == NULL ? NULL : stead_build_paper_read (store, of, error);
  g_autofree char *have = NULL;
  g_autofree char *goal = NULL;
  Poster *poster;
  SteadPages *pages;
  gboolean drawn;

  if (answer == NULL)
    return NULL;
  drawn = answer->takeoff != NULL && answer->build->corners->len > 2;
  have = money (answer, answer->have_cents);
  goal = money (answer, answer->goal_cents);
  poster = g_new0 (Poster, 1);
  poster->share = isnan (answer->share) ? 0 : answer->share;
  poster->percent = stead_words_percent (poster->share, 0);
  /* Translators: on a poster, in large type: money that is there. */
  poster->have = g_strdup_printf (_("%s is there"), have);
  /* Translators: on a poster, under what is there: the goal. */
  poster->goal = g_strdup_printf (_("of %s. Thank you!"), goal);
  pages = stead_pages_new (imprint, answer->build->name, NULL);
  stead_pages_add_title (pages, answer->build->name);
  stead_pages_add_lead (pages, answer->money_sentence);
  stead_pages_add_figure (pages, drawn ? POSTER_HEIGHT : 0, poster_print, poster, poster_free);
  if (drawn)
    {
      stead_pages_add_heading (pages, _("What it will look like"));
      stead_pages_add_figure (pages, DRAWING_HEIGHT, stead_plan_figure_print,
                              stead_plan_figure_new (answer->build, answer->farm->units, FALSE), stead_plan_figure_free);
    }
  stead_pages_settle (pages);
  return pages;
}
