/* stead-packet-figures.c - the charts of a packet: production by month, scores of practices. */
#include "config.h"

#include "draw/stead-score-chart.h"
#include "paper/stead-month-figure.h"
#include "paper/stead-packet-figures.h"

#define SCORES_HEIGHT 150.0
#define SCORES_TEXT 8.0

void
stead_packet_figures_add_months (SteadPages              *pages,
                                 const SteadPacketMonths *months)
{
  static const struct
  {
    SteadRole    role;
    SteadPattern pattern;
  } looks[] = {
    [STEAD_BATCH_FLOCK] = { STEAD_ROLE_EGG, STEAD_PATTERN_SOLID },
    [STEAD_BATCH_FISH] = { STEAD_ROLE_FISH, STEAD_PATTERN_FALLING },
    [STEAD_BATCH_CROP] = { STEAD_ROLE_CROP, STEAD_PATTERN_DOTS },
    [STEAD_BATCH_KITCHEN] = { STEAD_ROLE_SAUCE, STEAD_PATTERN_CROSS },
  };
  const SteadMonthSeries series = { .n = (int) months->values->len, .names = (const char * const *) months->names->pdata,
                                    .values = (const double *) (void *) months->values->data, .role = looks[months->kind].role,
                                    .pattern = looks[months->kind].pattern };

  stead_month_figure_add (pages, &series, NULL);
}

/* --- scores ------------------------------------------------------------------------------- */

static void
scores_paint (cairo_t  *cr,
              double    width,
              double    height,
              gpointer  data)
{
  const SteadEventScores *scores = data;
  SteadDrawStyle style = { .scheme = STEAD_SCHEME_PRINT, .font_size = SCORES_TEXT };
  SteadScoreLayout layout;

  stead_score_chart_layout (cr, &scores->series, &style, width, height, &layout);
  stead_score_chart_paint (cr, &scores->series, &style, &layout);
}

void
stead_packet_figures_add_scores (SteadPages       *pages,
                                 SteadEventScores *scores)
{
  stead_pages_add_figure (pages, SCORES_HEIGHT, scores_paint, stead_event_scores_ref (scores),
                          (GDestroyNotify) stead_event_scores_free);
}
