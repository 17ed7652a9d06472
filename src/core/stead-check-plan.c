/* stead-check-plan.c - what must be asked, checked and stopped: the plan and its parts. */
#include "config.h"

#include "core/stead-check-private.h"

#include <math.h>
#include <string.h>

/* --- words of the file ---------------------------------------------------------- */

static const char * const key_ids[STEAD_N_CHECK_KEYS] = {
  [STEAD_CHECK_KEY_EATERS] = "eaters", [STEAD_CHECK_KEY_FORM] = "form", [STEAD_CHECK_KEY_MADE] = "made",
  [STEAD_CHECK_KEY_COOKED] = "cooked", [STEAD_CHECK_KEY_DONENESS] = "doneness", [STEAD_CHECK_KEY_HELD] = "held",
  [STEAD_CHECK_KEY_EGG_USE] = "egg_use", [STEAD_CHECK_KEY_PASTEURIZED] = "pasteurized",
  [STEAD_CHECK_KEY_COMBINED] = "combined", [STEAD_CHECK_KEY_AHEAD] = "ahead",
  [STEAD_CHECK_KEY_TIME_OPTION] = "time_option", [STEAD_CHECK_KEY_KEPT_LONG] = "kept_long",
  [STEAD_CHECK_KEY_AMBIENT] = "ambient", [STEAD_CHECK_KEY_THAW] = "thaw", [STEAD_CHECK_KEY_SHELF] = "shelf",
  [STEAD_CHECK_KEY_MADE_IN] = "made_in", [STEAD_CHECK_KEY_FISH_FEED] = "fish_feed",
  [STEAD_CHECK_KEY_EGGS_COLD] = "eggs_cold", [STEAD_CHECK_KEY_MICROWAVE] = "microwave",
  [STEAD_CHECK_KEY_CARRIED] = "carried", [STEAD_CHECK_KEY_SANITIZER] = "sanitizer",
  [STEAD_CHECK_KEY_WATER_PH] = "water_ph", [STEAD_CHECK_KEY_WASH] = "wash",
  [STEAD_CHECK_KEY_THERMOMETER] = "thermometer",
};

static const char * const line_ids[STEAD_N_CHECK_LINE_KINDS] = {
  [STEAD_CHECK_LINE_ILL] = "ill", [STEAD_CHECK_LINE_HANDS] = "hands", [STEAD_CHECK_LINE_BARE_HANDS] = "bare_hands",
  [STEAD_CHECK_LINE_THERMOMETER_ICE] = "thermometer_ice", [STEAD_CHECK_LINE_THERMOMETER_BOIL] = "thermometer_boil",
  [STEAD_CHECK_LINE_SANITIZER] = "sanitizer", [STEAD_CHECK_LINE_SANITIZER_CONTACT] = "sanitizer_contact",
  [STEAD_CHECK_LINE_SURFACES] = "surfaces", [STEAD_CHECK_LINE_SEPARATE_RAW] = "separate_raw",
  [STEAD_CHECK_LINE_ALLERGENS] = "allergens", [STEAD_CHECK_LINE_DRY_STORE] = "dry_store",
  [STEAD_CHECK_LINE_EGGS_COLD] = "eggs_cold", [STEAD_CHECK_LINE_EGGS_SOUND] = "eggs_sound",
  [STEAD_CHECK_LINE_RECEIVE_COLD] = "receive_cold", [STEAD_CHECK_LINE_RECEIVE_FROZEN] = "receive_frozen",
  [STEAD_CHECK_LINE_PRODUCE_WASH] = "produce_wash", [STEAD_CHECK_LINE_THAW_COLD] = "thaw_cold",
  [STEAD_CHECK_LINE_THAW_WATER] = "thaw_water", [STEAD_CHECK_LINE_THAW_WATER_TIME] = "thaw_water_time",
  [STEAD_CHECK_LINE_THAW_MICROWAVE] = "thaw_microwave", [STEAD_CHECK_LINE_FISH_FREEZING] = "fish_freezing",
  [STEAD_CHECK_LINE_FISH_RECORDS] = "fish_records", [STEAD_CHECK_LINE_CHILL_PREPARED] = "chill_prepared",
  [STEAD_CHECK_LINE_COOK] = "cook", [STEAD_CHECK_LINE_COOK_MICROWAVE] = "cook_microwave",
  [STEAD_CHECK_LINE_STAND] = "stand", [STEAD_CHECK_LINE_COOL] = "cool", [STEAD_CHECK_LINE_REHEAT] = "reheat",
  [STEAD_CHECK_LINE_REHEAT_MICROWAVE] = "reheat_microwave", [STEAD_CHECK_LINE_REHEAT_STAND] = "reheat_stand",
  [STEAD_CHECK_LINE_REHEAT_TIME] = "reheat_time", [STEAD_CHECK_LINE_HOLD_HOT] = "hold_hot",
  [STEAD_CHECK_LINE_HOLD_COLD] = "hold_cold", [STEAD_CHECK_LINE_HOLD_FROZEN] = "hold_frozen",
  [STEAD_CHECK_LINE_TIME_START] = "time_start", [STEAD_CHECK_LINE_TIME_DURING] = "time_during",
  [STEAD_CHECK_LINE_TIME_END] = "time_end", [STEAD_CHECK_LINE_DATE_MARK] = "date_mark",
  [STEAD_CHECK_LINE_JAR_PH] = "jar_ph", [STEAD_CHECK_LINE_JAR_PROCESS] = "jar_process",
  [STEAD_CHECK_LINE_JAR_RECORDS] = "jar_records", [STEAD_CHECK_LINE_CARRY_HOT] = "carry_hot",
  [STEAD_CHECK_LINE_CARRY_COLD] = "carry_cold", [STEAD_CHECK_LINE_CARRY_FROZEN] = "carry_frozen",
  [STEAD_CHECK_LINE_ADVISORY] = "advisory", [STEAD_CHECK_LINE_ALLERGEN_NOTICE] = "allergen_notice",
  [STEAD_CHECK_LINE_EGG_CARTON] = "egg_carton", [STEAD_CHECK_LINE_UTENSILS] = "utensils",
  [STEAD_CHECK_LINE_LEFTOVERS] = "leftovers", [STEAD_CHECK_LINE_WASH_HAND] = "wash_hand",
  [STEAD_CHECK_LINE_WASH_MACHINE] = "wash_machine",
};

