/* test-why-sums.c - what a "Why?" adds up is the figure that is shown, and what SQL finds in the same file. */
#include "config.h"

#include <math.h>
#include <sqlite3.h>
#include <string.h>

#include "answer/stead-check-days-answer.h"
#include "answer/stead-class-answer.h"
#include "answer/stead-event-answer.h"
#include "answer/stead-hours-answer.h"
#include "answer/stead-recall-answer.h"
#include "answer/stead-sale-result-answer.h"
#include "answer/stead-sale-tally-answer.h"
#include "answer/stead-store-room-why.h"
#include "core/stead-hours.h"

#include "demo.h"
#include "farm.h"

#define DAYS 400   /* of the demo farm: longer than it has been there */

/* --- reading the file and the words ------------------------------------------------------ */

static sqlite3 *
open_db (const Demo *demo)
{
  g_autofree char *path = g_build_filename (demo->folder, "demo.steading", NULL);
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open_v2 (path, &db, SQLITE_OPEN_READONLY, NULL), ==, SQLITE_OK);
  return db;
}

static GArray *
ids_of (const Demo *demo,
        const char *sql)
{
  sqlite3 *db = open_db (demo);
  sqlite3_stmt *stmt = NULL;
  GArray *ids = g_array_new (FALSE, FALSE, sizeof (gint64));

  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL), ==, SQLITE_OK);
  while (sqlite3_step (stmt) == SQLITE_ROW)
    {
      gint64 id = sqlite3_column_int64 (stmt, 0);

      g_array_append_val (ids, id);
    }
  sqlite3_finalize (stmt);
  sqlite3_close (db);
  return ids;
}

/* @sql finds one number. */
static gint64
ask (const Demo *demo,
     const char *sql)
{
  g_autoptr(GArray) found = ids_of (demo, sql);

  g_assert_cmpuint (found->len, ==, 1);
  return g_array_index (found, gint64, 0);
}

typedef gint64 (*Read) (const char *part);

/* "32 h 55 min" at the end of a term is 1975. */
static gint64
read_minutes (const char *part)
{
  static const struct { const char *regex; int times; } units[] = { { "(\\d+) h\\b", 60 }, { "(\\d+) min\\b", 1 } };
  gint64 minutes = 0;
  gboolean any = FALSE;

  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    {
      g_autoptr(GRegex) regex = g_regex_new (units[i].regex, 0, 0, NULL);
      g_autoptr(GMatchInfo) match = NULL;
      g_autofree char *number = NULL;

      if (!g_regex_match (regex, part, 0, &match))
        continue;
      number = g_match_info_fetch (match, 1);
      minutes += units[i].times * g_ascii_strtoll (number, NULL, 10);
      any = TRUE;
    }
  g_assert_true (any);
  return minutes;
}

/* "Feed room $1,064.91" is 106491. */
static gint64
read_cents (const char *part)
{
  const char *sign = strrchr (part, '$');
  gint64 cents = 0;

  g_assert_nonnull (sign);
  for (const char *p = sign; *p != '\0'; p++)
    if (g_ascii_isdigit (*p))
      cents = cents * 10 + g_ascii_digit_value (*p);
  return cents;
}

/* "Nov 3: 12" is 12. */
static gint64
read_count (const char *part)
{
  const char *at = strrchr (part, ' ');

  return g_ascii_strtoll (at != NULL ? at + 1 : part, NULL, 10);
}

/* The terms add to what stands behind the "="; it is returned. */
static gint64
sum_of (const char *worked,
        Read        read)
{
  g_auto(GStrv) sides = g_strsplit (worked, " = ", 2);
  g_auto(GStrv) terms = g_strsplit (sides[0], " + ", -1);
  gint64 sum = 0;

  g_assert_cmpuint (g_strv_length (sides), ==, 2);
  for (guint i = 0; terms[i] != NULL; i++)
    sum += read (terms[i]);
  g_assert_cmpint (sum, ==, read (sides[1]));
  return sum;
}

static const char *
last_line (const char *worked)
{
  const char *at = strrchr (worked, '\n');

  return at != NULL ? at + 1 : worked;
}

