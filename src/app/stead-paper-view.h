/* stead-paper-view.h - one page of a document, to look at. */
#pragma once

#include <gtk/gtk.h>

#include "paper/stead-paper.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PAPER_VIEW (stead_paper_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadPaperView, stead_paper_view, STEAD, PAPER_VIEW, GtkWidget)

/* @page: from 0.  As wide as there is room, as high as the page then is. */
GtkWidget *stead_paper_view_new (SteadPaper *paper,
                                 int         page);

G_END_DECLS
