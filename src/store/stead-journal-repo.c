/* stead-journal-repo.c - what happened to money, each fact on its two sides. */
#include "config.h"

#include "store/stead-cash-private.h"
#include "store/stead-journal-repo.h"

typedef struct
{
  SteadStore *store;
  SteadDay    from, to;
  GHashTable *before;     /* of SteadPosting, by head, key, enterprise and category */
  GArray     *postings;
} Journal;

static guint
posting_hash (gconstpointer data)
{
  const SteadPosting *posting = data;

  return (guint) (posting->head * 31 + posting->category * 1009) ^ g_int64_hash (&posting->key)
         ^ (g_int64_hash (&posting->enterprise_id) << 16);
}

static gboolean
posting_same (gconstpointer a,
              gconstpointer b)
{
  const SteadPosting *first = a, *second = b;

  return first->head == second->head && first->key == second->key && first->category == second->category
         && first->enterprise_id == second->enterprise_id;
}

static void
post_side (Journal            *self,
           const SteadPosting *posting)
{
  SteadPosting *sum;

  if (posting->day >= self->from)
    {
      g_array_append_vals (self->postings, posting, 1);
      return;
    }
  sum = g_hash_table_lookup (self->before, posting);
  if (sum != NULL)
    {
      sum->cents += posting->cents;
      return;
    }
  sum = g_memdup2 (posting, sizeof *posting);
  sum->day = self->from - 1;
  sum->fact = STEAD_FACT_BEFORE;
  sum->fact_id = 0;
  g_hash_table_add (self->before, sum);
}

/* One side of a fact, and its key and enterprise. */
typedef struct
{
  SteadHead head;
  gint64    key;
  gint64    enterprise_id;
} Side;

/* @cents go to the first side and come from the second. */
static void
post (Journal   *self,
      SteadFact  fact,
      gint64     fact_id,
      SteadDay   day,
      int        category,
      gint64     cents,
      Side       to,
      Side       from)
{
  SteadPosting posting = { .day = day, .fact = fact, .fact_id = fact_id, .category = category };

  if (cents == 0)
    return;
  posting.head = to.head;
  posting.key = to.key;
  posting.enterprise_id = to.enterprise_id;
  posting.cents = cents;
  post_side (self, &posting);
  posting.head = from.head;
  posting.key = from.key;
  posting.enterprise_id = from.enterprise_id;
  posting.cents = -cents;
  post_side (self, &posting);
}

