/* stead-verify-rules.c - rules that hold between rows, in whatever order the rows were
 * entered, and the sentence that tells of a row that breaks one.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-verify-private.h"

/* A rule between rows: the SQL gives those that break it, and each is told. */
typedef struct
{
  const char *sql;
  char     *(*tell) (sqlite3_stmt *stmt);
} Rule;

/* --- the sentences ---------------------------------------------------------- */

static char *
tell_structure (sqlite3_stmt *stmt)
{
  const char *finding = stead_connection_finding (stmt);

  if (g_str_equal (finding, "ok"))
    return NULL;
  /* Translators: %s is what the database says, in English. */
  return g_strdup_printf (_("The structure of the file is damaged (%s)."), finding);
}

static char *
tell_reference (sqlite3_stmt *stmt)
{
  /* Translators: the names of two tables in the file. */
  return g_strdup_printf (_("A row of “%s” names a row of “%s” that is not there."),
                          stead_verify_text (stmt, 0), stead_verify_text (stmt, 2));
}

static char *
tell_settings (sqlite3_stmt *stmt)
{
  return g_strdup (_("The farm's own settings are missing."));
}

static char *
tell_below_zero (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("Lot %s holds less than nothing on %s."), stead_verify_text (stmt, 0), stead_verify_text (stmt, 1));
}

static char *
tell_stock (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("What is on hand of lot %s is not the sum of its movements."), stead_verify_text (stmt, 0));
}

static char *
tell_emptied (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("Lot %s is used up, but money is left in it."), stead_verify_text (stmt, 0));
}

static char *
tell_debt (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("More money left lot %s than it cost."), stead_verify_text (stmt, 0));
}

static char *
tell_item_emptied (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("Nothing is left of “%s”, but money is left in it."), stead_verify_text (stmt, 0));
}

static char *
tell_item_debt (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("More money left “%s” than it cost."), stead_verify_text (stmt, 0));
}

static char *
tell_kitchen (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("What “%s” made does not carry the cost of what it used."), stead_verify_text (stmt, 0));
}

static char *
tell_early (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("Lot %s was used on %s, before it came."), stead_verify_text (stmt, 0), stead_verify_text (stmt, 1));
}

static char *
tell_line (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("The receipt from %s of %s does not agree with what came into the store room."),
                          stead_verify_text (stmt, 0), stead_verify_text (stmt, 1));
}

static char *
tell_feed (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("More feed was taken for “%s” on %s than its entry says."),
                          stead_verify_text (stmt, 0), stead_verify_text (stmt, 1));
}

static char *
tell_share (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("The shares of “%s” are more than the whole of it."), stead_verify_text (stmt, 0));
}

static char *
tell_transfer (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("Line %s of the cash book moves money, but its other half is not there."), stead_verify_text (stmt, 0));
}

static char *
tell_match (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("Line %s of the cash book is matched with a line of the bank of another amount or account."),
                          stead_verify_text (stmt, 0));
}

static char *
tell_count (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("The count of %s does not agree with its line of the cash book."), stead_verify_text (stmt, 0));
}

static char *
tell_harvest (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("The harvest of “%s” on %s does not agree with what came into the store room."),
                          stead_verify_text (stmt, 0), stead_verify_text (stmt, 1));
}

static char *
tell_made (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("Lot %s came from “%s”, but no harvest tells of it."), stead_verify_text (stmt, 0), stead_verify_text (stmt, 1));
}

static char *
tell_fish (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("By %s more fish had left “%s” than were in it."), stead_verify_text (stmt, 1), stead_verify_text (stmt, 0));
}

static char *
tell_cash_up (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("The cash-up of “%s” on %s does not agree with its tally and the cash book."),
                          stead_verify_text (stmt, 0), stead_verify_text (stmt, 1));
}

static char *
tell_list_hole (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("The checklist “%s” of %s is signed, but a line of it was neither read nor left out."),
                          stead_verify_text (stmt, 0), stead_verify_text (stmt, 1));
}

static char *
tell_put_away (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("What became of “%s” at “%s” does not agree with what was brought or with the store room."),
                          stead_verify_text (stmt, 1), stead_verify_text (stmt, 0));
}

static char *
tell_list_stop (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("The checklist “%s” of %s is signed, but it does not say what was done about a food that "
                            "could not be sold."), stead_verify_text (stmt, 0), stead_verify_text (stmt, 1));
}

static char *
tell_held (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("Lot %s left the farm on %s while it was held."), stead_verify_text (stmt, 0), stead_verify_text (stmt, 1));
}

