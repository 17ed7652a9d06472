/* stead-page.h - one place of the strip: the base of Today, Raise, Keep, Price.
 *
 * A page is refreshed when facts have changed and it can be seen, or when it
 * comes to be seen; never while hidden.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PAGE (stead_page_get_type ())
G_DECLARE_DERIVABLE_TYPE (SteadPage, stead_page, STEAD, PAGE, GtkWidget)

struct _SteadPageClass
{
  GtkWidgetClass parent_class;

  /* Reads answers anew and shows them; a farm is open. */
  void (*refresh) (SteadPage *self);
  /* Shows one thing: selects the flock, opens the receipt. */
  void (*show)    (SteadPage *self, SteadTarget target, gint64 id);
};

/* Construct property "desk". */
SteadDesk *stead_page_get_desk (SteadPage *self);
/* Shorthand: the open farm. */
SteadStore *stead_page_get_store (SteadPage *self);
void       stead_page_show     (SteadPage *self, SteadTarget target, gint64 id);
/* Refreshes now if it can be seen, else when it will be. */
void       stead_page_invalidate (SteadPage *self);

G_END_DECLS
