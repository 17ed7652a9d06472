/* stead-places-pane.c - the farm's places, and what is in each of them. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-places-pane.h"

#include "answer/stead-places-answer.h"
#include "app/keep/stead-place-dialog.h"

struct _SteadPlacesPane
{
  SteadPane   parent_instance;

  SteadTable *table;
};

G_DEFINE_FINAL_TYPE (SteadPlacesPane, stead_places_pane, STEAD_TYPE_PANE)

static const SteadPlaceRow *
row_of (gconstpointer item)
{
  return stead_row_get ((gpointer) item);
}

static char *
name_text (gpointer item,
           gpointer data)
{
  return g_strdup (row_of (item)->place->name);
}

static char *
kind_text (gpointer item,
           gpointer data)
{
  return g_strdup (stead_place_kind_label (row_of (item)->place->kind));
}

static char *
floor_text (gpointer item,
            gpointer data)
{
  return g_strdup (row_of (item)->floor);
}

static char *
there_text (gpointer item,
            gpointer data)
{
  return g_strdup (row_of (item)->there);
}

static int
compare_name (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  return g_utf8_collate (row_of (a)->place->name, row_of (b)->place->name);
}

static int
compare_kind (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  return g_utf8_collate (stead_place_kind_label (row_of (a)->place->kind),
                         stead_place_kind_label (row_of (b)->place->kind));
}

static void
open_place (gpointer item,
            gpointer data)
{
  const SteadPlaceFacts *place = row_of (item)->place;

  stead_place_dialog_show (data, stead_pane_get_desk (data), place->id, place->kind);
}

static void
new_cb (SteadPane *pane)
{
  stead_place_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0, STEAD_PLACE_KITCHEN);
}

static void
change_cb (SteadPane *pane)
{
  const SteadPlaceRow *row = stead_pane_get_chosen (pane);

  if (row != NULL)
    stead_place_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), row->place->id, row->place->kind);
}

static void
stead_places_pane_refresh (SteadPane *pane)
{
  SteadPlacesPane *self = STEAD_PLACES_PANE (pane);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPlacesAnswer) answer = stead_places_answer_new (stead_pane_get_store (pane), &error);
  g_autoptr(GListModel) model = NULL;

  stead_pane_say (pane, answer != NULL ? answer->sentence : NULL, error);
  if (answer != NULL)
    model = stead_rows_from_array (g_steal_pointer (&answer->rows), (GDestroyNotify) stead_place_row_free);
  stead_table_set_model (self->table, model);
}

static void
stead_places_pane_class_init (SteadPlacesPaneClass *klass)
{
  STEAD_PANE_CLASS (klass)->refresh = stead_places_pane_refresh;
}

static void
stead_places_pane_init (SteadPlacesPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  self->table = stead_pane_add_table (pane, _("Places"));
  stead_table_add_column (self->table, _("Place"), FALSE, FALSE, name_text, NULL, compare_name, self);
  stead_table_add_column (self->table, _("What it is"), FALSE, FALSE, kind_text, NULL, compare_kind, self);
  stead_table_add_column (self->table, _("Floor"), TRUE, FALSE, floor_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("What is there"), FALSE, TRUE, there_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("A kitchen, a cooler, a stall, a hen house: where things are belongs here."));
  stead_table_set_activate (self->table, open_place, self);
  stead_pane_add_button (pane, _("New place…"), G_CALLBACK (new_cb));
  stead_pane_add_button (pane, _("Change…"), G_CALLBACK (change_cb));
}