/* --- hours ---------------------------------------------------------------------------------- */

#define COUNTS "id NOT IN (SELECT corrects_id FROM work_span WHERE corrects_id IS NOT NULL)"

static void
test_hours (Demo          *demo,
            gconstpointer  data)
{
  g_autoptr(GArray) weeks = ids_of (demo, "SELECT DISTINCT day - (day + 3) % 7 FROM work_span");

  g_assert_cmpuint (weeks->len, >, 3);
  for (guint i = 0; i < weeks->len; i++)
    {
      SteadDay from = (SteadDay) g_array_index (weeks, gint64, i);
      g_autoptr(SteadHoursAnswer) answer = stead_hours_answer_new (demo->store, from, from + 6, 0, NULL);
      g_autoptr(GPtrArray) whys = stead_hours_answer_whys (answer);
      g_autofree char *sql = g_strdup_printf ("SELECT sum (round (minutes)) FROM work_span WHERE day BETWEEN %d AND %d AND "
                                              COUNTS, from, from + 6);
      g_autofree char *words = stead_hours_words (ask (demo, sql));

      g_assert_cmpint (sum_of (farm_find_why (whys, "Hours in all")->worked, read_minutes), ==, ask (demo, sql));
      g_assert_nonnull (strstr (answer->sentence, words));
    }
}

static void
test_person (Demo          *demo,
             gconstpointer  data)
{
  gint64 person = ask (demo, "SELECT person_id FROM work_span GROUP BY 1 ORDER BY count (*) DESC LIMIT 1");
  SteadDay today = stead_store_get_today (demo->store);
  g_autoptr(SteadHoursAnswer) answer = stead_hours_answer_new (demo->store, today - DAYS, today, person, NULL);
  g_autoptr(GPtrArray) whys = stead_hours_answer_whys (answer);
  g_autofree char *sql = g_strdup_printf ("SELECT sum (round (minutes)) FROM work_span WHERE person_id = %" G_GINT64_FORMAT
                                          " AND " COUNTS, person);

  g_assert_cmpuint (answer->spans->len, >, 1);
  g_assert_cmpint (sum_of (farm_find_why (whys, "Hours in all")->worked, read_minutes), ==, ask (demo, sql));
}

static void
test_class (Demo          *demo,
            gconstpointer  data)
{
  g_autoptr(SteadClassAnswer) answer = stead_class_answer_new (demo->store, NULL);
  g_autoptr(GPtrArray) whys = stead_class_answer_whys (answer);
  g_autofree char *sql = g_strdup_printf ("SELECT sum (round (minutes)) FROM work_span WHERE day BETWEEN %d AND %d AND " COUNTS
                                          " AND person_id IN (SELECT id FROM person WHERE left_on IS NULL)",
                                          answer->from, answer->to);
  g_autofree char *late = g_strdup_printf ("SELECT count (*) FROM work_span WHERE day BETWEEN %d AND %d AND " COUNTS
                                           " AND entered_on - day > %d"
                                           " AND person_id IN (SELECT id FROM person WHERE left_on IS NULL)",
                                           answer->from, answer->to, STEAD_HOURS_LATE_DAYS);

  g_assert_cmpint (sum_of (farm_find_why (whys, "Hours of this school year")->worked, read_minutes), ==, ask (demo, sql));
  g_assert_cmpint (sum_of (last_line (farm_find_why (whys, "Not checked, and late")->worked), read_count), ==, ask (demo, late));
}

/* --- the store room ------------------------------------------------------------------------- */

static void
test_shelf (Demo          *demo,
            gconstpointer  data)
{
  g_autoptr(SteadStoreRoomAnswer) answer = stead_store_room_answer_new (demo->store, NULL);
  g_autoptr(GPtrArray) whys = stead_store_room_answer_whys (answer, "USD"), lots_whys = stead_lots_whys (answer->lots, "USD");
  gint64 cents = ask (demo, "SELECT sum (cost_cents) FROM movement");
  const char *worked = farm_find_why (whys, "What lies on the shelf")->worked;

  g_assert_cmpint (sum_of (worked, read_cents), ==, cents);
  g_assert_cmpint (answer->stock->value_cents, ==, cents);
  g_assert_cmpstr (farm_find_why (lots_whys, "What lies on the shelf")->worked, ==, worked);
}

