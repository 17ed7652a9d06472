/* stead-water-form.h - the sheet of one water test, judged as it is typed. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-water-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_WATER_FORM (stead_water_form_get_type ())
G_DECLARE_FINAL_TYPE (SteadWaterForm, stead_water_form, STEAD, WATER_FORM, GtkWidget)

/* What was typed stays as long as it is the same water; the day is proposed anew. */
void stead_water_form_show  (SteadWaterForm *self, SteadDesk *desk, const SteadWaterAnswer *answer);
void stead_water_form_focus (SteadWaterForm *self);
/* What stands under the fields and scrolls with them. */
void stead_water_form_add_below (SteadWaterForm *self, GtkWidget *widget);
/* Without its fields there is only what was added below: the water is no longer in use. */
void stead_water_form_set_open  (SteadWaterForm *self, gboolean open);

G_END_DECLS
