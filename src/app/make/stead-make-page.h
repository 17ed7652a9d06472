/* stead-make-page.h - the place Make: recipes, and what is cooked from them. */
#pragma once

#include "app/stead-page.h"

G_BEGIN_DECLS

#define STEAD_TYPE_MAKE_PAGE (stead_make_page_get_type ())
G_DECLARE_FINAL_TYPE (SteadMakePage, stead_make_page, STEAD, MAKE_PAGE, SteadPage)

GtkWidget *stead_make_page_new (SteadDesk *desk);

G_END_DECLS
