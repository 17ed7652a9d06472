/* stead-sale-cash-up.c - the end of a sale day: its money and its hours. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-cash.h"
#include "core/stead-money.h"
#include "store/stead-cash-private.h"
#include "store/stead-sale-cash-up-private.h"

SteadSaleCashUp *
stead_sale_cash_up_new (void)
{
  SteadSaleCashUp *self = g_new0 (SteadSaleCashUp, 1);

  self->pieces = g_array_new (FALSE, TRUE, sizeof (SteadCashPiece));
  self->lefts = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_sale_left_free);
  self->shift_ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  return self;
}

void
stead_sale_cash_up_free (SteadSaleCashUp *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->pieces);
  g_free (self->reason);
  g_free (self->note);
  g_free (self->deposit_slip);
  g_clear_pointer (&self->costs, g_ptr_array_unref);
  g_ptr_array_unref (self->lefts);
  g_array_unref (self->shift_ids);
  g_free (self->change_next);
  g_free (self);
}

/* --- what must lie in the box ---------------------------------------------------------- */

static gint64
pieces_cents (const GArray *pieces)
{
  gint64 sum = 0;

  for (guint i = 0; pieces != NULL && i < pieces->len; i++)
    {
      const SteadCashPiece *piece = &g_array_index (pieces, SteadCashPiece, i);

      sum += piece->face_cents * piece->pieces;
    }
  return sum;
}

gboolean
stead_sale_till (SteadStore       *store,
                 const SteadSale  *sale,
                 const GPtrArray  *costs,
                 const GArray     *pieces,
                 SteadSaleTill    *out,
                 GError          **error)
{
  g_autoptr(GArray) sums = NULL;
  SteadSaleTill till = { 0 };

  g_return_val_if_fail (STEAD_IS_STORE (store) && sale != NULL && out != NULL, FALSE);
  sums = stead_sale_repo_sums (store, sale->id, error);
  if (sums == NULL)
    return FALSE;
  till.float_cents = stead_sale_float_cents (sale);
  for (guint i = 0; i < sums->len; i++)
    {
      const SteadSaleSum *sum = &g_array_index (sums, SteadSaleSum, i);

      till.takings_cents += sum->takings_cents - sum->ahead_cents;
      till.ahead_cents += sum->ahead_cents;
    }
  if (costs == NULL)
    costs = sale->costs;
  for (guint i = 0; i < costs->len; i++)
    {
      const SteadSaleCost *cost = costs->pdata[i];

      till.paid_out_cents += cost->from_till ? stead_sale_cost_paid (cost) : 0;
    }
  till.expected_cents = till.float_cents + till.takings_cents - till.paid_out_cents;
  till.counted_cents = pieces_cents (pieces);
  till.over_cents = stead_till_over_cents (till.counted_cents, till.float_cents, till.takings_cents,
                                           till.paid_out_cents);
  *out = till;
  return TRUE;
}

/* --- checking ------------------------------------------------------------------------------ */

static gboolean
check_people (const SteadSaleCashUp  *self,
              SteadCashUpFault       *fault,
              GError                **error)
{
  fault->part = STEAD_CASH_UP_PART_PEOPLE;
  if (self->first_id == 0 || self->second_id == 0)
    return stead_repo_refuse (error, _("Two people count money together. Enter both."));
  if (self->first_id == self->second_id)
    return stead_repo_refuse (error, _("The second person must be somebody else than the first."));
  return TRUE;
}

static gboolean
check_box (SteadStore       *store,
           const SteadSale  *sale,
           GError          **error)
{
  if (sale->account_id == 0)
    return stead_repo_refuse (error, _("Choose in the plan which box the money of this sale goes into."));
  if (sale->day > stead_store_get_today (store))
    return stead_repo_refuse (error, _("This sale is still to come. It is cashed up on its day, or later."));
  return TRUE;
}

static gboolean
check_money (const SteadSaleCashUp  *self,
             const SteadSaleTill    *till,
             const char             *currency,
             SteadCashUpFault       *fault,
             GError                **error)
{
  g_autofree char *reason = stead_repo_tidy (self->reason);
  g_autofree char *text = stead_money_format (ABS (till->over_cents), currency);

  fault->part = STEAD_CASH_UP_PART_COUNT;
  if (self->pieces->len == 0)
    return stead_repo_refuse (error, _("Enter how many there are of at least one coin or note."));
  fault->part = STEAD_CASH_UP_PART_DEPOSIT;
  if (self->keep_cents < 0 || self->keep_cents > till->counted_cents)
    return stead_repo_refuse (error, _("More cannot stay in the box than was counted. Check the two numbers."));
  fault->part = STEAD_CASH_UP_PART_REASON;
  if (till->over_cents > 0 && reason == NULL)
    return stead_repo_refuse (error, _("The box has %s too much. Count once more; then write down what may be the reason."), text);
  if (till->over_cents < 0 && reason == NULL)
    return stead_repo_refuse (error, _("The box is %s short. Count once more; then write down what may be the reason."), text);
  return TRUE;
}

