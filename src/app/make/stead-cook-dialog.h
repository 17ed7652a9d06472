/* stead-cook-dialog.h - a kitchen batch is planned from a recipe, or its plan is changed. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_COOK_DIALOG (stead_cook_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadCookDialog, stead_cook_dialog, STEAD, COOK_DIALOG, SteadDialog)

/* A new one.  @recipe_id: 0: the first recipe; @wanted_base: 0: what the recipe makes. */
void stead_cook_dialog_show_new (GtkWidget *parent, SteadDesk *desk, gint64 recipe_id, double wanted_base);
/* The plan of one that is there. */
void stead_cook_dialog_show     (GtkWidget *parent, SteadDesk *desk, gint64 batch_id);

G_END_DECLS
