/* stead-asset-dialog.c - a thing that lasts for years: new, or changed.
 *
 * By fixed parts one batch is named here as the one that bears the cost, with its share;
 * the parts of other batches that the file holds are kept as they are.  By days, space
 * or use all batches that share it are checked; a kitchen batch is over too soon for it.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-asset-answer.h"
#include "answer/stead-cash-words.h"
#include "app/keep/stead-asset-dialog.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-batch-repo.h"
#include "store/stead-store-watch.h"

#define N_METHODS (STEAD_DEPRECIATION_UNITS + 1)
#define N_SHARE_BY (STEAD_SHARE_USE + 1)

struct _SteadAssetDialog
{
  SteadDialog  parent_instance;

  SteadAsset  *asset;
  GPtrArray   *batches;     /* of SteadBatch: the drop-down offers them after "nobody yet" */
  GPtrArray   *checks;      /* not owned, of GtkCheckButton: one for each batch */

  SteadField  *name, *bought, *cost, *extra, *salvage, *life, *unit, *gone, *sold, *share;
  GtkDropDown *method, *sharing, *batch;
  GtkCheckButton *gift;
  GtkWidget   *batch_box, *sharers_box;
  GtkBox      *sharers;
};

G_DEFINE_FINAL_TYPE (SteadAssetDialog, stead_asset_dialog, STEAD_TYPE_DIALOG)

static gboolean
by_units (SteadAssetDialog *self)
{
  return gtk_drop_down_get_selected (self->method) == STEAD_DEPRECIATION_UNITS;
}

static void
method_cb (SteadAssetDialog *self)
{
  GtkLayoutManager *grid = gtk_widget_get_layout_manager (gtk_widget_get_parent (GTK_WIDGET (self->life)));

  g_object_set (self->life, "label", by_units (self) ? _("Lasts for how much use") : _("Lasts how many years"), NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->unit), by_units (self));
  g_object_set (gtk_layout_manager_get_layout_child (grid, GTK_WIDGET (self->life)), "column-span", by_units (self) ? 1 : 2,
                NULL);
}

static SteadShareBy
share_by (SteadAssetDialog *self)
{
  return (SteadShareBy) MIN (gtk_drop_down_get_selected (self->sharing), N_SHARE_BY - 1);
}

static void
sharing_cb (SteadAssetDialog *self)
{
  gboolean by_parts = share_by (self) == STEAD_SHARE_PARTS;

  gtk_widget_set_visible (self->batch_box, by_parts);
  gtk_widget_set_visible (GTK_WIDGET (self->share), by_parts);
  gtk_widget_set_visible (self->sharers_box, !by_parts);
}

static gint64
batch_id_at (SteadAssetDialog *self,
             guint             i)
{
  return ((SteadBatch *) self->batches->pdata[i])->id;
}

/* Takes the share of the chosen batch into the asset's shares. */
static void
set_part (SteadAssetDialog *self,
          double            frac)
{
  GArray *shares = self->asset->shares;
  guint at = gtk_drop_down_get_selected (self->batch);
  gint64 batch_id = at > 0 && at <= self->batches->len ? batch_id_at (self, at - 1) : 0;

  for (guint i = shares->len; i-- > 0;)
    if (i == 0 || g_array_index (shares, SteadAssetShare, i).batch_id == batch_id)
      g_array_remove_index (shares, i);
  if (batch_id != 0 && frac > 0)
    {
      SteadAssetShare share = { .batch_id = batch_id, .frac = frac };

      g_array_prepend_val (shares, share);
    }
}

/* The checked batches share it, each as the rule says. */
static void
set_sharers (SteadAssetDialog *self)
{
  g_array_set_size (self->asset->shares, 0);
  for (guint i = 0; i < self->batches->len; i++)
    if (gtk_check_button_get_active (self->checks->pdata[i]))
      {
        SteadAssetShare share = { .batch_id = batch_id_at (self, i), .frac = 1 };

        g_array_append_val (self->asset->shares, share);
      }
}

/* Of parts that were shared by another rule before, nothing is left. */
static void
set_share (SteadAssetDialog *self,
           double            frac)
{
  if (share_by (self) != STEAD_SHARE_PARTS)
    set_sharers (self);
  else
    {
      if (self->asset->share_by != STEAD_SHARE_PARTS)
        g_array_set_size (self->asset->shares, 0);
      set_part (self, frac);
    }
  self->asset->share_by = share_by (self);
}

static gboolean
read_numbers (SteadAssetDialog *self,
              double           *life,
              double           *share)
{
  SteadAsset *asset = self->asset;
  gboolean good = stead_field_read_day (self->bought, STEAD_DAY_NONE, &asset->bought_on);

  good &= stead_field_read_money (self->cost, 0, &asset->cost_cents);
  good &= stead_field_read_money (self->extra, 0, &asset->extra_cents);
  good &= stead_field_read_money (self->salvage, 0, &asset->salvage_cents);
  good &= stead_field_read_number (self->life, 0, life);
  good &= stead_field_read_day (self->gone, STEAD_DAY_NONE, &asset->gone_on);
  good &= stead_field_read_money (self->sold, -1, &asset->gone_cents);
  good &= stead_field_read_number (self->share, 1, share);
  return good;
}