static char *
tell_reading_pot (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("A reading of the checklist “%s” of %s names a pot of another line."),
                          stead_verify_text (stmt, 0), stead_verify_text (stmt, 1));
}

static char *
tell_correction (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("A reading of the checklist “%s” of %s corrects one of another line."),
                          stead_verify_text (stmt, 0), stead_verify_text (stmt, 1));
}

static char *
tell_score (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("A score of the event “%s” is above the points that there were to win."),
                          stead_verify_text (stmt, 0));
}

static char *
tell_long_hours (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("The hours of %s on %s are more than lies between their start and their end."),
                          stead_verify_text (stmt, 0), stead_verify_text (stmt, 1));
}

static char *
tell_hours_correction (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("A correction of the hours of %s on %s is written for somebody else."), stead_verify_text (stmt, 0),
                          stead_verify_text (stmt, 1));
}

static char *
tell_packet (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("The packet “%s” is of nobody, or has no section."), stead_verify_text (stmt, 0));
}

static char *
tell_joint (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("Figures to share the cost of “%s” are kept, but no way to share it."), stead_verify_text (stmt, 0));
}

/* --- the rules -------------------------------------------------------------- */

#define DAY(column) STEAD_VERIFY_DAY (column)
#define BY_LOT "(SELECT coalesce (max (cost_method), 'fifo') FROM farm) = 'fifo'"

static const Rule structure = { "PRAGMA integrity_check(20)", tell_structure };