/* --- the cash book ---------------------------------------------------------------------------- */

/* The cash book has the float in the box, or it is brought there now. */
static gboolean
bring_float (SteadStore             *store,
             const SteadSaleCashUp  *self,
             const SteadSale        *sale,
             gint64                  float_cents,
             const char             *currency,
             GError                **error)
{
  SteadTransfer transfer = { .day = sale->day, .person_id = self->first_id, .second_id = self->second_id,
                             .note = sale->name };
  g_autofree char *had = NULL;
  g_autofree char *planned = NULL;
  gint64 cents = 0;

  if (!stead_cash_repo_balance (store, sale->account_id, STEAD_FUND_ANY, sale->day, &cents, error))
    return FALSE;
  if (cents == float_cents)
    return TRUE;
  if (self->float_account == 0 || self->float_account == sale->account_id)
    {
      had = stead_money_format (cents, currency);
      planned = stead_money_format (float_cents, currency);
      return stead_repo_refuse (error, _("By the cash book there was %s in the box before the sale, but the float is %s. "
                                         "Choose where the difference came from or went to."), had, planned);
    }
  transfer.cents = ABS (float_cents - cents);
  transfer.from_account = float_cents > cents ? self->float_account : sale->account_id;
  transfer.to_account = float_cents > cents ? sale->account_id : self->float_account;
  return stead_cash_repo_transfer (store, &transfer, error) != 0;
}

static gboolean
write_line (SteadStore             *store,
            const SteadSaleCashUp  *self,
            const SteadSale        *sale,
            SteadCashCategory       category,
            gint64                  product_id,
            gint64                  cents,
            const char             *note,
            GError                **error)
{
  g_autoptr(SteadCashLine) line = stead_cash_line_new ();

  if (cents == 0)
    return TRUE;
  line->day = sale->day;
  line->account_id = sale->account_id;
  line->category = category;
  line->cents = cents;
  line->product_id = product_id;
  line->note = g_strdup (note);
  line->person_id = self->first_id;
  line->second_id = self->second_id;
  line->sale_id = sale->id;
  return stead_cash_repo_save (store, line, error);
}

static gboolean
write_takings (SteadStore             *store,
               const SteadSaleCashUp  *self,
               const SteadSale        *sale,
               const GArray           *sums,
               GError                **error)
{
  for (guint i = 0; i < sums->len; i++)
    {
      const SteadSaleSum *sum = &g_array_index (sums, SteadSaleSum, i);

      if (!write_line (store, self, sale, STEAD_CASH_SALES, sum->product_id, sum->takings_cents - sum->ahead_cents,
                       sale->name, error))
        return FALSE;
    }
  for (guint i = 0; i < sale->costs->len; i++)
    {
      const SteadSaleCost *cost = sale->costs->pdata[i];

      if (cost->from_till &&
          !write_line (store, self, sale, STEAD_CASH_FEES, 0, -stead_sale_cost_paid (cost), cost->name, error))
        return FALSE;
    }
  return TRUE;
}

/* The count writes the over or short of itself. */
static gint64
write_count (SteadStore             *store,
             const SteadSaleCashUp  *self,
             const SteadSale        *sale,
             GError                **error)
{
  g_autoptr(SteadCashCount) count = stead_cash_count_new ();

  count->day = sale->day;
  count->account_id = sale->account_id;
  count->float_cents = self->keep_cents;
  count->first_id = self->first_id;
  count->second_id = self->second_id;
  count->reason = g_strdup (self->reason);
  count->note = g_strdup (self->note);
  count->sale_id = sale->id;
  g_array_append_vals (count->pieces, self->pieces->data, self->pieces->len);
  return stead_cash_count_repo_save (store, count, error) ? count->id : 0;
}

static gboolean
deposit (SteadStore             *store,
         const SteadSaleCashUp  *self,
         const SteadSale        *sale,
         gint64                  count_id,
         GError                **error)
{
  if (self->deposit_account == 0 || pieces_cents (self->pieces) <= self->keep_cents)
    return TRUE;
  return stead_cash_count_repo_deposit (store, count_id, self->deposit_account, sale->day, self->deposit_slip,
                                        error) != 0;
}

/* --- hours --------------------------------------------------------------------------------------- */

static const SteadSaleShift *
find_shift (const SteadSale *sale,
            gint64           id)
{
  for (guint i = 0; i < sale->shifts->len; i++)
    if (((const SteadSaleShift *) sale->shifts->pdata[i])->id == id)
      return sale->shifts->pdata[i];
  return NULL;
}

