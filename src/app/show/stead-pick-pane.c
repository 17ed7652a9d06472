/* stead-pick-pane.c - a view of Show that shows one thing of several: a person, an event, a packet. */
#include "config.h"

#include "app/show/stead-pick-pane.h"

typedef struct
{
  SteadPick *pick;
  gint64     id;     /* shown; 0: nothing yet */
} SteadPickPanePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (SteadPickPane, stead_pick_pane, STEAD_TYPE_PANE)

static SteadPickPanePrivate *
private_of (SteadPickPane *self)
{
  return stead_pick_pane_get_instance_private (self);
}

static void
stead_pick_pane_refresh (SteadPane *pane)
{
  SteadPickPane *self = STEAD_PICK_PANE (pane);
  SteadPickPanePrivate *priv = private_of (self);
  g_autoptr(GError) error = NULL;
  gboolean is_read;

  stead_pick_clear (priv->pick);
  is_read = STEAD_PICK_PANE_GET_CLASS (self)->list (self, priv->pick, &error);
  stead_pick_show (priv->pick, priv->id);
  priv->id = stead_pick_get (priv->pick);
  gtk_widget_set_visible (GTK_WIDGET (priv->pick), stead_pick_count (priv->pick) > 0);
  if (!is_read)
    stead_pane_say (pane, NULL, error);
  else if (priv->id == 0)
    STEAD_PICK_PANE_GET_CLASS (self)->show_none (self);
  else
    STEAD_PICK_PANE_GET_CLASS (self)->show_chosen (self, priv->id);
}

static void
stead_pick_pane_show (SteadPane   *pane,
                      SteadTarget  target,
                      gint64       id)
{
  if (id != 0)
    private_of (STEAD_PICK_PANE (pane))->id = id;
}

static void
chosen_cb (SteadPickPane *self)
{
  private_of (self)->id = stead_pick_get (private_of (self)->pick);
  stead_pane_refresh (STEAD_PANE (self), stead_pane_get_desk (STEAD_PANE (self)));
}

static void
stead_pick_pane_class_init (SteadPickPaneClass *klass)
{
  STEAD_PANE_CLASS (klass)->refresh = stead_pick_pane_refresh;
  STEAD_PANE_CLASS (klass)->show = stead_pick_pane_show;
}

static void
stead_pick_pane_init (SteadPickPane *self)
{
}

void
stead_pick_pane_add_pick (SteadPickPane *self,
                          const char    *label)
{
  SteadPickPanePrivate *priv = private_of (self);

  priv->pick = STEAD_PICK (stead_pick_new (label));
  gtk_widget_set_halign (GTK_WIDGET (priv->pick), GTK_ALIGN_START);
  g_signal_connect_swapped (priv->pick, "changed", G_CALLBACK (chosen_cb), self);
  stead_pane_add_head (STEAD_PANE (self), GTK_WIDGET (priv->pick));
}

gint64
stead_pick_pane_get (SteadPickPane *self)
{
  g_return_val_if_fail (STEAD_IS_PICK_PANE (self), 0);
  return private_of (self)->id;
}

void
stead_pick_pane_prefer (SteadPickPane *self,
                        gint64         id)
{
  g_return_if_fail (STEAD_IS_PICK_PANE (self));

  if (private_of (self)->id == 0)
    private_of (self)->id = id;
}

void
stead_pick_pane_empty (SteadTable *table)
{
  g_autoptr(GListStore) none = g_list_store_new (STEAD_TYPE_ROW);

  stead_table_set_model (table, G_LIST_MODEL (none));
}