static gboolean
check_together (SteadAssetDialog *self,
                double            life,
                double            share)
{
  const SteadAsset *asset = self->asset;

  if (!(life > 0))
    {
      stead_field_set_error (self->life, _("Enter more than zero, such as 8."));
      return FALSE;
    }
  if (asset->salvage_cents > asset->cost_cents + asset->extra_cents)
    {
      stead_field_set_error (self->salvage, _("It cannot be worth more at the end than it cost."));
      return FALSE;
    }
  if (asset->gone_on != STEAD_DAY_NONE && asset->gone_on < asset->bought_on)
    {
      stead_field_set_error (self->gone, _("The last day cannot come before the day it was bought."));
      return FALSE;
    }
  if (asset->gone_cents >= 0 && asset->gone_on == STEAD_DAY_NONE)
    {
      stead_field_set_error (self->gone, _("Enter the day on which it was sold."));
      return FALSE;
    }
  if (!(share > 0 && share <= 1))
    {
      stead_field_set_error (self->share, _("Enter a share from 1 to 100."));
      return FALSE;
    }
  return TRUE;
}

static gboolean
save_act (SteadStore *store,
          gpointer    data,
          GError    **error)
{
  SteadAsset *asset = data;

  stead_store_watch_id (store, &asset->id);
  return stead_asset_repo_save (store, asset, error);
}

static gboolean
stead_asset_dialog_save (SteadDialog *dialog,
                         GError     **error)
{
  SteadAssetDialog *self = STEAD_ASSET_DIALOG (dialog);
  SteadAsset *asset = self->asset;
  const char *name = NULL;
  double life = 0, share = 1;
  g_autofree char *step = NULL;
  gboolean good = stead_field_read_text (self->name, &name);

  good &= read_numbers (self, &life, &share);
  if (!good || !check_together (self, life, share))
    return FALSE;
  g_free (asset->name);
  asset->name = g_strstrip (g_strdup (name));
  asset->method = (SteadDepreciationMethod) gtk_drop_down_get_selected (self->method);
  asset->life_years = by_units (self) ? 0 : life;
  asset->life_units = by_units (self) ? life : 0;
  g_free (asset->unit_name);
  asset->unit_name = by_units (self) ? g_strdup (stead_field_get_text (self->unit)) : NULL;
  asset->is_gift = gtk_check_button_get_active (self->gift);
  set_share (self, share);
  step = g_strdup_printf (asset->id == 0 ? _("new thing %s") : _("changes to %s"), asset->name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, asset, error);
}

static gboolean
remove_act (SteadStore *store,
            gpointer    data,
            GError    **error)
{
  return stead_asset_repo_delete (store, ((SteadAsset *) data)->id, error);
}

static gboolean
stead_asset_dialog_remove (SteadDialog *dialog,
                           GError     **error)
{
  SteadAssetDialog *self = STEAD_ASSET_DIALOG (dialog);
  g_autofree char *step = g_strdup_printf (_("deleting %s"), self->asset->name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->asset, error);
}

static gboolean
bears (const SteadAsset *asset,
       gint64            batch_id)
{
  for (guint i = 0; i < asset->shares->len; i++)
    if (g_array_index (asset->shares, SteadAssetShare, i).batch_id == batch_id)
      return TRUE;
  return FALSE;
}

/* (transfer full): batches under way, and those that bear a share; a kitchen batch if it does */
static GPtrArray *
list_batches (SteadAssetDialog *self,
              SteadStore       *store)
{
  g_autoptr(GPtrArray) batches = stead_batch_repo_list (store, TRUE, NULL);

  if (batches == NULL)
    return g_ptr_array_new ();
  for (guint i = batches->len; i-- > 0;)
    {
      const SteadBatch *batch = batches->pdata[i];

      if ((batch->kind == STEAD_BATCH_KITCHEN || batch->ended_on != STEAD_DAY_NONE) && !bears (self->asset, batch->id))
        g_ptr_array_remove_index (batches, i);
    }
  return g_steal_pointer (&batches);
}

