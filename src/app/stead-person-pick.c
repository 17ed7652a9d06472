/* stead-person-pick.c - who did it. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/stead-person-pick.h"

#include "app/stead-focus.h"
#include "app/stead-ui.h"
#include "store/stead-farm-repo.h"

struct _SteadPersonPick
{
  GtkWidget    parent_instance;

  GPtrArray   *people;      /* of SteadPerson: what the drop-down offers after "not said" */
  GtkWidget   *label;
  GtkDropDown *choice;
};

G_DEFINE_FINAL_TYPE (SteadPersonPick, stead_person_pick, GTK_TYPE_WIDGET)

/* The keys go to the choice. */
static gboolean
stead_person_pick_grab_focus (GtkWidget *widget)
{
  return stead_focus_part (widget, GTK_WIDGET (STEAD_PERSON_PICK (widget)->choice));
}

static void
stead_person_pick_dispose (GObject *object)
{
  SteadPersonPick *self = STEAD_PERSON_PICK (object);

  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->people, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_person_pick_parent_class)->dispose (object);
}

static void
stead_person_pick_class_init (SteadPersonPickClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_person_pick_dispose;
  GTK_WIDGET_CLASS (klass)->grab_focus = stead_person_pick_grab_focus;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
}

static void
stead_person_pick_init (SteadPersonPick *self)
{
  GtkExpression *name = gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string");

  self->people = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_person_free);
  self->label = gtk_label_new (_("By"));
  self->choice = GTK_DROP_DOWN (gtk_drop_down_new (NULL, name));
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self))), 12);
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  gtk_label_set_mnemonic_widget (GTK_LABEL (self->label), GTK_WIDGET (self->choice));
  gtk_drop_down_set_enable_search (self->choice, TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self->choice), TRUE);
  gtk_widget_set_parent (self->label, GTK_WIDGET (self));
  gtk_widget_set_parent (GTK_WIDGET (self->choice), GTK_WIDGET (self));
  stead_ui_name_drop_downs (GTK_WIDGET (self));
}

GtkWidget *
stead_person_pick_new (void)
{
  return g_object_new (STEAD_TYPE_PERSON_PICK, NULL);
}

gint64
stead_person_pick_get (SteadPersonPick *self)
{
  guint at;

  g_return_val_if_fail (STEAD_IS_PERSON_PICK (self), 0);
  at = gtk_drop_down_get_selected (self->choice);
  return at > 0 && at <= self->people->len ? ((const SteadPerson *) self->people->pdata[at - 1])->id : 0;
}

void
stead_person_pick_fill (SteadPersonPick *self,
                        SteadStore      *store)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  g_autoptr(GPtrArray) people = NULL;
  gint64 chosen;
  guint at = 0;

  g_return_if_fail (STEAD_IS_PERSON_PICK (self) && STEAD_IS_STORE (store));

  chosen = stead_person_pick_get (self);
  people = stead_person_repo_list (store, NULL);
  g_ptr_array_set_size (self->people, 0);
  gtk_string_list_append (names, _("not said"));
  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      SteadPerson *person = people->pdata[i];

      if (person->left_on != STEAD_DAY_NONE)
        continue;
      gtk_string_list_append (names, person->name);
      g_ptr_array_add (self->people, g_steal_pointer (&people->pdata[i]));
      if (person->id == chosen)
        at = self->people->len;
    }
  gtk_drop_down_set_model (self->choice, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->choice, at);
}

void
stead_person_pick_share_width (SteadPersonPick *self,
                               GtkSizeGroup    *group)
{
  g_return_if_fail (STEAD_IS_PERSON_PICK (self));
  gtk_size_group_add_widget (group, self->label);
}

void
stead_person_pick_set_label (SteadPersonPick *self,
                             const char      *label)
{
  g_return_if_fail (STEAD_IS_PERSON_PICK (self));

  gtk_label_set_text (GTK_LABEL (self->label), label);
  stead_ui_name_drop_downs (GTK_WIDGET (self));
}

void
stead_person_pick_set_above (SteadPersonPick *self)
{
  GtkLayoutManager *layout;

  g_return_if_fail (STEAD_IS_PERSON_PICK (self));
  layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 3);
}
