/* stead-check-plan-answer.c - "What must be checked, against what, and what must not be sold?" */
#include "config.h"

#include "answer/stead-check-plan-private.h"
#include "answer/stead-limits.h"

#include <glib/gi18n-lib.h>

static void
said_free (SteadCheckSaid *said)
{
  g_free (said->key);
  g_free (said->food);
  g_free (said->text);
  g_free (said->limit);
  g_free (said->own);
  g_free (said->reason);
  g_free (said->source);
  g_free (said->tool);
  g_free (said->often);
  g_free (said->who);
  g_free (said);
}

static void
asked_free (SteadCheckAsked *asked)
{
  g_free (asked->food);
  g_free (asked->text);
  g_ptr_array_unref (asked->answers);
  g_free (asked);
}

static void
stopped_free (SteadCheckStopped *stopped)
{
  g_free (stopped->food);
  g_free (stopped->text);
  g_free (stopped->way);
  g_free (stopped->source);
  g_free (stopped);
}

static void
drop_words (SteadCheckPlanAnswer *self)
{
  g_clear_pointer (&self->questions, g_ptr_array_unref);
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_clear_pointer (&self->stops, g_ptr_array_unref);
  g_clear_pointer (&self->processes, g_ptr_array_unref);
  g_clear_pointer (&self->sentence, g_free);
  g_clear_pointer (&self->caution, g_free);
}

void
stead_check_plan_answer_free (SteadCheckPlanAnswer *self)
{
  if (self == NULL)
    return;
  drop_words (self);
  /* The plan points into the table. */
  g_clear_pointer (&self->plan, stead_check_plan_free);
  g_clear_pointer (&self->table, stead_limit_table_free);
  g_clear_pointer (&self->menu, stead_check_menu_free);
  g_clear_pointer (&self->farm, stead_farm_free);
  g_free (self);
}

static const SteadCheckFood *
food_at (const SteadCheckPlanAnswer *self,
         int                         food)
{
  return food >= 0 ? &g_array_index (self->menu->foods, SteadCheckFood, food) : NULL;
}

static char *
name_of (const SteadCheckPlanAnswer *self,
         int                         food)
{
  return food >= 0 ? g_strdup (food_at (self, food)->name) : NULL;
}

/* --- the parts ------------------------------------------------------------------------- */

static SteadCheckSaid *
say_line (const SteadCheckPlanAnswer *self,
          const SteadCheckLine       *line)
{
  SteadCheckSaid *said = g_new0 (SteadCheckSaid, 1);

  said->line = line;
  said->food = name_of (self, line->food);
  said->key = g_strdup_printf ("%s:%s:%s", stead_check_line_kind_id (line->kind),
                               line->subject != NULL ? line->subject : "", said->food != NULL ? said->food : "");
  said->text = stead_check_line_text (line, self->farm);
  said->limit = line->measure != NULL ? stead_check_limit_text (line->rows, line->all, self->farm->units) : NULL;
  said->own = stead_check_own_text (line, self->farm->units);
  said->reason = stead_check_reason_text (line);
  said->source = stead_check_sources_text (line->rows);
  said->tool = stead_check_tool_text (line);
  said->often = stead_check_often_text (line);
  said->who = stead_check_who_text (line);
  return said;
}

static SteadCheckAsked *
say_question (const SteadCheckPlanAnswer *self,
              const SteadCheckQuestion   *question)
{
  SteadCheckAsked *asked = g_new0 (SteadCheckAsked, 1);

  asked->question = question;
  asked->food = name_of (self, question->food);
  asked->text = stead_check_question_text (question->key);
  asked->answers = g_ptr_array_new_with_free_func (g_free);
  for (gsize i = 0; question->words[i] != NULL; i++)
    g_ptr_array_add (asked->answers, stead_check_answer_text (question->key, question->words[i]));
  return asked;
}

static SteadCheckStopped *
say_stop (const SteadCheckPlanAnswer *self,
          const SteadCheckStop       *stop)
{
  SteadCheckStopped *stopped = g_new0 (SteadCheckStopped, 1);

  stopped->stop = stop;
  stopped->food = name_of (self, stop->food);
  stopped->text = stead_check_stop_text (stop, food_at (self, stop->food), self->farm->units);
  stopped->way = stead_check_way_text (stop->way);
  stopped->source = stead_limits_source (stop->row);
  return stopped;
}

static gboolean
is_made (const SteadCheckPlanAnswer *self,
         int                         food)
{
  for (guint i = 0; i < self->plan->lines->len; i++)
    {
      const SteadCheckLine *line = self->plan->lines->pdata[i];

      if (line->food == food && line->kind == STEAD_CHECK_LINE_LEFTOVERS)
        return TRUE;
    }
  return FALSE;
}