static const char * const stage_ids[STEAD_N_CHECK_STAGES] = {
  [STEAD_CHECK_STAGE_BEFORE] = "before", [STEAD_CHECK_STAGE_RECEIVE] = "receive",
  [STEAD_CHECK_STAGE_PREPARE] = "prepare", [STEAD_CHECK_STAGE_COOK] = "cook", [STEAD_CHECK_STAGE_COOL] = "cool",
  [STEAD_CHECK_STAGE_REHEAT] = "reheat", [STEAD_CHECK_STAGE_HOLD] = "hold", [STEAD_CHECK_STAGE_CARRY] = "carry",
  [STEAD_CHECK_STAGE_SERVE] = "serve", [STEAD_CHECK_STAGE_AFTER] = "after",
};

static const char * const stop_ids[STEAD_N_CHECK_STOPS] = {
  [STEAD_CHECK_STOP_LOW_ACID] = "low_acid", [STEAD_CHECK_STOP_UNTESTED] = "untested",
  [STEAD_CHECK_STOP_DOUBT] = "doubt", [STEAD_CHECK_STOP_AUTHORITY] = "authority", [STEAD_CHECK_STOP_HOME] = "home",
  [STEAD_CHECK_STOP_EGGS_WARM] = "eggs_warm", [STEAD_CHECK_STOP_EGGS_UNDERCOOKED] = "eggs_undercooked",
  [STEAD_CHECK_STOP_EGGS_POOLED] = "eggs_pooled", [STEAD_CHECK_STOP_EGGS_TIME] = "eggs_time",
  [STEAD_CHECK_STOP_RAW_ANIMAL] = "raw_animal", [STEAD_CHECK_STOP_GROUND_MEAT] = "ground_meat",
  [STEAD_CHECK_STOP_SPROUTS] = "sprouts", [STEAD_CHECK_STOP_ROOM] = "room", [STEAD_CHECK_STOP_LOT_OVER] = "lot_over",
};

static const char * const way_ids[] = {
  [STEAD_CHECK_WAY_COLD] = "cold", [STEAD_CHECK_WAY_TEST] = "test", [STEAD_CHECK_WAY_AUTHORITY] = "authority",
  [STEAD_CHECK_WAY_DISCARD_EGGS] = "discard_eggs", [STEAD_CHECK_WAY_PASTEURIZED] = "pasteurized",
  [STEAD_CHECK_WAY_COOK_THROUGH] = "cook_through", [STEAD_CHECK_WAY_LEAVE_OUT] = "leave_out",
  [STEAD_CHECK_WAY_HOLD] = "hold", [STEAD_CHECK_WAY_DISCARD] = "discard",
};

