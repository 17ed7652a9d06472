/* stead-person-dialog.c - one person: name, role, class year, consent, and leaving.
 *
 * Nothing is asked that the farm's work does not need.  Whoever leaves stays in the log and in
 * every sum; consent that is taken back ends, and stays on record.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-person-dialog.h"

#include "answer/stead-class-answer.h"
#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "store/stead-purge.h"
#include "store/stead-store-watch.h"

#define N_CONSENTS (STEAD_CONSENT_WORK + 1)

struct _SteadPersonDialog
{
  SteadDialog     parent_instance;

  SteadPerson    *person;
  GPtrArray      *consents;   /* of SteadConsent */

  SteadField     *name, *class_year, *keep_until;
  SteadPick      *role;
  GtkCheckButton *left, *consent[N_CONSENTS];
};

G_DEFINE_FINAL_TYPE (SteadPersonDialog, stead_person_dialog, STEAD_TYPE_DIALOG)

/* --- saving --------------------------------------------------------------------------- */

typedef struct
{
  SteadPersonDialog *self;
  gboolean           wants[N_CONSENTS];
  SteadDay           keep_until;   /* STEAD_DAY_NONE: the school set no day */
} Saving;

static gboolean
save_consent (SteadStore              *store,
              const SteadPersonDialog *self,
              SteadConsentWhat         what,
              gboolean                 wants,
              GError                 **error)
{
  SteadDay today = stead_store_get_today (store);

  if (wants == stead_consent_holds (self->consents, self->person->id, what, today))
    return TRUE;
  if (wants)
    {
      SteadConsent fresh = { .person_id = self->person->id, .what = what, .given_on = today, .ended_on = STEAD_DAY_NONE };

      return stead_consent_repo_save (store, &fresh, error);
    }
  for (guint i = 0; i < self->consents->len; i++)
    {
      SteadConsent *consent = self->consents->pdata[i];

      if (consent->what != what || consent->ended_on != STEAD_DAY_NONE)
        continue;
      consent->ended_on = today;
      if (!stead_consent_repo_save (store, consent, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  Saving *saving = data;

  stead_store_watch_id (store, &saving->self->person->id);
  if (!stead_person_repo_save (store, saving->self->person, error))
    return FALSE;
  if (!stead_purge_set_keep_until (store, saving->self->person->id, saving->keep_until, error))
    return FALSE;
  for (int what = 0; what < N_CONSENTS; what++)
    if (!save_consent (store, saving->self, (SteadConsentWhat) what, saving->wants[what], error))
      return FALSE;
  return TRUE;
}

/* Two people of one name could not be told apart in the log. */
static gboolean
check_name (SteadPersonDialog *self,
            const char        *name)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self))), NULL);
  g_autofree char *wanted = g_utf8_casefold (name, -1);

  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];
      g_autofree char *its = g_utf8_casefold (person->name, -1);
      g_autofree char *text = NULL;

      if (person->id == self->person->id || !g_str_equal (its, wanted))
        continue;
      /* Translators: a name, twice. */
      text = g_strdup_printf (_("There is a %1$s already. Tell them apart, with a letter of the family name or a number: "
                                "“%1$s 2”."), person->name);
      stead_field_set_error (self->name, text);
      gtk_widget_grab_focus (GTK_WIDGET (self->name));
      return FALSE;
    }
  return TRUE;
}

static gboolean
read_year (SteadPersonDialog *self,
           gint64            *out)
{
  if (!stead_field_read_count (self->class_year, 0, out))
    return FALSE;
  if (*out == 0 || (*out >= 1990 && *out <= 2199))
    return TRUE;
  stead_field_set_error (self->class_year, _("Enter a year such as 2027, or nothing."));
  return FALSE;
}

static gboolean
stead_person_dialog_save (SteadDialog  *dialog,
                          GError      **error)
{
  SteadPersonDialog *self = STEAD_PERSON_DIALOG (dialog);
  SteadDay today = stead_store_get_today (stead_desk_get_store (stead_dialog_get_desk (dialog)));
  Saving saving = { .self = self };
  g_autofree char *step = NULL, *tidy = NULL;
  const char *name;
  gint64 year;

  if (!stead_field_read_text (self->name, &name) || !read_year (self, &year)
      || !stead_field_read_day (self->keep_until, STEAD_DAY_NONE, &saving.keep_until))
    return FALSE;
  tidy = g_strstrip (g_strdup (name));
  if (!check_name (self, tidy))
    return FALSE;
  g_free (self->person->name);
  self->person->name = g_steal_pointer (&tidy);
  self->person->class_year = (int) year;
  self->person->role = (SteadPersonRole) (stead_pick_get (self->role) - 1);
  if (!gtk_check_button_get_active (self->left))
    self->person->left_on = STEAD_DAY_NONE;
  else if (self->person->left_on == STEAD_DAY_NONE)
    self->person->left_on = today;
  for (int what = 0; what < N_CONSENTS; what++)
    saving.wants[what] = gtk_check_button_get_active (self->consent[what]);
  /* Translators: a step that can be undone; %s is a person's name. */
  step = g_strdup_printf (_("Person: %s"), self->person->name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, &saving, error);
}

