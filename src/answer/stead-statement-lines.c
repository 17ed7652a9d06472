/* stead-statement-lines.c - the lines of the statements, out of the postings. */
#include "config.h"

#include "answer/stead-cash-words.h"
#include "answer/stead-statement-private.h"

#include "store/stead-batch-repo.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  SteadStatementAnswer *answer;
  const GArray         *postings;
  GHashTable           *flocks;      /* set of ids of batches that are flocks */
} Making;

/* Which postings a line takes; @data is the line's own. */
typedef gboolean (*TakeFunc) (const Making       *self,
                              const SteadPosting *posting,
                              gint64              data);

static gboolean
is_asked (const Making       *self,
          const SteadPosting *posting)
{
  return self->answer->enterprise_id == 0 || posting->enterprise_id == self->answer->enterprise_id;
}

/* --- lines ------------------------------------------------------------------------- */

void
stead_statement_line_free (SteadStatementLine *line)
{
  if (line == NULL)
    return;
  g_free (line->name);
  g_free (line->label);
  g_array_unref (line->entries);
  g_free (line);
}

static SteadStatementLine *
line_add (Making             *self,
          SteadStatementPart  part,
          const char         *name,
          const char         *label)
{
  SteadStatementLine *line = g_new0 (SteadStatementLine, 1);

  line->part = part;
  line->name = g_strdup (name);
  line->label = g_strdup (label);
  line->entries = g_array_new (FALSE, FALSE, sizeof (SteadStatementEntry));
  g_ptr_array_add (self->answer->lines, line);
  return line;
}

static void
total_add (Making             *self,
           SteadStatementPart  part,
           const char         *name,
           const char         *label,
           gint64              before_cents,
           gint64              cents)
{
  SteadStatementLine *line = line_add (self, part, name, label);

  line->before_cents = before_cents;
  line->cents = cents;
  line->is_total = TRUE;
}

static void
entry_add (SteadStatementLine *line,
           const SteadPosting *posting,
           int                 sign)
{
  SteadStatementEntry entry = { .day = posting->day, .fact = posting->fact, .fact_id = posting->fact_id,
                                .cents = sign * posting->cents };

  g_array_append_val (line->entries, entry);
}

/* A line of what happened in the period; none if nothing did. */
static gint64
flow_add (Making             *self,
          SteadStatementPart  part,
          const char         *name,
          const char         *label,
          int                 sign,
          TakeFunc            take,
          gint64              data)
{
  SteadStatementLine *line = NULL;
  gint64 cents = 0;

  for (guint i = 0; i < self->postings->len; i++)
    {
      const SteadPosting *posting = &g_array_index (self->postings, SteadPosting, i);

      if (posting->day < self->answer->from || !is_asked (self, posting) || !take (self, posting, data))
        continue;
      if (line == NULL)
        line = line_add (self, part, name, label);
      entry_add (line, posting, sign);
      cents += sign * posting->cents;
    }
  if (line != NULL)
    line->cents = cents;
  return cents;
}

/* Sums at first and at the end. */
typedef struct
{
  gint64 before;
  gint64 end;
} Pair;

/* A line of what was there; none if nothing was, at first or at the end. */
static Pair
stand_add (Making     *self,
           const char *name,
           const char *label,
           TakeFunc    take,
           gint64      data)
{
  SteadStatementLine *line = line_add (self, STEAD_STATEMENT_BALANCE, name, label);
  Pair sum = { 0, 0 };

  for (guint i = 0; i < self->postings->len; i++)
    {
      const SteadPosting *posting = &g_array_index (self->postings, SteadPosting, i);

      if (!is_asked (self, posting) || !take (self, posting, data))
        continue;
      entry_add (line, posting, 1);
      sum.end += posting->cents;
      sum.before += posting->day < self->answer->from ? posting->cents : 0;
    }
  line->before_cents = sum.before;
  line->cents = sum.end;
  if (sum.before == 0 && sum.end == 0)
    g_ptr_array_remove_index (self->answer->lines, self->answer->lines->len - 1);
  return sum;
}

