/* stead-coolers-pane.c - refrigerators and other cold places, each with its air over time.
 *
 * Places where food is kept: kitchens, store rooms and stalls; and any other whose air
 * was read.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/check/stead-coolers-pane.h"

#include "answer/stead-places-answer.h"
#include "app/check/stead-cooler-card.h"
#include "app/keep/stead-place-dialog.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-ui.h"
#include "store/stead-place-repo.h"

struct _SteadCoolersPane
{
  GtkWidget        parent_instance;

  SteadDesk       *desk;      /* (nullable) before the first refresh */
  SteadPersonPick *person;
  GtkWidget       *cards;
  GtkLabel        *trouble;
};

G_DEFINE_FINAL_TYPE (SteadCoolersPane, stead_coolers_pane, GTK_TYPE_WIDGET)

/* The card of a place stays, so that nothing typed is lost. */
static SteadCoolerCard *
card_of (SteadCoolersPane      *self,
         SteadDesk             *desk,
         const SteadPlaceFacts *place)
{
  GtkWidget *card = gtk_widget_get_first_child (self->cards);

  for (; card != NULL; card = gtk_widget_get_next_sibling (card))
    if (stead_cooler_card_get (STEAD_COOLER_CARD (card)) == place->id)
      return STEAD_COOLER_CARD (card);
  card = stead_cooler_card_new (desk, self->person, place->id, place->name);
  gtk_box_append (GTK_BOX (self->cards), card);
  return STEAD_COOLER_CARD (card);
}

/* What is read comes first, and of that what needs a look. */
static int
rank_of (const SteadPlaceAirAnswer *air)
{
  if (air->readings->len == 0)
    return 2;
  return air->warns ? 0 : 1;
}

static gboolean
show_places (SteadCoolersPane  *self,
             SteadDesk         *desk,
             const GPtrArray   *places,
             int                rank,
             GtkWidget        **last,
             GError           **error)
{
  for (guint i = 0; i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];
      g_autoptr(SteadPlaceAirAnswer) air = stead_place_air_answer_new (stead_desk_get_store (desk), place->id,
                                                                       STEAD_PLACE_AIR_DAYS, error);
      SteadCoolerCard *card;

      if (air == NULL)
        return FALSE;
      if (rank_of (air) != rank || !(stead_place_keeps_food (place) || air->readings->len > 0))
        continue;
      card = card_of (self, desk, place);
      stead_cooler_card_show (card, g_steal_pointer (&air));
      gtk_box_reorder_child_after (GTK_BOX (self->cards), GTK_WIDGET (card), *last);
      *last = GTK_WIDGET (card);
    }
  return TRUE;
}

void
stead_coolers_pane_refresh (SteadCoolersPane *self,
                            SteadDesk        *desk)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) places = stead_place_repo_list (store, &error);
  GtkWidget *last = NULL;

  g_return_if_fail (STEAD_IS_COOLERS_PANE (self));

  g_set_object (&self->desk, desk);
  stead_person_pick_fill (self->person, store);
  for (int rank = 0; places != NULL && error == NULL && rank < 3; rank++)
    if (!show_places (self, desk, places, rank, &last, &error))
      break;
  stead_make_say (self->trouble, error != NULL ? error->message : gtk_widget_get_first_child (self->cards) == NULL
                  ? _("The farm has no kitchen, no store room, no refrigerator and no stall yet. Add the place where food is kept.") : NULL, FALSE);
}

static void
new_cb (SteadCoolersPane *self)
{
  stead_place_dialog_show (GTK_WIDGET (self), self->desk, 0, STEAD_PLACE_STORE_ROOM);
}

static void
stead_coolers_pane_dispose (GObject *object)
{
  g_clear_object (&STEAD_COOLERS_PANE (object)->desk);
  stead_ui_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (stead_coolers_pane_parent_class)->dispose (object);
}

static void
stead_coolers_pane_class_init (SteadCoolersPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_coolers_pane_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
stead_coolers_pane_init (SteadCoolersPane *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *more = gtk_button_new_with_label (_("New place…"));

  gtk_widget_set_halign (more, GTK_ALIGN_START);
  g_signal_connect_swapped (more, "clicked", G_CALLBACK (new_cb), self);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_widget_set_margin_end (box, 6);
  self->trouble = GTK_LABEL (stead_make_label ("", NULL));
  self->person = STEAD_PERSON_PICK (stead_person_pick_new ());
  stead_person_pick_set_label (self->person, _("Read by"));
  gtk_widget_set_halign (GTK_WIDGET (self->person), GTK_ALIGN_START);
  self->cards = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->person));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->trouble));
  gtk_box_append (GTK_BOX (box), self->cards);
  gtk_box_append (GTK_BOX (box), more);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_widget_set_parent (scroller, GTK_WIDGET (self));
}
