/* stead-picture-box.h - pictures of a paper: looked at, chosen, taken off.
 *
 * Each is made small in a thread; nothing is kept in the farm before
 * stead_picture_box_save().
 */
#pragma once

#include <gtk/gtk.h>

#include "store/stead-store.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PICTURE_BOX (stead_picture_box_get_type ())
G_DECLARE_FINAL_TYPE (SteadPictureBox, stead_picture_box, STEAD, PICTURE_BOX, GtkWidget)

/* Property "many" (boolean): whether there may be more than one; else a new one takes the
 * place of the old one. */

/* Shows one more picture that the farm keeps; 0 and what cannot be read show nothing. */
void     stead_picture_box_add        (SteadPictureBox *self, SteadStore *store, gint64 picture_id);
/* Tells the person that a picture is still being read, if one is. */
gboolean stead_picture_box_is_ready   (SteadPictureBox *self);
/* Reads the picture at @path, as if it had been chosen. */
void     stead_picture_box_take       (SteadPictureBox *self, const char *path);

/**
 * stead_picture_box_save:
 *
 * To be called within an act: puts new pictures into the farm.
 *
 * Returns: (transfer full) (element-type gint64): the ids of all that are shown, in their
 * order, or %NULL with @error
 */
GArray  *stead_picture_box_save       (SteadPictureBox *self, SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
