/* stead-outline-view.h - the plan of a build with a handle at each corner.
 *
 * A handle is dragged, or chosen with Tab and moved with the arrow keys by a foot (half a
 * meter).  Signals: "moving" while it moves, "drawn" when it is put down.
 */
#pragma once

#include <gtk/gtk.h>

#include "core/stead-quantity.h"
#include "store/stead-build-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_OUTLINE_VIEW (stead_outline_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadOutlineView, stead_outline_view, STEAD, OUTLINE_VIEW, GtkWidget)

/* Copied; what is being moved is let go. */
void              stead_outline_view_set (SteadOutlineView *self, const SteadBuild *build, SteadUnitSystem units);
/* (transfer none) (nullable): as it is drawn now */
const SteadBuild *stead_outline_view_get (SteadOutlineView *self);
/* The corner whose handle was chosen last; -1: none */
int               stead_outline_view_get_chosen (SteadOutlineView *self);

G_END_DECLS
