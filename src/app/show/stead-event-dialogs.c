/* stead-event-dialogs.c - an event, one of its team, and what its packet needs. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-event-answer.h"
#include "app/show/stead-learn-dialogs.h"
#include "app/stead-form.h"
#include "app/stead-ui.h"
#include "store/stead-store-watch.h"

/* --- an event ----------------------------------------------------------------------- */

typedef struct
{
  SteadEvent  *old;      /* (nullable): as it is saved */
  GtkDropDown *kind;
  SteadField  *name, *day, *place, *own_kind;
  SteadField  *result;      /* (nullable): a new event has none yet, nor the next */
  GtkTextView *learned;     /* (nullable) */
  SteadEvent   event;
} EventForm;

static void
event_form_free (gpointer data)
{
  stead_event_free (((EventForm *) data)->old);
  g_free (data);
}

static gboolean
event_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  EventForm *form = data;
  gboolean is_new = form->event.id == 0;

  stead_store_watch_id (store, &form->event.id);
  return stead_event_repo_save (store, &form->event, error) &&
         (!is_new || stead_event_fill_needs (store, form->event.id, form->event.kind, error));
}

static gboolean
event_save (SteadForm  *form,
            gpointer    data,
            GError    **error)
{
  EventForm *fields = data;
  guint chosen = gtk_drop_down_get_selected (fields->kind);
  gsize n;
  const SteadEventKind *kinds = stead_event_kinds (&n);
  g_autofree char *learned = fields->learned != NULL ? stead_ui_read_lines (fields->learned) : NULL;
  gboolean good;

  if (!stead_field_read_day (fields->day, STEAD_DAY_NONE, &fields->event.day))
    return FALSE;
  fields->event.id = fields->old != NULL ? fields->old->id : 0;
  fields->event.name = (char *) stead_field_get_text (fields->name);
  fields->event.kind = (char *) (chosen < n ? kinds[chosen].key : stead_field_get_text (fields->own_kind));
  fields->event.place = (char *) stead_field_get_text (fields->place);
  fields->event.result = fields->result != NULL ? (char *) stead_field_get_text (fields->result) : NULL;
  fields->event.learned = learned;
  good = stead_form_act (form, _("an event"), event_act, fields, error);
  fields->event.learned = NULL;
  return good;
}

static gboolean
delete_event_act (SteadStore  *store,
                  gpointer     data,
                  GError     **error)
{
  return stead_event_repo_delete (store, ((EventForm *) data)->old->id, error);
}

static gboolean
event_remove (SteadForm  *form,
              gpointer    data,
              GError    **error)
{
  return stead_form_act (form, _("deleting an event"), delete_event_act, data, error);
}

static guint
kind_at (const char *kind)
{
  gsize n;
  const SteadEventKind *kinds = stead_event_kinds (&n);

  for (guint i = 0; i < n; i++)
    if (g_strcmp0 (kinds[i].key, kind) == 0)
      return i;
  return (guint) n;
}

/* Only a kind of one's own needs words. */
static void
kind_cb (GtkDropDown *kind,
         GParamSpec  *pspec,
         EventForm   *fields)
{
  gsize n;

  stead_event_kinds (&n);
  gtk_widget_set_sensitive (GTK_WIDGET (fields->own_kind), gtk_drop_down_get_selected (kind) == n);
}

