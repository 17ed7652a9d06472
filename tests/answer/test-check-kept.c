/* test-check-kept.c - readings that are judged together: pots, sanitizers, thermometers, loggers.
 *
 * Limits: FDA Food Code 2022, §3-501.14(A): 135 to 70 °F within 2 h, to 41 °F within 6 h in all;
 * §4-501.114(A): chlorine of 50 mg/L works at pH 10 from 100 °F on, of 25 mg/L from 120 °F, of
 * 100 mg/L from 55 °F; §4-203.11(B): a thermometer with both scales is right within 1 °C.
 * Boiling: 1.8 °F less for each 1,000 ft (data/limits/clean.csv has the rows).
 */
#include "config.h"

#include <gio/gio.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "answer/stead-check-answer.h"
#include "answer/stead-check-days-answer.h"
#include "answer/stead-due-answer.h"
#include "answer/stead-import-answer.h"
#include "answer/stead-instruments-answer.h"
#include "farm.h"
#include "numbers.h"
#include "store/stead-place-repo.h"

#define TODAY (stead_day_new (2026, 3, 3))
#define EIGHT ((gint64) TODAY * 86400 + 8 * 3600)

#define DO(store, call) \
  G_STMT_START { \
    g_autoptr(GError) do_error = NULL; \
    GError **err = &do_error; \
    g_assert_true (stead_store_begin (store, #call, err)); \
    g_assert_true (call); \
    g_assert_no_error (do_error); \
    g_assert_true (stead_store_commit (store, err)); \
  } G_STMT_END

static SteadStore *
new_store (void)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_store_create_memory ("Ember Lane", &error);

  g_assert_no_error (error);
  stead_store_set_today (store, TODAY);
  return store;
}

/* A sauce that is cooked, cooled and heated again. */
static gint64
keep_list (SteadStore *store)
{
  const SteadCheckAnswered answers[] = {
    { STEAD_CHECK_KEY_COOKED, "tomato sauce", "plant_food" }, { STEAD_CHECK_KEY_HELD, "tomato sauce", "cold" },
    { STEAD_CHECK_KEY_AHEAD, "tomato sauce", "reheated" },
  };
  const SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = "tomato sauce", .day = TODAY,
                                  .answers = answers, .n_answers = G_N_ELEMENTS (answers) };
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckPlanAnswer) plan = stead_check_plan_answer_new (store, &order, &error);
  g_autoptr(SteadCheckList) list = NULL;

  g_assert_no_error (error);
  list = stead_check_list_from_plan (store, plan, &order, NULL, &error);
  g_assert_no_error (error);
  DO (store, stead_check_repo_save (store, list, err));
  return list->id;
}

static SteadCheckAnswer *
answer_of (SteadStore *store,
           gint64      id)
{
  g_autoptr(GError) error = NULL;
  SteadCheckAnswer *answer = stead_check_answer_new (store, id, &error);

  g_assert_no_error (error);
  return answer;
}

static const SteadCheckedLine *
line_of (const SteadCheckAnswer *answer,
         const char             *topic)
{
  for (guint i = 0; i < answer->lines->len; i++)
    if (g_str_equal (((const SteadCheckedLine *) answer->lines->pdata[i])->line->topic, topic))
      return answer->lines->pdata[i];
  g_test_message ("no line of %s", topic);
  g_assert_not_reached ();
}

static gint64
read_kind (SteadStore *store,
           gint64      line_id,
           gint64      pot_id,
           const char *kind,
           gint64      at,
           double      value)
{
  SteadShown shown = { .line_id = line_id, .pot_id = pot_id, .at = at, .value = value, .held_s = NAN,
                       .kind = g_strdup (kind) };

  DO (store, stead_shown_repo_add (store, &shown, err));
  g_free (shown.kind);
  return shown.id;
}

static gint64
read_f (SteadStore *store,
        gint64      line_id,
        gint64      pot_id,
        gint64      at,
        double      temp_f)
{
  return read_kind (store, line_id, pot_id, NULL, at, (temp_f - 32) / 1.8);
}

