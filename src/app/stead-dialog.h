/* stead-dialog.h - the frame of every dialog that changes one thing: what is
 * asked, what went wrong, and Delete, Cancel, Save.
 *
 * A subclass gives its fields as the property "content" and does the saving.
 * Escape always leaves, and nothing is saved then.  Who had typed something may go on
 * with it for as long as the strip below the window says so; Cancel is meant as it is said.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_DIALOG (stead_dialog_get_type ())
G_DECLARE_DERIVABLE_TYPE (SteadDialog, stead_dialog, STEAD, DIALOG, GtkWindow)

struct _SteadDialogClass
{
  GtkWindowClass parent_class;

  /* %TRUE closes the dialog.  %FALSE with @error shows it above the buttons;
   * %FALSE without means that a field already says what is wrong. */
  gboolean (*save)   (SteadDialog *self, GError **error);
  /* (nullable): what Delete does; the button is there only if can-delete is set. */
  gboolean (*remove) (SteadDialog *self, GError **error);
};

/* Action without a parameter, for what is in it: it has become higher or lower. */
#define STEAD_DIALOG_FIT "dialog.fit"

/* Properties: "content" (GtkWidget), "save-label", "delete-label" (each NULL: no such button). */

SteadDesk *stead_dialog_get_desk   (SteadDialog *self);
/* Sets the desk, stands over @parent's window, and shows itself. */
void       stead_dialog_present    (SteadDialog *self, GtkWidget *parent, SteadDesk *desk);
void       stead_dialog_show_error (SteadDialog *self, const char *text);

G_END_DECLS
