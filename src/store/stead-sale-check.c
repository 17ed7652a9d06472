/* stead-sale-check.c - which plans of a sale day cannot be, and where they are wrong. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/stead-hours.h"
#include "store/stead-cash-private.h"
#include "store/stead-ledger-private.h"
#include "store/stead-lot-repo.h"
#include "store/stead-sale-private.h"

static void
point_at (SteadSaleFault *fault,
          SteadSalePart   part,
          guint           row)
{
  *fault = (SteadSaleFault) { .part = part, .row = row };
}

/* --- the day ------------------------------------------------------------------------ */

static gboolean
check_name (SteadStore       *store,
            const SteadSale  *sale,
            SteadSaleFault   *fault,
            GError          **error)
{
  static const char sql[] = "SELECT 1 FROM sale_day WHERE name = ?1 AND day = ?2 AND id <> ?3";
  g_autofree char *name = stead_repo_tidy (sale->name);
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 taken = 0;

  point_at (fault, STEAD_SALE_PART_NAME, 0);
  if (!stead_repo_check_name (sale->name, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_text (stmt, 1, name);
  stead_stmt_bind_day (stmt, 2, sale->day);
  sqlite3_bind_int64 (stmt, 3, sale->id);
  if (!stead_repo_number (store, stmt, 0, &taken, error))
    return FALSE;
  if (taken != 0)
    return stead_repo_refuse (error, _("There is a sale of this name on that day already. Give it another name."));
  return TRUE;
}

static gboolean
check_when (SteadStore       *store,
            const SteadSale  *sale,
            SteadSaleFault   *fault,
            GError          **error)
{
  point_at (fault, STEAD_SALE_PART_DAY, 0);
  if (!stead_day_is_valid (sale->day))
    return stead_repo_refuse (error, _("Enter the day of the sale."));
  if (sale->day > stead_store_get_today (store) + 2 * 366)
    return stead_repo_refuse (error, _("This day is more than two years ahead. Check the year."));
  point_at (fault, STEAD_SALE_PART_HOURS, 0);
  if (sale->opens_min < 0 || sale->opens_min >= 1440 || sale->closes_min > 2880)
    return stead_repo_refuse (error, _("Enter the hours as on a clock, from 0:00 to 23:59."));
  if (sale->closes_min <= sale->opens_min)
    return stead_repo_refuse (error, _("The sale closes before it opens. Check the two hours."));
  return TRUE;
}

static gboolean
check_account (SteadStore       *store,
               const SteadSale  *sale,
               SteadSaleFault   *fault,
               GError          **error)
{
  point_at (fault, STEAD_SALE_PART_ACCOUNT, 0);
  return sale->account_id == 0 || stead_cash_check_account (store, sale->account_id, sale->day, error);
}

/* --- goods --------------------------------------------------------------------------- */

static gboolean
is_units (double units)
{
  return units >= 0 && units <= STEAD_SALE_MOST_UNITS;
}

static gboolean
check_guess (const SteadSaleGood  *good,
             GError              **error)
{
  if (isnan (good->low) && isnan (good->likely) && isnan (good->high))
    return TRUE;
  if (isnan (good->low) || isnan (good->likely) || isnan (good->high))
    return stead_repo_refuse (error, _("Enter all three: the fewest, the likeliest and the most that people may ask for; or none."));
  if (!is_units (good->low) || !is_units (good->high) || !(good->low <= good->likely && good->likely <= good->high))
    return stead_repo_refuse (error, _("The three guesses must rise: the fewest, the likeliest, the most."));
  return TRUE;
}

static gboolean
check_numbers (const SteadSaleGood  *good,
               GError              **error)
{
  if (good->product_id == 0)
    return stead_repo_refuse (error, _("Choose a product on each line."));
  if (!is_units (good->planned))
    return stead_repo_refuse (error, _("The plan must be 0 or more units. Check the number."));
  if (!isnan (good->brought) && !is_units (good->brought))
    return stead_repo_refuse (error, _("What is brought must be 0 or more units. Check the number."));
  if (!isnan (good->cost_cents) && !(good->cost_cents >= 0 && good->cost_cents <= STEAD_CENTS_MAX))
    return stead_repo_refuse (error, _("What one costs must be 0 or more. Check the number."));
  if (ABS (good->left_cents) > STEAD_CENTS_MAX)
    return stead_repo_refuse (error, _("The amount is too large. Check the number."));
  return stead_repo_check_cents (_("Price"), good->price_cents, error) &&
         stead_repo_check_cents (_("A customer who goes without"), good->missed_cents, error) &&
         check_guess (good, error);
}

/* Keys of the tally in the order in which they are given out. */
static const char keys[] = "1234567890qwertyuiopasdfghjklzxcvbnm";

static gboolean
check_twice (const SteadSale  *sale,
             guint             at,
             GError          **error)
{
  const SteadSaleGood *good = sale->goods->pdata[at];

  if (good->key != 0 && strchr (keys, good->key) == NULL)
    return stead_repo_refuse (error, _("The key must be a digit or a small letter from a to z."));
  for (guint i = 0; i < at; i++)
    {
      const SteadSaleGood *other = sale->goods->pdata[i];

      if (other->product_id == good->product_id)
        return stead_repo_refuse (error, _("This product stands on two lines. Put the numbers together."));
      if (good->key != 0 && other->key == good->key)
        return stead_repo_refuse (error, _("Two products have the same key. Choose another one."));
    }
  return TRUE;
}

/* What lot @lot_id has planned for it on this sale, all lines together. */
static double
planned_of_lot (const SteadSale *sale,
                gint64           lot_id)
{
  double sum = 0;

  for (guint i = 0; i < sale->goods->len; i++)
    {
      const SteadSaleGood *good = sale->goods->pdata[i];

      for (guint j = 0; j < good->lots->len; j++)
        if (g_array_index (good->lots, SteadSaleLot, j).lot_id == lot_id)
          sum += g_array_index (good->lots, SteadSaleLot, j).base;
    }
  return sum;
}

static gboolean
check_lot (SteadStore          *store,
           const SteadSale     *sale,
           const SteadSaleLot  *planned,
           GError             **error)
{
  g_autoptr(SteadLot) lot = stead_lot_repo_get (store, planned->lot_id, error);
  g_autofree char *had = NULL;

  if (lot == NULL)
    return FALSE;
  if (!(planned->base > STEAD_AMOUNT_EPSILON && planned->base <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Enter an amount above zero for each lot, or leave the lot out."));
  if (planned_of_lot (sale, lot->id) <= lot->on_hand_base + STEAD_AMOUNT_EPSILON)
    return TRUE;
  had = stead_quantity_format (lot->on_hand_base, lot->unit);
  return stead_repo_refuse (error, _("Lot %s (%s) holds only %s. Plan less of it, or take another lot as well."),
                            lot->code, lot->item_name, had);
}

static gboolean
check_goods (SteadStore      *store,
             SteadSale       *sale,
             SteadSaleFault  *fault,
             GError         **error)
{
  point_at (fault, STEAD_SALE_PART_GOODS, 0);
  if (sale->goods->len > STEAD_SALE_MOST_GOODS)
    return stead_repo_refuse (error, _("These are too many products for one sale. Take some out."));
  for (guint i = 0; i < sale->goods->len; i++)
    {
      const SteadSaleGood *good = sale->goods->pdata[i];

      point_at (fault, STEAD_SALE_PART_GOODS, i);
      if (!check_numbers (good, error) || !check_twice (sale, i, error))
        return FALSE;
      /* What is over took its lots already. */
      for (guint j = 0; sale->count_id == 0 && j < good->lots->len; j++)
        if (!check_lot (store, sale, &g_array_index (good->lots, SteadSaleLot, j), error))
          return FALSE;
    }
  return TRUE;
}

/* A key for each product that has none. */
static void
give_keys (SteadSale *sale)
{
  for (guint i = 0; i < sale->goods->len; i++)
    {
      SteadSaleGood *good = sale->goods->pdata[i];

      for (const char *key = keys; good->key == 0 && *key != '\0'; key++)
        {
          guint j = 0;

          while (j < sale->goods->len && ((SteadSaleGood *) sale->goods->pdata[j])->key != *key)
            j++;
          if (j == sale->goods->len)
            good->key = *key;
        }
    }
}

/* --- costs, shifts, float, what to bring --------------------------------------------- */

static gboolean
check_costs (const SteadSale  *sale,
             SteadSaleFault   *fault,
             GError          **error)
{
  for (guint i = 0; i < sale->costs->len; i++)
    {
      const SteadSaleCost *cost = sale->costs->pdata[i];

      point_at (fault, STEAD_SALE_PART_COSTS, i);
      if (!stead_repo_check_name (cost->name, error) ||
          !stead_repo_check_cents (cost->name, cost->cents, error) ||
          (cost->paid_cents >= 0 && !stead_repo_check_cents (cost->name, cost->paid_cents, error)))
        return FALSE;
    }
  return sale->costs->len <= STEAD_SALE_MOST_ROWS ||
         stead_repo_refuse (error, _("These are too many lines. Put some together."));
}

static gboolean
check_shift (const SteadSaleShift  *shift,
             GError               **error)
{
  if (shift->person_id == 0)
    return stead_repo_refuse (error, _("Choose who works this shift."));
  if (shift->from_min < 0 || shift->from_min >= 1440 || shift->to_min > 2880)
    return stead_repo_refuse (error, _("Enter the hours as on a clock, from 0:00 to 23:59."));
  if (shift->to_min <= shift->from_min)
    return stead_repo_refuse (error, _("The shift ends before it begins. Check the two hours."));
  if (!stead_work_is_likely (shift->to_min - shift->from_min))
    return stead_repo_refuse (error, _("A shift is at most 16 hours long. Check the two hours."));
  if (shift->break_min < 0 || shift->break_min >= shift->to_min - shift->from_min)
    return stead_repo_refuse (error, _("The break must be shorter than the shift."));
  return stead_repo_check_note (shift->duty, error);
}

/* What begins as another ends does not overlap it. */
static gboolean
check_overlap (const SteadSale  *sale,
               guint             at,
               GError          **error)
{
  const SteadSaleShift *shift = sale->shifts->pdata[at];

  for (guint i = 0; i < at; i++)
    {
      const SteadSaleShift *other = sale->shifts->pdata[i];

      if (other->person_id == shift->person_id && other->from_min < shift->to_min && shift->from_min < other->to_min)
        return stead_repo_refuse (error, _("This person has another shift at the same time. "
                                           "Let one end before the other begins."));
    }
  return TRUE;
}

/* A shift of the same person on another sale of that day. */
static gboolean
check_elsewhere (SteadStore            *store,
                 const SteadSale       *sale,
                 const SteadSaleShift  *shift,
                 GError               **error)
{
  static const char sql[] =
    "SELECT d.name FROM sale_day d JOIN sale_shift x ON x.sale_id = d.id WHERE d.day = ?1 AND d.id <> ?2"
    " AND x.person_id = ?3 AND x.from_min < ?5 AND ?4 < x.to_min ORDER BY d.id LIMIT 1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  g_autofree char *name = NULL;
  int found;

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_day (stmt, 1, sale->day);
  sqlite3_bind_int64 (stmt, 2, sale->id);
  sqlite3_bind_int64 (stmt, 3, shift->person_id);
  sqlite3_bind_int (stmt, 4, shift->from_min);
  sqlite3_bind_int (stmt, 5, shift->to_min);
  found = stead_store_step (store, stmt, error);
  if (found != 1)
    return found == 0;
  name = stead_stmt_text (stmt, 0);
  return stead_repo_refuse (error, _("This person has a shift at “%s” at the same time."), name);
}

static gboolean
check_shifts (SteadStore       *store,
              const SteadSale  *sale,
              SteadSaleFault   *fault,
              GError          **error)
{
  for (guint i = 0; i < sale->shifts->len; i++)
    {
      point_at (fault, STEAD_SALE_PART_SHIFTS, i);
      if (!check_shift (sale->shifts->pdata[i], error) || !check_overlap (sale, i, error) ||
          !check_elsewhere (store, sale, sale->shifts->pdata[i], error))
        return FALSE;
    }
  return sale->shifts->len <= STEAD_SALE_MOST_ROWS ||
         stead_repo_refuse (error, _("These are too many lines. Put some together."));
}

static gboolean
check_rest (const SteadSale  *sale,
            SteadSaleFault   *fault,
            GError          **error)
{
  point_at (fault, STEAD_SALE_PART_FLOAT, 0);
  for (guint i = 0; i < sale->float_pieces->len; i++)
    {
      const SteadCashPiece *piece = &g_array_index (sale->float_pieces, SteadCashPiece, i);

      if (piece->face_cents <= 0 || piece->pieces < 0 || piece->face_cents > STEAD_CENTS_MAX
          || piece->pieces > STEAD_CENTS_MAX / piece->face_cents)
        return stead_repo_refuse (error, _("A number of coins or notes is not possible. Check the numbers."));
    }
  for (guint i = 0; i < sale->bring->len; i++)
    {
      const SteadSaleBring *bring = sale->bring->pdata[i];

      point_at (fault, STEAD_SALE_PART_BRING, i);
      if (!stead_repo_check_name (bring->text, error))
        return FALSE;
    }
  point_at (fault, STEAD_SALE_PART_NONE, 0);
  return stead_repo_check_note (sale->location, error) && stead_repo_check_note (sale->weather, error) &&
         stead_repo_check_note (sale->note, error) && stead_repo_check_note (sale->change_next, error);
}

gboolean
stead_sale_check (SteadStore      *store,
                  SteadSale       *sale,
                  SteadSaleFault  *fault,
                  GError         **error)
{
  if (!check_when (store, sale, fault, error) || !check_name (store, sale, fault, error) ||
      !check_account (store, sale, fault, error) || !check_goods (store, sale, fault, error) ||
      !check_costs (sale, fault, error) || !check_shifts (store, sale, fault, error) ||
      !check_rest (sale, fault, error))
    return FALSE;
  give_keys (sale);
  return TRUE;
}

gboolean
stead_sale_check_open (SteadStore  *store,
                       gint64       sale_id,
                       GError     **error)
{
  static const char sql[] = "SELECT count (*) FROM cash_count WHERE sale_id = ?1";
  gint64 n = stead_repo_count_id (store, sql, sale_id, error);

  if (n > 0)
    return stead_repo_refuse (error, _("This sale is cashed up. A till is counted once; what was wrong is corrected "
                                       "by a line in the cash book or in the store room."));
  return n == 0;
}
