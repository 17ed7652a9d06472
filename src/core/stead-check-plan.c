/* stead-check-plan.c - what must be asked, checked and stopped: the plan and its parts. */
#include "config.h"

#include "core/stead-check-private.h"

#include <math.h>
#include <string.h>

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
