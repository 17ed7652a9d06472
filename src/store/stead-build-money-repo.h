/* stead-build-money-repo.h - money for a build: grants, pledges, what is planned, and its
 * yearly cost afterwards.
 *
 * Money that is there lies in the cash book; nothing here repeats it.
 */
#pragma once

#include "store/stead-build-repo.h"
#include "store/stead-cash-repo.h"

G_BEGIN_DECLS

/* A fund of the cash book that is bound to the build, or to one part of it. */
typedef struct
{
  gint64   fund_id;
  int      part;       /* a SteadBuildPart, or STEAD_BUILD_PART_ANY */
  SteadDay use_by;     /* last day to spend it; STEAD_DAY_NONE: not said */
} SteadBuildGrant;

/* Of SteadBuildGrant, by fund. */
GArray   *stead_build_grant_repo_list (SteadStore *store, gint64 build_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refused for the build's own fund, which is free. */
gboolean  stead_build_grant_repo_set  (SteadStore *store, gint64 build_id, const SteadBuildGrant *grants, gsize n,
                                       GError **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  gint64    id;            /* 0: not saved yet */
  gint64    build_id;
  char     *who;           /* not empty */
  gint64    cents;         /* above 0 */
  double    chance;        /* that it comes, 0 to 1 */
  SteadDay  pledged_on;
  SteadDay  due_on;
  int       part;          /* bound to a SteadBuildPart, or STEAD_BUILD_PART_ANY */
  gint64    cash_line_id;  /* the line that received it; 0: not yet */
  SteadDay  withdrawn_on;  /* STEAD_DAY_NONE: it stands */
  char     *note;          /* (nullable) */
  /* Read only: */
  gint64    received_cents;
} SteadBuildPledge;

SteadBuildPledge *stead_build_pledge_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void              stead_build_pledge_free (SteadBuildPledge *pledge);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBuildPledge, stead_build_pledge_free)

/* (transfer full) (element-type SteadBuildPledge): by the day that they are due */
GPtrArray *stead_build_pledge_repo_list   (SteadStore *store, gint64 build_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/**
 * stead_build_pledge_repo_save:
 * @goal_cents: what the build costs; 0: not known.  Open and received pledges together may
 *   not go beyond it: money nobody needs is not asked for.
 */
gboolean   stead_build_pledge_repo_save   (SteadStore *store, SteadBuildPledge *pledge, gint64 goal_cents,
                                           GError **error) G_GNUC_WARN_UNUSED_RESULT;
/**
 * stead_build_pledge_repo_receive:
 * @cash: day, account, fund and sum above 0; the rest is filled in
 *
 * Writes the line of the cash book, and the pledge names it.  Refused: one that came
 * before or was taken back, and one that is bound to a part unless the fund is a grant
 * with the same bound.
 */
gboolean   stead_build_pledge_repo_receive (SteadStore *store, SteadBuildPledge *pledge, SteadCashLine *cash,
                                            GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_build_pledge_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Money that is planned, again and again. */
typedef struct
{
  gint64    id;           /* 0: not saved yet */
  gint64    build_id;
  char     *name;         /* not empty: "Winter market" */
  gint64    product_id;   /* 0: not of one product */
  SteadDay  first_on;
  int       every_days;
  int       times;
  gint64    mean_cents;   /* what one clears, above 0 */
  gint64    sd_cents;     /* its spread; 0: a fixed sum */
  gboolean  is_sale;      /* moves with the season, and its share is put aside */
} SteadBuildIncome;

SteadBuildIncome *stead_build_income_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void              stead_build_income_free (SteadBuildIncome *income);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBuildIncome, stead_build_income_free)

GPtrArray *stead_build_income_repo_list   (SteadStore *store, gint64 build_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_build_income_repo_save   (SteadStore *store, SteadBuildIncome *income, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_build_income_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* A cost of each year once the build stands. */
typedef struct
{
  gint64    id;           /* 0: not saved yet */
  gint64    build_id;
  char     *name;         /* not empty: "Hay" */
  double    quantity;     /* a year */
  char     *unit;         /* (nullable) */
  gboolean  per_head;     /* for each animal */
  gint64    price_cents;  /* of one unit */
} SteadBuildUpkeep;

SteadBuildUpkeep *stead_build_upkeep_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void              stead_build_upkeep_free (SteadBuildUpkeep *upkeep);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBuildUpkeep, stead_build_upkeep_free)

GPtrArray *stead_build_upkeep_repo_list   (SteadStore *store, gint64 build_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_build_upkeep_repo_save   (SteadStore *store, SteadBuildUpkeep *upkeep, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_build_upkeep_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
