/* stead-post.c - the places of the window, and which of them shows what. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/check/stead-check-page.h"
#include "app/fund/stead-fund-page.h"
#include "app/keep/stead-keep-page.h"
#include "app/make/stead-make-page.h"
#include "app/price/stead-price-page.h"
#include "app/raise/stead-raise-page.h"
#include "app/sell/stead-sell-page.h"
#include "app/show/stead-show-page.h"
#include "app/stead-post.h"
#include "app/today/stead-today-page.h"

const SteadPost stead_posts[STEAD_N_POSTS] = {
  { "today", NC_("place", "Today"), stead_today_page_get_type },
  { "raise", NC_("place", "Raise"), stead_raise_page_get_type },
  { "make", NC_("place", "Make"), stead_make_page_get_type },
  { "check", NC_("place", "Check"), stead_check_page_get_type },
  { "price", NC_("place", "Price"), stead_price_page_get_type },
  { "sell", NC_("place", "Sell"), stead_sell_page_get_type },
  { "fund", NC_("place", "Fund"), stead_fund_page_get_type },
  { "keep", NC_("place", "Keep"), stead_keep_page_get_type },
  { "show", NC_("place", "Show"), stead_show_page_get_type },
};

/* Which place shows a target. */
static const char * const place_of_target[] = {
  [STEAD_TARGET_NONE] = "today",
  [STEAD_TARGET_FLOCK] = "raise",
  [STEAD_TARGET_BATCH] = "raise",
  [STEAD_TARGET_WATER] = "raise",
  [STEAD_TARGET_ITEM] = "keep",
  [STEAD_TARGET_LOT] = "keep",
  [STEAD_TARGET_RECEIPT] = "keep",
  [STEAD_TARGET_ASSET] = "keep",
  [STEAD_TARGET_PRODUCT] = "price",
  [STEAD_TARGET_NEW_RECEIPT] = "keep",
  [STEAD_TARGET_RECIPE] = "make",
  [STEAD_TARGET_KITCHEN] = "make",
  [STEAD_TARGET_SALE] = "sell",
  [STEAD_TARGET_CHECKLIST] = "check",
  [STEAD_TARGET_HOLD] = "check",
  [STEAD_TARGET_COOLER] = "check",
  [STEAD_TARGET_PERSON] = "show",
  [STEAD_TARGET_HOURS] = "show",
  [STEAD_TARGET_BUILD] = "fund",
  [STEAD_TARGET_SKILLS] = "show",
  [STEAD_TARGET_JOURNAL] = "show",
  [STEAD_TARGET_EVENT] = "show",
  [STEAD_TARGET_PACKET] = "show",
};

const SteadPost *
stead_post_find (const char *name)
{
  for (gsize i = 0; i < STEAD_N_POSTS; i++)
    if (g_strcmp0 (stead_posts[i].name, name) == 0)
      return &stead_posts[i];
  return NULL;
}

const SteadPost *
stead_post_of_target (int target)
{
  return target >= 0 && target < (int) G_N_ELEMENTS (place_of_target) ? stead_post_find (place_of_target[target]) : NULL;
}