/* The place of an id; -1: there is none. */
static int
place_of (const char * const *ids,
          gsize               n,
          const char         *id)
{
  for (gsize i = 0; i < n; i++)
    if (g_str_equal (ids[i], id))
      return (int) i;
  return -1;
}

const char *
stead_check_key_id (SteadCheckKey key)
{
  g_return_val_if_fail ((gsize) key < G_N_ELEMENTS (key_ids), "");
  return key_ids[key];
}

gboolean
stead_check_key_by_id (const char    *id,
                       SteadCheckKey *out)
{
  int place;

  g_return_val_if_fail (id != NULL && out != NULL, FALSE);
  place = place_of (key_ids, G_N_ELEMENTS (key_ids), id);
  if (place >= 0)
    *out = (SteadCheckKey) place;
  return place >= 0;
}

const char *
stead_check_line_kind_id (SteadCheckLineKind kind)
{
  g_return_val_if_fail ((gsize) kind < G_N_ELEMENTS (line_ids), "");
  return line_ids[kind];
}

gboolean
stead_check_line_kind_by_id (const char         *id,
                             SteadCheckLineKind *out)
{
  int place;

  g_return_val_if_fail (id != NULL && out != NULL, FALSE);
  place = place_of (line_ids, G_N_ELEMENTS (line_ids), id);
  if (place >= 0)
    *out = (SteadCheckLineKind) place;
  return place >= 0;
}

const char *
stead_check_stage_id (SteadCheckStage stage)
{
  g_return_val_if_fail ((gsize) stage < G_N_ELEMENTS (stage_ids), "");
  return stage_ids[stage];
}

const char *
stead_check_stop_id (SteadCheckStopKind kind)
{
  g_return_val_if_fail ((gsize) kind < G_N_ELEMENTS (stop_ids), "");
  return stop_ids[kind];
}

const char *
stead_check_way_id (SteadCheckWay way)
{
  g_return_val_if_fail ((gsize) way < G_N_ELEMENTS (way_ids), "");
  return way_ids[way];
}

/* --- questions ------------------------------------------------------------------ */

/* The word of @words that was answered; NULL: none, or one that is no answer. */
static const char *
answer_to (const SteadCheckCase *given,
           SteadCheckKey         key,
           int                   food,
           const char * const   *words)
{
  const char *name = food >= 0 ? given->foods[food].name : NULL;

  for (gsize i = 0; i < given->n_answers; i++)
    {
      const SteadCheckAnswered *answer = &given->answers[i];

      if (answer->key != key || g_strcmp0 (answer->food, name) != 0)
        continue;
      for (gsize w = 0; words[w] != NULL; w++)
        if (g_strcmp0 (words[w], answer->word) == 0)
          return words[w];
    }
  return NULL;
}

static SteadCheckQuestion *
asked_before (CheckMaker    *maker,
              SteadCheckKey  key,
              int            food)
{
  /* The last ones are of the food at hand. */
  for (guint i = maker->plan->questions->len; i > 0; i--)
    {
      SteadCheckQuestion *question = maker->plan->questions->pdata[i - 1];

      if (question->key == key && question->food == food)
        return question;
      if (food >= 0 && question->food >= 0 && question->food != food)
        return NULL;
    }
  return NULL;
}

const char *
check_ask (CheckMaker         *maker,
           SteadCheckKey       key,
           int                 food,
           const char * const *words,
           const char         *assumed)
{
  SteadCheckQuestion *question = asked_before (maker, key, food);

  if (question == NULL)
    {
      question = g_new0 (SteadCheckQuestion, 1);
      question->key = key;
      question->food = food;
      question->words = words;
      question->word = answer_to (maker->given, key, food, words);
      maker->plan->n_open += question->word == NULL;
      g_ptr_array_add (maker->plan->questions, question);
    }
  return question->word != NULL ? question->word : assumed;
}

gboolean
check_ask_yes (CheckMaker    *maker,
               SteadCheckKey  key,
               int            food,
               gboolean       assumed)
{
  static const char * const words[] = { "yes", "no", NULL };

  return g_str_equal (check_ask (maker, key, food, words, assumed ? "yes" : "no"), "yes");
}

