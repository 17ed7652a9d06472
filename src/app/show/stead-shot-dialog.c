/* stead-shot-dialog.c - a picture: its caption, and who is on it. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-learn-dialogs.h"
#include "app/stead-files.h"
#include "app/stead-form.h"
#include "app/stead-picture.h"
#include "store/stead-batch-repo.h"
#include "store/stead-people-repo.h"
#include "store/stead-shot-repo.h"
#include "store/stead-store-watch.h"

#define PICTURE_HEIGHT 150
#define PEOPLE_HEIGHT 130
#define COLUMNS 3

typedef struct
{
  SteadPicture *picture;    /* (nullable): chosen just now */
  SteadShot    *old;        /* (nullable): as it is saved */
  GPtrArray    *people;     /* of SteadPerson: those who are here, and those on it */
  GPtrArray    *checks;     /* of GtkCheckButton, as the people */
  SteadField   *caption;
  gint64        person_id;
  SteadShot     shot;
} ShotForm;

static void
shot_form_free (gpointer data)
{
  ShotForm *form = data;

  g_clear_pointer (&form->picture, stead_picture_free);
  g_clear_pointer (&form->old, stead_shot_free);
  g_clear_pointer (&form->people, g_ptr_array_unref);
  g_clear_pointer (&form->checks, g_ptr_array_unref);
  g_clear_pointer (&form->shot.people, g_array_unref);
  g_free (form);
}

static gboolean
shot_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  ShotForm *form = data;

  stead_store_watch_id (store, &form->shot.id);
  stead_store_watch_id (store, &form->shot.picture_id);
  if (form->picture != NULL)
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
  g_autoptr(GArray) people = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; i < fields->people->len; i++)
    if (gtk_check_button_get_active (fields->checks->pdata[i]))
      g_array_append_val (people, ((SteadPerson *) fields->people->pdata[i])->id);
  g_clear_pointer (&fields->shot.people, g_array_unref);
  if (fields->old != NULL)
    fields->shot = *fields->old;
  else
    fields->shot = (SteadShot) { .person_id = fields->person_id, .day = stead_store_get_today (stead_form_get_store (form)) };
  fields->shot.unasked = NULL;
  fields->shot.people = g_steal_pointer (&people);
  fields->shot.caption = (char *) stead_field_get_text (fields->caption);
  return stead_form_act (form, _("a picture"), shot_act, fields, error);
}

static gboolean
drop_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_shot_repo_drop (store, ((ShotForm *) data)->old->id, error);
}

static gboolean
shot_remove (SteadForm  *form,
             gpointer    data,
             GError    **error)
{
  return stead_form_act (form, _("removing a picture"), drop_act, data, error);
}

/* --- what is asked ---------------------------------------------------------------- */

static void
add_picture (ShotForm  *fields,
             SteadForm *form,
             SteadDesk *desk)
{
  g_autoptr(GBytes) jpeg = fields->picture != NULL ? g_bytes_ref (fields->picture->jpeg)
                           : stead_picture_repo_get (stead_desk_get_store (desk), fields->old->picture_id, NULL);
  g_autoptr(GdkTexture) texture = jpeg != NULL ? gdk_texture_new_from_bytes (jpeg, NULL) : NULL;
  GtkWidget *picture;

  if (texture == NULL)
    return;
  picture = gtk_picture_new_for_paintable (GDK_PAINTABLE (texture));
  gtk_widget_set_size_request (picture, -1, PICTURE_HEIGHT);
  gtk_picture_set_alternative_text (GTK_PICTURE (picture), fields->old != NULL ? fields->old->caption : _("The picture"));
  stead_form_add_widget (form, picture);
}

static gboolean
is_on (const ShotForm *fields,
       gint64          person_id)
{
  if (fields->old == NULL)
    return person_id == fields->person_id;
  for (guint i = 0; i < fields->old->people->len; i++)
    if (g_array_index (fields->old->people, gint64, i) == person_id)
      return TRUE;
  return FALSE;
}