static const Rule rules[] = {
  { "PRAGMA foreign_key_check", tell_reference },
  { "SELECT 1 WHERE (SELECT count(*) FROM farm) <> 1 OR (SELECT count(*) FROM change_count) <> 1", tell_settings },

  /* By the end of each day, so that the order of entry does not matter. */
  { "SELECT lot.code, " DAY ("min (running.day)") " FROM"
    " (SELECT lot_id, day, sum (base) OVER (PARTITION BY lot_id ORDER BY day) AS base FROM"
    "   (SELECT lot_id, day, sum (quantity_base) AS base FROM movement GROUP BY lot_id, day)) AS running"
    " JOIN lot ON lot.id = running.lot_id"
    " WHERE running.base < -1e-6 GROUP BY lot.id ORDER BY lot.code", tell_below_zero },

  { "SELECT lot.code FROM lot LEFT JOIN lot_stock ON lot_stock.lot_id = lot.id"
    " LEFT JOIN (SELECT lot_id, sum (quantity_base) AS base, sum (cost_cents) AS cents FROM movement GROUP BY lot_id)"
    "   AS moved ON moved.lot_id = lot.id"
    " WHERE lot_stock.lot_id IS NULL OR abs (lot_stock.base - coalesce (moved.base, 0)) > 1e-6"
    "    OR lot_stock.cents <> coalesce (moved.cents, 0) ORDER BY lot.code", tell_stock },

  /* A farm that averages holds its money by the item, not by the lot. */
  { "SELECT lot.code FROM lot JOIN movement ON movement.lot_id = lot.id WHERE " BY_LOT " GROUP BY lot.id"
    " HAVING abs (sum (movement.quantity_base)) <= 1e-6 AND sum (movement.cost_cents) <> 0"
    " ORDER BY lot.code", tell_emptied },

  { "SELECT lot.code FROM lot JOIN movement ON movement.lot_id = lot.id WHERE " BY_LOT " GROUP BY lot.id"
    " HAVING sum (movement.cost_cents) < 0 ORDER BY lot.code", tell_debt },

  { "SELECT item.name FROM item JOIN lot ON lot.item_id = item.id JOIN movement ON movement.lot_id = lot.id"
    " WHERE NOT " BY_LOT " GROUP BY item.id HAVING abs (sum (movement.quantity_base)) <= 1e-6"
    " AND sum (movement.cost_cents) <> 0 ORDER BY item.name", tell_item_emptied },

  { "SELECT item.name FROM item JOIN lot ON lot.item_id = item.id JOIN movement ON movement.lot_id = lot.id"
    " WHERE NOT " BY_LOT " GROUP BY item.id HAVING sum (movement.cost_cents) < 0"
    " ORDER BY item.name", tell_item_debt },

  /* What a kitchen batch made carries what it used, to the cent, unless a day of it is closed. */
  { "SELECT batch.name FROM batch JOIN (SELECT lot.batch_id AS id, sum (movement.cost_cents) AS cents,"
    "    min (movement.day) AS day FROM lot JOIN movement ON movement.lot_id = lot.id AND movement.kind = 'made'"
    "    WHERE lot.batch_id IS NOT NULL GROUP BY lot.batch_id) AS made ON made.id = batch.id"
    " LEFT JOIN (SELECT batch_id, sum (cost_cents) AS cents FROM movement WHERE kind = 'used' GROUP BY batch_id)"
    "    AS used ON used.batch_id = batch.id"
    " WHERE batch.kind = 'kitchen' AND made.cents <> -coalesce (used.cents, 0)"
    "   AND made.day > (SELECT coalesce (max (through_day), -1000000000) FROM closing)"
    " ORDER BY batch.name", tell_kitchen },

  { "SELECT lot.code, " DAY ("min (movement.day)") " FROM lot JOIN movement ON movement.lot_id = lot.id"
    " WHERE movement.day < lot.day GROUP BY lot.id ORDER BY lot.code", tell_early },

  /* Each line made one lot, and one movement brought all of it in. */
  { "SELECT receipt.supplier, " DAY ("receipt.day") " FROM receipt_line AS line"
    " JOIN receipt ON receipt.id = line.receipt_id"
    " LEFT JOIN lot ON lot.receipt_line_id = line.id"
    " LEFT JOIN (SELECT lot_id, count (*) AS n, sum (quantity_base) AS base, sum (cost_cents) AS cents"
    "              FROM movement WHERE kind = 'received' GROUP BY lot_id) AS came ON came.lot_id = lot.id"
    " WHERE lot.id IS NULL OR came.n IS NOT 1 OR lot.item_id <> line.item_id OR lot.day <> receipt.day"
    "    OR abs (came.base - line.quantity_base) > 1e-6 OR came.cents <> line.cost_cents"
    " ORDER BY receipt.day, line.id", tell_line },

  { "SELECT batch.name, " DAY ("batch_entry.day") " FROM batch_entry"
    " JOIN movement ON movement.entry_id = batch_entry.id AND movement.kind = 'used'"
    " JOIN batch ON batch.id = batch_entry.batch_id GROUP BY batch_entry.id"
    " HAVING -sum (movement.quantity_base) > coalesce (batch_entry.feed_kg, 0) + 1e-6"
    " ORDER BY batch_entry.day, batch_entry.id", tell_feed },

  { "SELECT asset.name FROM asset JOIN asset_share ON asset_share.asset_id = asset.id"
    " WHERE asset.share_by = 'parts' GROUP BY asset.id"
    " HAVING sum (asset_share.frac) > 1 + 1e-9 ORDER BY asset.name", tell_share },

  /* The halves of a transfer name each other, are of one day and sum to zero. */
  { "SELECT one.id FROM cash_line AS one LEFT JOIN cash_line AS two ON two.id = one.pair_id"
    " WHERE (one.category = 'transfer') <> (one.pair_id IS NOT NULL)"
    " OR (one.pair_id IS NOT NULL AND (two.pair_id IS NOT one.id OR two.day <> one.day OR two.cents <> -one.cents))"
    " ORDER BY one.id", tell_transfer },

  { "SELECT line.id FROM bank_line AS bank JOIN cash_line AS line ON line.id = bank.line_id"
    " WHERE line.cents <> bank.cents OR line.account_id <> bank.account_id ORDER BY line.id", tell_match },

  { "SELECT " DAY ("count_.day") " FROM cash_count AS count_ JOIN cash_line AS line ON line.id = count_.line_id"
    " WHERE line.account_id <> count_.account_id OR line.day <> count_.day OR line.cents <>"
    "  (SELECT coalesce (sum (face_cents * pieces), 0) FROM cash_count_piece WHERE count_id = count_.id)"
    "  - count_.expected_cents ORDER BY count_.day, count_.id", tell_count },

  /* Float + takings - paid out = counted +/- over or short: what was counted is the float
   * and the lines of the cash book, and those of sales are the tally's. */
  { "SELECT day.name, " DAY ("day.day") " FROM sale_day AS day JOIN cash_count AS count_ ON count_.sale_id = day.id"
    " WHERE (SELECT coalesce (sum (face_cents * pieces), 0) FROM cash_count_piece WHERE count_id = count_.id) <>"
    "   (SELECT coalesce (sum (face_cents * pieces), 0) FROM sale_float WHERE sale_id = day.id)"
    "   + (SELECT coalesce (sum (cents), 0) FROM cash_line WHERE sale_id = day.id)"
    " OR (SELECT coalesce (sum (cents), 0) FROM cash_line WHERE sale_id = day.id AND category = 'sales') <>"
    "   (SELECT coalesce (sum (round (tap.units * tap.price_cents)), 0) FROM sale_line AS line"
    "      JOIN sale_tap AS tap ON tap.line_id = line.id WHERE line.sale_id = day.id AND tap.kind = 'sold'"
    "      AND NOT EXISTS (SELECT 1 FROM sale_order WHERE tap_id = tap.id AND paid = 1))"
    " ORDER BY day.day, day.id", tell_cash_up },

  /* Brought = tallied + left over; and what did not come back left the store room. */
  { "WITH line (id, sale, product, brought, tallied, left_over, gone, item, base) AS (SELECT line.id, day.name, product.name,"
    "   coalesce (line.brought, line.planned),"
    "   (SELECT coalesce (sum (units), 0) FROM sale_tap WHERE line_id = line.id),"
    "   (SELECT coalesce (sum (units), 0) FROM sale_left WHERE line_id = line.id),"
    "   (SELECT coalesce (sum (units), 0) FROM sale_left WHERE line_id = line.id AND goes_to IN ('given', 'waste')),"
    "   product.item_id, product.base_per_unit"
    "   FROM sale_day AS day JOIN cash_count ON cash_count.sale_id = day.id JOIN sale_line AS line ON line.sale_id = day.id"
    "   JOIN product ON product.id = line.product_id)"
    " SELECT sale, product FROM line WHERE abs (brought - tallied - left_over) > 1e-6 OR (item IS NOT NULL"
    "   AND EXISTS (SELECT 1 FROM movement WHERE sale_line_id = line.id)"
    "   AND abs ((tallied + gone) * base + (SELECT coalesce (sum (m.quantity_base), 0) FROM movement AS m"
    "     JOIN lot ON lot.id = m.lot_id WHERE m.sale_line_id = line.id AND lot.item_id = line.item)) > 1e-5 * max (1, base))"
    " ORDER BY sale, product", tell_put_away },

  /* A harvest with a lot made it, and one movement brought all of it in. */
  { "SELECT batch.name, " DAY ("harvest.day") " FROM harvest JOIN batch ON batch.id = harvest.batch_id"
    " LEFT JOIN lot ON lot.id = harvest.lot_id"
    " LEFT JOIN (SELECT lot_id, count (*) AS n, max (day) AS day FROM movement WHERE kind IN ('made', 'received')"
    "             GROUP BY lot_id) AS came ON came.lot_id = lot.id"
    " WHERE harvest.lot_id IS NOT NULL AND (lot.id IS NULL OR came.n IS NOT 1 OR lot.batch_id IS NOT harvest.batch_id"
    "    OR lot.day <> harvest.day OR came.day <> harvest.day)"
    " ORDER BY harvest.day, harvest.id", tell_harvest },

  { "SELECT lot.code, batch.name FROM lot JOIN batch ON batch.id = lot.batch_id"
    " LEFT JOIN harvest ON harvest.lot_id = lot.id WHERE harvest.id IS NULL ORDER BY lot.code", tell_made },

  { "WITH change (id, day, n) AS (SELECT batch_id, -1000000000, stocked FROM fish"
    " UNION ALL SELECT batch_id, day, -(deaths + culled) FROM batch_entry JOIN fish USING (batch_id)"
    " UNION ALL SELECT to_id, day, n FROM fish_move UNION ALL SELECT from_id, day, -n FROM fish_move"
    " UNION ALL SELECT batch_id, day, -pieces FROM harvest JOIN fish USING (batch_id) WHERE pieces > 0),"
    " of_day (id, day, n) AS (SELECT id, day, sum (n) FROM change GROUP BY id, day),"
    " running (id, day, n) AS (SELECT id, day, sum (n) OVER (PARTITION BY id ORDER BY day) FROM of_day)"
    " SELECT batch.name, " DAY ("min (running.day)") " FROM running JOIN batch ON batch.id = running.id"
    " WHERE running.n < 0 GROUP BY batch.id ORDER BY batch.name, batch.id", tell_fish },

  /* What was signed had no hole. */
  { "SELECT list.name, " DAY ("list.day") " FROM checklist AS list JOIN check_line AS line ON line.list_id = list.id"
    " WHERE list.seal IS NOT NULL AND line.left_out IS NULL"
    "   AND NOT EXISTS (SELECT 1 FROM reading WHERE reading.line_id = line.id)"
    " GROUP BY list.id ORDER BY list.day, list.id", tell_list_hole },

  { "SELECT DISTINCT list.name, " DAY ("list.day") " FROM checklist AS list"
    " JOIN check_stop AS stop_ ON stop_.list_id = list.id"
    " WHERE list.seal IS NOT NULL AND stop_.settled_at IS NULL ORDER BY list.day, list.id", tell_list_stop },

  /* A hold that is open lets nothing go that came after the day it began. */
  { "SELECT lot.code, " DAY ("min (movement.day)") " FROM safety_hold AS hold JOIN lot"
    "   ON lot.id = hold.lot_id OR lot.batch_id = hold.batch_id"
    " JOIN movement ON movement.lot_id = lot.id AND movement.kind IN ('sold', 'given', 'used')"
    " WHERE hold.ended_at IS NULL AND movement.day > hold.since_at / 86400 + 1"
    " GROUP BY lot.id ORDER BY lot.code", tell_held },

  { "SELECT DISTINCT list.name, " DAY ("list.day") " FROM reading JOIN check_pot AS pot ON pot.id = reading.pot_id"
    " JOIN check_line AS line ON line.id = pot.line_id JOIN checklist AS list ON list.id = line.list_id"
    " WHERE pot.line_id IS NOT reading.line_id ORDER BY list.day, list.id", tell_reading_pot },

  { "SELECT DISTINCT list.name, " DAY ("list.day") " FROM reading AS right_ JOIN reading AS wrong"
    "   ON wrong.id = right_.corrects_id"
    " JOIN check_line AS line ON line.id = wrong.line_id JOIN checklist AS list ON list.id = line.list_id"
    " WHERE right_.line_id IS NOT wrong.line_id ORDER BY list.day, list.id", tell_correction },

  { "SELECT DISTINCT event.name FROM event_score AS score JOIN event ON event.id = score.event_id"
    " WHERE score.score > score.out_of ORDER BY event.name", tell_score },

  /* A minute for what rounding adds. */
  { "SELECT person.name, " DAY ("work.day") " FROM work_span AS work JOIN person ON person.id = work.person_id"
    " WHERE work.minutes > (work.to_at - work.from_at) / 60.0 + 1 ORDER BY work.day, work.id", tell_long_hours },

  { "SELECT person.name, " DAY ("wrong.day") " FROM work_span AS right_ JOIN work_span AS wrong"
    "   ON wrong.id = right_.corrects_id JOIN person ON person.id = wrong.person_id"
    " WHERE right_.person_id <> wrong.person_id ORDER BY wrong.day, wrong.id", tell_hours_correction },

  { "SELECT name FROM packet WHERE (person_id IS NULL AND event_id IS NULL)"
    " OR NOT EXISTS (SELECT 1 FROM packet_section WHERE packet_id = packet.id) ORDER BY name, id", tell_packet },

  { "SELECT DISTINCT batch.name FROM joint_figure AS figure JOIN batch ON batch.id = figure.batch_id"
    " WHERE NOT EXISTS (SELECT 1 FROM joint_split WHERE batch_id = figure.batch_id) ORDER BY batch.name", tell_joint },
};

