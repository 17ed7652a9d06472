/* stead-part-dialog.c - one ingredient of a kitchen batch: another amount, one more, one less.
 *
 * The recipe stays as it is.  Another amount takes in proportion more or less out of the
 * store room; what is added is measured as it was bought.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/make/stead-part-dialog.h"

#include "app/keep/stead-pick.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "core/stead-sensible.h"

struct _SteadPartDialog
{
  SteadDialog      parent_instance;

  gint64           batch_id;
  gint64           part_id;        /* 0: a new one */
  double           amount, need_base;
  const SteadUnit *unit;           /* of @amount */
  char            *name;           /* of the item */
  GPtrArray       *items;          /* of SteadItem; for a new one */

  SteadPick       *item;
  SteadField      *wanted;
};

G_DEFINE_FINAL_TYPE (SteadPartDialog, stead_part_dialog, STEAD_TYPE_DIALOG)

typedef struct
{
  SteadPartDialog *self;
  gint64           item_id;
  double           base;
} Part;

static const SteadItem *
chosen_item (SteadPartDialog *self)
{
  gint64 id = stead_pick_get (self->item);

  for (guint i = 0; self->items != NULL && i < self->items->len; i++)
    if (((SteadItem *) self->items->pdata[i])->id == id)
      return self->items->pdata[i];
  return NULL;
}

static void
item_cb (SteadPartDialog *self)
{
  const SteadItem *item = chosen_item (self);

  if (item == NULL)
    return;
  self->unit = item->unit;
  stead_field_set_unit (self->wanted, g_str_equal (item->unit->id, "ea") ? NULL : item->unit);
}

/* --- saving ------------------------------------------------------------------------------ */

static gboolean
part_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  const Part *part = data;
  const SteadPartDialog *self = part->self;
  double amount = stead_quantity_from_base (part->base, self->unit);

  if (self->part_id == 0)
    return stead_kitchen_repo_add_part (store, self->batch_id, part->item_id, amount, self->unit, part->base, error);
  return stead_kitchen_repo_set_part (store, self->part_id, amount, self->unit, self->need_base * amount / self->amount,
                                      error);
}

static gboolean
stead_part_dialog_save (SteadDialog *dialog,
                        GError     **error)
{
  SteadPartDialog *self = STEAD_PART_DIALOG (dialog);
  const SteadItem *item = chosen_item (self);
  Part part = { .self = self, .item_id = item != NULL ? item->id : 0 };
  g_autofree char *amount = NULL, *step = NULL;

  if (!stead_field_read_quantity (self->wanted, 0, &part.base))
    return FALSE;
  if (!(part.base > 0))
    {
      stead_field_set_error (self->wanted, _("Enter more than zero."));
      return FALSE;
    }
  amount = stead_sensible_format (stead_quantity_from_base (part.base, self->unit), self->unit);
  /* Translators: a step that can be undone: an amount with its unit, an ingredient. */
  step = g_strdup_printf (_("%s of “%s” in the batch"), amount, item != NULL ? item->name : self->name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, part_act, &part, error);
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_kitchen_repo_drop_part (store, ((SteadPartDialog *) data)->part_id, error);
}

static gboolean
stead_part_dialog_remove (SteadDialog *dialog,
                          GError     **error)
{
  SteadPartDialog *self = STEAD_PART_DIALOG (dialog);
  /* Translators: a step that can be undone; an ingredient follows. */
  g_autofree char *step = g_strdup_printf (_("leaving out “%s”"), self->name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self, error);
}

/* --- the object --------------------------------------------------------------------------- */

static void
stead_part_dialog_dispose (GObject *object)
{
  SteadPartDialog *self = STEAD_PART_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_PART_DIALOG);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_clear_pointer (&self->name, g_free);
  G_OBJECT_CLASS (stead_part_dialog_parent_class)->dispose (object);
}

static void
stead_part_dialog_class_init (SteadPartDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_part_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_part_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_part_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("make/stead-part-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadPartDialog, item);
  gtk_widget_class_bind_template_child (widget_class, SteadPartDialog, wanted);
  gtk_widget_class_bind_template_callback (widget_class, item_cb);
}

static void
stead_part_dialog_init (SteadPartDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* --- opening -------------------------------------------------------------------------------- */

void
stead_part_dialog_show (GtkWidget              *parent,
                        SteadDesk              *desk,
                        const SteadKitchenPart *part)
{
  SteadPartDialog *self = g_object_new (STEAD_TYPE_PART_DIALOG, "title", part->item_name,
                                        "delete-label", _("Leave it out"), NULL);
  g_autofree char *amount = stead_sensible_format (part->amount, part->unit);

  self->part_id = part->id;
  self->amount = part->amount;
  self->unit = part->unit;
  self->need_base = part->need_base;
  self->name = g_strdup (part->item_name);
  gtk_widget_hide (GTK_WIDGET (self->item));
  stead_field_set_unit (self->wanted, g_str_equal (part->unit->id, "ea") ? NULL : part->unit);
  stead_field_set_text (self->wanted, amount);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->wanted));
}

void
stead_part_dialog_show_new (GtkWidget *parent,
                            SteadDesk *desk,
                            gint64     batch_id)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) items = stead_item_repo_list (stead_desk_get_store (desk), &error);
  SteadPartDialog *self;

  if (items == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_PART_DIALOG, "title", _("Another ingredient"), NULL);
  self->batch_id = batch_id;
  self->items = g_steal_pointer (&items);
  for (guint i = 0; i < self->items->len; i++)
    {
      const SteadItem *item = self->items->pdata[i];

      if (item->kind == STEAD_ITEM_INGREDIENT || item->kind == STEAD_ITEM_PRODUCE || item->kind == STEAD_ITEM_PACKAGING
          || item->kind == STEAD_ITEM_SUPPLY)
        stead_pick_append (self->item, item->id, item->name);
    }
  stead_pick_show (self->item, 0);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  item_cb (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->wanted));
}