/* --- a pot --------------------------------------------------------------------------------- */

/* Where the clock of cooling starts is the row's, though the file keeps no such row. */
static void
test_clock_start (void)
{
  g_autoptr(SteadStore) store = new_store ();
  gint64 id = keep_list (store);
  g_autoptr(SteadCheckAnswer) answer = answer_of (store, id);
  const SteadLimit *start = stead_limit_table_by_id (answer->table, "cool-start-135");
  SteadListLine *line = stead_check_list_find_line (answer->list, line_of (answer, "cool")->line->id);
  SteadShown *hot = g_new0 (SteadShown, 1);
  SteadShown late = { .id = 2, .at = EIGHT + 7201, .value = (70.1 - 32) / 1.8 };
  SteadJudgement judgement;

  g_assert_cmpfloat (start->value, ==, 135);
  /* At 135 °F the clock runs: 70 °F is due two hours later. */
  *hot = (SteadShown) { .id = 1, .at = EIGHT, .value = (start->value - 32) / 1.8, .kind = g_strdup ("food_temp") };
  g_ptr_array_add (line->readings, hot);
  g_assert_true (stead_list_line_judge (line, &late, NULL, &judgement, NULL));
  g_assert_cmpint (judgement.verdict, ==, STEAD_LIMIT_NOT_MET);
  /* Hotter by five degrees it starts later: then there is still time. */
  hot->value = (start->value + 5 - 32) / 1.8;
  late.at = EIGHT + 7201;
  g_assert_false (stead_list_line_judge (line, &late, NULL, &judgement, NULL));
}

static const SteadCheckRead *
read_at (const SteadCheckedLine *line,
         guint                   i)
{
  return line->reads->pdata[i];
}

/* 70 °F two hours and a minute after 135 °F: that reading failed, and none after it anew. */
static void
test_pot_failed (void)
{
  g_autoptr(SteadStore) store = new_store ();
  gint64 id = keep_list (store), pot = 0, line_id, failed;
  g_autoptr(SteadCheckAnswer) empty = answer_of (store, id);
  g_autoptr(SteadCheckAnswer) late = NULL;
  g_autoptr(SteadCheckAnswer) done = NULL;
  SteadDone act = { .at = EIGHT + 8000, .text = (char *) "Heated to 165 °F, then an ice bath." };

  line_id = line_of (empty, "cool")->line->id;
  DO (store, stead_check_repo_save_pot (store, line_id, &pot, "Big pot", NULL, NAN, err));
  read_f (store, line_id, pot, EIGHT, 135);
  read_f (store, line_id, pot, EIGHT + 3600, 100);
  failed = read_f (store, line_id, pot, EIGHT + 7260, 80);
  read_f (store, line_id, pot, EIGHT + 7800, 76);
  late = answer_of (store, id);
  g_assert_cmpint (read_at (line_of (late, "cool"), 1)->state, ==, STEAD_READ_OPEN);
  g_assert_cmpint (read_at (line_of (late, "cool"), 2)->state, ==, STEAD_READ_FAILED);
  g_assert_nonnull (read_at (line_of (late, "cool"), 2)->todo);
  g_assert_cmpint (read_at (line_of (late, "cool"), 3)->state, ==, STEAD_READ_OPEN);
  g_assert_cmpuint (late->holes->readings->len, ==, 1);
  act.reading_id = failed;
  DO (store, stead_done_repo_add (store, &act, err));
  done = answer_of (store, id);
  g_assert_cmpint (read_at (line_of (done, "cool"), 2)->state, ==, STEAD_READ_HANDLED);
  g_assert_cmpuint (done->holes->readings->len, ==, 0);
}

/* --- a sanitizer ------------------------------------------------------------------------------- */

