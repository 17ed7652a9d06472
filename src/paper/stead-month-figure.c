/* stead-month-figure.c - columns over months, as a figure on pages. */
#include "config.h"

#include "paper/stead-month-figure.h"

#define CHART_HEIGHT 92.0
#define CHART_TEXT 8.0

typedef struct
{
  SteadMonthSeries  series;
  char             *names[STEAD_MONTHS_MAX];
  double            values[STEAD_MONTHS_MAX];
  double            others[STEAD_MONTHS_MAX];
  char              currency[4];
} Figure;

static void
figure_free (gpointer data)
{
  Figure *figure = data;

  for (int i = 0; i < figure->series.n; i++)
    g_free (figure->names[i]);
  g_free (figure);
}

static void
figure_paint (cairo_t  *cr,
              double    width,
              double    height,
              gpointer  data)
{
  Figure *figure = data;
  SteadDrawStyle style = { .scheme = STEAD_SCHEME_PRINT, .font_size = CHART_TEXT, .currency = figure->currency };
  SteadMonthLayout layout;

  stead_month_chart_layout (cr, &figure->series, &style, width, height, &layout);
  stead_month_chart_paint (cr, &figure->series, &style, &layout);
}

void
stead_month_figure_add (SteadPages             *pages,
                        const SteadMonthSeries *series,
                        const char             *currency)
{
  Figure *figure = g_new0 (Figure, 1);
  int first = MAX (series->n - STEAD_MONTHS_MAX, 0);

  figure->series = *series;
  figure->series.n = series->n - first;
  for (int i = 0; i < figure->series.n; i++)
    {
      figure->names[i] = g_strdup (series->names[first + i]);
      figure->values[i] = series->values[first + i];
      figure->others[i] = series->others != NULL ? series->others[first + i] : 0;
    }
  figure->series.names = (const char * const *) figure->names;
  figure->series.values = figure->values;
  figure->series.others = series->others != NULL ? figure->others : NULL;
  g_strlcpy (figure->currency, currency != NULL ? currency : "", sizeof figure->currency);
  stead_pages_add_figure (pages, CHART_HEIGHT, figure_paint, figure, figure_free);
}