void
stead_event_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     event_id)
{
  g_autoptr(GPtrArray) words = g_ptr_array_new ();
  gsize n;
  const SteadEventKind *kinds = stead_event_kinds (&n);
  EventForm *fields = g_new0 (EventForm, 1);
  SteadForm *form;

  if (event_id != 0)
    fields->old = stead_event_repo_get (stead_desk_get_store (desk), event_id, NULL);
  for (gsize i = 0; i < n; i++)
    g_ptr_array_add (words, (gpointer) stead_event_kind_name (kinds[i].key));
  g_ptr_array_add (words, (gpointer) C_("kind of event", "Another kind"));
  g_ptr_array_add (words, NULL);
  form = stead_form_new (_("Event"), _("Save event"), fields->old != NULL ? _("Delete event") : NULL, event_save,
                         event_remove, fields, event_form_free);
  fields->name = stead_form_add (form, desk, _("Name of the event"), STEAD_FIELD_TEXT);
  fields->kind = stead_form_add_choice (form, _("Kind"), (const char * const *) words->pdata,
                                        fields->old != NULL ? kind_at (fields->old->kind) : 0);
  fields->day = stead_form_add (form, desk, _("Day"), STEAD_FIELD_DAY);
  fields->place = stead_form_add (form, desk, _("Where (may be left out)"), STEAD_FIELD_TEXT);
  fields->own_kind = stead_form_add (form, desk, _("Another kind, in your words"), STEAD_FIELD_TEXT);
  g_signal_connect (fields->kind, "notify::selected", G_CALLBACK (kind_cb), fields);
  if (fields->old != NULL)
    {
      fields->result = stead_form_add (form, desk, _("Result, once it is known"), STEAD_FIELD_TEXT);
      fields->learned = stead_form_add_lines (form, _("What was learned"), fields->old->learned);
      stead_field_set_text (fields->name, fields->old->name);
      stead_field_set_text (fields->place, fields->old->place);
      stead_field_set_text (fields->result, fields->old->result);
      stead_field_show_day (fields->day, fields->old->day);
      if (kind_at (fields->old->kind) == n)
        stead_field_set_text (fields->own_kind, fields->old->kind);
    }
  kind_cb (fields->kind, NULL, fields);
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

/* --- people of the team ----------------------------------------------------------------------- */

typedef struct
{
  GPtrArray   *people;     /* of SteadPerson */
  GPtrArray   *team;       /* of SteadEventPerson */
  GtkDropDown *who;
  SteadField  *role;
  gint64       event_id, person_id;
  const char  *text;
} TeamForm;

static void
team_form_free (gpointer data)
{
  g_ptr_array_unref (((TeamForm *) data)->people);
  g_ptr_array_unref (((TeamForm *) data)->team);
  g_free (data);
}

static gboolean
member_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  const TeamForm *form = data;

  return stead_event_repo_join (store, form->event_id, form->person_id, form->text, error);
}

static gboolean
member_save (SteadForm  *form,
             gpointer    data,
             GError    **error)
{
  TeamForm *fields = data;
  guint who = gtk_drop_down_get_selected (fields->who);

  fields->person_id = who < fields->people->len ? ((SteadPerson *) fields->people->pdata[who])->id : 0;
  fields->text = stead_field_get_text (fields->role);
  return stead_form_act (form, _("somebody in a team"), member_act, fields, error);
}

static gboolean
leave_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  const TeamForm *form = data;

  return stead_event_repo_leave (store, form->event_id, form->person_id, error);
}

static gboolean
member_remove (SteadForm  *form,
               gpointer    data,
               GError    **error)
{
  TeamForm *fields = data;
  guint who = gtk_drop_down_get_selected (fields->who);

  fields->person_id = who < fields->people->len ? ((SteadPerson *) fields->people->pdata[who])->id : 0;
  return stead_form_act (form, _("taking somebody out of a team"), leave_act, fields, error);
}

/* (nullable): as one of the team */
static const SteadEventPerson *
member_of (const TeamForm *form,
           guint           who)
{
  const SteadPerson *person = who < form->people->len ? form->people->pdata[who] : NULL;

  for (guint i = 0; person != NULL && i < form->team->len; i++)
    if (((const SteadEventPerson *) form->team->pdata[i])->person_id == person->id)
      return form->team->pdata[i];
  return NULL;
}

static void
who_cb (GtkDropDown *who,
        GParamSpec  *pspec,
        TeamForm    *form)
{
  const SteadEventPerson *member = member_of (form, gtk_drop_down_get_selected (who));

  stead_field_set_text (form->role, member != NULL && member->role != NULL ? member->role : "");
}

static GPtrArray *
names_of (const TeamForm *form)
{
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < form->people->len; i++)
    {
      const SteadPerson *person = form->people->pdata[i];

      /* Translators: a name. */
      g_ptr_array_add (names, member_of (form, i) != NULL ? g_strdup_printf (_("%s, in the team"), person->name)
                                                         : g_strdup (person->name));
    }
  g_ptr_array_add (names, NULL);
  return names;
}

