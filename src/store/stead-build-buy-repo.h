/* stead-build-buy-repo.h - what was bought for a build, what was given, and how it ends.
 *
 * Money that was paid is a line of the cash book; here stands which lines of the bill it
 * was for.  A finished build is a thing that lasts, and enters the books as one.
 */
#pragma once

#include "store/stead-build-bill-repo.h"

G_BEGIN_DECLS

/* What came for one line of the bill. */
typedef struct
{
  gint64    id;             /* 0: not saved yet */
  gint64    line_id;
  double    packs;          /* above 0 */
  gint64    cents;          /* without tax; fair value of a gift; 0 or more */
  /* Read only: */
  gint64    tax_cents;
  gint64    cash_line_id;   /* 0: a gift */
  SteadDay  day;
  char     *supplier;       /* (nullable): who was paid */
  char     *reference;      /* (nullable): number of the receipt */
} SteadBuildBuy;

void stead_build_buy_free (SteadBuildBuy *buy);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBuildBuy, stead_build_buy_free)

/* One receipt. */
typedef struct
{
  SteadDay    day;           /* not after today */
  gint64      account_id;    /* that paid */
  gint64      fund_id;       /* 0: money that is bound to nothing */
  const char *supplier;      /* not empty */
  const char *reference;     /* (nullable): number of the receipt */
  gint64      tax_cents;     /* 0 or more; shared out over what is taxed by its cost */
  gint64      person_id;     /* who bought; 0: not said */
} SteadBuildPurchase;

/* (transfer full) (element-type SteadBuildBuy): by day */
GPtrArray *stead_build_buy_repo_list   (SteadStore *store, gint64 build_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_build_buy_repo_add:
 * @buys: (array length=n): with line, packs and cents; ids are filled in
 *
 * Writes the line of the cash book (a thing that lasts, bought) for the sum of all and the
 * tax.  Refused: nothing bought, more tax than goods, a fund that is a grant bound to
 * another part than that of a line, and what the cash book refuses.
 */
gboolean   stead_build_buy_repo_add    (SteadStore *store, gint64 build_id, const SteadBuildPurchase *purchase,
                                        SteadBuildBuy *buys, gsize n, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Something that was promised as a gift is there. */
gboolean   stead_build_buy_repo_give   (SteadStore *store, SteadBuildBuy *buy, SteadDay day, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* With everything on the same receipt, and its line of the cash book. */
gboolean   stead_build_buy_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_build_repo_finish:
 * @day: when it stood
 * @life_years: over how many years it wears down, above 0
 *
 * Makes a thing in the books of what was paid (animals are none), and one of what was
 * given; the payments are entered as payments for it.  Refused if it was finished before,
 * and if neither money nor gifts were entered.
 */
gboolean   stead_build_repo_finish     (SteadStore *store, gint64 build_id, SteadDay day, double life_years,
                                        GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
