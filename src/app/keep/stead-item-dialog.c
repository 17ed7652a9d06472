/* stead-item-dialog.c - an item of the store room: new, or changed. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/keep/stead-item-dialog.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-store-watch.h"

#define N_KINDS (STEAD_ITEM_PRODUCE + 1)

struct _SteadItemDialog
{
  SteadDialog  parent_instance;

  SteadItem   *item;      /* as on file, or a new one */
  GPtrArray   *units;     /* of const SteadUnit, as the drop-down offers them */

  SteadField  *name, *reorder, *shelf, *storage, *allergens, *label_name;
  GtkDropDown *kind, *unit;
};

G_DEFINE_FINAL_TYPE (SteadItemDialog, stead_item_dialog, STEAD_TYPE_DIALOG)

const char *
stead_item_kind_label (SteadItemKind kind)
{
  switch (kind)
    {
    case STEAD_ITEM_FEED:
      return _("Feed");
    case STEAD_ITEM_BEDDING:
      return _("Litter");
    case STEAD_ITEM_PACKAGING:
      return _("Packaging");
    case STEAD_ITEM_INGREDIENT:
      return _("Ingredient");
    case STEAD_ITEM_SEED:
      return _("Seed and plants");
    case STEAD_ITEM_SUPPLY:
      return _("Other supply");
    case STEAD_ITEM_LIVESTOCK:
      return _("Young animals");
    case STEAD_ITEM_PRODUCE:
      return _("From the farm");
    default:
      g_return_val_if_reached (NULL);
    }
}

static const SteadUnit *
chosen_unit (SteadItemDialog *self)
{
  guint at = gtk_drop_down_get_selected (self->unit);

  return at < self->units->len ? self->units->pdata[at] : stead_unit_by_id ("ea");
}

static void
unit_cb (SteadItemDialog *self)
{
  stead_field_set_unit (self->reorder, chosen_unit (self));
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  SteadItem *item = data;

  stead_store_watch_id (store, &item->id);
  return stead_item_repo_save (store, item, error);
}

static gboolean
stead_item_dialog_save (SteadDialog *dialog,
                        GError     **error)
{
  SteadItemDialog *self = STEAD_ITEM_DIALOG (dialog);
  SteadItem *item = self->item;
  const char *name = NULL;
  gint64 shelf = 0;
  g_autofree char *step = NULL;
  gboolean good = stead_field_read_text (self->name, &name);

  good &= stead_field_read_quantity (self->reorder, NAN, &item->reorder_base);
  good &= stead_field_read_count (self->shelf, 0, &shelf);
  if (!good)
    return FALSE;
  g_free (item->name);
  item->name = g_strstrip (g_strdup (name));
  item->kind = (SteadItemKind) gtk_drop_down_get_selected (self->kind);
  item->unit = chosen_unit (self);
  item->shelf_life_days = (int) MIN (shelf, 36500);
  g_free (item->storage);
  item->storage = g_strdup (stead_field_get_text (self->storage));
  g_free (item->allergens);
  item->allergens = g_strdup (stead_field_get_text (self->allergens));
  g_free (item->label_name);
  item->label_name = g_strdup (stead_field_get_text (self->label_name));
  step = g_strdup_printf (item->id == 0 ? _("new item %s") : _("changes to item %s"), item->name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, item, error);
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_item_repo_delete (store, ((SteadItem *) data)->id, error);
}

static gboolean
stead_item_dialog_remove (SteadDialog *dialog,
                          GError     **error)
{
  SteadItemDialog *self = STEAD_ITEM_DIALOG (dialog);
  g_autofree char *step = g_strdup_printf (_("deleting item %s"), self->item->name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->item, error);
}

static void
fill_kinds (SteadItemDialog *self)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  for (int i = 0; i < N_KINDS; i++)
    gtk_string_list_append (names, stead_item_kind_label ((SteadItemKind) i));
  gtk_drop_down_set_model (self->kind, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->kind, self->item->kind);
}

