/* stead-choice-view.h - which price: markup and margin, a bundle, and what people paid before. */
#pragma once

#include "app/price/stead-view.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CHOICE_VIEW (stead_choice_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadChoiceView, stead_choice_view, STEAD, CHOICE_VIEW, SteadView)

GtkWidget *stead_choice_view_new (void);

G_END_DECLS