void
stead_member_dialog_show (GtkWidget *parent,
                          SteadDesk *desk,
                          gint64     event_id)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) people = stead_packet_people (stead_desk_get_store (desk), &error);
  g_autoptr(GPtrArray) team = people != NULL ? stead_event_repo_team (stead_desk_get_store (desk), event_id, &error) : NULL;
  g_autoptr(GPtrArray) names = NULL;
  TeamForm *fields;
  SteadForm *form;

  if (team == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  fields = g_new0 (TeamForm, 1);
  fields->people = g_steal_pointer (&people);
  fields->team = g_steal_pointer (&team);
  fields->event_id = event_id;
  names = names_of (fields);
  form = stead_form_new (_("Team"), _("Put into the team"), _("Take out of the team"), member_save, member_remove,
                         fields, team_form_free);
  fields->who = stead_form_add_choice (form, _("Person"), (const char * const *) names->pdata, 0);
  fields->role = stead_form_add (form, desk, _("Part in the team (may be left out)"), STEAD_FIELD_TEXT);
  g_signal_connect (fields->who, "notify::selected", G_CALLBACK (who_cb), fields);
  who_cb (fields->who, NULL, fields);
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

/* --- a need ------------------------------------------------------------------------------------ */

typedef struct
{
  SteadEventNeed *old;     /* (nullable) */
  GtkDropDown    *what;
  SteadField     *words;
  GtkTextView    *text;
  SteadEventNeed  need;
} NeedForm;

static void
need_form_free (gpointer data)
{
  stead_event_need_free (((NeedForm *) data)->old);
  g_free (data);
}

static gboolean
need_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  NeedForm *form = data;

  stead_store_watch_id (store, &form->need.id);
  return stead_event_repo_save_need (store, &form->need, error);
}

static gboolean
need_save (SteadForm  *form,
           gpointer    data,
           GError    **error)
{
  NeedForm *fields = data;
  g_autofree char *text = stead_ui_read_lines (fields->text);
  gboolean good;

  if (fields->old != NULL)
    {
      fields->need.id = fields->old->id;
      fields->need.position = fields->old->position;
      fields->need.done_on = fields->old->done_on;
    }
  fields->need.what = gtk_drop_down_get_selected (fields->what) == 0 ? STEAD_NEED_OWN : STEAD_NEED_MATERIAL;
  fields->need.words = (char *) stead_field_get_text (fields->words);
  fields->need.text = text;
  good = stead_form_act (form, _("what an event needs"), need_act, fields, error);
  fields->need.text = NULL;
  return good;
}

static gboolean
drop_need_act (SteadStore  *store,
               gpointer     data,
               GError     **error)
{
  return stead_event_repo_drop_need (store, ((NeedForm *) data)->old->id, error);
}

static gboolean
need_remove (SteadForm  *form,
             gpointer    data,
             GError    **error)
{
  return stead_form_act (form, _("taking out what an event needs"), drop_need_act, data, error);
}

void
stead_need_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     event_id,
                        gint64     need_id)
{
  const char *kinds[] = { C_("need of an event", "A section of its own"), C_("need of an event", "Something to bring"), NULL };
  g_autoptr(GPtrArray) needs = stead_event_repo_needs (stead_desk_get_store (desk), event_id, NULL);
  NeedForm *fields = g_new0 (NeedForm, 1);
  SteadForm *form;

  for (guint i = 0; needs != NULL && i < needs->len; i++)
    if (((SteadEventNeed *) needs->pdata[i])->id == need_id)
      {
        fields->old = g_ptr_array_steal_index (needs, i);
        break;
      }
  fields->need.event_id = event_id;
  fields->need.done_on = STEAD_DAY_NONE;
  form = stead_form_new (_("What the event needs"), _("Save need"), fields->old != NULL ? _("Take it out") : NULL,
                         need_save, need_remove, fields, need_form_free);
  fields->words = stead_form_add (form, desk, _("What it is"), STEAD_FIELD_TEXT);
  fields->what = stead_form_add_choice (form, _("Kind"), kinds,
                                        fields->old != NULL && fields->old->what == STEAD_NEED_MATERIAL);
  fields->text = stead_form_add_lines (form, _("Text of the section"), fields->old != NULL ? fields->old->text : NULL);
  if (fields->old != NULL)
    stead_field_set_text (fields->words, fields->old->words);
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}