/* --- lines ---------------------------------------------------------------------- */

/* How each kind of line is checked. */
typedef struct
{
  SteadCheckStage  stage;
  SteadCheckTool   tool;
  SteadCheckOften  often;
  const char      *often_row;   /* (nullable) */
  SteadCheckWho    who;
} Manner;

#define M(kind, stage, tool, often, row, who) \
  [STEAD_CHECK_LINE_##kind] = { STEAD_CHECK_STAGE_##stage, STEAD_CHECK_TOOL_##tool, STEAD_CHECK_OFTEN_##often, row, \
                                STEAD_CHECK_WHO_##who }

static const Manner manners[STEAD_N_CHECK_LINE_KINDS] = {
  M (ILL, BEFORE, NONE, ONCE, NULL, LEAD),
  M (HANDS, BEFORE, NONE, TASK, NULL, EVERYONE),
  M (BARE_HANDS, BEFORE, NONE, TASK, NULL, EVERYONE),
  M (THERMOMETER_ICE, BEFORE, PROBE, ONCE, NULL, LEAD),
  M (THERMOMETER_BOIL, BEFORE, PROBE, ONCE, NULL, LEAD),
  M (SANITIZER, BEFORE, STRIP, EVERY, "often-sanitizer-4", LEAD),
  M (SANITIZER_CONTACT, BEFORE, CLOCK, TASK, NULL, EVERYONE),
  M (SURFACES, BEFORE, NONE, EVERY, "clean-surface-4h", EVERYONE),
  M (SEPARATE_RAW, BEFORE, NONE, TASK, NULL, EVERYONE),
  M (ALLERGENS, BEFORE, NONE, TASK, NULL, EVERYONE),
  M (DRY_STORE, BEFORE, NONE, ONCE, NULL, LEAD),
  M (EGGS_COLD, RECEIVE, AIR, DELIVERY, NULL, COOK),
  M (EGGS_SOUND, RECEIVE, NONE, DELIVERY, NULL, COOK),
  M (RECEIVE_COLD, RECEIVE, PROBE, DELIVERY, NULL, COOK),
  M (RECEIVE_FROZEN, RECEIVE, NONE, DELIVERY, NULL, COOK),
  M (PRODUCE_WASH, PREPARE, NONE, PORTION, NULL, COOK),
  M (THAW_COLD, PREPARE, PROBE, PORTION, NULL, COOK),
  M (THAW_WATER, PREPARE, PROBE, PORTION, NULL, COOK),
  M (THAW_WATER_TIME, PREPARE, CLOCK, PORTION, NULL, COOK),
  M (THAW_MICROWAVE, PREPARE, NONE, PORTION, NULL, COOK),
  M (FISH_FREEZING, PREPARE, CLOCK, DELIVERY, NULL, LEAD),
  M (FISH_RECORDS, AFTER, NONE, END, NULL, LEAD),
  M (CHILL_PREPARED, PREPARE, PROBE, PORTION, NULL, COOK),
  M (COOK, COOK, PROBE, PORTION, NULL, COOK),
  M (COOK_MICROWAVE, COOK, PROBE, PORTION, NULL, COOK),
  M (STAND, COOK, CLOCK, PORTION, NULL, COOK),
  M (COOL, COOL, PROBE, EVERY, "cool-check-gap", COOK),
  M (REHEAT, REHEAT, PROBE, PORTION, NULL, COOK),
  M (REHEAT_MICROWAVE, REHEAT, PROBE, PORTION, NULL, COOK),
  M (REHEAT_STAND, REHEAT, CLOCK, PORTION, NULL, COOK),
  M (REHEAT_TIME, REHEAT, CLOCK, PORTION, NULL, COOK),
  M (HOLD_HOT, HOLD, PROBE, EVERY, "often-hold-2", SERVER),
  M (HOLD_COLD, HOLD, PROBE, EVERY, "often-hold-2", SERVER),
  M (HOLD_FROZEN, HOLD, NONE, EVERY, "often-hold-2", SERVER),
  M (TIME_START, HOLD, PROBE, PORTION, NULL, SERVER),
  M (TIME_DURING, HOLD, PROBE, EVERY, "often-hold-2", SERVER),
  M (TIME_END, HOLD, CLOCK, PORTION, NULL, SERVER),
  M (DATE_MARK, HOLD, NONE, PORTION, NULL, COOK),
  M (JAR_PH, PREPARE, PH_METER, PORTION, NULL, LEAD),
  M (JAR_PROCESS, COOK, NONE, PORTION, NULL, LEAD),
  M (JAR_RECORDS, AFTER, NONE, END, NULL, LEAD),
  M (CARRY_HOT, CARRY, PROBE, ENDS, NULL, SERVER),
  M (CARRY_COLD, CARRY, PROBE, ENDS, NULL, SERVER),
  M (CARRY_FROZEN, CARRY, NONE, ENDS, NULL, SERVER),
  M (ADVISORY, SERVE, NONE, ONCE, NULL, LEAD),
  M (ALLERGEN_NOTICE, SERVE, NONE, ONCE, NULL, LEAD),
  M (EGG_CARTON, SERVE, NONE, ONCE, NULL, SERVER),
  M (UTENSILS, SERVE, PROBE, EVERY, "often-hold-2", SERVER),
  M (LEFTOVERS, AFTER, NONE, END, NULL, LEAD),
  M (WASH_HAND, AFTER, PROBE, END, NULL, EVERYONE),
  M (WASH_MACHINE, AFTER, INDICATOR, END, NULL, EVERYONE),
};

#undef M

static void
line_free (SteadCheckLine *line)
{
  g_ptr_array_unref (line->rows);
  g_free (line);
}

SteadCheckLine *
check_add (CheckMaker         *maker,
           SteadCheckLineKind  kind,
           int                 food,
           const char         *subject,
           GPtrArray          *rows)
{
  const Manner *manner = &manners[kind];
  const SteadLimit *first;
  SteadCheckLine *line;

  if (rows->len == 0)
    {
      g_ptr_array_unref (rows);
      return NULL;
    }
  first = rows->pdata[0];
  line = g_new0 (SteadCheckLine, 1);
  line->kind = kind;
  line->stage = manner->stage;
  line->food = food;
  line->subject = subject != NULL ? g_string_chunk_insert_const (maker->plan->strings, subject) : NULL;
  line->rows = rows;
  line->tool = manner->tool;
  line->often = manner->often;
  line->often_limit = manner->often_row != NULL ? stead_limit_table_by_id (maker->table, manner->often_row) : NULL;
  line->who = manner->who;
  line->own_least_c = line->own_most_c = line->own_hold_s = NAN;
  if (first->direction != STEAD_LIMIT_IS && manner->tool != STEAD_CHECK_TOOL_NONE)
    {
      line->measure = first->measure;
      line->unit = first->unit;
    }
  g_ptr_array_add (maker->plan->lines, line);
  return line;
}

GPtrArray *
check_rows (CheckMaker           *maker,
            const char           *process,
            const char           *subject,
            const char           *measure,
            const SteadLimitFact *facts)
{
  return stead_limit_table_list (maker->table, process, subject, measure, facts);
}

GPtrArray *
check_ids (CheckMaker *maker,
           const char *first,
           ...)
{
  GPtrArray *rows = g_ptr_array_new ();
  va_list ids;

  va_start (ids, first);
  for (const char *id = first; id != NULL; id = va_arg (ids, const char *))
    {
      const SteadLimit *row = stead_limit_table_by_id (maker->table, id);

      if (row != NULL)
        g_ptr_array_add (rows, (gpointer) row);
    }
  va_end (ids);
  return rows;
}

/* --- the whole ------------------------------------------------------------------ */

static int
question_group (const SteadCheckQuestion *question)
{
  return question->key == STEAD_CHECK_KEY_EATERS ? 0 : question->food >= 0 ? 1 : 2;
}

static int
compare_questions (gconstpointer a,
                   gconstpointer b)
{
  const SteadCheckQuestion *x = *(SteadCheckQuestion * const *) a, *y = *(SteadCheckQuestion * const *) b;

  if (question_group (x) != question_group (y))
    return question_group (x) - question_group (y);
  return x->food != y->food ? x->food - y->food : (int) x->key - (int) y->key;
}

static int
compare_lines (gconstpointer a,
               gconstpointer b)
{
  const SteadCheckLine *x = *(SteadCheckLine * const *) a, *y = *(SteadCheckLine * const *) b;

  if (x->stage != y->stage)
    return (int) x->stage - (int) y->stage;
  /* Before the work the kitchen, else food by food. */
  return x->food != y->food ? x->food - y->food : (int) x->kind - (int) y->kind;
}

/* The rest keeps its order: qsort alone does not. */
static void
sort_lines (GPtrArray *lines)
{
  g_ptr_array_sort (lines, compare_lines);
}

static SteadProcessKind
process_of (const CheckRoute *route)
{
  SteadStep steps[3];
  gsize n = 0;

  if (check_heats (route))
    steps[n++] = STEAD_STEP_COOK;
  if (route->cools)
    steps[n++] = STEAD_STEP_COOL;
  if (route->reheats)
    steps[n++] = STEAD_STEP_REHEAT;
  return stead_process_kind (steps, n);
}

static SteadCheckPlan *
plan_new (gsize n_foods)
{
  SteadCheckPlan *plan = g_new0 (SteadCheckPlan, 1);

  plan->questions = g_ptr_array_new_with_free_func (g_free);
  plan->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) line_free);
  plan->stops = g_ptr_array_new_with_free_func (g_free);
  plan->processes = g_new0 (SteadProcessKind, MAX (n_foods, 1));
  plan->n_foods = n_foods;
  plan->strings = g_string_chunk_new (1024);
  return plan;
}

