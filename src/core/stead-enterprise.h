/* stead-enterprise.h - the result of a student's or a group's enterprise, and its shares.
 *
 * Invariants:
 *  1. All sums are whole cents; shares add up to what was shared, to the cent.
 *  2. Worth at the end = worth at first + net + gifts - taken out.  What the counts at
 *     both ends say beyond that is shown, never spread over other lines.
 *  3. Hours are never money here: an unpaid hour is no cost and no income.
 * Sources: stead-statement.h; Iowa State University Extension C3-20 (net worth); OpenStax
 * Contemporary Mathematics, section 11.4 (largest remainder).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* One period.  What was counted or owed stands twice: at its begin and at its end. */
typedef struct
{
  gint64 begin_cents;
  gint64 end_cents;
} SteadSpanCents;

typedef struct
{
  gint64         receipts_cents;       /* cash from sales */
  gint64         costs_cents;          /* cash paid for running it */
  SteadSpanCents stock;                /* goods and growing animals */
  SteadSpanCents owed_to_us;
  SteadSpanCents owed_by_us;           /* bills for running it; no loans */
  SteadSpanCents prepaid;
  gint64         depreciation_cents;
  gint64         gifts_cents;          /* gifts, grants and own money put in */
  gint64         taken_out_cents;
  SteadSpanCents worth;                /* assets less debts, as counted */
  gint64         unpaid_min;           /* of work */
} SteadEnterprise;

typedef struct
{
  gint64 cash_net_cents;        /* receipts - costs */
  gint64 stock_change_cents;
  gint64 other_change_cents;    /* owed to us and prepaid, less owed by us */
  gint64 net_cents;             /* what was really earned */
  gint64 worth_change_cents;    /* as counted */
  gint64 unexplained_cents;     /* beyond net + gifts - taken out; 0 in good books */
  double per_hour_cents;        /* net for an unpaid hour; NAN without hours */
} SteadEnterpriseResult;

/**
 * stead_enterprise_result:
 * @period: sums below 90 trillion cents
 * @out: (out): the statement
 */
void stead_enterprise_result (const SteadEnterprise  *period,
                              SteadEnterpriseResult  *out);

typedef enum
{
  STEAD_SHARE_EQUAL,
  STEAD_SHARE_BY_HOURS,
  STEAD_SHARE_BY_WEIGHT,    /* roles, as agreed */
} SteadShareRule;

typedef struct
{
  gint64 minutes;       /* of work, 0 or more */
  double weight;        /* of the role, 0 or more */
  gint64 fixed_cents;   /* agreed beforehand, 0 or more: comes first */
} SteadSharer;

/**
 * stead_enterprise_share:
 * @total_cents: to be shared; below 0: a loss, which is borne by the same shares
 * @sharers: (array length=n): who shares
 * @n: 1 or more
 * @rule: how the rest is shared, once what is fixed is taken off
 * @out_cents: (out) (array length=n): their sum is @total_cents
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE; or %FALSE with @out_cents left alone: nobody has hours or a weight, or
 *   what is fixed is more than there is
 */
gboolean stead_enterprise_share (gint64              total_cents,
                                 const SteadSharer  *sharers,
                                 gsize               n,
                                 SteadShareRule      rule,
                                 gint64             *out_cents,
                                 GError            **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
