/* stead-show-page.h - the place Show: who worked, what was learned, and what goes out. */
#pragma once

#include "app/stead-page.h"

G_BEGIN_DECLS

#define STEAD_TYPE_SHOW_PAGE (stead_show_page_get_type ())
G_DECLARE_FINAL_TYPE (SteadShowPage, stead_show_page, STEAD, SHOW_PAGE, SteadPage)

G_END_DECLS
