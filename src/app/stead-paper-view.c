/* stead-paper-view.c - one page of a document, scaled to the width that it gets.
 *
 * The page is drawn by the same call as on the printer and in the PDF.
 */
#include "config.h"

#include "app/stead-paper-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/stead-ui.h"

#define MIN_WIDTH 240
#define NATURAL_SCALE 1.2   /* px for one point: a little larger than on paper */

struct _SteadPaperView
{
  GtkWidget   parent_instance;

  SteadPaper *paper;
  int         page;
};

G_DEFINE_FINAL_TYPE (SteadPaperView, stead_paper_view, GTK_TYPE_WIDGET)

static GtkSizeRequestMode
stead_paper_view_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
stead_paper_view_measure (GtkWidget      *widget,
                          GtkOrientation  orientation,
                          int             for_size,
                          int            *minimum,
                          int            *natural,
                          int            *minimum_baseline,
                          int            *natural_baseline)
{
  SteadPaperView *self = STEAD_PAPER_VIEW (widget);
  double width, height;

  stead_paper_get_size (self->paper, &width, &height);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = MIN_WIDTH;
      *natural = (int) lround (width * NATURAL_SCALE);
      return;
    }
  *minimum = (int) lround ((for_size > 0 ? for_size : MIN_WIDTH) / width * height);
  *natural = *minimum;
}

static void
stead_paper_view_snapshot (GtkWidget   *widget,
                           GtkSnapshot *snapshot)
{
  SteadPaperView *self = STEAD_PAPER_VIEW (widget);
  float w = (float) gtk_widget_get_width (widget), h = (float) gtk_widget_get_height (widget);
  double width, height;
  cairo_t *cr;

  if (w < 1 || h < 1)
    return;
  stead_paper_get_size (self->paper, &width, &height);
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, w, h));
  cairo_scale (cr, (double) w / width, (double) w / width);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  stead_paper_draw_page (self->paper, self->page, cr);
  cairo_destroy (cr);
}

static void
stead_paper_view_dispose (GObject *object)
{
  g_clear_object (&STEAD_PAPER_VIEW (object)->paper);
  G_OBJECT_CLASS (stead_paper_view_parent_class)->dispose (object);
}

static void
stead_paper_view_class_init (SteadPaperViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = stead_paper_view_dispose;
  widget_class->get_request_mode = stead_paper_view_get_request_mode;
  widget_class->measure = stead_paper_view_measure;
  widget_class->snapshot = stead_paper_view_snapshot;
  gtk_widget_class_set_css_name (widget_class, "paperpage");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
stead_paper_view_init (SteadPaperView *self)
{
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

GtkWidget *
stead_paper_view_new (SteadPaper *paper,
                      int         page)
{
  SteadPaperView *self;
  g_autofree char *name = NULL;

  g_return_val_if_fail (STEAD_IS_PAPER (paper), NULL);
  g_return_val_if_fail (page >= 0 && page < stead_paper_get_n_pages (paper), NULL);

  self = g_object_new (STEAD_TYPE_PAPER_VIEW, NULL);
  self->paper = g_object_ref (paper);
  self->page = page;
  name = g_strdup_printf (_("Page %d of %d"), page + 1, stead_paper_get_n_pages (paper));
  stead_ui_name (GTK_WIDGET (self), name);
  return GTK_WIDGET (self);
}
