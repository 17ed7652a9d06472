/* stead-journal-answer.c - "What did this person set out to do, take on, think and show?" */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-journal-answer.h"
#include "answer/stead-words-private.h"
#include "store/stead-people-repo.h"
#include "store/stead-reflection-repo.h"
#include "store/stead-shot-repo.h"

static void
row_free (gpointer data)
{
  SteadJournalRow *row = data;

  g_free (row->name);
  g_free (row->text);
  g_free (row->state);
  g_free (row);
}

void
stead_journal_answer_free (SteadJournalAnswer *self)
{
  if (self == NULL)
    return;
  g_free (self->name);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self);
}

/* @state: (transfer full) */
static void
add_row (SteadJournalAnswer *self,
         SteadJournalKind    kind,
         gint64              id,
         SteadDay            day,
         const char         *name,
         const char         *text,
         char               *state)
{
  SteadJournalRow *row = g_new0 (SteadJournalRow, 1);

  row->kind = kind;
  row->id = id;
  row->day = day;
  row->name = g_strdup (name);
  row->text = g_strdelimit (g_strdup (text), "\n\r\t", ' ');
  row->state = state;
  g_ptr_array_add (self->rows, row);
}

/* --- goals, roles --------------------------------------------------------------- */

static char *
goal_state (const SteadGoal *goal,
            SteadDay         today)
{
  g_autofree char *day = NULL;

  if (goal->reached_on != STEAD_DAY_NONE)
    {
      day = stead_day_format (goal->reached_on, STEAD_DAY_STYLE_MEDIUM);
      return g_strdup_printf (C_("state of a goal", "reached on %s"), day);
    }
  if (goal->due_on == STEAD_DAY_NONE)
    return g_strdup (C_("goal", "under way"));
  day = stead_day_format (goal->due_on, STEAD_DAY_STYLE_MEDIUM);
  return g_strdup_printf (goal->due_on < today ? C_("state of a goal", "was due on %s") : C_("state of a goal", "due on %s"),
                          day);
}

static gboolean
add_goals (SteadStore          *store,
           SteadJournalAnswer  *self,
           gint64               person_id,
           GError             **error)
{
  g_autoptr(GPtrArray) goals = stead_goal_repo_list (store, person_id, error);

  for (guint i = 0; goals != NULL && i < goals->len; i++)
    {
      const SteadGoal *goal = goals->pdata[i];

      self->n_goals++;
      self->n_reached += goal->reached_on != STEAD_DAY_NONE;
      add_row (self, STEAD_JOURNAL_GOAL, goal->id, goal->set_on, C_("kind of entry", "Goal"), goal->words,
               goal_state (goal, stead_store_get_today (store)));
    }
  return goals != NULL;
}

static char *
role_state (const SteadRoleHeld *role)
{
  g_autofree char *day = NULL;

  if (role->to_on == STEAD_DAY_NONE)
    return g_strdup (C_("state of a role", "still held"));
  if (role->to_on == role->from_on)
    return NULL;
  day = stead_day_format (role->to_on, STEAD_DAY_STYLE_MEDIUM);
  return g_strdup_printf (C_("state of a role", "until %s"), day);
}

static gboolean
add_roles (SteadStore          *store,
           SteadJournalAnswer  *self,
           gint64               person_id,
           GError             **error)
{
  g_autoptr(GPtrArray) roles = stead_role_held_repo_list (store, person_id, error);

  for (guint i = 0; roles != NULL && i < roles->len; i++)
    {
      const SteadRoleHeld *role = roles->pdata[i];

      self->n_roles++;
      add_row (self, STEAD_JOURNAL_ROLE, role->id, role->from_on,
               role->is_service ? C_("kind of entry", "Service") : C_("kind of entry", "Role"), role->words,
               role_state (role));
    }
  return roles != NULL;
}

/* --- thoughts, pictures ------------------------------------------------------------ */

static gboolean
add_thoughts (SteadStore          *store,
              SteadJournalAnswer  *self,
              gint64               person_id,
              GError             **error)
{
  g_autoptr(GPtrArray) thoughts = stead_reflection_repo_list (store, person_id, error);

  for (guint i = 0; thoughts != NULL && i < thoughts->len; i++)
    {
      const SteadReflection *thought = thoughts->pdata[i];

      self->n_thoughts++;
      self->n_chosen += thought->is_shown;
      add_row (self, STEAD_JOURNAL_THOUGHT, thought->id, thought->day, C_("kind of entry", "Thought"), thought->text,
               g_strdup (thought->is_shown ? C_("state of a thought", "in the packet")
                                           : C_("state of a thought", "kept out of the packet")));
    }
  return thoughts != NULL;
}

