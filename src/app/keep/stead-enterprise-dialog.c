/* stead-enterprise-dialog.c - parts of the farm, and which batches and products they are of. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-enterprise-dialog.h"

#include "app/keep/stead-pick.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-batch-repo.h"
#include "store/stead-cash-repo.h"
#include "store/stead-product-repo.h"
#include "store/stead-store-watch.h"

/* A batch or product that may belong to the part. */
typedef struct
{
  gint64     id;
  gboolean   is_product;
  gboolean   was_in;
  GtkWidget *check;   /* not owned */
} Thing;

struct _SteadEnterpriseDialog
{
  SteadDialog      parent_instance;

  SteadEnterprise *enterprise;
  GArray          *all;         /* of Thing */

  SteadPick       *which;
  SteadField      *name;
  GtkBox          *things;
};

G_DEFINE_FINAL_TYPE (SteadEnterpriseDialog, stead_enterprise_dialog, STEAD_TYPE_DIALOG)

/* --- what belongs to it ---------------------------------------------------------------- */

static void
add_thing (SteadEnterpriseDialog *self,
           gint64                 id,
           gboolean               is_product,
           gint64                 enterprise_id,
           const char            *name)
{
  Thing thing = { .id = id, .is_product = is_product };

  thing.was_in = self->enterprise->id != 0 && enterprise_id == self->enterprise->id;
  thing.check = gtk_check_button_new_with_label (name);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (thing.check), thing.was_in);
  gtk_box_append (self->things, thing.check);
  g_array_append_val (self->all, thing);
}

static void
show_things (SteadEnterpriseDialog *self,
             SteadStore            *store)
{
  g_autoptr(GPtrArray) batches = stead_batch_repo_list (store, TRUE, NULL);
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, FALSE, NULL);

  for (guint i = 0; i < self->all->len; i++)
    gtk_box_remove (self->things, g_array_index (self->all, Thing, i).check);
  g_array_set_size (self->all, 0);
  for (guint i = 0; batches != NULL && i < batches->len; i++)
    {
      const SteadBatch *batch = batches->pdata[i];

      add_thing (self, batch->id, FALSE, stead_enterprise_repo_of_batch (store, batch->id, NULL), batch->name);
    }
  for (guint i = 0; products != NULL && i < products->len; i++)
    {
      const SteadProduct *product = products->pdata[i];

      add_thing (self, product->id, TRUE, stead_enterprise_repo_of_product (store, product->id, NULL), product->name);
    }
}

static gboolean
set_thing (SteadStore   *store,
           const Thing  *thing,
           gint64        enterprise_id,
           GError      **error)
{
  return thing->is_product ? stead_enterprise_repo_set_product (store, thing->id, enterprise_id, error)
         : stead_enterprise_repo_set_batch (store, thing->id, enterprise_id, error);
}

/* --- saving ------------------------------------------------------------------------------- */

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadEnterpriseDialog *self = data;

  stead_store_watch_id (store, &self->enterprise->id);
  if (!stead_enterprise_repo_save (store, self->enterprise, error))
    return FALSE;
  for (guint i = 0; i < self->all->len; i++)
    {
      const Thing *thing = &g_array_index (self->all, Thing, i);
      gboolean is_in = gtk_check_button_get_active (GTK_CHECK_BUTTON (thing->check));

      if (is_in != thing->was_in && !set_thing (store, thing, is_in ? self->enterprise->id : 0, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
stead_enterprise_dialog_save (SteadDialog  *dialog,
                              GError      **error)
{
  SteadEnterpriseDialog *self = STEAD_ENTERPRISE_DIALOG (dialog);
  const char *name = NULL;
  g_autofree char *step = NULL;

  if (!stead_field_read_text (self->name, &name))
    return FALSE;
  g_free (self->enterprise->name);
  self->enterprise->name = g_strstrip (g_strdup (name));
  /* Translators: name of a step to undo; a part of the farm: "eggs". */
  step = g_strdup_printf (_("part of the farm “%s”"), self->enterprise->name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, self, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_enterprise_repo_delete (store, ((SteadEnterprise *) data)->id, error);
}

static gboolean
stead_enterprise_dialog_remove (SteadDialog  *dialog,
                                GError      **error)
{
  SteadEnterpriseDialog *self = STEAD_ENTERPRISE_DIALOG (dialog);
  /* Translators: name of a step to undo; a part of the farm: "eggs". */
  g_autofree char *step = g_strdup_printf (_("deleting the part of the farm “%s”"), self->enterprise->name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->enterprise, error);
}

/* --- showing --------------------------------------------------------------------------------- */

static void
show_enterprise (SteadEnterpriseDialog *self,
                 SteadStore            *store,
                 gint64                 id)
{
  g_autoptr(GPtrArray) all = stead_enterprise_repo_list (store, NULL);

  g_clear_pointer (&self->enterprise, stead_enterprise_free);
  self->enterprise = g_new0 (SteadEnterprise, 1);
  for (guint i = 0; all != NULL && i < all->len; i++)
    {
      const SteadEnterprise *one = all->pdata[i];

      if (one->id != id)
        continue;
      self->enterprise->id = id;
      self->enterprise->name = g_strdup (one->name);
    }
  stead_field_set_text (self->name, self->enterprise->name != NULL ? self->enterprise->name : "");
  g_object_set (self, "delete-label", self->enterprise->id != 0 ? _("Delete") : NULL, NULL);
  show_things (self, store);
}

static void
which_cb (SteadEnterpriseDialog *self)
{
  show_enterprise (self, stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self))),
                   stead_pick_get (self->which));
}

static void
fill_which (SteadEnterpriseDialog *self,
            SteadStore            *store,
            gint64                 id)
{
  g_autoptr(GPtrArray) all = stead_enterprise_repo_list (store, NULL);

  stead_pick_append (self->which, 0, _("a new one"));
  for (guint i = 0; all != NULL && i < all->len; i++)
    stead_pick_append (self->which, ((SteadEnterprise *) all->pdata[i])->id, ((SteadEnterprise *) all->pdata[i])->name);
  stead_pick_show (self->which, id);
}

static void
stead_enterprise_dialog_dispose (GObject *object)
{
  SteadEnterpriseDialog *self = STEAD_ENTERPRISE_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_ENTERPRISE_DIALOG);
  g_clear_pointer (&self->enterprise, stead_enterprise_free);
  g_clear_pointer (&self->all, g_array_unref);
  G_OBJECT_CLASS (stead_enterprise_dialog_parent_class)->dispose (object);
}

static void
stead_enterprise_dialog_class_init (SteadEnterpriseDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_enterprise_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_enterprise_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_enterprise_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-enterprise-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadEnterpriseDialog, which);
  gtk_widget_class_bind_template_child (widget_class, SteadEnterpriseDialog, name);
  gtk_widget_class_bind_template_child (widget_class, SteadEnterpriseDialog, things);
  gtk_widget_class_bind_template_callback (widget_class, which_cb);
}

static void
stead_enterprise_dialog_init (SteadEnterpriseDialog *self)
{
  self->all = g_array_new (FALSE, FALSE, sizeof (Thing));
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_enterprise_dialog_show (GtkWidget *parent,
                              SteadDesk *desk,
                              gint64     enterprise_id)
{
  SteadStore *store;
  SteadEnterpriseDialog *self;

  g_return_if_fail (STEAD_IS_DESK (desk));

  store = stead_desk_get_store (desk);
  self = g_object_new (STEAD_TYPE_ENTERPRISE_DIALOG, "title", _("Parts of the farm"), NULL);
  fill_which (self, store, enterprise_id);
  show_enterprise (self, store, enterprise_id);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}