/* --- cash flow ----------------------------------------------------------------------- */

static gboolean
take_category (const Making       *self,
               const SteadPosting *posting,
               gint64              category)
{
  return posting->head == STEAD_HEAD_CASH && posting->category == category;
}

static gboolean
take_account (const Making       *self,
              const SteadPosting *posting,
              gint64              account)
{
  return posting->head == STEAD_HEAD_CASH && posting->key == account;
}

static gboolean
take_head (const Making       *self,
           const SteadPosting *posting,
           gint64              head)
{
  return posting->head == (SteadHead) head;
}

static gint64
add_flow_lines (Making    *self,
                SteadFlow  flow)
{
  static const char * const names[] = { "sales", "refund", "other_in", "supplies", "animals", "energy", "fees", "pay",
                                        "other_out", "over_short", "thing_bought", "thing_sold", "put_in", "grant",
                                        "loan", "loan_paid", "taken_out", "transfer" };
  gint64 sum = 0;

  G_STATIC_ASSERT (G_N_ELEMENTS (names) == STEAD_N_CASH_CATEGORIES);
  for (int i = 0; i < STEAD_N_CASH_CATEGORIES; i++)
    if (stead_cash_category_flow ((SteadCashCategory) i) == flow)
      sum += flow_add (self, STEAD_STATEMENT_CASH, names[i], stead_cash_words_category ((SteadCashCategory) i), 1,
                       take_category, i);
  return sum;
}

static gint64
cash_before (const Making *self)
{
  gint64 cents = 0;

  for (guint i = 0; i < self->postings->len; i++)
    {
      const SteadPosting *posting = &g_array_index (self->postings, SteadPosting, i);

      if (posting->head == STEAD_HEAD_CASH && posting->day < self->answer->from && is_asked (self, posting))
        cents += posting->cents;
    }
  return cents;
}

static void
add_cash (Making *self)
{
  SteadStatementAnswer *answer = self->answer;
  const SteadStatementPart part = STEAD_STATEMENT_CASH;

  answer->cash_before = cash_before (self);
  if (answer->enterprise_id == 0)
    total_add (self, part, "cash_before", _("Money at first"), 0, answer->cash_before);
  answer->operating = add_flow_lines (self, STEAD_FLOW_OPERATING);
  total_add (self, part, "operating", _("From running the farm"), 0, answer->operating);
  answer->investing = add_flow_lines (self, STEAD_FLOW_INVESTING);
  total_add (self, part, "investing", _("From things that last"), 0, answer->investing);
  answer->financing = add_flow_lines (self, STEAD_FLOW_FINANCING)
                      + flow_add (self, part, "opening", _("In accounts when they were opened"), 1, take_category, -1);
  total_add (self, part, "financing", _("From money put in and taken out"), 0, answer->financing);
  answer->cash_end = answer->cash_before + answer->operating + answer->investing + answer->financing
                     + add_flow_lines (self, STEAD_FLOW_NONE);
  if (answer->enterprise_id == 0)
    total_add (self, part, "cash_end", _("Money at the end"), 0, answer->cash_end);
}

/* --- income ---------------------------------------------------------------------------- */

static gboolean
take_cost (const Making       *self,
           const SteadPosting *posting,
           gint64              category)
{
  return posting->head == STEAD_HEAD_COSTS && posting->key == category;
}

static gint64
add_costs (Making *self)
{
  static const struct { SteadCashCategory category; const char *name; } costs[] = {
    { STEAD_CASH_SUPPLIES, "paid_supplies" }, { STEAD_CASH_ANIMALS, "paid_animals" },
    { STEAD_CASH_ENERGY, "paid_energy" }, { STEAD_CASH_FEES, "paid_fees" }, { STEAD_CASH_PAY, "paid_pay" },
    { STEAD_CASH_OTHER_OUT, "paid_other" }, { STEAD_CASH_THING_BOUGHT, "paid_things" },
  };
  gint64 sum = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (costs); i++)
    sum += flow_add (self, STEAD_STATEMENT_INCOME, costs[i].name, stead_cash_words_category (costs[i].category), -1,
                     take_cost, costs[i].category);
  return sum;
}