static char *
process_text (const SteadCheckPlanAnswer *self,
              int                         food)
{
  if (!is_made (self, food))
    return g_strdup ("");
  switch (self->plan->processes[food])
    {
    case STEAD_PROCESS_NO_COOK:
      return g_strdup (_("No cooking here: cold and clean hands are all that hold germs down."));
    case STEAD_PROCESS_SAME_DAY:
      return g_strdup (_("Cooked and eaten the same day: it passes through lukewarm once."));
    case STEAD_PROCESS_COMPLEX:
      return g_strdup (_("Cooked, cooled and kept: it passes through lukewarm more than once, and each time germs can "
                         "grow."));
    default:
      g_return_val_if_reached (g_strdup (""));
    }
}

/* --- the whole --------------------------------------------------------------------------- */

static char *
checks_text (const SteadCheckPlanAnswer *self)
{
  guint lines = self->plan->lines->len, foods = self->menu->foods->len;
  g_autofree char *food = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u food", "%u foods", foods), foods);

  /* Translators: %2$s is "2 foods". */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%1$u check for %2$s.", "%1$u checks for %2$s.", lines), lines,
                          food);
}

static char *
sentence_of (const SteadCheckPlanAnswer *self)
{
  guint stops = self->plan->stops->len, open = self->plan->n_open;
  GString *out = g_string_new (NULL);
  g_autofree char *checks = checks_text (self);

  if (stops > 0)
    {
      g_string_append_printf (out, g_dngettext (GETTEXT_PACKAGE, "%u thing cannot be sold as planned.",
                                                "%u things cannot be sold as planned.", stops), stops);
      g_string_append_c (out, ' ');
    }
  g_string_append (out, checks);
  if (open > 0)
    {
      g_string_append_c (out, ' ');
      g_string_append_printf (out, g_dngettext (GETTEXT_PACKAGE, "%u question is open; until then the stricter limit "
                                                "stands.", "%u questions are open; until then the stricter limits stand.",
                                                open), open);
    }
  return g_string_free (out, FALSE);
}

static SteadCheckMenu *
menu_of (SteadStore             *store,
         const SteadCheckOrder  *order,
         GError                **error)
{
  switch (order->kind)
    {
    case STEAD_CHECK_ORDER_RECIPE: return stead_check_menu_new_recipe (store, order->id, error);
    case STEAD_CHECK_ORDER_KITCHEN: return stead_check_menu_new_kitchen (store, order->id, error);
    case STEAD_CHECK_ORDER_SALE_DAY: return stead_check_menu_new_sale_day (store, order->id, error);
    case STEAD_CHECK_ORDER_MENU:
    default: return stead_check_menu_new_text (store, order->text != NULL ? order->text : "", error);
    }
}

void
stead_check_plan_answer_say (SteadCheckPlanAnswer *self)
{
  drop_words (self);
  self->questions = g_ptr_array_new_with_free_func ((GDestroyNotify) asked_free);
  self->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) said_free);
  self->stops = g_ptr_array_new_with_free_func ((GDestroyNotify) stopped_free);
  self->processes = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < self->plan->questions->len; i++)
    g_ptr_array_add (self->questions, say_question (self, self->plan->questions->pdata[i]));
  for (guint i = 0; i < self->plan->lines->len; i++)
    g_ptr_array_add (self->lines, say_line (self, self->plan->lines->pdata[i]));
  for (guint i = 0; i < self->plan->stops->len; i++)
    g_ptr_array_add (self->stops, say_stop (self, self->plan->stops->pdata[i]));
  for (guint i = 0; i < self->menu->foods->len; i++)
    g_ptr_array_add (self->processes, process_text (self, (int) i));
  self->sentence = sentence_of (self);
  self->caution = g_strdup (_("Your local health department decides first: these limits are those of a model code, and yours "
                              "may be older, newer or stricter. The list names what to check and against what. Met limits "
                              "do not prove that food is safe."));
}

SteadCheckPlanAnswer *
stead_check_plan_answer_new (SteadStore             *store,
                             const SteadCheckOrder  *order,
                             GError                **error)
{
  g_autoptr(SteadCheckPlanAnswer) self = g_new0 (SteadCheckPlanAnswer, 1);
  SteadCheckCase given = { 0 };

  g_return_val_if_fail (STEAD_IS_STORE (store) && order != NULL, NULL);
  self->farm = stead_farm_repo_get (store, error);
  self->table = self->farm != NULL ? stead_limits_new (order->local, order->n_local, order->edition, error) : NULL;
  self->menu = self->table != NULL ? menu_of (store, order, error) : NULL;
  if (self->menu == NULL)
    return NULL;
  given.foods = (const SteadCheckFood *) (void *) self->menu->foods->data;
  given.n_foods = self->menu->foods->len;
  given.answers = order->answers;
  given.n_answers = order->n_answers;
  given.day = order->day != STEAD_DAY_NONE ? order->day : stead_store_get_today (store);
  given.cooling = order->cooling;
  given.state = order->state;
  self->plan = stead_check_plan_new (self->table, &given);
  stead_check_plan_answer_say (self);
  return g_steal_pointer (&self);
}
