/* stead-statement-lines.c - the lines of the statements, out of the postings. */
#include "config.h"

#include "answer/stead-cash-words.h"
#include "answer/stead-statement-private.h"

#include "store/stead-batch-repo.h"

#include <glib/gi18n-lib.h>

/* --- cash flow ----------------------------------------------------------------------- */

static gboolean
take_category (const SteadStatementMaker *self,
               const SteadPosting        *posting,
               gint64                     category)
{
  return posting->head == STEAD_HEAD_CASH && posting->category == category;
}

static gint64
add_flow_lines (SteadStatementMaker *self,
                SteadCashActivity    flow)
{
  static const char * const names[] = { "sales", "refund", "other_in", "supplies", "animals", "energy", "fees", "pay",
                                        "other_out", "over_short", "thing_bought", "thing_sold", "put_in", "grant",
                                        "loan", "loan_paid", "taken_out", "transfer" };
  gint64 sum = 0;

  G_STATIC_ASSERT (G_N_ELEMENTS (names) == STEAD_N_CASH_CATEGORIES);
  for (int i = 0; i < STEAD_N_CASH_CATEGORIES; i++)
    if (stead_cash_category_activity ((SteadCashCategory) i) == flow)
      sum += stead_maker_flow (self, STEAD_STATEMENT_CASH, names[i],
                               stead_cash_words_category ((SteadCashCategory) i), 1, take_category, i);
  return sum;
}

static gint64
cash_before (const SteadStatementMaker *self)
{
  gint64 cents = 0;

  for (guint i = 0; i < self->postings->len; i++)
    {
      const SteadPosting *posting = &g_array_index (self->postings, SteadPosting, i);

      if (posting->head == STEAD_HEAD_CASH && posting->day < self->answer->from && stead_maker_asks (self, posting))
        cents += posting->cents;
    }
  return cents;
}

static void
add_cash (SteadStatementMaker *self)
{
  SteadStatementAnswer *answer = self->answer;
  const SteadStatementPart part = STEAD_STATEMENT_CASH;

  answer->cash_before = cash_before (self);
  if (answer->enterprise_id == 0)
    stead_maker_total (self, part, "cash_before", _("Money at first"), 0, answer->cash_before);
  answer->operating = add_flow_lines (self, STEAD_CASH_ACTIVITY_OPERATING);
  stead_maker_total (self, part, "operating", _("From running the farm"), 0, answer->operating);
  answer->investing = add_flow_lines (self, STEAD_CASH_ACTIVITY_INVESTING);
  stead_maker_total (self, part, "investing", _("From things that last"), 0, answer->investing);
  answer->financing = add_flow_lines (self, STEAD_CASH_ACTIVITY_FINANCING)
                      + stead_maker_flow (self, part, "opening", _("In accounts when they were opened"), 1,
                                          take_category, -1);
  stead_maker_total (self, part, "financing", _("From money put in and taken out"), 0, answer->financing);
  answer->cash_end = answer->cash_before + answer->operating + answer->investing + answer->financing
                     + add_flow_lines (self, STEAD_CASH_ACTIVITY_NONE);
  if (answer->enterprise_id == 0)
    stead_maker_total (self, part, "cash_end", _("Money at the end"), 0, answer->cash_end);
}

/* --- income ---------------------------------------------------------------------------- */

static gboolean
take_cost (const SteadStatementMaker *self,
           const SteadPosting        *posting,
           gint64                     category)
{
  return posting->head == STEAD_HEAD_COSTS && posting->key == category;
}

static gint64
add_costs (SteadStatementMaker *self)
{
  static const struct { SteadCashCategory category; const char *name; } costs[] = {
    { STEAD_CASH_SUPPLIES, "paid_supplies" }, { STEAD_CASH_ANIMALS, "paid_animals" },
    { STEAD_CASH_ENERGY, "paid_energy" }, { STEAD_CASH_FEES, "paid_fees" }, { STEAD_CASH_PAY, "paid_pay" },
    { STEAD_CASH_OTHER_OUT, "paid_other" }, { STEAD_CASH_THING_BOUGHT, "paid_things" },
  };
  gint64 sum = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (costs); i++)
    sum += stead_maker_flow (self, STEAD_STATEMENT_INCOME, costs[i].name,
                             stead_cash_words_category (costs[i].category), -1, take_cost, costs[i].category);
  return sum;
}