static gint64
income (Making     *self,
        SteadHead   head,
        const char *name,
        const char *label)
{
  return flow_add (self, STEAD_STATEMENT_INCOME, name, label, -1, take_head, head);
}

/* Told beside the sums, in none of them. */
static void
mark_apart (Making *self,
            guint   from_line)
{
  for (guint i = from_line; i < self->answer->lines->len; i++)
    ((SteadStatementLine *) self->answer->lines->pdata[i])->is_apart = TRUE;
}

static gboolean
take_stock (const Making       *self,
            const SteadPosting *posting,
            gint64              data)
{
  return posting->head == STEAD_HEAD_STOCK;
}

static gboolean
take_growing (const Making       *self,
              const SteadPosting *posting,
              gint64              flocks)
{
  return posting->head == STEAD_HEAD_GROWING && g_hash_table_contains (self->flocks, &posting->key) == (flocks != 0);
}

static void
add_income (Making *self)
{
  SteadStatementAnswer *answer = self->answer;
  const SteadStatementPart part = STEAD_STATEMENT_INCOME;
  gint64 earned, losses;
  guint first;

  answer->sales = income (self, STEAD_HEAD_SALES, "sales", _("Sales, less what was given back"));
  earned = answer->sales + income (self, STEAD_HEAD_OTHER_IN, "other_in", _("Other money in"));
  earned += income (self, STEAD_HEAD_SOLD, "sold", _("Cost of goods sold"));
  earned += income (self, STEAD_HEAD_EGGS, "eggs", _("Cost of flocks that lay"));
  earned += add_costs (self);
  earned += income (self, STEAD_HEAD_WEAR, "wear", _("Wear of things that last"));
  total_add (self, part, "earned", _("Earned before losses"), 0, earned);
  losses = income (self, STEAD_HEAD_LOST, "lost", _("Lost, spoiled or wasted"));
  losses += income (self, STEAD_HEAD_GIVEN, "given", _("Given away"));
  losses += income (self, STEAD_HEAD_COUNTED, "counted", _("Found or missing at counts, and corrections"));
  losses += income (self, STEAD_HEAD_LEFT, "left", _("Cost left in batches that ended"));
  losses += income (self, STEAD_HEAD_OVER_SHORT, "over_short", _("Over or short at a count"));
  answer->gone = income (self, STEAD_HEAD_GONE, "gone", _("Things sold or broken, against their worth"));
  answer->net = earned + losses + answer->gone;
  total_add (self, part, "net", _("Net income"), 0, answer->net);
  first = answer->lines->len;
  answer->in_kind = income (self, STEAD_HEAD_IN_KIND, "in_kind", _("Gifts in kind, at fair value"));
  flow_add (self, part, "stock_change", _("Change of what is in the store room"), 1, take_stock, 0);
  flow_add (self, part, "growing_change", _("Change of what is growing"), 1, take_growing, 0);
  flow_add (self, part, "flocks_change", _("Change of the flocks’ own worth"), 1, take_growing, 1);
  mark_apart (self, first);
}

/* --- balance ---------------------------------------------------------------------------- */

/* Sums of the keys of one head: key to Pair.  A key below zero is owed, one above is
 * paid ahead. */
static GHashTable *
sums_of (const Making *self,
         SteadHead     head)
{
  GHashTable *sums = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);

  for (guint i = 0; i < self->postings->len; i++)
    {
      const SteadPosting *posting = &g_array_index (self->postings, SteadPosting, i);
      Pair *pair;

      if (posting->head != head)
        continue;
      pair = g_hash_table_lookup (sums, &posting->key);
      if (pair == NULL)
        {
          pair = g_new0 (Pair, 1);
          g_hash_table_insert (sums, g_memdup2 (&posting->key, sizeof posting->key), pair);
        }
      pair->end += posting->cents;
      pair->before += posting->day < self->answer->from ? posting->cents : 0;
    }
  return sums;
}