/* Runs @sql up to the last day and hands over each row. */
static gboolean
each_row (Journal     *self,
          const char  *sql,
          void       (*row) (Journal   *self,
                             SteadStmt *stmt),
          GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (self->store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int (stmt, 1, self->to);
  while ((found = stead_store_step (self->store, stmt, error)) == 1)
    row (self, stmt);
  return found == 0;
}

/* --- accounts and the cash book ---------------------------------------------------- */

static void
account_row (Journal   *self,
             SteadStmt *stmt)
{
  gint64 id = sqlite3_column_int64 (stmt, 0);

  post (self, STEAD_FACT_ACCOUNT, id, stead_stmt_day (stmt, 1), -1, sqlite3_column_int64 (stmt, 2),
        (Side) { STEAD_HEAD_CASH, id, 0 }, (Side) { STEAD_HEAD_OPENING, id, 0 });
}

/* What a line paid for or came of.  A cost with a receipt, a batch or a thing behind it
 * pays what is owed for that; any other is used up at once. */
static Side
other_side (SteadCashCategory  category,
            SteadStmt         *stmt)
{
  gint64 account = sqlite3_column_int64 (stmt, 2);
  gint64 fund = sqlite3_column_int64 (stmt, 5);
  gint64 receipt = sqlite3_column_int64 (stmt, 7);
  gint64 batch = sqlite3_column_int64 (stmt, 8);
  gint64 asset = sqlite3_column_int64 (stmt, 9);
  gint64 asset_sold = sqlite3_column_int64 (stmt, 10);
  gint64 product = sqlite3_column_int64 (stmt, 11);

  switch (category)
    {
    case STEAD_CASH_SALES:
    case STEAD_CASH_REFUND: return (Side) { STEAD_HEAD_SALES, product, 0 };
    case STEAD_CASH_OTHER_IN: return (Side) { STEAD_HEAD_OTHER_IN, 0, 0 };
    case STEAD_CASH_OVER_SHORT: return (Side) { STEAD_HEAD_OVER_SHORT, account, 0 };
    case STEAD_CASH_THING_SOLD:
      return asset_sold != 0 ? (Side) { STEAD_HEAD_DUE, asset_sold, 0 }
                             : (Side) { STEAD_HEAD_GONE, sqlite3_column_int64 (stmt, 12), 0 };
    case STEAD_CASH_PUT_IN: return (Side) { STEAD_HEAD_PUT_IN, 0, 0 };
    case STEAD_CASH_GRANT: return (Side) { STEAD_HEAD_GRANT, fund, 0 };
    case STEAD_CASH_LOAN:
    case STEAD_CASH_LOAN_PAID: return (Side) { STEAD_HEAD_LOAN, 0, 0 };
    case STEAD_CASH_TAKEN_OUT: return (Side) { STEAD_HEAD_TAKEN_OUT, 0, 0 };
    case STEAD_CASH_TRANSFER: return (Side) { STEAD_HEAD_TRANSIT, 0, 0 };
    case STEAD_CASH_SUPPLIES:
    case STEAD_CASH_ANIMALS:
    case STEAD_CASH_ENERGY:
    case STEAD_CASH_FEES:
    case STEAD_CASH_PAY:
    case STEAD_CASH_OTHER_OUT:
    case STEAD_CASH_THING_BOUGHT:
    default:
      break;
    }
  if (receipt != 0)
    return (Side) { STEAD_HEAD_OWED_RECEIPT, receipt, 0 };
  if (category == STEAD_CASH_ANIMALS && batch != 0)
    return (Side) { STEAD_HEAD_OWED_BATCH, batch, 0 };
  if (category == STEAD_CASH_THING_BOUGHT && asset != 0)
    return (Side) { STEAD_HEAD_OWED_ASSET, asset, 0 };
  return (Side) { STEAD_HEAD_COSTS, category, 0 };
}

static void
cash_row (Journal   *self,
          SteadStmt *stmt)
{
  SteadCashCategory category = stead_cash_category_from_word ((const char *) sqlite3_column_text (stmt, 4));
  Side side = other_side (category, stmt);
  gint64 enterprise = sqlite3_column_int64 (stmt, 6);

  side.enterprise_id = enterprise;
  post (self, STEAD_FACT_CASH_LINE, sqlite3_column_int64 (stmt, 0), stead_stmt_day (stmt, 1), (int) category,
        sqlite3_column_int64 (stmt, 3), (Side) { STEAD_HEAD_CASH, sqlite3_column_int64 (stmt, 2), enterprise }, side);
}

static gboolean
read_cash (Journal  *self,
           GError  **error)
{
  static const char accounts_sql[] = "SELECT id, opened_on, opening_cents FROM account WHERE opened_on <= ?1"
                                     " ORDER BY id";
  /* Each receipt beside the one at the end of its corrections; nothing is owed for a gift. */
  static const char lines_sql[] =
    STEAD_RECEIPT_CHAIN
    " SELECT c.id, c.day, c.account_id, c.cents, c.category, coalesce (c.fund_id, 0),"
    " coalesce (c.enterprise_id, b.enterprise_id, p.enterprise_id, 0),"
    " CASE WHEN r.is_gift = 0 THEN r.id END,"
    " CASE WHEN coalesce (fl.birds_cost_cents * (1 - fl.birds_are_gift), fi.cost_cents * (1 - fi.is_gift),"
    "   cr.cost_cents * (1 - cr.is_gift), 0) > 0 THEN b.id END,"
    " CASE WHEN a.is_gift = 0 THEN a.id END,"
    " CASE WHEN a.gone_cents IS NOT NULL THEN a.id END, coalesce (c.product_id, 0), coalesce (a.id, 0)"
    " FROM cash_line c LEFT JOIN batch b ON b.id = c.batch_id LEFT JOIN product p ON p.id = c.product_id"
    " LEFT JOIN chain ON chain.id = c.receipt_id LEFT JOIN receipt r ON r.id = chain.last"
    " LEFT JOIN asset a ON a.id = c.asset_id LEFT JOIN flock fl ON fl.batch_id = b.id"
    " LEFT JOIN fish fi ON fi.batch_id = b.id LEFT JOIN crop cr ON cr.batch_id = b.id"
    " WHERE c.day <= ?1 ORDER BY c.day, c.id";

  return each_row (self, accounts_sql, account_row, error) && each_row (self, lines_sql, cash_row, error);
}

/* --- the store room -------------------------------------------------------------------- */

static const char * const move_words[] = { "received", "used", "sold", "given", "lost", "counted", "corrected",
                                           "made", NULL };
enum { RECEIVED, USED, SOLD, GIVEN, LOST, COUNTED, CORRECTED, MADE };

/* Where the cost of a lot came from or went to, when it came in or went out. */
static Side
far_side (int        kind,
          gint64     item,
          gint64     maker_enterprise,
          SteadStmt *stmt)
{
  switch (kind)
    {
    case RECEIVED:
      return sqlite3_column_int (stmt, 9) != 0 ? (Side) { STEAD_HEAD_IN_KIND, 0, 0 }
                                               : (Side) { STEAD_HEAD_OWED_RECEIPT, sqlite3_column_int64 (stmt, 8), 0 };
    case USED: return (Side) { STEAD_HEAD_GROWING, sqlite3_column_int64 (stmt, 4), sqlite3_column_int64 (stmt, 5) };
    case MADE: return (Side) { STEAD_HEAD_GROWING, sqlite3_column_int64 (stmt, 6), maker_enterprise };
    case SOLD: return (Side) { STEAD_HEAD_SOLD, item, maker_enterprise };
    case GIVEN: return (Side) { STEAD_HEAD_GIVEN, item, maker_enterprise };
    case LOST: return (Side) { STEAD_HEAD_LOST, item, maker_enterprise };
    case COUNTED:
    case CORRECTED:
    default: return (Side) { STEAD_HEAD_COUNTED, item, maker_enterprise };
    }
}

static void
move_row (Journal   *self,
          SteadStmt *stmt)
{
  gint64 item = sqlite3_column_int64 (stmt, 10);
  gint64 maker_enterprise = sqlite3_column_int64 (stmt, 7);
  int kind = stead_repo_word (stmt, 2, move_words);

  post (self, STEAD_FACT_MOVEMENT, sqlite3_column_int64 (stmt, 0), stead_stmt_day (stmt, 1), -1,
        sqlite3_column_int64 (stmt, 3), (Side) { STEAD_HEAD_STOCK, item, maker_enterprise },
        far_side (kind, item, maker_enterprise, stmt));
}

/* What a receipt said that another corrects is no longer owed (or given) from the day on
 * which its lots were emptied. */
static void
corrected_row (Journal   *self,
               SteadStmt *stmt)
{
  SteadDay day = stead_stmt_day (stmt, 1);
  gboolean is_gift = sqlite3_column_int (stmt, 4) != 0;

  if (day > self->to)
    return;
  post (self, STEAD_FACT_RECEIPT, sqlite3_column_int64 (stmt, 0), day, -1, sqlite3_column_int64 (stmt, 3),
        is_gift ? (Side) { STEAD_HEAD_IN_KIND, 0, 0 }
                : (Side) { STEAD_HEAD_OWED_RECEIPT, sqlite3_column_int64 (stmt, 2), 0 },
        (Side) { STEAD_HEAD_COUNTED, 0, 0 });
}

static gboolean
read_stock (Journal  *self,
            GError  **error)
{
  static const char moves_sql[] =
    STEAD_RECEIPT_CHAIN
    " SELECT m.id, m.day, m.kind, m.cost_cents, m.batch_id, coalesce (u.enterprise_id, 0), l.batch_id,"
    " coalesce (b.enterprise_id, 0), chain.last, coalesce (r.is_gift, 0), l.item_id"
    " FROM movement m JOIN lot l ON l.id = m.lot_id LEFT JOIN batch u ON u.id = m.batch_id"
    " LEFT JOIN batch b ON b.id = l.batch_id LEFT JOIN receipt_line rl ON rl.id = l.receipt_line_id"
    " LEFT JOIN receipt r ON r.id = rl.receipt_id LEFT JOIN chain ON chain.id = r.id"
    " WHERE m.day <= ?1 ORDER BY m.day, m.id";
  static const char corrected_sql[] =
    STEAD_RECEIPT_CHAIN
    " SELECT w.id, coalesce ((SELECT max (m.day) FROM receipt_line rl JOIN lot l ON l.receipt_line_id = rl.id"
    "    JOIN movement m ON m.lot_id = l.id WHERE rl.receipt_id = w.id AND m.kind = 'corrected'),"
    "    max (w.day, n.day)), chain.last,"
    "  (SELECT coalesce (sum (rl.cost_cents), 0) FROM receipt_line rl WHERE rl.receipt_id = w.id), w.is_gift"
    " FROM receipt w JOIN receipt n ON n.corrects_id = w.id JOIN chain ON chain.id = w.id"
    " WHERE w.day <= ?1 ORDER BY w.id";

  return each_row (self, moves_sql, move_row, error) && each_row (self, corrected_sql, corrected_row, error);
}

/* --- batches and things ------------------------------------------------------------------ */

static void
start_row (Journal   *self,
           SteadStmt *stmt)
{
  gint64 id = sqlite3_column_int64 (stmt, 0);
  gint64 enterprise = sqlite3_column_int64 (stmt, 2);

  post (self, STEAD_FACT_BATCH, id, stead_stmt_day (stmt, 1), -1, sqlite3_column_int64 (stmt, 3),
        (Side) { STEAD_HEAD_GROWING, id, enterprise },
        sqlite3_column_int (stmt, 4) != 0 ? (Side) { STEAD_HEAD_IN_KIND, 0, enterprise }
                                          : (Side) { STEAD_HEAD_OWED_BATCH, id, enterprise });
}

static void
fish_row (Journal   *self,
          SteadStmt *stmt)
{
  post (self, STEAD_FACT_FISH_MOVE, sqlite3_column_int64 (stmt, 0), stead_stmt_day (stmt, 1), -1,
        sqlite3_column_int64 (stmt, 2),
        (Side) { STEAD_HEAD_GROWING, sqlite3_column_int64 (stmt, 3), sqlite3_column_int64 (stmt, 4) },
        (Side) { STEAD_HEAD_GROWING, sqlite3_column_int64 (stmt, 5), sqlite3_column_int64 (stmt, 6) });
}

static void
asset_row (Journal   *self,
           SteadStmt *stmt)
{
  gint64 id = sqlite3_column_int64 (stmt, 0);
  SteadDay gone = stead_stmt_day (stmt, 4);

  post (self, STEAD_FACT_ASSET, id, stead_stmt_day (stmt, 1), -1, sqlite3_column_int64 (stmt, 2),
        (Side) { STEAD_HEAD_THINGS, id, 0 },
        sqlite3_column_int (stmt, 3) != 0 ? (Side) { STEAD_HEAD_IN_KIND, 0, 0 }
                                          : (Side) { STEAD_HEAD_OWED_ASSET, id, 0 });
  if (gone != STEAD_DAY_NONE && gone <= self->to)
    post (self, STEAD_FACT_ASSET, id, gone, -1, sqlite3_column_int64 (stmt, 5),
          (Side) { STEAD_HEAD_DUE, id, 0 }, (Side) { STEAD_HEAD_GONE, id, 0 });
}

static gboolean
read_batches (Journal  *self,
              GError  **error)
{
  static const char starts_sql[] =
    "SELECT b.id, b.started_on, coalesce (b.enterprise_id, 0),"
    " coalesce (fl.birds_cost_cents, fi.cost_cents, cr.cost_cents, 0),"
    " coalesce (fl.birds_are_gift, fi.is_gift, cr.is_gift, 0)"
    " FROM batch b LEFT JOIN flock fl ON fl.batch_id = b.id LEFT JOIN fish fi ON fi.batch_id = b.id"
    " LEFT JOIN crop cr ON cr.batch_id = b.id WHERE b.started_on <= ?1 ORDER BY b.id";
  static const char fish_sql[] =
    "SELECT f.id, f.day, f.cost_cents, f.to_id, coalesce (t.enterprise_id, 0), f.from_id, coalesce (o.enterprise_id, 0)"
    " FROM fish_move f JOIN batch t ON t.id = f.to_id JOIN batch o ON o.id = f.from_id"
    " WHERE f.day <= ?1 ORDER BY f.day, f.id";
  static const char assets_sql[] =
    "SELECT id, bought_on, cost_cents + extra_cents, is_gift, gone_on, coalesce (gone_cents, 0) FROM asset"
    " WHERE bought_on <= ?1 ORDER BY id";

  return each_row (self, starts_sql, start_row, error) && each_row (self, fish_sql, fish_row, error) &&
         each_row (self, assets_sql, asset_row, error);
}

/* --- all ---------------------------------------------------------------------------------- */

static int
compare_before (gconstpointer a,
                gconstpointer b)
{
  const SteadPosting *first = a, *second = b;

  if (first->head != second->head)
    return first->head < second->head ? -1 : 1;
  if (first->key != second->key)
    return first->key < second->key ? -1 : 1;
  if (first->enterprise_id != second->enterprise_id)
    return first->enterprise_id < second->enterprise_id ? -1 : 1;
  return (first->category > second->category) - (first->category < second->category);
}

static int
compare_days (gconstpointer a,
              gconstpointer b)
{
  const SteadPosting *first = a, *second = b;

  return (first->day > second->day) - (first->day < second->day);
}

/* What came before stands first, in an order of its own. */
static GArray *
gather (Journal *self)
{
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (SteadPosting));
  GHashTableIter iter;
  gpointer posting;

  g_hash_table_iter_init (&iter, self->before);
  while (g_hash_table_iter_next (&iter, &posting, NULL))
    g_array_append_vals (all, posting, 1);
  g_array_sort (all, compare_before);
  g_array_sort (self->postings, compare_days);
  if (self->postings->len > 0)
    g_array_append_vals (all, self->postings->data, self->postings->len);
  return g_steal_pointer (&all);
}

