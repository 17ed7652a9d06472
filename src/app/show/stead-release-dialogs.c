/* stead-release-dialogs.c - what leaves the farm is told, and who gets it is asked. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-release-dialogs.h"

#include "answer/stead-packet-class.h"
#include "answer/stead-release-answer.h"
#include "app/stead-form.h"

typedef struct
{
  SteadField         *day, *what, *whom;
  SteadPick          *ground, *about;
  SteadRelease        release;
  GArray             *people;     /* (nullable): whom it tells of */
  SteadHandoutAnswer *handout;    /* (nullable): what was printed or saved just now */
  SteadReleaseThen    then;
  gpointer            data;
  GDestroyNotify      destroy;
} ReleaseForm;

static void
release_form_free (gpointer data)
{
  ReleaseForm *form = data;

  g_clear_pointer (&form->people, g_array_unref);
  g_clear_pointer (&form->handout, stead_handout_answer_free);
  if (form->destroy != NULL)
    form->destroy (form->data);
  g_free (form);
}

static void
add_grounds (SteadPick *pick)
{
  const char * const *grounds = stead_release_grounds ();

  for (int i = 0; grounds[i] != NULL; i++)
    stead_pick_append (pick, i + 1, _(grounds[i]));
  stead_pick_show (pick, 1);
}

static void
add_ground_and_day (ReleaseForm *fields,
                    SteadForm   *form,
                    SteadDesk   *desk)
{
  fields->ground = stead_form_add_pick (form, _("On which ground"));
  add_grounds (fields->ground);
  fields->day = stead_form_add (form, desk, _("Day"), STEAD_FIELD_DAY);
  stead_field_show_day (fields->day, stead_store_get_today (stead_desk_get_store (desk)));
}

static SteadField *
add_whom (SteadForm  *form,
          SteadDesk  *desk,
          const char *label)
{
  SteadField *whom = stead_form_add (form, desk, label, STEAD_FIELD_TEXT);

  g_object_set (whom, "required", TRUE, NULL);
  return whom;
}

/* All but what leaves and whom it tells of. */
static gboolean
read_release (ReleaseForm *fields)
{
  const char *whom;

  if (!stead_field_read_text (fields->whom, &whom)
      || !stead_field_read_day (fields->day, STEAD_DAY_NONE, &fields->release.day))
    return FALSE;
  fields->release.id = 0;
  fields->release.to_whom = (char *) whom;
  fields->release.ground = (char *) stead_pick_get_text (fields->ground);
  return TRUE;
}

/* --- handed out in another way --------------------------------------------------------- */

static gboolean
release_act (SteadStore  *store,
             gpointer     data,
             GError     **error)
{
  ReleaseForm *form = data;

  return stead_release_repo_add (store, &form->release, form->people, error);
}

static gboolean
release_save (SteadForm  *form,
              gpointer    data,
              GError    **error)
{
  ReleaseForm *fields = data;
  gint64 about = stead_pick_get (fields->about);
  const char *what;

  if (!stead_field_read_text (fields->what, &what) || !read_release (fields))
    return FALSE;
  g_clear_pointer (&fields->people, g_array_unref);
  if (about != 0)
    {
      fields->people = g_array_new (FALSE, FALSE, sizeof (gint64));
      g_array_append_val (fields->people, about);
    }
  fields->release.what = (char *) what;
  return stead_form_act (form, _("what left the farm"), release_act, fields, error);
}

static void
add_people (SteadPick  *pick,
            SteadStore *store)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);

  stead_pick_append (pick, 0, C_("of whom", "Several people, or nobody"));
  for (guint i = 0; people != NULL && i < people->len; i++)
    stead_pick_append (pick, ((const SteadPerson *) people->pdata[i])->id, ((const SteadPerson *) people->pdata[i])->name);
  stead_pick_show (pick, 0);
}

void
stead_release_dialog_show (GtkWidget *parent,
                           SteadDesk *desk)
{
  ReleaseForm *fields = g_new0 (ReleaseForm, 1);
  SteadForm *form = stead_form_new (_("Handed out"), _("Write it down"), NULL, release_save, NULL, fields,
                                    release_form_free);

  stead_form_add_text (form, _("What is printed or saved elsewhere leaves the farm, too: a packet for an event, hours for a "
                               "parent. Write down who got it, so that anybody who asks can be told."), NULL);
  fields->what = stead_form_add_wide (form, _("What was handed out"));
  fields->whom = add_whom (form, desk, _("Who gets it"));
  fields->about = stead_form_add_pick (form, _("Of whom it tells"));
  add_ground_and_day (fields, form, desk);
  g_object_set (fields->what, "required", TRUE, NULL);
  add_people (fields->about, stead_desk_get_store (desk));
  stead_form_add_text (form, _("What is written down here is not changed any more."), "soft");
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

/* --- printed or saved just now --------------------------------------------------------- */

static gboolean
handout_save (SteadForm  *form,
              gpointer    data,
              GError    **error)
{
  ReleaseForm *fields = data;

  if (!read_release (fields))
    return FALSE;
  fields->release.what = fields->handout->what;
  return stead_form_act (form, _("what left the farm"), release_act, fields, error);
}

void
stead_handout_dialog_show (GtkWidget          *parent,
                           SteadDesk          *desk,
                           SteadHandoutAnswer *handout)
{
  ReleaseForm *fields = g_new0 (ReleaseForm, 1);
  SteadForm *form = stead_form_new (_("Who gets it?"), _("Write it down"), NULL, handout_save, NULL, fields,
                                    release_form_free);

  fields->handout = handout;
  fields->people = g_array_ref (handout->people);
  stead_form_add_text (form, handout->what, "sentence");
  stead_form_add_markup (form, handout->sentence, NULL);
  fields->whom = add_whom (form, desk, _("Who gets it"));
  add_ground_and_day (fields, form, desk);
  stead_form_add_text (form, _("If it stays with you, press Cancel: nothing is written down. What is written down here is not "
                               "changed any more."), "soft");
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

/* --- the packets of the class --------------------------------------------------------------- */

static gboolean
class_save (SteadForm  *form,
            gpointer    data,
            GError    **error)
{
  ReleaseForm *fields = data;
  const char *whom;

  if (!stead_field_read_text (fields->whom, &whom))
    return FALSE;
  fields->then (whom, stead_pick_get_text (fields->ground), fields->data);
  return TRUE;
}

void
stead_class_release_dialog_show (GtkWidget        *parent,
                                 SteadDesk        *desk,
                                 SteadReleaseThen  then,
                                 gpointer          data,
                                 GDestroyNotify    destroy)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPacketClass) leaving = stead_packet_class_new (stead_desk_get_store (desk), &error);
  ReleaseForm *fields;
  SteadForm *form;

  if (leaving == NULL || leaving->n_packets == 0)
    {
      stead_desk_say (desk, error != NULL ? error->message : _("There is no student and no packet. Enter the class first."),
                      FALSE);
      destroy (data);
      return;
    }
  fields = g_new0 (ReleaseForm, 1);
  fields->then = then;
  fields->data = data;
  fields->destroy = destroy;
  form = stead_form_new (_("Packets of the class"), _("Choose a place…"), NULL, class_save, NULL, fields, release_form_free);
  stead_form_add_markup (form, leaving->sentence, "sentence");
  fields->whom = add_whom (form, desk, _("Who gets them"));
  fields->ground = stead_form_add_pick (form, _("On which ground"));
  add_grounds (fields->ground);
  stead_form_add_text (form, _("Each student's packet is a file of its own. Give each student only his or her own."), "soft");
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}
