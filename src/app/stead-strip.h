/* stead-strip.h - the row of posts at the top: a verb and one live figure each. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_STRIP (stead_strip_get_type ())
G_DECLARE_FINAL_TYPE (SteadStrip, stead_strip, STEAD, STRIP, GtkWidget)

/* Signal "chosen" (char *name): the person went to a place. */

GtkWidget  *stead_strip_new          (void);
/* @name: stable; @label: translated verb */
void        stead_strip_add          (SteadStrip *self, const char *name, const char *label);
/* @figure: (nullable): "3 due, 1 warning"; @warns: something is wrong there */
void        stead_strip_set_figure   (SteadStrip *self, const char *name, const char *figure, gboolean warns);
/* @brief: (nullable): the same for a narrow post, "3 due"; %NULL: the figure is cut off there */
void        stead_strip_set_brief    (SteadStrip *self, const char *name, const char *brief);
/* Chooses without the signal; NULL: no place is shown. */
void        stead_strip_select       (SteadStrip *self, const char *name);
/* (transfer none) (nullable) */
const char *stead_strip_get_selected (SteadStrip *self);
/* Name of the nth post, from 0; NULL past the last. */
const char *stead_strip_get_nth      (SteadStrip *self, guint n);

G_END_DECLS
