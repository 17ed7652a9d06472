/* stead-group-dialog.c - who belongs to a group. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/show/stead-group-dialog.h"

#include "app/keep/stead-pick.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-field.h"
#include "store/stead-farm-repo.h"
#include "store/stead-people-repo.h"

#define COLUMNS 3

struct _SteadGroupDialog
{
  SteadDialog parent_instance;

  GPtrArray  *groups;     /* of SteadGroup */
  GPtrArray  *checks;     /* of GtkCheckButton, not owned; each with its "person" */

  SteadPick  *which;
  SteadField *name;
  GtkWidget  *people;
};

G_DEFINE_FINAL_TYPE (SteadGroupDialog, stead_group_dialog, STEAD_TYPE_DIALOG)

static const SteadGroup *
chosen (SteadGroupDialog *self)
{
  for (guint i = 0; i < self->groups->len; i++)
    if (((SteadGroup *) self->groups->pdata[i])->id == stead_pick_get (self->which))
      return self->groups->pdata[i];
  return NULL;
}

static gint64
person_of (gpointer check)
{
  return *(gint64 *) g_object_get_data (check, "person");
}

static gboolean
is_member (const SteadGroup *group,
           gint64            person_id)
{
  for (guint i = 0; group != NULL && i < group->person_ids->len; i++)
    if (g_array_index (group->person_ids, gint64, i) == person_id)
      return TRUE;
  return FALSE;
}

static void
which_cb (SteadGroupDialog *self)
{
  const SteadGroup *group = chosen (self);

  stead_field_set_text (self->name, group != NULL ? group->name : "");
  for (guint i = 0; i < self->checks->len; i++)
    gtk_check_button_set_active (self->checks->pdata[i], is_member (group, person_of (self->checks->pdata[i])));
  g_object_set (self, "delete-label", group != NULL ? _("Remove the group") : NULL, NULL);
}

static gboolean
save_act (SteadStore  *store,
          gpointer     group,
          GError     **error)
{
  return stead_group_repo_save (store, group, error);
}

static gboolean
stead_group_dialog_save (SteadDialog  *dialog,
                         GError      **error)
{
  SteadGroupDialog *self = STEAD_GROUP_DIALOG (dialog);
  g_autoptr(SteadGroup) group = stead_group_new ();
  g_autoptr(GError) local_error = NULL;
  g_autofree char *step = NULL;
  const char *name;

  if (!stead_field_read_text (self->name, &name))
    return FALSE;
  group->id = stead_pick_get (self->which);
  group->name = g_strdup (name);
  for (guint i = 0; i < self->checks->len; i++)
    {
      gint64 id = person_of (self->checks->pdata[i]);

      if (gtk_check_button_get_active (self->checks->pdata[i]))
        g_array_append_val (group->person_ids, id);
    }
  /* Translators: a step of undo: the name of a group. */
  step = g_strdup_printf (_("Group: %s"), group->name);
  if (stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, group, &local_error))
    return TRUE;
  stead_field_set_error (self->name, local_error->message);
  return FALSE;
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     id,
            GError     **error)
{
  return stead_group_repo_remove (store, *(gint64 *) id, error);
}

static gboolean
stead_group_dialog_remove (SteadDialog  *dialog,
                           GError      **error)
{
  gint64 id = stead_pick_get (STEAD_GROUP_DIALOG (dialog)->which);

  return stead_desk_act (stead_dialog_get_desk (dialog), _("Group removed"), remove_act, &id, error);
}

static void
stead_group_dialog_dispose (GObject *object)
{
  SteadGroupDialog *self = STEAD_GROUP_DIALOG (object);

  g_clear_pointer (&self->groups, g_ptr_array_unref);
  g_clear_pointer (&self->checks, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_group_dialog_parent_class)->dispose (object);
}

static void
stead_group_dialog_class_init (SteadGroupDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_group_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_group_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_group_dialog_remove;
}

static void
stead_group_dialog_init (SteadGroupDialog *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  self->checks = g_ptr_array_new ();
  self->which = STEAD_PICK (stead_pick_new (_("Group")));
  g_signal_connect_swapped (self->which, "changed", G_CALLBACK (which_cb), self);
  self->name = STEAD_FIELD (stead_field_new (_("Name of the group"), STEAD_FIELD_TEXT));
  g_object_set (self->name, "required", TRUE, "hint", _("Saturday list"), NULL);
  self->people = g_object_new (GTK_TYPE_GRID, "row-spacing", 6, "column-spacing", 18, "column-homogeneous", TRUE, NULL);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->which));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->name));
  gtk_box_append (GTK_BOX (box), stead_make_label (_("Who belongs to it:"), NULL));
  gtk_box_append (GTK_BOX (box), self->people);
  g_object_set (self, "content", box, "default-width", 520, NULL);
}

static void
fill_people (SteadGroupDialog *self,
             SteadStore       *store)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);

  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];
      GtkWidget *check;

      if (person->left_on != STEAD_DAY_NONE)
        continue;
      check = gtk_check_button_new_with_label (person->name);
      g_object_set_data_full (G_OBJECT (check), "person", g_memdup2 (&person->id, sizeof person->id), g_free);
      gtk_grid_attach (GTK_GRID (self->people), check, (int) self->checks->len % COLUMNS, (int) self->checks->len / COLUMNS, 1, 1);
      g_ptr_array_add (self->checks, check);
    }
}

void
stead_group_dialog_show (GtkWidget *parent,
                         SteadDesk *desk)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  GPtrArray *groups = stead_group_repo_list (store, &error);
  SteadGroupDialog *self;

  if (groups == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_GROUP_DIALOG, "title", _("Groups"), "save-label", _("Save the group"), NULL);
  self->groups = groups;
  fill_people (self, store);
  stead_pick_append (self->which, 0, _("A new group"));
  for (guint i = 0; i < groups->len; i++)
    stead_pick_append (self->which, ((SteadGroup *) groups->pdata[i])->id, ((SteadGroup *) groups->pdata[i])->name);
  stead_pick_show (self->which, 0);
  which_cb (self);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}