/* Fills one line with the keys of @head that are owed at the end, or paid ahead. */
static void
fill_owed (Making             *self,
           SteadStatementLine *line,
           SteadHead           head,
           int                 sign)
{
  g_autoptr(GHashTable) sums = sums_of (self, head);
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, sums);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      const Pair *pair = value;

      line->before_cents += sign * pair->before > 0 ? pair->before : 0;
      line->cents += sign * pair->end > 0 ? pair->end : 0;
    }
  for (guint i = 0; i < self->postings->len; i++)
    {
      const SteadPosting *posting = &g_array_index (self->postings, SteadPosting, i);
      const Pair *pair = posting->head == head ? g_hash_table_lookup (sums, &posting->key) : NULL;

      if (pair != NULL && sign * pair->end > 0)
        entry_add (line, posting, 1);
    }
}

static const SteadHead owed_heads[] = { STEAD_HEAD_OWED_RECEIPT, STEAD_HEAD_OWED_BATCH, STEAD_HEAD_OWED_ASSET };

static Pair
finish_owed (Making             *self,
             SteadStatementLine *line)
{
  Pair pair = { line->before_cents, line->cents };

  if (pair.before == 0 && pair.end == 0)
    g_ptr_array_remove_index (self->answer->lines, self->answer->lines->len - 1);
  return pair;
}

static Pair
add_ahead (Making *self)
{
  SteadStatementLine *line = line_add (self, STEAD_STATEMENT_BALANCE, "ahead", _("Paid ahead"));

  for (gsize i = 0; i < G_N_ELEMENTS (owed_heads); i++)
    fill_owed (self, line, owed_heads[i], 1);
  return finish_owed (self, line);
}

static Pair
add_owed (Making     *self,
          SteadHead   head,
          const char *name,
          const char *label)
{
  SteadStatementLine *line = line_add (self, STEAD_STATEMENT_BALANCE, name, label);

  fill_owed (self, line, head, -1);
  return finish_owed (self, line);
}

static Pair
plus (Pair a,
      Pair b)
{
  return (Pair) { a.before + b.before, a.end + b.end };
}

static gboolean
add_accounts (SteadStore  *store,
              Making      *self,
              Pair        *sum,
              GError     **error)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store, TRUE, error);

  for (guint i = 0; accounts != NULL && i < accounts->len; i++)
    {
      const SteadAccount *account = accounts->pdata[i];
      g_autofree char *name = g_strdup_printf ("account_%" G_GINT64_FORMAT, account->id);

      *sum = plus (*sum, stand_add (self, name, account->name, take_account, account->id));
    }
  return accounts != NULL;
}

/* Money of funds stands apart: it is part of the accounts above. */
static gboolean
add_funds (SteadStore  *store,
           Making      *self,
           GError     **error)
{
  g_autoptr(GPtrArray) funds = stead_fund_repo_list (store, TRUE, error);

  for (guint i = 0; funds != NULL && i < funds->len; i++)
    {
      const SteadFund *fund = funds->pdata[i];
      g_autofree char *name = g_strdup_printf ("fund_%" G_GINT64_FORMAT, fund->id);
      /* Translators: %s is the name of a fund. */
      g_autofree char *label = g_strdup_printf (_("Of it for one purpose only: %s"), fund->name);
      SteadStatementLine *line;
      gint64 before, end;

      if (!stead_cash_repo_balance (store, 0, fund->id, self->answer->from - 1, &before, error) ||
          !stead_cash_repo_balance (store, 0, fund->id, self->answer->to, &end, error))
        return FALSE;
      self->answer->restricted_end += end;
      if (before == 0 && end == 0)
        continue;
      line = line_add (self, STEAD_STATEMENT_BALANCE, name, label);
      line->before_cents = before;
      line->cents = end;
      line->is_apart = TRUE;
    }
  return funds != NULL;
}

