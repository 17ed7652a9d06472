/* stead-ask-row.h - one question, its answers as buttons. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-check-plan-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_ASK_ROW (stead_ask_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadAskRow, stead_ask_row, STEAD, ASK_ROW, GtkWidget)

/* Signal: "answered" (): a person chose; ask stead_ask_row_get(). */

GtkWidget *stead_ask_row_new  (void);
/* @with_food: the name of the food stands over it. */
void       stead_ask_row_show (SteadAskRow *self, const SteadCheckAsked *asked, gboolean with_food);
gboolean   stead_ask_row_is   (SteadAskRow *self, const SteadCheckAsked *asked);
/* Its strings belong to the row; a word of NULL: no answer. */
SteadCheckAnswered stead_ask_row_get (SteadAskRow *self);

G_END_DECLS
