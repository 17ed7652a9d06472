/* stead-journal-dialogs.c - a thought, a goal, a role or a service: new, or to be changed. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-reflect-answer.h"
#include "app/show/stead-learn-dialogs.h"
#include "app/stead-form.h"
#include "app/stead-ui.h"
#include "store/stead-reflection-repo.h"
#include "store/stead-store-watch.h"

/* Questions are asked about what happened so many days ago at most. */
#define QUESTION_DAYS 90

static SteadDay
today_of (SteadForm *form)
{
  return stead_store_get_today (stead_form_get_store (form));
}

typedef gboolean (*DropFunc) (SteadStore *store, gint64 id, GError **error);

typedef struct
{
  DropFunc drop;
  gint64   id;
} Drop;

static gboolean
drop_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  const Drop *drop = data;

  return drop->drop (store, drop->id, error);
}

/* --- a thought ------------------------------------------------------------------------ */

typedef struct
{
  SteadReflection *old;         /* (nullable): as it is saved */
  GPtrArray       *questions;   /* of SteadReflectQuestion, those that are open */
  GtkDropDown     *question;    /* (nullable): what is saved keeps its question */
  GtkTextView     *text;
  GtkCheckButton  *shown;
  SteadReflection  thought;
} ThoughtForm;

static void
thought_form_free (gpointer data)
{
  ThoughtForm *form = data;

  g_clear_pointer (&form->old, stead_reflection_free);
  g_ptr_array_unref (form->questions);
  g_free (form);
}

static gboolean
thought_act (SteadStore  *store,
             gpointer     data,
             GError     **error)
{
  ThoughtForm *form = data;

  stead_store_watch_id (store, &form->thought.id);
  return stead_reflection_repo_save (store, &form->thought, error);
}

static void
take_question (ThoughtForm *fields)
{
  guint chosen = fields->question != NULL ? gtk_drop_down_get_selected (fields->question) : 0;
  const SteadReflectQuestion *question = chosen > 0 && chosen <= fields->questions->len
                                         ? fields->questions->pdata[chosen - 1] : NULL;

  if (fields->old != NULL)
    return;
  fields->thought.question = question != NULL ? question->text : NULL;
  fields->thought.batch_id = question != NULL ? question->batch_id : 0;
  fields->thought.sale_id = question != NULL ? question->sale_id : 0;
}

static gboolean
thought_save (SteadForm  *form,
              gpointer    data,
              GError    **error)
{
  ThoughtForm *fields = data;
  g_autofree char *text = stead_ui_read_lines (fields->text);
  gint64 person_id = fields->thought.person_id;
  gboolean good;

  if (fields->old != NULL)
    fields->thought = *fields->old;
  else
    fields->thought = (SteadReflection) { .person_id = person_id, .day = today_of (form) };
  take_question (fields);
  fields->thought.text = text;
  fields->thought.is_shown = gtk_check_button_get_active (fields->shown);
  good = stead_form_act (form, _("a thought"), thought_act, fields, error);
  fields->thought.text = NULL;
  return good;
}

static gboolean
thought_remove (SteadForm  *form,
                gpointer    data,
                GError    **error)
{
  Drop drop = { stead_reflection_repo_drop, ((ThoughtForm *) data)->old->id };

  return stead_form_act (form, _("removing a thought"), drop_act, &drop, error);
}

static gboolean
read_questions (ThoughtForm  *fields,
                SteadStore   *store,
                GError      **error)
{
  SteadDay today = stead_store_get_today (store);
  g_autoptr(SteadReflectAnswer) answer = stead_reflect_answer_new (store, fields->thought.person_id, today - QUESTION_DAYS,
                                                                   today, error);

  while (answer != NULL && answer->questions->len > 0)
    {
      SteadReflectQuestion *question = g_ptr_array_steal_index (answer->questions, 0);

      if (question->is_answered)
        stead_reflect_question_free (question);
      else
        g_ptr_array_add (fields->questions, question);
    }
  return answer != NULL;
}

