/* stead-demo-answer.c - the checklists of the demo farm.
 *
 * What the run sheets of the kitchen batches already say counts for the lists; the rest
 * is read here, well within each limit, as in a kitchen that works as it should.  The
 * failed reading and its handling are those of the run sheet.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-check-list.h"
#include "answer/stead-demo-answer.h"
#include "store/stead-kitchen-repo.h"

#define TERM_DAYS 84
#define BEFORE_WORK_S (7 * 3600 + 20 * 60)   /* of the day: "7:20" */
#define LINE_S 60

/* What this kitchen answers; any other question takes the first answer offered. */
static const struct
{
  SteadCheckKey  key;
  const char    *word;
} usual[] = {
  { STEAD_CHECK_KEY_EATERS, "no" },
  { STEAD_CHECK_KEY_EGG_USE, "pooled_or_held" },
  { STEAD_CHECK_KEY_AHEAD, "same_day" },
  { STEAD_CHECK_KEY_THAW, "none" },
  { STEAD_CHECK_KEY_EGGS_COLD, "yes" },
  { STEAD_CHECK_KEY_MICROWAVE, "no" },
  { STEAD_CHECK_KEY_CARRIED, "no" },
  { STEAD_CHECK_KEY_SANITIZER, "chlorine" },
  { STEAD_CHECK_KEY_WATER_PH, "up_to_8" },
  { STEAD_CHECK_KEY_WASH, "by_hand" },
  { STEAD_CHECK_KEY_THERMOMETER, "F_only" },
};

static const struct
{
  const char          *name;
  SteadInstrumentKind  kind;
  double               step, error;
} instruments[] = {
  { "Probe thermometer", STEAD_INSTRUMENT_PROBE, 1 / 1.8, 2 / 1.8 },
  { "Refrigerator thermometer", STEAD_INSTRUMENT_AIR, 1 / 1.8, 2 / 1.8 },
  { "pH meter", STEAD_INSTRUMENT_PH_METER, 0.01, 0.05 },
  { "Chlorine test strips", STEAD_INSTRUMENT_STRIP, 25, NAN },
};

static gboolean
add_instruments (SteadStore  *store,
                 GError     **error)
{
  if (!stead_store_begin (store, _("New instruments"), error))
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (instruments); i++)
    {
      gboolean warmth = instruments[i].kind == STEAD_INSTRUMENT_PROBE || instruments[i].kind == STEAD_INSTRUMENT_AIR;
      SteadInstrument instrument = { .name = (char *) instruments[i].name, .kind = instruments[i].kind,
                                     .scale = warmth ? (char *) "F_only" : NULL, .step = instruments[i].step,
                                     .error = instruments[i].error, .retired_on = STEAD_DAY_NONE };

      if (!stead_instrument_repo_save (store, &instrument, error))
        {
          stead_store_rollback (store);
          return FALSE;
        }
    }
  return stead_store_commit (store, error);
}

/* --- a list --------------------------------------------------------------------------- */

static const char *
answer_to (const SteadCheckQuestion *question)
{
  for (gsize i = 0; i < G_N_ELEMENTS (usual); i++)
    if (usual[i].key == question->key && g_strv_contains (question->words, usual[i].word))
      return usual[i].word;
  return question->words[0];
}

/* Each answer may bring another question; there are finitely many keys. */
static SteadCheckPlanAnswer *
plan_of (SteadStore       *store,
         SteadCheckOrder  *order,
         GArray           *answers,
         GError          **error)
{
  for (;;)
    {
      g_autoptr(SteadCheckPlanAnswer) plan = NULL;
      guint before = answers->len;

      order->answers = (const SteadCheckAnswered *) (gpointer) answers->data;
      order->n_answers = answers->len;
      plan = stead_check_plan_answer_new (store, order, error);
      if (plan == NULL)
        return NULL;
      for (guint i = 0; i < plan->questions->len; i++)
        {
          const SteadCheckAsked *asked = plan->questions->pdata[i];
          SteadCheckAnswered answer = { .key = asked->question->key, .word = answer_to (asked->question) };

          if (asked->question->word != NULL)
            continue;
          answer.food = asked->food != NULL ? g_intern_string (asked->food) : NULL;
          g_array_append_val (answers, answer);
        }
      if (answers->len == before)
        return g_steal_pointer (&plan);
    }
}

