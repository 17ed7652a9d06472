/* stead-skill-dialogs.c - a skill of the list, and a try of one. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-skill-answer.h"
#include "app/stead-form.h"
#include "app/show/stead-learn-dialogs.h"
#include "app/show/stead-show-picks.h"
#include "store/stead-store-watch.h"

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
  GPtrArray  *list;                 /* of SteadSkill */
  const SteadSkill *old;            /* (nullable): one of them */
  SteadField *code, *words, *area;
  SteadSkill  skill;
} SkillForm;

static void
skill_form_free (gpointer data)
{
  g_ptr_array_unref (((SkillForm *) data)->list);
  g_free (data);
}

static gboolean
skill_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  SkillForm *form = data;

  stead_store_watch_id (store, &form->skill.id);
  return stead_skill_repo_save (store, &form->skill, error);
}

static gboolean
skill_save (SteadForm  *form,
            gpointer    data,
            GError    **error)
{
  SkillForm *fields = data;

  fields->skill = (SteadSkill) { .id = fields->old != NULL ? fields->old->id : 0,
                                 .code = (char *) stead_field_get_text (fields->code),
                                 .words = (char *) stead_field_get_text (fields->words),
                                 .area = (char *) stead_field_get_text (fields->area),
                                 .retired_on = fields->old != NULL ? fields->old->retired_on : STEAD_DAY_NONE };
  return stead_form_act (form, _("a skill"), skill_act, fields, error);
}

static gboolean
skill_remove_act (SteadStore  *store,
                  gpointer     data,
                  GError     **error)
{
  return stead_skill_repo_remove (store, ((SkillForm *) data)->old->id, error);
}

static gboolean
skill_remove (SteadForm  *form,
              gpointer    data,
              GError    **error)
{
  return stead_form_act (form, _("a skill off the list"), skill_remove_act, data, error);
}