static void
test_lost (Demo          *demo,
           gconstpointer  data)
{
  g_autoptr(SteadStoreRoomAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  gint64 lot = ask (demo, "SELECT lot_id FROM lot_stock WHERE base > 10 AND cents > 100 ORDER BY cents DESC LIMIT 1");
  SteadDay today = stead_store_get_today (demo->store);
  g_autofree char *sql = g_strdup_printf ("SELECT -sum (cost_cents) FROM movement WHERE kind = 'lost' AND day > %d", today - 84);
  g_autofree char *given = g_strdup_printf ("SELECT -sum (cost_cents) FROM movement WHERE kind = 'given' AND day > %d",
                                            today - 84);

  for (int i = 0; i < 3; i++)
    {
      g_assert_true (stead_store_begin (demo->store, "waste", NULL));
      g_assert_true (stead_lot_repo_adjust (demo->store, lot, STEAD_MOVE_LOST, today, -1, i < 2 ? "mice" : "wet", 0, NULL));
      g_assert_true (stead_store_commit (demo->store, NULL));
    }
  answer = stead_store_room_answer_new (demo->store, NULL);
  whys = stead_store_room_answer_whys (answer, "USD");
  g_assert_cmpint (sum_of (farm_find_why (whys, "What was lost or spoiled")->worked, read_cents), ==, ask (demo, sql));
  g_assert_cmpint (answer->lost_cents, ==, ask (demo, sql));
  g_assert_cmpint (sum_of (farm_find_why (whys, "What was given away")->worked, read_cents), ==, ask (demo, given));
  g_assert_cmpint (answer->given_cents, ==, ask (demo, given));
}

/* Each lot that a count found to be otherwise has its line, with the money that went with it. */
static void
test_counts (Demo          *demo,
             gconstpointer  data)
{
  g_autoptr(GPtrArray) counts = stead_count_repo_list (demo->store, NULL);
  g_autoptr(GPtrArray) whys = stead_counts_whys (counts, "USD");
  g_auto(GStrv) lines = g_strsplit (farm_find_why (whys, "What a count changed")->worked, "\n", -1);
  gint64 n = ask (demo, "SELECT count (*) FROM stock_count_line WHERE movement_id IS NOT NULL");
  gint64 cents = 0;

  g_assert_cmpint (n, >, 0);
  g_assert_cmpint (g_strv_length (lines), ==, n);
  for (guint i = 0; lines[i] != NULL; i++)
    cents += read_cents (lines[i]);
  g_assert_cmpint (cents, ==, ask (demo, "SELECT -sum (cost_cents) FROM movement WHERE kind = 'counted'"));
}

static void
test_receipts (Demo          *demo,
               gconstpointer  data)
{
  static const char paid[] = "SELECT sum (l.cost_cents) FROM receipt_line l JOIN receipt r ON r.id = l.receipt_id WHERE NOT r.is_gift"
                             " AND r.id NOT IN (SELECT corrects_id FROM receipt WHERE corrects_id IS NOT NULL)";
  static const char gifts[] = "SELECT sum (l.cost_cents) FROM receipt_line l JOIN receipt r ON r.id = l.receipt_id WHERE r.is_gift"
                              " AND r.id NOT IN (SELECT corrects_id FROM receipt WHERE corrects_id IS NOT NULL)";
  g_autoptr(GPtrArray) receipts = stead_receipt_repo_list (demo->store, NULL);
  g_autoptr(GPtrArray) whys = stead_receipts_whys (receipts, "USD");

  g_assert_cmpint (sum_of (farm_find_why (whys, "What was paid")->worked, read_cents), ==, ask (demo, paid));
  g_assert_cmpint (sum_of (farm_find_why (whys, "What the gifts are worth")->worked, read_cents), ==, ask (demo, gifts));
}

/* --- sales ----------------------------------------------------------------------------------- */

static void
test_tally (Demo          *demo,
            gconstpointer  data)
{
  g_autoptr(GArray) sales = ids_of (demo, "SELECT DISTINCT l.sale_id FROM sale_line l JOIN sale_tap t ON t.line_id = l.id");

  g_assert_cmpuint (sales->len, >, 0);
  for (guint i = 0; i < sales->len; i++)
    {
      gint64 id = g_array_index (sales, gint64, i);
      g_autoptr(SteadTallyAnswer) answer = stead_tally_answer_new (demo->store, id, NULL);
      g_autoptr(GPtrArray) whys = stead_tally_answer_whys (answer);
      g_autofree char *sql = g_strdup_printf ("SELECT cast (sum (round (t.units * t.price_cents)) AS INTEGER) FROM sale_tap t"
                                              " JOIN sale_line l ON l.id = t.line_id WHERE t.kind = 'sold' AND l.sale_id = %"
                                              G_GINT64_FORMAT, id);
      g_auto(GStrv) lines = g_strsplit (farm_find_why (whys, "Taken so far")->worked, "\n", -1);
      gint64 sum = 0;

      for (guint n = 0; lines[n] != NULL && n < answer->lines->len; n++)
        if (strstr (lines[n], "×") != NULL)
          sum += read_cents (lines[n]);
      g_assert_cmpint (sum, ==, ask (demo, sql));
      if (g_strv_length (lines) > 1)
        g_assert_cmpint (sum_of (lines[g_strv_length (lines) - 1], read_cents), ==, sum);
    }
}

static void
test_helpers (Demo          *demo,
              gconstpointer  data)
{
  g_autoptr(GArray) sales = ids_of (demo, "SELECT DISTINCT sale_id FROM work_span WHERE sale_id IS NOT NULL");

  g_assert_cmpuint (sales->len, >, 0);
  for (guint i = 0; i < sales->len; i++)
    {
      gint64 id = g_array_index (sales, gint64, i);
      g_autoptr(SteadResultAnswer) answer = stead_result_answer_new (demo->store, id, NULL);
      g_autoptr(GPtrArray) whys = stead_result_answer_whys (answer);
      g_autofree char *sql = g_strdup_printf ("SELECT sum (round (minutes)) FROM work_span WHERE " COUNTS " AND sale_id = %"
                                              G_GINT64_FORMAT, id);

      g_assert_cmpint (sum_of (farm_find_why (whys, "Hours of the helpers")->worked, read_minutes), ==, ask (demo, sql));
    }
}

/* --- checks, recalls, events --------------------------------------------------------------------- */

static void
test_month (Demo          *demo,
            gconstpointer  data)
{
  SteadDay today = stead_store_get_today (demo->store);
  g_autoptr(SteadCheckDaysAnswer) answer = stead_check_days_answer_new (demo->store, today - 365, today, NULL);
  g_autoptr(GPtrArray) whys = stead_check_days_answer_whys (answer);
  g_autofree char *unsigned_sql = g_strdup_printf ("SELECT count (*) FROM checklist WHERE signed_at IS NULL AND day BETWEEN %d"
                                                   " AND %d", today - 365, today);
  g_autofree char *taken_sql = g_strdup_printf (
    "SELECT count (*) FROM reading r JOIN check_line l ON l.id = r.line_id JOIN checklist c ON c.id = l.list_id"
    " WHERE c.day BETWEEN %d AND %d AND r.id NOT IN (SELECT corrects_id FROM reading WHERE corrects_id IS NOT NULL)",
    today - 365, today);

  g_assert_cmpint (sum_of (farm_find_why (whys, "Readings that were taken")->worked, read_count), ==, ask (demo, taken_sql));
  g_assert_cmpint (answer->n_readings, ==, ask (demo, taken_sql));
  if (answer->n_failed > 0)
    g_assert_cmpint (sum_of (farm_find_why (whys, "Readings that did not meet their limit")->worked, read_count), ==, answer->n_failed);
  if (answer->n_open > 0)
    g_assert_cmpint (sum_of (farm_find_why (whys, "Lines that were never read")->worked, read_count), ==, answer->n_open);
  if (answer->n_unsigned > 0)
    g_assert_cmpint (sum_of (farm_find_why (whys, "Lists that are not signed")->worked, read_count), ==, ask (demo, unsigned_sql));
}

/* What came in, what left it and what is left, of each lot that no count corrected. */
static void
test_recall (Demo          *demo,
             gconstpointer  data)
{
  g_autoptr(GArray) lots = ids_of (demo, "SELECT id FROM lot");
  guint n = 0;

  for (guint i = 0; i < lots->len; i++)
    {
      gint64 id = g_array_index (lots, gint64, i);
      g_autoptr(SteadRecallAnswer) answer = stead_recall_answer_new (demo->store, id, 0, NULL);
      g_autoptr(GPtrArray) whys = stead_recall_answer_whys (answer);
      g_autofree char *sql = g_strdup_printf (
        "SELECT cast (1000 * min (1, (sum (iif (kind IN ('used', 'sold', 'given', 'lost'), -quantity_base, 0))"
        " + sum (quantity_base)) / sum (iif (kind IN ('received', 'made'), quantity_base, 0)) + 1e-9) AS INTEGER)"
        " FROM movement WHERE lot_id = %" G_GINT64_FORMAT " AND NOT EXISTS (SELECT 1 FROM movement o WHERE o.lot_id = %"
        G_GINT64_FORMAT " AND o.kind IN ('counted', 'corrected'))", id, id);
      const char *worked, *equals;

      if (whys->len == 0)
        continue;
      worked = farm_find_why (whys, "How much is accounted for")->worked;
      equals = strstr (worked, ") = ");
      g_assert_nonnull (equals);
      if (ask (demo, sql) > 0)
        {
          g_assert_cmpfloat_with_epsilon (g_ascii_strtod (equals + 4, NULL) * 10, (double) ask (demo, sql), 1);
          n++;
        }
      if (answer->rows->len > 1)
        g_assert_true (g_str_has_suffix (worked, answer->share));
    }
  g_assert_cmpuint (n, >, 3);
}

static void
test_events (Demo          *demo,
             gconstpointer  data)
{
  gint64 id = ask (demo, "SELECT event_id FROM event_score GROUP BY 1 ORDER BY count (*) DESC LIMIT 1");
  g_autoptr(SteadEventAnswer) answer = stead_event_answer_new (demo->store, id, NULL);
  g_autoptr(GPtrArray) whys = stead_event_answer_whys (answer);
  g_autofree char *shares = g_strdup_printf ("SELECT cast (round (100 * score / out_of) AS INTEGER) FROM event_score"
                                             " WHERE event_id = %" G_GINT64_FORMAT " ORDER BY day, id", id);
  g_autofree char *hours = g_strdup_printf ("SELECT sum (minutes) FROM work_span WHERE " COUNTS " AND event_id = %"
                                            G_GINT64_FORMAT, id);
  g_autoptr(GArray) percents = ids_of (demo, shares);
  g_auto(GStrv) lines = g_strsplit (farm_find_why (whys, "Share of the points")->worked, "\n", -1);

  g_assert_cmpuint (g_strv_length (lines), ==, percents->len);
  for (guint i = 0; i < percents->len; i++)
    g_assert_cmpint (g_ascii_strtoll (strstr (lines[i], " = ") + 3, NULL, 10), ==, g_array_index (percents, gint64, i));
  g_assert_cmpint (sum_of (farm_find_why (whys, "Hours of preparation")->worked, read_minutes), ==, ask (demo, hours));
}

#define CASE(name, test) g_test_add ("/answer/why-sums/" name, Demo, NULL, demo_set_up, test, demo_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  CASE ("hours", test_hours);
  CASE ("person", test_person);
  CASE ("class", test_class);
  CASE ("shelf", test_shelf);
  CASE ("lost", test_lost);
  CASE ("counts", test_counts);
  CASE ("receipts", test_receipts);
  CASE ("tally", test_tally);
  CASE ("helpers", test_helpers);
  CASE ("month", test_month);
  CASE ("recall", test_recall);
  CASE ("events", test_events);
  return g_test_run ();
}
