/* stead-skill-dialogs.c - a skill, a try, a thought, a goal, a role and a picture. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-packet-answer.h"
#include "answer/stead-reflect-answer.h"
#include "answer/stead-skill-answer.h"
#include "app/stead-form.h"
#include "app/show/stead-learn-dialogs.h"
#include "app/stead-files.h"
#include "app/stead-picture.h"
#include "store/stead-batch-repo.h"
#include "store/stead-reflection-repo.h"
#include "store/stead-shot-repo.h"

/* Questions are asked about what happened so many days ago at most. */
#define QUESTION_DAYS 90

/* Rows of the log are offered from so many days ago on. */
#define OFFER_DAYS 120

static SteadDesk *
desk_of (SteadForm *form)
{
  return stead_dialog_get_desk (STEAD_DIALOG (form));
}

static SteadDay
today_of (SteadDesk *desk)
{
  return stead_store_get_today (stead_desk_get_store (desk));
}

/* Texts of a drop-down, NULL-terminated. */
static const char * const *
words_of (GPtrArray *words)
{
  g_ptr_array_add (words, NULL);
  return (const char * const *) words->pdata;
}

/* --- a skill --------------------------------------------------------------------- */

typedef struct
{
  SteadField *code, *words, *area;
  SteadSkill  skill;
} SkillForm;

static gboolean
skill_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  return stead_skill_repo_save (store, &((SkillForm *) data)->skill, error);
}

static gboolean
skill_save (SteadForm  *form,
            gpointer    data,
            GError    **error)
{
  SkillForm *fields = data;

  fields->skill = (SteadSkill) { .code = (char *) stead_field_get_text (fields->code),
                                 .words = (char *) stead_field_get_text (fields->words),
                                 .area = (char *) stead_field_get_text (fields->area), .retired_on = STEAD_DAY_NONE };
  return stead_form_act (form, _("a skill"), skill_act, fields, error);
}