static void
fill_units (SteadItemDialog *self)
{
  static const SteadDimension dimensions[] = {
    STEAD_DIMENSION_COUNT, STEAD_DIMENSION_MASS, STEAD_DIMENSION_VOLUME, STEAD_DIMENSION_LENGTH, STEAD_DIMENSION_AREA,
  };
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  guint chosen = 0;

  for (gsize d = 0; d < G_N_ELEMENTS (dimensions); d++)
    {
      gsize n;
      const SteadUnit * const *units = stead_unit_list (dimensions[d], &n);

      for (gsize i = 0; i < n; i++)
        {
          if (units[i] == self->item->unit)
            chosen = self->units->len;
          g_ptr_array_add (self->units, (gpointer) units[i]);
          gtk_string_list_append (names, stead_unit_symbol (units[i]));
        }
    }
  gtk_drop_down_set_model (self->unit, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->unit, chosen);
}

static void
show_item (SteadItemDialog *self)
{
  const SteadItem *item = self->item;

  fill_kinds (self);
  fill_units (self);
  unit_cb (self);
  stead_field_set_text (self->name, item->name != NULL ? item->name : "");
  stead_field_set_text (self->storage, item->storage != NULL ? item->storage : "");
  stead_field_set_text (self->allergens, item->allergens != NULL ? item->allergens : "");
  stead_field_set_text (self->label_name, item->label_name != NULL ? item->label_name : "");
  if (!isnan (item->reorder_base))
    stead_field_show_quantity (self->reorder, item->reorder_base);
  if (item->shelf_life_days > 0)
    stead_field_show_count (self->shelf, item->shelf_life_days);
}

static void
stead_item_dialog_dispose (GObject *object)
{
  SteadItemDialog *self = STEAD_ITEM_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_ITEM_DIALOG);
  g_clear_pointer (&self->item, stead_item_free);
  g_clear_pointer (&self->units, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_item_dialog_parent_class)->dispose (object);
}

static void
stead_item_dialog_class_init (SteadItemDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_item_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_item_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_item_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-item-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadItemDialog, name);
  gtk_widget_class_bind_template_child (widget_class, SteadItemDialog, reorder);
  gtk_widget_class_bind_template_child (widget_class, SteadItemDialog, shelf);
  gtk_widget_class_bind_template_child (widget_class, SteadItemDialog, storage);
  gtk_widget_class_bind_template_child (widget_class, SteadItemDialog, allergens);
  gtk_widget_class_bind_template_child (widget_class, SteadItemDialog, label_name);
  gtk_widget_class_bind_template_child (widget_class, SteadItemDialog, kind);
  gtk_widget_class_bind_template_child (widget_class, SteadItemDialog, unit);
}

static void
stead_item_dialog_init (SteadItemDialog *self)
{
  self->units = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->unit, "notify::selected", G_CALLBACK (unit_cb), self);
}

static SteadItem *
new_item (SteadDesk *desk)
{
  SteadItem *item = g_new0 (SteadItem, 1);

  item->unit = stead_unit_default (STEAD_DIMENSION_MASS, stead_desk_get_farm (desk)->units);
  item->reorder_base = NAN;
  return item;
}

/* Takes @item over. */
static void
show (GtkWidget *parent,
      SteadDesk *desk,
      SteadItem *item)
{
  gboolean is_new = item->id == 0;
  SteadItemDialog *self = g_object_new (STEAD_TYPE_ITEM_DIALOG, "title", is_new ? _("New item") : _("Change the item"),
                                        "delete-label", is_new ? NULL : _("Delete item"), NULL);

  self->item = item;
  show_item (self);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}

void
stead_item_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     item_id)
{
  g_autoptr(GError) error = NULL;
  SteadItem *item = item_id > 0 ? stead_item_repo_get (stead_desk_get_store (desk), item_id, &error)
                                : new_item (desk);

  if (item == NULL)
    stead_desk_say (desk, error->message, FALSE);
  else
    show (parent, desk, item);
}

void
stead_item_dialog_show_new (GtkWidget     *parent,
                            SteadDesk     *desk,
                            SteadItemKind  kind)
{
  SteadItem *item = new_item (desk);

  item->kind = kind;
  show (parent, desk, item);
}