static void
add_question (ThoughtForm *fields,
              SteadForm   *form)
{
  g_autoptr(GPtrArray) words = g_ptr_array_new ();

  g_ptr_array_add (words, (gpointer) _("A thought of my own"));
  for (guint i = 0; i < fields->questions->len; i++)
    g_ptr_array_add (words, ((SteadReflectQuestion *) fields->questions->pdata[i])->text);
  g_ptr_array_add (words, NULL);
  fields->question = stead_form_add_wide_choice (form, _("Question"), (const char * const *) words->pdata,
                                                 fields->questions->len > 0);
}

void
stead_thought_dialog_show (GtkWidget *parent,
                           SteadDesk *desk,
                           gint64     person_id,
                           gint64     thought_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) thoughts = stead_reflection_repo_list (store, person_id, &error);
  ThoughtForm *fields = g_new0 (ThoughtForm, 1);
  SteadForm *form;

  fields->thought.person_id = person_id;
  fields->questions = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_reflect_question_free);
  for (guint i = 0; thoughts != NULL && i < thoughts->len && fields->old == NULL; i++)
    if (((SteadReflection *) thoughts->pdata[i])->id == thought_id)
      fields->old = g_ptr_array_steal_index (thoughts, i);
  if (thoughts == NULL || (fields->old == NULL && !read_questions (fields, store, &error)))
    {
      stead_desk_say (desk, error->message, FALSE);
      thought_form_free (fields);
      return;
    }
  form = stead_form_new (_("Thought"), _("Save thought"), fields->old != NULL ? _("Remove thought") : NULL, thought_save,
                         thought_remove, fields, thought_form_free);
  if (fields->old == NULL)
    add_question (fields, form);
  else if (fields->old->question != NULL)
    stead_form_add_text (form, fields->old->question, NULL);
  fields->text = stead_form_add_lines (form, _("What do you think about it?"), fields->old != NULL ? fields->old->text : NULL);
  fields->shown = stead_form_add_check (form, _("Show it in the packet"), fields->old == NULL || fields->old->is_shown);
  stead_form_add_text (form, _("Nothing on health, family or discipline belongs here."), "soft");
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (fields->text));
}

/* --- a goal ------------------------------------------------------------------------------ */

typedef struct
{
  SteadGoal  *old;       /* (nullable): as it is saved */
  SteadField *words, *due, *reached, *result;
  SteadGoal   goal;
} GoalForm;

static void
goal_form_free (gpointer data)
{
  g_clear_pointer (&((GoalForm *) data)->old, stead_goal_free);
  g_free (data);
}

static gboolean
goal_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  GoalForm *form = data;

  stead_store_watch_id (store, &form->goal.id);
  return stead_goal_repo_save (store, &form->goal, error);
}

static gboolean
goal_save (SteadForm  *form,
           gpointer    data,
           GError    **error)
{
  GoalForm *fields = data;
  gboolean good = stead_field_read_day (fields->due, STEAD_DAY_NONE, &fields->goal.due_on);

  good &= stead_field_read_day (fields->reached, STEAD_DAY_NONE, &fields->goal.reached_on);
  if (!good)
    return FALSE;
  fields->goal.id = fields->old != NULL ? fields->old->id : 0;
  fields->goal.set_on = fields->old != NULL ? fields->old->set_on : today_of (form);
  fields->goal.words = (char *) stead_field_get_text (fields->words);
  fields->goal.result = (char *) stead_field_get_text (fields->result);
  return stead_form_act (form, _("a goal"), goal_act, fields, error);
}

static gboolean
goal_remove (SteadForm  *form,
             gpointer    data,
             GError    **error)
{
  Drop drop = { stead_goal_repo_drop, ((GoalForm *) data)->old->id };

  return stead_form_act (form, _("removing a goal"), drop_act, &drop, error);
}

static void
show_goal (GoalForm *fields)
{
  stead_field_set_text (fields->words, fields->old->words);
  if (fields->old->due_on != STEAD_DAY_NONE)
    stead_field_show_day (fields->due, fields->old->due_on);
  if (fields->old->reached_on != STEAD_DAY_NONE)
    stead_field_show_day (fields->reached, fields->old->reached_on);
  stead_field_set_text (fields->result, fields->old->result);
}

