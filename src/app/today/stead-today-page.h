/* stead-today-page.h - Today: what is due, what is wrong, and the one-line entry. */
#pragma once

#include "app/stead-page.h"

G_BEGIN_DECLS

#define STEAD_TYPE_TODAY_PAGE (stead_today_page_get_type ())
G_DECLARE_FINAL_TYPE (SteadTodayPage, stead_today_page, STEAD, TODAY_PAGE, SteadPage)

G_END_DECLS
