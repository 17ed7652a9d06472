/* stead-wear-dialog.c - a thing that wears by use was used. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-wear-dialog.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-asset-repo.h"
#include "store/stead-batch-repo.h"

struct _SteadWearDialog
{
  SteadDialog  parent_instance;

  SteadAsset  *asset;
  GPtrArray   *batches;    /* of SteadBatch, as the drop-down offers them */

  GtkLabel    *about;
  GtkDropDown *batch;
  SteadField  *units, *day;
};

G_DEFINE_FINAL_TYPE (SteadWearDialog, stead_wear_dialog, STEAD_TYPE_DIALOG)

typedef struct
{
  gint64   asset_id, batch_id;
  SteadDay day;
  double   units;
} Wear;

static gboolean
wear_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  const Wear *wear = data;

  return stead_asset_repo_add_use (store, wear->asset_id, wear->batch_id, wear->day, wear->units, error);
}

static gboolean
stead_wear_dialog_save (SteadDialog *dialog,
                        GError     **error)
{
  SteadWearDialog *self = STEAD_WEAR_DIALOG (dialog);
  guint at = gtk_drop_down_get_selected (self->batch);
  Wear wear = { .asset_id = self->asset->id };
  g_autofree char *step = NULL;
  gboolean good = stead_field_read_number (self->units, 0, &wear.units);

  good &= stead_field_read_day (self->day, STEAD_DAY_NONE, &wear.day);
  if (!good || at >= self->batches->len)
    return FALSE;
  if (!(wear.units > 0))
    {
      stead_field_set_error (self->units, _("Enter more than zero."));
      return FALSE;
    }
  wear.batch_id = ((SteadBatch *) self->batches->pdata[at])->id;
  /* Translators: what was used follows: "use of Egg washer" */
  step = g_strdup_printf (_("use of %s"), self->asset->name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, wear_act, &wear, error);
}

static void
show_asset (SteadWearDialog *self,
            SteadStore      *store)
{
  const SteadAsset *asset = self->asset;
  g_autofree char *life = stead_number_format (asset->life_units, 1);
  /* Translators: a thing, a number, and what its use is counted in: "Egg washer lasts for 2,000 hours." */
  g_autofree char *text = asset->method != STEAD_DEPRECIATION_UNITS
                          ? g_strdup (_("Each month’s wear is charged to the batches by what they used of it."))
                          : g_strdup_printf (_("%s lasts for %s %s. Each use is charged to the batch that used it."),
                                             asset->name, life, asset->unit_name != NULL ? asset->unit_name : _("uses"));
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);

  gtk_label_set_text (self->about, text);
  for (guint i = 0; i < self->batches->len; i++)
    gtk_string_list_append (names, ((SteadBatch *) self->batches->pdata[i])->name);
  gtk_drop_down_set_model (self->batch, G_LIST_MODEL (names));
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, stead_store_get_today (store));
}

static void
stead_wear_dialog_dispose (GObject *object)
{
  SteadWearDialog *self = STEAD_WEAR_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_WEAR_DIALOG);
  g_clear_pointer (&self->asset, stead_asset_free);
  g_clear_pointer (&self->batches, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_wear_dialog_parent_class)->dispose (object);
}

static void
stead_wear_dialog_class_init (SteadWearDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_wear_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_wear_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-wear-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadWearDialog, about);
  gtk_widget_class_bind_template_child (widget_class, SteadWearDialog, batch);
  gtk_widget_class_bind_template_child (widget_class, SteadWearDialog, units);
  gtk_widget_class_bind_template_child (widget_class, SteadWearDialog, day);
}

static void
stead_wear_dialog_init (SteadWearDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_wear_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     asset_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadAsset) asset = stead_asset_repo_get (store, asset_id, &error);
  g_autoptr(GPtrArray) batches = asset != NULL ? stead_batch_repo_list (store, FALSE, &error) : NULL;
  SteadWearDialog *self;

  if (batches == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  if ((asset->method != STEAD_DEPRECIATION_UNITS && asset->share_by != STEAD_SHARE_USE) || batches->len == 0)
    {
      stead_desk_say (desk, batches->len == 0 ? _("There is no batch yet that could use something.")
                      : _("This thing wears by time, not by use. Change how it wears down first."), FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_WEAR_DIALOG, "title", _("Record use"), NULL);
  self->asset = g_steal_pointer (&asset);
  self->batches = g_steal_pointer (&batches);
  show_asset (self, store);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->units));
}