void
stead_skill_dialog_show (GtkWidget *parent,
                         SteadDesk *desk)
{
  SkillForm *fields = g_new0 (SkillForm, 1);
  SteadForm *form = stead_form_new (_("Skill"), _("Save skill"), NULL, skill_save, NULL, fields, g_free);

  fields->words = stead_form_add (form, desk, _("The skill, in the school's words"), STEAD_FIELD_TEXT);
  fields->code = stead_form_add (form, desk, _("Code (may be left out)"), STEAD_FIELD_TEXT);
  fields->area = stead_form_add (form, desk, _("Area (may be left out)"), STEAD_FIELD_TEXT);
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

/* --- a try -------------------------------------------------------------------------- */

typedef struct
{
  GPtrArray   *rows;      /* of SteadSkill */
  GPtrArray   *offers;    /* of SteadEvidence */
  GtkDropDown *skill, *level, *shown;
  SteadField  *day, *note;
  SteadSkillTry try_;
  const SteadEvidence *evidence;   /* (nullable) */
} TryForm;

static void
try_form_free (gpointer data)
{
  TryForm *form = data;

  g_ptr_array_unref (form->rows);
  g_ptr_array_unref (form->offers);
  g_free (form);
}

static gboolean
try_act (SteadStore  *store,
         gpointer     data,
         GError     **error)
{
  TryForm *form = data;

  return stead_skill_repo_save_try (store, &form->try_, error) &&
         (form->evidence == NULL || stead_skill_repo_add_evidence (store, form->try_.id, form->evidence->what,
                                                                   form->evidence->row_id, error));
}

static gboolean
try_save (SteadForm  *form,
          gpointer    data,
          GError    **error)
{
  TryForm *fields = data;
  guint skill = gtk_drop_down_get_selected (fields->skill);
  guint shown = gtk_drop_down_get_selected (fields->shown);

  if (!stead_field_read_day (fields->day, today_of (desk_of (form)), &fields->try_.day))
    return FALSE;
  fields->try_.id = 0;
  fields->try_.skill_id = skill < fields->rows->len ? ((SteadSkill *) fields->rows->pdata[skill])->id : 0;
  fields->try_.level = (SteadSkillLevel) (gtk_drop_down_get_selected (fields->level) + 1);
  fields->try_.note = (char *) stead_field_get_text (fields->note);
  fields->evidence = shown > 0 && shown <= fields->offers->len ? fields->offers->pdata[shown - 1] : NULL;
  return stead_form_act (form, _("a try of a skill"), try_act, fields, error);
}

void
stead_try_dialog_show (GtkWidget *parent,
                       SteadDesk *desk,
                       gint64     person_id,
                       gint64     skill_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadDay today = today_of (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) skills = g_ptr_array_new ();
  g_autoptr(GPtrArray) levels = g_ptr_array_new ();
  g_autoptr(GPtrArray) shown = g_ptr_array_new_with_free_func (g_free);
  TryForm *fields;
  SteadForm *form;
  guint chosen = 0;

  fields = g_new0 (TryForm, 1);
  fields->rows = stead_skill_repo_list (store, FALSE, &error);
  fields->offers = fields->rows != NULL
                   ? stead_skill_repo_offer (store, person_id, today - OFFER_DAYS, today, &error) : NULL;
  if (fields->offers == NULL || fields->rows->len == 0)
    {
      stead_desk_say (desk, error != NULL ? error->message : _("Enter a skill of the school's list first."), FALSE);
      g_clear_pointer (&fields->rows, g_ptr_array_unref);
      g_clear_pointer (&fields->offers, g_ptr_array_unref);
      g_free (fields);
      return;
    }
  fields->try_.person_id = person_id;
  for (guint i = 0; i < fields->rows->len; i++)
    {
      const SteadSkill *skill = fields->rows->pdata[i];

      g_ptr_array_add (skills, skill->words);
      chosen = skill->id == skill_id ? i : chosen;
    }
  for (int level = STEAD_SKILL_SAW; level <= STEAD_SKILL_SHOWS; level++)
    g_ptr_array_add (levels, (gpointer) stead_skill_level_text (level));
  g_ptr_array_add (shown, g_strdup (C_("row of the log", "Nothing yet")));
  for (guint i = 0; i < fields->offers->len; i++)
    g_ptr_array_add (shown, stead_evidence_text (fields->offers->pdata[i], stead_desk_get_farm (desk)));
  form = stead_form_new (_("Try of a skill"), _("Save try"), NULL, try_save, NULL, fields, try_form_free);
  fields->skill = stead_form_add_choice (form, _("Skill"), words_of (skills), chosen);
  fields->level = stead_form_add_choice (form, _("How well"), words_of (levels), 0);
  fields->shown = stead_form_add_choice (form, _("Shown by"), words_of (shown), 0);
  fields->day = stead_form_add (form, desk, _("Day"), STEAD_FIELD_DAY);
  fields->note = stead_form_add (form, desk, _("Note (may be left out)"), STEAD_FIELD_TEXT);
  stead_field_show_day (fields->day, today);
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

/* --- a thought ------------------------------------------------------------------------ */

typedef struct
{
  GPtrArray      *questions;   /* of SteadReflectQuestion, those that are open */
  GtkDropDown    *question, *shown;
  SteadField     *text;
  SteadReflection thought;
} ThoughtForm;

static void
thought_form_free (gpointer data)
{
  g_ptr_array_unref (((ThoughtForm *) data)->questions);
  g_free (data);
}

static gboolean
thought_act (SteadStore  *store,
             gpointer     data,
             GError     **error)
{
  return stead_reflection_repo_save (store, &((ThoughtForm *) data)->thought, error);
}

static gboolean
thought_save (SteadForm  *form,
              gpointer    data,
              GError    **error)
{
  ThoughtForm *fields = data;
  guint chosen = gtk_drop_down_get_selected (fields->question);
  const SteadReflectQuestion *question = chosen > 0 && chosen <= fields->questions->len
                                         ? fields->questions->pdata[chosen - 1] : NULL;

  fields->thought.day = today_of (desk_of (form));
  fields->thought.text = (char *) stead_field_get_text (fields->text);
  fields->thought.is_shown = gtk_drop_down_get_selected (fields->shown) == 1;
  fields->thought.question = question != NULL ? question->text : NULL;
  fields->thought.batch_id = question != NULL ? question->batch_id : 0;
  fields->thought.sale_id = question != NULL ? question->sale_id : 0;
  return stead_form_act (form, _("a thought"), thought_act, fields, error);
}

void
stead_thought_dialog_show (GtkWidget *parent,
                           SteadDesk *desk,
                           gint64     person_id)
{
  const char *shown[] = { C_("whether a thought is in the packet", "No"), C_("whether a thought is in the packet", "Yes"),
                          NULL };
  SteadDay today = today_of (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadReflectAnswer) answer = stead_reflect_answer_new (stead_desk_get_store (desk), person_id,
                                                                   today - QUESTION_DAYS, today, &error);
  g_autoptr(GPtrArray) words = g_ptr_array_new ();
  ThoughtForm *fields;
  SteadForm *form;

  if (answer == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  fields = g_new0 (ThoughtForm, 1);
  fields->questions = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_reflect_question_free);
  g_ptr_array_add (words, (gpointer) _("A thought of my own"));
  while (answer->questions->len > 0)
    {
      SteadReflectQuestion *question = g_ptr_array_steal_index (answer->questions, 0);

      if (question->is_answered)
        {
          stead_reflect_question_free (question);
          continue;
        }
      g_ptr_array_add (fields->questions, question);
      g_ptr_array_add (words, question->text);
    }
  fields->thought.person_id = person_id;
  form = stead_form_new (_("Thought"), _("Save thought"), NULL, thought_save, NULL, fields, thought_form_free);
  fields->question = stead_form_add_choice (form, _("Question"), words_of (words), fields->questions->len > 0);
  fields->text = stead_form_add (form, desk, _("What do you think about it?"), STEAD_FIELD_TEXT);
  fields->shown = stead_form_add_choice (form, _("Show it in the packet"), shown, 1);
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

/* --- a goal ------------------------------------------------------------------------------ */

typedef struct
{
  SteadField *words, *due, *result;
  SteadGoal   goal;
} GoalForm;

static gboolean
goal_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_goal_repo_save (store, &((GoalForm *) data)->goal, error);
}

static gboolean
goal_save (SteadForm  *form,
           gpointer    data,
           GError    **error)
{
  GoalForm *fields = data;

  if (!stead_field_read_day (fields->due, STEAD_DAY_NONE, &fields->goal.due_on))
    return FALSE;
  fields->goal.set_on = today_of (desk_of (form));
  fields->goal.reached_on = STEAD_DAY_NONE;
  fields->goal.words = (char *) stead_field_get_text (fields->words);
  fields->goal.result = (char *) stead_field_get_text (fields->result);
  return stead_form_act (form, _("a goal"), goal_act, fields, error);
}

void
stead_goal_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     person_id)
{
  GoalForm *fields = g_new0 (GoalForm, 1);
  SteadForm *form = stead_form_new (_("Goal"), _("Save goal"), NULL, goal_save, NULL, fields, g_free);

  fields->goal.person_id = person_id;
  fields->words = stead_form_add (form, desk, _("What is to be reached"), STEAD_FIELD_TEXT);
  fields->due = stead_form_add (form, desk, _("By which day (may be left out)"), STEAD_FIELD_DAY);
  fields->result = stead_form_add (form, desk, _("Result (may be left out)"), STEAD_FIELD_TEXT);
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

/* --- a role or a service --------------------------------------------------------------------- */

typedef struct
{
  GtkDropDown   *kind;
  SteadField    *words, *from, *to;
  SteadRoleHeld  role;
} RoleForm;

static gboolean
role_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_role_held_repo_save (store, &((RoleForm *) data)->role, error);
}

static gboolean
role_save (SteadForm  *form,
           gpointer    data,
           GError    **error)
{
  RoleForm *fields = data;
  gboolean good = stead_field_read_day (fields->from, today_of (desk_of (form)), &fields->role.from_on);

  good &= stead_field_read_day (fields->to, STEAD_DAY_NONE, &fields->role.to_on);
  if (!good)
    return FALSE;
  fields->role.is_service = gtk_drop_down_get_selected (fields->kind) == 1;
  fields->role.words = (char *) stead_field_get_text (fields->words);
  return stead_form_act (form, _("a role or service"), role_act, fields, error);
}

void
stead_role_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     person_id)
{
  const char *kinds[] = { C_("kind of role", "role"), C_("kind of role", "service"), NULL };
  RoleForm *fields = g_new0 (RoleForm, 1);
  SteadForm *form = stead_form_new (_("Role or service"), _("Save role"), NULL, role_save, NULL, fields, g_free);

  fields->role.person_id = person_id;
  fields->words = stead_form_add (form, desk, _("What it was"), STEAD_FIELD_TEXT);
  fields->kind = stead_form_add_choice (form, _("Kind"), kinds, 0);
  fields->from = stead_form_add (form, desk, _("From"), STEAD_FIELD_DAY);
  fields->to = stead_form_add (form, desk, _("To (may be left out)"), STEAD_FIELD_DAY);
  stead_field_show_day (fields->from, today_of (desk));
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

/* --- a picture ---------------------------------------------------------------------------------- */

typedef struct
{
  SteadPicture *picture;
  GPtrArray    *people;     /* of SteadPerson */
  GtkDropDown  *other;
  SteadField   *caption;
  SteadShot     shot;
} ShotForm;

static void
shot_form_free (gpointer data)
{
  ShotForm *form = data;

  stead_picture_free (form->picture);
  g_ptr_array_unref (form->people);
  g_clear_pointer (&form->shot.people, g_array_unref);
  g_free (form);
}

static gboolean
shot_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  ShotForm *form = data;

  form->shot.picture_id = stead_picture_repo_add (store, form->picture->jpeg, form->picture->width,
                                                  form->picture->height, error);
  return form->shot.picture_id != 0 && stead_shot_repo_save (store, &form->shot, error);
}

