/* stead-pick-pane.h - a view of Show that shows one thing of several: a person, an event, a packet.
 *
 * What is shown stays chosen while the farm changes, and a jump to another one chooses that.
 */
#pragma once

#include "app/keep/stead-pane.h"
#include "app/keep/stead-pick.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PICK_PANE (stead_pick_pane_get_type ())
G_DECLARE_DERIVABLE_TYPE (SteadPickPane, stead_pick_pane, STEAD, PICK_PANE, SteadPane)

struct _SteadPickPaneClass
{
  SteadPaneClass parent_class;

  /* Appends all that can be chosen.  %FALSE with @error. */
  gboolean (*list)        (SteadPickPane *self, SteadPick *pick, GError **error);
  /* Shows what is chosen; it is there. */
  void     (*show_chosen) (SteadPickPane *self, gint64 id);
  /* Shows that there is nothing to choose from. */
  void     (*show_none)   (SteadPickPane *self);
};

/* Once, in the subclass's init; @label: of the choice. */
void   stead_pick_pane_add_pick (SteadPickPane *self, const char *label);
/* What is shown; 0: nothing is there. */
gint64 stead_pick_pane_get      (SteadPickPane *self);
/* The first choice, before anybody chooses: does nothing once something is shown. */
void   stead_pick_pane_prefer   (SteadPickPane *self, gint64 id);
/* Takes all rows away. */
void   stead_pick_pane_empty    (SteadTable *table);

G_END_DECLS
