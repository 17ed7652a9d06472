/* stead-place-dialog.c - a place of the farm: its name, what it is, and its floor.
 *
 * A tank is made where its measures are asked for, with its fish; here it gets another name.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/keep/stead-place-dialog.h"

#include "answer/stead-places-answer.h"
#include "app/stead-form.h"
#include "store/stead-store-watch.h"

/* Those that can be made here, what is asked for most often first. */
static const SteadPlaceKind kinds[] = {
  STEAD_PLACE_KITCHEN, STEAD_PLACE_STORE_ROOM, STEAD_PLACE_STALL, STEAD_PLACE_COOP, STEAD_PLACE_BAY,
};

typedef struct
{
  SteadPlaceFacts *place;
  SteadField      *name, *floor;
  GtkDropDown     *kind;    /* (nullable): a tank stays one */
} Form;

static void
form_free (gpointer data)
{
  stead_place_facts_free (((Form *) data)->place);
  g_free (data);
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadPlaceFacts *place = ((Form *) data)->place;

  stead_store_watch_id (store, &place->id);
  return stead_place_repo_save (store, place, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_place_repo_delete (store, ((Form *) data)->place->id, error);
}

static gboolean
save_cb (SteadForm  *dialog,
         gpointer    data,
         GError    **error)
{
  Form *form = data;
  SteadPlaceFacts *place = form->place;
  g_autofree char *step = NULL;
  const char *name = NULL;
  gboolean good = stead_field_read_text (form->name, &name);

  good &= stead_field_read_quantity (form->floor, NAN, &place->area_m2);
  if (!good)
    return FALSE;
  g_free (place->name);
  place->name = g_strstrip (g_strdup (name));
  if (form->kind != NULL)
    place->kind = kinds[gtk_drop_down_get_selected (form->kind)];
  /* Translators: name of a step to undo; name of a place. */
  step = g_strdup_printf (_("place “%s”"), place->name);
  return stead_form_act (dialog, step, save_act, form, error);
}

static gboolean
remove_cb (SteadForm  *dialog,
           gpointer    data,
           GError    **error)
{
  /* Translators: name of a step to undo; name of a place. */
  g_autofree char *step = g_strdup_printf (_("deleting the place “%s”"), ((Form *) data)->place->name);

  return stead_form_act (dialog, step, remove_act, data, error);
}

/* (nullable): it is gone */
static SteadPlaceFacts *
load_place (SteadStore     *store,
            gint64          place_id,
            SteadPlaceKind  kind)
{
  g_autoptr(GPtrArray) places = place_id != 0 ? stead_place_repo_list (store, NULL) : NULL;
  SteadPlaceFacts *place;

  for (guint i = 0; places != NULL && i < places->len; i++)
    if (((SteadPlaceFacts *) places->pdata[i])->id == place_id)
      return g_ptr_array_steal_index (places, i);
  if (place_id != 0)
    return NULL;
  place = g_new0 (SteadPlaceFacts, 1);
  place->kind = kind;
  place->area_m2 = NAN;
  return place;
}

static GtkDropDown *
add_kind (SteadForm      *dialog,
          SteadPlaceKind  kind)
{
  const char *words[G_N_ELEMENTS (kinds) + 1] = { NULL };
  guint chosen = 0;

  if (kind == STEAD_PLACE_TANK)
    return NULL;
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      words[i] = stead_place_kind_label (kinds[i]);
      chosen = kinds[i] == kind ? i : chosen;
    }
  return stead_form_add_choice (dialog, _("What it is"), words, chosen);
}

void
stead_place_dialog_show (GtkWidget      *parent,
                         SteadDesk      *desk,
                         gint64          place_id,
                         SteadPlaceKind  kind)
{
  SteadPlaceFacts *place = load_place (stead_desk_get_store (desk), place_id, kind);
  SteadForm *dialog;
  Form *form;

  g_return_if_fail (STEAD_IS_DESK (desk));

  if (place == NULL)
    return;
  form = g_new0 (Form, 1);
  form->place = place;
  dialog = stead_form_new (place_id == 0 ? _("New place") : _("Place"), _("Save place"),
                           place_id != 0 ? _("Delete place") : NULL, save_cb, remove_cb, form, form_free);
  form->name = stead_form_add_wide (dialog, _("Name of the place"));
  g_object_set (form->name, "required", TRUE, "hint", _("teaching kitchen, walk-in cooler"), NULL);
  form->kind = add_kind (dialog, place->kind);
  form->floor = stead_form_add (dialog, desk, _("Floor"), STEAD_FIELD_QUANTITY);
  stead_field_set_unit (form->floor, stead_unit_default (STEAD_DIMENSION_AREA, stead_desk_get_farm (desk)->units));
  if (place->name != NULL)
    stead_field_set_text (form->name, place->name);
  if (!isnan (place->area_m2))
    stead_field_show_quantity (form->floor, place->area_m2);
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (form->name));
}
