/* stead-stock-cost.h - what goods out of stock cost, by the usual conventions.
 *
 * The program's own records run first in, first out, or by the moving average if
 * the farm chose so; the others are here to compare with and to teach.
 * Source: OpenStax Principles of Accounting vol. 1, sections 10.2 and 10.3.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_STOCK_FIFO,
  STEAD_STOCK_LIFO,              /* newest at the moment of each issue */
  STEAD_STOCK_LIFO_PERIODIC,     /* newest of the whole period */
  STEAD_STOCK_AVERAGE_PERIODIC,  /* all cost / all units in */
  STEAD_STOCK_AVERAGE_MOVING,    /* after each receipt */
} SteadStockMethod;

/* Goods in (above 0) or out (below 0), in order of time. */
typedef struct
{
  double quantity;
  double unit_cents;   /* of goods in */
} SteadMovement;

typedef struct
{
  double sold_cents;
  double stock_cents;
  double unit_cents;   /* the average after the last movement; NAN for FIFO and LIFO */
} SteadStockFigures;

/**
 * stead_stock_figures:
 * @movements: (array length=n): in order
 * @n: how many
 * @method: the convention
 * @out: (out): costs, unrounded
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE if more goes out than there is
 */
gboolean stead_stock_figures (const SteadMovement *movements,
                              gsize                n,
                              SteadStockMethod     method,
                              SteadStockFigures   *out,
                              GError             **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_stock_on_record: begin + in - out
 * stead_stock_shrink: record - counted: what is missing; it stands at cost on its own line
 *
 * Source: Saylor Financial Accounting, section 8.5; OpenStax Principles of
 * Accounting vol. 1, section 10.1.
 */
double stead_stock_on_record (double begin,
                              double in,
                              double out);
double stead_stock_shrink (double on_record,
                           double counted);

G_END_DECLS
