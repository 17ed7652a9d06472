/* stead-stock-cost.c - what goods out of stock cost, by the usual conventions. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-cost.h"
#include "core/stead-round.h"
#include "core/stead-stock-cost.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static double
stock_of (const SteadMovement *movements,
          gsize                n)
{
  double stock = 0;

  for (gsize i = 0; i < n; i++)
    stock += movements[i].quantity;
  return stock;
}

static double
cost_in (const SteadMovement *movements,
         gsize                n)
{
  double cost = 0;

  for (gsize i = 0; i < n; i++)
    if (movements[i].quantity > 0)
      cost += movements[i].quantity * movements[i].unit_cents;
  return cost;
}

static gboolean
check_never_below_zero (const SteadMovement *movements,
                        gsize                n,
                        GError             **error)
{
  double stock = 0;

  for (gsize i = 0; i < n; i++)
    {
      stock += movements[i].quantity;
      if (stock < -STEAD_ROUND_NOISE * MAX (1, fabs (movements[i].quantity)))
        {
          g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                               _("More goes out than there is in stock. Check the order of the "
                                 "movements, or add what is missing."));
          return FALSE;
        }
    }
  return TRUE;
}

static void
append_layer (GArray              *layers,
              const SteadMovement *movement)
{
  SteadLayer layer = { movement->quantity, movement->quantity * movement->unit_cents };

  g_array_append_val (layers, layer);
}

static double
fifo_cost (const SteadMovement *movements,
           gsize                n)
{
  g_autoptr(GArray) layers = g_array_new (FALSE, FALSE, sizeof (SteadLayer));
  double sold = 0;

  for (gsize i = 0; i < n; i++)
    {
      double cost = 0;

      if (movements[i].quantity > 0)
        append_layer (layers, &movements[i]);
      else
        stead_cost_fifo ((SteadLayer *) (void *) layers->data, layers->len, -movements[i].quantity, &cost);
      sold += cost;
    }
  return sold;
}

/* What @quantity from the newest layers cost. */
static double
take_newest (GArray *layers,
             double  quantity)
{
  double sum = 0;

  while (quantity > 0 && layers->len > 0)
    {
      SteadLayer *newest = &g_array_index (layers, SteadLayer, layers->len - 1);
      double cost;

      quantity = stead_cost_fifo (newest, 1, quantity, &cost);
      sum += cost;
      if (newest->quantity <= 0)
        g_array_set_size (layers, layers->len - 1);
    }
  return sum;
}

static double
lifo_cost (const SteadMovement *movements,
           gsize                n)
{
  g_autoptr(GArray) layers = g_array_new (FALSE, FALSE, sizeof (SteadLayer));
  double sold = 0;

  for (gsize i = 0; i < n; i++)
    if (movements[i].quantity > 0)
      append_layer (layers, &movements[i]);
    else
      sold += take_newest (layers, -movements[i].quantity);
  return sold;
}

/* As if all had come in first and gone out after. */
static double
lifo_periodic_cost (const SteadMovement *movements,
                    gsize                n)
{
  g_autoptr(GArray) layers = g_array_new (FALSE, FALSE, sizeof (SteadLayer));
  double out = 0;

  for (gsize i = 0; i < n; i++)
    if (movements[i].quantity > 0)
      append_layer (layers, &movements[i]);
    else
      out -= movements[i].quantity;
  return take_newest (layers, out);
}

static double
average_periodic (const SteadMovement *movements,
                  gsize                n)
{
  double in = 0;

  for (gsize i = 0; i < n; i++)
    in += MAX (0, movements[i].quantity);
  return in > 0 ? cost_in (movements, n) / in : NAN;
}

static double
moving_cost (const SteadMovement *movements,
             gsize                n,
             double              *out_average)
{
  double stock = 0;
  double value = 0;
  double sold = 0;

  *out_average = NAN;
  for (gsize i = 0; i < n; i++)
    {
      double out = MAX (0, -movements[i].quantity);

      if (out > 0)
        {
          sold += out * *out_average;
          value -= out * *out_average;
          stock -= out;
          continue;
        }
      stock += movements[i].quantity;
      value += movements[i].quantity * movements[i].unit_cents;
      if (stock > 0)
        *out_average = value / stock;
    }
  return sold;
}

gboolean
stead_stock_figures (const SteadMovement *movements,
                     gsize                n,
                     SteadStockMethod     method,
                     SteadStockFigures   *out,
                     GError             **error)
{
  SteadStockFigures figures = { .unit_cents = NAN };

  g_return_val_if_fail (movements != NULL || n == 0, FALSE);
  g_return_val_if_fail (out != NULL, FALSE);

  if (!check_never_below_zero (movements, n, error))
    return FALSE;
  switch (method)
    {
    case STEAD_STOCK_LIFO:
      figures.sold_cents = lifo_cost (movements, n);
      break;
    case STEAD_STOCK_LIFO_PERIODIC:
      figures.sold_cents = lifo_periodic_cost (movements, n);
      break;
    case STEAD_STOCK_AVERAGE_PERIODIC:
      figures.unit_cents = average_periodic (movements, n);
      figures.sold_cents = cost_in (movements, n)
                           - figures.unit_cents * stock_of (movements, n);
      break;
    case STEAD_STOCK_AVERAGE_MOVING:
      figures.sold_cents = moving_cost (movements, n, &figures.unit_cents);
      break;
    case STEAD_STOCK_FIFO:
    default:
      figures.sold_cents = fifo_cost (movements, n);
      break;
    }
  figures.stock_cents = cost_in (movements, n) - figures.sold_cents;
  *out = figures;
  return TRUE;
}

double
stead_stock_on_record (double begin,
                       double in,
                       double out)
{
  return begin + in - out;
}

double
stead_stock_shrink (double on_record,
                    double counted)
{
  return on_record - counted;
}
