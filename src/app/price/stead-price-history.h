/* stead-price-history.h - "How the price changed": steps over time, and a small table. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-price-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PRICE_HISTORY (stead_price_history_get_type ())
G_DECLARE_FINAL_TYPE (SteadPriceHistoryView, stead_price_history, STEAD, PRICE_HISTORY, GtkWidget)

GtkWidget *stead_price_history_new (void);
/* @answer: (nullable): copied from */
void       stead_price_history_set (SteadPriceHistoryView  *self,
                                    const SteadPriceAnswer *answer,
                                    SteadDay                today);

G_END_DECLS