void
stead_skill_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     skill_id)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) list = stead_skill_repo_list (stead_desk_get_store (desk), TRUE, &error);
  SkillForm *fields;
  SteadForm *form;

  if (list == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  fields = g_new0 (SkillForm, 1);
  fields->list = g_steal_pointer (&list);
  for (guint i = 0; i < fields->list->len; i++)
    if (((SteadSkill *) fields->list->pdata[i])->id == skill_id)
      fields->old = fields->list->pdata[i];
  form = stead_form_new (_("Skill"), _("Save skill"), fields->old != NULL ? _("Take off the list") : NULL, skill_save,
                         skill_remove, fields, skill_form_free);
  fields->words = stead_form_add (form, desk, _("The skill, in the school's words"), STEAD_FIELD_TEXT);
  fields->code = stead_form_add (form, desk, _("Code (may be left out)"), STEAD_FIELD_TEXT);
  fields->area = stead_form_add (form, desk, _("Area (may be left out)"), STEAD_FIELD_TEXT);
  if (fields->old != NULL)
    {
      stead_field_set_text (fields->words, fields->old->words);
      stead_field_set_text (fields->code, fields->old->code);
      stead_field_set_text (fields->area, fields->old->area);
    }
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

/* --- a try -------------------------------------------------------------------------- */

typedef struct
{
  GPtrArray   *rows;      /* of SteadSkill */
  GPtrArray   *offers;    /* of SteadEvidence */
  GPtrArray   *proofs;    /* of SteadEvidence: what shows it so far */
  GPtrArray   *kept;      /* of GtkCheckButton, one a proof */
  GtkDropDown *skill, *level, *shown;
  SteadField  *day, *note;
  gint64       try_id;    /* 0: a new one */
  SteadSkillTry try_;
  const SteadEvidence *evidence;   /* (nullable) */
} TryForm;

static void
try_form_free (gpointer data)
{
  TryForm *form = data;

  g_clear_pointer (&form->rows, g_ptr_array_unref);
  g_clear_pointer (&form->offers, g_ptr_array_unref);
  g_clear_pointer (&form->proofs, g_ptr_array_unref);
  g_clear_pointer (&form->kept, g_ptr_array_unref);
  g_free (form);
}

static gboolean
drop_proofs (SteadStore  *store,
             TryForm     *form,
             GError     **error)
{
  for (guint i = 0; i < form->proofs->len; i++)
    {
      const SteadEvidence *proof = form->proofs->pdata[i];

      if (!gtk_check_button_get_active (form->kept->pdata[i]) &&
          !stead_skill_repo_drop_evidence (store, form->try_.id, proof->what, proof->row_id, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
try_act (SteadStore  *store,
         gpointer     data,
         GError     **error)
{
  TryForm *form = data;

  stead_store_watch_id (store, &form->try_.id);
  return stead_skill_repo_save_try (store, &form->try_, error) && drop_proofs (store, form, error) &&
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
  fields->try_.id = fields->try_id;
  fields->try_.skill_id = skill < fields->rows->len ? ((SteadSkill *) fields->rows->pdata[skill])->id : 0;
  fields->try_.level = (SteadSkillLevel) (gtk_drop_down_get_selected (fields->level) + 1);
  fields->try_.note = (char *) stead_field_get_text (fields->note);
  fields->evidence = shown > 0 && shown <= fields->offers->len ? fields->offers->pdata[shown - 1] : NULL;
  return stead_form_act (form, _("a try of a skill"), try_act, fields, error);
}

static gboolean
drop_try_act (SteadStore  *store,
              gpointer     data,
              GError     **error)
{
  return stead_skill_repo_drop_try (store, ((TryForm *) data)->try_id, error);
}

static gboolean
try_remove (SteadForm  *form,
            gpointer    data,
            GError    **error)
{
  return stead_form_act (form, _("taking back a try of a skill"), drop_try_act, data, error);
}

/* (transfer full) (nullable): a new one */
static SteadSkillTry *
find_try (SteadStore *store,
          gint64      person_id,
          gint64      try_id)
{
  g_autoptr(GPtrArray) tries = try_id != 0 ? stead_skill_repo_tries (store, person_id, NULL) : NULL;

  for (guint i = 0; tries != NULL && i < tries->len; i++)
    if (((SteadSkillTry *) tries->pdata[i])->id == try_id)
      return g_ptr_array_steal_index (tries, i);
  return NULL;
}

static gboolean
read_try (TryForm     *fields,
          SteadStore  *store,
          SteadDay     today,
          GError     **error)
{
  fields->rows = stead_skill_repo_list (store, fields->try_id != 0, error);
  fields->offers = fields->rows == NULL ? NULL
                   : stead_skill_repo_offer (store, fields->try_.person_id, today - OFFER_DAYS, today, error);
  return fields->offers != NULL;
}

/* What shows the try so far, each with a tick that can be taken away. */
static void
add_proofs (TryForm    *fields,
            SteadForm  *form,
            SteadDesk  *desk)
{
  g_autoptr(GPtrArray) all = fields->try_id == 0 ? NULL
    : stead_skill_repo_evidence (stead_desk_get_store (desk), fields->try_.person_id, NULL);

  fields->proofs = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_evidence_free);
  fields->kept = g_ptr_array_new ();
  for (guint i = 0; all != NULL && i < all->len; i++)
    {
      SteadEvidence *proof = all->pdata[i];
      g_autofree char *text = NULL, *label = NULL;

      if (proof->try_id != fields->try_id)
        continue;
      text = stead_evidence_text (proof, stead_desk_get_farm (desk));
      /* Translators: a row of the log: "Nov 3: 22 eggs". */
      label = g_strdup_printf (_("Shown by: %s"), text);
      g_ptr_array_add (fields->kept, stead_form_add_check (form, label, TRUE));
      g_ptr_array_add (fields->proofs, g_steal_pointer (&all->pdata[i]));
    }
}

/* Offers what the log can show it by. */
static void
add_shown (TryForm   *fields,
           SteadForm *form,
           SteadDesk *desk)
{
  g_autoptr(GPtrArray) shown = g_ptr_array_new_with_free_func (g_free);

  g_ptr_array_add (shown, g_strdup (fields->try_id != 0 ? C_("row of the log", "Nothing more")
                                                        : C_("row of the log", "Nothing yet")));
  for (guint i = 0; i < fields->offers->len; i++)
    g_ptr_array_add (shown, stead_evidence_text (fields->offers->pdata[i], stead_desk_get_farm (desk)));
  fields->shown = stead_form_add_wide_choice (form, _("Shown by"), words_of (shown), 0);
}

static void
add_skills (TryForm   *fields,
            SteadForm *form,
            gint64     skill_id)
{
  g_autoptr(GPtrArray) skills = g_ptr_array_new ();
  guint chosen = 0;

  for (guint i = 0; i < fields->rows->len; i++)
    {
      const SteadSkill *skill = fields->rows->pdata[i];

      g_ptr_array_add (skills, skill->words);
      chosen = skill->id == skill_id ? i : chosen;
    }
  fields->skill = stead_form_add_choice (form, _("Skill"), words_of (skills), chosen);
}

void
stead_try_dialog_show (GtkWidget *parent,
                       SteadDesk *desk,
                       gint64     person_id,
                       gint64     skill_id,
                       gint64     try_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) levels = g_ptr_array_new ();
  g_autoptr(SteadSkillTry) old = find_try (store, person_id, try_id);
  TryForm *fields = g_new0 (TryForm, 1);
  SteadForm *form;

  fields->try_.person_id = person_id;
  fields->try_id = old != NULL ? old->id : 0;
  if (!read_try (fields, store, today_of (desk), &error) || fields->rows->len == 0)
    {
      stead_desk_say (desk, error != NULL ? error->message : _("Enter a skill of the school's list first."), FALSE);
      try_form_free (fields);
      return;
    }
  for (int level = STEAD_SKILL_SAW; level <= STEAD_SKILL_SHOWS; level++)
    g_ptr_array_add (levels, (gpointer) stead_skill_level_text (level));
  form = stead_form_new (_("Try of a skill"), _("Save try"), old != NULL ? _("Take it back") : NULL, try_save, try_remove,
                         fields, try_form_free);
  add_skills (fields, form, skill_id);
  fields->level = stead_form_add_choice (form, _("How well"), words_of (levels), old != NULL ? old->level - STEAD_SKILL_SAW : 0);
  add_proofs (fields, form, desk);
  add_shown (fields, form, desk);
  fields->day = stead_form_add (form, desk, _("Day"), STEAD_FIELD_DAY);
  fields->note = stead_form_add (form, desk, _("Note (may be left out)"), STEAD_FIELD_TEXT);
  stead_field_show_day (fields->day, old != NULL ? old->day : today_of (desk));
  if (old != NULL)
    stead_field_set_text (fields->note, old->note);
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

/* --- an advisor's check -------------------------------------------------------------- */

typedef struct
{
  SteadPick *who;
  gint64     try_id, advisor_id;
} CheckForm;

static gboolean
check_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  const CheckForm *form = data;

  return stead_skill_repo_check (store, form->try_id, form->advisor_id, error);
}

static gboolean
check_save (SteadForm  *form,
            gpointer    data,
            GError    **error)
{
  CheckForm *fields = data;

  fields->advisor_id = stead_pick_get (fields->who);
  return stead_form_act (form, _("a skill checked"), check_act, fields, error);
}

void
stead_try_check_dialog_show (GtkWidget  *parent,
                             SteadDesk  *desk,
                             gint64      try_id,
                             const char *words)
{
  CheckForm *fields = g_new0 (CheckForm, 1);
  SteadForm *form = stead_form_new (_("Check a skill"), _("Mark as checked"), NULL, check_save, NULL, fields, g_free);

  fields->try_id = try_id;
  stead_form_add_text (form, words, NULL);
  fields->who = stead_form_add_pick (form, _("Who checks"));
  stead_show_picks_advisors (fields->who, stead_desk_get_store (desk));
  stead_form_skip (form);
  stead_form_add_text (form, _("What is checked stays as it is. A later try is a new one."), "soft");
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}
