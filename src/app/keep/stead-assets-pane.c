/* stead-assets-pane.c - things that last for years. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-assets-pane.h"

#include "answer/stead-asset-answer.h"
#include "app/keep/stead-asset-dialog.h"
#include "app/keep/stead-wear-dialog.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"

struct _SteadAssetsPane
{
  SteadPane    parent_instance;

  SteadTable  *table;
  SteadWhyBox *whys;
};

G_DEFINE_FINAL_TYPE (SteadAssetsPane, stead_assets_pane, STEAD_TYPE_PANE)

static const SteadAssetLine *
line_of (gpointer item)
{
  return stead_row_get (item);
}

static char *
money_text (gpointer pane,
            gint64   cents)
{
  return stead_money_format (cents, stead_desk_get_farm (stead_pane_get_desk (pane))->currency);
}

static char *
name_text (gpointer item,
           gpointer data)
{
  return g_strdup (line_of (item)->asset->name);
}

static char *
bought_text (gpointer item,
             gpointer data)
{
  return stead_day_format (line_of (item)->asset->bought_on, STEAD_DAY_STYLE_MEDIUM);
}

static char *
cost_text (gpointer item,
           gpointer data)
{
  const SteadAsset *asset = line_of (item)->asset;

  return money_text (data, asset->cost_cents + asset->extra_cents);
}

static char *
life_text (gpointer item,
           gpointer data)
{
  return g_strdup (line_of (item)->life);
}

static char *
worth_text (gpointer item,
            gpointer data)
{
  return money_text (data, line_of (item)->worth_cents);
}

static char *
year_text (gpointer item,
           gpointer data)
{
  return money_text (data, line_of (item)->year_cents);
}

static char *
borne_text (gpointer item,
            gpointer data)
{
  return g_strdup (line_of (item)->borne_by);
}

static int
compare_name (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  return g_utf8_collate (line_of ((gpointer) a)->asset->name, line_of ((gpointer) b)->asset->name);
}

static int
compare_worth (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  gint64 x = line_of ((gpointer) a)->worth_cents, y = line_of ((gpointer) b)->worth_cents;

  return (x > y) - (x < y);
}

static void
open_asset (gpointer item,
            gpointer data)
{
  stead_asset_dialog_show (data, stead_pane_get_desk (data), line_of (item)->asset->id);
}

static void
new_cb (SteadPane *pane)
{
  stead_asset_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0);
}

static void
edit_cb (SteadPane *pane)
{
  const SteadAssetLine *line = stead_pane_get_chosen (pane);

  if (line != NULL)
    stead_asset_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), line->asset->id);
}

static void
wear_cb (SteadPane *pane)
{
  const SteadAssetLine *line = stead_pane_get_chosen (pane);

  if (line != NULL)
    stead_wear_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), line->asset->id);
}

static void
stead_assets_pane_refresh (SteadPane *pane)
{
  SteadAssetsPane *self = STEAD_ASSETS_PANE (pane);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadAssetAnswer) answer = stead_asset_answer_new (stead_pane_get_store (pane), &error);
  g_autoptr(GListModel) model = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  stead_pane_say (pane, answer != NULL ? answer->sentence : NULL, error);
  gtk_widget_set_visible (GTK_WIDGET (self->whys), answer != NULL);
  if (answer != NULL)
    {
      whys = stead_asset_answer_whys (answer);
      stead_why_box_set (self->whys, whys);
      model = stead_rows_from_array (g_steal_pointer (&answer->lines), (GDestroyNotify) stead_asset_line_free);
    }
  stead_table_set_model (self->table, model);
}

static void
stead_assets_pane_class_init (SteadAssetsPaneClass *klass)
{
  STEAD_PANE_CLASS (klass)->refresh = stead_assets_pane_refresh;
}

static void
stead_assets_pane_init (SteadAssetsPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  self->whys = STEAD_WHY_BOX (stead_why_box_new ());
  stead_pane_add_head (pane, GTK_WIDGET (self->whys));
  self->table = stead_pane_add_table (pane, _("Things that last"));
  stead_table_add_column (self->table, _("Thing"), FALSE, FALSE, name_text, NULL, compare_name, self);
  stead_table_add_column (self->table, _("Bought"), FALSE, FALSE, bought_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Cost"), TRUE, FALSE, cost_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Lasts"), FALSE, FALSE, life_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Wear in 12 months"), TRUE, FALSE, year_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Worth today"), TRUE, FALSE, worth_text, NULL, compare_worth, self);
  stead_table_add_column (self->table, _("Borne by"), FALSE, TRUE, borne_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("A coop, a cooler, a scale: what lasts for years belongs here."));
  stead_table_set_activate (self->table, open_asset, self);
  stead_pane_add_button (pane, _("New thing…"), G_CALLBACK (new_cb));
  stead_pane_add_button (pane, _("Change…"), G_CALLBACK (edit_cb));
  stead_pane_add_button (pane, _("Record use…"), G_CALLBACK (wear_cb));
}