SteadCheckPlan *
stead_check_plan_new (const SteadLimitTable *table,
                      const SteadCheckCase  *given)
{
  static const char * const eaters[] = { "general", "hsp", NULL };
  g_autoptr(SteadCheckPlan) plan = NULL;
  g_autofree CheckRoute *routes = NULL;
  CheckMaker maker;

  g_return_val_if_fail (table != NULL && given != NULL, NULL);
  g_return_val_if_fail (given->foods != NULL || given->n_foods == 0, NULL);

  plan = plan_new (given->n_foods);
  routes = g_new0 (CheckRoute, MAX (given->n_foods, 1));
  maker = (CheckMaker) { table, given, plan, routes, FALSE };
  /* Someone who is ill is kept out sooner where people at risk eat, whatever it is. */
  maker.hsp = g_str_equal (check_ask (&maker, STEAD_CHECK_KEY_EATERS, -1, eaters, "general"), "hsp");
  for (gsize i = 0; i < given->n_foods; i++)
    {
      check_route (&maker, (int) i);
      plan->processes[i] = process_of (&routes[i]);
      check_food_lines (&maker, &routes[i]);
      check_stops (&maker, &routes[i]);
    }
  check_egg_stop (&maker);
  check_general_lines (&maker);
  g_ptr_array_sort (plan->questions, compare_questions);
  sort_lines (plan->lines);
  return g_steal_pointer (&plan);
}

