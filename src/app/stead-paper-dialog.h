/* stead-paper-dialog.h - a document's pages, to look at, print and save. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"
#include "paper/stead-paper.h"

G_BEGIN_DECLS

/* Shows the document @name of @of (nullable); errors are told beside the button that asked. */
void stead_paper_dialog_show (GtkWidget *parent, SteadDesk *desk, const char *name, const char *of);

/* The same for a price that is tried out: @cvp is what stands under the handles. */
void stead_paper_dialog_show_tried (GtkWidget      *parent,
                                    SteadDesk      *desk,
                                    const char     *name,
                                    const char     *of,
                                    const SteadCvp *cvp);

/* Sheets of labels for the lot with the code @of. */
void stead_paper_dialog_show_labels (GtkWidget               *parent,
                                     SteadDesk               *desk,
                                     const char              *of,
                                     const SteadLabelOptions *labels);

/* The same for a paper of money, from the day @from to the day @to. */
void stead_paper_dialog_show_days (GtkWidget  *parent,
                                   SteadDesk  *desk,
                                   const char *name,
                                   const char *of,
                                   SteadDay    from,
                                   SteadDay    to);

G_END_DECLS
