/* stead-figure.h - a chart of an answer with its words: the window and the page paint the same.
 *
 * A figure looks at the answer that it was made of, and copies nothing of it: it is made anew
 * when the answer was settled anew, and goes before the answer does, unless it owns it.
 */
#pragma once

#include "draw/stead-draw.h"

G_BEGIN_DECLS

typedef struct _SteadFigure SteadFigure;

/* What each kind of figure does; @layout: as large as layout_size. */
typedef struct
{
  gsize   size;          /* of the struct that begins with a SteadFigure */
  gsize   layout_size;
  void  (*layout) (const SteadFigure *self, cairo_t *cr, const SteadDrawStyle *style, double width, double height,
                   gpointer layout);
  void  (*paint)  (const SteadFigure *self, cairo_t *cr, const SteadDrawStyle *style, gconstpointer layout);
  /* (transfer full) (nullable): what is under the pointer. */
  char *(*hint)   (const SteadFigure *self, gconstpointer layout, double x, double y);
  /* (transfer full) (nullable): the value number @index and where it stands; %NULL: there is none. */
  char *(*step)   (const SteadFigure *self, gconstpointer layout, int index, double *x, double *y);
  /* (nullable): what is freed beside the struct. */
  void  (*clear)  (SteadFigure *self);
} SteadFigureClass;

struct _SteadFigure
{
  const SteadFigureClass *klass;
  char                   *currency;
  gpointer                kept;       /* (nullable): the layout as it was last painted to be looked at */
  gpointer                owned;      /* (nullable) */
  GDestroyNotify          disown;
};

/* (transfer full): zeroes but for what is given; @currency: ISO 4217 */
gpointer stead_figure_new   (const SteadFigureClass *klass, const char *currency) G_GNUC_WARN_UNUSED_RESULT;
void     stead_figure_free  (gpointer figure);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadFigure, stead_figure_free)

/* The answer goes with the figure. */
void     stead_figure_own   (SteadFigure *self, gpointer answer, GDestroyNotify destroy);
/* @keep: hints and steps are of this layout from now on. */
void     stead_figure_paint (SteadFigure *self, cairo_t *cr, const SteadDrawStyle *style, double width, double height,
                             gboolean keep);
/* (nullable): nothing is there, or nothing was painted yet. */
char    *stead_figure_hint  (const SteadFigure *self, double x, double y) G_GNUC_WARN_UNUSED_RESULT;
char    *stead_figure_step  (const SteadFigure *self, int index, double *x, double *y) G_GNUC_WARN_UNUSED_RESULT;
/* A SteadFigurePaint for one of them. */
void     stead_figure_print (cairo_t *cr, double width, double height, gpointer figure);

G_END_DECLS
