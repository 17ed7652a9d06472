/* stead-score-dialog.c - a score of an event: a new one, or one to be mended or removed. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-event-scores.h"
#include "app/show/stead-learn-dialogs.h"
#include "app/stead-form.h"
#include "store/stead-store-watch.h"

typedef struct
{
  GPtrArray       *team;       /* of SteadEventPerson */
  GPtrArray       *scores;     /* of SteadEventScore, by day */
  GtkDropDown     *which;      /* (nullable): the new one, then the latest first */
  GtkDropDown     *who;
  SteadField      *day, *part, *score, *out_of;
  GtkCheckButton  *is_final;
  SteadDay         today;
  SteadEventScore  saved;
} ScoreForm;

static void
score_form_free (gpointer data)
{
  ScoreForm *form = data;

  g_ptr_array_unref (form->team);
  g_ptr_array_unref (form->scores);
  g_free (form);
}

/* (nullable): the new one */
static const SteadEventScore *
old_of (const ScoreForm *form)
{
  guint at = form->which != NULL ? gtk_drop_down_get_selected (form->which) : 0;

  return at > 0 && at <= form->scores->len ? form->scores->pdata[form->scores->len - at] : NULL;
}

/* Who left the team since keeps the scores. */
static gint64
person_of (const ScoreForm *form)
{
  guint at = gtk_drop_down_get_selected (form->who);
  const SteadEventScore *old = old_of (form);

  if (at > 0 && at <= form->team->len)
    return ((SteadEventPerson *) form->team->pdata[at - 1])->person_id;
  return at > form->team->len && old != NULL ? old->person_id : 0;
}

static guint
place_of (const ScoreForm *form,
          gint64           person_id)
{
  for (guint i = 0; i < form->team->len; i++)
    if (((SteadEventPerson *) form->team->pdata[i])->person_id == person_id)
      return i + 1;
  return person_id == 0 ? 0 : form->team->len + 1;
}

static void
which_cb (GtkDropDown *which,
          GParamSpec  *pspec,
          ScoreForm   *form)
{
  const SteadEventScore *old = old_of (form);
  GtkStringList *names = GTK_STRING_LIST (gtk_drop_down_get_model (form->who));

  gtk_string_list_splice (names, form->team->len + 1, g_list_model_get_n_items (G_LIST_MODEL (names)) - form->team->len - 1,
                          NULL);
  if (old != NULL && place_of (form, old->person_id) > form->team->len)
    gtk_string_list_append (names, old->person_name);
  gtk_drop_down_set_selected (form->who, old != NULL ? place_of (form, old->person_id) : 0);
  stead_field_show_day (form->day, old != NULL ? old->day : form->today);
  if (old != NULL)
    {
      stead_field_show_number (form->score, old->score);
      stead_field_show_number (form->out_of, old->out_of);
    }
  else
    {
      stead_field_set_text (form->score, "");
      stead_field_set_text (form->out_of, "");
    }
  stead_field_set_text (form->part, old != NULL && old->part != NULL ? old->part : "");
  gtk_check_button_set_active (form->is_final, old != NULL && old->is_final);
}

static gboolean
score_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  ScoreForm *form = data;

  stead_store_watch_id (store, &form->saved.id);
  return stead_event_repo_save_score (store, &form->saved, error);
}

static gboolean
score_save (SteadForm  *form,
            gpointer    data,
            GError    **error)
{
  ScoreForm *fields = data;
  const SteadEventScore *old = old_of (fields);
  gboolean good = stead_field_read_day (fields->day, fields->today, &fields->saved.day);

  good &= stead_field_read_number (fields->score, -1, &fields->saved.score);
  good &= stead_field_read_number (fields->out_of, 0, &fields->saved.out_of);
  if (!good)
    return FALSE;
  fields->saved.id = old != NULL ? old->id : 0;
  fields->saved.note = old != NULL ? old->note : NULL;
  fields->saved.person_id = person_of (fields);
  fields->saved.part = (char *) stead_field_get_text (fields->part);
  fields->saved.is_final = gtk_check_button_get_active (fields->is_final);
  return stead_form_act (form, old != NULL ? _("mending a practice score") : _("a practice score"), score_act, fields, error);
}

static gboolean
drop_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_event_repo_drop_score (store, old_of (data)->id, error);
}

static gboolean
score_remove (SteadForm  *form,
              gpointer    data,
              GError    **error)
{
  if (old_of (data) != NULL)
    return stead_form_act (form, _("removing a practice score"), drop_act, data, error);
  stead_dialog_show_error (STEAD_DIALOG (form), _("Choose the score to remove at “Which score”."));
  return FALSE;
}

static void
add_which (SteadForm *form,
           ScoreForm *fields)
{
  g_autoptr(GPtrArray) words = g_ptr_array_new_with_free_func (g_free);

  g_ptr_array_add (words, g_strdup (C_("which score", "A new one")));
  for (guint i = fields->scores->len; i > 0; i--)
    g_ptr_array_add (words, stead_event_score_text (fields->scores->pdata[i - 1]));
  g_ptr_array_add (words, NULL);
  fields->which = stead_form_add_choice (form, _("Which score"), (const char * const *) words->pdata, 0);
  stead_form_skip (form);
}

void
stead_score_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     event_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) team = stead_event_repo_team (store, event_id, &error);
  g_autoptr(GPtrArray) scores = team != NULL ? stead_event_repo_scores (store, event_id, &error) : NULL;
  g_autoptr(GPtrArray) names = g_ptr_array_new ();
  gboolean has_old = scores != NULL && scores->len > 0;
  ScoreForm *fields;
  SteadForm *form;

  if (scores == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  g_ptr_array_add (names, (gpointer) C_("whose score", "The whole team"));
  for (guint i = 0; i < team->len; i++)
    g_ptr_array_add (names, ((SteadEventPerson *) team->pdata[i])->name);
  g_ptr_array_add (names, NULL);
  fields = g_new0 (ScoreForm, 1);
  fields->team = g_steal_pointer (&team);
  fields->scores = g_steal_pointer (&scores);
  fields->today = stead_store_get_today (store);
  fields->saved.event_id = event_id;
  form = stead_form_new (_("Practice score"), _("Save score"), has_old ? _("Remove score") : NULL, score_save, score_remove,
                         fields, score_form_free);
  if (has_old)
    add_which (form, fields);
  fields->who = stead_form_add_choice (form, _("Whose"), (const char * const *) names->pdata, 0);
  fields->day = stead_form_add (form, desk, _("Day"), STEAD_FIELD_DAY);
  fields->score = stead_form_add (form, desk, _("Points reached"), STEAD_FIELD_NUMBER);
  fields->out_of = stead_form_add (form, desk, _("Points to win"), STEAD_FIELD_NUMBER);
  fields->part = stead_form_add (form, desk, _("Part of the event (may be left out)"), STEAD_FIELD_TEXT);
  fields->is_final = stead_form_add_check (form, _("It is from the event itself, not from practice"), FALSE);
  stead_field_show_day (fields->day, fields->today);
  if (has_old)
    g_signal_connect (fields->which, "notify::selected", G_CALLBACK (which_cb), fields);
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}
