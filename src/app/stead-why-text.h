/* stead-why-text.h - one "Why?", written out: formula, worked, source. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-words.h"

G_BEGIN_DECLS

#define STEAD_TYPE_WHY_TEXT (stead_why_text_get_type ())
G_DECLARE_FINAL_TYPE (SteadWhyText, stead_why_text, STEAD, WHY_TEXT, GtkWidget)

GtkWidget *stead_why_text_new (void);
/* @why: (nullable): hides the widget */
void       stead_why_text_set (SteadWhyText   *self,
                               const SteadWhy *why);

G_END_DECLS
