/* stead-figure.c - a chart of an answer with its words: the window and the page paint the same. */
#include "config.h"

#include "paper/stead-figure.h"

#define PRINT_TEXT 9.0

gpointer
stead_figure_new (const SteadFigureClass *klass,
                  const char             *currency)
{
  SteadFigure *self = g_malloc0 (klass->size);

  self->klass = klass;
  self->currency = g_strdup (currency);
  return self;
}

void
stead_figure_free (gpointer figure)
{
  SteadFigure *self = figure;

  if (self == NULL)
    return;
  if (self->klass->clear != NULL)
    self->klass->clear (self);
  if (self->disown != NULL)
    self->disown (self->owned);
  g_free (self->currency);
  g_free (self->kept);
  g_free (self);
}

void
stead_figure_own (SteadFigure    *self,
                  gpointer        answer,
                  GDestroyNotify  destroy)
{
  g_return_if_fail (self != NULL && self->owned == NULL);

  self->owned = answer;
  self->disown = destroy;
}

void
stead_figure_paint (SteadFigure          *self,
                    cairo_t              *cr,
                    const SteadDrawStyle *style,
                    double                width,
                    double                height,
                    gboolean              keep)
{
  g_autofree gpointer layout = NULL;

  g_return_if_fail (self != NULL && cr != NULL && style != NULL);

  layout = g_malloc0 (self->klass->layout_size);
  self->klass->layout (self, cr, style, width, height, layout);
  self->klass->paint (self, cr, style, layout);
  if (!keep)
    return;
  g_free (self->kept);
  self->kept = g_steal_pointer (&layout);
}

char *
stead_figure_hint (const SteadFigure *self,
                   double             x,
                   double             y)
{
  g_return_val_if_fail (self != NULL, NULL);

  return self->kept != NULL && self->klass->hint != NULL ? self->klass->hint (self, self->kept, x, y) : NULL;
}

char *
stead_figure_step (const SteadFigure *self,
                   int                index,
                   double            *x,
                   double            *y)
{
  g_return_val_if_fail (self != NULL && x != NULL && y != NULL, NULL);

  if (self->kept == NULL || self->klass->step == NULL || index < 0)
    return NULL;
  return self->klass->step (self, self->kept, index, x, y);
}

void
stead_figure_print (cairo_t  *cr,
                    double    width,
                    double    height,
                    gpointer  figure)
{
  SteadFigure *self = figure;
  SteadDrawStyle style = { STEAD_SCHEME_PRINT, PRINT_TEXT, NULL, self->currency };

  stead_figure_paint (self, cr, &style, width, height, FALSE);
}
