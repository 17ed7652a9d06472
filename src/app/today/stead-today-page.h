/* stead-today-page.h - the place Today: what is due, and the one-line entry. */
#pragma once

#include "app/stead-page.h"

G_BEGIN_DECLS

#define STEAD_TYPE_TODAY_PAGE (stead_today_page_get_type ())
G_DECLARE_FINAL_TYPE (SteadTodayPage, stead_today_page, STEAD, TODAY_PAGE, SteadPage)

GtkWidget *stead_today_page_new (SteadDesk *desk);

G_END_DECLS