/* --- the form -------------------------------------------------------------------------- */

static void
stead_person_dialog_dispose (GObject *object)
{
  SteadPersonDialog *self = STEAD_PERSON_DIALOG (object);

  g_clear_pointer (&self->person, stead_person_free);
  g_clear_pointer (&self->consents, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_person_dialog_parent_class)->dispose (object);
}

static void
stead_person_dialog_class_init (SteadPersonDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_person_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_person_dialog_save;
}

static void
stead_person_dialog_init (SteadPersonDialog *self)
{
  const char * const consents[N_CONSENTS] = { _("The name may stand in what goes out"), _("Pictures may be shown"),
                                              _("Own work may be shown") };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *pair = g_object_new (GTK_TYPE_GRID, "column-spacing", 18, "column-homogeneous", TRUE, NULL);

  self->name = STEAD_FIELD (stead_field_new (_("Name"), STEAD_FIELD_TEXT));
  g_object_set (self->name, "required", TRUE, NULL);
  self->role = STEAD_PICK (stead_pick_new (_("Role")));
  for (int role = STEAD_PERSON_STUDENT; role <= STEAD_PERSON_HELPER; role++)
    stead_pick_append (self->role, role + 1, stead_words_role ((SteadPersonRole) role));
  self->class_year = STEAD_FIELD (stead_field_new (_("Class of"), STEAD_FIELD_COUNT));
  g_object_set (self->class_year, "hint", "2027", NULL);
  self->left = GTK_CHECK_BUTTON (gtk_check_button_new_with_label (_("No longer here: stays in the log, is no longer offered")));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->name));
  gtk_grid_attach (GTK_GRID (pair), GTK_WIDGET (self->role), 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (pair), GTK_WIDGET (self->class_year), 1, 0, 1, 1);
  gtk_box_append (GTK_BOX (box), pair);
  gtk_box_append (GTK_BOX (box), stead_make_label (_("What the signed paper at the school allows:"), NULL));
  for (int what = 0; what < N_CONSENTS; what++)
    {
      self->consent[what] = GTK_CHECK_BUTTON (gtk_check_button_new_with_label (consents[what]));
      gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->consent[what]));
    }
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->left));
  self->keep_until = STEAD_FIELD (stead_field_new (_("Keep what names this person until"), STEAD_FIELD_DAY));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->keep_until));
  gtk_box_append (GTK_BOX (box), stead_make_label (_("The school sets this day, or none. After it, “Remove people…” in "
                                                     "“Exports” chooses this person by itself; nothing is removed "
                                                     "without being asked for."), "soft"));
  g_object_set (self, "content", box, "default-width", 480, NULL);
}

/* (transfer full) (nullable) */
static SteadPerson *
find_person (SteadStore *store,
             gint64      person_id)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);

  for (guint i = 0; people != NULL && i < people->len; i++)
    if (((SteadPerson *) people->pdata[i])->id == person_id)
      return g_ptr_array_steal_index (people, i);
  return NULL;
}

/* STEAD_DAY_NONE: the school set no day. */
static SteadDay
keep_of (SteadStore *store,
         gint64      person_id)
{
  SteadDay day = STEAD_DAY_NONE;

  return stead_purge_get_keep_until (store, person_id, &day, NULL) ? day : STEAD_DAY_NONE;
}

void
stead_person_dialog_show (GtkWidget *parent,
                          SteadDesk *desk,
                          gint64     person_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadPerson *person = find_person (store, person_id);
  SteadPersonDialog *self = g_object_new (STEAD_TYPE_PERSON_DIALOG, "title", person == NULL ? _("A new person") : _("Person"),
                                          "save-label", _("Save"), NULL);
  SteadDay keep;

  if (person == NULL)
    {
      person = g_new0 (SteadPerson, 1);
      person->left_on = STEAD_DAY_NONE;
    }
  self->person = person;
  self->consents = stead_consent_repo_list (store, person->id, NULL);
  if (person->id == 0 || self->consents == NULL)
    {
      g_clear_pointer (&self->consents, g_ptr_array_unref);
      self->consents = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_consent_free);
    }
  stead_field_set_text (self->name, person->name != NULL ? person->name : "");
  if (person->class_year > 0)
    stead_field_show_count (self->class_year, person->class_year);
  stead_pick_show (self->role, (gint64) person->role + 1);
  stead_field_set_today (self->keep_until, stead_store_get_today (store));
  keep = keep_of (store, person->id);
  if (keep != STEAD_DAY_NONE)
    stead_field_show_day (self->keep_until, keep);
  gtk_check_button_set_active (self->left, person->left_on != STEAD_DAY_NONE);
  for (int what = 0; what < N_CONSENTS; what++)
    gtk_check_button_set_active (self->consent[what], stead_consent_holds (self->consents, person->id, (SteadConsentWhat) what,
                                                                          stead_store_get_today (store)));
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}
