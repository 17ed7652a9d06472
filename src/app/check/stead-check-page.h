/* stead-check-page.h - the place Check: checklists, and what they were read for. */
#pragma once

#include "app/stead-page.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CHECK_PAGE (stead_check_page_get_type ())
G_DECLARE_FINAL_TYPE (SteadCheckPage, stead_check_page, STEAD, CHECK_PAGE, SteadPage)

G_END_DECLS