static void
fill_batches (SteadAssetDialog *self,
              SteadStore       *store)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  const SteadAssetShare *first = self->asset->shares->len > 0
                                 ? &g_array_index (self->asset->shares, SteadAssetShare, 0) : NULL;
  guint chosen = 0;

  self->batches = list_batches (self, store);
  gtk_string_list_append (names, _("nobody yet"));
  for (guint i = 0; i < self->batches->len; i++)
    {
      const SteadBatch *batch = self->batches->pdata[i];
      GtkWidget *check = gtk_check_button_new_with_label (batch->name);

      gtk_string_list_append (names, batch->name);
      if (first != NULL ? first->batch_id == batch->id : self->asset->id == 0 && i == 0)
        chosen = i + 1;
      gtk_check_button_set_active (GTK_CHECK_BUTTON (check), bears (self->asset, batch->id));
      gtk_box_append (self->sharers, check);
      g_ptr_array_add (self->checks, check);
    }
  gtk_drop_down_set_model (self->batch, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->batch, chosen);
  stead_field_show_number (self->share, first != NULL ? first->frac : 1);
}

static void
fill_choices (SteadAssetDialog *self,
              SteadStore       *store)
{
  g_autoptr(GtkStringList) methods = gtk_string_list_new (NULL);
  g_autoptr(GtkStringList) rules = gtk_string_list_new (NULL);

  for (int i = 0; i < N_METHODS; i++)
    gtk_string_list_append (methods, stead_asset_answer_method_name ((SteadDepreciationMethod) i));
  gtk_drop_down_set_model (self->method, G_LIST_MODEL (methods));
  gtk_drop_down_set_selected (self->method, self->asset->method);
  for (int i = 0; i < N_SHARE_BY; i++)
    gtk_string_list_append (rules, stead_cash_words_share_by ((SteadShareBy) i));
  gtk_drop_down_set_model (self->sharing, G_LIST_MODEL (rules));
  gtk_drop_down_set_selected (self->sharing, self->asset->share_by);
  fill_batches (self, store);
  sharing_cb (self);
}

static void
show_asset (SteadAssetDialog *self,
            SteadDesk        *desk)
{
  const SteadAsset *asset = self->asset;
  SteadStore *store = stead_desk_get_store (desk);
  SteadField *sums[] = { self->cost, self->extra, self->salvage, self->sold };
  SteadField *days[] = { self->bought, self->gone };

  for (gsize i = 0; i < G_N_ELEMENTS (sums); i++)
    stead_field_set_currency (sums[i], stead_desk_get_farm (desk)->currency);
  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    stead_field_set_today (days[i], stead_store_get_today (store));
  fill_choices (self, store);
  method_cb (self);
  if (asset->id == 0)
    {
      stead_field_show_day (self->bought, stead_store_get_today (store));
      return;
    }
  stead_field_set_text (self->name, asset->name);
  stead_field_show_day (self->bought, asset->bought_on);
  stead_field_show_money (self->cost, asset->cost_cents);
  stead_field_show_money (self->extra, asset->extra_cents);
  stead_field_show_money (self->salvage, asset->salvage_cents);
  stead_field_show_number (self->life, by_units (self) ? asset->life_units : asset->life_years);
  stead_field_set_text (self->unit, asset->unit_name != NULL ? asset->unit_name : "");
  if (asset->gone_on != STEAD_DAY_NONE)
    stead_field_show_day (self->gone, asset->gone_on);
  if (asset->gone_cents >= 0)
    stead_field_show_money (self->sold, asset->gone_cents);
  gtk_check_button_set_active (self->gift, asset->is_gift);
}

static void
stead_asset_dialog_dispose (GObject *object)
{
  SteadAssetDialog *self = STEAD_ASSET_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_ASSET_DIALOG);
  g_clear_pointer (&self->asset, stead_asset_free);
  g_clear_pointer (&self->batches, g_ptr_array_unref);
  g_clear_pointer (&self->checks, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_asset_dialog_parent_class)->dispose (object);
}

static void
stead_asset_dialog_class_init (SteadAssetDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_asset_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_asset_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_asset_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-asset-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, name);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, bought);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, cost);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, extra);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, salvage);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, life);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, unit);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, gone);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, sold);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, share);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, method);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, sharing);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, batch);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, batch_box);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, sharers_box);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, sharers);
  gtk_widget_class_bind_template_child (widget_class, SteadAssetDialog, gift);
  gtk_widget_class_bind_template_callback (widget_class, method_cb);
  gtk_widget_class_bind_template_callback (widget_class, sharing_cb);
}

static void
stead_asset_dialog_init (SteadAssetDialog *self)
{
  self->checks = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
stead_asset_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     asset_id)
{
  g_autoptr(GError) error = NULL;
  SteadAsset *asset = asset_id > 0 ? stead_asset_repo_get (stead_desk_get_store (desk), asset_id, &error)
                                   : stead_asset_new ();
  SteadAssetDialog *self;

  if (asset == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_ASSET_DIALOG,
                       "title", asset_id > 0 ? _("Change a thing that lasts") : _("New thing that lasts"),
                       "delete-label", asset_id > 0 ? _("Delete it") : NULL, NULL);
  self->asset = asset;
  show_asset (self, desk);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}