static gint64
make_list (SteadStore          *store,
           const SteadKitchen  *kitchen,
           GError             **error)
{
  g_autoptr(GArray) answers = g_array_new (FALSE, FALSE, sizeof (SteadCheckAnswered));
  SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_KITCHEN, .id = kitchen->batch.id, .day = kitchen->batch.started_on };
  g_autoptr(SteadCheckPlanAnswer) plan = plan_of (store, &order, answers, error);
  g_autoptr(SteadCheckList) list = NULL;

  if (plan == NULL)
    return 0;
  list = stead_check_list_from_plan (store, plan, &order, kitchen->batch.name, error);
  return list != NULL && stead_check_repo_save (store, list, error) ? list->id : 0;
}

/* --- what is read ------------------------------------------------------------------------ */

/* A value that meets the row with something to spare, as an instrument would show it. */
static double
good_value (const SteadLimit *row)
{
  gboolean warmth = g_str_equal (row->unit, "F");
  double room = warmth ? 4 : row->value / 5;
  double value = row->value;

  if (row->direction == STEAD_LIMIT_AT_LEAST || row->direction == STEAD_LIMIT_ABOVE)
    value += room;
  else if (row->direction == STEAD_LIMIT_AT_MOST || row->direction == STEAD_LIMIT_BELOW)
    value -= room;
  return warmth ? (value - 32) / 1.8 : value;
}

/* When the run sheet was read first and last; without any, when work begins. */
static void
find_work (const SteadCheckList *list,
           gint64               *out_first,
           gint64               *out_last)
{
  *out_first = *out_last = STEAD_TIME_NONE;
  for (guint i = 0; i < list->lines->len; i++)
    {
      const SteadListLine *line = list->lines->pdata[i];

      for (guint n = 0; n < line->readings->len; n++)
        {
          gint64 at = ((const SteadShown *) line->readings->pdata[n])->at;

          *out_first = *out_first == STEAD_TIME_NONE ? at : MIN (*out_first, at);
          *out_last = *out_last == STEAD_TIME_NONE ? at : MAX (*out_last, at);
        }
    }
  if (*out_first == STEAD_TIME_NONE)
    *out_first = *out_last = stead_time_midnight (list->day) + BEFORE_WORK_S;
}

/* What is looked at before the work comes before it, in the order of the list; the rest after. */
static gint64
time_of (const SteadListLine *line,
         guint                i,
         guint                n_lines,
         gint64               first,
         gint64               last)
{
  SteadCheckLine plan;
  gboolean before = stead_check_line_of_list (line, &plan) && plan.stage < STEAD_CHECK_STAGE_COOK;

  return before ? first - LINE_S * (n_lines - i) : last + LINE_S * (i + 1);
}

