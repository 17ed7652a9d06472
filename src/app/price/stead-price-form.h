/* stead-price-form.h - the fields beside the handles, and what is kept of them. */
#pragma once

#include <gtk/gtk.h>

#include "app/price/stead-price-model.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PRICE_FORM (stead_price_form_get_type ())
G_DECLARE_FINAL_TYPE (SteadPriceForm, stead_price_form, STEAD, PRICE_FORM, GtkWidget)

GtkWidget *stead_price_form_new (SteadDesk       *desk,
                                 SteadPriceModel *model);

G_END_DECLS