void
stead_check_plan_free (SteadCheckPlan *plan)
{
  if (plan == NULL)
    return;
  g_ptr_array_unref (plan->questions);
  g_ptr_array_unref (plan->lines);
  g_ptr_array_unref (plan->stops);
  g_free (plan->processes);
  g_string_chunk_free (plan->strings);
  g_free (plan);
}

/* --- comparing ------------------------------------------------------------------ */

static gboolean
lines_equal (const SteadCheckLine *a,
             const SteadCheckLine *b)
{
  if (a->kind != b->kind || a->food != b->food || a->all != b->all || a->rows->len != b->rows->len
      || g_strcmp0 (a->subject, b->subject) != 0 || g_strcmp0 (a->use, b->use) != 0)
    return FALSE;
  for (guint i = 0; i < a->rows->len; i++)
    if (a->rows->pdata[i] != b->rows->pdata[i])
      return FALSE;
  return TRUE;
}

gboolean
stead_check_plan_equal (const SteadCheckPlan *a,
                        const SteadCheckPlan *b)
{
  g_return_val_if_fail (a != NULL && b != NULL, FALSE);

  if (a->lines->len != b->lines->len || a->stops->len != b->stops->len || a->n_foods != b->n_foods)
    return FALSE;
  for (guint i = 0; i < a->lines->len; i++)
    if (!lines_equal (a->lines->pdata[i], b->lines->pdata[i]))
      return FALSE;
  for (guint i = 0; i < a->stops->len; i++)
    {
      const SteadCheckStop *x = a->stops->pdata[i], *y = b->stops->pdata[i];

      if (x->kind != y->kind || x->food != y->food || x->lot != y->lot || x->row != y->row || x->way != y->way)
        return FALSE;
    }
  return memcmp (a->processes, b->processes, a->n_foods * sizeof *a->processes) == 0;
}