static int
add_finding (SteadVerifyReport *report,
             const Rule        *rule,
             sqlite3_stmt      *stmt)
{
  int rc = rule->tell == tell_structure ? stead_connection_finding_code (stmt) : SQLITE_OK;
  char *sentence = rc == SQLITE_OK ? rule->tell (stmt) : NULL;

  if (sentence != NULL)
    g_ptr_array_add (report->found, sentence);
  return rc;
}

static gboolean
apply_rule (SteadVerifyReport  *report,
            const Rule         *rule,
            GError            **error)
{
  g_autoptr(sqlite3_stmt) stmt = NULL;
  int rc = sqlite3_prepare_v2 (report->db, rule->sql, -1, &stmt, NULL);

  for (int i = 0; rc == SQLITE_OK && i < STEAD_VERIFY_MOST; i++)
    {
      rc = sqlite3_step (stmt);
      if (rc == SQLITE_ROW)
        rc = add_finding (report, rule, stmt);
    }
  return rc == SQLITE_OK || rc == SQLITE_DONE || stead_verify_note_failure (report, rc, error);
}

gboolean
stead_verify_structure (SteadVerifyReport  *report,
                        GError            **error)
{
  return apply_rule (report, &structure, error);
}

gboolean
stead_verify_rules (SteadVerifyReport  *report,
                    GError            **error)
{
  for (gsize i = 0; i < G_N_ELEMENTS (rules); i++)
    if (!apply_rule (report, &rules[i], error))
      return FALSE;
  return TRUE;
}