static gboolean
write_hours (SteadStore            *store,
             const SteadSale       *sale,
             const SteadSaleShift  *shift,
             GError               **error)
{
  SteadWorkSpan span = { .person_id = shift->person_id, .day = sale->day, .sale_id = sale->id };

  span.from_at = stead_sale_time (sale->day, shift->from_min);
  span.to_at = stead_sale_time (sale->day, shift->to_min);
  span.break_minutes = shift->break_min;
  span.minutes = (double) (span.to_at - span.from_at) / 60 - shift->break_min;
  span.duty = shift->duty != NULL ? shift->duty : sale->name;
  return stead_work_repo_add (store, &span, error);
}

static gboolean
write_all_hours (SteadStore             *store,
                 const SteadSaleCashUp  *self,
                 const SteadSale        *sale,
                 GError                **error)
{
  for (guint i = 0; i < self->shift_ids->len; i++)
    {
      const SteadSaleShift *shift = find_shift (sale, g_array_index (self->shift_ids, gint64, i));

      if (shift == NULL)
        return stead_repo_missing (error);
      if (!write_hours (store, sale, shift, error))
        return FALSE;
    }
  return TRUE;
}

/* --- the whole ------------------------------------------------------------------------------------ */

static gboolean
close_sale (SteadStore             *store,
            const SteadSaleCashUp  *self,
            GError                **error)
{
  static const char sql[] = "UPDATE sale_day SET closed_at = max (coalesce (opened_at, ?2), ?2),"
                            " change_next = coalesce (?3, change_next) WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, self->sale_id);
  sqlite3_bind_int64 (stmt, 2, self->at);
  stead_repo_bind_tidy (stmt, 3, self->change_next);
  return stead_store_run (store, stmt, error);
}

static gboolean
take_costs (SteadStore             *store,
            const SteadSaleCashUp  *self,
            SteadSale              *sale,
            GError                **error)
{
  if (self->costs == NULL)
    return TRUE;
  g_ptr_array_unref (sale->costs);
  sale->costs = g_ptr_array_ref (self->costs);
  for (guint i = 0; i < sale->costs->len; i++)
    {
      const SteadSaleCost *cost = sale->costs->pdata[i];

      if (!stead_repo_check_name (cost->name, error) ||
          !stead_repo_check_cents (cost->name, stead_sale_cost_paid (cost), error))
        return FALSE;
    }
  return stead_sale_write_costs (store, sale, error);
}

static gboolean
post (SteadStore             *store,
      const SteadSaleCashUp  *self,
      SteadSale              *sale,
      SteadCashUpFault       *fault,
      GError                **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);
  g_autoptr(GArray) sums = farm != NULL ? stead_sale_repo_sums (store, sale->id, error) : NULL;
  SteadSaleTill till;
  gint64 count_id;

  if (sums == NULL || !check_box (store, sale, error) || !check_people (self, fault, error))
    return FALSE;
  fault->part = STEAD_CASH_UP_PART_COSTS;
  if (!take_costs (store, self, sale, error) ||
      !stead_sale_till (store, sale, NULL, self->pieces, &till, error) ||
      !check_money (self, &till, farm->currency, fault, error))
    return FALSE;
  fault->part = STEAD_CASH_UP_PART_LEFTS;
  if (!stead_sale_put_away (store, self, sale, sums, fault, error))
    return FALSE;
  fault->part = STEAD_CASH_UP_PART_FLOAT;
  if (!bring_float (store, self, sale, till.float_cents, farm->currency, error))
    return FALSE;
  fault->part = STEAD_CASH_UP_PART_COUNT;
  if (!write_takings (store, self, sale, sums, error))
    return FALSE;
  count_id = write_count (store, self, sale, error);
  if (count_id == 0)
    return FALSE;
  fault->part = STEAD_CASH_UP_PART_DEPOSIT;
  if (!deposit (store, self, sale, count_id, error))
    return FALSE;
  fault->part = STEAD_CASH_UP_PART_NONE;
  return write_all_hours (store, self, sale, error) && close_sale (store, self, error);
}

gboolean
stead_sale_cash_up_post (SteadStore        *store,
                         SteadSaleCashUp   *self,
                         SteadCashUpFault  *out_fault,
                         GError           **error)
{
  g_autoptr(SteadSale) sale = NULL;
  SteadCashUpFault fault = { STEAD_CASH_UP_PART_NONE, 0 };

  g_return_val_if_fail (STEAD_IS_STORE (store) && self != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  sale = stead_sale_repo_get (store, self->sale_id, error);
  if (sale != NULL && stead_sale_check_open (store, sale->id, error) && post (store, self, sale, &fault, error))
    return TRUE;
  if (out_fault != NULL)
    *out_fault = fault;
  return FALSE;
}