static char *
picture_state (const SteadShot *shot)
{
  g_autoptr(GPtrArray) names = NULL;
  g_autofree char *list = NULL;

  if (stead_shot_may_show (shot))
    return g_strdup (C_("state of a picture", "may be shown"));
  names = g_ptr_array_new ();
  for (guint i = 0; i < shot->unasked->len; i++)
    g_ptr_array_add (names, shot->unasked->pdata[i]);
  g_ptr_array_add (names, NULL);
  list = stead_words_list ((const char * const *) names->pdata);
  /* Translators: %s is one name or more. */
  return g_strdup_printf (C_("state of a picture", "no consent of %s"), list);
}

static gboolean
add_pictures (SteadStore          *store,
              SteadJournalAnswer  *self,
              gint64               person_id,
              GError             **error)
{
  g_autoptr(GPtrArray) shots = stead_shot_repo_list (store, person_id, error);

  for (guint i = 0; shots != NULL && i < shots->len; i++)
    {
      const SteadShot *shot = shots->pdata[i];

      self->n_pictures++;
      self->n_agreed += stead_shot_may_show (shot);
      add_row (self, STEAD_JOURNAL_PICTURE, shot->id, shot->day, C_("kind of entry", "Picture"), shot->caption,
               picture_state (shot));
    }
  return shots != NULL;
}

/* --- all ------------------------------------------------------------------------------ */

static int
compare_rows (gconstpointer a,
              gconstpointer b)
{
  const SteadJournalRow *one = *(SteadJournalRow * const *) a, *other = *(SteadJournalRow * const *) b;

  if (one->day != other->day)
    return one->day < other->day ? 1 : -1;
  if (one->kind != other->kind)
    return one->kind < other->kind ? -1 : 1;
  return (one->id < other->id) - (one->id > other->id);
}

static char *
say (const SteadJournalAnswer *self)
{
  g_autoptr(GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *name = g_markup_escape_text (self->name, -1);
  g_autofree char *all = NULL;

  /* Translators: a part and the whole; so the two below. */
  if (self->n_goals > 0)
    g_ptr_array_add (parts, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "reached <b>%1$d of %2$d</b> goal",
                                                          "reached <b>%1$d of %2$d</b> goals", (gulong) self->n_goals),
                                             self->n_reached, self->n_goals));
  if (self->n_thoughts > 0)
    g_ptr_array_add (parts, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "chose <b>%1$d of %2$d</b> thought for the packet",
                                                          "chose <b>%1$d of %2$d</b> thoughts for the packet",
                                                          (gulong) self->n_thoughts), self->n_chosen, self->n_thoughts));
  if (self->n_pictures > 0)
    g_ptr_array_add (parts, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "may show <b>%1$d of %2$d</b> picture",
                                                          "may show <b>%1$d of %2$d</b> pictures",
                                                          (gulong) self->n_pictures), self->n_agreed, self->n_pictures));
  if (parts->len == 0)
    return g_strdup_printf (self->n_roles > 0 ? _("%s has no goals, thoughts or pictures yet.")
                                              : _("%s has no goals, roles, thoughts or pictures yet."), name);
  g_ptr_array_add (parts, NULL);
  all = stead_words_list ((const char * const *) parts->pdata);
  /* Translators: a name; a list: "reached 1 of 2 goals and chose 1 of 2 thoughts for the packet". */
  return g_strdup_printf (C_("journal", "%1$s %2$s."), name, all);
}

static char *
name_of (SteadStore  *store,
         gint64       person_id,
         GError     **error)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, error);

  for (guint i = 0; people != NULL && i < people->len; i++)
    if (((const SteadPerson *) people->pdata[i])->id == person_id)
      return g_strdup (((const SteadPerson *) people->pdata[i])->name);
  if (people != NULL)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("There is no such person in the farm. Choose another."));
  return NULL;
}

SteadJournalAnswer *
stead_journal_answer_new (SteadStore  *store,
                          gint64       person_id,
                          GError     **error)
{
  g_autoptr(SteadJournalAnswer) self = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self = g_new0 (SteadJournalAnswer, 1);
  self->rows = g_ptr_array_new_with_free_func (row_free);
  self->name = name_of (store, person_id, error);
  if (self->name == NULL || !add_goals (store, self, person_id, error) || !add_roles (store, self, person_id, error) ||
      !add_thoughts (store, self, person_id, error) || !add_pictures (store, self, person_id, error))
    return NULL;
  g_ptr_array_sort (self->rows, compare_rows);
  self->sentence = say (self);
  return g_steal_pointer (&self);
}