static void
mix (SteadStore *store,
     gint64      line_id,
     gint64      at,
     double      strength_mgl,
     double      ph,
     double      temp_f)
{
  read_kind (store, line_id, 0, "strength", at, strength_mgl);
  read_kind (store, line_id, 0, "ph", at, ph);
  read_f (store, line_id, 0, at, temp_f);
}

static void
test_sanitizer (void)
{
  static const struct { double strength, ph, temp_f; SteadReadState state; } cases[] = {
    { 50, 9, 100, STEAD_READ_MET }, { 50, 9, 99, STEAD_READ_FAILED }, { 25, 9, 120, STEAD_READ_MET },
    { 25, 9, 119, STEAD_READ_FAILED }, { 24, 9, 120, STEAD_READ_FAILED }, { 100, 9, 55, STEAD_READ_MET },
    { 100, 10.1, 75, STEAD_READ_FAILED },
  };

  g_autoptr(SteadStore) store = new_store ();
  gint64 id = keep_list (store);
  g_autoptr(SteadCheckAnswer) empty = answer_of (store, id);
  g_autoptr(SteadCheckAnswer) answer = NULL;
  const SteadCheckedLine *line;
  guint n_failed = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    mix (store, line_of (empty, "sanitizer")->line->id, EIGHT + 60 * (gint64) i, cases[i].strength, cases[i].ph, cases[i].temp_f);
  answer = answer_of (store, id);
  line = line_of (answer, "sanitizer");
  g_assert_cmpuint (line->reads->len, ==, 3 * G_N_ELEMENTS (cases));
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("%g mg/L, pH %g, %g °F", cases[i].strength, cases[i].ph, cases[i].temp_f);
      g_assert_cmpint (read_at (line, 3 * (guint) i + 2)->state, ==, cases[i].state);
      n_failed += cases[i].state == STEAD_READ_FAILED;
    }
  /* The file judges as the answer does: a list is not signed over it. */
  g_assert_cmpint (line->state, ==, STEAD_CHECKED_FAILED);
  g_assert_cmpuint (answer->holes->readings->len, ==, n_failed);
}

/* --- a thermometer ------------------------------------------------------------------------------ */

static void
set_elevation_ft (SteadStore *store,
                  double      elevation_ft)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, &error);

  g_assert_no_error (error);
  farm->elevation_m = elevation_ft * 0.3048;
  DO (store, stead_farm_repo_set (store, farm, err));
}

/* At 5,000 ft water boils at 203 °F: 1.8 °F off is right, 1.9 °F is not. */
static void
test_boiling (void)
{
  static const struct { double temp_f; SteadReadState state; } cases[] = {
    { 203, STEAD_READ_MET }, { 204.8, STEAD_READ_MET }, { 204.9, STEAD_READ_FAILED }, { 212, STEAD_READ_FAILED },
    { 201.2, STEAD_READ_MET }, { 201.1, STEAD_READ_FAILED },
  };

  g_autoptr(SteadStore) store = new_store ();
  g_autoptr(SteadCheckAnswer) empty = NULL;
  g_autoptr(SteadCheckAnswer) answer = NULL;
  const SteadCheckedLine *line;
  guint n_failed = 0;
  gint64 id;

  set_elevation_ft (store, 5000);
  id = keep_list (store);
  empty = answer_of (store, id);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    read_f (store, line_of (empty, "thermometer_boil")->line->id, 0, EIGHT + 60 * (gint64) i, cases[i].temp_f);
  answer = answer_of (store, id);
  line = line_of (answer, "thermometer_boil");
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("%g °F", cases[i].temp_f);
      g_assert_cmpint (read_at (line, (guint) i)->state, ==, cases[i].state);
      n_failed += cases[i].state == STEAD_READ_FAILED;
    }
  g_assert_cmpuint (answer->holes->readings->len, ==, n_failed);
}