static gboolean
shot_save (SteadForm  *form,
           gpointer    data,
           GError    **error)
{
  ShotForm *fields = data;
  guint other = gtk_drop_down_get_selected (fields->other);

  g_clear_pointer (&fields->shot.people, g_array_unref);
  fields->shot.people = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_array_append_val (fields->shot.people, fields->shot.person_id);
  if (other > 0 && other <= fields->people->len)
    g_array_append_val (fields->shot.people, ((SteadPerson *) fields->people->pdata[other - 1])->id);
  fields->shot.id = 0;
  fields->shot.day = today_of (desk_of (form));
  fields->shot.caption = (char *) stead_field_get_text (fields->caption);
  return stead_form_act (form, _("a picture"), shot_act, fields, error);
}

typedef struct
{
  GtkWidget *parent;
  SteadDesk *desk;
  gint64     person_id;
} ShotWish;

static void
shot_chosen_cb (const char *path,
                gpointer    data)
{
  g_autofree ShotWish *wish = data;
  g_autoptr(GtkWidget) parent = wish->parent;
  g_autoptr(SteadDesk) desk = wish->desk;
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPicture) picture = path != NULL ? stead_picture_read (path, &error) : NULL;
  g_autoptr(GPtrArray) people = NULL;
  g_autoptr(GPtrArray) names = g_ptr_array_new ();
  ShotForm *fields;
  SteadForm *form;

  if (path == NULL)
    return;
  if (picture == NULL || (people = stead_packet_people (stead_desk_get_store (desk), &error)) == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  fields = g_new0 (ShotForm, 1);
  fields->picture = g_steal_pointer (&picture);
  fields->people = g_steal_pointer (&people);
  fields->shot.person_id = wish->person_id;
  g_ptr_array_add (names, (gpointer) C_("who is on a picture", "Nobody else"));
  for (guint i = 0; i < fields->people->len; i++)
    g_ptr_array_add (names, ((SteadPerson *) fields->people->pdata[i])->name);
  form = stead_form_new (_("Picture"), _("Save picture"), NULL, shot_save, NULL, fields, shot_form_free);
  fields->caption = stead_form_add (form, desk, _("What the picture shows"), STEAD_FIELD_TEXT);
  fields->other = stead_form_add_choice (form, _("Who else is on it"), words_of (names), 0);
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

void
stead_shot_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     person_id)
{
  ShotWish *wish = g_new0 (ShotWish, 1);

  wish->parent = g_object_ref (parent);
  wish->desk = g_object_ref (desk);
  wish->person_id = person_id;
  stead_files_open (parent, _("Choose a picture"), NULL, NULL, shot_chosen_cb, wish);
}
