/* stead-raise-page.h - the place Raise: all that the farm keeps alive. */
#pragma once

#include "app/stead-page.h"

G_BEGIN_DECLS

#define STEAD_TYPE_RAISE_PAGE (stead_raise_page_get_type ())
G_DECLARE_FINAL_TYPE (SteadRaisePage, stead_raise_page, STEAD, RAISE_PAGE, SteadPage)

GtkWidget *stead_raise_page_new (SteadDesk *desk);

G_END_DECLS