/* Whoever left stays on the pictures, and can be taken off. */
static void
add_people (ShotForm  *fields,
            SteadForm *form)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *name = gtk_label_new (_("Who is on it"));
  GtkWidget *frame = gtk_scrolled_window_new ();
  GtkWidget *grid = gtk_grid_new ();

  for (guint i = fields->people->len; i > 0; i--)
    {
      const SteadPerson *person = fields->people->pdata[i - 1];

      if (person->left_on != STEAD_DAY_NONE && !is_on (fields, person->id))
        g_ptr_array_remove_index (fields->people, i - 1);
    }
  for (guint i = 0; i < fields->people->len; i++)
    {
      const SteadPerson *person = fields->people->pdata[i];
      GtkWidget *check = gtk_check_button_new_with_label (person->name);

      gtk_check_button_set_active (GTK_CHECK_BUTTON (check), is_on (fields, person->id));
      gtk_grid_attach (GTK_GRID (grid), check, (int) i % COLUMNS, (int) i / COLUMNS, 1, 1);
      g_ptr_array_add (fields->checks, check);
    }
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (frame), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (frame), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (frame), PEOPLE_HEIGHT);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (frame), grid);
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), frame);
  stead_form_add_widget (form, box);
}

/* @fields: (transfer full) */
static void
present (ShotForm  *fields,
         GtkWidget *parent,
         SteadDesk *desk)
{
  g_autoptr(GError) error = NULL;
  SteadForm *form;

  fields->people = stead_person_repo_list (stead_desk_get_store (desk), &error);
  if (fields->people == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      shot_form_free (fields);
      return;
    }
  fields->checks = g_ptr_array_new ();
  form = stead_form_new (_("Picture"), _("Save picture"), fields->old != NULL ? _("Remove picture") : NULL, shot_save,
                         shot_remove, fields, shot_form_free);
  add_picture (fields, form, desk);
  fields->caption = stead_form_add_wide (form, _("What the picture shows"));
  if (fields->old != NULL)
    stead_field_set_text (fields->caption, fields->old->caption);
  add_people (fields, form);
  stead_form_add_text (form, _("It stays out of every packet until everybody on it has agreed to be shown."), "soft");
  stead_dialog_present (STEAD_DIALOG (form), parent, desk);
}

/* --- a new one -------------------------------------------------------------------- */

typedef struct
{
  GtkWidget *parent;
  SteadDesk *desk;
  gint64     person_id;
} Wish;

static void
wish_free (Wish *wish)
{
  g_object_unref (wish->parent);
  g_object_unref (wish->desk);
  g_free (wish);
}

static void
read_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  Wish *wish = data;
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPicture) picture = stead_picture_read_finish (result, &error);
  ShotForm *fields;

  if (picture == NULL)
    stead_desk_say (wish->desk, error->message, FALSE);
  else
    {
      fields = g_new0 (ShotForm, 1);
      fields->picture = g_steal_pointer (&picture);
      fields->person_id = wish->person_id;
      present (fields, wish->parent, wish->desk);
    }
  wish_free (wish);
}

static void
chosen_cb (const char *path,
           gpointer    data)
{
  if (path != NULL)
    stead_picture_read_async (path, NULL, read_cb, data);
  else
    wish_free (data);
}

void
stead_shot_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     person_id,
                        gint64     shot_id)
{
  g_autoptr(GError) error = NULL;
  ShotForm *fields;
  Wish *wish;

  if (shot_id != 0)
    {
      fields = g_new0 (ShotForm, 1);
      fields->person_id = person_id;
      fields->old = stead_shot_repo_get (stead_desk_get_store (desk), shot_id, &error);
      if (fields->old != NULL)
        {
          present (fields, parent, desk);
          return;
        }
      stead_desk_say (desk, error->message, FALSE);
      shot_form_free (fields);
      return;
    }
  wish = g_new0 (Wish, 1);
  wish->parent = g_object_ref (parent);
  wish->desk = g_object_ref (desk);
  wish->person_id = person_id;
  stead_files_open (parent, _("Choose a picture"), NULL, NULL, chosen_cb, wish);
}