static gint64
income (SteadStatementMaker *self,
        SteadHead            head,
        const char          *name,
        const char          *label)
{
  return stead_maker_flow (self, STEAD_STATEMENT_INCOME, name, label, -1, stead_take_head, head);
}

/* Told beside the sums, in none of them. */
static void
mark_apart (SteadStatementMaker *self,
            guint                from_line)
{
  for (guint i = from_line; i < self->answer->lines->len; i++)
    ((SteadStatementLine *) self->answer->lines->pdata[i])->is_apart = TRUE;
}

static void
add_income (SteadStatementMaker *self)
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
  stead_maker_total (self, part, "earned", _("Earned before losses"), 0, earned);
  losses = income (self, STEAD_HEAD_LOST, "lost", _("Lost, spoiled or wasted"));
  losses += income (self, STEAD_HEAD_GIVEN, "given", _("Given away"));
  losses += income (self, STEAD_HEAD_COUNTED, "counted", _("Found or missing at counts, and corrections"));
  losses += income (self, STEAD_HEAD_LEFT, "left", _("Cost left in batches that ended"));
  losses += income (self, STEAD_HEAD_OVER_SHORT, "over_short", _("Over or short at a count"));
  answer->gone = income (self, STEAD_HEAD_GONE, "gone", _("Things sold or broken, against their worth"));
  answer->net = earned + losses + answer->gone;
  stead_maker_total (self, part, "net", _("Net income"), 0, answer->net);
  first = answer->lines->len;
  answer->in_kind = income (self, STEAD_HEAD_IN_KIND, "in_kind", _("Gifts in kind, at fair value"));
  stead_maker_flow (self, part, "stock_change", _("Change of what is in the store room"), 1, stead_take_stock, 0);
  stead_maker_flow (self, part, "growing_change", _("Change of what is growing"), 1, stead_take_growing, 0);
  stead_maker_flow (self, part, "flocks_change", _("Change of the flocks’ own worth"), 1, stead_take_growing, 1);
  mark_apart (self, first);
}

/* --- change in worth ------------------------------------------------------------------------ */

static gint64
worth (SteadStatementMaker *self,
       SteadHead            head,
       const char          *name,
       const char          *label)
{
  return stead_maker_flow (self, STEAD_STATEMENT_WORTH, name, label, -1, stead_take_head, head);
}

static void
add_worth (SteadStatementMaker *self)
{
  SteadStatementAnswer *answer = self->answer;
  const SteadStatementPart part = STEAD_STATEMENT_WORTH;

  if (answer->enterprise_id != 0)
    return;
  stead_maker_total (self, part, "worth_before", _("Worth at first"), 0, answer->worth_before);
  answer->put_in = worth (self, STEAD_HEAD_OPENING, "opening", _("In accounts when they were opened"));
  answer->put_in += worth (self, STEAD_HEAD_PUT_IN, "put_in", _("Own money put in"));
  answer->put_in += worth (self, STEAD_HEAD_GRANT, "grant", _("Grants and gifts of money"));
  answer->put_in += worth (self, STEAD_HEAD_IN_KIND, "in_kind", _("Gifts in kind, at fair value"));
  stead_maker_total (self, part, "net", _("Net income"), 0, answer->net);
  answer->taken_out = -worth (self, STEAD_HEAD_TAKEN_OUT, "taken_out", _("Taken out for the group"));
  stead_maker_total (self, part, "worth_end", _("Worth at the end"), 0, answer->worth_end);
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
  SteadStatementMaker self = { .answer = answer, .postings = postings, .flocks = flocks };

  if (flocks == NULL)
    return FALSE;
  add_cash (&self);
  add_income (&self);
  if (!stead_statement_add_balance (store, &self, error))
    return FALSE;
  add_worth (&self);
  stead_statement_add_figures (&self);
  return TRUE;
}
