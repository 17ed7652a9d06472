/* farm.h - a small made-up farm in memory, for the tests of the answers.
 *
 * Today is 2026-03-31.  Ten hens, housed on 2026-01-01 at 30 weeks of age, laid
 * eight eggs a day, one of them cracked each tenth day, and ate 1 kg of feed a
 * day; so every figure can be worked out by hand.
 */
#pragma once

#include "answer/stead-words.h"
#include "store/stead-asset-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-flock-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-product-repo.h"
#include "store/stead-receipt-repo.h"

typedef struct
{
  SteadStore *store;
  SteadDay    today;
  gint64      feed;      /* items */
  gint64      carton;
  gint64      straw;
  gint64      flock;
  gint64      product;   /* dozens of eggs at $4.50 from 2026-01-10 */
} Farm;

/* Locale, translations (LANGUAGE tells which) and the test framework. */
void farm_start (int *argc, char ***argv);

/* Whether texts come untranslated, so that a word of them can be looked for. */
gboolean farm_in_english (void);

/* The one of @whys (of SteadWhy) with @title, which is given untranslated; it must be there. */
const SteadWhy *farm_find_why (const GPtrArray *whys, const char *title);

/* The bare farm: items, flock and product, no log, no receipt. */
void farm_set_up   (Farm *farm, gconstpointer data);
void farm_tear_down (Farm *farm, gconstpointer data);

/* Ninety days: 2026-01-01 to 2026-03-31, eggs 8 a day (1 cracked each tenth day), feed 1 kg. */
void farm_log (Farm *farm);

/* One receipt of one line; returns its id. */
gint64 farm_buy (Farm *farm, SteadDay day, gint64 item, double base, gint64 cents, gboolean gift);

/* $60 for 50 kg on the first day and $64 for 50 kg on 2026-02-01; 100 cartons for $31; 10 straw for $50. */
void farm_stock (Farm *farm);

void farm_entry (Farm *farm, SteadDay day, int eggs, int cracked, double feed_kg, int deaths);

/* One action round a call that must succeed; its error goes to &farm_error. */
#define FARM_DO(farm, call) G_STMT_START { \
    g_autoptr(GError) farm_error = NULL; \
    gboolean done = stead_store_begin ((farm)->store, "Test", &farm_error) && (call); \
    g_assert_no_error (farm_error); \
    g_assert_true (done); \
    g_assert_true (stead_store_commit ((farm)->store, &farm_error)); \
  } G_STMT_END