/* A strip was dipped into what was mixed, at the time at which its warmth was read. */
static gboolean
add_strips (SteadStore        *store,
            const SteadShown  *warmth,
            GError           **error)
{
  static const struct { const char *kind; double value; } strips[] = { { "strength", 100 }, { "ph", 7.4 } };

  for (gsize i = 0; i < G_N_ELEMENTS (strips); i++)
    {
      SteadShown shown = { .at = warmth->at, .kind = (char *) strips[i].kind, .value = strips[i].value, .held_s = NAN,
                           .person_id = warmth->person_id, .line_id = warmth->line_id };

      if (!stead_shown_repo_add (store, &shown, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
add_readings (SteadStore            *store,
              const SteadCheckList  *list,
              gint64                 person,
              GError               **error)
{
  gint64 first, last;

  find_work (list, &first, &last);
  for (guint i = 0; i < list->lines->len; i++)
    {
      const SteadListLine *line = list->lines->pdata[i];
      const SteadLimit *row = line->rows->pdata[0];
      gboolean tick = g_str_equal (line->measure, STEAD_MEASURE_DONE);
      SteadShown shown = { .at = time_of (line, i, list->lines->len, first, last), .kind = (char *) line->measure, .person_id = person,
                           .line_id = line->id, .instrument_id = line->instrument_id,
                           .value = tick ? 1 : good_value (row), .held_s = NAN,
                           .scale = !tick && g_str_equal (row->unit, "F") ? 'F' : 0 };

      if (line->readings->len > 0)
        continue;
      if (g_str_equal (line->topic, stead_check_line_kind_id (STEAD_CHECK_LINE_THERMOMETER_BOIL)))
        {
          if (!stead_check_repo_leave_out (store, line->id, _("It was tried in ice water."), error))
            return FALSE;
          continue;
        }
      if (!tick && row->time_s > 0 && row->time_direction == STEAD_LIMIT_AT_LEAST)
        shown.held_s = row->time_s;
      if (!tick && stead_list_line_is_mixed (line) && !add_strips (store, &shown, error))
        return FALSE;
      if (!stead_shown_repo_add (store, &shown, error))
        return FALSE;
    }
  return TRUE;
}

/* What failed on the run sheet says in its note what was done. */
static gboolean
add_actions (SteadStore            *store,
             const SteadCheckList  *list,
             GError               **error)
{
  g_autoptr(SteadListHoles) holes = stead_check_repo_holes (store, list, error);

  if (holes == NULL)
    return FALSE;
  for (guint i = 0; i < holes->readings->len; i++)
    {
      const SteadShown *shown = holes->readings->pdata[i];
      SteadDone done = { .reading_id = shown->id, .at = shown->at + 10 * LINE_S, .person_id = shown->person_id,
                         .text = shown->note != NULL ? shown->note : (char *) _("Heated again and read once more.") };

      if (!stead_done_repo_add (store, &done, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
settle_holds (SteadStore  *store,
              gint64       list_id,
              gint64       person,
              GError     **error)
{
  g_autoptr(GPtrArray) holds = stead_hold_repo_of_list (store, list_id, error);

  if (holds == NULL)
    return FALSE;
  for (guint i = 0; i < holds->len; i++)
    {
      const SteadHold *hold = holds->pdata[i];

      if (hold->outcome == STEAD_HOLD_OPEN &&
          !stead_hold_repo_settle (store, hold->id, STEAD_HOLD_MENDED,
                                   _("The next reading met the limit."), person, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
fill_list (SteadStore  *store,
           gint64       list_id,
           gint64       person,
           gint64       advisor,
           GError     **error)
{
  g_autoptr(SteadCheckList) blank = stead_check_repo_get (store, list_id, error);
  g_autoptr(SteadCheckList) filled = NULL;

  if (blank == NULL || !add_readings (store, blank, person, error))
    return FALSE;
  filled = stead_check_repo_get (store, list_id, error);
  return filled != NULL &&
         add_actions (store, filled, error) &&
         settle_holds (store, list_id, person, error) &&
         stead_check_repo_sign (store, list_id, advisor, error);
}

static gboolean
add_list (SteadStore          *store,
          const SteadKitchen  *kitchen,
          gint64               person,
          gint64               advisor,
          GError             **error)
{
  gboolean ended = kitchen->batch.ended_on != STEAD_DAY_NONE;
  g_autofree char *name = g_strdup_printf (_("New checklist: %s"), kitchen->batch.name);
  gint64 id;

  if (!stead_store_begin (store, name, error))
    return FALSE;
  id = make_list (store, kitchen, error);
  if (id > 0 && (!ended || fill_list (store, id, person, advisor, error)))
    return stead_store_commit (store, error);
  stead_store_rollback (store);
  return FALSE;
}

static gint64
somebody (const GPtrArray *people,
          SteadPersonRole  role)
{
  for (guint i = 0; i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];

      if (person->role == role && person->left_on == STEAD_DAY_NONE)
        return person->id;
    }
  return 0;
}

static gboolean
add_checks (SteadStore  *store,
            GError     **error)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, error);
  g_autoptr(GPtrArray) kitchens = people != NULL ? stead_kitchen_repo_list (store, TRUE, error) : NULL;

  if (kitchens == NULL || !add_instruments (store, error))
    return FALSE;
  for (guint i = kitchens->len; i > 0; i--)
    {
      const SteadKitchen *kitchen = kitchens->pdata[i - 1];

      if (kitchen->batch.started_on >= stead_store_get_today (store) - TERM_DAYS &&
          !add_list (store, kitchen, somebody (people, STEAD_PERSON_STUDENT),
                     somebody (people, STEAD_PERSON_ADVISOR), error))
        return FALSE;
    }
  return TRUE;
}

SteadStore *
stead_demo_answer_create (const char  *path,
                          const char  *description,
                          SteadDay     today,
                          GError     **error)
{
  return stead_demo_farm_create_with (path, description, today, add_checks, error);
}