static void
test_instruments (void)
{
  g_autoptr(SteadStore) store = new_store ();
  g_autoptr(GError) error = NULL;
  SteadInstrument probe = { .name = (char *) "Probe 1", .kind = STEAD_INSTRUMENT_PROBE, .scale = (char *) "dual", .step = NAN,
                            .error = NAN, .retired_on = STEAD_DAY_NONE };
  SteadShown ice = { .at = EIGHT, .value = (36 - 32) / 1.8, .kind = (char *) STEAD_SHOWN_ICE_BATH, .held_s = NAN };
  g_autoptr(SteadInstrumentsAnswer) none = stead_instruments_answer_new (store, &error);
  g_autoptr(SteadInstrumentsAnswer) new_one = NULL;
  g_autoptr(SteadInstrumentsAnswer) tried = NULL;
  const SteadInstrumentSaid *said;

  g_assert_no_error (error);
  g_assert_cmpuint (none->instruments->len, ==, 0);
  g_assert_nonnull (none->sentence);
  DO (store, stead_instrument_repo_save (store, &probe, err));
  new_one = stead_instruments_answer_new (store, &error);
  said = new_one->instruments->pdata[0];
  g_assert_nonnull (said->untried);
  g_assert_null (new_one->sentence);
  ice.instrument_id = probe.id;
  DO (store, stead_shown_repo_add (store, &ice, err));
  tried = stead_instruments_answer_new (store, &error);
  said = tried->instruments->pdata[0];
  g_assert_null (said->untried);
  g_assert_true (said->bad);
  g_assert_cmpuint (tried->n_bad, ==, 1);
  g_assert_nonnull (strstr (((const SteadInstrumentTry *) said->tries->pdata[0])->text, "4 °F off"));
}

/* --- loggers --------------------------------------------------------------------------------------- */

static char *
write_table (const char *text)
{
  g_autoptr(GError) error = NULL;
  char *path = NULL;
  int fd = g_file_open_tmp ("logger-XXXXXX.csv", &path, &error);

  g_assert_no_error (error);
  g_assert_true (g_close (fd, NULL));
  g_assert_true (g_file_set_contents (path, text, -1, &error));
  return path;
}

static gint64
new_place (SteadStore *store)
{
  g_autoptr(SteadPlaceFacts) place = g_new0 (SteadPlaceFacts, 1);

  place->name = g_strdup ("Kitchen refrigerator");
  place->kind = STEAD_PLACE_KITCHEN;
  place->area_m2 = NAN;
  DO (store, stead_place_repo_save (store, place, err));
  return place->id;
}

