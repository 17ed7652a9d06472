/* stead-sale-tally.c - what happens at the stall: taps and prices. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-sale-private.h"
#include "store/stead-sale-tally.h"

static const char * const kind_words[] = { "sold", "sample", "given", "spoiled", NULL };

/* --- reading -------------------------------------------------------------------------- */

static SteadSaleTap
tap_from_row (SteadStmt *stmt)
{
  return (SteadSaleTap) { .id = sqlite3_column_int64 (stmt, 0), .line_id = sqlite3_column_int64 (stmt, 1),
                          .at = sqlite3_column_int64 (stmt, 2),
                          .kind = (SteadTapKind) stead_repo_word (stmt, 3, kind_words),
                          .units = sqlite3_column_double (stmt, 4), .price_cents = sqlite3_column_int64 (stmt, 5),
                          .back_id = sqlite3_column_int64 (stmt, 6),
                          .taken_back = sqlite3_column_int (stmt, 7) != 0 };
}

GArray *
stead_sale_tally_list (SteadStore  *store,
                       gint64       sale_id,
                       GError     **error)
{
  static const char sql[] =
    "SELECT t.id, t.line_id, t.at, t.kind, t.units, t.price_cents, t.back_id,"
    " EXISTS (SELECT 1 FROM sale_tap b WHERE b.back_id = t.id)"
    " FROM sale_line l CROSS JOIN sale_tap t ON t.line_id = l.id WHERE l.sale_id = ?1 ORDER BY t.id";
  g_autoptr(GArray) taps = g_array_new (FALSE, FALSE, sizeof (SteadSaleTap));
  g_autoptr(SteadStmt) stmt = NULL;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, sale_id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadSaleTap tap = tap_from_row (stmt);

      g_array_append_val (taps, tap);
    }
  return found == 0 ? g_steal_pointer (&taps) : NULL;
}

gint64
stead_sale_tally_last (SteadStore  *store,
                       gint64       sale_id,
                       GError     **error)
{
  static const char sql[] =
    "SELECT coalesce (max (t.id), 0) FROM sale_line l CROSS JOIN sale_tap t ON t.line_id = l.id WHERE l.sale_id = ?1"
    " AND t.back_id IS NULL AND NOT EXISTS (SELECT 1 FROM sale_tap b WHERE b.back_id = t.id)";

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  return stead_repo_count_id (store, sql, sale_id, error);
}

/* What a tap has to be checked against. */
typedef struct
{
  gint64    sale_id;
  SteadDay  day;
  gboolean  opened;
  double    brought;
  double    tallied;
  gint64    price_cents;
  char     *name;
} Line;

static void
line_clear (Line *line)
{
  g_free (line->name);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Line, line_clear)

static gboolean
read_line (SteadStore  *store,
           gint64       line_id,
           Line        *out,
           GError     **error)
{
  static const char sql[] =
    "SELECT l.sale_id, s.day, s.opened_at IS NOT NULL, coalesce (l.brought, l.planned),"
    " coalesce ((SELECT sum (t.units) FROM sale_tap t WHERE t.line_id = l.id), 0),"
    " coalesce ((SELECT c.price_cents FROM sale_price c WHERE c.line_id = l.id ORDER BY c.at DESC, c.id DESC LIMIT 1),"
    "   l.price_cents), p.name"
    " FROM sale_line l JOIN sale_day s ON s.id = l.sale_id JOIN product p ON p.id = l.product_id WHERE l.id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, line_id);
  found = stead_store_step (store, stmt, error);
  if (found != 1)
    return found == 0 ? stead_repo_missing (error) : FALSE;
  *out = (Line) { .sale_id = sqlite3_column_int64 (stmt, 0), .day = stead_stmt_day (stmt, 1),
                  .opened = sqlite3_column_int (stmt, 2) != 0, .brought = sqlite3_column_double (stmt, 3),
                  .tallied = sqlite3_column_double (stmt, 4), .price_cents = sqlite3_column_int64 (stmt, 5),
                  .name = stead_stmt_text (stmt, 6) };
  return TRUE;
}

/* --- taps ------------------------------------------------------------------------------ */

static gboolean
check_tap (SteadStore  *store,
           const Line  *line,
           double       units,
           GError     **error)
{
  if (!stead_sale_check_open (store, line->sale_id, error))
    return FALSE;
  if (line->day > stead_store_get_today (store))
    {
      g_autofree char *when = stead_day_format (line->day, STEAD_DAY_STYLE_MEDIUM);

      return stead_repo_refuse (error, _("This sale is on %s. Its tally begins on that day."), when);
    }
  if (!(units > STEAD_AMOUNT_EPSILON && units <= STEAD_SALE_MOST_UNITS))
    return stead_repo_refuse (error, _("Enter an amount above zero."));
  if (line->tallied + units > line->brought + STEAD_AMOUNT_EPSILON)
    return stead_repo_refuse (error, _("%s: all that was brought is tallied, or less is left than this. "
                                       "If more came to the stall, change “Brought” first."), line->name);
  return TRUE;
}

static gboolean
write_tap (SteadStore          *store,
           const SteadSaleTap  *tap,
           GError             **error)
{
  static const char sql[] = "INSERT INTO sale_tap (line_id, at, kind, units, price_cents, back_id)"
                            " VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, tap->line_id);
  sqlite3_bind_int64 (stmt, 2, tap->at);
  stead_stmt_bind_text (stmt, 3, kind_words[tap->kind]);
  sqlite3_bind_double (stmt, 4, tap->units);
  sqlite3_bind_int64 (stmt, 5, tap->price_cents);
  stead_stmt_bind_id (stmt, 6, tap->back_id);
  return stead_store_run (store, stmt, error);
}

