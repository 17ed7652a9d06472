/* stead-fund-page.h - the place Fund: what is to be built, what it takes, and who pays. */
#pragma once

#include "app/stead-page.h"

G_BEGIN_DECLS

#define STEAD_TYPE_FUND_PAGE (stead_fund_page_get_type ())
G_DECLARE_FINAL_TYPE (SteadFundPage, stead_fund_page, STEAD, FUND_PAGE, SteadPage)

G_END_DECLS
