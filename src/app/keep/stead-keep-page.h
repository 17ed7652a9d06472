/* stead-keep-page.h - the place Keep: items, receipts, lots on hand and assets. */
#pragma once

#include "app/stead-page.h"

G_BEGIN_DECLS

#define STEAD_TYPE_KEEP_PAGE (stead_keep_page_get_type ())
G_DECLARE_FINAL_TYPE (SteadKeepPage, stead_keep_page, STEAD, KEEP_PAGE, SteadPage)

GtkWidget *stead_keep_page_new (SteadDesk *desk);

G_END_DECLS
