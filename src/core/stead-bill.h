/* stead-bill.h - the bill of materials of a build: what is bought and what is given.
 *
 * Invariants:
 *  1. A line is rounded to the cent, then lines are added: a printed bill adds up.
 *  2. What is given costs nothing, and stands beside at its fair value.
 *  3. Cash = bought + tax + contingency; worth = cash + given.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  double   quantity;     /* 0 or more */
  double   price_cents;  /* of one, 0 or more: what it costs, or its fair value */
  gboolean given;        /* donated, or there already */
  gboolean taxed;        /* with sales tax; whether is state law: a field, never a guess */
} SteadBillLine;

typedef struct
{
  gint64 bought_cents;        /* lines that are paid */
  gint64 given_cents;         /* lines that are not */
  gint64 tax_cents;           /* on the sum of the taxed lines, rounded once */
  gint64 contingency_cents;   /* on what is bought, without the tax */
  gint64 cash_cents;          /* to be raised */
  gint64 worth_cents;         /* of the build */
} SteadBill;

/**
 * stead_bill_line_cents:
 * Returns: quantity x price, rounded half away from zero
 */
gint64 stead_bill_line_cents (const SteadBillLine *line);

/**
 * stead_bill_sum:
 * @lines: (array length=n): the bill
 * @n: how many
 * @tax_frac: sales tax, 0 to 1
 * @contingency_frac: for what was forgotten or got dearer, 0 to 1; 0.10 is usual (own
 *   default)
 * @out: (out): the sums
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE; or %FALSE with @out left alone for a number that cannot be
 */
gboolean stead_bill_sum (const SteadBillLine  *lines,
                         gsize                 n,
                         double                tax_frac,
                         double                contingency_frac,
                         SteadBill            *out,
                         GError              **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
