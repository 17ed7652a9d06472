/* repo-fixture.h - a small farm, made through the repositories. */
#pragma once

#include "store-fixture.h"
#include "stumble.h"
#include "store/stead-asset-repo.h"
#include "store/stead-batch-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-flock-repo.h"
#include "store/stead-harvest-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-product-repo.h"
#include "store/stead-receipt-repo.h"
#include "store/stead-search-repo.h"

G_BEGIN_DECLS

/* All tests live on this day. */
#define TODAY (stead_day_new (2026, 3, 3))

/* One pound in kg (NIST Special Publication 811, appendix B). */
#define LB 0.45359237

typedef struct
{
  SteadStore *store;
  gint64      feed;     /* "Layer feed", lb */
  gint64      straw;    /* "Straw", bedding, lb */
  gint64      carton;   /* "Carton", packaging, pieces */
  gint64      flock;    /* "Hens 1": 30 hens, housed 100 days ago, feeding Layer feed */
  gint64      student;
  gint64      advisor;
} Farm;

/* Expands to one action around a call that must succeed; but first the file fails at each
 * statement of the call in turn, and the call must say so, and leave what it was given as it
 * was: then it is tried again at once, as a person would.  @as_it_was must hold after each try
 * that failed. */
#define ACT_LEAVING(farm, call, as_it_was) \
  G_STMT_START { \
    gboolean act_failed; \
    do \
      { \
        g_autoptr(GError) act_error = NULL; \
        GError **err = &act_error; \
        gboolean act_worked; \
        g_assert_true (stead_store_begin ((farm)->store, #call, err)); \
        stumble_arm (SQLITE_IOERR); \
        act_worked = (call); \
        act_failed = stumble_check (#call, act_worked, act_error); \
        if (act_failed) \
          { \
            g_assert_true (as_it_was); \
            stead_store_rollback ((farm)->store); \
            continue; \
          } \
        g_assert_no_error (act_error); \
        g_assert_true (act_worked); \
        g_assert_true (stead_store_commit ((farm)->store, err)); \
        g_assert_no_error (act_error); \
      } \
    while (act_failed); \
  } G_STMT_END

#define ACT(farm, call) ACT_LEAVING (farm, call, TRUE)

/* What is saved unread changes nothing, so it is no step to undo. */
#define ACT_FOR_NOTHING(farm, call) \
  G_STMT_START { \
    gint64 steps = fixture_number ((farm)->store, "SELECT max (id) FROM step"); \
    ACT (farm, call); \
    g_assert_cmpint (fixture_number ((farm)->store, "SELECT max (id) FROM step"), ==, steps); \
  } G_STMT_END

/* The call must be refused with this code, and the message must hold @words; rolled back. */
#define REFUSE(farm, call, code, words) \
  G_STMT_START { \
    g_autoptr(GError) act_error = NULL; \
    GError **err = &act_error; \
    g_assert_true (stead_store_begin ((farm)->store, #call, err)); \
    g_assert_false (call); \
    g_assert_error (act_error, STEAD_STORE_ERROR, code); \
    farm_assert_says (act_error->message, words); \
    stead_store_rollback ((farm)->store); \
  } G_STMT_END

#define INVALID(farm, call, words) REFUSE (farm, call, STEAD_STORE_ERROR_INVALID, words)

Farm  *farm_new  (void);
void   farm_free (Farm *farm);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Farm, farm_free)

void farm_assert_says (const char *message, const char *words);

gint64 farm_item    (Farm *farm, const char *name, SteadItemKind kind, const char *unit);
/* A receipt of one line; returns its id. */
gint64 farm_receipt (Farm *farm, gint64 item_id, SteadDay day, double base, gint64 cents, gboolean is_gift);
/* An entry; eggs may be STEAD_COUNT_NONE, feed NAN; returns its id. */
gint64 farm_entry   (Farm *farm, SteadDay day, int eggs, double feed_kg, int deaths);

/* 500 fish stocked @days ago, feeding nothing; returns the batch's id. */
gint64 farm_fish    (Farm *farm, const char *name, int days);
/* A harvest of @kg out of @pieces fish into a lot of the item; returns its id. */
gint64 farm_harvest (Farm *farm, gint64 batch_id, gint64 item_id, SteadDay day, double kg, gint64 pieces, gint64 cents);

/* Fails if the ledger breaks one of its rules anywhere. */
void farm_assert_ledger (Farm *farm);
/* Undoes all steps, redoes them, and compares whole dumps. */
void farm_assert_undo   (Farm *farm);
/* The same as far back as the first step that is signed; returns how many were undone. */
int  farm_assert_undo_to_signed (Farm *farm);

G_END_DECLS