static gboolean
open_sale (SteadStore  *store,
           gint64       sale_id,
           gint64       at,
           GError     **error)
{
  static const char sql[] = "UPDATE sale_day SET opened_at = ?2 WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, sale_id);
  sqlite3_bind_int64 (stmt, 2, at);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_sale_tally_add (SteadStore    *store,
                      gint64         line_id,
                      SteadTapKind   kind,
                      double         units,
                      gint64         at,
                      gint64        *out_id,
                      GError       **error)
{
  g_auto(Line) line = { 0 };
  SteadSaleTap tap = { .line_id = line_id, .at = at, .kind = kind, .units = units };

  g_return_val_if_fail (STEAD_IS_STORE (store) && kind < STEAD_N_TAP_KINDS, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!read_line (store, line_id, &line, error) || !check_tap (store, &line, units, error))
    return FALSE;
  tap.price_cents = line.price_cents;
  if (!line.opened && !open_sale (store, line.sale_id, at, error))
    return FALSE;
  if (!write_tap (store, &tap, error))
    return FALSE;
  if (out_id != NULL)
    *out_id = stead_store_last_id (store);
  return TRUE;
}

static gboolean
read_tap (SteadStore    *store,
          gint64         tap_id,
          SteadSaleTap  *out,
          GError       **error)
{
  static const char sql[] =
    "SELECT t.id, t.line_id, t.at, t.kind, t.units, t.price_cents, t.back_id,"
    " EXISTS (SELECT 1 FROM sale_tap b WHERE b.back_id = t.id) FROM sale_tap t WHERE t.id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, tap_id);
  found = stead_store_step (store, stmt, error);
  if (found != 1)
    return found == 0 ? stead_repo_missing (error) : FALSE;
  *out = tap_from_row (stmt);
  return TRUE;
}

gboolean
stead_sale_tally_take_back (SteadStore  *store,
                            gint64       tap_id,
                            gint64       at,
                            GError     **error)
{
  static const char order_sql[] = "UPDATE sale_order SET tap_id = NULL WHERE tap_id = ?1";
  g_auto(Line) line = { 0 };
  SteadSaleTap tap;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!read_tap (store, tap_id, &tap, error) || !read_line (store, tap.line_id, &line, error) ||
      !stead_sale_check_open (store, line.sale_id, error))
    return FALSE;
  if (tap.taken_back || tap.back_id != 0)
    return stead_repo_refuse (error, _("This tap was taken back already."));
  tap.back_id = tap.id;
  tap.units = -tap.units;
  tap.at = at;
  return stead_repo_run_id (store, order_sql, tap_id, error) && write_tap (store, &tap, error);
}

/* --- prices, and what was brought --------------------------------------------------------- */

gint64
stead_sale_tally_price (SteadStore  *store,
                        gint64       line_id,
                        GError     **error)
{
  g_auto(Line) line = { 0 };

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  return read_line (store, line_id, &line, error) ? line.price_cents : -1;
}

gboolean
stead_sale_tally_set_price (SteadStore  *store,
                            gint64       line_id,
                            gint64       cents,
                            gint64       at,
                            GError     **error)
{
  static const char sql[] = "INSERT INTO sale_price (line_id, at, price_cents) VALUES (?1, ?2, ?3)";
  g_auto(Line) line = { 0 };
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!read_line (store, line_id, &line, error) || !stead_sale_check_open (store, line.sale_id, error) ||
      !stead_repo_check_cents (_("Price"), cents, error))
    return FALSE;
  if (cents == line.price_cents)
    return TRUE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, line_id);
  sqlite3_bind_int64 (stmt, 2, at);
  sqlite3_bind_int64 (stmt, 3, cents);
  return stead_store_run (store, stmt, error);
}

GArray *
stead_sale_tally_prices (SteadStore  *store,
                         gint64       sale_id,
                         GError     **error)
{
  static const char sql[] = "SELECT c.id, c.line_id, c.at, c.price_cents FROM sale_line l"
                            " CROSS JOIN sale_price c ON c.line_id = l.id WHERE l.sale_id = ?1 ORDER BY c.at, c.id";
  g_autoptr(GArray) prices = g_array_new (FALSE, FALSE, sizeof (SteadSalePrice));
  g_autoptr(SteadStmt) stmt = NULL;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, sale_id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadSalePrice price = { .id = sqlite3_column_int64 (stmt, 0), .line_id = sqlite3_column_int64 (stmt, 1),
                               .at = sqlite3_column_int64 (stmt, 2), .price_cents = sqlite3_column_int64 (stmt, 3) };

      g_array_append_val (prices, price);
    }
  return found == 0 ? g_steal_pointer (&prices) : NULL;
}

gboolean
stead_sale_tally_set_brought (SteadStore  *store,
                              gint64       line_id,
                              double       units,
                              GError     **error)
{
  static const char sql[] = "UPDATE sale_line SET brought = ?2 WHERE id = ?1";
  g_auto(Line) line = { 0 };
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!read_line (store, line_id, &line, error) || !stead_sale_check_open (store, line.sale_id, error))
    return FALSE;
  if (!(units >= 0 && units <= STEAD_SALE_MOST_UNITS))
    return stead_repo_refuse (error, _("What is brought must be 0 or more units. Check the number."));
  if (units < line.tallied - STEAD_AMOUNT_EPSILON)
    return stead_repo_refuse (error, _("%s: more than that is tallied already. Take a tap back first."), line.name);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, line_id);
  sqlite3_bind_double (stmt, 2, units);
  return stead_store_run (store, stmt, error);
}
