/* stead-trace-paper.c - one way back on paper: the picture, the amounts, the people and the checks. */
#include "config.h"

#include "answer/stead-subject.h"
#include "answer/stead-trace-answer.h"
#include "draw/stead-trace-chart.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define FIGURE_TEXT 8.0
#define FIGURE_WIDTH 500.0     /* about what a page has between its margins */
#define FIGURE_MOST 480.0      /* leaves the title and the sentence on the same page */

/* --- the picture ------------------------------------------------------------------- */

static void
flow_print (cairo_t  *cr,
            double    width,
            double    height,
            gpointer  data)
{
  const SteadFlow *flow = data;
  SteadDrawStyle style = { STEAD_SCHEME_PRINT, FIGURE_TEXT, NULL, NULL };
  g_auto(SteadTraceLayout) layout = { 0 };

  stead_trace_chart_layout (cr, flow, &style, width, height, &layout);
  stead_trace_chart_paint (cr, flow, &style, &layout);
}

static void
flow_destroy (gpointer data)
{
  stead_flow_free (data);
}

static double
figure_height (const SteadFlow *flow)
{
  SteadDrawStyle style = { STEAD_SCHEME_PRINT, FIGURE_TEXT, NULL, NULL };
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double height = stead_trace_chart_height (cr, flow, &style, FIGURE_WIDTH);

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return CLAMP (height + 2, 40, FIGURE_MOST);
}

/* The figure takes the flow over. */
static void
add_picture (SteadPages       *pages,
             SteadTraceAnswer *answer)
{
  double height = figure_height (answer->flow);

  stead_pages_add_figure (pages, height, flow_print, g_steal_pointer (&answer->flow), flow_destroy);
}

/* --- the amounts --------------------------------------------------------------------- */

static char *
amount (double           base,
        const SteadUnit *unit)
{
  return fabs (base) > 1e-6 ? stead_quantity_format (base, unit) : NULL;
}

/* What a count found came in, what it missed is lost, so that each row adds up. */
static void
add_lot (SteadPages          *pages,
         const SteadTraceRow *row)
{
  const SteadTraceLot *lot = row->lot;
  g_autofree char *name = g_strdup_printf ("%s, %s", row->name, row->from);
  g_autofree char *in = amount (lot->in_base + MAX (lot->found_base, 0), lot->unit);
  g_autofree char *used = amount (lot->used_base, lot->unit);
  g_autofree char *out = amount (lot->sold_base + lot->given_base, lot->unit);
  g_autofree char *lost = amount (lot->lost_base - MIN (lot->found_base, 0), lot->unit);
  g_autofree char *left = amount (lot->left_base, lot->unit);

  stead_pages_add_row (pages, lot->step == 0 ? STEAD_ROW_TOTAL : STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                       (const char *[]) { name, in, used, out, lost, left });
}

static void
add_lots (SteadPages *pages,
          const char *heading,
          GPtrArray  *rows)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a trace", "Lot"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of a trace", "In"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a trace", "Used"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a trace", "Sold or given"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a trace", "Lost"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a trace", "Left"), STEAD_ALIGN_RIGHT, 0 },
  };

  if (rows->len == 0)
    return;
  stead_pages_add_heading (pages, heading);
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < rows->len; i++)
    add_lot (pages, rows->pdata[i]);
}

/* --- where it went --------------------------------------------------------------------- */

static void
add_gone (SteadPages             *pages,
          const SteadTraceAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a trace", "Day"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of a trace", "Lot"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of a trace", "How much"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of a trace", "What became of it"), STEAD_ALIGN_LEFT, 1.2 },
  };

  if (answer->trace->gone->len == 0)
    return;
  stead_pages_add_heading (pages, _("What left, and when"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->trace->gone->len; i++)
    {
      const SteadMove *move = answer->trace->gone->pdata[i];
      g_autofree char *day = stead_day_format (move->day, STEAD_DAY_STYLE_MEDIUM);
      g_autofree char *lot = g_strdup_printf ("%s, %s", move->item_name, move->lot_code);
      g_autofree char *how_much = stead_quantity_format (-move->quantity_base, move->unit);
      const char *kind = move->kind == STEAD_MOVE_SOLD ? C_("what became of a lot", "sold")
                         : move->kind == STEAD_MOVE_GIVEN ? C_("what became of a lot", "given away")
                                                          : C_("what became of a lot", "lost");
      g_autofree char *what = move->reason != NULL ? g_strdup_printf ("%s: %s", kind, move->reason) : g_strdup (kind);

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY, (const char *[]) { day, lot, how_much, what });
    }
}

/* --- people and checks ------------------------------------------------------------------ */

static void
add_batches (SteadPages             *pages,
             const SteadTraceAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of a trace", "Batch"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of a trace", "People"), STEAD_ALIGN_LEFT, 1.2 },
    { C_("column of a trace", "Checks"), STEAD_ALIGN_LEFT, 1.4 },
  };

  if (answer->batches->len == 0)
    return;
  stead_pages_add_heading (pages, _("Who worked on it, and what was checked"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->batches->len; i++)
    {
      const SteadTraceBatchRow *row = answer->batches->pdata[i];

      stead_pages_add_row (pages, STEAD_ROW_PLAIN, STEAD_PAGES_NO_KEY,
                           (const char *[]) { row->batch->name, row->people, row->checks });
    }
}

static SteadPages *
begin (const SteadImprint *imprint,
       SteadTraceAnswer   *answer)
{
  /* Translators: title of a paper: a thing, its lot code. */
  g_autofree char *title = g_strdup_printf (_("%s, lot %s: one way back"), answer->lot->item_name, answer->lot->code);
  SteadPages *pages = stead_pages_new (imprint, title, NULL);

  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, answer->sentence);
  if (answer->caution != NULL)
    stead_pages_add_caution (pages, answer->caution);
  add_picture (pages, answer);
  return pages;
}

SteadPages *
stead_trace_paper_new (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadTraceAnswer) answer = NULL;
  g_autoptr(SteadPages) pages = NULL;
  gint64 lot_id;

  if (imprint == NULL || !stead_subject_lot (store, of, &lot_id, error))
    return NULL;
  answer = stead_trace_answer_new (store, lot_id, error);
  if (answer == NULL)
    return NULL;
  pages = begin (imprint, answer);
  add_lots (pages, _("This lot, and what was made of it"), answer->ahead);
  add_gone (pages, answer);
  add_lots (pages, _("What went into it"), answer->back);
  stead_pages_add_note (pages, _("Each row adds up: what came in was used, sold or given, lost, or is left. "
                                 "What a count found is in “In”, what it missed is in “Lost”."));
  add_batches (pages, answer);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}
