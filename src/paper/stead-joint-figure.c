/* stead-joint-figure.c - one cost, shared in the ways that can be used. */
#include "config.h"

#include "core/stead-money.h"
#include "draw/stead-share-chart.h"
#include "paper/stead-price-figure.h"

#include <glib/gi18n-lib.h>

#define ROW_HEIGHT 30.0
#define KEY_HEIGHT 26.0

typedef struct
{
  SteadFigure             figure;
  const SteadJointAnswer *answer;
  GPtrArray              *texts;      /* of char *: on the bars */
  SteadJointMethod        ways[STEAD_N_JOINT_METHODS];   /* of the bars */
  SteadShareSeries        series;
} Joint;

static const SteadJointPart *
part_at (const SteadJointAnswer *answer,
         guint                   i)
{
  return answer->parts->pdata[i];
}

static char *
money (const SteadJointAnswer *answer,
       gint64                  cents)
{
  return stead_money_format (cents, answer->farm->currency);
}

/* A part that bears less than nothing cannot stand on a bar. */
static gboolean
can_stand (const SteadJointAnswer *answer,
           SteadJointMethod        method)
{
  for (guint i = 0; i < answer->parts->len; i++)
    if (part_at (answer, i)->share_cents[method] < 0)
      return FALSE;
  return answer->usable[method];
}

static int
count_ways (const SteadJointAnswer *answer)
{
  int n = 0;

  for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
    n += can_stand (answer, method);
  return n;
}

static void
fill_way (Joint            *self,
          SteadJointMethod  method)
{
  SteadShareWay *way = &self->series.ways[self->series.n_ways];

  self->ways[self->series.n_ways++] = method;
  way->name = stead_joint_method_name (method);
  way->chosen = method == self->answer->method;
  for (int i = 0; i < self->series.n_parts; i++)
    {
      char *text = money (self->answer, part_at (self->answer, (guint) i)->share_cents[method]);

      g_ptr_array_add (self->texts, text);
      way->cents[i] = (double) part_at (self->answer, (guint) i)->share_cents[method];
      way->texts[i] = text;
    }
}

static void
fill_series (Joint *self)
{
  static const SteadRole roles[] = { STEAD_ROLE_EGG, STEAD_ROLE_FISH, STEAD_ROLE_CROP, STEAD_ROLE_SAUCE, STEAD_ROLE_WATER,
                                     STEAD_ROLE_SHELL };
  static const SteadPattern patterns[] = { STEAD_PATTERN_SOLID, STEAD_PATTERN_RISING, STEAD_PATTERN_DOTS,
                                           STEAD_PATTERN_LINES, STEAD_PATTERN_FALLING, STEAD_PATTERN_CROSS };

  self->series.n_parts = (int) MIN (self->answer->parts->len, STEAD_MAX_SHARES);
  for (int i = 0; i < self->series.n_parts; i++)
    self->series.parts[i] = (SteadShareChartPart) { part_at (self->answer, (guint) i)->name, roles[i], patterns[i] };
  for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
    if (can_stand (self->answer, method))
      fill_way (self, method);
}

/* "Net realizable value: Eggs $12.00, Hens $1.00" */
static char *
way_text (const Joint      *self,
          SteadJointMethod  method)
{
  g_autoptr(GString) text = g_string_new (NULL);

  for (guint i = 0; i < self->answer->parts->len; i++)
    {
      const SteadJointPart *part = part_at (self->answer, i);
      g_autofree char *cents = money (self->answer, part->share_cents[method]);

      if (part->carries)
        g_string_append_printf (text, "%s%s %s", text->len > 0 ? ", " : "", part->name, cents);
    }
  /* Translators: a way to share a cost, and who bears what. */
  return g_strdup_printf (C_("share of a cost", "%s: %s"), stead_joint_method_name (method), text->str);
}

static void
joint_layout (const SteadFigure    *figure,
              cairo_t              *cr,
              const SteadDrawStyle *style,
              double                width,
              double                height,
              gpointer              layout)
{
  stead_share_chart_layout (cr, &((const Joint *) figure)->series, style, width, height, layout);
}

static void
joint_paint (const SteadFigure    *figure,
             cairo_t              *cr,
             const SteadDrawStyle *style,
             gconstpointer         layout)
{
  stead_share_chart_paint (cr, &((const Joint *) figure)->series, style, layout);
}

static char *
joint_hint (const SteadFigure *figure,
            gconstpointer      layout,
            double             x,
            double             y)
{
  const Joint *self = (const Joint *) figure;
  int i = stead_share_chart_at (&self->series, layout, y);

  return i >= 0 ? way_text (self, self->ways[i]) : NULL;
}

static char *
joint_step (const SteadFigure *figure,
            gconstpointer      layout,
            int                index,
            double            *x,
            double            *y)
{
  const Joint *self = (const Joint *) figure;
  const SteadShareLayout *bars = layout;

  if (index >= self->series.n_ways)
    return NULL;
  *x = bars->bars[index][0].x;
  *y = bars->bars[index][0].y;
  return way_text (self, self->ways[index]);
}

static void
joint_clear (SteadFigure *figure)
{
  g_ptr_array_unref (((Joint *) figure)->texts);
}

SteadFigure *
stead_joint_figure_new (const SteadJointAnswer *answer)
{
  static const SteadFigureClass klass = { sizeof (Joint), sizeof (SteadShareLayout), joint_layout, joint_paint, joint_hint,
                                          joint_step, joint_clear };
  Joint *self;

  g_return_val_if_fail (answer != NULL, NULL);

  self = stead_figure_new (&klass, answer->farm->currency);
  self->answer = answer;
  self->texts = g_ptr_array_new_with_free_func (g_free);
  fill_series (self);
  return &self->figure;
}

double
stead_joint_figure_height (const SteadJointAnswer *answer)
{
  g_return_val_if_fail (answer != NULL, 0);

  return KEY_HEIGHT + ROW_HEIGHT * MAX (1, count_ways (answer));
}