static void
take (SteadStore      *store,
      SteadImportKind  kind,
      gint64           id,
      const char      *text,
      guint            n_take,
      guint            n_skip,
      guint            n_wrong)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *path = write_table (text);
  g_autoptr(SteadImport) import = stead_import_read (store, kind, id, path, STEAD_DATE_ORDER_UNKNOWN, NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < stead_import_get_n_rows (import); i++)
    g_test_message ("%d: %s", stead_import_get_row (import, i)->state, stead_import_get_row (import, i)->message);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_TAKE), ==, n_take);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_SKIP), ==, n_skip);
  g_assert_cmpuint (stead_import_count (import, STEAD_ROW_WRONG), ==, n_wrong);
  if (n_take > 0)
    g_assert_true (stead_import_take (import, store, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
  g_remove (path);
}

/* One minute twice, a time that is missing, one that is to come, what no logger shows. */
static void
test_cooler_logger (void)
{
  static const char table[] =
    "Date and time,Temperature (°F)\n"
    "2026-03-01 08:00:00,38\n2026-03-01 08:00:30,38.2\n2026-03-02T09:30,39.1\n2026-03-03 7:05 AM,41.5\n"
    "2026-03-02,39\n2026-03-09 08:00,39\n2026-03-02 10:00,900\n2026-03-02 11:00,\n";
  g_autoptr(SteadStore) store = new_store ();
  g_autoptr(GError) error = NULL;
  gint64 place = new_place (store);
  g_autoptr(SteadPlaceAirAnswer) air = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  const SteadReadingPoint *points;

  take (store, STEAD_IMPORT_COOLER, place, table, 3, 2, 3);
  /* The same file once more brings nothing new. */
  take (store, STEAD_IMPORT_COOLER, place, table, 0, 5, 3);
  air = stead_place_air_answer_new (store, place, 30, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (air->readings->len, ==, 3);
  g_assert_cmpuint (air->series.n_points, ==, 3);
  points = air->series.points;
  g_assert_cmpfloat_with_epsilon (points[0].value, 38, 1e-9);
  g_assert_cmpfloat_with_epsilon (points[0].day, TODAY - 2 + 8.0 / 24, 1e-9);
  g_assert_cmpfloat_with_epsilon (points[2].value, 41.5, 1e-9);
  g_assert_cmpint (points[1].verdict, ==, STEAD_WATER_OK);
  g_assert_cmpint (points[2].verdict, ==, STEAD_WATER_ACT);
  g_assert_cmpfloat_with_epsilon (air->series.max, 41, 1e-9);
  g_assert_true (air->warns);
  /* 38, 39.1 and 41.5 °F after 0, 1.0625 and 1.9618 days: sums of squares by hand give 1.7617 °F a day, 41.21 °F at the
   * last; each is exact to 0.9 °F, so the slope to 0.648, and 1.2816 times that is half of the band. */
  whys = stead_place_air_answer_whys (air);
  NUMBERS_ARE (farm_find_why (whys, "Where the air is going")->worked, 3, 41.21, 1.762, 0.83);
}

/* A pot is asked about as any other food is: 500 °F is nothing that it can have. */
static void
test_odd_pot (void)
{
  static const struct { double value; const char *unit; SteadCheckOdd odd; } cases[] = {
    { 130, "F", STEAD_CHECK_ODD_NO }, { 212, "F", STEAD_CHECK_ODD_NO }, { 500, "F", STEAD_CHECK_ODD_IMPOSSIBLE },
    { 212, "C", STEAD_CHECK_ODD_SCALE }, { 54, "C", STEAD_CHECK_ODD_NO },
  };
  g_autoptr(SteadStore) store = new_store ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckAnswer) answer = stead_check_answer_new (store, keep_list (store), &error);
  guint n_pots = 0;

  g_assert_no_error (error);
  for (guint i = 0; i < answer->lines->len; i++)
    {
      const SteadCheckedLine *line = answer->lines->pdata[i];

      if (!stead_list_line_is_cooling (line->line))
        continue;
      n_pots++;
      for (gsize n = 0; n < G_N_ELEMENTS (cases); n++)
        {
          g_autoptr(SteadCheckVerdict) verdict = stead_check_answer_judge (answer, line, cases[n].value, cases[n].unit, NULL,
                                                                           NAN, EIGHT, FALSE, &error);

          g_assert_no_error (error);
          g_assert_cmpint (verdict->judged.odd, ==, cases[n].odd);
        }
    }
  g_assert_cmpuint (n_pots, >=, 1);
}

static gint64
read_air (SteadStore *store,
          gint64      place,
          int         hour,
          double      value_f)
{
  SteadShown shown = { .place_id = place, .kind = (char *) "air_temp", .at = EIGHT + 3600 * hour, .value = (value_f - 32) / 1.8,
                       .scale = 'F', .held_s = NAN };

  DO (store, stead_shown_repo_add (store, &shown, err));
  return shown.id;
}

/* FDA Food Code 2022, §3-501.16(A)(2): 41 °F.  Readings above it that follow one another are one spell;
 * what is done about it is known of all of them; and the line up begins anew after it. */
static void
test_warm_spells (void)
{
  g_autoptr(SteadStore) store = new_store ();
  g_autoptr(GError) error = NULL;
  gint64 place = new_place (store);
  g_autoptr(SteadPlaceAirAnswer) before = NULL, after = NULL;
  const SteadWarmSpell *spell;
  SteadDone done = { .at = EIGHT - 3600 * 20, .text = (char *) "Shut the door." };

  read_air (store, place, -72, 38);
  read_air (store, place, -48, 41);
  done.reading_id = read_air (store, place, -24, 44);
  read_air (store, place, -23, 41.1);
  read_air (store, place, -22, 37);
  read_air (store, place, -2, 41.2);
  before = stead_place_air_answer_new (store, place, 30, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (before->spells->len, ==, 2);
  spell = before->spells->pdata[0];
  g_assert_cmpint (spell->peak->id, ==, done.reading_id);
  g_assert_cmpint (spell->last->at - spell->first->at, ==, 3600);
  g_assert_null (spell->done);
  g_assert_nonnull (spell->todo);
  g_assert_nonnull (spell->todo_source);
  g_assert_nonnull (strstr (spell->text, "44"));
  DO (store, stead_done_repo_add (store, &done, err));
  after = stead_place_air_answer_new (store, place, 30, &error);
  g_assert_no_error (error);
  g_assert_nonnull (strstr (((const SteadWarmSpell *) after->spells->pdata[0])->done, "Shut the door."));
  g_assert_null (((const SteadWarmSpell *) after->spells->pdata[1])->done);
  g_assert_false (after->has_trend);                  /* two readings since then */
}

/* A slip of the pen is corrected: only the right one counts, both are told, and undoing brings the
 * wrong one back. */
static void
test_corrected_air (void)
{
  g_autoptr(SteadStore) store = new_store ();
  g_autoptr(GError) error = NULL;
  gint64 place = new_place (store), wrong;
  SteadShown right = { .at = STEAD_TIME_NONE, .value = (39 - 32) / 1.8, .scale = 'F', .held_s = NAN };
  g_autoptr(SteadPlaceAirAnswer) air = NULL;
  g_autoptr(GPtrArray) rows = NULL;
  const SteadAirRow *row;

  read_air (store, place, -24, 38);
  wrong = read_air (store, place, -2, 93);
  DO (store, stead_shown_repo_correct (store, wrong, &right, err));
  g_free (right.kind);
  air = stead_place_air_answer_new (store, place, 30, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (air->readings->len, ==, 2);
  g_assert_cmpuint (air->wrong->len, ==, 1);
  g_assert_cmpuint (air->spells->len, ==, 0);
  g_assert_false (air->warns);
  rows = stead_place_air_rows (air, 24);
  g_assert_cmpuint (rows->len, ==, 3);
  row = rows->pdata[0];                               /* of one time: the right one first */
  g_assert_cmpint (row->id, ==, right.id);
  g_assert_false (row->wrong);
  row = rows->pdata[1];
  g_assert_true (row->wrong);
  g_assert_nonnull (strstr (row->text, "93"));
  g_assert_nonnull (strstr (row->text, "39"));
  g_clear_pointer (&rows, g_ptr_array_unref);
  rows = stead_place_air_rows (air, 1);
  g_assert_cmpuint (rows->len, ==, 1);
  g_assert_true (stead_store_undo (store, &error));
  g_clear_pointer (&air, stead_place_air_answer_free);
  air = stead_place_air_answer_new (store, place, 30, &error);
  g_assert_cmpuint (air->wrong->len, ==, 0);
  g_assert_cmpuint (air->spells->len, ==, 1);
}

/* The day before it was read and cold: there is only to read it again.  Too warm this morning: it needs
 * a look, and was read. */
static void
test_due (void)
{
  g_autoptr(SteadStore) store = new_store ();
  g_autoptr(GError) error = NULL;
  gint64 place = new_place (store);
  g_autoptr(SteadDueAnswer) never = NULL, cold = NULL, warm = NULL;
  g_autoptr(SteadStripAnswer) strip = NULL;

  never = stead_due_answer_new (store, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (never->dues->len, ==, 0);
  read_air (store, place, -24, 38);
  cold = stead_due_answer_new (store, &error);
  g_assert_cmpint (cold->n_tasks, ==, 1);
  g_assert_cmpint (cold->n_warnings, ==, 0);
  g_assert_cmpint (((const SteadDue *) cold->dues->pdata[0])->target, ==, STEAD_TARGET_COOLER);
  g_assert_cmpint (((const SteadDue *) cold->dues->pdata[0])->id, ==, place);
  /* FDA Food Code 2022, §3-501.16(A)(2): at most 41 °F. */
  read_air (store, place, 0, 41.5);
  warm = stead_due_answer_new (store, &error);
  g_assert_cmpint (warm->n_tasks, ==, 0);
  g_assert_cmpint (warm->n_warnings, ==, 1);
  g_assert_cmpint (((const SteadDue *) warm->dues->pdata[0])->id, ==, place);
  /* And so the strip tells. */
  strip = stead_strip_answer_new (store, NULL, 0, &error);
  g_assert_no_error (error);
  g_assert_true (strip->check_warns);
  g_assert_cmpstr (strip->check, ==, "1 cooler warm");
  g_assert_cmpstr (strip->check_brief, ==, "1 warm");
}

/* What is odd for a cooler is asked about: 38 is °F, 150 is neither; 4 °F may be a freezer. */
static void
test_odd_air (void)
{
  static const struct { double value; const char *unit; SteadCheckOdd odd; } cases[] = {
    { 38, "F", STEAD_CHECK_ODD_NO }, { 4, "C", STEAD_CHECK_ODD_NO }, { 38, "C", STEAD_CHECK_ODD_SCALE },
    { 4, "F", STEAD_CHECK_ODD_NO }, { 150, "F", STEAD_CHECK_ODD_IMPOSSIBLE },
  };
  g_autoptr(SteadStore) store = new_store ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPlaceAirAnswer) air = stead_place_air_answer_new (store, new_place (store), 30, &error);

  g_assert_no_error (error);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(SteadCheckVerdict) verdict = stead_place_air_answer_judge (air, cases[i].value, cases[i].unit, FALSE, &error);

      g_assert_no_error (error);
      g_assert_cmpint (verdict->judged.odd, ==, cases[i].odd);
    }
}

static gint64
read_pot (SteadStore *store,
          gint64      line,
          gint64      pot,
          int         minute,
          double      value_f)
{
  SteadShown shown = { .line_id = line, .pot_id = pot, .kind = (char *) "food_temp", .at = EIGHT + 60 * minute,
                       .value = (value_f - 32) / 1.8, .scale = 'F', .held_s = NAN };

  DO (store, stead_shown_repo_add (store, &shown, err));
  return shown.id;
}

/* Two readings of one minute are refused; if a corrected time makes two of them, the warmer counts, and
 * both are told. */
static void
test_two_readers (void)
{
  for (int warmer = 0; warmer < 2; warmer++)
    {
      g_autoptr(SteadStore) store = new_store ();
      gint64 id = keep_list (store), pot = 0, line, other;
      g_autoptr(SteadCheckAnswer) answer = answer_of (store, id);
      SteadShown right = { .at = EIGHT + 60 * 20, .value = ((warmer ? 128 : 121) - 32) / 1.8, .scale = 'F', .held_s = NAN };
      const SteadCheckPotRead *read;

      line = line_of (answer, "cool")->line->id;
      DO (store, stead_check_repo_save_pot (store, line, &pot, "Big pot", NULL, NAN, err));
      read_pot (store, line, pot, 0, 135);
      read_pot (store, line, pot, 20, warmer ? 121 : 128);
      other = read_pot (store, line, pot, 25, 120);
      DO (store, stead_shown_repo_correct (store, other, &right, err));
      g_free (right.kind);
      g_clear_pointer (&answer, stead_check_answer_free);
      answer = answer_of (store, id);
      read = line_of (answer, "cool")->pots->pdata[0];
      g_assert_cmpuint (read->cooling->kept_readings->len, ==, 2);
      g_assert_cmpfloat_with_epsilon (g_array_index (read->cooling->kept_readings, SteadCoolingReading, 1).temp_f, 128, 1e-6);
      g_assert_cmpuint (read->cooling->notes->len, ==, 1);
      g_assert_nonnull (strstr (read->cooling->notes->pdata[0], "121"));
      g_assert_nonnull (strstr (read->cooling->notes->pdata[0], "128"));
    }
}

/* Day and time apart, °C, semicolons; the first reading that shows the miss is the one that failed. */
static void
test_pot_logger (void)
{
  static const char table[] =
    "Date;Time;Probe (°C)\n3/3/2026;8:00;60\n3/3/2026;9:00;50\n3/3/2026;10:30;40\n3/3/2026;10:40;39\n3/1/2026;8:00;60\n";
  g_autoptr(SteadStore) store = new_store ();
  gint64 id = keep_list (store), pot = 0;
  g_autoptr(SteadCheckAnswer) empty = answer_of (store, id);
  g_autoptr(SteadCheckAnswer) answer = NULL;
  const SteadCheckedLine *line = line_of (empty, "cool");

  DO (store, stead_check_repo_save_pot (store, line->line->id, &pot, "Big pot", NULL, NAN, err));
  take (store, STEAD_IMPORT_POT, pot, table, 4, 0, 1);
  answer = answer_of (store, id);
  line = line_of (answer, "cool");
  g_assert_cmpuint (line->reads->len, ==, 4);
  g_assert_cmpint (read_at (line, 1)->state, ==, STEAD_READ_OPEN);
  g_assert_cmpint (read_at (line, 2)->state, ==, STEAD_READ_FAILED);
  g_assert_cmpint (read_at (line, 3)->state, ==, STEAD_READ_OPEN);
  g_assert_cmpint (((const SteadCheckPotRead *) line->pots->pdata[0])->cooling->state, ==, STEAD_POT_FAILED);
}

/* What was taken down on paper keeps the time when it was read and when it was typed in. */
static void
test_noted_later (void)
{
  g_autoptr(SteadStore) store = new_store ();
  gint64 id = keep_list (store);
  g_autoptr(SteadCheckAnswer) empty = answer_of (store, id);
  g_autoptr(SteadCheckAnswer) answer = NULL;
  SteadShown shown = { .line_id = line_of (empty, "cool")->line->id, .at = EIGHT, .value = 74, .held_s = NAN,
                       .noted_at = EIGHT + 3 * 3600 };
  const SteadCheckRead *read;

  DO (store, stead_shown_repo_add (store, &shown, err));
  g_free (shown.kind);
  answer = answer_of (store, id);
  read = read_at (line_of (answer, "cool"), 0);
  g_assert_cmpint (read->shown->noted_at, ==, EIGHT + 3 * 3600);
  g_assert_true (g_str_has_prefix (read->time, "8:00"));
  g_assert_nonnull (strstr (read->noted, "11:00"));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/answer/check-kept/odd-pot", test_odd_pot);
  g_test_add_func ("/answer/check-kept/warm-spells", test_warm_spells);
  g_test_add_func ("/answer/check-kept/corrected-air", test_corrected_air);
  g_test_add_func ("/answer/check-kept/two-readers", test_two_readers);
  g_test_add_func ("/answer/check-kept/cooler-is-due", test_due);
  g_test_add_func ("/answer/check-kept/odd-air", test_odd_air);
  g_test_add_func ("/answer/check/clock-start", test_clock_start);
  g_test_add_func ("/answer/check/pot-failed", test_pot_failed);
  g_test_add_func ("/answer/check/sanitizer", test_sanitizer);
  g_test_add_func ("/answer/check/boiling", test_boiling);
  g_test_add_func ("/answer/check/instruments", test_instruments);
  g_test_add_func ("/answer/check/cooler-logger", test_cooler_logger);
  g_test_add_func ("/answer/check/pot-logger", test_pot_logger);
  g_test_add_func ("/answer/check/noted-later", test_noted_later);
  return g_test_run ();
}
