/* stead-statement-chart.c - a statement as steps.
 *
 * Each line begins where the sum of those above it ended.  A total that is the sum of all
 * above it is a bar from nothing; one that sums its own group alone says nothing that the
 * steps do not show, and is left out.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/keep/stead-statement-chart.h"

#include "answer/stead-words.h"
#include "app/stead-chart-area.h"
#include "core/stead-money.h"
#include "draw/stead-bar-chart.h"

/* px: a lower chart has smaller letters than the sheet */
#define LEAST_HEIGHT 240

struct _SteadStatementChart
{
  GtkBox          parent_instance;

  SteadChartArea *area;
  SteadBar        bars[STEAD_MAX_BARS];
  char           *values[STEAD_MAX_BARS];
  int             n;
  SteadBarLayout  layout;   /* as it stands on the screen */
};

G_DEFINE_FINAL_TYPE (SteadStatementChart, stead_statement_chart, GTK_TYPE_BOX)

static SteadBarSeries
series_of (SteadStatementChart *self)
{
  return (SteadBarSeries) { self->bars, self->n, TRUE, NAN, NULL };
}

static void
paint_cb (cairo_t              *cr,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          gpointer              data)
{
  SteadStatementChart *self = data;
  SteadBarSeries series = series_of (self);
  SteadBarLayout layout;

  if (self->n == 0)
    return;
  stead_bar_chart_layout (cr, &series, style, width, height, &layout);
  stead_bar_chart_paint (cr, &series, style, &layout, -1);
  if ((int) width == gtk_widget_get_width (GTK_WIDGET (self->area)))
    self->layout = layout;
}

static char *
about (SteadStatementChart *self,
       int                  bar)
{
  return g_strdup_printf ("%s: %s", self->bars[bar].name, self->bars[bar].value);
}

static char *
hint_cb (double   x,
         double   y,
         gpointer data)
{
  SteadStatementChart *self = data;
  SteadBarSeries series = series_of (self);
  int bar = self->n > 0 ? stead_bar_chart_at (&series, &self->layout, y) : -1;

  return bar >= 0 ? about (self, bar) : NULL;
}

static char *
step_cb (int       index,
         double   *x,
         double   *y,
         gpointer  data)
{
  SteadStatementChart *self = data;

  if (index < 0 || index >= self->n)
    return NULL;
  *x = self->layout.bars[index].x + self->layout.bars[index].width / 2;
  *y = self->layout.bars[index].y;
  return about (self, index);
}

static void
clear (SteadStatementChart *self)
{
  for (int i = 0; i < self->n; i++)
    g_free (self->values[i]);
  self->n = 0;
}

static void
push (SteadStatementChart      *self,
      const SteadStatementLine *line,
      gboolean                  is_step,
      gint64                    from,
      const char               *currency)
{
  int i = self->n++;
  gboolean up = line->cents >= 0;
  g_autofree char *money = stead_money_format (line->cents, currency);

  self->values[i] = g_strconcat (up && is_step ? "+" : "", money, NULL);
  self->bars[i] = (SteadBar) {
    .name = line->label, .value = self->values[i], .from = (double) from, .to = (double) (from + line->cents),
    .role = !is_step ? STEAD_ROLE_INK : up ? STEAD_ROLE_WATER : STEAD_ROLE_TOMATO,
    .pattern = !is_step ? STEAD_PATTERN_SOLID : up ? STEAD_PATTERN_FALLING : STEAD_PATTERN_RISING,
    .total = !is_step,
  };
}

/* The net income is a total of its own statement, and a step in that of the worth. */
static void
fill (SteadStatementChart        *self,
      const SteadStatementAnswer *answer,
      SteadStatementPart          part)
{
  gint64 sum = 0;

  for (guint i = 0; i < answer->lines->len && self->n < STEAD_MAX_BARS; i++)
    {
      const SteadStatementLine *line = answer->lines->pdata[i];
      gboolean is_sum = line->is_total && (self->n == 0 || line->cents == sum);
      gboolean is_step = !line->is_total || (!is_sum && part == STEAD_STATEMENT_WORTH);

      if (line->part != part || line->is_apart || (!is_sum && !is_step) || (is_step && line->cents == 0))
        continue;
      push (self, line, is_step, is_step ? sum : 0, answer->farm->currency);
      sum = is_step ? sum + line->cents : line->cents;
    }
}

void
stead_statement_chart_set (SteadStatementChart        *self,
                           const SteadStatementAnswer *answer,
                           SteadStatementPart          part)
{
  g_autofree char *sentence = NULL;
  SteadDrawStyle style;
  SteadBarSeries series;
  int height;

  g_return_if_fail (STEAD_IS_STATEMENT_CHART (self));

  clear (self);
  if (answer != NULL)
    fill (self, answer, part);
  /* Two bars say no more than the two lines beside them. */
  gtk_widget_set_visible (GTK_WIDGET (self), self->n > 2);
  if (self->n <= 2)
    return;
  sentence = stead_words_plain (answer->sentence);
  stead_chart_area_set_currency (self->area, answer->farm->currency);
  stead_chart_area_set_file_name (self->area, stead_statement_part_title (part));
  stead_chart_area_describe (self->area, stead_statement_part_title (part), sentence);
  stead_chart_area_get_style (self->area, answer->farm->currency, &style);
  series = series_of (self);
  height = (int) stead_bar_chart_height (&series, &style);
  gtk_widget_set_size_request (GTK_WIDGET (self->area), -1, MAX (height, LEAST_HEIGHT));
  gtk_widget_queue_draw (GTK_WIDGET (self->area));
}

static void
stead_statement_chart_dispose (GObject *object)
{
  SteadStatementChart *self = STEAD_STATEMENT_CHART (object);

  clear (self);
  G_OBJECT_CLASS (stead_statement_chart_parent_class)->dispose (object);
}

static void
stead_statement_chart_class_init (SteadStatementChartClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_statement_chart_dispose;
}

static void
stead_statement_chart_init (SteadStatementChart *self)
{
  self->area = STEAD_CHART_AREA (stead_chart_area_new ());
  stead_chart_area_set_paint (self->area, paint_cb, hint_cb, self);
  stead_chart_area_set_step (self->area, step_cb);
  gtk_widget_set_hexpand (GTK_WIDGET (self->area), TRUE);
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->area));
}

GtkWidget *
stead_statement_chart_new (void)
{
  return g_object_new (STEAD_TYPE_STATEMENT_CHART, NULL);
}