void
stead_goal_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     person_id,
                        gint64     goal_id)
{
  g_autoptr(GPtrArray) goals = stead_goal_repo_list (stead_desk_get_store (desk), person_id, NULL);
  GoalForm *fields = g_new0 (GoalForm, 1);
  SteadForm *form;

  for (guint i = 0; goals != NULL && i < goals->len && fields->old == NULL; i++)
    if (((SteadGoal *) goals->pdata[i])->id == goal_id)
      fields->old = g_ptr_array_steal_index (goals, i);
  form = stead_form_new (_("Goal"), _("Save goal"), fields->old != NULL ? _("Remove goal") : NULL, goal_save, goal_remove,
                         fields, goal_form_free);
  fields->goal.person_id = person_id;
  fields->words = stead_form_add_wide (form, _("What is to be reached"));
  fields->due = stead_form_add (form, desk, _("By which day (may be left out)"), STEAD_FIELD_DAY);
  fields->result = stead_form_add (form, desk, _("Result (may be left out)"), STEAD_FIELD_TEXT);
  fields->reached = stead_form_add (form, desk, _("Reached on (may be left out)"), STEAD_FIELD_DAY);
  if (fields->old != NULL)
    show_goal (fields);
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

/* --- a role or a service --------------------------------------------------------------------- */

typedef struct
{
  SteadRoleHeld *old;    /* (nullable): as it is saved */
  GtkDropDown   *kind;
  SteadField    *words, *from, *to;
  SteadRoleHeld  role;
} RoleForm;

static void
role_form_free (gpointer data)
{
  g_clear_pointer (&((RoleForm *) data)->old, stead_role_held_free);
  g_free (data);
}

static gboolean
role_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  RoleForm *form = data;

  stead_store_watch_id (store, &form->role.id);
  return stead_role_held_repo_save (store, &form->role, error);
}

static gboolean
role_save (SteadForm  *form,
           gpointer    data,
           GError    **error)
{
  RoleForm *fields = data;
  gboolean good = stead_field_read_day (fields->from, today_of (form), &fields->role.from_on);

  good &= stead_field_read_day (fields->to, STEAD_DAY_NONE, &fields->role.to_on);
  if (!good)
    return FALSE;
  fields->role.id = fields->old != NULL ? fields->old->id : 0;
  fields->role.is_service = gtk_drop_down_get_selected (fields->kind) == 1;
  fields->role.words = (char *) stead_field_get_text (fields->words);
  return stead_form_act (form, _("a role or service"), role_act, fields, error);
}

static gboolean
role_remove (SteadForm  *form,
             gpointer    data,
             GError    **error)
{
  Drop drop = { stead_role_held_repo_drop, ((RoleForm *) data)->old->id };

  return stead_form_act (form, _("removing a role or service"), drop_act, &drop, error);
}

void
stead_role_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     person_id,
                        gint64     role_id)
{
  const char *kinds[] = { C_("kind of role", "role"), C_("kind of role", "service"), NULL };
  g_autoptr(GPtrArray) roles = stead_role_held_repo_list (stead_desk_get_store (desk), person_id, NULL);
  RoleForm *fields = g_new0 (RoleForm, 1);
  SteadForm *form;

  for (guint i = 0; roles != NULL && i < roles->len && fields->old == NULL; i++)
    if (((SteadRoleHeld *) roles->pdata[i])->id == role_id)
      fields->old = g_ptr_array_steal_index (roles, i);
  form = stead_form_new (_("Role or service"), _("Save role"), fields->old != NULL ? _("Remove role") : NULL, role_save,
                         role_remove, fields, role_form_free);
  fields->role.person_id = person_id;
  fields->words = stead_form_add (form, desk, _("What it was"), STEAD_FIELD_TEXT);
  fields->kind = stead_form_add_choice (form, _("Kind"), kinds, fields->old != NULL && fields->old->is_service);
  fields->from = stead_form_add (form, desk, _("From"), STEAD_FIELD_DAY);
  fields->to = stead_form_add (form, desk, _("To (may be left out)"), STEAD_FIELD_DAY);
  stead_field_show_day (fields->from, fields->old != NULL ? fields->old->from_on
                                                          : stead_store_get_today (stead_desk_get_store (desk)));
  if (fields->old != NULL)
    {
      stead_field_set_text (fields->words, fields->old->words);
      if (fields->old->to_on != STEAD_DAY_NONE)
        stead_field_show_day (fields->to, fields->old->to_on);
    }
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}
