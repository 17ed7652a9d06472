/* stead-put-dialog.c - a lot goes to another place. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-put-dialog.h"

#include "app/keep/stead-pick.h"
#include "app/keep/stead-place-dialog.h"
#include "app/stead-ui.h"
#include "store/stead-lot-repo.h"
#include "store/stead-place-repo.h"

struct _SteadPutDialog
{
  SteadDialog  parent_instance;

  SteadLot    *lot;
  GPtrArray   *places;   /* of SteadPlaceFacts, as they are offered */

  GtkLabel    *about;
  SteadPick   *place;
};

G_DEFINE_FINAL_TYPE (SteadPutDialog, stead_put_dialog, STEAD_TYPE_DIALOG)

typedef struct
{
  gint64 lot_id, place_id;
} Putting;

static gboolean
put_act (SteadStore  *store,
         gpointer     data,
         GError     **error)
{
  const Putting *putting = data;

  return stead_lot_repo_put (store, putting->lot_id, putting->place_id, error);
}

static gboolean
stead_put_dialog_save (SteadDialog  *dialog,
                       GError      **error)
{
  SteadPutDialog *self = STEAD_PUT_DIALOG (dialog);
  Putting putting = { self->lot->id, stead_pick_get (self->place) };
  g_autofree char *step = NULL;

  if (putting.place_id == self->lot->place_id)
    {
      stead_pick_say (self->place, _("It lies there now. Choose another place."), TRUE);
      return FALSE;
    }
  /* Translators: a step of undo: a lot's code, a place. */
  step = g_strdup_printf (_("lot %s to “%s”"), self->lot->code, stead_pick_get_text (self->place));
  return stead_desk_act (stead_dialog_get_desk (dialog), step, put_act, &putting, error);
}

static gboolean
had_place (const GPtrArray *places,
           gint64           place_id)
{
  for (guint i = 0; i < places->len; i++)
    if (((const SteadPlaceFacts *) places->pdata[i])->id == place_id)
      return TRUE;
  return FALSE;
}

/* Offers the farm's places; @wanted is chosen, but for one that is new since the last time. */
static void
fill_places (SteadPutDialog *self,
             SteadStore     *store,
             gint64          wanted)
{
  g_autoptr(GPtrArray) before = g_steal_pointer (&self->places);

  self->places = stead_place_repo_list (store, NULL);
  if (self->places == NULL)
    self->places = g_ptr_array_new ();
  stead_pick_clear (self->place);
  for (guint i = 0; i < self->places->len; i++)
    {
      const SteadPlaceFacts *place = self->places->pdata[i];

      stead_pick_append (self->place, place->id, place->name);
      if (before != NULL && !had_place (before, place->id))
        wanted = place->id;
    }
  stead_pick_append (self->place, 0, _("no place in particular"));
  stead_pick_show (self->place, wanted);
}

static void
changed_cb (SteadPutDialog *self)
{
  SteadStore *store = stead_desk_get_store (stead_dialog_get_desk (STEAD_DIALOG (self)));

  if (store != NULL)
    fill_places (self, store, stead_pick_get (self->place));
}

static void
new_place_cb (SteadPutDialog *self)
{
  stead_place_dialog_show (GTK_WIDGET (self), stead_dialog_get_desk (STEAD_DIALOG (self)), 0, STEAD_PLACE_STORE_ROOM);
}

static void
stead_put_dialog_dispose (GObject *object)
{
  SteadPutDialog *self = STEAD_PUT_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_PUT_DIALOG);
  g_clear_pointer (&self->lot, stead_lot_free);
  g_clear_pointer (&self->places, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_put_dialog_parent_class)->dispose (object);
}

static void
stead_put_dialog_class_init (SteadPutDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_put_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_put_dialog_save;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-put-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadPutDialog, about);
  gtk_widget_class_bind_template_child (widget_class, SteadPutDialog, place);
  gtk_widget_class_bind_template_callback (widget_class, new_place_cb);
}

static void
stead_put_dialog_init (SteadPutDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
show_lot (SteadPutDialog *self,
          SteadStore     *store)
{
  const SteadLot *lot = self->lot;
  g_autofree char *text = lot->place_id != 0
                          /* Translators: a thing, its lot code, a place. */
                          ? g_strdup_printf (_("%s, lot %s, lies at “%s”."), lot->item_name, lot->code, lot->place_name)
                          : g_strdup_printf (_("Of %s, lot %s, no place is written down."), lot->item_name, lot->code);

  gtk_label_set_text (self->about, text);
  fill_places (self, store, lot->place_id);
}

void
stead_put_dialog_show (GtkWidget *parent,
                       SteadDesk *desk,
                       gint64     lot_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  SteadLot *lot = stead_lot_repo_get (store, lot_id, &error);
  SteadPutDialog *self;

  if (lot == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_PUT_DIALOG, "title", _("Put it in another place"), NULL);
  self->lot = lot;
  show_lot (self, store);
  g_signal_connect_object (desk, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}