static Pair
add_goods (Making *self)
{
  Pair sum = stand_add (self, "stock", _("In the store room"), take_stock, 0);

  sum = plus (sum, stand_add (self, "growing", _("Growing: fish, crops and kitchen"), take_growing, 0));
  return plus (sum, stand_add (self, "flocks", _("Flocks"), take_growing, 1));
}

static gboolean
add_balance (SteadStore  *store,
             Making      *self,
             GError     **error)
{
  SteadStatementAnswer *answer = self->answer;
  const SteadStatementPart part = STEAD_STATEMENT_BALANCE;
  Pair owned = { 0, 0 }, owed;

  if (answer->enterprise_id != 0)
    {
      add_goods (self);
      return TRUE;
    }
  if (!add_accounts (store, self, &owned, error) || !add_funds (store, self, error))
    return FALSE;
  owned = plus (owned, stand_add (self, "transit", _("On its way between accounts"), take_head, STEAD_HEAD_TRANSIT));
  owned = plus (owned, stand_add (self, "due", _("To be paid to the farm for things sold"), take_head, STEAD_HEAD_DUE));
  owned = plus (owned, add_ahead (self));
  owned = plus (owned, add_goods (self));
  owned = plus (owned, stand_add (self, "things", _("Things that last"), take_head, STEAD_HEAD_THINGS));
  total_add (self, part, "owned", _("All that the farm owns"), owned.before, owned.end);
  owed = add_owed (self, STEAD_HEAD_OWED_RECEIPT, "owed_receipts", _("Receipts that no line of the cash book has paid"));
  owed = plus (owed, add_owed (self, STEAD_HEAD_OWED_BATCH, "owed_batches", _("Animals, seed and plants not paid for")));
  owed = plus (owed, add_owed (self, STEAD_HEAD_OWED_ASSET, "owed_things", _("Things that last, not paid for")));
  owed = plus (owed, stand_add (self, "loans", _("Loans"), take_head, STEAD_HEAD_LOAN));
  total_add (self, part, "owed", _("All that it owes"), owed.before, owed.end);
  answer->owned_before = owned.before;
  answer->owned_end = owned.end;
  answer->owed_before = -owed.before;
  answer->owed_end = -owed.end;
  answer->worth_before = owned.before + owed.before;
  answer->worth_end = owned.end + owed.end;
  total_add (self, part, "worth", _("Worth of the farm"), answer->worth_before, answer->worth_end);
  return TRUE;
}

/* --- change in worth ------------------------------------------------------------------------ */

static gint64
worth (Making     *self,
       SteadHead   head,
       const char *name,
       const char *label)
{
  return flow_add (self, STEAD_STATEMENT_WORTH, name, label, -1, take_head, head);
}

static void
add_worth (Making *self)
{
  SteadStatementAnswer *answer = self->answer;
  const SteadStatementPart part = STEAD_STATEMENT_WORTH;

  if (answer->enterprise_id != 0)
    return;
  total_add (self, part, "worth_before", _("Worth at first"), 0, answer->worth_before);
  answer->put_in = worth (self, STEAD_HEAD_OPENING, "opening", _("In accounts when they were opened"));
  answer->put_in += worth (self, STEAD_HEAD_PUT_IN, "put_in", _("Own money put in"));
  answer->put_in += worth (self, STEAD_HEAD_GRANT, "grant", _("Grants and gifts of money"));
  answer->put_in += worth (self, STEAD_HEAD_IN_KIND, "in_kind", _("Gifts in kind, at fair value"));
  total_add (self, part, "net", _("Net income"), 0, answer->net);
  answer->taken_out = -worth (self, STEAD_HEAD_TAKEN_OUT, "taken_out", _("Taken out for the group"));
  total_add (self, part, "worth_end", _("Worth at the end"), 0, answer->worth_end);
}

/* --- figures beside the lines ------------------------------------------------------------------ */