GArray *
stead_journal_repo_read (SteadStore  *store,
                         SteadDay     from,
                         SteadDay     to,
                         GError     **error)
{
  g_autoptr(GHashTable) before = NULL;
  g_autoptr(GArray) postings = NULL;
  Journal self = { .store = store, .from = from, .to = to };

  g_return_val_if_fail (STEAD_IS_STORE (store) && to >= from - 1, NULL);
  self.before = before = g_hash_table_new_full (posting_hash, posting_same, g_free, NULL);
  self.postings = postings = g_array_new (FALSE, FALSE, sizeof (SteadPosting));
  if (!read_cash (&self, error) || !read_stock (&self, error) || !read_batches (&self, error))
    return NULL;
  return gather (&self);
}

gint64
stead_journal_repo_holder (SteadStore  *store,
                           SteadFact    fact,
                           gint64       fact_id,
                           GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  if (fact == STEAD_FACT_MOVEMENT)
    return stead_repo_count_id (store, "SELECT lot_id FROM movement WHERE id = ?1", fact_id, error);
  if (fact == STEAD_FACT_FISH_MOVE)
    return stead_repo_count_id (store, "SELECT to_id FROM fish_move WHERE id = ?1", fact_id, error);
  return 0;
}

static gpointer
fund_from_row (SteadStmt *stmt)
{
  SteadCashBalance *balance = g_new0 (SteadCashBalance, 1);

  balance->fund_id = sqlite3_column_int64 (stmt, 0);
  balance->cents = sqlite3_column_int64 (stmt, 1);
  return balance;
}

GPtrArray *
stead_journal_repo_funds (SteadStore  *store,
                          SteadDay     day,
                          GError     **error)
{
  static const char sql[] = "SELECT fund_id, sum (cents) AS total FROM cash_line WHERE fund_id IS NOT NULL AND day <= ?1"
                            " GROUP BY fund_id HAVING total <> 0 ORDER BY fund_id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, day, fund_from_row, g_free, error);
}