static void
add_cost (SteadStatementAnswer *answer,
          const SteadPosting   *posting)
{
  gint64 *parts[STEAD_N_HEADS] = {
    [STEAD_HEAD_STOCK] = &answer->cost.stock, [STEAD_HEAD_GROWING] = &answer->cost.growing,
    [STEAD_HEAD_SOLD] = &answer->cost.sold, [STEAD_HEAD_EGGS] = &answer->cost.eggs,
    [STEAD_HEAD_LOST] = &answer->cost.lost, [STEAD_HEAD_GIVEN] = &answer->cost.given,
    [STEAD_HEAD_COUNTED] = &answer->cost.counted, [STEAD_HEAD_LEFT] = &answer->cost.left,
  };

  if (parts[posting->head] == NULL)
    return;
  *parts[posting->head] += posting->cents;
  answer->cost.put += posting->cents;
}

static void
add_accrual (SteadStatementAnswer *answer,
             const SteadPosting   *posting)
{
  SteadAccrual *accrual = &answer->accrual;
  gboolean is_inside = posting->day >= answer->from;
  gboolean is_goods = posting->head == STEAD_HEAD_STOCK || posting->head == STEAD_HEAD_GROWING;
  gboolean is_owed = posting->head == STEAD_HEAD_OWED_RECEIPT || posting->head == STEAD_HEAD_OWED_BATCH;
  double cents = (double) posting->cents;

  accrual->inventory_end += is_goods ? cents : 0;
  accrual->inventory_begin += is_goods && !is_inside ? cents : 0;
  if (!is_inside)
    return;
  accrual->payable_change -= is_owed ? cents : 0;
  if (posting->head == STEAD_HEAD_SALES || posting->head == STEAD_HEAD_OTHER_IN
      || posting->head == STEAD_HEAD_OVER_SHORT)
    accrual->sales -= cents;
  if (posting->head == STEAD_HEAD_COSTS || (is_owed && posting->fact == STEAD_FACT_CASH_LINE))
    accrual->cash_costs += cents;
  if (posting->head == STEAD_HEAD_IN_KIND && posting->fact != STEAD_FACT_ASSET)
    accrual->cash_costs -= cents;
  if (posting->head == STEAD_HEAD_WEAR || (posting->head == STEAD_HEAD_GROWING && posting->fact == STEAD_FACT_ASSET))
    accrual->depreciation += cents;
}

static void
add_unpaid (Making *self)
{
  g_autoptr(GHashTable) sums = sums_of (self, STEAD_HEAD_OWED_RECEIPT);
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, sums);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    if (((const Pair *) value)->end < 0)
      {
        self->answer->n_unpaid++;
        self->answer->unpaid_cents -= ((const Pair *) value)->end;
      }
}

static GHashTable *
flock_ids (SteadStore  *store,
           GError     **error)
{
  g_autoptr(GPtrArray) batches = stead_batch_repo_list (store, TRUE, error);
  GHashTable *ids;

  if (batches == NULL)
    return NULL;
  ids = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  for (guint i = 0; i < batches->len; i++)
    {
      const SteadBatch *batch = batches->pdata[i];

      if (batch->kind == STEAD_BATCH_FLOCK)
        g_hash_table_add (ids, g_memdup2 (&batch->id, sizeof batch->id));
    }
  return ids;
}

gboolean
stead_statement_add_lines (SteadStore            *store,
                           SteadStatementAnswer  *answer,
                           const GArray          *postings,
                           GError               **error)
{
  g_autoptr(GHashTable) flocks = flock_ids (store, error);
  Making self = { .answer = answer, .postings = postings, .flocks = flocks };

  if (flocks == NULL)
    return FALSE;
  for (guint i = 0; i < postings->len; i++)
    {
      add_cost (answer, &g_array_index (postings, SteadPosting, i));
      add_accrual (answer, &g_array_index (postings, SteadPosting, i));
    }
  add_cash (&self);
  add_income (&self);
  if (!add_balance (store, &self, error))
    return FALSE;
  add_worth (&self);
  add_unpaid (&self);
  return TRUE;
}
